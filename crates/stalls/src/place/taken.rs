//! Spans of time that are taken, and the people who work on a phase.

use crate::windows::Minute;

/// Sorted spans of time that are taken, apart.
pub(super) type Taken = Vec<(Minute, Minute)>;

pub(super) fn take(taken: &mut Taken, span: (Minute, Minute)) {
    let at = taken.partition_point(|one| *one < span);
    taken.insert(at, span);
}

/// The same where nothing happens between spans that touch: they become one.
pub(super) fn fill(taken: &mut Taken, span: (Minute, Minute)) {
    let (from, to) = span;
    if from >= to {
        return;
    }
    let at = taken.iter().take_while(|one| one.1 < from).count();
    let after = taken.get(at + 1).copied();
    match taken.get_mut(at) {
        Some(one) if one.1 == from => {
            one.1 = to;
            if let Some(after) = after.filter(|after| after.0 == to) {
                one.1 = after.1;
                taken.remove(at + 1);
            }
        }
        Some(one) if one.0 == to => one.0 = from,
        _ => taken.insert(at, span),
    }
}

/// The end of the first span that overlaps; spans of one thing never overlap each other.
#[inline]
pub(super) fn overlaps(taken: &Taken, from: Minute, to: Minute) -> Option<Minute> {
    let at = taken.iter().take_while(|one| one.1 <= from).count();
    taken.get(at).filter(|one| one.0 < to).map(|one| one.1)
}

/// The end of a span that holds this minute inside, so that nobody passes.
#[inline]
pub(super) fn inside(taken: &Taken, minute: Minute) -> Option<Minute> {
    let at = taken.partition_point(|one| one.1 <= minute);
    taken.get(at).filter(|one| one.0 < minute).map(|one| one.1)
}

/// Up to four people.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Crew {
    people: [usize; 4],
    count: usize,
}

/// How many helpers a phase can have.
pub(crate) const MOST_HELPERS: usize = 3;

impl Crew {
    #[inline]
    pub(super) fn of(people: &[usize]) -> Self {
        let mut crew = Self::default();
        for person in people.iter().take(MOST_HELPERS + 1) {
            crew.people[crew.count] = *person;
            crew.count += 1;
        }
        crew
    }

    pub(super) fn with(mut self, person: usize) -> Self {
        self.people[self.count] = person;
        self.count += 1;
        self
    }

    #[inline]
    pub(crate) fn people(&self) -> &[usize] {
        &self.people[..self.count]
    }
}

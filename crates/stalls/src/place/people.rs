//! Who does a phase, and when they are free for it.

use super::taken::{Crew, MOST_HELPERS, overlaps};
use super::{Placer, Room};
use crate::windows::Minute;

impl Placer<'_, '_> {
    /// Who is done soonest, and when.
    pub(super) fn crew(
        &self,
        able: &[usize],
        wanted: usize,
        helpers: usize,
        from: Minute,
        minutes: i64,
    ) -> (Minute, Minute, Crew) {
        if let Some(at) = wanted.checked_sub(1) {
            return self.led_by(able[at % able.len()], helpers, from, minutes);
        }
        let skills = &self.ready.skills;
        if helpers > 0 {
            let led = able
                .iter()
                .map(|one| (self.led_by(*one, helpers, from, minutes), *one));
            let best = led.min_by_key(|(found, one)| (found.1, skills[*one]));
            return best.expect("somebody can do it").0;
        }
        let mut best = (Minute::MAX, usize::MAX);
        let mut who = (0, 0);
        for person in able {
            let own = &self.ready.own[*person];
            let at = first_gap(&self.room, *person, own.worked(from), minutes);
            let key = (own.ends(at + minutes), skills[*person]);
            if key < best {
                best = key;
                who = (*person, at);
            }
        }
        let (person, at) = who;
        (
            self.ready.own[person].begins(at),
            best.0,
            Crew::of(&[person]),
        )
    }

    /// One person and the helpers with whom they are done soonest.
    fn led_by(
        &self,
        person: usize,
        helpers: usize,
        from: Minute,
        minutes: i64,
    ) -> (Minute, Minute, Crew) {
        let mut crew = Crew::of(&[person]);
        let mut span = self.together(crew.people(), from, minutes);
        for _ in 0..helpers.min(MOST_HELPERS) {
            let others = (0..self.room.people.len()).filter(|one| !crew.people().contains(one));
            let with = others.map(|one| {
                let with = crew.with(one);
                (self.together(with.people(), from, minutes), with)
            });
            if let Some((found, with)) = with.min_by_key(|with| (with.0.1, with.0.0)) {
                (span, crew) = (found, with);
            }
        }
        (span.0, span.1, crew)
    }

    /// The first span from a minute on in which all of them are free and get this done.
    fn together(&self, people: &[usize], from: Minute, minutes: i64) -> (Minute, Minute) {
        if let [one] = people {
            return self.alone(*one, from, minutes);
        }
        let mut at = from;
        loop {
            let starts = self.ready.all_here(people, at);
            let ends = self.ready.done(people, starts, minutes);
            let busy = people.iter().filter_map(|one| {
                let own = &self.ready.own[*one];
                let taken = &self.room.people[*one];
                let later = overlaps(taken, own.worked(starts), own.worked(ends))?;
                Some(own.begins(later))
            });
            match busy.max() {
                None => return (starts, ends),
                Some(later) => at = later,
            }
        }
    }

    /// The same for one, on the line of their own worked minutes.
    fn alone(&self, person: usize, from: Minute, minutes: i64) -> (Minute, Minute) {
        let own = &self.ready.own[person];
        let at = first_gap(&self.room, person, own.worked(from), minutes);
        (own.begins(at), own.ends(at + minutes))
    }
}

#[inline]
fn first_gap(room: &Room, person: usize, from: i64, minutes: i64) -> i64 {
    let taken = &room.people[person];
    let mut at = from;
    for (begins, ends) in taken.iter().skip_while(|one| one.1 <= from) {
        if begins - at >= minutes {
            break;
        }
        at = at.max(*ends);
    }
    at
}

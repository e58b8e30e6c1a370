//! What is done, what is owed, and what has to wait for it.

use crate::kind::Kind;
use crate::phrases as say;
use crate::steps::{Before, Step, Work};
use measure::{Grade, Line, Source, Working};

/// What was done, in the sequence in which it was done.
#[derive(Clone, Debug, PartialEq)]
pub struct Done {
    pub kind: Kind,
    pub works: Vec<Work>,
    /// Whether a second person has checked it.
    pub second_person: bool,
}

/// A work that is still owed.
#[derive(Clone, Debug, PartialEq)]
pub struct Owed {
    pub step: Step,
    /// It was done, but something that has to come before it came later or not at all.
    pub again: bool,
}

/// Where a fluid stands.
#[derive(Clone, Debug, PartialEq)]
pub struct Standing {
    pub closed: bool,
    pub owed: Vec<Owed>,
    pub second_person_owed: bool,
    /// What has to wait, the nearest first.
    pub waits: Vec<Before>,
    pub closes_on: &'static str,
    pub working: Working,
}

/// What of a fluid's work is still owed, and what has to wait for it.
///
/// Formula: a work counts when it was done and each work that has to come before it was
/// done before its last time. A work done too early is owed again.
///
/// Inputs: see [`Done`]; works that the fluid does not ask for change nothing.
///
/// Returns what is owed in sequence, what has to wait, and what closes the fluid. What waits
/// for a start waits for road and hand-over too.
///
/// # Errors
///
/// None: what was done is a fact.
///
/// # Limits
///
/// The steps are those of the trade; the maker's instructions stand above them.
///
/// # Source
///
/// Practice of the trade.
///
/// ```
/// use fluids::{Before, Done, Kind, Work, standing};
/// let works = vec![Work::Filled, Work::Primed, Work::NoDrip];
/// let found = standing(&Done { kind: Kind::Fuel, works, second_person: false });
/// // No smell is owed, and the engine waits for it.
/// assert_eq!(found.waits[0], Before::Start);
/// ```
pub fn standing(done: &Done) -> Standing {
    let mut owed = Vec::new();
    for step in done.kind.steps() {
        let last = last_time(&done.works, step.work);
        let counts = last.is_some_and(|last| {
            step.after
                .iter()
                .all(|before| last_time(&done.works, *before).is_some_and(|earlier| earlier < last))
        });
        if !counts {
            owed.push(Owed {
                step: *step,
                again: last.is_some(),
            });
        }
    }
    let second_person_owed = done.kind.wants_second_person() && !done.second_person;
    let nearest = owed
        .iter()
        .map(|owed| owed.step.before)
        .chain(second_person_owed.then_some(Before::Road))
        .min();
    let waits = Before::ALL
        .into_iter()
        .filter(|before| nearest.is_some_and(|nearest| *before >= nearest))
        .collect();
    Standing {
        closed: owed.is_empty() && !second_person_owed,
        working: working(done.kind, &owed),
        owed,
        second_person_owed,
        waits,
        closes_on: done.kind.closes_on(),
    }
}

fn last_time(works: &[Work], work: Work) -> Option<usize> {
    works.iter().rposition(|one| *one == work)
}

fn working(kind: Kind, owed: &[Owed]) -> Working {
    let trade = || Source::new(say::practice_of_the_trade(), "", Grade::CommonPractice);
    let mut working = Working::new(say::steps_title(kind));
    for step in kind.steps() {
        let open = owed.iter().find(|owed| owed.step.work == step.work);
        let value = match open {
            None => say::done(),
            Some(owed) if owed.again => say::owed_again(),
            Some(_) => say::owed(),
        };
        working = working.line(
            Line::new(step.work.said(), trade())
                .value(value)
                .note(step.text()),
        );
    }
    working.limit(say::maker_stands_above())
}

//! A plan shared between two people on one vehicle.

use super::say;
use super::{OrderMap, Shown};
use plan::{Bay, Budget, Minutes, Place, Planned, share, tasks};
use repair::ItemId;
use std::collections::BTreeMap;

/// A plan shared between people.
#[derive(Debug, Clone, PartialEq)]
pub struct Shares {
    /// What each does, in the sequence they do it.
    pub people: Vec<Vec<Turn>>,
    /// What runs by itself.
    pub alone: Vec<Turn>,
    /// When all is finished.
    pub finish: Minutes,
    /// How long one person takes for the same, walks left out.
    pub one: Minutes,
    /// Nobody can be finished before this.
    pub bound: Minutes,
    /// Whether nothing finishes sooner.
    pub proven: bool,
}

/// One row of a plan, as somebody's turn.
#[derive(Debug, Clone, PartialEq)]
pub struct Turn {
    /// What is moved.
    pub item: String,
    /// What is done with it.
    pub done: String,
    /// From when, in minutes from the start.
    pub start: Minutes,
    /// Until when.
    pub end: Minutes,
    /// Where one stands.
    pub place: Option<String>,
    /// Whether the other has to have finished something just before it.
    pub waits: bool,
}

/// So many states are looked at: a page waits for it.
const EXPANSIONS: u64 = 20_000;

/// How a plan is shared between so many people. What is worked on from below wants the lift up,
/// what from above wants it down; moving it takes as long as the map says a change of place does.
#[must_use]
pub fn shares(on: &OrderMap, found: &Shown, people: usize) -> Shares {
    let problem = on.problem();
    let lift = |place: &str, stands: &str| (Place::new(place), stands.to_owned());
    let bay = Bay {
        lift_for: [
            lift("below", "up"),
            lift("above", "down"),
            lift("cabin", "down"),
        ]
        .into(),
        lift_change: Minutes::tenths(on.map.place_change_tenths),
        ..Bay::default()
    };
    let tasks = tasks(&problem, &found.plan, &bay);
    let budget = Budget {
        expansions: EXPANSIONS,
    };
    let shared = share(&tasks, &bay, people, budget);
    let rows: Vec<&Planned> = found.plan.off.iter().chain(&found.plan.back).collect();
    let mut out = Shares {
        people: vec![Vec::new(); people],
        alone: Vec::new(),
        finish: shared.finish,
        one: share(&tasks, &bay, 1, budget).finish,
        bound: shared.bound,
        proven: shared.proven,
    };
    let by: BTreeMap<usize, Option<usize>> = shared
        .turns
        .iter()
        .map(|turn| (turn.task, turn.person))
        .collect();
    let ends: BTreeMap<usize, Minutes> = shared
        .turns
        .iter()
        .map(|turn| (turn.task, turn.end))
        .collect();
    for turn in &shared.turns {
        let Some(row) = rows.get(turn.task) else {
            continue;
        };
        let others = tasks[turn.task].after.iter();
        let mut others = others.filter(|other| by.get(other) != Some(&turn.person));
        let shown = Turn {
            item: label(on, &row.item),
            done: done(on, row),
            start: turn.start,
            end: turn.end,
            place: row.place.as_ref().map(Place::to_string),
            waits: turn.start > Minutes::default()
                && others.any(|other| ends.get(other) == Some(&turn.start)),
        };
        match turn.person.and_then(|person| out.people.get_mut(person)) {
            Some(turns) => turns.push(shown),
            None => out.alone.push(shown),
        }
    }
    out
}

fn label(on: &OrderMap, item: &ItemId) -> String {
    on.extras
        .get(item)
        .cloned()
        .unwrap_or_else(|| item.to_string())
}

fn done(on: &OrderMap, row: &Planned) -> String {
    let kind = on
        .map
        .items
        .get(&row.item)
        .map_or(repair::Kind::Part, |known| known.kind);
    say::comes_to(kind, row.to, row.way).to_owned()
}

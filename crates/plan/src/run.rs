//! A plan as single steps of the ladders, for the plain executor.

use crate::PlanError;
use crate::problem::{Plan, Planned, Problem};
use states::{Bench, ItemId, Kind, Position, State, Step};
use std::collections::{BTreeMap, VecDeque};

/// Out or back.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Way {
    /// Away from home.
    Out,
    /// Towards home.
    Back,
}

/// The items of a problem on a bench, each piece where it stands.
#[must_use]
pub fn bench(problem: &Problem) -> Bench {
    let mut bench = Bench::default();
    for (id, item) in &problem.items {
        bench.place_pieces(id.clone(), item.kind, item.stands.clone());
    }
    bench
}

/// The single steps of a plan, out and back, each with its need.
///
/// # Errors
/// [`PlanError::NoSuchItem`] if the plan is not one of this problem.
pub fn steps(problem: &Problem, plan: &Plan) -> Result<Vec<Step>, PlanError> {
    let mut stands: BTreeMap<ItemId, BTreeMap<Position, State>> = problem
        .items
        .iter()
        .map(|(id, item)| (id.clone(), item.stands.clone()))
        .collect();
    let mut steps = Vec::new();
    for row in plan.off.iter().chain(&plan.back) {
        let unknown = || PlanError::NoSuchItem {
            item: row.item.clone(),
            named_by: row.id.to_string(),
        };
        let kind = problem.items.get(&row.item).ok_or_else(unknown)?.kind;
        let pieces = stands.get_mut(&row.item).ok_or_else(unknown)?;
        steps.extend(steps_of(problem, row, kind, pieces));
    }
    Ok(steps)
}

fn steps_of(
    problem: &Problem,
    row: &Planned,
    kind: Kind,
    pieces: &mut BTreeMap<Position, State>,
) -> Vec<Step> {
    let stated = problem.moves.iter().find(|step| step.id == row.id);
    // Work falls due whatever it needs to be done.
    let stated = stated.filter(|_| !(kind == Kind::Work && row.way == Way::Out));
    let needs = stated.map(|stated| match (&stated.back_need, row.way) {
        (Some(need), Way::Back) => need.clone(),
        _ => stated.need.clone(),
    });
    let mut together: BTreeMap<State, Vec<Position>> = BTreeMap::new();
    for at in &row.at {
        if let Some(state) = pieces.insert(*at, row.to) {
            together.entry(state.rung()).or_default().push(*at);
        }
    }
    let mut steps = Vec::new();
    for (start, at) in together {
        for (from, to) in ladder(kind, start, row.to) {
            steps.push(Step {
                item: row.item.clone(),
                at: at.clone(),
                from,
                to,
                needs: needs.clone(),
            });
        }
    }
    steps
}

/// The shortest way along the ladder, empty if there is none.
fn ladder(kind: Kind, from: State, to: State) -> Vec<(State, State)> {
    let mut came_from: BTreeMap<State, State> = BTreeMap::new();
    let mut queue = VecDeque::from([from]);
    while let Some(at) = queue.pop_front() {
        for (_, next) in kind.steps().iter().filter(|(start, _)| *start == at) {
            if *next != from && !came_from.contains_key(next) {
                came_from.insert(*next, at);
                queue.push_back(*next);
            }
        }
    }
    let mut way = Vec::new();
    let mut at = to;
    while at != from {
        let Some(before) = came_from.get(&at) else {
            return Vec::new();
        };
        way.push((*before, at));
        at = *before;
    }
    way.reverse();
    way
}

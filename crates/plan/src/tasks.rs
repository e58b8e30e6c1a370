//! The rows of a plan as tasks that several people can share: what has to wait for what.

use crate::problem::{Because, Plan, Planned, Problem};
use crate::{Minutes, Place, Tool, Way};
use states::{ItemId, Kind, Need, Position, State};
use std::collections::{BTreeMap, BTreeSet};

/// What a bay has that only one can use at a time.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Bay {
    /// How the lift must stand for each place, such as up or down; a place that is not
    /// named can be worked at however it stands.
    pub lift_for: BTreeMap<Place, String>,
    /// How it stands at the start; nothing if the first task may have it as it likes.
    pub lift_at_start: Option<String>,
    /// How long it takes to bring the lift from one stand to another.
    pub lift_change: Minutes,
    /// Tools of which there is one: the lamp, the puller.
    pub only_one: BTreeSet<Tool>,
}

/// One row of a plan, as somebody has to do it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Task {
    /// How long it takes.
    pub minutes: Minutes,
    /// How the lift must stand meanwhile.
    pub lift: Option<String>,
    /// What it uses of which there is only one.
    pub only_one: BTreeSet<Tool>,
    /// Whether it runs without anybody: a drain, a cure.
    pub runs_by_itself: bool,
    /// The tasks that must be finished before it starts, by their index.
    pub after: BTreeSet<usize>,
}

/// The rows of a plan as tasks, out and then back, in the plan's sequence.
///
/// A row waits for the rows that its needs rest on in this plan (of alternatives, the first
/// that holds there), for the row of the same item before it, and for what makes it due; a
/// row that would undo what another needs waits for that one. Nothing goes back before
/// everything that the plan takes out is out. So every sequence that keeps these waits can
/// be carried out.
///
/// ```
/// # use plan::{Bay, Budget, Changes, Effort, Goal, Item, Minutes, Move, MoveId, Problem, Target};
/// # use states::{ItemId, Kind, Need, State};
/// # let item = ItemId::new("tray");
/// # let tray = Move {
/// #     id: MoveId::new("tray.off"), item: item.clone(), from: State::On, to: State::Off,
/// #     need: Need::All(vec![]), back_need: None, makes_due: vec![],
/// #     out: Effort::once(Minutes::tenths(10)), back: Effort::once(Minutes::tenths(20)),
/// #     lost: Minutes::default(), snag_risk: Minutes::default(), place: None,
/// #     back_place: None,
/// #     tools: [].into(), runs_by_itself: false,
/// # };
/// # let problem = Problem {
/// #     items: [(item.clone(), Item::one(Kind::Cover, State::On))].into(),
/// #     moves: vec![tray], changes: Changes::default(), start: None,
/// #     goal: Goal::Reach(vec![Target { item, states: [State::Off].into() }]),
/// #     forced_moves: [].into(), forbidden_moves: [].into(),
/// #     forced_places: [].into(), forbidden_places: [].into(),
/// # };
/// let found = plan::plan(&problem, Budget::default())?;
/// let tasks = plan::tasks(&problem, &found, &Bay::default());
/// assert_eq!(tasks[1].after, [0].into(), "it goes back after it came off");
/// # Ok::<(), plan::PlanError>(())
/// ```
#[must_use]
pub fn tasks(problem: &Problem, plan: &Plan, bay: &Bay) -> Vec<Task> {
    let rows: Vec<&Planned> = plan.off.iter().chain(&plan.back).collect();
    let stands = stands(problem, &rows);
    let mut after: Vec<BTreeSet<usize>> = vec![BTreeSet::new(); rows.len()];
    for (at, row) in rows.iter().enumerate() {
        let same = rows[..at].iter().rposition(|other| other.item == row.item);
        after[at].extend(same);
        if let Because::MadeDue(id) | Because::Owed(id) = &row.because {
            let cause = rows[..at].iter().rposition(|other| other.id == *id);
            after[at].extend(cause);
        }
        let Some(need) = need_of(problem, row) else {
            continue;
        };
        let mut leans_on = Vec::new();
        support(need, &stands[at], &mut leans_on);
        for need in leans_on {
            let holds = |when: usize| holds(need, &stands[when]);
            // The row since which it holds, and the one that ends it.
            let since = (0..at).rev().find(|before| !holds(*before));
            after[at].extend(since);
            let until = (at..rows.len()).find(|later| !holds(later + 1));
            if let Some(until) = until.filter(|until| *until != at) {
                after[until].insert(at);
            }
        }
        if row.way == Way::Back {
            after[at].extend(0..plan.off.len());
        }
    }
    let task = |(row, after): (&&Planned, BTreeSet<usize>)| {
        let runs = problem.moves.iter().find(|step| step.id == row.id);
        Task {
            minutes: row.minutes,
            lift: row
                .place
                .as_ref()
                .and_then(|place| bay.lift_for.get(place))
                .cloned(),
            only_one: row.tools.intersection(&bay.only_one).cloned().collect(),
            runs_by_itself: runs.is_some_and(|step| step.runs_by_itself),
            after,
        }
    };
    rows.iter().zip(after).map(task).collect()
}

type Stands = BTreeMap<ItemId, BTreeMap<Position, State>>;

/// Where everything stands before each row, and after the last.
fn stands(problem: &Problem, rows: &[&Planned]) -> Vec<Stands> {
    let first: Stands = problem
        .items
        .iter()
        .map(|(id, item)| (id.clone(), item.stands.clone()))
        .collect();
    let mut all = vec![first];
    for row in rows {
        let mut next = all[all.len() - 1].clone();
        let pieces = next.entry(row.item.clone()).or_default();
        pieces.extend(row.at.iter().map(|at| (*at, row.to)));
        all.push(next);
    }
    all
}

/// What must hold before a row, as the executor asks it.
fn need_of<'p>(problem: &'p Problem, row: &Planned) -> Option<&'p Need> {
    let stated = problem.moves.iter().find(|step| step.id == row.id)?;
    let kind = problem.items.get(&row.item).map(|item| item.kind);
    match (&stated.back_need, row.way) {
        (_, Way::Out) if kind == Some(Kind::Work) => None,
        (Some(need), Way::Back) => Some(need),
        _ => Some(&stated.need),
    }
}

fn holds(need: &Need, stands: &Stands) -> bool {
    need.holds(&|item: &ItemId| {
        let pieces = stands.get(item).into_iter().flatten();
        pieces.map(|(at, state)| (*at, *state)).collect()
    })
}

/// The single conditions that make a need hold here.
fn support<'n>(need: &'n Need, stands: &Stands, into: &mut Vec<&'n Need>) {
    match need {
        Need::Is { .. } => into.push(need),
        Need::All(needs) => needs.iter().for_each(|need| support(need, stands, into)),
        Need::Any(needs) => {
            if let Some(need) = needs.iter().find(|need| holds(need, stands)) {
                support(need, stands, into);
            }
        }
    }
}

//! A plan as people read it: stages of rows in words, what is lost, renewed and owed.

use super::say::{self, amount};
use super::work::owing;
use crate::phrases::planning as words;
use map::{Map, MapItem};
use plan::{Because, Minutes, Place, Plan, Planned, Problem, Way};
use repair::{ItemId, Kind, Need, Position, State};
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

/// What an item is called that the map does not know.
pub type Extras = BTreeMap<ItemId, String>;

/// A plan as people read it.
#[derive(Debug, Clone, PartialEq)]
pub struct Shown {
    /// The way out, in stages.
    pub off: Vec<StageShown>,
    /// The way back, in stages.
    pub back: Vec<StageShown>,
    /// The time of the way out.
    pub minutes_off: Minutes,
    /// The time of the way back.
    pub minutes_back: Minutes,
    /// What comes off and may not go back.
    pub renewed: Vec<String>,
    /// The fluids that come out.
    pub lost: Vec<String>,
    /// The work it leaves.
    pub owed: Vec<String>,
    /// Pieces that no move brings home until their snag is resolved.
    pub stays: Vec<String>,
    /// What no legal way back was found for.
    pub no_way_back: Vec<String>,
    /// The plan itself.
    pub plan: Plan,
}

/// A handful of rows done in one go.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StageShown {
    /// Where one stands.
    pub place: Option<String>,
    /// What one holds, in the sequence it is taken up.
    pub tools: Vec<String>,
    /// The time it takes.
    pub minutes: Minutes,
    /// Its rows.
    pub rows: Vec<RowShown>,
}

/// One row.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct RowShown {
    /// The move.
    pub id: plan::MoveId,
    /// The item: its name on the map, or in the order if the map does not know it.
    pub item: ItemId,
    /// What it is called.
    pub label: String,
    /// Its size.
    pub size: Option<String>,
    /// Its kind.
    pub kind: Kind,
    /// The positions that move.
    pub at: Vec<Position>,
    /// Out or back.
    pub way: Way,
    /// The state they come to.
    pub to: State,
    /// That state in a word or two.
    pub done: String,
    /// Where one stands.
    pub place: Option<String>,
    /// What one holds.
    pub tools: Vec<String>,
    /// The time it takes.
    pub minutes: Minutes,
    /// Why it is there.
    pub because: String,
    /// The passes of its torque, where the map knows one and it is tightened here.
    pub torque: Vec<String>,
    /// Whether a new one goes on.
    pub spent: bool,
    /// What it is only guessed to need first on this way, by what finished jobs have taught.
    pub guessed: Vec<String>,
}

impl RowShown {
    /// Whether it is work that only falls due here, and is done later.
    #[must_use]
    pub fn falls_due(&self) -> bool {
        self.kind == Kind::Work && self.way == Way::Out
    }
}

/// A plan in words.
#[must_use]
pub fn shown(map: &Map, problem: &Problem, plan: Plan, extras: &Extras) -> Shown {
    let rows = |planned: &[Planned]| -> Vec<RowShown> {
        planned
            .iter()
            .map(|row| row_shown(map, problem, row, extras))
            .collect()
    };
    let (off, back) = (rows(&plan.off), rows(&plan.back));
    let minutes = |rows: &[RowShown]| rows.iter().map(|row| row.minutes).sum();
    let touched: BTreeSet<&ItemId> = plan
        .off
        .iter()
        .chain(&plan.back)
        .map(|row| &row.item)
        .collect();
    let these = |test: &dyn Fn(&MapItem) -> bool| -> Vec<&ItemId> {
        let known = |item: &&&ItemId| map.items.get(**item).is_some_and(test);
        touched.iter().filter(known).copied().collect()
    };
    let renewed = renewed_with(map, &touched, &off, extras);
    Shown {
        minutes_off: minutes(&off),
        minutes_back: minutes(&back),
        renewed: these(&|item| item.spent)
            .into_iter()
            .chain(renewed.values().flatten().map(|row| &row.item))
            .map(ItemId::to_string)
            .collect(),
        lost: these(&|item| item.kind == Kind::Fluid)
            .into_iter()
            .map(|item| fluid(map, item))
            .collect(),
        owed: owed(map, &plan),
        stays: stays(&plan),
        no_way_back: plan
            .no_way_back
            .iter()
            .map(|id| say::made(map, id))
            .collect(),
        off: staged(map, &plan.off, &off, &renewed),
        back: staged(map, &plan.back, &back, &renewed),
        plan,
    }
}

/// What comes off with each move and may not go back, by the move, where the plan does not
/// move it by itself.
fn renewed_with(
    map: &Map,
    touched: &BTreeSet<&ItemId>,
    off: &[RowShown],
    extras: &Extras,
) -> BTreeMap<plan::MoveId, Vec<RowShown>> {
    let mut told: BTreeSet<&ItemId> = touched.clone();
    let mut out = BTreeMap::new();
    for row in off {
        let step = map.moves().find(|(_, step)| step.id == row.id.as_str());
        let seals = step.map_or(&[][..], |(_, step)| &step.renews).iter();
        let rows: Vec<RowShown> = seals
            .filter(|seal| told.insert(seal))
            .filter_map(|seal| seal_row(map, seal, row, extras))
            .collect();
        if !rows.is_empty() {
            out.insert(row.id.clone(), rows);
        }
    }
    out
}

/// The row of what comes off with another.
fn seal_row(map: &Map, seal: &ItemId, with: &RowShown, extras: &Extras) -> Option<RowShown> {
    let known = map.items.get(seal)?;
    let label = extras.get(seal).cloned();
    Some(RowShown {
        id: plan::MoveId::new(&known.moves.first()?.id),
        item: seal.clone(),
        label: label.unwrap_or_else(|| seal.to_string()),
        size: known.size.clone(),
        kind: known.kind,
        at: (1..=known.count).collect(),
        way: Way::Out,
        to: known.kind.away(),
        done: say::comes_to(known.kind, known.kind.away(), Way::Out).to_owned(),
        place: with.place.clone(),
        tools: Vec::new(),
        minutes: Minutes::default(),
        because: words::comes_off_with(&with.label),
        torque: Vec::new(),
        spent: known.spent,
        guessed: Vec::new(),
    })
}

/// The same row on the way back.
fn put_back(mut row: RowShown) -> RowShown {
    row.way = Way::Back;
    row.to = row.kind.home();
    row.done = say::comes_to(row.kind, row.to, Way::Back).to_owned();
    row
}

fn fluid(map: &Map, item: &ItemId) -> String {
    let known = map.items.get(item);
    let drains = known.and_then(|known| known.drains.as_ref());
    let holds = known.and_then(|known| known.holds.as_ref());
    match (holds, drains) {
        (Some(holds), Some(drains)) => words::fluid_lost(item, amount(holds), amount(drains)),
        (Some(holds), None) => format!("{item}: {}", amount(holds)),
        _ => item.to_string(),
    }
}

/// The work that the way out makes due, later work with the distance or time.
fn owed(map: &Map, plan: &Plan) -> Vec<String> {
    let made: BTreeSet<&str> = plan.off.iter().map(|row| row.id.as_str()).collect();
    let works = map.items.iter().filter(|(_, item)| item.kind == Kind::Work);
    works
        .filter(|(work, _)| owing(map, work).any(|(_, step)| made.contains(step.id.as_str())))
        .map(|(work, item)| match &item.due_after {
            Some(after) => words::owed_after(work, after),
            None => work.to_string(),
        })
        .collect()
}

fn stays(plan: &Plan) -> Vec<String> {
    let mut pieces: BTreeMap<&ItemId, Vec<Position>> = BTreeMap::new();
    for (item, at) in &plan.stays {
        pieces.entry(item).or_default().push(*at);
    }
    let line =
        |(item, at): (&ItemId, Vec<Position>)| format!("{item} {}", crate::say::positions(&at));
    pieces.into_iter().map(line).collect()
}

fn row_shown(map: &Map, problem: &Problem, row: &Planned, extras: &Extras) -> RowShown {
    let known = map.items.get(&row.item);
    let kind = problem
        .items
        .get(&row.item)
        .map_or(Kind::Part, |item| item.kind);
    let label = extras.get(&row.item).cloned();
    let tightened = row.way == Way::Back && row.to == State::Tight;
    let torque = known.filter(|_| tightened).map(|known| &known.torque);
    RowShown {
        id: row.id.clone(),
        label: label.unwrap_or_else(|| row.item.to_string()),
        size: known.and_then(|known| known.size.clone()),
        kind,
        at: row.at.clone(),
        way: row.way,
        to: row.to,
        done: say::comes_to(kind, row.to, row.way).to_owned(),
        place: row.place.as_ref().map(Place::to_string),
        tools: row.tools.iter().map(plan::Tool::to_string).collect(),
        minutes: row.minutes,
        because: because(map, &row.because, row.way),
        torque: torque
            .into_iter()
            .flatten()
            .map(|pass| pass.written().to_owned())
            .collect(),
        spent: known.is_some_and(|known| known.spent),
        guessed: known.map_or_else(Vec::new, |known| {
            let guessed = match row.way {
                Way::Out => &known.guessed,
                Way::Back => &known.guessed_back,
            };
            guessed.iter().map(ItemId::to_string).collect()
        }),
        item: row.item.clone(),
    }
}

fn because(map: &Map, why: &Because, way: Way) -> String {
    match why {
        Because::Target(_) => words::what_we_want().to_owned(),
        Because::Needed(by) => words::first_for(say::made(map, by)),
        Because::MadeDue(by) => words::owed_by(say::made(map, by)),
        Because::AskedFor if way == Way::Back => words::home_for_this().to_owned(),
        Because::AskedFor => words::you_asked_for_it().to_owned(),
        Because::Owed(by) => words::owed_since(say::made(map, by)),
        Because::LetsBack(next) => words::before(say::goes_back(map, next)),
        Because::Home => words::goes_home().to_owned(),
    }
}

/// The stages of the search, cut again: an item moves once a stage, what was put on is
/// tightened before anything covers it, and work that answers what was put back comes in
/// a stage after it.
fn staged(
    map: &Map,
    planned: &[Planned],
    rows: &[RowShown],
    renewed: &BTreeMap<plan::MoveId, Vec<RowShown>>,
) -> Vec<StageShown> {
    let mut out = Vec::new();
    for stage in plan::stages(planned) {
        let mut start = stage.rows.start;
        for at in stage.rows.clone() {
            if at > start && cut_before(map, rows, start..at) {
                out.push(stage_shown(&stage, &rows[start..at], renewed));
                start = at;
            }
        }
        out.push(stage_shown(&stage, &rows[start..stage.rows.end], renewed));
    }
    with_what_it_leaves(out)
}

/// Work that falls due on the way out is told with the stage it comes from: a stage of
/// nothing else would ask for a tap that does nothing.
fn with_what_it_leaves(stages: Vec<StageShown>) -> Vec<StageShown> {
    let falls_due = |row: &RowShown| row.way == Way::Out && row.kind == Kind::Work;
    let mut out: Vec<StageShown> = Vec::new();
    let mut waiting: Vec<RowShown> = Vec::new();
    for mut stage in stages {
        if stage.rows.iter().all(falls_due) {
            waiting.append(&mut stage.rows);
        } else {
            stage.rows.append(&mut waiting);
            out.push(stage);
        }
    }
    if let Some(last) = out.last_mut() {
        last.rows.append(&mut waiting);
    }
    out
}

fn cut_before(map: &Map, rows: &[RowShown], before: Range<usize>) -> bool {
    let next = &rows[before.end];
    let last = &rows[before.end - 1];
    let before = &rows[before];
    let answers = |row: &RowShown| owing(map, &next.item).any(|(item, _)| *item == row.item);
    let again = before.iter().any(|row| row.item == next.item);
    let back = next.way == Way::Back;
    let tightened = back && !last.torque.is_empty() && next.torque.is_empty();
    let work = back && next.kind == Kind::Work && before.iter().any(answers);
    again || tightened || work
}

/// A stage of these rows: with what comes off goes what is renewed with it, and before it
/// goes back, the new one goes on.
fn stage_shown(
    stage: &plan::Stage,
    rows: &[RowShown],
    renewed: &BTreeMap<plan::MoveId, Vec<RowShown>>,
) -> StageShown {
    let mut tools: Vec<String> = Vec::new();
    for tool in rows.iter().flat_map(|row| &row.tools) {
        if !tools.contains(tool) {
            tools.push(tool.clone());
        }
    }
    StageShown {
        place: stage.place.as_ref().map(Place::to_string),
        tools,
        minutes: rows.iter().map(|row| row.minutes).sum(),
        rows: rows
            .iter()
            .flat_map(|row| with_renewed(row, renewed))
            .collect(),
    }
}

fn with_renewed(row: &RowShown, renewed: &BTreeMap<plan::MoveId, Vec<RowShown>>) -> Vec<RowShown> {
    let with = renewed.get(&row.id).cloned().unwrap_or_default();
    let own = row.clone();
    match row.way {
        Way::Out => [own].into_iter().chain(with).collect(),
        Way::Back => with.into_iter().map(put_back).chain([own]).collect(),
    }
}

/// What comes off in one plan and not in the other, by name.
#[must_use]
pub fn only_in(one: &Plan, other: &Plan) -> Vec<String> {
    let items =
        |plan: &Plan| -> BTreeSet<ItemId> { plan.off.iter().map(|row| row.item.clone()).collect() };
    items(one)
        .difference(&items(other))
        .map(ItemId::to_string)
        .collect()
}

/// The moves of a plan that stand for one of several ways, nearest the start first: what
/// to rule out to see another.
#[must_use]
pub fn choices(problem: &Problem, plan: &Plan) -> Vec<plan::MoveId> {
    let chosen = |row: &&Planned| match &row.because {
        Because::Needed(by) => problem
            .find(by)
            .is_ok_and(|made| alternative(&made.need, &row.item)),
        _ => false,
    };
    plan.off
        .iter()
        .filter(chosen)
        .map(|row| row.id.clone())
        .collect()
}

fn alternative(need: &Need, item: &ItemId) -> bool {
    match need {
        Need::Is { .. } => false,
        Need::All(needs) => needs.iter().any(|need| alternative(need, item)),
        Need::Any(needs) => needs.iter().any(|need| need.items().contains(item)),
    }
}

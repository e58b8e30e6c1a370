//! Where somebody stopped in the middle of a group: what the next one sees first.

use super::story;
use crate::phrases::order as words;
use crate::say::Names;
use record::form::Form;
use record::v1::basics::StateForm;
use repair::{Account, Item, ItemId, Kind, Position, Stamp, State, Stated};
use serde::Serialize;
use std::collections::BTreeSet;
use utoipa::ToSchema;

/// A group that was left in the middle.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct StoppedView {
    /// The item.
    pub item: String,
    /// What it is called, and how many of how many: `housing bolts 5 of 7`.
    pub group: String,
    /// What was being done with them: `pass 1`, `out`.
    pub doing: String,
    /// Who stopped.
    pub by: String,
    /// When.
    pub at: String,
    /// Whether they were going on, not coming off.
    pub going_on: bool,
    /// What they were brought to.
    pub to: StateForm,
    /// The positions that are not there yet.
    pub rest: Vec<Position>,
}

/// The groups left in the middle, the last one first.
pub(super) fn stopped(names: &Names<'_>) -> Vec<StoppedView> {
    let reading = names.reading();
    let (order, account, rules) = (reading.order(), reading.account(), reading.rules());
    let snagged: BTreeSet<(ItemId, Position)> = repair::snags::open(order)
        .into_iter()
        .flat_map(|snag| {
            let item = snag.item.clone();
            let at = snag.at.into_iter();
            at.filter_map(move |at| Some((account.moves.name(item.as_ref()?).clone(), at)))
        })
        .collect();
    let mut found: Vec<(&Stamp, StoppedView)> = account
        .open
        .iter()
        .filter_map(|open| open.known.as_ref())
        .filter(|item| item.kind.is_counted())
        .filter_map(|item| {
            let at: Vec<Position> = account
                .positions(&item.id)
                .into_iter()
                .filter(|at| !snagged.contains(&(item.id.clone(), *at)))
                .collect();
            let left = left_in_the_middle(account, item, &at)?;
            let view = StoppedView {
                item: item.id.as_str().to_owned(),
                group: words::some_of(names.text(item.label), left.done, at.len()),
                doing: doing(item, left.to),
                by: names.person(&left.stamp.who),
                at: story::hour(rules, left.stamp.at),
                to: StateForm::of(&left.to),
                rest: left.rest,
                going_on: matches!(left.to, State::Loose { .. } | State::Tight | State::On),
            };
            Some((left.stamp, view))
        })
        .collect();
    found.sort_by(|a, b| (b.0.at, &b.0.who).cmp(&(a.0.at, &a.0.who)));
    found.into_iter().map(|(_, view)| view).collect()
}

/// What the last move of a group brought some of it to, and how many are there.
struct Left<'a> {
    stamp: &'a Stamp,
    to: State,
    done: usize,
    rest: Vec<Position>,
}

fn left_in_the_middle<'a>(account: &'a Account, item: &Item, at: &[Position]) -> Option<Left<'a>> {
    let last = account
        .moves
        .live(&item.id)
        .filter(|(_, node)| node.stated == Stated::Moved)
        .max_by_key(|(id, node)| (node.stamp.at, *id))
        .map(|(_, node)| node)?;
    let to = last.change.left.state;
    let (there, rest): (Vec<Position>, Vec<Position>) = at.iter().copied().partition(|at| {
        let stands = account.moves.stands(&item.id, *at);
        !stands.is_empty() && stands.iter().all(|stand| reached(stand.state, to))
    });
    let in_the_middle = !there.is_empty() && !rest.is_empty();
    (in_the_middle && !matches!(to, State::Stub { .. })).then_some(Left {
        stamp: &last.stamp,
        to,
        done: there.len(),
        rest,
    })
}

/// Whether a piece is as far as this on the way that the last move took: on by hand, pass by
/// pass to tight; or cracked, then out.
fn reached(state: State, to: State) -> bool {
    let on = |state: State| match state {
        State::Loose { passes } => Some(u16::from(passes)),
        State::Tight | State::On => Some(u16::MAX),
        _ => None,
    };
    match (on(to), on(state)) {
        (Some(to), Some(state)) => state >= to,
        (None, _) => state == to || to == State::Cracked && state == State::Out,
        _ => false,
    }
}

fn doing(item: &Item, to: State) -> String {
    let passes = item.pattern.as_ref().map_or(0, |p| p.passes.len());
    match to {
        State::Loose { passes: 0 } => words::on_by_hand().to_owned(),
        State::Loose { passes } => words::pass(passes),
        State::Tight if passes > 1 => words::pass(passes),
        State::Tight if item.kind == Kind::Fasteners => words::tight().to_owned(),
        state => crate::say::state(item.kind, state).to_owned(),
    }
}

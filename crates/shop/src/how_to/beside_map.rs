//! What happened on a job beside the version of the map that it was worked by.

use crate::phrases::shop as words;
use crate::planning::{in_order, need_words};
use crate::say::Names;
use map::{Map, MapItem};
use repair::{Account, Fact, ItemId, Move, Need, Order, Position, State};
use std::collections::{BTreeMap, BTreeSet};

/// A job beside its map.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BesideMap {
    /// The map's name in addresses.
    pub map: String,
    /// Its vehicle, as people call it.
    pub vehicle: String,
    /// The version that the order keeps.
    pub version: u32,
    /// What went otherwise than the map says, each in a sentence; empty where nothing did.
    pub apart: Vec<String>,
}

type Stands<'a> = BTreeMap<&'a ItemId, BTreeMap<Position, State>>;

/// What went otherwise than the map says: what came off before what it needs, and what the map
/// does not know.
pub(super) fn apart(
    order: &Order,
    account: &Account,
    names: &Names<'_>,
    map: &Map,
    away: impl Fn(&Move) -> bool,
) -> Vec<String> {
    let on_map: BTreeMap<ItemId, &ItemId> = map
        .items
        .keys()
        .map(|item| (account.moves.name(&in_order(item)).clone(), item))
        .collect();
    let mut stands: Stands<'_> = map
        .items
        .iter()
        .map(|(item, known)| {
            let pieces = (1..=known.count.max(1)).map(|at| (at, known.kind.home()));
            (item, pieces.collect())
        })
        .collect();
    let mut said: Vec<String> = Vec::new();
    let mut unknown: BTreeSet<String> = BTreeSet::new();
    for (made, moves) in told(order) {
        let before = stands.clone();
        let mut off = Vec::new();
        for change in moves {
            let id = account.moves.name(&change.item);
            let came_off = made && away(change);
            let Some(item) = on_map.get(id).copied() else {
                unknown.extend(came_off.then(|| names.label(id)));
                continue;
            };
            if came_off {
                off.push((id, item, change.left.state));
            }
            let pieces = stands.entry(item).or_default();
            pieces.extend(change.at.iter().map(|at| (*at, change.left.state)));
        }
        for (id, item, to) in off {
            let needs = broken(&map.items[item], (item, to), &before, &stands);
            let needs: Vec<String> = needs
                .into_iter()
                .filter_map(|need| need_words(map, need))
                .collect();
            if needs.is_empty() {
                continue;
            }
            let line = words::came_off_before(names.label(id), needs.join(", "));
            if !said.contains(&line) {
                said.push(line);
            }
        }
    }
    if !unknown.is_empty() {
        let unknown: Vec<String> = unknown.into_iter().collect();
        said.push(words::not_on_the_map(unknown.join(", ")));
    }
    said
}

/// The moves that were told in one go, in their sequence; and whether somebody made them, rather
/// than found things so.
fn told(order: &Order) -> Vec<(bool, Vec<&Move>)> {
    let undone = order.undone();
    let mut told: Vec<_> = order
        .facts()
        .filter(|(_, filed)| {
            let fact = &filed.fact;
            matches!(
                fact,
                Fact::Moved { .. } | Fact::Found { .. } | Fact::Seen { .. }
            )
        })
        .collect();
    told.sort_by_key(|(_, filed)| filed.stamp.at);
    let stands = told.into_iter().map(|(command, filed)| {
        let made = matches!(filed.fact, Fact::Moved { .. });
        let all = (0_u16..).zip(filed.fact.moves());
        let stands = all.filter(|(nth, _)| !undone.moves.contains(&(command.clone(), *nth)));
        (made, stands.map(|(_, change)| change).collect())
    });
    stands.collect()
}

/// What the map needs for a thing to get into this state, and did not have. In what was told in
/// one go nobody says which came first: a need that held before it or after it held.
fn broken<'m>(
    known: &'m MapItem,
    (item, to): (&ItemId, State),
    before: &Stands<'_>,
    after: &Stands<'_>,
) -> Vec<&'m Need> {
    let leads = |state: State| known.moves.iter().position(|made| made.to == state.rung());
    let Some(last) = leads(to) else {
        return Vec::new();
    };
    let now = before.get(item).into_iter().flat_map(BTreeMap::values);
    let next = now.filter_map(|state| leads(*state)).max();
    let passed = known.moves.iter().take(last + 1);
    let passed = passed.skip(next.map_or(0, |made| made + 1));
    let mut out = Vec::new();
    for made in passed {
        not_held(&made.need, before, after, &mut out);
    }
    out
}

fn not_held<'m>(need: &'m Need, before: &Stands<'_>, after: &Stands<'_>, out: &mut Vec<&'m Need>) {
    match need {
        Need::All(needs) => {
            for need in needs {
                not_held(need, before, after, out);
            }
        }
        Need::Any(needs) => {
            let held = |need: &Need| {
                let mut lacks = Vec::new();
                not_held(need, before, after, &mut lacks);
                lacks.is_empty()
            };
            if !needs.iter().any(held) {
                out.push(need);
            }
        }
        Need::Is { .. } => {
            let held = |stands: &Stands<'_>| {
                need.holds(&|item: &ItemId| {
                    let pieces = stands.get(item).into_iter().flatten();
                    pieces.map(|(at, state)| (*at, *state)).collect()
                })
            };
            if !held(before) && !held(after) {
                out.push(need);
            }
        }
    }
}

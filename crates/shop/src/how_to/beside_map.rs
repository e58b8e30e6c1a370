//! What happened on a job beside the version of the map that it was worked by.

use crate::phrases::shop as words;
use crate::planning::{in_order, need_words};
use crate::say::Names;
use map::{Map, MapItem};
use repair::{Account, Fact, ItemId, Order, Position, State};
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
    away: impl Fn(&repair::Move) -> bool,
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
    for (came_off, change) in told(order) {
        let id = account.moves.name(&change.item);
        let came_off = came_off && away(change);
        let Some(item) = on_map.get(id).copied() else {
            unknown.extend(came_off.then(|| names.label(id)));
            continue;
        };
        let known = &map.items[item];
        if came_off {
            let needs = needs_broken(map, item, known, change.left.state, &stands);
            for need in needs {
                let line = words::came_off_before(names.label(id), need);
                if !said.contains(&line) {
                    said.push(line);
                }
            }
        }
        let pieces = stands.entry(item).or_default();
        pieces.extend(change.at.iter().map(|at| (*at, change.left.state)));
    }
    if !unknown.is_empty() {
        let unknown: Vec<String> = unknown.into_iter().collect();
        said.push(words::not_on_the_map(unknown.join(", ")));
    }
    said
}

/// Every move in the sequence in which it was told, and whether somebody made it, rather than
/// found things so.
fn told(order: &Order) -> impl Iterator<Item = (bool, &repair::Move)> {
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
    told.into_iter().flat_map(move |(command, filed)| {
        let moved = matches!(filed.fact, Fact::Moved { .. });
        let all = (0_u16..).zip(filed.fact.moves());
        let stands: Vec<_> = all
            .filter(|(nth, _)| !undone.moves.contains(&(command.clone(), *nth)))
            .map(|(_, change)| (moved, change))
            .collect();
        stands
    })
}

/// What the map needs for a thing to get into this state from where it stands, and did not have,
/// in words.
fn needs_broken(
    map: &Map,
    item: &ItemId,
    known: &MapItem,
    to: State,
    stands: &Stands<'_>,
) -> Vec<String> {
    let Some(last) = known.moves.iter().position(|made| made.to == to.rung()) else {
        return Vec::new();
    };
    let is = |state: State| known.moves.iter().position(|made| made.to == state.rung());
    let now = stands.get(item).into_iter().flat_map(BTreeMap::values);
    let next = now
        .filter_map(|state| is(*state))
        .max()
        .map_or(0, |made| made + 1);
    let stand = |item: &ItemId| -> Vec<(Position, State)> {
        let pieces = stands.get(item).into_iter().flatten();
        pieces.map(|(at, state)| (*at, *state)).collect()
    };
    let passed = known.moves.iter().take(last + 1).skip(next);
    let broken = passed.filter(|made| !made.need.holds(&stand));
    broken
        .filter_map(|made| need_words(map, &made.need))
        .collect()
}

//! What is known of each item: as declared, then as told by whoever knew better.
//!
//! A telling names those it had seen, under whatever name the item went by then. Of
//! tellings that nobody has seen past there may be several: then all are kept.

use crate::fact::Fact;
use crate::ids::CommandId;
use crate::item::{Item, Pattern, Piece};
use crate::moves::Moves;
use crate::order::Order;
use crate::text::{Token, Words};
use crate::told::{Seen, Telling};
use crate::trade::Trade;
use states::{ItemId, Position, System, Zone};
use std::collections::{BTreeMap, BTreeSet};

/// What people told of one item apart, as long as nobody who saw it has settled it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct ToldApart {
    /// The item once for each system and zone told; one entry where these are not apart.
    pub readings: Vec<Item>,
    /// The sizes told.
    pub sizes: Vec<Token>,
    /// The torques told.
    pub patterns: Vec<Pattern>,
    /// The counts told.
    pub counts: Vec<usize>,
}

impl ToldApart {
    fn says_nothing(&self) -> bool {
        self.readings.len() < 2
            && self.sizes.is_empty()
            && self.patterns.is_empty()
            && self.counts.is_empty()
    }
}

/// Every item under its one name, and what is told of it apart.
pub(crate) type Known = (BTreeMap<ItemId, Item>, BTreeMap<ItemId, ToldApart>);

/// Reads the items off an order.
pub(crate) fn items(order: &Order, moves: &Moves) -> Known {
    let mut spoken: BTreeMap<ItemId, Spoken<'_>> = BTreeMap::new();
    for (command, filed) in order.beside_moves() {
        let Some(item) = spoken_of(&filed.fact) else {
            continue;
        };
        let name = moves.name(item).clone();
        spoken.entry(name).or_default().take(command, &filed.fact);
    }
    let seen = Seen::of(order, tellings_seen);
    let mut items = BTreeMap::new();
    let mut apart = BTreeMap::new();
    for (name, spoken) in spoken {
        let Some((item, told)) = spoken.known_as(&name, &seen) else {
            continue;
        };
        if !told.says_nothing() {
            apart.insert(name.clone(), told);
        }
        items.insert(name, item);
    }
    (items, apart)
}

/// All that was said of one item.
#[derive(Default)]
struct Spoken<'a> {
    declared: Vec<&'a Item>,
    counts: Vec<Telling<'a, &'a Vec<Piece>>>,
    labels: Vec<Telling<'a, &'a Words>>,
    places: Vec<Telling<'a, (System, Zone)>>,
    sizes: Vec<Telling<'a, &'a Token>>,
    patterns: Vec<Telling<'a, &'a Pattern>>,
    trades: Vec<Telling<'a, &'a Trade>>,
}

impl<'a> Spoken<'a> {
    fn take(&mut self, command: &'a CommandId, fact: &'a Fact) {
        match fact {
            Fact::Declared { item } => self.declared.push(item),
            Fact::CountCorrected { pieces, after, .. } => {
                self.counts.push((command, pieces, after));
            }
            Fact::Renamed { label, after, .. } => self.labels.push((command, label, after)),
            Fact::Located {
                system,
                zone,
                after,
                ..
            } => self.places.push((command, (*system, *zone), after)),
            Fact::SizeTold { size, after, .. } => self.sizes.push((command, size, after)),
            Fact::TorqueTold { pattern, after, .. } => {
                self.patterns.push((command, pattern, after));
            }
            Fact::TradeTold { trade, after, .. } => self.trades.push((command, trade, after)),
            _ => {}
        }
    }

    /// The item as gates read it, and what is apart; nothing if nobody declared it.
    fn known_as(&self, name: &ItemId, seen: &Seen<'a>) -> Option<(Item, ToldApart)> {
        let first = *self.declared.first()?;
        let mut item = Item {
            id: name.clone(),
            ..first.clone()
        };
        let mut apart = ToldApart::default();
        if let Some(label) = seen.heads(&self.labels).pop() {
            item.label = *label;
        }
        let counts = or_declared(seen.heads(&self.counts), &self.declared, |item| {
            (!item.pieces.is_empty()).then_some(&item.pieces)
        });
        if !counts.is_empty() {
            item.pieces = all_positions(&counts);
        }
        let mut lengths: Vec<usize> = counts.iter().map(|pieces| pieces.len()).collect();
        lengths.sort_unstable();
        lengths.dedup();
        if lengths.len() > 1 {
            apart.counts = lengths;
        }
        let sizes = or_declared(seen.heads(&self.sizes), &self.declared, |item| {
            item.size.as_ref()
        });
        (item.size, apart.sizes) = one_or_all(sizes);
        let patterns = or_declared(seen.heads(&self.patterns), &self.declared, |item| {
            item.pattern.as_ref()
        });
        (item.pattern, apart.patterns) = one_or_all(patterns);
        let trades = or_declared(seen.heads(&self.trades), &self.declared, |item| {
            item.trade.as_ref()
        });
        item.trade = Trade::together(&trades);
        apart.readings = self.readings(&item, seen);
        if let Some(strictest) = apart.readings.iter().max_by_key(|item| strictness(item)) {
            item = strictest.clone();
        }
        Some((item, apart))
    }

    /// The item once for each place told. Who does not know its system claims nothing
    /// beside somebody who does.
    fn readings(&self, item: &Item, seen: &Seen<'a>) -> Vec<Item> {
        let mut places: BTreeSet<(System, Zone)> = seen.heads(&self.places).into_iter().collect();
        if places.is_empty() {
            places.extend(self.declared.iter().map(|item| (item.system, item.zone)));
        }
        if places.iter().any(|(system, _)| *system != System::Unknown) {
            places.retain(|(system, _)| *system != System::Unknown);
        }
        places
            .into_iter()
            .map(|(system, zone)| Item {
                system,
                zone,
                ..item.clone()
            })
            .collect()
    }
}

/// What was told; where nothing was, what was declared.
fn or_declared<'a, T: ?Sized>(
    told: Vec<&'a T>,
    declared: &[&'a Item],
    of: impl Fn(&'a Item) -> Option<&'a T>,
) -> Vec<&'a T> {
    if told.is_empty() {
        return declared.iter().filter_map(|item| of(item)).collect();
    }
    told
}

/// The one value, or none and all of them where they differ.
fn one_or_all<T: Clone + PartialEq>(values: Vec<&T>) -> (Option<T>, Vec<T>) {
    let mut distinct: Vec<T> = Vec::new();
    for value in values {
        if !distinct.contains(value) {
            distinct.push(value.clone());
        }
    }
    match distinct.as_slice() {
        [] => (None, distinct),
        [one] => (Some(one.clone()), Vec::new()),
        _ => (None, distinct),
    }
}

/// Every position of any count, with the first length told of it.
fn all_positions(counts: &[&Vec<Piece>]) -> Vec<Piece> {
    let mut out: BTreeMap<Position, Piece> = BTreeMap::new();
    for piece in counts.iter().flat_map(|pieces| pieces.iter()) {
        out.entry(piece.position).or_insert_with(|| piece.clone());
    }
    out.into_values().collect()
}

/// How strictly a reading is judged where only one can be: the safety class first.
fn strictness(item: &Item) -> (bool, bool, bool) {
    (
        item.is_safety(),
        item.system.stops_without_fluid(),
        item.system.runs(),
    )
}

/// What was told of each item after it was declared, by its one name: the commands, for a
/// device to name as seen when it tells better.
#[must_use]
pub fn told_of_items(order: &Order, moves: &Moves) -> BTreeMap<ItemId, Vec<CommandId>> {
    let mut out: BTreeMap<ItemId, Vec<CommandId>> = BTreeMap::new();
    for (command, filed) in order.beside_moves() {
        if matches!(filed.fact, Fact::Declared { .. }) {
            continue;
        }
        if let Some(item) = spoken_of(&filed.fact) {
            let name = moves.name(item).clone();
            out.entry(name).or_default().push(command.clone());
        }
    }
    out
}

/// The tellings of items that the author of one had seen.
fn tellings_seen(fact: &Fact) -> Option<&Vec<CommandId>> {
    match fact {
        Fact::CountCorrected { after, .. }
        | Fact::Renamed { after, .. }
        | Fact::Located { after, .. }
        | Fact::SizeTold { after, .. }
        | Fact::TorqueTold { after, .. }
        | Fact::TradeTold { after, .. } => Some(after),
        _ => None,
    }
}

/// The item that a declaration or a telling speaks of.
pub(crate) fn spoken_of(fact: &Fact) -> Option<&ItemId> {
    match fact {
        Fact::Declared { item } => Some(&item.id),
        Fact::CountCorrected { item, .. }
        | Fact::Renamed { item, .. }
        | Fact::Located { item, .. }
        | Fact::SizeTold { item, .. }
        | Fact::TorqueTold { item, .. }
        | Fact::TradeTold { item, .. } => Some(item),
        _ => None,
    }
}

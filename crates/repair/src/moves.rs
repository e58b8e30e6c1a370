//! Moves as a graph of who had seen what, and where each piece stands by it.
//!
//! A move names the moves its author had seen. The state of a piece is what nobody
//! has seen past: the *heads*. Two devices that moved the same piece apart leave two
//! heads, and both are kept until somebody looks. Nothing here depends on arrival or
//! on clocks.

use crate::code::{Move, PieceIs, Stand};
use crate::fact::Fact;
use crate::grown::{GrownList, GrownMap};
use crate::ids::{CommandId, MoveId};
use crate::order::{Filed, Order, Stamp};
use states::{ItemId, Position, State};
use std::borrow::Cow;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// How a move was stated.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Stated {
    /// Found so.
    Found,
    /// Moved so.
    Moved,
    /// Seen so.
    Seen,
}

/// One move with all that is known of it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Node {
    pub change: Move,
    /// Who and when.
    pub stamp: Stamp,
    /// How it was stated.
    pub stated: Stated,
    /// Whether it stands; one that was taken back only passes on what it had seen.
    pub live: bool,
}

/// All moves of an order, with items that are one thing under one name.
///
/// Every move has a number here, and what it had seen is kept by number: who saw what is
/// asked for each piece of every item, and orders have thousands of moves.
#[derive(Debug, Clone, Default)]
pub struct Moves {
    ids: GrownList<MoveId>,
    nodes: GrownList<Arc<Node>>,
    numbers: GrownMap<MoveId, usize>,
    /// The moves each had seen, as far as they are known.
    after: GrownList<Arc<[usize]>>,
    /// Moves that others had seen, and that have not arrived.
    awaited: BTreeSet<MoveId>,
    /// The moves of each item, in the sequence of their names: whichever arrived first.
    by_item: BTreeMap<ItemId, Vec<usize>>,
    heads: BTreeMap<ItemId, BTreeMap<Position, Vec<usize>>>,
    one_thing: BTreeMap<ItemId, ItemId>,
}

impl Moves {
    /// Reads the moves off an order.
    #[must_use]
    pub fn of(order: &Order) -> Self {
        let mut out = Self {
            one_thing: one_thing(order),
            ..Self::default()
        };
        let undone = order.undone();
        let mut counted: BTreeMap<&CommandId, u16> = BTreeMap::new();
        for (command, filed) in order.story() {
            let stated = stated(&filed.fact);
            // A command may carry several facts: its moves are counted through them all.
            let next = counted.entry(command).or_default();
            for (nth, change) in (*next..=u16::MAX).zip(said(&filed.fact).iter()) {
                *next = nth.saturating_add(1);
                let id = MoveId {
                    command: command.clone(),
                    nth,
                };
                let live = !undone.commands.contains(command)
                    && !undone.moves.contains(&(command.clone(), nth));
                let node = Node {
                    change: change.clone(),
                    stamp: filed.stamp.clone(),
                    stated,
                    live,
                };
                out.take(id, node);
            }
        }
        out.numbers = out.ids.from(0).cloned().zip(0..).collect();
        out.tie();
        out
    }

    /// Gives a move the next number.
    fn take(&mut self, id: MoveId, node: Node) {
        let number = self.nodes.len();
        let item = self.name(&node.change.item).clone();
        self.by_item.entry(item).or_default().push(number);
        self.ids.push(id);
        self.nodes.push(Arc::new(node));
    }

    /// Whether this is the first that is heard of a command's moves, and nobody had seen them.
    pub(crate) fn is_new_to(&self, command: &CommandId, fact: &Fact) -> bool {
        let id = |nth| MoveId {
            command: command.clone(),
            nth,
        };
        let all = || id(0)..=id(u16::MAX);
        !says_moves(fact)
            || self.numbers.range(all()).next().is_none()
                && self.awaited.range(all()).next().is_none()
    }

    /// Adds the moves of a fact that [is new](Self::is_new_to). Answers the items they moved.
    pub(crate) fn add(&mut self, command: &CommandId, filed: &Filed) -> BTreeSet<ItemId> {
        let first = self.nodes.len();
        for (nth, change) in (0..=u16::MAX).zip(said(&filed.fact).iter()) {
            let id = MoveId {
                command: command.clone(),
                nth,
            };
            let node = Node {
                change: change.clone(),
                stamp: filed.stamp.clone(),
                stated: stated(&filed.fact),
                live: true,
            };
            self.numbers.insert(id.clone(), self.nodes.len());
            self.take(id, node);
        }
        self.see(first);
        let mut moved: BTreeMap<ItemId, BTreeSet<Position>> = BTreeMap::new();
        for node in self.nodes.from(first) {
            let item = self.name(&node.change.item).clone();
            moved.entry(item).or_default().extend(&node.change.at);
        }
        for (item, positions) in &moved {
            let Self { by_item, ids, .. } = self;
            let numbers = by_item.entry(item.clone()).or_default();
            numbers.sort_by(|a, b| ids[*a].cmp(&ids[*b]));
            for at in positions {
                let heads = self.heads_among(item, *at, &|_| true);
                let of_item = self.heads.entry(item.clone()).or_default();
                of_item.insert(*at, heads);
            }
        }
        moved.into_keys().collect()
    }

    /// Whom the moves from this one on had seen.
    fn see(&mut self, first: usize) {
        for node in self.nodes.from(first) {
            let known = |id: &MoveId| self.numbers.get(id).copied();
            let seen = node.change.after.iter().filter_map(known);
            self.after.push(seen.collect());
            let unknown = node.change.after.iter();
            let unknown = unknown.filter(|id| !self.numbers.contains_key(id));
            self.awaited.extend(unknown.cloned());
        }
    }

    /// Who saw whom, and so the heads of every piece.
    fn tie(&mut self) {
        self.see(0);
        let of_item = |item: &ItemId| {
            let spoken_of: BTreeSet<Position> = self
                .live(item)
                .flat_map(|(_, node)| node.change.at.iter().copied())
                .collect();
            let heads = |at: Position| (at, self.heads_among(item, at, &|_| true));
            spoken_of.into_iter().map(heads).collect()
        };
        self.heads = self
            .by_item
            .keys()
            .map(|item| (item.clone(), of_item(item)))
            .collect();
    }

    /// The one name an item goes by, whatever name it was called.
    #[must_use]
    pub fn name<'a>(&'a self, item: &'a ItemId) -> &'a ItemId {
        self.one_thing.get(item).unwrap_or(item)
    }

    /// The items that were moved, found or seen.
    pub fn items(&self) -> impl Iterator<Item = &ItemId> {
        self.by_item
            .iter()
            .filter(|(_, moves)| moves.iter().any(|number| self.nodes[*number].live))
            .map(|(item, _)| item)
    }

    #[must_use]
    pub fn get(&self, id: &MoveId) -> Option<&Node> {
        self.numbers
            .get(id)
            .map(|number| self.nodes[*number].as_ref())
    }

    /// The moves of an item that stand.
    pub fn live(&self, item: &ItemId) -> impl Iterator<Item = (&MoveId, &Node)> + use<'_> {
        self.numbers_of(item)
            .map(|number| (&self.ids[number], self.nodes[number].as_ref()))
    }

    fn numbers_of(&self, item: &ItemId) -> impl Iterator<Item = usize> + use<'_> {
        self.by_item
            .get(self.name(item))
            .into_iter()
            .flatten()
            .copied()
            .filter(|number| self.nodes[*number].live)
    }

    /// Everything these moves had seen, themselves included.
    #[must_use]
    pub fn seen_by<'a>(
        &'a self,
        from: impl IntoIterator<Item = &'a MoveId>,
    ) -> BTreeSet<&'a MoveId> {
        let mut out = BTreeSet::new();
        let mut known = Vec::new();
        for id in from {
            out.insert(id);
            known.extend(self.numbers.get(id));
        }
        for (number, seen) in self.reached(known).into_iter().enumerate() {
            if seen {
                out.insert(&self.ids[number]);
                // What has not arrived is seen all the same.
                out.extend(&self.nodes[number].change.after);
            }
        }
        out
    }

    /// Which moves these had seen, themselves included, by number.
    fn reached(&self, mut todo: Vec<usize>) -> Vec<bool> {
        let mut seen = vec![false; self.nodes.len()];
        while let Some(number) = todo.pop() {
            if !std::mem::replace(&mut seen[number], true) {
                todo.extend(self.after[number].iter());
            }
        }
        seen
    }

    /// The moves of the same stage that were made before this one: a stage is one command,
    /// its moves stand in their sequence.
    pub fn before_in_stage<'a>(&'a self, id: &'a MoveId) -> impl Iterator<Item = &'a MoveId> {
        let first = MoveId {
            command: id.command.clone(),
            nth: 0,
        };
        self.numbers.range(first..id.clone()).map(|(id, _)| id)
    }

    /// The heads of one piece: the moves there that no other move there has seen.
    #[must_use]
    pub fn heads(&self, item: &ItemId, position: Position) -> Vec<(&MoveId, &Node)> {
        let heads = self.heads.get(self.name(item));
        let heads = heads.and_then(|heads| heads.get(&position));
        self.named(heads.map_or(&[], Vec::as_slice))
    }

    /// The heads of one piece among the moves that someone had seen.
    #[must_use]
    pub fn heads_seen(
        &self,
        item: &ItemId,
        position: Position,
        seen: &BTreeSet<&MoveId>,
    ) -> Vec<(&MoveId, &Node)> {
        self.named(&self.heads_of_some(item, position, &|number| seen.contains(&self.ids[number])))
    }

    /// The heads of one piece among the moves that were stated so.
    #[must_use]
    pub fn heads_stated(
        &self,
        item: &ItemId,
        position: Position,
        stated: Stated,
    ) -> Vec<(&MoveId, &Node)> {
        self.named(&self.heads_of_some(item, position, &|number| {
            self.nodes[number].stated == stated
        }))
    }

    /// The heads of one piece among some moves. Where those of all are among them, it is those:
    /// each other move there was seen by one of them.
    fn heads_of_some(
        &self,
        item: &ItemId,
        position: Position,
        among: &dyn Fn(usize) -> bool,
    ) -> Vec<usize> {
        let of_all = self.heads.get(self.name(item));
        let of_all = of_all.and_then(|heads| heads.get(&position));
        match of_all {
            Some(heads) if heads.iter().all(|number| among(*number)) => heads.clone(),
            _ => self.heads_among(item, position, among),
        }
    }

    fn named(&self, numbers: &[usize]) -> Vec<(&MoveId, &Node)> {
        let named = |number: &usize| (&self.ids[*number], self.nodes[*number].as_ref());
        numbers.iter().map(named).collect()
    }

    fn heads_among(
        &self,
        item: &ItemId,
        position: Position,
        among: &dyn Fn(usize) -> bool,
    ) -> Vec<usize> {
        let here: Vec<usize> = self
            .numbers_of(item)
            .filter(|number| self.nodes[*number].change.at.contains(&position))
            .filter(|number| among(*number))
            .collect();
        if here.len() < 2 {
            return here;
        }
        let from = here.iter().flat_map(|number| self.after[*number].iter());
        let passed = self.reached(from.copied().collect());
        let heads: Vec<_> = here
            .iter()
            .copied()
            .filter(|number| !passed[*number])
            .collect();
        // Moves that claim to have seen each other in a circle leave no head: keep all.
        if heads.is_empty() { here } else { heads }
    }

    /// The positions that moves of an item speak of.
    #[must_use]
    pub fn positions(&self, item: &ItemId) -> BTreeSet<Position> {
        let heads = self.heads.get(self.name(item)).into_iter().flatten();
        heads.map(|(position, _)| *position).collect()
    }

    /// The heads of every piece of an item: what a device sends as seen.
    #[must_use]
    pub fn frontier(&self, item: &ItemId) -> BTreeSet<MoveId> {
        let heads = self.heads.get(self.name(item)).into_iter().flatten();
        heads
            .flat_map(|(_, numbers)| numbers)
            .map(|number| self.ids[*number].clone())
            .collect()
    }

    /// The stands that heads claim for one piece.
    #[must_use]
    pub fn stands(&self, item: &ItemId, position: Position) -> BTreeSet<Stand> {
        self.heads(item, position)
            .into_iter()
            .map(|(_, node)| node.change.left)
            .collect()
    }
}

fn stated(fact: &Fact) -> Stated {
    match fact {
        Fact::Found { .. } => Stated::Found,
        Fact::Seen { .. } | Fact::LevelSeen { .. } => Stated::Seen,
        _ => Stated::Moved,
    }
}

/// Whether a fact carries moves.
pub(crate) fn says_moves(fact: &Fact) -> bool {
    !said(fact).is_empty()
}

/// The moves a fact carries. A level that was looked at is a look at its fluid: right, it
/// stands at its level; not right, it is low until somebody who knew of that says otherwise.
fn said(fact: &Fact) -> Cow<'_, [Move]> {
    match fact {
        Fact::LevelSeen {
            item, good, after, ..
        } => Cow::Owned(vec![Move {
            item: item.clone(),
            at: vec![1],
            after: after.clone(),
            left: Stand {
                state: if *good { State::AtLevel } else { State::Low },
                piece: PieceIs::Original,
            },
            container: None,
        }]),
        fact => Cow::Borrowed(fact.moves()),
    }
}

/// Gathers names of one thing under the least of them.
fn one_thing(order: &Order) -> BTreeMap<ItemId, ItemId> {
    let mut least: BTreeMap<ItemId, ItemId> = BTreeMap::new();
    for (_, filed) in order.beside_moves() {
        let Fact::SameAs { item, also } = &filed.fact else {
            continue;
        };
        let find = |name: &ItemId, least: &BTreeMap<ItemId, ItemId>| {
            least.get(name).cloned().unwrap_or_else(|| name.clone())
        };
        let (a, b) = (find(item, &least), find(also, &least));
        let (root, other) = if a <= b { (a, b) } else { (b, a) };
        for value in least.values_mut().filter(|value| **value == other) {
            value.clone_from(&root);
        }
        least.insert(other, root.clone());
        least.insert(item.clone(), root.clone());
        least.insert(also.clone(), root);
    }
    least
}

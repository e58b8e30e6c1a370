//! The way in to an item: what must be out of the way first, and what before that.

use crate::value::Map;
use states::{ItemId, Kind, Need};
use std::collections::{BTreeMap, BTreeSet};

/// What an item needs first, each with whether it is one of several of which one is
/// enough.
pub type Firsts = BTreeMap<ItemId, bool>;

impl Map {
    /// The items that must have left their home before this one can.
    ///
    /// What it needs at home is not among them, nor are alternatives to that: such a
    /// need is met before anybody starts.
    #[must_use]
    pub fn firsts(&self, item: &ItemId) -> Firsts {
        let mut firsts = Firsts::new();
        let moves = self.items.get(item).map_or(&[][..], |known| &known.moves);
        for step in moves {
            self.collect(&step.need, false, &mut firsts);
        }
        firsts.remove(item);
        firsts
    }

    /// These items and everything on the ways in to them, alternatives included.
    #[must_use]
    pub fn way_in(&self, targets: &BTreeSet<ItemId>) -> BTreeSet<ItemId> {
        let known = |item: &ItemId| self.items.contains_key(item);
        let mut open: Vec<ItemId> = targets.iter().filter(|item| known(item)).cloned().collect();
        let mut way = BTreeSet::new();
        while let Some(item) = open.pop() {
            if way.insert(item.clone()) {
                open.extend(self.firsts(&item).into_keys().filter(known));
            }
        }
        way
    }

    /// The item with the longest list on its way in: what the map is about, if nobody
    /// says otherwise. Of several, the first by name.
    #[must_use]
    pub fn deepest(&self) -> Option<&ItemId> {
        let things = self
            .items
            .iter()
            .filter(|(_, item)| item.kind != Kind::PutIn);
        let way = |item: &ItemId| self.way_in(&[item.clone()].into()).len();
        things
            .map(|(id, _)| id)
            .max_by_key(|id| (way(id), std::cmp::Reverse((*id).clone())))
    }

    fn collect(&self, need: &Need, either: bool, firsts: &mut Firsts) {
        match need {
            Need::Is { item, .. } => {
                if !self.at_home(need) {
                    *firsts.entry(item.clone()).or_insert(either) &= either;
                }
            }
            Need::All(needs) => needs
                .iter()
                .for_each(|need| self.collect(need, either, firsts)),
            Need::Any(needs) if needs.iter().any(|need| self.at_home(need)) => {}
            Need::Any(needs) => {
                let either = either || needs.len() > 1;
                needs
                    .iter()
                    .for_each(|need| self.collect(need, either, firsts));
            }
        }
    }

    /// Whether a need holds while everything is at home.
    fn at_home(&self, need: &Need) -> bool {
        match need {
            Need::Is { item, states, .. } => {
                let known = self.items.get(item);
                known.is_some_and(|known| states.contains(&known.kind.home()))
            }
            Need::All(needs) => needs.iter().all(|need| self.at_home(need)),
            Need::Any(needs) => needs.iter().any(|need| self.at_home(need)),
        }
    }
}

//! Names that people have confirmed to mean one thing.

use states::ItemId;
use std::collections::{BTreeMap, BTreeSet};

/// Names that mean one thing, as people have confirmed it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Joins(BTreeMap<ItemId, ItemId>);

impl Joins {
    /// From pairs of another name and the name that is kept. Where pairs go round, or one
    /// thing would keep two names, the least of the names is kept.
    #[must_use]
    pub fn new(pairs: impl IntoIterator<Item = (ItemId, ItemId)>) -> Self {
        let pairs: BTreeSet<_> = pairs.into_iter().collect();
        let mut group: BTreeMap<&ItemId, BTreeSet<&ItemId>> = BTreeMap::new();
        for (other, kept) in &pairs {
            let mut all: BTreeSet<&ItemId> = [other, kept].into();
            for name in [other, kept] {
                all.extend(group.get(name).into_iter().flatten());
            }
            for name in all.clone() {
                group.insert(name, all.clone());
            }
        }
        let others: BTreeSet<&ItemId> = pairs.iter().map(|(other, _)| other).collect();
        let name = |all: &BTreeSet<&ItemId>| {
            let kept = all.iter().find(|name| !others.contains(*name));
            kept.or(all.first()).map(|name| (*name).clone())
        };
        let named = |(one, all): (&&ItemId, &BTreeSet<&ItemId>)| Some(((*one).clone(), name(all)?));
        Self(group.iter().filter_map(named).collect())
    }

    /// The name that an item goes by.
    #[must_use]
    pub fn name<'n>(&'n self, item: &'n ItemId) -> &'n ItemId {
        self.0.get(item).unwrap_or(item)
    }

    /// Whether two names were joined.
    #[must_use]
    pub fn joined(&self, one: &ItemId, other: &ItemId) -> bool {
        self.name(one) == self.name(other)
    }
}

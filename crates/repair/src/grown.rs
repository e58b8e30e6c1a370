//! What only grows, kept so that more can be added while others still look at what was there
//! before: what came lately lies apart, and is small, and the rest is shared.

use std::collections::BTreeMap;
use std::collections::btree_map::Range;
use std::iter::Peekable;
use std::ops::{Index, RangeBounds};
use std::sync::Arc;

/// So many may lie apart at least, before they are brought together with the rest.
const LEAST_APART: usize = 64;
/// Of what has grown long, the part of it that may.
const PART_APART: usize = 64;

fn is_due(apart: usize, settled: usize) -> bool {
    apart > LEAST_APART.max(settled / PART_APART)
}

/// A map that only grows. A copy shares what it can.
#[derive(Debug, Clone)]
pub(crate) struct GrownMap<K, V> {
    /// Shared with whoever looks.
    settled: Arc<BTreeMap<K, V>>,
    /// Added since; none of them is among the settled.
    recent: BTreeMap<K, V>,
}

impl<K, V> Default for GrownMap<K, V> {
    fn default() -> Self {
        Self {
            settled: Arc::default(),
            recent: BTreeMap::new(),
        }
    }
}

impl<K: Ord, V> FromIterator<(K, V)> for GrownMap<K, V> {
    fn from_iter<I: IntoIterator<Item = (K, V)>>(all: I) -> Self {
        Self {
            settled: Arc::new(all.into_iter().collect()),
            recent: BTreeMap::new(),
        }
    }
}

impl<K: Ord + Clone, V: Clone> GrownMap<K, V> {
    pub(crate) fn is_empty(&self) -> bool {
        self.settled.is_empty() && self.recent.is_empty()
    }

    pub(crate) fn get(&self, key: &K) -> Option<&V> {
        self.recent.get(key).or_else(|| self.settled.get(key))
    }

    pub(crate) fn contains_key(&self, key: &K) -> bool {
        self.get(key).is_some()
    }

    /// Adds what is not there yet.
    pub(crate) fn insert(&mut self, key: K, value: V) {
        self.recent.insert(key, value);
        if is_due(self.recent.len(), self.settled.len()) {
            let recent = std::mem::take(&mut self.recent);
            // One by one: bringing two maps together would make the whole of both anew.
            Arc::make_mut(&mut self.settled).extend(recent);
        }
    }

    /// All of it, by key.
    pub(crate) fn iter(&self) -> Both<'_, K, V> {
        self.range(..)
    }

    /// A part of it, by key.
    pub(crate) fn range(&self, keys: impl RangeBounds<K> + Clone) -> Both<'_, K, V> {
        Both {
            settled: self.settled.range(keys.clone()).peekable(),
            recent: self.recent.range(keys).peekable(),
        }
    }
}

impl<K: Ord + Clone, V: Clone + PartialEq> PartialEq for GrownMap<K, V> {
    fn eq(&self, other: &Self) -> bool {
        self.iter().eq(other.iter())
    }
}

impl<K: Ord + Clone, V: Clone + Eq> Eq for GrownMap<K, V> {}

/// Two maps in one sequence.
pub(crate) struct Both<'a, K, V> {
    settled: Peekable<Range<'a, K, V>>,
    recent: Peekable<Range<'a, K, V>>,
}

impl<'a, K: Ord, V> Iterator for Both<'a, K, V> {
    type Item = (&'a K, &'a V);

    fn next(&mut self) -> Option<Self::Item> {
        match (self.settled.peek(), self.recent.peek()) {
            (Some((settled, _)), Some((recent, _))) if recent < settled => self.recent.next(),
            (None, _) => self.recent.next(),
            _ => self.settled.next(),
        }
    }
}

/// A list that only grows. A copy shares what it can.
#[derive(Debug, Clone)]
pub(crate) struct GrownList<T> {
    settled: Arc<Vec<T>>,
    recent: Vec<T>,
}

impl<T> Default for GrownList<T> {
    fn default() -> Self {
        Self {
            settled: Arc::default(),
            recent: Vec::new(),
        }
    }
}

impl<T: Clone> GrownList<T> {
    pub(crate) fn len(&self) -> usize {
        self.settled.len() + self.recent.len()
    }

    pub(crate) fn push(&mut self, one: T) {
        self.recent.push(one);
        if is_due(self.recent.len(), self.settled.len()) {
            Arc::make_mut(&mut self.settled).append(&mut self.recent);
        }
    }

    /// What stands from a place on.
    pub(crate) fn from(&self, first: usize) -> impl Iterator<Item = &T> {
        let settled = self.settled.get(first..).unwrap_or_default();
        let recent = first.saturating_sub(self.settled.len());
        settled
            .iter()
            .chain(self.recent.get(recent..).unwrap_or_default())
    }
}

impl<T> Index<usize> for GrownList<T> {
    type Output = T;

    fn index(&self, at: usize) -> &T {
        match at.checked_sub(self.settled.len()) {
            None => &self.settled[at],
            Some(at) => &self.recent[at],
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{GrownList, GrownMap};
    use std::collections::BTreeMap;

    /// Numbers in a sequence that is not their own.
    fn key(nth: usize) -> usize {
        (nth * 7_919) % 100_003
    }

    /// Against one map that holds all of it.
    #[test]
    fn a_map_holds_what_was_added_in_the_sequence_of_its_keys() {
        let mut grown = GrownMap::default();
        let mut plain = BTreeMap::new();
        for nth in 0..10_000 {
            assert!(!grown.contains_key(&key(nth)));
            grown.insert(key(nth), nth);
            plain.insert(key(nth), nth);
            assert_eq!(grown.get(&key(nth)), Some(&nth));
            if nth % 997 == 0 {
                assert!(grown.iter().eq(plain.iter()), "after {nth}");
                assert!(grown.range(500..60_000).eq(plain.range(500..60_000)));
            }
        }
        assert!(grown.iter().eq(plain.iter()));
        assert!(!grown.is_empty());
        let at_once: GrownMap<usize, usize> = plain.into_iter().collect();
        assert_eq!(at_once, grown);
    }

    #[test]
    fn a_list_holds_what_was_added() {
        let mut grown = GrownList::default();
        for nth in 0..10_000 {
            grown.push(key(nth));
            assert_eq!((grown.len(), grown[nth]), (nth + 1, key(nth)));
        }
        for first in [0, 1, 9_000, 9_999, 10_000, 20_000] {
            let rest: Vec<usize> = grown.from(first).copied().collect();
            assert_eq!(rest, (first..10_000).map(key).collect::<Vec<_>>());
        }
    }

    /// Whoever looks keeps seeing what they saw; in which sequence it came does not show.
    #[test]
    fn a_copy_stays_as_it_was() {
        let mut grown = GrownMap::default();
        let mut copies = Vec::new();
        for nth in 0..500 {
            copies.push((nth, grown.clone()));
            grown.insert(key(nth), nth);
        }
        for (nth, copy) in copies {
            assert_eq!(copy.iter().count(), nth);
        }
        let mut other = GrownMap::default();
        for nth in (0..500).rev() {
            other.insert(key(nth), nth);
        }
        assert_eq!(grown, other);
        other.insert(key(500), 500);
        assert_ne!(grown, other);
    }
}

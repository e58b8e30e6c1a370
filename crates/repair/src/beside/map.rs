//! A map, with every version of it that was kept.

use super::Beside;
use crate::order::Stamp;
use crate::text::File;
use std::collections::BTreeMap;

/// What stands in a map's stream.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum MapFact {
    /// A version of the map was kept, whether or not it can be planned by.
    Drafted {
        /// Its version, counted up from 1.
        version: u32,
        /// Its text as people wrote it.
        text: File,
    },
}

/// A map, with every version of it.
pub type MapDrafts = Beside<MapFact>;

impl MapDrafts {
    /// The versions, each with who kept it and its text. Whoever keeps a version has seen
    /// all before it, so that no two share a number; of two that did, the lesser command's
    /// would stand.
    #[must_use]
    pub fn versions(&self) -> BTreeMap<u32, (&Stamp, &File)> {
        let mut out = BTreeMap::new();
        for (_, stamp, MapFact::Drafted { version, text }) in self.facts() {
            out.entry(*version).or_insert((stamp, text));
        }
        out
    }
}

//! Caches: what a program has read off a log, kept beside it to be found quickly.
//!
//! A cache is cards in drawers, found by key in order, and a word on how far down the log
//! they stand. It can always be made again from the log, so it may be behind it, never
//! ahead of it, and nothing that is acknowledged rests on it.

use crate::row::{Hash, Head};

/// One card of a cache.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Card {
    /// What sort of card it is.
    pub drawer: String,
    /// What it is found by; cards of a drawer stand in the order of their keys' bytes.
    pub key: String,
    pub value: String,
    /// The private content that the value was made of. The card is kept only while that
    /// content is: erasing takes it along, and what was erased puts no card back.
    pub of: Option<Hash>,
}

/// Which cards are wanted.
#[derive(Debug, Clone, Copy)]
pub struct Wanted<'a> {
    pub drawer: &'a str,
    /// The first key, itself included.
    pub from: &'a str,
    /// The key before which to stop; none: the end of the drawer.
    pub below: Option<&'a str>,
    /// What the value must contain, if anything.
    pub containing: Option<&'a str>,
    /// The last key first.
    pub backwards: bool,
    pub most: usize,
}

/// A change of a cache, made whole or not at all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CacheChange {
    pub log: String,
    /// The cache's name. Another form of the cards is another cache.
    pub cache: String,
    /// Where the cache must stand now; `None`: nowhere yet.
    pub from: Option<Head>,
    /// Where it stands afterwards.
    pub to: Head,
    /// Drawers and keys of cards that go.
    pub remove: Vec<(String, String)>,
    /// Cards that come, in place of those under the same key.
    pub put: Vec<Card>,
}

impl<'a> Wanted<'a> {
    /// The end of the keys that are wanted, for a database to look up in its index.
    pub(crate) fn end(&self) -> &'a str {
        /// No key begins with this.
        const AFTER_ALL: &str = "\u{10ffff}";
        self.below.unwrap_or(AFTER_ALL)
    }

    /// The one card under a key.
    #[must_use]
    pub fn one(drawer: &'a str, key: &'a str) -> Self {
        Self {
            most: 1,
            ..Self::from(drawer, key)
        }
    }

    /// Every card from a key on.
    #[must_use]
    pub fn from(drawer: &'a str, key: &'a str) -> Self {
        Self {
            drawer,
            from: key,
            below: None,
            containing: None,
            backwards: false,
            most: usize::MAX,
        }
    }
}

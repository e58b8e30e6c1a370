//! A map, with every version of it that was kept, and what people said of its kind of vehicle.

use super::{Beside, Standing};
use crate::ids::{CommandId, MapId};
use crate::order::Stamp;
use crate::text::{File, Token, Words};
use states::{Position, State};
use std::collections::BTreeMap;

/// What somebody answered when asked whether one step could come before another.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CouldBe {
    /// It could.
    Yes,
    /// It could not: the other is needed first.
    No,
    /// Whoever was asked does not know.
    CannotSay,
}

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
    /// A person was asked whether the second step could come before the first.
    Answered {
        /// What was seen, or believed, to come first, by its name.
        first: Words,
        /// The state it is left in.
        first_to: State,
        /// What may have come before it.
        second: Words,
        /// The state that is left in.
        second_to: State,
        /// What was said.
        answer: CouldBe,
        /// The answers seen.
        after: Vec<CommandId>,
    },
    /// A person said whether two names mean one thing on this kind of vehicle.
    NamesJoined {
        /// The name that is kept.
        name: Words,
        /// The other.
        other: Words,
        /// Whether they mean one thing.
        same: bool,
        /// What was said before.
        after: Vec<CommandId>,
    },
    /// A person said which of several values that were told is right.
    ValueChosen {
        /// What it is of, by its name.
        item: Words,
        /// In which respect, as a code such as `torque`.
        about: Token,
        /// At which position; nothing for all of it.
        at: Option<Position>,
        /// The value as it was written.
        value: Words,
        /// The choices seen.
        after: Vec<CommandId>,
    },
    /// A version came from another shop, signed.
    Received {
        /// The version.
        version: u32,
        /// The shop's name as the file told it.
        from: Words,
        /// The mark of the key that it was signed with.
        key: Token,
    },
    /// This kind of vehicle is one that is called otherwise as well; or, after all, not.
    SameKindAs {
        /// The other kind, which it goes by.
        kind: Option<MapId>,
        /// The tellings seen.
        after: Vec<CommandId>,
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
        for (_, stamp, fact) in self.facts() {
            if let MapFact::Drafted { version, text } = fact {
                out.entry(*version).or_insert((stamp, text));
            }
        }
        out
    }

    /// The kind that this one goes by, with the tellings that say so.
    #[must_use]
    pub fn same_kind_as(&self) -> (Option<&MapId>, Vec<CommandId>) {
        super::same(self.own(), |fact| match fact {
            MapFact::SameKindAs { kind, after } => Some((kind.as_ref(), after)),
            _ => None,
        })
    }

    /// The versions that came from other shops: the shop, and the mark of its key.
    #[must_use]
    pub fn received(&self) -> BTreeMap<u32, (&Words, &Token)> {
        let mut out = BTreeMap::new();
        for (_, _, fact) in self.facts() {
            if let MapFact::Received { version, from, key } = fact {
                out.entry(*version).or_insert((from, key));
            }
        }
        out
    }

    /// What people said of this kind of vehicle, what was said of one thing later in the place of
    /// what was said before. `key` says what a fact is said of; nothing for what is not asked for.
    #[must_use]
    pub fn said<'a, K: Ord>(
        &'a self,
        key: impl Fn(&'a MapFact) -> Option<K>,
    ) -> Standing<'a, K, MapFact> {
        self.standing(|fact| match fact {
            MapFact::Drafted { .. } | MapFact::Received { .. } | MapFact::SameKindAs { .. } => None,
            MapFact::Answered { after, .. }
            | MapFact::NamesJoined { after, .. }
            | MapFact::ValueChosen { after, .. } => Some((key(fact)?, after)),
        })
    }
}

//! Works that can be owed, and sets of them.

use crate::branch::Branch;
use crate::gates::Gates;
use states::Gate;
use std::sync::Arc;

/// A short code, shared by all who hold it.
pub type Code = Arc<str>;

/// For how much one doing of a work counts.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Shared {
    /// Once for the whole order, however many causes it has.
    Order,
    /// Once for each wheel.
    Wheel,
    /// Once for each thing that owes it.
    Item,
}

/// A work that can be owed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Work {
    /// Its code.
    pub code: Code,
    /// The system it belongs to; unknown where it follows the thing that owes it.
    pub system: Branch,
    /// The first gate it shuts while it is owed; none for what only prints.
    pub shuts: Option<Gate>,
    /// For how much one doing counts.
    pub shared: Shared,
    /// Spoken words in English.
    pub english: Code,
    /// Spoken words in German.
    pub german: Code,
    /// What marks it done.
    pub done_when: Code,
}

impl Work {
    /// The gates it shuts while it is owed.
    #[must_use]
    pub fn gates(&self) -> Gates {
        self.shuts
            .map_or(Gates::NONE, |gate| Gates::NONE.with(gate))
    }
}

/// A set of works by their place in the table.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default, Hash, PartialOrd, Ord)]
pub(crate) struct WorkSet(pub u128);

impl WorkSet {
    pub const MOST: usize = 128;

    pub fn one(place: usize) -> WorkSet {
        WorkSet(1 << (place % Self::MOST))
    }

    pub fn and(self, other: WorkSet) -> WorkSet {
        WorkSet(self.0 | other.0)
    }

    pub fn without(self, other: WorkSet) -> WorkSet {
        WorkSet(self.0 & !other.0)
    }

    pub fn both(self, other: WorkSet) -> WorkSet {
        WorkSet(self.0 & other.0)
    }

    pub fn has(self, other: WorkSet) -> bool {
        self.0 & other.0 == other.0
    }

    pub fn is_empty(self) -> bool {
        self.0 == 0
    }

    pub fn iter(self) -> impl Iterator<Item = usize> {
        let mut left = self.0;
        std::iter::from_fn(move || {
            if left == 0 {
                return None;
            }
            let place = left.trailing_zeros() as usize;
            left &= left - 1;
            Some(place)
        })
    }
}

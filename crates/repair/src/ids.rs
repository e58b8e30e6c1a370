//! Names of things. All are made on the device that first speaks of the thing, so
//! that a phone out of reach of the server can go on working.

use std::fmt;
use std::sync::Arc;

macro_rules! ids {
    ($($(#[$doc:meta])* $name:ident),* $(,)?) => {$(
        $(#[$doc])*
        #[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $name(Arc<str>);

        impl $name {
            /// Takes a name as it is.
            #[must_use]
            pub fn new(name: impl Into<String>) -> Self {
                Self(Arc::from(name.into()))
            }

            /// The name as text.
            #[must_use]
            pub fn as_str(&self) -> &str {
                &self.0
            }
        }

        impl fmt::Display for $name {
            fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
                f.write_str(&self.0)
            }
        }
    )*};
}

ids! {
    /// One repair order.
    OrderId,
    VehicleId,
    CustomerId,
    /// One person of the shop.
    PersonId,
    /// One command sent by a device; the name under which undo finds it.
    CommandId,
    /// One stage: a handful of moves done in one go.
    StageId,
    /// One line of an order: a complaint with its cause and correction.
    LineId,
    SnagId,
    /// One part asked for.
    PartId,
    /// One piece of work sent out.
    SubletId,
    /// One thing noted at the walk-round, or a calculation kept.
    NoteId,
    /// Work a person declared due.
    WorkId,
    ProofId,
    /// One standing difference.
    DifferenceId,
    StallId,
    MapId,
    /// Days on which the shop is closed, or somebody is not there.
    DaysOffId,
    /// One fixed-price job that the shop keeps.
    JobId,
}

/// One move: the command that made it and its place in that command's list.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct MoveId {
    /// The command that carried the move.
    pub command: CommandId,
    /// Its place in the command's list of moves, from 0.
    pub nth: u16,
}

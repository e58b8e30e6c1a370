//! A vehicle: the texts and figures it is known by, and what it carries from one visit to
//! the next.

use super::{Beside, Field, Told, told};
use crate::code::{DifferenceIs, Until, Work};
use crate::ids::{CommandId, CustomerId, DifferenceId, OrderId};
use crate::text::{Token, Words, Written};
use crate::told::{Telling, latest_of};
use states::Position;
use std::collections::{BTreeMap, BTreeSet};

/// How far the vehicle's identification number could be read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum VinRead {
    /// Read, and valid by its form and check digit.
    Valid,
    /// Read, and kept although it is not valid.
    KeptAnyway,
    /// None could be read.
    NoneReadable,
}

/// What stands in a vehicle's stream.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum VehicleFact {
    /// The vehicle is spoken of for the first time.
    Declared {
        texts: BTreeMap<Field, Words>,
        /// How far its number could be read.
        vin_read: VinRead,
        /// How rusty: 0 clean to 3 heavy.
        rust: Option<u8>,
        /// Whose it is.
        customer: CustomerId,
    },
    /// A text is put right.
    Mended {
        /// Which.
        field: Field,
        /// The text.
        words: Words,
        /// How far the number could be read, if it is that.
        vin_read: Option<VinRead>,
        /// The mendings seen.
        after: Vec<CommandId>,
    },
    /// It left with a lasting difference.
    Differs {
        id: DifferenceId,
        /// The order it comes from.
        order: OrderId,
        /// What the item is called.
        item: Option<Words>,
        at: Vec<Position>,
        /// What sort.
        what: DifferenceIs,
        /// The size that holds now.
        size: Option<Token>,
        /// The torque that holds now.
        torque: Option<Written>,
        words: Option<Words>,
    },
    /// A difference is no more.
    DifferenceEnded {
        /// Which.
        id: DifferenceId,
    },
    /// It left with work due later.
    LeftOwing {
        /// The order it comes from.
        order: OrderId,
        work: Work,
        /// What the item is called.
        item: Option<Words>,
        words: Option<Words>,
        /// Until when.
        until: Until,
    },
    /// A figure of this vehicle, read off its cap, its papers or its maker's: it holds on
    /// every visit.
    FigureTold {
        /// Which, such as `coolant capacity`.
        what: Token,
        /// As written.
        value: Written,
        /// The tellings of the same figure that were seen.
        after: Vec<CommandId>,
    },
    /// That work was done, or needs no doing.
    OwingDone {
        /// The order it comes from.
        order: OrderId,
        work: Work,
    },
}

pub type Vehicle = Beside<VehicleFact>;

impl Vehicle {
    /// One of its texts as it reads now.
    #[must_use]
    pub fn text(&self, field: Field) -> Told {
        told(
            self.facts().map(|(command, _, fact)| (command, fact)),
            |fact| match fact {
                VehicleFact::Declared { texts, .. } => texts.get(&field).copied(),
                _ => None,
            },
            |fact| match fact {
                VehicleFact::Mended {
                    field: mended,
                    words,
                    after,
                    ..
                } if *mended == field => Some((*words, after)),
                _ => None,
            },
        )
    }

    /// How rusty it was when it was first spoken of: 0 clean to 3 heavy.
    #[must_use]
    pub fn rust(&self) -> Option<u8> {
        self.facts().find_map(|(_, _, fact)| match fact {
            VehicleFact::Declared { rust, .. } => *rust,
            _ => None,
        })
    }

    /// Whose it is.
    #[must_use]
    pub fn customer(&self) -> Option<&CustomerId> {
        self.facts().find_map(|(_, _, fact)| match fact {
            VehicleFact::Declared { customer, .. } => Some(customer),
            _ => None,
        })
    }

    /// The figures told, each as it reads now, with the commands that told it.
    #[must_use]
    pub fn figures(&self) -> BTreeMap<&Token, (&Written, Vec<CommandId>)> {
        let mut groups: BTreeMap<&Token, Vec<Telling<'_, &Written>>> = BTreeMap::new();
        for (command, _, fact) in self.facts() {
            if let VehicleFact::FigureTold { what, value, after } = fact {
                groups
                    .entry(what)
                    .or_default()
                    .push((command, value, after));
            }
        }
        groups
            .into_iter()
            .filter_map(|(what, group)| {
                let by = group.iter().map(|(command, ..)| (*command).clone());
                Some((what, (latest_of(&group)?, by.collect())))
            })
            .collect()
    }

    /// The standing differences that have not ended.
    pub fn differences(&self) -> impl Iterator<Item = &VehicleFact> {
        let ended: BTreeSet<&DifferenceId> = self
            .facts()
            .filter_map(|(_, _, fact)| match fact {
                VehicleFact::DifferenceEnded { id } => Some(id),
                _ => None,
            })
            .collect();
        self.facts().filter_map(move |(_, _, fact)| match fact {
            VehicleFact::Differs { id, .. } if !ended.contains(id) => Some(fact),
            _ => None,
        })
    }

    /// The work it left owing that has not been done.
    pub fn owing(&self) -> impl Iterator<Item = &VehicleFact> {
        let done: BTreeSet<(&OrderId, &Work)> = self
            .facts()
            .filter_map(|(_, _, fact)| match fact {
                VehicleFact::OwingDone { order, work } => Some((order, work)),
                _ => None,
            })
            .collect();
        self.facts().filter_map(move |(_, _, fact)| match fact {
            VehicleFact::LeftOwing { order, work, .. } if !done.contains(&(order, work)) => {
                Some(fact)
            }
            _ => None,
        })
    }
}

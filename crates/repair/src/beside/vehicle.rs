//! A vehicle: the texts and figures it is known by, and what it carries from one visit to
//! the next.

use super::{Beside, Field, Told, same, told};
use crate::code::{DifferenceIs, Until, Work};
use crate::ids::{CommandId, CustomerId, DifferenceId, OrderId, VehicleId};
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
    /// It is a vehicle that has a record under another name already; or, after all, not.
    SameAs {
        /// The other name.
        vehicle: Option<VehicleId>,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// It belongs to somebody else now.
    OwnerTold {
        /// To whom.
        customer: CustomerId,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
}

pub type Vehicle = Beside<VehicleFact>;

impl Vehicle {
    /// One of its texts as it reads now.
    #[must_use]
    pub fn text(&self, field: Field) -> Told {
        let of = |one: &Self| {
            told(
                one.own(),
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
        };
        self.first(|one| Some(of(one)).filter(|told| told.words.is_some()))
            .unwrap_or_default()
    }

    /// Under which other name it has a record already, and the commands that told it, for a
    /// device to name as seen.
    #[must_use]
    pub fn same_as(&self) -> (Option<&VehicleId>, Vec<CommandId>) {
        same(self.own(), |fact| match fact {
            VehicleFact::SameAs { vehicle, after } => Some((vehicle.as_ref(), after)),
            _ => None,
        })
    }

    /// How rusty it was when it was first spoken of: 0 clean to 3 heavy.
    #[must_use]
    pub fn rust(&self) -> Option<u8> {
        self.facts().find_map(|(_, _, fact)| match fact {
            VehicleFact::Declared { rust, .. } => *rust,
            _ => None,
        })
    }

    /// Whose it is: as told last, or as first spoken of.
    #[must_use]
    pub fn customer(&self) -> Option<&CustomerId> {
        let told: Vec<Telling<'_, &CustomerId>> = self
            .facts()
            .filter_map(|(command, _, fact)| match fact {
                VehicleFact::OwnerTold { customer, after } => Some((command, customer, after)),
                _ => None,
            })
            .collect();
        latest_of(&told).or_else(|| {
            self.facts().find_map(|(_, _, fact)| match fact {
                VehicleFact::Declared { customer, .. } => Some(customer),
                _ => None,
            })
        })
    }

    /// What was told of whose it is, for a device to name as seen.
    #[must_use]
    pub fn owner_told(&self) -> Vec<&CommandId> {
        let told = self.facts();
        told.filter(|(_, _, fact)| matches!(fact, VehicleFact::OwnerTold { .. }))
            .map(|(command, ..)| command)
            .collect()
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

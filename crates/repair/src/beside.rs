//! What stands beside orders: vehicles, customers, and the shop itself. Each has a
//! stream of its own; all of it is facts but the giving of numbers.

use crate::code::{DifferenceIs, Until, Work};
use crate::ids::{CommandId, CustomerId, DifferenceId, OrderId, PersonId, StallId};
use crate::order::{Recorded, Stamp};
use crate::text::{File, Token, Words, Written};
use crate::told::{Telling, latest_of};
use price::TaxRule;
use rust_decimal::Decimal;
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

/// A text that stands for a vehicle or customer, by which it is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Field {
    /// A vehicle's maker, model, year, as people say it.
    Label,
    /// Its identification number.
    Vin,
    /// Its plate.
    Plate,
    /// A customer's name.
    Name,
    /// A telephone number.
    Phone,
    /// A mail address.
    Mail,
    /// Where they live.
    Address,
}

/// What stands in a vehicle's stream.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum VehicleFact {
    /// The vehicle is spoken of for the first time.
    Declared {
        /// Its texts.
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
        /// Its name.
        id: DifferenceId,
        /// The order it comes from.
        order: OrderId,
        /// What the item is called.
        item: Option<Words>,
        /// The positions.
        at: Vec<Position>,
        /// What sort.
        what: DifferenceIs,
        /// The size that holds now.
        size: Option<Token>,
        /// The torque that holds now.
        torque: Option<Written>,
        /// In words.
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
        /// The work.
        work: Work,
        /// What the item is called.
        item: Option<Words>,
        /// In words.
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
        /// The work.
        work: Work,
    },
}

/// What stands in a customer's stream.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum CustomerFact {
    /// The customer is spoken of for the first time.
    Declared {
        /// Texts.
        texts: BTreeMap<Field, Words>,
    },
    /// A text is put right.
    Mended {
        /// Which.
        field: Field,
        /// The text.
        words: Words,
        /// The mendings seen.
        after: Vec<CommandId>,
    },
}

/// What people of the shop do.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Role {
    /// Works on vehicles.
    Technician,
    /// Talks to customers.
    Desk,
    /// Answers for the shop.
    Owner,
    /// Learns.
    Apprentice,
}

/// The units the shop reads.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Units {
    /// Metric, with US customary beside.
    Metric,
    /// US customary, with metric beside.
    Us,
}

/// The shop's settings.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Settings {
    /// Its name.
    pub name: Words,
    /// An hour's labour, before tax.
    pub rate: Decimal,
    /// Its currency, three letters.
    pub currency: String,
    /// Digits after the currency's point.
    pub minor_digits: u32,
    /// Its tax.
    pub taxes: Vec<TaxRule>,
    /// The units it reads.
    pub units: Units,
    /// Its time zone by name, such as `Europe/Lisbon`.
    pub zone: String,
}

/// How much each consideration counts among the ways to mend a thread that hold.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Weights {
    /// How far from stripping.
    pub margin: Decimal,
    /// How soon it is done.
    pub time: Decimal,
    /// How cheaply.
    pub cost: Decimal,
    /// How much stays as it was, and is left for the next repair.
    pub reversibility: Decimal,
}

/// A sort of stall.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StallIs {
    /// With a lift.
    Lift,
    /// Flat floor.
    Flat,
}

/// What stands in the shop's stream.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ShopFact {
    /// The shop is set up, or set up anew.
    Set {
        /// How.
        settings: Settings,
    },
    /// A person belongs to the shop.
    Joined {
        /// The person.
        person: PersonId,
        /// Their name.
        name: Words,
        /// What they do.
        roles: Vec<Role>,
    },
    /// A person no longer does.
    Departed {
        /// The person.
        person: PersonId,
    },
    /// There is a stall.
    StallAdded {
        /// The stall.
        stall: StallId,
        /// What it is called.
        name: Words,
        /// What sort.
        sort: StallIs,
    },
    /// An order got its number.
    NumberGiven {
        /// The number.
        number: u64,
        /// The order.
        order: OrderId,
    },
    /// How high above the sea the shop stands.
    AltitudeTold {
        /// As written, with its unit.
        altitude: Written,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// Private texts were erased.
    Erased {
        /// Which.
        texts: Vec<Words>,
        /// Why, as a code.
        why: Token,
    },
    /// The shop says what counts how much when ways to mend a thread are ranked.
    Weighed {
        /// How much.
        weights: Weights,
    },
    /// The rules of a place hold for consent, or of none: any excess is then asked for.
    PlaceChosen {
        /// The place, as a code; none for no place's rules.
        place: Option<Token>,
        /// The version of its rules.
        version: u32,
        /// The choices seen.
        after: Vec<CommandId>,
    },
    /// Records of an order are kept for so long after it ended, by rule or by choice.
    RecordsKept {
        /// Whole years.
        years: u32,
    },
    /// A customer's words are to be erased as soon as their records need be kept no longer.
    ErasureAsked {
        /// The customer.
        customer: CustomerId,
        /// Whether every word typed and every photo taken goes as well.
        every_word: bool,
        /// Why, as a code.
        why: Token,
    },
    /// An erasure that was asked for waits no more: it was carried out.
    ErasureEnded {
        /// The asking.
        asked: CommandId,
    },
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
}

/// Facts of one stream by the command that carried them, as filed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Beside<F> {
    facts: BTreeMap<(CommandId, u32), (Stamp, F)>,
}

/// A vehicle.
pub type Vehicle = Beside<VehicleFact>;
/// A customer.
pub type Customer = Beside<CustomerFact>;
/// A map, with every version of it.
pub type MapDrafts = Beside<MapFact>;
/// The shop.
pub type Shop = Beside<ShopFact>;

impl<F> Default for Beside<F> {
    fn default() -> Self {
        Self {
            facts: BTreeMap::new(),
        }
    }
}

impl<F> Beside<F> {
    /// Files one fact. Total, and blind to the sequence of arrival.
    #[must_use]
    pub fn file(mut self, recorded: Recorded<F>) -> Self {
        self.facts
            .entry((recorded.command, recorded.nth))
            .or_insert((recorded.stamp, recorded.event));
        self
    }

    /// Whether nothing was ever filed.
    #[must_use]
    pub fn is_blank(&self) -> bool {
        self.facts.is_empty()
    }

    /// The facts, each with its command and stamp.
    pub fn facts(&self) -> impl Iterator<Item = (&CommandId, &Stamp, &F)> {
        self.facts
            .iter()
            .map(|((command, _), (stamp, fact))| (command, stamp, fact))
    }
}

/// A text as it reads now, with the commands that told it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Told {
    /// The text.
    pub words: Option<Words>,
    /// The mendings, for a device to name as seen.
    pub by: Vec<CommandId>,
}

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

impl Customer {
    /// One of their texts as it reads now.
    #[must_use]
    pub fn text(&self, field: Field) -> Told {
        told(
            self.facts().map(|(command, _, fact)| (command, fact)),
            |fact| match fact {
                CustomerFact::Declared { texts } => texts.get(&field).copied(),
                CustomerFact::Mended { .. } => None,
            },
            |fact| match fact {
                CustomerFact::Mended {
                    field: mended,
                    words,
                    after,
                } if *mended == field => Some((*words, after)),
                _ => None,
            },
        )
    }
}

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

impl Shop {
    /// The settings as told last by the clock of whoever told them.
    #[must_use]
    pub fn settings(&self) -> Option<&Settings> {
        self.facts()
            .filter_map(|(command, stamp, fact)| match fact {
                ShopFact::Set { settings } => Some(((stamp.at, command), settings)),
                _ => None,
            })
            .max_by(|a, b| a.0.cmp(&b.0))
            .map(|(_, settings)| settings)
    }

    /// How high above the sea the shop stands, with the commands that told it.
    #[must_use]
    pub fn altitude(&self) -> Option<(&Written, Vec<CommandId>)> {
        let told: Vec<Telling<'_, &Written>> = self
            .facts()
            .filter_map(|(command, _, fact)| match fact {
                ShopFact::AltitudeTold { altitude, after } => Some((command, altitude, after)),
                _ => None,
            })
            .collect();
        let by = told.iter().map(|(command, ..)| (*command).clone());
        Some((latest_of(&told)?, by.collect()))
    }

    /// For how many years after an order's end its records are kept, as told last by the
    /// clock of whoever told it; nought if nobody did.
    #[must_use]
    pub fn records_kept_years(&self) -> u32 {
        self.facts()
            .filter_map(|(command, stamp, fact)| match fact {
                ShopFact::RecordsKept { years } => Some(((stamp.at, command), *years)),
                _ => None,
            })
            .max_by(|a, b| a.0.cmp(&b.0))
            .map_or(0, |(_, years)| years)
    }

    /// The erasures that were asked for and wait, each with the command that asked and the
    /// person who did.
    pub fn erasures_waiting(&self) -> impl Iterator<Item = (&CommandId, &Stamp, &ShopFact)> {
        let ended: BTreeSet<&CommandId> = self
            .facts()
            .filter_map(|(_, _, fact)| match fact {
                ShopFact::ErasureEnded { asked } => Some(asked),
                _ => None,
            })
            .collect();
        self.facts().filter(move |(command, _, fact)| {
            matches!(fact, ShopFact::ErasureAsked { .. }) && !ended.contains(command)
        })
    }

    /// The weights as told last by the clock of whoever told them.
    #[must_use]
    pub fn weights(&self) -> Option<Weights> {
        self.facts()
            .filter_map(|(command, stamp, fact)| match fact {
                ShopFact::Weighed { weights } => Some(((stamp.at, command), *weights)),
                _ => None,
            })
            .max_by(|a, b| a.0.cmp(&b.0))
            .map(|(_, weights)| weights)
    }

    /// The place whose rules hold, and their version; none, if none was chosen.
    #[must_use]
    pub fn place(&self) -> Option<(&Token, u32)> {
        let choices: Vec<_> = self
            .facts()
            .filter_map(|(command, _, fact)| match fact {
                ShopFact::PlaceChosen {
                    place,
                    version,
                    after,
                } => Some((command, (place.as_ref(), *version), after)),
                _ => None,
            })
            .collect();
        let (place, version) = latest_of(&choices)?;
        Some((place?, version))
    }

    /// The choices of a place, for a device to name as seen.
    #[must_use]
    pub fn places_chosen(&self) -> Vec<&CommandId> {
        self.facts()
            .filter(|(_, _, fact)| matches!(fact, ShopFact::PlaceChosen { .. }))
            .map(|(command, ..)| command)
            .collect()
    }

    /// The people who belong to the shop.
    #[must_use]
    pub fn people(&self) -> BTreeMap<&PersonId, (Words, &[Role])> {
        let departed: BTreeSet<&PersonId> = self
            .facts()
            .filter_map(|(_, _, fact)| match fact {
                ShopFact::Departed { person } => Some(person),
                _ => None,
            })
            .collect();
        self.everyone()
            .into_iter()
            .filter(|(person, _)| !departed.contains(person))
            .collect()
    }

    /// Everybody who ever belonged to the shop.
    #[must_use]
    pub fn everyone(&self) -> BTreeMap<&PersonId, (Words, &[Role])> {
        self.facts()
            .filter_map(|(_, _, fact)| match fact {
                ShopFact::Joined {
                    person,
                    name,
                    roles,
                } => Some((person, (*name, roles.as_slice()))),
                _ => None,
            })
            .collect()
    }

    /// The stalls, in the sequence they were added.
    #[must_use]
    pub fn stalls(&self) -> Vec<(&StallId, Words, StallIs)> {
        let mut out: Vec<_> = self
            .facts()
            .filter_map(|(command, stamp, fact)| match fact {
                ShopFact::StallAdded { stall, name, sort } => {
                    Some(((stamp.at, command), (stall, *name, *sort)))
                }
                _ => None,
            })
            .collect();
        out.sort_by(|a, b| a.0.cmp(&b.0));
        out.into_iter().map(|(_, stall)| stall).collect()
    }
}

fn told<'a, F: 'a>(
    facts: impl Iterator<Item = (&'a CommandId, &'a F)>,
    declared: impl Fn(&F) -> Option<Words>,
    mended: impl Fn(&'a F) -> Option<(Words, &'a Vec<CommandId>)>,
) -> Told {
    let mut first = None;
    let mut mendings = Vec::new();
    for (command, fact) in facts {
        first = first.or_else(|| declared(fact));
        if let Some((words, after)) = mended(fact) {
            mendings.push((command, words, after));
        }
    }
    Told {
        words: latest_of(&mendings).or(first),
        by: mendings
            .iter()
            .map(|(command, ..)| (*command).clone())
            .collect(),
    }
}

//! The shop: its settings, its people and stalls, the rules it goes by, and which words of
//! whom are to be erased.

use super::money::MoneyRules;
use super::{Beside, Standing, Week};
use crate::ids::{CommandId, CustomerId, DaysOffId, JobId, OrderId, PersonId, StallId};
use crate::order::Stamp;
use crate::text::{File, Token, Words, Written};
use crate::told::{Telling, latest_of};
use jiff::civil::Date;
use price::{FixedJob, Payer, TaxRule};
use rust_decimal::Decimal;
use states::System;
use std::collections::{BTreeMap, BTreeSet};

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
    /// Leads the work, named so by the owner: lets pass what the owner may on a vehicle.
    Foreman,
}

/// What a person can do of a piece of work, as the shop says it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Can {
    /// Not yet.
    NotYet,
    /// With somebody looking on.
    Watched,
    /// Alone.
    Alone,
    /// Well enough to show others.
    Teaches,
}

/// The languages that papers and screens can be in.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Language {
    #[default]
    English,
    German,
}

/// What the shop has printed of itself on its papers, beside its name.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Letterhead {
    /// Where it is, in lines.
    pub address: Option<Words>,
    pub phone: Option<Words>,
    /// Where mail and letters by mail program go.
    pub mail: Option<Words>,
    /// The number that it is taxed under.
    pub tax_number: Option<Words>,
    /// Where money is transferred to.
    pub bank: Option<Words>,
    /// What its papers say at the end: warranty, when to pay.
    pub terms: Option<Words>,
    /// What its papers are written in.
    pub language: Language,
}

/// Where the shop is, part by part, for programs that read its invoices.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Seat {
    /// The street and house.
    pub street: Option<Words>,
    pub postcode: Option<Words>,
    pub town: Option<Words>,
    /// The country, as its two letters.
    pub country: Option<String>,
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
    pub name: Words,
    /// An hour's labour, before tax.
    pub rate: Decimal,
    /// Its currency, three letters.
    pub currency: String,
    /// Digits after the currency's point.
    pub minor_digits: u32,
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
    /// A place outside, where a vehicle stands and nobody works on it.
    Outside,
}

/// What stands in the shop's stream.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum ShopFact {
    /// The shop is set up, or set up anew.
    Set {
        /// How.
        settings: Settings,
        /// The settings seen.
        after: Vec<CommandId>,
    },
    /// A person belongs to the shop.
    Joined {
        person: PersonId,
        name: Words,
        /// What they do.
        roles: Vec<Role>,
    },
    /// A person no longer does.
    Departed { person: PersonId },
    /// There is a stall.
    StallAdded {
        stall: StallId,
        /// What it is called.
        name: Words,
        /// What sort.
        sort: StallIs,
    },
    /// A person is called otherwise, or does something else.
    PersonTold {
        person: PersonId,
        name: Words,
        /// What they do.
        roles: Vec<Role>,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// A stall is called otherwise, or is of another sort.
    StallTold {
        stall: StallId,
        /// What it is called.
        name: Words,
        /// What sort.
        sort: StallIs,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// What a stall takes.
    StallFitted {
        stall: StallId,
        /// The heaviest vehicle that its lift carries, with its unit.
        carries: Option<Written>,
        /// The highest vehicle that clears the roof when the lift is up, with its unit.
        clears: Option<Written>,
        /// The stalls that a vehicle crosses on its way in and out.
        crosses: Vec<StallId>,
        /// The tellings of this stall seen.
        after: Vec<CommandId>,
    },
    /// A stall is no more.
    StallRemoved { stall: StallId },
    /// An order got its number.
    NumberGiven { number: u64, order: OrderId },
    /// An invoice got its number.
    InvoiceNumberGiven {
        number: u64,
        order: OrderId,
        /// For whom it is.
        payer: Payer,
    },
    /// A credit note got its number.
    CreditNumberGiven {
        number: u64,
        order: OrderId,
        /// For whom it is.
        payer: Payer,
    },
    /// What the shop goes by when it prices.
    MoneyTold {
        rules: MoneyRules,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// The shop keeps a job at a fixed price, or has changed it.
    JobKept {
        id: JobId,
        job: FixedJob,
        /// The tellings of it seen.
        after: Vec<CommandId>,
    },
    /// The shop keeps such a job no more.
    JobDropped { id: JobId },
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
        /// The weights seen.
        after: Vec<CommandId>,
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
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// A customer's words are to be erased as soon as their records need be kept no longer.
    ErasureAsked {
        customer: CustomerId,
        /// Whether every word typed and every photo taken goes as well.
        every_word: bool,
        /// Why, as a code.
        why: Token,
    },
    /// The shop has a word of its own for a sort of the trade's table.
    WordAdded {
        /// The word, as people there say it.
        name: Words,
        /// The sort it means.
        sort: Token,
    },
    /// A word of the shop's own means nothing any more.
    WordRemoved { name: Words },
    /// Who works alone may check by a second walk-round, on the owner's written word; with no
    /// words, not any more.
    AloneAllowed {
        /// The owner's words.
        words: Option<Words>,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// An erasure that was asked for waits no more: it was carried out.
    ErasureEnded {
        /// The asking.
        asked: CommandId,
    },
    /// An erasure that was asked for is not wanted after all.
    ErasureCalledOff {
        /// The asking.
        asked: CommandId,
    },
    /// When the shop is open, or somebody of it works.
    HoursTold {
        /// Who; nobody named means the shop.
        person: Option<PersonId>,
        /// The hours; none means not told any more: a person works those of the shop.
        week: Option<Week>,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// What somebody knows how to do.
    SystemsTold {
        person: PersonId,
        /// The systems they work on.
        systems: Vec<System>,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// The shop is closed for some days, or somebody is not there.
    DaysOff {
        id: DaysOffId,
        /// Who; nobody named means that the shop is closed.
        person: Option<PersonId>,
        first: Date,
        /// The last day, within.
        last: Date,
    },
    /// Days off are not, after all.
    DaysOffEnded { id: DaysOffId },
    /// What a person can do of a piece of work that the shop has named.
    SkillTold {
        person: PersonId,
        /// The work, in the shop's own words.
        skill: Words,
        can: Can,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// What the shop prints of itself on its papers.
    LetterheadTold {
        letterhead: Letterhead,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// Where the shop is, part by part.
    SeatTold {
        seat: Seat,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// The shop's picture for its papers; none takes it away.
    LogoTold {
        logo: Option<File>,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// What the shop's screens speak.
    ShopSpeaks {
        language: Language,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// What a person's screens speak; none for what the shop's do.
    PersonSpeaks {
        person: PersonId,
        language: Option<Language>,
        /// The tellings seen of this person's.
        after: Vec<CommandId>,
    },
    /// The grade that a person's work is charged by; none for the usual one.
    GradeTold {
        person: PersonId,
        grade: Option<String>,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
}

/// What a stall takes, as told last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Fitted<'a> {
    /// The heaviest vehicle that its lift carries, as written.
    pub carries: Option<&'a Written>,
    /// The highest vehicle that clears the roof when the lift is up, as written.
    pub clears: Option<&'a Written>,
    /// The stalls that a vehicle crosses on its way in and out.
    pub crosses: &'a [StallId],
}

/// What was told of a person: their name and what they do.
type PersonTelling<'a> = Telling<'a, (Words, &'a [Role])>;

pub type Shop = Beside<ShopFact>;

impl Shop {
    /// The settings as told by whoever had seen the others.
    #[must_use]
    pub fn settings(&self) -> Option<&Settings> {
        self.told_last(|fact| match fact {
            ShopFact::Set { settings, after } => Some((settings, after)),
            _ => None,
        })
    }

    /// What its papers say of it, as told by whoever had seen the others.
    #[must_use]
    pub fn letterhead(&self) -> Option<&Letterhead> {
        self.told_last(|fact| match fact {
            ShopFact::LetterheadTold { letterhead, after } => Some((letterhead, after)),
            _ => None,
        })
    }

    /// The letterheads told so far, for a device to name as seen.
    #[must_use]
    pub fn letterheads_told(&self) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::LetterheadTold { .. }))
    }

    /// Where it is, part by part, as told by whoever had seen the others.
    #[must_use]
    pub fn seat(&self) -> Option<&Seat> {
        self.told_last(|fact| match fact {
            ShopFact::SeatTold { seat, after } => Some((seat, after)),
            _ => None,
        })
    }

    /// The tellings of where it is, for a device to name as seen.
    #[must_use]
    pub fn seats_told(&self) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::SeatTold { .. }))
    }

    /// What a person wants their screens to speak, if not what the shop's do.
    #[must_use]
    pub fn speaks_own(&self, person: &PersonId) -> Option<Language> {
        let own = self.told_last(|fact| match fact {
            ShopFact::PersonSpeaks {
                person: of,
                language,
                after,
            } if of == person => Some((*language, after)),
            _ => None,
        });
        own.flatten()
    }

    /// What a person's screens speak, or anybody's who is not known: theirs, else the shop's.
    #[must_use]
    pub fn speaks(&self, person: Option<&PersonId>) -> Language {
        let shop = || {
            self.told_last(|fact| match fact {
                ShopFact::ShopSpeaks { language, after } => Some((language, after)),
                _ => None,
            })
        };
        let own = person.and_then(|person| self.speaks_own(person));
        own.or_else(|| shop().copied()).unwrap_or_default()
    }

    /// The tellings of what a person's screens speak, or the shop's, for a device to name as seen.
    #[must_use]
    pub fn speaking_told(&self, person: Option<&PersonId>) -> Vec<&CommandId> {
        self.tellings(|fact| match fact {
            ShopFact::ShopSpeaks { .. } => person.is_none(),
            ShopFact::PersonSpeaks { person: of, .. } => Some(of) == person,
            _ => false,
        })
    }

    /// The picture for its papers, if one was told.
    #[must_use]
    pub fn logo(&self) -> Option<&File> {
        self.told_last(|fact| match fact {
            ShopFact::LogoTold { logo, after } => Some((logo.as_ref(), after)),
            _ => None,
        })
        .flatten()
    }

    /// The pictures told so far, for a device to name as seen.
    #[must_use]
    pub fn logos_told(&self) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::LogoTold { .. }))
    }

    /// The grade that a person's work is charged by, if one was told.
    #[must_use]
    pub fn grade(&self, of: &PersonId) -> Option<&str> {
        self.told_last(|fact| match fact {
            ShopFact::GradeTold {
                person,
                grade,
                after,
            } if person == of => Some((grade.as_deref(), after)),
            _ => None,
        })
        .flatten()
    }

    /// What was told of a person's grade so far, for a device to name as seen.
    #[must_use]
    pub fn grades_told(&self, of: &PersonId) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::GradeTold { person, .. } if person == of))
    }

    /// The settings told so far, for a device to name as seen.
    #[must_use]
    pub fn settings_told(&self) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::Set { .. }))
    }

    /// The weights told so far, for a device to name as seen.
    #[must_use]
    pub fn weights_told(&self) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::Weighed { .. }))
    }

    /// What was told of keeping records so far, for a device to name as seen.
    #[must_use]
    pub fn records_kept_told(&self) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::RecordsKept { .. }))
    }

    /// What people can do, as the shop says it now. `name` reads the words of a piece of work.
    #[must_use]
    pub fn skills<'a, K: Ord>(
        &'a self,
        name: impl Fn(Words) -> Option<K>,
    ) -> Standing<'a, (K, &'a PersonId), ShopFact> {
        self.standing(|fact| match fact {
            ShopFact::SkillTold {
                person,
                skill,
                after,
                ..
            } => Some(((name(*skill)?, person), after)),
            _ => None,
        })
    }

    pub(super) fn tellings(&self, of: impl Fn(&ShopFact) -> bool) -> Vec<&CommandId> {
        let told = self.facts().filter(|(_, _, fact)| of(fact));
        told.map(|(command, ..)| command).collect()
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

    /// The shop's own words, the first told first, each with the sort that it means.
    #[must_use]
    pub fn own_words(&self) -> Vec<(Words, &Token)> {
        let removed: BTreeSet<Words> = self
            .facts()
            .filter_map(|(_, _, fact)| match fact {
                ShopFact::WordRemoved { name } => Some(*name),
                _ => None,
            })
            .collect();
        let mut added: Vec<_> = self
            .facts()
            .filter_map(|(command, stamp, fact)| match fact {
                ShopFact::WordAdded { name, sort } if !removed.contains(name) => {
                    Some(((stamp.at, command), (*name, sort)))
                }
                _ => None,
            })
            .collect();
        added.sort_by(|a, b| a.0.cmp(&b.0));
        added.into_iter().map(|(_, word)| word).collect()
    }

    /// The owner's word that whoever works alone may check by a second walk-round.
    #[must_use]
    pub fn alone_allowed(&self) -> Option<Words> {
        self.told_last(|fact| match fact {
            ShopFact::AloneAllowed { words, after } => Some((*words, after)),
            _ => None,
        })
        .flatten()
    }

    /// What was told of working alone so far, for a device to name as seen.
    #[must_use]
    pub fn alone_told(&self) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::AloneAllowed { .. }))
    }

    /// For how many years after an order's end its records are kept, as told by whoever had
    /// seen the other tellings; none if nobody told.
    #[must_use]
    pub fn records_kept_years(&self) -> u32 {
        self.told_last(|fact| match fact {
            ShopFact::RecordsKept { years, after } => Some((*years, after)),
            _ => None,
        })
        .unwrap_or(0)
    }

    /// The erasures that were asked for and wait, each with the command that asked and the
    /// person who did.
    pub fn erasures_waiting(&self) -> impl Iterator<Item = (&CommandId, &Stamp, &ShopFact)> {
        let ended: BTreeSet<&CommandId> = self
            .facts()
            .filter_map(|(_, _, fact)| match fact {
                ShopFact::ErasureEnded { asked } | ShopFact::ErasureCalledOff { asked } => {
                    Some(asked)
                }
                _ => None,
            })
            .collect();
        self.facts().filter(move |(command, _, fact)| {
            matches!(fact, ShopFact::ErasureAsked { .. }) && !ended.contains(command)
        })
    }

    /// The weights as told by whoever had seen the others.
    #[must_use]
    pub fn weights(&self) -> Option<Weights> {
        self.told_last(|fact| match fact {
            ShopFact::Weighed { weights, after } => Some((*weights, after)),
            _ => None,
        })
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

    /// Everybody who ever belonged to the shop, as told by whoever had seen the other tellings.
    #[must_use]
    pub fn everyone(&self) -> BTreeMap<&PersonId, (Words, &[Role])> {
        let mut out = BTreeMap::new();
        let mut told: BTreeMap<&PersonId, Vec<PersonTelling<'_>>> = BTreeMap::new();
        for (command, _, fact) in self.facts() {
            match fact {
                ShopFact::Joined {
                    person,
                    name,
                    roles,
                } => {
                    out.insert(person, (*name, roles.as_slice()));
                }
                ShopFact::PersonTold {
                    person,
                    name,
                    roles,
                    after,
                } => told.entry(person).or_default().push((
                    command,
                    (*name, roles.as_slice()),
                    after,
                )),
                _ => {}
            }
        }
        for (person, tellings) in told {
            if let (Some(known), Some(last)) = (out.get_mut(person), latest_of(&tellings)) {
                *known = last;
            }
        }
        out
    }

    /// What was told of a person since they joined, for a device to name as seen.
    #[must_use]
    pub fn person_told(&self, of: &PersonId) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::PersonTold { person, .. } if person == of))
    }

    /// What was told of a stall since it was added, for a device to name as seen.
    #[must_use]
    pub fn stall_told(&self, of: &StallId) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::StallTold { stall, .. } if stall == of))
    }

    /// What a stall takes, if it was told.
    #[must_use]
    pub fn fitted(&self, of: &StallId) -> Option<Fitted<'_>> {
        self.told_last(|fact| match fact {
            ShopFact::StallFitted {
                stall,
                carries,
                clears,
                crosses,
                after,
            } if stall == of => {
                let fitted = Fitted {
                    carries: carries.as_ref(),
                    clears: clears.as_ref(),
                    crosses,
                };
                Some((fitted, after))
            }
            _ => None,
        })
    }

    /// What was told of what a stall takes, for a device to name as seen.
    #[must_use]
    pub fn fitted_told(&self, of: &StallId) -> Vec<&CommandId> {
        self.tellings(|fact| matches!(fact, ShopFact::StallFitted { stall, .. } if stall == of))
    }

    /// The stalls, in the sequence they were added, as told last.
    #[must_use]
    pub fn stalls(&self) -> Vec<(&StallId, Words, StallIs)> {
        let mut added = Vec::new();
        let mut removed = BTreeSet::new();
        let mut told: BTreeMap<&StallId, Vec<Telling<'_, (Words, StallIs)>>> = BTreeMap::new();
        for (command, stamp, fact) in self.facts() {
            match fact {
                ShopFact::StallAdded { stall, name, sort } => {
                    added.push(((stamp.at, command), (stall, *name, *sort)));
                }
                ShopFact::StallTold {
                    stall,
                    name,
                    sort,
                    after,
                } => told
                    .entry(stall)
                    .or_default()
                    .push((command, (*name, *sort), after)),
                ShopFact::StallRemoved { stall } => {
                    removed.insert(stall);
                }
                _ => {}
            }
        }
        added.sort_by(|a, b| a.0.cmp(&b.0));
        added
            .into_iter()
            .map(|(_, stall)| stall)
            .filter(|(stall, ..)| !removed.contains(stall))
            .map(|(stall, name, sort)| {
                let last = told.get(stall).and_then(|tellings| latest_of(tellings));
                let (name, sort) = last.unwrap_or((name, sort));
                (stall, name, sort)
            })
            .collect()
    }

    /// What nobody who told it later had seen. Tellings of before they named what they had
    /// seen are in the sequence of their devices' clocks; any that names them comes after.
    pub(super) fn told_last<'a, T: Copy>(
        &'a self,
        read: impl Fn(&'a ShopFact) -> Option<(T, &'a Vec<CommandId>)>,
    ) -> Option<T> {
        let mut by_clock: Vec<_> = self
            .facts()
            .filter_map(|(command, stamp, fact)| {
                let (told, after) = read(fact)?;
                Some((stamp.at, (command, told, after)))
            })
            .collect();
        let naming = |(_, (_, _, after)): &(_, Telling<'_, T>)| !after.is_empty();
        if by_clock.iter().any(naming) {
            // Their commands' names, as everywhere: a clock set wrong decides nothing.
            let tellings: Vec<_> = by_clock.into_iter().map(|(_, telling)| telling).collect();
            return latest_of(&tellings);
        }
        by_clock.sort_by_key(|(at, (command, ..))| (*at, *command));
        by_clock.pop().map(|(_, (_, told, _))| told)
    }
}

//! What stands beside orders: vehicles, customers, maps, and the shop itself. Each has a
//! stream of its own; all of it is facts but the giving of numbers.

mod customer;
mod map;
mod money;
mod shop;
mod vehicle;
mod week;
mod work_times;

pub use customer::{Customer, CustomerFact};
pub use map::{CouldBe, MapDrafts, MapFact};
pub use money::MoneyRules;
pub use shop::{
    Can, Fitted, Language, Letterhead, Role, Seat, Settings, Shop, ShopFact, StallIs, Units,
    Weights,
};
pub use vehicle::{Vehicle, VehicleFact, VinRead};
pub use week::{DaySpan, Week};
pub use work_times::DaysOff;

use crate::ids::CommandId;
use crate::order::{Recorded, Stamp};
use crate::text::Words;
use crate::told::{Telling, latest_of};
use std::collections::BTreeMap;
use std::sync::Arc;

/// A text that stands for a vehicle or customer, by which it is found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Field {
    /// A vehicle's maker, model, year, as people say it.
    Label,
    /// Its identification number.
    Vin,
    Plate,
    /// A customer's name.
    Name,
    /// A telephone number.
    Phone,
    /// A mail address.
    Mail,
    /// Where they live.
    Address,
    /// The street and house of where they live, where it is told part by part.
    Street,
    Postcode,
    Town,
    /// The country, as its two letters.
    Country,
}

/// Facts of one stream by the command that carried them, as filed; and those of others that
/// turned out to be the same vehicle or customer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Beside<F> {
    facts: BTreeMap<(CommandId, u32), (Stamp, F)>,
    /// What was said under another name of the same.
    also: Vec<Arc<Self>>,
}

impl<F> Default for Beside<F> {
    fn default() -> Self {
        Self {
            facts: BTreeMap::new(),
            also: Vec::new(),
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

    /// The same with what was said of it under other names.
    #[must_use]
    pub fn with(mut self, others: impl IntoIterator<Item = Arc<Self>>) -> Self {
        self.also.extend(others);
        self
    }

    /// Whether nothing was ever filed.
    #[must_use]
    pub fn is_blank(&self) -> bool {
        self.facts.is_empty() && self.also.iter().all(|other| other.is_blank())
    }

    /// The facts, each with its command and stamp: its own, then those of its other names.
    pub fn facts(&self) -> impl Iterator<Item = (&CommandId, &Stamp, &F)> {
        let own = std::iter::once(&self.facts);
        own.chain(self.also.iter().map(|other| &other.facts))
            .flatten()
            .map(|((command, _), (stamp, fact))| (command, stamp, fact))
    }

    /// What holds of its own facts, or else of those of the first other name.
    fn first<T>(&self, read: impl Fn(&Self) -> Option<T>) -> Option<T> {
        let others = self.also.iter().map(Arc::as_ref);
        std::iter::once(self).chain(others).find_map(read)
    }

    /// The facts under its own name.
    fn own(&self) -> impl Iterator<Item = (&CommandId, &F)> {
        self.facts
            .iter()
            .map(|((command, _), (_, fact))| (command, fact))
    }
}

/// What stands of things said, by what they were said of: who said it, what, and the commands
/// of all that was said of it, for a device to name as seen.
pub type Standing<'a, K, F> = BTreeMap<K, (&'a Stamp, &'a F, Vec<CommandId>)>;

impl<F> Beside<F> {
    /// Of facts that replace each other, the one that stands for each key. `pick` says what a
    /// fact is said of and which others its author had seen; nothing for what is not asked for.
    pub(crate) fn standing<'a, K: Ord>(
        &'a self,
        pick: impl Fn(&'a F) -> Option<(K, &'a Vec<CommandId>)>,
    ) -> Standing<'a, K, F> {
        let mut groups: BTreeMap<K, Vec<Telling<'a, (&'a Stamp, &'a F)>>> = BTreeMap::new();
        for (command, stamp, fact) in self.facts() {
            if let Some((key, after)) = pick(fact) {
                let group = groups.entry(key).or_default();
                group.push((command, (stamp, fact), after));
            }
        }
        let stands = |(key, group): (K, Vec<Telling<'a, (&'a Stamp, &'a F)>>)| {
            let (stamp, fact) = latest_of(&group)?;
            let seen = group.iter().map(|(command, ..)| (*command).clone());
            Some((key, (stamp, fact, seen.collect())))
        };
        groups.into_iter().filter_map(stands).collect()
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

/// Which other name stands, of facts that replace each other, and the commands of all of them.
fn same<'a, F: 'a, Id: 'a>(
    facts: impl Iterator<Item = (&'a CommandId, &'a F)>,
    pick: impl Fn(&'a F) -> Option<(Option<&'a Id>, &'a Vec<CommandId>)>,
) -> (Option<&'a Id>, Vec<CommandId>) {
    let told: Vec<Telling<'a, Option<&'a Id>>> = facts
        .filter_map(|(command, fact)| {
            let (id, after) = pick(fact)?;
            Some((command, id, after))
        })
        .collect();
    let seen = told.iter().map(|(command, ..)| (*command).clone());
    let seen = seen.collect();
    (latest_of(&told).flatten(), seen)
}

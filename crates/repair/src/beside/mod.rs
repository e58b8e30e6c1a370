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
    Can, Language, Letterhead, Role, Settings, Shop, ShopFact, StallIs, Units, Weights,
};
pub use vehicle::{Vehicle, VehicleFact, VinRead};
pub use week::{DaySpan, Week};
pub use work_times::DaysOff;

use crate::ids::CommandId;
use crate::order::{Recorded, Stamp};
use crate::text::Words;
use crate::told::{Telling, latest_of};
use std::collections::BTreeMap;

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
}

/// Facts of one stream by the command that carried them, as filed.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Beside<F> {
    facts: BTreeMap<(CommandId, u32), (Stamp, F)>,
}

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

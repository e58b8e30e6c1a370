//! What was said of the items: how often, by whom, and where it contradicts itself.

use crate::job::{About, Told};
use crate::learner::Learner;
use measure::{Decimal, Dimension, Unit};
use states::{ItemId, Kind};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

/// One thing that was said of an item, by all who said it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Value {
    /// As it was written most often; of equals, the least.
    pub value: String,
    /// In how many jobs.
    pub times: u32,
    /// By whom, people and published sources.
    pub by: BTreeSet<String>,
}

/// All that was said of an item in one respect, the most frequent first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Gathered {
    /// The item.
    pub item: ItemId,
    /// In which respect.
    pub about: About,
    /// What was said.
    pub values: Vec<Value>,
    /// In how many jobs the item was moved.
    pub of: u32,
}

/// What contradicts itself, to be asked.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Disagreement {
    /// Only one of these can be right.
    Values(Gathered),
    /// Jobs make different kinds of thing of one item.
    Kinds {
        /// The item.
        item: ItemId,
        /// The kinds, and in how many jobs each.
        kinds: BTreeMap<Kind, u32>,
    },
}

/// Everything told, counted so that it can be taken back.
#[derive(Debug, Clone, Default)]
pub(crate) struct Facts(BTreeMap<(ItemId, About), BTreeMap<String, Counted>>);

#[derive(Debug, Clone, Default)]
struct Counted {
    jobs: u32,
    written: BTreeMap<String, u32>,
    by: BTreeMap<String, u32>,
}

impl Facts {
    /// Counts what one job told; every value once, however many said it.
    pub(crate) fn count(&mut self, told: &[Told], add: bool) {
        let mut counted = BTreeSet::new();
        for one in told {
            let key = (one.item.clone(), one.about);
            let same = same_value(one.about, &one.value);
            let values = self.0.entry(key.clone()).or_default();
            let value = values.entry(same.clone()).or_default();
            if counted.insert((key.clone(), same.clone())) {
                change(&mut value.jobs, add);
            }
            change(
                value
                    .written
                    .entry(one.value.trim().to_owned())
                    .or_default(),
                add,
            );
            change(value.by.entry(one.by.clone()).or_default(), add);
            value.written.retain(|_, times| *times > 0);
            value.by.retain(|_, times| *times > 0);
            if value.written.is_empty() {
                values.remove(&same);
            }
            if values.is_empty() {
                self.0.remove(&key);
            }
        }
    }
}

fn change(count: &mut u32, add: bool) {
    *count = match add {
        true => *count + 1,
        false => count.saturating_sub(1),
    };
}

/// What is the same said in other words is one value: `8 Nm` and `8.0 N m`, `Pliers` and
/// `pliers`. A torque given in another unit is the same only to the last digit.
fn same_value(about: About, value: &str) -> String {
    let plain = || {
        let words: Vec<_> = value.split_whitespace().collect();
        words.join(" ").to_lowercase()
    };
    let in_unit = |text: &str, dimension: Dimension, unit: Unit| -> Option<Decimal> {
        let measured = measure::read(text, dimension).ok()?;
        Some(measured.convert(unit).ok()?.number().normalize())
    };
    match about {
        About::Length(_) => in_unit(value, Dimension::Length, Unit::Millimetre)
            .map_or_else(plain, |number| format!("{number} mm")),
        About::Torque => {
            let pass = |text: &str| {
                let torque = in_unit(text, Dimension::Torque, Unit::NewtonMetre);
                let angle = || in_unit(text, Dimension::Angle, Unit::Degree);
                let torque = torque.map(|number| format!("{number} Nm"));
                torque.or_else(|| angle().map(|number| format!("{number} deg")))
            };
            let passes: Option<Vec<String>> = value.split(", ").map(pass).collect();
            passes.map_or_else(plain, |passes| passes.join(", "))
        }
        _ => plain(),
    }
}

impl Learner {
    /// All that was told of the items, by item and respect.
    #[must_use]
    pub fn gathered(&self) -> Vec<Gathered> {
        let moved = |item: &ItemId| {
            self.kinds()
                .get(item)
                .map_or(0, |kinds| kinds.values().sum())
        };
        let each = self.facts.0.iter().map(|((item, about), values)| {
            let mut values: Vec<Value> = values.values().map(Counted::value).collect();
            values.sort_by(|a, b| b.times.cmp(&a.times).then(a.value.cmp(&b.value)));
            Gathered {
                item: item.clone(),
                about: *about,
                values,
                of: moved(item),
            }
        });
        each.collect()
    }

    /// What contradicts itself, to be asked: nothing is settled by counting heads.
    #[must_use]
    pub fn disagreements(&self) -> Vec<Disagreement> {
        let kinds = self.kinds().iter().filter(|(_, kinds)| kinds.len() > 1);
        let kinds = kinds.map(|(item, kinds)| Disagreement::Kinds {
            item: item.clone(),
            kinds: kinds.clone(),
        });
        let values = self.gathered().into_iter();
        let values = values.filter(|one| one.about.is_single() && one.values.len() > 1);
        kinds.chain(values.map(Disagreement::Values)).collect()
    }
}

impl Counted {
    fn value(&self) -> Value {
        let most = self
            .written
            .iter()
            .max_by(|a, b| a.1.cmp(b.1).then(b.0.cmp(a.0)));
        Value {
            value: most.map_or_else(String::new, |(written, _)| written.clone()),
            times: self.jobs,
            by: self.by.keys().cloned().collect(),
        }
    }
}

impl fmt::Display for Value {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let by: Vec<_> = self.by.iter().map(String::as_str).collect();
        let jobs = if self.times == 1 { "job" } else { "jobs" };
        write!(
            f,
            "{} ({}, {} {jobs})",
            self.value,
            by.join(", "),
            self.times
        )
    }
}

impl fmt::Display for Disagreement {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Disagreement::Values(gathered) => {
                let values: Vec<_> = gathered.values.iter().map(Value::to_string).collect();
                let Gathered { item, about, .. } = gathered;
                write!(
                    f,
                    "{item}, {about}: {}; which is right?",
                    values.join(" or ")
                )
            }
            Disagreement::Kinds { item, kinds } => {
                let kinds: Vec<_> = kinds
                    .iter()
                    .map(|(kind, times)| format!("{} ({times})", word(*kind)))
                    .collect();
                write!(
                    f,
                    "{item}: {}; which is it, or are they two things?",
                    kinds.join(" or ")
                )
            }
        }
    }
}

fn word(kind: Kind) -> &'static str {
    match kind {
        Kind::Part => "part",
        Kind::Cover => "cover",
        Kind::Hose => "hose",
        Kind::Seal => "seal",
        Kind::Belt => "belt",
        Kind::Fasteners => "fasteners",
        Kind::Clips => "clips",
        Kind::Connector => "connector",
        Kind::Fluid => "fluid",
        Kind::Work => "work",
        Kind::PutIn => "put-in",
    }
}

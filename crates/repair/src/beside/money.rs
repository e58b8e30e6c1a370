//! What the shop goes by when it prices: rates, what goes on top of costs, fees, how sums are
//! rounded, and the jobs it keeps at a fixed price.

use super::shop::{Shop, ShopFact};
use crate::ids::{CommandId, JobId};
use crate::told::{Telling, latest_of};
use price::{
    Bands, Coin, Disposal, Fault, FixedJob, HoursBy, Rate, Rates, Supplies, TaxRounding, Terms,
};
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};

/// What the shop goes by when it prices, beside its own rate and its taxes.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct MoneyRules {
    /// Rates for kinds of work and grades of people.
    pub rates: Vec<Rate>,
    /// Which hours are charged.
    pub hours_by: HoursBy,
    /// What goes on top of what a part costs.
    pub parts: Bands,
    /// What goes on top of what work sent out costs.
    pub sublet: Bands,
    /// Shop supplies.
    pub supplies: Option<Supplies>,
    /// What it costs to get rid of things.
    pub disposal: Vec<Disposal>,
    /// How taxes are rounded.
    pub rounding: TaxRounding,
    /// The smallest coin that is paid with.
    pub coin: Option<Coin>,
}

impl MoneyRules {
    /// The rates, with the shop's own.
    #[must_use]
    pub fn rates(&self, hour: Decimal) -> Rates {
        Rates {
            hour,
            rates: self.rates.clone(),
        }
    }

    /// What holds for an order's sums, as far as the shop says.
    #[must_use]
    pub fn terms(&self) -> Terms {
        Terms {
            rounding: self.rounding,
            exempt: None,
            coin: self.coin,
        }
    }

    /// Refuses rules that make no sense.
    ///
    /// # Errors
    /// [`Fault`], the first there is.
    pub fn check(&self, hour: Decimal, minor_digits: u32) -> Result<(), Fault> {
        self.rates(hour).check()?;
        let within = |what: &str, fault: Fault| Fault {
            at: format!("{what}, {}", fault.at),
            ..fault
        };
        self.parts.check().map_err(|fault| within("parts", fault))?;
        self.sublet
            .check()
            .map_err(|fault| within("work sent out", fault))?;
        if let Some(supplies) = &self.supplies {
            supplies.check()?;
        }
        for disposal in &self.disposal {
            disposal.check()?;
        }
        self.coin.map_or(Ok(()), |coin| coin.check(minor_digits))
    }
}

impl Shop {
    /// The rules told last; those of a shop that never told any, otherwise.
    #[must_use]
    pub fn money(&self) -> MoneyRules {
        let told: Vec<Telling<'_, &MoneyRules>> = self
            .facts()
            .filter_map(|(command, _, fact)| match fact {
                ShopFact::MoneyTold { rules, after } => Some((command, rules, after)),
                _ => None,
            })
            .collect();
        latest_of(&told).cloned().unwrap_or_default()
    }

    /// The rules told so far, for a device to name as seen.
    #[must_use]
    pub fn money_told(&self) -> Vec<&CommandId> {
        let told = self.facts();
        told.filter(|(_, _, fact)| matches!(fact, ShopFact::MoneyTold { .. }))
            .map(|(command, ..)| command)
            .collect()
    }

    /// The fixed-price jobs that the shop keeps, in the sequence they were first kept.
    #[must_use]
    pub fn jobs(&self) -> Vec<(&JobId, &FixedJob)> {
        let mut first: BTreeMap<&JobId, (jiff::Timestamp, &CommandId)> = BTreeMap::new();
        let mut told: BTreeMap<&JobId, Vec<Telling<'_, &FixedJob>>> = BTreeMap::new();
        let mut dropped: BTreeSet<&JobId> = BTreeSet::new();
        for (command, stamp, fact) in self.facts() {
            match fact {
                ShopFact::JobKept { id, job, after } => {
                    let at = (stamp.at, command);
                    let known = first.entry(id).or_insert(at);
                    *known = (*known).min(at);
                    told.entry(id).or_default().push((command, job, after));
                }
                ShopFact::JobDropped { id } => {
                    dropped.insert(id);
                }
                _ => {}
            }
        }
        let mut out: Vec<_> = told
            .iter()
            .filter(|(id, _)| !dropped.contains(*id))
            .filter_map(|(id, tellings)| Some((first.get(*id)?, *id, latest_of(tellings)?)))
            .collect();
        out.sort_by(|one, other| one.0.cmp(other.0));
        out.into_iter().map(|(_, id, job)| (id, job)).collect()
    }

    /// What was told of a fixed-price job so far, for a device to name as seen.
    #[must_use]
    pub fn job_told(&self, of: &JobId) -> Vec<&CommandId> {
        let told = self.facts();
        told.filter(|(_, _, fact)| matches!(fact, ShopFact::JobKept { id, .. } if id == of))
            .map(|(command, ..)| command)
            .collect()
    }
}

//! The way from a snag to a sound joint, in one shop: its units, its weights, and what a way
//! adds to the price. The ways themselves are found by `calculators`.

use crate::amount::Amount;
use crate::say;
use crate::view::OrderView;
use crate::world::World;
use calculators::Shop;
pub use calculators::mending::*;
use fastener::repair::{Planning, Weights};
use measure::Customary;
use record::v1::codes::PayerForm;
use rust_decimal::prelude::ToPrimitive;
use rust_decimal::{Decimal, RoundingStrategy};

/// What a calculator may know of this shop.
#[must_use]
pub fn known(world: &World) -> Shop {
    Shop {
        customary: customary(world),
        altitude: world
            .shop
            .altitude()
            .map(|(told, _)| told.as_str().to_owned()),
        planning: planning(world),
    }
}

/// The shop's planning figures: those to start from, with its own weights.
#[must_use]
pub fn planning(world: &World) -> Planning {
    let mut planning = Planning::default();
    if let Some(told) = world.shop.weights() {
        let share = |weight: Decimal| weight.to_f64().unwrap_or(0.0).max(0.0);
        let sum =
            share(told.margin) + share(told.time) + share(told.cost) + share(told.reversibility);
        if sum > 0.0 {
            planning.weights = Weights {
                margin: share(told.margin) / sum,
                time: share(told.time) / sum,
                cost: share(told.cost) / sum,
                reversibility: share(told.reversibility) / sum,
            };
        }
    }
    planning
}

/// The units that the shop reads.
#[must_use]
pub fn customary(world: &World) -> Customary {
    match world.shop.settings().map(|settings| settings.units) {
        Some(repair::Units::Us) => Customary::Us,
        Some(repair::Units::Metric) | None => Customary::Metric,
    }
}

/// What a way adds to what the customer pays, before tax.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Added {
    /// Hours of labour, as they stand in an entry.
    pub hours: Option<Amount>,
    /// The rate of one hour.
    pub rate: Amount,
    /// What the parts come to.
    pub parts: Option<Amount>,
    /// What the whole price comes to then.
    pub now: Amount,
    /// By how much that passes what was agreed to, where it does.
    pub over: Option<Amount>,
    /// Whether the sums count tax, as the agreement does.
    pub with_tax: bool,
}

/// What a way adds to an order, at the shop's rate.
///
/// The sum with tax is not known before the price is set: where tax is within what was agreed,
/// nothing is said of it.
#[must_use]
pub fn added(order: &OrderView, way: &WayTold, rate: Decimal, digits: u32) -> Added {
    let number = |text: &str| text.parse::<Decimal>().unwrap_or_default();
    let hours = way
        .minutes
        .as_ref()
        .map(|minutes| number(&minutes.mid) / Decimal::from(60))
        .map(|hours| hours.round_dp_with_strategy(10, RoundingStrategy::MidpointAwayFromZero));
    let parts = way.cost.as_ref().map(|cost| number(&cost.mid));
    let total = order
        .totals
        .iter()
        .find(|total| total.payer == PayerForm::Customer);
    let labour = hours
        .unwrap_or_default()
        .saturating_mul(rate)
        .round_dp_with_strategy(digits, RoundingStrategy::MidpointAwayFromZero);
    let now = total
        .map_or(Decimal::ZERO, |total| number(total.net.exact()))
        .saturating_add(labour)
        .saturating_add(parts.unwrap_or_default());
    let with_tax = total.is_some_and(|total| total.ceiling_with_tax);
    let ceiling = total
        .filter(|_| !with_tax)
        .and_then(|total| total.ceiling.as_ref())
        .map(|ceiling| number(ceiling.exact()));
    Added {
        hours: hours.map(|hours| hours.normalize().into()),
        rate: rate.normalize().into(),
        parts: parts
            .filter(|parts| !parts.is_zero())
            .map(|parts| say::money(parts, digits)),
        now: say::money(now, digits),
        over: ceiling
            .filter(|ceiling| now > *ceiling)
            .map(|ceiling| say::money(now.saturating_sub(ceiling), digits)),
        with_tax,
    }
}

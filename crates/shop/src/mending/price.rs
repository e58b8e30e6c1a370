//! What a way adds to the price.

use super::told::WayTold;
use crate::say;
use crate::view::OrderView;
use record::v1::codes::PayerForm;
use rust_decimal::{Decimal, RoundingStrategy};

/// What a way adds to what the customer pays, before tax.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Added {
    /// Hours of labour, as they stand in an entry.
    pub hours: Option<String>,
    /// The rate of one hour.
    pub rate: String,
    /// What the parts come to.
    pub parts: Option<String>,
    /// What the whole price comes to then.
    pub now: String,
    /// By how much that passes what was agreed to, where it does.
    pub over: Option<String>,
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
        .map_or(Decimal::ZERO, |total| number(&total.net))
        .saturating_add(labour)
        .saturating_add(parts.unwrap_or_default());
    let with_tax = total.is_some_and(|total| total.ceiling_with_tax);
    let ceiling = total
        .filter(|_| !with_tax)
        .and_then(|total| total.ceiling.as_deref())
        .map(number);
    Added {
        hours: hours.map(|hours| hours.normalize().to_string()),
        rate: rate.normalize().to_string(),
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

//! What was agreed, and by how much a sum passes it.

use crate::leeway::Leeway;
use crate::totals::Totals;
use rust_decimal::Decimal;

/// The most a payer agreed to.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Ceiling {
    /// The amount.
    pub amount: Decimal,
    /// Whether tax is within it.
    pub tax_included: bool,
}

/// A sum that passes its ceiling.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Over {
    /// The ceiling.
    pub ceiling: Ceiling,
    /// The sum, with or without tax as the ceiling is.
    pub sum: Decimal,
    /// The difference.
    pub by: Decimal,
}

/// By how much a payer's sum passes the ceiling; any excess counts, however small.
///
/// ```
/// use price::{Ceiling, Totals, over};
/// let sums = Totals { net: 90.into(), tax: 9.into(), gross: 99.into() };
/// let before_tax = Ceiling { amount: 95.into(), tax_included: false };
/// let with_tax = Ceiling { amount: 95.into(), tax_included: true };
/// assert!(over(&sums, before_tax).is_none());
/// assert_eq!(over(&sums, with_tax).map(|over| over.by), Some(4.into()));
/// ```
#[must_use]
pub fn over(totals: &Totals, ceiling: Ceiling) -> Option<Over> {
    let sum = if ceiling.tax_included {
        totals.gross
    } else {
        totals.net
    };
    (sum > ceiling.amount).then(|| Over {
        ceiling,
        sum,
        by: sum.saturating_sub(ceiling.amount),
    })
}

/// The same, where a rule lets some of the excess pass without asking again.
///
/// ```
/// use price::{Ceiling, Leeway, Totals, over_by_rule};
/// let ten = Leeway { percent: 10.into(), ..Leeway::default() };
/// let ceiling = Ceiling { amount: 100.into(), tax_included: false };
/// let sums = |net: u32| Totals { net: net.into(), tax: 0.into(), gross: net.into() };
/// assert!(over_by_rule(&sums(110), ceiling, &ten, 2).is_none());
/// assert_eq!(over_by_rule(&sums(111), ceiling, &ten, 2).map(|over| over.by), Some(11.into()));
/// ```
#[must_use]
pub fn over_by_rule(
    totals: &Totals,
    ceiling: Ceiling,
    leeway: &Leeway,
    minor_digits: u32,
) -> Option<Over> {
    over(totals, ceiling).filter(|over| over.sum > leeway.limit(ceiling.amount, minor_digits))
}

/// How much to take off the net sum so that it no longer passes the ceiling. Where
/// tax is within the ceiling, the net is brought down in proportion and rounded
/// down to the smallest coin, so that rounding never passes the ceiling again.
#[must_use]
pub fn write_down(totals: &Totals, ceiling: Ceiling, minor_digits: u32) -> Decimal {
    let Some(found) = over(totals, ceiling) else {
        return Decimal::ZERO;
    };
    if !ceiling.tax_included {
        return found.by;
    }
    let share = ceiling
        .amount
        .checked_div(totals.gross)
        .unwrap_or(Decimal::ZERO);
    let net = totals
        .net
        .checked_mul(share)
        .unwrap_or(Decimal::ZERO)
        .trunc_with_scale(minor_digits);
    let coin = Decimal::new(1, minor_digits.min(28));
    let mut off = totals.net.saturating_sub(net);
    while over(
        &crate::totals::after_write_down(totals, off, minor_digits),
        ceiling,
    )
    .is_some()
        && off < totals.net
    {
        off = off.saturating_add(coin);
    }
    off
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::totals::after_write_down;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_write_down_always_reaches_the_ceiling(
            net in 1i64..10_000_000, tax in 0i64..2_000_000, agreed in 0i64..10_000_000,
            tax_included in any::<bool>(),
        ) {
            let totals = Totals {
                net: Decimal::new(net, 2),
                tax: Decimal::new(tax, 2),
                gross: Decimal::new(net + tax, 2),
            };
            let ceiling = Ceiling { amount: Decimal::new(agreed, 2), tax_included };
            let off = write_down(&totals, ceiling, 2);
            prop_assert!(off >= Decimal::ZERO && off <= totals.net);
            prop_assert!(over(&after_write_down(&totals, off, 2), ceiling).is_none());
        }
    }
}

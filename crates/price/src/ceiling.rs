//! What was agreed, and by how much a sum passes it.

use crate::leeway::Leeway;
use crate::totals::{Totals, after_write_down, rounded};
use rust_decimal::Decimal;
use std::cmp::Ordering;

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

/// The ceiling that leaves the least room: sums with and without tax are compared in one
/// measure, by the share of tax in what the payer's own sum comes to.
///
/// # Limits
/// Before there is a sum its share of tax is not known, and is taken for nought.
///
/// ```
/// use price::{Ceiling, Totals, strictest};
/// let before_tax = Ceiling { amount: 90.into(), tax_included: false };
/// let with_tax = Ceiling { amount: 100.into(), tax_included: true };
/// let sums = Totals { net: 80.into(), tax: 16.into(), gross: 96.into() };
/// // 90 before tax would be 108 with it.
/// assert_eq!(strictest([before_tax, with_tax], Some(&sums)), Some(with_tax));
/// assert_eq!(strictest([before_tax, with_tax], None), Some(before_tax));
/// ```
#[must_use]
pub fn strictest(
    ceilings: impl IntoIterator<Item = Ceiling>,
    totals: Option<&Totals>,
) -> Option<Ceiling> {
    ceilings.into_iter().min_by(|one, other| {
        in_one_measure(*one, *other, totals).then(other.tax_included.cmp(&one.tax_included))
    })
}

/// Compares without dividing, so that nothing is rounded.
fn in_one_measure(one: Ceiling, other: Ceiling, totals: Option<&Totals>) -> Ordering {
    let bare = one.amount.cmp(&other.amount);
    let Some(sums) = totals.filter(|_| one.tax_included != other.tax_included) else {
        return bare;
    };
    if sums.net <= Decimal::ZERO || sums.gross <= Decimal::ZERO {
        return bare;
    }
    let measured = |ceiling: Ceiling| {
        let by = if ceiling.tax_included {
            sums.net
        } else {
            sums.gross
        };
        ceiling.amount.checked_mul(by)
    };
    match (measured(one), measured(other)) {
        (Some(one), Some(other)) => one.cmp(&other),
        _ => bare,
    }
}

/// A sum brought down to its ceiling.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WriteDown {
    /// What is taken off before tax.
    pub off: Decimal,
    /// What is left to pay.
    pub after: Totals,
}

/// What to take off the net sum so that what is left to pay is the ceiling to the coin;
/// nothing, if the sum is within it. Where tax is within the ceiling, the net is brought
/// down in proportion and rounded, and the rest of the ceiling is tax: so tax may differ
/// from its per cent by less than a coin, and the sum is the one that was named.
///
/// ```
/// use price::{Ceiling, Totals, write_down};
/// let sums = Totals { net: 1300.into(), tax: 247.into(), gross: 1547.into() };
/// let agreed = Ceiling { amount: 1440.into(), tax_included: true };
/// let down = write_down(&sums, agreed, 2).unwrap();
/// assert_eq!(down.after.gross.to_string(), "1440.00");
/// assert_eq!((down.after.net + down.off).to_string(), "1300.00");
/// ```
#[must_use]
pub fn write_down(totals: &Totals, ceiling: Ceiling, minor_digits: u32) -> Option<WriteDown> {
    over(totals, ceiling)?;
    if totals.net <= Decimal::ZERO {
        return None;
    }
    let mut agreed = ceiling
        .amount
        .max(Decimal::ZERO)
        .trunc_with_scale(minor_digits.min(28));
    agreed.rescale(minor_digits);
    if !ceiling.tax_included {
        let off = totals.net.checked_sub(agreed)?;
        return Some(WriteDown {
            off,
            after: after_write_down(totals, off, minor_digits),
        });
    }
    let share = totals.net.checked_mul(agreed)?.checked_div(totals.gross)?;
    let net = rounded(share, minor_digits).min(totals.net);
    Some(WriteDown {
        off: totals.net.checked_sub(net)?,
        after: Totals {
            net,
            tax: agreed.checked_sub(net)?,
            gross: agreed,
        },
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn ceiling(amount: i64, tax_included: bool) -> Ceiling {
        Ceiling {
            amount: Decimal::new(amount, 2),
            tax_included,
        }
    }

    fn sums(net: i64, tax: i64) -> Totals {
        Totals {
            net: Decimal::new(net, 2),
            tax: Decimal::new(tax, 2),
            gross: Decimal::new(net + tax, 2),
        }
    }

    proptest! {
        #[test]
        fn a_write_down_always_reaches_the_ceiling_to_the_coin(
            net in 1i64..10_000_000, percent in 0i64..60, agreed in 0i64..10_000_000,
            tax_included in any::<bool>(),
        ) {
            let totals = sums(net, net * percent / 100);
            let agreed = ceiling(agreed, tax_included);
            let Some(down) = write_down(&totals, agreed, 2) else {
                prop_assert!(over(&totals, agreed).is_none());
                return Ok(());
            };
            prop_assert!(down.off >= Decimal::ZERO && down.off <= totals.net);
            prop_assert_eq!(down.after.net + down.off, totals.net);
            prop_assert_eq!(down.after.net + down.after.tax, down.after.gross);
            let left = if tax_included { down.after.gross } else { down.after.net };
            prop_assert_eq!(left, agreed.amount);
            // Tax stays within two coins of its share: one for each rounding.
            let exact = down.after.net * totals.tax / totals.net;
            prop_assert!((down.after.tax - exact).abs() < Decimal::new(2, 2), "{} {}", down.after.tax, exact);
        }

        /// Whoever keeps to the strictest keeps to every one, to the coin.
        #[test]
        fn within_the_strictest_is_within_all(
            net in 100i64..1_000_000, percent in 0i64..30,
            all in proptest::collection::vec((0i64..1_000_000, any::<bool>()), 1..5),
        ) {
            let totals = sums(net, net * percent / 100);
            let all: Vec<_> = all.into_iter().map(|(amount, tax)| ceiling(amount, tax)).collect();
            let least = strictest(all.iter().copied(), Some(&totals)).unwrap();
            if over(&totals, least).is_none() {
                for one in all {
                    prop_assert!(over(&totals, one).is_none(), "{one:?} {least:?} {totals:?}");
                }
            }
        }
    }
}

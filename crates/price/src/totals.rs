//! What entries come to, for each payer.

use crate::bill::{Taxing, bills};
use crate::entry::{Entry, Payer, TaxRule};
use crate::round::Round;
use rust_decimal::Decimal;
use std::collections::BTreeMap;
use thiserror::Error;

/// The sums of one payer, in the order's currency.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Totals {
    /// Before tax.
    pub net: Decimal,
    /// Tax.
    pub tax: Decimal,
    /// With tax.
    pub gross: Decimal,
}

/// A sum that is more than can be held, or more than any shop charges.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Error)]
#[error("{}", crate::phrases::too_large())]
pub struct TooLarge;

/// The largest sum there is: a million million. Above it is a slip of the finger,
/// and far below what the numbers hold, so that nothing has to be cut.
const LARGEST: Decimal = Decimal::from_parts(3_567_587_328, 232, 0, false, 0);

/// The sum itself, if it is one that can be charged.
pub(crate) fn within(sum: Option<Decimal>) -> Result<Decimal, TooLarge> {
    sum.filter(|sum| sum.abs() <= LARGEST).ok_or(TooLarge)
}

/// Rounds a sum of money to the smallest coin, half away from zero.
///
/// The strategy is named here once, because the library's own default rounds half
/// to even, which no till does.
///
/// ```
/// use rust_decimal::Decimal;
/// assert_eq!(price::rounded(Decimal::new(2_345, 3), 2).to_string(), "2.35");
/// assert_eq!(price::rounded(Decimal::new(2, 0), 2).to_string(), "2.00");
/// ```
#[must_use]
pub fn rounded(amount: Decimal, minor_digits: u32) -> Decimal {
    Round::HalfUp.to_digits(amount, minor_digits)
}

/// The amount of one entry, rounded to the smallest coin, less what is taken off it.
///
/// # Errors
/// [`TooLarge`].
///
/// ```
/// use price::{Charge, Entry, Payer, TooLarge, amount};
/// let part = |each| Entry {
///     line: None,
///     charge: Charge::Part,
///     label: None,
///     quantity: 3.into(),
///     each,
///     payer: Payer::Customer,
///     less: Vec::new(),
/// };
/// assert_eq!(amount(&part("0.335".parse().unwrap()), 2).unwrap().to_string(), "1.01");
/// assert_eq!(amount(&part(rust_decimal::Decimal::MAX), 2), Err(TooLarge));
/// ```
pub fn amount(entry: &Entry, minor_digits: u32) -> Result<Decimal, TooLarge> {
    let whole = full_amount(entry, minor_digits)?;
    let less = sum(entry.less.iter().map(|less| Ok(less.amount)))?;
    within(whole.checked_sub(less)).map(|amount| rounded(amount, minor_digits))
}

/// The same with nothing taken off.
///
/// # Errors
/// [`TooLarge`].
pub fn full_amount(entry: &Entry, minor_digits: u32) -> Result<Decimal, TooLarge> {
    within(entry.quantity.checked_mul(entry.each)).map(|sum| rounded(sum, minor_digits))
}

/// What the entries come to for each payer: every entry is rounded to the smallest
/// coin, each tax is taken on the sum it falls on and rounded once.
///
/// # Errors
/// [`TooLarge`]: no sum is cut in silence.
pub fn totals(
    entries: &[Entry],
    taxes: &[TaxRule],
    minor_digits: u32,
) -> Result<BTreeMap<Payer, Totals>, TooLarge> {
    let all = bills(entries, &Taxing::of(taxes), minor_digits)?;
    Ok(all
        .into_iter()
        .map(|(payer, bill)| (payer, bill.totals))
        .collect())
}

impl Totals {
    /// Both together.
    ///
    /// # Errors
    /// [`TooLarge`].
    pub fn plus(&self, other: &Totals) -> Result<Totals, TooLarge> {
        Ok(Totals {
            net: within(self.net.checked_add(other.net))?,
            tax: within(self.tax.checked_add(other.tax))?,
            gross: within(self.gross.checked_add(other.gross))?,
        })
    }
}

/// The sums of one payer with the amount written down taken off the net, tax in
/// proportion.
#[must_use]
pub fn after_write_down(totals: &Totals, written_down: Decimal, minor_digits: u32) -> Totals {
    if totals.net.is_zero() {
        return totals.clone();
    }
    let net = rounded(totals.net.saturating_sub(written_down), minor_digits);
    let share = net.checked_div(totals.net).unwrap_or(Decimal::ONE);
    let tax = rounded(
        totals.tax.checked_mul(share).unwrap_or(totals.tax),
        minor_digits,
    );
    Totals {
        net,
        tax,
        gross: rounded(net.saturating_add(tax), minor_digits),
    }
}

pub(crate) fn sum(
    mut amounts: impl Iterator<Item = Result<Decimal, TooLarge>>,
) -> Result<Decimal, TooLarge> {
    amounts.try_fold(Decimal::ZERO, |sum, amount| {
        within(sum.checked_add(amount?))
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Charge, TaxOn};
    use proptest::prelude::*;

    fn entry(charge: Charge, quantity: &str, each: &str, payer: Payer) -> Entry {
        Entry {
            line: None,
            charge,
            label: None,
            quantity: quantity.parse().unwrap(),
            each: each.parse().unwrap(),
            payer,
            less: Vec::new(),
        }
    }

    fn parts_tax(percent: &str) -> TaxRule {
        let on = TaxOn {
            labour: false,
            parts: true,
            other: false,
        };
        TaxRule::on_top("tax", percent.parse().unwrap(), on)
    }

    #[test]
    fn the_benchmark_price_before_tax() {
        let hours = (Decimal::from(220) / Decimal::from(60)).to_string();
        let entries = [
            entry(Charge::Labour, &hours, "120", Payer::Customer),
            entry(Charge::Test, "1", "72.00", Payer::Customer),
            entry(Charge::Part, "1", "268.40", Payer::Customer),
        ];
        let sums = totals(&entries, &[], 2).unwrap();
        assert_eq!(sums[&Payer::Customer].net.to_string(), "780.40");
    }

    #[test]
    fn tax_falls_only_on_what_the_rule_names() {
        let entries = [
            entry(Charge::Labour, "1", "100", Payer::Customer),
            entry(Charge::Part, "3", "0.05", Payer::Customer),
            entry(Charge::Part, "1", "10", Payer::Warranty),
        ];
        let sums = totals(&entries, &[parts_tax("10")], 2).unwrap();
        assert_eq!(sums[&Payer::Customer].tax.to_string(), "0.02");
        assert_eq!(sums[&Payer::Warranty].gross.to_string(), "11.00");
    }

    #[test]
    fn a_write_down_takes_tax_with_it() {
        let full = Totals {
            net: 200.into(),
            tax: 20.into(),
            gross: 220.into(),
        };
        let less = after_write_down(&full, 50.into(), 2);
        assert_eq!(
            (
                less.net.to_string(),
                less.tax.to_string(),
                less.gross.to_string()
            ),
            ("150.00".into(), "15.00".into(), "165.00".into())
        );
    }

    #[test]
    fn no_sum_is_cut_in_silence() {
        let large = [
            entry(Charge::Part, "1", "900000000000", Payer::Customer),
            entry(Charge::Part, "1", "900000000000", Payer::Customer),
        ];
        assert_eq!(totals(&large, &[], 2), Err(TooLarge));
        assert!(totals(&large[..1], &[], 2).is_ok());
        assert_eq!(totals(&large[..1], &[parts_tax("20")], 2), Err(TooLarge));
        let beyond = [entry(
            Charge::Part,
            "79228162514264337593543950335",
            "2",
            Payer::Customer,
        )];
        assert_eq!(totals(&beyond, &[], 2), Err(TooLarge));
        let part = [entry(Charge::Part, "1", "10", Payer::Customer)];
        let tax = parts_tax("79228162514264337593543950335");
        assert_eq!(totals(&part, &[tax], 2), Err(TooLarge));
    }

    proptest! {
        #[test]
        fn sums_are_whole_or_refused(
            rows in proptest::collection::vec((any::<i64>(), 0u32..10, any::<i64>(), 0u32..10), 0..8),
            percent in any::<i64>(),
        ) {
            let entries: Vec<_> = rows
                .iter()
                .map(|(q, qs, e, es)| Entry {
                    line: None,
                    charge: Charge::Part,
                    label: None,
                    quantity: Decimal::new(*q, *qs),
                    each: Decimal::new(*e, *es),
                    payer: Payer::Customer,
                    less: Vec::new(),
                })
                .collect();
            let rule = TaxRule { percent: Decimal::new(percent, 4), ..parts_tax("0") };
            if let Ok(all) = totals(&entries, &[rule], 2) {
                for sums in all.values() {
                    prop_assert_eq!(sums.gross, sums.net + sums.tax);
                    let exact: Decimal = entries.iter().map(|entry| amount(entry, 2).unwrap()).sum();
                    prop_assert_eq!(sums.net, exact);
                }
            }
        }
    }
}

//! What is taken off a line or a whole order, with the reason.

use crate::apportion::apportion;
use crate::entry::{Entry, Label, Less, Payer};
use crate::fault::{Fault, Wrong, amount, percent};
use crate::totals::{TooLarge, amount as amount_of, full_amount, rounded};
use rust_decimal::Decimal;

/// A part of a sum.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Portion {
    /// So many per cent of it.
    Percent(Decimal),
    /// So much.
    Amount(Decimal),
}

impl Portion {
    pub(crate) fn check(self, at: &str) -> Result<(), Fault> {
        match self {
            Portion::Percent(off) => percent(at, off, 100),
            Portion::Amount(off) => amount(at, off),
        }
    }

    /// What it comes to of a sum, in whole coins.
    pub(crate) fn of(self, sum: Decimal, minor_digits: u32) -> Option<Decimal> {
        match self {
            Portion::Percent(percent) => crate::bill::share(percent, sum),
            Portion::Amount(amount) => Some(amount),
        }
        .map(|off| rounded(off, minor_digits))
    }

    fn percent(self) -> Option<Decimal> {
        match self {
            Portion::Percent(percent) => Some(percent),
            Portion::Amount(_) => None,
        }
    }
}

/// Takes something off one entry, in place of what was taken off it before by itself. Its
/// share of a discount on the order stays.
///
/// # Errors
/// [`Fault`], where more is taken off than it comes to.
///
/// ```
/// use price::{Charge, Entry, Payer, Portion, amount, off_entry};
/// let part = Entry {
///     line: None,
///     charge: Charge::Part,
///     label: None,
///     quantity: 1.into(),
///     each: "19.99".parse().unwrap(),
///     payer: Payer::Customer,
///     less: Vec::new(),
/// };
/// let less = off_entry(&part, Portion::Percent(10.into()), [7; 32], 2).unwrap();
/// assert_eq!(amount(&less, 2).unwrap().to_string(), "17.99");
/// assert!(off_entry(&part, Portion::Amount(20.into()), [7; 32], 2).is_err());
/// ```
pub fn off_entry(
    entry: &Entry,
    off: Portion,
    why: Label,
    minor_digits: u32,
) -> Result<Entry, Fault> {
    let at = "discount";
    off.check(at)?;
    let mut out = entry.clone();
    out.less.retain(|less| less.of_order);
    let full = full_amount(entry, minor_digits).map_err(|bad| too_large(at, bad))?;
    let left = amount_of(&out, minor_digits).map_err(|bad| too_large(at, bad))?;
    let taken = off
        .of(full, minor_digits)
        .ok_or_else(|| too_large(at, TooLarge))?;
    if taken > left.max(Decimal::ZERO) {
        return Err(more_than(at, taken, left));
    }
    if !taken.is_zero() {
        out.less.push(Less {
            amount: taken,
            percent: off.percent(),
            why,
            of_order: false,
        });
    }
    Ok(out)
}

/// Takes something off all that a payer pays, in place of such a discount before: each line
/// bears its share in whole coins, so that every tax falls on what is left of it, and the
/// shares add up to what is taken off.
///
/// # Errors
/// [`Fault`], where more is taken off than there is.
pub fn off_order(
    entries: &[Entry],
    payer: Payer,
    off: Portion,
    why: Label,
    minor_digits: u32,
) -> Result<Vec<Entry>, Fault> {
    let at = "discount on the order";
    off.check(at)?;
    let mut out = entries.to_vec();
    for entry in &mut out {
        if entry.payer == payer {
            entry.less.retain(|less| !less.of_order);
        }
    }
    // What is given back bears none of it.
    let mut bears = Vec::new();
    let mut weights = Vec::new();
    for (nth, entry) in out.iter().enumerate() {
        let amount = amount_of(entry, minor_digits).map_err(|bad| too_large(at, bad))?;
        if entry.payer == payer && amount > Decimal::ZERO {
            bears.push(nth);
            weights.push(amount);
        }
    }
    let there = weights
        .iter()
        .fold(Decimal::ZERO, |all, weight| all.saturating_add(*weight));
    let taken = off
        .of(there, minor_digits)
        .ok_or_else(|| too_large(at, TooLarge))?;
    if taken > there {
        return Err(more_than(at, taken, there));
    }
    for (nth, amount) in bears.iter().zip(apportion(taken, &weights, minor_digits)) {
        if !amount.is_zero() {
            out[*nth].less.push(Less {
                amount,
                percent: off.percent(),
                why,
                of_order: true,
            });
        }
    }
    Ok(out)
}

/// The entry with its discounts in per cent as they are now, where its count or price was
/// changed since they were reckoned. What is within a coin stays: it is a share of a whole.
///
/// ```
/// use price::{Charge, Entry, Payer, Portion, amount, off_entry, renewed};
/// let part = Entry {
///     line: None,
///     charge: Charge::Part,
///     label: None,
///     quantity: 1.into(),
///     each: 50.into(),
///     payer: Payer::Customer,
///     less: Vec::new(),
/// };
/// let less = off_entry(&part, Portion::Percent(10.into()), [7; 32], 2).unwrap();
/// let two = renewed(&Entry { quantity: 2.into(), ..less }, 2);
/// assert_eq!(amount(&two, 2).unwrap().to_string(), "90.00");
/// ```
#[must_use]
pub fn renewed(entry: &Entry, minor_digits: u32) -> Entry {
    let mut out = entry.clone();
    let coin = Decimal::new(1, minor_digits.min(28));
    let Ok(full) = full_amount(entry, minor_digits) else {
        return out;
    };
    let mut left = full;
    // Its own go first: a share of the order's is of what they leave.
    for of_order in [false, true] {
        for less in out.less.iter_mut().filter(|less| less.of_order == of_order) {
            let of = if of_order { left } else { full };
            let now = less
                .percent
                .and_then(|percent| Portion::Percent(percent).of(of, minor_digits));
            if let Some(now) = now
                && now.saturating_sub(less.amount).abs() > coin
            {
                less.amount = now;
            }
        }
        let own = out.less.iter().filter(|less| !less.of_order);
        let own = own.fold(Decimal::ZERO, |all, less| all.saturating_add(less.amount));
        left = full.saturating_sub(own);
    }
    out
}

fn more_than(at: &str, taken: Decimal, there: Decimal) -> Fault {
    Fault::new(at, Wrong::MoreThanThere { taken, there })
}

fn too_large(at: &str, _: TooLarge) -> Fault {
    Fault::new(at, Wrong::SumTooLarge)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::entry::Charge;
    use proptest::prelude::*;

    fn entry(each: i64, payer: Payer) -> Entry {
        Entry {
            line: None,
            charge: Charge::Part,
            label: None,
            quantity: 1.into(),
            each: Decimal::new(each, 2),
            payer,
            less: Vec::new(),
        }
    }

    fn sum(entries: &[Entry], payer: Payer) -> Decimal {
        let of_payer = entries.iter().filter(|entry| entry.payer == payer);
        of_payer.map(|entry| amount_of(entry, 2).unwrap()).sum()
    }

    proptest! {
        #[test]
        fn the_shares_of_an_order_add_up_to_what_is_taken_off(
            each in proptest::collection::vec(-5_000i64..100_000, 1..10), percent in 0i64..10_001,
        ) {
            let mut entries: Vec<Entry> = each.iter().map(|each| entry(*each, Payer::Customer)).collect();
            entries.push(entry(1_000, Payer::Warranty));
            let there: Decimal = each.iter().filter(|each| **each > 0).map(|each| Decimal::new(*each, 2)).sum();
            let percent = Decimal::new(percent, 2);
            let less = off_order(&entries, Payer::Customer, Portion::Percent(percent), [1; 32], 2).unwrap();
            let taken = rounded(there * percent / Decimal::ONE_HUNDRED, 2);
            prop_assert_eq!(sum(&entries, Payer::Customer) - sum(&less, Payer::Customer), taken);
            prop_assert_eq!(sum(&less, Payer::Warranty), Decimal::TEN);
            // Taken off anew, it stands in the place of the one before.
            let again = off_order(&less, Payer::Customer, Portion::Percent(percent), [1; 32], 2).unwrap();
            prop_assert_eq!(again, less);
        }
    }

    proptest! {
        #[test]
        fn what_was_not_changed_is_not_renewed(
            each in proptest::collection::vec(1i64..100_000, 1..6), own in 0i64..50, all in 0i64..50,
        ) {
            let entries: Vec<Entry> = each.iter().map(|each| entry(*each, Payer::Customer)).collect();
            let entries: Vec<Entry> = entries
                .iter()
                .map(|entry| off_entry(entry, Portion::Percent(own.into()), [2; 32], 2).unwrap())
                .collect();
            let less = off_order(&entries, Payer::Customer, Portion::Percent(all.into()), [1; 32], 2).unwrap();
            for entry in less {
                prop_assert_eq!(renewed(&entry, 2), entry);
            }
        }
    }

    #[test]
    fn more_than_there_is_is_refused_in_words() {
        let entries = [entry(1_000, Payer::Customer)];
        let off = |off| off_order(&entries, Payer::Customer, off, [1; 32], 2);
        assert!(
            off(Portion::Amount(11.into()))
                .unwrap_err()
                .to_string()
                .contains("more than the 10.00")
        );
        assert!(off(Portion::Percent(101.into())).is_err());
        assert!(off(Portion::Amount((-1).into())).is_err());
    }
}

//! Deposits, what is left to pay, and money that settles several sums.

use crate::discount::Portion;
use crate::fault::{Fault, Wrong};
use crate::round::Coin;
use crate::totals::{TooLarge, sum, within};
use measure::{Line, Source, Working};
use rust_decimal::Decimal;

/// Money that came in; below nought, if it was given back.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Payment {
    /// How much.
    pub amount: Decimal,
    /// Whether in coins and notes.
    pub cash: bool,
}

/// How a payer stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Balance {
    /// What they owe in all.
    pub owes: Decimal,
    /// What they paid.
    pub paid: Decimal,
    /// What was paid beyond what was owed, because coins are no smaller; below nought, if less.
    pub by_coin: Decimal,
    /// Left to pay; below nought, if there is money to give back.
    pub left: Decimal,
}

/// How a payer stands. Where the rest was paid in cash to the coin, nothing is left, and the
/// difference is told. In what sequence the money came does not matter.
///
/// # Errors
/// [`TooLarge`].
///
/// ```
/// use price::{Coin, Payment, Round, balance};
/// let nickel = Coin { smallest: "0.05".parse().unwrap(), round: Round::HalfUp };
/// let paid = [Payment { amount: "4.90".parse().unwrap(), cash: true }];
/// let owes = "4.92".parse().unwrap();
/// let stands = balance(owes, &paid, Some(nickel)).unwrap();
/// assert_eq!((stands.left.to_string(), stands.by_coin.to_string()), ("0.00".into(), "-0.02".into()));
/// assert_eq!(balance(owes, &paid, None).unwrap().left.to_string(), "0.02");
/// ```
pub fn balance(
    owes: Decimal,
    payments: &[Payment],
    coin: Option<Coin>,
) -> Result<Balance, TooLarge> {
    let of = |cash: bool| {
        let some = payments.iter().filter(move |payment| payment.cash == cash);
        sum(some.map(|payment| Ok(payment.amount)))
    };
    let (cash, other) = (of(true)?, of(false)?);
    let rest = within(owes.checked_sub(other))?;
    let left = within(rest.checked_sub(cash))?;
    let paid = within(cash.checked_add(other))?;
    let in_coins = coin.filter(|_| !cash.is_zero());
    let to_the_coin = in_coins.is_some_and(|coin| coin.cash(rest).pays == cash);
    let by_coin = if to_the_coin { -left } else { Decimal::ZERO };
    Ok(Balance {
        owes,
        paid,
        by_coin,
        left: within(left.checked_add(by_coin))?,
    })
}

/// What is asked before the work begins.
///
/// # Errors
/// [`Fault`], where it is more than all of it.
///
/// ```
/// use price::{Portion, deposit};
/// let asked = deposit("451.35".parse().unwrap(), Portion::Percent(30.into()), 2).unwrap();
/// assert_eq!(asked.to_string(), "135.41");
/// ```
pub fn deposit(total: Decimal, portion: Portion, minor_digits: u32) -> Result<Decimal, Fault> {
    let at = "deposit";
    portion.check(at)?;
    let asked = portion
        .of(total, minor_digits)
        .ok_or_else(|| Fault::new(at, Wrong::SumTooLarge))?;
    if asked > total.max(Decimal::ZERO) {
        return Err(Fault::new(at, Wrong::MoreThanInAll { asked, total }));
    }
    Ok(asked)
}

/// Money shared out over what is owed, the oldest first.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Settled {
    /// What goes to each of the sums, in their sequence.
    pub each: Vec<Decimal>,
    /// What is left of the money.
    pub left: Decimal,
}

/// Settles sums that were put on account, the oldest first. A sum below nought (a credit)
/// counts as money.
///
/// # Errors
/// [`TooLarge`].
///
/// ```
/// use price::settle;
/// let settled = settle(&[80.into(), (-10).into(), 50.into()], 100.into()).unwrap();
/// assert_eq!(settled.each, [80.into(), (-10).into(), 30.into()]);
/// assert_eq!(settled.left, 0.into());
/// ```
pub fn settle(owed: &[Decimal], money: Decimal) -> Result<Settled, TooLarge> {
    let credits = sum(owed.iter().map(|owed| Ok((*owed).min(Decimal::ZERO))))?;
    let mut left = within(money.checked_sub(credits))?;
    let each = owed
        .iter()
        .map(|owed| {
            if *owed < Decimal::ZERO {
                return *owed;
            }
            let part = (*owed).min(left).max(Decimal::ZERO);
            left = left.saturating_sub(part);
            part
        })
        .collect();
    Ok(Settled { each, left })
}

impl Balance {
    /// How it was found.
    #[must_use]
    pub fn working(&self) -> Working {
        Working::new("Left to pay").line(
            Line::new("left to pay", Source::derived())
                .formula("left", "owed − paid + difference by coin")
                .input("owed", self.owes.to_string())
                .input("paid", self.paid.to_string())
                .input("difference by coin", self.by_coin.to_string())
                .value(self.left.to_string()),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::round::Round;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn money_settles_no_more_than_is_owed_and_none_is_lost(
            owed in proptest::collection::vec(-5_000i64..50_000, 0..8), money in 0i64..200_000,
        ) {
            let owed: Vec<Decimal> = owed.into_iter().map(|owed| Decimal::new(owed, 2)).collect();
            let money = Decimal::new(money, 2);
            let settled = settle(&owed, money).unwrap();
            prop_assert_eq!(settled.each.iter().sum::<Decimal>() + settled.left, money);
            prop_assert!(settled.left >= Decimal::ZERO);
            let mut short = false;
            for (owed, part) in owed.iter().zip(&settled.each) {
                prop_assert!(owed < &Decimal::ZERO || (part >= &Decimal::ZERO && part <= owed));
                // Nothing goes to a younger sum while an older one is open.
                if *owed > Decimal::ZERO {
                    prop_assert!(!short || part.is_zero());
                    short |= part < owed;
                }
            }
        }

        #[test]
        fn paid_in_cash_to_the_coin_is_paid(
            owes in 1i64..100_000, card in 0i64..100_000, coin in prop::sample::select(vec![5i64, 10, 50, 100]),
            parts in 1usize..4,
        ) {
            let coin = Coin { smallest: Decimal::new(coin, 2), round: Round::HalfUp };
            let owes = Decimal::new(owes, 2);
            let mut paid = vec![Payment { amount: Decimal::new(card, 2).min(owes), cash: false }];
            let rest = coin.cash(owes - paid[0].amount).pays;
            // Where the rest is less than half a coin, nobody puts anything down.
            prop_assume!(!rest.is_zero());
            // Whether it is put down at once or bit by bit.
            for nth in 0..parts {
                let amount = if nth == 0 { rest - coin.smallest * Decimal::from(parts - 1) } else { coin.smallest };
                paid.push(Payment { amount, cash: true });
            }
            let stands = balance(owes, &paid, Some(coin)).unwrap();
            prop_assert_eq!(stands.left, Decimal::ZERO);
            prop_assert_eq!(stands.owes + stands.by_coin, stands.paid);
            paid.reverse();
            prop_assert_eq!(balance(owes, &paid, Some(coin)).unwrap(), stands);
        }
    }

    #[test]
    fn a_deposit_of_more_than_all_is_refused() {
        assert!(deposit(100.into(), Portion::Amount(101.into()), 2).is_err());
        assert!(deposit(100.into(), Portion::Percent((-1).into()), 2).is_err());
        assert_eq!(
            deposit(100.into(), Portion::Amount(100.into()), 2),
            Ok(100.into())
        );
    }
}

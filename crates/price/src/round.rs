//! How a sum is brought to a coin, named each time.

use crate::fault::{Fault, Wrong};
use crate::phrases as say;
use crate::working::number;
use measure::{Line, Source, Working};
use rust_decimal::{Decimal, RoundingStrategy};

/// To which side a sum between two coins goes.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum Round {
    /// To the nearer; from the middle away from nought.
    #[default]
    HalfUp,
    /// To the nearer; from the middle towards nought.
    HalfDown,
    /// To the nearer; from the middle to the even one.
    HalfEven,
    /// Towards nought.
    Down,
    /// Away from nought.
    Up,
}

impl Round {
    /// What it is called in a working.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Round::HalfUp => say::half_up(),
            Round::HalfDown => say::half_down(),
            Round::HalfEven => say::half_even(),
            Round::Down => say::down(),
            Round::Up => say::up(),
        }
    }

    fn strategy(self) -> RoundingStrategy {
        match self {
            Round::HalfUp => RoundingStrategy::MidpointAwayFromZero,
            Round::HalfDown => RoundingStrategy::MidpointTowardZero,
            Round::HalfEven => RoundingStrategy::MidpointNearestEven,
            Round::Down => RoundingStrategy::ToZero,
            Round::Up => RoundingStrategy::AwayFromZero,
        }
    }

    /// The sum with so many digits after the point.
    ///
    /// ```
    /// use price::Round;
    /// use rust_decimal::Decimal;
    /// let sum = Decimal::new(2_345, 3);
    /// assert_eq!(Round::HalfUp.to_digits(sum, 2).to_string(), "2.35");
    /// assert_eq!(Round::HalfDown.to_digits(sum, 2).to_string(), "2.34");
    /// assert_eq!(Round::Up.to_digits(sum, 0).to_string(), "3");
    /// ```
    #[must_use]
    pub fn to_digits(self, sum: Decimal, minor_digits: u32) -> Decimal {
        let mut out = sum.round_dp_with_strategy(minor_digits, self.strategy());
        out.rescale(minor_digits);
        out
    }
}

/// Where the coin is reached: in each line's tax, or once in a tax's sum.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub enum By {
    /// Each tax is taken on the sum it falls on, and rounded once.
    #[default]
    Total,
    /// Each tax is taken on each line and rounded there; the tax is the sum of these.
    Line,
}

/// How taxes are rounded.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct TaxRounding {
    /// To which side.
    pub round: Round,
    /// Where.
    pub by: By,
}

/// The smallest coin that is paid with, where it is larger than the currency's own.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Coin {
    /// What it is worth.
    pub smallest: Decimal,
    /// To which side a sum between two coins goes.
    pub round: Round,
}

/// A sum as it is paid in cash.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Cash {
    /// What is paid.
    pub pays: Decimal,
    /// What is paid beyond the sum; below nought, if less is paid.
    pub difference: Decimal,
}

impl Coin {
    /// Refuses a coin that nothing can be paid with.
    ///
    /// # Errors
    /// [`Fault`].
    pub fn check(&self, minor_digits: u32) -> Result<(), Fault> {
        let at = "smallest coin";
        if self.smallest <= Decimal::ZERO {
            return Err(Fault::new(
                at,
                Wrong::NoCoin {
                    smallest: self.smallest,
                },
            ));
        }
        if self.smallest.normalize().scale() > minor_digits {
            return Err(Fault::new(
                at,
                Wrong::BelowTheUnit {
                    smallest: self.smallest,
                    digits: minor_digits,
                },
            ));
        }
        if self.smallest > Decimal::ONE_THOUSAND {
            return Err(Fault::new(
                at,
                Wrong::MoreThanACoin {
                    smallest: self.smallest,
                },
            ));
        }
        Ok(())
    }

    /// The sum as it is paid in cash. Only the sum is rounded, after every tax.
    ///
    /// # Limits
    /// A sum below half a coin comes to nought where the side says so.
    ///
    /// ```
    /// use price::{Coin, Round};
    /// let nickel = Coin { smallest: "0.05".parse().unwrap(), round: Round::HalfUp };
    /// let paid = nickel.cash("4.92".parse().unwrap());
    /// assert_eq!((paid.pays.to_string(), paid.difference.to_string()), ("4.90".into(), "-0.02".into()));
    /// ```
    #[must_use]
    pub fn cash(&self, sum: Decimal) -> Cash {
        let exact = Cash {
            pays: sum,
            difference: Decimal::ZERO,
        };
        if self.smallest <= Decimal::ZERO {
            return exact;
        }
        let Some(coins) = sum.checked_div(self.smallest) else {
            return exact;
        };
        let Some(mut pays) = self.round.to_digits(coins, 0).checked_mul(self.smallest) else {
            return exact;
        };
        pays.rescale(sum.scale().max(self.smallest.normalize().scale()));
        Cash {
            pays,
            difference: pays.saturating_sub(sum),
        }
    }

    /// How the sum in cash was found.
    #[must_use]
    pub fn working(&self, sum: Decimal) -> Working {
        let cash = self.cash(sum);
        Working::new(say::in_cash()).line(
            Line::new(say::paid_in_cash(), Source::given())
                .formula(say::paid(), say::sum_in_coins(self.round.name()))
                .input(say::sum(), number(sum))
                .input(say::smallest_coin(), number(self.smallest))
                .value(number(cash.pays))
                .note(say::difference(number(cash.difference))),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn cash_is_whole_coins_and_never_a_coin_away(
            cents in -1_000_000i64..1_000_000, coin in prop::sample::select(vec![5i64, 10, 20, 50, 100]),
            round in prop::sample::select(vec![Round::HalfUp, Round::HalfDown, Round::HalfEven, Round::Down, Round::Up]),
        ) {
            let sum = Decimal::new(cents, 2);
            let coin = Coin { smallest: Decimal::new(coin, 2), round };
            let cash = coin.cash(sum);
            prop_assert_eq!(cash.pays % coin.smallest, Decimal::ZERO);
            prop_assert_eq!(sum + cash.difference, cash.pays);
            prop_assert!(cash.difference.abs() < coin.smallest);
            if matches!(round, Round::HalfUp | Round::HalfDown | Round::HalfEven) {
                prop_assert!(cash.difference.abs() * Decimal::TWO <= coin.smallest);
            }
            // What is owed and what is owed back come to the same.
            prop_assert_eq!(coin.cash(-sum).pays, -cash.pays);
        }
    }

    #[test]
    fn no_coin_is_refused_in_words() {
        let coin = |smallest: &str| Coin {
            smallest: smallest.parse().unwrap(),
            round: Round::HalfUp,
        };
        assert!(coin("0.05").check(2).is_ok());
        assert!(coin("5").check(0).is_ok());
        for bad in ["0", "-0.05", "0.005", "5000"] {
            let fault = coin(bad).check(2).unwrap_err();
            assert!(fault.to_string().starts_with("smallest coin: "), "{fault}");
        }
    }
}

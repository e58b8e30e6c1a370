//! A volume, and how well it is known.

use crate::error::{CoolantError, within};
use crate::phrases as say;
use measure::Range;

/// Tolerances are added as squares and the sum is widened by this: they are guesses
/// themselves, and an error that is spread evenly over its tolerance reaches further
/// than 95 % of one that bunches in the middle.
pub(crate) const WIDENED: f64 = 1.15;

/// A volume that lies within a distance of what was read, 95 times in 100.
///
/// A pan under a cock and the spill beside it are good to 0.3 to 0.5 L, a marked jug to
/// 0.05 to 0.1 L.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Amount {
    pub litres: f64,
    pub within_l: f64,
}

impl Amount {
    /// `litres`, good to `within_l` either way.
    pub fn new(litres: f64, within_l: f64) -> Amount {
        Amount { litres, within_l }
    }

    /// Both numbers finite and possible, from `low_l`.
    pub(crate) fn checked(self, what: &'static str, low_l: f64) -> Result<Amount, CoolantError> {
        within(
            what,
            self.litres,
            "L",
            low_l..=200.0,
            say::mend_figure_and_unit(),
        )?;
        within(
            what,
            self.within_l,
            say::litres_either_way(),
            0.0..=100.0,
            say::mend_how_far_off(),
        )?;
        Ok(self)
    }

    /// The same the other way.
    pub(crate) fn negated(self) -> Amount {
        Amount {
            litres: -self.litres,
            ..self
        }
    }

    /// From its least to its greatest, where both numbers were checked.
    pub(crate) fn band(self) -> Range<f64> {
        Range::new(
            self.litres - self.within_l,
            self.litres,
            self.litres + self.within_l,
        )
        .expect("volumes are finite and tolerances are not below zero")
    }
}

/// The sum, its tolerance as the root of the squares.
pub(crate) fn sum(amounts: &[Amount]) -> Amount {
    Amount {
        litres: amounts.iter().map(|one| one.litres).sum(),
        within_l: libm::sqrt(amounts.iter().map(|one| one.within_l * one.within_l).sum()),
    }
}

pub(crate) fn widened(amount: Amount) -> Amount {
    Amount {
        within_l: WIDENED * amount.within_l,
        ..amount
    }
}

/// The mean of two estimates by the inverse squares of their tolerances.
pub(crate) fn weighted(one: Amount, other: Amount) -> Amount {
    let (a, b) = (one.within_l * one.within_l, other.within_l * other.within_l);
    if a + b <= 0.0 {
        return one;
    }
    Amount {
        litres: (one.litres * b + other.litres * a) / (a + b),
        within_l: libm::sqrt(a * b / (a + b)),
    }
}

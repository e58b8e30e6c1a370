//! A spread of minutes: least, likely and most.

use crate::windows::Minute;

/// Minutes that something takes, or minutes at which something comes: triangular, from the least
/// over the likely to the most.
///
/// The triangle is the plainest spread that three numbers give. Its quantile has a closed form, so
/// that one number from 0 to 1 gives the same minutes everywhere.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Spread {
    pub least: Minute,
    pub likely: Minute,
    pub most: Minute,
}

impl Spread {
    /// So many minutes for sure.
    ///
    /// ```
    /// assert_eq!(stalls::Spread::sure(30).mean(), 30);
    /// ```
    pub fn sure(minutes: Minute) -> Self {
        Self {
            least: minutes,
            likely: minutes,
            most: minutes,
        }
    }

    /// Least, likely and most.
    pub fn new(least: Minute, likely: Minute, most: Minute) -> Self {
        Self {
            least,
            likely,
            most,
        }
    }

    /// Whether they are in sequence.
    pub fn is_sound(&self) -> bool {
        self.least <= self.likely && self.likely <= self.most
    }

    /// The mean, a third of the sum, in whole minutes upward.
    #[inline]
    pub fn mean(&self) -> Minute {
        let sum = self.least + self.likely + self.most;
        -(-sum).div_euclid(3)
    }

    /// The minutes that are not exceeded with this chance, from 0 to 1.
    ///
    /// ```
    /// let spread = stalls::Spread::new(40, 50, 90);
    /// assert!((spread.quantile(0.2) - 50.0).abs() < 1e-9);
    /// assert!((spread.quantile(1.0) - 90.0).abs() < 1e-9);
    /// ```
    pub fn quantile(&self, chance: f64) -> f64 {
        let (least, likely, most) = self.numbers();
        let width = most - least;
        if width <= 0.0 {
            return least;
        }
        let chance = chance.clamp(0.0, 1.0);
        let rising = likely - least;
        if chance * width <= rising {
            least + (chance * width * rising).sqrt()
        } else {
            most - ((1.0 - chance) * width * (most - likely)).sqrt()
        }
    }

    /// The chance that it is not more than these minutes.
    pub fn chance(&self, minutes: f64) -> f64 {
        let (least, likely, most) = self.numbers();
        if minutes >= most {
            1.0
        } else if minutes < least {
            0.0
        } else if minutes <= likely {
            (minutes - least).powi(2) / ((most - least) * (likely - least)).max(f64::MIN_POSITIVE)
        } else {
            1.0 - (most - minutes).powi(2) / ((most - least) * (most - likely))
        }
    }

    /// Whole minutes drawn by a number from 0 to 1, of those that are longer than `passed`.
    pub(crate) fn drawn(&self, number: f64, passed: Option<Minute>) -> Minute {
        let passed = passed.filter(|passed| *passed >= self.least);
        #[allow(
            clippy::cast_precision_loss,
            reason = "minutes of some years are exact"
        )]
        let below = passed.map_or(0.0, |passed| self.chance(passed as f64));
        let minutes = self.quantile(below + number * (1.0 - below));
        #[allow(
            clippy::cast_possible_truncation,
            reason = "between least and most, which are whole minutes"
        )]
        let whole = minutes.ceil() as Minute;
        passed.map_or(whole, |passed| whole.max(passed + 1))
    }

    #[allow(
        clippy::cast_precision_loss,
        reason = "minutes of some years are exact"
    )]
    fn numbers(&self) -> (f64, f64, f64) {
        (self.least as f64, self.likely as f64, self.most as f64)
    }
}

#[cfg(test)]
mod tests {
    use super::Spread;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_chance_of_a_quantile_is_its_own(least in 0_i64..100, a in 0_i64..100, b in 1_i64..100, p in 0.001_f64..0.999) {
            let spread = Spread::new(least, least + a, least + a + b);
            prop_assert!((spread.chance(spread.quantile(p)) - p).abs() < 1e-9);
            prop_assert!(spread.quantile(p) <= spread.quantile((p + 0.01).min(1.0)));
            let passed = least + a;
            prop_assert!(spread.drawn(p, Some(passed)) > passed);
        }
    }

    #[test]
    fn the_mean_is_that_of_the_draws() {
        let spread = Spread::new(30, 40, 110);
        let draws = 10_000;
        let sum: f64 = (0..draws)
            .map(|n| spread.quantile((f64::from(n) + 0.5) / f64::from(draws)))
            .sum();
        assert!((sum / f64::from(draws) - 60.0).abs() < 0.01, "{sum}");
        assert_eq!(spread.mean(), 60);
        assert_eq!(Spread::new(-3, -2, -2).mean(), -2);
    }
}

//! Ranges that somebody names, and spreads that come out.

use crate::error::OddsError;
use crate::fit::count;
use libm::sqrt;
use rand_distr::{Beta, Distribution};

/// Least, likely and most, as somebody who knows names them.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Range {
    pub low: f64,
    pub likely: f64,
    pub high: f64,
}

impl Range {
    /// A number that is sure.
    pub fn sure(value: f64) -> Range {
        Range {
            low: value,
            likely: value,
            high: value,
        }
    }

    /// The mean of the range taken as PERT takes it.
    ///
    /// Formula: `(low + 4 likely + high) / 6`.
    ///
    /// # Source
    ///
    /// Common practice of project planning (PERT); the shape is a Beta(1 + 4 (likely - low) / w,
    /// 1 + 4 (high - likely) / w) over the width `w`.
    ///
    /// ```
    /// let minutes = odds::Range { low: 40.0, likely: 55.0, high: 90.0 };
    /// assert!((minutes.mean() - 58.333).abs() < 1e-3);
    /// ```
    pub fn mean(&self) -> f64 {
        (self.low + 4.0 * self.likely + self.high) / 6.0
    }

    /// The standard deviation of that shape: `sqrt((mean - low) (high - mean) / 7)`.
    pub fn deviation(&self) -> f64 {
        sqrt(((self.mean() - self.low) * (self.high - self.mean()) / 7.0).max(0.0))
    }

    /// Its two parameters; nothing where it is sure.
    pub fn shape(&self) -> Option<(f64, f64)> {
        let width = self.high - self.low;
        (width > 0.0).then(|| {
            (
                1.0 + 4.0 * (self.likely - self.low) / width,
                1.0 + 4.0 * (self.high - self.likely) / width,
            )
        })
    }

    pub(crate) fn check(
        &self,
        what: &str,
        unit: &'static str,
        bounds: (f64, f64),
        mend: &'static str,
    ) -> Result<(), OddsError> {
        for value in [self.low, self.likely, self.high] {
            crate::error::within(what, value, unit, bounds, mend)?;
        }
        if self.low <= self.likely && self.likely <= self.high {
            return Ok(());
        }
        Err(OddsError::OutOfSequence {
            what: what.to_owned(),
            low: self.low,
            likely: self.likely,
            high: self.high,
        })
    }
}

/// A range made ready to be drawn from.
#[derive(Clone, Copy, Debug)]
pub(crate) enum Drawn {
    Sure(f64),
    Spread {
        low: f64,
        width: f64,
        beta: Beta<f64>,
    },
}

impl Drawn {
    pub(crate) fn of(range: &Range) -> Drawn {
        range
            .shape()
            .and_then(|(a, b)| Beta::new(a, b).ok())
            .map_or(Drawn::Sure(range.likely), |beta| Drawn::Spread {
                low: range.low,
                width: range.high - range.low,
                beta,
            })
    }

    pub(crate) fn draw(&self, chance: &mut impl rand::Rng) -> f64 {
        match self {
            Drawn::Sure(value) => *value,
            Drawn::Spread { low, width, beta } => low + width * beta.sample(chance),
        }
    }
}

/// The chances at which a spread is told.
pub const CHANCES: [f64; 9] = [0.05, 0.10, 0.25, 0.50, 0.60, 0.75, 0.80, 0.90, 0.95];

/// A spread: what is not exceeded with each of [`CHANCES`], and its mean.
#[derive(Clone, Debug, PartialEq)]
pub struct Spread {
    /// Chance, value, and by how much the value may be off for having drawn so often only.
    pub quantiles: Vec<(f64, f64, f64)>,
    pub mean: f64,
    /// By how much the mean may be off.
    pub mean_error: f64,
    /// Values not exceeded with 1, 2, ... 99 per cent: the curve.
    pub curve: Vec<f64>,
}

impl Spread {
    /// The spread of what was drawn. `drawn` comes back sorted.
    ///
    /// The value at chance p is the one of rank p n; it is good to half the distance between
    /// the ranks p n ± 1.96 sqrt(n p (1 - p)), 19 times in 20.
    pub(crate) fn of(drawn: &mut [f64]) -> Spread {
        let n = count(drawn.len()).max(1.0);
        // Summed as drawn: the sequence does not hang on the threads.
        let mean = drawn.iter().sum::<f64>() / n;
        let square: f64 = drawn.iter().map(|x| (x - mean) * (x - mean)).sum();
        let mean_error = 1.96 * sqrt(square / (n - 1.0).max(1.0) / n);
        drawn.sort_unstable_by(f64::total_cmp);
        let quantiles = CHANCES
            .iter()
            .map(|p| {
                let reach = 1.96 * sqrt(p * (1.0 - p) / n);
                let error = 0.5 * (at(drawn, p + reach) - at(drawn, p - reach));
                (*p, at(drawn, *p), error)
            })
            .collect();
        Spread {
            quantiles,
            mean,
            mean_error,
            curve: (1..100)
                .map(|per| at(drawn, f64::from(per) / 100.0))
                .collect(),
        }
    }

    /// What is not exceeded with this chance; of those told, the nearest.
    pub fn at(&self, chance: f64) -> f64 {
        self.quantiles
            .iter()
            .min_by(|one, other| (one.0 - chance).abs().total_cmp(&(other.0 - chance).abs()))
            .map_or(f64::NAN, |(_, value, _)| *value)
    }

    /// The band that holds eight in ten.
    pub fn eight_in_ten(&self) -> (f64, f64) {
        (self.at(0.1), self.at(0.9))
    }

    /// Its width, by which causes are compared.
    pub fn width(&self) -> f64 {
        self.at(0.9) - self.at(0.1)
    }
}

/// The value not exceeded with chance `p` among sorted values.
pub(crate) fn at(sorted: &[f64], p: f64) -> f64 {
    if sorted.is_empty() {
        return f64::NAN;
    }
    let rank = (p * count(sorted.len())).ceil().max(1.0);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "a rank from 1; what is too large ends at the last"
    )]
    let rank = rank as usize;
    sorted[rank.min(sorted.len()) - 1]
}

//! Student's t distribution for whole degrees of freedom.

use std::f64::consts::FRAC_2_PI;

/// The chance that t stays below `t`.
///
/// # Source
///
/// Abramowitz and Stegun, Handbook of Mathematical Functions, 26.7.3 and 26.7.4: finite
/// sums of powers of a cosine.
pub(crate) fn chance_below(t: f64, degrees: u32) -> f64 {
    // The sum may end a last bit above one.
    let within = chance_within(t.abs(), degrees.max(1)).min(1.0);
    if t < 0.0 {
        0.5 - within / 2.0
    } else {
        0.5 + within / 2.0
    }
}

/// The t that stays above the given part of all values, 0.5 to below 1.
pub(crate) fn quantile(probability: f64, degrees: u32) -> f64 {
    let probability = probability.clamp(0.5, 0.9995);
    // 0.9995 of one degree of freedom lies at 636.6.
    let (low, high) = (0..80).fold((0.0, 1000.0), |(low, high), _| {
        let middle = f64::midpoint(low, high);
        if chance_below(middle, degrees) < probability {
            (middle, high)
        } else {
            (low, middle)
        }
    });
    f64::midpoint(low, high)
}

/// The chance that t lies within ±`t`.
fn chance_within(t: f64, degrees: u32) -> f64 {
    // Beyond a thousand degrees nothing changes in the fourth digit.
    let degrees = degrees.min(1000);
    let angle = libm::atan(t / libm::sqrt(f64::from(degrees)));
    let (sine, cosine) = (libm::sin(angle), libm::cos(angle));
    if degrees == 1 {
        return FRAC_2_PI * angle;
    }
    let odd = degrees % 2 == 1;
    // Terms c, c·(2/3)c², ... for odd degrees; 1, (1/2)c², (1/2)(3/4)c⁴, ... for even ones.
    let first = if odd { cosine } else { 1.0 };
    let terms = degrees / 2;
    let (sum, _) = (1..terms).fold((first, first), |(sum, term), index| {
        let even = 2.0 * f64::from(index);
        let ratio = if odd {
            even / (even + 1.0)
        } else {
            (even - 1.0) / even
        };
        let next = term * ratio * cosine * cosine;
        (sum + next, next)
    });
    if odd {
        FRAC_2_PI * (angle + sine * sum)
    } else {
        sine * sum
    }
}

#[cfg(test)]
mod tests {
    use super::{chance_below, quantile};

    #[test]
    fn student() {
        let file = checks::published("coolant");
        let rows = file.rows("student");
        assert!(rows.len() >= 10);
        for row in rows {
            let degrees = u32::try_from(row.whole("degrees")).unwrap();
            let got = quantile(row.real("probability"), degrees);
            row.assert_near(got, "expected", "tolerance");
        }
    }

    #[test]
    fn both_tails_are_alike() {
        for degrees in 1..40 {
            let sum = chance_below(1.3, degrees) + chance_below(-1.3, degrees);
            assert!((sum - 1.0).abs() < 1e-12);
        }
    }
}

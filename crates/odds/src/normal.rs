//! The normal distribution's tail, and an exponential that works on many numbers at once.

use std::f64::consts::{LN_2, LOG2_E, PI};

/// The chance of lying above `z`.
fn above(z: f64) -> f64 {
    0.5 * libm::erfc(z / std::f64::consts::SQRT_2)
}

/// The density at `z` over the chance of lying above it: the mean of what lies above.
pub(crate) fn hazard(z: f64) -> f64 {
    // Far out the quotient loses its digits; there it is z + 1/z - 2/z³.
    if z > 25.0 {
        return z + 1.0 / z - 2.0 / (z * z * z);
    }
    libm::exp(-0.5 * z * z) / libm::sqrt(2.0 * PI) / above(z)
}

/// `exp(x)` to 2e-14, for |x| up to 700: plain arithmetic, so that it comes out the same
/// everywhere and many can be worked out side by side.
#[inline]
pub(crate) fn exp(x: f64) -> f64 {
    // Adding 1.5 · 2^52 leaves a whole number in the low bits.
    const SHIFT: f64 = 6_755_399_441_055_744.0;
    const LOW: f64 = 1.908_214_929_270_587_7e-10;
    const HIGH: f64 = LN_2 - LOW;
    let x = x.clamp(-700.0, 700.0);
    let shifted = x * LOG2_E + SHIFT;
    let whole = shifted - SHIFT;
    let rest = (x - whole * HIGH) - whole * LOW;
    // The series to the eleventh power; |rest| is at most half of ln 2.
    let mut sum = 1.0 / 39_916_800.0;
    for factor in [
        1.0 / 3_628_800.0,
        1.0 / 362_880.0,
        1.0 / 40_320.0,
        1.0 / 5_040.0,
        1.0 / 720.0,
        1.0 / 120.0,
        1.0 / 24.0,
        1.0 / 6.0,
        0.5,
        1.0,
        1.0,
    ] {
        sum = sum * rest + factor;
    }
    f64::from_bits(sum.to_bits().wrapping_add(shifted.to_bits() << 52))
}

#[cfg(test)]
mod tests {
    use super::{exp, hazard};

    #[test]
    fn the_exponential_agrees_with_the_library() {
        for step in -14_000..=14_000 {
            let x = f64::from(step) * 0.05;
            let off = exp(x) / libm::exp(x) - 1.0;
            assert!(off.abs() < 2e-14, "{x}: {off}");
        }
    }

    #[test]
    fn the_hazard_meets_its_tail() {
        assert!((hazard(0.0) - 0.797_884_560_802_865_4).abs() < 1e-15);
        assert!((hazard(24.999_999) - hazard(25.000_001)).abs() < 1e-4);
        assert!(hazard(-40.0).abs() < 1e-300);
    }
}

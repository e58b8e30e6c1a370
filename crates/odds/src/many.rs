//! Many stages at once, in single precision: normal numbers and exponentials by plain arithmetic
//! without a branch, so that a processor works out several side by side and every one comes out
//! the same on every machine. What is lost is a few parts in ten million of a stage's time.

use rand::Rng;

/// Standard normal numbers, each from 32 random bits: one is the side of the mean, the others say
/// how much of the distribution lies further out.
pub(crate) fn normals(chance: &mut impl Rng, into: &mut [f32]) {
    let mut bits = [0; 256];
    for part in into.chunks_mut(bits.len()) {
        for pair in bits[..part.len().next_multiple_of(2)].as_chunks_mut().0 {
            let both = chance.next_u64();
            #[expect(clippy::cast_possible_truncation, reason = "its lower half")]
            let halves = [both as u32, (both >> 32) as u32];
            *pair = halves;
        }
        for (bits, normal) in bits.iter().zip(part) {
            #[expect(clippy::cast_precision_loss, reason = "24 of the 31 bits are kept")]
            #[expect(clippy::cast_possible_wrap, reason = "31 bits fit")]
            let beyond = ((bits >> 1) as i32 as f32 + 0.5) * (1.0 / 4_294_967_296.0);
            let size = normal_with(beyond);
            *normal = f32::from_bits(size.to_bits() | (bits << 31));
        }
    }
}

/// The standard normal number above which so much lies, from 2^-33 to 0.5: AS 241 (Wichura 1988),
/// the form of seven digits.
#[inline]
fn normal_with(beyond: f32) -> f32 {
    // What was rounded up to one half has nothing beyond it but the mean.
    let off = 0.5 - beyond;
    let r = 0.180_625 - off * off;
    let middle = off * (((59.109_374 * r + 159.291_13) * r + 50.434_27) * r + 3.387_132_6)
        / (((67.187_56 * r + 78.757_76) * r + 17.895_17) * r + 1.0);
    let r = (-ln(beyond)).sqrt() - 1.6;
    let outside = (((0.170_238_21 * r + 1.306_728_4) * r + 2.756_815_4) * r + 1.423_437_2)
        / ((0.120_211_32 * r + 0.737_001_64) * r + 1.0);
    if off <= 0.425 { middle } else { outside }
}

/// The natural logarithm of a positive number that is not tiny: its exponent, and the series of
/// the area tangent for what is left, which lies within a factor √2 of 1.
#[inline]
fn ln(x: f32) -> f32 {
    const ROOT: u32 = 0x3f35_04f3;
    let shifted = x.to_bits().wrapping_sub(ROOT);
    let rest = f32::from_bits((shifted & 0x007f_ffff).wrapping_add(ROOT));
    #[expect(clippy::cast_precision_loss, reason = "an exponent has eight bits")]
    #[expect(clippy::cast_possible_wrap, reason = "its sign is wanted")]
    let exponent = (shifted as i32 >> 23) as f32;
    let s = (rest - 1.0) / (rest + 1.0);
    let square = s * s;
    let series = ((square * (2.0 / 7.0) + 2.0 / 5.0) * square + 2.0 / 3.0) * square + 2.0;
    exponent * std::f32::consts::LN_2 + s * series
}

/// `exp(x)` to 3e-7, for |x| up to 80.
#[inline]
pub(crate) fn exp(x: f32) -> f32 {
    // Adding 1.5 · 2^23 leaves a whole number in the low bits.
    const SHIFT: f32 = 12_582_912.0;
    const HIGH: f32 = 0.693_359_4;
    const LOW: f32 = -2.121_944_4e-4;
    let x = if x < 80.0 { x } else { 80.0 };
    let x = if x > -80.0 { x } else { -80.0 };
    let shifted = x * std::f32::consts::LOG2_E + SHIFT;
    let whole = shifted - SHIFT;
    let rest = (x - whole * HIGH) - whole * LOW;
    let mut sum = 1.0 / 5_040.0;
    for factor in [
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
    f32::from_bits(sum.to_bits().wrapping_add(shifted.to_bits() << 23))
}

#[cfg(test)]
mod tests {
    use super::{exp, ln, normal_with, normals};
    use rand::SeedableRng;
    use rand_chacha::ChaCha8Rng;
    use statrs::distribution::{ContinuousCDF, Normal};

    #[test]
    fn the_exponential_agrees_with_the_library() {
        for step in -8_000..=8_000_i16 {
            let x = f32::from(step) * 0.01;
            let off = f64::from(exp(x)) / libm::exp(f64::from(x)) - 1.0;
            assert!(off.abs() < 3e-7, "{x}: {off}");
        }
    }

    #[test]
    fn the_logarithm_agrees_with_the_library() {
        let mut x = 0.5_f32;
        while x > 1e-10 {
            let off = f64::from(ln(x)) - libm::log(f64::from(x));
            assert!(off.abs() < 3e-6, "{x}: {off}");
            x *= 0.999;
        }
    }

    /// statrs as other implementation.
    #[test]
    fn a_normal_number_has_so_much_beyond_it() {
        let normal = Normal::standard();
        let mut beyond = 0.5_f32;
        while beyond > 1e-10 {
            let want = -normal.inverse_cdf(f64::from(beyond));
            let off = f64::from(normal_with(beyond)) - want;
            assert!(off.abs() < 4e-6, "{beyond}: {off}");
            beyond *= 0.999;
        }
    }

    /// The moments of a million of them, within four standard errors.
    #[test]
    fn normal_numbers_are_normal() {
        let mut all = vec![0.0; 1_000_000];
        normals(&mut ChaCha8Rng::seed_from_u64(5), &mut all);
        let moment = |power: i32| all.iter().map(|z| f64::from(*z).powi(power)).sum::<f64>() / 1e6;
        assert!(moment(1).abs() < 4.0 * 1e-3);
        assert!((moment(2) - 1.0).abs() < 4.0 * 2.0_f64.sqrt() * 1e-3);
        assert!(moment(3).abs() < 4.0 * 15.0_f64.sqrt() * 1e-3);
        assert!((moment(4) - 3.0).abs() < 4.0 * 96.0_f64.sqrt() * 1e-3);
        let far = all.iter().filter(|z| z.abs() > 3.0).count();
        assert!((2_500..2_900).contains(&far), "{far}");
    }
}

//! Least, likely and most, of what is told and of what past stages teach.

use stalls::Spread;

/// The three in sequence; work takes at least a minute.
pub fn sorted(one: i64, two: i64, three: i64) -> Spread {
    let mut all = [one.max(1), two.max(1), three.max(1)];
    all.sort_unstable();
    Spread::new(all[0], all[1], all[2])
}

/// The triangle whose tenth, middle and ninetieth parts lie there. Where they lean further to one
/// side than a triangle can, the middle and the late side are kept.
pub fn triangle(low: f64, middle: f64, high: f64) -> Spread {
    let lean = (middle - low) / (high - middle).max(1e-6);
    // The part of the way at which it peaks, by halving: the later, the longer its early side.
    let (mut from, mut to) = (0.0, 1.0);
    for _ in 0..40 {
        let peak = 0.5 * (from + to);
        let at = |chance| of_unit(peak, chance);
        if (at(0.5) - at(0.1)) / (at(0.9) - at(0.5)) < lean {
            from = peak;
        } else {
            to = peak;
        }
    }
    let peak = 0.5 * (from + to);
    let width = (high - middle) / (of_unit(peak, 0.9) - of_unit(peak, 0.5));
    let least = middle - width * of_unit(peak, 0.5);
    #[allow(
        clippy::cast_possible_truncation,
        reason = "minutes of a month at most"
    )]
    let whole = |minutes: f64| minutes.clamp(1.0, 1e7).round() as i64;
    sorted(
        whole(least),
        whole(least + width * peak),
        whole(least + width),
    )
}

/// What is not exceeded with this chance in the triangle from 0 over a peak to 1.
fn of_unit(peak: f64, chance: f64) -> f64 {
    if chance <= peak {
        (chance * peak).sqrt()
    } else {
        1.0 - ((1.0 - chance) * (1.0 - peak)).sqrt()
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn a_triangle_keeps_what_it_was_made_of(
            low in 20.0_f64..400.0, up in 0.05_f64..0.6, more in 0.05_f64..0.9,
        ) {
            let (middle, high) = (low * (1.0 + up), low * (1.0 + up + more));
            let spread = triangle(low, middle, high);
            let near = |one: f64, other: f64| (one - other).abs() <= 2.0;
            prop_assert!(spread.is_sound() && spread.least >= 1);
            // No triangle has a tenth and a ninetieth part that lie less evenly than so.
            let can = (0.62..1.6).contains(&(up / more));
            if can {
                prop_assert!(near(spread.quantile(0.1), low), "{spread:?} {low}");
            }
            if can || up < more {
                prop_assert!(near(spread.quantile(0.5), middle), "{spread:?} {middle}");
                prop_assert!(near(spread.quantile(0.9), high), "{spread:?} {high}");
            }
        }
    }
}

//! Plain figures of few numbers: the middle, where most lie, a share with its spread.

/// Fewer than this say nothing of a spread.
pub(super) const FEW: usize = 5;
/// Fewer pieces than this say nothing of how often one goes wrong.
pub(super) const FEW_PIECES: u32 = 20;

/// The value below which this part of them lies, between two neighbours in proportion.
pub(super) fn quantile(sorted: &[f64], part: f64) -> f64 {
    let Some(last) = sorted.len().checked_sub(1) else {
        return f64::NAN;
    };
    #[allow(clippy::cast_precision_loss, reason = "a count of orders")]
    let at = part.clamp(0.0, 1.0) * last as f64;
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "from 0 to the last place"
    )]
    let below = at.floor() as usize;
    let above = (below + 1).min(last);
    sorted[below] + (at - at.floor()) * (sorted[above] - sorted[below])
}

/// The middle, with the ends between which 8 of 10 lie; nothing where there are too few.
pub(super) fn spread(values: &[f64]) -> Option<(f64, f64, f64)> {
    if values.len() < FEW {
        return None;
    }
    let mut sorted = values.to_vec();
    sorted.sort_by(f64::total_cmp);
    let at = |part| quantile(&sorted, part);
    Some((at(0.1), at(0.5), at(0.9)))
}

/// How many in a hundred go wrong, with the ends between which that lies 8 times in 10.
///
/// The score interval: of the shares that would show this many at least, or at most, 1 time in
/// 10, the ends. With n pieces, p = k/n and z = 1.2816:
/// (p + z²/2n ± z √(p (1 − p)/n + z²/4n²)) / (1 + z²/n).
///
/// # Source
/// E. B. Wilson, Probable inference, the law of succession, and statistical inference, Journal
/// of the American Statistical Association 22 (1927), from memory.
pub(super) fn share(found: u32, of: u32) -> Option<(f64, f64, f64)> {
    if of < FEW_PIECES || found > of {
        return None;
    }
    const Z: f64 = 1.281_551_565_544_6;
    let n = f64::from(of);
    let p = f64::from(found) / n;
    let middle = p + Z * Z / (2.0 * n);
    let half = Z * (p * (1.0 - p) / n + Z * Z / (4.0 * n * n)).sqrt();
    let whole = 1.0 + Z * Z / n;
    let end = |at: f64| 100.0 * (at / whole).clamp(0.0, 1.0);
    Some((end(middle - half), 100.0 * p, end(middle + half)))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn few_say_nothing() {
        assert_eq!(spread(&[1.0, 2.0, 3.0, 4.0]), None);
        assert_eq!(share(1, 19), None);
    }

    #[test]
    fn the_middle_and_the_ends() {
        let (low, middle, high) = spread(&[5.0, 1.0, 3.0, 2.0, 4.0]).unwrap();
        assert!((low - 1.4).abs() < 1e-9 && (high - 4.6).abs() < 1e-9);
        assert!((middle - 3.0).abs() < 1e-9);
    }

    /// The ends solve the equation that they come from: (p − share)² = z² share (1 − share)/n.
    #[test]
    fn the_ends_of_a_share_are_where_the_test_turns() {
        for (found, of) in [(0, 40), (2, 48), (30, 60), (60, 60)] {
            let (low, at, high) = share(found, of).unwrap();
            for end in [low, high] {
                let (p, q, n) = (at / 100.0, end / 100.0, f64::from(of));
                let left = (p - q) * (p - q);
                let right = 1.281_551_565_544_6_f64.powi(2) * q * (1.0 - q) / n;
                assert!((left - right).abs() < 1e-9, "{found} of {of}: {end}");
            }
            assert!(low <= at && at <= high);
        }
    }
}

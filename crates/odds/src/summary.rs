//! Mean and standard deviation of measured values, in one pass.

/// A summary.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Summary {
    pub count: usize,
    pub mean: f64,
    /// Of the sample, with one degree of freedom taken for the mean; 0 of a single value.
    pub deviation: f64,
}

/// Mean and standard deviation of values.
///
/// Formula: `mean += (x - mean) / k`, `square += (x - old mean) (x - mean)`, value by value;
/// `deviation = sqrt(square / (n - 1))`.
///
/// Inputs: values of one unit; those that are no number are left out.
///
/// Returns nothing where no value is left.
///
/// # Limits
///
/// Loses digits as the mean grows over the deviation: of values near 10,000,000 that differ in
/// the seventh place behind the point about eight digits are left.
///
/// # Source
///
/// Welford's way; the certified sets of the NIST Statistical Reference Datasets check it.
///
/// ```
/// let found = odds::summary(&[10_000_001.0, 10_000_003.0, 10_000_002.0]).unwrap();
/// assert_eq!((found.mean, found.deviation), (10_000_002.0, 1.0));
/// ```
pub fn summary(values: &[f64]) -> Option<Summary> {
    let (mut n, mut mean, mut square) = (0_usize, 0.0, 0.0);
    for value in values.iter().filter(|value| value.is_finite()) {
        n += 1;
        let off = value - mean;
        mean += off / crate::fit::count(n);
        square += off * (value - mean);
    }
    (n > 0).then(|| Summary {
        count: n,
        mean,
        deviation: libm::sqrt(square / crate::fit::count(n.saturating_sub(1).max(1))),
    })
}

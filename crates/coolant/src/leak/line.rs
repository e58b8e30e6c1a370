//! A least-squares line with Student's band.

use crate::student::quantile;

/// A line x = start + rate · hours.
#[derive(Clone, Copy, Debug)]
pub(super) struct Fitted {
    start: f64,
    pub(super) rate_per_h: f64,
    /// Standard error of the rate.
    pub(super) rate_error: f64,
    /// Scatter of one reading: what is seen, or what the gauge allows if that is more.
    pub(super) scatter: f64,
    pub(super) degrees: u32,
    mean_h: f64,
    spread: f64,
    count: f64,
}

/// The line through (hours, x), at least three points at different times.
pub(super) fn fitted(points: &[(f64, f64)], least_scatter: f64) -> Fitted {
    let count = count(points.len());
    let mean_h = points.iter().map(|(h, _)| h).sum::<f64>() / count;
    let mean_x = points.iter().map(|(_, x)| x).sum::<f64>() / count;
    let spread: f64 = points
        .iter()
        .map(|(h, _)| (h - mean_h) * (h - mean_h))
        .sum();
    let product: f64 = points
        .iter()
        .map(|(h, x)| (h - mean_h) * (x - mean_x))
        .sum();
    let rate_per_h = product / spread;
    let start = mean_x - rate_per_h * mean_h;
    let squares: f64 = points
        .iter()
        .map(|(h, x)| x - start - rate_per_h * h)
        .map(|off| off * off)
        .sum();
    let degrees = u32::try_from(points.len().saturating_sub(2).max(1)).unwrap_or(u32::MAX);
    let scatter = libm::sqrt(squares / f64::from(degrees)).max(least_scatter);
    Fitted {
        start,
        rate_per_h,
        rate_error: scatter / libm::sqrt(spread),
        scatter,
        degrees,
        mean_h,
        spread,
        count,
    }
}

impl Fitted {
    /// x at a time, and its standard error.
    pub(super) fn at(&self, hours: f64) -> (f64, f64) {
        let away = hours - self.mean_h;
        let error = self.scatter * libm::sqrt(1.0 / self.count + away * away / self.spread);
        (self.start + self.rate_per_h * hours, error)
    }

    /// The t of a two-sided 95 % band.
    pub(super) fn student(&self) -> f64 {
        quantile(0.975, self.degrees)
    }
}

/// A count as a number; readings are few.
pub(super) fn count(length: usize) -> f64 {
    f64::from(u32::try_from(length).unwrap_or(u32::MAX))
}

//! Ranking the ways that hold.

use super::estimate::Planning;
use super::ways::RepairOption;

/// An hour and a half or more of work scores nothing for time.
const LONG_MINUTES: f64 = 90.0;
/// So much money or more scores nothing for cost.
const DEAR: f64 = 150.0;
/// More than this many times the least margin gains nothing.
const AMPLE: f64 = 2.0;

/// The options, best first; those that do not hold last, in the order of the ways.
pub(super) fn ranked(mut options: Vec<RepairOption>, planning: &Planning) -> Vec<RepairOption> {
    for option in &mut options {
        score(option, planning);
    }
    options.sort_by(|a, b| {
        b.holds
            .cmp(&a.holds)
            .then(b.score.total_cmp(&a.score))
            .then(a.way.cmp(&b.way))
    });
    for (index, option) in options.iter_mut().enumerate() {
        option.rank = index + 1;
    }
    options
}

/// The weighted sum of margin, time, cost and reversibility, each from 0 to 1, and in words.
///
/// What is not known scores nothing: an unknown price never wins a place.
fn score(option: &mut RepairOption, planning: &Planning) {
    let weights = planning.weights;
    let ample = AMPLE * planning.least_strip_margin;
    let margin = option
        .strip_margin
        .map_or(0.0, |margin| (margin / ample).clamp(0.0, 1.0));
    let left = |value: f64, most: f64| (1.0 - value / most).clamp(0.0, 1.0);
    let time = option
        .minutes
        .map_or(0.0, |minutes| left(minutes.mid(), LONG_MINUTES));
    let cost = option.cost.map_or(0.0, |cost| left(cost.mid(), DEAR));
    let reversibility = option.way.reversibility();
    option.score = weights.margin * margin
        + weights.time * time
        + weights.cost * cost
        + weights.reversibility * reversibility;
    option.why_here = format!(
        "margin {:.2} × {margin:.2}, time {:.2} × {time:.2}, cost {:.2} × {cost:.2}, \
         reversibility {:.2} × {reversibility:.2}: {:.2}",
        weights.margin, weights.time, weights.cost, weights.reversibility, option.score
    );
}

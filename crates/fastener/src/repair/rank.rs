//! Ranking the ways that hold.

use super::estimate::{Planning, Weights};
use super::ways::RepairOption;
use crate::figures::trimmed;
use crate::phrases::repair as say;

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
    // What is printed is what is multiplied, so that the line can be followed.
    let round = |value: f64, digits: f64| libm::round(value * digits) / digits;
    let weights = Weights {
        margin: round(planning.weights.margin, 1000.0),
        time: round(planning.weights.time, 1000.0),
        cost: round(planning.weights.cost, 1000.0),
        reversibility: round(planning.weights.reversibility, 1000.0),
    };
    let ample = AMPLE * planning.least_strip_margin;
    let margin = option
        .strip_margin
        .map_or(0.0, |margin| round((margin / ample).clamp(0.0, 1.0), 100.0));
    let left = |value: f64, most: f64| round((1.0 - value / most).clamp(0.0, 1.0), 100.0);
    let time = option
        .minutes
        .map_or(0.0, |minutes| left(minutes.mid(), LONG_MINUTES));
    let cost = option.cost.map_or(0.0, |cost| left(cost.mid(), DEAR));
    let reversibility = option.way.reversibility();
    option.score = weights.margin * margin
        + weights.time * time
        + weights.cost * cost
        + weights.reversibility * reversibility;
    option.why_here = say::why_here(
        trimmed(weights.margin, 3),
        margin,
        trimmed(weights.time, 3),
        time,
        trimmed(weights.cost, 3),
        cost,
        trimmed(weights.reversibility, 3),
        reversibility,
        trimmed(option.score, 5),
    );
}

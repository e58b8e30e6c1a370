//! Where the gauge jumped between two readings: touched, a cap that let go, a thermostat
//! that opened. A leak loses pressure all the time.

use super::line::{Fitted, fitted_apart};

/// One jump of the gauge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Jump {
    /// Between the reading before and this time.
    pub minutes: f64,
    /// Up or down.
    pub kpa: f64,
}

/// Fewer readings leave no usual step to hold a jump against.
const READINGS_MIN: usize = 6;
/// More are no accident any more.
pub(super) const JUMPS_MOST: usize = 2;
/// In divisions of the gauge: one division alone is only rounding.
const DIVISIONS: f64 = 1.6;
/// In usual scatter of a step from one reading to the next.
const SCATTERS: f64 = 6.0;
/// How much a jump has to stand out from the steps beside it.
const STANDS_OUT: f64 = 2.5;
/// A line in two pieces fits better by this (an F of one against the rest) once in some
/// hundred times by chance, at the best of fifteen places.
const FITS_BETTER: f64 = 16.0;

/// Jumps, and the indices of the readings with which a piece begins.
pub(super) struct Jumps {
    pub(super) jumps: Vec<Jump>,
    pub(super) cuts: Vec<usize>,
}

/// Steps between neighbours that no even fall explains.
pub(super) fn jumps(points: &[(f64, f64)], division: f64, kpa_per_x: f64) -> Jumps {
    let mut found = Jumps {
        jumps: Vec::new(),
        cuts: Vec::new(),
    };
    if points.len() < READINGS_MIN {
        return found;
    }
    let steps: Vec<(f64, f64)> = points
        .windows(2)
        .filter_map(|pair| {
            Some((
                pair.last()?.0 - pair.first()?.0,
                pair.last()?.1 - pair.first()?.1,
            ))
        })
        .collect();
    let usual = median(steps.iter().map(|(hours, x)| x / hours).collect());
    let beyond: Vec<f64> = steps.iter().map(|(hours, x)| x - usual * hours).collect();
    let scatter = 1.4826 * median(beyond.iter().map(|x| x.abs()).collect());
    let least = (DIVISIONS * division).max(SCATTERS * scatter);
    let mut at = 0;
    while at < beyond.len() {
        let run = beyond
            .iter()
            .skip(at)
            .take_while(|x| x.abs() > least)
            .count();
        let highest = |from: usize, length: usize| {
            let some = beyond.iter().skip(from).take(length);
            some.fold(0.0_f64, |most, x| most.max(x.abs()))
        };
        let beside = highest(at.saturating_sub(1), usize::from(at > 0)).max(highest(at + run, 1));
        // One step, one that falls into two readings, or one there and back again.
        if (1..=2).contains(&run) && highest(at, run) > STANDS_OUT * beside {
            let moved: f64 = beyond.iter().skip(at).take(run).sum();
            let largest = beyond.iter().skip(at).take(run).copied();
            let largest = largest.fold(
                0.0_f64,
                |most, x| if x.abs() > most.abs() { x } else { most },
            );
            let back = moved.abs() < largest.abs() / 2.0;
            found.jumps.push(Jump {
                minutes: points.get(at + 1).map_or(0.0, |point| point.0 * 60.0),
                kpa: -kpa_per_x * if back { largest } else { moved },
            });
            found.cuts.extend((at + 1)..=(at + run));
        }
        at += run.max(1);
    }
    found
}

/// The line with one more jump, at its best place, where that fits much better than without.
pub(super) fn uneven(
    points: &[(f64, f64)],
    cuts: &[usize],
    fit: &Fitted,
    least_scatter: f64,
) -> Option<Fitted> {
    let with = |at: usize| {
        let mut cuts = cuts.to_vec();
        cuts.push(at);
        cuts.sort_unstable();
        fitted_apart(points, &cuts, least_scatter)
    };
    let best = (1..points.len())
        .filter(|at| !cuts.contains(at))
        .map(with)
        .min_by(|one, other| one.squares.total_cmp(&other.squares))?;
    let left = best.squares / f64::from(best.degrees);
    let better = (fit.squares - best.squares) / left.max(least_scatter * least_scatter);
    (points.len() >= READINGS_MIN && best.degrees >= 3 && better > FITS_BETTER).then_some(best)
}

fn median(mut values: Vec<f64>) -> f64 {
    values.sort_unstable_by(f64::total_cmp);
    let middle = values.len() / 2;
    let upper = values.get(middle).copied().unwrap_or(0.0);
    if values.len() % 2 == 1 {
        return upper;
    }
    let lower = values
        .get(middle.saturating_sub(1))
        .copied()
        .unwrap_or(upper);
    f64::midpoint(lower, upper)
}

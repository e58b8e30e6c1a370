//! Where the thermostat opens: the knee between the rise of warming up and the level after.

use crate::drive::Drive;
use crate::limits::COOLEST_THERMOSTAT_C;
use crate::number::{median, real};

/// Seconds over which a level has to hold.
const LEVEL_S: f64 = 120.0;
/// What is left of a spike is gone after this.
const SPIKE_TAIL_S: f64 = 12.0;
/// Slips up to this long are no part of the rise.
const SMOOTH_S: f64 = 20.0;
/// A rise slower than this is a level, K/min.
const LEVEL_K_PER_MIN: f64 = 0.9;
/// How far below the level the line of warming up begins.
const LINE_FROM_K: f64 = 14.0;
/// The knee needs so much of the rise before it.
const RISE_NEEDED_K: f64 = 5.0;
/// Readings at most that the two lines are laid through.
const MOST_POINTS: usize = 300;
/// A bend so far below the level, with a rise after it, is one of load.
const LOAD_BEND_K: f64 = 2.5;
/// A level on the road so much higher shows that the first was a pause.
const PAUSE_K: f64 = 3.0;
/// The wax follows the coolant, and the sensor does too, a little sooner: so long the bend
/// comes after the opening, and it may be off by as much.
const LAG_S: f64 = 6.0;
/// What two straight lines through a curve are off besides, as a standard deviation: the
/// valve's stroke until it can hold the level, changes of load.
const MODEL_K: f64 = 1.6;

/// The knee of a warm-up.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Knee {
    pub(crate) at_s: f64,
    pub(crate) c: f64,
    /// 95 % of such knees lie so close to the opening.
    pub(crate) within_k: f64,
    pub(crate) before_k_per_min: f64,
    pub(crate) after_k_per_min: f64,
}

/// A level that the coolant came to.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) struct Level {
    /// The first step of it.
    pub(crate) from: usize,
    pub(crate) c: f64,
}

/// What a log says of the opening.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(crate) enum Opening {
    NoCoolant,
    /// The engine was not seen running, or too little of it.
    TooShort,
    /// Still rising at the end.
    StillRising {
        last_c: f64,
        k_per_min: f64,
    },
    /// Rose on, past where any thermostat opens.
    NeverLevelled {
        most_c: f64,
    },
    /// The drive began at or above the level.
    StartedAbove {
        first_c: f64,
        level: Level,
    },
    /// Came to a level; the knee is not told where the rise before it is not seen.
    Levelled {
        level: Level,
        knee: Option<Knee>,
    },
}

impl Opening {
    pub(crate) fn level(&self) -> Option<Level> {
        match self {
            Opening::StartedAbove { level, .. } | Opening::Levelled { level, .. } => Some(*level),
            _ => None,
        }
    }
}

/// Looks for the opening, with the spikes (first and last step) bridged.
pub(crate) fn opening(drive: &Drive, spikes: impl Iterator<Item = (usize, usize)>) -> Opening {
    let tail = drive.steps_of(SPIKE_TAIL_S);
    let drive = &drive
        .bridged(spikes.map(|(from, to)| (from, to + tail)))
        .smoothed(SMOOTH_S);
    if drive.coolant.iter().all(Option::is_none) {
        return Opening::NoCoolant;
    }
    let runs = |step: &usize| drive.is_running(*step) && drive.coolant_at(*step).is_some();
    let Some(start) = (0..drive.steps).find(runs) else {
        return Opening::TooShort;
    };
    let first_c = drive.coolant_at(start).unwrap_or(0.0);
    match level(drive, start) {
        Some(level) if level.c - first_c < RISE_NEEDED_K => {
            Opening::StartedAbove { first_c, level }
        }
        Some(level) => Opening::Levelled {
            level,
            knee: knee(drive, start, level),
        },
        None => unlevelled(drive, start),
    }
}

fn unlevelled(drive: &Drive, start: usize) -> Opening {
    let warm = drive.coolant_where(|step| step >= start);
    let most_c = warm.iter().copied().fold(f64::NEG_INFINITY, f64::max);
    let Some(last) = (start..drive.steps)
        .rev()
        .find(|step| drive.coolant_at(*step).is_some())
    else {
        return Opening::TooShort;
    };
    let window = drive.steps_of(LEVEL_S / 2.0);
    let slope = drive.slope(last.saturating_sub(window).max(start), last + 1);
    match slope {
        Some(_) if most_c > 105.0 => Opening::NeverLevelled { most_c },
        Some((k_per_min, _)) => Opening::StillRising {
            last_c: drive.coolant_at(last).unwrap_or(0.0),
            k_per_min,
        },
        None => Opening::TooShort,
    }
}

/// The first level that is not only a pause on the way up.
fn level(drive: &Drive, start: usize) -> Option<Level> {
    let window = drive.steps_of(LEVEL_S);
    let stride = drive.steps_of(5.0);
    let mut from = start;
    while from + window <= drive.steps {
        let found = drive
            .slope(from, from + window)
            .filter(|(k_per_min, _)| k_per_min.abs() <= LEVEL_K_PER_MIN)
            .filter(|_| (from..from + window).all(|step| drive.is_running(step)));
        match found {
            Some((_, c)) if !is_pause(drive, from + window, c) => return Some(Level { from, c }),
            Some(_) => from += window,
            None => from += stride,
        }
    }
    None
}

/// Whether the coolant goes on to a level well above this one, on the road.
fn is_pause(drive: &Drive, after: usize, c: f64) -> bool {
    let later: Vec<f64> = drive.coolant_where(|step| step >= after);
    if later.len() < drive.steps_of(30.0) {
        return false;
    }
    // Too cold for any thermostat: any later rise shows that it was a pause.
    if c < COOLEST_THERMOSTAT_C {
        let most = later.iter().copied().fold(f64::NEG_INFINITY, f64::max);
        return most > c + 4.0;
    }
    // Standing, a sound engine climbs until its fan starts. On the road it does not.
    let on_road = drive
        .coolant_where(|step| step >= after && drive.is_moving(step).unwrap_or(!drive.has_speed()));
    if on_road.len() < drive.steps_of(60.0) {
        return false;
    }
    median(on_road).is_some_and(|level| level > c + PAUSE_K && level < 110.0)
}

/// Lays two straight lines that meet through the end of the rise and the start of the level.
///
/// A bend well below the level after which it rises on is a change of load, a stop at lights
/// perhaps: then the lines are laid again through what comes after.
fn knee(drive: &Drive, start: usize, level: Level) -> Option<Knee> {
    let low = level.c - LINE_FROM_K;
    let from = (start..level.from)
        .rev()
        .find(|step| drive.coolant_at(*step).is_some_and(|c| c <= low))
        .unwrap_or(start);
    let to = (level.from + drive.steps_of(LEVEL_S)).min(drive.steps);
    let stride = (to.saturating_sub(from) / MOST_POINTS).max(1);
    let points: Vec<(f64, f64)> = (from..to)
        .step_by(stride)
        .filter_map(|step| Some((drive.at_s(step), drive.coolant_at(step)?)))
        .collect();
    if points.first()?.1 > level.c - 0.6 * RISE_NEEDED_K {
        return None;
    }
    let mut points = points.as_slice();
    for _ in 0..3 {
        let knee = knee_through(points, drive.coolant_every_s)?;
        let rises_on = knee.after_k_per_min > LEVEL_K_PER_MIN && level.c - knee.c > LOAD_BEND_K;
        let after = points.iter().position(|(t, _)| *t >= knee.at_s)?;
        let rest = points.get(after..)?;
        if !rises_on || rest.len() < 12 {
            return Some(knee);
        }
        points = rest;
    }
    None
}

fn knee_through(points: &[(f64, f64)], every_s: f64) -> Option<Knee> {
    if points.len() < 12 {
        return None;
    }
    let candidates: Vec<Bend> = (4..points.len() - 4)
        .filter_map(|nth| bend(points, points.get(nth)?.0))
        .filter(|bend| bend.before > 0.0 && bend.after < 0.6 * bend.before)
        .collect();
    let best = candidates
        .iter()
        .copied()
        .min_by(|one, other| one.squares.total_cmp(&other.squares))?;
    // Readings close in time err together: about one in 20 s counts.
    let seconds = points.last()?.0 - points.first()?.0;
    let independent = (seconds / 20.0_f64.max(every_s)).max(5.0);
    // A whole degree hides a third of one.
    let floor = real(points.len()) * (1.0 / 12.0);
    let allowed = (best.squares.max(floor)) * (1.0 + 4.0 / (independent - 3.0).max(1.0));
    let (least, most) = candidates
        .iter()
        .filter(|bend| bend.squares <= allowed)
        .fold((best.c, best.c), |(least, most), bend| {
            (least.min(bend.c), most.max(bend.c))
        });
    let spread = (most - best.c).max(best.c - least) / 2.0;
    let lag_k = LAG_S * best.before;
    Some(Knee {
        at_s: best.at_s,
        c: best.c - lag_k,
        within_k: 2.0 * libm::hypot(libm::hypot(spread, MODEL_K), lag_k / 2.0),
        before_k_per_min: best.before * 60.0,
        after_k_per_min: best.after * 60.0,
    })
}

/// Two lines that meet.
#[derive(Clone, Copy)]
struct Bend {
    at_s: f64,
    c: f64,
    /// K/s.
    before: f64,
    after: f64,
    squares: f64,
}

/// The best two lines that meet at this time: least squares in (height, slope, slope).
fn bend(points: &[(f64, f64)], at_s: f64) -> Option<Bend> {
    let mut sums = [[0.0_f64; 4]; 3];
    for (t, c) in points {
        let x = [1.0, (t - at_s).min(0.0), (t - at_s).max(0.0)];
        for (row, one) in sums.iter_mut().zip(x) {
            for (cell, other) in row.iter_mut().zip(x.into_iter().chain([*c])) {
                *cell += one * other;
            }
        }
    }
    let [c, before, after] = solved(sums)?;
    let squares = points
        .iter()
        .map(|(t, read)| {
            let line = c + before * (t - at_s).min(0.0) + after * (t - at_s).max(0.0);
            (read - line) * (read - line)
        })
        .sum();
    Some(Bend {
        at_s,
        c,
        before,
        after,
        squares,
    })
}

/// Three equations by elimination; nothing where they say too little.
fn solved(mut rows: [[f64; 4]; 3]) -> Option<[f64; 3]> {
    for pivot in 0..3 {
        let largest =
            (pivot..3).max_by(|a, b| rows[*a][pivot].abs().total_cmp(&rows[*b][pivot].abs()))?;
        rows.swap(pivot, largest);
        let lead = rows[pivot];
        if lead[pivot].abs() < 1e-9 {
            return None;
        }
        for (nth, row) in rows.iter_mut().enumerate() {
            if nth != pivot {
                let factor = row[pivot] / lead[pivot];
                for (cell, above) in row.iter_mut().zip(lead) {
                    *cell -= factor * above;
                }
            }
        }
    }
    Some([
        rows[0][3] / rows[0][0],
        rows[1][3] / rows[1][1],
        rows[2][3] / rows[2][2],
    ])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::{Log, Quantity, Sample};

    fn no_spikes() -> impl Iterator<Item = (usize, usize)> {
        std::iter::empty()
    }

    fn drive(coolant: impl Fn(f64) -> f64, seconds: u32) -> Drive {
        let mut log = Log::default();
        let samples = (0..seconds)
            .map(|t| Sample {
                t_s: f64::from(t),
                value: libm::round(coolant(f64::from(t))),
                line: 1,
            })
            .collect();
        log.series.insert(Quantity::Coolant, samples);
        Drive::of(&log)
    }

    #[test]
    fn a_plain_knee_is_found_where_it_is() {
        let plain = drive(|t| (20.0 + 0.2 * t).min(88.0), 700);
        let Opening::Levelled { level, knee } = opening(&plain, no_spikes()) else {
            panic!("{:?}", opening(&plain, no_spikes()));
        };
        let knee = knee.unwrap();
        assert!((level.c - 88.0).abs() < 0.5);
        // Less the lag that every wax has, and this one has not.
        assert!((knee.c + LAG_S * 0.2 - 88.0).abs() < 0.5, "{knee:?}");
        assert!((knee.c - 88.0).abs() < knee.within_k, "{knee:?}");
        assert!((knee.at_s - 340.0).abs() < 10.0, "{knee:?}");
        assert!((knee.before_k_per_min - 12.0).abs() < 1.0, "{knee:?}");
    }

    #[test]
    fn a_log_that_ends_rising_has_none() {
        let rising = drive(|t| 20.0 + 0.2 * t, 250);
        assert!(matches!(
            opening(&rising, no_spikes()),
            Opening::StillRising { .. }
        ));
        let warm = drive(|_| 88.0, 300);
        assert!(matches!(
            opening(&warm, no_spikes()),
            Opening::StartedAbove { .. }
        ));
        let boiling = drive(|t| 20.0 + 0.2 * t, 480);
        assert!(matches!(
            opening(&boiling, no_spikes()),
            Opening::NeverLevelled { .. }
        ));
    }

    #[test]
    fn a_pause_on_the_way_up_is_no_level() {
        let paused = drive(
            |t| match t {
                t if t < 200.0 => 20.0 + 0.2 * t,
                t if t < 400.0 => 60.0,
                t => (60.0 + 0.2 * (t - 400.0)).min(88.0),
            },
            900,
        );
        assert!((opening(&paused, no_spikes()).level().unwrap().c - 88.0).abs() < 0.7);
    }
}

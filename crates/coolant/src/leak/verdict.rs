//! The rate against the limit.

use super::growth::{Growth, Way, all_temperatures};
use super::jumps::{JUMPS_MOST, Jump, Jumps, jumps, uneven};
use super::line::{Fitted, fitted, fitted_apart};
use super::{LeakLimit, LeakQuestion, Reading, lowest_rating_kpa};
use crate::amount::WIDENED;
use crate::error::{CoolantError, within};
use crate::phrases as say;
use crate::student::{chance_below, quantile};
use measure::Range;
use std::fmt;

/// Waiting longer than this is a test of its own, overnight.
const WAIT_MAX_MINUTES: u32 = 120;

/// What the test says against its limit.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LeakVerdict {
    /// The whole band is below the limit.
    Tight,
    /// The whole band is above the limit.
    Leaks,
    /// The band lies across the limit.
    CannotTellYet {
        /// More minutes of readings after which it should; nothing where waiting alone
        /// does not help.
        wait_minutes: Option<u32>,
        why: Why,
    },
}

/// Why nothing can be told yet.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Why {
    /// The gauge never stood above nothing.
    NoPressure,
    /// So little pressure that holding it proves nothing.
    TooLittlePressure,
    /// Too few readings over too short a time.
    TooShort,
    /// The rate is so near to the limit, or the headspace so little known, that time
    /// does not part them.
    TooNearLimit,
    /// Cooling may be all of it, and nobody read the temperature.
    TemperatureNotRead,
    /// The coolant's contraction may be all of it: headspace or amount is not known.
    ContractionUnknown,
    /// The gauge jumped too often.
    Jumps,
    /// The pressure did not fall evenly, as a leak's does.
    Uneven,
    /// It rose by more than what is known explains.
    PressureRose,
    /// The pressure falls ever more slowly: the hoses still give.
    StillSettling,
    /// The tester closed on itself loses pressure too.
    TesterLeaks,
}

/// A rate, its bands, and the verdict.
pub(super) struct Judged {
    pub(super) ml_per_h: Option<Range<f64>>,
    pub(super) drop_kpa_in_10_min: Range<f64>,
    pub(super) verdict: LeakVerdict,
    pub(super) confidence: f64,
    pub(super) settling: bool,
    pub(super) tester_leaks: bool,
    pub(super) jumps: Vec<Jump>,
    /// The line that is shown.
    pub(super) fit: Fitted,
}

/// A rate with the two kinds of half-width of its 95 % band.
#[derive(Clone, Copy)]
struct Rate {
    per_h: f64,
    /// Shrinks with the time to the power of one and a half.
    scatter: f64,
    /// Shrinks with the time.
    temperature: f64,
    /// Does not shrink.
    headspace: f64,
}

impl Rate {
    /// Widened as every band here is: the tolerances are guesses, and a gauge read to its
    /// division makes steps, not scatter.
    fn half_width(self) -> f64 {
        let squares = self.scatter * self.scatter
            + self.temperature * self.temperature
            + self.headspace * self.headspace;
        WIDENED * libm::sqrt(squares)
    }

    /// The half-width once the test is `longer` times as long, read as often.
    fn half_width_after(self, longer: f64) -> f64 {
        Rate {
            scatter: self.scatter / (longer * libm::sqrt(longer)),
            temperature: self.temperature / longer,
            ..self
        }
        .half_width()
    }
}

pub(super) fn judged(question: &LeakQuestion, growth: &Growth) -> Result<Judged, CoolantError> {
    let Jumps { jumps, cuts } = jumps(
        growth.points(),
        question.gauge_step_kpa / growth.start_kpa,
        growth.start_kpa,
    );
    let hours = duration_h(growth.points());
    let ways: Vec<Judging> = growth
        .ways
        .iter()
        .map(|way| judging(question, growth, way, &cuts, hours))
        .collect();
    let pressures: Vec<Rate> = ways.iter().map(|way| way.pressure).collect();
    let volumes: Vec<Rate> = ways.iter().map(|way| way.volume).collect();
    let (limited, limit_per_h) = match (question.limit, question.headspace) {
        (LeakLimit::MlPerHour(ml), Some(headspace)) => (&volumes, ml / 1000.0 / headspace.litres),
        (LeakLimit::MlPerHour(_), None) => return Err(CoolantError::LimitNeedsHeadspace),
        (LeakLimit::Drop { kpa, minutes }, _) => {
            (&pressures, drop_per_h(kpa, minutes, growth.start_kpa)?)
        }
    };
    let tester_leaks = question
        .blank
        .is_some_and(|blank| loses(blank, question.gauge_step_kpa));
    let seen = Seen {
        question,
        ways: &ways,
        rates: limited,
        limit_per_h,
        hours,
        jumps: jumps.len(),
        tester_leaks,
    };
    let verdict = seen.verdict();
    let fit = ways.into_iter().next().ok_or(CoolantError::Unsteady)?;
    Ok(Judged {
        ml_per_h: question.headspace.and_then(|headspace| {
            let ml = |per_h: f64| per_h * headspace.litres * 1000.0;
            let (low, middle, high) = band(&volumes);
            Range::new(ml(low), ml(middle), ml(high)).ok()
        }),
        drop_kpa_in_10_min: drop_band(growth.start_kpa, &pressures)?,
        verdict,
        confidence: confidence(verdict, limited, limit_per_h, &fit.fit),
        settling: fit.settling,
        tester_leaks,
        jumps,
        fit: fit.fit,
    })
}

/// What one way of the contents' acting makes of the readings.
struct Judging {
    fit: Fitted,
    /// With one more jump, where that fits much better.
    uneven: Option<Fitted>,
    pressure: Rate,
    volume: Rate,
    settling: bool,
    late: Option<Fitted>,
}

fn judging(
    question: &LeakQuestion,
    growth: &Growth,
    way: &Way,
    cuts: &[usize],
    hours: f64,
) -> Judging {
    let fit = fitted_apart(&way.points, cuts, growth.least_scatter);
    let gas_per_h = fitted_apart(&way.gas_points, cuts, growth.least_scatter).rate_per_h;
    let tolerance = question
        .headspace
        .map_or(0.0, |headspace| headspace.within_l / headspace.litres);
    let pressure = Rate {
        per_h: fit.rate_per_h,
        scatter: fit.student() * fit.rate_error,
        temperature: growth.per_kelvin * question.temperature_within_k / hours,
        // The contraction is litres already: its part of the headspace is as far off as that.
        headspace: tolerance * (gas_per_h - fit.rate_per_h).abs(),
    };
    // The headspace multiplies what the gas law gives.
    let volume = Rate {
        headspace: tolerance * gas_per_h.abs(),
        ..pressure
    };
    let (settling, late) = halves(way, cuts, growth.least_scatter)
        .map_or((false, None), |(early, late)| {
            (settles(&early, &late), Some(late))
        });
    Judging {
        uneven: uneven(&way.points, cuts, &fit, growth.least_scatter),
        fit,
        pressure,
        volume,
        settling,
        late,
    }
}

/// What has to be weighed for a verdict.
struct Seen<'a> {
    question: &'a LeakQuestion<'a>,
    ways: &'a [Judging],
    rates: &'a [Rate],
    limit_per_h: f64,
    hours: f64,
    jumps: usize,
    tester_leaks: bool,
}

impl Seen<'_> {
    fn verdict(&self) -> LeakVerdict {
        let (low, _, high) = band(self.rates);
        if self.highest_kpa() < self.no_pressure_below_kpa() {
            return open(Why::NoPressure);
        }
        if self.jumps > JUMPS_MOST {
            return open(Why::Jumps);
        }
        if high < self.limit_per_h {
            return self.tight(high).map_or(LeakVerdict::Tight, open);
        }
        if !all_temperatures(self.question.readings) && !self.question.cold {
            return open(Why::TemperatureNotRead);
        }
        if low > self.limit_per_h {
            return self.leaks().map_or(LeakVerdict::Leaks, open);
        }
        let decided = |rate: &Rate| {
            let half = rate.half_width();
            rate.per_h - half > self.limit_per_h || rate.per_h + half < self.limit_per_h
        };
        match self.rates {
            [rate] => cannot_tell(*rate, self.limit_per_h, self.hours),
            several if several.iter().any(decided) => open(Why::ContractionUnknown),
            several => match several.first() {
                Some(rate) => cannot_tell(*rate, self.limit_per_h, self.hours),
                None => open(Why::TooShort),
            },
        }
    }

    /// What forbids calling it tight. Settling and a leaking tester only make it look worse.
    fn tight(&self, high: f64) -> Option<Why> {
        let hides = |way: &Judging| {
            let other = way.uneven.as_ref();
            other.is_some_and(|fit| fit.rate_per_h > self.limit_per_h)
        };
        if high < -RISES * self.limit_per_h {
            Some(Why::PressureRose)
        } else if self.lowest_kpa() < self.proves_nothing_below_kpa() {
            Some(Why::TooLittlePressure)
        } else if self.ways.iter().any(hides) {
            Some(Why::Uneven)
        } else {
            None
        }
    }

    /// What forbids calling it a leak.
    fn leaks(&self) -> Option<Why> {
        let limit = self.limit_per_h;
        // Where hardly any pressure is left, the fall has to end.
        let gone = self.lowest_kpa() < GONE * self.highest_kpa();
        let settles = |way: &Judging| {
            let late = way.late.as_ref();
            let still =
                late.is_some_and(|late| late.rate_per_h - late.student() * late.rate_error > limit);
            way.settling && !still
        };
        let other = |way: &Judging| {
            let other = way.uneven.as_ref();
            other.is_some_and(|fit| fit.rate_per_h < limit)
        };
        if self.tester_leaks {
            Some(Why::TesterLeaks)
        } else if !gone && self.ways.iter().any(settles) {
            Some(Why::StillSettling)
        } else if !gone && self.ways.iter().any(other) {
            Some(Why::Uneven)
        } else {
            None
        }
    }

    fn highest_kpa(&self) -> f64 {
        let gauge = self
            .question
            .readings
            .iter()
            .map(|reading| reading.gauge_kpa);
        gauge.fold(f64::MIN, f64::max)
    }

    fn lowest_kpa(&self) -> f64 {
        let gauge = self
            .question
            .readings
            .iter()
            .map(|reading| reading.gauge_kpa);
        gauge.fold(f64::MAX, f64::min)
    }

    fn no_pressure_below_kpa(&self) -> f64 {
        NO_PRESSURE_KPA.max(3.0 * self.question.gauge_step_kpa)
    }

    fn proves_nothing_below_kpa(&self) -> f64 {
        lowest_rating_kpa(self.question.cap_gauge_kpa, self.question.system_gauge_kpa)
            .map_or(LOW_KPA, |rating_kpa| rating_kpa / 3.0)
    }
}

/// A gauge that never stood above this was not pumped up.
const NO_PRESSURE_KPA: f64 = 10.0;
/// Below the weakest caps, where no rating is known.
const LOW_KPA: f64 = 25.0;
/// A rise by more than this part of the limit is none of the instruments'.
const RISES: f64 = 0.5;
/// The part of the pressure at which it counts as gone.
const GONE: f64 = 0.2;

fn open(why: Why) -> LeakVerdict {
    LeakVerdict::CannotTellYet {
        wait_minutes: None,
        why,
    }
}

/// From the least to the greatest that any way allows.
fn band(rates: &[Rate]) -> (f64, f64, f64) {
    let low = rates.iter().map(|rate| rate.per_h - rate.half_width());
    let high = rates.iter().map(|rate| rate.per_h + rate.half_width());
    let low = low.fold(f64::INFINITY, f64::min);
    let high = high.fold(f64::NEG_INFINITY, f64::max);
    let middle = match rates {
        [rate] => rate.per_h,
        _ => f64::midpoint(low, high),
    };
    (low, middle, high)
}

/// The chance that the rate lies on the verdict's side of the limit, by the way that is
/// nearest to it; half where nothing can be told whatever the rate.
fn confidence(verdict: LeakVerdict, rates: &[Rate], limit_per_h: f64, fit: &Fitted) -> f64 {
    // The half-width counts as Student's t of the line.
    let chance = |rate: &Rate| {
        let error = rate.half_width() / fit.student();
        chance_below((rate.per_h - limit_per_h).abs() / error, fit.degrees)
    };
    let chances = rates.iter().map(chance);
    match verdict {
        LeakVerdict::CannotTellYet {
            why: Why::TooShort | Why::TooNearLimit,
            ..
        } if rates.len() == 1 => chances.fold(1.0, f64::min),
        LeakVerdict::CannotTellYet { .. } => 0.5,
        LeakVerdict::Tight | LeakVerdict::Leaks => chances.fold(1.0, f64::min),
    }
}

fn duration_h(points: &[(f64, f64)]) -> f64 {
    let ends = points.first().zip(points.last());
    ends.map_or(0.0, |(first, last)| last.0 - first.0)
}

/// A pressure drop in a time, as growth of the headspace in an hour.
fn drop_per_h(kpa: f64, minutes: f64, start_kpa: f64) -> Result<f64, CoolantError> {
    within(
        say::the_limits_drop(),
        kpa,
        "kPa",
        0.0..=0.9 * start_kpa,
        say::mend_leave_some_pressure(),
    )?;
    Ok(kpa / (start_kpa - kpa) * 60.0 / minutes)
}

/// Pressure lost in ten minutes by growth at a rate: p0 (1 - 1/(1 + r/6)).
fn drop_band(start_kpa: f64, rates: &[Rate]) -> Result<Range<f64>, CoolantError> {
    let drop = |per_h: f64| {
        // A headspace cannot shrink to nothing.
        let growth = (per_h / 6.0).max(-0.9);
        start_kpa * growth / (1.0 + growth)
    };
    let (low, middle, high) = band(rates);
    Range::new(drop(low), drop(middle), drop(high)).map_err(|_| CoolantError::Unsteady)
}

/// The first whole minute of further readings at which the band should clear the limit.
fn cannot_tell(rate: Rate, limit_per_h: f64, hours: f64) -> LeakVerdict {
    let away = (rate.per_h - limit_per_h).abs();
    let wait_minutes = (1..=WAIT_MAX_MINUTES).find(|minutes| {
        let longer = 1.0 + f64::from(*minutes) / 60.0 / hours;
        rate.half_width_after(longer) < away
    });
    LeakVerdict::CannotTellYet {
        wait_minutes,
        why: if wait_minutes.is_some() {
            Why::TooShort
        } else {
            Why::TooNearLimit
        },
    }
}

/// Whether the first half falls faster than the second by far more than the scatter.
fn settles(early: &Fitted, late: &Fitted) -> bool {
    let apart = early.rate_per_h - late.rate_per_h;
    let error = libm::hypot(early.rate_error, late.rate_error);
    // Once in a thousand by chance.
    apart > quantile(0.999, early.degrees.min(late.degrees)) * error
}

fn halves(way: &Way, cuts: &[usize], least_scatter: f64) -> Option<(Fitted, Fitted)> {
    let middle = way.points.len() / 2;
    let (early, late) = way.points.split_at_checked(middle)?;
    let (before, after): (Vec<usize>, Vec<usize>) = cuts.iter().partition(|cut| **cut < middle);
    let after: Vec<usize> = after.iter().map(|cut| cut - middle).collect();
    let enough = |points: &[(f64, f64)], cuts: &[usize]| points.len() >= 3 + 2 * cuts.len();
    (enough(early, &before) && enough(late, &after)).then(|| {
        (
            fitted_apart(early, &before, least_scatter),
            fitted_apart(late, &after, least_scatter),
        )
    })
}

/// Whether a tester closed on itself loses pressure beyond its scatter and division.
fn loses(blank: &[Reading], gauge_step_kpa: f64) -> bool {
    let points: Vec<(f64, f64)> = blank
        .iter()
        .map(|reading| (reading.minutes / 60.0, reading.gauge_kpa))
        .collect();
    let fit = fitted(&points, gauge_step_kpa / libm::sqrt(12.0));
    let lost_kpa = -fit.rate_per_h * duration_h(&points);
    lost_kpa > gauge_step_kpa && -fit.rate_per_h > fit.student() * fit.rate_error
}

impl LeakVerdict {
    /// Why nothing can be told, where that is so.
    pub fn why(self) -> Option<Why> {
        match self {
            LeakVerdict::CannotTellYet { why, .. } => Some(why),
            LeakVerdict::Tight | LeakVerdict::Leaks => None,
        }
    }

    /// One word for tables and codes.
    pub fn code(self) -> &'static str {
        match self {
            LeakVerdict::Tight => "tight",
            LeakVerdict::Leaks => "leaks",
            LeakVerdict::CannotTellYet { .. } => "cannot-tell-yet",
        }
    }
}

impl Why {
    /// One word for tables and codes.
    pub fn code(self) -> &'static str {
        match self {
            Why::NoPressure => "no-pressure",
            Why::TooLittlePressure => "too-little-pressure",
            Why::TooShort => "too-short",
            Why::TooNearLimit => "too-near-limit",
            Why::TemperatureNotRead => "temperature-not-read",
            Why::ContractionUnknown => "contraction-unknown",
            Why::Jumps => "jumps",
            Why::Uneven => "uneven",
            Why::PressureRose => "pressure-rose",
            Why::StillSettling => "still-settling",
            Why::TesterLeaks => "tester-leaks",
        }
    }
}

impl fmt::Display for LeakVerdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LeakVerdict::Tight => f.write_str(say::tight()),
            LeakVerdict::Leaks => f.write_str(say::leaks()),
            LeakVerdict::CannotTellYet {
                wait_minutes: Some(minutes),
                ..
            } => f.write_str(&say::cannot_tell_wait(minutes)),
            LeakVerdict::CannotTellYet { why, .. } => f.write_str(&say::cannot_tell_because(why)),
        }
    }
}

impl fmt::Display for Why {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Why::NoPressure => say::why_no_pressure(),
            Why::TooLittlePressure => say::why_too_little_pressure(),
            Why::TooShort => say::why_too_short(),
            Why::TooNearLimit => say::why_too_near_limit(),
            Why::TemperatureNotRead => say::why_temperature_not_read(),
            Why::ContractionUnknown => say::why_contraction_unknown(),
            Why::Jumps => say::why_jumps(),
            Why::Uneven => say::why_uneven(),
            Why::PressureRose => say::why_pressure_rose(),
            Why::StillSettling => say::why_still_settling(),
            Why::TesterLeaks => say::why_tester_leaks(),
        })
    }
}

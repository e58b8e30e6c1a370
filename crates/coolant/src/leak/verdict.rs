//! The rate against the limit.

use super::growth::Growth;
use super::line::{Fitted, fitted};
use super::{LeakLimit, LeakQuestion, Reading};
use crate::amount::WIDENED;
use crate::error::{CoolantError, within};
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
    /// Too few readings over too short a time.
    TooShort,
    /// The rate is so near to the limit, or the headspace so little known, that time
    /// does not part them.
    TooNearLimit,
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

pub(super) fn judged(
    question: &LeakQuestion,
    growth: &Growth,
    fit: &Fitted,
) -> Result<Judged, CoolantError> {
    let hours = duration_h(&growth.points);
    let (pressure, volume) = rates(question, growth, fit, hours);
    let (rate, limit_per_h) = match (question.limit, question.headspace) {
        (LeakLimit::MlPerHour(ml), Some(headspace)) => (volume, ml / 1000.0 / headspace.litres),
        (LeakLimit::MlPerHour(_), None) => return Err(CoolantError::LimitNeedsHeadspace),
        (LeakLimit::Drop { kpa, minutes }, _) => {
            (pressure, drop_per_h(kpa, minutes, growth.start_kpa)?)
        }
    };
    let half = rate.half_width();
    let settling = settling(growth);
    let tester_leaks = question
        .blank
        .is_some_and(|blank| loses(blank, question.gauge_step_kpa));
    let verdict = if rate.per_h + half < limit_per_h {
        // Settling and a leaking tester only make it look worse.
        LeakVerdict::Tight
    } else if rate.per_h - half > limit_per_h {
        leaks_unless(
            settling && !late_half_leaks(growth, limit_per_h),
            tester_leaks,
        )
    } else {
        cannot_tell(rate, limit_per_h, hours)
    };
    let away = (rate.per_h - limit_per_h).abs();
    // The half-width counts as Student's t of the line.
    let error = half / fit.student();
    Ok(Judged {
        ml_per_h: question.headspace.and_then(|headspace| {
            let ml = |per_h: f64| per_h * headspace.litres * 1000.0;
            let (middle, half) = (ml(volume.per_h), ml(volume.half_width()));
            Range::new(middle - half, middle, middle + half).ok()
        }),
        drop_kpa_in_10_min: drop_band(growth.start_kpa, pressure)?,
        verdict,
        confidence: chance_below(away / error, fit.degrees),
        settling,
        tester_leaks,
    })
}

fn duration_h(points: &[(f64, f64)]) -> f64 {
    let ends = points.first().zip(points.last());
    ends.map_or(0.0, |(first, last)| last.0 - first.0)
}

/// The rate as growth of the headspace, and the same with the headspace's own tolerance.
fn rates(question: &LeakQuestion, growth: &Growth, fit: &Fitted, hours: f64) -> (Rate, Rate) {
    let pressure = Rate {
        per_h: fit.rate_per_h,
        scatter: fit.student() * fit.rate_error,
        temperature: growth.per_kelvin * question.temperature_within_k / hours,
        headspace: 0.0,
    };
    // The headspace multiplies what the gas law gives; the contraction is litres already.
    let gas_per_h = fitted(&growth.gas_points, growth.least_scatter).rate_per_h;
    let tolerance = question
        .headspace
        .map_or(0.0, |headspace| headspace.within_l / headspace.litres);
    let volume = Rate {
        headspace: tolerance * gas_per_h.abs(),
        ..pressure
    };
    (pressure, volume)
}

/// A pressure drop in a time, as growth of the headspace in an hour.
fn drop_per_h(kpa: f64, minutes: f64, start_kpa: f64) -> Result<f64, CoolantError> {
    within(
        "the limit's drop",
        kpa,
        "kPa",
        0.0..=0.9 * start_kpa,
        "it has to leave some pressure",
    )?;
    Ok(kpa / (start_kpa - kpa) * 60.0 / minutes)
}

/// Pressure lost in ten minutes by growth at a rate: p0 (1 - 1/(1 + r/6)).
fn drop_band(start_kpa: f64, rate: Rate) -> Result<Range<f64>, CoolantError> {
    let drop = |per_h: f64| {
        // A headspace cannot shrink to nothing.
        let growth = (per_h / 6.0).max(-0.9);
        start_kpa * growth / (1.0 + growth)
    };
    let half = rate.half_width();
    let (low, middle, high) = (rate.per_h - half, rate.per_h, rate.per_h + half);
    Range::new(drop(low), drop(middle), drop(high)).map_err(|_| CoolantError::Unsteady)
}

fn leaks_unless(settling: bool, tester_leaks: bool) -> LeakVerdict {
    let why = match (tester_leaks, settling) {
        (true, _) => Why::TesterLeaks,
        (false, true) => Why::StillSettling,
        (false, false) => return LeakVerdict::Leaks,
    };
    LeakVerdict::CannotTellYet {
        wait_minutes: None,
        why,
    }
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
fn settling(growth: &Growth) -> bool {
    let Some((early, late)) = halves(growth) else {
        return false;
    };
    let apart = early.rate_per_h - late.rate_per_h;
    let error = libm::hypot(early.rate_error, late.rate_error);
    // Once in a thousand by chance.
    apart > quantile(0.999, early.degrees.min(late.degrees)) * error
}

fn late_half_leaks(growth: &Growth, limit_per_h: f64) -> bool {
    halves(growth)
        .is_some_and(|(_, late)| late.rate_per_h - late.student() * late.rate_error > limit_per_h)
}

fn halves(growth: &Growth) -> Option<(Fitted, Fitted)> {
    let middle = growth.points.len() / 2;
    let (early, late) = growth.points.split_at_checked(middle)?;
    (early.len() >= 3 && late.len() >= 3).then(|| {
        (
            fitted(early, growth.least_scatter),
            fitted(late, growth.least_scatter),
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
    /// One word for tables and codes.
    pub fn code(self) -> &'static str {
        match self {
            LeakVerdict::Tight => "tight",
            LeakVerdict::Leaks => "leaks",
            LeakVerdict::CannotTellYet { .. } => "cannot-tell-yet",
        }
    }
}

impl fmt::Display for LeakVerdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LeakVerdict::Tight => f.write_str("tight"),
            LeakVerdict::Leaks => f.write_str("leaks"),
            LeakVerdict::CannotTellYet {
                wait_minutes: Some(minutes),
                ..
            } => write!(f, "can't tell yet, wait {minutes} minutes"),
            LeakVerdict::CannotTellYet { why, .. } => write!(f, "can't tell yet: {why}"),
        }
    }
}

impl fmt::Display for Why {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Why::TooShort => "too few readings over too short a time",
            Why::TooNearLimit => {
                "too near to the limit for these instruments; test overnight, or measure the headspace and temperature better"
            }
            Why::StillSettling => "still settling; pump up again and time afresh",
            Why::TesterLeaks => "the tester loses pressure by itself; mend it and test again",
        })
    }
}

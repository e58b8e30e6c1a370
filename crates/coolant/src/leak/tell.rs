//! What is told beside the verdict: assumptions, notes, and the working.

use super::growth::{Growth, all_temperatures};
use super::jumps::Jump;
use super::verdict::Judged;
use super::{LeakLimit, LeakQuestion, LeakVerdict, lowest_rating_kpa};
use crate::{sources, text};
use measure::{Line, Range, Source, Working};
use std::fmt;

/// Above this the coolant's own steam is a tenth of the air's pressure and more.
const WARM_C: f64 = 45.0;

/// What the verdict takes for granted, because nobody said otherwise.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Assumption {
    HeadspaceUnknown,
    /// Told, not read.
    TemperatureSteady,
    /// Nobody read it, and nobody said that it stays the same.
    TemperatureNotRead,
    /// Every amount that a car, van or pickup may hold is allowed for.
    ContractionAny,
    TesterNotBlankTested,
    RatingUnknown,
}

/// What has to be said with the verdict.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum LeakNote {
    /// A fact, and a fault of the test: the pressure stood above what parts are made for.
    AboveRating {
        highest_kpa: f64,
        rating_kpa: f64,
    },
    WarmCoolant {
        highest_c: f64,
    },
    StillSettling,
    TesterLeaks,
    PressureRose,
    /// Left out of the rate.
    Jumped(Jump),
    /// Nothing wet outside? Then it may go inside.
    CombustionGasTest,
}

impl fmt::Display for Assumption {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Assumption::HeadspaceUnknown => {
                "the headspace is not known: pass or fail by pressure, no mL/h"
            }
            Assumption::TemperatureSteady => {
                "the temperature was not read: it is taken as steady, as cold as the shop"
            }
            Assumption::TemperatureNotRead => {
                "not every reading has a temperature: cooling lowers the pressure as a leak does, and warming hides a leak"
            }
            Assumption::ContractionAny => {
                "headspace or coolant is not known: all that it may be is allowed for, from none to the most that fits"
            }
            Assumption::TesterNotBlankTested => "the tester was not tested closed on itself",
            Assumption::RatingUnknown => "no cap or system rating was given",
        })
    }
}

impl fmt::Display for LeakNote {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LeakNote::AboveRating {
                highest_kpa,
                rating_kpa,
            } => write!(
                f,
                "the gauge stood at {}, above the rating of {}: never test above it, and look for harm",
                text::kilopascals(*highest_kpa),
                text::kilopascals(*rating_kpa)
            ),
            LeakNote::WarmCoolant { highest_c } => write!(
                f,
                "the coolant was at {}: its steam pressure falls as it cools; test cold",
                text::celsius(*highest_c)
            ),
            LeakNote::StillSettling => {
                f.write_str("the pressure fell ever more slowly: let it settle and pump up again")
            }
            LeakNote::TesterLeaks => {
                f.write_str("the tester closed on itself loses pressure: mend it first")
            }
            LeakNote::PressureRose => f.write_str(
                "the pressure rose: warming, or combustion gas if the engine ran",
            ),
            LeakNote::Jumped(jump) => write!(
                f,
                "a jump of {} at {} min is left out of the rate: gauge touched, cap let go, thermostat opened? Look, and test again if nobody knows",
                text::kilopascals(jump.kpa),
                text::plain(jump.minutes)
            ),
            LeakNote::CombustionGasTest => f.write_str(
                "nothing wet outside? Test for combustion gas, look at the oil and the heater's carpet",
            ),
        }
    }
}

pub(super) fn assumptions(question: &LeakQuestion) -> Vec<Assumption> {
    let temperatures = all_temperatures(question.readings);
    let known = question.headspace.is_some() && question.contents.is_some();
    let rated = question
        .cap_gauge_kpa
        .or(question.system_gauge_kpa)
        .is_some();
    [
        (question.headspace.is_none(), Assumption::HeadspaceUnknown),
        (
            !temperatures && question.cold,
            Assumption::TemperatureSteady,
        ),
        (
            !temperatures && !question.cold,
            Assumption::TemperatureNotRead,
        ),
        (temperatures && !known, Assumption::ContractionAny),
        (question.blank.is_none(), Assumption::TesterNotBlankTested),
        (!rated, Assumption::RatingUnknown),
    ]
    .into_iter()
    .filter_map(|(holds, assumption)| holds.then_some(assumption))
    .collect()
}

pub(super) fn notes(question: &LeakQuestion, judged: &Judged) -> Vec<LeakNote> {
    let highest = |values: &mut dyn Iterator<Item = f64>| values.fold(f64::MIN, f64::max);
    let readings = question.readings;
    let highest_kpa = highest(&mut readings.iter().map(|reading| reading.gauge_kpa));
    let highest_c = highest(&mut readings.iter().filter_map(|reading| reading.temperature_c));
    let rating = lowest_rating_kpa(question.cap_gauge_kpa, question.system_gauge_kpa).ok();
    let above = rating
        .filter(|rating_kpa| highest_kpa > rating_kpa + question.gauge_step_kpa)
        .map(|rating_kpa| LeakNote::AboveRating {
            highest_kpa,
            rating_kpa,
        });
    let leaks = judged.verdict == LeakVerdict::Leaks;
    let rose = judged.drop_kpa_in_10_min.high() < 0.0;
    let jumped = judged.jumps.iter().copied().map(LeakNote::Jumped);
    let notes = [
        above,
        (highest_c > WARM_C).then_some(LeakNote::WarmCoolant { highest_c }),
        judged.settling.then_some(LeakNote::StillSettling),
        judged.tester_leaks.then_some(LeakNote::TesterLeaks),
        rose.then_some(LeakNote::PressureRose),
        (leaks || rose).then_some(LeakNote::CombustionGasTest),
    ]
    .into_iter()
    .flatten();
    jumped.chain(notes).collect()
}

pub(super) fn working(
    question: &LeakQuestion,
    growth: &Growth,
    judged: &Judged,
    cooling_share: Option<f64>,
) -> Working {
    let gas = Line::new("headspace at each reading", sources::ideal_gas())
        .formula("V/V0", "(p0/p)·(T/T0)")
        .input("p0, air without steam", text::kilopascals(growth.start_kpa))
        .value(format!("{} readings", question.readings.len()));
    let fit = &judged.fit;
    let rate = Line::new("growth by leaking", sources::least_squares())
        .formula("r", "slope of (V/V0 - 1 - contraction/V0) against time")
        .input("scatter of a reading", text::percent(fit.scatter))
        .input(
            "standard error",
            text::number(fit.rate_error * 100.0, "%/h"),
        )
        .input("Student's t", text::plain(fit.student()))
        .value(text::number(fit.rate_per_h * 100.0, "%/h"));
    let drop = Line::new(
        "lost in ten minutes at steady temperature",
        Source::derived(),
    )
    .formula("Δp", "p0·(1 - 1/(1 + r/6))")
    .value(banded(judged.drop_kpa_in_10_min, "kPa"));
    let mut working = Working::new("Leak test").line(gas).line(rate).line(drop);
    if let (Some(headspace), Some(ml_per_h)) = (question.headspace, judged.ml_per_h) {
        let line = Line::new("coolant lost", Source::derived())
            .formula("q", "r·V0")
            .input("V0", text::litres(headspace.litres))
            .value(banded(ml_per_h, "mL/h"));
        working = working.line(line);
    }
    if let Some(share) = cooling_share {
        let line = Line::new("part of the drop that is cooling", Source::derived())
            .value(text::percent(share));
        working = working.line(line);
    }
    let limit = match question.limit {
        LeakLimit::MlPerHour(ml) => text::number(ml, "mL/h"),
        LeakLimit::Drop { kpa, minutes } => {
            format!("{} in {minutes} min", text::kilopascals(kpa))
        }
    };
    working
        .line(Line::new("limit", Source::given()).value(limit))
        .remark(format!(
            "{}, with a confidence of {}.",
            judged.verdict,
            text::chance(judged.confidence)
        ))
        .limit("Hoses that give hide a part of the leak.")
        .limit("The cap is tested apart; a leak that opens only hot is not seen.")
}

fn banded(range: Range<f64>, unit: &str) -> String {
    format!(
        "{:.2} ({:.2} to {:.2})\u{202f}{unit}",
        range.mid(),
        range.low(),
        range.high()
    )
}

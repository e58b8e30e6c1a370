//! What is told beside the verdict: assumptions, notes, and the working.

use super::growth::{Growth, all_temperatures};
use super::jumps::Jump;
use super::verdict::Judged;
use super::{LeakLimit, LeakQuestion, LeakVerdict, lowest_rating_kpa};
use crate::phrases as say;
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
            Assumption::HeadspaceUnknown => say::headspace_unknown(),
            Assumption::TemperatureSteady => say::temperature_steady(),
            Assumption::TemperatureNotRead => say::temperature_not_read(),
            Assumption::ContractionAny => say::contraction_any(),
            Assumption::TesterNotBlankTested => say::tester_not_blank_tested(),
            Assumption::RatingUnknown => say::rating_unknown(),
        })
    }
}

impl fmt::Display for LeakNote {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            LeakNote::AboveRating {
                highest_kpa,
                rating_kpa,
            } => f.write_str(&say::above_rating(
                text::kilopascals(*highest_kpa),
                text::kilopascals(*rating_kpa),
            )),
            LeakNote::WarmCoolant { highest_c } => {
                f.write_str(&say::warm_coolant(text::celsius(*highest_c)))
            }
            LeakNote::StillSettling => f.write_str(say::still_settling()),
            LeakNote::TesterLeaks => f.write_str(say::tester_leaks()),
            LeakNote::PressureRose => f.write_str(say::pressure_rose()),
            LeakNote::Jumped(jump) => f.write_str(&say::jumped(
                text::kilopascals(jump.kpa),
                text::plain(jump.minutes),
            )),
            LeakNote::CombustionGasTest => f.write_str(say::combustion_gas_test()),
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
    let gas = Line::new(say::headspace_at_each_reading(), sources::ideal_gas())
        .formula("V/V0", "(p0/p)·(T/T0)")
        .input(say::p0_without_steam(), text::kilopascals(growth.start_kpa))
        .value(say::so_many_readings(question.readings.len()));
    let fit = &judged.fit;
    let rate = Line::new(say::growth_by_leaking(), sources::least_squares())
        .formula("r", say::slope_against_time())
        .input(say::scatter_of_a_reading(), text::percent(fit.scatter))
        .input(
            say::standard_error(),
            text::number(fit.rate_error * 100.0, "%/h"),
        )
        .input(say::students_t(), text::plain(fit.student()))
        .value(text::number(fit.rate_per_h * 100.0, "%/h"));
    let drop = Line::new(say::lost_in_ten_minutes(), Source::derived())
        .formula("Δp", "p0·(1 - 1/(1 + r/6))")
        .value(banded(judged.drop_kpa_in_10_min, "kPa"));
    let mut working = Working::new(say::leak_test_title())
        .line(gas)
        .line(rate)
        .line(drop);
    if let (Some(headspace), Some(ml_per_h)) = (question.headspace, judged.ml_per_h) {
        let line = Line::new(say::coolant_lost(), Source::derived())
            .formula("q", "r·V0")
            .input("V0", text::litres(headspace.litres))
            .value(banded(ml_per_h, "mL/h"));
        working = working.line(line);
    }
    if let Some(share) = cooling_share {
        let line =
            Line::new(say::part_that_is_cooling(), Source::derived()).value(text::percent(share));
        working = working.line(line);
    }
    let limit = match question.limit {
        LeakLimit::MlPerHour(ml) => text::number(ml, "mL/h"),
        LeakLimit::Drop { kpa, minutes } => say::drop_in_minutes(text::kilopascals(kpa), minutes),
    };
    working
        .line(Line::new(say::limit_of_test(), Source::given()).value(limit))
        .remark(say::with_confidence(
            judged.verdict,
            text::chance(judged.confidence),
        ))
        .limit(say::hoses_hide_a_part())
        .limit(say::cap_is_tested_apart())
}

fn banded(range: Range<f64>, unit: &str) -> String {
    say::value_from_to(
        format_args!("{:.2}", range.mid()),
        format_args!("{:.2}", range.low()),
        format_args!("{:.2}", range.high()),
        unit,
    )
}

//! What of a question can be so at all.

use super::{LeakLimit, LeakQuestion, Reading};
use crate::error::{CoolantError, within};
use crate::phrases as say;

/// Readings of a line, and the fewest that leave a scatter to judge by.
const READINGS_MIN: usize = 4;

pub(super) fn checked(question: &LeakQuestion, air_kpa: f64) -> Result<(), CoolantError> {
    series(question.readings, air_kpa)?;
    if let Some(blank) = question.blank {
        series(blank, air_kpa)?;
    }
    let figure = say::mend_figure_and_unit();
    within(
        say::the_gauges_division(),
        question.gauge_step_kpa,
        "kPa",
        1e-4..=50.0,
        figure,
    )?;
    within(
        say::tolerance_of_temperature_change(),
        question.temperature_within_k,
        "K",
        0.0..=50.0,
        say::mend_how_far_off_thermometer(),
    )?;
    if let Some(headspace) = question.headspace {
        headspace.checked(say::the_headspace(), 0.01)?;
    }
    if let Some(contents) = question.contents {
        within(
            say::coolant_in_the_system(),
            contents.litres,
            "L",
            0.0..=200.0,
            figure,
        )?;
    }
    match question.limit {
        LeakLimit::MlPerHour(_) if question.headspace.is_none() => {
            Err(CoolantError::LimitNeedsHeadspace)
        }
        LeakLimit::MlPerHour(ml) => within(
            say::the_limit(),
            ml,
            "mL/h",
            1e-3..=1e5,
            say::mend_above_nothing(),
        )
        .map(drop),
        LeakLimit::Drop { kpa, minutes } => {
            within(
                say::the_limits_drop(),
                kpa,
                "kPa",
                1e-3..=50.0,
                say::mend_above_nothing(),
            )?;
            within(say::the_limits_time(), minutes, "min", 0.1..=1440.0, figure).map(drop)
        }
    }
}

/// Faster than this no coolant warms or cools, in kelvin a minute, once two readings are
/// further apart than a thermometer put in late.
const KELVIN_PER_MIN_MOST: f64 = 15.0;

fn series(readings: &[Reading], air_kpa: f64) -> Result<(), CoolantError> {
    if readings.len() < READINGS_MIN {
        return Err(CoolantError::TooFewReadings {
            found: readings.len(),
            needed: READINGS_MIN,
        });
    }
    let highest_kpa = readings
        .iter()
        .map(|reading| reading.gauge_kpa)
        .fold(f64::MIN, f64::max);
    let mut before: Option<&Reading> = None;
    for (index, reading) in readings.iter().enumerate() {
        let position = index + 1;
        one(reading, position, air_kpa)?;
        // Pressed up, a closed system does not fall below the air outside.
        if highest_kpa > PRESSED_KPA && reading.gauge_kpa < -PRESSED_KPA / 2.0 {
            return Err(CoolantError::ReadingImpossible {
                position,
                what: say::the_gauge(),
                value: reading.gauge_kpa,
                unit: "kPa",
                mend: say::mend_below_nothing(),
            });
        }
        if let Some(before) = before {
            steady(before, reading, position)?;
        }
        before = Some(reading);
    }
    Ok(())
}

/// Above this there was pressure.
const PRESSED_KPA: f64 = 10.0;

fn one(reading: &Reading, position: usize, air_kpa: f64) -> Result<(), CoolantError> {
    let impossible = |what, value, unit| CoolantError::ReadingImpossible {
        position,
        what,
        value,
        unit,
        mend: say::mend_figure_sign_unit(),
    };
    if !(0.0..=10_000.0).contains(&reading.minutes) {
        return Err(impossible(say::the_time(), reading.minutes, "min"));
    }
    // Some air has to be left for the gas law.
    if !((1.0 - air_kpa)..=300.0).contains(&reading.gauge_kpa) {
        return Err(impossible(say::the_gauge(), reading.gauge_kpa, "kPa"));
    }
    match reading.temperature_c {
        Some(t_c) if !(0.0..=100.0).contains(&t_c) => {
            Err(impossible(say::the_temperature(), t_c, "°C"))
        }
        _ => Ok(()),
    }
}

fn steady(before: &Reading, reading: &Reading, position: usize) -> Result<(), CoolantError> {
    if reading.minutes <= before.minutes {
        return Err(CoolantError::TimeNotRising {
            position,
            minutes: reading.minutes,
        });
    }
    let minutes = (reading.minutes - before.minutes).max(1.0);
    if let (Some(from_c), Some(to_c)) = (before.temperature_c, reading.temperature_c)
        && (to_c - from_c).abs() > KELVIN_PER_MIN_MOST * minutes
    {
        return Err(CoolantError::ReadingImpossible {
            position,
            what: say::the_temperature(),
            value: to_c,
            unit: "°C",
            mend: say::mend_too_far_from_before(),
        });
    }
    Ok(())
}

//! From pressures and temperatures to how far the headspace has grown by leaking.

use super::line::fitted;
use super::{LeakQuestion, Reading};
use crate::error::CoolantError;
use crate::property::density_kg_per_m3;

const KELVIN: f64 = 273.15;

/// How far the headspace has grown by leaking, as a part of what it was.
pub(super) struct Growth {
    /// Hours, and growth less the coolant's contraction.
    pub(super) points: Vec<(f64, f64)>,
    /// Hours, and growth by the gas law alone.
    pub(super) gas_points: Vec<(f64, f64)>,
    /// The scatter that the gauge's division alone makes.
    pub(super) least_scatter: f64,
    /// Growth for each kelvin that the temperature change is off.
    pub(super) per_kelvin: f64,
    pub(super) start_kpa: f64,
    /// T/T0 and contraction for each reading.
    cooling: Vec<(f64, f64)>,
}

impl Growth {
    /// The absolute pressure at a reading if the headspace has grown by `leaked`.
    pub(super) fn absolute_kpa(&self, index: usize, leaked: f64) -> f64 {
        let (warmth, contraction) = self.cooling.get(index).copied().unwrap_or((1.0, 0.0));
        self.start_kpa * warmth / (1.0 + leaked + contraction)
    }
}

/// Whether every reading has its temperature.
pub(super) fn all_temperatures(readings: &[Reading]) -> bool {
    readings
        .iter()
        .all(|reading| reading.temperature_c.is_some())
}

pub(super) fn growth(question: &LeakQuestion, air_kpa: f64) -> Result<Growth, CoolantError> {
    let readings = question.readings;
    let start_kpa = readings.first().map_or(air_kpa, |first| first.gauge_kpa) + air_kpa;
    let cooling = cooling(question)?;
    let gas = |(reading, (warmth, _)): (&Reading, &(f64, f64))| {
        let ratio = start_kpa / (reading.gauge_kpa + air_kpa) * warmth;
        (reading.minutes / 60.0, ratio - 1.0)
    };
    let gas_points: Vec<(f64, f64)> = readings.iter().zip(&cooling).map(gas).collect();
    let points = gas_points
        .iter()
        .zip(&cooling)
        .map(|((hours, growth), (_, contraction))| (*hours, growth - contraction))
        .collect();
    Ok(Growth {
        points,
        gas_points,
        // A reading rounded to a division is off by that over the root of twelve.
        least_scatter: question.gauge_step_kpa / libm::sqrt(12.0) / start_kpa,
        per_kelvin: per_kelvin(question)?,
        start_kpa,
        cooling,
    })
}

/// The part of the pressure drop that cooling explains, between the ends of straight
/// lines through all readings.
pub(super) fn cooling_share(question: &LeakQuestion, growth: &Growth) -> Option<f64> {
    let last = question.readings.len().checked_sub(1)?;
    if !all_temperatures(question.readings) {
        return None;
    }
    let gauge: Vec<(f64, f64)> = question
        .readings
        .iter()
        .map(|reading| (reading.minutes / 60.0, reading.gauge_kpa))
        .collect();
    let alone: Vec<(f64, f64)> = gauge
        .iter()
        .enumerate()
        .map(|(index, (hours, _))| (*hours, growth.absolute_kpa(index, 0.0)))
        .collect();
    let hours = gauge.get(last)?.0 - gauge.first()?.0;
    let drop_kpa = -fitted(&gauge, 0.0).rate_per_h * hours;
    let by_cooling_kpa = -fitted(&alone, 0.0).rate_per_h * hours;
    (drop_kpa > question.gauge_step_kpa).then_some(by_cooling_kpa / drop_kpa)
}

/// T/T0, and the coolant's contraction as a part of the headspace, for each reading.
fn cooling(question: &LeakQuestion) -> Result<Vec<(f64, f64)>, CoolantError> {
    let first_c = question
        .readings
        .first()
        .and_then(|first| first.temperature_c);
    let Some(start_c) = first_c.filter(|_| all_temperatures(question.readings)) else {
        return Ok(vec![(1.0, 0.0); question.readings.len()]);
    };
    question
        .readings
        .iter()
        .filter_map(|reading| reading.temperature_c)
        .map(|t_c| {
            let warmth = (t_c + KELVIN) / (start_c + KELVIN);
            Ok((warmth, contraction(question, start_c, t_c)?))
        })
        .collect()
}

/// What the coolant gave up between two temperatures, as a part of the headspace;
/// nothing where either is not known.
fn contraction(question: &LeakQuestion, from_c: f64, to_c: f64) -> Result<f64, CoolantError> {
    match (question.contents, question.headspace) {
        (Some(contents), Some(headspace)) => {
            let before = density_kg_per_m3(contents.mixture, from_c)?;
            let after = density_kg_per_m3(contents.mixture, to_c)?;
            Ok(contents.litres * (1.0 - before / after) / headspace.litres)
        }
        _ => Ok(0.0),
    }
}

fn per_kelvin(question: &LeakQuestion) -> Result<f64, CoolantError> {
    const ROOM_C: f64 = 20.0;
    let first_c = question
        .readings
        .first()
        .and_then(|first| first.temperature_c);
    // A kelvin below a hundred, so that both ends are within the densities' range.
    let from_c = first_c.unwrap_or(ROOM_C).clamp(1.0, 99.0);
    Ok(1.0 / (from_c + KELVIN) + contraction(question, from_c + 1.0, from_c)?)
}

//! From pressures and temperatures to how far the headspace has grown by leaking.

use super::line::fitted;
use super::{LeakQuestion, Reading};
use crate::error::{CoolantError, within};
use crate::property::density_kg_per_m3;
use crate::water::steam_kpa;

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
    /// Of the air inside, without the coolant's steam, at the first reading.
    pub(super) start_kpa: f64,
    coolness: Vec<Coolness>,
}

/// What a temperature does, against that of the first reading.
#[derive(Clone, Copy)]
struct Coolness {
    /// T/T0.
    warmth: f64,
    /// What the coolant gave up, as a part of the headspace.
    contraction: f64,
    steam_kpa: f64,
}

/// Where no temperature is known, nothing changes.
const STEADY: Coolness = Coolness {
    warmth: 1.0,
    contraction: 0.0,
    steam_kpa: 0.0,
};

impl Growth {
    /// The absolute pressure at a reading if the headspace has grown by `leaked`.
    pub(super) fn absolute_kpa(&self, index: usize, leaked: f64) -> f64 {
        let coolness = self.coolness.get(index).unwrap_or(&STEADY);
        let headspace = 1.0 + leaked + coolness.contraction;
        self.start_kpa * coolness.warmth / headspace + coolness.steam_kpa
    }
}

/// Whether every reading has its temperature.
pub(super) fn all_temperatures(readings: &[Reading]) -> bool {
    readings
        .iter()
        .all(|reading| reading.temperature_c.is_some())
}

pub(super) fn growth(question: &LeakQuestion, air_kpa: f64) -> Result<Growth, CoolantError> {
    let coolness = coolness(question)?;
    let dry = question
        .readings
        .iter()
        .zip(&coolness)
        .map(|(reading, coolness)| dry_kpa(reading.gauge_kpa + air_kpa, coolness.steam_kpa))
        .collect::<Result<Vec<f64>, CoolantError>>()?;
    let start_kpa = dry.first().copied().unwrap_or(air_kpa);
    let hours = question
        .readings
        .iter()
        .map(|reading| reading.minutes / 60.0);
    let gas_points: Vec<(f64, f64)> = hours
        .zip(dry.iter().zip(&coolness))
        .map(|(hours, (dry_kpa, coolness))| (hours, start_kpa / dry_kpa * coolness.warmth - 1.0))
        .collect();
    let points = gas_points
        .iter()
        .zip(&coolness)
        .map(|((hours, growth), coolness)| (*hours, growth - coolness.contraction))
        .collect();
    Ok(Growth {
        points,
        gas_points,
        // A reading rounded to a division is off by that over the root of twelve.
        least_scatter: question.gauge_step_kpa / libm::sqrt(12.0) / start_kpa,
        per_kelvin: per_kelvin(question, start_kpa)?,
        start_kpa,
        coolness,
    })
}

/// The part of the pressure drop that cooling explains, between the ends of straight
/// lines through all readings.
pub(super) fn cooling_share(question: &LeakQuestion, growth: &Growth) -> Option<f64> {
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
    let hours = gauge.last()?.0 - gauge.first()?.0;
    let drop_kpa = -fitted(&gauge, 0.0).rate_per_h * hours;
    let by_cooling_kpa = -fitted(&alone, 0.0).rate_per_h * hours;
    (drop_kpa > question.gauge_step_kpa).then_some(by_cooling_kpa / drop_kpa)
}

fn coolness(question: &LeakQuestion) -> Result<Vec<Coolness>, CoolantError> {
    let first_c = question
        .readings
        .first()
        .and_then(|first| first.temperature_c);
    let Some(start_c) = first_c.filter(|_| all_temperatures(question.readings)) else {
        return Ok(vec![STEADY; question.readings.len()]);
    };
    question
        .readings
        .iter()
        .filter_map(|reading| reading.temperature_c)
        .map(|t_c| {
            Ok(Coolness {
                warmth: (t_c + KELVIN) / (start_c + KELVIN),
                contraction: contraction(question, start_c, t_c)?,
                steam_kpa: steam_over_coolant_kpa(question, t_c)?,
            })
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

/// By Raoult's law; nothing where the mixture is not known.
fn steam_over_coolant_kpa(question: &LeakQuestion, t_c: f64) -> Result<f64, CoolantError> {
    match question.contents {
        Some(contents) => Ok(contents.mixture.water_mole_fraction() * steam_kpa(t_c)?),
        None => Ok(0.0),
    }
}

fn dry_kpa(absolute_kpa: f64, steam_kpa: f64) -> Result<f64, CoolantError> {
    within(
        "the air's part of a pressure",
        absolute_kpa - steam_kpa,
        "kPa",
        1.0..=1000.0,
        "the rest is steam: test cold, and with air pumped in",
    )
}

fn per_kelvin(question: &LeakQuestion, start_kpa: f64) -> Result<f64, CoolantError> {
    const ROOM_C: f64 = 20.0;
    let first_c = question
        .readings
        .first()
        .and_then(|first| first.temperature_c);
    // A kelvin inside the range, so that both ends have a density.
    let cool_c = first_c.unwrap_or(ROOM_C).clamp(0.5, 99.0);
    let warm_c = cool_c + 1.0;
    let steam_kpa =
        steam_over_coolant_kpa(question, warm_c)? - steam_over_coolant_kpa(question, cool_c)?;
    let gas = 1.0 / (cool_c + KELVIN) + steam_kpa / start_kpa;
    Ok(gas + contraction(question, warm_c, cool_c)?)
}

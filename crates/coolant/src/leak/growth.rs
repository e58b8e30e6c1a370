//! From pressures and temperatures to how far the headspace has grown by leaking.

use super::line::fitted;
use super::{LeakQuestion, Reading};
use crate::error::{CoolantError, within};
use crate::mixture::{Glycol, Mixture};
use crate::phrases as say;
use crate::property::density_kg_per_m3;
use crate::water::steam_kpa;

const KELVIN: f64 = 273.15;

/// Least air that a tester's hose and the neck leave.
const AIR_LEAST_L: f64 = 0.1;
/// Most air above the coolant.
const AIR_MOST_L: f64 = 5.0;
/// Most coolant that a car, van or pickup holds.
const COOLANT_MOST_L: f64 = 25.0;
/// Most litres of coolant to a litre of air: a system filled to its neck.
const RATIO_MOST: f64 = 50.0;
/// Litres of coolant to a litre of air in most systems; only the thermometer's own error is
/// reckoned with it, and only where the true one is not known.
const RATIO_USUAL: f64 = 10.0;

/// How far the headspace has grown by leaking, as a part of what it was.
pub(super) struct Growth {
    /// By each way in which the contents may act: one where headspace and coolant are known,
    /// the ends of what is possible where not.
    pub(super) ways: Vec<Way>,
    /// The scatter that the gauge's division alone makes.
    pub(super) least_scatter: f64,
    /// Growth for each kelvin that the temperature change is off.
    pub(super) per_kelvin: f64,
    /// Of the air inside, without the coolant's steam, at the first reading.
    pub(super) start_kpa: f64,
    coolness: Vec<Coolness>,
}

/// Growth if the contents act in one of the possible ways.
pub(super) struct Way {
    /// Hours, and growth less the coolant's contraction.
    pub(super) points: Vec<(f64, f64)>,
    /// Hours, and growth by the gas law alone.
    pub(super) gas_points: Vec<(f64, f64)>,
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

/// How the contents act: litres of coolant to a litre of air, and the water's part of the
/// steam.
#[derive(Clone, Copy)]
struct Acting {
    mixture: Mixture,
    ratio: f64,
    steam: f64,
}

impl Growth {
    /// By the first of the ways, which is shown and searched for jumps.
    pub(super) fn points(&self) -> &[(f64, f64)] {
        self.ways.first().map_or(&[], |way| &way.points)
    }

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
    let acting = acting(question)?;
    let mut ways = Vec::new();
    let mut first = None;
    for one in &acting {
        let coolness = coolness(question, *one)?;
        let (start_kpa, way) = way(question, air_kpa, &coolness)?;
        first.get_or_insert((start_kpa, coolness));
        ways.push(way);
    }
    let (start_kpa, coolness) = first.unwrap_or((air_kpa, Vec::new()));
    Ok(Growth {
        ways,
        // A reading rounded to a division is off by that over the root of twelve.
        least_scatter: question.gauge_step_kpa / libm::sqrt(12.0) / start_kpa,
        per_kelvin: per_kelvin(question, &acting, start_kpa)?,
        start_kpa,
        coolness,
    })
}

fn way(
    question: &LeakQuestion,
    air_kpa: f64,
    coolness: &[Coolness],
) -> Result<(f64, Way), CoolantError> {
    let dry = question
        .readings
        .iter()
        .zip(coolness)
        .map(|(reading, coolness)| dry_kpa(reading.gauge_kpa + air_kpa, coolness.steam_kpa))
        .collect::<Result<Vec<f64>, CoolantError>>()?;
    let start_kpa = dry.first().copied().unwrap_or(air_kpa);
    let hours = question
        .readings
        .iter()
        .map(|reading| reading.minutes / 60.0);
    let gas_points: Vec<(f64, f64)> = hours
        .zip(dry.iter().zip(coolness))
        .map(|(hours, (dry_kpa, coolness))| (hours, start_kpa / dry_kpa * coolness.warmth - 1.0))
        .collect();
    let points = gas_points
        .iter()
        .zip(coolness)
        .map(|((hours, growth), coolness)| (*hours, growth - coolness.contraction))
        .collect();
    Ok((start_kpa, Way { points, gas_points }))
}

/// The ways in which the contents may act, by what is known of them.
fn acting(question: &LeakQuestion) -> Result<Vec<Acting>, CoolantError> {
    let half = || Mixture::by_volume(Glycol::Ethylene, 0.5);
    let headspace_l = question.headspace.map(|headspace| headspace.litres);
    let (low, high) = match (question.contents, headspace_l) {
        (Some(contents), Some(air_l)) => {
            return Ok(vec![Acting {
                mixture: contents.mixture,
                ratio: contents.litres / air_l,
                steam: contents.mixture.water_mole_fraction(),
            }]);
        }
        (Some(contents), None) => (contents.litres / AIR_MOST_L, contents.litres / AIR_LEAST_L),
        (None, Some(air_l)) => (0.0, COOLANT_MOST_L / air_l),
        (None, None) => (0.0, RATIO_MOST),
    };
    let mixture = question
        .contents
        .map_or_else(half, |contents| Ok(contents.mixture))?;
    let known = question.contents.is_some();
    let most = if known {
        mixture.water_mole_fraction()
    } else {
        1.0
    };
    let least = if known { most } else { 0.0 };
    let act = |ratio: f64, steam| Acting {
        mixture,
        ratio: ratio.min(RATIO_MOST),
        steam,
    };
    if !all_temperatures(question.readings) {
        return Ok(vec![act(RATIO_USUAL.clamp(low, high), 0.0)]);
    }
    let mut ways = vec![act(low, least), act(high, most)];
    if least < most {
        ways.extend([act(low, most), act(high, least)]);
    }
    Ok(ways)
}

/// The part of the pressure drop that cooling explains, between the ends of straight
/// lines through all readings; only where headspace and coolant are known.
pub(super) fn cooling_share(question: &LeakQuestion, growth: &Growth) -> Option<f64> {
    let known = question.headspace.is_some() && question.contents.is_some();
    if !known || !all_temperatures(question.readings) {
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

fn coolness(question: &LeakQuestion, acting: Acting) -> Result<Vec<Coolness>, CoolantError> {
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
                contraction: contraction(acting, start_c, t_c)?,
                steam_kpa: acting.steam * steam_kpa(t_c)?,
            })
        })
        .collect()
}

/// What the coolant gave up between two temperatures, as a part of the headspace.
fn contraction(acting: Acting, from_c: f64, to_c: f64) -> Result<f64, CoolantError> {
    if acting.ratio <= 0.0 {
        return Ok(0.0);
    }
    let before = density_kg_per_m3(acting.mixture, from_c)?;
    let after = density_kg_per_m3(acting.mixture, to_c)?;
    Ok(acting.ratio * (1.0 - before / after))
}

fn dry_kpa(absolute_kpa: f64, steam_kpa: f64) -> Result<f64, CoolantError> {
    within(
        say::airs_part_of_a_pressure(),
        absolute_kpa - steam_kpa,
        "kPa",
        1.0..=1000.0,
        say::mend_rest_is_steam(),
    )
}

fn per_kelvin(
    question: &LeakQuestion,
    acting: &[Acting],
    start_kpa: f64,
) -> Result<f64, CoolantError> {
    const ROOM_C: f64 = 20.0;
    let first_c = question
        .readings
        .first()
        .and_then(|first| first.temperature_c);
    // A kelvin inside the range, so that both ends have a density.
    let cool_c = first_c.unwrap_or(ROOM_C).clamp(0.5, 99.0);
    let warm_c = cool_c + 1.0;
    let usual = match acting {
        [one] => *one,
        several => {
            let ratios = || several.iter().map(|one| one.ratio);
            let (low, high) = (
                ratios().fold(f64::MAX, f64::min),
                ratios().fold(0.0, f64::max),
            );
            let steam = several.iter().map(|one| one.steam).fold(0.0, f64::max);
            let mixture = several.first().map(|one| one.mixture);
            Acting {
                mixture: mixture.ok_or(CoolantError::Unsteady)?,
                ratio: RATIO_USUAL.clamp(low, high),
                steam,
            }
        }
    };
    let steam_kpa = usual.steam * (steam_kpa(warm_c)? - steam_kpa(cool_c)?);
    let gas = 1.0 / (cool_c + KELVIN) + steam_kpa / start_kpa;
    Ok(gas + contraction(usual, warm_c, cool_c)?)
}

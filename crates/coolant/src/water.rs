//! Steam and air: the boiling line of water, and pressure against altitude.

use crate::error::{CoolantError, within};
use crate::phrases as say;
use crate::{sources, text};
use measure::{Line, Working};

/// Pressure of the standard atmosphere at sea level.
const SEA_LEVEL_KPA: f64 = 101.325;

/// A state in which water boils.
#[derive(Clone, Debug, PartialEq)]
pub struct WaterBoiling {
    pub boil_c: f64,
    pub absolute_kpa: f64,
    pub working: Working,
}

/// The air outside.
#[derive(Clone, Debug, PartialEq)]
pub struct Atmosphere {
    pub absolute_kpa: f64,
    pub working: Working,
}

/// Coefficients n1 to n10 of the saturation equation (IAPWS R7-97(2012), table 34).
const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];

/// The temperature at which water boils under an absolute pressure.
///
/// Formula: equation 31 of region 4, a quadratic in the fourth root of the pressure.
///
/// Inputs: absolute pressure in kPa, 0.611 213 to 22 064.
///
/// Returns °C, with the pressure.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// Pure water.
///
/// # Source
///
/// IAPWS R7-97(2012), section 8.2, equation 31. The equation needs square roots only,
/// so every machine gets the same bits; that, and its ten coefficients, is why it is
/// written out here and no steam library is built in.
///
/// ```
/// assert_eq!((coolant::water_boils(101.325)?.boil_c * 1e4).round(), 999_743.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn water_boils(absolute_kpa: f64) -> Result<WaterBoiling, CoolantError> {
    let boil_c = boil_c(absolute_kpa)?;
    let line = Line::new(say::water_boils(), sources::if97())
        .formula("Ts", say::equation_31())
        .input("p", text::kilopascals(absolute_kpa))
        .value(text::celsius(boil_c));
    Ok(WaterBoiling {
        boil_c,
        absolute_kpa,
        working: Working::new(say::boiling_of_water_title()).line(line),
    })
}

/// The pressure of steam over boiling water.
///
/// Formula: equation 30 of region 4, the same quadratic solved for the pressure.
///
/// Inputs: °C, 0 to 373.946.
///
/// Returns absolute kPa.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// Pure water.
///
/// # Source
///
/// IAPWS R7-97(2012), section 8.1, equation 30.
///
/// ```
/// assert_eq!((coolant::steam_pressure(100.0)?.absolute_kpa * 100.0).round(), 10142.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn steam_pressure(temperature_c: f64) -> Result<WaterBoiling, CoolantError> {
    let absolute_kpa = steam_kpa(temperature_c)?;
    let line = Line::new(say::pressure_of_steam(), sources::if97())
        .formula("ps", say::equation_30())
        .input("t", text::celsius(temperature_c))
        .value(text::kilopascals(absolute_kpa));
    Ok(WaterBoiling {
        boil_c: temperature_c,
        absolute_kpa,
        working: Working::new(say::pressure_of_steam_title()).line(line),
    })
}

/// The pressure of the standard atmosphere at an altitude.
///
/// Formula: p = 101.325 kPa · (1 - 0.0065 h / 288.15)^5.255 877.
///
/// Inputs: altitude above sea level in m, -500 to 6000.
///
/// Returns absolute kPa.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`].
///
/// # Limits
///
/// The weather moves it by ±3 %. Altitude is taken as geopotential, which at 3000 m is
/// 1.4 m less than by tape.
///
/// # Source
///
/// U.S. Standard Atmosphere, 1976, equation 33a with its constants of table 4; the
/// exponent is g M / (R L) = 9.80665 · 28.9644 / (8314.32 · 0.0065).
///
/// ```
/// assert_eq!((coolant::atmosphere(1500.0)?.absolute_kpa * 100.0).round(), 8456.0);
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn atmosphere(altitude_m: f64) -> Result<Atmosphere, CoolantError> {
    let absolute_kpa = air_kpa(altitude_m)?;
    let line = Line::new(say::pressure_of_air(), sources::atmosphere())
        .formula("pa", "101.325 kPa·(1 - 0.0065·h/288.15)^5.2559")
        .input("h", text::metres(altitude_m))
        .value(text::kilopascals(absolute_kpa));
    Ok(Atmosphere {
        absolute_kpa,
        working: Working::new(say::air_title())
            .line(line)
            .limit(say::weather_moves_it()),
    })
}

/// Equation 31.
pub(crate) fn boil_c(absolute_kpa: f64) -> Result<f64, CoolantError> {
    within(
        say::the_absolute_pressure(),
        absolute_kpa,
        "kPa",
        0.611_213..=22_064.0,
        say::mend_gauge_needs_airs(),
    )?;
    let beta = libm::sqrt(libm::sqrt(absolute_kpa / 1000.0));
    let e = beta * beta + N[2] * beta + N[5];
    let f = N[0] * beta * beta + N[3] * beta + N[6];
    let g = N[1] * beta * beta + N[4] * beta + N[7];
    let d = 2.0 * g / (-f - libm::sqrt(f * f - 4.0 * e * g));
    let sum = N[9] + d;
    let kelvin = (sum - libm::sqrt(sum * sum - 4.0 * (N[8] + N[9] * d))) / 2.0;
    Ok(kelvin - 273.15)
}

/// Equation 30.
pub(crate) fn steam_kpa(temperature_c: f64) -> Result<f64, CoolantError> {
    within(
        say::the_temperature(),
        temperature_c,
        "°C",
        0.0..=373.946,
        say::mend_water_boils_between(),
    )?;
    let kelvin = temperature_c + 273.15;
    let theta = kelvin + N[8] / (kelvin - N[9]);
    let a = theta * theta + N[0] * theta + N[1];
    let b = N[2] * theta * theta + N[3] * theta + N[4];
    let c = N[5] * theta * theta + N[6] * theta + N[7];
    let root = 2.0 * c / (-b + libm::sqrt(b * b - 4.0 * a * c));
    let square = root * root;
    Ok(square * square * 1000.0)
}

/// Equation 33a.
pub(crate) fn air_kpa(altitude_m: f64) -> Result<f64, CoolantError> {
    within(
        say::the_altitude(),
        altitude_m,
        "m",
        -500.0..=6000.0,
        say::mend_height_above_sea(),
    )?;
    const EXPONENT: f64 = 9.80665 * 28.9644 / (8314.32 * 0.0065);
    Ok(SEA_LEVEL_KPA * libm::pow(1.0 - 0.0065 * altitude_m / 288.15, EXPONENT))
}

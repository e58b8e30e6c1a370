//! Filling by vacuum: what stays as gas, and what to expect in.

use crate::error::{CoolantError, within};
use crate::phrases as say;
use crate::water::{atmosphere, steam_kpa};
use crate::{sources, text};
use measure::{Line, Source, Working};

/// A system drawn down before filling.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct VacuumQuestion {
    /// The empty volume to be filled, 0.1 to 100 L.
    pub empty_l: f64,
    /// The gauge, below zero.
    pub gauge_kpa: f64,
    pub altitude_m: f64,
    /// Of the engine, 0 to 80 °C.
    pub temperature_c: f64,
    /// The hold, if it was timed.
    pub hold: Option<Hold>,
}

/// A timed hold of vacuum.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Hold {
    pub minutes: f64,
    /// How far the gauge came back.
    pub rise_kpa: f64,
    /// How far it may come back, by the tool's or the vehicle's maker.
    pub allowed_kpa: f64,
}

/// What a vacuum fill does.
#[derive(Clone, Debug, PartialEq)]
pub struct VacuumFill {
    pub expected_l: f64,
    /// Air that stays, at outside pressure.
    pub gas_left_l: f64,
    /// The lowest that a gauge can show here, where what is left in starts to boil.
    pub deepest_gauge_kpa: f64,
    /// Whether the hold was within what is allowed.
    pub holds: Option<bool>,
    pub working: Working,
}

/// How much goes in after drawing a system down, and how much air stays.
///
/// Formula: gas left = V (p - ps) / (pa - ps), with p = pa + gauge, ps the pressure of
/// steam at the temperature; expected = V - gas left.
///
/// Inputs: see [`VacuumQuestion`].
///
/// Returns litres, the lowest gauge reading possible here in kPa, and whether it held.
///
/// # Errors
///
/// [`CoolantError::OutOfRange`]: no gauge goes deeper than the air outside allows.
///
/// # Limits
///
/// Holding vacuum does not prove pressure-tight: a seal may close one way and open the
/// other. Soft hoses collapse and make the volume look smaller.
///
/// # Source
///
/// Ideal gas; U.S. Standard Atmosphere, 1976; IAPWS R7-97(2012).
///
/// ```
/// use coolant::{VacuumQuestion, vacuum_fill};
/// let drawn = |altitude_m, gauge_kpa| vacuum_fill(&VacuumQuestion {
///     empty_l: 8.0, gauge_kpa, altitude_m, temperature_c: 20.0, hold: None,
/// });
/// assert!((drawn(0.0, -85.0)?.gas_left_l - 1.13).abs() < 0.01);
/// // The same gauge reading is not to be had in the mountains.
/// assert!(drawn(2500.0, -85.0).is_err());
/// # Ok::<(), coolant::CoolantError>(())
/// ```
pub fn vacuum_fill(question: &VacuumQuestion) -> Result<VacuumFill, CoolantError> {
    within(
        say::the_empty_volume(),
        question.empty_l,
        "L",
        0.1..=100.0,
        say::mend_check_the_figure(),
    )?;
    within(
        say::the_temperature(),
        question.temperature_c,
        "°C",
        0.0..=80.0,
        say::mend_let_it_cool(),
    )?;
    let air = atmosphere(question.altitude_m)?;
    let air_kpa = air.absolute_kpa;
    let steam_kpa = steam_kpa(question.temperature_c)?;
    let deepest_gauge_kpa = steam_kpa - air_kpa;
    within(
        say::the_vacuum_gauge(),
        question.gauge_kpa,
        "kPa",
        deepest_gauge_kpa..=0.0,
        say::mend_no_pump_draws_deeper(),
    )?;
    let absolute_kpa = air_kpa + question.gauge_kpa;
    let gas_left_l = question.empty_l * (absolute_kpa - steam_kpa) / (air_kpa - steam_kpa);
    let expected_l = question.empty_l - gas_left_l;
    let holds = question.hold.map(|hold| hold.rise_kpa <= hold.allowed_kpa);

    let inside = Line::new(say::pressure_left(), Source::derived())
        .formula("p", say::air_and_gauge())
        .value(text::kilopascals(absolute_kpa));
    let gas = Line::new(say::air_that_stays(), sources::ideal_gas())
        .formula("Vg", "V·(p - ps)/(pa - ps)")
        .input("ps", text::kilopascals(steam_kpa))
        .value(text::litres(gas_left_l));
    let fill = Line::new(say::goes_in(), Source::derived())
        .formula("Vf", "V - Vg")
        .value(text::litres(expected_l));
    let working = Working::new(say::vacuum_fill_title())
        .then(air.working)
        .line(inside)
        .line(gas)
        .line(fill)
        .limit(say::vacuum_proves_not());
    let working = match question.hold {
        Some(hold) => working.line(
            Line::new(say::came_back(), Source::given())
                .input(say::time(), format!("{} min", hold.minutes))
                .input(say::allowed(), text::kilopascals(hold.allowed_kpa))
                .value(text::kilopascals(hold.rise_kpa)),
        ),
        None => working,
    };
    Ok(VacuumFill {
        expected_l,
        gas_left_l,
        deepest_gauge_kpa,
        holds,
        working,
    })
}

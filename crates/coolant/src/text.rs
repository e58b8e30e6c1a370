//! Quantities as they stand in a working.

use measure::Customary;
use measure::si::{Length, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Volume};
use uom::si::length::{meter, millimeter};
use uom::si::pressure::kilopascal;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume::liter;

pub(crate) fn celsius(t_c: f64) -> String {
    let temperature = ThermodynamicTemperature::new::<degree_celsius>(t_c);
    measure::show(temperature, Customary::Metric)
}

pub(crate) fn kelvins(difference_k: f64) -> String {
    let difference = TemperatureInterval::new::<kelvin>(difference_k);
    measure::show(difference, Customary::Metric)
}

pub(crate) fn kilopascals(pressure_kpa: f64) -> String {
    measure::show(Pressure::new::<kilopascal>(pressure_kpa), Customary::Metric)
}

pub(crate) fn litres(volume_l: f64) -> String {
    measure::show(Volume::new::<liter>(volume_l), Customary::Metric)
}

pub(crate) fn percent(fraction: f64) -> String {
    measure::show(Ratio::new::<ratio>(fraction), Customary::Metric)
}

pub(crate) fn metres(length_m: f64) -> String {
    measure::show(Length::new::<meter>(length_m), Customary::Metric)
}

pub(crate) fn millimetres(length_mm: f64) -> String {
    measure::show(Length::new::<millimeter>(length_mm), Customary::Metric)
}

/// With about four digits, for what has no customary twin.
pub(crate) fn number(value: f64, unit: &str) -> String {
    let decimals = match value.abs() {
        size if size >= 100.0 => 1,
        size if size >= 10.0 => 2,
        _ => 3,
    };
    format!("{value:.decimals$}\u{202f}{unit}")
}

pub(crate) fn plain(value: f64) -> String {
    format!("{value:.3}")
}

/// A chance; nothing that is measured is certain.
pub(crate) fn chance(part: f64) -> String {
    percent(part.min(0.999))
}

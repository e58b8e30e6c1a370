//! Quantities as they stand in a working.

use measure::Customary;
use measure::si::{Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Volume};
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

/// With three digits after the point.
pub(crate) fn number(value: f64, unit: &str) -> String {
    format!("{value:.3}\u{202f}{unit}")
}

//! Quantities as they stand in a working.

use measure::si::{Length, Pressure, Ratio, TemperatureInterval, ThermodynamicTemperature, Volume};
use measure::{Customary, Quantity};
use phrases::figures;
use uom::si::length::{meter, millimeter};
use uom::si::pressure::kilopascal;
use uom::si::ratio::ratio;
use uom::si::temperature_interval::kelvin;
use uom::si::thermodynamic_temperature::degree_celsius;
use uom::si::volume::liter;

pub(crate) fn celsius(t_c: f64) -> String {
    let temperature = ThermodynamicTemperature::new::<degree_celsius>(t_c);
    metric(temperature)
}

pub(crate) fn kelvins(difference_k: f64) -> String {
    let difference = TemperatureInterval::new::<kelvin>(difference_k);
    metric(difference)
}

pub(crate) fn kilopascals(pressure_kpa: f64) -> String {
    metric(Pressure::new::<kilopascal>(pressure_kpa))
}

pub(crate) fn litres(volume_l: f64) -> String {
    metric(Volume::new::<liter>(volume_l))
}

pub(crate) fn percent(fraction: f64) -> String {
    metric(Ratio::new::<ratio>(fraction))
}

pub(crate) fn metres(length_m: f64) -> String {
    metric(Length::new::<meter>(length_m))
}

pub(crate) fn millimetres(length_mm: f64) -> String {
    metric(Length::new::<millimeter>(length_mm))
}

/// With about four digits, for what has no customary twin.
pub(crate) fn number(value: f64, unit: &str) -> String {
    let decimals = match value.abs() {
        size if size >= 100.0 => 1,
        size if size >= 10.0 => 2,
        _ => 3,
    };
    figures(&format!("{value:.decimals$}\u{202f}{unit}"))
}

pub(crate) fn plain(value: f64) -> String {
    figures(&format!("{value:.3}"))
}

/// A chance; nothing that is measured is certain.
pub(crate) fn chance(part: f64) -> String {
    percent(part.min(0.999))
}

/// In metric units, with the marks of the language that is spoken.
fn metric<Q: Quantity>(quantity: Q) -> String {
    figures(&measure::show(quantity, Customary::Metric))
}

//! Quantities as they stand in a working.

use measure::si::{Force, Torque};
use measure::{Customary, Quantity};
use phrases::figures;
use uom::si::force::newton;
use uom::si::torque::newton_meter;

/// To a hundredth: four digits, as elsewhere, would lose half a millimetre of a belt.
pub(crate) fn millimetres(length_mm: f64) -> String {
    let inches = length_mm / 25.4;
    figures(&format!("{length_mm:.2}\u{202f}mm ({inches:.2}\u{202f}in)"))
}

pub(crate) fn newtons(force_n: f64) -> String {
    metric(Force::new::<newton>(force_n))
}

pub(crate) fn newton_metres(torque_nm: f64) -> String {
    metric(Torque::new::<newton_meter>(torque_nm))
}

pub(crate) fn degrees(angle_deg: f64) -> String {
    figures(&format!("{angle_deg:.2}°"))
}

pub(crate) fn plain(value: f64) -> String {
    figures(&format!("{value:.3}"))
}

/// In metric units, with the marks of the language that is spoken.
fn metric<Q: Quantity>(quantity: Q) -> String {
    figures(&measure::show(quantity, Customary::Metric))
}

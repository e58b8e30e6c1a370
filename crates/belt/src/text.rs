//! Quantities as they stand in a working.

use measure::Customary;
use measure::si::{Force, Torque};
use uom::si::force::newton;
use uom::si::torque::newton_meter;

/// To a hundredth: four digits, as elsewhere, would lose half a millimetre of a belt.
pub(crate) fn millimetres(length_mm: f64) -> String {
    let inches = length_mm / 25.4;
    format!("{length_mm:.2}\u{202f}mm ({inches:.2}\u{202f}in)")
}

pub(crate) fn newtons(force_n: f64) -> String {
    measure::show(Force::new::<newton>(force_n), Customary::Metric)
}

pub(crate) fn newton_metres(torque_nm: f64) -> String {
    measure::show(Torque::new::<newton_meter>(torque_nm), Customary::Metric)
}

pub(crate) fn degrees(angle_deg: f64) -> String {
    format!("{angle_deg:.2}°")
}

pub(crate) fn plain(value: f64) -> String {
    format!("{value:.3}")
}

//! The torque at which a bolt twists off.

use crate::class::Class;
use crate::phrases::extract as say;
use crate::sources;
use crate::thread::{Standard, Thread};
use measure::Source;

/// Minimum breaking torque of a new bolt, and where it comes from.
#[derive(Clone, Debug, PartialEq)]
pub struct BreakingTorque {
    pub torque_nm: f64,
    pub source: Source,
}

/// Said wherever a breaking torque is shown.
#[must_use]
pub fn only_new() -> &'static str {
    say::only_new()
}

/// The minimum breaking torque after ISO 898-7.
///
/// Formula: M = τ W with W = π d3³/16 and τ = X Rm; the standard's printed values are
/// returned.
///
/// Inputs: metric threads M1 to M10 that the standard lists, classes 8.8 to 12.9.
/// Returns N·m; nothing for any other thread or class, because the standard says nothing.
///
/// # Limits
///
/// [`only_new`].
///
/// # Source
///
/// ISO 898-7:1992.
///
/// ```
/// use fastener::{Class, Thread, twist::breaking_torque};
/// let m8 = Thread::metric(8.0, 1.25)?;
/// assert_eq!(breaking_torque(&m8, Class::C8_8).unwrap().torque_nm, 33.0);
/// assert!(breaking_torque(&m8, Class::C4_6).is_none());
/// assert!(breaking_torque(&Thread::metric(12.0, 1.75)?, Class::C8_8).is_none());
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn breaking_torque(thread: &Thread, class: Class) -> Option<BreakingTorque> {
    let column = match class {
        Class::C8_8 => 0,
        Class::C9_8 => 1,
        Class::C10_9 => 2,
        Class::C12_9 => 3,
        _ => return None,
    };
    if thread.standard() != Standard::Metric {
        return None;
    }
    let same = |a: f64, b: f64| (a - b).abs() < 1e-6;
    TORQUE_NM
        .iter()
        .find(|row| same(row.0, thread.diameter_mm()) && same(row.1, thread.pitch_mm()))
        .map(|row| BreakingTorque {
            torque_nm: row.2[column],
            source: sources::iso_898_7(),
        })
}

/// Diameter, pitch; N·m for 8.8, 9.8, 10.9, 12.9.
#[rustfmt::skip]
const TORQUE_NM: [(f64, f64, [f64; 4]); 17] = [
    (1.0, 0.25, [0.033, 0.036, 0.040, 0.045]),
    (1.2, 0.25, [0.075, 0.082, 0.092, 0.10]),
    (1.4, 0.3, [0.12, 0.13, 0.14, 0.16]),
    (1.6, 0.35, [0.16, 0.18, 0.20, 0.22]),
    (2.0, 0.4, [0.37, 0.40, 0.45, 0.50]),
    (2.5, 0.45, [0.82, 0.90, 1.0, 1.1]),
    (3.0, 0.5, [1.5, 1.7, 1.9, 2.1]),
    (3.5, 0.6, [2.4, 2.7, 3.0, 3.3]),
    (4.0, 0.7, [3.6, 3.9, 4.4, 4.9]),
    (5.0, 0.8, [7.6, 8.3, 9.3, 10.0]),
    (6.0, 1.0, [13.0, 14.0, 16.0, 17.0]),
    (7.0, 1.0, [23.0, 25.0, 28.0, 31.0]),
    (8.0, 1.0, [38.0, 42.0, 46.0, 52.0]),
    (8.0, 1.25, [33.0, 36.0, 40.0, 44.0]),
    (10.0, 1.0, [84.0, 92.0, 102.0, 114.0]),
    (10.0, 1.25, [75.0, 82.0, 91.0, 102.0]),
    (10.0, 1.5, [66.0, 72.0, 81.0, 90.0]),
];

#[cfg(test)]
mod tests {
    use super::*;
    use crate::tolerance::limits;
    use std::f64::consts::PI;

    /// The formula of the standard with the least root of 6g gives the printed table.
    #[test]
    fn the_table_follows_its_own_formula() {
        let shear_shares = [
            (0.84, 800.0),
            (0.815, 900.0),
            (0.79, 1040.0),
            (0.75, 1220.0),
        ];
        for (diameter, pitch, printed) in TORQUE_NM.iter().filter(|row| row.0 >= 5.0) {
            let root = limits(&Thread::metric(*diameter, *pitch).unwrap()).bolt_root_min_mm;
            for ((share, tensile), printed) in shear_shares.iter().zip(printed) {
                let torque = share * tensile * PI * root * root * root / 16.0 / 1000.0;
                assert!(
                    (torque / printed - 1.0).abs() < 0.045,
                    "M{diameter}x{pitch}: {torque} for {printed}"
                );
            }
        }
    }
}

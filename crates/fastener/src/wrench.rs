//! Wrenches: adapters, levers, and what a torque wrench can tell.

use crate::phrases::torque as say;
use crate::sources;
use crate::torque::{TorqueTrouble, within};
use measure::{Line, Working};

/// What to set on a torque wrench with an adapter.
#[derive(Clone, Debug, PartialEq)]
pub struct Setting {
    pub set_to_nm: f64,
    pub working: Working,
}

/// Whether a torque wrench can be believed at a setting.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Reads {
    Well,
    /// Below a fifth of its range it says nothing; this is the least it reads.
    TooLow {
        least_nm: f64,
    },
    /// Beyond its range.
    TooHigh {
        most_nm: f64,
    },
}

const LENGTH_MM: (f64, f64) = (1.0, 5000.0);

/// The setting of a torque wrench that carries an adapter.
///
/// Formula: S = T L / (L + E cos a).
///
/// Inputs: `want_nm` at the bolt, above 0; `wrench_mm`, from the drive to the middle of the grip;
/// `adapter_mm`, from the drive to the bolt; `angle_deg` between them, 0 with the adapter
/// straight ahead, 90 across (no correction), 180 folded back.
/// Returns the setting in N·m.
///
/// # Errors
///
/// [`TorqueTrouble::OutOfRange`], also where the adapter folded back reaches the grip.
///
/// # Limits
///
/// The hand pulls at the middle of the grip, square to the wrench.
///
/// # Source
///
/// US Army TM 9-254, figures 4-5 and 4-6.
///
/// ```
/// let setting = fastener::wrench::setting(70.0, 12.0, 2.0, 0.0)?;
/// assert!((setting.set_to_nm - 60.0).abs() < 1e-9);
/// # Ok::<(), fastener::torque::TorqueTrouble>(())
/// ```
pub fn setting(
    want_nm: f64,
    wrench_mm: f64,
    adapter_mm: f64,
    angle_deg: f64,
) -> Result<Setting, TorqueTrouble> {
    within(say::torque(), want_nm, (1e-6, 1e6))?;
    within(say::length_of_wrench(), wrench_mm, LENGTH_MM)?;
    within(say::length_of_adapter(), adapter_mm, (0.0, LENGTH_MM.1))?;
    within(say::angle(), angle_deg, (-180.0, 180.0))?;
    let reach = adapter_mm * libm::cos(angle_deg.to_radians());
    within(
        say::lever_with_its_adapter(),
        wrench_mm + reach,
        (wrench_mm / 10.0, 2.0 * LENGTH_MM.1),
    )?;
    let set_to_nm = want_nm * wrench_mm / (wrench_mm + reach);
    let working = Working::new(say::wrench_with_an_adapter())
        .line(
            Line::new(say::setting(), sources::adapter())
                .formula("S", "T·L/(L + E·cos a)")
                .input("T", format!("{want_nm:.3} N·m"))
                .input("L", format!("{wrench_mm:.1} mm"))
                .input("E", format!("{adapter_mm:.1} mm"))
                .input("a", format!("{angle_deg:.0}°"))
                .value(format!("{set_to_nm:.3} N·m")),
        )
        .remark(say::across_needs_no_correction())
        .limit(say::hand_at_the_grip());
    Ok(Setting { set_to_nm, working })
}

/// The force that a hand needs at the end of a lever for a torque.
///
/// Formula: F = T / L.
///
/// Inputs: `torque_nm` in N·m, not negative; `lever_mm` 1 to 5000. Returns newtons.
///
/// # Errors
///
/// [`TorqueTrouble::OutOfRange`].
///
/// # Limits
///
/// The hand pulls square to the lever. More than about 400 N is jerked, not pulled.
///
/// # Source
///
/// Statics.
///
/// ```
/// assert_eq!(fastener::wrench::hand_force_n(120.0, 600.0)?, 200.0);
/// # Ok::<(), fastener::torque::TorqueTrouble>(())
/// ```
pub fn hand_force_n(torque_nm: f64, lever_mm: f64) -> Result<f64, TorqueTrouble> {
    within(say::lever(), lever_mm, LENGTH_MM)?;
    within(say::torque(), torque_nm, (0.0, 1e6))?;
    Ok(torque_nm / (lever_mm / 1000.0))
}

/// The lever of a wrench that a second wrench is hooked into.
///
/// Formula: L = L1 + L2 - overlap.
///
/// Inputs: lengths in mm, 1 to 5000; an overlap of at most the shorter. Returns mm.
///
/// # Errors
///
/// [`TorqueTrouble::OutOfRange`].
///
/// # Limits
///
/// Box end on open end, in line, by hand, to crack a bolt: never to tighten one, and not on
/// a wrench whose jaw already slips. The bolt breaks before the wrenches do.
///
/// # Source
///
/// Statics; shop practice.
///
/// ```
/// assert_eq!(fastener::wrench::doubled_lever_mm(180.0, 180.0, 20.0)?, 340.0);
/// # Ok::<(), fastener::torque::TorqueTrouble>(())
/// ```
pub fn doubled_lever_mm(
    first_mm: f64,
    second_mm: f64,
    overlap_mm: f64,
) -> Result<f64, TorqueTrouble> {
    within(say::length_of_wrench(), first_mm, LENGTH_MM)?;
    within(say::length_of_second_wrench(), second_mm, LENGTH_MM)?;
    within(say::overlap(), overlap_mm, (0.0, first_mm.min(second_mm)))?;
    Ok(first_mm + second_mm - overlap_mm)
}

/// Whether a torque wrench of a range can be believed at a torque.
///
/// Formula: from a fifth of the greatest torque to all of it.
///
/// Inputs: the torque and the wrench's greatest torque, in N·m. Returns the verdict with the bound
/// that is broken.
///
/// # Source
///
/// ISO 6789: tolerances hold from a fifth of the greatest torque up.
///
/// ```
/// use fastener::wrench::{Reads, reads};
/// assert_eq!(reads(22.0, 200.0), Reads::TooLow { least_nm: 40.0 });
/// assert_eq!(reads(22.0, 60.0), Reads::Well);
/// ```
pub fn reads(torque_nm: f64, range_nm: f64) -> Reads {
    let least_nm = range_nm / 5.0;
    if torque_nm < least_nm {
        Reads::TooLow { least_nm }
    } else if torque_nm > range_nm {
        Reads::TooHigh { most_nm: range_nm }
    } else {
        Reads::Well
    }
}

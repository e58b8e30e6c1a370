//! What a bolt bears while it is tightened, and how much of it a clamp uses.

use super::{Form, Friction, Joint, torque_for_clamp};
use crate::class::Class;
use crate::thread::Thread;
use measure::{OutOfOrder, Range};
use std::f64::consts::PI;

/// The clamp at which a bolt being tightened begins to yield, pulled and twisted at once.
///
/// Formula: F = ν Re As / √(1 + 3 (1.5 d2/d0 (P/(π d2) + 1.155 μ))²), d0 the diameter of
/// the stress area, ν the share of the yield point (1 here; 0.9 in the tables of VDI 2230).
///
/// Inputs: `yield_mpa` of the bolt, `friction` of the thread, `share` above 0 to 1.
/// Returns newtons.
///
/// # Limits
///
/// A bolt of whole thread; a reduced shank yields earlier.
///
/// # Source
///
/// VDI 2230-1.
///
/// ```
/// use fastener::{Thread, torque::yield_clamp_n};
/// let clamp_n = yield_clamp_n(&Thread::metric(8.0, 1.0)?, 640.0, 0.12, 0.9);
/// assert_eq!(format!("{:.1}", clamp_n / 1000.0), "20.2");
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn yield_clamp_n(thread: &Thread, yield_mpa: f64, friction: f64, share: f64) -> f64 {
    let sizes = thread.geometry();
    let stress_diameter = (4.0 * sizes.stress_area_mm2 / PI).sqrt();
    let twist = 1.5 * sizes.pitch_diameter_mm / stress_diameter
        * (thread.pitch_mm() / (PI * sizes.pitch_diameter_mm) + 1.155 * friction);
    share * yield_mpa * sizes.stress_area_mm2 / (1.0 + 3.0 * twist * twist).sqrt()
}

/// The torque at which a bolt begins to yield.
///
/// Formula: [`torque_for_clamp`] of [`yield_clamp_n`], by Motosh.
///
/// Inputs: `yield_mpa` of the bolt; friction from slick to rough.
/// Returns N·m: the least (slick threads), to expect, and greatest (rough ones).
///
/// # Errors
///
/// [`OutOfOrder`] where the friction is no number.
///
/// # Limits
///
/// Not a specification. Rough threads hide the yield: the torque rises, the clamp does not.
///
/// # Source
///
/// VDI 2230-1; Motosh.
pub fn yield_torque_nm(
    joint: &Joint,
    yield_mpa: f64,
    friction: Range<f64>,
) -> Result<Range<f64>, OutOfOrder> {
    friction.map(|coefficient| {
        let both = Friction {
            thread: coefficient,
            head: coefficient,
        };
        let clamp = yield_clamp_n(&joint.thread, yield_mpa, coefficient, 1.0);
        torque_for_clamp(joint, both, clamp, Form::Motosh).total_nm
    })
}

/// A clamp as a share of the proof load.
///
/// Formula: F / Fp.
///
/// Inputs: `clamp_n` in newtons. Returns the share; nothing where the class does not cover the size
/// or has no proof load.
///
/// # Source
///
/// ISO 898-1; SAE J429.
///
/// ```
/// use fastener::{Class, Thread, torque::share_of_proof};
/// let share = share_of_proof(&Thread::metric(10.0, 1.5)?, Class::C8_8, 25_275.0);
/// assert_eq!(share, Some(0.75));
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn share_of_proof(thread: &Thread, class: Class, clamp_n: f64) -> Option<f64> {
    let proof_n = class.loads(thread).ok()?.proof_n?;
    Some(clamp_n / proof_n)
}

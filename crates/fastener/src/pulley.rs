//! Cracking the bolts of a pulley while its belt holds it.

use crate::phrases::torque as say;
use crate::torque::{TorqueTrouble, within};
use std::f64::consts::PI;

/// A pulley bolt about to be cracked.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct PulleyBolt {
    /// The torque that the bolt takes to crack.
    pub bolt_nm: f64,
    /// From the pulley's axis to the bolt.
    pub bolt_circle_radius_mm: f64,
    pub wrench_mm: f64,
}

/// The belt that holds the pulley.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct HoldingBelt {
    pub pulley_radius_mm: f64,
    /// Tension of each run at rest.
    pub tension_n: f64,
    pub wrap_deg: f64,
    /// Friction as it acts in the grooves: about 1 for ribs, 0.3 for a flat back.
    pub groove_friction: f64,
}

/// What turns the pulley and what holds it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Held {
    /// With the wrench across the axis, where it turns the pulley least.
    pub least_turning_nm: f64,
    /// With the wrench straight away from the axis, where it turns it most.
    pub most_turning_nm: f64,
    pub belt_holds_nm: f64,
    /// Whether the belt holds with the wrench across the axis.
    pub holds: bool,
}

/// How to hold the wrench.
#[must_use]
pub fn wrench_across() -> &'static str {
    say::wrench_across()
}

/// The torque on the pulley while a bolt is cracked.
///
/// Formula: T (1 + r/L cos φ), φ between the wrench and the outward radius of the bolt.
///
/// Inputs: N·m, mm; `angle_deg` in degrees. Returns N·m about the pulley's axis.
///
/// # Limits
///
/// The hand pulls square to the wrench, at its end.
///
/// # Source
///
/// Statics: the bolt's torque and the hand's force, both about the pulley's axis.
///
/// ```
/// use fastener::pulley::{PulleyBolt, turning_nm};
/// let bolt = PulleyBolt { bolt_nm: 25.0, bolt_circle_radius_mm: 25.0, wrench_mm: 250.0 };
/// assert!((turning_nm(bolt, 0.0) - 27.5).abs() < 1e-9);
/// assert!((turning_nm(bolt, 180.0) - 22.5).abs() < 1e-9);
/// ```
pub fn turning_nm(bolt: PulleyBolt, angle_deg: f64) -> f64 {
    let share = bolt.bolt_circle_radius_mm / bolt.wrench_mm;
    bolt.bolt_nm * (1.0 + share * libm::cos(angle_deg.to_radians()))
}

/// The torque that a belt at rest can hold on a pulley.
///
/// Formula: 2 F0 R tanh(μ θ / 2): the runs share their sum, and one is at most e^(μθ) times
/// the other.
///
/// Inputs: mm, newtons for each run at rest, degrees of wrap. Returns N·m.
///
/// # Limits
///
/// A dry belt and the rest of the drive held. A spring tensioner gives way in one
/// direction: then only its own tension counts.
///
/// # Source
///
/// Belt friction after Euler and Eytelwein.
///
/// ```
/// use fastener::pulley::{HoldingBelt, belt_holds_nm};
/// let belt = HoldingBelt { pulley_radius_mm: 70.0, tension_n: 400.0, wrap_deg: 160.0, groove_friction: 1.0 };
/// assert_eq!(format!("{:.1}", belt_holds_nm(belt)), "49.5");
/// ```
pub fn belt_holds_nm(belt: HoldingBelt) -> f64 {
    let wrap = belt.wrap_deg / 180.0 * PI;
    2.0 * belt.tension_n * belt.pulley_radius_mm / 1000.0
        * libm::tanh(belt.groove_friction * wrap / 2.0)
}

/// Whether a belt holds a pulley while one of its bolts is cracked.
///
/// Formula: [`belt_holds_nm`] against [`turning_nm`] with the wrench across the axis.
///
/// Inputs: as those two. Returns both torques, and whether the belt holds.
///
/// # Errors
///
/// [`TorqueTrouble::OutOfRange`] for sizes that no pulley has.
///
/// # Limits
///
/// A bolt can take more to crack than it was tightened with; nearly all of its torque turns
/// the pulley whatever the wrench does.
///
/// # Source
///
/// Statics; belt friction after Euler and Eytelwein.
pub fn held(bolt: PulleyBolt, belt: HoldingBelt) -> Result<Held, TorqueTrouble> {
    within(say::torque_of_the_bolt(), bolt.bolt_nm, (0.0, 1e4))?;
    within(say::length_of_wrench(), bolt.wrench_mm, (10.0, 5000.0))?;
    within(
        say::bolt_circle_radius(),
        bolt.bolt_circle_radius_mm,
        (0.0, 1000.0),
    )?;
    within(say::pulley_radius(), belt.pulley_radius_mm, (1.0, 1000.0))?;
    within(say::belt_tension(), belt.tension_n, (0.0, 1e5))?;
    within(say::wrap(), belt.wrap_deg, (0.0, 360.0))?;
    within(
        say::friction_in_the_grooves(),
        belt.groove_friction,
        (0.0, 5.0),
    )?;
    let least_turning_nm = turning_nm(bolt, 180.0).abs();
    let belt_holds_nm = belt_holds_nm(belt);
    Ok(Held {
        least_turning_nm,
        most_turning_nm: turning_nm(bolt, 0.0),
        belt_holds_nm,
        holds: belt_holds_nm >= least_turning_nm,
    })
}

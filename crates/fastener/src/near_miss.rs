//! Threads that almost fit: those that bind after a few turns, and the worse ones that
//! never do.

use crate::series;
use crate::thread::Thread;
use crate::tolerance::{Limits, limits};

/// A bolt that can be taken for another, in a hole of that other.
#[derive(Clone, Debug, PartialEq)]
pub struct NearMiss {
    pub bolt: Thread,
    pub hole: Thread,
    pub ends: Ends,
    /// How much of the hole's own thread depth the bolt reaches, 0 to 1.
    pub overlap: f64,
}

/// How such a pair ends.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Ends {
    /// The bolt is too thick at its flanks to start by hand.
    DoesNotStart,
    /// It binds after so many turns: at basic sizes, and at the loosest limits.
    Binds { turns_low: f64, turns_high: f64 },
    /// It runs in all the way and holds by part of its thread: it strips under torque.
    NeverBinds,
    /// It drops in without touching a thread.
    FallsIn,
}

/// A usual engagement, in diameters: a pair that has not bound by then never does.
const USUAL_ENGAGEMENT: f64 = 1.5;

/// What becomes of a bolt in a hole of another thread.
///
/// Formula: both threads have 60 degree flanks, so a difference of pitch diameters leaves
/// an axial play of tan 30° (D2 - d2); each turn uses up the difference of pitches.
///
/// Returns turns at basic sizes (low) and at the loosest limits of size (high).
///
/// # Limits
///
/// Clean, hard, unworn threads, turned by hand. A wrench forces more turns out of any pair.
///
/// # Source
///
/// Geometry of ISO 68-1; limits of ISO 965-1 and ASME B1.1.
///
/// ```
/// use fastener::{Thread, near_miss::{Ends, compare}};
/// let fits = compare(&Thread::unified("#10", 0.19, 32.0)?, &Thread::metric(5.0, 0.8)?);
/// assert_eq!(fits.ends, Ends::NeverBinds);
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn compare(bolt: &Thread, hole: &Thread) -> NearMiss {
    let (bolt_sizes, hole_sizes) = (bolt.geometry(), hole.geometry());
    let depth = hole_sizes.major_mm - hole_sizes.minor_diameter_mm;
    let overlap = ((bolt_sizes.major_mm - hole_sizes.minor_diameter_mm) / depth).clamp(0.0, 1.0);
    let ends = if overlap <= 0.0 {
        Ends::FallsIn
    } else {
        let basic = hole_sizes.pitch_diameter_mm - bolt_sizes.pitch_diameter_mm;
        meet(bolt, hole, basic)
    };
    NearMiss {
        bolt: bolt.clone(),
        hole: hole.clone(),
        ends,
        overlap,
    }
}

fn meet(bolt: &Thread, hole: &Thread, basic_mm: f64) -> Ends {
    let (bolt_limits, hole_limits): (Limits, Limits) = (limits(bolt), limits(hole));
    let loosest = hole_limits.hole_pitch_max_mm - bolt_limits.bolt_pitch_min_mm;
    let difference = (bolt.pitch_mm() - hole.pitch_mm()).abs();
    let play = |gap_mm: f64| gap_mm.max(0.0) / 3.0_f64.sqrt();
    if loosest <= 0.0 || (basic_mm < 0.0 && difference > 1e-9 && play(loosest) < difference / 2.0) {
        return Ends::DoesNotStart;
    }
    let engaged_turns = USUAL_ENGAGEMENT * hole.diameter_mm() / hole.pitch_mm();
    // Equal pitches never use up their play.
    if difference < 1e-9 || play(basic_mm) / difference >= engaged_turns {
        return Ends::NeverBinds;
    }
    Ends::Binds {
        turns_low: play(basic_mm) / difference,
        turns_high: play(loosest) / difference,
    }
}

/// Every listed thread that can be mistaken for `thread`, both ways round: as the bolt in
/// its hole, and as the hole for its bolt.
///
/// Formula: [`compare`] with every listed thread whose diameter is within 8 %.
///
/// Inputs: any thread. Returns the pairs that start, the nearest diameters first.
///
/// # Limits
///
/// Those of [`compare`].
///
/// # Source
///
/// ISO 261, ISO 262; ASME B1.1.
pub fn near_misses(thread: &Thread) -> Vec<NearMiss> {
    let d = thread.diameter_mm();
    let metric =
        series::metrics().filter_map(|row| Thread::metric(row.diameter_mm, row.pitch_mm).ok());
    let unified = series::unifieds()
        .filter_map(|row| Thread::unified(row.size, row.diameter_in, row.threads_per_inch).ok());
    let mut others: Vec<Thread> = metric
        .chain(unified)
        .filter(|other| (other.diameter_mm() - d).abs() <= 0.08 * d)
        .filter(|other| {
            (other.diameter_mm() - d).abs() > 1e-6
                || (other.pitch_mm() - thread.pitch_mm()).abs() > 1e-6
        })
        .collect();
    others.sort_by(|a, b| {
        let distance = |other: &Thread| (other.diameter_mm() - d).abs();
        distance(a)
            .total_cmp(&distance(b))
            .then(a.name().cmp(b.name()))
    });
    others
        .iter()
        .flat_map(|other| [compare(other, thread), compare(thread, other)])
        .filter(|miss| !matches!(miss.ends, Ends::DoesNotStart | Ends::FallsIn))
        .collect()
}

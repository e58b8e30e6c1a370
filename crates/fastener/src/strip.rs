//! When threads strip, and what fails first.

use crate::class::{Class, ClassTrouble};
use crate::figures::shown;
use crate::parent::Parent;
use crate::phrases::torque as say;
use crate::sources;
use crate::thread::Thread;
use crate::tolerance::limits;
use measure::{Line, Working};
use std::f64::consts::PI;

/// Shear areas of engaged threads, in mm² for each mm of engagement.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct ShearAreas {
    /// Of the bolt's thread.
    pub bolt_mm2_per_mm: f64,
    /// Of the thread in the hole.
    pub hole_mm2_per_mm: f64,
}

/// What gives way first when the joint is pulled.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum FailsFirst {
    Bolt,
    BoltThread,
    HoleThread,
}

/// Loads at which each part of a tapped joint fails.
#[derive(Clone, Debug, PartialEq)]
pub struct Stripping {
    /// The length that was given credit.
    pub credited_mm: f64,
    pub bolt_breaks_n: f64,
    pub bolt_thread_strips_n: f64,
    pub hole_thread_strips_n: f64,
    pub first: FailsFirst,
    /// The engagement at which the bolt breaks first; nothing where credit ends before that.
    pub length_needed_mm: Option<f64>,
    pub working: Working,
}

impl FailsFirst {
    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            FailsFirst::Bolt => say::the_bolt_breaks(),
            FailsFirst::BoltThread => say::the_bolts_thread_strips(),
            FailsFirst::HoleThread => say::the_thread_in_the_hole_strips(),
        }
    }
}

/// Shear strength of steel as a share of its tensile strength.
const STEEL_SHEAR: f64 = 0.6;

/// The shear areas of a thread at the limits that leave least metal.
///
/// Formula, for a millimetre of engagement: bolt π/P D1max (P/2 + (d2min - D1max)/√3);
/// hole π/P dmin (P/2 + (dmin - D2max)/√3).
///
/// Inputs: any thread. Returns mm² for each mm of engagement.
///
/// # Limits
///
/// Medium quality (6g/6H, 2A/2B), not worn. Even load over the turns is assumed.
///
/// # Source
///
/// FED-STD-H28/2, stripping areas; limits of ISO 965-1 and ASME B1.1.
///
/// ```
/// let areas = fastener::strip::shear_areas(&fastener::Thread::metric(8.0, 1.25)?);
/// assert!(areas.hole_mm2_per_mm > areas.bolt_mm2_per_mm);
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn shear_areas(thread: &Thread) -> ShearAreas {
    let limits = limits(thread);
    let p = thread.pitch_mm();
    ShearAreas {
        bolt_mm2_per_mm: bolt_shear_mm2_per_mm(
            p,
            limits.hole_minor_max_mm,
            limits.bolt_pitch_min_mm,
        ),
        hole_mm2_per_mm: hole_shear_mm2_per_mm(
            p,
            limits.bolt_major_min_mm,
            limits.hole_pitch_max_mm,
        ),
    }
}

/// The shear area of the thread in a hole, from measured or limiting sizes.
///
/// Formula: π/P d (P/2 + (d - D2)/√3) for a millimetre of engagement.
///
/// Inputs: pitch, major diameter of the bolt, pitch diameter of the hole, in mm.
/// Returns mm² for each mm, not below 0.
///
/// # Source
///
/// FED-STD-H28/2, stripping areas.
///
/// ```
/// let area = fastener::strip::hole_shear_mm2_per_mm(1.5, 9.968, 9.206);
/// assert_eq!(format!("{:.1}", 69_600.0 / (area * 130.0)), "21.6");
/// ```
pub fn hole_shear_mm2_per_mm(pitch_mm: f64, bolt_major_mm: f64, hole_pitch_mm: f64) -> f64 {
    let depth = (bolt_major_mm - hole_pitch_mm) / 3.0_f64.sqrt();
    (PI / pitch_mm * bolt_major_mm * (pitch_mm / 2.0 + depth)).max(0.0)
}

/// The shear area of a bolt's thread, from measured or limiting sizes.
///
/// Formula: π/P D1 (P/2 + (d2 - D1)/√3) for a millimetre of engagement.
///
/// Inputs: pitch, minor diameter of the hole, pitch diameter of the bolt, in mm.
/// Returns mm² for each mm, not below 0.
///
/// # Source
///
/// FED-STD-H28/2, stripping areas.
pub fn bolt_shear_mm2_per_mm(pitch_mm: f64, hole_minor_mm: f64, bolt_pitch_mm: f64) -> f64 {
    let depth = (bolt_pitch_mm - hole_minor_mm) / 3.0_f64.sqrt();
    (PI / pitch_mm * hole_minor_mm * (pitch_mm / 2.0 + depth)).max(0.0)
}

/// The length of engagement that is given credit in a metal.
///
/// Formula: the engaged length, at most two diameters in light metals.
///
/// Inputs: mm. Returns mm.
///
/// # Source
///
/// Shop practice: the even load of the stripping formula is an assumption.
pub fn credited_mm(thread: &Thread, engaged_mm: f64, parent: &Parent) -> f64 {
    match parent.family.credited_diameters() {
        Some(diameters) => engaged_mm.min(diameters * thread.diameter_mm()),
        None => engaged_mm,
    }
}

/// What fails first in a tapped hole, and how long the engagement must be.
///
/// Formula: bolt Rm As; bolt thread AS bolt Le 0.6 Rm; hole thread AS hole Le τ.
///
/// Inputs: `engaged_mm`, the length of full thread in engagement, not negative.
/// Returns newtons and millimetres.
///
/// # Errors
///
/// [`ClassTrouble::OutOfRange`] where the class does not cover the size.
///
/// # Limits
///
/// Even load over the turns is assumed, so credit ends near two diameters in light metals.
/// Least strengths are compared: a bolt stronger than its class moves the failure to the hole.
///
/// # Source
///
/// FED-STD-H28/2; strengths of the class and the metal as named.
///
/// ```
/// use fastener::{Class, Thread, parent, strip};
/// let m8 = Thread::metric(8.0, 1.25)?;
/// let aluminium = parent::named("A380").unwrap();
/// let found = strip::stripping(&m8, Class::C8_8, &aluminium, 6.0)?;
/// assert_eq!(found.first, strip::FailsFirst::HoleThread);
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn stripping(
    thread: &Thread,
    class: Class,
    parent: &Parent,
    engaged_mm: f64,
) -> Result<Stripping, ClassTrouble> {
    let loads = class.loads(thread)?;
    let bolt_shear = STEEL_SHEAR * class.stresses(thread)?.tensile_mpa;
    let areas = shear_areas(thread);
    let credited = credited_mm(thread, engaged_mm.max(0.0), parent);
    let bolt_per_mm = areas.bolt_mm2_per_mm * bolt_shear;
    let hole_per_mm = areas.hole_mm2_per_mm * parent.shear_mpa;
    let (bolt_thread, hole_thread) = (bolt_per_mm * credited, hole_per_mm * credited);
    let first = if hole_thread <= bolt_thread && hole_thread < loads.breaking_n {
        FailsFirst::HoleThread
    } else if bolt_thread < loads.breaking_n {
        FailsFirst::BoltThread
    } else {
        FailsFirst::Bolt
    };
    let weaker = bolt_per_mm.min(hole_per_mm);
    let length_needed_mm = (weaker > 0.0)
        .then(|| loads.breaking_n / weaker)
        .filter(|&length| credited_mm(thread, length, parent) >= length);
    let working = working(thread, parent, engaged_mm, credited, areas, bolt_shear)
        .line(
            Line::new(say::bolt_breaks(), loads.source)
                .formula("F", "Rm·As")
                .value(shown(loads.breaking_n, 0, "N")),
        )
        .limit(say::even_load_is_assumed());
    Ok(Stripping {
        credited_mm: credited,
        bolt_breaks_n: loads.breaking_n,
        bolt_thread_strips_n: bolt_thread,
        hole_thread_strips_n: hole_thread,
        first,
        length_needed_mm,
        working,
    })
}

fn working(
    thread: &Thread,
    parent: &Parent,
    engaged_mm: f64,
    credited: f64,
    areas: ShearAreas,
    bolt_shear_mpa: f64,
) -> Working {
    let load = |per_mm: f64, shear: f64| shown(per_mm * shear * credited, 0, "N");
    let mut credit = Line::new(
        say::engagement_given_credit(),
        sources::practice("engaged length"),
    )
    .symbol("Le")
    .input(say::engaged(), shown(engaged_mm, 4, "mm"))
    .value(shown(credited, 4, "mm"));
    if credited < engaged_mm {
        credit = credit.note(say::beyond_two_diameters());
    }
    let hole = Line::new(say::thread_in_the_hole_strips(), parent.source.clone())
        .formula("Fn", "ASn·Le·τ")
        .input("Le", shown(credited, 4, "mm"))
        .input("τ", shown(parent.shear_mpa, 1, "MPa"))
        .value(load(areas.hole_mm2_per_mm, parent.shear_mpa));
    let hole = match parent.note {
        Some(note) => hole.note(note),
        None => hole,
    };
    Working::new(say::stripping_of(thread.name(), parent.said()))
        .line(credit)
        .line(
            Line::new(say::shear_area_of_the_bolt(), sources::strip_areas())
                .formula("ASs", "π/P·D1max·(P/2 + (d2min − D1max)/√3)")
                .value(shown(areas.bolt_mm2_per_mm, 6, say::mm2_per_mm())),
        )
        .line(
            Line::new(say::shear_area_of_the_hole(), sources::strip_areas())
                .formula("ASn", "π/P·dmin·(P/2 + (dmin − D2max)/√3)")
                .value(shown(areas.hole_mm2_per_mm, 6, say::mm2_per_mm())),
        )
        .line(
            Line::new(
                say::bolts_thread_strips(),
                sources::practice("steel shears at 0.6 of tensile"),
            )
            .formula("Fs", "ASs·Le·0.6·Rm")
            .input("Le", shown(credited, 4, "mm"))
            .input("0.6·Rm", shown(bolt_shear_mpa, 3, "MPa"))
            .value(load(areas.bolt_mm2_per_mm, bolt_shear_mpa)),
        )
        .line(hole)
}

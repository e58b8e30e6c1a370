//! Wire inserts and solid bushings.

use crate::drill::{Drill, millimetres, named, nearest_tenth};
use crate::phrases::repair as say;
use crate::strip::hole_shear_mm2_per_mm;
use crate::thread::{INCH_MM, Standard, Thread, ThreadTrouble};
use crate::tolerance::limits;
use measure::{Grade, Source};

/// The tapped hole that a wire insert stands in.
#[derive(Clone, Debug, PartialEq)]
pub struct InsertHole {
    pub drill: Drill,
    /// Least minor, pitch and major diameter.
    pub minor_mm: f64,
    pub pitch_diameter_mm: f64,
    pub major_mm: f64,
    /// As the tap is marked.
    pub tap: String,
    pub source: Source,
}

/// Installed length of an insert falls short of its nominal length by half to three quarters of a
/// pitch (ASME B18.29.8M).
const SHORT_OF_NOMINAL: f64 = 0.625;

/// The hole for a wire insert of a thread's own size.
///
/// Formula: same pitch; minor D + 0.25 H, pitch D + 0.75 H, major D + 1.5 H.
///
/// Returns millimetres; the drill is the usual one where a guide lists it, else the tenth that is
/// next above the least minor diameter. The insert maker's own size overrides it.
///
/// # Source
///
/// ASME B18.29.8M (rule of the diameters); DIN 8140 guide (drills).
///
/// ```
/// let hole = fastener::repair::insert_hole(&fastener::Thread::metric(8.0, 1.25)?);
/// assert_eq!(hole.drill.name, "8.4 mm");
/// assert_eq!(format!("{:.2}", hole.major_mm), "9.62");
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn insert_hole(thread: &Thread) -> InsertHole {
    let (d, p) = (thread.diameter_mm(), thread.pitch_mm());
    let height = p * 3.0_f64.sqrt() / 2.0;
    let minor_mm = d + 0.25 * height;
    let (drill, source) = match listed_drill(thread) {
        Some(drill) => (
            drill,
            Source::new(
                "DIN 8140 insert guide",
                "drills before tapping",
                Grade::Published,
            ),
        ),
        None => (
            millimetres(nearest_tenth(minor_mm + 0.1)),
            Source::derived(),
        ),
    };
    InsertHole {
        drill,
        minor_mm,
        pitch_diameter_mm: d + 0.75 * height,
        major_mm: d + 1.5 * height,
        tap: say::insert_tap(thread.name()),
        source,
    }
}

/// Shear area of the parent's thread around an insert, in mm² for each mm of length.
pub(super) fn insert_shear_mm2_per_mm(thread: &Thread) -> f64 {
    let hole = insert_hole(thread);
    let p = thread.pitch_mm();
    let basic = thread.geometry().pitch_diameter_mm;
    let slack = limits(thread).hole_pitch_max_mm - basic;
    hole_shear_mm2_per_mm(p, hole.major_mm, hole.pitch_diameter_mm + slack)
}

/// Installed length of an insert of a nominal length.
pub(super) fn installed_mm(thread: &Thread, nominal_mm: f64) -> f64 {
    nominal_mm - SHORT_OF_NOMINAL * thread.pitch_mm()
}

/// The longest standard insert, as a multiple of the diameter, that goes into a room.
pub(super) fn longest_multiple(thread: &Thread, room_mm: f64) -> Option<f64> {
    [3.0, 2.5, 2.0, 1.5, 1.0]
        .into_iter()
        .find(|multiple| multiple * thread.diameter_mm() <= room_mm + 1e-9)
}

/// Least length of a wire insert, in diameters, that lets the bolt fail first.
///
/// Inputs: tensile strength of the parent and of the bolt in MPa. Returns nothing where the table
/// has no insert for them.
///
/// # Source
///
/// Honsel, technical explanations for wire inserts, table of nominal lengths.
///
/// ```
/// use fastener::repair::insert_length_diameters;
/// assert_eq!(insert_length_diameters(234.0, 800.0), Some(1.5));
/// ```
pub fn insert_length_diameters(parent_tensile_mpa: f64, bolt_tensile_mpa: f64) -> Option<f64> {
    let column = [420.0, 520.0, 800.0, 1040.0, 1220.0]
        .iter()
        .position(|&class| bolt_tensile_mpa <= class)?;
    RECOMMENDED
        .iter()
        .find(|row| parent_tensile_mpa <= row.0)
        .map(|row| row.1[column])
        .filter(|&multiple| multiple > 0.0)
}

/// The outside thread of a thin-walled solid bushing for a thread.
///
/// # Errors
///
/// [`ThreadTrouble`] where no such thread is sensible.
///
/// # Source
///
/// Usual sizes of key-locking thin-wall bushings, grade memory: the maker's size decides.
pub fn solid_bushing_thread(thread: &Thread) -> Result<Thread, ThreadTrouble> {
    let d = thread.diameter_mm();
    match thread.standard() {
        Standard::Metric => {
            let outside = if d <= 5.0 { d + 3.0 } else { d + 4.0 };
            let pitch = if outside <= 12.0 { 1.25 } else { 1.5 };
            Thread::metric(outside, if outside < 8.0 { 1.0 } else { pitch })
        }
        Standard::Unified => {
            let inches = d / INCH_MM + 0.125;
            let row = crate::series::unifieds()
                .find(|row| row.diameter_in >= inches - 1e-6)
                .ok_or(ThreadTrouble::Diameter {
                    diameter_mm: d + 3.0,
                })?;
            Thread::unified(row.size, row.diameter_in, row.threads_per_inch)
        }
    }
}

fn listed_drill(thread: &Thread) -> Option<Drill> {
    let same = |a: f64, b: f64| (a - b).abs() < 1e-6;
    let (d, p) = (thread.diameter_mm(), thread.pitch_mm());
    match thread.standard() {
        Standard::Metric => METRIC_DRILLS
            .iter()
            .find(|row| same(row.0, d) && same(row.1, p))
            .map(|row| millimetres(row.2)),
        Standard::Unified => INCH_DRILLS
            .iter()
            .find(|row| same(row.0 * INCH_MM, d) && same(INCH_MM / row.1, p))
            .and_then(|row| named(row.2)),
    }
}

/// Diameter, pitch, drill.
const METRIC_DRILLS: [(f64, f64, f64); 5] = [
    (5.0, 0.8, 5.3),
    (6.0, 1.0, 6.3),
    (8.0, 1.25, 8.4),
    (10.0, 1.5, 10.5),
    (12.0, 1.75, 12.5),
];

/// Inches, threads per inch, drill.
const INCH_DRILLS: [(f64, f64, &str); 3] = [
    (0.25, 20.0, "17/64"),
    (0.3125, 18.0, "Q"),
    (0.375, 16.0, "X"),
];

/// Parent's tensile strength up to; diameters for classes 4.8, 5.8, 8.8, 10.9, 12.9 (0: none).
const RECOMMENDED: [(f64, [f64; 5]); 7] = [
    (100.0, [1.5, 2.0, 3.0, 0.0, 0.0]),
    (150.0, [1.5, 2.0, 2.5, 2.5, 2.5]),
    (200.0, [1.5, 1.5, 2.0, 2.0, 2.5]),
    (250.0, [1.0, 1.5, 1.5, 1.5, 2.0]),
    (300.0, [1.0, 1.0, 1.5, 1.5, 2.0]),
    (350.0, [1.0, 1.0, 1.0, 1.5, 1.5]),
    (f64::INFINITY, [1.0, 1.0, 1.0, 1.5, 1.5]),
];

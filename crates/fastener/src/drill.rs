//! Drills that exist, and the one to take before tapping.

use crate::phrases::reading as say;
use crate::series;
use crate::sources;
use crate::thread::{INCH_MM, Standard, Thread};
use measure::Source;

/// A drill of a series.
#[derive(Clone, Debug, PartialEq)]
pub struct Drill {
    pub series: DrillSeries,
    /// As it is marked: `6.8 mm`, `27/64`, `#7`, `F`.
    pub name: String,
    pub diameter_mm: f64,
}

/// The series that drills are sold in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum DrillSeries {
    Metric,
    Fraction,
    Number,
    Letter,
}

/// What "percent of thread" is a percentage of. The two differ by a sixth.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Basis {
    /// Of the ISO engagement 5/8 H: 100 % leaves the basic minor diameter D1.
    IsoEngagement,
    /// Of the full 3/4 H that US charts use: their "75 % thread".
    UsChart,
}

/// A drill for a thread.
#[derive(Clone, Debug, PartialEq)]
pub struct TapDrill {
    pub drill: Drill,
    pub percent_iso: f64,
    pub percent_us: f64,
    pub source: Source,
}

impl Basis {
    /// Full thread depth, on the diameter, as a multiple of the pitch.
    fn depth(self) -> f64 {
        let height = 3.0_f64.sqrt() / 2.0;
        match self {
            Basis::IsoEngagement => 1.25 * height,
            Basis::UsChart => 1.5 * height,
        }
    }

    /// In words.
    pub fn name(self) -> &'static str {
        match self {
            Basis::IsoEngagement => say::percent_of_iso(),
            Basis::UsChart => say::percent_as_in_us_charts(),
        }
    }
}

/// The percentage of thread that a drilled hole leaves.
///
/// Formula: 100 (d - dh) / (1.0825 P), or / (1.2990 P) on the basis of US charts.
///
/// Inputs: the hole's diameter in mm. Returns percent; above 100 the hole is tighter
/// than the basic minor diameter, below 0 wider than the thread.
///
/// # Source
///
/// ISO 68-1 (5/8 H); US tap drill charts (3/4 H).
///
/// ```
/// use fastener::{Thread, drill::{Basis, percent_thread}};
/// let thread = Thread::metric(10.0, 1.5)?;
/// assert_eq!(format!("{:.2}", percent_thread(&thread, 8.5, Basis::UsChart)), "76.98");
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn percent_thread(thread: &Thread, hole_mm: f64, basis: Basis) -> f64 {
    100.0 * (thread.diameter_mm() - hole_mm) / (basis.depth() * thread.pitch_mm())
}

/// The hole that leaves a percentage of thread: the inverse of [`percent_thread`].
///
/// Formula: d - percent/100 · 1.0825 P, or 1.2990 P on the basis of US charts.
///
/// Inputs: percent on the named basis. Returns mm.
///
/// # Source
///
/// ISO 68-1 (5/8 H); US tap drill charts (3/4 H).
///
/// ```
/// use fastener::{Thread, drill::{Basis, hole_mm}};
/// let thread = Thread::metric(8.0, 1.25)?;
/// assert_eq!(format!("{:.2}", hole_mm(&thread, 100.0, Basis::IsoEngagement)), "6.65");
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn hole_mm(thread: &Thread, percent: f64, basis: Basis) -> f64 {
    thread.diameter_mm() - percent / 100.0 * basis.depth() * thread.pitch_mm()
}

/// The nearest drill of every series for a wanted percentage of thread, nearest first.
///
/// Formula: the drill nearest to d - percent/100 times the full depth of the basis.
///
/// Inputs: `percent` on the named basis, 40 to 100 being usual.
/// Returns drills with the percentage that each leaves, on both bases.
///
/// # Limits
///
/// A twist drill cuts a little over its size; on a tough metal take the next larger.
///
/// # Source
///
/// ISO 68-1; drills of ISO 235 and of the US number, letter and fraction series.
///
/// ```
/// use fastener::{Thread, drill::{Basis, tap_drills}};
/// let best = &tap_drills(&Thread::unified("1/4", 0.25, 20.0)?, 75.0, Basis::UsChart)[0];
/// assert_eq!(best.drill.name, "#7");
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn tap_drills(thread: &Thread, percent: f64, basis: Basis) -> Vec<TapDrill> {
    let wanted = hole_mm(thread, percent, basis);
    let distance = |drill: &Drill| (drill.diameter_mm - wanted).abs();
    let mut nearest: Vec<Drill> = [
        DrillSeries::Metric,
        DrillSeries::Fraction,
        DrillSeries::Number,
        DrillSeries::Letter,
    ]
    .into_iter()
    .filter_map(|series| {
        drills(series)
            .into_iter()
            .min_by(|a, b| distance(a).total_cmp(&distance(b)))
    })
    // Beyond half a pitch a series simply has no drill of that size.
    .filter(|drill| distance(drill) <= thread.pitch_mm() / 2.0)
    .collect();
    nearest.sort_by(|a, b| distance(a).total_cmp(&distance(b)));
    nearest
        .into_iter()
        .map(|drill| tap_drill(thread, drill, Source::derived()))
        .collect()
}

/// The drill that the trade takes for a thread.
///
/// Returns the listed drill of ISO 2306 or of the usual US chart; for a thread that is not
/// listed the metric drill nearest to d - P, or to 75 % on the US basis.
///
/// # Source
///
/// ISO 2306; US tap drill chart.
///
/// ```
/// let thread = fastener::Thread::metric(8.0, 1.25)?;
/// assert_eq!(fastener::drill::usual(&thread).drill.name, "6.8 mm");
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn usual(thread: &Thread) -> TapDrill {
    let (d, p) = (thread.diameter_mm(), thread.pitch_mm());
    match thread.standard() {
        Standard::Metric => match series::metric(d, p) {
            Some(listed) => tap_drill(
                thread,
                millimetres(listed.tap_drill_mm),
                sources::tap_drills(d),
            ),
            None => tap_drill(thread, millimetres(nearest_tenth(d - p)), Source::derived()),
        },
        Standard::Unified => {
            let listed =
                series::unified(d / INCH_MM, INCH_MM / p).and_then(|row| named(row.tap_drill));
            match listed {
                Some(drill) => {
                    let source = sources::us_tap_drills(d / INCH_MM, &drill.name);
                    tap_drill(thread, drill, source)
                }
                None => {
                    let hole = hole_mm(thread, 75.0, Basis::UsChart);
                    tap_drill(thread, millimetres(nearest_tenth(hole)), Source::derived())
                }
            }
        }
    }
}

/// The drill of that name: `6.8 mm`, `27/64`, `#7`, `F`.
pub fn named(name: &str) -> Option<Drill> {
    [
        DrillSeries::Fraction,
        DrillSeries::Number,
        DrillSeries::Letter,
        DrillSeries::Metric,
    ]
    .into_iter()
    .flat_map(drills)
    .find(|drill| drill.name == name)
}

/// Every drill of a series, smallest first.
pub fn drills(series: DrillSeries) -> Vec<Drill> {
    let inch = |name: String, diameter_in: f64| Drill {
        series,
        name,
        diameter_mm: diameter_in * INCH_MM,
    };
    match series {
        DrillSeries::Metric => metric_sizes().map(millimetres).collect(),
        DrillSeries::Fraction => (3_u8..=112)
            .map(|parts| inch(fraction(parts), f64::from(parts) / 64.0))
            .collect(),
        DrillSeries::Number => (1_u8..=60)
            .rev()
            .zip(NUMBER_IN.iter().rev())
            .map(|(number, &diameter_in)| inch(format!("#{number}"), diameter_in))
            .collect(),
        DrillSeries::Letter => ('A'..='Z')
            .zip(LETTER_IN)
            .map(|(letter, diameter_in)| inch(letter.to_string(), diameter_in))
            .collect(),
    }
}

/// A drill of a metric size.
pub(crate) fn millimetres(diameter_mm: f64) -> Drill {
    Drill {
        series: DrillSeries::Metric,
        name: crate::figures::shown(diameter_mm, 2, "mm"),
        diameter_mm,
    }
}

pub(crate) fn nearest_tenth(size_mm: f64) -> f64 {
    libm::round(size_mm * 10.0) / 10.0
}

fn tap_drill(thread: &Thread, drill: Drill, source: Source) -> TapDrill {
    TapDrill {
        percent_iso: percent_thread(thread, drill.diameter_mm, Basis::IsoEngagement),
        percent_us: percent_thread(thread, drill.diameter_mm, Basis::UsChart),
        drill,
        source,
    }
}

/// By 0.05 mm to 3, by 0.1 to 14, by 0.25 to 32, by 0.5 to 60 (ISO 235).
fn metric_sizes() -> impl Iterator<Item = f64> {
    let small = (14_u16..60).map(|n| f64::from(n) / 20.0);
    let middle = (30_u16..140).map(|n| f64::from(n) / 10.0);
    let large = (56_u16..=128).map(|n| f64::from(n) / 4.0);
    let largest = (65_u16..=120).map(|n| f64::from(n) / 2.0);
    small.chain(middle).chain(large).chain(largest)
}

fn fraction(parts: u8) -> String {
    let (whole, mut upper, mut lower) = (parts / 64, parts % 64, 64_u8);
    if upper == 0 {
        return whole.to_string();
    }
    while upper.is_multiple_of(2) && lower > 1 {
        upper /= 2;
        lower /= 2;
    }
    match whole {
        0 => format!("{upper}/{lower}"),
        whole => format!("{whole}-{upper}/{lower}"),
    }
}

/// Inches, from #1 to #60.
const NUMBER_IN: [f64; 60] = [
    0.228, 0.221, 0.213, 0.209, 0.2055, 0.204, 0.201, 0.199, 0.196, 0.1935, 0.191, 0.189, 0.185,
    0.182, 0.18, 0.177, 0.173, 0.1695, 0.166, 0.161, 0.159, 0.157, 0.154, 0.152, 0.1495, 0.147,
    0.144, 0.1405, 0.136, 0.1285, 0.12, 0.116, 0.113, 0.111, 0.11, 0.1065, 0.104, 0.1015, 0.0995,
    0.098, 0.096, 0.0935, 0.089, 0.086, 0.082, 0.081, 0.0785, 0.076, 0.073, 0.07, 0.067, 0.0635,
    0.0595, 0.055, 0.052, 0.0465, 0.043, 0.042, 0.041, 0.04,
];

/// Inches, from A to Z.
const LETTER_IN: [f64; 26] = [
    0.234, 0.238, 0.242, 0.246, 0.25, 0.257, 0.261, 0.266, 0.272, 0.277, 0.281, 0.29, 0.295, 0.302,
    0.316, 0.323, 0.332, 0.339, 0.348, 0.358, 0.368, 0.377, 0.386, 0.397, 0.404, 0.413,
];

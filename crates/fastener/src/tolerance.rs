//! Limits of size of an ordinary bolt in an ordinary nut: 6g in 6H, 2A in 2B.

use crate::thread::{INCH_MM, Standard, Thread};

/// The limits that leave the least thread to shear.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Limits {
    /// Bolt, least major diameter.
    pub bolt_major_min_mm: f64,
    /// Bolt, least pitch diameter.
    pub bolt_pitch_min_mm: f64,
    /// Bolt, greatest pitch diameter.
    pub bolt_pitch_max_mm: f64,
    /// Bolt, least root diameter.
    pub bolt_root_min_mm: f64,
    /// Hole, greatest pitch diameter.
    pub hole_pitch_max_mm: f64,
    /// Hole, greatest minor diameter.
    pub hole_minor_max_mm: f64,
}

/// The limits of a thread of medium quality.
///
/// Formula: basic size, less or plus deviation and tolerance. Metric tolerances are those of the
/// table of ISO 965-1 where it lists the pitch, else its formulas unrounded; unified ones are
/// the formulas of ASME B1.1 for classes 2A and 2B with an engagement of one diameter.
///
/// Returns millimetres.
///
/// # Limits
///
/// Uncoated threads. A thread in a worn hole is wider than its limit.
///
/// # Source
///
/// ISO 965-1, tolerance classes 6g and 6H; ASME B1.1, classes 2A and 2B.
///
/// ```
/// let limits = fastener::tolerance::limits(&fastener::Thread::metric(10.0, 1.5)?);
/// assert_eq!(format!("{:.3}", limits.bolt_pitch_min_mm), "8.862");
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn limits(thread: &Thread) -> Limits {
    let sizes = thread.geometry();
    let t = match thread.standard() {
        Standard::Metric => metric(thread.diameter_mm(), thread.pitch_mm()),
        Standard::Unified => unified(thread.diameter_mm(), thread.pitch_mm()),
    };
    let bolt_pitch_max = sizes.pitch_diameter_mm - t.deviation;
    let bolt_pitch_min = bolt_pitch_max - t.bolt_pitch;
    Limits {
        bolt_major_min_mm: sizes.major_mm - t.deviation - t.bolt_major,
        bolt_pitch_min_mm: bolt_pitch_min,
        bolt_pitch_max_mm: bolt_pitch_max,
        // The sharp root stands √3/2 P below the pitch line on the diameter; the least root
        // radius P/8, tangent to both flanks, fills a quarter of a pitch of it.
        bolt_root_min_mm: bolt_pitch_min - (3.0_f64.sqrt() / 2.0 - 0.25) * thread.pitch_mm(),
        hole_pitch_max_mm: sizes.pitch_diameter_mm + t.hole_pitch,
        hole_minor_max_mm: sizes.minor_diameter_mm + t.hole_minor,
    }
}

/// Millimetres.
struct Tolerances {
    deviation: f64,
    bolt_major: f64,
    bolt_pitch: f64,
    hole_pitch: f64,
    hole_minor: f64,
}

fn metric(diameter_mm: f64, pitch_mm: f64) -> Tolerances {
    let same = |pitch: f64| (pitch - pitch_mm).abs() < 1e-6;
    let by_pitch = BY_PITCH.iter().find(|row| same(row.0));
    let by_size = BY_SIZE
        .iter()
        .find(|row| diameter_mm > row.0 && diameter_mm <= row.1 && same(row.2));
    let computed = metric_by_formula(diameter_mm, pitch_mm);
    let (deviation, bolt_major, hole_minor) = by_pitch.map_or(
        (computed.deviation, computed.bolt_major, computed.hole_minor),
        |row| (row.1 / 1000.0, row.2 / 1000.0, row.3 / 1000.0),
    );
    let (bolt_pitch, hole_pitch) = by_size
        .map_or((computed.bolt_pitch, computed.hole_pitch), |row| {
            (row.3 / 1000.0, row.4 / 1000.0)
        });
    Tolerances {
        deviation,
        bolt_major,
        bolt_pitch,
        hole_pitch,
        hole_minor,
    }
}

/// The formulas behind the table, in micrometres turned to millimetres, unrounded.
fn metric_by_formula(diameter_mm: f64, pitch_mm: f64) -> Tolerances {
    let p = pitch_mm;
    let bolt_pitch = 90.0 * libm::pow(p, 0.4) * libm::pow(diameter_mm, 0.1);
    let hole_minor = if p < 1.0 {
        433.0 * p - 190.0 * libm::pow(p, 1.22)
    } else {
        230.0 * libm::pow(p, 0.7)
    };
    Tolerances {
        deviation: (15.0 + 11.0 * p) / 1000.0,
        bolt_major: (180.0 * libm::cbrt(p * p) - 3.15 / p.sqrt()) / 1000.0,
        bolt_pitch: bolt_pitch / 1000.0,
        hole_pitch: 1.32 * bolt_pitch / 1000.0,
        hole_minor: hole_minor / 1000.0,
    }
}

fn unified(diameter_mm: f64, pitch_mm: f64) -> Tolerances {
    let (d, p) = (diameter_mm / INCH_MM, pitch_mm / INCH_MM);
    let pitch_two_thirds = libm::cbrt(p * p);
    let bolt_pitch = 0.0015 * libm::cbrt(d) + 0.0015 * d.sqrt() + 0.015 * pitch_two_thirds;
    let hole_minor = if d < 0.25 {
        (0.05 * pitch_two_thirds + 0.03 * p / d - 0.002).max(0.25 * p - 0.4 * p * p)
    } else {
        0.25 * p - 0.4 * p * p
    };
    Tolerances {
        deviation: 0.3 * bolt_pitch * INCH_MM,
        bolt_major: 0.06 * pitch_two_thirds * INCH_MM,
        bolt_pitch: bolt_pitch * INCH_MM,
        hole_pitch: 1.3 * bolt_pitch * INCH_MM,
        hole_minor: hole_minor * INCH_MM,
    }
}

/// Pitch (mm); deviation g, tolerance of the bolt's major and of the hole's minor diameter,
/// grade 6 (µm).
const BY_PITCH: [(f64, f64, f64, f64); 14] = [
    (0.5, 20.0, 106.0, 140.0),
    (0.6, 21.0, 125.0, 160.0),
    (0.7, 22.0, 140.0, 180.0),
    (0.75, 22.0, 140.0, 190.0),
    (0.8, 24.0, 150.0, 200.0),
    (1.0, 26.0, 180.0, 236.0),
    (1.25, 28.0, 212.0, 265.0),
    (1.5, 32.0, 236.0, 300.0),
    (1.75, 34.0, 265.0, 335.0),
    (2.0, 38.0, 280.0, 375.0),
    (2.5, 42.0, 335.0, 450.0),
    (3.0, 48.0, 375.0, 500.0),
    (3.5, 53.0, 425.0, 560.0),
    (4.0, 60.0, 475.0, 600.0),
];

/// Diameter over, up to, pitch (mm); tolerance of the bolt's and of the hole's pitch
/// diameter, grade 6 (µm).
const BY_SIZE: [(f64, f64, f64, f64, f64); 22] = [
    (2.8, 5.6, 0.5, 75.0, 100.0),
    (2.8, 5.6, 0.6, 85.0, 112.0),
    (2.8, 5.6, 0.7, 90.0, 118.0),
    (2.8, 5.6, 0.75, 90.0, 118.0),
    (2.8, 5.6, 0.8, 95.0, 125.0),
    (5.6, 11.2, 0.75, 100.0, 132.0),
    (5.6, 11.2, 1.0, 112.0, 150.0),
    (5.6, 11.2, 1.25, 118.0, 160.0),
    (5.6, 11.2, 1.5, 132.0, 180.0),
    (11.2, 22.4, 1.0, 118.0, 160.0),
    (11.2, 22.4, 1.25, 132.0, 180.0),
    (11.2, 22.4, 1.5, 140.0, 190.0),
    (11.2, 22.4, 1.75, 150.0, 200.0),
    (11.2, 22.4, 2.0, 160.0, 212.0),
    (11.2, 22.4, 2.5, 170.0, 224.0),
    (22.4, 45.0, 1.0, 125.0, 170.0),
    (22.4, 45.0, 1.5, 150.0, 200.0),
    (22.4, 45.0, 2.0, 170.0, 224.0),
    (22.4, 45.0, 3.0, 200.0, 265.0),
    (22.4, 45.0, 3.5, 212.0, 280.0),
    (22.4, 45.0, 4.0, 224.0, 300.0),
    (22.4, 45.0, 4.5, 236.0, 315.0),
];

//! The hole that a bolt passes through.

use crate::thread::{INCH_MM, Standard, Thread};
use measure::{Grade, Source};

/// Clearance holes for one size.
#[derive(Clone, Debug, PartialEq)]
pub struct ClearanceHoles {
    pub close_mm: f64,
    pub normal_mm: f64,
    pub loose_mm: f64,
    pub source: Source,
}

/// Which of the three holes.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Fit {
    Close,
    Normal,
    Loose,
}

impl ClearanceHoles {
    /// The hole of a fit.
    pub fn of(&self, fit: Fit) -> f64 {
        match fit {
            Fit::Close => self.close_mm,
            Fit::Normal => self.normal_mm,
            Fit::Loose => self.loose_mm,
        }
    }
}

/// The clearance holes for a thread's size; nothing where no table lists it.
///
/// # Source
///
/// ISO 273 (fine, medium, coarse); ASME B18.2.8 (close, normal, loose).
///
/// ```
/// let thread = fastener::Thread::metric(8.0, 1.25)?;
/// let holes = fastener::clearance::clearance_holes(&thread).unwrap();
/// assert_eq!((holes.close_mm, holes.normal_mm, holes.loose_mm), (8.4, 9.0, 10.0));
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn clearance_holes(thread: &Thread) -> Option<ClearanceHoles> {
    let (table, scale, source): (&[Row], f64, Source) = match thread.standard() {
        Standard::Metric => (
            &ISO_273,
            1.0,
            Source::new(
                "ISO 273",
                "fine, medium, coarse series",
                // The table that was read ends at M16.
                if thread.diameter_mm() <= 16.0 {
                    Grade::Published
                } else {
                    Grade::Memory
                },
            ),
        ),
        Standard::Unified => (
            &ASME,
            INCH_MM,
            Source::new(
                "ASME B18.2.8",
                "normal and loose fit as in Machinery's Handbook, 31st edition, page 1741; close fit \
                 from memory",
                Grade::Published,
            ),
        ),
    };
    table
        .iter()
        .find(|row| (row.0 * scale - thread.diameter_mm()).abs() < 1e-6)
        .map(|&(_, close, normal, loose)| ClearanceHoles {
            close_mm: close * scale,
            normal_mm: normal * scale,
            loose_mm: loose * scale,
            source,
        })
}

/// Diameter of the thread; close, normal and loose hole.
type Row = (f64, f64, f64, f64);

const ISO_273: [Row; 29] = [
    (1.6, 1.7, 1.8, 2.0),
    (2.0, 2.2, 2.4, 2.6),
    (2.5, 2.7, 2.9, 3.1),
    (3.0, 3.2, 3.4, 3.6),
    (3.5, 3.7, 3.9, 4.2),
    (4.0, 4.3, 4.5, 4.8),
    (5.0, 5.3, 5.5, 5.8),
    (6.0, 6.4, 6.6, 7.0),
    (7.0, 7.4, 7.6, 8.0),
    (8.0, 8.4, 9.0, 10.0),
    (10.0, 10.5, 11.0, 12.0),
    (12.0, 13.0, 13.5, 14.5),
    (14.0, 15.0, 15.5, 16.5),
    (16.0, 17.0, 17.5, 18.5),
    (18.0, 19.0, 20.0, 21.0),
    (20.0, 21.0, 22.0, 24.0),
    (22.0, 23.0, 24.0, 26.0),
    (24.0, 25.0, 26.0, 28.0),
    (27.0, 28.0, 30.0, 32.0),
    (30.0, 31.0, 33.0, 35.0),
    (33.0, 34.0, 36.0, 38.0),
    (36.0, 37.0, 39.0, 42.0),
    (39.0, 40.0, 42.0, 45.0),
    (42.0, 43.0, 45.0, 48.0),
    (45.0, 46.0, 48.0, 52.0),
    (48.0, 50.0, 52.0, 56.0),
    (52.0, 54.0, 56.0, 62.0),
    (56.0, 58.0, 62.0, 66.0),
    (64.0, 66.0, 70.0, 74.0),
];

/// Inches.
const ASME: [Row; 16] = [
    (0.138, 0.154, 0.17, 0.185),
    (0.164, 0.18, 0.196, 0.213),
    (0.19, 0.206, 0.221, 0.238),
    (0.25, 0.266, 0.281, 0.297),
    (0.3125, 0.328, 0.344, 0.359),
    (0.375, 0.391, 0.406, 0.422),
    (0.4375, 0.453, 0.469, 0.484),
    (0.5, 0.531, 0.562, 0.609),
    (0.625, 0.656, 0.688, 0.734),
    (0.75, 0.781, 0.812, 0.906),
    (0.875, 0.906, 0.938, 1.031),
    (1.0, 1.031, 1.094, 1.156),
    (1.125, 1.156, 1.219, 1.312),
    (1.25, 1.281, 1.344, 1.438),
    (1.375, 1.438, 1.5, 1.609),
    (1.5, 1.562, 1.625, 1.734),
];

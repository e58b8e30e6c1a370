//! Sheets of labels, by their measures.
//!
//! The labels stand in the middle of their sheet, with a gap between those beside each other and
//! none between those one above the other, as such sheets are commonly sold (common practice; no
//! maker's drawing was at hand). What a printer can't reach at the edge is left free on each label.

use crate::engine::page::{MM, SheetSize};
use drawing::Area;

/// A sheet of labels.
#[derive(Debug, PartialEq)]
pub struct Format {
    /// Its name in a command and in an address: the measures of a label.
    pub name: &'static str,
    pub sheet: SheetSize,
    /// How many stand beside each other, and one above the other.
    pub across: usize,
    pub down: usize,
    /// The width and height of a label, in millimetres.
    pub label_mm: (f64, f64),
    /// Between two beside each other, in millimetres.
    gap_mm: f64,
    /// What people read.
    pub title: &'static str,
}

/// Millimetres in an inch.
const INCH: f64 = 25.4;

/// Every format, A4 first.
pub const FORMATS: [Format; 6] = [
    Format {
        name: "70x37",
        sheet: SheetSize::A4,
        across: 3,
        down: 8,
        label_mm: (70.0, 37.0),
        gap_mm: 0.0,
        title: "A4, 3 × 8: 70 × 37 mm",
    },
    Format {
        name: "63.5x38.1",
        sheet: SheetSize::A4,
        across: 3,
        down: 7,
        label_mm: (63.5, 38.1),
        gap_mm: 2.5,
        title: "A4, 3 × 7: 63.5 × 38.1 mm",
    },
    Format {
        name: "99.1x38.1",
        sheet: SheetSize::A4,
        across: 2,
        down: 7,
        label_mm: (99.1, 38.1),
        gap_mm: 2.5,
        title: "A4, 2 × 7: 99.1 × 38.1 mm",
    },
    Format {
        name: "99.1x67.7",
        sheet: SheetSize::A4,
        across: 2,
        down: 4,
        label_mm: (99.1, 67.7),
        gap_mm: 2.5,
        title: "A4, 2 × 4: 99.1 × 67.7 mm",
    },
    Format {
        name: "4x2in",
        sheet: SheetSize::Letter,
        across: 2,
        down: 5,
        label_mm: (4.0 * INCH, 2.0 * INCH),
        gap_mm: 0.1875 * INCH,
        title: "Letter, 2 × 5: 4 × 2 in",
    },
    Format {
        name: "2.625x1in",
        sheet: SheetSize::Letter,
        across: 3,
        down: 10,
        label_mm: (2.625 * INCH, INCH),
        gap_mm: 0.125 * INCH,
        title: "Letter, 3 × 10: 2 5/8 × 1 in",
    },
];

/// What tray labels are printed on.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Labels {
    /// The sheet of labels; none, for plain paper to be cut.
    pub format: Option<&'static Format>,
    /// The first label that is printed on, from 1: those before it are gone.
    pub from: usize,
}

impl Default for Labels {
    fn default() -> Self {
        Self {
            format: None,
            from: 1,
        }
    }
}

impl Format {
    /// The format of this name.
    #[must_use]
    pub fn named(name: &str) -> Option<&'static Self> {
        FORMATS.iter().find(|format| format.name == name)
    }

    /// How many labels a sheet has.
    #[must_use]
    pub fn on_a_sheet(&self) -> usize {
        self.across * self.down
    }

    /// Where a label stands on its sheet, in points: row by row, from 0.
    #[must_use]
    pub fn place(&self, at: usize) -> Area {
        let (sheet_w, sheet_h) = self.sheet.points();
        let (width, height) = (self.label_mm.0 * MM, self.label_mm.1 * MM);
        let count = crate::engine::column::count;
        let gap = self.gap_mm * MM;
        let all_w = width * count(self.across) + gap * (count(self.across) - 1.0);
        let all_h = height * count(self.down);
        Area {
            x: (sheet_w - all_w) / 2.0 + (width + gap) * count(at % self.across),
            y: (sheet_h - all_h) / 2.0 + height * count(at / self.across),
            width,
            height,
        }
    }
}

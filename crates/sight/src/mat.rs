//! The printed sheet, in millimetres: from its top-left corner, x to the right, y down.

/// Paper the sheet is printed on, in landscape.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Paper {
    /// 297 x 210 mm.
    A4,
    /// 279.4 x 215.9 mm.
    Letter,
}

/// Side of a tag's black square.
pub const TAG_MM: f64 = 24.0;
/// From a tag's black square to the nearest two edges of the sheet.
pub const TAG_INSET_MM: f64 = 8.0;
/// Modules along a tag's side, with its black border.
pub const TAG_MODULES: usize = 8;
/// Width of a tick.
pub const TICK_WIDTH_MM: f64 = 0.3;
/// A tick runs from 5 mm to 8 mm inside the edge.
pub const TICK_FROM_TO_MM: (f64, f64) = (5.0, 8.0);

/// The four tags (AprilTag, family 36h11, 0 to 3), six rows of six modules inside the border,
/// top row first; a 1 is white.
const CODES: [[u8; 6]; 4] = [
    [0b001000, 0b011010, 0b000101, 0b000110, 0b101110, 0b101011],
    [0b100100, 0b101101, 0b000110, 0b001111, 0b111010, 0b011011],
    [0b011100, 0b001000, 0b100100, 0b000001, 0b010010, 0b111011],
    [0b000110, 0b010011, 0b100101, 0b111001, 0b111000, 0b100111],
];

impl Paper {
    /// Both kinds.
    pub const ALL: [Self; 2] = [Self::A4, Self::Letter];

    /// Width and height in millimetres.
    #[must_use]
    pub fn size_mm(self) -> [f64; 2] {
        match self {
            Self::A4 => [297.0, 210.0],
            Self::Letter => [279.4, 215.9],
        }
    }

    /// What it is called.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::A4 => "a4",
            Self::Letter => "letter",
        }
    }

    /// The top-left corner of a tag's black square; tags go round clockwise from the top left.
    #[must_use]
    pub fn tag_corner_mm(self, tag: usize) -> [f64; 2] {
        let [w, h] = self.size_mm();
        let far = TAG_INSET_MM + TAG_MM;
        match tag {
            0 => [TAG_INSET_MM, TAG_INSET_MM],
            1 => [w - far, TAG_INSET_MM],
            2 => [w - far, h - far],
            _ => [TAG_INSET_MM, h - far],
        }
    }

    /// The four corners of a tag's black square, clockwise from its own top left.
    #[must_use]
    pub fn tag_corners_mm(self, tag: usize) -> [[f64; 2]; 4] {
        let [x, y] = self.tag_corner_mm(tag);
        [
            [x, y],
            [x + TAG_MM, y],
            [x + TAG_MM, y + TAG_MM],
            [x, y + TAG_MM],
        ]
    }

    /// The ticks, each as a filled rectangle [x0, y0, x1, y1].
    #[must_use]
    pub fn ticks_mm(self) -> Vec<[f64; 4]> {
        let [w, h] = self.size_mm();
        let (from, to) = TICK_FROM_TO_MM;
        let half = TICK_WIDTH_MM / 2.0;
        let at = |side: f64| {
            (4..30)
                .map(|ten| f64::from(ten) * 10.0)
                .filter(move |&at| at <= side - 40.0)
        };
        let across = at(w).flat_map(|x| {
            [
                [x - half, from, x + half, to],
                [x - half, h - to, x + half, h - from],
            ]
        });
        let down = at(h).flat_map(|y| {
            [
                [from, y - half, to, y + half],
                [w - to, y - half, w - from, y + half],
            ]
        });
        across.chain(down).collect()
    }
}

/// Whether a module of a tag is white; rows from the top, columns from the left, with border.
#[must_use]
pub fn is_white(tag: usize, row: usize, column: usize) -> bool {
    let inside = 1..TAG_MODULES - 1;
    inside.contains(&row)
        && inside.contains(&column)
        && (CODES[tag & 3][row - 1] >> (TAG_MODULES - 2 - column)) & 1 == 1
}

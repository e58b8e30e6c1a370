//! Heads, the wrench that turns them, the face they press on, and wrenches that almost fit.

use crate::figures::trimmed;
use crate::phrases::reading as say;
use crate::thread::{INCH_MM, Standard, Thread};
use measure::{Grade, Source};

/// A kind of head, by its standard.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Head {
    /// Hexagon, ISO 4014 and 4017 (nut: ISO 4032).
    Hex,
    /// Hexagon of the older DIN 931 and 933.
    HexOld,
    /// Small hexagon of older Asian vehicles.
    HexSmall,
    /// Hexagon with flange, small series, ISO 4162.
    FlangeSmall,
    /// Hexagon with flange, heavy series, EN 1665.
    FlangeHeavy,
    /// Cylinder with hexagon socket, ISO 4762.
    SocketCap,
    /// Cylinder with hexalobular socket, ISO 14579.
    TorxCap,
    /// Cylinder with 12-point socket, DIN 34822.
    TwelvePointSocket,
    /// Inch hexagon, ASME B18.2.1.
    InchHex,
    /// Inch hexagon with flange.
    InchFlange,
}

/// The wrench for a head.
#[derive(Clone, Debug, PartialEq)]
pub struct Wrench {
    pub head: Head,
    /// As it is marked: `13 mm`, `1/2 in`, `T45`.
    pub name: String,
    /// Across flats; nothing for Torx and 12-point sockets, whose size is a number.
    pub across_flats_mm: Option<f64>,
    pub source: Source,
}

/// A wrench that goes on, or nearly, but is not the right one.
#[derive(Clone, Debug, PartialEq)]
pub struct AlmostFits {
    pub name: String,
    /// Its opening less the head's size: positive is loose, negative does not go on.
    pub slack_mm: f64,
}

impl Head {
    /// Every kind of head.
    pub const ALL: [Head; 10] = [
        Head::Hex,
        Head::HexOld,
        Head::HexSmall,
        Head::FlangeSmall,
        Head::FlangeHeavy,
        Head::SocketCap,
        Head::TorxCap,
        Head::TwelvePointSocket,
        Head::InchHex,
        Head::InchFlange,
    ];

    /// Its name in words.
    pub fn name(self) -> &'static str {
        match self {
            Head::Hex => "hex",
            Head::HexOld => "old hex",
            Head::HexSmall => "small hex",
            Head::FlangeSmall => "flange",
            Head::FlangeHeavy => "heavy flange",
            Head::SocketCap => "socket cap",
            Head::TorxCap => "torx cap",
            Head::TwelvePointSocket => "12-point socket",
            Head::InchHex => "inch hex",
            Head::InchFlange => "inch flange",
        }
    }

    /// In words, as it is shown.
    #[must_use]
    pub fn said(self) -> &'static str {
        match self {
            Head::Hex => say::hex(),
            Head::HexOld => say::old_hex(),
            Head::HexSmall => say::small_hex(),
            Head::FlangeSmall => say::flange(),
            Head::FlangeHeavy => say::heavy_flange(),
            Head::SocketCap => say::socket_cap(),
            Head::TorxCap => say::torx_cap(),
            Head::TwelvePointSocket => say::twelve_point_socket(),
            Head::InchHex => say::inch_hex(),
            Head::InchFlange => say::inch_flange(),
        }
    }

    /// The head of that name or standard (`flange`, `ISO 4762`); `hex` on an inch thread is the
    /// inch hexagon.
    pub fn named(name: &str, thread: &Thread) -> Option<Head> {
        let name = name.trim().to_lowercase().replace(['-', '_'], " ");
        let digits: String = name.chars().filter(char::is_ascii_digit).collect();
        let head = Head::ALL
            .into_iter()
            .find(|head| head.name().replace('-', " ") == name)
            .or_else(|| by_standard(&name, &digits))?;
        Some(match (head, thread.standard()) {
            (Head::Hex, Standard::Unified) => Head::InchHex,
            (Head::FlangeSmall, Standard::Unified) => Head::InchFlange,
            _ => head,
        })
    }

    /// The plain hexagon of a thread's standard.
    pub fn plain(thread: &Thread) -> Head {
        match thread.standard() {
            Standard::Metric => Head::Hex,
            Standard::Unified => Head::InchHex,
        }
    }

    fn source(self, thread: &Thread) -> Source {
        if thread.standard() == Standard::Unified && thread.diameter_mm() < 0.25 * INCH_MM {
            return Source::new(
                "ASME B18.6.3, hex head machine screws",
                "sizes of wrenches",
                Grade::Memory,
            );
        }
        let (title, grade) = match self {
            Head::Hex => ("ISO 4014, ISO 4017, ISO 4032", Grade::Published),
            Head::HexOld => ("DIN 931, DIN 933", Grade::Published),
            Head::HexSmall => ("small hexagon of older Asian vehicles", Grade::Published),
            Head::FlangeSmall => ("ISO 4162", Grade::Published),
            Head::FlangeHeavy => ("EN 1665", Grade::Published),
            Head::SocketCap => ("ISO 4762", Grade::Published),
            Head::TorxCap => ("ISO 14579", Grade::Published),
            Head::TwelvePointSocket => ("DIN 34822", Grade::Memory),
            Head::InchHex => ("ASME B18.2.1, hex cap screws", Grade::Published),
            Head::InchFlange => ("ASME B18.2.1, hex flange screws", Grade::Published),
        };
        let seen = match self {
            Head::InchHex | Head::InchFlange => thread.diameter_mm() <= 0.5 * INCH_MM,
            Head::SocketCap => ![14.0, 18.0, 22.0].contains(&thread.diameter_mm()),
            Head::TorxCap | Head::TwelvePointSocket => true,
            Head::Hex | Head::HexOld | Head::HexSmall | Head::FlangeSmall | Head::FlangeHeavy => {
                (5.0..=14.0).contains(&thread.diameter_mm())
            }
        };
        // Sizes beyond the tables that were read are from memory.
        let grade = if seen { grade } else { Grade::Memory };
        Source::new(title, "sizes of wrenches", grade)
    }
}

/// `ISO 4014`, `DIN 912`: a head by the number of its standard.
fn by_standard(name: &str, digits: &str) -> Option<Head> {
    let standard = ["iso", "din", "en"]
        .iter()
        .any(|body| name.starts_with(body));
    if !standard {
        return None;
    }
    Some(match digits {
        "4014" | "4017" | "8765" | "8676" => Head::Hex,
        "931" | "933" => Head::HexOld,
        "4162" => Head::FlangeSmall,
        "1665" => Head::FlangeHeavy,
        "4762" | "912" => Head::SocketCap,
        "14579" => Head::TorxCap,
        "34822" => Head::TwelvePointSocket,
        _ => return None,
    })
}

/// The wrench for a head on a thread; nothing where no standard lists the size.
///
/// ```
/// use fastener::{Thread, head::{Head, wrench}};
/// let thread = Thread::metric(8.0, 1.25)?;
/// assert_eq!(wrench(Head::Hex, &thread).unwrap().name, "13 mm");
/// assert_eq!(wrench(Head::HexSmall, &thread).unwrap().name, "12 mm");
/// assert_eq!(wrench(Head::TorxCap, &thread).unwrap().name, "T45");
/// # Ok::<(), fastener::ThreadTrouble>(())
/// ```
pub fn wrench(head: Head, thread: &Thread) -> Option<Wrench> {
    let (name, across_flats_mm) = match head {
        Head::InchHex | Head::InchFlange => {
            let row = inch_row(thread)?;
            let (name, inches) = if head == Head::InchHex { row.1 } else { row.2 };
            (format!("{name} in"), Some(inches * INCH_MM))
        }
        _ => {
            let row = metric_row(thread)?;
            let flats = match head {
                Head::Hex => row.hex,
                Head::HexOld => row.old,
                Head::HexSmall => row.small,
                Head::FlangeSmall => row.flange,
                Head::FlangeHeavy => row.heavy,
                Head::SocketCap => row.key,
                Head::TorxCap | Head::TwelvePointSocket => 0.0,
                Head::InchHex | Head::InchFlange => return None,
            };
            match head {
                Head::TorxCap => (row.torx.to_owned(), None),
                // The socket's size is that of the thread.
                Head::TwelvePointSocket => (say::twelve_point(trimmed(row.diameter_mm, 0)), None),
                _ => (format!("{} mm", trimmed(flats, 1)), Some(flats)),
            }
        }
    };
    let listed = across_flats_mm.is_none_or(|flats| flats > 0.0) && !name.is_empty();
    listed.then(|| Wrench {
        head,
        name,
        across_flats_mm,
        source: head.source(thread),
    })
}

/// Every head that exists on a thread, with its wrench.
pub fn wrenches(thread: &Thread) -> Vec<Wrench> {
    Head::ALL
        .into_iter()
        .filter_map(|head| wrench(head, thread))
        .collect()
}

/// Wrenches, inch and metric, whose opening is within 0.6 mm of a head's size but not equal to
/// it, the nearest first.
///
/// ```
/// let near = fastener::head::almost_fit(12.7);
/// assert_eq!(near[0].name, "13 mm");
/// assert!((near[0].slack_mm - 0.3).abs() < 1e-9);
/// ```
pub fn almost_fit(across_flats_mm: f64) -> Vec<AlmostFits> {
    let metric = (4_u8..=36).map(|size| (format!("{size} mm"), f64::from(size)));
    let inch = INCH_WRENCHES
        .iter()
        .map(|&(name, inches)| (format!("{name} in"), inches * INCH_MM));
    let mut near: Vec<AlmostFits> = metric
        .chain(inch)
        .map(|(name, opening)| AlmostFits {
            name,
            slack_mm: opening - across_flats_mm,
        })
        .filter(|wrench| (1e-6..=0.6).contains(&wrench.slack_mm.abs()))
        .collect();
    near.sort_by(|a, b| {
        a.slack_mm
            .abs()
            .total_cmp(&b.slack_mm.abs())
            .then(a.name.cmp(&b.name))
    });
    near
}

/// Outside diameter of the face that presses on the part, in mm.
///
/// Returns dw of the product standard. For inch hexagons, and for metric sizes that the table
/// does not list, 0.95 of the width across flats.
///
/// # Source
///
/// ISO 4014 product grade A (dw min), ISO 4762, ISO 4162, EN 1665; grade memory but for
/// M6 and M10, whose ISO 4014 values stand in a worked example.
pub fn face_mm(head: Head, thread: &Thread) -> Option<f64> {
    let listed = metric_row(thread).and_then(|row| match head {
        Head::Hex => Some(row.hex_face),
        Head::HexOld => Some(row.hex_face + 0.95 * (row.old - row.hex)),
        Head::HexSmall => Some(0.95 * row.small).filter(|&face| face > 0.0),
        Head::FlangeSmall | Head::FlangeHeavy => Some(row.flange_face).filter(|&face| face > 0.0),
        Head::SocketCap | Head::TorxCap | Head::TwelvePointSocket => {
            Some(row.cap_face).filter(|&face| face > 0.0)
        }
        Head::InchHex | Head::InchFlange => None,
    });
    listed.or_else(|| {
        let flats = wrench(head, thread)?.across_flats_mm?;
        // A flange stands out beyond its hexagon by about a third.
        let share = if head == Head::InchFlange { 1.3 } else { 0.95 };
        Some(share * flats)
    })
}

struct MetricRow {
    diameter_mm: f64,
    hex: f64,
    old: f64,
    small: f64,
    flange: f64,
    heavy: f64,
    key: f64,
    torx: &'static str,
    hex_face: f64,
    flange_face: f64,
    cap_face: f64,
}

fn metric_row(thread: &Thread) -> Option<MetricRow> {
    if thread.standard() != Standard::Metric {
        return None;
    }
    METRIC
        .iter()
        .find(|row| (row.0 - thread.diameter_mm()).abs() < 1e-6)
        .map(|row| MetricRow {
            diameter_mm: row.0,
            hex: row.1[0],
            old: row.1[1],
            small: row.1[2],
            flange: row.1[3],
            heavy: row.1[4],
            key: row.1[5],
            torx: row.2,
            hex_face: row.3[0],
            flange_face: row.3[1],
            cap_face: row.3[2],
        })
}

type InchRow = (f64, (&'static str, f64), (&'static str, f64));

fn inch_row(thread: &Thread) -> Option<&'static InchRow> {
    if thread.standard() != Standard::Unified {
        return None;
    }
    INCH.iter()
        .find(|row| (row.0 * INCH_MM - thread.diameter_mm()).abs() < 1e-6)
}

/// Diameter; across flats of hex, old hex, small hex, flange, heavy flange, key; Torx; face of hex,
/// flange and cap. 0 where none is listed.
#[rustfmt::skip]
const METRIC: [(f64, [f64; 6], &str, [f64; 3]); 14] = [
    (3.0, [5.5, 5.5, 0.0, 0.0, 0.0, 2.5], "T10", [4.6, 0.0, 5.1]),
    (4.0, [7.0, 7.0, 0.0, 0.0, 0.0, 3.0], "T20", [5.9, 0.0, 6.5]),
    (5.0, [8.0, 8.0, 8.0, 7.0, 8.0, 4.0], "T25", [6.9, 9.4, 8.0]),
    (6.0, [10.0, 10.0, 10.0, 8.0, 10.0, 5.0], "T30", [8.9, 11.6, 9.4]),
    (7.0, [11.0, 11.0, 0.0, 0.0, 0.0, 0.0], "", [9.6, 0.0, 0.0]),
    (8.0, [13.0, 13.0, 12.0, 10.0, 13.0, 6.0], "T45", [11.6, 15.7, 12.3]),
    (10.0, [16.0, 17.0, 14.0, 13.0, 16.0, 8.0], "T50", [14.6, 19.9, 15.3]),
    (12.0, [18.0, 19.0, 17.0, 15.0, 18.0, 10.0], "T55", [16.6, 22.5, 17.2]),
    (14.0, [21.0, 22.0, 19.0, 18.0, 21.0, 12.0], "T60", [19.6, 27.7, 20.2]),
    (16.0, [24.0, 24.0, 22.0, 21.0, 24.0, 14.0], "T70", [22.5, 31.7, 23.2]),
    (18.0, [27.0, 27.0, 0.0, 0.0, 0.0, 14.0], "T80", [25.3, 0.0, 25.9]),
    (20.0, [30.0, 30.0, 0.0, 0.0, 30.0, 17.0], "T90", [28.2, 39.9, 28.9]),
    (22.0, [34.0, 32.0, 0.0, 0.0, 0.0, 17.0], "", [31.7, 0.0, 31.8]),
    (24.0, [36.0, 36.0, 0.0, 0.0, 0.0, 19.0], "", [33.6, 0.0, 34.8]),
];

/// Diameter, hex cap screw, hex flange screw; inches.
const INCH: [InchRow; 10] = [
    (0.138, ("1/4", 0.25), ("1/4", 0.25)),
    (0.164, ("1/4", 0.25), ("1/4", 0.25)),
    (0.19, ("5/16", 0.3125), ("5/16", 0.3125)),
    (0.216, ("5/16", 0.3125), ("5/16", 0.3125)),
    (0.25, ("7/16", 0.4375), ("3/8", 0.375)),
    (0.3125, ("1/2", 0.5), ("1/2", 0.5)),
    (0.375, ("9/16", 0.5625), ("9/16", 0.5625)),
    (0.4375, ("5/8", 0.625), ("5/8", 0.625)),
    (0.5, ("3/4", 0.75), ("3/4", 0.75)),
    (0.625, ("15/16", 0.9375), ("15/16", 0.9375)),
];

const INCH_WRENCHES: [(&str, f64); 16] = [
    ("1/4", 0.25),
    ("9/32", 0.281_25),
    ("5/16", 0.3125),
    ("11/32", 0.343_75),
    ("3/8", 0.375),
    ("7/16", 0.4375),
    ("1/2", 0.5),
    ("9/16", 0.5625),
    ("5/8", 0.625),
    ("11/16", 0.6875),
    ("3/4", 0.75),
    ("13/16", 0.8125),
    ("7/8", 0.875),
    ("15/16", 0.9375),
    ("1", 1.0),
    ("1-1/8", 1.125),
];

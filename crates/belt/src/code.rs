//! Length codes as printed on belts.

use crate::error::BeltError;
use crate::phrases as say;
use crate::{sources, text};
use measure::{Grade, Line, Source, Working};

/// What a printed code says.
#[derive(Clone, Debug, PartialEq)]
pub struct BeltCode {
    pub shape: Shape,
    /// The profile's letters: PK, K, H, 8M, ZA.
    pub profile: String,
    /// Effective length of a ribbed belt, pitch length of a toothed one, outside length of a
    /// V-belt.
    pub length_mm: f64,
    /// What the length was written in.
    pub unit: Unit,
    pub ribs: Option<u32>,
    pub width_mm: Option<f64>,
    pub teeth: Option<u32>,
    pub pitch_mm: Option<f64>,
    pub double_sided: bool,
    pub stretch: bool,
    pub working: Working,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Shape {
    Ribbed,
    Vee,
    Toothed,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unit {
    Millimetre,
    /// Tenths of an inch.
    TenthInch,
}

/// Pitches of ISO 5296 and ISO 9010, by their letters.
const PITCHES: [(&str, f64); 11] = [
    ("MXL", 2.032),
    ("XL", 5.08),
    ("L", 9.525),
    ("H", 12.7),
    ("XH", 22.225),
    ("XXH", 31.75),
    ("ZA", 9.525),
    ("ZB", 9.525),
    ("ZH", 9.525),
    ("YH", 8.0),
    ("YU", 8.0),
];
/// Of these the number before the letters counts teeth, the one after millimetres of width.
const BY_TEETH: [&str; 5] = ["ZA", "ZB", "ZH", "YH", "YU"];
const TENTH_INCH_MM: f64 = 2.54;

/// Reads a length code as it is printed.
///
/// Formula: millimetres as written, or tenths of an inch times 2.54; teeth times pitch.
///
/// Inputs: a code in one of these forms, in any case, with or without spaces: `6PK1285`,
/// `6DPK1285` (ribs on both sides), `6EPK1285` (stretch belt) for PH, PJ, PK, PL, PM;
/// `K060505`, `DK060505`, `6K505`, `505K6` with tenths of an inch; `10x1000` or
/// `AVX10x1000` for a V-belt by width and outside length; `1200-8M-20` by pitch length,
/// pitch and width; `450H100` by tenths of an inch, pitch letter and hundredths of width;
/// `124ZA19` by teeth, letters and width.
///
/// Returns the length in millimetres, ribs, teeth, pitch and width as far as the code tells.
///
/// # Errors
///
/// [`BeltError::Code`]; [`BeltError::OutOfRange`] for a length that no belt has.
///
/// # Limits
///
/// A code says nothing of material or friction. An outside length is not an effective one:
/// measuring the outside of a PK belt gives about 14 mm more.
///
/// # Source
///
/// ISO 9981 and ISO 5296 designations; common inch practice.
///
/// ```
/// use belt::code;
/// assert_eq!(code("6PK1285")?.length_mm, 1285.0);
/// let inch = code("K060505")?;
/// assert!(inch.ribs == Some(6) && (inch.length_mm - 1282.7).abs() < 1e-9);
/// # Ok::<(), belt::BeltError>(())
/// ```
pub fn code(written: &str) -> Result<BeltCode, BeltError> {
    let bare: String = written
        .chars()
        .filter(|letter| !letter.is_whitespace())
        .map(|letter| {
            if letter == '×' {
                'X'
            } else {
                letter.to_ascii_uppercase()
            }
        })
        .collect();
    let parts = parts(&bare);
    let read = ribbed_iso(&parts)
        .or_else(|| ribbed_inch(&parts))
        .or_else(|| toothed(&parts))
        .or_else(|| vee(&parts))
        .ok_or_else(|| BeltError::Code {
            code: written.trim().to_owned(),
        })?;
    crate::error::within(
        say::belts_length(),
        read.length_mm,
        "mm",
        50.0..=20_000.0,
        say::mend_read_code_again(),
    )?;
    Ok(BeltCode {
        working: working(&bare, &read),
        ..read
    })
}

/// Letters and numbers in turn, as they stand; dashes part and are left out.
fn parts(bare: &str) -> Vec<String> {
    let kind = |letter: char| match letter {
        '-' => 0,
        '0'..='9' | '.' => 1,
        _ => 2,
    };
    let mut parts: Vec<String> = Vec::new();
    let mut last = 0;
    for letter in bare.chars() {
        if kind(letter) != 0 && kind(letter) == last {
            if let Some(open) = parts.last_mut() {
                open.push(letter);
            }
        } else if kind(letter) != 0 {
            parts.push(letter.to_string());
        }
        last = kind(letter);
    }
    parts
}

fn empty(shape: Shape, profile: &str, length_mm: f64, unit: Unit) -> BeltCode {
    BeltCode {
        shape,
        profile: profile.to_owned(),
        length_mm,
        unit,
        ribs: None,
        width_mm: None,
        teeth: None,
        pitch_mm: None,
        double_sided: false,
        stretch: false,
        working: Working::new(say::length_code_title()),
    }
}

fn whole(text: &str) -> Option<u32> {
    (text.len() <= 5).then(|| text.parse().ok()).flatten()
}

fn number(text: &str) -> Option<f64> {
    text.parse()
        .ok()
        .filter(|number: &f64| number.is_finite() && *number > 0.0)
}

fn ribs(text: &str) -> Option<u32> {
    whole(text).filter(|ribs| (1..=30).contains(ribs))
}

fn ribbed_iso(parts: &[String]) -> Option<BeltCode> {
    let [count, letters, length] = parts else {
        return None;
    };
    let (stretch, letters) = match letters.strip_prefix('E') {
        Some(rest) => (true, rest),
        None => (false, letters.as_str()),
    };
    let (double_sided, profile) = match letters.strip_prefix('D') {
        Some(rest) => (true, rest),
        None => (false, letters),
    };
    if !["PH", "PJ", "PK", "PL", "PM"].contains(&profile) {
        return None;
    }
    Some(BeltCode {
        ribs: Some(ribs(count)?),
        double_sided,
        stretch,
        ..empty(Shape::Ribbed, profile, number(length)?, Unit::Millimetre)
    })
}

fn ribbed_inch(parts: &[String]) -> Option<BeltCode> {
    let of = |ribs, tenths: &str, double_sided, stretch| {
        Some(BeltCode {
            ribs: Some(ribs),
            double_sided,
            stretch,
            ..empty(
                Shape::Ribbed,
                "K",
                number(tenths)? * TENTH_INCH_MM,
                Unit::TenthInch,
            )
        })
    };
    match parts {
        [letter, digits, rest @ ..] if letter == "K" || letter == "DK" => {
            let stretch = match rest {
                [] => false,
                [suffix] if suffix == "SF" => true,
                _ => return None,
            };
            // Two digits of ribs, four of length.
            if digits.len() != 6 || digits.contains('.') {
                return None;
            }
            of(ribs(&digits[..2])?, &digits[2..], letter == "DK", stretch)
        }
        [first, letter, last] if letter == "K" || letter == "DK" => {
            // The longer number is the length, whichever side it stands on.
            match (first.len(), last.len()) {
                (1..=2, 3..=4) => of(ribs(first)?, last, letter == "DK", false),
                (3..=4, 1..=2) => of(ribs(last)?, first, letter == "DK", false),
                _ => None,
            }
        }
        _ => None,
    }
}

fn toothed(parts: &[String]) -> Option<BeltCode> {
    match parts {
        [length, pitch, letter, width] if letter == "M" => {
            let (length_mm, pitch_mm) = (number(length)?, number(pitch)?);
            Some(BeltCode {
                pitch_mm: Some(pitch_mm),
                teeth: teeth(length_mm, pitch_mm),
                width_mm: Some(number(width)?),
                ..empty(
                    Shape::Toothed,
                    &format!("{pitch}M"),
                    length_mm,
                    Unit::Millimetre,
                )
            })
        }
        [first, letters, width] => {
            let (_, pitch_mm) = PITCHES.iter().find(|(name, _)| name == letters)?;
            if BY_TEETH.contains(&letters.as_str()) {
                let teeth = whole(first)?;
                return Some(BeltCode {
                    teeth: Some(teeth),
                    pitch_mm: Some(*pitch_mm),
                    width_mm: Some(number(width)?),
                    ..empty(
                        Shape::Toothed,
                        letters,
                        f64::from(teeth) * pitch_mm,
                        Unit::Millimetre,
                    )
                });
            }
            let length_mm = number(first)? * TENTH_INCH_MM;
            Some(BeltCode {
                pitch_mm: Some(*pitch_mm),
                teeth: teeth(length_mm, *pitch_mm),
                width_mm: Some(number(width)? * 0.254),
                ..empty(Shape::Toothed, letters, length_mm, Unit::TenthInch)
            })
        }
        _ => None,
    }
}

/// Whole teeth, where the length makes them.
fn teeth(length_mm: f64, pitch_mm: f64) -> Option<u32> {
    let teeth = length_mm / pitch_mm;
    let near = libm::round(teeth);
    #[allow(
        clippy::cast_possible_truncation,
        clippy::cast_sign_loss,
        reason = "checked to be small and positive"
    )]
    ((teeth - near).abs() < 0.1 && (1.0..10_000.0).contains(&near)).then_some(near as u32)
}

fn vee(parts: &[String]) -> Option<BeltCode> {
    let (width, length) = match parts {
        [width, by, length] if by == "X" => (width, length),
        [width, by, length, ends] if by == "X" && ends == "LA" => (width, length),
        [prefix, width, by, length] if prefix == "AVX" && by == "X" => (width, length),
        [prefix, width, by, length, ends] if prefix == "AVX" && by == "X" && ends == "LA" => {
            (width, length)
        }
        _ => return None,
    };
    Some(BeltCode {
        width_mm: Some(number(width).filter(|width| (5.0..=40.0).contains(width))?),
        ..empty(Shape::Vee, "V", number(length)?, Unit::Millimetre)
    })
}

fn working(bare: &str, read: &BeltCode) -> Working {
    let source = match (read.shape, read.unit) {
        (Shape::Ribbed, Unit::Millimetre) => Source::new(
            "trade articles on reading PK numbers",
            "ribs, profile, effective length in millimetres",
            Grade::Published,
        ),
        (Shape::Ribbed, Unit::TenthInch) => Source::new(
            "trade article on part numbers of ribbed belts",
            "letter, ribs, length in tenths of an inch",
            Grade::Published,
        ),
        (Shape::Toothed, _) => Source::new("ISO 5296, ISO 9010", "designations", Grade::Memory),
        (Shape::Vee, _) => sources::trade(),
    };
    let mut line = Line::new(say::length_as_printed(), source).input(say::code(), bare.to_owned());
    line = match read.unit {
        Unit::Millimetre => line.symbol("L"),
        Unit::TenthInch => line.formula("L", say::tenths_of_an_inch()),
    };
    let mut working =
        Working::new(say::length_code_title()).line(line.value(text::millimetres(read.length_mm)));
    if let (Some(teeth), Some(pitch)) = (read.teeth, read.pitch_mm) {
        working = working.line(
            Line::new(say::teeth(), Source::derived())
                .formula("z", "L/p")
                .input("p", text::millimetres(pitch))
                .value(teeth.to_string()),
        );
    }
    working.limit(say::another_maker_may_differ())
}

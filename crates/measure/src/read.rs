//! Reading quantities as people write them.

use crate::number::{NumberTrouble, Place, place, read_number};
use crate::phrases as say;
use crate::quantity::{Measured, Misfit};
use crate::unit::{Dimension, Unit};
use thiserror::Error;

/// Why a text is not a quantity. Each says where, what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum Unreadable {
    #[error("{}", say::nothing_written(.accepted))]
    Empty { accepted: String },
    #[error(transparent)]
    Number(#[from] NumberTrouble),
    #[error("{}", say::no_unit(.at.column, .number, .accepted))]
    MissingUnit {
        at: Place,
        number: String,
        accepted: String,
    },
    #[error("{}", say::unknown_unit(.at.column, .found, .accepted))]
    UnknownUnit {
        at: Place,
        found: String,
        accepted: String,
    },
    #[error("{}", say::wrong_kind(.at.column, .found, .measures.name(), .wanted.name(), .accepted))]
    WrongKind {
        at: Place,
        found: String,
        measures: Dimension,
        wanted: Dimension,
        accepted: String,
    },
    #[error("{}", say::after_unit(.at.column, .found, .unit.symbol()))]
    AfterUnit {
        at: Place,
        found: String,
        unit: Unit,
    },
    #[error(transparent)]
    Misfit(#[from] Misfit),
}

/// Reads a quantity of a stated dimension.
///
/// Accepted: a number (`12`, `12.5`, `12,5`, `25 275`, `1,234.5`, `5/16`, `1 1/2`,
/// `1-1/2`, `1½`), and a unit of that dimension by its symbol or name, large or
/// small letters alike, with blanks, dots or dashes between its parts. A lone
/// point is a decimal point; a lone comma before exactly three digits is refused,
/// because it may mean either. Gallons, quarts, pints and fluid ounces are the US
/// liquid ones. Where a dimension is stated, its own sense of a word is taken:
/// `lb` is a force, `oz` a volume, `20 C` a difference of temperatures.
///
/// # Errors
///
/// [`Unreadable`], with the place in the text.
///
/// ```
/// use measure::{Dimension, Unit};
///
/// assert_eq!(measure::read("89 in-lb", Dimension::Torque)?.unit(), Unit::PoundInch);
/// assert_eq!(measure::read("9,5 l", Dimension::Volume)?.number().to_string(), "9.5");
/// assert_eq!(
///     measure::read("10 N", Dimension::Torque).unwrap_err().to_string(),
///     "column 4: `N` measures force, not torque; \
///      use one of N·m, daN·m, kgf·m, kgf·cm, lb·ft, lb·in",
/// );
/// # Ok::<(), measure::Unreadable>(())
/// ```
pub fn read(text: &str, dimension: Dimension) -> Result<Measured, Unreadable> {
    read_as(text, Some(dimension))
}

/// Reads a quantity whose unit tells what it measures. A degree of temperature
/// is read as a temperature, `lb` and `oz` as masses.
///
/// # Errors
///
/// [`Unreadable`], with the place in the text.
///
/// ```
/// assert_eq!(measure::read_any("195 °F")?.dimension(), measure::Dimension::Temperature);
/// # Ok::<(), measure::Unreadable>(())
/// ```
pub fn read_any(text: &str) -> Result<Measured, Unreadable> {
    read_as(text, None)
}

fn read_as(text: &str, wanted: Option<Dimension>) -> Result<Measured, Unreadable> {
    if text.trim().is_empty() {
        return Err(Unreadable::Empty {
            accepted: accepted(wanted),
        });
    }
    let (number, unit_start) = read_number(text)?;
    let unit = read_unit(text, unit_start, wanted)?;
    Ok(Measured::as_written(text.trim().to_owned(), number, unit)?)
}

fn read_unit(text: &str, number_end: usize, wanted: Option<Dimension>) -> Result<Unit, Unreadable> {
    let written = text[number_end..].trim();
    let accepted = accepted(wanted);
    if written.is_empty() {
        let at = place(text, number_end, number_end);
        return Err(Unreadable::MissingUnit {
            at,
            number: text[..number_end].trim().to_owned(),
            accepted,
        });
    }
    let start = number_end + (text[number_end..].len() - text[number_end..].trim_start().len());
    let at = place(text, start, start + written.len());
    let found = written.to_owned();
    if let Some(unit) = find(written, wanted) {
        return Ok(unit);
    }
    if let (Some(unit), Some(wanted)) = (find(written, None), wanted) {
        return Err(Unreadable::WrongKind {
            at,
            found,
            measures: unit.dimension(),
            wanted,
            accepted,
        });
    }
    if let Some((unit, length)) = unit_before_more(written, wanted) {
        let rest = written[length..].trim_start();
        let at = place(
            text,
            start + written.len() - rest.len(),
            start + written.len(),
        );
        return Err(Unreadable::AfterUnit {
            at,
            found: rest.to_owned(),
            unit,
        });
    }
    Err(Unreadable::UnknownUnit {
        at,
        found,
        accepted,
    })
}

/// The longest unit that `written` begins with before a blank, and its length.
fn unit_before_more(written: &str, wanted: Option<Dimension>) -> Option<(Unit, usize)> {
    // No unit has more than three words; looking further would only cost time.
    let blanks: Vec<usize> = written
        .match_indices(char::is_whitespace)
        .map(|(at, _)| at)
        .take(3)
        .collect();
    let known =
        |length: usize| find(&written[..length], wanted).or_else(|| find(&written[..length], None));
    blanks
        .into_iter()
        .rev()
        .find_map(|length| known(length).map(|unit| (unit, length)))
}

fn find(written: &str, wanted: Option<Dimension>) -> Option<Unit> {
    let joined = join(written);
    // The only spellings whose capital letters change a thousandfold meaning.
    if joined == "mPa" || joined == "ML" {
        return None;
    }
    let word = joined.to_lowercase();
    let word = word.as_str();
    Unit::ALL.into_iter().find(|&unit| match wanted {
        Some(dimension) => {
            let definition = unit.definition();
            definition.dimension == dimension
                && (definition.words.contains(&word) || words_in_context(unit).contains(&word))
        }
        None => unit.definition().words.contains(&word),
    })
}

/// Spellings that are clear only where the dimension is stated.
fn words_in_context(unit: Unit) -> &'static [&'static str] {
    match unit {
        Unit::CelsiusDifference => Unit::Celsius.definition().words,
        Unit::FahrenheitDifference => Unit::Fahrenheit.definition().words,
        Unit::KelvinDifference => Unit::Kelvin.definition().words,
        Unit::KilogramForceMetre => &["kgm", "mkg"],
        Unit::KilogramForceCentimetre => &["kgcm", "cmkg"],
        Unit::PoundForce => &["lb", "lbs"],
        Unit::UsFluidOunce => &["oz"],
        _ => &[],
    }
}

/// The unit with the marks between its parts taken out and look-alikes made one.
fn join(written: &str) -> String {
    let between = |c: char| {
        c.is_whitespace() || matches!(c, '·' | '⋅' | '•' | '∙' | '.' | '*' | '-' | '‑' | '×')
    };
    written
        .chars()
        .filter(|&c| !between(c))
        .map(|c| match c {
            '²' => '2',
            '³' => '3',
            'º' | '˚' => '°',
            other => other,
        })
        .collect()
}

fn accepted(wanted: Option<Dimension>) -> String {
    match wanted {
        Some(dimension) => dimension.accepted(),
        None => "N·m, lb·ft, L, qt, kPa, psi, °C, °F, mm, in, N, lbf, kg, lb, %, min, °, rpm, km/h, mph, V".to_owned(),
    }
}

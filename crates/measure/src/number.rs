//! Numbers as people write them: decimals with a point or a comma, grouped
//! digits, and fractions of an inch.

use crate::phrases as say;
use rust_decimal::Decimal;
use std::str::FromStr;
use thiserror::Error;

/// Where in a text something stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Place {
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
    /// Column of the first character, counted from 1 in characters.
    pub column: usize,
}

/// Why the number at the front of a text cannot be taken.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum NumberTrouble {
    #[error("{}", say::no_number(.at.column, .found))]
    Missing { at: Place, found: String },
    #[error("{}", say::not_finite(.at.column, .found))]
    NotFinite { at: Place, found: String },
    #[error("{}", say::malformed(.at.column, .found))]
    Malformed { at: Place, found: String },
    #[error("{}", say::ambiguous(.at.column, .found, .as_decimal, .as_thousands))]
    Ambiguous {
        at: Place,
        found: String,
        as_decimal: String,
        as_thousands: String,
    },
    #[error("{}", say::divides_by_nothing(.at.column, .found))]
    ZeroDenominator { at: Place, found: String },
    #[error("{}", say::number_too_large(.at.column, .found, .limit))]
    TooLarge {
        at: Place,
        found: String,
        limit: Decimal,
    },
}

/// The largest size of number that is read. It leaves room for every conversion.
pub(crate) const LIMIT: Decimal = Decimal::from_parts(3_567_587_328, 232, 0, false, 0);

/// The place of `text[start..end]` in `text`.
pub(crate) fn place(text: &str, start: usize, end: usize) -> Place {
    Place {
        start,
        end,
        column: text[..start].chars().count() + 1,
    }
}

/// Reads the number that `text` begins with, after blanks.
///
/// Returns it with the byte at which the rest begins.
pub(crate) fn read_number(text: &str) -> Result<(Decimal, usize), NumberTrouble> {
    let start = text.len() - text.trim_start().len();
    let after_sign = start + sign_length(&text[start..]);
    let end = number_end(text, after_sign);
    if end == after_sign {
        return Err(no_number(text, start));
    }
    let at = place(text, start, end);
    let found = text[start..end].to_owned();
    let negative = text[start..after_sign].starts_with(['-', '\u{2212}']);
    let size = size(&text[after_sign..end], at, &found)?;
    if size > LIMIT {
        return Err(NumberTrouble::TooLarge {
            at,
            found,
            limit: LIMIT,
        });
    }
    Ok((if negative { -size } else { size }, end))
}

fn sign_length(text: &str) -> usize {
    text.chars()
        .next()
        .filter(|c| matches!(c, '+' | '-' | '\u{2212}'))
        .map_or(0, char::len_utf8)
}

fn no_number(text: &str, start: usize) -> NumberTrouble {
    let word_end = text[start..]
        .find(char::is_whitespace)
        .map_or(text.len(), |length| start + length);
    let found = text[start..word_end].to_owned();
    let at = place(text, start, word_end);
    let bare = found
        .trim_start_matches(['+', '-', '\u{2212}'])
        .to_lowercase();
    let not_finite = ["nan", "inf", "infinity", "∞"].contains(&bare.as_str());
    if not_finite {
        NumberTrouble::NotFinite { at, found }
    } else {
        NumberTrouble::Missing { at, found }
    }
}

/// Where the run of number characters that starts at `start` ends. A blank belongs
/// to it between digit groups (25 275) and before a fraction (1 1/2, 1-1/2).
fn number_end(text: &str, start: usize) -> usize {
    let mut end = start;
    for (offset, character) in text[start..].char_indices() {
        let here = start + offset;
        let inside = match character {
            '0'..='9' | '.' | ',' | '/' => true,
            c if vulgar(c).is_some() => true,
            '-' => starts_fraction(&text[here + 1..]),
            c if c.is_whitespace() => {
                let rest = &text[here + c.len_utf8()..];
                end > start && (starts_fraction(rest) || starts_group(rest))
            }
            _ => false,
        };
        if !inside {
            break;
        }
        end = here + character.len_utf8();
    }
    // A mark that ends a sentence or a list is not part of the number.
    let written = text[start..end].trim_end_matches(['.', ',', '/']);
    if written
        .chars()
        .any(|c| c.is_ascii_digit() || vulgar(c).is_some())
    {
        start + written.len()
    } else {
        start
    }
}

fn starts_fraction(text: &str) -> bool {
    let digits = text.len() - text.trim_start_matches(|c: char| c.is_ascii_digit()).len();
    let mut after = text[digits..].chars();
    let upper_and_lower =
        digits > 0 && after.next() == Some('/') && after.next().is_some_and(|c| c.is_ascii_digit());
    upper_and_lower || text.chars().next().is_some_and(|c| vulgar(c).is_some())
}

fn starts_group(text: &str) -> bool {
    let digits = text.chars().take_while(char::is_ascii_digit).count();
    digits == 3 && !text[3..].starts_with('/')
}

/// The one-character fractions found on keyboards, as parts of 8.
fn vulgar(character: char) -> Option<i64> {
    Some(match character {
        '⅛' => 1,
        '¼' => 2,
        '⅜' => 3,
        '½' => 4,
        '⅝' => 5,
        '¾' => 6,
        '⅞' => 7,
        _ => return None,
    })
}

fn size(written: &str, at: Place, found: &str) -> Result<Decimal, NumberTrouble> {
    if written.contains('/') || written.chars().any(|c| vulgar(c).is_some()) {
        mixed_fraction(written, at, found)
    } else {
        decimal(written, at, found)
    }
}

/// A whole number, a blank or a dash, and a fraction; or the fraction alone.
fn mixed_fraction(written: &str, at: Place, found: &str) -> Result<Decimal, NumberTrouble> {
    let malformed = || NumberTrouble::Malformed {
        at,
        found: found.to_owned(),
    };
    let too_large = || NumberTrouble::TooLarge {
        at,
        found: found.to_owned(),
        limit: LIMIT,
    };
    let split = written.rfind(|c: char| c == '-' || c.is_whitespace());
    let last = written.chars().last().ok_or_else(malformed)?;
    let (whole, part) = if let Some(eighths) = vulgar(last) {
        let whole = written
            .trim_end_matches(last)
            .trim_end_matches(|c: char| c == '-' || c.is_whitespace());
        (whole, Decimal::new(eighths * 125, 3))
    } else {
        let (whole, fraction) = match split {
            Some(split) => (
                &written[..split],
                written[split..].trim_start_matches(|c: char| c == '-' || c.is_whitespace()),
            ),
            None => ("", written),
        };
        let (upper, lower) = fraction.split_once('/').ok_or_else(malformed)?;
        let upper = whole_number(upper).ok_or_else(malformed)?;
        let lower = whole_number(lower).ok_or_else(malformed)?;
        if lower.is_zero() {
            return Err(NumberTrouble::ZeroDenominator {
                at,
                found: found.to_owned(),
            });
        }
        (whole, upper.checked_div(lower).ok_or_else(too_large)?)
    };
    let whole = if whole.is_empty() {
        Decimal::ZERO
    } else {
        whole_number(whole).ok_or_else(malformed)?
    };
    whole
        .checked_add(part)
        .map(|sum| sum.normalize())
        .ok_or_else(too_large)
}

fn whole_number(digits: &str) -> Option<Decimal> {
    let plain =
        !digits.is_empty() && digits.len() <= 12 && digits.bytes().all(|b| b.is_ascii_digit());
    if plain {
        Decimal::from_str(digits).ok()
    } else {
        None
    }
}

/// A decimal with a point or a comma, its digits perhaps grouped in threes.
///
/// A lone comma before exactly three digits is refused, because it may mean either,
/// unless a zero stands before it. A lone point is always a decimal point.
fn decimal(written: &str, at: Place, found: &str) -> Result<Decimal, NumberTrouble> {
    let malformed = || NumberTrouble::Malformed {
        at,
        found: found.to_owned(),
    };
    let (points, commas) = (written.matches('.').count(), written.matches(',').count());
    let mark = match (points, commas) {
        (0, 0) => None,
        (1, 0) => Some('.'),
        (0, 1) if lone_comma_is_unclear(written) => {
            let as_decimal = written.replace(',', ".");
            let as_thousands = written.replace(',', "");
            return Err(NumberTrouble::Ambiguous {
                at,
                found: found.to_owned(),
                as_decimal,
                as_thousands,
            });
        }
        (0, 1) => Some(','),
        (1, _) if written.rfind('.') > written.rfind(',') => Some('.'),
        (_, 1) if written.rfind(',') > written.rfind('.') => Some(','),
        (_, 0) | (0, _) => None,
        _ => return Err(malformed()),
    };
    let (whole, part) = match mark.and_then(|mark| written.rsplit_once(mark)) {
        Some((whole, part)) => (whole, part),
        None => (written, ""),
    };
    let whole = ungroup(whole).ok_or_else(malformed)?;
    if !part.bytes().all(|b| b.is_ascii_digit()) || (whole.is_empty() && part.is_empty()) {
        return Err(malformed());
    }
    // Refused, not rounded: the number is kept as it was written.
    let point = if part.is_empty() { "" } else { "." };
    Decimal::from_str_exact(&format!("0{}{point}{part}", whole.trim_start_matches('0'))).map_err(
        |_| NumberTrouble::TooLarge {
            at,
            found: found.to_owned(),
            limit: LIMIT,
        },
    )
}

fn lone_comma_is_unclear(written: &str) -> bool {
    written.split_once(',').is_some_and(|(whole, part)| {
        (1..=3).contains(&whole.len()) && !whole.starts_with('0') && part.len() == 3
    })
}

/// The digits of a whole part whose groups of three may be set apart by one kind of mark.
fn ungroup(whole: &str) -> Option<String> {
    let mark = whole.chars().find(|c| !c.is_ascii_digit());
    let Some(mark) = mark else {
        return Some(whole.to_owned());
    };
    let mut groups = whole.split(mark);
    let first = groups
        .next()
        .filter(|first| (1..=3).contains(&first.len()))?;
    let rest: Vec<&str> = groups.collect();
    let all_digits = |group: &&str| group.bytes().all(|b| b.is_ascii_digit());
    if !all_digits(&first)
        || !rest
            .iter()
            .all(|group| group.len() == 3 && all_digits(group))
    {
        return None;
    }
    Some(format!("{first}{}", rest.concat()))
}

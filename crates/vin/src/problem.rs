//! What can be wrong with a number, and what is worth saying about it.

use std::fmt;

use crate::{CHECK_DIGIT_POSITION, DIGITS_FROM, LENGTH};

/// One thing that is wrong: where, what, and how to mend it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Problem {
    #[error("the number has {found} characters, it needs {LENGTH}: {}", length_remedy(*.found))]
    Length { found: usize },

    #[error("position {position} is {found}, which no number contains: most likely {meant}")]
    LookAlike {
        position: usize,
        found: char,
        meant: char,
    },

    #[error(
        "position {position} is {found:?}: only digits and the letters A to Z without I, O and Q \
         can stand there; read it again from the vehicle"
    )]
    NotAllowed { position: usize, found: char },

    #[error(
        "position {position} is {found}; North American numbers have only digits from position \
         {DIGITS_FROM} on{}",
        most_likely(*.meant)
    )]
    NotDigit {
        position: usize,
        found: char,
        meant: Option<char>,
    },

    #[error(
        "position {CHECK_DIGIT_POSITION}, the check digit, is {found}; the other characters ask \
         for {expected}: one of them, or the check digit, is misread"
    )]
    CheckDigit { found: char, expected: char },
}

impl Problem {
    /// The position that it concerns, counted from 1; none for the length.
    #[must_use]
    pub fn position(&self) -> Option<usize> {
        match self {
            Self::Length { .. } => None,
            Self::LookAlike { position, .. }
            | Self::NotAllowed { position, .. }
            | Self::NotDigit { position, .. } => Some(*position),
            Self::CheckDigit { .. } => Some(CHECK_DIGIT_POSITION),
        }
    }
}

fn most_likely(meant: Option<char>) -> String {
    match meant {
        Some(digit) => format!(": most likely {digit}"),
        None => ": read it again from the vehicle".to_owned(),
    }
}

fn length_remedy(found: usize) -> String {
    if found < LENGTH {
        format!("{} missing", LENGTH - found)
    } else {
        format!("{} too many", found - LENGTH)
    }
}

/// What was changed in reading, or what the number leaves open.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Note {
    /// Spaces or hyphens inside the number were left out.
    SeparatorsLeftOut { count: usize },
    /// Not a North American number, so that its check digit decides nothing.
    CheckDigitNotRequired { holds: bool },
    /// The model year is read by a rule for light vehicles.
    YearForLightVehicles,
    /// Position 10 need not be a year.
    YearNotRequired,
    /// Position 10 should be a year code and is none.
    NoYearCode,
    /// By position 7 it would be of a year that lies ahead.
    YearDoubted { year: u16 },
}

impl fmt::Display for Note {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::SeparatorsLeftOut { count: 1 } => f.write_str("1 space or hyphen left out"),
            Self::SeparatorsLeftOut { count } => {
                write!(f, "{count} spaces or hyphens left out")
            }
            Self::CheckDigitNotRequired { holds: true } => f.write_str(
                "no check digit is required outside North America; one stands there, and it holds",
            ),
            Self::CheckDigitNotRequired { holds: false } => f.write_str(
                "no check digit is required outside North America, so a misread character may not show",
            ),
            Self::YearForLightVehicles => f.write_str(
                "model year by position 7, for cars and trucks up to 4536 kg (10 000 lb) gross \
                 weight rating; for heavier ones, buses, trailers and motorcycles see the plate",
            ),
            Self::YearNotRequired => f.write_str(
                "outside North America position 10 need not be the model year: take it from the papers",
            ),
            Self::YearDoubted { year } => write!(
                f,
                "by positions 7 and 10 it would be of {year}, which is doubtful: one of them is \
                 misread, or it is a heavy vehicle, trailer or motorcycle of {}; see the plate",
                year - 30
            ),
            Self::NoYearCode => f.write_str(
                "position 10 is not a model year code, which North American numbers have: read it again",
            ),
        }
    }
}

//! What can be wrong with a number, and what is worth saying about it.

use std::fmt;

use crate::phrases as say;
use crate::{CHECK_DIGIT_POSITION, DIGITS_FROM, LENGTH};

/// One thing that is wrong: where, what, and how to mend it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Problem {
    #[error("{}", length(*.found))]
    Length { found: usize },

    #[error("{}", say::look_alike(.position, .found, .meant))]
    LookAlike {
        position: usize,
        found: char,
        meant: char,
    },

    #[error("{}", say::not_allowed(.position, format_args!("{:?}", .found)))]
    NotAllowed { position: usize, found: char },

    #[error("{}", not_digit(*.position, *.found, *.meant))]
    NotDigit {
        position: usize,
        found: char,
        meant: Option<char>,
    },

    #[error("{}", say::check_digit(CHECK_DIGIT_POSITION, .found, .expected))]
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

fn not_digit(position: usize, found: char, meant: Option<char>) -> String {
    match meant {
        Some(digit) => say::not_digit_likely(position, found, DIGITS_FROM, digit),
        None => say::not_digit(position, found, DIGITS_FROM),
    }
}

fn length(found: usize) -> String {
    if found < LENGTH {
        say::too_short(found, LENGTH, LENGTH - found)
    } else {
        say::too_long(found, LENGTH, found - LENGTH)
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
            Self::SeparatorsLeftOut { count } => f.write_str(&say::separators_left_out(*count)),
            Self::CheckDigitNotRequired { holds: true } => {
                f.write_str(say::check_digit_not_required_holds())
            }
            Self::CheckDigitNotRequired { holds: false } => {
                f.write_str(say::check_digit_not_required())
            }
            Self::YearForLightVehicles => f.write_str(say::year_for_light_vehicles()),
            Self::YearNotRequired => f.write_str(say::year_not_required()),
            Self::YearDoubted { year } => f.write_str(&say::year_doubted(year, year - 30)),
            Self::NoYearCode => f.write_str(say::no_year_code()),
        }
    }
}

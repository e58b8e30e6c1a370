//! What is wrong with what was asked, and how to mend it.

use crate::phrases as say;
use std::ops::RangeInclusive;
use thiserror::Error;

/// Why there is no answer. Each says what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum BeltError {
    #[error("{}", say::out_of_range(what, plain(*value), unit, plain(*low), plain(*high), mend))]
    OutOfRange {
        what: String,
        value: f64,
        unit: &'static str,
        low: f64,
        high: f64,
        mend: &'static str,
    },
    #[error("{}", say::pulley_count(found, most))]
    PulleyCount { found: usize, most: usize },
    #[error("{}", say::same_name(name))]
    SameName { name: String },
    #[error("{}", say::drivers(found))]
    Drivers { found: usize },
    #[error("{}", say::no_sense(crank))]
    NoSense { crank: String },
    #[error("{}", say::unknown_pulley(name))]
    UnknownPulley { name: String },
    #[error("{}", say::driver_moves(name))]
    DriverMoves { name: String },
    #[error("{}", say::stops(plain(*min_deg), plain(*max_deg)))]
    Stops { min_deg: f64, max_deg: f64 },
    #[error("{}", say::no_arm())]
    NoArm,
    #[error("{}", say::no_travel())]
    NoTravel,
    #[error("{}", say::no_length_code(code))]
    Code { code: String },
    #[error("{}", say::incomplete(what, mend))]
    Incomplete {
        what: &'static str,
        mend: &'static str,
    },
}

/// `value`, if it is a number within `range`.
pub(crate) fn within(
    what: impl Into<String>,
    value: f64,
    unit: &'static str,
    range: RangeInclusive<f64>,
    mend: &'static str,
) -> Result<f64, BeltError> {
    if range.contains(&value) {
        Ok(value)
    } else {
        Err(BeltError::OutOfRange {
            what: what.into(),
            value,
            unit,
            low: *range.start(),
            high: *range.end(),
            mend,
        })
    }
}

/// A number without the tail of digits that binary fractions leave.
fn plain(value: f64) -> f64 {
    if value.abs() < 1e9 {
        libm::round(value * 1e4) / 1e4
    } else {
        value
    }
}

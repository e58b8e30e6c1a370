//! What is wrong with what was asked, and how to mend it.

use std::ops::RangeInclusive;
use thiserror::Error;

/// Why there is no answer. Each says what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum BeltError {
    #[error("{what} is {} {unit}, outside {} to {} {unit}: {mend}", plain(*value), plain(*low), plain(*high))]
    OutOfRange {
        what: String,
        value: f64,
        unit: &'static str,
        low: f64,
        high: f64,
        mend: &'static str,
    },
    #[error("{found} pulleys make no drive: list at least two, and at most {most}")]
    PulleyCount { found: usize, most: usize },
    #[error("two pulleys are called {name}: give each a name of its own")]
    SameName { name: String },
    #[error("{found} pulleys drive: mark the crank alone with drives = true")]
    Drivers { found: usize },
    #[error(
        "it is not said which way {crank} turns: add turns = \"cw\" or \"ccw\", seen from the front"
    )]
    NoSense { crank: String },
    #[error("no pulley is called {name}: the tensioner has to name one that is listed")]
    UnknownPulley { name: String },
    #[error("{name} drives and cannot be the tensioner's pulley: name the one that moves")]
    DriverMoves { name: String },
    #[error("the tensioner's stops are {} and {}: write the lesser first, and no full turn between them", plain(*min_deg), plain(*max_deg))]
    Stops { min_deg: f64, max_deg: f64 },
    #[error("the tensioner's pulley stands on its pivot: check the pivot's place")]
    NoArm,
    #[error("the tensioner's line has no length: write two ends that differ")]
    NoTravel,
    #[error(
        "`{code}` is no length code that is read here: write it as printed, such as 6PK1285, K060505 or 505K6"
    )]
    Code { code: String },
    #[error("{what}: {mend}")]
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

//! What is wrong with what was asked, and how to mend it.

use crate::phrases as say;
use thiserror::Error;

/// Why there is no answer. Each says what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum OddsError {
    #[error("{}", say::out_of_range(.what, .value, .unit, .low, .high, .mend))]
    OutOfRange {
        what: String,
        value: f64,
        unit: &'static str,
        low: f64,
        high: f64,
        mend: &'static str,
    },
    #[error("{}", say::out_of_sequence(.what, .low, .likely, .high))]
    OutOfSequence {
        what: String,
        low: f64,
        likely: f64,
        high: f64,
    },
    #[error("{}", say::no_lines())]
    NoLines,
    #[error("{}", say::no_name(.what))]
    NoName { what: String },
    #[error("{}", say::too_many_stages(.stages, .most))]
    TooManyStages { stages: u64, most: u64 },
    #[error("{}", say::too_much_work(.draws, .stages, .most))]
    TooMuchWork {
        draws: usize,
        stages: u64,
        most: usize,
    },
    #[error("{}", say::no_such_line(.action, .line))]
    NoSuchLine { action: String, line: String },
    #[error("{}", say::more_snags_than_pieces(.snags, .pieces, .what))]
    MoreSnagsThanPieces {
        what: String,
        snags: u32,
        pieces: u32,
    },
    #[error("{}", say::empty_grid(.what))]
    EmptyGrid { what: &'static str },
    #[error("{}", say::unsound())]
    Unsound,
}

/// A number in its range; NaN is in none.
pub(crate) fn within(
    what: impl Into<String>,
    value: f64,
    unit: &'static str,
    (low, high): (f64, f64),
    mend: &'static str,
) -> Result<f64, OddsError> {
    if value >= low && value <= high {
        return Ok(value);
    }
    Err(OddsError::OutOfRange {
        what: what.into(),
        value,
        unit,
        low,
        high,
        mend,
    })
}

//! What is wrong with what was asked, and how to mend it.

use thiserror::Error;

/// Why there is no answer. Each says what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum OddsError {
    #[error("{what} is {value} {unit}, outside {low} to {high} {unit}: {mend}")]
    OutOfRange {
        what: String,
        value: f64,
        unit: &'static str,
        low: f64,
        high: f64,
        mend: &'static str,
    },
    #[error(
        "{what} runs from {low} over {likely} to {high}: write least, likely and most in that sequence"
    )]
    OutOfSequence {
        what: String,
        low: f64,
        likely: f64,
        high: f64,
    },
    #[error("no line says what is to be done: write at least one")]
    NoLines,
    #[error("{what} has no name: name it")]
    NoName { what: String },
    #[error(
        "there are {stages} stages, more than {most}: put those of one sort on one line and sum their minutes"
    )]
    TooManyStages { stages: u64, most: u64 },
    #[error(
        "{draws} draws of {stages} stages are too many to wait for: ask for at most {most} draws"
    )]
    TooMuchWork {
        draws: usize,
        stages: u64,
        most: usize,
    },
    #[error(
        "{action} names the line {line}, and there is none of that name: name one that is listed"
    )]
    NoSuchLine { action: String, line: String },
    #[error(
        "{snags} snags among {pieces} pieces of {what}: a piece counts once, write at most as many snags as pieces"
    )]
    MoreSnagsThanPieces {
        what: String,
        snags: u32,
        pieces: u32,
    },
    #[error("the grid's {what} has no ratio, or one that is not above 0: give at least one")]
    EmptyGrid { what: &'static str },
    #[error("the history holds times too far apart to reckon with: look for a slip in its minutes")]
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

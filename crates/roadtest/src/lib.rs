//! Road test: drive logs as CSV or SAE J1979 answers, and what they prove.

mod caution;
mod check;
mod clock;
mod complaint;
mod drive;
mod error;
mod heading;
mod j1979;
mod judge;
mod limits;
mod log;
mod mapping;
mod number;
mod opening;
mod picture;
mod quantity;
mod table;
mod text;
mod unit;

pub use caution::Caution;
pub use error::LogError;
pub use j1979::{Answer, code, decode_01};
pub use judge::{Check, CheckName, Conditions, Outcome, Reading, Verdict, judge};
pub use log::{CodeList, CodeReading, Column, Log, Note, Sample, StatusReading};
pub use mapping::{Mapping, Place};
pub use picture::{Picture, PictureMark};
pub use quantity::Quantity;

/// How a drive was recorded.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Kind {
    /// A table of any logger.
    Csv,
    /// Frames of SAE J1979 / ISO 15031-5, a line each: seconds, id, bytes in hex.
    J1979,
}

/// Reads a drive.
pub fn read(bytes: &[u8], kind: Option<Kind>, mapping: &Mapping) -> Result<Log, LogError> {
    let kind = kind.unwrap_or_else(|| {
        if j1979::looks_like_frames(bytes) {
            Kind::J1979
        } else {
            Kind::Csv
        }
    });
    match kind {
        Kind::Csv => table::read(bytes, mapping),
        Kind::J1979 => j1979::read(bytes),
    }
}

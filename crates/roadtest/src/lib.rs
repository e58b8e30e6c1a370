//! Road test: drive logs as CSV or SAE J1979 answers, and what they prove.
//!
//! A drive is recorded by whatever the shop has: a table of any logger ([`Kind::Csv`]), the
//! raw answers of the vehicle ([`Kind::J1979`]), or figures typed at the kerb, as a table too.
//! [`read`] makes a [`Log`] of it, with notes on every line that it could not use; [`judge`]
//! says of each check whether it held, failed, or cannot be told, why, on which readings, and
//! what to read next. What the log does not carry is never made up.
//!
//! ```
//! use roadtest::{Conditions, Mapping, Outcome, judge, read};
//!
//! let mut csv = String::from("time (s),coolant (°F),speed (mph)\n");
//! for second in 0..900 {
//!     let rise = 68.0 + 0.4 * f64::from(second);
//!     csv.push_str(&format!("{second},{:.0},40\n", rise.min(190.4)));
//! }
//! let log = read(csv.as_bytes(), None, &Mapping::default())?;
//! let verdict = judge(&log, &Conditions::default());
//! assert_eq!(verdict.verdict, Outcome::Held);
//! let opening = &verdict.checks[1].readings[0];
//! assert!((opening.value - 88.0).abs() < opening.within.unwrap_or(0.0));
//! # Ok::<(), roadtest::LogError>(())
//! ```
//!
//! # What this crate must never know
//!
//! - Orders, vehicles, maps, gates, or who drove: it is given a log and gives a verdict.
//! - How a coolant boils or what a thread bears: other calculators' results are handed in as
//!   [`Conditions`].
//! - A maker's limit that nobody gave. Common values stand in [`Conditions`]' place only where
//!   the verdict says so.
//! - Files, clocks, environment, or chance of its own.
//! - How its values are stored, sent or drawn: [`Picture`] is plain values.

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
mod phrases;
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
///
/// `kind`: found from the bytes where it is not given. `mapping`: which column is what, where
/// the headings do not say; it goes before what they say, and an empty one is fine.
///
/// A table may have any delimiter, decimal sign, encoding and units; without a unit a column
/// is taken in the standard's (°C, km/h, kPa, V), unless its height forbids that. Frames may
/// be single or multi (ISO 15765-2), of several units, with refusals and support bitmaps.
///
/// Returns a [`Log`] whose notes tell each line that could not be used.
///
/// # Errors
///
/// [`LogError`], with what is wrong and how to mend it: an empty file, no heading, no time,
/// nothing known, no row or frame that can be read, a column that is not there.
///
/// # Source
///
/// SAE J1979 / ISO 15031-5 (services 01, 03, 07, 0A) and ISO 15765-2, through other open
/// decoders; see `checks/data/j1979`.
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

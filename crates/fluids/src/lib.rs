//! The fluids besides coolant, and the battery: steps in sequence with their cautions, what
//! is owed and what has to wait for it, limits, levels, amounts, mixing.
//!
//! [`standing`] takes what was done and says what is still owed and what has to wait.
//! [`brake_reading`], [`equal_amounts`], [`level_at`], [`sorts`], [`urea`], [`washer`] and
//! [`refrigerant`] answer one question each, with a working. A published specification of
//! the vehicle maker stands above anything found here.
//!
//! ```
//! use fluids::{Before, Done, Kind, standing};
//!
//! let found = standing(&Done { kind: Kind::Brake, works: Vec::new(), second_person: false });
//! assert!(!found.closed && found.waits.contains(&Before::Road));
//! ```
//!
//! # What this crate must never know
//!
//! - Orders, vehicles, maps, or who did what: it names what has to wait, and decides nothing.
//! - A class, a grade, an amount, a temperature window or a limit that nobody gave and no
//!   standard states.
//! - Files, clocks, environment, or chance.
//! - How its values are stored or sent.

mod amounts;
mod brake;
mod caution;
mod error;
mod kind;
mod level;
mod phrases;
mod refrigerant;
mod sorts;
mod standing;
mod steps;
mod text;
mod urea;
mod washer;

pub use amounts::{Amount, Amounts, Equal, EqualVerdict, equal_amounts};
pub use brake::{BrakeReading, BrakeVerdict, BrakeVerdictKind, DotClass, Limits, brake_reading};
pub use caution::Caution;
pub use error::FluidError;
pub use kind::Kind;
pub use level::{LevelAt, LevelSeen, LevelVerdict, Levels, level_at};
pub use refrigerant::{Charge, ChargeVerdict, Refrigerant, refrigerant};
pub use sorts::{May, Sorts, SortsSay, sorts};
pub use standing::{Done, Owed, Standing, standing};
pub use steps::{Before, Step, Work};
pub use urea::{UREA_HIGH, UREA_LOW, Urea, UreaMix, urea};
pub use washer::{Washer, WasherMix, washer};

//! What the litres say, and what they may do at the hand-over.

use crate::amount::Amount;
use crate::phrases as say;
use std::fmt;

/// Less than this, missing, is within what a bottle holds between its marks; more may
/// uncover the pump or the heater.
pub const MUCH_MISSING_L: f64 = 1.0;

/// What the litres say. The level after cooling closes the fluid, not they.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum FillVerdict {
    /// Nothing missing within the measuring error, and no room for much.
    Full,
    /// More missing than the measuring error.
    Short { about_l: f64 },
    /// The measuring error hides a shortage that would matter.
    CannotTell,
    /// More went in than can fit.
    TooMuch { about_l: f64 },
}

/// What a fluid account may do with the litres at the hand-over.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum FillStanding {
    /// Nothing to say.
    Quiet,
    /// To be told, not to be stopped for.
    Warns,
    /// Much is missing and no cold level is recorded.
    Blocks,
}

/// What the litres may do at the hand-over, once it is known whether the cold level was seen.
///
/// Formula: quiet when full, or when litres can't tell and the cold level was seen; otherwise they warn;
/// they block only when short by [`MUCH_MISSING_L`] or more and no cold level is recorded.
///
/// Inputs: a verdict of [`crate::balance`]; whether the level was seen after one full
/// heating and cooling.
///
/// Returns what they may do.
///
/// # Errors
///
/// None.
///
/// # Limits
///
/// What closes the fluid is its level; this says only what the litres add.
///
/// # Source
///
/// Practice of the trade.
///
/// ```
/// use coolant::{FillStanding, FillVerdict, fill_standing};
/// let short = FillVerdict::Short { about_l: 1.4 };
/// assert_eq!(fill_standing(short, false), FillStanding::Blocks);
/// assert_eq!(fill_standing(short, true), FillStanding::Warns);
/// ```
pub fn fill_standing(verdict: FillVerdict, cold_level_seen: bool) -> FillStanding {
    match verdict {
        FillVerdict::Full => FillStanding::Quiet,
        FillVerdict::CannotTell if cold_level_seen => FillStanding::Quiet,
        FillVerdict::Short { about_l } if about_l >= MUCH_MISSING_L && !cold_level_seen => {
            FillStanding::Blocks
        }
        _ => FillStanding::Warns,
    }
}

impl fmt::Display for FillVerdict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FillVerdict::Full => f.write_str(say::full()),
            FillVerdict::Short { about_l } => f.write_str(&say::short_by(about_l)),
            FillVerdict::CannotTell => f.write_str(say::cannot_tell_from_litres()),
            FillVerdict::TooMuch { .. } => f.write_str(say::more_than_can_fit()),
        }
    }
}

/// What an amount missing, with its tolerance, says.
pub(super) fn verdict(missing: Amount) -> FillVerdict {
    let (low, high) = (
        missing.litres - missing.within_l,
        missing.litres + missing.within_l,
    );
    if low > 0.0 {
        FillVerdict::Short {
            about_l: missing.litres,
        }
    } else if high < 0.0 {
        FillVerdict::TooMuch {
            about_l: -missing.litres,
        }
    } else if high < MUCH_MISSING_L {
        FillVerdict::Full
    } else {
        FillVerdict::CannotTell
    }
}

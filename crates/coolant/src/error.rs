//! What is wrong with what was asked, and how to mend it.

use crate::mixture::Glycol;
use std::ops::RangeInclusive;
use thiserror::Error;

/// Why a calculator has no answer. Each says where, what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum CoolantError {
    #[error("{what} is {} {unit}, outside {} to {} {unit}: {mend}", plain(*value), plain(*low), plain(*high))]
    OutOfRange {
        what: &'static str,
        value: f64,
        unit: &'static str,
        low: f64,
        high: f64,
        mend: &'static str,
    },
    #[error("{glycol} glycol at {} % by mass: {}", percent(*mass_fraction), beyond(*glycol))]
    NoFreezingPoint { glycol: Glycol, mass_fraction: f64 },
    #[error(
        "{first} and {second} glycol stand in one question: ask for one of them; a mixture of both cannot be measured or worked out here"
    )]
    TwoGlycols { first: Glycol, second: Glycol },
    #[error(
        "the {scale} scale was read on {coolant} glycol: read the refractometer on its {coolant} scale"
    )]
    WrongScale { scale: Glycol, coolant: Glycol },
    #[error("the shelf is empty: name at least one of concentrate, premix, water")]
    EmptyShelf,
    #[error("nothing can be drained ({left_l} L are left of {capacity_l} L), so the strength stays at {} %: drain some first", percent(*now))]
    NothingDrained {
        left_l: f64,
        capacity_l: f64,
        now: f64,
    },
    #[error("the strongest on the shelf has {} % glycol by volume, {} % is wanted: bring something stronger", percent(*strongest), percent(*want))]
    ShelfTooWeak { strongest: f64, want: f64 },
    #[error("the weakest on the shelf has {} % glycol by volume, {} % is wanted: bring water or a weaker premix", percent(*weakest), percent(*want))]
    ShelfTooStrong { weakest: f64, want: f64 },
    #[error("after {rounds} rounds of draining and filling the strength would be {} %, not {} % by volume: drain more each time (block plug, flush) or bring something nearer to the wanted strength", percent(*reached), percent(*want))]
    TooManyRounds {
        rounds: usize,
        reached: f64,
        want: f64,
    },
    #[error(
        "nothing says how much the system holds: give what was drained, or the capacity and what stayed in"
    )]
    NoBasis,
    #[error("a line needs at least {needed} readings, {found} are there: take more")]
    TooFewReadings { found: usize, needed: usize },
    #[error(
        "reading {position} is at {minutes} min, not after the one before: put the readings in order of time"
    )]
    TimeNotRising { position: usize, minutes: f64 },
    #[error("reading {position}: {what} is {} {unit}: {mend}", plain(*value))]
    ReadingImpossible {
        position: usize,
        what: &'static str,
        value: f64,
        unit: &'static str,
        mend: &'static str,
    },
    #[error(
        "a limit in mL/h needs the headspace: give it, or give the limit as a pressure drop in a time"
    )]
    LimitNeedsHeadspace,
    #[error(
        "neither the cap's nor the system's rating is known: read it before pumping anything up"
    )]
    NoRating,
    #[error(
        "a table of freezing points needs at least two, {found} are there: copy more of the label"
    )]
    TableTooShort { found: usize },
    #[error("the table does not fall from {} % to {} %: each stronger mixture has to freeze lower, check the figures", percent(*weak), percent(*strong))]
    TableNotFalling { weak: f64, strong: f64 },
    #[error("`{point}` is no point of a table: write 50% -37C")]
    TableUnreadable { point: String },
    #[error("the readings make no rate that is a number: check their figures and units")]
    Unsteady,
}

/// `value`, if it is a number within `range`.
pub(crate) fn within(
    what: &'static str,
    value: f64,
    unit: &'static str,
    range: RangeInclusive<f64>,
    mend: &'static str,
) -> Result<f64, CoolantError> {
    if range.contains(&value) {
        Ok(value)
    } else {
        Err(CoolantError::OutOfRange {
            what,
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

/// Why nothing is said of a mixture that strong, and how to mend it.
fn beyond(glycol: Glycol) -> &'static str {
    match glycol {
        Glycol::Ethylene => {
            "past 68 % the freezing point turns back up and laboratories differ; thin it"
        }
        Glycol::Propylene => {
            "nothing is published here past 60 % by volume; it does not turn back, it thickens to a glass: thin it, or ask the coolant's maker"
        }
    }
}

fn percent(fraction: f64) -> f64 {
    libm::round(fraction * 1e3) / 10.0
}

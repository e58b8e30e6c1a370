//! What is wrong with what was asked, and how to mend it.

use crate::mixture::Glycol;
use crate::phrases as say;
use std::ops::RangeInclusive;
use thiserror::Error;

/// Why a calculator has no answer. Each says where, what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum CoolantError {
    #[error("{}", say::out_of_range(what, plain(*value), unit, plain(*low), plain(*high), mend))]
    OutOfRange {
        what: &'static str,
        value: f64,
        unit: &'static str,
        low: f64,
        high: f64,
        mend: &'static str,
    },
    #[error("{}", say::no_freezing_point(glycol, percent(*mass_fraction), beyond(*glycol)))]
    NoFreezingPoint { glycol: Glycol, mass_fraction: f64 },
    #[error("{}", say::two_glycols(first, second))]
    TwoGlycols { first: Glycol, second: Glycol },
    #[error("{}", say::wrong_scale(scale, coolant, coolant))]
    WrongScale { scale: Glycol, coolant: Glycol },
    #[error("{}", say::empty_shelf())]
    EmptyShelf,
    #[error("{}", say::nothing_drained(left_l, capacity_l, percent(*now)))]
    NothingDrained {
        left_l: f64,
        capacity_l: f64,
        now: f64,
    },
    #[error("{}", say::shelf_too_weak(percent(*strongest), percent(*want)))]
    ShelfTooWeak { strongest: f64, want: f64 },
    #[error("{}", say::shelf_too_strong(percent(*weakest), percent(*want)))]
    ShelfTooStrong { weakest: f64, want: f64 },
    #[error("{}", say::too_many_rounds(rounds, percent(*reached), percent(*want)))]
    TooManyRounds {
        rounds: usize,
        reached: f64,
        want: f64,
    },
    #[error("{}", say::no_basis())]
    NoBasis,
    #[error("{}", say::too_few_readings(needed, found))]
    TooFewReadings { found: usize, needed: usize },
    #[error("{}", say::time_not_rising(position, minutes))]
    TimeNotRising { position: usize, minutes: f64 },
    #[error("{}", say::reading_impossible(position, what, plain(*value), unit, mend))]
    ReadingImpossible {
        position: usize,
        what: &'static str,
        value: f64,
        unit: &'static str,
        mend: &'static str,
    },
    #[error("{}", say::limit_needs_headspace())]
    LimitNeedsHeadspace,
    #[error("{}", say::no_rating())]
    NoRating,
    #[error("{}", say::table_too_short(found))]
    TableTooShort { found: usize },
    #[error("{}", say::table_not_falling(percent(*weak), percent(*strong)))]
    TableNotFalling { weak: f64, strong: f64 },
    #[error("{}", say::table_unreadable(point))]
    TableUnreadable { point: String },
    #[error("{}", say::unsteady())]
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
        Glycol::Ethylene => say::ethylene_turns_back(),
        Glycol::Propylene => say::propylene_not_published(),
    }
}

fn percent(fraction: f64) -> f64 {
    libm::round(fraction * 1e3) / 10.0
}

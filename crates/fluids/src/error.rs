//! What is wrong with what was asked, and how to mend it.

use crate::kind::Kind;
use crate::phrases as say;
use std::ops::RangeInclusive;
use thiserror::Error;

/// Why there is no answer. Each says what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FluidError {
    #[error("{}", say::out_of_range(what, plain(*value), unit, plain(*low), plain(*high), mend))]
    OutOfRange {
        what: &'static str,
        value: f64,
        unit: &'static str,
        low: f64,
        high: f64,
        mend: &'static str,
    },
    #[error("{}", say::not_chemistry(kind, kind.instead()))]
    NotChemistry { kind: Kind },
    #[error("{}", say::incomplete(what, mend))]
    Incomplete {
        what: &'static str,
        mend: &'static str,
    },
    #[error("{}", say::more_than_it_holds(what, plain(*holds_l), plain(*left_l)))]
    MoreThanItHolds {
        what: &'static str,
        holds_l: f64,
        left_l: f64,
    },
    #[error("{}", say::too_weak(plain(*want), plain(*bottle)))]
    TooWeak { want: f64, bottle: f64 },
    #[error("{}", say::label_not_falling(plain(*weak), plain(*strong)))]
    LabelNotFalling { weak: f64, strong: f64 },
}

/// `value`, if it is a number within `range`.
pub(crate) fn within(
    what: &'static str,
    value: f64,
    unit: &'static str,
    range: RangeInclusive<f64>,
    mend: &'static str,
) -> Result<f64, FluidError> {
    if range.contains(&value) {
        Ok(value)
    } else {
        Err(FluidError::OutOfRange {
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

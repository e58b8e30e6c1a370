//! What is wrong with what was asked, and how to mend it.

use crate::kind::Kind;
use std::ops::RangeInclusive;
use thiserror::Error;

/// Why there is no answer. Each says what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Error)]
pub enum FluidError {
    #[error("{what} is {} {unit}, outside {} to {} {unit}: {mend}", plain(*value), plain(*low), plain(*high))]
    OutOfRange {
        what: &'static str,
        value: f64,
        unit: &'static str,
        low: f64,
        high: f64,
        mend: &'static str,
    },
    #[error("{kind}: no amounts are reckoned for mixing two of them, that is no sum: {}", kind.instead())]
    NotChemistry { kind: Kind },
    #[error("{what}: {mend}")]
    Incomplete {
        what: &'static str,
        mend: &'static str,
    },
    #[error("{what} holds {} L and {} L are left: no more can be left than it holds, check both", plain(*holds_l), plain(*left_l))]
    MoreThanItHolds {
        what: &'static str,
        holds_l: f64,
        left_l: f64,
    },
    #[error("{} % cannot be reached with {} % in the bottle: bring something stronger, or drain first", plain(*want), plain(*bottle))]
    TooWeak { want: f64, bottle: f64 },
    #[error("the label's points do not fall from {} % to {} %: each stronger mixture has to freeze lower, check the figures", plain(*weak), plain(*strong))]
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

//! A rule or a figure that makes no sense.

use rust_decimal::Decimal;
use thiserror::Error;

/// Where, what, and how to mend it.
#[derive(Debug, Clone, PartialEq, Eq, Error)]
#[error("{at}: {what}; {how}")]
pub struct Fault {
    /// Where.
    pub at: String,
    /// What is wrong.
    pub what: String,
    /// How to mend it.
    pub how: String,
}

impl Fault {
    pub(crate) fn new(
        at: impl Into<String>,
        what: impl Into<String>,
        how: impl Into<String>,
    ) -> Fault {
        Fault {
            at: at.into(),
            what: what.into(),
            how: how.into(),
        }
    }
}

/// The most a single price, rate or amount may be: what is above is a slip of the finger.
pub const MOST: Decimal = Decimal::from_parts(1_000_000_000, 0, 0, false, 0);

/// An amount of money from nought to [`MOST`].
pub(crate) fn amount(at: &str, amount: Decimal) -> Result<(), Fault> {
    if amount < Decimal::ZERO {
        return Err(Fault::new(
            at,
            format!("{amount} is below nought"),
            "write an amount of nought or more",
        ));
    }
    if amount >= MOST {
        return Err(Fault::new(
            at,
            format!("{amount} is too large"),
            "look for a digit too many",
        ));
    }
    Ok(())
}

/// A per cent from nought to `most`.
pub(crate) fn percent(at: &str, percent: Decimal, most: u32) -> Result<(), Fault> {
    if percent < Decimal::ZERO {
        return Err(Fault::new(
            at,
            format!("{percent} % is below nought"),
            "write a per cent of nought or more",
        ));
    }
    if percent > Decimal::from(most) {
        return Err(Fault::new(
            at,
            format!("{percent} % is too much"),
            format!("write at most {most} %, as 7.5 for 7.5 %"),
        ));
    }
    Ok(())
}

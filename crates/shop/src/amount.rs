//! A figure of a view: a sum of money, or how many.

use rust_decimal::Decimal;
use serde::Serialize;
use std::fmt;
use utoipa::ToSchema;

/// A sum or a count. A program reads it as it was reckoned, `1440.50`; a person reads it as what is
/// spoken writes it, `1,440.50` or `1.440,50`. So it is written out for people by `Display` alone,
/// and for a field to be typed over by [`Amount::to_type`].
///
/// ```
/// use phrases::{Language, speaking};
/// let sum = shop::say::money("1440.5".parse().unwrap(), 2);
/// assert_eq!(sum.exact(), "1440.50");
/// assert_eq!(sum.to_string(), "1,440.50");
/// assert_eq!(speaking(Language::German, || sum.to_string()), "1.440,50");
/// assert_eq!(speaking(Language::German, || sum.to_type()), "1440,50");
/// ```
#[derive(Debug, Clone, Default, PartialEq, Eq, Serialize, ToSchema)]
#[serde(transparent)]
pub struct Amount(String);

impl Amount {
    /// A figure as the program writes it. What is no number, such as that a sum is too large, stays
    /// as it is.
    #[must_use]
    pub fn new(plain: impl Into<String>) -> Self {
        Self(plain.into())
    }

    /// As it was reckoned, with a point, for programs and papers.
    #[must_use]
    pub fn exact(&self) -> &str {
        &self.0
    }

    /// As it stands in a field to be typed over.
    #[must_use]
    pub fn to_type(&self) -> String {
        phrases::number_to_type(&self.0)
    }

    /// Whether it is below nought.
    #[must_use]
    pub fn is_below_nought(&self) -> bool {
        self.0.starts_with('-')
    }

    /// The same without its minus, if it is below nought.
    #[must_use]
    pub fn below_nought(&self) -> Option<Self> {
        self.0.strip_prefix('-').map(Self::new)
    }

    /// The same below nought.
    #[must_use]
    pub fn turned_round(&self) -> Self {
        self.below_nought()
            .unwrap_or_else(|| Self(format!("-{}", self.0)))
    }

    /// As a number; nothing where it is none.
    #[must_use]
    pub fn number(&self) -> Option<Decimal> {
        self.0.parse().ok()
    }
}

impl fmt::Display for Amount {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&phrases::number(&self.0))
    }
}

impl From<Decimal> for Amount {
    fn from(number: Decimal) -> Self {
        Self(number.to_string())
    }
}

impl PartialEq<str> for Amount {
    fn eq(&self, other: &str) -> bool {
        self.0 == other
    }
}

impl PartialEq<&str> for Amount {
    fn eq(&self, other: &&str) -> bool {
        self.0 == *other
    }
}

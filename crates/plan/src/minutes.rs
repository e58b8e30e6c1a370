//! Time in whole tenths of a minute, in which all costs of a plan are counted.

use std::fmt;
use std::iter::Sum;
use std::ops::{Add, AddAssign};

/// A time, or a cost expressed as time, in whole tenths of a minute.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash, Default)]
pub struct Minutes(u32);

impl Minutes {
    /// So many tenths of a minute.
    ///
    /// ```
    /// assert_eq!(plan::Minutes::tenths(145).to_string(), "14.5");
    /// ```
    #[must_use]
    pub const fn tenths(tenths: u32) -> Self {
        Self(tenths)
    }

    /// How many tenths of a minute.
    #[must_use]
    pub const fn in_tenths(self) -> u32 {
        self.0
    }

    /// So many times this.
    #[must_use]
    pub fn times(self, count: usize) -> Self {
        Self(
            self.0
                .saturating_mul(u32::try_from(count).unwrap_or(u32::MAX)),
        )
    }
}

impl Add for Minutes {
    type Output = Self;

    fn add(self, more: Self) -> Self {
        Self(self.0.saturating_add(more.0))
    }
}

impl AddAssign for Minutes {
    fn add_assign(&mut self, more: Self) {
        *self = *self + more;
    }
}

impl Sum for Minutes {
    fn sum<I: Iterator<Item = Self>>(times: I) -> Self {
        times.fold(Self::default(), Add::add)
    }
}

impl fmt::Display for Minutes {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self.0 % 10 {
            0 => write!(f, "{}", self.0 / 10),
            tenth => write!(f, "{}.{tenth}", self.0 / 10),
        }
    }
}

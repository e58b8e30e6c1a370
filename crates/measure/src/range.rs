//! A low, a middle and a high value of one thing.

use thiserror::Error;

/// A value that is known only between limits: `low <= mid <= high`.
///
/// ```
/// use measure::Range;
///
/// let friction = Range::new(0.12, 0.15, 0.18)?;
/// assert_eq!(friction.map(|mu| mu * 2.0)?.high(), 0.36);
/// assert!(Range::new(3, 2, 1).is_err());
/// # Ok::<(), measure::OutOfOrder>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range<T> {
    low: T,
    mid: T,
    high: T,
}

/// The three values of a range do not rise, or one of them is not a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Error)]
#[error("{}", crate::phrases::out_of_order())]
pub struct OutOfOrder;

impl<T: Copy + PartialOrd> Range<T> {
    /// A range from its three values.
    ///
    /// # Errors
    ///
    /// [`OutOfOrder`] where they do not rise.
    pub fn new(low: T, mid: T, high: T) -> Result<Range<T>, OutOfOrder> {
        if low <= mid && mid <= high {
            Ok(Range { low, mid, high })
        } else {
            Err(OutOfOrder)
        }
    }

    /// The least value.
    pub fn low(self) -> T {
        self.low
    }

    /// The value to expect.
    pub fn mid(self) -> T {
        self.mid
    }

    /// The greatest value.
    pub fn high(self) -> T {
        self.high
    }

    /// The range of `f`, which must rise or fall throughout: the ends are put in order.
    ///
    /// # Errors
    ///
    /// [`OutOfOrder`] where `f` of the middle is not between `f` of the ends.
    pub fn map<U: Copy + PartialOrd>(self, f: impl Fn(T) -> U) -> Result<Range<U>, OutOfOrder> {
        let (low, mid, high) = (f(self.low), f(self.mid), f(self.high));
        Range::new(low, mid, high).or_else(|_| Range::new(high, mid, low))
    }
}

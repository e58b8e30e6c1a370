//! Exact conversion factors as fractions of whole numbers.

use rust_decimal::Decimal;

/// An exact factor: a numerator over a denominator, both positive.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Factor {
    numerator: i128,
    denominator: i128,
}

impl Factor {
    pub(crate) const fn new(numerator: i64, denominator: i64) -> Factor {
        assert!(numerator > 0 && denominator > 0);
        // Widening only; `From` is not usable in a const fn.
        Factor {
            numerator: numerator as i128,
            denominator: denominator as i128,
        }
    }

    /// The factor that first applies `self` and then undoes `other`, in lowest terms.
    pub(crate) fn over(self, other: Factor) -> Factor {
        // Both halves are reduced first, so that the products stay well inside i128:
        // every factor of the table has parts below 2^63.
        let numerator = self.numerator * other.denominator;
        let denominator = self.denominator * other.numerator;
        let divisor = greatest_common_divisor(numerator, denominator);
        Factor {
            numerator: numerator / divisor,
            denominator: denominator / divisor,
        }
    }

    /// `number` times this factor: exact where the result has at most 28 digits,
    /// otherwise rounded to them. `None` where it is too large to hold.
    pub(crate) fn times(self, number: Decimal) -> Option<Decimal> {
        let numerator = Decimal::try_from_i128_with_scale(self.numerator, 0).ok()?;
        let denominator = Decimal::try_from_i128_with_scale(self.denominator, 0).ok()?;
        // Multiplying first keeps 60 km/h an exact 50/3 m/s for as long as possible;
        // a long number leaves no room for that and is divided first.
        match number.checked_mul(numerator) {
            Some(product) => product.checked_div(denominator),
            None => numerator.checked_div(denominator)?.checked_mul(number),
        }
    }
}

fn greatest_common_divisor(a: i128, b: i128) -> i128 {
    if b == 0 {
        a
    } else {
        greatest_common_divisor(b, a % b)
    }
}

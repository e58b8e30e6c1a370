//! How far a sum may pass what was agreed before the payer is asked again.

use crate::totals::rounded;
use rust_decimal::Decimal;

/// What a place's rules let pass without asking again. None is let pass by default.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Default)]
pub struct Leeway {
    /// Per cent of the sum agreed to.
    pub percent: Decimal,
    /// At least so much, where the per cent come to less.
    pub least: Decimal,
    /// At most so much, whatever the per cent come to.
    pub most: Option<Decimal>,
}

impl Leeway {
    /// The largest sum that may be charged without asking again: the sum agreed to, and
    /// the larger of the per cent of it and the least amount, but no more than the most.
    ///
    /// # Limits
    /// A sum agreed to of nought or less is let pass by nothing.
    ///
    /// ```
    /// use price::Leeway;
    /// let rule = Leeway { percent: 10.into(), least: 10.into(), most: Some(50.into()) };
    /// assert_eq!(rule.limit(400.into(), 2).to_string(), "440.00");
    /// assert_eq!(Leeway::default().limit(400.into(), 2).to_string(), "400.00");
    /// ```
    #[must_use]
    pub fn limit(&self, agreed: Decimal, minor_digits: u32) -> Decimal {
        if agreed <= Decimal::ZERO {
            return rounded(agreed, minor_digits);
        }
        let share = self
            .percent
            .checked_div(Decimal::ONE_HUNDRED)
            .and_then(|share| agreed.checked_mul(share))
            .unwrap_or_default();
        let further = share.max(self.least);
        let further = self.most.map_or(further, |most| further.min(most));
        // Down to the coin: rounding never lets more pass than the rule says.
        let further = further
            .max(Decimal::ZERO)
            .trunc_with_scale(minor_digits.min(28));
        rounded(agreed.saturating_add(further), minor_digits)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn nothing_is_let_pass_by_default_and_never_more_than_the_most(
            agreed in 1i64..100_000_000, percent in 0i64..10_000, least in 0i64..100_000, most in 0i64..100_000,
        ) {
            let agreed = Decimal::new(agreed, 2);
            prop_assert_eq!(Leeway::default().limit(agreed, 2), agreed);
            let rule = Leeway {
                percent: Decimal::new(percent, 2),
                least: Decimal::new(least, 2),
                most: Some(Decimal::new(most, 2)),
            };
            let limit = rule.limit(agreed, 2);
            prop_assert!(limit >= agreed);
            prop_assert!(limit <= agreed + Decimal::new(most, 2));
        }
    }
}

//! A sum shared out so that the shares add up to it.

use crate::round::Round;
use rust_decimal::Decimal;

/// Shares a sum out in proportion to weights, in whole coins; what is left over goes a coin
/// each to those that lost most by rounding, the first of equals first.
///
/// The shares add up to the sum exactly. Where every weight is nought, the first gets it all.
///
/// # Limits
/// Weights of both signs are taken by their size: a share never has the other sign than the
/// sum.
///
/// ```
/// use price::apportion;
/// let shares = apportion(10.into(), &[1.into(), 1.into(), 1.into()], 2);
/// let shares: Vec<_> = shares.iter().map(ToString::to_string).collect();
/// assert_eq!(shares, ["3.34", "3.33", "3.33"]);
/// ```
#[must_use]
pub fn apportion(sum: Decimal, weights: &[Decimal], minor_digits: u32) -> Vec<Decimal> {
    let whole = weights.iter().fold(Decimal::ZERO, |all, weight| {
        all.saturating_add(weight.abs())
    });
    let mut exact: Vec<Decimal> = weights
        .iter()
        .map(|weight| {
            sum.checked_mul(weight.abs())
                .and_then(|part| part.checked_div(whole))
                .unwrap_or_default()
        })
        .collect();
    if whole.is_zero()
        && let Some(first) = exact.first_mut()
    {
        *first = sum;
    }
    let mut shares: Vec<Decimal> = exact
        .iter()
        .map(|part| Round::Down.to_digits(*part, minor_digits))
        .collect();
    let given = shares
        .iter()
        .fold(Decimal::ZERO, |all, share| all.saturating_add(*share));
    let mut left = sum.saturating_sub(given);
    let mut sequence: Vec<usize> = (0..shares.len()).collect();
    sequence.sort_by_key(|nth| {
        let lost = exact[*nth].saturating_sub(shares[*nth]).abs();
        (std::cmp::Reverse(lost), *nth)
    });
    let coin = Decimal::new(1, minor_digits.min(28));
    for nth in sequence {
        if left.is_zero() {
            break;
        }
        let step = if left.abs() < coin {
            left
        } else if left < Decimal::ZERO {
            -coin
        } else {
            coin
        };
        shares[nth] = shares[nth].saturating_add(step);
        left = left.saturating_sub(step);
    }
    shares
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn shares_add_up_and_stay_within_a_coin(
            cents in -10_000_000i64..10_000_000,
            weights in proptest::collection::vec(-100_000i64..100_000, 1..12),
            digits in 0u32..4,
        ) {
            let sum = Decimal::new(cents, digits);
            let weights: Vec<Decimal> = weights.into_iter().map(|weight| Decimal::new(weight, 2)).collect();
            let shares = apportion(sum, &weights, digits);
            prop_assert_eq!(shares.iter().sum::<Decimal>(), sum);
            let whole: Decimal = weights.iter().map(Decimal::abs).sum();
            for (share, weight) in shares.iter().zip(&weights) {
                prop_assert!((share * sum).is_zero() || share.is_sign_negative() == sum.is_sign_negative());
                if !whole.is_zero() {
                    let exact = sum * weight.abs() / whole;
                    prop_assert!((share - exact).abs() <= Decimal::new(1, digits), "{share} {exact}");
                }
            }
        }
    }

    #[test]
    fn nothing_to_share_by_goes_to_the_first_and_none_to_nobody() {
        let zero = Decimal::ZERO;
        assert_eq!(apportion(5.into(), &[zero, zero], 2), [5.into(), zero]);
        assert!(apportion(5.into(), &[], 2).is_empty());
    }
}

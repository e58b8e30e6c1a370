//! Exact money.

use crate::number::{NumberTrouble, Place, place, read_number};
use crate::phrases as say;
use rust_decimal::{Decimal, RoundingStrategy};
use std::cmp::Ordering;
use std::fmt;
use thiserror::Error;

/// A currency: its three-letter code and how many decimals its smallest unit has.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Currency {
    code: [u8; 3],
    minor_digits: u32,
}

/// An exact amount in one currency.
///
/// Nothing rounds it but [`Money::round`], which names its rule each time. Two
/// amounts in different currencies are neither equal nor in order.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Money {
    amount: Decimal,
    currency: Currency,
}

/// The rule by which an amount is brought to its currency's smallest unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Rounding {
    /// Halves away from zero: 0.125 to 0.13, -0.125 to -0.13.
    HalfUp,
    /// Halves to the even neighbour: 0.125 to 0.12, 0.135 to 0.14.
    HalfEven,
}

/// Why an amount cannot be read or worked out.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum MoneyError {
    #[error("{}", say::bad_code(.found))]
    BadCode { found: String },
    #[error("{}", say::no_amount())]
    Empty,
    #[error(transparent)]
    Number(#[from] NumberTrouble),
    #[error("{}", say::after_amount(.at.column, .found, .currency))]
    AfterAmount {
        at: Place,
        found: String,
        currency: Currency,
    },
    #[error("{}", say::too_many_decimals(.at.column, .found, .currency.minor_digits(), .currency))]
    TooManyDecimals {
        at: Place,
        found: String,
        currency: Currency,
    },
    #[error("{}", say::other_currency(.left, .right))]
    OtherCurrency { left: Currency, right: Currency },
    #[error("{}", say::amount_too_large())]
    TooLarge,
}

/// ISO 4217 codes whose smallest unit is not a hundredth. Funds codes and codes
/// without a minor unit (metals, testing) are left out.
const OTHER_MINOR_DIGITS: [(&str, u32); 23] = [
    ("BHD", 3),
    ("BIF", 0),
    ("CLP", 0),
    ("DJF", 0),
    ("GNF", 0),
    ("IQD", 3),
    ("ISK", 0),
    ("JOD", 3),
    ("JPY", 0),
    ("KMF", 0),
    ("KRW", 0),
    ("KWD", 3),
    ("LYD", 3),
    ("OMR", 3),
    ("PYG", 0),
    ("RWF", 0),
    ("TND", 3),
    ("UGX", 0),
    ("VND", 0),
    ("VUV", 0),
    ("XAF", 0),
    ("XOF", 0),
    ("XPF", 0),
];

impl Currency {
    /// The currency of a three-letter code, in large or small letters. A code that
    /// ISO 4217 does not list with other decimals has two.
    ///
    /// # Errors
    ///
    /// [`MoneyError::BadCode`] where the code is not three letters.
    ///
    /// ```
    /// use measure::Currency;
    /// assert_eq!(Currency::new("usd")?.minor_digits(), 2);
    /// assert_eq!(Currency::new("JPY")?.minor_digits(), 0);
    /// assert!(Currency::new("dollar").is_err());
    /// # Ok::<(), measure::MoneyError>(())
    /// ```
    pub fn new(code: &str) -> Result<Currency, MoneyError> {
        let upper = code.trim().to_ascii_uppercase();
        let letters: Result<[u8; 3], _> = upper.as_bytes().try_into();
        match letters {
            Ok(code) if code.iter().all(u8::is_ascii_uppercase) => {
                let other = OTHER_MINOR_DIGITS.iter().find(|(known, _)| *known == upper);
                Ok(Currency {
                    code,
                    minor_digits: other.map_or(2, |(_, digits)| *digits),
                })
            }
            _ => Err(MoneyError::BadCode {
                found: code.to_owned(),
            }),
        }
    }

    /// The code, three capital letters.
    pub fn code(&self) -> &str {
        std::str::from_utf8(&self.code).expect("only capital ASCII letters are let in")
    }

    /// Decimals of the smallest unit.
    pub fn minor_digits(self) -> u32 {
        self.minor_digits
    }
}

impl fmt::Display for Currency {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(self.code())
    }
}

impl Money {
    /// An amount as it is, with whatever decimals it has.
    pub fn new(amount: Decimal, currency: Currency) -> Money {
        Money { amount, currency }
    }

    /// Nothing, in this currency.
    pub fn zero(currency: Currency) -> Money {
        Money {
            amount: Decimal::ZERO,
            currency,
        }
    }

    /// Reads an amount as people write it: `904.40`, `904,40`, `1,904.40`, `-5`,
    /// with or without the currency's code behind it.
    ///
    /// # Errors
    ///
    /// [`MoneyError`] where it is not one amount with at most the currency's decimals.
    ///
    /// ```
    /// use measure::{Currency, Money};
    /// let usd = Currency::new("USD")?;
    /// assert_eq!(Money::read("904,40", usd)?, Money::read("904.40 USD", usd)?);
    /// assert!(Money::read("904.405", usd).is_err());
    /// # Ok::<(), measure::MoneyError>(())
    /// ```
    pub fn read(text: &str, currency: Currency) -> Result<Money, MoneyError> {
        if text.trim().is_empty() {
            return Err(MoneyError::Empty);
        }
        let (amount, end) = read_number(text)?;
        let rest = text[end..].trim();
        if !rest.is_empty() && !rest.eq_ignore_ascii_case(currency.code()) {
            let start = text.trim_end().len() - rest.len();
            let at = place(text, start, start + rest.len());
            return Err(MoneyError::AfterAmount {
                at,
                found: rest.to_owned(),
                currency,
            });
        }
        if amount.normalize().scale() > currency.minor_digits {
            let found = text[..end].trim().to_owned();
            let at = place(text, end - found.len(), end);
            return Err(MoneyError::TooManyDecimals {
                at,
                found,
                currency,
            });
        }
        Ok(Money { amount, currency })
    }

    /// The exact amount.
    pub fn amount(self) -> Decimal {
        self.amount
    }

    /// Its currency.
    pub fn currency(self) -> Currency {
        self.currency
    }

    /// Whether nothing is owed either way.
    pub fn is_zero(self) -> bool {
        self.amount.is_zero()
    }

    /// The sum, exact.
    ///
    /// # Errors
    ///
    /// [`MoneyError::OtherCurrency`], or [`MoneyError::TooLarge`] where the sum has
    /// more digits than can be held.
    pub fn plus(self, other: Money) -> Result<Money, MoneyError> {
        self.same_currency(other)?;
        exact_sum(self.amount, other.amount).map(|amount| Money { amount, ..self })
    }

    /// The difference, exact.
    ///
    /// # Errors
    ///
    /// As [`Money::plus`].
    pub fn minus(self, other: Money) -> Result<Money, MoneyError> {
        self.plus(other.negated())
    }

    /// The sum of many amounts, exact.
    ///
    /// # Errors
    ///
    /// As [`Money::plus`].
    pub fn sum(
        currency: Currency,
        amounts: impl IntoIterator<Item = Money>,
    ) -> Result<Money, MoneyError> {
        amounts
            .into_iter()
            .try_fold(Money::zero(currency), Money::plus)
    }

    /// The amount taken `factor` times, exact and unrounded.
    ///
    /// # Errors
    ///
    /// [`MoneyError::TooLarge`] where the product has more digits than can be held.
    ///
    /// ```
    /// use measure::{Currency, Decimal, Money, Rounding};
    /// let rate = Money::read("120", Currency::new("USD")?)?;
    /// let labour = rate.times(Decimal::new(3667, 3))?;
    /// assert_eq!(labour.round(Rounding::HalfUp).to_string(), "440.04");
    /// # Ok::<(), measure::MoneyError>(())
    /// ```
    pub fn times(self, factor: Decimal) -> Result<Money, MoneyError> {
        exact_product(self.amount, factor).map(|amount| Money { amount, ..self })
    }

    /// The same amount the other way.
    pub fn negated(self) -> Money {
        Money {
            amount: -self.amount,
            ..self
        }
    }

    /// Brought to the currency's smallest unit by the named rule.
    ///
    /// ```
    /// use measure::{Currency, Decimal, Money, Rounding};
    /// let money = Money::new(Decimal::new(2_345, 3), Currency::new("USD")?);
    /// assert_eq!(money.round(Rounding::HalfUp).to_string(), "2.35");
    /// assert_eq!(money.round(Rounding::HalfEven).to_string(), "2.34");
    /// # Ok::<(), measure::MoneyError>(())
    /// ```
    pub fn round(self, rounding: Rounding) -> Money {
        let strategy = match rounding {
            Rounding::HalfUp => RoundingStrategy::MidpointAwayFromZero,
            Rounding::HalfEven => RoundingStrategy::MidpointNearestEven,
        };
        let amount = self
            .amount
            .round_dp_with_strategy(self.currency.minor_digits, strategy);
        Money { amount, ..self }
    }

    /// Whether it already is a whole number of the currency's smallest units.
    pub fn is_round(self) -> bool {
        self.amount.normalize().scale() <= self.currency.minor_digits
    }

    /// With its code: `904.40 USD`.
    pub fn with_code(self) -> String {
        format!("{self}\u{a0}{}", self.currency)
    }

    fn same_currency(self, other: Money) -> Result<(), MoneyError> {
        if self.currency == other.currency {
            Ok(())
        } else {
            Err(MoneyError::OtherCurrency {
                left: self.currency,
                right: other.currency,
            })
        }
    }
}

/// The sum, or an error where it would have to be rounded to fit.
fn exact_sum(left: Decimal, right: Decimal) -> Result<Decimal, MoneyError> {
    let (left, right) = (left.normalize(), right.normalize());
    let sum = left.checked_add(right).ok_or(MoneyError::TooLarge)?;
    let exact = sum.scale() >= left.scale().max(right.scale());
    if exact || sum.is_zero() {
        Ok(sum)
    } else {
        Err(MoneyError::TooLarge)
    }
}

/// The product, or an error where it would have to be rounded to fit.
fn exact_product(left: Decimal, right: Decimal) -> Result<Decimal, MoneyError> {
    let (left, right) = (left.normalize(), right.normalize());
    let digits = left
        .mantissa()
        .checked_mul(right.mantissa())
        .ok_or(MoneyError::TooLarge)?;
    let scale = left.scale() + right.scale();
    Decimal::try_from_i128_with_scale(digits, scale).map_err(|_| MoneyError::TooLarge)
}

impl PartialOrd for Money {
    fn partial_cmp(&self, other: &Money) -> Option<Ordering> {
        (self.currency == other.currency).then(|| self.amount.cmp(&other.amount))
    }
}

/// At least the currency's decimals, and all that the amount has.
impl fmt::Display for Money {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let amount = self.amount.normalize();
        let decimals = amount.scale().max(self.currency.minor_digits);
        write!(f, "{amount:.*}", usize::try_from(decimals).unwrap_or(28))
    }
}

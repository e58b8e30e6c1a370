//! Jobs at a fixed price that the shop keeps, such as an oil service.

use crate::entry::{Charge, Entry, Label, LineRef, Payer};
use crate::fault::{Fault, Wrong, amount};
use crate::phrases as say;
use crate::totals::rounded;
use crate::working::number;
use measure::{Line, Source, Working};
use rust_decimal::Decimal;

/// A part of a fixed-price job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobPart {
    /// What it is called; the words stand elsewhere.
    pub name: Label,
    /// How many.
    pub quantity: Decimal,
    /// What one counts for within the price.
    pub each: Decimal,
}

/// A job at a fixed price.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct FixedJob {
    /// What it is called; the words stand elsewhere.
    pub name: Label,
    /// All of it, parts and labour.
    pub price: Decimal,
    /// The parts that go with it.
    pub parts: Vec<JobPart>,
    /// Whether it is charged as one line, its parts not told apart.
    pub in_one: bool,
}

impl FixedJob {
    /// What its parts come to.
    fn of_parts(&self, minor_digits: u32) -> Option<Decimal> {
        self.parts.iter().try_fold(Decimal::ZERO, |all, part| {
            let sum = part.quantity.checked_mul(part.each)?;
            all.checked_add(rounded(sum, minor_digits))
        })
    }

    /// Refuses a job that makes no sense.
    ///
    /// # Errors
    /// [`Fault`], the first there is.
    pub fn check(&self, minor_digits: u32) -> Result<(), Fault> {
        amount("price of the job", self.price)?;
        if self.price.is_zero() {
            return Err(Fault::new("price of the job", Wrong::NoPrice));
        }
        for (nth, part) in self.parts.iter().enumerate() {
            let at = format!("part {}", nth.saturating_add(1));
            if part.quantity <= Decimal::ZERO {
                return Err(Fault::new(at, Wrong::NoneGoesIn));
            }
            amount(&at, part.each)?;
            amount(&at, part.quantity)?;
        }
        let parts = self.of_parts(minor_digits);
        match parts {
            Some(parts) if parts <= self.price => Ok(()),
            _ => Err(Fault::new(
                "price of the job",
                Wrong::PartsComeToMore {
                    parts,
                    price: self.price,
                },
            )),
        }
    }

    /// Its entries, which add up to its price: the parts, and what is left as labour; or one
    /// line, where it is charged in one.
    ///
    /// # Errors
    /// [`Fault`], as [`FixedJob::check`].
    ///
    /// ```
    /// use price::{FixedJob, JobPart, Payer, amount};
    /// let job = FixedJob {
    ///     name: [1; 32],
    ///     price: "89.90".parse().unwrap(),
    ///     parts: vec![JobPart { name: [2; 32], quantity: "4.5".parse().unwrap(), each: 8.into() }],
    ///     in_one: false,
    /// };
    /// let entries = job.entries(None, Payer::Customer, 2).unwrap();
    /// let sums: Vec<_> = entries.iter().map(|entry| amount(entry, 2).unwrap().to_string()).collect();
    /// assert_eq!(sums, ["53.90", "36.00"]);
    /// ```
    pub fn entries(
        &self,
        line: Option<LineRef>,
        payer: Payer,
        minor_digits: u32,
    ) -> Result<Vec<Entry>, Fault> {
        self.check(minor_digits)?;
        let entry = |charge, label, quantity, each| Entry {
            line: line.clone(),
            charge,
            label: Some(label),
            quantity,
            each,
            payer,
            less: Vec::new(),
        };
        if self.in_one {
            return Ok(vec![entry(
                Charge::Fee,
                self.name,
                Decimal::ONE,
                self.price,
            )]);
        }
        let rest = self
            .price
            .saturating_sub(self.of_parts(minor_digits).unwrap_or_default());
        let parts = self.parts.iter();
        let parts = parts.map(|part| entry(Charge::Part, part.name, part.quantity, part.each));
        let labour =
            (!rest.is_zero()).then(|| entry(Charge::Labour, self.name, Decimal::ONE, rest));
        Ok(labour.into_iter().chain(parts).collect())
    }

    /// How its price is made up.
    #[must_use]
    pub fn working(&self, minor_digits: u32) -> Working {
        let parts = self.of_parts(minor_digits).unwrap_or_default();
        Working::new(say::fixed_price_job()).line(
            Line::new(say::labour_within_it(), Source::given())
                .formula(say::labour(), say::price_less_its_parts())
                .input(say::price_of_the_job(), number(self.price))
                .input(say::its_parts(), number(parts))
                .value(number(self.price.saturating_sub(parts))),
        )
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::totals::amount as amount_of;
    use proptest::prelude::*;

    proptest! {
        #[test]
        fn the_entries_add_up_to_the_price(
            price in 1i64..1_000_000, in_one in any::<bool>(),
            parts in proptest::collection::vec((1i64..100_000, 0i64..100_000), 0..6),
        ) {
            let job = FixedJob {
                name: [1; 32],
                price: Decimal::new(price, 2),
                parts: parts.into_iter().map(|(quantity, each)| JobPart {
                    name: [2; 32],
                    quantity: Decimal::new(quantity, 3),
                    each: Decimal::new(each, 2),
                }).collect(),
                in_one,
            };
            match job.entries(None, Payer::Customer, 2) {
                Ok(entries) => {
                    let sum: Decimal = entries.iter().map(|entry| amount_of(entry, 2).unwrap()).sum();
                    prop_assert_eq!(sum, job.price);
                }
                Err(fault) => prop_assert!(fault.to_string().contains("its parts come to"), "{}", fault),
            }
        }
    }
}

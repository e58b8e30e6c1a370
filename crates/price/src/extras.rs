//! What goes beside labour and parts: shop supplies, disposal, and cores.

use crate::entry::{Charge, Entry, Less};
use crate::fault::{Fault, Wrong, amount, percent};
use crate::phrases as say;
use crate::totals::{TooLarge, amount as amount_of, rounded, sum};
use crate::working::number;
use measure::{Line, Source, Working};
use rust_decimal::Decimal;

/// Shop supplies, in per cent of what they go with.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Supplies {
    /// Per cent.
    pub percent: Decimal,
    /// The sorts of charge they are reckoned from.
    pub of: Vec<Charge>,
    /// At most so much on an order.
    pub most: Option<Decimal>,
}

/// What it costs to get rid of a piece or a litre of something.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Disposal {
    /// Of what: oil, a tyre, a battery.
    pub of: String,
    /// For one.
    pub each: Decimal,
}

/// A sum and how it was found.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Found {
    /// The sum, in whole coins.
    pub sum: Decimal,
    /// How it was found.
    pub working: Working,
}

impl Supplies {
    /// Refuses what makes no sense.
    ///
    /// # Errors
    /// [`Fault`].
    pub fn check(&self) -> Result<(), Fault> {
        let at = "shop supplies";
        percent(at, self.percent, 100)?;
        if self.of.is_empty() {
            return Err(Fault::new(at, Wrong::OfWhatPercent));
        }
        if self.of.contains(&Charge::Supplies) {
            return Err(Fault::new(at, Wrong::OfThemselves));
        }
        self.most.map_or(Ok(()), |most| amount(at, most))
    }

    /// What they come to for entries, none below nought.
    ///
    /// # Errors
    /// [`TooLarge`].
    ///
    /// ```
    /// use price::{Charge, Entry, Payer, Supplies};
    /// let labour = Entry {
    ///     line: None,
    ///     charge: Charge::Labour,
    ///     label: None,
    ///     quantity: 3.into(),
    ///     each: 120.into(),
    ///     payer: Payer::Customer,
    ///     less: Vec::new(),
    /// };
    /// let rule = Supplies { percent: 8.into(), of: vec![Charge::Labour], most: Some(25.into()) };
    /// let found = rule.found(&[labour], 2).unwrap();
    /// assert_eq!(found.sum.to_string(), "25.00");
    /// ```
    pub fn found(&self, entries: &[Entry], minor_digits: u32) -> Result<Found, TooLarge> {
        let counted = entries
            .iter()
            .filter(|entry| self.of.contains(&entry.charge));
        let base = sum(counted.map(|entry| amount_of(entry, minor_digits)))?;
        let exact = crate::bill::share(self.percent, base.max(Decimal::ZERO)).ok_or(TooLarge)?;
        let full = rounded(exact, minor_digits);
        let capped = self.most.map_or(full, |most| full.min(most));
        let sum = rounded(capped, minor_digits);
        let names: Vec<&str> = self.of.iter().map(|charge| charge.name()).collect();
        let mut line = Line::new(say::shop_supplies(), Source::given())
            .formula(say::supplies(), say::per_cent_of_what_they_go_with())
            .input(names.join(", "), number(base))
            .input(say::per_cent(), number(self.percent.normalize()));
        if let Some(most) = self.most {
            line = line.input(say::cap(), number(most));
        }
        if sum < full {
            line = line.note(say::cap_counts(number(full)));
        }
        Ok(Found {
            sum,
            working: Working::new(say::shop_supplies_title()).line(line.value(number(sum))),
        })
    }
}

impl Disposal {
    /// Refuses what makes no sense.
    ///
    /// # Errors
    /// [`Fault`].
    pub fn check(&self) -> Result<(), Fault> {
        if self.of.trim().is_empty() {
            return Err(Fault::new("disposal", Wrong::OfWhat));
        }
        amount(&format!("disposal of {}", self.of), self.each)
    }
}

/// The entry that gives a core charge back, because the core came back: so many of what was
/// charged, the other way.
///
/// # Errors
/// [`Fault`], where the entry is no core charge, or fewer were charged.
///
/// ```
/// use price::{Charge, Entry, Payer, amount, core_back};
/// let core = Entry {
///     line: None,
///     charge: Charge::Core,
///     label: None,
///     quantity: 2.into(),
///     each: "60.00".parse().unwrap(),
///     payer: Payer::Customer,
///     less: Vec::new(),
/// };
/// let back = core_back(&core, 1.into(), 2).unwrap();
/// assert_eq!(amount(&back, 2).unwrap().to_string(), "-60.00");
/// assert!(core_back(&core, 3.into(), 2).is_err());
/// ```
pub fn core_back(charged: &Entry, pieces: Decimal, minor_digits: u32) -> Result<Entry, Fault> {
    let at = "core";
    if charged.charge != Charge::Core {
        return Err(Fault::new(
            at,
            Wrong::NoCore {
                charge: charged.charge,
            },
        ));
    }
    if pieces <= Decimal::ZERO {
        return Err(Fault::new(at, Wrong::NoneCameBack));
    }
    if pieces > charged.quantity {
        return Err(Fault::new(
            at,
            Wrong::MoreCameBack {
                pieces,
                charged: charged.quantity.normalize(),
            },
        ));
    }
    // What was taken off the charge does not come back.
    let share = |less: &Less| {
        let part = less
            .amount
            .checked_mul(pieces)?
            .checked_div(charged.quantity)?;
        Some(Less {
            amount: -rounded(part, minor_digits),
            ..*less
        })
    };
    Ok(Entry {
        quantity: pieces,
        each: -charged.each,
        less: charged.less.iter().filter_map(share).collect(),
        ..charged.clone()
    })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_makes_no_sense_is_refused_in_words() {
        let supplies = |percent: i64, of: Vec<Charge>, most: Option<i64>| {
            let most = most.map(Into::into);
            Supplies {
                percent: percent.into(),
                of,
                most,
            }
            .check()
        };
        assert!(supplies(5, vec![Charge::Labour], Some(30)).is_ok());
        for bad in [
            supplies(-1, vec![Charge::Labour], None),
            supplies(101, vec![Charge::Labour], None),
            supplies(5, vec![], None),
            supplies(5, vec![Charge::Supplies], None),
            supplies(5, vec![Charge::Labour], Some(-1)),
        ] {
            assert!(bad.unwrap_err().to_string().starts_with("shop supplies: "));
        }
        let disposal = |of: &str, each: i64| {
            let of = of.to_owned();
            Disposal {
                of,
                each: each.into(),
            }
            .check()
        };
        assert!(disposal("waste oil", 3).is_ok());
        assert!(disposal(" ", 3).is_err());
        assert!(disposal("waste oil", -3).is_err());
    }
}

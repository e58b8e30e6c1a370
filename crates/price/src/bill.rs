//! What entries come to, with every tax, each told by itself.

use crate::entry::{Entry, Exemption, Payer, TaxRule};
use crate::fault::{Fault, Wrong, percent};
use crate::round::{By, Coin, TaxRounding};
use crate::totals::{TooLarge, Totals, amount, rounded, sum, within};
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};

/// What holds for the sums of an order beside its taxes.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Terms {
    /// How taxes are rounded.
    pub rounding: TaxRounding,
    /// The customer's exemption.
    pub exempt: Option<Exemption>,
    /// The smallest coin that is paid with.
    pub coin: Option<Coin>,
}

/// The taxes that hold, how they are rounded, and who is exempt.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Taxing {
    /// The taxes, in the order they are taken; those in the price go before those on top.
    pub taxes: Vec<TaxRule>,
    /// How they are rounded.
    pub rounding: TaxRounding,
    /// The customer's exemption.
    pub exempt: Option<Exemption>,
}

/// What one tax comes to for one payer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Share {
    /// What the tax is called.
    pub name: String,
    /// Per cent.
    pub percent: Decimal,
    /// The sum it is taken on.
    pub base: Decimal,
    /// The tax.
    pub tax: Decimal,
    /// Whether it is not asked, because the payer is exempt.
    pub exempt: bool,
}

/// What one payer's entries come to.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Bill {
    /// Before tax, tax, and with tax.
    pub totals: Totals,
    /// Each tax that falls on any of the entries, in the order they are taken. They add up to
    /// the tax.
    pub shares: Vec<Share>,
    /// What no tax falls on.
    pub untaxed: Decimal,
}

impl Taxing {
    /// Taxes rounded once each, nobody exempt.
    #[must_use]
    pub fn of(taxes: &[TaxRule]) -> Taxing {
        Taxing {
            taxes: taxes.to_vec(),
            ..Taxing::default()
        }
    }

    /// These taxes by these terms.
    #[must_use]
    pub fn by(taxes: &[TaxRule], terms: &Terms) -> Taxing {
        Taxing {
            taxes: taxes.to_vec(),
            rounding: terms.rounding,
            exempt: terms.exempt.clone(),
        }
    }

    /// Refuses taxes that make no sense.
    ///
    /// # Errors
    /// [`Fault`], the first there is.
    pub fn check(&self) -> Result<(), Fault> {
        const MANY: usize = 12;
        if self.taxes.len() > MANY {
            return Err(Fault::new(
                "taxes",
                Wrong::TooManyTaxes {
                    taxes: self.taxes.len(),
                    most: MANY,
                },
            ));
        }
        let mut names = BTreeSet::new();
        for (nth, tax) in self.taxes.iter().enumerate() {
            let at = format!("tax {}", nth.saturating_add(1));
            if tax.name.trim().is_empty() {
                return Err(Fault::new(at, Wrong::NoName));
            }
            if !names.insert(tax.name.trim().to_lowercase()) {
                return Err(Fault::new(
                    at,
                    Wrong::TaxTwice {
                        name: tax.name.clone(),
                    },
                ));
            }
            percent(&format!("{at}, {}", tax.name), tax.percent, 100)?;
        }
        if let Some(unknown) = self
            .exempt
            .iter()
            .flat_map(|exempt| &exempt.taxes)
            .find(|name| !self.taxes.iter().any(|tax| tax.name == **name))
        {
            return Err(Fault::new(
                "exempt from",
                Wrong::NoSuchTax {
                    name: unknown.clone(),
                },
            ));
        }
        Ok(())
    }

    /// Whether a tax is not asked of a payer. Who pays in the customer's place is not exempt.
    fn is_exempt(&self, tax: &TaxRule, payer: Payer) -> bool {
        let exempt = self.exempt.as_ref();
        payer == Payer::Customer && exempt.is_some_and(|exempt| exempt.is_from(tax))
    }
}

/// What the entries come to for each payer.
///
/// Every entry is brought to the smallest coin. A tax on top is taken on what it falls on, and
/// on the taxes before it where it is compound. A tax that is in the price is taken out of it:
/// price × rate ÷ (100 + rate) where it stands alone. Where a payer is exempt from a tax in
/// the price, it is taken out and not asked.
///
/// # Errors
/// [`TooLarge`]: no sum is cut in silence.
///
/// ```
/// use price::{Charge, Entry, Payer, TaxOn, TaxRule, Taxing, bills};
/// let entry = Entry {
///     line: None,
///     charge: Charge::Part,
///     label: None,
///     quantity: 1.into(),
///     each: 120.into(),
///     payer: Payer::Customer,
///     less: Vec::new(),
/// };
/// let on = TaxOn { labour: true, parts: true, other: true };
/// let vat = TaxRule { included: true, ..TaxRule::on_top("VAT", 20.into(), on) };
/// let bill = &bills(&[entry], &Taxing::of(&[vat]), 2).unwrap()[&Payer::Customer];
/// assert_eq!(bill.totals.net.to_string(), "100.00");
/// assert_eq!(bill.shares[0].tax.to_string(), "20.00");
/// assert_eq!(bill.totals.gross.to_string(), "120.00");
/// ```
pub fn bills(
    entries: &[Entry],
    taxing: &Taxing,
    minor_digits: u32,
) -> Result<BTreeMap<Payer, Bill>, TooLarge> {
    let payers: BTreeSet<Payer> = entries.iter().map(|entry| entry.payer).collect();
    payers
        .into_iter()
        .map(|payer| {
            let of_payer: Vec<&Entry> = entries
                .iter()
                .filter(|entry| entry.payer == payer)
                .collect();
            Ok((
                payer,
                Reckoning::of(payer, &of_payer, taxing, minor_digits)?.bill()?,
            ))
        })
        .collect()
}

/// One payer's entries while they are reckoned.
struct Reckoning<'a> {
    taxing: &'a Taxing,
    minor_digits: u32,
    /// What each entry comes to, in whole coins.
    amounts: Vec<Decimal>,
    /// The taxes in the order they are taken.
    taken: Vec<Taken<'a>>,
}

/// A tax while it is reckoned.
struct Taken<'a> {
    rule: &'a TaxRule,
    /// The entries it falls on.
    on: BTreeSet<usize>,
    /// What it comes to on each of these, rounded there if lines are.
    on_entry: BTreeMap<usize, Decimal>,
    /// The sum it is taken on.
    base: Decimal,
    /// What it comes to.
    tax: Decimal,
    /// Whether it is asked.
    asked: bool,
}

impl<'a> Reckoning<'a> {
    fn of(
        payer: Payer,
        entries: &[&Entry],
        taxing: &'a Taxing,
        minor_digits: u32,
    ) -> Result<Self, TooLarge> {
        let amounts = entries
            .iter()
            .map(|entry| amount(entry, minor_digits))
            .collect::<Result<_, _>>()?;
        let taken = |rule: &'a TaxRule| Taken {
            rule,
            on: (0..entries.len())
                .filter(|at| rule.falls_on(entries[*at].charge, entries[*at].payer))
                .collect(),
            on_entry: BTreeMap::new(),
            base: Decimal::ZERO,
            tax: Decimal::ZERO,
            asked: !taxing.is_exempt(rule, payer),
        };
        let of_sort = |included: bool| {
            let all = taxing.taxes.iter();
            all.filter(move |rule| rule.included == included).map(taken)
        };
        let mut out = Reckoning {
            taxing,
            minor_digits,
            amounts,
            taken: of_sort(true).chain(of_sort(false)).collect(),
        };
        let included = out.taken.iter().filter(|taken| taken.rule.included).count();
        for nth in 0..included {
            out.take_out(nth)?;
        }
        // What such a tax is taken on is known only when all of them are out.
        for nth in 0..included {
            out.taken[nth].base = out.base(nth)?;
        }
        for nth in included..out.taken.len() {
            out.put_on(nth)?;
        }
        Ok(out)
    }

    fn round(&self, tax: Decimal) -> Decimal {
        let round = self.taxing.rounding.round;
        round.to_digits(tax, self.minor_digits)
    }

    /// Takes a tax out of the prices it is in.
    fn take_out(&mut self, nth: usize) -> Result<(), TooLarge> {
        let mut on_entry = BTreeMap::new();
        // Prices that hold the same taxes are added up before they are divided, so that
        // nothing is lost by dividing.
        let mut alike: BTreeMap<Vec<usize>, Decimal> = BTreeMap::new();
        for at in &self.taken[nth].on {
            let price = self.amounts[*at];
            let taxes: Vec<usize> = (0..self.taken.len())
                .filter(|other| {
                    self.taken[*other].rule.included && self.taken[*other].on.contains(at)
                })
                .collect();
            on_entry.insert(*at, self.out_of(nth, &taxes, price)?);
            let whole = alike.entry(taxes).or_default();
            *whole = within(whole.checked_add(price))?;
        }
        let tax = match self.taxing.rounding.by {
            By::Total => {
                let parts = alike.into_iter();
                self.round(sum(
                    parts.map(|(taxes, price)| self.out_of(nth, &taxes, price))
                )?)
            }
            By::Line => {
                on_entry
                    .values_mut()
                    .for_each(|tax| *tax = self.round(*tax));
                sum(on_entry.values().map(|tax| Ok(*tax)))?
            }
        };
        self.taken[nth].on_entry = on_entry;
        self.taken[nth].tax = tax;
        Ok(())
    }

    /// What one of the taxes in a price is of it.
    fn out_of(&self, nth: usize, taxes: &[usize], price: Decimal) -> Result<Decimal, TooLarge> {
        // What becomes of 1 before tax, and how much of that this tax is.
        let mut whole = Decimal::ONE;
        let mut own = Decimal::ZERO;
        for other in taxes {
            let rule = self.taken[*other].rule;
            let on = if rule.compound { whole } else { Decimal::ONE };
            let tax = share(rule.percent, on).ok_or(TooLarge)?;
            if *other == nth {
                own = tax;
            }
            whole = whole.checked_add(tax).ok_or(TooLarge)?;
        }
        within(
            price
                .checked_mul(own)
                .and_then(|part| part.checked_div(whole)),
        )
    }

    /// Puts a tax on top of what it falls on.
    fn put_on(&mut self, nth: usize) -> Result<(), TooLarge> {
        let rule = self.taken[nth].rule;
        let mut on_entry = BTreeMap::new();
        for at in &self.taken[nth].on {
            let of = |other: &Taken<'_>| Ok(other.on_entry.get(at).copied().unwrap_or_default());
            let base = self.beside(nth, self.amounts[*at], of)?;
            on_entry.insert(*at, within(share(rule.percent, base))?);
        }
        let base = self.base(nth)?;
        let tax = match self.taxing.rounding.by {
            By::Total => self.round(within(share(rule.percent, base))?),
            By::Line => {
                on_entry
                    .values_mut()
                    .for_each(|tax| *tax = self.round(*tax));
                sum(on_entry.values().map(|tax| Ok(*tax)))?
            }
        };
        let taken = &mut self.taken[nth];
        (taken.on_entry, taken.base, taken.tax) = (on_entry, base, tax);
        Ok(())
    }

    /// The sum a tax is taken on.
    fn base(&self, nth: usize) -> Result<Decimal, TooLarge> {
        let on = &self.taken[nth].on;
        let prices = sum(on.iter().map(|at| Ok(self.amounts[*at])))?;
        self.beside(nth, prices, |other| self.part(other, on))
    }

    /// What of a price a tax is taken on, beside the other taxes: those in the price are not
    /// part of it, and those on top are not, but where it is compound, and they are asked and
    /// stand before it. `of` tells what another tax comes to on that price.
    fn beside(
        &self,
        nth: usize,
        price: Decimal,
        of: impl Fn(&Taken<'_>) -> Result<Decimal, TooLarge>,
    ) -> Result<Decimal, TooLarge> {
        let rule = self.taken[nth].rule;
        let mut base = price;
        for (at, other) in self.taken.iter().enumerate() {
            let counts = rule.compound && at < nth && other.asked;
            base = within(match (other.rule.included, counts) {
                (true, false) => base.checked_sub(of(other)?),
                (false, true) => base.checked_add(of(other)?),
                (true, true) | (false, false) => Some(base),
            })?;
        }
        Ok(base)
    }

    /// What of a tax that was taken falls on these entries.
    fn part(&self, tax: &Taken<'_>, on: &BTreeSet<usize>) -> Result<Decimal, TooLarge> {
        if tax.on.is_subset(on) {
            return Ok(tax.tax);
        }
        let each = tax.on_entry.iter().filter(|(at, _)| on.contains(at));
        sum(each.map(|(_, tax)| Ok(*tax))).map(|part| self.round(part))
    }

    fn bill(&self) -> Result<Bill, TooLarge> {
        let digits = self.minor_digits;
        let mut net = sum(self.amounts.iter().map(|amount| Ok(*amount)))?;
        let mut tax = Decimal::ZERO;
        let mut shares = Vec::new();
        for taken in self.taken.iter().filter(|taken| !taken.on.is_empty()) {
            if taken.rule.included {
                net = within(net.checked_sub(taken.tax))?;
            }
            let asked = if taken.asked {
                taken.tax
            } else {
                Decimal::ZERO
            };
            tax = within(tax.checked_add(asked))?;
            shares.push(Share {
                name: taken.rule.name.clone(),
                percent: taken.rule.percent,
                base: rounded(taken.base, digits),
                tax: rounded(asked, digits),
                exempt: !taken.asked,
            });
        }
        let each = self.amounts.iter().enumerate();
        let untaxed = sum(each
            .filter(|(at, _)| !self.taken.iter().any(|taken| taken.on.contains(at)))
            .map(|(_, amount)| Ok(*amount)))?;
        Ok(Bill {
            totals: Totals {
                net: rounded(net, digits),
                tax: rounded(tax, digits),
                gross: rounded(within(net.checked_add(tax))?, digits),
            },
            shares,
            untaxed: rounded(untaxed, digits),
        })
    }
}

/// So many per cent of a sum.
pub(crate) fn share(percent: Decimal, sum: Decimal) -> Option<Decimal> {
    percent
        .checked_div(Decimal::ONE_HUNDRED)
        .and_then(|share| sum.checked_mul(share))
}

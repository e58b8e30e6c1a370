//! Credit notes: what is taken back of an invoice. The invoice stays as it was written.

use crate::apportion::apportion;
use crate::bill::{Share, Taxing, bills};
use crate::entry::{Entry, Payer};
use crate::fault::{Fault, Wrong};
use crate::phrases as say;
use crate::totals::{TooLarge, Totals, amount, rounded, sum, within};
use crate::working::number;
use measure::{Line, Source, Working};
use rust_decimal::Decimal;

/// An invoice for one payer, as it was written.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Billed {
    /// Its lines.
    pub lines: Vec<BilledLine>,
    /// Its taxes.
    pub shares: Vec<Share>,
    /// Whether each of these is in the prices.
    pub(crate) included: Vec<bool>,
    /// What it comes to.
    pub totals: Totals,
    /// Digits after the point of its currency.
    pub(crate) minor_digits: u32,
}

/// A line of an invoice.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct BilledLine {
    /// What was charged on it: less discounts, and its part of what was written down.
    pub amount: Decimal,
    /// Its part of what was written down.
    pub off: Decimal,
    /// The taxes that fall on it, by their place among the invoice's.
    pub(crate) taxes: Vec<usize>,
}

/// What is taken back of one line.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct CreditLine {
    /// The line's place among the payer's on the invoice, from 0.
    pub line: u32,
    /// How much of what was charged on it.
    pub amount: Decimal,
    /// Whether the tax on it is kept, as some places' rules want it for a core.
    pub keeps_tax: bool,
}

/// A credit note. Its sums are what goes back to the payer.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Credit {
    /// What is taken back of each line.
    pub lines: Vec<CreditLine>,
    /// What goes back of each of the invoice's taxes, in their sequence.
    pub shares: Vec<Share>,
    /// What goes back.
    pub totals: Totals,
}

impl BilledLine {
    /// Whether this of the invoice's taxes falls on it.
    #[must_use]
    pub fn has_tax(&self, tax: usize) -> bool {
        self.taxes.contains(&tax)
    }
}

impl Billed {
    /// The invoice of these entries for one payer, where it came to these sums.
    ///
    /// # Errors
    /// [`TooLarge`].
    pub fn of(
        entries: &[Entry],
        taxing: &Taxing,
        payer: Payer,
        totals: &Totals,
        minor_digits: u32,
    ) -> Result<Billed, TooLarge> {
        let own: Vec<Entry> = entries
            .iter()
            .filter(|entry| entry.payer == payer)
            .cloned()
            .collect();
        let bill = bills(&own, taxing, minor_digits)?
            .remove(&payer)
            .unwrap_or_default();
        let weights: Vec<Decimal> = bill.shares.iter().map(|share| share.tax).collect();
        let taxes = apportion(totals.tax, &weights, minor_digits);
        let rules: Vec<_> = bill
            .shares
            .iter()
            .filter_map(|share| taxing.taxes.iter().find(|tax| tax.name == share.name))
            .collect();
        let shares: Vec<Share> = bill
            .shares
            .iter()
            .zip(taxes)
            .map(|(share, tax)| Share {
                tax,
                ..share.clone()
            })
            .collect();
        let included: Vec<bool> = rules.iter().map(|rule| rule.included).collect();
        let amounts = own
            .iter()
            .map(|entry| amount(entry, minor_digits))
            .collect::<Result<Vec<_>, _>>()?;
        let in_price = shares
            .iter()
            .zip(&included)
            .filter(|(_, included)| **included);
        let left = sum(in_price
            .map(|(share, _)| Ok(share.tax))
            .chain([Ok(totals.net)]))?;
        let all = sum(amounts.iter().map(|amount| Ok(*amount)))?;
        // What was written down is borne by what is charged, not by what is given back.
        let bear: Vec<Decimal> = amounts
            .iter()
            .map(|amount| (*amount).max(Decimal::ZERO))
            .collect();
        let off = apportion(within(all.checked_sub(left))?, &bear, minor_digits);
        let lines = own
            .iter()
            .zip(amounts.iter().zip(off))
            .map(|(entry, (amount, off))| BilledLine {
                amount: amount.saturating_sub(off),
                off,
                taxes: (0..rules.len())
                    .filter(|nth| rules[*nth].falls_on(entry.charge, entry.payer))
                    .collect(),
            })
            .collect();
        Ok(Billed {
            lines,
            shares,
            included,
            totals: totals.clone(),
            minor_digits,
        })
    }

    /// How much of a line was taken back already.
    #[must_use]
    pub fn credited(&self, line: u32, already: &[Credit]) -> Decimal {
        let lines = already.iter().flat_map(|credit| &credit.lines);
        lines
            .filter(|credited| credited.line == line)
            .fold(Decimal::ZERO, |all, one| all.saturating_add(one.amount))
    }

    /// Takes back some of the invoice. Each tax goes back in proportion to what goes back of
    /// what it fell on, reckoned with what went back before: so that once everything went
    /// back, bit by bit or at once, so did every coin of tax.
    ///
    /// # Errors
    /// [`Fault`], where more goes back than was charged.
    ///
    /// # Limits
    /// A tax on lines that together come to nought has no proportion; nothing of it goes back.
    pub fn credit(&self, already: &[Credit], lines: &[CreditLine]) -> Result<Credit, Fault> {
        self.check(already, lines)?;
        let large = |_: TooLarge| Fault::new("credit note", Wrong::SumTooLarge);
        let mut shares = Vec::new();
        let mut tax = Decimal::ZERO;
        let mut in_price = Decimal::ZERO;
        for (nth, share) in self.shares.iter().enumerate() {
            let before: Vec<CreditLine> = already
                .iter()
                .flat_map(|credit| &credit.lines)
                .copied()
                .collect();
            let gone = already
                .iter()
                .filter_map(|credit| credit.shares.get(nth))
                .fold((Decimal::ZERO, Decimal::ZERO), |(base, tax), share| {
                    (
                        base.saturating_add(share.base),
                        tax.saturating_add(share.tax),
                    )
                });
            let all: Vec<CreditLine> = before.iter().chain(lines).copied().collect();
            let part = |of: Decimal| self.part(nth, &all, of).map_err(large);
            let back = Share {
                base: part(share.base)?.saturating_sub(gone.0),
                tax: part(share.tax)?.saturating_sub(gone.1),
                ..share.clone()
            };
            tax = tax.saturating_add(back.tax);
            if self.included[nth] {
                in_price = in_price.saturating_add(back.tax);
            }
            shares.push(back);
        }
        let amounts = sum(lines.iter().map(|line| Ok(line.amount))).map_err(large)?;
        let net = amounts.saturating_sub(in_price);
        let digits = self.minor_digits;
        Ok(Credit {
            lines: lines.to_vec(),
            shares,
            totals: Totals {
                net: rounded(net, digits),
                tax: rounded(tax, digits),
                gross: rounded(net.saturating_add(tax), digits),
            },
        })
    }

    /// What of a sum goes with the lines that were taken back, as far as this tax fell on them
    /// and goes back.
    fn part(&self, tax: usize, back: &[CreditLine], of: Decimal) -> Result<Decimal, TooLarge> {
        let falls = |line: usize| self.lines[line].has_tax(tax);
        let whole = sum((0..self.lines.len())
            .filter(|line| falls(*line))
            .map(|line| Ok(self.lines[line].amount)))?;
        let gone = back
            .iter()
            .filter(|line| falls(place(line.line)) && !line.keeps_tax);
        let gone = sum(gone.map(|line| Ok(line.amount)))?;
        if whole.is_zero() {
            return Ok(Decimal::ZERO);
        }
        if gone == whole {
            return Ok(of);
        }
        within(
            of.checked_mul(gone)
                .and_then(|part| part.checked_div(whole)),
        )
        .map(|part| rounded(part, self.minor_digits))
    }

    fn check(&self, already: &[Credit], lines: &[CreditLine]) -> Result<(), Fault> {
        if lines.iter().all(|line| line.amount.is_zero()) {
            return Err(Fault::new("credit note", Wrong::NothingBack));
        }
        for (nth, back) in lines.iter().enumerate() {
            let at = format!("line {}", back.line.saturating_add(1));
            let Some(line) = self.lines.get(place(back.line)) else {
                return Err(Fault::new(
                    at,
                    Wrong::NoSuchLine {
                        lines: self.lines.len(),
                    },
                ));
            };
            if lines[..nth].iter().any(|other| other.line == back.line) {
                return Err(Fault::new(at, Wrong::LineTwice));
            }
            if back.amount.normalize().scale() > self.minor_digits {
                return Err(Fault::new(
                    at,
                    Wrong::NotInCoins {
                        amount: back.amount,
                        digits: self.minor_digits,
                    },
                ));
            }
            let before = self.credited(back.line, already);
            let left = line.amount.saturating_sub(before);
            let same_way =
                back.amount.is_zero() || back.amount.is_sign_negative() == left.is_sign_negative();
            if !same_way || back.amount.abs() > left.abs() {
                return Err(Fault::new(
                    at,
                    Wrong::MoreThanLeft {
                        amount: back.amount,
                        left,
                    },
                ));
            }
        }
        Ok(())
    }
}

/// A place in a list; one beyond all lists, where it is larger than any.
pub(crate) fn place(line: u32) -> usize {
    usize::try_from(line).unwrap_or(usize::MAX)
}

impl Credit {
    /// How it was found.
    #[must_use]
    pub fn working(&self) -> Working {
        let mut out = Working::new(say::what_goes_back());
        for line in &self.lines {
            let told = Line::new(
                say::line_of_the_invoice(line.line.saturating_add(1)),
                Source::given(),
            )
            .value(number(line.amount));
            out = out.line(if line.keeps_tax {
                told.note(say::its_tax_is_kept())
            } else {
                told
            });
        }
        for share in &self.shares {
            out = out.line(
                Line::new(share.name.clone(), Source::derived())
                    .formula(say::tax_back(), say::share_of_the_tax())
                    .input(say::on(), number(share.base))
                    .input(say::per_cent(), number(share.percent.normalize()))
                    .value(number(share.tax)),
            );
        }
        let Totals { net, tax, gross } = &self.totals;
        out.line(
            Line::new(say::goes_back(), Source::derived())
                .formula(say::total(), say::before_tax_and_tax())
                .input(say::before_tax(), number(*net))
                .input(say::tax(), number(*tax))
                .value(number(*gross)),
        )
    }
}

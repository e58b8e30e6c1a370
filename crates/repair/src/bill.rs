//! The price, the invoices and the credit notes of an order, read off its decisions in
//! sequence.

use crate::decision::Decision;
use crate::ids::CommandId;
use crate::order::{Decided, Order};
use crate::papers::minor_digits;
use crate::text::Words;
use jiff::Timestamp;
use price::{
    Billed, Credit, Entry, Payer, TaxRule, Taxing, Terms, TooLarge, Totals, after_write_down,
};
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};

/// An invoice that was written. It stays as it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Invoice {
    /// The command that had it written.
    pub command: CommandId,
    /// When, by the device.
    pub at: Timestamp,
    /// What it charges.
    pub entries: Vec<Entry>,
    /// The taxes that held.
    pub taxes: Vec<TaxRule>,
    /// What each payer owes on it, written down where it was.
    pub totals: BTreeMap<Payer, Totals>,
    /// What was taken off each payer's sum, before tax.
    pub written_down: BTreeMap<Payer, Decimal>,
    /// Its number for each payer; none on one that is older than such numbers.
    pub numbers: BTreeMap<Payer, u64>,
    /// What else held.
    pub terms: Terms,
}

/// A credit note that was written. Like the invoice, it stays as it is.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct CreditNote {
    /// The command that had it written.
    pub command: CommandId,
    /// When, by the device.
    pub at: Timestamp,
    /// The command that had the invoice written that it takes back from.
    pub invoice: CommandId,
    /// Whose it is.
    pub payer: Payer,
    /// Its number.
    pub number: u64,
    /// Why.
    pub words: Words,
    /// What goes back.
    pub credit: Credit,
}

impl Invoice {
    /// The taxes that held, and how they were taken.
    #[must_use]
    pub fn taxing(&self) -> Taxing {
        Taxing::by(&self.taxes, &self.terms)
    }

    /// The invoice as a payer got it, line by line and tax by tax.
    ///
    /// # Errors
    /// [`TooLarge`].
    pub fn billed(&self, payer: Payer, minor_digits: u32) -> Result<Billed, TooLarge> {
        let totals = self.totals.get(&payer).cloned().unwrap_or_default();
        Billed::of(&self.entries, &self.taxing(), payer, &totals, minor_digits)
    }
}

/// The price as it stands.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Price {
    /// The decision that made it what it is.
    pub by: CommandId,
    /// The invoices that were written, oldest first.
    pub invoices: Vec<Invoice>,
    /// The entries that are on no invoice yet.
    pub entries: Vec<Entry>,
    /// The taxes that held when these were set.
    pub taxes: Vec<TaxRule>,
    /// What each payer owes for these, written down where it was.
    pub open: BTreeMap<Payer, Totals>,
    /// What was taken off each payer's sum of these, before tax.
    pub written_down: BTreeMap<Payer, Decimal>,
    /// What each payer owes in all, on invoices and besides, less what was taken back.
    pub totals: BTreeMap<Payer, Totals>,
    /// What else held when the entries were set that are on no invoice.
    pub terms: Terms,
    /// The credit notes that were written, oldest first.
    pub credits: Vec<CreditNote>,
}

impl Price {
    fn blank(by: &CommandId) -> Self {
        Self {
            by: by.clone(),
            invoices: Vec::new(),
            entries: Vec::new(),
            taxes: Vec::new(),
            open: BTreeMap::new(),
            written_down: BTreeMap::new(),
            totals: BTreeMap::new(),
            terms: Terms::default(),
            credits: Vec::new(),
        }
    }

    /// The taxes that hold for what is on no invoice, and how they are taken.
    #[must_use]
    pub fn taxing(&self) -> Taxing {
        Taxing::by(&self.taxes, &self.terms)
    }

    /// What was taken back of an invoice of a payer.
    #[must_use]
    pub fn credited(&self, invoice: &CommandId, payer: Payer) -> Vec<Credit> {
        let credits = self.credits.iter();
        credits
            .filter(|credit| credit.invoice == *invoice && credit.payer == payer)
            .map(|credit| credit.credit.clone())
            .collect()
    }

    /// What goes back to a payer in all.
    fn taken_back(&self, payer: Payer) -> Totals {
        let credits = self.credits.iter().filter(|credit| credit.payer == payer);
        together(credits.map(|credit| &credit.credit.totals))
    }

    /// Whether every entry is on an invoice.
    #[must_use]
    pub fn charged(&self) -> bool {
        self.entries.is_empty() && !self.invoices.is_empty()
    }

    /// Every entry, on an invoice or not, those on invoices first.
    pub fn all(&self) -> impl Iterator<Item = &Entry> {
        let charged = self.invoices.iter().flat_map(|invoice| &invoice.entries);
        charged.chain(&self.entries)
    }

    /// What a payer owes on invoices, less what was taken back.
    #[must_use]
    pub fn invoiced(&self, payer: Payer) -> Totals {
        let sums = self.invoices.iter().map(|invoice| &invoice.totals);
        let all = together(sums.filter_map(|totals| totals.get(&payer)));
        less(all, &self.taken_back(payer))
    }

    /// What was taken off a payer's sum in all, before tax.
    #[must_use]
    pub fn taken_off(&self, payer: Payer) -> Decimal {
        let invoices = self.invoices.iter().map(|invoice| &invoice.written_down);
        invoices
            .chain([&self.written_down])
            .filter_map(|off| off.get(&payer))
            .fold(Decimal::ZERO, |sum, off| sum.saturating_add(*off))
    }

    /// Files one decision after those before it.
    fn step(&mut self, decided: &Decided, minor_digits: u32) {
        match &decided.decision {
            Decision::Priced {
                entries,
                taxes,
                totals,
                written_down,
                invoiced,
                terms,
                ..
            } => {
                // One that names no invoice is older than the rule that an invoice stays as
                // it is: it was taken to unwrite those before it, and still reads so.
                self.invoices
                    .retain(|invoice| invoiced.contains(&invoice.command));
                self.entries.clone_from(entries);
                self.taxes.clone_from(taxes);
                self.terms = terms.clone().unwrap_or_default();
                self.open.clone_from(totals);
                self.written_down.clone_from(written_down);
            }
            Decision::WrittenDown {
                payer,
                amount,
                left,
                after,
            } => {
                if after.is_empty() && self.entries.is_empty() {
                    self.unwrite();
                }
                let off = self.written_down.entry(*payer).or_default();
                *off = off.saturating_add(*amount);
                if let Some(sums) = self.open.get_mut(payer) {
                    *sums = left
                        .clone()
                        .unwrap_or_else(|| after_write_down(sums, *amount, minor_digits));
                }
            }
            Decision::Charged {
                totals, numbers, ..
            } => self.write(decided, totals, numbers),
            Decision::Credited {
                invoice,
                payer,
                lines,
                shares,
                totals,
                number,
                words,
            } => {
                self.credits.push(CreditNote {
                    command: decided.command.clone(),
                    at: decided.stamp.at,
                    invoice: invoice.clone(),
                    payer: *payer,
                    number: *number,
                    words: *words,
                    credit: Credit {
                        lines: lines.clone(),
                        shares: shares.clone(),
                        totals: totals.clone(),
                    },
                });
                // It changes what is owed, and nothing that a price is made of.
                self.total();
                return;
            }
            _ => return,
        }
        self.by.clone_from(&decided.command);
        self.total();
    }

    fn write(
        &mut self,
        decided: &Decided,
        totals: &BTreeMap<Payer, Totals>,
        numbers: &BTreeMap<Payer, u64>,
    ) {
        // The same invoice written again, before invoices had numbers.
        if self.charged() && numbers.is_empty() {
            self.unwrite();
        }
        self.open.clear();
        self.invoices.push(Invoice {
            command: decided.command.clone(),
            at: decided.stamp.at,
            entries: std::mem::take(&mut self.entries),
            taxes: self.taxes.clone(),
            totals: totals.clone(),
            written_down: std::mem::take(&mut self.written_down),
            numbers: numbers.clone(),
            terms: self.terms.clone(),
        });
    }

    /// What a write-down after the invoice meant before invoices stayed as they are.
    fn unwrite(&mut self) {
        if let Some(last) = self.invoices.pop() {
            self.entries = last.entries;
            self.taxes = last.taxes;
            self.terms = last.terms;
            self.open = last.totals;
            self.written_down = last.written_down;
        }
    }

    fn total(&mut self) {
        let parts = || {
            let invoices = self.invoices.iter().map(|invoice| &invoice.totals);
            invoices.chain([&self.open])
        };
        let payers: BTreeSet<Payer> = parts().flat_map(BTreeMap::keys).copied().collect();
        self.totals = payers
            .into_iter()
            .map(|payer| {
                let sums = parts().filter_map(move |totals| totals.get(&payer));
                (payer, less(together(sums), &self.taken_back(payer)))
            })
            .collect();
    }
}

/// Sums together. No decision lets them grow beyond what can be held.
fn together<'a>(sums: impl Iterator<Item = &'a Totals>) -> Totals {
    sums.fold(None, |all: Option<Totals>, sum| {
        Some(all.map_or_else(
            || sum.clone(),
            |all| Totals {
                net: all.net.saturating_add(sum.net),
                tax: all.tax.saturating_add(sum.tax),
                gross: all.gross.saturating_add(sum.gross),
            },
        ))
    })
    .unwrap_or_default()
}

fn less(all: Totals, back: &Totals) -> Totals {
    if back.gross.is_zero() && back.net.is_zero() && back.tax.is_zero() {
        return all;
    }
    Totals {
        net: all.net.saturating_sub(back.net),
        tax: all.tax.saturating_sub(back.tax),
        gross: all.gross.saturating_sub(back.gross),
    }
}

pub(crate) fn touches_price(decided: &&Decided) -> bool {
    matches!(
        decided.decision,
        Decision::Priced { .. } | Decision::WrittenDown { .. } | Decision::Charged { .. }
    )
}

/// The price after the first so many decisions.
pub(crate) fn after(order: &Order, decisions: usize) -> Option<Price> {
    let digits = minor_digits(order);
    let decided = order.decisions().iter().take(decisions);
    let mut out: Option<Price> = None;
    let counts = |decided: &&Decided| {
        touches_price(decided) || matches!(decided.decision, Decision::Credited { .. })
    };
    for decided in decided.filter(counts) {
        let prices = matches!(decided.decision, Decision::Priced { .. });
        if prices || out.is_some() {
            out.get_or_insert_with(|| Price::blank(&decided.command))
                .step(decided, digits);
        }
    }
    out
}

/// The price, if one was set.
#[must_use]
pub fn price(order: &Order) -> Option<Price> {
    after(order, usize::MAX)
}

/// How many decisions had been taken when the last of these that made the price was.
pub(crate) fn place_of(order: &Order, seen: &[CommandId]) -> Option<usize> {
    let made = |decided: &Decided| touches_price(&decided) && seen.contains(&decided.command);
    let last = order.decisions().iter().rposition(made)?;
    Some(last.saturating_add(1))
}

/// The price that somebody had before them who names these commands as seen; none, if they
/// name none that made it.
#[must_use]
pub fn price_seen(order: &Order, seen: &[CommandId]) -> Option<Price> {
    after(order, place_of(order, seen)?)
}

/// The command that made the price what it is, for a device to name as seen.
#[must_use]
pub fn priced_by(order: &Order) -> Option<&CommandId> {
    let mut decisions = order.decisions().iter().rev();
    decisions
        .find(touches_price)
        .map(|decided| &decided.command)
}

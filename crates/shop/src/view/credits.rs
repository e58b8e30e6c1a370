//! What stands beside a price: each tax by itself, discounts, credit notes.

use super::desk::price_entry;
use super::taxed::{NotTaxed, TaxedView, taxed};
use crate::amount::Amount;
use crate::say;
use crate::snapshot::Snapshot;
use record::form::Form;
use record::v1::codes::PayerForm;
use repair::price::{Billed, Entry, Less, Payer, Share, Taxing, Totals};
use repair::{CommandId, Rules, Words, papers};
use rust_decimal::Decimal;
use serde::Serialize;
use utoipa::ToSchema;

/// What one tax comes to.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct ShareView {
    /// What it is called.
    pub name: String,
    /// Per cent.
    pub percent: Amount,
    /// The sum it is taken on.
    pub base: Amount,
    /// The tax.
    pub tax: Amount,
    /// Whether it is not asked, because the customer is exempt.
    pub exempt: bool,
}

/// What is taken off an entry.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct LessView {
    /// How much.
    pub amount: Amount,
    /// The per cent it was reckoned from.
    pub percent: Option<Amount>,
    /// The reason.
    pub why: String,
    /// The commitment of the reason, to send it again unchanged.
    pub why_words: String,
    /// Whether it is this entry's share of a discount on the whole order.
    pub of_order: bool,
}

/// A credit note. It stays as it was written.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct CreditView {
    /// The command that had it written.
    pub command: String,
    /// Its number.
    pub number: String,
    /// The command that had the invoice written that it takes back from.
    pub invoice: String,
    /// That invoice's number.
    pub invoice_number: Option<String>,
    /// Who gets it.
    pub payer: PayerForm,
    /// The day it was written.
    pub day: String,
    /// Why.
    pub words: String,
    /// What is taken back, line by line.
    pub lines: Vec<CreditedView>,
    /// Each tax that goes back.
    pub shares: Vec<ShareView>,
    /// Before tax.
    pub net: Amount,
    /// Tax.
    pub tax: Amount,
    /// What goes back.
    pub gross: Amount,
    /// The same line by line before tax, each line under its one tax.
    #[serde(skip)]
    pub taxed: Result<TaxedView, NotTaxed>,
    /// How it was found, as HTML made by the program.
    #[serde(skip)]
    pub working_html: String,
}

/// What is taken back of a line.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct CreditedView {
    /// What the line is called.
    pub label: String,
    /// How much goes back.
    pub amount: Amount,
    /// Whether its tax is kept.
    pub keeps_tax: bool,
}

/// What a credit note's number is called: unlike any of an order or an invoice.
pub(crate) fn numbered(number: u64) -> String {
    format!("CR-{number}")
}

pub(super) fn share(share: &Share, digits: u32) -> ShareView {
    ShareView {
        name: share.name.clone(),
        percent: share.percent.normalize().into(),
        base: say::money(share.base, digits),
        tax: say::money(share.tax, digits),
        exempt: share.exempt,
    }
}

/// Each tax of entries that came to these sums.
pub(super) fn shares(
    entries: &[Entry],
    taxing: &Taxing,
    payer: Payer,
    totals: &Totals,
    digits: u32,
) -> Vec<Share> {
    Billed::of(entries, taxing, payer, totals, digits)
        .map(|billed| billed.shares)
        .unwrap_or_default()
}

/// Each tax of all that a payer owes: on invoices and besides, less what was taken back.
pub(super) fn all_shares(price: &papers::Price, payer: Payer, digits: u32) -> Vec<Share> {
    let none = Totals::default();
    let of_invoices = price.invoices.iter().flat_map(|invoice| {
        let totals = invoice.totals.get(&payer).unwrap_or(&none);
        shares(&invoice.entries, &invoice.taxing(), payer, totals, digits)
    });
    let open = price.open.get(&payer).unwrap_or(&none);
    let open = shares(&price.entries, &price.taxing(), payer, open, digits);
    let credits = price.credits.iter().filter(|credit| credit.payer == payer);
    let back = credits
        .flat_map(|credit| &credit.credit.shares)
        .map(|share| Share {
            base: -share.base,
            tax: -share.tax,
            ..share.clone()
        });
    let mut out: Vec<Share> = Vec::new();
    for share in of_invoices.chain(open).chain(back) {
        let same = |known: &&mut Share| {
            known.name == share.name
                && known.percent == share.percent
                && known.exempt == share.exempt
        };
        match out.iter_mut().find(same) {
            Some(known) => {
                known.base = known.base.saturating_add(share.base);
                known.tax = known.tax.saturating_add(share.tax);
            }
            None => out.push(share),
        }
    }
    out
}

pub(super) fn less(snap: &Snapshot<'_>, less: &Less, digits: u32) -> LessView {
    LessView {
        amount: say::money(less.amount, digits),
        percent: less.percent.map(|percent| percent.normalize().into()),
        why: snap.texts().text(Words(less.why)),
        why_words: Words(less.why).hex(),
        of_order: less.of_order,
    }
}

/// What is left of each line of an invoice to be taken back, in the payer's sequence.
pub(super) fn left_of(
    price: &papers::Price,
    command: &CommandId,
    payer: Payer,
    digits: u32,
) -> Vec<Amount> {
    let invoice = price.invoices.iter().find(|one| one.command == *command);
    let Some(Ok(billed)) = invoice.map(|invoice| invoice.billed(payer, digits)) else {
        return Vec::new();
    };
    let already = price.credited(command, payer);
    (0u32..)
        .zip(&billed.lines)
        .map(|(nth, line)| {
            let left = line.amount.saturating_sub(billed.credited(nth, &already));
            say::money(left, digits)
        })
        .collect()
}

/// The credit notes of an order, oldest first.
pub(super) fn credits(
    snap: &Snapshot<'_>,
    price: &papers::Price,
    rules: &Rules,
    digits: u32,
) -> Vec<CreditView> {
    let money = |amount: Decimal| say::money(amount, digits);
    let shown = |note: &papers::CreditNote| {
        let invoice = price
            .invoices
            .iter()
            .find(|one| one.command == note.invoice);
        let entries: Vec<&Entry> = invoice
            .iter()
            .flat_map(|invoice| &invoice.entries)
            .filter(|entry| entry.payer == note.payer)
            .collect();
        let label = |line: u32| {
            let entry = usize::try_from(line)
                .ok()
                .and_then(|line| entries.get(line));
            entry.map_or_else(String::new, |entry| price_entry(snap, entry, digits).label)
        };
        let number = invoice.and_then(|invoice| invoice.numbers.get(&note.payer));
        let credit = &note.credit;
        CreditView {
            command: note.command.as_str().to_owned(),
            number: numbered(note.number),
            invoice: note.invoice.as_str().to_owned(),
            invoice_number: number.map(|number| super::desk::numbered(*number)),
            payer: PayerForm::of(&note.payer),
            day: rules.day(note.at).to_string(),
            words: snap.texts().text(note.words),
            lines: credit
                .lines
                .iter()
                .map(|line| CreditedView {
                    label: label(line.line),
                    amount: money(line.amount),
                    keeps_tax: line.keeps_tax,
                })
                .collect(),
            shares: credit.shares.iter().map(|one| share(one, digits)).collect(),
            net: money(credit.totals.net),
            tax: money(credit.totals.tax),
            gross: money(credit.totals.gross),
            taxed: invoice
                .and_then(|invoice| invoice.billed(note.payer, digits).ok())
                .ok_or(NotTaxed::Uneven)
                .and_then(|billed| taxed(snap, &billed, Some(credit), &entries, digits)),
            working_html: credit.working().html(),
        }
    };
    price.credits.iter().map(shown).collect()
}

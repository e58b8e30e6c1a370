//! Lines, price, consent and money, in words.

use super::credits::{self, CreditView, LessView, ShareView};
use super::taxed::{self, NotTaxed, TaxedView};
use crate::amount::Amount;
use crate::say::{self, Names};
use crate::snapshot::Snapshot;
use record::form::Form;
use record::v1::codes::{ChargeForm, ConsentStepForm, PaidByForm, PayerForm, WayForm};
use repair::price::{Entry, Payer, TaxRule, Taxing, TooLarge, Totals};
use repair::{CommandId, Fact, Order, Rules, Words, papers};
use rust_decimal::Decimal;
use serde::Serialize;
use serde_json::{Value, json};
use std::collections::BTreeMap;
use utoipa::ToSchema;

/// One line of the order.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct LineView {
    /// Its name.
    pub line: String,
    /// Who pays.
    pub payer: PayerForm,
    /// What the customer says.
    pub complaint: String,
    /// What was found.
    pub cause: Option<String>,
    /// What was done.
    pub correction: Option<String>,
    /// The tellings of each text, for a device to name as seen.
    pub told_by: BTreeMap<String, Vec<String>>,
}

/// One entry of the price.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct PriceEntryView {
    /// What it is called.
    pub label: String,
    /// What sort of charge.
    pub charge: ChargeForm,
    /// How many, as read at a glance.
    pub quantity: Amount,
    /// How many to the last digit, to send it again unchanged.
    pub quantity_exact: String,
    /// The price of one, as read at a glance.
    pub each: Amount,
    /// The price of one to the last digit, to send it again unchanged.
    pub each_exact: String,
    /// What it comes to, less what is taken off.
    pub amount: Amount,
    /// What is taken off it.
    pub less: Vec<LessView>,
    /// Who pays.
    pub payer: PayerForm,
    /// The commitment of its label, to send it again unchanged.
    pub label_words: Option<String>,
    /// The order's line it belongs to.
    pub line: Option<String>,
}

/// The price as it stands.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct PriceView {
    /// Its entries, those on invoices first.
    pub entries: Vec<PriceEntryView>,
    /// Those that are on no invoice yet: what a new price stands in the place of.
    pub open: Vec<PriceEntryView>,
    /// The taxes, in words.
    pub taxes: Vec<String>,
    /// Whether everything is on an invoice.
    pub charged: bool,
    /// What a price set now has seen.
    pub after: Vec<String>,
    /// The invoices that were written, one for each payer, oldest first.
    pub invoices: Vec<InvoiceView>,
    /// What the next invoice would charge each payer, were it written now.
    pub next: Vec<InvoiceView>,
    /// The credit notes that were written, oldest first.
    pub credits: Vec<CreditView>,
}

/// An invoice for one payer. It stays as it was written.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct InvoiceView {
    /// The command that had it written; empty, if none did yet.
    pub command: String,
    /// Its number; none on one that is older than numbers of invoices.
    pub number: Option<String>,
    /// Who pays.
    pub payer: PayerForm,
    /// The day it was written.
    pub day: String,
    /// What it charges.
    pub entries: Vec<PriceEntryView>,
    /// The taxes, in words.
    pub taxes: Vec<String>,
    /// Each tax by itself.
    pub shares: Vec<ShareView>,
    /// The number that the customer is exempt by.
    pub exempt_by: Option<String>,
    /// What is left of each entry to be taken back.
    pub left: Vec<Amount>,
    /// Taken off before tax.
    pub written_down: Amount,
    /// Before tax.
    pub net: Amount,
    /// Tax.
    pub tax: Amount,
    /// With tax.
    pub gross: Amount,
    /// The same line by line before tax, each line under its one tax.
    #[serde(skip)]
    pub taxed: Result<TaxedView, NotTaxed>,
}

impl PriceEntryView {
    /// The same entry, to the last digit, as it is sent again unchanged.
    #[must_use]
    pub fn sent(&self) -> Value {
        let mut sent = json!({ "line": self.line, "charge": self.charge, "label": self.label_words,
            "quantity": self.quantity_exact, "each": self.each_exact, "payer": self.payer });
        if !self.less.is_empty() {
            let less = self.less.iter().map(|less| {
                json!({ "amount": less.amount, "percent": less.percent, "why": less.why_words,
                    "of_order": less.of_order })
            });
            sent["less"] = less.collect();
        }
        sent
    }
}

/// What one payer owes.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct TotalView {
    /// Who.
    pub payer: PayerForm,
    /// Before tax.
    pub net: Amount,
    /// Tax.
    pub tax: Amount,
    /// With tax.
    pub gross: Amount,
    /// Taken off before tax.
    pub written_down: Amount,
    /// Paid, or on account.
    pub paid: Amount,
    /// Left to pay.
    pub balance: Amount,
    /// What would be paid of it in cash, where no coin is small enough for it.
    pub in_cash: Option<Amount>,
    /// What was paid beyond what was owed, because no coin is smaller; below nought, if less.
    pub by_coin: Option<Amount>,
    /// Of what is paid, what was put on account and is still to come in.
    pub on_account: Option<Amount>,
    /// Each tax by itself.
    pub shares: Vec<ShareView>,
    /// The most agreed to.
    pub ceiling: Option<Amount>,
    /// Whether tax is within it.
    pub ceiling_with_tax: bool,
    /// What is left under the ceiling; negative, if it is passed.
    pub room: Option<Amount>,
    /// How the sum was found, as HTML made by the program.
    #[serde(skip)]
    pub working_html: String,
}

/// One consent.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct ConsentView {
    /// The command that carried it.
    pub command: String,
    /// To what.
    pub step: ConsentStepForm,
    /// Who pays.
    pub payer: PayerForm,
    /// Yes or no.
    pub agreed: bool,
    /// The lines meant; none named means all.
    pub lines: Vec<String>,
    /// The most in all.
    pub amount: Option<Amount>,
    /// Whether tax is within it.
    pub tax_included: bool,
    /// How they spoke.
    pub way: WayForm,
    /// Who spoke.
    pub person: Option<String>,
    /// What was said.
    pub said: Option<String>,
    /// The number called.
    pub number_called: Option<String>,
    /// The signature, by its commitment.
    pub signature: Option<String>,
    /// When.
    pub at: String,
    /// Who of the shop asked.
    pub by: String,
}

/// One payment.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct PaymentView {
    /// The command that carried it.
    pub command: String,
    /// Who pays.
    pub payer: PayerForm,
    /// How much.
    pub amount: Amount,
    /// How.
    pub by: PaidByForm,
    /// Whether it is a deposit.
    pub deposit: bool,
    /// When.
    pub at: String,
    /// Who took it.
    pub taken_by: String,
}

pub(super) fn lines(snap: &Snapshot<'_>, order: &Order) -> Vec<LineView> {
    let text = |words| snap.texts().text(words);
    papers::lines(order)
        .into_iter()
        .map(|line| LineView {
            line: line.line.as_str().to_owned(),
            payer: PayerForm::of(&line.payer),
            complaint: text(line.complaint),
            cause: line.cause.map(text),
            correction: line.correction.map(text),
            told_by: line
                .told_by
                .iter()
                .map(|(which, by)| {
                    let by = by.iter().map(|command| command.as_str().to_owned());
                    let which = record::v1::codes::LineTextForm::word(*which);
                    (which.to_owned(), by.collect())
                })
                .collect(),
        })
        .collect()
}

pub(super) fn price(snap: &Snapshot<'_>, order: &Order, rules: &Rules) -> Option<PriceView> {
    let digits = papers::minor_digits(order);
    let shown = |entry: &Entry| price_entry(snap, entry, digits);
    papers::price(order).map(|price| PriceView {
        entries: price.all().map(shown).collect(),
        open: price.entries.iter().map(shown).collect(),
        taxes: taxes(&price.taxes),
        charged: price.charged(),
        after: vec![price.by.as_str().to_owned()],
        invoices: price
            .invoices
            .iter()
            .flat_map(|invoice| invoices(snap, &price, invoice, rules, digits))
            .collect(),
        credits: credits::credits(snap, &price, rules, digits),
        next: invoices(
            snap,
            &price,
            &papers::Invoice {
                command: CommandId::new(""),
                at: rules.now,
                entries: price.entries.clone(),
                taxes: price.taxes.clone(),
                totals: price.open.clone(),
                written_down: price.written_down.clone(),
                numbers: BTreeMap::new(),
                terms: price.terms.clone(),
            },
            rules,
            digits,
        ),
    })
}

fn taxes(taxes: &[TaxRule]) -> Vec<String> {
    taxes
        .iter()
        .map(|tax| format!("{} {} %", tax.name, Amount::from(tax.percent.normalize())))
        .collect()
}

/// What an invoice's number is called: unlike any number of an order.
pub(super) fn numbered(number: u64) -> String {
    format!("INV-{number}")
}

/// The same line by line before tax.
fn taxed_of(
    snap: &Snapshot<'_>,
    invoice: &papers::Invoice,
    payer: Payer,
    digits: u32,
) -> Result<TaxedView, NotTaxed> {
    let entries = invoice.entries.iter();
    let entries: Vec<&Entry> = entries.filter(|entry| entry.payer == payer).collect();
    let billed = invoice
        .billed(payer, digits)
        .map_err(|_| NotTaxed::Uneven)?;
    taxed::taxed(snap, &billed, None, &entries, digits)
}

/// An invoice as each payer gets it.
fn invoices(
    snap: &Snapshot<'_>,
    price: &papers::Price,
    invoice: &papers::Invoice,
    rules: &Rules,
    digits: u32,
) -> Vec<InvoiceView> {
    let exempt_by = invoice.terms.exempt.as_ref();
    let exempt_by = exempt_by.map(|exempt| snap.texts().text(Words(exempt.number)));
    let taxing = invoice.taxing();
    let money = |amount: Decimal| say::money(amount, digits);
    let of_payer = |(payer, totals): (&Payer, &Totals)| InvoiceView {
        command: invoice.command.as_str().to_owned(),
        number: invoice.numbers.get(payer).map(|number| numbered(*number)),
        payer: PayerForm::of(payer),
        day: rules.day(invoice.at).to_string(),
        entries: invoice
            .entries
            .iter()
            .filter(|entry| entry.payer == *payer)
            .map(|entry| price_entry(snap, entry, digits))
            .collect(),
        taxes: taxes(&invoice.taxes),
        shares: credits::shares(&invoice.entries, &taxing, *payer, totals, digits)
            .iter()
            .map(|share| credits::share(share, digits))
            .collect(),
        exempt_by: exempt_by.clone().filter(|_| *payer == Payer::Customer),
        left: credits::left_of(price, &invoice.command, *payer, digits),
        written_down: money(invoice.written_down.get(payer).copied().unwrap_or_default()),
        net: money(totals.net),
        tax: money(totals.tax),
        gross: money(totals.gross),
        taxed: taxed_of(snap, invoice, *payer, digits),
    };
    invoice.totals.iter().map(of_payer).collect()
}

/// One entry in words.
/// What an entry is called.
pub(crate) fn entry_label(snap: &Snapshot<'_>, entry: &Entry) -> String {
    entry
        .label
        .map_or_else(String::new, |label| snap.texts().text(Words(label)))
}

pub(super) fn price_entry(snap: &Snapshot<'_>, entry: &Entry, digits: u32) -> PriceEntryView {
    PriceEntryView {
        label: entry_label(snap, entry),
        charge: ChargeForm::of(&entry.charge),
        quantity: quantity_shown(entry, digits).into(),
        quantity_exact: entry.quantity.normalize().to_string(),
        each: each_shown(entry, digits).into(),
        each_exact: entry.each.to_string(),
        amount: repair::price::amount(entry, digits)
            .map_or_else(|too_large| Amount::new(too_large.to_string()), Amount::from),
        less: entry
            .less
            .iter()
            .map(|less| credits::less(snap, less, digits))
            .collect(),
        payer: PayerForm::of(&entry.payer),
        label_words: entry.label.map(|label| Words(label).hex()),
        line: entry.line.clone(),
    }
}

/// The price of one to its last digit, where it is finer than a coin.
fn each_shown(entry: &Entry, digits: u32) -> Decimal {
    let exact = entry.each.normalize();
    if exact.scale() > digits {
        exact
    } else {
        repair::price::rounded(exact, digits)
    }
}

/// How many, with two decimals or as many more as it takes for whoever multiplies to get the
/// amount: 213.5 minutes at 120.00 an hour are 3.5583 hours, for 3.56 come to 427.20.
fn quantity_shown(entry: &Entry, digits: u32) -> Decimal {
    let Ok(amount) = repair::price::full_amount(entry, digits) else {
        return entry.quantity.normalize();
    };
    let each = each_shown(entry, digits);
    let comes_to = |shown: Decimal| {
        let product = shown.checked_mul(each);
        product.map(|product| repair::price::rounded(product, digits))
    };
    let shown = (2..entry.quantity.scale().max(2))
        .map(|places| repair::price::rounded(entry.quantity, places))
        .find(|shown| comes_to(*shown) == Some(amount));
    shown.unwrap_or(entry.quantity).normalize()
}

pub(super) fn totals(order: &Order) -> Vec<TotalView> {
    let digits = papers::minor_digits(order);
    let ceilings = papers::ceilings(order);
    let Some(price) = papers::price(order) else {
        return Vec::new();
    };
    price
        .totals
        .iter()
        .map(|(payer, totals)| {
            let paid = papers::paid(order, *payer);
            let stands = papers::balance(order, *payer);
            let balance = stands.map(|stands| stands.left);
            let coin = price
                .terms
                .coin
                .filter(|_| stands.is_ok_and(|stands| !stands.left.is_zero()));
            let in_cash = coin
                .zip(balance.ok())
                .map(|(coin, left)| coin.cash(left).pays);
            let by_coin = stands.ok().map(|stands| stands.by_coin);
            let ceiling = ceilings.get(payer);
            let sum = |with_tax: bool| if with_tax { totals.gross } else { totals.net };
            let money = |amount: Decimal| say::money(amount, digits);
            let reckoned = |sum: Result<Decimal, TooLarge>| {
                sum.map_or_else(|too_large| Amount::new(too_large.to_string()), money)
            };
            let off = price.taken_off(*payer);
            TotalView {
                working_html: working(&price, *payer, digits),
                payer: PayerForm::of(payer),
                net: money(totals.net),
                tax: money(totals.tax),
                gross: money(totals.gross),
                written_down: money(off),
                paid: reckoned(paid),
                balance: reckoned(balance),
                in_cash: in_cash.map(money),
                by_coin: by_coin.filter(|by| !by.is_zero()).map(money),
                on_account: papers::on_account(order, *payer)
                    .ok()
                    .filter(|sum| !sum.is_zero())
                    .map(money),
                shares: credits::all_shares(&price, *payer, digits)
                    .iter()
                    .map(|share| credits::share(share, digits))
                    .collect(),
                ceiling: ceiling.map(|ceiling| money(ceiling.amount)),
                ceiling_with_tax: ceiling.is_some_and(|ceiling| ceiling.tax_included),
                room: ceiling
                    .map(|ceiling| money(ceiling.amount.saturating_sub(sum(ceiling.tax_included)))),
            }
        })
        .collect()
}

/// How a sum was found: each invoice's part of it, and what is on none yet.
fn working(price: &papers::Price, payer: Payer, digits: u32) -> String {
    let part = |entries: &[Entry],
                taxing: &Taxing,
                off: &BTreeMap<Payer, Decimal>,
                totals: &BTreeMap<Payer, Totals>| {
        let off = off.get(&payer).copied().unwrap_or_default();
        totals
            .get(&payer)
            .map(|total| repair::price::working(entries, taxing, payer, off, total, digits).html())
    };
    let invoices = price.invoices.iter().filter_map(|invoice| {
        part(
            &invoice.entries,
            &invoice.taxing(),
            &invoice.written_down,
            &invoice.totals,
        )
    });
    let open = part(
        &price.entries,
        &price.taxing(),
        &price.written_down,
        &price.open,
    );
    let credits = price.credits.iter().filter(|credit| credit.payer == payer);
    let back = credits.map(|credit| credit.credit.working().html());
    invoices.chain(open).chain(back).collect()
}

pub(super) fn consents(
    snap: &Snapshot<'_>,
    names: &Names<'_>,
    order: &Order,
    rules: &Rules,
) -> Vec<ConsentView> {
    let digits = papers::minor_digits(order);
    let mut out: Vec<_> = order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Consented {
                step,
                payer,
                lines,
                agreed,
                amount,
                tax_included,
                way,
                person,
                said,
                number_called,
                signature,
                ..
            } => Some((
                filed.stamp.at,
                ConsentView {
                    command: command.as_str().to_owned(),
                    step: ConsentStepForm::of(step),
                    payer: PayerForm::of(payer),
                    agreed: *agreed,
                    lines: lines.iter().map(|line| line.as_str().to_owned()).collect(),
                    amount: amount.map(|amount| say::money(amount, digits)),
                    tax_included: *tax_included,
                    way: WayForm::of(way),
                    person: snap.texts().text_of(*person),
                    said: snap.texts().text_of(*said),
                    number_called: snap.texts().text_of(*number_called),
                    signature: signature.as_ref().map(|file| file.words.hex()),
                    at: super::story::dated(rules, filed.stamp.at),
                    by: names.person(&filed.stamp.who),
                },
            )),
            _ => None,
        })
        .collect();
    out.sort_by_key(|(at, _)| *at);
    out.into_iter().map(|(_, consent)| consent).collect()
}

pub(super) fn payments(names: &Names<'_>, order: &Order, rules: &Rules) -> Vec<PaymentView> {
    let digits = papers::minor_digits(order);
    let mut out: Vec<_> = order
        .beside_moves()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Paid {
                payer,
                amount,
                by,
                deposit,
            } => Some((
                filed.stamp.at,
                PaymentView {
                    command: command.as_str().to_owned(),
                    payer: PayerForm::of(payer),
                    amount: say::money(*amount, digits),
                    by: PaidByForm::of(by),
                    deposit: *deposit,
                    at: super::story::dated(rules, filed.stamp.at),
                    taken_by: names.person(&filed.stamp.who),
                },
            )),
            _ => None,
        })
        .collect();
    out.sort_by_key(|(at, _)| *at);
    out.into_iter().map(|(_, payment)| payment).collect()
}

/// Whether the customer's sum passes what was agreed, or no sum was agreed to.
pub(crate) fn must_ask(order: &Order, rules: &Rules) -> bool {
    papers::papers(order, rules).iter().any(|reason| {
        matches!(
            reason.why,
            repair::Why::OverCeiling { .. }
                | repair::Why::NoConsent {
                    payer: Payer::Customer
                }
        )
    })
}

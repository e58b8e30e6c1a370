//! A month of money, for whoever keeps the books: invoices and credit notes, payments, taxes;
//! and what is not paid yet, whenever it was written.

use crate::amount::Amount;
use crate::phrases::books as say;
use crate::say::money;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::view;
use ::phrases::{Language, Say, spoken};
use jiff::Timestamp;
use jiff::civil::Date;
use record::form::Form;
use record::v1::codes::{PaidByForm, PayerForm};
use repair::price::Payer;
use repair::{Fact, Field, Order, OrderId, Rules, papers};
use rust_decimal::Decimal;
use std::collections::BTreeMap;

/// A month of money.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Books {
    /// The month, as `2026-11`.
    pub month: String,
    /// The month of the first invoice or payment of all; none, if there is none yet.
    pub since: Option<String>,
    /// The currency, three letters.
    pub currency: String,
    /// Invoices and credit notes in the sequence in which they were written.
    pub written: Vec<Written>,
    /// Payments as they came in.
    pub payments: Vec<Payment>,
    /// Each tax with what it was taken on.
    pub taxes: Vec<Tax>,
    /// What was paid in each way.
    pub by_way: Vec<(PaidByForm, Amount)>,
    /// Net, tax and gross of all that was written, credit notes taken off.
    pub net: Amount,
    pub tax: Amount,
    pub gross: Amount,
    /// What is on an invoice and not paid, the oldest order first.
    pub unpaid: Vec<Unpaid>,
}

/// An invoice, or a credit note with its sums below nought.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Written {
    /// The day at the shop, as `2026-11-30`.
    pub day: String,
    /// `INV-12`, or `CR-3`; empty on one that is older than such numbers.
    pub number: String,
    pub order: u64,
    pub customer: String,
    pub payer: PayerForm,
    pub net: Amount,
    pub tax: Amount,
    pub gross: Amount,
    /// The invoice that a credit note takes back from.
    pub of_invoice: Option<String>,
}

/// A payment; below nought, if it was given back.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Payment {
    /// The day at the shop.
    pub day: String,
    pub order: u64,
    pub customer: String,
    pub payer: PayerForm,
    pub by: PaidByForm,
    pub amount: Amount,
    pub deposit: bool,
}

/// A tax of a month.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Tax {
    pub name: String,
    /// Per cent.
    pub percent: Amount,
    /// What it was taken on.
    pub base: Amount,
    pub tax: Amount,
    /// Whether it was not asked, because the payer is exempt.
    pub exempt: bool,
}

/// An order with money still to come.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unpaid {
    pub number: u64,
    /// Its name in the record.
    pub order: String,
    pub customer: String,
    pub payer: PayerForm,
    /// The day of its last invoice.
    pub day: String,
    pub amount: Amount,
    /// Whether it stands on account.
    pub on_account: bool,
}

/// So many orders are looked at in one go.
const PAGE: usize = 500;

/// A month of money.
///
/// # Errors
/// [`Trouble`]: it is no month, a sum is too large, or the record cannot be read.
pub fn books(snap: &Snapshot<'_>, month: &str) -> Result<Books, Trouble> {
    let first: Date = format!("{month}-01").parse().map_err(|_| {
        Trouble::unreadable(
            say::the_month(),
            say::is_no_month(month),
            say::write_a_month_as(),
        )
    })?;
    let world = snap.world();
    let rules = snap.rules();
    let settings = world.shop.settings();
    let mut month_of = MonthOf {
        snap,
        rules: &rules,
        first,
        digits: settings.map_or(2, |set| set.minor_digits),
        found: Found::default(),
    };
    let mut before = None;
    loop {
        let page = world.orders_before(before, PAGE)?;
        let Some((last, _)) = page.last() else { break };
        before = Some(*last);
        for (number, id) in page {
            month_of.order(number, &id)?;
        }
    }
    let mut books = month_of.finished();
    month.clone_into(&mut books.month);
    books.currency = settings.map_or_else(String::new, |set| set.currency.clone());
    Ok(books)
}

#[derive(Default)]
struct Found {
    written: Vec<(Timestamp, Written)>,
    payments: Vec<(Timestamp, Payment)>,
    taxes: BTreeMap<(String, Decimal, bool), (Decimal, Decimal)>,
    by_way: BTreeMap<PaidByForm, Decimal>,
    sums: [Decimal; 3],
    unpaid: Vec<Unpaid>,
    since: Option<Date>,
}

struct MonthOf<'a> {
    snap: &'a Snapshot<'a>,
    rules: &'a Rules,
    first: Date,
    digits: u32,
    found: Found,
}

impl MonthOf<'_> {
    fn day(&mut self, at: Timestamp) -> Option<String> {
        let day = self.rules.day(at);
        self.found.since = Some(self.found.since.map_or(day, |since| since.min(day)));
        let within = day.year() == self.first.year() && day.month() == self.first.month();
        within.then(|| day.to_string())
    }

    fn order(&mut self, number: u64, id: &OrderId) -> Result<(), Trouble> {
        let world = self.snap.world();
        let order = &*world.order(id)?;
        if papers::is_voided(order) {
            return Ok(());
        }
        let Some(price) = papers::price(order) else {
            return Ok(());
        };
        let customer = || view::customer_text(self.snap, world, order, Field::Name);
        let mut name = None;
        for invoice in &price.invoices {
            let Some(day) = self.day(invoice.at) else {
                continue;
            };
            for (payer, totals) in &invoice.totals {
                let customer = match &name {
                    Some(name) => String::clone(name),
                    None => name.insert(customer()?).clone(),
                };
                let number_of = invoice.numbers.get(payer);
                self.written(
                    invoice.at,
                    Written {
                        day: day.clone(),
                        number: number_of.map_or_else(String::new, |nth| format!("INV-{nth}")),
                        order: number,
                        customer,
                        payer: PayerForm::of(payer),
                        net: money(totals.net, self.digits),
                        tax: money(totals.tax, self.digits),
                        gross: money(totals.gross, self.digits),
                        of_invoice: None,
                    },
                    [totals.net, totals.tax, totals.gross],
                );
                let billed = invoice.billed(*payer, self.digits).map_err(too_large)?;
                self.taxes(&billed.shares, Decimal::ONE);
            }
        }
        for note in &price.credits {
            let Some(day) = self.day(note.at) else {
                continue;
            };
            let of = price
                .invoices
                .iter()
                .find(|one| one.command == note.invoice);
            let of = of.and_then(|one| one.numbers.get(&note.payer));
            let sums = [
                note.credit.totals.net,
                note.credit.totals.tax,
                note.credit.totals.gross,
            ]
            .map(|sum| -sum);
            self.written(
                note.at,
                Written {
                    day,
                    number: format!("CR-{}", note.number),
                    order: number,
                    customer: customer()?,
                    payer: PayerForm::of(&note.payer),
                    net: money(sums[0], self.digits),
                    tax: money(sums[1], self.digits),
                    gross: money(sums[2], self.digits),
                    of_invoice: of.map(|nth| format!("INV-{nth}")),
                },
                sums,
            );
            self.taxes(&note.credit.shares, Decimal::NEGATIVE_ONE);
        }
        self.payments(number, order, &customer)?;
        self.unpaid(number, id, order, &price, &customer)
    }

    fn written(&mut self, at: Timestamp, one: Written, sums: [Decimal; 3]) {
        for (all, one) in self.found.sums.iter_mut().zip(sums) {
            *all += one;
        }
        self.found.written.push((at, one));
    }

    fn taxes(&mut self, shares: &[repair::price::Share], sign: Decimal) {
        for share in shares {
            let key = (share.name.clone(), share.percent.normalize(), share.exempt);
            let sums = self.found.taxes.entry(key).or_default();
            sums.0 += sign * share.base;
            sums.1 += sign * share.tax;
        }
    }

    fn payments(
        &mut self,
        number: u64,
        order: &Order,
        customer: &dyn Fn() -> Result<String, Trouble>,
    ) -> Result<(), Trouble> {
        for (_, filed) in order.beside_moves() {
            let Fact::Paid {
                payer,
                amount,
                by,
                deposit,
                ..
            } = &filed.fact
            else {
                continue;
            };
            let Some(day) = self.day(filed.stamp.at) else {
                continue;
            };
            let by = PaidByForm::of(by);
            *self.found.by_way.entry(by).or_default() += *amount;
            let payment = Payment {
                day,
                order: number,
                customer: customer()?,
                payer: PayerForm::of(payer),
                by,
                amount: money(*amount, self.digits),
                deposit: *deposit,
            };
            self.found.payments.push((filed.stamp.at, payment));
        }
        Ok(())
    }

    /// What is on an invoice and has not come in; what is on no invoice yet is asked at the desk.
    fn unpaid(
        &mut self,
        number: u64,
        id: &OrderId,
        order: &Order,
        price: &papers::Price,
        customer: &dyn Fn() -> Result<String, Trouble>,
    ) -> Result<(), Trouble> {
        let Some(last) = price.invoices.last().filter(|_| price.charged()) else {
            return Ok(());
        };
        let day = self.rules.day(last.at).to_string();
        for payer in [Payer::Customer, Payer::Warranty] {
            let owed = papers::balance(order, payer).map_err(too_large)?.left;
            let account = papers::on_account(order, payer).map_err(too_large)?;
            for (amount, on_account) in [(owed, false), (account, true)] {
                if amount > Decimal::ZERO {
                    self.found.unpaid.push(Unpaid {
                        number,
                        order: id.as_str().to_owned(),
                        customer: customer()?,
                        payer: PayerForm::of(&payer),
                        day: day.clone(),
                        amount: money(amount, self.digits),
                        on_account,
                    });
                }
            }
        }
        Ok(())
    }

    fn finished(self) -> Books {
        let digits = self.digits;
        let mut found = self.found;
        found
            .written
            .sort_by(|a, b| (a.0, &a.1.number).cmp(&(b.0, &b.1.number)));
        found.payments.sort_by_key(|(at, one)| (*at, one.order));
        found.unpaid.sort_by_key(|one| one.number);
        let [net, tax, gross] = found.sums.map(|sum| money(sum, digits));
        let taxes = found.taxes.into_iter();
        Books {
            month: String::new(),
            since: found
                .since
                .map(|day| format!("{:04}-{:02}", day.year(), day.month())),
            currency: String::new(),
            written: found.written.into_iter().map(|(_, one)| one).collect(),
            payments: found.payments.into_iter().map(|(_, one)| one).collect(),
            taxes: taxes
                .map(|((name, percent, exempt), (base, tax))| Tax {
                    name,
                    percent: percent.into(),
                    base: money(base, digits),
                    tax: money(tax, digits),
                    exempt,
                })
                .collect(),
            by_way: found
                .by_way
                .into_iter()
                .filter(|(_, sum)| !sum.is_zero())
                .map(|(by, sum)| (by, money(sum, digits)))
                .collect(),
            net,
            tax,
            gross,
            unpaid: found.unpaid,
        }
    }
}

fn too_large(_: repair::price::TooLarge) -> Trouble {
    Trouble::unreadable(
        crate::phrases::price::the_sum(),
        crate::say::too_large(),
        crate::phrases::price::look_at_the_price_again(),
    )
}

/// A list of a month as CSV (RFC 4180), for a spreadsheet or whoever keeps the books.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum List {
    Invoices,
    Payments,
    Taxes,
}

impl List {
    pub const ALL: [List; 3] = [List::Invoices, List::Payments, List::Taxes];

    /// Its name in an address and in the name of its file.
    #[must_use]
    pub const fn name(self) -> &'static str {
        match self {
            List::Invoices => "invoices",
            List::Payments => "payments",
            List::Taxes => "taxes",
        }
    }

    /// The list of this name.
    #[must_use]
    pub fn named(name: &str) -> Option<List> {
        List::ALL.into_iter().find(|list| list.name() == name)
    }

    /// Its rows, the heads first. Words that a spreadsheet would take for a formula begin with an
    /// apostrophe.
    ///
    /// Where figures have a decimal comma, semicolons part the columns: a spreadsheet set to that
    /// language opens it as it is. Its first sign says that it is UTF-8, or umlauts are misread
    /// (common practice).
    #[must_use]
    pub fn csv(self, books: &Books) -> String {
        let (delimiter, begins) = match spoken() {
            Language::English => (b',', ""),
            Language::German => (b';', "\u{feff}"),
        };
        let mut out = csv::WriterBuilder::new()
            .delimiter(delimiter)
            .terminator(csv::Terminator::CRLF)
            .from_writer(begins.as_bytes().to_vec());
        for row in self.rows(books) {
            out.write_record(row).expect("memory takes every row");
        }
        let bytes = out.into_inner().unwrap_or_default();
        String::from_utf8(bytes).unwrap_or_default()
    }

    fn rows(self, books: &Books) -> Vec<Vec<String>> {
        let heads = |all: &[Say]| all.iter().map(|head| head().to_owned()).collect::<Vec<_>>();
        let mut rows = Vec::new();
        match self {
            List::Invoices => {
                rows.push(heads(&[
                    say::day,
                    say::number,
                    say::order,
                    say::customer,
                    say::payer,
                    say::before_tax,
                    say::tax,
                    say::total,
                    say::currency,
                    say::of_invoice,
                ]));
                rows.extend(books.written.iter().map(|one| {
                    vec![
                        one.day.clone(),
                        one.number.clone(),
                        one.order.to_string(),
                        words(&one.customer),
                        payer(one.payer),
                        one.net.to_type(),
                        one.tax.to_type(),
                        one.gross.to_type(),
                        books.currency.clone(),
                        one.of_invoice.clone().unwrap_or_default(),
                    ]
                }));
            }
            List::Payments => {
                rows.push(heads(&[
                    say::day,
                    say::order,
                    say::customer,
                    say::payer,
                    say::how,
                    say::amount,
                    say::currency,
                    say::deposit,
                ]));
                rows.extend(books.payments.iter().map(|one| {
                    vec![
                        one.day.clone(),
                        one.order.to_string(),
                        words(&one.customer),
                        payer(one.payer),
                        way(one.by),
                        one.amount.to_type(),
                        books.currency.clone(),
                        yes_or_no(one.deposit),
                    ]
                }));
            }
            List::Taxes => {
                rows.push(heads(&[
                    say::month,
                    say::tax,
                    say::per_cent,
                    say::on,
                    say::amount,
                    say::currency,
                    say::exempt,
                ]));
                rows.extend(books.taxes.iter().map(|one| {
                    vec![
                        books.month.clone(),
                        words(&one.name),
                        one.percent.to_type(),
                        one.base.to_type(),
                        one.tax.to_type(),
                        books.currency.clone(),
                        yes_or_no(one.exempt),
                    ]
                }));
            }
        }
        rows
    }
}

fn payer(payer: PayerForm) -> String {
    match payer {
        PayerForm::Customer => say::of_customer(),
        PayerForm::Warranty => say::of_warranty(),
        PayerForm::Goodwill => say::of_goodwill(),
    }
    .to_owned()
}

fn way(by: PaidByForm) -> String {
    match by {
        PaidByForm::Cash => say::cash(),
        PaidByForm::Card => say::card(),
        PaidByForm::Transfer => say::transfer(),
        PaidByForm::Cheque => say::cheque(),
        PaidByForm::OnAccount => say::on_account(),
    }
    .to_owned()
}

fn yes_or_no(yes: bool) -> String {
    if yes { say::yes() } else { say::no() }.to_owned()
}

fn words(text: &str) -> String {
    if text.starts_with(['=', '+', '-', '@', '\t', '\r']) {
        format!("'{text}")
    } else {
        text.to_owned()
    }
}

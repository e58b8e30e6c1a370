//! The papers, each made from the same values as the screen.

mod apart;
mod credit;
mod estimate;
mod how_to;
mod invoice;
pub mod label_sheets;
mod labels;
mod missing;
mod photo;
mod price;
mod receipt;
mod sheet;
mod signature;
mod stall;
pub(crate) mod words;
mod worksheet;

use crate::e_invoice::{self, Of};
use crate::engine::face;
use crate::engine::page::{Attached, Paper, Photo, SheetSize};
use crate::engine::pdf;
use crate::phrases as say;
use crate::wording::Wording;
use drawing::Drawing;
use label_sheets::Labels;
pub use missing::{Missing, Rule, missing};
use phrases::speaking;
use serde_json::{Value, json};
use shop::planning::{RowShown, map_of_order, on_map_of, torque_source};
use shop::record::form::Form;
use shop::record::v1::codes::{LanguageForm, PayerForm};
use shop::repair::{Language, Words};
use shop::view::{CreditView, InvoiceView, MendingView, OnPapers, OrderView, on_papers};
use shop::{Amount, Snapshot, Trouble, TroubleKind};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// Which paper.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    /// What is proposed, what it comes to, and where the customer says yes.
    Estimate,
    /// What is to be added to what was agreed, and what it comes to then.
    AddedWork,
    /// What was charged, for what, and how the vehicle leaves.
    Invoice,
    /// What is taken back of an invoice.
    CreditNote,
    /// What was paid, when and how.
    Receipt,
    /// What is not put back, for who collects the vehicle dismantled.
    Apart,
    /// The stages of the plan, to tick at the vehicle.
    WorkSheet,
    /// Labels for the trays.
    Labels,
    /// How the job was done, for the next who does it.
    HowTo,
}

impl Kind {
    /// Every paper.
    pub const ALL: [Self; 9] = [
        Self::Estimate,
        Self::AddedWork,
        Self::Invoice,
        Self::CreditNote,
        Self::Receipt,
        Self::Apart,
        Self::WorkSheet,
        Self::Labels,
        Self::HowTo,
    ];

    /// Its name in a command and in an address.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Estimate => "estimate",
            Self::AddedWork => "added-work",
            Self::Invoice => "invoice",
            Self::CreditNote => "credit-note",
            Self::Receipt => "receipt",
            Self::Apart => "apart",
            Self::WorkSheet => "work-sheet",
            Self::Labels => "labels",
            Self::HowTo => "how-to",
        }
    }

    /// What people call it.
    #[must_use]
    pub fn title(self) -> &'static str {
        match self {
            Self::Estimate => "Estimate",
            Self::AddedWork => "Request for added work",
            Self::Invoice => "Invoice",
            Self::CreditNote => "Credit note",
            Self::Receipt => "Receipt",
            Self::Apart => "Collected dismantled",
            Self::WorkSheet => "Work sheet",
            Self::Labels => "Tray labels",
            Self::HowTo => "How it was done",
        }
    }

    /// The paper of this name; `credit` is short for a credit note.
    #[must_use]
    pub fn named(name: &str) -> Option<Self> {
        match name {
            "credit" => Some(Self::CreditNote),
            _ => Self::ALL.into_iter().find(|kind| kind.name() == name),
        }
    }

    /// Whether it is for the stall: it speaks as the screen does.
    #[must_use]
    pub fn is_for_the_stall(self) -> bool {
        matches!(self, Self::WorkSheet | Self::Labels | Self::HowTo)
    }

    /// Whether it shows prices.
    #[must_use]
    pub fn has_prices(self) -> bool {
        matches!(
            self,
            Self::Estimate | Self::AddedWork | Self::Invoice | Self::CreditNote | Self::Receipt
        )
    }
}

/// What is asked for.
#[derive(Debug, Clone)]
pub struct Asked {
    /// Which paper.
    pub kind: Kind,
    /// For whom.
    pub payer: PayerForm,
    /// The command that had the invoice or credit note written, where one of several is meant.
    pub written: Option<String>,
    /// The sheet; none, for the one of the shop's place.
    pub size: Option<SheetSize>,
    /// Where the program can be reached from a phone, for the codes on labels.
    pub address: Option<String>,
    /// The language; none, for that of the shop's papers, or for the stall that of the screen.
    pub language: Option<Language>,
    /// What tray labels are printed on.
    pub labels: Labels,
}

impl Asked {
    /// A paper for the customer, on the sheet of the shop's place.
    #[must_use]
    pub fn of(kind: Kind) -> Self {
        Self {
            kind,
            payer: PayerForm::Customer,
            written: None,
            size: None,
            address: None,
            language: None,
            labels: Labels::default(),
        }
    }
}

impl Asked {
    /// What a paper for the stall speaks.
    fn speaks(&self) -> phrases::Language {
        self.language.map_or_else(phrases::spoken, spoken_as)
    }
}

fn spoken_as(language: Language) -> phrases::Language {
    match language {
        Language::English => phrases::Language::English,
        Language::German => phrases::Language::German,
    }
}

/// A paper that was made.
#[derive(Debug, Clone)]
pub struct Made {
    /// What the file is called: `invoice-INV-12.pdf`.
    pub file: String,
    /// The PDF.
    pub pdf: Vec<u8>,
    /// How many pages it has.
    pub pages: usize,
    /// The same values for a program.
    pub values: Value,
    /// The paper as it was laid out.
    pub paper: Paper,
}

/// What a paper is made from.
struct Given<'a> {
    order: &'a OrderView,
    payer: PayerForm,
    invoice: Option<&'a InvoiceView>,
    /// The credit note that it is.
    credit: Option<&'a CreditView>,
    size: SheetSize,
    /// The hash at the head of the record.
    head: Option<String>,
    address: Option<String>,
    labels: Labels,
    /// What the program itself says of the vehicle, in the language of the paper.
    said: OnPapers,
    /// What went wrong on the way and is not settled, for the request for added work.
    snags: Vec<MendingView>,
    /// Signatures that were drawn on the screen, by their files.
    signatures: BTreeMap<String, Drawing>,
    /// Photos of what was found, by their files.
    photos: BTreeMap<String, Photo>,
    /// The shop's picture.
    logo: Option<Photo>,
    /// What covers the price how often, where the shop has timed such work before.
    cover: Option<Covered>,
    wording: &'static Wording,
    /// What drawings on it speak.
    speaks: phrases::Language,
}

/// An amount that covers a price so many times in ten.
struct Covered {
    amount: Amount,
    with_tax: bool,
    in_ten: u32,
}

/// Makes a paper of an order from what is true now. From the same values come the same bytes.
///
/// # Errors
/// [`Trouble`]: there is no such order; the record cannot be read; who asks sees no prices; a
/// text has letters that no built-in font can set, which are named.
pub fn make(snap: &Snapshot<'_>, number: u64, asked: &Asked) -> Result<Made, Trouble> {
    prices_shown(snap, asked.kind)?;
    let order = read(snap, number)?;
    let mut laid = lay_out(snap, &order, asked)?;
    if matches!(asked.kind, Kind::Invoice | Kind::CreditNote) && e_invoice::is_wanted(&order) {
        let made = subject(&order, asked).map(|of| e_invoice::e_invoice(&order, of));
        laid.paper.e_invoice = made.ok().and_then(Result::ok).map(|made| made.xml);
    }
    made(laid)
}

/// A paper that is laid out, and not written as a file yet.
#[derive(Debug, Clone)]
pub struct Laid {
    pub paper: Paper,
    /// The same values for a program.
    pub values: Value,
}

/// Lays a paper of this order out, as a screen shows it and a file prints it.
///
/// # Errors
/// [`Trouble`], as of [`make`]; letters that no font has are no trouble yet.
pub fn lay_out(snap: &Snapshot<'_>, order: &OrderView, asked: &Asked) -> Result<Laid, Trouble> {
    prices_shown(snap, asked.kind)?;
    if asked.kind.is_for_the_stall() {
        return speaking(asked.speaks(), || {
            let order = shop::view::order(snap, order.number)?;
            laid_out(snap, &order, asked)
        });
    }
    let order = read(snap, order.number)?;
    if asked.kind == Kind::CreditNote {
        // What is refused is said as the screen speaks.
        credit::picked(&order, asked)?;
    }
    speaking(phrases::Language::English, || laid_out(snap, &order, asked))
}

/// An order as papers read it: always the same, whatever is spoken on the screen. What the
/// customer reads of it is said in the language of the paper.
fn read(snap: &Snapshot<'_>, number: u64) -> Result<Arc<OrderView>, Trouble> {
    speaking(phrases::Language::English, || {
        shop::view::order(snap, number)
    })
}

fn laid_out(snap: &Snapshot<'_>, order: &OrderView, asked: &Asked) -> Result<Laid, Trouble> {
    let (store, log) = snap.record();
    let head = Words(store.head(log)?.hash).hex();
    let screen = || match phrases::spoken() {
        phrases::Language::English => Language::English,
        phrases::Language::German => Language::German,
    };
    let told = asked
        .language
        .or_else(|| asked.kind.is_for_the_stall().then(screen));
    let language = told.map_or(order.papers.letterhead.language, |language| {
        LanguageForm::of(&language)
    });
    let language = language.read().unwrap_or_default();
    let speaks = spoken_as(language);
    // What is proposed for a thread is said as the paper speaks, whoever took the way.
    let snags = speaking(speaks, || snags(snap, order, asked.kind))?;
    let how = match asked.kind {
        Kind::HowTo => Some(shop::how_to::how_to(snap, order.number)?),
        _ => None,
    };
    let mut given = Given {
        order,
        photos: match &how {
            Some(how) => photo::of_how_to(snap, how)?,
            None => photo::of_snags(snap, &snags)?,
        },
        logo: photo::logo(snap, order)?,
        cover: covered(snap, order, asked),
        wording: Wording::of(language),
        speaks,
        payer: asked.payer,
        invoice: picked(order, asked),
        credit: None,
        size: asked.size.unwrap_or_else(|| size_of(snap)),
        head: Some(head),
        address: asked.address.clone(),
        labels: asked.labels,
        snags,
        signatures: signatures(snap, order)?,
        said: on_papers(snap, &order.order, language)?,
    };
    let paper = match asked.kind {
        Kind::HowTo => how_to::paper(&given, &how.unwrap_or_default()),
        Kind::Estimate => estimate::estimate(&given),
        Kind::AddedWork => estimate::added(&given),
        Kind::Invoice => invoice::paper(&given),
        Kind::CreditNote => {
            let note = credit::picked(order, asked)?;
            (given.invoice, given.credit) = (None, Some(note));
            credit::paper(&given, note)
        }
        Kind::Receipt => receipt::paper(&given),
        Kind::Apart => apart::paper(&given),
        Kind::WorkSheet => worksheet::paper(&given, &planned(snap, order.number)?),
        Kind::Labels => labels::paper(&given),
    };
    Ok(Laid {
        values: values(&given),
        paper,
    })
}

/// The e-invoice of an invoice or a credit note.
///
/// # Errors
/// [`Trouble`]: there is no such order or paper; who asks sees no prices; with everything that is
/// missing for an e-invoice.
pub fn e_invoice_of(
    snap: &Snapshot<'_>,
    number: u64,
    asked: &Asked,
) -> Result<e_invoice::EInvoice, Trouble> {
    prices_shown(snap, asked.kind)?;
    let order = read(snap, number)?;
    e_invoice::e_invoice(&order, subject(&order, asked)?).map_err(|lacks| {
        let mut trouble = Trouble::new(
            TroubleKind::Refused,
            say::the_e_invoice(),
            say::something_missing(),
            say::tell_and_ask_again(),
        );
        trouble.reasons = lacks
            .into_iter()
            .map(|lack| match lack.at.as_str() {
                "" => lack.what,
                at => format!("{} ({at})", lack.what),
            })
            .collect();
        trouble
    })
}

/// The invoice or credit note that is meant.
fn subject<'a>(order: &'a OrderView, asked: &Asked) -> Result<Of<'a>, Trouble> {
    match asked.kind {
        Kind::CreditNote => Ok(Of::Credit(credit::picked(order, asked)?)),
        Kind::Invoice => picked(order, asked).map(Of::Invoice).ok_or_else(|| {
            let mut trouble = Trouble::not_found(say::no_invoice());
            trouble.mend = say::write_an_invoice(order.number);
            trouble
        }),
        other => {
            let mut trouble = Trouble::not_found(say::no_e_invoice_of(other.name()));
            say::ask_for_those().clone_into(&mut trouble.mend);
            Err(trouble)
        }
    }
}

/// Papers with prices are for whoever is shown any.
fn prices_shown(snap: &Snapshot<'_>, kind: Kind) -> Result<(), Trouble> {
    if !kind.has_prices() || snap.caller().sees_prices() {
        return Ok(());
    }
    Err(Trouble::new(
        TroubleKind::Refused,
        say::the_paper(),
        say::shows_prices(),
        say::ask_at_the_desk(),
    ))
}

/// Stages that have to have been timed before a customer is told how often a sum suffices.
const TIMED_AT_LEAST: usize = 30;

/// What covers the estimate nine times in ten.
fn covered(snap: &Snapshot<'_>, order: &OrderView, asked: &Asked) -> Option<Covered> {
    let is_asked = asked.kind == Kind::Estimate && asked.payer == PayerForm::Customer;
    let odds = is_asked.then(|| shop::odds_of::odds_of(snap, order.number, None));
    let odds = odds?.ok().filter(|odds| odds.stages >= TIMED_AT_LEAST)?;
    let cover = odds.covers.last()?;
    Some(Covered {
        amount: cover.amount.clone(),
        with_tax: odds.with_tax,
        in_ten: 9,
    })
}

/// What was signed on the screen; what was erased since, or photographed, is left out.
fn signatures(
    snap: &Snapshot<'_>,
    order: &OrderView,
) -> Result<BTreeMap<String, Drawing>, Trouble> {
    let customer = order.row.customer.as_str();
    let consents = order.consents.iter();
    let consents = consents.map(|one| (&one.signature, one.person.as_deref().unwrap_or(customer)));
    let declined = order.declined.iter().map(|one| (&one.signature, customer));
    let left = order.left.iter();
    let left = left.map(|left| {
        (
            &left.signature,
            left.signed_by.as_deref().unwrap_or(customer),
        )
    });
    let mut out = BTreeMap::new();
    for (file, who) in consents.chain(declined).chain(left) {
        let Some(words) = file.as_deref().and_then(Words::from_hex) else {
            continue;
        };
        let found = snap.texts().file(words)?;
        let drawn = found.and_then(|(_, bytes)| signature::strokes(&bytes, who));
        if let Some(drawn) = drawn {
            out.insert(words.hex(), drawn);
        }
    }
    Ok(out)
}

fn snags(snap: &Snapshot<'_>, order: &OrderView, kind: Kind) -> Result<Vec<MendingView>, Trouble> {
    let wanted = order.snags.iter().filter(|_| kind == Kind::AddedWork);
    wanted
        .map(|snag| shop::view::mending(snap, order.number, &snag.snag))
        .collect()
}

/// The plan of an order's whole job.
fn planned(snap: &Snapshot<'_>, number: u64) -> Result<worksheet::Plan, Trouble> {
    let none = || {
        let mut trouble = Trouble::not_found(say::no_plan());
        trouble.mend = say::pick_what_to_get_at(number);
        trouble
    };
    let (map, version) = map_of_order(snap, number)?.ok_or_else(none)?;
    let on = on_map_of(snap, number, &map, Some(version), None)?;
    if !on.asks() {
        return Err(none());
    }
    let shown = on.whole(snap)?;
    let rows = || {
        shown
            .off
            .iter()
            .chain(&shown.back)
            .flat_map(|stage| &stage.rows)
    };
    let known = |row: &RowShown| on.map.items.get(&row.item);
    let tightened = rows().filter(|row| !row.torque.is_empty());
    let sources = tightened
        .filter_map(|row| torque_source(&on.map, known(row)?))
        .collect();
    let things: Vec<_> = rows().filter_map(|row| on.thing(&row.item)).collect();
    Ok(worksheet::Plan {
        cautions: shop::cautions(&things),
        sources,
        shown,
    })
}

fn made(Laid { paper, values }: Laid) -> Result<Made, Trouble> {
    settable(&paper)?;
    let (paper, written) = match pdf::pdf(&paper) {
        // A photo that cannot be written keeps nobody from the paper.
        Err(_) if paper.has_photos() => {
            let without = paper.without_photos();
            let written = pdf::pdf(&without);
            (without, written)
        }
        written => (paper, written),
    };
    let pdf = written.map_err(|error| {
        Trouble::new(
            TroubleKind::Record,
            &paper.title,
            error.to_string(),
            say::print_from_the_browser(),
        )
    })?;
    Ok(Made {
        file: format!("{}.pdf", file_name(&paper.title)),
        pdf,
        pages: paper.pages.len(),
        values,
        paper,
    })
}

/// The credit note that was asked for; else the one written last.
#[must_use]
pub fn note<'a>(order: &'a OrderView, asked: &Asked) -> Option<&'a CreditView> {
    credit::picked(order, asked).ok()
}

/// The invoice that was asked for; else what is on none yet; else the one written last.
#[must_use]
pub fn picked<'a>(order: &'a OrderView, asked: &Asked) -> Option<&'a InvoiceView> {
    let price = order.price.as_ref()?;
    let written = || price.invoices.iter().filter(|one| one.payer == asked.payer);
    let wanted = asked
        .written
        .as_deref()
        .and_then(|command| written().find(|one| one.command == command));
    let next = || price.next.iter().find(|one| one.payer == asked.payer);
    wanted.or_else(next).or_else(|| written().next_back())
}

/// Letter in the places that print on it, A4 everywhere else.
fn size_of(snap: &Snapshot<'_>) -> SheetSize {
    let settings = snap.world().shop.settings();
    match settings {
        Some(set) if ["USD", "CAD", "MXN"].contains(&set.currency.as_str()) => SheetSize::Letter,
        _ => SheetSize::A4,
    }
}

/// Names the letters that cannot be set, with the text they stand in, before anything is printed.
fn settable(paper: &Paper) -> Result<(), Trouble> {
    let mut reasons = BTreeSet::new();
    for (_, text) in paper.texts() {
        let missing = face::unset(&text.text);
        if !missing.is_empty() {
            let letters: Vec<String> = missing
                .iter()
                .map(|letter| format!("{letter} (U+{:04X})", u32::from(*letter)))
                .collect();
            reasons.insert(say::letters_in(letters.join(", "), text.text.trim()));
        }
    }
    if reasons.is_empty() {
        return Ok(());
    }
    let mut trouble = Trouble::new(
        TroubleKind::Refused,
        &paper.title,
        say::letters_not_printed(),
        say::write_other_letters(),
    );
    trouble.reasons = reasons.into_iter().collect();
    Err(trouble)
}

/// A title as the name of a file: letters, figures and hyphens.
fn file_name(title: &str) -> String {
    let plain = |letter: char| {
        if letter.is_ascii_alphanumeric() || letter == '-' {
            letter
        } else {
            '-'
        }
    };
    title.chars().map(plain).collect::<String>()
}

/// The values of a paper for a program: what is printed, nothing else.
fn values(given: &Given<'_>) -> Value {
    let order = given.order;
    if let Some(note) = given.credit {
        return json!({
            "shop": order.papers.shop, "letterhead": order.papers.letterhead,
            "order": order.number, "number": note.number, "day": note.day,
            "of_invoice": note.invoice_number, "payer": given.payer,
            "customer": { "name": order.row.customer, "address": order.papers.address },
            "currency": order.papers.currency, "why": note.words, "lines": note.lines,
            "shares": note.shares, "net": note.net, "tax": note.tax, "gross": note.gross,
        });
    }
    let total = order.totals.iter().find(|total| total.payer == given.payer);
    let entries = price::entries(order, given.payer, given.invoice);
    let sums = price::Sums::of(order, given.payer, given.invoice);
    json!({
        "shop": order.papers.shop,
        "letterhead": order.papers.letterhead,
        "order": order.number,
        "number": given.invoice.and_then(|invoice| invoice.number.clone()),
        "day": given.invoice.map_or(&order.papers.today, |invoice| &invoice.day),
        "payer": given.payer,
        "customer": { "name": order.row.customer, "address": order.papers.address },
        "vehicle": { "name": order.row.vehicle, "plate": order.row.plate, "vin": order.papers.vin,
            "odometer_in": order.papers.odometer_in, "odometer_out": order.papers.odometer_out },
        "currency": order.papers.currency,
        "entries": entries.iter().map(|entry| json!({ "label": entry.label, "charge": entry.charge,
            "quantity": entry.quantity_exact, "each": entry.each_exact, "less": entry.less, "amount": entry.amount })).collect::<Vec<_>>(),
        "discount": sums.as_ref().map(|sums| sums.written_down),
        "net": sums.as_ref().map(|sums| sums.net),
        "taxes": sums.as_ref().map(|sums| sums.taxes),
        "shares": sums.as_ref().map(|sums| sums.shares),
        "exempt_by": sums.as_ref().and_then(|sums| sums.exempt_by),
        "tax": sums.as_ref().map(|sums| sums.tax),
        "gross": sums.as_ref().map(|sums| sums.gross),
        "paid": total.map(|total| &total.paid),
        "still_to_pay": total.map(|total| &total.balance),
    })
}

/// The values as a file within the PDF.
fn attached(given: &Given<'_>, heading: &sheet::Heading<'_>) -> Attached {
    let title = format!("{} {}", heading.kind, heading.number);
    Attached {
        name: format!("{}.json", file_name(&title)),
        description: format!("The values of {title} for a program"),
        json: values(given).to_string(),
    }
}

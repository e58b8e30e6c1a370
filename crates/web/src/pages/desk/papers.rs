//! The papers for whoever pays, in the customer's words: estimate, added work, invoice.
//! Each is a page that prints, one for each payer.

mod price;
mod state;

use crate::State;
use crate::pages::{Shown, Visit, order_of, show};
use crate::tap::{Look, input, link, signed};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use papers::Kind;
use price::{entries, money, prices, sums};
use serde::{Deserialize, Serialize};
use shop::Trouble;
use shop::record::form::Form as _;
use shop::record::v1::codes::{LanguageForm, PayerForm};
use shop::repair::{Language, Words};
use shop::view::{AskView, ConsentView, InvoiceView, LineView, OrderView, TotalView};
use state::{left_so, tests};

/// For whom the paper is.
#[derive(Debug, Deserialize)]
pub struct For {
    payer: Option<PayerForm>,
    /// The command that had the invoice written, where one of several is meant.
    written: Option<String>,
    /// The language of the PDF; none, for that of the shop's papers.
    language: Option<LanguageForm>,
}

impl For {
    pub fn payer(&self) -> PayerForm {
        self.payer.unwrap_or(PayerForm::Customer)
    }

    pub fn written(&self) -> Option<String> {
        self.written.clone()
    }

    pub fn language(&self) -> Option<Language> {
        self.language.and_then(|language| language.read().ok())
    }
}

/// What a paper is called: as a page, and on the paper itself.
struct Heading {
    title: &'static str,
    printed: &'static str,
    kind: Kind,
}

const ESTIMATE: Heading = Heading {
    title: "Estimate",
    printed: "Estimate",
    kind: Kind::Estimate,
};
const ADDED: Heading = Heading {
    title: "Added work",
    printed: "Request for added work",
    kind: Kind::AddedWork,
};
const INVOICE: Heading = Heading {
    title: "Invoice",
    printed: "Invoice",
    kind: Kind::Invoice,
};

/// What every paper is asked with.
type Asked = (extract::State<State>, HeaderMap, Path<String>, Query<For>);

/// Where an invoice that was written stands on its paper.
pub fn invoice_page(order: &OrderView, invoice: &InvoiceView) -> String {
    let payer = word(&invoice.payer);
    format!(
        "/o/{}/invoice?payer={payer}&written={}",
        order.number, invoice.command
    )
}

pub async fn estimate(asked: Asked) -> Response {
    show_paper(asked, &ESTIMATE, |_, paper| {
        Ok(html! {
            (paper.lines())
            (prices(paper))
            section {
                h2 { "Your approval" }
                @if let Some(total) = paper.total() {
                    p class="gap" { "We expect this to come to " (total.net) " before tax, " (total.gross) " with it. We do nothing beyond what you agree to: if more is needed, we ask first." }
                }
                p class="gap" { "If something has to be taken apart to find the fault and you then decide against the repair, putting it back together is charged within the sum you agree to here; or you collect it apart." }
                p class="gap boxes" { span { "Old parts:" } span { "☐ I want them back" } span { "☐ you may keep them" } }
                (paper.agreed())
                (paper.signature("I agree to the work above, up to"))
            }
        })
    })
    .await
}

pub async fn added(asked: Asked) -> Response {
    show_paper(asked, &ADDED, |_, paper| {
        Ok(html! {
            (paper.lines())
            section {
                h2 { "Agreed so far" }
                (paper.agreed())
            }
            @if let Some(ask) = paper.ask() {
                section {
                    h2 { "What is added" }
                    @if ask.added.is_empty() { p class="gap" { "Nothing has been added since you agreed." } }
                    @else { (entries("Added", &ask.added)) }
                    @if !ask.dropped.is_empty() { h3 class="gap" { "No longer in the price" } (entries("No longer in the price", &ask.dropped)) }
                }
            }
            @if let Some(total) = paper.total() {
                section {
                    h2 { "What it comes to now" }
                    (sums(paper.order, total))
                    p class="gap strong" { (question(total)) }
                    (paper.signature("I agree to the added work, up to, in total"))
                }
            }
        })
    })
    .await
}

pub async fn invoice(asked: Asked) -> Response {
    show_paper(asked, &INVOICE, |visit, paper| {
        let (store, log) = visit.snap.record();
        let head = Words(store.head(log)?.hash).hex();
        Ok(html! {
            @if paper.is_draft() { p class="wait gap" { "Not written yet: this is how it would read now." } }
            (paper.others())
            (paper.lines())
            (prices(paper))
            (money(paper))
            section {
                h2 { "What you agreed to" }
                (paper.agreed())
            }
            @if paper.payer == PayerForm::Customer {
                (tests(paper.order))
                (left_so(paper.order))
            }
            p class="soft gap head" { "Verification code: " code { "buttonup verify --head " (head) } }
        })
    })
    .await
}

/// Answers with one payer's paper.
async fn show_paper(
    (extract::State(state), headers, Path(number), Query(whose)): Asked,
    heading: &'static Heading,
    content: impl FnOnce(&Visit<'_>, &Paper<'_>) -> Result<Markup, Trouble> + Send + 'static,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let mut paper = Paper::of(&order, whose.payer());
        if std::ptr::eq(heading, &INVOICE) {
            paper.invoice = paper.picked(whose.written.as_deref());
        }
        let content = content(visit, &paper)?;
        let page = paper.page(heading, content);
        Ok(Shown::of(&order, heading.title, page))
    })
    .await
}

/// An order as one payer's paper shows it.
pub(super) struct Paper<'a> {
    order: &'a OrderView,
    payer: PayerForm,
    /// The invoice that it is, written or as it would be.
    invoice: Option<&'a InvoiceView>,
}

impl<'a> Paper<'a> {
    fn of(order: &'a OrderView, payer: PayerForm) -> Self {
        Self {
            order,
            payer,
            invoice: None,
        }
    }

    /// This payer's invoices that were written.
    fn written(&self) -> impl Iterator<Item = &'a InvoiceView> {
        let payer = self.payer;
        let all = self.order.price.iter().flat_map(|price| &price.invoices);
        all.filter(move |invoice| invoice.payer == payer)
    }

    /// The invoice that was asked for; else what is on none yet; else the one written last.
    fn picked(&self, command: Option<&str>) -> Option<&'a InvoiceView> {
        let mut next = self.order.price.iter().flat_map(|price| &price.next);
        let asked = command.and_then(|command| self.written().find(|one| one.command == command));
        asked
            .or_else(|| next.find(|one| one.payer == self.payer))
            .or_else(|| self.written().last())
    }

    fn is_draft(&self) -> bool {
        self.invoice
            .is_none_or(|invoice| invoice.command.is_empty())
    }

    /// The other invoices of this payer, each a tap away; not on the paper.
    fn others(&self) -> Markup {
        let shown = self.invoice.map_or("", |invoice| invoice.command.as_str());
        html! {
            @for invoice in self.written().filter(|invoice| invoice.command != shown) {
                p class="gap screen-only" { a href=(invoice_page(self.order, invoice)) { "Invoice " (invoice.number.as_deref().unwrap_or("")) " of " (invoice.day) ": " (invoice.gross) } }
            }
        }
    }

    fn total(&self) -> Option<&'a TotalView> {
        let mut totals = self.order.totals.iter();
        totals.find(|total| total.payer == self.payer)
    }

    fn ask(&self) -> Option<&'a AskView> {
        self.order.asks.iter().find(|ask| ask.payer == self.payer)
    }

    /// The lines this payer pays for, wholly or in part.
    fn paid_lines(&self) -> Vec<&'a LineView> {
        let priced = |line: &LineView| {
            let mut entries = self.order.price.iter().flat_map(|price| &price.entries);
            entries
                .any(|entry| entry.payer == self.payer && entry.line.as_deref() == Some(&line.line))
        };
        let lines = self.order.lines.iter();
        lines
            .filter(|line| line.payer == self.payer || priced(line))
            .collect()
    }

    fn page(&self, heading: &Heading, content: Markup) -> Markup {
        let title = heading.printed;
        let papers = &self.order.papers;
        let day = self.invoice.map_or(&papers.today, |invoice| &invoice.day);
        // An invoice bears a number of its own, since invoices have one.
        let own = self.invoice.and_then(|invoice| invoice.number.as_deref());
        let order_number = self.order.number.to_string();
        let row = &self.order.row;
        let told = |label: &str, text: &str| {
            html! { @if !text.is_empty() { div { dt class="soft" { (label) } dd { (text) } } } }
        };
        html! {
            div class="paper narrow" {
                (self.missing(heading.kind))
                p class="beside gap" { (papers.shop) }
                @for line in papers.letterhead.lines("Tax number") { p class="soft" { (line) } }
                h1 class="spread" {
                    span { (title) @if self.payer != PayerForm::Customer { " for " (payer_name(self.payer)) } }
                    span class="number" { (own.unwrap_or(&order_number)) }
                }
                dl class="parties" {
                    (told("Date", day))
                    @if own.is_some() { (told("Order", &order_number)) }
                    (told("Customer", &row.customer))
                    (told("Address", &papers.address))
                    (told("Telephone", &papers.phone))
                    (told("Vehicle", &row.vehicle))
                    (told("Plate", &row.plate))
                    (told("Vehicle identification number", &papers.vin))
                    (told("Odometer in", papers.odometer_in.as_deref().unwrap_or("")))
                    (told("Odometer out", papers.odometer_out.as_deref().unwrap_or("")))
                }
                (content)
                (self.file(heading.kind))
                div class="presses even" {
                    button class="press" type="button" data-print { "Print" }
                    (link(Look::Plain, "Desk", "", &format!("/o/{}/desk", self.order.number)))
                }
            }
        }
    }

    /// What the rules of the shop's place ask of it and it lacks; not on the paper.
    fn missing(&self, kind: Kind) -> Markup {
        let missing = papers::missing(self.order, kind, self.payer);
        let Some(first) = missing.first() else {
            return html! {};
        };
        html! {
            div class="caution screen-only" {
                p class="strong" { "Missing on this paper" }
                @for one in &missing { p { a href=(one.at) { (shop::say::capital(one.what)) } } }
                p class="soft" { (first.rule.rule) ", as of " (first.rule.as_of) ". " (shop::places::NOT_ADVICE) }
            }
        }
    }

    /// The same as a PDF, and a form to keep it as it was given out.
    fn file(&self, kind: Kind) -> Markup {
        let written = self
            .invoice
            .filter(|invoice| !invoice.command.is_empty())
            .map_or_else(String::new, |invoice| {
                format!("&written={}", invoice.command)
            });
        let (code, language) = match self.order.papers.letterhead.language {
            LanguageForm::English => ("de", "German"),
            LanguageForm::German => ("en", "English"),
        };
        let query = format!("payer={}{written}", word(&self.payer));
        let address = super::paper_file::address(self.order.number, kind, &query);
        html! {
            form class="screen-only" method="post" action=(address) {
                (input("given", "Given to, and how", "it is kept as it is now, to be found again", ""))
                div class="presses even" {
                    (link(Look::Confirm, "Paper", "PDF", &address))
                    button class="press" type="submit" { "Save as given out" }
                }
                a class="row" href=(format!("{address}&language={code}")) { span class="what strong" { "The same in " (language) } span class="soft" { "PDF" } }
            }
        }
    }

    fn lines(&self) -> Markup {
        let others: Vec<_> = self
            .order
            .lines
            .iter()
            .filter(|line| line.payer != self.payer)
            .collect();
        html! {
            section {
                h2 { "What you told us, what we found, what we did" }
                @for line in self.paid_lines() {
                    dl class="told" {
                        dt class="soft" { "Complaint" } dd class="strong" { (line.complaint) }
                        @if let Some(cause) = &line.cause { dt class="soft" { "Cause" } dd { (cause) } }
                        @if let Some(correction) = &line.correction { dt class="soft" { "Correction" } dd { (correction) } }
                    }
                }
                @if self.payer == PayerForm::Customer {
                    @for line in others {
                        p class="gap soft" { (line.complaint) ": paid by " (payer_name(line.payer)) }
                    }
                }
            }
        }
    }

    /// What this payer said yes and no to.
    fn agreed(&self) -> Markup {
        let consents: Vec<_> = self
            .order
            .consents
            .iter()
            .filter(|consent| consent.payer == self.payer)
            .collect();
        html! {
            @if consents.is_empty() { p class="gap" { "Nothing has been agreed to yet." } }
            @for consent in consents {
                div class="told" {
                    p { (consented(consent)) }
                    @if let Some(said) = &consent.said { p class="soft" { "Said: " (said) } }
                    (signed(consent.signature.as_deref(), consent.person.as_deref().unwrap_or("")))
                }
            }
        }
    }

    fn signature(&self, words: &str) -> Markup {
        html! {
            div class="to-sign" {
                p class="gap" { (words) " " span class="blank" {} " " (self.order.papers.currency) }
                div class="signature" { span { "Date" } span { "Name" } span { "Signature" } }
            }
        }
    }
}

/// One consent in a sentence: who, what, how, when.
fn consented(consent: &ConsentView) -> String {
    let who = consent.person.as_deref().unwrap_or("The payer");
    let yes = if consent.agreed { "yes" } else { "no" };
    let amount = consent.amount.as_ref().map_or_else(String::new, |amount| {
        let tax = if consent.tax_included {
            "with tax"
        } else {
            "before tax"
        };
        format!(", up to {amount} in total {tax}")
    });
    let called = consent
        .number_called
        .as_ref()
        .map_or_else(String::new, |number| format!(", number called {number}"));
    format!(
        "{who} said {yes} to: {}{amount} ({}, {}{called}; asked by {})",
        step_name(consent),
        word(&consent.way),
        consent.at,
        consent.by
    )
}

fn step_name(consent: &ConsentView) -> &'static str {
    use shop::record::v1::codes::ConsentStepForm as Step;
    match consent.step {
        Step::Diagnose => "finding the fault",
        Step::TakeApart => "taking it apart, and putting it back if declined",
        Step::Repair => "the repair",
        Step::Add => "added work",
    }
}

/// The ask in one sentence.
fn question(total: &TotalView) -> String {
    let with_tax = if total.ceiling_with_tax {
        "with tax"
    } else {
        "before tax"
    };
    let now = format!(
        "It now comes to {} before tax, {} with it",
        total.net, total.gross
    );
    match (&total.ceiling, &total.room) {
        (Some(ceiling), Some(room)) => match room.strip_prefix('-') {
            Some(over) => format!(
                "{now}; you agreed to {ceiling} {with_tax}, so it is {over} over: may we do the added work?"
            ),
            None => format!("{now}; it stays within the {ceiling} {with_tax} that you agreed to."),
        },
        _ => format!("{now}: may we do it?"),
    }
}

pub fn payer_name(payer: PayerForm) -> &'static str {
    match payer {
        PayerForm::Customer => "the customer",
        PayerForm::Warranty => "the warranty",
        PayerForm::Goodwill => "us, as goodwill",
    }
}

/// A code as a person reads it: `in-person` is `in person`.
pub fn word(code: &impl Serialize) -> String {
    serde_json::to_value(code)
        .ok()
        .and_then(|value| value.as_str().map(|code| code.replace('-', " ")))
        .unwrap_or_default()
}

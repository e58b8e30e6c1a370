//! The papers for whoever pays, as pages: each shows what the printed one says, from the very
//! same values, with what it lacks, and the ways to print it and to keep it.

mod shown;

use crate::State;
use crate::pages::{Shown, Visit, order_of, show};
use crate::tap::{Look, chips, input, link};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use papers::e_invoice::{EInvoice, Lack, Of, e_invoice, is_wanted};
use papers::{Asked, FORMATS, Format, Kind, Labels, lay_out};
use serde::{Deserialize, Serialize};
use shop::record::form::Form as _;
use shop::record::v1::codes::{LanguageForm, PayerForm};
use shop::repair::Language;
use shop::view::{InvoiceView, OrderView};
use shop::{Trouble, TroubleKind};
use std::sync::Arc;

/// For whom the paper is.
#[derive(Debug, Clone, Deserialize)]
pub struct For {
    payer: Option<PayerForm>,
    /// The command that had the invoice written, where one of several is meant.
    written: Option<String>,
    /// The language; none, for that of the shop's papers.
    language: Option<LanguageForm>,
    /// The sheet of labels that tray labels are printed on; empty, for plain paper.
    #[serde(default)]
    labels: String,
    /// The first label that is left on it.
    #[serde(default)]
    from: String,
}

impl For {
    pub fn payer(&self) -> PayerForm {
        self.payer.unwrap_or(PayerForm::Customer)
    }

    /// A paper of this kind, for whom it is asked.
    ///
    /// # Errors
    /// [`Trouble`]: there is no such sheet of labels, or no such label on it.
    pub fn asked(&self, kind: Kind) -> Result<Asked, Trouble> {
        Ok(Asked {
            payer: self.payer(),
            written: self.written.clone(),
            language: self.language(),
            labels: self.labels()?,
            ..Asked::of(kind)
        })
    }

    fn labels(&self) -> Result<Labels, Trouble> {
        let bad = |what: String, mend: String| {
            Trouble::new(TroubleKind::Unreadable, "the labels", what, mend)
        };
        let format = match self.labels.as_str() {
            "" => None,
            name => Some(Format::named(name).ok_or_else(|| {
                let names = FORMATS.each_ref().map(|format| format.name).join(", ");
                let name = shop::say::shortened(name);
                bad(
                    format!("there is no sheet of labels called {name:?}"),
                    format!("choose one of these: {names}"),
                )
            })?),
        };
        let most = format.map_or(1, Format::on_a_sheet);
        let from = match self.from.trim() {
            "" => Some(1),
            from => from.parse().ok().filter(|from| (1..=most).contains(from)),
        };
        let from = from.ok_or_else(|| {
            bad(
                format!(
                    "{:?} is no label of the sheet",
                    shop::say::shortened(&self.from)
                ),
                format!("name the first that is left, from 1 to {most}"),
            )
        });
        // Plain paper has no labels that are gone.
        let from = if format.is_none() { 1 } else { from? };
        Ok(Labels { format, from })
    }

    /// The command that had it written, where one of several is meant.
    pub fn written(&self) -> Option<&str> {
        self.written.as_deref()
    }

    fn language(&self) -> Option<Language> {
        self.language.and_then(|language| language.read().ok())
    }
}

/// What every paper is asked with.
type Wanted = (extract::State<State>, HeaderMap, Path<String>, Query<For>);

/// Where an invoice that was written stands on its paper.
pub fn invoice_page(order: &OrderView, invoice: &InvoiceView) -> String {
    let payer = word(&invoice.payer);
    format!(
        "/o/{}/invoice?payer={payer}&written={}",
        order.number, invoice.command
    )
}

pub async fn estimate(asked: Wanted) -> Response {
    show_paper(asked, Kind::Estimate).await
}

pub async fn added(asked: Wanted) -> Response {
    show_paper(asked, Kind::AddedWork).await
}

pub async fn invoice(asked: Wanted) -> Response {
    show_paper(asked, Kind::Invoice).await
}

/// Answers with one payer's paper.
pub async fn show_paper(
    (extract::State(state), headers, Path(number), Query(whose)): Wanted,
    kind: Kind,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let page = page(visit, &order, &whose.asked(kind)?)?;
        Ok(Shown::of(&order, kind.title(), page))
    })
    .await
}

/// The page of a paper.
pub fn page(visit: &Visit<'_>, order: &Arc<OrderView>, asked: &Asked) -> Result<Markup, Trouble> {
    let laid = lay_out(visit.snap, order, asked)?;
    let told = papers::read(&laid.paper);
    let invoice = (asked.kind == Kind::Invoice)
        .then(|| papers::picked(order, asked))
        .flatten();
    let e_invoice = as_e_invoice(order, asked, invoice);
    let draft = asked.kind == Kind::Invoice && invoice.is_none_or(|one| one.command.is_empty());
    Ok(html! {
        div class="narrow" {
            (missing(order, asked))
            @if let Some(Err(missing)) = &e_invoice { (lacks(missing)) }
            @if draft { p class="wait gap screen-only" { "Not written yet: this is how it would read now." } }
            (others(order, asked, invoice))
            div class="paper" lang=(laid.paper.language) {
                @for part in &told { (shown::part(part)) }
                @if !laid.paper.foot.is_empty() { p class="soft gap" { (laid.paper.foot) } }
            }
            @if asked.kind == Kind::Labels { (sheets(order)) }
            @else { (file(order, asked, invoice, matches!(e_invoice, Some(Ok(_))))) }
            div class="presses even" {
                button class="press" type="button" data-print { "Print" }
                (link(Look::Plain, "Desk", "", &format!("/o/{}/desk", order.number)))
            }
        }
    })
}

/// The other invoices of this payer, each a tap away; not on the paper.
fn others(order: &OrderView, asked: &Asked, invoice: Option<&InvoiceView>) -> Markup {
    if asked.kind != Kind::Invoice {
        return html! {};
    }
    let shown = invoice.map_or("", |invoice| invoice.command.as_str());
    let all = order.price.iter().flat_map(|price| &price.invoices);
    let others = all.filter(|one| one.payer == asked.payer && one.command != shown);
    html! {
        @for invoice in others {
            p class="gap screen-only" { a href=(invoice_page(order, invoice)) { "Invoice " (invoice.number.as_deref().unwrap_or("")) " of " (invoice.day) ": " (invoice.gross) } }
        }
    }
}

/// What the rules of the shop's place ask of it and it lacks; not on the paper.
fn missing(order: &OrderView, asked: &Asked) -> Markup {
    let missing = papers::missing(order, asked.kind, asked.payer);
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

/// The e-invoice of a paper that was written, where the shop's papers are to have one in them.
fn as_e_invoice(
    order: &OrderView,
    asked: &Asked,
    invoice: Option<&InvoiceView>,
) -> Option<Result<EInvoice, Vec<Lack>>> {
    let of = match asked.kind {
        Kind::Invoice => invoice
            .filter(|one| !one.command.is_empty())
            .map(Of::Invoice),
        Kind::CreditNote => papers::note(order, asked).map(Of::Credit),
        _ => None,
    };
    let of = of.filter(|_| is_wanted(order))?;
    Some(e_invoice(order, of))
}

/// What an e-invoice lacks; not on the paper.
fn lacks(lacks: &[Lack]) -> Markup {
    html! {
        div class="caution screen-only" {
            p class="strong" { "It prints without an e-invoice. For one there is missing:" }
            @for lack in lacks {
                p {
                    @if lack.at.is_empty() { (shop::say::capital(&lack.what)) }
                    @else { a href=(lack.at) { (shop::say::capital(&lack.what)) } }
                }
            }
        }
    }
}

/// The same as a PDF, and a form to keep it as it was given out.
fn file(
    order: &OrderView,
    asked: &Asked,
    invoice: Option<&InvoiceView>,
    has_e_invoice: bool,
) -> Markup {
    let written = match asked.kind {
        Kind::Invoice => invoice.map(|invoice| invoice.command.as_str()),
        Kind::CreditNote => papers::note(order, asked).map(|note| note.command.as_str()),
        _ => None,
    };
    let written = written.filter(|command| !command.is_empty());
    let written = written.map_or_else(String::new, |command| format!("&written={command}"));
    let shops = order.papers.letterhead.language;
    let language = asked.language.as_ref().map_or(shops, LanguageForm::of);
    let own = match language {
        LanguageForm::English => ("en", "English"),
        LanguageForm::German => ("de", "German"),
    };
    let other = match language {
        LanguageForm::English => ("de", "German"),
        LanguageForm::German => ("en", "English"),
    };
    let query = format!("payer={}{written}", word(&asked.payer));
    let address = |language: &str| {
        let query = format!("{query}{language}");
        super::paper_file::address(order.number, asked.kind, &query)
    };
    let chosen = if language == shops {
        String::new()
    } else {
        format!("&language={}", own.0)
    };
    html! {
        form class="screen-only" method="post" action=(address(&chosen)) {
            (input("given", "Given to, and how", "it is kept as it is now, to be found again", ""))
            div class="presses even" {
                (link(Look::Confirm, "Paper", "PDF", &address(&chosen)))
                button class="press" type="submit" { "Save as given out" }
            }
            @if has_e_invoice {
                a class="row" href=(super::paper_file::of_e_invoice(order.number, asked.kind, &query)) { span class="what strong" { "The e-invoice by itself" } span class="soft" { "XML; it is in the PDF, too" } }
            }
            a class="row" href=(address(&format!("&language={}", other.0))) { span class="what strong" { "The same in " (other.1) } span class="soft" { "PDF" } }
        }
    }
}

/// What labels are printed on, and from which label.
fn sheets(order: &OrderView) -> Markup {
    let choices: Vec<(&str, &str)> = [("", "plain paper, to cut")]
        .into_iter()
        .chain(FORMATS.iter().map(|format| (format.name, format.title)))
        .collect();
    html! {
        form class="screen-only" method="get" action=(super::paper_file::of_kind(order.number, Kind::Labels)) {
            (chips("labels", "Printed on", &choices, ""))
            (input("from", "From label", "the first that is left on a begun sheet, row by row", "1"))
            div class="presses" { button class="press confirm" type="submit" { "Labels" small { "PDF" } } }
        }
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

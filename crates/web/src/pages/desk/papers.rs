//! The papers for whoever pays, as pages: each shows what the printed one says, from the very
//! same values, with what it lacks, and the ways to print it and to keep it.

mod shown;

use crate::State;
use crate::pages::{Shown, Visit, order_of, show};
use crate::phrases::desk as say;
use crate::tap::{Look, chips, input, link};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use papers::e_invoice::{EInvoice, Lack, Of, e_invoice, is_wanted};
use papers::{Asked, FORMATS, Format, Kind, Labels, lay_out};
use serde::{Deserialize, Serialize};
use shop::record::form::Form as _;
use shop::record::v1::codes::{ConsentStepForm, LanguageForm, PayerForm, WayForm};
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
            Trouble::new(TroubleKind::Unreadable, say::the_labels(), what, mend)
        };
        let format = match self.labels.as_str() {
            "" => None,
            name => Some(Format::named(name).ok_or_else(|| {
                let names = FORMATS.each_ref().map(|format| format.name).join(", ");
                let name = shop::say::shortened(name);
                bad(
                    say::no_sheet_called(format_args!("{name:?}")),
                    say::choose_one_of(names),
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
                say::no_label_of_sheet(format_args!("{:?}", shop::say::shortened(&self.from))),
                say::name_first_left(most),
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
        Ok(Shown::of(&order, paper_name(kind), page))
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
            @if draft { p class="wait gap screen-only" { (say::not_written_yet()) } }
            (others(order, asked, invoice))
            div class="paper" lang=(laid.paper.language) {
                @for part in &told { (shown::part(part)) }
                @if !laid.paper.foot.is_empty() { p class="soft gap" { (laid.paper.foot) } }
            }
            @if asked.kind == Kind::Labels { (sheets(order)) }
            @else { (file(order, asked, invoice, matches!(e_invoice, Some(Ok(_))))) }
            div class="presses even" {
                button class="press" type="button" data-print { (say::print()) }
                (link(Look::Plain, say::desk(), "", &format!("/o/{}/desk", order.number)))
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
            p class="gap screen-only" { a href=(invoice_page(order, invoice)) { (say::invoice_of_day_sum(invoice.number.as_deref().unwrap_or(""), &invoice.day, &invoice.gross)) } }
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
            p class="strong" { (say::missing_on_paper()) }
            @for one in &missing { p { a href=(one.at) { (shop::say::capital(one.what)) } } }
            p class="soft" { (say::rule_as_of(&first.rule.rule, &first.rule.as_of)) (shop::places::NOT_ADVICE) }
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
            p class="strong" { (say::prints_without_e_invoice()) }
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
    let (own, (other, in_the_other)) = match language {
        LanguageForm::English => ("en", ("de", say::same_in_german())),
        LanguageForm::German => ("de", ("en", say::same_in_english())),
    };
    let query = format!("payer={}{written}", word(&asked.payer));
    let address = |language: &str| {
        let query = format!("{query}{language}");
        super::paper_file::address(order.number, asked.kind, &query)
    };
    let chosen = if language == shops {
        String::new()
    } else {
        format!("&language={own}")
    };
    html! {
        form class="screen-only" method="post" action=(address(&chosen)) {
            (input("given", say::given_to(), say::kept_as_now(), ""))
            div class="presses even" {
                (link(Look::Confirm, say::paper(), "PDF", &address(&chosen)))
                button class="press" type="submit" { (say::save_as_given_out()) }
            }
            @if has_e_invoice {
                a class="row" href=(super::paper_file::of_e_invoice(order.number, asked.kind, &query)) { span class="what strong" { (say::e_invoice_alone()) } span class="soft" { (say::xml_in_pdf()) } }
            }
            a class="row" href=(address(&format!("&language={other}"))) { span class="what strong" { (in_the_other) } span class="soft" { "PDF" } }
        }
    }
}

/// What labels are printed on, and from which label.
fn sheets(order: &OrderView) -> Markup {
    let choices: Vec<(&str, &str)> = [("", say::plain_paper())]
        .into_iter()
        .chain(FORMATS.iter().map(|format| (format.name, format.title)))
        .collect();
    html! {
        form class="screen-only" method="get" action=(super::paper_file::of_kind(order.number, Kind::Labels)) {
            (chips("labels", say::printed_on(), &choices, ""))
            (input("from", say::from_label(), say::first_left(), "1"))
            div class="presses" { button class="press confirm" type="submit" { (say::labels()) small { "PDF" } } }
        }
    }
}

pub fn payer_name(payer: PayerForm) -> &'static str {
    match payer {
        PayerForm::Customer => say::the_customer(),
        PayerForm::Warranty => say::the_warranty(),
        PayerForm::Goodwill => say::us_as_goodwill(),
    }
}

/// The same as who is asked, or for whom something is.
pub fn payer_whom(payer: PayerForm) -> &'static str {
    match payer {
        PayerForm::Customer => say::whom_customer(),
        PayerForm::Warranty => say::whom_warranty(),
        PayerForm::Goodwill => say::whom_us(),
    }
}

/// Behind the name of a paper: for whom it is.
pub fn for_payer(payer: PayerForm) -> String {
    say::for_whom(payer_whom(payer))
}

/// Beside what is charged: who pays it.
pub fn payer_pays(payer: PayerForm) -> &'static str {
    match payer {
        PayerForm::Customer => say::customer_pays(),
        PayerForm::Warranty => say::warranty_pays(),
        PayerForm::Goodwill => say::we_pay(),
    }
}

/// Who may pay, to choose from.
pub fn payers() -> [(&'static str, &'static str); 3] {
    [
        ("customer", say::payer_customer()),
        ("warranty", say::payer_warranty()),
        ("goodwill", say::payer_goodwill()),
    ]
}

/// What people call a paper.
pub fn paper_name(kind: Kind) -> &'static str {
    match kind {
        Kind::Estimate => say::estimate(),
        Kind::AddedWork => say::request_for_added_work(),
        Kind::Invoice => say::invoice(),
        Kind::CreditNote => say::credit_note(),
        Kind::Receipt => say::receipt(),
        Kind::Apart => say::collected_dismantled(),
        Kind::WorkSheet => say::work_sheet(),
        Kind::Labels => say::tray_labels(),
        Kind::HowTo => say::how_it_was_done(),
    }
}

/// What is agreed to, as it is told.
pub fn step_word(step: ConsentStepForm) -> &'static str {
    match step {
        ConsentStepForm::Diagnose => say::diagnose(),
        ConsentStepForm::TakeApart => say::take_apart(),
        ConsentStepForm::Repair => say::repair(),
        ConsentStepForm::Add => say::add(),
    }
}

/// How an answer came, as it is told.
pub fn way_word(way: WayForm) -> &'static str {
    match way {
        WayForm::InPerson => say::in_person(),
        WayForm::Phone => say::by_phone(),
        WayForm::Message => say::by_message(),
        WayForm::Mail => say::by_mail(),
        WayForm::Signed => say::signed(),
    }
}

/// The word of a code, as it stands in an address.
pub fn word(code: &impl Serialize) -> String {
    serde_json::to_value(code)
        .ok()
        .and_then(|value| value.as_str().map(str::to_owned))
        .unwrap_or_default()
}

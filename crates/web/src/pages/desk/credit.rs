//! A credit note: what is taken back of an invoice, which stays as it was written.

use super::papers::{for_payer, invoice_page};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::desk as say;
use crate::tap::{Look, button, field, figure, link, order_request, required, text, when};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, PreEscaped, html};
use serde_json::{Value, json};
use shop::record::v1::codes::ChargeForm;
use shop::view::{CreditView, InvoiceView, OrderView};

use super::papers::For;

pub async fn credit(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(whose): Query<For>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let written = whose.written().map(str::to_owned);
        let invoices: Vec<&InvoiceView> = order
            .price
            .iter()
            .flat_map(|price| &price.invoices)
            .filter(|invoice| invoice.number.is_some())
            .filter(|invoice| written.as_ref().is_none_or(|written| invoice.command == *written))
            .filter(|invoice| written.is_none() || invoice.payer == whose.payer())
            .collect();
        Ok(Shown::of(&order, say::credit_note(), html! {
            h1 { (say::credit_note()) }
            p class="gap" { (say::credit_note_does()) }
            @for invoice in &invoices { (taking_back(&order, invoice)) }
            @if invoices.is_empty() { p class="gap" { (say::no_invoice_to_credit()) } }
            (written_notes(&order))
            div class="presses low" { (link(Look::Plain, say::invoice_money_keys(), "", &format!("/o/{}/pay", order.number))) }
        }))
    })
    .await
}

fn taking_back(order: &OrderView, invoice: &InvoiceView) -> Markup {
    let lines: Vec<Value> = (0u32..)
        .zip(&invoice.entries)
        .map(|(nth, _)| {
            let amount = format!("back-{nth}");
            when(&amount, json!({ "line": nth, "amount": field(&amount), "keeps_tax": { "$flag": format!("keeps-{nth}") } }))
        })
        .collect();
    let credit = order_request(
        &order.order,
        json!({ "credit": { "invoice": invoice.command, "payer": invoice.payer, "lines": lines, "words": text("why") } }),
    );
    html! {
        h2 { a href=(invoice_page(order, invoice)) { (say::invoice_of_day(invoice.number.as_deref().unwrap_or(""), &invoice.day)) } @if order.totals.len() > 1 { (for_payer(invoice.payer)) } }
        form {
            @for (nth, entry) in invoice.entries.iter().enumerate() {
                @let left = invoice.left.get(nth).cloned().unwrap_or_default();
                (figure(&format!("back-{nth}"), &say::entry_goes_back(&entry.label), &say::left_of(left, &entry.amount), "", false))
                @if entry.charge == ChargeForm::Core {
                    label class="row" { input type="checkbox" name=(format!("keeps-{nth}")) value="yes"; span { (say::tax_is_kept()) } }
                }
            }
            (required("why", say::why(), say::stands_on_credit_note(), ""))
            div class="presses" { (button(Look::Confirm, say::write_the_credit_note(), "", &[credit], None)) }
        }
    }
}

/// The credit notes that were written, each a tap from its paper.
pub fn written_notes(order: &OrderView) -> Markup {
    let credits: Vec<&CreditView> = order
        .price
        .iter()
        .flat_map(|price| &price.credits)
        .collect();
    html! {
        @if !credits.is_empty() { h2 { (say::credit_notes()) } }
        @for credit in credits {
            a class="row" href=(note_page(order, credit)) {
                span class="what" {
                    span class="strong line" { (say::credit_note_numbered(&credit.number)) }
                    span class="soft line" { (credit.day) @if let Some(invoice) = &credit.invoice_number { (say::of_invoice(invoice)) } ": " (credit.words) }
                }
                span class="strong number" { "-" (credit.gross) }
            }
            details id=(format!("found-{}", credit.number)) {
                summary class="row" { span class="soft" { (say::how_found()) } }
                div class="working" { (PreEscaped(&credit.working_html)) }
            }
        }
    }
}

/// Where a credit note stands on its paper.
fn note_page(order: &OrderView, credit: &CreditView) -> String {
    let payer = super::papers::word(&credit.payer);
    let query = format!("payer={payer}&written={}", credit.command);
    super::paper_file::page(order.number, papers::Kind::CreditNote, &query)
}

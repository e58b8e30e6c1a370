//! The papers for the customer, in their words: estimate, added work, invoice. Each is a
//! page that prints.

use super::{Shown, order_of, show};
use crate::State;
use crate::tap::{Look, link};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Serialize;
use shop::record::v1::codes::{ChargeForm, OutcomeForm, PayerForm};
use shop::repair::Words;
use shop::view::{OrderView, PriceEntryView, TotalView};
use std::collections::BTreeSet;

pub async fn estimate(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let total = customer(&order);
        Ok(Shown::of(&order, "Estimate", paper(&order, "Estimate", &order.papers.today, html! {
            (lines(&order))
            (price(&order))
            section {
                h2 { "Your word" }
                @if let Some(total) = total {
                    p class="gap" { "We expect this to come to " (total.net) " before tax, " (total.gross) " with it. We do nothing beyond what you agree to: if more is needed, we ask first." }
                }
                (agreed(&order))
                (signature("I agree to the work above, up to"))
            }
        })))
    })
    .await
}

pub async fn added(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let papers = &order.papers;
        Ok(Shown::of(&order, "Added work", paper(&order, "Added work", &papers.today, html! {
            (lines(&order))
            section {
                h2 { "Agreed so far" }
                (agreed(&order))
            }
            section {
                h2 { "What is added" }
                @if papers.added.is_empty() { p class="gap" { "Nothing has been added since you agreed." } }
                @else { (entries("Added", &papers.added)) }
                @if !papers.dropped.is_empty() { h3 class="gap" { "No longer in the price" } (entries("No longer in the price", &papers.dropped)) }
            }
            @if let Some(total) = customer(&order) {
                section {
                    h2 { "What it comes to now" }
                    (sums(&order, total))
                    p class="gap strong" { (question(total)) }
                    (signature("I agree to the added work, up to, in all"))
                }
            }
        })))
    })
    .await
}

pub async fn invoice(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let (store, log) = ask.service.record();
        let head = Words(store.head(log)?.hash).hex();
        let day = order.papers.charged_on.as_ref().unwrap_or(&order.papers.today);
        Ok(Shown::of(&order, "Invoice", paper(&order, "Invoice", day, html! {
            @if order.papers.charged_on.is_none() { p class="wait gap" { "Not written yet: this is how it would read now." } }
            (lines(&order))
            (price(&order))
            (money(&order))
            (tests(&order))
            (left_so(&order))
            p class="soft gap head" { "Hold this paper against the record: " code { "buttonup verify --head " (head) } }
        })))
    })
    .await
}

fn paper(order: &OrderView, title: &str, day: &str, content: Markup) -> Markup {
    let papers = &order.papers;
    let row = &order.row;
    let told = |label: &str, text: &str| {
        html! { @if !text.is_empty() { div { dt class="soft" { (label) } dd { (text) } } } }
    };
    html! {
        div class="paper narrow" {
            p class="beside gap" { (papers.shop) }
            h1 class="spread" { span { (title) } span { (order.number) } }
            dl class="parties" {
                (told("Date", day))
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
            div class="presses" { (link(Look::Plain, "Desk", "", &format!("/o/{}/desk", order.number))) }
        }
    }
}

fn lines(order: &OrderView) -> Markup {
    html! {
        section {
            h2 { "What you told us, what we found, what we did" }
            @for line in &order.lines {
                dl class="told" {
                    dt class="soft" { "Complaint" } dd class="strong" { (line.complaint) }
                    @if let Some(cause) = &line.cause { dt class="soft" { "Cause" } dd { (cause) } }
                    @if let Some(correction) = &line.correction { dt class="soft" { "Correction" } dd { (correction) } }
                }
            }
        }
    }
}

/// What each payer's work and parts come to.
fn price(order: &OrderView) -> Markup {
    html! {
        section {
            h2 { "Price" }
            @if order.totals.is_empty() { p class="gap" { "No price yet." } }
            @for total in &order.totals {
                @if total.payer != PayerForm::Customer { h3 class="gap" { "Paid by " (payer(total.payer)) } }
                @for (name, charges) in GROUPS {
                    @let group: Vec<_> = order.price.iter().flat_map(|price| &price.entries)
                        .filter(|entry| entry.payer == total.payer && charges.contains(&entry.charge)).cloned().collect();
                    @if !group.is_empty() { (entries(name, &group)) }
                }
                (sums(order, total))
            }
        }
    }
}

const GROUPS: [(&str, &[ChargeForm]); 3] = [
    ("Labour", &[ChargeForm::Labour, ChargeForm::Test]),
    ("Parts", &[ChargeForm::Part, ChargeForm::Supplies]),
    (
        "Other",
        &[ChargeForm::Sublet, ChargeForm::Core, ChargeForm::Fee],
    ),
];

fn entries(name: &str, entries: &[PriceEntryView]) -> Markup {
    html! {
        table {
            thead { tr { th scope="col" { (name) } th scope="col" class="number" { "Comes to" } } }
            tbody {
                @for entry in entries {
                    tr {
                        td {
                            span class="line" { (entry.label) }
                            span class="soft line" { (entry.quantity) " × " (entry.each) }
                        }
                        td class="number" { (entry.amount) }
                    }
                }
            }
        }
    }
}

fn sums(order: &OrderView, total: &TotalView) -> Markup {
    let taxes = order
        .price
        .as_ref()
        .map_or_else(String::new, |price| price.taxes.join(", "));
    html! {
        table class="sums" {
            tbody {
                @if !nought(&total.written_down) { (sum("Written down, before tax", &format!("-{}", total.written_down))) }
                (sum("Before tax", &total.net))
                (sum(&if taxes.is_empty() { "Tax".to_owned() } else { format!("Tax: {taxes}") }, &total.tax))
                tr class="strong" { th scope="row" { "In all, " (order.papers.currency) } td class="number" { (total.gross) } }
            }
        }
    }
}

fn sum(name: &str, amount: &str) -> Markup {
    html! { tr { th scope="row" { (name) } td class="number" { (amount) } } }
}

/// What was said yes and no to.
fn agreed(order: &OrderView) -> Markup {
    html! {
        @if order.consents.is_empty() { p class="gap" { "Nothing has been agreed to yet." } }
        @for consent in &order.consents {
            p class="gap" {
                (consent.person.as_deref().unwrap_or("The payer")) " said " @if consent.agreed { "yes" } @else { "no" }
                @if let Some(amount) = &consent.amount { ", up to " (amount) " in all" }
                " (" (word(&consent.step)) ", " (word(&consent.way)) ", " (consent.at) ")"
            }
        }
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

fn signature(words: &str) -> Markup {
    html! {
        p class="gap" { (words) " ____________" }
        div class="signature" { span { "Date" } span { "Name" } span { "Signature" } }
    }
}

fn money(order: &OrderView) -> Markup {
    html! {
        @if let Some(total) = customer(order) {
            section {
                h2 { "Paid" }
                table class="sums" {
                    tbody {
                        @for paid in &order.payments { (sum(&format!("{}, {}", shop::say::capital(&word(&paid.by)), paid.at), &paid.amount)) }
                        (sum("Paid in all", &total.paid))
                        tr class="strong" { th scope="row" { "Left to pay, " (order.papers.currency) } td class="number" { (total.balance) } }
                    }
                }
            }
        }
        section {
            h2 { "What you agreed to" }
            (agreed(order))
        }
    }
}

fn tests(order: &OrderView) -> Markup {
    let proofs = &order.papers.proofs;
    html! {
        @if !proofs.is_empty() {
            section {
                h2 { "How we tested it" }
                @for proof in proofs {
                    p class="gap" {
                        span class="strong" { (shop::say::capital(&proof.name)) ": " (outcome(proof.outcome)) }
                        @if let Some(words) = &proof.words { ". " (words) }
                        " (" (proof.by) ", " (proof.at) ")"
                    }
                }
                @if proofs.iter().any(|proof| proof.outcome == OutcomeForm::NotProvoked) {
                    p class="gap strong" { "We could not bring your complaint back. It may come again: note when and how it does, and come back to us." }
                }
            }
        }
    }
}

fn outcome(outcome: OutcomeForm) -> &'static str {
    match outcome {
        OutcomeForm::Held => "it held",
        OutcomeForm::Failed => "it did not hold",
        OutcomeForm::NotProvoked => "the complaint did not show",
    }
}

/// How the vehicle leaves: old parts, what was let pass, what is different, what is due.
fn left_so(order: &OrderView) -> Markup {
    let old: Vec<String> = order
        .parts
        .iter()
        .filter(|part| part.has_old)
        .map(|part| {
            format!(
                "{}: old one {}",
                part.label,
                part.old.as_deref().unwrap_or("not accounted for yet")
            )
        })
        .collect();
    // One reason may stand at several gates.
    let passed: BTreeSet<String> = order
        .waivers
        .iter()
        .filter(|waiver| waiver.prints)
        .map(|waiver| format!("{}, {}", waiver.reason, waiver.waived))
        .collect();
    let apart: Vec<String> = order.open_items.iter().map(|o| o.text.clone()).collect();
    let due: Vec<String> = order
        .debts
        .iter()
        .filter(|debt| debt.before.is_none())
        .map(|debt| debt.text.clone())
        .collect();
    html! {
        (list("Old parts", old))
        (list("Let pass", passed))
        (list("Not put back", apart))
        (list("Different from others of its kind", order.papers.differences.iter().cloned()))
        (list("Due later", due))
    }
}

fn list(title: &str, rows: impl IntoIterator<Item = String>) -> Markup {
    let rows: Vec<String> = rows.into_iter().collect();
    html! {
        @if !rows.is_empty() {
            section {
                h2 { (title) }
                ul { @for row in &rows { li { (shop::say::capital(row)) } } }
            }
        }
    }
}

fn customer(order: &OrderView) -> Option<&TotalView> {
    order
        .totals
        .iter()
        .find(|total| total.payer == PayerForm::Customer)
}

fn payer(payer: PayerForm) -> &'static str {
    match payer {
        PayerForm::Customer => "you",
        PayerForm::Warranty => "the warranty",
        PayerForm::Goodwill => "us, as goodwill",
    }
}

/// A code as a person reads it: `in-person` is `in person`.
fn word(code: &impl Serialize) -> String {
    serde_json::to_value(code)
        .ok()
        .and_then(|value| value.as_str().map(|code| code.replace('-', " ")))
        .unwrap_or_default()
}

fn nought(amount: &str) -> bool {
    !amount.bytes().any(|digit| (b'1'..=b'9').contains(&digit))
}

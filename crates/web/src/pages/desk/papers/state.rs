//! The vehicle on the customer's paper: how it was tested, and how it leaves.

use crate::tap::signed;
use maud::{Markup, html};
use shop::record::v1::codes::OutcomeForm;
use shop::view::{LeftView, OrderView};
use std::collections::BTreeSet;

pub fn tests(order: &OrderView) -> Markup {
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
        OutcomeForm::Held => "passed",
        OutcomeForm::Failed => "it did not hold",
        OutcomeForm::NotProvoked => "the complaint did not show",
    }
}

/// How the vehicle leaves: old parts, what was let pass or declined, what is not put back,
/// what is different, what is due.
pub fn left_so(order: &OrderView) -> Markup {
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
        @if !order.declined.is_empty() {
            section {
                h2 { "Work you declined" }
                @for declined in &order.declined {
                    div class="told" {
                        p { (declined.what) ": " (declined.words) " (" (declined.at) ")" }
                        (signed(declined.signature.as_deref(), "the customer"))
                    }
                }
            }
        }
        (list("Not put back", apart))
        (list("Modified on this vehicle", order.papers.differences.iter().cloned()))
        (list("Due later", due))
        @if let Some(left) = &order.left { (leaving(left)) }
    }
}

fn leaving(left: &LeftView) -> Markup {
    html! {
        section {
            h2 { "Delivery" }
            div class="told" {
                p {
                    (shop::say::capital(&left.how)) ", " (left.at) ": " (left.ending)
                    @if let Some(boxes) = left.boxes { ". Boxes that went with it: " (boxes) }
                    ". Handed over by " (left.by)
                }
                @if left.boxes.is_some() { p class="strong" { "Not put back together: it must not be driven or started." } }
                @if let Some(by) = &left.signed_by { p { @if left.signature.is_some() { "Signed for by " } @else { "Collected by " } (by) } }
                (signed(left.signature.as_deref(), left.signed_by.as_deref().unwrap_or("")))
            }
        }
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

//! Handing over: driven away, or collected apart and signed for; and back in again.

use super::papers::{payer_name, word};
use crate::State;
use crate::pages::vehicle::gates::against;
use crate::pages::{Shown, count, order_of, show};
use crate::tap::{
    Look, amount, button, chips, field, figure, file, input, order_fact, order_request, required,
    sheet, signed, text, when,
};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::say::capital;
use shop::view::OrderView;

pub async fn hand_over(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let here = !order.handed_over;
        Ok(Shown::of(
            &order,
            "Hand over",
            html! {
                h1 { "Hand over" }
                @if here { (leaving(&order, visit.road_unit())) } @else { (returning(&order)) }
            },
        ))
    })
    .await
}

fn leaving(order: &OrderView, unit: &str) -> Markup {
    let next = format!("/o/{}/hand-over", order.number);
    let against = order.gates.last().map(against).unwrap_or_default();
    let stands = |kind: &str| standing(order).any(|known| known == kind);
    let sold = order.row.vehicle_id.as_deref() == Some(super::sale::COUNTER);
    let told = told_at_the_door(order);
    let (label, mut commands) = drives_away(order);
    let goes = commands.pop();
    commands.extend(told.iter().map(|told| told.command.clone()));
    let out = order_fact(
        &order.order,
        json!({ "odometer": { "reading": amount("odometer", unit), "at": "out" } }),
    );
    commands.push(when("odometer", out));
    commands.extend(goes);
    html! {
        div class="columns" {
            div {
                @if against.is_empty() { p class="large yes gap" { "Yes: nothing stands against it" } }
                @else if only_at_the_door(order) { p class="large yes gap" { "Yes, with what is asked here" } }
                @else {
                    p class="large no gap" { "No: " (count(against.len(), "reason stands", "reasons stand")) }
                    (reasons(&against))
                    a class="row" href=(format!("/o/{}/may/hand-over", order.number)) { span class="what strong" { "Fix them, or waive one" } }
                }
                (crate::pages::vehicle::open::count_by_photo(order))
                @if stands("not-charged") { (super::settle::settle(order)) }
                @else if stands("unpaid") { (super::overview::take(order)) }
                (crate::pages::vehicle::walk::key_at_the_end(order))
            }
            div {
                h2 { @if sold { "Done" } @else { "It drives away" } }
                form {
                    @for told in &told { (told.field()) }
                    @if order.papers.odometer_out.is_none() && !sold {
                        @let hint = order.papers.odometer_in.as_ref().map_or_else(String::new, |read| format!("on the way in {read}"));
                        (input("odometer", "Odometer on the way out", &hint, ""))
                    }
                    @if sold { input type="hidden" name="ending" value="repaired"; }
                    @else { (chips("ending", "It ends", &[("repaired", "repaired"), ("not-reproduced", "not reproduced"), ("declined-put-back", "declined, put back")], "repaired")) }
                    details id="received" {
                        summary class="row" { span class="what" { "Have them sign for it" } }
                        (sheet("signature", "Received"))
                    }
                    div class="presses" { (button(Look::Confirm, label, "", &commands, Some(&next))) }
                }
                @if !sold { (apart(order, &next)) }
            }
        }
    }
}

/// The kinds of what still stands against it.
fn standing(order: &OrderView) -> impl Iterator<Item = &str> {
    let gate = order.gates.last();
    let fit = gate.into_iter().flat_map(|gate| &gate.fit_to_go);
    let fit = fit.filter(|reason| reason.blocks && reason.waived.is_none());
    let papers = gate.into_iter().flat_map(|gate| &gate.papers);
    let papers = papers.filter(|reason| reason.blocks && reason.waived.is_none());
    fit.map(|reason| reason.kind.as_str())
        .chain(papers.map(|reason| reason.kind.as_str()))
}

/// Whether nothing stands against it but what is asked with the very press: the keys, what was
/// found and done.
fn only_at_the_door(order: &OrderView) -> bool {
    let mut standing = standing(order).peekable();
    standing.peek().is_some()
        && standing.all(|kind| ["keys-here", "line-unfinished"].contains(&kind))
}

/// What was found and done, asked with the press where nothing else is left to ask.
fn told_at_the_door(order: &OrderView) -> Vec<super::settle::Untold> {
    let one = order.lines.first().filter(|_| order.lines.len() == 1);
    let only = one.filter(|_| only_at_the_door(order));
    only.map_or_else(Vec::new, |line| super::settle::untold(order, line))
}

/// The tap by which it leaves. Where nothing but the keys is left, they go with it.
fn drives_away(order: &OrderView) -> (&'static str, Vec<Value>) {
    let drives = order_request(
        &order.order,
        json!({ "hand-over": { "leaves": "drives-away", "ending": field("ending"), "boxes": null,
            "signature": file("signature"), "signed_by": null } }),
    );
    if order.row.vehicle_id.as_deref() == Some(super::sale::COUNTER) {
        return ("Sold, done", vec![drives]);
    }
    if only_at_the_door(order) && order.keys_here {
        let keys = order_fact(
            &order.order,
            json!({ "keys": { "step": "given-back", "words": null } }),
        );
        return ("Keys given, it drives away", vec![keys, drives]);
    }
    ("It drives away", vec![drives])
}

/// The first reasons, and the rest folded away.
fn reasons(against: &[&str]) -> Markup {
    const FIRST: usize = 6;
    let row = |reason: &str| html! { li class="row" { span class="what" { (reason) } } };
    let (first, rest) = against.split_at(against.len().min(FIRST));
    html! {
        ul { @for reason in first { (row(reason)) } }
        @if !rest.is_empty() {
            details id="reasons" {
                summary class="row" { span class="what" { "And " (count(rest.len(), "more", "more")) } }
                ul { @for reason in rest { (row(reason)) } }
            }
        }
    }
}

/// Collected in pieces: what is open goes with it on paper, its boxes are counted, and
/// somebody signs.
fn apart(order: &OrderView, next: &str) -> Markup {
    let request = order_request(
        &order.order,
        json!({ "hand-over": { "leaves": "collected-apart", "ending": "declined-apart", "boxes": { "$number": "boxes" },
            "signature": file("signature"), "signed_by": text("signed") } }),
    );
    html! {
        details id="apart" {
            summary class="row" { span class="what strong" { "Collected dismantled" } span class="soft" { (count(order.open_items.len(), "item open", "items open")) } }
            p class="gap" { "Not put back together. What is open goes with it on paper, the boxes are counted, and it is signed for. Price, payment and keys are settled as always." }
            p class="caution" { "It must not be driven or started. Say so, and how it is to be moved, before they sign." }
            ul { @for open in &order.open_items { li class="row" { span class="mark" {} span class="what" { (open.text) } } } }
            form {
                (figure("boxes", "Boxes that go with it", "counted, 0 if none", "", true))
                (required("signed", "Signed by", "their name", ""))
                (sheet("signature", "Their signature"))
                div class="presses" { (button(Look::Plain, "Collected dismantled", "as listed", &[request], Some(next))) }
            }
        }
    }
}

fn returning(order: &OrderView) -> Markup {
    let invoices = order
        .asks
        .iter()
        .map(|asked| (payer_name(asked.payer), word(&asked.payer)));
    html! {
        @if let Some(left) = &order.left {
            p class="large yes gap" { "Handed over: " (left.how) }
            p class="gap" { (capital(&left.ending)) ". " (left.by) ", " (left.at) @if let Some(boxes) = left.boxes { ". " (count(usize::from(boxes), "box", "boxes")) " with it" } }
            (signed(left.signature.as_deref(), left.signed_by.as_deref().unwrap_or("")))
        }
        @for (name, code) in invoices {
            a class="row" href=(format!("/o/{}/invoice?payer={code}", order.number)) { span class="what strong" { "Print the invoice for " (name) } }
        }
        p class="gap" { "If it is back on this order, take it in again." }
        form class="narrow" {
            (required("words", "Why it is back", "", ""))
            div class="presses" {
                (button(Look::Confirm, "Take it back in", "", &[order_request(&order.order, json!({ "take-back": { "words": text("words") } }))], Some(&format!("/o/{}", order.number))))
            }
        }
    }
}

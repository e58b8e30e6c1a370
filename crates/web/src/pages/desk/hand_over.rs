//! Handing over: driven away, or collected apart and signed for; and back in again.

use super::papers::{payer_whom, word};
use crate::State;
use crate::pages::vehicle::gates::against;
use crate::pages::{Shown, order_of, show};
use crate::phrases::desk as say;
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
            say::hand_over(),
            html! {
                h1 { (say::hand_over()) }
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
                @if against.is_empty() { p class="large yes gap" { (say::nothing_against()) } }
                @else if only_at_the_door(order) { p class="large yes gap" { (say::yes_with_what_is_asked()) } }
                @else {
                    p class="large no gap" { (say::no_reasons(against.len())) }
                    (reasons(&against))
                    a class="row" href=(format!("/o/{}/may/hand-over", order.number)) { span class="what strong" { (say::fix_or_waive()) } }
                }
                (crate::pages::vehicle::open::count_by_photo(order))
                @if stands("not-charged") { (super::settle::settle(order)) }
                @else if stands("unpaid") { (super::overview::take(order)) }
                (crate::pages::vehicle::walk::key_at_the_end(order))
            }
            div {
                h2 { @if sold { (say::done()) } @else { (say::drives_away()) } }
                form {
                    @for told in &told { (told.field()) }
                    @if order.papers.odometer_out.is_none() && !sold {
                        @let hint = order.papers.odometer_in.as_ref().map_or_else(String::new, say::on_the_way_in);
                        (input("odometer", say::odometer_on_the_way_out(), &hint, ""))
                    }
                    @if sold { input type="hidden" name="ending" value="repaired"; }
                    @else { (chips("ending", say::it_ends(), &[("repaired", say::ends_repaired()), ("not-reproduced", say::ends_not_reproduced()), ("declined-put-back", say::ends_declined())], "repaired")) }
                    details id="received" {
                        summary class="row" { span class="what" { (say::have_them_sign()) } }
                        (sheet("signature", say::received_signed()))
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
        return (say::sold_done(), vec![drives]);
    }
    if only_at_the_door(order) && order.keys_here {
        let keys = order_fact(
            &order.order,
            json!({ "keys": { "step": "given-back", "words": null } }),
        );
        return (say::keys_given_drives_away(), vec![keys, drives]);
    }
    (say::drives_away(), vec![drives])
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
                summary class="row" { span class="what" { (say::and_more(rest.len())) } }
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
    // Whoever collects it takes the keys along.
    let keys = order_fact(
        &order.order,
        json!({ "keys": { "step": "given-back", "words": null } }),
    );
    let commands: Vec<Value> = order
        .keys_here
        .then_some(keys)
        .into_iter()
        .chain([request])
        .collect();
    let small = match order.keys_here {
        true => say::as_listed_with_keys(),
        false => say::as_listed(),
    };
    html! {
        details id="apart" {
            summary class="row" { span class="what strong" { (say::collected_dismantled()) } span class="soft" { (say::items_open(order.open_items.len())) } }
            p class="gap" { (say::not_put_together()) }
            p class="caution" { (say::must_not_be_driven()) }
            ul { @for open in &order.open_items { li class="row" { span class="mark" {} span class="what" { (open.text) } } } }
            form {
                (figure("boxes", say::boxes(), say::boxes_hint(), "", true))
                (required("signed", say::signed_by(), say::their_name(), ""))
                (sheet("signature", say::their_signature()))
                div class="presses" { (button(Look::Plain, say::collected_dismantled(), small, &commands, Some(next))) }
            }
        }
    }
}

fn returning(order: &OrderView) -> Markup {
    let invoices = order
        .asks
        .iter()
        .map(|asked| (payer_whom(asked.payer), word(&asked.payer)));
    html! {
        @if let Some(left) = &order.left {
            p class="large yes gap" { (say::handed_over_how(&left.how)) }
            p class="gap" { (capital(&left.ending)) ". " (left.by) ", " (left.at) @if let Some(boxes) = left.boxes { (say::boxes_with_it(boxes)) } }
            (signed(left.signature.as_deref(), left.signed_by.as_deref().unwrap_or("")))
        }
        @for (name, code) in invoices {
            a class="row" href=(format!("/o/{}/invoice?payer={code}", order.number)) { span class="what strong" { (say::print_invoice_for(name)) } }
        }
        p class="gap" { (say::if_it_is_back()) }
        form class="narrow" {
            (required("words", say::why_it_is_back(), "", ""))
            div class="presses" {
                (button(Look::Confirm, say::take_it_back_in(), "", &[order_request(&order.order, json!({ "take-back": { "words": text("words") } }))], Some(&format!("/o/{}", order.number))))
            }
        }
    }
}

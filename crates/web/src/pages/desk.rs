//! The desk: price, consent, parts, machine work, invoice, money, keys.

use super::{Shown, count, order_of, show};
use crate::State;
use crate::tap::{
    Look, button, chips, field, file, input, link, new, order_fact, order_request, required, sheet,
    signed, text, when,
};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, PreEscaped, html};
use serde_json::{Value, json};
use shop::record::v1::codes::PartStepForm;
use shop::view::{OrderView, PartView, TotalView};

pub async fn desk(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let to = |page: &str| format!("/o/{}/{page}", order.number);
        Ok(Shown::of(&order, "Desk", html! {
            h1 { "Desk" }
            div class="columns" {
                div {
                    @for total in &order.totals { (total_block(total)) }
                    @if order.totals.is_empty() { p class="gap" { "No price yet." } }
                    h2 { "Consent" }
                    @for consent in &order.consents {
                        div class="row" {
                            span class="what" {
                                span class="strong line" { @if consent.agreed { "Yes" } @else { "No" } @if let Some(amount) = &consent.amount { ", up to " (amount) } }
                                span class="soft line" { (consent.person.as_deref().unwrap_or("")) " · " (consent.at) @if let Some(called) = &consent.number_called { " · " (called) } }
                                @if let Some(said) = &consent.said { span class="soft line" { "“" (said) "”" } }
                                (signed(consent.signature.as_deref(), consent.person.as_deref().unwrap_or("")))
                            }
                        }
                    }
                    @if order.consents.is_empty() { p class="gap" { "Nobody has agreed to anything yet." } }
                }
                div {
                    h2 { "Money" }
                    @for paid in &order.payments {
                        div class="row" { span class="what" { (paid.taken_by) ", " (paid.at) } span class="strong number" { (paid.amount) } }
                    }
                    @if order.payments.is_empty() { p class="gap" { "Nothing paid yet." } }
                    h2 { "Papers to print" }
                    @for (name, small, page) in [("Estimate", "to sign", "estimate"), ("Added work", "what it comes to now", "added"), ("Invoice", "", "invoice")] {
                        a class="row" href=(to(page)) { span class="what strong" { (name) } span class="soft" { (small) } }
                    }
                }
            }
            div class="presses even" {
                (link(Look::Plain, "Price", "", &to("price")))
                (link(Look::Plain, "Ask for a yes", "", &to("ask")))
                (link(Look::Plain, "Parts", "", &to("parts")))
                (link(Look::Plain, "Invoice, money, keys", "", &to("pay")))
            }
        }))
    })
    .await
}

fn total_block(total: &TotalView) -> Markup {
    html! {
        div class="headline" {
            span class="fact" { (total.gross) }
            span class="what" {
                span class="soft" { (total.net) " before tax, tax " (total.tax) }
            }
        }
        @if let (Some(ceiling), Some(room)) = (&total.ceiling, &total.room) {
            div class="row" {
                span class="what" { "Agreed up to " (ceiling) @if total.ceiling_with_tax { " with tax" } @else { " before tax" } }
                @if room.starts_with('-') { span class="no number" { (room.trim_start_matches('-')) " over" } }
                @else { span class="yes number" { (room) " left" } }
            }
        }
        div class="row" { span class="what" { "Left to pay" } span class="strong number" { (total.balance) } }
        details id=(format!("found-{:?}", total.payer)) {
            summary class="row" { span class="soft" { "How was this found?" } }
            div class="working" { (PreEscaped(&total.working_html)) }
        }
    }
}

pub async fn price(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let rate = {
            let world = ask.service.world()?;
            world.shop.settings().map(|settings| settings.rate.to_string()).unwrap_or_default()
        };
        let kept: Vec<Value> = order
            .price
            .iter()
            .flat_map(|price| &price.entries)
            .enumerate()
            .map(|(nth, entry)| when(&format!("keep-{nth}"), json!({
                "line": entry.line, "charge": entry.charge, "label": entry.label_words,
                "quantity": entry.quantity, "each": entry.each, "payer": entry.payer })))
            .collect();
        let mut entries = kept;
        entries.push(when("hours", json!({ "line": null, "charge": "labour", "label": { "$text": "labour", "or": "Labour" }, "quantity": field("hours"), "each": field("rate"), "payer": field("payer") })));
        entries.push(when("each", json!({ "line": null, "charge": field("charge"), "label": { "$text": "what", "or": "Parts" }, "quantity": field("quantity"), "each": field("each"), "payer": field("payer") })));
        let set = order_request(&order.order, json!({ "price": { "entries": entries } }));
        Ok(Shown::of(&order, "Price", html! {
            h1 { "Price" }
            @for total in &order.totals { (total_block(total)) }
            form class="narrow" {
                @for (nth, entry) in order.price.iter().flat_map(|price| &price.entries).enumerate() {
                    label class="row" {
                        input type="checkbox" name=(format!("keep-{nth}")) value="yes" checked;
                        span class="what" { span class="strong line" { (entry.label) } span class="soft line" { (entry.quantity) " × " (entry.each) } }
                        span class="number" { (entry.amount) }
                    }
                }
                h2 { "Add labour" }
                (input("labour", "What for", "", ""))
                (input("hours", "Hours", "such as 3.67", ""))
                (input("rate", "An hour", "", &rate))
                h2 { "Add a part or other" }
                (chips("charge", "What sort", &[("part", "part"), ("test", "test"), ("sublet", "machine work"), ("supplies", "supplies"), ("core", "core"), ("fee", "other")], "part"))
                (input("what", "What", "", ""))
                (input("quantity", "How many", "", "1"))
                (input("each", "One costs, before tax", "", ""))
                (chips("payer", "Who pays", &[("customer", "customer"), ("warranty", "warranty"), ("goodwill", "goodwill")], "customer"))
                div class="presses low" { (button(Look::Confirm, "Set the price", "", &[set], None)) }
            }
            div class="presses" { (link(Look::Plain, "Ask for a yes", "", &format!("/o/{}/ask", order.number))) }
        }))
    })
    .await
}

pub async fn ask(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let after: Vec<_> = order.consents.iter().map(|consent| consent.command.clone()).collect();
        let total = order.totals.first();
        let consent = |agreed: bool| order_fact(&order.order, json!({ "consented": {
            "step": field("step"), "payer": "customer", "lines": [], "agreed": agreed,
            "amount": if agreed { field("amount") } else { Value::Null },
            "tax_included": { "$flag": "tax" }, "way": field("way"), "person": text("person"), "said": text("said"),
            "number_called": text("called"), "signature": file("signature"), "after": after } }));
        let step = if order.consents.is_empty() { "repair" } else { "add" };
        Ok(Shown::of(&order, "Ask", html! {
            h1 { "Ask for a yes" }
            @if let Some(total) = total {
                (total_block(total))
                p class="gap" { "“It comes to " (total.net) " before tax, " (total.gross) " with it"
                    @if let Some(ceiling) = &total.ceiling { "; you agreed to " (ceiling) @if total.ceiling_with_tax { " with tax" } @else { " before tax" } " so far" }
                    ". May we?”" }
            }
            form class="narrow" {
                (chips("step", "To", &[("diagnose", "diagnose"), ("take-apart", "take apart"), ("repair", "repair"), ("add", "do more")], step))
                (required("amount", "Up to, in all", "before tax, unless ticked below", total.map_or("", |total| total.net.as_str())))
                label class="row" { input type="checkbox" name="tax" value="yes"; span class="what" { "Tax is within it" } }
                (chips("way", "How", &[("phone", "telephone"), ("in-person", "in person"), ("message", "message"), ("mail", "mail"), ("signed", "signed")], "phone"))
                (required("person", "Who said so", "", &order.row.customer))
                (input("called", "Number called", "", ""))
                (input("said", "What was said", "", ""))
                (sheet("signature", "Signature, if they are here"))
                div class="presses two low" {
                    (button(Look::Confirm, "They said yes", "", &[consent(true)], Some(&format!("/o/{}/desk", order.number))))
                    (button(Look::Plain, "No", "", &[consent(false)], Some(&format!("/o/{}/desk", order.number))))
                }
            }
            @if total.is_some_and(|total| total.room.as_deref().is_some_and(|room| room.starts_with('-'))) {
                form { div class="presses" { (button(Look::Plain, "Write down to what was agreed", "", &[order_request(&order.order, json!({ "write-down": { "payer": "customer" } }))], None)) } }
            }
        }))
    })
    .await
}

pub async fn parts(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let need = order_fact(&order.order, json!({ "part-needed": {
            "part": new("part"), "line": null, "item": null, "label": text("label"), "number": field("number"),
            "quantity": field("quantity"), "cost": null, "price": field("price"), "core": null, "has_old": { "$flag": "old" } } }));
        let out = order_fact(&order.order, json!({ "sublet-out": {
            "sublet": new("sublet"), "line": null, "items": [], "what": text("what"), "to": text("to"), "due": field("due"), "cost": null } }));
        Ok(Shown::of(&order, "Parts", html! {
            h1 { "Parts and machine work" }
            div class="columns" {
                div {
                    @for part in &order.parts { (part_block(&order, part)) }
                    details id="need" open[order.parts.is_empty()] {
                        summary class="row" { span class="strong" { "A part is needed" } }
                        form {
                            (required("label", "What", "", ""))
                            (input("number", "Its number", "", ""))
                            (required("quantity", "How many", "", "1"))
                            (input("price", "Sold for, each", "", ""))
                            label class="row" { input type="checkbox" name="old" value="yes" checked; span class="what" { "An old one comes off for it" } }
                            div class="presses" { (button(Look::Plain, "It is needed", "", &[need], None)) }
                        }
                    }
                }
                div {
                    h2 { "Machine work" }
                    @for sublet in &order.sublets {
                        div class="row" {
                            span class="what" { span class="strong line" { (sublet.what) } span class="soft line" { (sublet.to) @if let Some(due) = &sublet.due { ", due " (due) } } }
                            @if sublet.back { span class="yes" { "back" } } @else { span class="no" { "away" } }
                        }
                        @if !sublet.back {
                            form { div class="presses" { (button(Look::Plain, "It is back", "", &[order_fact(&order.order, json!({ "sublet-back": { "sublet": sublet.sublet, "words": null } }))], None)) } }
                        }
                    }
                    details id="out" {
                        summary class="row" { span class="strong" { "Send something out" } }
                        form {
                            (required("what", "What is to be done", "", ""))
                            (required("to", "To whom", "", ""))
                            (input("due", "Due back", "such as 2026-12-01", ""))
                            div class="presses" { (button(Look::Plain, "It is away", "", &[out], None)) }
                        }
                    }
                }
            }
        }))
    })
    .await
}

fn part_block(order: &OrderView, part: &PartView) -> Markup {
    let step = |code: &str| {
        order_fact(
            &order.order,
            json!({ "part-stepped": {
        "part": part.part, "quantity": part.quantity, "step": code, "due": null, "words": null } }),
        )
    };
    let old = |code: &str| {
        order_fact(
            &order.order,
            json!({ "old-part": { "part": part.part, "item": null, "fate": code } }),
        )
    };
    let has = |step: PartStepForm| part.steps.contains_key(&step);
    let done: Vec<String> = part
        .steps
        .iter()
        .filter_map(|(step, quantity)| {
            let word = serde_json::to_value(step).ok()?;
            Some(format!("{quantity} {}", word.as_str()?))
        })
        .collect();
    let ended = part.adrift == "0";
    html! {
        div class="row" {
            span class={ "mark " (if ended { "home" } else { "" }) } {}
            span class="what" {
                span class="strong line" { (part.quantity) " × " (part.label) }
                span class="soft line" { (if done.is_empty() { "needed".to_owned() } else { done.join(", ") }) @if let Some(old) = &part.old { " · old one " (old) } }
            }
        }
        @if !ended {
            form { div class="presses even" {
                @if !has(PartStepForm::Ordered) && !has(PartStepForm::Received) { (button(Look::Plain, "Ordered", "", &[step("ordered")], None)) }
                @if !has(PartStepForm::Received) { (button(Look::Plain, "Received", "", &[step("received")], None)) }
                @else if !has(PartStepForm::Compared) { (button(Look::Plain, "Same as the old", "compared", &[step("compared")], None)) }
                (button(Look::Plain, "Fitted", "", &[step("fitted")], None))
                @if has(PartStepForm::Received) { (button(Look::Plain, "Returned", "", &[step("returned")], None)) }
            } }
        } @else if part.has_old && part.old.is_none() && has(PartStepForm::Fitted) {
            form { div class="presses even" {
                (button(Look::Plain, "Old one: kept", "for the customer", &[old("kept")], None))
                (button(Look::Plain, "Old one: scrap", "", &[old("scrap")], None))
                (button(Look::Plain, "Old one: core", "", &[old("core")], None))
            } }
        }
    }
}

pub async fn pay(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        let total = order.totals.first();
        let charged = order.price.as_ref().is_some_and(|price| price.charged);
        let keys = |step: &str| order_fact(&order.order, json!({ "keys": { "step": step, "words": null } }));
        Ok(Shown::of(&order, "Money", html! {
            h1 { "Invoice, money, keys" }
            @if let Some(total) = total { (total_block(total)) } @else { p class="gap" { "No price yet." } }
            @if !charged && total.is_some() {
                form { div class="presses" { (button(Look::Confirm, "Write the invoice", "", &[order_request(&order.order, json!({ "charge": {} }))], None)) } }
            } @else if charged { p class="yes gap" { "The invoice is written." } }
            form class="narrow" {
                (required("amount", "Amount", "a minus in front gives money back", total.map_or("", |total| total.balance.as_str())))
                (chips("by", "How", &[("card", "card"), ("cash", "cash"), ("transfer", "transfer"), ("cheque", "cheque"), ("on-account", "on account")], "card"))
                label class="row" { input type="checkbox" name="deposit" value="yes"; span class="what" { "It is a deposit" } }
                div class="presses" {
                    (button(Look::Plain, "Paid", "", &[order_fact(&order.order, json!({ "paid": { "payer": "customer", "amount": field("amount"), "by": field("by"), "deposit": { "$flag": "deposit" } } }))], None))
                }
            }
            form { div class="presses" {
                @if order.keys_here { (button(Look::Plain, "Keys given back", "", &[keys("given-back")], None)) }
                @else { (button(Look::Plain, "Keys taken in", "", &[keys("taken")], None)) }
            } }
            div class="presses low" { (link(Look::Confirm, "Hand over", &count(order.open_items.len(), "item open", "items open"), &format!("/o/{}/hand-over", order.number))) }
        }))
    })
    .await
}

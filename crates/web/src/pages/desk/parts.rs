//! Parts from the need to the old one's end; what was sent out, and where it is.

use super::parts_price::{by_plan, core_credit, price, sublet_price};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::tap::{
    Look, button, day, field, figure, files, input, new, order_fact, photo_field, required, text,
    when,
};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::offers::PriceOffer;
use shop::record::v1::codes::PartStepForm;
use shop::repair::OrderId;
use shop::view::{OrderView, PartView, SubletView};

pub async fn parts(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let id = OrderId::new(order.order.clone());
        let prices = shop::offers::part_prices(visit.snap, &id);
        let sublet = |sublet: &SubletView| {
            let cost = sublet.cost.as_deref()?;
            shop::offers::from_cost(visit.snap, cost, true).ok()
        };
        Ok(Shown::of(&order, "Parts", html! {
            h1 { "Parts and machine work" }
            div class="columns" {
                div {
                    h2 { "Parts" }
                    @if order.parts.is_empty() { p class="gap" { "None needed so far" } }
                    @else { p class="soft gap" { "Compare each new part with the old one before the vehicle can no longer roll." } }
                    @for part in &order.parts { (part_block(&order, part, prices.get(&part.part))) }
                    (by_plan(visit, &order)?)
                    (need(&order))
                }
                div {
                    h2 { "Sent out" }
                    @if order.sublets.is_empty() { p class="gap" { "Nothing is away" } }
                    @for one in &order.sublets { (sublet_block(&order, one, sublet(one).as_ref())) }
                    (send(&order))
                }
            }
        }))
    })
    .await
}

fn need(order: &OrderView) -> Markup {
    let line = match order.lines.as_slice() {
        [one] => json!(one.line),
        [] => Value::Null,
        _ => field("line"),
    };
    let need = order_fact(
        &order.order,
        json!({ "part-needed": {
            "part": new("part"), "line": line, "item": null, "label": text("label"), "number": field("number"),
            "quantity": field("quantity"), "cost": field("cost"), "price": field("price"), "core": field("core"),
            "has_old": { "$flag": "old" } } }),
    );
    html! {
        details id="need" open[order.parts.is_empty()] {
            summary class="row" { span class="strong" { "A part is needed" } }
            form {
                (required("label", "What", "", ""))
                (input("number", "Its number", "", ""))
                (figure("quantity", "How many", "", "1", true))
                (figure("cost", "Costs us, each", "", "", false))
                (figure("price", "Sold for, each", "before tax", "", false))
                (figure("core", "Core charge, each", "given back for the old one", "", false))
                @if order.lines.len() > 1 {
                    fieldset {
                        legend { "For" }
                        @for (nth, line) in order.lines.iter().enumerate() {
                            label class="row" { input type="radio" name="line" value=(line.line) checked[nth == 0]; span class="what" { (line.complaint) } }
                        }
                    }
                }
                label class="row" { input type="checkbox" name="old" value="yes" checked; span class="what" { "An old one comes off for it" } }
                div class="presses" { (button(Look::Plain, "It is needed", "", &[need], None)) }
            }
        }
    }
}

/// What is true of a part, and what can happen to it next.
fn part_block(order: &OrderView, part: &PartView, offer: Option<&PriceOffer>) -> Markup {
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
                span class="strong line" { (part.quantity) " × " (part.label) @if let Some(number) = &part.number { " · " (number) } }
                span class="soft line" { (if done.is_empty() { "needed".to_owned() } else { done.join(", ") }) @if let Some(old) = &part.old { " · old one " (old) } }
                @if part.from.is_some() || part.due.is_some() {
                    span class="soft line" { @if let Some(from) = &part.from { (from) " " } @if let Some(due) = &part.due { "due " (shop::say::day_words(due)) } }
                }
                @if let Some(core) = &part.core { span class="soft line" { "core charge " (core) " each" } }
            }
            @if part.late { span class="no" { "late" } }
            @else if let Some(price) = &part.price { span class="number" { (price) } }
        }
        (price(order, part, offer))
        @if !ended { (next_steps(order, part)) }
        @if !ended && part.has_old && part.steps.contains_key(&PartStepForm::Received) && !part.steps.contains_key(&PartStepForm::Compared) { (differs(order, part)) }
        @else if part.has_old && part.old.is_none() { (old_part(order, part)) }
    }
}

fn next_steps(order: &OrderView, part: &PartView) -> Markup {
    let quantity = if part.quantity == "1" {
        json!("1")
    } else {
        field("quantity")
    };
    let step = |code: &str, due: Value, from: Value| {
        order_fact(
            &order.order,
            json!({ "part-stepped": { "part": part.part, "quantity": quantity, "step": code, "due": due, "words": from } }),
        )
    };
    let bare = |code: &str| step(code, Value::Null, Value::Null);
    let has = |step: PartStepForm| part.steps.contains_key(&step);
    html! {
        form {
            @if part.quantity != "1" { (figure("quantity", "How many of them", "", &part.adrift, true)) }
            @if !has(PartStepForm::Received) {
                details id=(format!("order-{}", part.part)) open[!has(PartStepForm::Ordered)] {
                    summary class="row" { span class="what" { @if has(PartStepForm::Ordered) { "Another day, another maker" } @else { "Order it" } } }
                    (input("from", "From whom", "", ""))
                    (day("due", "Due", "the day it was promised for"))
                    div class="presses" { (button(Look::Plain, "Ordered", "", &[step("ordered", field("due"), text("from"))], None)) }
                }
            }
            div class="presses even" {
                @if !has(PartStepForm::Received) { (button(Look::Plain, "Received", "", &[bare("received")], None)) }
                @else if !has(PartStepForm::Compared) { (button(Look::Plain, "Same as the old", "compared", &[bare("compared")], None)) }
                (button(Look::Plain, "Fitted", "", &[bare("fitted")], None))
                @if has(PartStepForm::Received) {
                    (button(Look::Plain, "Returned", "", &[bare("returned")], None))
                    (button(Look::Plain, "Into stock", "", &[bare("stocked")], None))
                } @else {
                    (button(Look::Plain, "Not needed after all", "", &[bare("cancelled")], None))
                }
            }
        }
    }
}

/// A part that is not like the old one is a snag of the order, told in words.
fn differs(order: &OrderView, part: &PartView) -> Markup {
    let found = order_fact(
        &order.order,
        json!({ "snag-found": { "snag": new("snag"), "item": null, "at": [], "what": "other", "sits": null,
            "words": { "$text": "how" }, "photos": files("photos"), "moves": [] } }),
    );
    html! {
        details id=(format!("differs-{}", part.part)) {
            summary class="row" { span class="what" { "It differs from the old one" } }
            form {
                (required("how", "How", "", &format!("new {} differs: ", part.label)))
                (photo_field("photos"))
                div class="presses" { (button(Look::Plain, "It differs", "a snag, for the desk to see", &[found], None)) }
            }
        }
    }
}

fn old_part(order: &OrderView, part: &PartView) -> Markup {
    let old = |code: &str| {
        order_fact(
            &order.order,
            json!({ "old-part": { "part": part.part, "item": null, "fate": code } }),
        )
    };
    // What goes back is charged no more.
    let core: Vec<Value> = [Some(old("core")), core_credit(order, part)]
        .into_iter()
        .flatten()
        .collect();
    html! {
        form { div class="presses even" {
            (button(Look::Plain, "Old one: kept", "for the customer", &[old("kept")], None))
            (button(Look::Plain, "Old one: given", "they have it", &[old("given")], None))
            (button(Look::Plain, "Old one: core", "goes back", &core, None))
            (button(Look::Plain, "Old one: scrap", "", &[old("scrap")], None))
        } }
    }
}

fn sublet_block(order: &OrderView, sublet: &SubletView, offer: Option<&PriceOffer>) -> Markup {
    let back = order_fact(
        &order.order,
        json!({ "sublet-back": { "sublet": sublet.sublet, "words": text("words") } }),
    );
    html! {
        div class="row" {
            span class="what" {
                span class="strong line" { (sublet.what) }
                @if !sublet.items.is_empty() { span class="line" { (sublet.items.join(", ")) } }
                span class="soft line" { "at " (sublet.to) ", since " (sublet.since) @if let Some(due) = &sublet.due { ", due " (shop::say::day_words(due)) } }
            }
            @if sublet.back { span class="yes" { "back" } }
            @else if sublet.late { span class="no" { "late" } }
            @else { span class="wait" { "away" } }
        }
        (sublet_price(order, sublet, offer))
        @if !sublet.back {
            form {
                (input("words", "How it came back", "counted, and as agreed?", ""))
                div class="presses" { (button(Look::Plain, "It is back", "", &[back], None)) }
            }
        }
    }
}

fn send(order: &OrderView) -> Markup {
    let items: Vec<Value> = order
        .open_items
        .iter()
        .map(|open| when(&format!("item-{}", open.item), json!(open.item)))
        .collect();
    let out = order_fact(
        &order.order,
        json!({ "sublet-out": {
            "sublet": new("sublet"), "line": order.lines.first().map(|line| &line.line), "items": items,
            "what": text("what"), "to": text("to"), "due": field("due"), "cost": field("cost") } }),
    );
    html! {
        details id="out" {
            summary class="row" { span class="strong" { "Send something out" } }
            form {
                (required("what", "What is to be done", "", ""))
                (required("to", "To whom", "", ""))
                (day("due", "Due back", ""))
                (figure("cost", "Costs us", "", "", false))
                @if !order.open_items.is_empty() {
                    fieldset {
                        legend { "What goes with it" }
                        @for open in &order.open_items {
                            label class="row" { input type="checkbox" name=(format!("item-{}", open.item)) value="yes"; span class="what" { (open.text) } }
                        }
                    }
                }
                div class="presses" { (button(Look::Plain, "It is away", "", &[out], None)) }
            }
        }
    }
}

//! Parts from the need to the old one's end; what was sent out, and where it is.

use super::parts_price::{by_plan, core_credit, price, sublet_price};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::desk as say;
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
            let cost = sublet.cost.as_ref()?.to_type();
            shop::offers::from_cost(visit.snap, &cost, true).ok()
        };
        Ok(Shown::of(&order, say::parts(), html! {
            h1 { (say::parts_and_machine_work()) }
            div class="columns" {
                div {
                    h2 { (say::parts()) }
                    @if order.parts.is_empty() { p class="gap" { (say::none_needed()) } }
                    @else { p class="soft gap" { (say::compare_parts()) } }
                    @for part in &order.parts { (part_block(&order, part, prices.get(&part.part))) }
                    (by_plan(visit, &order)?)
                    (need(&order))
                }
                div {
                    h2 { (say::sent_out()) }
                    @if order.sublets.is_empty() { p class="gap" { (say::nothing_away()) } }
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
            summary class="row" { span class="strong" { (say::part_is_needed()) } }
            form {
                (required("label", say::what(), "", ""))
                (input("number", say::its_number(), "", ""))
                (figure("quantity", say::how_many(), "", "1", true))
                (figure("cost", say::costs_us_each(), "", "", false))
                (figure("price", say::sold_for_each(), say::before_tax(), "", false))
                (figure("core", say::core_charge_each_label(), say::given_back_for_old(), "", false))
                @if order.lines.len() > 1 {
                    fieldset {
                        legend { (say::for_which()) }
                        @for (nth, line) in order.lines.iter().enumerate() {
                            label class="row" { input type="radio" name="line" value=(line.line) checked[nth == 0]; span class="what" { (line.complaint) } }
                        }
                    }
                }
                label class="row" { input type="checkbox" name="old" value="yes" checked; span class="what" { (say::old_comes_off()) } }
                div class="presses" { (button(Look::Plain, say::it_is_needed(), "", &[need], None)) }
            }
        }
    }
}

/// What was done with a part, in a word.
fn step_word(step: PartStepForm) -> &'static str {
    match step {
        PartStepForm::Ordered => say::step_ordered(),
        PartStepForm::Received => say::step_received(),
        PartStepForm::Compared => say::step_compared(),
        PartStepForm::Fitted => say::step_fitted(),
        PartStepForm::Returned => say::step_returned(),
        PartStepForm::Stocked => say::step_stocked(),
        PartStepForm::Cancelled => say::step_cancelled(),
    }
}

/// What is true of a part, and what can happen to it next.
fn part_block(order: &OrderView, part: &PartView, offer: Option<&PriceOffer>) -> Markup {
    let done: Vec<String> = part
        .steps
        .iter()
        .map(|(step, quantity)| format!("{quantity} {}", step_word(*step)))
        .collect();
    let ended = part.adrift == "0";
    html! {
        div class="row" {
            span class={ "mark " (if ended { "home" } else { "" }) } {}
            span class="what" {
                span class="strong line" { (part.quantity) " × " (part.label) @if let Some(number) = &part.number { " · " (number) } }
                span class="soft line" { (if done.is_empty() { say::needed().to_owned() } else { done.join(", ") }) @if let Some(old) = &part.old { (say::old_one_is(old)) } }
                @if part.from.is_some() || part.due.is_some() {
                    span class="soft line" { @if let Some(from) = &part.from { (from) " " } @if let Some(due) = &part.due { (say::due_on(shop::say::day_words(due))) } }
                }
                @if let Some(core) = &part.core { span class="soft line" { (say::core_charge_each(core)) } }
            }
            @if part.late { span class="no" { (say::late()) } }
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
            @if part.quantity != "1" { (figure("quantity", say::how_many_of_them(), "", part.adrift.exact(), true)) }
            @if !has(PartStepForm::Received) {
                details id=(format!("order-{}", part.part)) open[!has(PartStepForm::Ordered)] {
                    summary class="row" { span class="what" { @if has(PartStepForm::Ordered) { (say::another_day_maker()) } @else { (say::order_it()) } } }
                    (input("from", say::from_whom(), "", ""))
                    (day("due", say::due_day(), say::day_promised()))
                    div class="presses" { (button(Look::Plain, say::ordered(), "", &[step("ordered", field("due"), text("from"))], None)) }
                }
            }
            div class="presses even" {
                @if !has(PartStepForm::Received) { (button(Look::Plain, say::received(), "", &[bare("received")], None)) }
                @else if !has(PartStepForm::Compared) { (button(Look::Plain, say::same_as_old(), say::step_compared(), &[bare("compared")], None)) }
                (button(Look::Plain, say::fitted(), "", &[bare("fitted")], None))
                @if has(PartStepForm::Received) {
                    (button(Look::Plain, say::returned(), "", &[bare("returned")], None))
                    (button(Look::Plain, say::into_stock(), "", &[bare("stocked")], None))
                } @else {
                    (button(Look::Plain, say::not_needed_after_all(), "", &[bare("cancelled")], None))
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
            summary class="row" { span class="what" { (say::differs_from_old()) } }
            form {
                (required("how", say::how(), "", &say::new_part_differs(&part.label)))
                (photo_field("photos"))
                div class="presses" { (button(Look::Plain, say::it_differs(), say::a_snag_for_desk(), &[found], None)) }
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
            (button(Look::Plain, say::old_kept(), say::for_the_customer(), &[old("kept")], None))
            (button(Look::Plain, say::old_given(), say::they_have_it(), &[old("given")], None))
            (button(Look::Plain, say::old_core(), say::goes_back(), &core, None))
            (button(Look::Plain, say::old_scrap(), "", &[old("scrap")], None))
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
                span class="soft line" { (say::sublet_at(&sublet.to, &sublet.since)) @if let Some(due) = &sublet.due { (say::sublet_due(shop::say::day_words(due))) } }
            }
            @if sublet.back { span class="yes" { (say::is_back()) } }
            @else if sublet.late { span class="no" { (say::late()) } }
            @else { span class="wait" { (say::is_away()) } }
        }
        (sublet_price(order, sublet, offer))
        @if !sublet.back {
            form {
                (input("words", say::how_it_came_back(), say::counted_as_agreed(), ""))
                div class="presses" { (button(Look::Plain, say::it_is_back(), "", &[back], None)) }
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
            summary class="row" { span class="strong" { (say::send_out()) } }
            form {
                (required("what", say::what_is_to_be_done(), "", ""))
                (required("to", say::to_whom(), "", ""))
                (day("due", say::due_back(), ""))
                (figure("cost", say::costs_us(), "", "", false))
                @if !order.open_items.is_empty() {
                    fieldset {
                        legend { (say::what_goes_with_it()) }
                        @for open in &order.open_items {
                            label class="row" { input type="checkbox" name=(format!("item-{}", open.item)) value="yes"; span class="what" { (open.text) } }
                        }
                    }
                }
                div class="presses" { (button(Look::Plain, say::it_is_away(), "", &[out], None)) }
            }
        }
    }
}

//! What the customer would not have put right: named, said why, signed for.

use super::price::{keyed, seen};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::desk as say;
use crate::tap::{
    Look, button, file, link, order_fact, order_request, required, sheet, signed, text, when,
};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::view::OrderView;

pub async fn decline(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        Ok(Shown::of(&order, say::declined_title(), html! {
            h1 { (say::declined_work()) }
            p class="caution" { (say::declined_caution()) }
            (told(&order))
            (open(&order))
            div class="presses" { (link(Look::Plain, say::desk(), "", &format!("/o/{}/desk", order.number))) }
        }))
    })
    .await
}

fn told(order: &OrderView) -> Markup {
    html! {
        @if !order.declined.is_empty() { h2 { (say::declined_so_far()) } }
        @for declined in &order.declined {
            div class="row" {
                span class="what" {
                    span class="strong line" { (declined.what) }
                    span class="line" { (declined.words) }
                    span class="soft line" { (declined.at) @if declined.signature.is_none() { (say::not_signed()) } }
                    (signed(declined.signature.as_deref(), say::customer_who_signed()))
                }
            }
        }
    }
}

fn open(order: &OrderView) -> Markup {
    let concerned: Vec<_> = order
        .items
        .iter()
        .filter(|item| item.disturbed || order.open_items.iter().any(|o| o.item == item.item))
        .collect();
    let on_price = keyed(order.price.iter().flat_map(|price| &price.open));
    // What has no name of its own cannot be named here.
    let entries: Vec<_> = on_price
        .iter()
        .filter_map(|(key, entry)| Some((key, entry, entry.label_words.as_ref()?)))
        .collect();
    let picked = |name: &str, id: &str, value: &str| when(&format!("{name}-{id}"), json!(value));
    let items: Vec<Value> = concerned
        .iter()
        .map(|item| picked("item", &item.item, &item.item))
        .collect();
    let words: Vec<Value> = entries
        .iter()
        .map(|(key, _, words)| picked("entry", key, words))
        .collect();
    let snags: Vec<Value> = order
        .snags
        .iter()
        .map(|snag| picked("snag", &snag.snag, &snag.snag))
        .collect();
    let declined = order_fact(
        &order.order,
        json!({ "declined": { "items": items, "at": [], "words": text("words"), "signature": file("signature"),
            "entries": words, "snags": snags } }),
    );
    // The price without what is ticked.
    let left: Vec<Value> = on_price
        .iter()
        .map(|(key, entry)| json!({ "$when": format!("entry-{key}"), "is": [""], "then": entry.sent() }))
        .collect();
    let off = order_request(
        &order.order,
        json!({ "price": { "entries": left, "after": seen(order) } }),
    );
    let tick = |name: String, what: &str, amount: Option<&shop::Amount>| {
        html! {
            label class="row" {
                input type="checkbox" name=(name) value="yes";
                span class="what" { (what) }
                @if let Some(amount) = amount { span class="number" { (amount) } }
            }
        }
    };
    if concerned.is_empty() && entries.is_empty() && order.snags.is_empty() {
        return html! { p class="gap" { (say::nothing_to_decline()) } };
    }
    html! {
        h2 { (say::what_they_decline()) }
        form {
            div class="pick" data-one-of=(say::tick_what_they_decline()) {
                @for (key, entry, _) in &entries { (tick(format!("entry-{key}"), &entry.label, Some(&entry.amount))) }
                @for snag in &order.snags { (tick(format!("snag-{}", snag.snag), &snag.text, None)) }
                @for item in &concerned { (tick(format!("item-{}", item.item), &item.label, None)) }
            }
            @if !entries.is_empty() && !order.handed_over { (tick("off-price".to_owned(), say::off_the_price_as_well(), None)) }
            div class="columns" {
                div { (required("words", say::what_they_say(), say::decline_hint(), "")) }
                div { (sheet("signature", say::their_signature())) }
            }
            div class="presses" { (button(Look::Confirm, say::they_decline_it(), "", &[declined, when("off-price", off)], None)) }
        }
    }
}

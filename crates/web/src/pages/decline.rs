//! What the customer would not have put right: named, said why, signed for.

use super::{Shown, order_of, show};
use crate::State;
use crate::tap::{Look, button, file, link, order_fact, required, sheet, signed, text, when};
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
    show(state, headers, move |ask| {
        let order = order_of(ask, &number)?;
        Ok(Shown::of(&order, "Declined", html! {
            h1 { "They decline something" }
            p class="caution" { "Brakes, steering, wheels, fuel and restraints: the vehicle leaves with them as they are only if it is signed for here. A missing wheel nut or brake bolt never passes. Say plainly what it means for their safety before they sign." }
            (told(&order))
            (open(&order))
            div class="presses" { (link(Look::Plain, "Desk", "", &format!("/o/{}/desk", order.number))) }
        }))
    })
    .await
}

fn told(order: &OrderView) -> Markup {
    html! {
        @if !order.declined.is_empty() { h2 { "Declined so far" } }
        @for declined in &order.declined {
            div class="row" {
                span class="what" {
                    span class="strong line" { (declined.what) }
                    span class="line" { (declined.words) }
                    span class="soft line" { (declined.at) @if declined.signature.is_none() { " · not signed" } }
                    (signed(declined.signature.as_deref(), "the customer"))
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
    let items: Vec<Value> = concerned
        .iter()
        .map(|item| when(&format!("item-{}", item.item), json!(item.item)))
        .collect();
    let declined = order_fact(
        &order.order,
        json!({ "declined": { "items": items, "at": [], "words": text("words"), "signature": file("signature") } }),
    );
    html! {
        h2 { "What they decline" }
        form {
            div class="pick" {
                @for item in &concerned {
                    label class="row" {
                        input type="checkbox" name=(format!("item-{}", item.item)) value="yes";
                        span class="what" { (item.label) }
                    }
                }
            }
            div class="columns" {
                div { (required("words", "What they say, and who says it", "such as: Ines Duarte wants no new shield and knows that it rattles", "")) }
                div { (sheet("signature", "Their signature")) }
            }
            div class="presses" { (button(Look::Confirm, "They decline it", "", &[declined], None)) }
        }
    }
}

//! The second walk-round of whoever works alone: the list the other way round, each thing
//! looked at and ticked.

use super::pieces::where_it_stands;
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::tap::{Look, button, order_fact, when};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::view::{ItemView, OrderView};

pub async fn second(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let allowed = visit.snap.world().shop.alone_allowed().is_some();
        Ok(Shown::of(
            &order,
            "Second walk-round",
            content(&order, allowed),
        ))
    })
    .await
}

/// What nobody has checked since it was moved, the last first.
fn unchecked(order: &OrderView) -> Vec<&ItemView> {
    let reasons = order.gates.last().map(|gate| &gate.fit_to_go);
    let named: Vec<&str> = reasons
        .into_iter()
        .flatten()
        .filter(|reason| reason.kind == "not-checked")
        .filter_map(|reason| reason.item.as_deref())
        .collect();
    let items = order.items.iter().rev();
    items
        .filter(|item| named.contains(&item.item.as_str()))
        .collect()
}

fn content(order: &OrderView, allowed: bool) -> Markup {
    let list = unchecked(order);
    let ticked = |nth: usize| format!("see-{nth}");
    let items: Vec<Value> = list
        .iter()
        .enumerate()
        .map(|(nth, item)| when(&ticked(nth), json!(item.item)))
        .collect();
    let after: Vec<Value> = list
        .iter()
        .enumerate()
        .flat_map(|(nth, item)| {
            let seen = item.seen.iter();
            seen.map(move |seen| when(&format!("see-{nth}"), json!(seen)))
        })
        .collect();
    let checked = order_fact(
        &order.order,
        json!({ "checked": { "check": "walked-back", "items": items, "after": after } }),
    );
    let due = format!("/o/{}/due", order.number);
    html! {
        h1 { "Walk back" }
        @if list.is_empty() {
            p class="gap yes" { "Nothing is left to check." }
            div class="presses low" { a class="press confirm" href=(due) { "Owed, checks, proof" } }
        } @else {
            @if !allowed { p class="wait gap" { "Another person checks, unless the owner writes at " a href="/shop" { "The shop" } " that one who works alone may walk back. Until then this walk does not count." } }
            p class="gap" { "After another job or a pause, from the other side, the list the other way round. Put a hand on each, look, and tick it." }
            form {
                fieldset data-one-of="Tick what you have looked at" {
                    legend class="skip" { "Looked at" }
                    @for (nth, item) in list.iter().enumerate() {
                        label class="row" {
                            input type="checkbox" name=(ticked(nth)) value="yes";
                            span class="what" {
                                span class="strong line" { (item.label) @if let Some(size) = &item.size { " " (size) } }
                                span class="soft line" { (where_it_stands(item)) }
                            }
                        }
                    }
                }
                div class="presses low" { (button(Look::Confirm, "Walked back", "those that are ticked", &[checked], Some(&due))) }
            }
        }
    }
}

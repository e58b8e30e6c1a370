//! The second walk-round of whoever works alone: the list the other way round, each thing
//! looked at and ticked.

use super::pieces::where_it_stands;
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::vehicle as say;
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
            say::second_walk_round(),
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
        h1 { (say::walk_back()) }
        @if list.is_empty() {
            p class="gap yes" { (say::nothing_left_to_check()) }
            div class="presses low" { a class="press confirm" href=(due) { (say::owed_checks_proof()) } }
        } @else {
            @if !allowed { p class="wait gap" { (say::another_person_checks()) a href="/shop" { (say::the_shop()) } (say::that_alone_may_walk_back()) } }
            p class="gap" { (say::how_to_walk_back()) }
            form {
                fieldset data-one-of=(say::tick_what_was_looked_at()) {
                    legend class="skip" { (say::looked_at()) }
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
                div class="presses low" { (button(Look::Confirm, say::walked_back(), say::those_that_are_ticked(), &[checked], Some(&due))) }
            }
        }
    }
}

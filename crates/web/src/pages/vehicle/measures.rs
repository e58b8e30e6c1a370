//! What is measured on nearly every vehicle: one field each, beside what it was on the visit
//! before and the least that is allowed.

use super::choices::Choices;
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::vehicle as say;
use crate::tap::{Look, amount, button, changed, new, order_fact, when};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::measures::{Measured, Measures, measures};
use shop::repair::OrderId;
use shop::view::OrderView;

pub async fn page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let sorts = measures(visit.snap, &OrderId::new(order.order.clone()))?;
        let commands: Vec<Value> = sorts
            .iter()
            .flat_map(|sort| said(&order, sort))
            .collect();
        Ok(Shown::of(
            &order,
            say::measures(),
            html! {
                h1 { (say::measures()) }
                p class="gap soft" { (say::fill_in_what_was_measured()) }
                form {
                    div class="columns" { @for sort in &sorts { (sort_of(sort)) } }
                    div class="presses low" { (button(Look::Confirm, say::save(), "", &commands, None)) }
                }
            },
        ))
    })
    .await
}

fn sort_of(sort: &Measures) -> Markup {
    html! {
        section {
            h2 class="spread" { span { (sort.title) } span class="soft" { (sort.unit) } }
            @for one in &sort.each { (field(one, sort)) }
            details id=(code(sort.least_name)) {
                summary class="row" {
                    span class="what soft" { (say::least_allowed()) }
                    span class="number" { (sort.least.as_deref().unwrap_or(say::not_told())) }
                }
                label class="field" {
                    span { (say::least_allowed()) }
                    span class="soft" { (sort.hint) }
                    input type="text" name=(code(sort.least_name)) value=(sort.least.as_deref().unwrap_or("")) inputmode="decimal" autocomplete="off";
                }
            }
        }
    }
}

/// One thing: its field, and what is known of it.
fn field(one: &Measured, sort: &Measures) -> Markup {
    let name = match sort.each.len() {
        1 => sort.title.to_owned(),
        _ => shop::say::capital(corner(one.name)),
    };
    html! {
        label class="field" {
            span class="spread" {
                span { (name) }
                @if let Some(now) = &one.now {
                    span class={ "number strong" @if one.below { " no" } } { (now) @if one.below { (say::below_the_least()) } }
                }
            }
            @if let Some((value, day)) = &one.before { span class="soft" { (say::was_before(value, day)) } }
            input type="text" name=(code(one.name)) value="" inputmode="decimal" autocomplete="off";
        }
    }
}

/// At which corner something is measured, by the end of its name.
fn corner(name: &str) -> &str {
    const CORNERS: &Choices = &[
        ("front left", say::front_left),
        ("front right", say::front_right),
        ("rear left", say::rear_left),
        ("rear right", say::rear_right),
    ];
    let here = CORNERS.iter().find(|(end, _)| name.ends_with(end));
    here.map_or(name, |(_, words)| words())
}

fn code(name: &str) -> String {
    name.replace(' ', "-")
}

/// What a sort's fields say.
fn said(order: &OrderView, sort: &Measures) -> Vec<Value> {
    let mut out: Vec<Value> = sort
        .each
        .iter()
        .map(|one| {
            let name = code(one.name);
            let read = json!({ "read-off": { "id": new(&name), "item": null, "what": one.name,
                "value": amount(&name, sort.unit), "temperature": null, "after": [] } });
            when(&name, order_fact(&order.order, read))
        })
        .collect();
    if let Some(vehicle) = &order.row.vehicle_id {
        let name = code(sort.least_name);
        let told = json!({ "stream": format!("vehicle:{vehicle}"), "vehicle_fact": { "figure-told": {
            "what": sort.least_name, "value": amount(&name, sort.unit), "after": sort.least_told } } });
        // A least that was emptied is left as it was told.
        out.push(changed(&name, when(&name, told)));
    }
    out
}

//! One customer: how they are reached, their vehicles and orders; the same customer written
//! down twice.

use super::find::order_row;
use super::intake::{customer_row, vehicle_row};
use super::mend::customer_form;
use crate::State;
use crate::pages::{Shown, Visit, show};
use crate::phrases::desk as say;
use crate::tap::{Look, button};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::json;
use shop::repair::CustomerId;
use shop::view::{known_customer, rows_of_customer, twins_of_customer, vehicles_of};
use shop::{Trouble, Waiting};
use std::sync::Arc;

/// Earlier orders that are shown.
const MOST_ORDERS: usize = 20;

/// What to look for, to join it with this.
#[derive(Debug, Default, Deserialize)]
pub struct Twin {
    #[serde(default)]
    pub same: String,
}

pub async fn customer(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
    Query(twin): Query<Twin>,
) -> Response {
    let service = Arc::clone(&state.service);
    show(state, headers, move |visit| {
        let id = CustomerId::new(id);
        let known = known_customer(visit.snap, &id)?;
        let id = CustomerId::new(known.customer.clone());
        let vehicles = vehicles_of(visit.snap, &id)?;
        let orders = rows_of_customer(visit.snap, &id)?;
        let waiting = shop::erasures_waiting(&service)?;
        let waits = waiting.iter().find(|one| one.customer == id);
        Ok(Shown::new(&known.name, html! {
            h1 { @if known.name.is_empty() { (say::a_customer()) } @else { (known.name) } }
            div class="columns" {
                div {
                    h2 { (say::how_to_reach()) }
                    (customer_form(visit, &known.customer)?)
                    (twins(visit, &id, &twin.same)?)
                    (super::erase::of_customer(visit, &id, waits))
                }
                div {
                    h2 { (say::vehicles()) }
                    @for vehicle in &vehicles { (vehicle_row(vehicle, &format!("/v/{}", vehicle.vehicle), "")) }
                    @if vehicles.is_empty() { p class="gap" { (say::none_known()) } }
                    a class="row" href=(format!("/new?by={}", known.customer)) { span class="what strong" { (say::check_in_one_of_theirs()) } }
                    h2 { (say::orders()) }
                    @for row in orders.iter().take(MOST_ORDERS) { (order_row(row)) }
                    @if orders.is_empty() { p class="gap" { (say::none_yet()) } }
                    @if orders.len() > MOST_ORDERS {
                        a class="row" href=(format!("/find?q={}", form_urlencoded::byte_serialize(known.name.as_bytes()).collect::<String>())) { span class="what soft" { (say::all_of_them()) } }
                    }
                }
            }
        }))
    })
    .await
}

/// The same customer under another name in the record: those that may be, and how they become
/// one; those that are one, and how they become two again.
fn twins(visit: &Visit<'_>, id: &CustomerId, same: &str) -> Result<Markup, Trouble> {
    let world = visit.snap.world();
    let found = twins_of_customer(visit.snap, id, same)?;
    let others: Vec<CustomerId> = world.same_customers(id).into_iter().skip(1).collect();
    Ok(html! {
        details id="twins" open[!same.is_empty()] {
            summary class="row" {
                span class={ "what" @if !found.is_empty() { " wait" } } { @if found.is_empty() { (say::written_down_twice()) } @else { (say::same_customer_question()) } }
            }
            p class="gap soft" { (say::customers_shown_together()) }
            @for twin in &found {
                @let own = world.own_customer(&CustomerId::new(twin.customer.clone()))?;
                @let after: Vec<_> = own.same_as().1;
                (customer_row(twin, &format!("/c/{}", twin.customer)))
                form { div class="presses" {
                    (button(Look::Plain, say::same_customer(), &twin.name, &[json!({ "stream": format!("customer:{}", twin.customer),
                        "customer_fact": { "same-as": { "customer": id.as_str(), "after": after.iter().map(shop::repair::CommandId::as_str).collect::<Vec<_>>() } } })], None))
                } }
            }
            (look_for(&format!("/c/{id}"), same, say::name_telephone()))
        }
        @for other in &others {
            @let own = world.own_customer(other)?;
            @let name = visit.snap.texts().text_of(own.text(shop::repair::Field::Name).words).unwrap_or_default();
            @let phone = visit.snap.texts().text_of(own.text(shop::repair::Field::Phone).words).unwrap_or_default();
            details id=(format!("apart-{other}")) {
                summary class="row" { span class="what" { (say::also_written_as(super::intake::joined(&[&name, &phone]))) } }
                form { div class="presses" {
                    (button(Look::Plain, say::two_after_all(), "", &[json!({ "stream": format!("customer:{other}"),
                        "customer_fact": { "same-as": { "customer": null, "after": own.same_as().1.iter().map(shop::repair::CommandId::as_str).collect::<Vec<_>>() } } })], None))
                } }
            }
        }
    })
}

/// A field that looks for another of the same.
pub fn look_for(page: &str, same: &str, what: &str) -> Markup {
    html! {
        form method="get" action=(page) class="narrow" {
            label class="field" {
                span { (say::look_for_it()) }
                span class="soft" { (what) }
                input type="text" name="same" value=(same) autocomplete="off";
            }
            div class="presses" { button class="press" type="submit" { (say::look()) } }
        }
    }
}

/// The erasure that waits for a customer.
pub type Waits<'a> = Option<&'a Waiting>;

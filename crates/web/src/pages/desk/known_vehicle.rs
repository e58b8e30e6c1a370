//! One vehicle: how it differs from others of its kind, what is due, what was done, and
//! the way back in for it.

use crate::State;
use crate::pages::{Shown, Visit, order_of, show};
use crate::tap::{Look, amount, button, chips, field, new, odometer, required, text, when};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::Trouble;
use shop::record::form::Form;
use shop::record::v1::facts::WorkForm;
use shop::repair::{CustomerId, Field, VehicleFact, VehicleId};
use shop::view::{OrderRow, standing_text};

/// Earlier visits that are told at length.
const MOST_VISITS: usize = 10;

pub async fn vehicle(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let id = VehicleId::new(id);
        let visits = shop::view::rows_of_vehicle(visit.snap, &id)?;
        let vehicle = visit.snap.world().vehicle(&id)?;
        if vehicle.is_blank() {
            return Err(Trouble::not_found("there is no such vehicle"));
        }
        let told = |field: Field| {
            let words = vehicle.text(field).words;
            visit.snap.texts().text_of(words).unwrap_or_default()
        };
        let here = visits.iter().find(|row| !row.handed_over && !row.voided);
        Ok(Shown::new("Vehicle", html! {
            h1 { (told(Field::Label)) }
            p class="gap" { (told(Field::Plate)) @let vin = told(Field::Vin); @if !vin.is_empty() { " · " (vin) } }
            div class="columns" {
                div {
                    h2 { "Modified on this vehicle" }
                    @if vehicle.differences().next().is_none() { p class="gap" { "Nothing known" } }
                    @for fact in vehicle.differences() { (standing(visit, &id, fact)) }
                    h2 { "Due" }
                    @if vehicle.owing().next().is_none() { p class="gap" { "Nothing" } }
                    @for fact in vehicle.owing() { (standing(visit, &id, fact)) }
                    @match here {
                        Some(row) => a class="row" href=(format!("/o/{}", row.number)) { span class="what strong" { "It is here: order " (row.number) } },
                        None => (back_again(&id, vehicle.customer(), visit.road_unit())),
                    }
                }
                div {
                    @if let Some(kind) = shop::teaching::known_kind(visit.snap, &told(Field::Label))? {
                        a class="row" href=(format!("/kinds/{kind}")) { span class="what strong" { "What our work on such vehicles has taught" } }
                    }
                    h2 { "What was done" }
                    @for row in visits.iter().take(MOST_VISITS) { (one_visit(visit, row)?) }
                    @for row in visits.iter().skip(MOST_VISITS) { (visit_row(row)) }
                }
            }
        }))
    })
    .await
}

/// A difference or a debt, with the tap that ends it.
fn standing(visit: &Visit<'_>, id: &VehicleId, fact: &VehicleFact) -> Markup {
    let (ends, label) = match fact {
        VehicleFact::LeftOwing { order, work, .. } => (
            json!({ "owing-done": { "order": order.as_str(), "work": WorkForm::of(work) } }),
            "It was done",
        ),
        VehicleFact::Differs { id, .. } => (
            json!({ "difference-ended": { "id": id.as_str() } }),
            "It is as others again",
        ),
        _ => return html! {},
    };
    let command = json!({ "stream": format!("vehicle:{id}"), "vehicle_fact": ends });
    html! {
        details id=(format!("ends-{}", standing_id(fact))) {
            summary class="row" { span class="mark half" {} span class="what" { (standing_text(visit.snap, fact)) } }
            form { div class="presses" { (button(Look::Plain, label, "", &[command], None)) } }
        }
    }
}

fn standing_id(fact: &VehicleFact) -> String {
    match fact {
        VehicleFact::Differs { id, .. } => id.as_str().to_owned(),
        VehicleFact::LeftOwing { order, work, .. } => {
            let item = work.item.as_ref().map_or("", |item| item.as_str());
            format!("{order}-{:?}-{item}", work.work)
        }
        _ => String::new(),
    }
}

/// The same vehicle comes in again: a new order for the same customer.
fn back_again(id: &VehicleId, customer: Option<&CustomerId>, unit: &str) -> Markup {
    let Some(customer) = customer else {
        return html! {};
    };
    let order = |part: &str, content: Value| json!({ "stream": { "$join": ["order:", new("order")] }, part: content });
    let commands = [
        order(
            "request",
            json!({ "open": { "vehicle": id.as_str(), "customer": customer.as_str() } }),
        ),
        order(
            "fact",
            json!({ "line-opened": { "line": new("line"), "complaint": text("complaint"), "payer": field("payer") } }),
        ),
        order(
            "fact",
            json!({ "odometer": { "reading": amount("odometer", unit), "at": "in" } }),
        ),
        when(
            "keys",
            order(
                "fact",
                json!({ "keys": { "step": "taken", "words": null } }),
            ),
        ),
    ];
    html! {
        details id="again" {
            summary class="row" { span class="what strong" { "It is back: take it in" } }
            form {
                (required("complaint", "Complaint", "in the customer's words", ""))
                (chips("payer", "Who pays", &[("customer", "customer"), ("warranty", "warranty"), ("goodwill", "goodwill")], "customer"))
                p class="soft" { "A comeback that is our doing is goodwill." }
                (odometer("odometer", "Odometer", unit, ""))
                (chips("keys", "Keys", &[("taken", "taken"), ("", "not here")], "taken"))
                div class="presses" { (button(Look::Confirm, "Check it in", "", &commands, Some("/order/{order}"))) }
            }
        }
    }
}

/// One visit: what was said, found, done and proved.
fn one_visit(visit: &Visit<'_>, row: &OrderRow) -> Result<Markup, Trouble> {
    let order = order_of(visit, &row.number.to_string())?;
    Ok(html! {
        (visit_row(row))
        @for line in &order.lines {
            dl class="told" {
                dt class="soft" { "Complaint" } dd { (line.complaint) }
                @if let Some(cause) = &line.cause { dt class="soft" { "Cause" } dd { (cause) } }
                @if let Some(correction) = &line.correction { dt class="soft" { "Correction" } dd { (correction) } }
            }
        }
        @for proof in &order.papers.proofs {
            p class="gap soft" { (shop::say::capital(&proof.name)) @if let Some(words) = &proof.words { ": " (words) } " (" (proof.at) ")" }
        }
        a class="row" href=(format!("/o/{}/story", row.number)) { span class="what" { "Story of " (row.number) } }
    })
}

fn visit_row(row: &OrderRow) -> Markup {
    html! {
        a class="row" href=(format!("/o/{}", row.number)) {
            span class="what strong" { (row.number) }
            span class="strong upper" { (row.word) }
        }
    }
}

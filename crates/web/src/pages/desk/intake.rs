//! Taking a vehicle in, and correcting what was mistyped.

use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::tap::{Look, amount, button, chips, field, input, new, odometer, required, text, when};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::repair::{Field, VehicleId};

/// What was typed as the identification number.
#[derive(Debug, Deserialize)]
pub struct Typed {
    vin: Option<String>,
}

pub async fn take_in(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(typed): Query<Typed>,
) -> Response {
    show(state, headers, move |visit| {
        let unit = visit.road_unit();
        let vin = typed.vin.unwrap_or_default();
        Ok(Shown::new("Check in a vehicle", html! {
            h1 { "Check in a vehicle" }
            form method="get" action="/new" class="narrow" {
                (input("vin", "Vehicle identification number", "17 characters, or leave empty", &vin))
                @if !vin.trim().is_empty() { (vin_word(&vin)) }
                div class="presses" { button class="press" type="submit" { "Check the number" } }
            }
            form class="narrow" {
                input type="hidden" name="vin" value=(vin.trim());
                input type="hidden" name="vin_read" value=(vin_read(&vin));
                (required("complaint", "Complaint", "in the customer's words", ""))
                (required("customer", "Customer", "", ""))
                (input("phone", "Telephone", "", ""))
                (required("vehicle", "Vehicle", "maker, model, year", ""))
                (input("plate", "Plate", "", ""))
                (odometer("odometer", "Odometer", unit, ""))
                (chips("keys", "Keys", &[("taken", "taken"), ("", "not here")], "taken"))
                div class="presses low" {
                    (button(Look::Confirm, "Check it in", "", &taking_in(unit), Some("/order/{order}")))
                }
            }
        }))
    })
    .await
}

fn vin_read(vin: &str) -> &'static str {
    if vin.trim().is_empty() {
        "none-readable"
    } else if vin::inspect(vin).valid {
        "valid"
    } else {
        "kept-anyway"
    }
}

/// What the number says of itself.
fn vin_word(vin: &str) -> Markup {
    let found = vin::inspect(vin);
    html! {
        @if found.valid {
            p class="yes" { "Valid" @if let Some(year) = found.model_year { ", model year " (year) }
                @if matches!(found.model_year_basis, vin::YearBasis::Doubted { .. }) { ", which is doubtful: read it again" }
            }
        } @else {
            p class="no" { "Not valid as typed" }
            @for problem in &found.problems { p { (problem) } }
            @if !found.suspects.is_empty() {
                p class="soft" {
                    "One change would make it valid: "
                    @for (nth, change) in found.suspects.iter().take(5).enumerate() {
                        @if nth > 0 { ", " }
                        "position " (change.position) " " strong { (change.character) }
                    }
                }
            }
            p class="soft" { "It is kept as typed if you go on." }
        }
    }
}

fn taking_in(unit: &str) -> Vec<Value> {
    let texts = |pairs: &[(&str, &str)]| -> Value {
        pairs
            .iter()
            .map(|(field, name)| ((*field).to_owned(), when(name, text(name))))
            .collect::<serde_json::Map<_, _>>()
            .into()
    };
    let join = |family: &str, name: &str| json!({ "$join": [family, new(name)] });
    let order =
        |part: &str, content: Value| json!({ "stream": join("order:", "order"), part: content });
    vec![
        json!({ "stream": join("customer:", "customer"), "customer_fact": {
            "declared": { "texts": texts(&[("name", "customer"), ("phone", "phone")]) } } }),
        json!({ "stream": join("vehicle:", "vehicle"), "vehicle_fact": { "declared": {
            "texts": texts(&[("label", "vehicle"), ("plate", "plate"), ("vin", "vin")]),
            "vin_read": field("vin_read"), "rust": null, "customer": new("customer") } } }),
        order(
            "request",
            json!({ "open": { "vehicle": new("vehicle"), "customer": new("customer") } }),
        ),
        order(
            "fact",
            json!({ "line-opened": { "line": new("line"), "complaint": text("complaint"), "payer": "customer" } }),
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
    ]
}

pub async fn correct(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let world = visit.snap.world();
        let vehicle_id = order.row.vehicle_id.clone().unwrap_or_default();
        let vehicle = world.vehicle(&VehicleId::new(vehicle_id.clone()))?;
        let told = |field: Field| {
            let told = vehicle.text(field);
            let text = told.words.map(|words| visit.snap.texts().text(words)).unwrap_or_default();
            let by: Vec<_> = told.by.iter().map(|command| command.as_str().to_owned()).collect();
            (text, by)
        };
        let customer_id = vehicle.customer().cloned();
        let customer = customer_id.as_ref().map(|id| world.customer(id)).transpose()?.unwrap_or_default();
        let of_customer = |field: Field| {
            let told = customer.text(field);
            let text = told.words.map(|words| visit.snap.texts().text(words)).unwrap_or_default();
            let by: Vec<_> = told.by.iter().map(|command| command.as_str().to_owned()).collect();
            (text, by)
        };
        let mend = |name: &str, label: &str, stream: String, part: &str, code: &str, (now, by): (String, Vec<String>)| {
            let mut mended = json!({ "field": code, "words": text(name), "after": by });
            if part == "vehicle_fact" {
                mended["vin_read"] = match code {
                    "vin" => json!("kept-anyway"),
                    _ => Value::Null,
                };
            }
            let command = json!({ "stream": stream, part: { "mended": mended } });
            html! {
                form class="narrow" {
                    (required(name, label, "", &now))
                    div class="presses" { (button(Look::Plain, &format!("Put {} right", label.to_lowercase()), "", &[command], None)) }
                }
            }
        };
        let vehicle_stream = || format!("vehicle:{vehicle_id}");
        let customer_stream = || format!("customer:{}", customer_id.as_ref().map(shop::repair::CustomerId::as_str).unwrap_or_default());
        let line = order.lines.first();
        Ok(Shown::of(&order, "Put right", html! {
            h1 { "Edit details" }
            @if let Some(line) = line {
                form class="narrow" {
                    (required("words", "Complaint", "", &line.complaint))
                    div class="presses" {
                        (button(Look::Plain, "Put complaint right", "", &[crate::tap::order_fact(&order.order, json!({ "line-worded": {
                            "line": line.line, "text": "complaint", "words": text("words"),
                            "after": line.told_by.get("complaint").cloned().unwrap_or_default() } }))], None))
                    }
                }
            }
            (mend("name", "Customer", customer_stream(), "customer_fact", "name", of_customer(Field::Name)))
            (mend("phone", "Telephone", customer_stream(), "customer_fact", "phone", of_customer(Field::Phone)))
            (mend("label", "Vehicle", vehicle_stream(), "vehicle_fact", "label", told(Field::Label)))
            (mend("plate", "Plate", vehicle_stream(), "vehicle_fact", "plate", told(Field::Plate)))
            (mend("vin", "Identification number", vehicle_stream(), "vehicle_fact", "vin", told(Field::Vin)))
            form class="narrow" {
                (odometer("reading", "Odometer on the way in", visit.road_unit(), order.papers.odometer_in.as_deref().unwrap_or("")))
                div class="presses" {
                    (button(Look::Plain, "Put odometer right", "", &[crate::tap::order_fact(&order.order, json!({ "odometer": { "reading": amount("reading", visit.road_unit()), "at": "in" } }))], None))
                }
            }
            h2 { "Opened by mistake?" }
            @if order.keys_here {
                form { div class="presses" {
                    (button(Look::Plain, "Keys given back", "we still have them", &[crate::tap::order_fact(&order.order, json!({ "keys": { "step": "given-back", "words": null } }))], None))
                } }
            }
            form class="narrow" {
                (required("words", "Why", "", ""))
                div class="presses" {
                    (button(Look::Plain, "Void this order", "only while nothing was done on it", &[crate::tap::order_request(&order.order, json!({ "void": { "words": text("words") } }))], Some("/")))
                }
            }
        }))
    })
    .await
}

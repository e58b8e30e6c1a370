//! A calculator asked for an order: the same form, and its answer kept with the order in a tap.
//! A fluid's readings stand in the order's story; a drive becomes its proof.

use super::calc::{Fields, Place, content, found};
use crate::State;
use crate::pages::vehicle::pieces::disturbed_seen;
use crate::pages::{Shown, Visit, order_of, show};
use crate::tap::{Look, button, new, order_fact};
use axum::Form;
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::Trouble;
use shop::calculators::{self, Answer, Asked, Calculator, Room, Takes};
use shop::mending::known;
use shop::record::v1::codes::{KindForm, SystemForm};
use shop::sums::{self, Sum};
use shop::view::{ItemView, OrderView};

/// One calculator, for an order.
pub async fn page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, room, code)): Path<(String, String, String)>,
    Query(fields): Query<Fields>,
) -> Response {
    show(state, headers, move |visit| {
        shown(visit, &number, &room, &code, fields)
    })
    .await
}

/// The same, asked with what is too long for an address.
pub async fn sent(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, room, code)): Path<(String, String, String)>,
    Form(fields): Form<Fields>,
) -> Response {
    show(state, headers, move |visit| {
        shown(visit, &number, &room, &code, fields)
    })
    .await
}

fn shown(
    visit: &Visit<'_>,
    number: &str,
    room: &str,
    code: &str,
    mut fields: Fields,
) -> Result<Shown, Trouble> {
    let order = order_of(visit, number)?;
    let (room, one) = found(room, code)?;
    if !is_kept(room) {
        return Err(Trouble::not_found(format!(
            "nothing of {} is kept with an order",
            room.name.to_lowercase()
        )));
    }
    let item = fields.remove("of");
    let item = match &item {
        Some(id) => Some(
            order
                .items
                .iter()
                .find(|item| item.item == *id)
                .ok_or_else(|| Trouble::not_found("there is no such item on this order"))?,
        ),
        None => None,
    };
    let sent = !fields.is_empty();
    let mut asked = one.asked(fields, &known(visit.snap.world()));
    let answer = if sent {
        (one.run)(&mut asked)
    } else {
        for (name, value) in one.at_first {
            asked.or_else(name, value);
        }
        if let Some(item) = item {
            known_of(visit, &order, item, one, &mut asked)?;
        }
        None
    };
    let answer = answer.filter(|_| asked.troubles.is_empty());
    let keep = answer
        .as_ref()
        .map(|answer| keep(&order, item, room, one, &asked, answer));
    let place = Place {
        address: format!("/o/{}/calc/{}/{}", order.number, room.code, one.code),
        item: item.map(|item| item.item.as_str()),
        keep,
    };
    let content = content(&place, one, &asked, answer.as_ref(), sent);
    let mut shown = Shown::of(&order, one.name, content);
    if let Some(item) = item {
        let home = format!("/o/{}/item/{}", order.number, item.item);
        shown.leads_to(&format!("{} · {}", order.number, item.label), &home);
    }
    Ok(shown)
}

/// What the order knows of an item stands in the fields: what came out and what went in.
fn known_of(
    visit: &Visit<'_>,
    order: &OrderView,
    item: &ItemView,
    one: &Calculator,
    asked: &mut Asked,
) -> Result<(), Trouble> {
    let told = sums::amounts(visit.snap, order.number, &item.item)?;
    let names = calculators::fields(one.form);
    for (name, amounts) in [("out", told.out), ("in", told.poured)] {
        if names.iter().any(|field| field.name == name) {
            asked.or_else(name, &amounts.join(", "));
        }
    }
    Ok(())
}

/// What an order keeps: what is of fluids and of drives. Coolant and threads have a way of their
/// own on an order.
fn is_kept(room: &Room) -> bool {
    matches!(room.code, "fluids" | "roadtest")
}

fn keep(
    order: &OrderView,
    item: Option<&ItemView>,
    room: &Room,
    one: &Calculator,
    asked: &Asked,
    answer: &Answer,
) -> Markup {
    let kept = one.kept(room.code, asked, answer);
    let fact = |content: Value| order_fact(&order.order, content);
    let mut commands = vec![fact(json!({ "calculated": {
        "id": new("note"), "item": item.map(|item| &item.item), "snag": null,
        "calculator": kept.calculator, "version": kept.version,
        "inputs": kept.inputs, "outputs": kept.outputs, "working": kept.working } }))];
    commands.extend(readings(order, item, one, asked));
    let proof = (room.code == "roadtest").then(|| outcome(answer)).flatten();
    commands.extend(proof.map(|outcome| proved(order, outcome, answer)));
    let (label, small) = match proof {
        Some("held") => ("Save: the road test passed", "the proof, with its readings"),
        Some("failed") => ("Save: the road test failed", "the proof, with its readings"),
        Some(_) => (
            "Save: couldn't reproduce",
            "the complaint did not come back on",
        ),
        None if room.code == "roadtest" => ("Save with the order", "it proves nothing yet"),
        None => ("Save with the order", "with its readings"),
    };
    let next = match item {
        Some(item) => format!("/o/{}/item/{}", order.number, item.item),
        None => format!("/o/{}/due", order.number),
    };
    html! { form { div class="presses low" { (button(Look::Confirm, label, small, &commands, Some(&next))) } } }
}

/// A verdict that proves something; "can't tell" does not.
fn outcome(answer: &Answer) -> Option<&'static str> {
    match answer.outputs["verdict"].as_str() {
        Some("held") => Some("held"),
        Some("failed") => Some("failed"),
        Some("not-provoked") => Some("not-provoked"),
        _ => None,
    }
}

/// The proof, in the place of the earlier ones. Its readings are those that its checks rest on.
fn proved(order: &OrderView, outcome: &str, answer: &Answer) -> Value {
    const MOST: usize = 12;
    let none = Vec::new();
    let checks = answer.outputs["checks"].as_array().unwrap_or(&none);
    let readings: Vec<Value> = checks
        .iter()
        .flat_map(|check| check["readings"].as_array().unwrap_or(&none))
        .filter_map(|one| {
            let value = one["value"].as_f64()?;
            let unit = one["unit"].as_str()?;
            Some(json!({ "what": one["name"], "value": format!("{value:.1} {unit}") }))
        })
        .take(MOST)
        .collect();
    let earlier = order
        .proofs_told
        .get("road-test")
        .cloned()
        .unwrap_or_default();
    order_fact(
        &order.order,
        json!({ "proved": {
            "id": new("proof"), "line": null, "proof": "road-test", "outcome": outcome,
            "words": null, "readings": readings, "calculation": new("note"),
            "after": disturbed_seen(order), "replaces": earlier } }),
    )
}

/// What was read or measured of an item, as it was written: it stands in the story.
fn readings(
    order: &OrderView,
    item: Option<&ItemView>,
    one: &Calculator,
    asked: &Asked,
) -> Vec<Value> {
    let Some(item) = item else {
        return Vec::new();
    };
    let each = calculators::fields(one.form).into_iter().filter_map(|field| {
        let value = match field.takes {
            Takes::Number { .. } => asked.some(&field.name)?,
            _ => return None,
        };
        Some(order_fact(
            &order.order,
            json!({ "read-off": { "id": new(&field.name), "item": item.item, "what": field.name,
                "value": value.replace('\u{2212}', "-"), "temperature": null, "after": item.seen } }),
        ))
    });
    each.collect()
}

/// What a fluid or the battery can be asked, and what was kept of it.
pub fn of_item(visit: &Visit<'_>, order: &OrderView, item: &ItemView) -> Result<Markup, Trouble> {
    let asked = calculators_of(item);
    let kept = sums::of_item(visit.snap, order.number, &item.item)?;
    Ok(html! {
        @for sum in &kept { (kept_row(sum)) }
        @for one in asked {
            a class="row" href=(format!("/o/{}/calc/fluids/{}?of={}", order.number, one.code, item.item)) {
                span class="what" { span class="strong line" { (one.name) ": steps and limits" } span class="soft line" { (one.what) } }
            }
        }
    })
}

fn kept_row(sum: &Sum) -> Markup {
    let name = sum
        .calculator
        .split_once(' ')
        .and_then(|(room, code)| calculators::calculator(room, code))
        .map_or(sum.calculator.as_str(), |one| one.name);
    html! {
        details id=(format!("sum-{}", sum.id)) class="working" {
            summary class="row" {
                span class="what" {
                    span class="line" { (name) ": " span class={ "strong " (sum.tone) } { (sum.fact) } }
                    span class="soft line" { "kept by " (sum.by) }
                }
            }
            pre { (sum.working) }
        }
    }
}

/// By its kind and its system; a gearbox may be one of three.
fn calculators_of(item: &ItemView) -> Vec<&'static Calculator> {
    let codes: &[&str] = match (item.kind, item.system) {
        (_, SystemForm::Battery) => &["battery"],
        (KindForm::Fluid, SystemForm::Oil | SystemForm::Engine) => &["engine-oil"],
        (KindForm::Fluid, SystemForm::Brakes) => &["brake"],
        (KindForm::Fluid, SystemForm::Steering) => &["power-steering"],
        (KindForm::Fluid, SystemForm::Fuel) => &["fuel"],
        (KindForm::Fluid, SystemForm::Climate) => &["refrigerant"],
        (KindForm::Fluid, SystemForm::Exhaust) => &["urea"],
        (KindForm::Fluid, SystemForm::Transmission) => {
            &["automatic-gearbox", "manual-gearbox", "axle", "clutch"]
        }
        (KindForm::Fluid, SystemForm::Body) => &["washer"],
        _ => &[],
    };
    let one = |code: &&str| calculators::calculator("fluids", code);
    codes.iter().filter_map(one).collect()
}

//! What taking a way tells the record, in one go.

use super::Sheet;
use crate::tap::{new, order_fact, order_request, words};
use serde::Serialize;
use serde_json::{Value, json};
use shop::mending::{Added, CALCULATOR, Told};

/// A name made with the choice: the choice's own, then a word of its own.
fn made(word: &str) -> Value {
    json!({ "$join": [new("choice"), format!("-{word}")] })
}

/// The way with its numbers, its steps as work that is due, what will be inside, its parts,
/// and last the price.
pub(super) fn commands(sheet: &Sheet<'_>, told: &Told, price: &Added) -> Vec<Value> {
    let found = sheet.found;
    let fact = |content: Value| order_fact(&sheet.order.order, content);
    let mut out = vec![fact(json!({ "calculated": {
        "id": new("choice"), "item": found.item, "snag": found.snag,
        "calculator": CALCULATOR.0, "version": CALCULATOR.1,
        "inputs": text(&told.fields), "outputs": text(told), "working": text(&told.way.working) } }))];
    for (nth, step) in told.way.steps.iter().enumerate() {
        // What is still inside must be out before the engine turns.
        let gate = if step.takes_out.is_empty() {
            "hand-over"
        } else {
            "start"
        };
        out.push(fact(json!({ "work-due": {
            "id": made(&nth.to_string()), "item": found.item,
            "words": words(&shop::say::capital(&step.what)), "until": { "before": gate } } })));
    }
    out.extend(put_ins(sheet, told).into_iter().map(fact));
    for (nth, part) in told.way.parts.iter().enumerate() {
        out.push(fact(json!({ "part-needed": {
            "part": made(&format!("part-{nth}")), "line": line(sheet), "item": found.item,
            "label": words(&part.label), "number": null, "quantity": "1", "cost": null,
            "price": part.price, "core": null, "has_old": false } })));
    }
    let entries = entries(sheet, told, price);
    if !entries.is_empty() {
        out.push(order_request(
            &sheet.order.order,
            json!({ "add-to-price": { "entries": entries } }),
        ));
    }
    out
}

/// The order's line, where it has one alone.
fn line(sheet: &Sheet<'_>) -> Option<String> {
    match sheet.order.lines.as_slice() {
        [line] => Some(line.line.clone()),
        _ => None,
    }
}

/// Chips, tang and rag as things that can be inside.
fn put_ins(sheet: &Sheet<'_>, told: &Told) -> Vec<Value> {
    let mut codes: Vec<&str> = told
        .way
        .steps
        .iter()
        .flat_map(|step| &step.puts_in)
        .map(String::as_str)
        .collect();
    codes.sort_unstable();
    codes.dedup();
    let system = sheet.item.map(|item| json!(item.system));
    let zone = sheet.item.map(|item| json!(item.zone));
    let place = shop::say::positions(&sheet.found.at);
    let label = sheet.item.map_or("", |item| item.label.as_str());
    codes
        .into_iter()
        .map(|code| {
            let name = match code {
                "chips" => "chips of the drill",
                "tang" => "tang of the insert",
                "rag" => "rag in the opening",
                other => other,
            };
            json!({ "declared": { "item": {
                "id": made(code), "kind": "put-in",
                "system": system.clone().unwrap_or_else(|| json!("unknown")),
                "zone": zone.clone().unwrap_or_else(|| json!("unknown")),
                "label": words(format!("{name}, {label} {place}").trim()),
                "size": null, "pieces": [{ "position": 1, "length": null }], "pattern": null,
                "spent": false, "may_miss": null, "put_in": code, "holds": null } } })
        })
        .collect()
}

fn entries(sheet: &Sheet<'_>, told: &Told, price: &Added) -> Vec<Value> {
    let mut out = Vec::new();
    let what = sheet.found.text.split(':').next().unwrap_or_default();
    let entry = |charge: &str, label: String, quantity: &str, each: &str| {
        json!({ "line": line(sheet), "charge": charge, "label": words(&label),
            "quantity": quantity, "each": each, "payer": "customer" })
    };
    if let (Some(hours), Some(minutes)) = (&price.hours, &told.way.minutes) {
        let label = format!(
            "Thread repair, {what}: {}",
            super::super::told::minutes(minutes)
        );
        out.push(entry("labour", label, hours, &price.rate));
    }
    if let Some(parts) = &price.parts {
        let labels: Vec<&str> = told
            .way
            .parts
            .iter()
            .map(|part| part.label.as_str())
            .collect();
        let label = if labels.is_empty() {
            told.way.name.clone()
        } else {
            labels.join(", ")
        };
        out.push(entry("part", shop::say::capital(&label), "1", parts));
    }
    out
}

/// A value as it is kept: its JSON as text.
fn text(value: &impl Serialize) -> String {
    serde_json::to_string(value).expect("words, numbers and lists are always JSON")
}

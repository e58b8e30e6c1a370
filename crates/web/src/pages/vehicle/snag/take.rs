//! What taking a way tells the record, in one go.

use super::Sheet;
use crate::pages::desk::price::seen;
use crate::phrases::vehicle as say;
use crate::tap::{new, order_fact, order_request, words};
use phrases::{Language, speaking};
use serde::Serialize;
use serde_json::{Value, json};
use shop::Amount;
use shop::mending::{Added, CALCULATOR, Told};
use shop::record::v1::codes::ChargeForm;
use shop::view::PriceEntryView;

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
                "chips" => say::chips_of_the_drill(),
                "tang" => say::tang_of_the_insert(),
                "rag" => say::rag_in_the_opening(),
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

/// What the labour and the parts of a way are called on the price.
fn labels(sheet: &Sheet<'_>, told: &Told) -> (Option<String>, String) {
    let what = sheet.found.text.split(':').next().unwrap_or_default();
    let labour = told.way.minutes.as_ref().map(|minutes| {
        let minutes = crate::pages::bench::answer::minutes(minutes);
        say::thread_repair(what, minutes)
    });
    let parts = &told.way.parts;
    let named: Vec<&str> = parts.iter().map(|part| part.label.as_str()).collect();
    let parts = if named.is_empty() {
        told.way.name.clone()
    } else {
        named.join(", ")
    };
    (labour, shop::say::capital(&parts))
}

/// The entries that taking this way put on the price, as they stand there now: by their
/// place among those on no invoice. They may have been put there in another language.
pub(super) fn on_price(sheet: &Sheet<'_>, told: &Told) -> Vec<usize> {
    let said: Vec<(Option<String>, String)> = Language::ALL
        .into_iter()
        .map(|language| speaking(language, || labels(sheet, told)))
        .collect();
    let entries = sheet.order.price.iter().flat_map(|price| &price.open);
    let entries: Vec<_> = entries.collect();
    let last = |charge: ChargeForm, is_it: &dyn Fn(&str) -> bool| {
        let meant = |entry: &&PriceEntryView| entry.charge == charge && is_it(&entry.label);
        entries.iter().rposition(meant)
    };
    let labour = |label: &str| {
        said.iter()
            .any(|(labour, _)| labour.as_deref() == Some(label))
    };
    let parts = |label: &str| said.iter().any(|(_, parts)| parts == label);
    let found = [
        last(ChargeForm::Labour, &labour),
        last(ChargeForm::Part, &parts),
    ];
    found.into_iter().flatten().collect()
}

/// The price without some of its entries; the others stay to the last digit.
pub(super) fn price_without(sheet: &Sheet<'_>, gone: &[usize]) -> Value {
    let entries = sheet.order.price.iter().flat_map(|price| &price.open);
    let left: Vec<Value> = entries
        .enumerate()
        .filter(|(nth, _)| !gone.contains(nth))
        .map(|(_, entry)| entry.sent())
        .collect();
    order_request(
        &sheet.order.order,
        json!({ "price": { "entries": left, "after": seen(sheet.order) } }),
    )
}

fn entries(sheet: &Sheet<'_>, told: &Told, price: &Added) -> Vec<Value> {
    let mut out = Vec::new();
    let (labour, parts_label) = labels(sheet, told);
    let entry = |charge: &str, label: String, quantity: Value, each: &Amount| {
        json!({ "line": line(sheet), "charge": charge, "label": words(&label),
            "quantity": quantity, "each": each, "payer": "customer" })
    };
    if let (Some(hours), Some(label)) = (&price.hours, labour) {
        out.push(entry("labour", label, json!(hours), &price.rate));
    }
    if let Some(parts) = &price.parts {
        out.push(entry("part", parts_label, json!("1"), parts));
    }
    out
}

/// A value as it is kept: its JSON as text.
fn text(value: &impl Serialize) -> String {
    serde_json::to_string(value).expect("words, numbers and lists are always JSON")
}

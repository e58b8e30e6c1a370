//! From the parts to the price, and from the plan to the parts: each in one tap.

use super::{Ask, count};
use crate::tap::{Look, button, field, figure, new, order_fact, order_request, words};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::Trouble;
use shop::planning::{OrderMap, in_order, map_of_order, on_map_of};
use shop::record::v1::codes::{ChargeForm, PayerForm};
use shop::repair::{ItemId, Kind};
use shop::view::{OrderView, PartView};

/// What stands on the price is named as the part is, alone or among others.
fn on_price(order: &OrderView, label: &str) -> bool {
    let named = |entry: &str| {
        let mut pieces = entry.split(", ");
        entry.eq_ignore_ascii_case(label) || pieces.any(|piece| piece.eq_ignore_ascii_case(label))
    };
    let entries = order.price.iter().flat_map(|price| &price.entries);
    let parts = entries.filter(|entry| entry.charge == ChargeForm::Part);
    parts.into_iter().any(|entry| named(&entry.label))
}

/// Whether a part is on the price; if not, the tap that puts it there with its core charge.
pub fn price(order: &OrderView, part: &PartView) -> Markup {
    if on_price(order, &part.label) {
        return html! { p class="soft" { "On the price" } };
    }
    if order.handed_over || order.voided {
        return html! {};
    }
    let payer = order
        .lines
        .iter()
        .find(|line| Some(&line.line) == part.line.as_ref())
        .or(order.lines.first())
        .map_or(PayerForm::Customer, |line| line.payer);
    let entry = |charge: &str, label: &str, each: Value| {
        json!({ "line": part.line, "charge": charge, "label": words(label),
            "quantity": part.quantity, "each": each, "payer": payer })
    };
    let each = match &part.price {
        Some(price) => json!(price),
        None => field("each"),
    };
    let mut entries = vec![entry("part", &part.label, each)];
    if let Some(core) = &part.core {
        let label = format!("Core charge, {}", part.label);
        entries.push(entry("core", &label, json!(core)));
    }
    let add = order_request(
        &order.order,
        json!({ "add-to-price": { "entries": entries } }),
    );
    let small = match &part.price {
        Some(price) => format!("{} × {price}", part.quantity),
        None => String::new(),
    };
    html! {
        form {
            @if part.price.is_none() { (figure("each", "Sold for, each", "before tax", "", true)) }
            div class="presses" { (button(Look::Plain, "Put it on the price", &small, &[add], None)) }
        }
    }
}

/// What the plan renews and nobody has said is needed yet: all of it in one tap.
pub fn by_plan(ask: &Ask<'_>, order: &OrderView) -> Result<Markup, Trouble> {
    let named: Vec<(ItemId, Kind)> = renewed(ask, order)?
        .into_iter()
        .filter(|(item, _)| {
            let known = |part: &PartView| part.label.eq_ignore_ascii_case(item.as_str());
            !order.parts.iter().any(known)
        })
        .collect();
    let line = match order.lines.as_slice() {
        [one] => json!(one.line),
        _ => Value::Null,
    };
    let needed: Vec<Value> = named
        .iter()
        .enumerate()
        .map(|(nth, (item, kind))| {
            // Nobody keeps an old seal: it is scrap as it comes off.
            let has_old = *kind != Kind::Seal;
            order_fact(
                &order.order,
                json!({ "part-needed": {
                    "part": new(&format!("part-{nth}")), "line": line, "item": in_order(item).as_str(),
                    "label": words(item.as_str()), "number": null, "quantity": "1", "cost": null,
                    "price": null, "core": null, "has_old": has_old } }),
            )
        })
        .collect();
    let names: Vec<&str> = named.iter().map(|(item, _)| item.as_str()).collect();
    Ok(html! {
        @if !named.is_empty() && !order.handed_over {
            p class="gap" { "By the plan these go on new: " span class="strong" { (names.join(", ")) } }
            form { div class="presses" {
                (button(Look::Plain, "They are needed", &count(named.len(), "part", "parts"), &needed, None))
            } }
        }
    })
}

/// What the plan of the order renews; nothing where there is no plan.
fn renewed(ask: &Ask<'_>, order: &OrderView) -> Result<Vec<(ItemId, Kind)>, Trouble> {
    let Some((map, version)) = map_of_order(ask.snap, order.number)? else {
        return Ok(Vec::new());
    };
    // A map that has errors by now, or no way, names no part; its own page says why.
    let on = on_map_of(ask.snap, order.number, &map, Some(version), None);
    let Some(on) = on.ok().filter(OrderMap::asks) else {
        return Ok(Vec::new());
    };
    let renewed = on.whole(ask.snap).map(|found| found.renewed);
    let known = |name: String| {
        let item = ItemId::new(name);
        let kind = on.map.items.get(&item)?.kind;
        Some((item, kind))
    };
    Ok(renewed
        .unwrap_or_default()
        .into_iter()
        .filter_map(known)
        .collect())
}

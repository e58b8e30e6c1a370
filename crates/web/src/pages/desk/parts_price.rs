//! From the parts to the price, and from the plan to the parts: each in one tap.

use crate::pages::Visit;
use crate::phrases::desk as say;
use crate::tap::{Look, button, field, figure, new, order_fact, order_request, words};
use maud::{Markup, html};
use phrases::{Language, speaking};
use serde_json::{Value, json};
use shop::Trouble;
use shop::offers::PriceOffer;
use shop::planning::{OrderMap, in_order, map_of_order, on_map_of};
use shop::record::v1::codes::{ChargeForm, PayerForm};
use shop::repair::{ItemId, Kind};
use shop::view::{OrderView, PartView, SubletView};

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
pub fn price(order: &OrderView, part: &PartView, offer: Option<&PriceOffer>) -> Markup {
    if on_price(order, &part.label) {
        return html! {
            p class="soft" { (say::on_the_price()) }
            @if part.core_back { (credit(order, part)) }
        };
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
    let each = match &part.price_exact {
        Some(price) => json!(price),
        None => field("each"),
    };
    // Its number goes on the papers with it.
    let label = match &part.number {
        Some(number) => say::part_and_number(&part.label, number),
        None => part.label.clone(),
    };
    let mut entries = vec![entry("part", &label, each)];
    if let Some(core) = &part.core_exact {
        entries.push(entry("core", &core_charge(part), json!(core)));
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
            @if part.price.is_none() {
                @let hint = if offer.is_some() { say::before_tax_from_cost() } else { say::before_tax() };
                (figure("each", say::sold_for_each(), hint, offer.map_or("", |offer| offer.price.exact()), true))
                @if let Some(offer) = offer { (super::price_offers::how(&format!("found-{}", part.part), &offer.working_html)) }
            }
            div class="presses" { (button(Look::Plain, say::put_on_price(), &small, &[add], None)) }
        }
    }
}

/// A text as each language has it.
fn in_each_language(text: impl Fn() -> String) -> [String; 2] {
    Language::ALL.map(|language| speaking(language, &text))
}

fn core_charge(part: &PartView) -> String {
    say::core_charge_for(&part.label)
}

/// What takes the core charge off the price again once the old part went back; nothing, where
/// none is charged, or it is off already.
pub fn core_credit(order: &OrderView, part: &PartView) -> Option<Value> {
    let entries = || order.price.iter().flat_map(|price| &price.entries);
    // It may have been put there in another language than is spoken now.
    let charges = in_each_language(|| core_charge(part));
    let backs = in_each_language(|| say::core_back_for(&part.label));
    let charged = entries()
        .find(|entry| entry.charge == ChargeForm::Core && charges.contains(&entry.label))?;
    if order.handed_over || order.voided || entries().any(|entry| backs.contains(&entry.label)) {
        return None;
    }
    let label = say::core_back_for(&part.label);
    let mut credit = charged.sent();
    credit["label"] = words(&label);
    credit["each"] = json!(format!("-{}", charged.each_exact));
    // What was taken off the charge does not come back.
    if let Some(less) = credit.get_mut("less").and_then(Value::as_array_mut) {
        for less in less {
            less["amount"] = json!(format!("-{}", less["amount"].as_str().unwrap_or("0")));
        }
    }
    Some(order_request(
        &order.order,
        json!({ "add-to-price": { "entries": [credit] } }),
    ))
}

fn credit(order: &OrderView, part: &PartView) -> Markup {
    html! {
        @if let Some(credit) = core_credit(order, part) {
            p class="wait gap" { (say::core_still_charged()) }
            form { div class="presses" { (button(Look::Plain, say::take_core_off(), "", &[credit], None)) } }
        }
    }
}

/// Work that was sent out and is not on the price yet.
pub fn unpriced(order: &OrderView) -> impl Iterator<Item = &SubletView> {
    order.sublets.iter().filter(|sublet| {
        let mut entries = order.price.iter().flat_map(|price| &price.entries);
        !entries.any(|entry| entry.charge == ChargeForm::Sublet && entry.label == sublet.what)
    })
}

/// Work that was sent out, on the price, or the tap that puts it there.
pub fn sublet_price(order: &OrderView, sublet: &SubletView, offer: Option<&PriceOffer>) -> Markup {
    if !unpriced(order).any(|one| one.sublet == sublet.sublet) {
        return html! { p class="soft" { (say::on_the_price()) } };
    }
    if order.handed_over || order.voided {
        return html! {};
    }
    let mut lines = order.lines.iter();
    let line = lines.find(|line| Some(&line.line) == sublet.line.as_ref());
    let payer = line
        .or(order.lines.first())
        .map_or(PayerForm::Customer, |line| line.payer);
    let add = order_request(
        &order.order,
        json!({ "add-to-price": { "entries": [{ "line": sublet.line, "charge": "sublet",
            "label": words(&sublet.what), "quantity": "1", "each": field("each"), "payer": payer }] } }),
    );
    let hint = match &sublet.cost {
        Some(cost) => say::it_costs_us_amount(cost),
        None => say::before_tax().to_owned(),
    };
    html! {
        form {
            p class="wait gap" { (say::not_on_price_yet()) }
            (figure("each", say::charged_for_it(), &hint, offer.map_or("", |offer| offer.price.exact()), true))
            @if let Some(offer) = offer { (super::price_offers::how(&format!("found-{}", sublet.sublet), &offer.working_html)) }
            div class="presses" { (button(Look::Plain, say::put_on_price(), &sublet.what, &[add], None)) }
        }
    }
}

/// What the plan renews and nobody has said is needed yet: all of it in one tap.
pub fn by_plan(visit: &Visit<'_>, order: &OrderView) -> Result<Markup, Trouble> {
    let named: Vec<(ItemId, Kind)> = renewed(visit, order)?
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
            p class="gap" { (say::by_plan_new()) span class="strong" { (names.join(", ")) } }
            form { div class="presses" {
                (button(Look::Plain, say::they_are_needed(), &say::parts_count(named.len()), &needed, None))
            } }
        }
    })
}

/// What the plan of the order renews; nothing where there is no plan.
fn renewed(visit: &Visit<'_>, order: &OrderView) -> Result<Vec<(ItemId, Kind)>, Trouble> {
    let Some((map, version)) = map_of_order(visit.snap, order.number)? else {
        return Ok(Vec::new());
    };
    // A map that has errors by now, or no way, names no part; its own page says why.
    let on = on_map_of(visit.snap, order.number, &map, Some(version), None);
    let Some(on) = on.ok().filter(OrderMap::asks) else {
        return Ok(Vec::new());
    };
    let renewed = on.whole(visit.snap).map(|found| found.renewed);
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

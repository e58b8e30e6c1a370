//! What a stall takes: how much its lift carries, how high a vehicle clears, and what is crossed on
//! the way in.

use super::setup::{of_shop, seen};
use crate::pages::Visit;
use crate::phrases::shop as say;
use crate::tap::{Look, amount, button, input, when};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::floor::reads;
use shop::measure::{Customary, Dimension};
use shop::repair::{StallId, StallIs};

/// The units in which a shop says how heavy and how high something is.
pub fn units(visit: &Visit<'_>) -> (&'static str, &'static str) {
    match shop::mending::customary(visit.snap.world()) {
        Customary::Us => ("lb", "in"),
        Customary::Metric => ("kg", "mm"),
    }
}

/// Behind a stall's sort: what was told of it.
pub fn in_short(visit: &Visit<'_>, stall: &StallId) -> Markup {
    let shop = &visit.snap.world().shop;
    let Some(fitted) = shop.fitted(stall) else {
        return html! {};
    };
    let names = crossed(visit, fitted.crosses);
    html! {
        @if let Some(carries) = fitted.carries { (say::up_to_weight(carries.as_str())) }
        @if let Some(clears) = fitted.clears { (say::up_to_height(clears.as_str())) }
        @if !names.is_empty() { (say::behind_stalls(names.join(", "))) }
    }
}

fn crossed(visit: &Visit<'_>, crosses: &[StallId]) -> Vec<String> {
    let stalls = visit.snap.world().shop.stalls();
    let there = stalls.iter().filter(|(id, ..)| crosses.contains(id));
    there
        .map(|(_, name, _)| visit.snap.texts().text(*name))
        .collect()
}

/// The fields for it; outside there are none. What is left empty is not known, and not checked.
pub fn takes(visit: &Visit<'_>, stall: &StallId, sort: StallIs) -> Markup {
    let shop = &visit.snap.world().shop;
    let fitted = shop.fitted(stall);
    if sort == StallIs::Outside {
        return html! {};
    }
    let others: Vec<(String, String)> = shop
        .stalls()
        .into_iter()
        .filter(|(id, _, sort)| *id != stall && *sort != StallIs::Outside)
        .map(|(id, name, _)| (id.as_str().to_owned(), visit.snap.texts().text(name)))
        .collect();
    let crosses = fitted.map_or(&[][..], |fitted| fitted.crosses);
    let is_crossed = |id: &str| crosses.iter().any(|crossed| crossed.as_str() == id);
    let (mass, length) = units(visit);
    let is_lift = sort == StallIs::Lift;
    let figure = |name: &str, unit: &str| match is_lift {
        true => amount(name, unit),
        false => Value::Null,
    };
    // A field is named as the stall it stands for: no name of the record is one of these.
    let ticked: Vec<Value> = others
        .iter()
        .map(|(id, _)| when(&format!("cross-{id}"), json!(id)))
        .collect();
    let told = of_shop(json!({ "stall-fitted": { "stall": stall.as_str(),
        "carries": figure("carries", mass), "clears": figure("clears", length), "crosses": ticked,
        "after": seen(shop.fitted_told(stall)) } }));
    let now = |value: Option<&shop::repair::Written>| {
        value.map_or_else(String::new, |value| value.as_str().to_owned())
    };
    let carries = now(fitted.and_then(|fitted| fitted.carries));
    let clears = now(fitted.and_then(|fitted| fitted.clears));
    html! {
        @if is_lift || !others.is_empty() {
            form {
                @if is_lift {
                    (input("carries", say::lift_carries(), &say::off_its_plate(mass), &carries))
                    (not_read(&carries, Dimension::Mass))
                    (input("clears", say::highest_vehicle(), &say::clears_the_roof(length), &clears))
                    (not_read(&clears, Dimension::Length))
                }
                @if !others.is_empty() {
                    fieldset {
                        legend { (say::crossed_on_the_way()) }
                        @for (id, name) in &others {
                            label class="row" { input type="checkbox" name=(format!("cross-{id}")) value=(id) checked[is_crossed(id)]; span { (name) } }
                        }
                    }
                }
                div class="presses" { (button(Look::Plain, say::save_what_it_takes(), "", &[told], None)) }
            }
        }
    }
}

/// A figure that nobody can read is not checked, and that is said.
pub fn not_read(value: &str, dimension: Dimension) -> Markup {
    html! {
        @if !value.is_empty() && !reads(value, dimension) { p class="wait" { (say::not_read_not_checked(value)) } }
    }
}

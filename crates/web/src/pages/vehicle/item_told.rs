//! What is told of an item after it was declared: what it belongs to, what it is called, how
//! many there are, its size and its torque. Who tells better names what they had seen.

use super::choices::{SYSTEMS, ZONES};
use crate::pages::Visit;
use crate::tap::{Look, button, chips, field, input, order_fact, required, text, when};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::Trouble;
use shop::measure::Customary;
use shop::mending::customary;
use shop::record::form::Form;
use shop::record::v1::codes::{KindForm, SystemForm, ZoneForm};
use shop::view::{ItemView, OrderView};

/// What it belongs to, its size and torque, and what it is called.
pub fn about(visit: &Visit<'_>, order: &OrderView, item: &ItemView) -> Result<Markup, Trouble> {
    let fact = |content: Value| order_fact(&order.order, content);
    let system = item.system.read().map_or("", SystemForm::word);
    let zone = item.zone.read().map_or("", ZoneForm::word);
    let told = system != "unknown";
    let us = customary(visit.snap.world()) == Customary::Us;
    Ok(html! {
        details id="about" open[!told] {
            summary class="row" { span class="strong" { "Belongs to, worked on" } }
            form {
                (chips("system", "Belongs to", SYSTEMS, system))
                (chips("zone", "Worked on", ZONES, zone))
                div class="presses" {
                    (button(Look::Plain, "Save", "", &[when("system", fact(json!({ "located": { "item": item.item, "system": field("system"), "zone": field("zone"), "after": item.told_by } })))], None))
                }
            }
        }
        @if item.kind == KindForm::Fasteners { (size_and_torque(order, item, us)) }
        details id="name" {
            summary class="row" { span class="strong" { "Called, counted" } }
            form {
                (required("label", "Call it", "", &item.label))
                div class="presses" { (button(Look::Plain, "Call it that", "", &[fact(json!({ "renamed": { "item": item.item, "label": text("label"), "after": item.told_by } }))], None)) }
            }
            form {
                (required("count", "How many there are", "", &item.positions.len().to_string()))
                div class="presses" { (button(Look::Plain, "Counted again", "", &[fact(json!({ "count-corrected": { "item": item.item, "pieces": { "$pieces": "count" }, "after": item.told_by } }))], None)) }
            }
        }
    })
}

/// What people told apart, each with the tap that settles on it.
pub fn told_apart(order: &OrderView, item: &ItemView) -> Markup {
    let counts: Vec<_> = item
        .apart
        .iter()
        .filter(|told| told.settles.is_none())
        .map(|told| told.says.as_str())
        .collect();
    html! {
        @for (what, asked) in [("torque", "Two torques were told. Which one holds?"), ("size", "Two sizes were told. Which one is it?"), ("place", "Told to belong to two systems; both count until one is chosen")] {
            @let told: Vec<_> = item.apart.iter().filter(|told| told.what == what).collect();
            @if !told.is_empty() {
                p class="wait gap" { (asked) }
                form { div class="presses" {
                    @for told in told {
                        (button(Look::Plain, &told.says, "", &[order_fact(&order.order, json!(told.settles))], None))
                    }
                } }
            }
        }
        @if !counts.is_empty() { p class="wait gap" { "Counted apart: " (counts.join(" and ")) ". All of them count until somebody counts again." } }
    }
}

/// A group that nobody planned has a size and a torque too: the maker's, never one made up.
fn size_and_torque(order: &OrderView, item: &ItemView, us: bool) -> Markup {
    let fact = |content: Value| order_fact(&order.order, content);
    let size = fact(
        json!({ "size-told": { "item": item.item, "size": field("size"), "after": item.told_by } }),
    );
    let passes: Vec<Value> = (1..=MOST_PASSES)
        .map(|nth| when(&format!("pass-{nth}"), field(&format!("pass-{nth}"))))
        .collect();
    let torque = fact(json!({ "torque-told": { "item": item.item,
        "pattern": { "passes": passes, "sequence": item.sequence, "source": text("source") },
        "after": item.told_by } }));
    let such_as = if us { "22 lb-ft" } else { "30 Nm" };
    html! {
        details id="torque" {
            summary class="row" {
                span class="what" {
                    span class="strong line" { "Size and torque" }
                    span class="soft line" {
                        @if item.passes.is_empty() { "no torque told" } @else { (item.passes.join(", then ")) }
                        @if let Some(from) = &item.torque_from { ", by " (from) }
                    }
                }
            }
            form {
                (required("size", "Size", "such as M8x30 8.8", item.size.as_deref().unwrap_or("")))
                div class="presses" { (button(Look::Plain, "It is that size", "", &[size], None)) }
            }
            form {
                (pass(1, "Torque", &format!("the maker's, such as {such_as}"), item))
                (pass(2, "Second pass", "if there is one, such as 90 deg", item))
                (pass(3, "Third pass", "", item))
                (input("source", "Who says so", "such as the workshop manual, and its date", item.torque_from.as_deref().unwrap_or("")))
                div class="presses" { (button(Look::Plain, "That is its torque", "", &[torque], None)) }
            }
        }
    }
}

const MOST_PASSES: usize = 3;

/// A pass with its unit: a bare 90 may be an angle.
fn pass(nth: usize, label: &str, hint: &str, item: &ItemView) -> Markup {
    let known = item.passes.get(nth - 1).map_or("", String::as_str);
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            input type="text" name=(format!("pass-{nth}")) value=(known) autocomplete="off" required[nth == 1]
                pattern=".*[0-9].*[A-Za-z°].*" title="A number with its unit, such as 30 Nm or 90 deg";
        }
    }
}

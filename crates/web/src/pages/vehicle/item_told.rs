//! What is told of an item after it was declared: what it belongs to, what it is called, how
//! many there are, its size and its torque. Who tells better names what they had seen.

use super::choices::{SYSTEMS, ZONES, spoken};
use crate::pages::Visit;
use crate::phrases::vehicle as say;
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
            summary class="row" { span class="strong" { (say::belongs_to_worked_on()) } }
            form {
                (chips("system", say::belongs_to(), &spoken(SYSTEMS), system))
                (chips("zone", say::worked_on(), &spoken(ZONES), zone))
                div class="presses" {
                    (button(Look::Plain, say::save(), "", &[when("system", fact(json!({ "located": { "item": item.item, "system": field("system"), "zone": field("zone"), "after": item.told_by } })))], None))
                }
            }
        }
        @if item.kind == KindForm::Fasteners { (size_and_torque(order, item, us)) }
        details id="name" {
            summary class="row" { span class="strong" { (say::called_counted()) } }
            form {
                (required("label", say::call_it(), "", &item.label))
                div class="presses" { (button(Look::Plain, say::call_it_that(), "", &[fact(json!({ "renamed": { "item": item.item, "label": text("label"), "after": item.told_by } }))], None)) }
            }
            form {
                (required("count", say::how_many_there_are(), "", &item.positions.len().to_string()))
                div class="presses" { (button(Look::Plain, say::counted_again(), "", &[fact(json!({ "count-corrected": { "item": item.item, "pieces": { "$pieces": "count" }, "after": item.told_by } }))], None)) }
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
        @for (what, asked) in [("torque", say::two_torques()), ("size", say::two_sizes()), ("place", say::two_systems())] {
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
        @if !counts.is_empty() { p class="wait gap" { (say::counted_apart(counts.join(say::and_between()))) } }
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
                    span class="strong line" { (say::size_and_torque()) }
                    span class="soft line" {
                        @if item.passes.is_empty() { (say::no_torque_told()) } @else { (item.passes.join(say::then_between())) }
                        @if let Some(from) = &item.torque_from { (say::by_source()) (from) }
                    }
                }
            }
            form {
                (required("size", say::size(), say::such_as_m8_88(), item.size.as_deref().unwrap_or("")))
                div class="presses" { (button(Look::Plain, say::it_is_that_size(), "", &[size], None)) }
            }
            form {
                (pass(1, say::torque(), &say::the_makers_such_as(such_as), item))
                (pass(2, say::second_pass(), say::if_there_is_one(), item))
                (pass(3, say::third_pass(), "", item))
                (input("source", say::who_says_so(), say::such_as_the_manual(), item.torque_from.as_deref().unwrap_or("")))
                div class="presses" { (button(Look::Plain, say::that_is_its_torque(), "", &[torque], None)) }
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
                pattern=".*[0-9].*[A-Za-z°].*" title=(say::number_with_its_unit());
        }
    }
}

//! What a fastener's size says beside its order, and what counts when ways to mend a thread
//! are ranked.

use crate::pages::Visit;
use crate::pages::bench::form::answered;
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, field, required};
use maud::{Markup, html};
use serde_json::json;
use shop::Trouble;
use shop::calculators::threads::facts as facts_of;
use shop::mending::{customary, planning};
use shop::record::v1::codes::KindForm;
use shop::view::ItemView;

/// Wrench, drills, strength of a group of fasteners. Its own torque stands first; where none
/// is known none is made up, and what its bolt could carry is marked as no specification.
pub fn facts(visit: &Visit<'_>, item: &ItemView) -> Result<Markup, Trouble> {
    let Some(size) = item
        .size
        .as_deref()
        .filter(|_| item.kind == KindForm::Fasteners)
    else {
        return Ok(html! {});
    };
    let units = customary(visit.snap.world());
    let Some(found) = facts_of(size, units) else {
        return Ok(html! {});
    };
    Ok(html! {
        details id="size" {
            summary class="row" {
                span class="what" {
                    span class="strong line" { (found.fact) ": " (found.said) }
                    @if item.passes.is_empty() { span class="soft line" { (say::no_torque_no_specification()) } }
                    @else { span class="soft line" { (say::torque_is()) (item.passes.join(say::then_between())) } }
                }
            }
            (answered(&found))
        }
    })
}

/// The weights as they stand, to be changed.
pub fn weights(visit: &Visit<'_>) -> Result<Markup, Trouble> {
    let world = visit.snap.world();
    let now = planning(world).weights;
    let told = world.shop.weights_told();
    let seen: Vec<&str> = told
        .into_iter()
        .map(shop::repair::CommandId::as_str)
        .collect();
    let percent = |share: f64| format!("{:.0}", 100.0 * share);
    let fact = json!({ "stream": "shop", "shop_fact": { "weighed": { "weights": {
        "margin": field("margin"), "time": field("time"), "cost": field("cost"),
        "reversibility": field("reversibility") }, "after": seen } } });
    Ok(html! {
        details id="weights" {
            summary class="row" { span class="strong" { (say::what_counts_for_ways()) } }
            p class="gap" { (say::how_ways_are_ranked()) }
            form class="narrow" {
                (required("margin", say::far_from_stripping(), "", &percent(now.margin)))
                (required("time", say::soon_done(), "", &percent(now.time)))
                (required("cost", say::cheap(), "", &percent(now.cost)))
                (required("reversibility", say::much_stays_as_it_was(), say::left_for_the_next_repair(), &percent(now.reversibility)))
                div class="presses" { (button(Look::Plain, say::count_them_so(), "", &[fact], None)) }
            }
        }
    })
}

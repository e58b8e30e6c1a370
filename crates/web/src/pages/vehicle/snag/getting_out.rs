//! A whole screw that is stuck or rounded: the ways to get it out, and what came of it. Its
//! thread is not up for repair until it snaps or takes the thread with it.

use super::put_right::put_right;
use super::{Sheet, about};
use crate::pages::vehicle::pieces::change;
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, chips, new, order_fact, words};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::calculators::choices;
use shop::calculators::threads::hole::METALS;
use shop::fastener::holds::Holds;
use shop::fastener::parent::Family;
use shop::fastener::seized::{Drive, Fails, LooseningWay, Seized, loosening};
use shop::mending::Fields;
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::SnagIsForm;

/// What is wrong with it, if it is whole.
pub(super) fn fails(sheet: &Sheet<'_>) -> Option<Fails> {
    let fails = match sheet.found.what {
        SnagIsForm::Stuck => Fails::Stuck,
        SnagIsForm::Rounded => Fails::Rounded,
        _ => return None,
    };
    sheet.is_of_fasteners().then_some(fails)
}

fn seized(sheet: &Sheet<'_>, fails: Fails, query: &Fields) -> Seized {
    let said = |name: &str| query.get(name).map(String::as_str);
    let joint = sheet.found.known.get("joint").map(String::as_str);
    Seized {
        fails,
        family: match said("in") {
            Some("aluminium" | "die-cast aluminium") => Some(Family::Aluminium),
            Some("magnesium") => Some(Family::Magnesium),
            Some("grey iron") => Some(Family::GreyIron),
            Some("ductile iron") => Some(Family::DuctileIron),
            Some("steel") => Some(Family::Steel),
            _ => None,
        },
        holds: Holds::ALL
            .into_iter()
            .find(|holds| Some(holds.code()) == joint),
        heat_is_safe: said("heat") == Some("safe"),
        drive: match said("drive") {
            Some("inside") => Drive::Inside,
            _ => Drive::Outside,
        },
    }
}

pub(super) fn getting_out(sheet: &Sheet<'_>, fails: Fails, query: &Fields) -> Markup {
    let found = loosening(&seized(sheet, fails, query));
    let (open, closed): (Vec<&LooseningWay>, Vec<&LooseningWay>) =
        found.ways.iter().partition(|way| way.closed.is_none());
    let said = |name: &str| query.get(name).map_or("", String::as_str);
    html! {
        h1 class="no" { (shop::say::capital(&sheet.found.text)) }
        (about(sheet))
        div class="caution" { @for caution in &found.cautions { p { (caution) } } }
        div class="columns" {
            div {
                h2 { (say::getting_it_out()) }
                ol {
                    @for (nth, way) in open.iter().enumerate() {
                        li class="rung" {
                            p { span class="strong" { (nth + 1) ". " (shop::say::capital(way.name)) } }
                            ul class="dashed" { @for how in &way.how { li { (how) } } }
                            p class="wait" { (say::stop_when()) (way.stop_when) }
                        }
                    }
                }
                @for way in &closed {
                    p class="gap" { span class="strong" { (say::not_here()) (way.name) } span class="soft line" { (way.closed.unwrap_or_default()) } }
                }
                details id="where" open[query.is_empty()] {
                    summary class="row" { span class="strong" { (say::where_it_sits()) } }
                    form method="get" action=(sheet.path()) class="narrow" {
                        (chips("heat", say::heat_and_sparks_here(), &[("safe", say::hurt_nothing_near()), ("", say::would_or_not_looked())], said("heat")))
                        @if fails == Fails::Rounded {
                            (chips("drive", say::the_wrench_goes(), &[("", say::over_the_head()), ("inside", say::into_it())], said("drive")))
                        }
                        (chips("in", say::it_is_screwed_into(), &choices(METALS), said("in")))
                        div class="presses" { button class="press" type="submit" { (say::show_what_fits()) } }
                    }
                }
            }
            div {
                h2 { (say::what_came_of_it()) }
                p class="soft gap" { (found.goes_back) }
                h3 { (say::it_is_out()) }
                (put_right(sheet.order, sheet.found))
                (worse(sheet))
            }
        }
    }
}

/// It snapped, or its thread came out: another snag begins, and this one is at its end.
fn worse(sheet: &Sheet<'_>) -> Markup {
    let snapped = became(
        sheet,
        "snapped",
        Some(StateForm::Stub { holds: false }),
        say::it_snapped_note(),
    );
    let stripped = became(
        sheet,
        "stripped",
        Some(StateForm::Out),
        say::thread_came_with_it(),
    );
    let next = format!("/o/{}/snag/{{snag}}", sheet.order.number);
    html! {
        h3 { (say::it_got_worse()) }
        form class="narrow" {
            (chips("sits", say::what_is_left_of_it(), &[("proud", say::sticks_out()), ("flush", say::flush()), ("below", say::below_the_face())], "flush"))
            div class="presses two" {
                (button(Look::Plain, say::it_snapped(), "", &snapped, Some(&next)))
                (button(Look::Plain, say::the_thread_came_out(), "", &stripped, Some(&next)))
            }
        }
    }
}

fn became(sheet: &Sheet<'_>, what: &str, left: Option<StateForm>, said: &str) -> Vec<Value> {
    let order = &sheet.order.order;
    let moves = match (sheet.item, left) {
        (Some(item), Some(left)) => json!([change(item, &sheet.found.at, left, "original")]),
        _ => json!([]),
    };
    let sits = if what == "snapped" {
        crate::tap::field("sits")
    } else {
        Value::Null
    };
    vec![
        order_fact(
            order,
            json!({ "snag-found": {
                "snag": new("snag"), "item": sheet.found.item, "at": sheet.found.at, "what": what,
                "sits": sits, "words": words(said), "photos": [], "moves": moves } }),
        ),
        order_fact(
            order,
            json!({ "snag-resolved": {
                "snag": sheet.found.snag, "how": "other", "words": words(said),
                "calculation": null, "moves": [] } }),
        ),
    ]
}

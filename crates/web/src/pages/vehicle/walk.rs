//! The walk-round: what was found before anybody touched anything, area by area.

use super::choices::{Choices, spoken};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::vehicle as say;
use crate::tap::{
    Look, button, chips, field, file, files, link, new, order_fact, photo_field, required, text,
    thumbnails, voice_field, words,
};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use phrases::{Language, speaking};
use serde_json::{Value, json};
use shop::record::form::Form;
use shop::record::v1::codes::{NotedForm, SystemForm, ZoneForm};
use shop::repair::{Noted, System, Zone};
use shop::view::{NoteView, OrderView};

/// What may be noted, as code and word.
const NOTED: &Choices = &[
    ("damage", say::scratch_dent),
    ("warning-lamp", say::lamp_lit),
    ("missing", say::missing),
    ("earlier-repair", say::repaired_before),
    ("locking-key", say::locking_nut_key),
    ("leak", say::leak_wet),
    ("other", say::other),
];

/// The areas in the sequence one walks them, with what is looked for there first.
const AREAS: [(Zone, &str); 6] = [
    (Zone::Outside, "damage"),
    (Zone::WheelWell, "locking-key"),
    (Zone::Rear, "damage"),
    (Zone::Cabin, "warning-lamp"),
    (Zone::Above, "leak"),
    (Zone::Below, "leak"),
];

pub async fn walk(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        Ok(Shown::of(
            &order,
            say::walk_round(),
            html! {
                h1 { (say::walk_round_it_first()) }
                p class="gap" { (say::not_ours_later()) }
                @for (zone, first) in AREAS { (area(&order, zone, first)) }
                (round(&order))
            },
        ))
    })
    .await
}

/// Items found missing or otherwise before anybody touched them.
fn found_here(order: &OrderView, zone: Zone) -> Vec<String> {
    order
        .items
        .iter()
        .filter(|item| item.zone == ZoneForm::of(&zone) && item.found)
        .map(|item| {
            let where_ = super::pieces::where_it_stands(item);
            format!("{}: {where_}", item.label)
        })
        .collect()
}

fn is_done(order: &OrderView, zone: Zone) -> bool {
    let form = ZoneForm::of(&zone);
    order.walked.contains(&form)
        || order.notes.iter().any(|note| note.zone == form)
        || !found_here(order, zone).is_empty()
}

/// One area: nothing found in one tap, or what was found.
fn area(order: &OrderView, zone: Zone, first: &str) -> Markup {
    let form = ZoneForm::of(&zone);
    let code = ZoneForm::word(zone);
    let notes: Vec<&NoteView> = order
        .notes
        .iter()
        .filter(|note| note.zone == form)
        .collect();
    let found = found_here(order, zone);
    let done = is_done(order, zone);
    let said = match (notes.len() + found.len(), done) {
        (0, true) => say::nothing_found_here().to_owned(),
        (0, false) => say::not_looked_at_yet().to_owned(),
        (noted, _) => say::noted_here(noted),
    };
    let name = shop::say::zone_name(zone);
    html! {
        div class="area" {
            details id=(format!("area-{code}")) {
                summary class="row" {
                    span class={ "mark " (if done { "home" } else { "" }) } {}
                    span class="what" { span class="beside line" { (shop::say::capital(name)) } span class="soft line" { (said) } }
                }
                (note_form(order, code, first, name))
                (missing_form(order, code))
            }
            @if !done {
                form { (button(Look::Plain, say::nothing_found(), name, &[walked(order, zone)], None)) }
            }
        }
        @for note in &notes { (noted(note)) }
        @for line in &found { div class="row" { span class="mark half" {} span class="what" { (line) } } }
    }
}

fn walked(order: &OrderView, zone: Zone) -> Value {
    order_fact(
        &order.order,
        json!({ "walked": { "zone": ZoneForm::of(&zone) } }),
    )
}

fn noted(note: &NoteView) -> Markup {
    let what = note
        .what
        .read()
        .map_or_else(|_| say::noted(), |what| shop::say::noted_name(what));
    html! {
        div class="row" {
            span class="mark half" {}
            span class="what" {
                span class="line" { (shop::say::capital(what)) @if !note.text.is_empty() { ": " (note.text) } }
                span class="soft line" { (note.by) ", " (note.at) }
            }
        }
        (thumbnails(&note.photos))
        (crate::tap::spoken(note.voice.as_ref()))
    }
}

fn note_form(order: &OrderView, code: &str, first: &str, name: &str) -> Markup {
    let note = order_fact(
        &order.order,
        json!({ "observed": {
        "id": new("note"), "zone": code, "what": field("what"),
        "words": text("words"), "photos": files("photos"), "voice": file("voice") } }),
    );
    html! {
        form class="narrow" {
            (chips("what", say::what(), &spoken(NOTED), first))
            (crate::tap::input("words", say::in_a_few_words(), "", ""))
            (photo_field("photos"))
            (voice_field("voice"))
            div class="presses" { (button(Look::Plain, say::note_it(), name, &[note], None)) }
        }
    }
}

/// What is missing, as kind and system.
const MISSING: &Choices = &[
    ("clips", say::clips),
    ("fasteners", say::screws_bolts),
    ("wheel", say::wheel_nuts_bolts),
];

/// A group of clips or screws of which some are missing: its home is then as found. A
/// missing wheel nut is not let pass for having been found so.
fn missing_form(order: &OrderView, code: &str) -> Markup {
    let declared = order_fact(
        &order.order,
        json!({ "declared": { "item": {
        "id": new("item"), "kind": { "$map": "kind", "to": { "clips": "clips" }, "else": "fasteners" },
        "system": { "$map": "kind", "to": { "wheel": "wheels" }, "else": "body" }, "zone": code,
        "label": text("label"), "size": null, "pieces": { "$pieces": "count" },
        "pattern": null, "spent": false, "may_miss": null, "put_in": null, "holds": null } } }),
    );
    let found = order_fact(
        &order.order,
        json!({ "found": { "moves": [{
        "item": new("item"), "at": { "$numbers": "at" }, "after": [],
        "left": { "state": "out", "piece": "original" }, "container": null }] } }),
    );
    html! {
        details id=(format!("missing-{code}")) {
            summary class="row" { span class="strong" { (say::clips_or_screws_missing()) } }
            form class="narrow" {
                (chips("kind", say::what(), &spoken(MISSING), if code == "wheel-well" { "wheel" } else { "clips" }))
                (required("label", say::called(), say::such_as_tray_clips(), ""))
                (required("count", say::how_many_should_be(), "", "8"))
                (required("at", say::which_are_missing(), say::their_numbers(), "1"))
                div class="presses" { (button(Look::Plain, say::note_as_found(), "", &[declared, found], None)) }
            }
        }
    }
}

/// The end of the walk: the areas nobody spoke of were looked at too, and had nothing.
fn round(order: &OrderView) -> Markup {
    let left: Vec<Zone> = AREAS
        .iter()
        .map(|(zone, _)| *zone)
        .filter(|zone| !is_done(order, *zone))
        .collect();
    let noted = order.notes.len() + order.items.iter().filter(|item| item.found).count();
    let things = say::things_noted(noted);
    let next = format!("/o/{}", order.number);
    let commands: Vec<Value> = left.iter().map(|zone| walked(order, *zone)).collect();
    html! {
        div class="presses low" {
            @if left.is_empty() { (link(Look::Confirm, say::finish_walk_round(), &things, &next)) }
            @else {
                @let rest = if left.len() == AREAS.len() { say::nothing_found_anywhere().to_owned() }
                    else { say::things_noted_rest(noted, left.len()) };
                form { (button(Look::Confirm, say::finish_walk_round(), &rest, &commands, Some(&next))) }
            }
        }
    }
}

/// Whether the key of the locking nuts is back, in whichever language that was noted.
fn is_back(key: &NoteView) -> bool {
    let mut said = Language::ALL.into_iter();
    said.any(|language| key.text == speaking(language, say::back_with_the_vehicle))
}

fn locking_key(order: &OrderView) -> Option<&NoteView> {
    order
        .notes
        .iter()
        .rev()
        .find(|note| note.what == NotedForm::of(&Noted::LockingKey))
}

/// Where the key of the locking nuts is, asked before a wheel comes off.
pub fn key_before_wheels(order: &OrderView) -> Markup {
    html! {
        @match locking_key(order) {
            Some(key) => p class="wait gap" { (say::locking_nut_key_is()) @if key.text.is_empty() { (say::noted_by(&key.by)) } @else { (key.text) } },
            None => a class="row" href=(format!("/o/{}/walk", order.number)) {
                span class="what" { (say::locking_nuts_question()) }
                span class="strong" { (say::note_it_now()) }
            },
        }
    }
}

/// Whether that key is back, asked when the vehicle leaves after its wheels were off.
pub fn key_at_the_end(order: &OrderView) -> Markup {
    let wheels_off = order
        .items
        .iter()
        .any(|item| item.system == SystemForm::of(&System::Wheels) && item.disturbed);
    let back = order_fact(
        &order.order,
        json!({ "observed": { "id": new("note"), "zone": "wheel-well", "what": "locking-key",
            "words": words(say::back_with_the_vehicle()), "photos": [] } }),
    );
    html! {
        @if let Some(key) = locking_key(order).filter(|key| wheels_off && !is_back(key)) {
            p class="wait gap" { (say::locking_nut_key_as_noted()) (key.text) }
            form { div class="presses" { (button(Look::Plain, say::the_key_is_back(), say::back_with_the_vehicle(), &[back], None)) } }
        }
    }
}

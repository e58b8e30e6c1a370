//! What is not known yet of a hole.

use super::super::asking::{asked_chips, asked_input, asked_tick};
use super::put_right::put_right;
use super::{Sheet, about};
use crate::tap::chips;
use maud::{Markup, html};
use shop::coolant::Asked;
use shop::measure::Customary;

/// Fields that say what the bolt is.
const BOLT: [&str; 4] = ["thread", "class", "bolt-length", "torque"];

/// Every field of a hole that a page shows.
pub const SHOWN: &[&str] = &[
    "thread",
    "joint",
    "class",
    "bolt-length",
    "torque",
    "by",
    "engaged",
    "depth",
    "boss",
    "in",
    "damage",
    "torn",
    "condition",
    "seat",
    "other",
    "other-hole",
    "tilt",
];

/// What a joint may hold, as chips: none is chosen beforehand.
pub const JOINTS: &[(&str, &str)] = &[
    ("other", "cover, housing, bracket"),
    ("brake", "brake"),
    ("steering", "steering"),
    ("suspension", "suspen\u{ad}sion"),
    ("wheel", "wheel, hub"),
    ("driveshaft", "drive shaft"),
    ("seat", "seat"),
    ("belt", "seat belt"),
    ("airbag", "airbag"),
    ("fuel", "fuel"),
    ("towing", "towing"),
    ("high-voltage", "high voltage"),
    ("spark-plug", "spark plug"),
    ("drain-plug", "drain plug"),
    ("banjo", "banjo"),
    ("sensor", "sensor"),
    ("exhaust", "exhaust"),
    ("pipe", "pipe thread"),
];

/// What the joint holds, asked before any way is ranked.
pub fn joint(asked: &Asked) -> Markup {
    html! {
        @if let Some(trouble) = asked.troubles.get("joint") { p class="no" role="alert" { (shop::say::capital(trouble)) } }
        (chips("joint", "What does the joint hold?", JOINTS, asked.text("joint")))
    }
}

/// Metals as chips.
pub const METALS: &[(&str, &str)] = &[
    ("aluminium", "alumin\u{ad}ium, cast"),
    ("die-cast aluminium", "alumin\u{ad}ium, die-cast"),
    ("grey iron", "grey iron"),
    ("ductile iron", "ductile iron"),
    ("steel", "steel"),
    ("magnesium", "magne\u{ad}sium"),
];

pub(super) fn questions(sheet: &Sheet<'_>, asked: &Asked) -> Markup {
    let said: Vec<&str> = BOLT
        .iter()
        .map(|name| asked.text(name))
        .filter(|text| !text.is_empty())
        .collect();
    let troubled = BOLT.iter().any(|name| asked.troubles.contains_key(*name));
    let unknown = asked.text("thread").is_empty();
    html! {
        h1 class="no" { (shop::say::capital(&sheet.found.text)) }
        @if let Some(words) = &sheet.found.words { p class="gap" { "“" (words) "”" } }
        @if !asked.troubles.is_empty() { p class="alarm" { "Not worked out yet: see below what is wrong." } }
        form method="get" action=(sheet.path()) class="narrow" {
            input type="hidden" name="asked" value="1";
            @if sheet.found.known.contains_key("joint") { input type="hidden" name="joint" value=(asked.text("joint")); }
            @else { (joint(asked)) }
            details id="known" open[unknown || troubled] {
                summary class="row" {
                    span class="what" {
                        span class="strong line" { @if unknown { "The bolt: say what it is" } @else { (said.join(" · ")) } }
                        @if asked.text("torque").is_empty() { span class="soft line" { "no torque is known: none is made up" } }
                        @else { span class="soft line" { "torque from " (sheet.found.torque_from.as_deref().unwrap_or("this order")) } }
                    }
                }
                (bolt(asked))
            }
            (hole(asked, sheet.stub()))
            div class="presses low" { button class="press confirm" type="submit" { "Show the ways back" } }
        }
        details id="otherwise" {
            summary class="row" { span class="strong" { "It came out, or it was put right another way" } }
            (about(sheet))
            (put_right(sheet.order, sheet.found))
        }
    }
}

/// What the bolt is.
pub fn bolt(asked: &Asked) -> Markup {
    let (length, torque) = units(asked);
    html! {
        (asked_input(asked, "thread", "Thread", "such as M8x1.25 or 5/16-18"))
        (asked_input(asked, "class", "Class on the head", "such as 8.8; leave it empty if it is not known"))
        (asked_input(asked, "bolt-length", &format!("Length of the bolt, {length}"), ""))
        (asked_input(asked, "torque", &format!("The maker's torque, {torque}"), "empty if it is not known"))
    }
}

fn units(asked: &Asked) -> (&'static str, &'static str) {
    use shop::threads::{Holds, unit_of};
    let us = asked.customary() == Customary::Us;
    (unit_of(Holds::Length, us), unit_of(Holds::Torque, us))
}

/// What the hole is, and the stub in it.
pub fn hole(asked: &Asked, stub: Option<&str>) -> Markup {
    let (length, _) = units(asked);
    let place = match stub {
        Some("below") => Some("below the face"),
        Some("proud") => Some("proud of the face"),
        _ => None,
    };
    html! {
        @if let Some(place) = place { (asked_input(asked, "by", &format!("How far it sits {place}, {length}"), "")) }
        (asked_input(asked, "engaged", &format!("Thread that was engaged, {length}"), "how far the bolt went in"))
        (asked_chips(asked, "hole", "The hole is", &[("blind", "blind"), ("through", "through")]))
        (asked_input(asked, "depth", &format!("How deep it is, {length}"), "a blind hole to its bottom, a through one to the other side"))
        (asked_input(asked, "boss", &format!("Metal around it, across, {length}"), "twice the least way from its middle to an edge; empty if it was not measured"))
        @if let Some(trouble) = asked.troubles.get("in") { p class="no" role="alert" { (trouble) } }
        // None is chosen beforehand: the metal decides what holds.
        (chips("in", "The metal", METALS, asked.text("in")))
        @if stub.is_some() { (asked_tick(asked, "room-to-weld", "Room to weld on it", "and nothing near that heat hurts")) }
        (asked_tick(asked, "no-drill-room", "No room to drill", "a drill cannot be held in line with it"))
        details id="more" {
            summary class="row" { span class="strong" { "More, if it is known" } }
            (asked_chips(asked, "damage", "Its thread is", &[("stripped", "lost or torn"), ("scarred", "bruised, all there")]))
            (asked_input(asked, "torn", &format!("Torn how deep from the face, {length}"), "all that was engaged, if nobody looked"))
            (asked_chips(asked, "other", "The part it holds is", &[("metal", "metal"), ("plastic", "plastic"), ("limiter", "plastic, metal sleeve")]))
            (asked_input(asked, "other-hole", &format!("Hole in that part, {length}"), ""))
            (asked_input(asked, "seat", &format!("Flat under the head, across, {length}"), ""))
            (asked_input(asked, "condition", "State of the threads", "oiled, dry, zinc dry …; oiled is assumed and said"))
            (asked_input(asked, "tilt", "How far out of square the drill is held, degrees", "0.5, what a guide bush allows, is assumed"))
        }
    }
}

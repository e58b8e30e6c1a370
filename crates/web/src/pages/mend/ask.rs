//! What is not known yet of a hole.

use super::super::asked::{Asked, units};
use super::super::item::put_right;
use super::{Sheet, about};
use maud::{Markup, html};
use shop::measure::Customary;

/// Metals as chips; others can be written by name on the page for threads alone.
pub const METALS: &[(&str, &str)] = &[
    ("aluminium", "aluminium, cast"),
    ("die-cast aluminium", "aluminium, die-cast"),
    ("grey iron", "grey iron"),
    ("steel", "steel"),
    ("magnesium", "magne\u{ad}sium"),
];

pub const HOLES: &[(&str, &str)] = &[("blind", "blind"), ("through", "through")];

pub const OTHERS: &[(&str, &str)] = &[
    ("metal", "metal"),
    ("plastic", "plastic"),
    ("limiter", "plastic, metal sleeve"),
];

/// Fields that stand on the page, so that what is wrong with them is told beside them.
const SHOWN: &[&str] = &[
    "thread",
    "class",
    "bolt-length",
    "torque",
    "by",
    "engaged",
    "blind",
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

pub(super) fn questions(sheet: &Sheet<'_>, asked: &Asked, customary: Customary) -> Markup {
    let (length, torque) = units(customary);
    let known = ["thread", "class", "bolt-length", "torque"];
    let said: Vec<&str> = known.iter().filter_map(|name| asked.some(name)).collect();
    let troubled = asked
        .trouble
        .as_ref()
        .is_some_and(|trouble| known.contains(&trouble.field));
    let stub = sheet.stub();
    let below = stub.filter(|stub| *stub != "flush");
    html! {
        h1 class="no" { (shop::say::capital(&sheet.found.text)) }
        @if let Some(words) = &sheet.found.words { p class="gap" { "“" (words) "”" } }
        (asked.trouble(SHOWN))
        form method="get" action=(sheet.path()) class="narrow" {
            input type="hidden" name="asked" value="1";
            details id="known" open[said.is_empty() || asked.text("thread").is_empty() || troubled] {
                summary class="row" {
                    span class="what" {
                        span class="strong line" { @if said.is_empty() { "The bolt: say what it is" } @else { (said.join(" · ")) } }
                        @if asked.has("torque") { span class="soft line" { "torque from " (sheet.found.torque_from.as_deref().unwrap_or("this order")) } }
                        @else { span class="soft line" { "no torque is known: none is made up" } }
                    }
                }
                (asked.input("thread", "Thread", "such as M8x1.25 or 5/16-18"))
                (asked.input("class", "Class on the head", "such as 8.8; leave it empty if it is not known"))
                (asked.input("bolt-length", &format!("Length of the bolt, {length}"), ""))
                (asked.input("torque", &format!("The maker's torque, {torque}"), "empty if it is not known"))
            }
            @if let Some(stub) = below {
                (asked.input("by", &format!("How far it sits {stub} the face, {length}").replace("proud the", "proud of the"), ""))
            }
            (asked.input("engaged", &format!("Thread that was engaged, {length}"), "how far the bolt went in"))
            (asked.chips("hole", "The hole is", HOLES, "blind"))
            (asked.input("depth", &format!("How deep it is, {length}"), "a blind hole to its bottom, a through one to the other side"))
            @if let Some(trouble) = asked.trouble.as_ref().filter(|trouble| trouble.field == "blind" || trouble.field == "through") {
                p class="no" role="alert" { (shop::say::capital(&trouble.what)) ". " (shop::say::capital(&trouble.mend)) "." }
            }
            (asked.input("boss", &format!("Metal around it, across, {length}"), "twice the least way from its middle to an edge; empty if it was not measured"))
            (asked.chips("in", "The metal", METALS, ""))
            @if stub.is_some() { (asked.tick("room-to-weld", "There is room to weld, and nothing near that heat hurts")) }
            (asked.tick("no-drill-room", "A drill cannot be held in line with it"))
            details id="more" {
                summary class="row" { span class="strong" { "More, if it is known" } }
                (asked.chips("damage", "Its thread is", &[("stripped", "lost or torn"), ("scarred", "bruised, all there")], "stripped"))
                (asked.input("torn", &format!("Torn how deep from the face, {length}"), "all that was engaged, if nobody looked"))
                (asked.chips("other", "The part it holds is", OTHERS, "metal"))
                (asked.input("other-hole", &format!("Hole in that part, {length}"), ""))
                (asked.input("seat", &format!("Flat under the head, across, {length}"), ""))
                (asked.input("condition", "State of the threads", "oiled, dry, zinc dry …; oiled is assumed and said"))
                (asked.input("tilt", "How far out of square the drill is held", "such as 0.5 deg, what a guide bush allows"))
            }
            div class="presses low" { button class="press confirm" type="submit" { "Show the ways back" } }
        }
        details id="otherwise" {
            summary class="row" { span class="strong" { "It came out, or it was put right another way" } }
            (about(sheet))
            (put_right(sheet.order, sheet.found))
        }
    }
}

//! Threads with no order: what one is and bears, torque and clamp, wrenches, a pulley held by
//! its belt, tightening sequences, thread repair, stubs. Asked by address, so that an answer
//! can be kept as a link.

use super::asking::{answered, asked_chips, asked_input, cautions};
use super::mend::{ask, ways as ways_of};
use super::{Ask, Shown, show_anybody, told};
use crate::State;
use crate::tap::chips;
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use shop::coolant::{Answer, Asked};
use shop::measure::Customary;
use shop::mending::{Fields, Told, customary, planning, stub, ways};
use shop::threads::{Holds, filled, pattern, pulley, thread, torque, unit_of, wrench};
use shop::{Trouble, threads};

/// What can be asked: its address, its name, what it is for.
const ASKED: &[(&str, &str, &str)] = &[
    (
        "thread",
        "A thread",
        "drill, wrench, holes, strength, near misses",
    ),
    (
        "torque",
        "Torque and clamp",
        "one from the other, low to high",
    ),
    (
        "wrench",
        "Torque wrench and lever",
        "adapter, hand force, two wrenches",
    ),
    (
        "pulley",
        "Pulley bolts",
        "whether the belt holds while they are cracked",
    ),
    (
        "pattern",
        "Tightening sequence",
        "circle, two rows, rectangle, drawn",
    ),
    ("repair", "Thread repair", "the ways back, ranked"),
    ("stub", "A stub", "the ways to get it out, least risk first"),
];

/// Before any bolt is turned.
const CAUTION: &str = "The vehicle maker's torque, sequence and instructions come before anything \
     that is worked out here; what a joint could carry is not a specification.";

pub async fn threads_page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
) -> Response {
    show_anybody(state, headers, |_| {
        Ok(Shown::new(
            "Threads",
            html! {
                h1 { "Threads" }
                (cautions(&[CAUTION]))
                div class="narrow" {
                    @for (code, name, what) in ASKED {
                        a class="row" href=(format!("/threads/{code}")) {
                            span class="what" { span class="beside line" { (name) } span class="soft line" { (what) } }
                        }
                    }
                }
            },
        ))
    })
    .await
}

pub async fn calculator(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(code): Path<String>,
    Query(query): Query<Fields>,
) -> Response {
    show_anybody(state, headers, move |ask| {
        let (_, name, _) = ASKED
            .iter()
            .find(|(known, ..)| *known == code)
            .ok_or_else(|| Trouble::not_found("threads cannot be asked that"))?;
        let units = {
            let world = ask.snap.world();
            customary(world)
        };
        let us = units == Customary::Us;
        let sent = !query.is_empty();
        let fields = filled(query, us);
        let mut asked = Asked::new(fields.clone(), us);
        let found = if sent {
            found(ask, &code, &fields, &mut asked)?
        } else {
            None
        };
        let mut shown = Shown::new(
            *name,
            html! {
                h1 { (name) }
                (before(&code, found.is_some()))
                div class="columns" {
                    div {
                        @match &found {
                            Some(found) => { (answer(&code, &fields, found)) },
                            None if !asked.troubles.is_empty() => { p class="alarm" { "Not worked out yet: see below what is wrong." } },
                            None => {},
                        }
                    }
                    form method="get" action=(format!("/threads/{code}")) {
                        (fields_of(&code, &asked))
                        @if found.is_some() { div class="presses" { button class="press" type="submit" { "Work it out" } } }
                        @else { div class="presses low" { button class="press confirm" type="submit" { "Work it out" } } }
                    }
                }
            },
        );
        shown.leads_to("Threads", "/threads");
        Ok(shown)
    })
    .await
}

/// What was found.
enum Found {
    Answer(Answer),
    Ways(Vec<Told>),
    Stub(shop::mending::StubTold),
}

fn found(
    ask: &Ask<'_>,
    code: &str,
    fields: &Fields,
    asked: &mut Asked,
) -> Result<Option<Found>, Trouble> {
    let customary = asked.customary();
    let stands = Some(asked.text("stands").to_owned()).filter(|stands| !stands.is_empty());
    let found = match code {
        "repair" => {
            let planning = planning(ask.snap.world());
            ways(fields, stands.as_deref(), &planning, customary).map(Found::Ways)
        }
        "stub" => stub(fields, stands.as_deref().unwrap_or("flush"), customary).map(Found::Stub),
        other => return Ok(simple(other, asked).map(Found::Answer)),
    };
    Ok(found
        .map_err(|trouble| threads::told(asked, &trouble, ask::SHOWN))
        .ok())
}

fn simple(code: &str, asked: &mut Asked) -> Option<Answer> {
    match code {
        "thread" => thread(asked),
        "torque" => torque(asked),
        "wrench" => wrench(asked),
        "pulley" => pulley(asked),
        _ => pattern(asked),
    }
}

/// What hurts, before the form.
fn before(code: &str, answered: bool) -> Markup {
    match code {
        "pulley" => cautions(&[
            "Battery off, key out: nothing may turn the engine while a hand is at its pulleys.",
        ]),
        "torque" => cautions(&[CAUTION]),
        "repair" | "stub" if !answered => cautions(&[
            "Eye protection; know what lies behind the hole; no open fuel or battery gas near a drill or flame. The vehicle maker's instructions, local rules and licensed practice come first.",
        ]),
        _ => html! {},
    }
}

fn answer(code: &str, fields: &Fields, found: &Found) -> Markup {
    match found {
        Found::Answer(answer) => answered(answer),
        Found::Stub(ladder) => told::ladder_open(ladder),
        Found::Ways(all) => {
            let wanted = fields.get("way");
            let chosen = all.iter().find(|told| Some(&told.way.code) == wanted);
            html! {
                @if let Some(told) = chosen.or(all.first()) {
                    (told::cautions(&told.cautions))
                    (told::way(&told.way))
                    (told::joints(&told.found, &told.way.joint, told.way.holds))
                    @if let Some(minutes) = &told.way.minutes { p class="gap" { (told::minutes(minutes)) } }
                    (ways_of::steps(told))
                    (told::others(&told.others, |other| ways_of::address(&format!("/threads/{code}"), fields, &other.code)))
                    (told::behind(told))
                }
            }
        }
    }
}

const STANDS: &[(&str, &str)] = &[
    ("", "no stub in it"),
    ("proud", "stands proud"),
    ("flush", "is flush"),
    ("below", "sits below"),
];

const METALS: &[(&str, &str)] = &[
    ("", "not asked"),
    ("aluminium", "alumin\u{ad}ium, cast"),
    ("die-cast aluminium", "alumin\u{ad}ium, die-cast"),
    ("grey iron", "grey iron"),
    ("steel", "steel"),
];

fn fields_of(code: &str, asked: &Asked) -> Markup {
    let us = asked.customary() == Customary::Us;
    let length = unit_of(Holds::Length, us);
    let torque = unit_of(Holds::Torque, us);
    let force = unit_of(Holds::Force, us);
    let input = |name: &str, label: &str, hint: &str| asked_input(asked, name, label, hint);
    let sized = |name: &str, label: &str, unit: &str, hint: &str| {
        asked_input(asked, name, &format!("{label}, {unit}"), hint)
    };
    match code {
        "thread" => html! {
            (input("thread", "Thread", "M8, M8x1.25, 5/16-18, #10-24, 1/8 NPT, spark plug M14x1.25"))
            (input("class", "Class", "8.8, grade 5, A2-70; empty if it is not known"))
            (chips("in", "Tapped in", METALS, asked.text("in")))
            (sized("depth", "Engaged length", length, "with the metal and the class: what fails first"))
            (input("percent", "Wanted depth of thread, per cent, US count", "75 is assumed"))
        },
        "torque" => html! {
            (input("thread", "Thread", "such as M10x1.5"))
            (sized("torque", "Torque", torque, "to know the clamp"))
            (sized("clamp", "Or clamp", force, "to know the torque"))
            (input("condition", "State of the threads", "oiled, dry, zinc dry, stainless with paste …"))
            (input("friction", "Or friction", "such as 0.15; none is assumed"))
            (input("class", "Class", "such as 8.8"))
            details id="more" {
                summary class="row" { span class="strong" { "Head, hole, form" } }
                (input("head", "Head", "hex is assumed; flange, socket …"))
                (sized("face", "Face under the head, across", length, "where no listed head is meant"))
                (input("hole", "Hole", "close, medium, loose, or its diameter"))
                (asked_chips(asked, "form", "Form", &[("", "Motosh"), ("iso16047", "ISO 16047"), ("short", "short, with K")]))
                (input("nut-factor", "K of the short form", "none is assumed"))
            }
        },
        "wrench" => html! {
            (sized("want", "Torque wanted", torque, ""))
            (sized("wrench", "Length of the wrench, drive to grip", length, ""))
            (sized("adapter", "Adapter, drive to bolt", length, "empty for the force of a hand"))
            (input("angle", "Angle of the adapter to the wrench, degrees", "0 points away, 90 needs no correction"))
            (sized("range", "Greatest torque of the wrench", torque, "whether it can be believed"))
            (sized("second", "A second wrench hooked in, its length", length, ""))
            (sized("overlap", "The two overlap by", length, ""))
        },
        "pulley" => html! {
            (sized("bolt-torque", "Torque of the bolt", torque, "to crack it may take more"))
            (sized("bolt-circle", "Circle of the bolts, across", length, ""))
            (sized("wrench", "Length of the wrench", length, ""))
            (sized("pulley", "Pulley, across", length, ""))
            (sized("tension", "Tension of the belt at rest, each run", force, "a spring tensioner's own, in the way it gives"))
            (input("wrap", "Wrap on the pulley, degrees", "how far the belt goes round it"))
            (asked_chips(asked, "side", "The belt runs on it with its", &[("ribs", "ribs"), ("back", "flat back")]))
        },
        "pattern" => html! {
            (asked_chips(asked, "layout", "They stand", &[("circle", "in a circle"), ("rows", "in two rows"), ("rectangle", "round a rectangle")]))
            (input("bolts", "How many bolts", "for a circle or two rows"))
            (input("columns", "Along the rectangle", "bolts along its longer side"))
            (input("rows", "Across it", "bolts along its shorter side"))
        },
        "repair" => html! {
            (ask::joint(asked))
            (chips("stands", "In the hole", STANDS, asked.text("stands")))
            (ask::bolt(asked))
            (ask::hole(asked, stub_of(asked)))
        },
        _ => html! {
            (ask::joint(asked))
            (chips("stands", "The stub", &STANDS[1..], or(asked.text("stands"), "flush")))
            (ask::bolt(asked))
            (ask::hole(asked, Some(or(asked.text("stands"), "below"))))
        },
    }
}

/// How far a stub sits is asked before anybody has said how it sits.
fn stub_of(asked: &Asked) -> Option<&str> {
    Some(or(asked.text("stands"), "below"))
}

fn or<'a>(text: &'a str, otherwise: &'a str) -> &'a str {
    if text.is_empty() { otherwise } else { text }
}

//! Coolant with no order: how far it protects, what is in, what to pour, what is missing,
//! and whether it is tight. Asked by address, so that an answer can be kept as a link.

use super::asking::{answered, asked_chips, asked_input, asked_lines, asked_tick, cautions};
use super::{Ask, Shown, show_anybody};
use crate::State;
use crate::tap::{Look, button, field, required};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::json;
use shop::Trouble;
use shop::coolant::{Answer, Asked, Caution};
use std::collections::BTreeMap;

/// What can be asked: its address, its name, what it is for.
const ASKED: &[(&str, &str, &str)] = &[
    (
        "protection",
        "How far it protects",
        "freezing, boiling under the cap at your altitude",
    ),
    (
        "strength",
        "What is in",
        "by refractometer, hydrometer or strip",
    ),
    ("mix", "What to pour", "concentrate, premix, water, rounds"),
    (
        "balance",
        "What is missing",
        "litres out and in, air trapped",
    ),
    (
        "leak",
        "Leak test",
        "pressure against time, cooling taken out",
    ),
];

const GLYCOLS: &[(&str, &str)] = &[
    ("ethylene", "ethylene glycol"),
    ("propylene", "propylene glycol"),
];

const COUNTED: &[(&str, &str)] = &[
    ("concentrate", "anti\u{ad}freeze from the bottle"),
    ("glycol", "pure glycol, by volume"),
    ("mass", "pure glycol, by mass"),
];

pub async fn coolant(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show_anybody(state, headers, |ask| {
        let altitude = altitude(ask)?;
        Ok(Shown::new("Coolant", html! {
            h1 { "Coolant" }
            (cautions(&[Caution::MakersSpecification.text(), Caution::Poisonous.text()]))
            div class="columns gap" {
                div {
                    @for (code, name, what) in ASKED {
                        a class="row" href=(format!("/coolant/{code}")) {
                            span class="what" { span class="beside line" { (name) } span class="soft line" { (what) } }
                        }
                    }
                }
                div {
                    h2 { "50 % is not 50 %" }
                    p class="gap" { "A bottle of antifreeze is about 95 % glycol. Half bottle, half water is 47 % glycol by volume and 50 % by mass. Say which one you mean; every answer shows all three." }
                    h2 { "Height of the shop" }
                    p class="gap" { @match &altitude {
                        Some((told, _)) => { "The shop stands at " span class="strong" { (told) } ". Coolant boils lower the higher you are." },
                        None => { "Not told yet. Coolant boils lower the higher you are." },
                    } }
                    @if !ask.who.is_empty() { form class="narrow" {
                        (required("altitude", "Height above the sea", "with its unit, such as 650 m or 2100 ft", ""))
                        div class="presses" {
                            (button(Look::Plain, "Keep the height", "", &[json!({ "stream": "shop", "shop_fact": { "altitude-told": {
                                "altitude": field("altitude"), "after": altitude.map(|(_, by)| by).unwrap_or_default() } } })], None))
                        }
                    } }
                }
            }
        }))
    })
    .await
}

/// The shop's height as told, and the commands that told it.
pub(super) fn altitude(ask: &Ask<'_>) -> Result<Option<(String, Vec<String>)>, Trouble> {
    let world = ask.snap.world();
    Ok(world.shop.altitude().map(|(told, by)| {
        let by = by.iter().map(|command| command.as_str().to_owned());
        (told.as_str().to_owned(), by.collect())
    }))
}

/// A form's fields, read in the shop's units.
pub(super) fn asked_of(ask: &Ask<'_>, fields: BTreeMap<String, String>) -> Result<Asked, Trouble> {
    let world = ask.snap.world();
    let settings = world.shop.settings();
    let us = settings.is_some_and(|settings| settings.units == shop::repair::Units::Us);
    Ok(Asked::new(fields, us))
}

pub async fn calculator(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(code): Path<String>,
    Query(fields): Query<BTreeMap<String, String>>,
) -> Response {
    show_anybody(state, headers, move |ask| {
        let (_, name, _) = ASKED
            .iter()
            .find(|(known, ..)| *known == code)
            .ok_or_else(|| Trouble::not_found("coolant cannot be asked that"))?;
        let sent = !fields.is_empty();
        let mut asked = asked_of(ask, fields)?;
        if let Some((height, _)) = altitude(ask)? {
            asked.or_else("altitude", &height);
        }
        let answer = if sent {
            answer(&code, &mut asked)
        } else {
            asked.or_else("has-water", "yes");
            asked.or_else("has-concentrate", "yes");
            None
        };
        let mut shown = Shown::new(*name, html! {
            h1 { (name) }
            (before(&code))
            div class="columns" {
                div {
                    @if let Some(answer) = &answer { (answered(answer)) }
                    @else if sent && !asked.troubles.is_empty() { p class="alarm" { "Not worked out yet: see below what is wrong." } }
                }
                form method="get" action=(format!("/coolant/{code}")) {
                    (fields_of(&code, &asked))
                    div class="presses low" { button class="press confirm" type="submit" { "Work it out" } }
                }
            }
        });
        shown.leads_to("Coolant", "/coolant");
        Ok(shown)
    })
    .await
}

fn answer(code: &str, asked: &mut Asked) -> Option<Answer> {
    match code {
        "protection" => shop::coolant::protection(asked),
        "strength" => shop::coolant::measured(asked),
        "mix" => shop::coolant::mix(asked),
        "balance" => shop::coolant::balance(asked),
        _ => shop::coolant::leak(asked),
    }
}

/// What hurts comes before what is asked.
fn before(code: &str) -> Markup {
    let list: &[Caution] = match code {
        "leak" => &[Caution::Hot, Caution::MakersSpecification],
        "mix" | "balance" => &[
            Caution::MakersSpecification,
            Caution::Poisonous,
            Caution::Disposal,
        ],
        _ => &[Caution::Hot, Caution::Poisonous],
    };
    let texts: Vec<&str> = list.iter().map(|caution| caution.text()).collect();
    html! {
        (cautions(&texts))
        @if code == "leak" {
            details id="steps" {
                summary class="row" { span class="strong" { "How to test" } }
                ol { @for step in shop::coolant::LEAK_TEST_STEPS { li class="row" { (step) } } }
            }
        }
    }
}

fn fields_of(code: &str, asked: &Asked) -> Markup {
    match code {
        "protection" => html! {
            (asked_input(asked, "strength", "Strength", "such as 50 %"))
            (asked_chips(asked, "of", "That is", COUNTED))
            (kind(asked))
            (asked_input(asked, "cap", "Cap", "stamped on it, such as 1.1 bar or 16 psi"))
            (asked_input(asked, "altitude", "Height above the sea", "such as 650 m or 2100 ft"))
            (asked_input(asked, "hottest", "Hottest reading", "such as 108 °C or 226 °F; may stay empty"))
            (more(asked))
        },
        "strength" => html! {
            (asked_chips(asked, "instrument", "Read with", &[("refractometer", "refracto\u{ad}meter"), ("hydrometer", "hydro\u{ad}meter"), ("strip", "test strip")]))
            (asked_input(asked, "reading", "It shows", "refractometer −36 °C or −33 °F, hydrometer 1.070, strip 50 %"))
            (asked_input(asked, "sample", "Sample's temperature", "for a hydrometer; cold shop if empty"))
            (kind(asked))
            (asked_input(asked, "cap", "Cap", "for the boiling point; may stay empty"))
            (asked_input(asked, "altitude", "Height above the sea", "such as 650 m or 2100 ft"))
            (more(asked))
        },
        "mix" => html! {
            (asked_input(asked, "capacity", "The system holds", "such as 9.2 L or 10 qt"))
            (asked_input(asked, "left", "Still in after draining", "a cock gives half to two thirds"))
            (asked_input(asked, "now", "Strength now", "0 % for water"))
            (asked_input(asked, "want", "Strength wanted", "such as 50 %"))
            (asked_chips(asked, "of", "Both are", COUNTED))
            (kind(asked))
            h2 { "On the shelf" }
            @if let Some(trouble) = asked.troubles.get("shelf") { p class="no" { (trouble) } }
            (asked_tick(asked, "has-concentrate", "Concentrate", ""))
            (asked_tick(asked, "has-premix", "Premix", "its strength below"))
            (asked_tick(asked, "has-water", "Distilled water", ""))
            (asked_input(asked, "premix", "Strength of the premix", "50 % if empty"))
            (asked_input(asked, "bottle-size", "A bottle holds", "may stay empty"))
            h2 { "Specification" }
            (asked_input(asked, "maker", "The vehicle maker asks for", "as printed; colour tells nothing"))
            (asked_input(asked, "inside", "What is in meets", "as printed, or empty"))
            (asked_input(asked, "label", "The bottle meets", "as printed, or empty"))
            (bottle(asked))
        },
        "balance" => html! {
            (asked_input(asked, "drained", "Caught", "each pan, such as 4 L, 1.5 L"))
            (asked_input(asked, "drained-at", "It was at", "such as 40 °C; a cold shop if empty"))
            (asked_input(asked, "lost", "Spilled, or gone with parts", "a guess, may stay empty"))
            (asked_input(asked, "low", "Low when it came", "may stay empty"))
            (asked_input(asked, "poured", "Poured in", "each jug, such as 3 L, 2 L"))
            (asked_input(asked, "poured-at", "It was at", "a cold shop if empty"))
            (asked_input(asked, "capacity", "The system holds", "by the manual, may stay empty"))
            (asked_input(asked, "left", "Still in after draining", "may stay empty"))
            (asked_input(asked, "below", "Level cold stands below its mark by", "in litres, may stay empty"))
            (asked_input(asked, "hot", "Hottest it gets", "90 °C if empty"))
            (asked_input(asked, "bottle-area", "The bottle's area at the marks", "length times width, such as 150 cm²"))
            (asked_input(asked, "strength", "Strength", "50 % if empty"))
            (asked_chips(asked, "of", "That is", COUNTED))
            (kind(asked))
        },
        _ => html! {
            (asked_lines(asked, "readings", "Readings", "minutes, pressure, temperature: one reading a line, or a pasted table"))
            (asked_chips(asked, "unit", "Pressure is in", &[("bar", "bar, °C"), ("psi", "psi, °F"), ("kPa", "kPa, °C")]))
            (asked_tick(asked, "cold", "The engine is as cold as the shop", "tick it where nobody read the temperature and it stood for hours"))
            (asked_input(asked, "limit", "May lose", "such as 0.05 bar, or 20 mL"))
            (asked_input(asked, "limit-time", "In", "such as 15 min"))
            (asked_input(asked, "cap", "Cap", "stamped on it; never test above it"))
            (asked_input(asked, "headspace", "Air above the coolant", "tester and hose too, such as 1 L; may stay empty"))
            (asked_input(asked, "capacity", "Coolant in the system", "may stay empty"))
            (asked_input(asked, "altitude", "Height above the sea", "such as 650 m or 2100 ft"))
            (asked_lines(asked, "blank", "Tester closed on itself", "readings the same way, may stay empty"))
        },
    }
}

fn kind(asked: &Asked) -> Markup {
    asked_chips(asked, "glycol", "The label says", GLYCOLS)
}

fn bottle(asked: &Asked) -> Markup {
    asked_input(
        asked,
        "bottle",
        "Glycol in the concentrate",
        "by mass; 95 % if empty",
    )
}

/// What the label or the maker states, where it differs from what is usual.
fn more(asked: &Asked) -> Markup {
    let told = ["table", "least", "most", "bottle"];
    let open = told.iter().any(|name| !asked.text(name).is_empty());
    html! {
        details id="label" open[open] {
            summary class="row" { span class="strong" { "By the label or the maker" } }
            (asked_lines(asked, "table", "Points of the label", "concentrate and freezing point: 40 % −24 °C, 50 % −37 °C. They win over what is computed."))
            (asked_input(asked, "least", "Least concentrate allowed", "40 % if empty"))
            (asked_input(asked, "most", "Most concentrate allowed", "60 % if empty"))
            (bottle(asked))
        }
    }
}

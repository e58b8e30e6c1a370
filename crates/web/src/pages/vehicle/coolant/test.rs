//! The leak test at the vehicle: one tap a reading, under a running clock.

use super::steps::{amount, number};
use super::{Step, proved};
use crate::pages::bench::form::{answered, asked_input, cautions};
use crate::tap::{Look, button, chips, new, when};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::calculators::Answer;
use shop::coolant::{Caution, LEAK, LEAK_TEST_STEPS};

pub fn leak(step: Step<'_>) -> Markup {
    let run = &step.coolant.leak;
    let unit = if step.asked.is_us() { "psi" } else { "bar" };
    html! {
        (cautions(&[Caution::Hot.text(), &most(&step)]))
        details id="steps" open[run.told.is_empty()] {
            summary class="row" { span class="strong" { "How to test" } }
            ol { @for text in LEAK_TEST_STEPS { li class="row" { (text) } } }
        }
        (limit(&step))
        div class="columns" {
            div {
                @if let Some(answer) = &run.answer { (answered(answer)) (keep(&step, answer)) }
                @else if let Some(trouble) = &run.trouble { p class="gap wait" { (trouble) } }
            }
            div {
                p class="gap spread" {
                    span class="fact" data-since=(run.since) aria-hidden="true" { "0:00" }
                    span class="beside" { (run.told.len()) " read" }
                }
                @for (minutes, value) in run.told.iter().rev().take(4) {
                    div class="row" { span class="what" { (format!("{minutes:.1}")) " min" } span class="strong" { (value) } }
                }
                form {
                    (number("gauge", "Gauge", unit, &[], true))
                    (number("temperature", "Coolant, if you can read it", if step.asked.is_us() { "°F" } else { "°C" }, &[], false))
                    (chips("what", "On", &[("gauge", "the system"), ("tester", "the tester closed on itself")], "gauge"))
                    div class="presses two low" {
                        button class="press confirm" type="submit" data-commands=(Value::from(vec![read(&step, false)])) { "Read now" small { "about one a minute" } }
                        button class="press" type="submit" data-clock="" data-commands=(Value::from(vec![read(&step, true)])) { "Start" small { "first reading" } }
                    }
                }
            }
        }
    }
}

/// Never above the rating; and no rating is made up.
fn most(step: &Step<'_>) -> String {
    match step.coolant.figures.get("cap") {
        Some(cap) => format!(
            "Never pump above the cap's {}. An old radiator may stand less.",
            cap.value
        ),
        None => {
            "Read the cap's rating first, and never pump above it. An old radiator may stand less."
                .to_owned()
        }
    }
}

fn read(step: &Step<'_>, start: bool) -> Value {
    let unit = if step.asked.is_us() { "psi" } else { "bar" };
    let degrees = if step.asked.is_us() { "°F" } else { "°C" };
    let what = |name: &str| {
        if start {
            format!("{name} start")
        } else {
            name.to_owned()
        }
    };
    step.fact(json!({ "read-off": { "id": new("reading"), "item": step.item.item,
        "what": { "$map": "what", "to": { "tester": what("tester") }, "else": what("gauge") },
        "value": amount("gauge", unit), "temperature": amount("temperature", degrees), "after": step.item.seen } }))
}

/// A cold engine needs no thermometer, but somebody has to say that it is cold.
fn cold(step: &Step<'_>) -> Markup {
    let told = step.fact(json!({ "read-off": { "id": new("reading"), "item": step.item.item,
        "what": "gauge cold", "value": "as cold as the shop", "temperature": null, "after": step.item.seen } }));
    html! { form { div class="presses" { (button(Look::Plain, "It is as cold as the shop", "it stood for hours; else read the coolant's temperature", &[told], None)) } } }
}

/// What a test may lose is the maker's word or the shop's habit: told once, kept with the
/// vehicle.
fn limit(step: &Step<'_>) -> Markup {
    let figure = |name: &str| step.coolant.figures.get(name).map(|one| one.value.clone());
    if let (Some(limit), Some(time)) = (figure("limit"), figure("limit-time")) {
        return html! { p class="gap" { "May lose " span class="strong" { (limit) } " in " span class="strong" { (time) } "." } };
    }
    let Some(vehicle) = &step.coolant.vehicle else {
        return html! {};
    };
    let told = |name: &str, stored: &str, unit: &str| {
        when(
            name,
            json!({ "stream": format!("vehicle:{vehicle}"), "vehicle_fact": { "figure-told": {
            "what": stored, "value": amount(name, unit), "after": [] } } }),
        )
    };
    let unit = if step.asked.is_us() { "psi" } else { "bar" };
    html! {
        h2 { "What may it lose?" }
        form {
            (asked_input(&step.asked, "limit", "May lose", "such as 0.05 bar, by the maker or your habit"))
            (asked_input(&step.asked, "limit-time", "In", "such as 15 min"))
            div class="presses" { (button(Look::Plain, "Keep the limit", "", &[told("limit", "coolant test limit", unit), told("limit-time", "coolant test minutes", "min")], None)) }
        }
    }
}

/// A verdict becomes the proof; "can't tell yet" is none.
fn keep(step: &Step<'_>, answer: &Answer) -> Markup {
    let outcome = match answer.tone {
        "yes" => "held",
        "no" => "failed",
        _ => {
            return html! {
                p class="gap" { "Nothing is proven yet." }
                @if answer.outputs["why"] == "temperature-not-read" { (cold(step)) }
            };
        }
    };
    let run = &step.coolant.leak;
    let readings = run.told.iter().map(
        |(minutes, value)| json!({ "what": format!("gauge at {minutes:.1} min"), "value": value }),
    );
    let inputs = json!({ "since": run.since, "readings": run.told, "limit": step.asked.text("limit"),
        "time": step.asked.text("limit-time"), "cap": step.asked.text("cap"), "altitude": step.asked.text("altitude"),
        "headspace": step.asked.text("headspace"), "capacity": step.asked.text("capacity") });
    let calculated = step.fact(json!({ "calculated": { "id": new("note"), "item": step.item.item, "snag": null,
        "calculator": LEAK, "version": 1, "inputs": inputs.to_string(), "outputs": answer.outputs.to_string(),
        "working": answer.working_text() } }));
    let proof = proved(step, "leak-test", outcome, readings.collect());
    let label = if outcome == "held" {
        "Keep: it holds"
    } else {
        "Keep: it leaks"
    };
    html! { form { div class="presses" { (button(Look::Confirm, label, "the proof, with its readings", &[calculated, proof], Some(&step.home()))) } } }
}

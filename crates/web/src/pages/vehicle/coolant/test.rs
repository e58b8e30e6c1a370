//! The leak test at the vehicle: one tap a reading, under a running clock.

use super::steps::{amount, number};
use super::{Step, proved};
use crate::pages::bench::form::{answered, asked_input, cautions};
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, chips, new, when};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::calculators::Answer;
use shop::coolant::{Caution, LEAK, leak_test_steps};

pub fn leak(step: Step<'_>) -> Markup {
    let run = &step.coolant.leak;
    let unit = if step.asked.is_us() { "psi" } else { "bar" };
    html! {
        (cautions(&[Caution::Hot.text(), &most(&step)]))
        details id="steps" open[run.told.is_empty()] {
            summary class="row" { span class="strong" { (say::how_to_test()) } }
            ol { @for text in leak_test_steps() { li class="row" { (text) } } }
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
                    span class="beside" { (say::so_many_read(run.told.len())) }
                }
                @for (minutes, value) in run.told.iter().rev().take(4) {
                    div class="row" { span class="what" { (format!("{minutes:.1}")) " min" } span class="strong" { (value) } }
                }
                form {
                    (number("gauge", say::gauge(), unit, &[], true))
                    (number("temperature", say::coolant_if_readable(), if step.asked.is_us() { "°F" } else { "°C" }, &[], false))
                    (chips("what", say::tester_on(), &[("gauge", say::the_system()), ("tester", say::tester_on_itself())], "gauge"))
                    div class="presses two low" {
                        button class="press confirm" type="submit" data-commands=(Value::from(vec![read(&step, false)])) { (say::read_now()) small { (say::about_one_a_minute()) } }
                        button class="press" type="submit" data-clock="" data-commands=(Value::from(vec![read(&step, true)])) { (say::start()) small { (say::first_reading()) } }
                    }
                }
            }
        }
    }
}

/// Never above the rating; and no rating is made up.
fn most(step: &Step<'_>) -> String {
    match step.coolant.figures.get("cap") {
        Some(cap) => say::never_above_the_cap(&cap.value),
        None => say::read_the_caps_rating_first().to_owned(),
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
    html! { form { div class="presses" { (button(Look::Plain, say::as_cold_as_the_shop(), say::stood_for_hours(), &[told], None)) } } }
}

/// What a test may lose is the maker's word or the shop's habit: told once, kept with the
/// vehicle.
fn limit(step: &Step<'_>) -> Markup {
    let figure = |name: &str| step.coolant.figures.get(name).map(|one| one.value.clone());
    if let (Some(limit), Some(time)) = (figure("limit"), figure("limit-time")) {
        return html! { p class="gap" { (say::may_lose_so_much()) span class="strong" { (limit) } (say::may_lose_in()) span class="strong" { (time) } "." } };
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
        h2 { (say::what_may_it_lose()) }
        form {
            (asked_input(&step.asked, "limit", say::may_lose(), say::such_as_005_bar()))
            (asked_input(&step.asked, "limit-time", say::lose_in(), say::such_as_15_min()))
            div class="presses" { (button(Look::Plain, say::keep_the_limit(), "", &[told("limit", "coolant test limit", unit), told("limit-time", "coolant test minutes", "min")], None)) }
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
                p class="gap" { (say::nothing_is_proven_yet()) }
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
        "working": run.working } }));
    let proof = proved(step, "leak-test", outcome, readings.collect());
    let label = if outcome == "held" {
        say::keep_it_holds()
    } else {
        say::keep_it_leaks()
    };
    html! { form { div class="presses" { (button(Look::Confirm, label, say::the_proof_with_its_readings(), &[calculated, proof], Some(&step.home()))) } } }
}

//! Drain, pour, bleed, level, and the figures of the vehicle: each a screen of its own.

use super::{Step, onward};
use crate::pages::bench::form::{answered, answered_as, asked_input, asked_tick, cautions};
use crate::pages::vehicle::pieces::change;
use crate::tap::{Look, button, chips, field, when, words};
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::coolant::{BleedWay, Caution, FIGURES, Litre};
use shop::record::form::Form;
use shop::record::v1::basics::StateForm;
use shop::record::v1::facts::WorkForm;
use shop::repair::{ItemId, Work, WorkIs};

/// A measured value out of a field; a bare number gets its unit on the device.
pub fn amount(name: &str, unit: &str) -> Value {
    json!({ "$amount": name, "unit": unit })
}

/// A field for a number, with the number pad, and buttons that fill it.
pub fn number(name: &str, label: &str, unit: &str, quick: &[&str], required: bool) -> Markup {
    html! {
        label class="field" {
            span { (label) ", " (unit) }
            input type="text" name=(name) inputmode="decimal" autocomplete="off" required[required];
        }
        @if !quick.is_empty() {
            div class="quick" role="group" aria-label=(format!("{label}, at a tap")) {
                @for value in quick { button class="press" type="button" data-fill=(name) data-value=(value) { (value) } }
            }
        }
    }
}

fn volume_unit(step: &Step<'_>) -> &'static str {
    if step.asked.is_us() { "qt" } else { "L" }
}

fn temperature_unit(step: &Step<'_>) -> &'static str {
    if step.asked.is_us() { "°F" } else { "°C" }
}

fn told(list: &[Litre], nothing: &str) -> Markup {
    html! {
        @if list.is_empty() { p class="gap soft" { (nothing) } }
        @for one in list {
            div class="row" {
                span class="what" { span class="strong" { (one.amount) } @if !one.what.is_empty() { ", " (one.what) } }
                span class="soft" { (one.who) }
            }
        }
    }
}

/// Out of it, pan by pan.
pub fn drain(step: &Step<'_>) -> Markup {
    let mut drained = vec![step.fact(json!({ "drained": { "item": step.item.item,
        "amount": amount("amount", volume_unit(step)), "fate": field("fate"),
        "temperature": amount("temperature", temperature_unit(step)) } }))];
    if step.item.home {
        let low = change(step.item, &step.item.positions, StateForm::Low, "original");
        drained.insert(
            0,
            step.fact(json!({ "moved": { "stage": null, "moves": [low] } })),
        );
    }
    html! {
        form {
            (cautions(&[Caution::Hot.text(), Caution::Poisonous.text(), Caution::FanStarts.text()]))
            (told(&step.coolant.drained, "Nothing is out yet."))
            @if let Some(left) = &step.coolant.left_said { p class="gap" { (left) } }
            (number("amount", "Came out", volume_unit(step), &["0.5", "1", "2", "3", "4", "5"], true))
            (chips("fate", "It is", &[("kept", "kept clean, goes back"), ("recycled", "to be recycled"), ("disposed", "to be disposed of"), ("spilled", "spilled")], "recycled"))
            (number("temperature", "How warm, if you know", temperature_unit(step), &[], false))
            (cautions(&[Caution::Disposal.text()]))
            div class="presses low" { (button(Look::Confirm, "Note it", "one tap a pan", &drained, None)) }
        }
    }
}

/// What to pour, poured in steps, and what is still missing.
pub fn pour(mut step: Step<'_>) -> Markup {
    let plan = plan(&mut step);
    let unit = volume_unit(&step);
    let what = json!({ "$map": "what", "to": {
        "concentrate": words("concentrate"), "premix": words("premix"), "water": words("distilled water"), "kept": words("what was kept") } });
    let poured = step.fact(
        json!({ "poured": { "item": step.item.item, "amount": amount("amount", unit),
        "what": what, "temperature": null } }),
    );
    let level = change(
        step.item,
        &step.item.positions,
        StateForm::AtLevel,
        "original",
    );
    let full = step.fact(json!({ "moved": { "stage": null, "moves": [level] } }));
    html! {
        (cautions(&[Caution::MakersSpecification.text(), Caution::Poisonous.text()]))
        @if let Some(maker) = step.coolant.figures.get("maker") { p class="beside gap" { "The maker asks for " (maker.value) } }
        @let first = step.coolant.poured.is_empty();
        div class="columns" {
            @if first { (plan) }
            div {
                @if let Some(balance) = &step.coolant.balance { (answered(balance)) }
                (told(&step.coolant.poured, "Nothing is in yet."))
                form {
                    (number("amount", "Poured in", unit, &["0.5", "1", "2", "3", "4", "5"], true))
                    (chips("what", "It was", &[("concentrate", "concen\u{ad}trate"), ("premix", "premix"), ("water", "distilled water"), ("kept", "what was kept")], "premix"))
                    div class="presses low" { (button(Look::Confirm, "Poured in", "one tap a jug", &[poured], None)) }
                }
                @if !step.item.home {
                    form { div class="presses" { (button(Look::Plain, "It is at its level", "then bleed it and look again", &[full], None)) } }
                }
                div class="presses" { (onward(&step, "Bleed", "bleed")) }
            }
            @if !first { (plan) }
        }
    }
}

/// What to pour, from the vehicle's figures, what was drained and what was measured.
fn plan(step: &mut Step<'_>) -> Markup {
    if let Some(left) = step.coolant.left_l {
        step.asked.or_else("left", &format!("{left:.1} L"));
    }
    let before = step
        .coolant
        .strengths
        .iter()
        .rfind(|kept| !kept.after_filling);
    if let Some(kept) = before.and_then(|kept| kept.concentrate) {
        step.asked.or_else("now", &format!("{:.0} %", kept * 100.0));
    }
    let ticked = ["has-concentrate", "has-premix", "has-water"];
    if ticked.iter().all(|name| step.asked.text(name).is_empty()) {
        step.asked.or_else("has-concentrate", "yes");
        step.asked.or_else("has-water", "yes");
    }
    let lacking = lacking(step);
    let answer = if lacking.is_empty() {
        shop::calculators::coolant::mix(&mut step.asked)
    } else {
        None
    };
    let asked = &step.asked;
    html! {
        section {
            h2 { "What to pour" }
            @if !lacking.is_empty() { p class="gap" { "To work it out, tell " (lacking.join(", ")) "." } }
            @if let Some(answer) = &answer { (answered_as(answer, "working-plan")) }
            form method="get" {
                @if let Some(trouble) = asked.troubles.get("has-concentrate") { p class="no gap" { (trouble) } }
                (asked_input(asked, "capacity", "The system holds", "such as 9.2 L"))
                (asked_input(asked, "left", "Still in", "capacity less what came out"))
                (asked_input(asked, "now", "Concentrate in what stayed", "as measured, 0 % for water"))
                (asked_input(asked, "want", "Concentrate wanted", "by the maker"))
                (asked_tick(asked, "has-concentrate", "Concentrate stands ready", ""))
                (asked_tick(asked, "has-premix", "Premix stands ready", "50 % unless told"))
                (asked_tick(asked, "has-water", "Distilled water stands ready", ""))
                (asked_input(asked, "label", "The bottle meets", "as printed"))
                (asked_input(asked, "inside", "What stays in meets", "as printed, or empty"))
                div class="presses" { button class="press" type="submit" { "Work it out" } }
            }
        }
    }
}

fn lacking(step: &Step<'_>) -> Vec<&'static str> {
    [
        ("capacity", "how much the system holds"),
        ("left", "what came out"),
        ("now", "the strength of what stayed in"),
        ("want", "the strength wanted"),
    ]
    .into_iter()
    .filter(|(name, _)| step.asked.text(name).is_empty())
    .map(|(_, what)| what)
    .collect()
}

/// The ways to get the air out, each with its work and its cautions.
pub fn bleed(step: &Step<'_>) -> Markup {
    let owed = step.order.debts.iter().find(|debt| {
        debt.items.contains(&step.item.item)
            && debt.work == shop::record::v1::codes::WorkIsForm::Bleed
    });
    let usual = WorkForm::of(&Work::usual(
        WorkIs::Bleed,
        Some(ItemId::new(&step.item.item)),
    ));
    let seen = owed.map_or_else(|| step.item.seen.clone(), |debt| debt.seen.clone());
    html! {
        @if owed.is_some() { p class="beside gap wait" { "Bleeding is due." } } @else { p class="gap soft" { "Nothing is due now; what is done is noted all the same." } }
        @for way in BleedWay::ALL {
            @let done = step.fact(json!({ "work-done": { "work": owed.map_or_else(|| usual.clone(), |debt| debt.owed.clone()),
                "after": seen, "words": words(&format!("bled: {}", way.name())) } }));
            @let texts: Vec<&str> = way.cautions().iter().map(|caution| caution.text()).collect();
            details id=(format!("way-{}", way.name().replace([' ', '\''], "-"))) {
                summary class="row" { span class="beside" { (shop::say::capital(way.name())) } }
                (cautions(&texts))
                ol { @for work in way.work() { li class="row" { (work) } } }
                form { div class="presses" { (button(Look::Confirm, "Bled this way", "", &[done], None)) } }
            }
        }
        div class="presses" { (onward(step, "Level", "level")) }
    }
}

/// Its level, warm and cold.
pub fn level(step: &Step<'_>) -> Markup {
    let seen = |level: &str, good: bool| {
        step.fact(json!({ "level-seen": { "item": step.item.item, "level": level, "good": good,
            "reading": field("reading"), "temperature": amount("temperature", temperature_unit(step)), "after": step.item.seen } }))
    };
    let owed = |level: &str| {
        let debts = step
            .order
            .debts
            .iter()
            .filter(|debt| debt.items.contains(&step.item.item));
        debts
            .filter(|debt| debt.text.to_lowercase().contains(level))
            .map(|debt| debt.text.clone())
            .next()
    };
    html! {
        (cautions(&[Caution::Hot.text(), Caution::FanStarts.text(), Caution::ExhaustIndoors.text()]))
        div class="columns" {
            div {
                h2 { "Warm" }
                @if let Some(owed) = owed("warm") { p class="gap wait" { (owed) } }
                p class="gap" { "Thermostat open, heater hot, fan has cycled: at or a little above its mark." }
                form {
                    (crate::tap::input("reading", "Level read", "as you see it, such as 10 mm above the mark", ""))
                    div class="presses even" {
                        (button(Look::Plain, "Right, warm", "", &[seen("warm", true)], None))
                        (button(Look::Plain, "Not right, warm", "", &[seen("warm", false)], None))
                    }
                }
            }
            div {
                h2 { "Cold" }
                @if let Some(owed) = owed("cold") { p class="gap wait" { (owed) } }
                p class="gap" { "After one full heating and cooling. This closes it, not the litres." }
                @for line in &step.coolant.cold { p class="gap" { (line) } }
                form {
                    (crate::tap::input("reading", "If it is low, by how much", "such as 0.3 L or 20 mm", ""))
                    (number("temperature", "How warm, if you know", temperature_unit(step), &[], false))
                    div class="presses low even" {
                        (button(Look::Plain, "Too low, cold", "top up and look again", &[seen("cold", false)], None))
                        (button(Look::Confirm, "Right, cold", "", &[seen("cold", true)], None))
                    }
                }
            }
        }
    }
}

/// What is typed once and kept with the vehicle.
pub fn figures(step: &Step<'_>) -> Markup {
    let Some(vehicle) = &step.coolant.vehicle else {
        return html! { p class="gap" { "This order has no vehicle yet." } };
    };
    let told = |name: &str, stored: &str| {
        let by = step
            .coolant
            .figures
            .get(name)
            .map(|one| one.by.clone())
            .unwrap_or_default();
        when(
            name,
            json!({ "stream": format!("vehicle:{vehicle}"), "vehicle_fact": { "figure-told": {
            "what": stored, "value": field(name), "after": by } } }),
        )
    };
    let commands: Vec<Value> = FIGURES
        .iter()
        .map(|(name, stored, ..)| told(name, stored))
        .collect();
    html! {
        p class="gap" { "Kept with this vehicle: next time they stand here. Its maker's papers come first; what nobody told stays unknown." }
        @for (name, _, label, _) in FIGURES {
            @if let Some(figure) = step.coolant.figures.get(name) {
                div class="row" { span class="what" { (label) } span class="strong value" { (figure.value) @if figure.by_map { " (map)" } } }
            }
        }
        form class="narrow" {
            @for (name, _, label, hint) in FIGURES { (crate::tap::input(name, label, hint, "")) }
            div class="presses low" { (button(Look::Confirm, "Keep the figures", "empty fields stay as they are", &commands, Some(&step.home()))) }
        }
    }
}

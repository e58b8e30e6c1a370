//! Drain, pour, bleed, level, and the figures of the vehicle: each a screen of its own.

use super::{Step, onward};
use crate::pages::bench::form::{answered, answered_as, asked_input, asked_tick, cautions};
use crate::pages::vehicle::pieces::change;
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, chips, field, when, words};
use maud::{Markup, html};
use phrases::{Language, speaking};
use serde_json::{Value, json};
use shop::coolant::{BleedWay, Caution, FIGURES, Litre};
use shop::record::form::Form;
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::WorkIsForm;
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
            div class="quick" role="group" aria-label=(say::at_a_tap(label)) {
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
            (told(&step.coolant.drained, say::nothing_is_out_yet()))
            @if let Some(left) = &step.coolant.left_said { p class="gap" { (left) } }
            (number("amount", say::came_out(), volume_unit(step), &["0.5", "1", "2", "3", "4", "5"], true))
            (chips("fate", say::it_is(), &[("kept", say::kept_clean()), ("recycled", say::to_be_recycled()), ("disposed", say::to_be_disposed_of()), ("spilled", say::spilled())], "recycled"))
            (number("temperature", say::how_warm_if_known(), temperature_unit(step), &[], false))
            (cautions(&[Caution::Disposal.text()]))
            div class="presses low" { (button(Look::Confirm, say::note_it(), say::one_tap_a_pan(), &drained, None)) }
        }
    }
}

/// What to pour, poured in steps, and what is still missing.
pub fn pour(mut step: Step<'_>) -> Markup {
    let plan = plan(&mut step);
    let unit = volume_unit(&step);
    let what = json!({ "$map": "what", "to": {
        "concentrate": words(say::concentrate()), "premix": words(say::premix()), "water": words(say::distilled_water()), "kept": words(say::what_was_kept()) } });
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
        @if let Some(maker) = step.coolant.figures.get("maker") { p class="beside gap" { (say::maker_asks_for()) (maker.value) } }
        @let first = step.coolant.poured.is_empty();
        div class="columns" {
            @if first { (plan) }
            div {
                @if let Some(balance) = &step.coolant.balance { (answered(balance)) }
                (told(&step.coolant.poured, say::nothing_is_in_yet()))
                form {
                    (number("amount", say::poured_in(), unit, &["0.5", "1", "2", "3", "4", "5"], true))
                    (chips("what", say::it_was(), &[("concentrate", say::concentrate_parted()), ("premix", say::premix()), ("water", say::distilled_water()), ("kept", say::what_was_kept())], "premix"))
                    div class="presses low" { (button(Look::Confirm, say::poured_in(), say::one_tap_a_jug(), &[poured], None)) }
                }
                @if !step.item.home {
                    form { div class="presses" { (button(Look::Plain, say::it_is_at_its_level(), say::then_bleed_it(), &[full], None)) } }
                }
                div class="presses" { (onward(&step, say::bleed(), "bleed")) }
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
            h2 { (say::what_to_pour()) }
            @if !lacking.is_empty() { p class="gap" { (say::to_work_it_out_tell(lacking.join(", "))) } }
            @if let Some(answer) = &answer { (answered_as(answer, "working-plan")) }
            form method="get" {
                @if let Some(trouble) = asked.troubles.get("has-concentrate") { p class="no gap" { (trouble) } }
                (asked_input(asked, "capacity", say::the_system_holds(), say::such_as_92_l()))
                (asked_input(asked, "left", say::still_in(), say::capacity_less_what_came_out()))
                (asked_input(asked, "now", say::concentrate_in_what_stayed(), say::as_measured_zero_for_water()))
                (asked_input(asked, "want", say::concentrate_wanted(), say::by_the_maker()))
                (asked_tick(asked, "has-concentrate", say::concentrate_stands_ready(), ""))
                (asked_tick(asked, "has-premix", say::premix_stands_ready(), say::half_unless_told()))
                (asked_tick(asked, "has-water", say::water_stands_ready(), ""))
                (asked_input(asked, "label", say::the_bottle_meets(), say::as_printed()))
                (asked_input(asked, "inside", say::what_stays_meets(), say::as_printed_or_empty()))
                div class="presses" { button class="press" type="submit" { (say::work_it_out()) } }
            }
        }
    }
}

fn lacking(step: &Step<'_>) -> Vec<&'static str> {
    [
        ("capacity", say::how_much_it_holds()),
        ("left", say::what_came_out()),
        ("now", say::strength_of_what_stayed()),
        ("want", say::strength_wanted()),
    ]
    .into_iter()
    .filter(|(name, _)| step.asked.text(name).is_empty())
    .map(|(_, what)| what)
    .collect()
}

/// The ways to get the air out, each with its work and its cautions.
pub fn bleed(step: &Step<'_>) -> Markup {
    let owed = step
        .order
        .debts
        .iter()
        .find(|debt| debt.items.contains(&step.item.item) && debt.work == WorkIsForm::Bleed);
    let usual = WorkForm::of(&Work::usual(
        WorkIs::Bleed,
        Some(ItemId::new(&step.item.item)),
    ));
    let seen = owed.map_or_else(|| step.item.seen.clone(), |debt| debt.seen.clone());
    html! {
        @if owed.is_some() { p class="beside gap wait" { (say::bleeding_is_due()) } } @else { p class="gap soft" { (say::bleeding_is_not_due()) } }
        @for way in BleedWay::ALL {
            // The record says it the same in every language.
            @let by_this_way = speaking(Language::English, || say::bled_by(way.name()));
            @let done = step.fact(json!({ "work-done": { "work": owed.map_or_else(|| usual.clone(), |debt| debt.owed.clone()),
                "after": seen, "words": words(&by_this_way) } }));
            @let texts: Vec<&str> = way.cautions().iter().map(|caution| caution.text()).collect();
            details id=(format!("way-{}", way_id(way))) {
                summary class="row" { span class="beside" { (shop::say::capital(way.name())) } }
                (cautions(&texts))
                ol { @for work in way.work() { li class="row" { (work) } } }
                form { div class="presses" { (button(Look::Confirm, say::bled_this_way(), "", &[done], None)) } }
            }
        }
        div class="presses" { (onward(step, say::level(), "level")) }
    }
}

/// What a way is called in the page's address.
fn way_id(way: BleedWay) -> &'static str {
    match way {
        BleedWay::OpenCap => "open-cap",
        BleedWay::BleedScrew => "bleed-screw",
        BleedWay::HeaterValve => "heater-valve",
        BleedWay::ElectricPump => "electric-pump-s-own-mode",
        BleedWay::Vacuum => "vacuum",
    }
}

/// Its level, warm and cold.
pub fn level(step: &Step<'_>) -> Markup {
    let seen = |level: &str, good: bool| {
        step.fact(json!({ "level-seen": { "item": step.item.item, "level": level, "good": good,
            "reading": field("reading"), "temperature": amount("temperature", temperature_unit(step)), "after": step.item.seen } }))
    };
    let owed = |level: WorkIsForm| {
        let debts = step
            .order
            .debts
            .iter()
            .filter(|debt| debt.items.contains(&step.item.item));
        debts
            .filter(|debt| debt.work == level)
            .map(|debt| debt.text.clone())
            .next()
    };
    html! {
        (cautions(&[Caution::Hot.text(), Caution::FanStarts.text(), Caution::ExhaustIndoors.text()]))
        div class="columns" {
            div {
                h2 { (say::warm()) }
                @if let Some(owed) = owed(WorkIsForm::LevelWarm) { p class="gap wait" { (owed) } }
                p class="gap" { (say::how_to_see_it_warm()) }
                form {
                    (crate::tap::input("reading", say::level_read(), say::such_as_10_mm_above(), ""))
                    div class="presses even" {
                        (button(Look::Plain, say::right_warm(), "", &[seen("warm", true)], None))
                        (button(Look::Plain, say::not_right_warm(), "", &[seen("warm", false)], None))
                    }
                }
            }
            div {
                h2 { (say::cold()) }
                @if let Some(owed) = owed(WorkIsForm::LevelCold) { p class="gap wait" { (owed) } }
                p class="gap" { (say::how_to_see_it_cold()) }
                @for line in &step.coolant.cold { p class="gap" { (line) } }
                form {
                    (crate::tap::input("reading", say::if_low_by_how_much(), say::such_as_03_l(), ""))
                    (number("temperature", say::how_warm_if_known(), temperature_unit(step), &[], false))
                    div class="presses low even" {
                        (button(Look::Plain, say::too_low_cold(), say::top_up_and_look_again(), &[seen("cold", false)], None))
                        (button(Look::Confirm, say::right_cold(), "", &[seen("cold", true)], None))
                    }
                }
            }
        }
    }
}

/// What is typed once and kept with the vehicle.
pub fn figures(step: &Step<'_>) -> Markup {
    let Some(vehicle) = &step.coolant.vehicle else {
        return html! { p class="gap" { (say::no_vehicle_yet()) } };
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
        p class="gap" { (say::figures_are_kept()) }
        @for (name, _, label, _) in FIGURES {
            @if let Some(figure) = step.coolant.figures.get(name) {
                div class="row" { span class="what" { (label) } span class="strong value" { (figure.value) @if figure.by_map { (say::by_the_map()) } } }
            }
        }
        form class="narrow" {
            @for (name, _, label, hint) in FIGURES { (crate::tap::input(name, label, hint, "")) }
            div class="presses low" { (button(Look::Confirm, say::keep_the_figures(), say::empty_fields_stay(), &commands, Some(&step.home()))) }
        }
    }
}

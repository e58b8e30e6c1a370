//! The coolant of an order, step by step at the vehicle: what is in, drain, pour, bleed,
//! level, leak test, and the figures of this vehicle.

mod steps;
mod test;

use super::choices::Choices;
use super::pieces::{disturbed_seen, mark, where_it_stands};
use crate::State;
use crate::pages::bench::form::{answered, cautions, parts};
use crate::pages::{Shown, Visit, order_of, show};
use crate::phrases::vehicle as say;
use crate::tap::{Look, button, link, new, order_fact};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use phrases::{Language, speaking};
use serde_json::{Value, json};
use shop::Trouble;
use shop::calculators::coolant as sums;
use shop::calculators::{Answer, Asked, Part};
use shop::coolant::{Caution, OrderCoolant, STRENGTH, fields, of_order};
use shop::mending::known;
use shop::record::v1::codes::{KindForm, SystemForm};
use shop::view::{ItemView, OrderView};
use std::collections::BTreeMap;
use steps::{bleed, drain, figures, level, pour};
use test::leak;

/// What a step is given.
pub struct Step<'a> {
    pub order: &'a OrderView,
    pub item: &'a ItemView,
    pub coolant: &'a OrderCoolant,
    /// What stands in the address, with the vehicle's figures where it says nothing.
    pub asked: Asked,
}

impl Step<'_> {
    /// Where the coolant's own page is.
    pub fn home(&self) -> String {
        format!("/o/{}/item/{}", self.order.number, self.item.item)
    }

    /// A fact of this order.
    pub fn fact(&self, content: Value) -> Value {
        order_fact(&self.order.order, content)
    }
}

/// Whether an item is an order's coolant.
pub fn is_coolant(item: &ItemView) -> bool {
    item.kind == KindForm::Fluid && item.system == SystemForm::Cooling
}

/// The steps: address, name, what it is for.
const STEPS: &Choices = &[
    ("measure", say::measure_what_is_in),
    ("drain", say::drain),
    ("pour", say::pour),
    ("bleed", say::bleed),
    ("level", say::level),
    ("leak", say::leak_test),
    ("figures", say::this_vehicles_figures),
];

/// The coolant's own page: where it stands, and the steps.
pub fn overview(order: &OrderView, item: &ItemView, coolant: &OrderCoolant) -> Markup {
    html! {
        h1 { (item.label) }
        div class="row" { (mark(item)) span class="what beside" { (where_it_stands(item)) } }
        div class="columns" {
            div {
                @if let Some(balance) = &coolant.balance { (answered(balance)) }
                @else if !coolant.drained.is_empty() { p class="gap" { (say::out_so_far()) span class="strong" { (sum(coolant)) } } }
                @else { p class="gap" { (say::measure_before_it_goes()) } }
            }
            nav aria-label=(say::steps_of_coolant()) {
                @for (code, name) in STEPS {
                    a class="row" href=(format!("/o/{}/item/{}/{code}", order.number, item.item)) {
                        span class="what" {
                            span class="beside line" { (name()) }
                            @let so_far = so_far(code, coolant);
                            @if !so_far.is_empty() { span class="soft line" { (so_far) } }
                        }
                    }
                }
            }
        }
    }
}

fn sum(coolant: &OrderCoolant) -> String {
    let amounts = coolant.drained.iter();
    let each: Vec<String> = amounts
        .map(|one| format!("{} {}", one.amount, one.what))
        .collect();
    each.join(", ")
}

fn so_far(code: &str, coolant: &OrderCoolant) -> String {
    let all = |list: &[shop::coolant::Litre]| {
        let each: Vec<&str> = list.iter().map(|one| one.amount.as_str()).collect();
        each.join(" + ")
    };
    match code {
        "measure" => coolant
            .strengths
            .last()
            .map(|kept| kept.said.clone())
            .unwrap_or_default(),
        "drain" => all(&coolant.drained),
        "pour" => all(&coolant.poured),
        "leak" => match (&coolant.leak.answer, coolant.leak.told.len()) {
            (Some(answer), _) => answer.fact.clone(),
            (None, 0) => String::new(),
            (None, told) => say::so_many_read(told),
        },
        "figures" => coolant
            .figures
            .get("capacity")
            .map(|one| one.value.clone())
            .unwrap_or_default(),
        _ => String::new(),
    }
}

pub async fn step(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, id, code)): Path<(String, String, String)>,
    Query(sent): Query<BTreeMap<String, String>>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let item = order.items.iter().find(|item| item.item == id);
        let item = item
            .filter(|item| is_coolant(item))
            .ok_or_else(|| Trouble::not_found(say::no_such_coolant()))?;
        let (_, name) = STEPS
            .iter()
            .find(|(known, _)| *known == code)
            .ok_or_else(|| Trouble::not_found(say::no_such_step()))?;
        let name = name();
        let coolant = of_order(visit.snap, order.number, &id)?;
        let asked = asked(visit, &coolant, sent);
        let step = Step {
            order: &order,
            item,
            coolant: &coolant,
            asked,
        };
        let home = step.home();
        let content = match code.as_str() {
            "measure" => measure(step),
            "drain" => drain(&step),
            "pour" => pour(step),
            "bleed" => bleed(&step),
            "level" => level(&step),
            "leak" => leak(step),
            _ => figures(&step),
        };
        let mut shown = Shown::of(&order, name, html! { h1 { (name) } (content) });
        shown.leads_to(&format!("{} · {}", order.number, item.label), &home);
        Ok(shown)
    })
    .await
}

fn asked(visit: &Visit<'_>, coolant: &OrderCoolant, sent: BTreeMap<String, String>) -> Asked {
    let mut asked = Asked::new(sent, known(visit.snap.world()));
    for (field, value) in fields(coolant) {
        asked.or_else(&field, &value);
    }
    asked.at_the_shop()
}

/// What is asked at the vehicle; the rest is known of it.
const MEASURED: &[Part] = &[sums::INSTRUMENT, sums::READING, sums::SAMPLE, sums::KIND];

/// What is in, by an instrument: how far it protects here, and what to change.
fn measure(mut step: Step<'_>) -> Markup {
    let sent = !step.asked.text("reading").is_empty();
    let answer = if sent {
        sums::measured(&mut step.asked)
    } else {
        None
    };
    let after = !step.coolant.poured.is_empty();
    html! {
        (cautions(&[Caution::Hot.text(), Caution::Poisonous.text()]))
        @for kept in &step.coolant.strengths { p class="gap" { (say::kept()) span class="strong" { (kept.said) } } }
        @if !sent && step.order.gates.iter().flat_map(|gate| &gate.fit_to_go).any(|reason| reason.key == "proof-failed:CoolantMix") {
            p class="no gap" { (say::mix_not_as_it_should_be()) }
        }
        div class="columns" {
            div {
                @if sent && answer.is_none() { p class="alarm" { (say::not_worked_out_yet()) } }
                @if let Some(answer) = &answer {
                    (answered(answer))
                    @if answer.tone == "no" { p class="gap" { (say::mix_not_as_it_should_be()) } }
                    form { div class="presses low" { (keep(&step, answer, after)) } }
                }
            }
            form method="get" {
                (parts(&step.asked, MEASURED))
                @if step.asked.text("cap").is_empty() { p class="soft" { (say::with_the_caps_rating()) } }
                @if answer.is_some() {
                    div class="presses" { button class="press" type="submit" { (say::work_it_out()) } }
                } @else {
                    div class="presses two low" {
                        button class="press confirm" type="button" data-through="yes" { (say::keep_the_reading()) small { (say::as_it_works_out()) } }
                        button class="press" type="submit" { (say::work_it_out()) }
                    }
                }
            }
        }
    }
}

/// Keeps a measured strength; after filling it is a proof too, held or failed.
fn keep(step: &Step<'_>, answer: &Answer, after: bool) -> Markup {
    let good = answer.tone == "yes";
    let reading = step.asked.text("reading");
    // A record does not hang on what was spoken.
    let kept = speaking(Language::English, || {
        sums::measured(&mut step.asked.clone())
    });
    let kept = kept.as_ref().unwrap_or(answer);
    let mut outputs = answer.outputs.clone();
    outputs["said"] = json!(if good {
        say::within_its_limits(&answer.said)
    } else {
        say::outside_its_limits(&answer.said)
    });
    let inputs = json!({ "instrument": step.asked.text("instrument"), "reading": reading,
        "sample": step.asked.text("sample"), "glycol": step.asked.text("glycol"), "cap": step.asked.text("cap"),
        "altitude": step.asked.text("altitude"), "least": step.asked.text("least"), "most": step.asked.text("most"),
        "table": step.asked.text("table") });
    let mut commands = vec![step.fact(json!({ "calculated": {
        "id": new("note"), "item": step.item.item, "snag": null, "calculator": STRENGTH, "version": 1,
        "inputs": inputs.to_string(), "outputs": outputs.to_string(), "working": kept.working_text() } }))];
    if after {
        commands.push(proved(
            step,
            "coolant-mix",
            if good { "held" } else { "failed" },
            vec![json!({ "what": "freezes at", "value": plain(&answer.fact) })],
        ));
    }
    let (label, small) = match (after, good) {
        (false, _) => (say::keep_this_reading(), ""),
        (true, true) => (say::keep_mix_is_right(), say::measured_after_filling()),
        (true, false) => (say::keep_mix_is_not_right(), say::stands_at_the_hand_over()),
    };
    let next = match good || !after {
        true => step.home(),
        // What to do about it stands there.
        false => format!("{}/measure", step.home()),
    };
    button(Look::Confirm, label, small, &commands, Some(&next))
}

/// A value as the record takes it.
fn plain(shown: &str) -> String {
    shown.replace('\u{2212}', "-")
}

/// A proof that rests on what this tap calculates, and takes the place of the earlier ones.
pub fn proved(step: &Step<'_>, proof: &str, outcome: &str, readings: Vec<Value>) -> Value {
    let earlier = step
        .order
        .proofs_told
        .get(proof)
        .cloned()
        .unwrap_or_default();
    step.fact(json!({ "proved": {
        "id": new("proof"), "line": null, "proof": proof, "outcome": outcome, "words": null,
        "readings": readings, "calculation": new("note"), "after": disturbed_seen(step.order),
        "replaces": earlier } }))
}

/// Where a step leads on.
pub fn onward(step: &Step<'_>, label: &str, code: &str) -> Markup {
    link(Look::Plain, label, "", &format!("{}/{code}", step.home()))
}

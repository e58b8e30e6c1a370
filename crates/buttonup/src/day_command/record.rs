//! The shop's own days, by its record.

use super::{Day, Told};
use crate::answer::{Answer, Wrong};
use crate::keep::Place;
use serde_json::{Value, json};
use shop::floor::{DayPlan, Days, days};
use shop::view::{PlannedView, planned_view};
use stalls::Ask;
use std::path::PathBuf;
use std::sync::Arc;

/// Plans the days ahead of the shop.
pub fn run(asked: &Day) -> Result<Answer, Wrong> {
    let place = Place {
        data: asked.data.clone().unwrap_or_else(|| PathBuf::from("shop")),
        database: asked.database.clone(),
        log: asked.log.clone(),
    };
    // Also while another program serves it.
    let (opened, _) = place.write_if_free()?;
    place.must_hold(opened.store())?;
    let service = shop::Service::open(opened.shared(), &place.log, Arc::new(jiff::Timestamp::now))?;
    let days = service.look(&shop::Caller::program(), days)?;
    let shown = planned_view(&days);
    Ok(Answer {
        text: words(&days, &shown).join("\n"),
        json: value(&days, &shown),
        good: days.missing.is_empty(),
    })
}

fn words(days: &Days, shown: &PlannedView) -> Vec<String> {
    let mut lines: Vec<String> = days
        .missing
        .iter()
        .map(|missing| format!("nothing is planned: {missing}"))
        .collect();
    match &days.plan {
        Some(plan) => lines.push(told(plan).0),
        None if lines.is_empty() => lines.push("nothing is left to be planned".to_owned()),
        None => {}
    }
    for promise in shown.promises.iter().filter(|one| one.slips) {
        match &promise.then {
            Some(then) => lines.push(format!(
                "to keep {} {} ({then}):",
                promise.number, promise.vehicle
            )),
            None => lines.push(format!(
                "nothing on the floor keeps {} {}",
                promise.number, promise.vehicle
            )),
        }
        lines.extend(promise.to_keep.iter().map(|change| format!("  {change}")));
        lines.extend(
            promise
                .costs
                .iter()
                .map(|cost| format!("  it costs {cost}")),
        );
    }
    if !shown.not_planned.is_empty() {
        lines.push("not planned".to_owned());
    }
    for one in &shown.not_planned {
        lines.push(format!("  {} {}: {}", one.number, one.vehicle, one.why));
    }
    lines
}

fn value(days: &Days, shown: &PlannedView) -> Value {
    let mut value = match &days.plan {
        Some(plan) => told(plan).1,
        None => json!({}),
    };
    value["missing"] = json!(days.missing);
    value["not_planned"] = json!(shown.not_planned);
    value["orders"] = json!(shown.promises);
    value
}

/// What a plan tells in the form of a file's plan: for a person, and for a program.
fn told(plan: &DayPlan) -> (String, Value) {
    let say = |minute| plan.calendar.say(minute);
    let calls = stalls::calls(&plan.plan, &plan.promises, &Ask::default(), &say);
    let told = Told {
        say: &say,
        iso: &|minute| plan.calendar.iso(minute),
        warnings: Vec::new(),
        plan: &plan.plan,
        promises: &plan.promises,
        calls: &calls,
        compared: None,
    };
    (told.words(), told.json())
}

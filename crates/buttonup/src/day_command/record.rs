//! The shop's own days, by its record.

use super::{Day, Told};
use crate::answer::{Answer, Wrong};
use crate::keep::Place;
use jiff::civil::Date;
use serde_json::{Value, json};
use shop::floor::{Calendar, DayPlan, Days, Planned, days};
use shop::view::{DayTold, PlannedView, nothing_told, plan_told, planned_view};
use stalls::{Ask, Call, Minute, Plan};
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
    let mut shown = planned_view(&days);
    let day = match (asked.on, &days.plan) {
        (Some(date), Some(plan)) => Some(on(plan, date)?),
        _ => None,
    };
    let plan = days.plan.as_deref().map(|plan| of_day(plan, day));
    if let Some((plan, _)) = &plan.as_ref().zip(day) {
        let number = |promise: &stalls::Promise| plan.orders[promise.order].number;
        let told: Vec<u64> = plan.promises.iter().map(number).collect();
        shown.promises.retain(|one| told.contains(&one.number));
    }
    Ok(Answer {
        text: words(&days, plan.as_ref(), &shown).join("\n"),
        json: value(&days, plan.as_ref(), shown),
        good: days.missing.is_empty(),
    })
}

/// From the first minute of a day to its last; the day has to be one of those planned.
fn on(plan: &DayPlan, date: Date) -> Result<(Minute, Minute), Wrong> {
    let day = plan.calendar.days_from(date, date);
    let now = plan.plan.floor.now;
    let end = plan.plan.floor.opening.end().unwrap_or(now);
    if day.1 > now && day.0 < end {
        return Ok(day);
    }
    Err(Wrong::input(
        "--on",
        format!("{date} is none of the days ahead"),
        format!(
            "name a day from {} to {}",
            plan.calendar.say(now),
            plan.calendar.say(end)
        ),
    ))
}

/// A plan as it is told.
struct Part<'a> {
    plan: Plan,
    /// All of it: why something waits may lie on another day.
    whole: &'a Plan,
    promises: Vec<stalls::Promise>,
    calendar: &'a Calendar,
    orders: &'a [Planned],
}

/// What of a plan is done, promised or ready on a day; all of it, if none is asked for.
fn of_day(plan: &DayPlan, day: Option<(Minute, Minute)>) -> Part<'_> {
    let mut part = Part {
        plan: plan.plan.clone(),
        whole: &plan.plan,
        promises: plan.promises.clone(),
        calendar: &plan.calendar,
        orders: &plan.orders,
    };
    if let Some((from, to)) = day {
        part.plan
            .placed
            .retain(|one| one.from < to && from < one.to);
        let within = |minute: Minute| (from..to).contains(&minute);
        part.promises
            .retain(|one| within(one.say) || one.promised.is_some_and(within));
    }
    part
}

fn words(days: &Days, plan: Option<&Part<'_>>, shown: &PlannedView) -> Vec<String> {
    let mut lines: Vec<String> = days
        .missing
        .iter()
        .map(|missing| format!("nothing is planned: {missing}"))
        .collect();
    match plan {
        Some(plan) => lines.push(told(plan)),
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

fn value(days: &Days, plan: Option<&Part<'_>>, shown: PlannedView) -> Value {
    let told = plan.map(|part| {
        let iso = |minute| part.calendar.iso(minute);
        plan_told(&part.plan, &part.promises, &calls(part), &iso)
    });
    json!(DayTold {
        plan: told.unwrap_or_else(|| nothing_told(days)),
        missing: shown.missing,
        not_planned: shown.not_planned,
        orders: shown.promises,
    })
}

fn calls(part: &Part<'_>) -> Vec<Call> {
    let say = |minute| part.calendar.say(minute);
    stalls::calls(part.whole, &part.promises, &Ask::default(), &say)
}

/// What a plan tells a person, in the form of a file's plan.
fn told(part: &Part<'_>) -> String {
    let told = Told {
        say: &|minute| part.calendar.say(minute),
        iso: &|minute| part.calendar.iso(minute),
        warnings: Vec::new(),
        plan: &part.plan,
        promises: &part.promises,
        calls: &calls(part),
        compared: None,
    };
    told.words()
}

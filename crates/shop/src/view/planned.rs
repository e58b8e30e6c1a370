//! The days ahead as they are shown: what is planned when, how sure each promise is, what would
//! keep one that slips, and what is left out.

use crate::floor::{DayPlan, Days, NotPlanned, Offer, SLIPS, ToKeep};
use crate::phrases::calls as words;
use crate::snapshot::Snapshot;
use serde::Serialize;
use utoipa::ToSchema;

/// What is planned, beside what was worked.
#[derive(Debug, Clone, Default, PartialEq, Serialize)]
pub struct PlannedView {
    /// What keeps all of it from being planned.
    pub missing: Vec<String>,
    /// Each order with when it is ready, those that slip first.
    pub promises: Vec<PromiseView>,
    /// Orders that are left out.
    pub not_planned: Vec<NotPlannedView>,
}

/// An order that is left out.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct NotPlannedView {
    /// The order's number.
    pub number: u64,
    /// The vehicle.
    pub vehicle: String,
    /// Why, in words.
    pub why: String,
    /// Where what is missing is told.
    pub page: String,
}

/// When an order is ready.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct PromiseView {
    /// The order's number.
    pub number: u64,
    /// The vehicle.
    pub vehicle: String,
    /// The customer.
    pub customer: String,
    /// The time that was promised.
    pub promised: Option<String>,
    /// The chance that it is kept, from 0 to 1.
    pub chance: Option<f64>,
    /// The same as it is said.
    pub often: Option<String>,
    /// Whether it is kept less than five times in ten.
    pub slips: bool,
    /// What can be said on the phone: kept eight times in ten.
    pub say: String,
    /// Whose minutes these are: `told`, `plan` or `price`.
    pub minutes_from: &'static str,
    /// Why it is ready no earlier.
    pub why: Option<String>,
    /// What to move so that it is kept, and how often it then is.
    pub to_keep: Vec<String>,
    /// The same as it is said.
    pub then: Option<String>,
    /// What that does to other promises.
    pub costs: Vec<String>,
    /// Whether it is not done on any of the days ahead.
    pub beyond: bool,
}

/// Whether the customer has to be asked before work goes on.
#[must_use]
pub fn must_be_asked(snap: &Snapshot<'_>, order: &repair::Order) -> bool {
    super::must_ask(order, &snap.rules())
}

/// How often, as one says it of a promise.
#[must_use]
pub fn kept(chance: f64) -> String {
    match (chance * 10.0).round() {
        tenths if tenths < 1.0 => words::hardly_ever_kept().to_owned(),
        tenths if tenths > 9.0 => words::nearly_always_kept().to_owned(),
        tenths => words::kept_times_in_ten(whole(tenths)),
    }
}

/// The same beside a drawing.
pub(super) fn short(chance: f64) -> String {
    match (chance * 10.0).round() {
        tenths if tenths < 1.0 => words::hardly_kept().to_owned(),
        tenths if tenths > 9.0 => words::nearly_sure().to_owned(),
        tenths => words::kept_in_ten(whole(tenths)),
    }
}

/// A number without what is after its point.
fn whole(number: f64) -> String {
    format!("{number:.0}")
}

/// What a plan comes to.
pub fn planned(days: &Days) -> PlannedView {
    let mut promises: Vec<PromiseView> = days
        .plan
        .iter()
        .flat_map(|plan| {
            let all = plan.promises.iter();
            all.map(|promise| promise_view(plan, promise))
        })
        .collect();
    promises.sort_by(|a, b| {
        let first = |one: &PromiseView| (!one.slips, one.promised.is_none());
        first(a).cmp(&first(b)).then(a.number.cmp(&b.number))
    });
    PlannedView {
        missing: days.missing.clone(),
        promises,
        not_planned: days.not_planned.iter().map(left_out).collect(),
    }
}

fn left_out(one: &NotPlanned) -> NotPlannedView {
    let page = match one.page.strip_prefix('#') {
        Some(_) => format!("/o/{}{}", one.number, one.page),
        None if one.page.is_empty() => format!("/o/{}", one.number),
        None => format!("/o/{}/{}", one.number, one.page),
    };
    NotPlannedView {
        number: one.number,
        vehicle: one.vehicle.clone(),
        why: one.why.clone(),
        page,
    }
}

fn promise_view(plan: &DayPlan, promise: &stalls::Promise) -> PromiseView {
    let order = &plan.orders[promise.order];
    let slips = promise.chance.is_some_and(|chance| chance < SLIPS);
    let keep = plan.to_keep.iter().find(|keep| keep.order == promise.order);
    PromiseView {
        number: order.number,
        vehicle: order.vehicle.clone(),
        customer: order.customer.clone(),
        promised: promise.promised.map(|minute| plan.calendar.say(minute)),
        chance: promise.chance,
        often: promise.chance.map(kept),
        slips,
        say: plan.calendar.say(promise.say),
        minutes_from: order.source.name(),
        why: slips.then(|| plan.why(promise.order)).flatten(),
        to_keep: keep.map(|keep| keep.changes.clone()).unwrap_or_default(),
        then: keep
            .filter(|keep| !keep.changes.is_empty())
            .map(|keep| kept(keep.chance.1)),
        costs: keep.map(costs).unwrap_or_default(),
        beyond: plan.plan.beyond.contains(&promise.order),
    }
}

fn costs(keep: &ToKeep) -> Vec<String> {
    let tenths = |chance: f64| whole((chance * 10.0).round());
    let cost =
        |(name, was, is): &(String, f64, f64)| words::kept_instead(name, tenths(*is), tenths(*was));
    keep.others.iter().map(cost).collect()
}

/// An offer in one line: `say 16:30: kept 8 times in 10`.
#[must_use]
pub fn offer(offer: &Offer) -> String {
    words::say_then(&offer.say, kept(offer.chance))
}

/// When an order is worked on today by the plan, in hours since midnight.
pub(super) fn hours_of_order(plan: &DayPlan, number: u64) -> Vec<(f64, f64)> {
    let Some(at) = plan.place_of(number) else {
        return Vec::new();
    };
    let own = plan.plan.placed.iter().filter(|one| one.order == at);
    own.filter(|one| !one.people.is_empty())
        .flat_map(|one| hours(plan, one))
        .collect()
}

/// When somebody works today by the plan, and on what.
pub(super) fn hours_of_person(
    plan: &DayPlan,
    person: &repair::PersonId,
) -> Vec<(f64, f64, String)> {
    let Some(at) = plan.people.iter().position(|one| one == person) else {
        return Vec::new();
    };
    let own = plan
        .plan
        .placed
        .iter()
        .filter(|one| one.people.contains(&at));
    own.flat_map(|one| {
        let vehicle = &plan.orders[one.order].vehicle;
        hours(plan, one)
            .into_iter()
            .map(|(from, to)| (from, to, vehicle.clone()))
    })
    .collect()
}

fn hours(plan: &DayPlan, placed: &stalls::Placed) -> Vec<(f64, f64)> {
    let spans = plan.at_work(placed).into_iter();
    spans
        .map(|(from, to)| (plan.calendar.hour(from), plan.calendar.hour(to)))
        .filter(|(from, _)| *from < 24.0)
        .map(|(from, to)| (from, to.min(24.0)))
        .collect()
}

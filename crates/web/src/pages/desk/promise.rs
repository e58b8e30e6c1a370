//! When an order is ready: what can be said on the phone and how sure it is, and what has to be
//! told so that it can be planned.

use super::fit_in::{felt, minutes, work_line};
use crate::State;
use crate::pages::{Shown, Visit, no_order, order_of, show};
use crate::phrases::desk as say;
use crate::tap::{Look, button, chips, field, figure, order_fact, required, when};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::Trouble;
use shop::floor::{DayPlan, Days, Unchecked, WhatIf, days, roll_out, waits_apart};
use shop::record::v1::codes::{StallNeededForm, SystemForm};
use shop::repair::{
    CommandId, Order, StallNeeded, System, answer_due_told, work_left, work_left_told,
};
use shop::view::{OrderView, kept, must_be_asked};
use std::collections::BTreeSet;

pub async fn promise(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(asked): Query<Asked>,
) -> Response {
    show(state, headers, move |visit| {
        let view = order_of(visit, &number)?;
        let world = visit.snap.world();
        let id = world
            .order_numbered(view.number)?
            .ok_or_else(|| no_order(&number))?;
        let order = world.order(&id)?;
        let days = days(visit.snap)?;
        Ok(Shown::of(
            &view,
            say::when_it_is_ready(),
            html! {
                h1 { (say::when_ready()) }
                div class="columns" {
                    div {
                        @match days.plan.as_deref().filter(|plan| plan.place_of(view.number).is_some()) {
                            Some(plan) => { (offers(&view, plan)) (laid(&view, plan)) (unchecked(&view, plan)) (button_up(visit, &view, plan, &asked)?) },
                            None => (unknown(&view, &days)),
                        }
                        (another(&view))
                    }
                    div {
                        (left(visit, &view, &order))
                        @if must_be_asked(visit.snap, &order) { (answer(&view, &order)) }
                    }
                }
            },
        ))
    })
    .await
}

/// Times that could be promised, each a tap; the one that is kept eight times in ten is the large
/// one.
fn offers(view: &OrderView, plan: &DayPlan) -> Markup {
    let fact = |at: &str| order_fact(&view.order, json!({ "promised": { "at": at } }));
    let offers = plan.offers(view.number);
    let usual = offers.iter().position(|offer| offer.chance >= 0.8);
    let now = plan.promise_of(view.number);
    html! {
        @if let Some(promise) = now && let (Some(at), Some(chance)) = (promise.promised, promise.chance) {
            div class="headline" {
                span class="fact" { (plan.calendar.say(at)) }
                span class="what" {
                    span class="line" { (say::was_promised()) }
                    span class={ "line " @if chance < shop::floor::SLIPS { "no" } @else { "soft" } } { (kept(chance)) }
                }
            }
        }
        form { div class="presses" {
            @for (nth, offer) in offers.iter().enumerate() {
                @let look = if Some(nth) == usual { Look::Confirm } else { Look::Plain };
                (button(look, &say::say_time(&offer.say), &kept(offer.chance), &[fact(&offer.at.to_string())], None))
            }
        } }
    }
}

/// What is planned of it.
fn laid(view: &OrderView, plan: &DayPlan) -> Markup {
    let at = plan.place_of(view.number);
    let floor = &plan.plan.floor;
    html! {
        h2 { (say::how_planned()) }
        @for one in plan.plan.placed.iter().filter(|one| Some(one.order) == at) {
            @let who = one.people.iter().map(|person| floor.people[*person].name.as_str()).collect::<Vec<_>>();
            div class="row" {
                span class="what" {
                    @let what = &floor.orders[one.order].phases[one.phase].what;
                    @if who.is_empty() { span class="line" { (say::waits_for()) span class="strong" { (what) } } }
                    @else { span class="strong line" { (shop::say::capital(what)) } }
                    span class="soft line" {
                        (who.join(", "))
                        @if let Some(stall) = one.stall { @if !who.is_empty() { ", " } (floor.stalls[stall].name) }
                    }
                }
                span class="number" { (say::from_to(plan.calendar.say(one.from), plan.calendar.say(one.to))) }
            }
        }
        @if let Some(order) = at { @for stage in floor.too_long(&floor.orders[order]) { p class="wait gap" { (stage) } } }
        @if let Some(order) = at && let Some(why) = plan.why(order) { p class="soft gap" { (shop::say::capital(&why)) } }
    }
}

/// What of the vehicle is not checked on a lift, since nobody told it.
fn unchecked(view: &OrderView, plan: &DayPlan) -> Markup {
    let at = plan.place_of(view.number);
    let missing = at.map_or(&[][..], |at| plan.orders[at].unchecked.as_slice());
    let vehicle = view.row.vehicle_id.as_deref().unwrap_or_default();
    html! {
        @for one in missing {
            a class="row" href=(format!("/v/{vehicle}#weight")) {
                span class="what wait" { @match one { Unchecked::Weight => (say::weight_not_checked()), Unchecked::Height => (say::height_not_checked()) } }
                span class="soft" { (say::tell_it()) }
            }
        }
    }
}

/// What is asked about buttoning a vehicle up: minutes to do it, and to be as far again.
#[derive(Debug, Default, Deserialize)]
pub struct Asked {
    #[serde(default)]
    up: String,
    #[serde(default)]
    again: String,
}

/// Button it up and roll it out, or keep the stall: asked where it waits apart, and answered by
/// what each does to the others.
fn button_up(
    visit: &Visit<'_>,
    view: &OrderView,
    plan: &DayPlan,
    asked: &Asked,
) -> Result<Markup, Trouble> {
    if !waits_apart(plan, view.number) {
        return Ok(html! {});
    }
    let found = match (minutes(&asked.up), minutes(&asked.again)) {
        (Ok(Some(up)), Ok(Some(again))) => Some(roll_out(visit.snap, view.number, up, again)?),
        (Err(()), _) | (_, Err(())) => Some(Err(vec![say::minutes_are_numbers().to_owned()])),
        _ => None,
    };
    let place = view.row.place.as_deref().unwrap_or_default();
    Ok(html! {
        h2 id="button-up" { (say::button_up_or_keep()) }
        form method="get" action=(format!("/o/{}/promise#button-up", view.number)) {
            (required("up", say::minutes_to_button_up(), say::one_or_three(), &asked.up))
            (required("again", say::minutes_to_open_again(), say::one_or_three(), &asked.again))
            div class="presses" { button class="press" type="submit" { (say::what_does_it_do()) } }
        }
        @match found {
            None => {},
            Some(Err(why)) => @for why in &why { p class="no gap" { (shop::say::capital(why)) } },
            Some(Ok(found)) => {
                (rolled_out(&found, place))
                a class="row" href=(format!("/o/{}#place", view.number)) { span class="what strong" { (say::where_who_when()) } }
            },
        }
    })
}

/// What buttoning it up does, beside keeping it where it stands.
fn rolled_out(found: &WhatIf, place: &str) -> Markup {
    let fewer = found.broken.0 - found.broken.1;
    html! {
        div class="answer" role="status" {
            @if fewer >= WORTH { p class="yes gap beside" { (say::button_it_up(place)) } }
            @else if fewer <= -WORTH { p class="gap beside" { (say::keep_it_there()) } }
            @else { p class="gap beside" { (say::keeps_no_promise_more()) } }
            @if let Some(was) = &found.own.was {
                div class="row" {
                    span class="what" { (say::this_one_ready()) }
                    span class="number" { (say::instead_of(&found.own.say, was)) }
                }
            }
            (felt(found))
            @for line in &found.own.work { (work_line(line)) }
        }
    }
}

/// Promises broken more or fewer on average from which on one way is better.
const WORTH: f64 = 0.1;

/// Why nothing can be said.
fn unknown(view: &OrderView, days: &Days) -> Markup {
    let why = days
        .not_planned
        .iter()
        .find(|one| one.number == view.number);
    html! {
        @for missing in &days.missing {
            a class="row" href="/shop#hours" { span class="what wait" { (say::nothing_planned(missing)) } span class="soft" { (say::tell_it()) } }
        }
        @if let Some(one) = why { p class="wait gap" { (say::not_planned_why(&one.why)) } }
        @else if days.missing.is_empty() { p class="gap" { (say::nothing_left_to_plan()) } }
    }
}

fn another(view: &OrderView) -> Markup {
    let fact = order_fact(
        &view.order,
        json!({ "promised": { "at": { "$time": "promised" } } }),
    );
    html! {
        details id="another" {
            summary class="row" { span class="what strong" { (say::another_time()) } @if let Some(hour) = &view.row.promised { span class="soft" { (say::promised_at(hour)) } } }
            form {
                label class="field" { span { (say::promised_for()) } input type="datetime-local" name="promised" required; }
                div class="presses" { (button(Look::Plain, say::promise_it(), "", &[fact], None)) }
            }
        }
    }
}

/// How many hold and hand, as it is chosen.
const HELPERS: [&str; 3] = ["1", "2", "3"];

fn seen(commands: &[CommandId]) -> Vec<&str> {
    commands.iter().map(CommandId::as_str).collect()
}

/// How long the work that is left takes, by whoever looked at it.
fn left(visit: &Visit<'_>, view: &OrderView, order: &Order) -> Markup {
    let now = work_left(order);
    let told = work_left_told(order);
    let fact = order_fact(
        &view.order,
        json!({ "work-left": {
            "minutes": field("minutes"), "least": field("least"), "most": field("most"),
            "skill": field("skill"), "stall": field("stall"), "after": seen(&told),
            "helpers": { "$when": "helpers", "is": HELPERS, "then": { "$number": "helpers" } },
            "road": when("road", field("road")),
        } }),
    );
    let known: BTreeSet<System> = {
        let shop = &visit.snap.world().shop;
        let people = shop.people();
        let skills = people.keys().flat_map(|person| shop.works_on(person));
        skills
            .copied()
            .chain(now.and_then(|now| now.skill))
            .collect()
    };
    let mut skills = vec![("", say::anybody())];
    skills.extend(
        known
            .iter()
            .map(|system| (SystemForm::word(*system), system_name(*system))),
    );
    let skill = now.and_then(|now| now.skill).map_or("", SystemForm::word);
    let stall = StallNeededForm::word(now.map_or(StallNeeded::Any, |now| now.stall));
    let helpers = now.map_or(0, |now| now.helpers).to_string();
    let road = now.and_then(|now| now.road);
    let road = road.map_or_else(String::new, |road| road.normalize().to_string());
    let likely = now.map_or(String::new(), |now| now.minutes.normalize().to_string());
    let (least, most) = now.and_then(|now| now.range).map_or_else(
        || (String::new(), String::new()),
        |(least, most)| (least.normalize().to_string(), most.normalize().to_string()),
    );
    html! {
        h2 { (say::work_left()) }
        form {
            (figure("minutes", say::minutes_likely(), say::counts_down(), &likely, true))
            (figure("least", say::at_least(), say::leave_both_empty(), &least, false))
            (figure("most", say::at_most(), "", &most, false))
            @if skills.len() > 1 { (chips("skill", say::who_can_do_it(), &skills, skill)) }
            @else { input type="hidden" name="skill" value=""; }
            (chips("stall", say::where_done(), &[("any", say::any_stall()), ("lift", say::on_a_lift()), ("flat", say::flat()), ("none", say::no_stall())], stall))
            (chips("helpers", say::who_helps(), &[("0", say::nobody_helps()), ("1", say::one_helps()), ("2", say::two_help()), ("3", say::three_help())], &helpers))
            (figure("road", say::road_test_minutes(), say::empty_if_none(), &road, false))
            div class="presses" { (button(Look::Plain, say::save(), "", &[fact], None)) }
        }
    }
}

/// A system of the vehicle, in words.
pub fn system_name(system: System) -> &'static str {
    match system {
        System::Brakes => say::brakes(),
        System::Steering => say::steering(),
        System::Wheels => say::wheels(),
        System::Suspension => say::suspension(),
        System::Fuel => say::fuel(),
        System::Restraints => say::restraints(),
        System::DriveBelt => say::drive_belt(),
        System::HighVoltage => say::high_voltage(),
        System::Cooling => say::cooling(),
        System::Oil => say::oil(),
        System::Engine => say::engine(),
        System::Transmission => say::transmission(),
        System::Intake => say::intake(),
        System::Exhaust => say::exhaust(),
        System::Battery => say::battery(),
        System::Electrical => say::electrical(),
        System::Climate => say::climate(),
        System::Body => say::body(),
        System::Unknown => say::unknown_system(),
    }
}

/// When the customer said that they will answer.
fn answer(view: &OrderView, order: &Order) -> Markup {
    let told = answer_due_told(order);
    let fact: Value = order_fact(
        &view.order,
        json!({ "answer-due": { "at": { "$time": "answer" }, "after": seen(&told) } }),
    );
    html! {
        h2 { (say::waits_for_their_yes()) }
        form {
            label class="field" { span { (say::answer_by()) } input type="datetime-local" name="answer" required; }
            div class="presses" { (button(Look::Plain, say::keep_it(), "", &[fact], None)) }
        }
    }
}

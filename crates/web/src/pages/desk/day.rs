//! The day: what stands where and what holds it, whom to ring, what is awaited, what goes home.

use super::calls::to_ring;
use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, count, show, stuck};
use crate::tap::{Look, link};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use drawing::{Floor, FloorPerson, FloorPlace, FloorVehicle, Ink, VehicleShape, floor, svg};
use maud::{Markup, PreEscaped, html};
use shop::view::{
    CallKind, CallView, DayOrder, DayPlace, DayView, HomeView, OrderRow, PlannedView, PromiseView,
    day as day_view,
};

/// What the drawing has room for at the desk.
const DESK: f64 = 880.0;
/// The same on a wide screen: there the hours are longer.
const WIDE: f64 = 1360.0;
/// How many of a list stand in the margin.
const MOST: usize = 4;

pub async fn day(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    let waiting = state.service.waiting();
    show(state, headers, move |visit| {
        let day = day_view(visit.snap)?;
        let unread = shop::view::stuck(visit.snap, &waiting)?;
        Ok(Shown::new(
            "Floor",
            html! {
                h1 class="spread" {
                    span { (day.date) }
                    span class="on-desk both" {
                        a class="press" href="/sale" { "Sale" }
                        a class="press confirm" href="/new" data-key="i" { span { "Check " u { "i" } "n a vehicle" } }
                    }
                }
                (stuck::list(&unread))
                div class="day" {
                    div class="on-desk" {
                        div class="not-wide" { (PreEscaped(svg(&floor(&drawn(&day), DESK)))) }
                        div class="wide" { (PreEscaped(svg(&floor(&drawn(&day), WIDE)))) }
                        (stalls_by_key(&day))
                        div class="day-promises" { (promises(&day.planned)) (left_out(&day.planned)) }
                    }
                    div class="on-phone" { @for place in &day.places { (place_row(place)) } }
                    div class="margin on-desk" { (ring(&day.ring)) (awaited(&day.awaited)) (goes_home(&day.home)) }
                }
                div class="on-phone" { (promises(&day.planned)) (left_out(&day.planned)) }
                div class="presses two low on-phone" {
                    (link(Look::Confirm, "Check in a vehicle", "", "/new"))
                    (link(Look::Plain, "Calls and waits", &(day.ring.len() + day.awaited.len()).to_string(), "/calls"))
                }
                div class="presses even on-phone" {
                    (link(Look::Plain, "Find", "", "/find"))
                    (link(Look::Plain, "The shop", "", "/shop"))
                    (link(Look::Plain, "Sale", "over the counter", "/sale"))
                }
                div class="presses on-phone" {
                    (link(Look::Plain, "Work it out", "threads, coolant, fluids, belt, road test", "/calc"))
                }
            },
        )
        .of_part(Part::Day))
    })
    .await
}

/// What a digit opens: the drawing's own links carry no keys.
fn stalls_by_key(day: &DayView) -> Markup {
    let stalls = day.places.iter().filter(|place| !place.yard);
    html! {
        @for place in stalls {
            @if let Some(order) = &place.order {
                a hidden data-stall=(place.name) href=(format!("/o/{}", order.row.number)) { (place.called) }
            }
        }
    }
}

/// The day as it is drawn.
fn drawn(day: &DayView) -> Floor {
    Floor {
        places: day
            .places
            .iter()
            .map(|place| FloorPlace {
                name: place.name.clone(),
                yard: place.yard,
                lift: place.lift,
                vehicle: place.order.as_ref().map(vehicle),
            })
            .collect(),
        people: day
            .people
            .iter()
            .map(|person| FloorPerson {
                name: person.name.clone(),
                at: person.at.clone(),
                worked: person.worked.clone(),
                planned: person.planned.clone(),
            })
            .collect(),
        hours: day.hours,
        now: Some(day.now),
    }
}

fn vehicle(order: &DayOrder) -> FloorVehicle {
    let row = &order.row;
    let (word, ink) = word(&row.word);
    let promised = order.promised.zip(row.promised.clone());
    FloorVehicle {
        shape: shape(&row.vehicle),
        name: row.vehicle.clone(),
        second: format!("{} · {}", row.number, row.customer),
        word: word.to_owned(),
        because: order.because.clone(),
        ink: Some(ink),
        rolls: row.can_roll,
        people: order.people.clone(),
        worked: order.worked.clone(),
        planned: order.planned.clone(),
        sure: order.often.clone().unwrap_or_default(),
        waits: order.waits.clone(),
        promised,
        slips: order.slips,
        link: format!("/o/{}", row.number),
    }
}

/// What it looks like from above, where its name says so.
fn shape(vehicle: &str) -> VehicleShape {
    let name = vehicle.to_lowercase();
    let says = |words: &[&str]| name.split_whitespace().any(|one| words.contains(&one));
    if says(&["pickup", "pick-up", "truck", "ute"]) {
        VehicleShape::Pickup
    } else if says(&["van", "transporter", "kombi"]) {
        VehicleShape::Van
    } else if says(&["estate", "wagon", "touring", "suv"]) {
        VehicleShape::Estate
    } else {
        VehicleShape::Hatch
    }
}

/// How it stands, in the word that is said across the shop, and what that word means.
fn word(word: &str) -> (&'static str, Ink) {
    match word {
        "consent" => ("Waits for a yes", Ink::Wait),
        "part" => ("Waits for a part", Ink::Wait),
        "machine work" => ("Machine work", Ink::Wait),
        "snag" => ("Snag", Ink::Stop),
        "left, look" => ("Left, look", Ink::Stop),
        "ready" => ("Ready", Ink::Yes),
        "papers" => ("Papers", Ink::Ink),
        "test" => ("To be tested", Ink::Ink),
        _ => ("At work", Ink::Ink),
    }
}

/// The class that an ink has on a page.
fn ink_class(ink: Ink) -> &'static str {
    match ink {
        Ink::Wait => "wait",
        Ink::Stop => "no",
        Ink::Yes => "yes",
        _ => "strong",
    }
}

/// A place on the phone.
fn place_row(place: &DayPlace) -> Markup {
    match &place.order {
        Some(order) => order_row(&place.called, order),
        None => html! {
            div class="row" {
                span class="mark" {}
                span class="what" { span class="strong line" { "Free" } span class="soft line" { (place.called) } }
            }
        },
    }
}

/// One vehicle on the floor.
fn order_row(place: &str, order: &DayOrder) -> Markup {
    let row: &OrderRow = &order.row;
    let mark = if row.can_roll {
        "mark home"
    } else {
        "mark dashed"
    };
    let (word, ink) = word(&row.word);
    let class = ink_class(ink);
    html! {
        a class="row top" href=(format!("/o/{}", row.number)) {
            span class=(mark) {}
            span class="what" {
                span class="spread" {
                    span class="beside" { (row.vehicle) }
                    @if let Some(hour) = &row.promised { span class="beside number" { (hour) } }
                }
                span class="soft line short" { (place) @if let Some(who) = &row.who { " · " (first_name(who)) } " · " (row.complaint) }
                @if let Some(stopped) = &row.stopped { span class="line" { "Stopped here: " (stopped) } }
                @if let Some(sure) = &order.often { span class={ "line " @if order.slips { "no" } @else { "soft" } } { "The time is " (sure) } }
                span class="spread" {
                    span class=(class) { (word) }
                    span class="soft number" {
                        (row.open + row.inside) " open"
                        @if !row.can_roll { ", can't roll" }
                    }
                }
            }
        }
    }
}

/// The name a person is called by across the shop.
fn first_name(name: &str) -> &str {
    name.split_whitespace().next().unwrap_or(name)
}

fn ring(calls: &[CallView]) -> Markup {
    html! {
        section {
            h2 class="spread" { span { u { "R" } "ing now" } a class="soft" href="/calls" data-key="r" { (calls.len()) } }
            @if calls.is_empty() { p class="soft gap" { "No calls to make." } }
            @for call in calls.iter().take(2) { (to_ring(call)) }
            (more(calls.len().saturating_sub(2), "/calls"))
        }
    }
}

/// Each promise with how sure it is; under one that slips what keeps it, and what to say.
fn promises(planned: &PlannedView) -> Markup {
    let promised: Vec<&PromiseView> = planned
        .promises
        .iter()
        .filter(|one| one.promised.is_some() || one.beyond)
        .collect();
    let open = planned.promises.len() - promised.len();
    html! {
        section {
            h2 { "Promises" }
            @if let Some(missing) = planned.missing.first() {
                a class="row" href="/shop#hours" {
                    span class="what wait" { "Nothing is planned: " (missing) }
                    span class="soft" { "tell it" }
                }
            }
            @if promised.is_empty() && planned.missing.is_empty() { p class="soft gap" { "No time is promised for what is planned." } }
            @for one in promised { (promise(one)) }
            @if open > 0 { p class="soft gap" { (count(open, "order is", "orders are")) " planned with no time promised." } }
        }
    }
}

fn promise(one: &PromiseView) -> Markup {
    let page = format!("/o/{}/promise", one.number);
    html! {
        a class="row top" href=(page) {
            span class="what" {
                span class="spread" {
                    span { (one.number) " " span class="strong" { (one.vehicle) } " " span class="soft" { (one.customer) } }
                    @if let Some(promised) = &one.promised { span class="number strong" { (promised) } }
                }
                @if let Some(often) = &one.often {
                    span class="spread" {
                        span class={ @if one.slips { "no" } @else { "soft" } } { (shop::say::capital(often)) }
                        @if one.slips { span class="soft" { "say " (one.say) } }
                    }
                }
                @if one.beyond { span class="no line" { "Not done on any of the days ahead" } }
                @if let Some(why) = &one.why { span class="soft line" { (shop::say::capital(why)) } }
                @if let Some(then) = &one.then { span class="line" { "To keep it (" (then) "):" } }
                @for change in &one.to_keep { span class="line" { (change) } }
                @for cost in &one.costs { span class="wait line" { "It costs " (cost) } }
                @if one.slips && one.to_keep.is_empty() { span class="soft line" { "Nothing on the floor keeps it." } }
            }
        }
    }
}

/// Orders that are left out of the plan, each with why.
fn left_out(planned: &PlannedView) -> Markup {
    html! {
        @if !planned.not_planned.is_empty() {
            section {
                h2 class="spread" { span { "Not planned" } span class="soft" { (planned.not_planned.len()) } }
                @for one in &planned.not_planned {
                    a class="row" href=(one.page) {
                        span class="what" { (one.number) " " span class="strong" { (one.vehicle) } span class="soft line" { (shop::say::capital(&one.why)) } }
                    }
                }
            }
        }
    }
}

fn awaited(calls: &[CallView]) -> Markup {
    html! {
        section {
            h2 class="spread" { span { "Waiting on" } span class="soft" { (calls.len()) } }
            @if calls.is_empty() { p class="soft gap" { "Nothing is on its way or away." } }
            @for call in calls.iter().take(MOST) {
                a class="row" href=(super::calls::page(call)) {
                    span class={ "what" @if matches!(call.kind, CallKind::Late | CallKind::SaidNo) { " no" } } { (call.what) }
                    span class="soft" { (call.number) }
                }
            }
            (more(calls.len().saturating_sub(MOST), "/calls"))
        }
    }
}

fn goes_home(home: &[HomeView]) -> Markup {
    html! {
        section {
            h2 class="spread" { span { "Goes home today" } span class="soft" { "to pay" } }
            @if home.is_empty() { p class="soft gap" { "Nothing is promised for today." } }
            @for one in home.iter().take(MOST) {
                a class="row" href=(format!("/o/{}", one.number)) {
                    span class="what" {
                        @if let Some(hour) = &one.hour { span class="strong" { (hour) } " " }
                        (one.vehicle) " " span class="soft" { (one.customer) }
                        @if one.ready { span class="yes" { " ready" } }
                    }
                    span class="number" { (one.to_pay.as_deref().unwrap_or("not priced")) }
                }
            }
            (more(home.len().saturating_sub(MOST), "/find"))
        }
    }
}

fn more(count: usize, to: &str) -> Markup {
    html! { @if count > 0 { a class="row" href=(to) { span class="what soft" { (count) " more" } } } }
}

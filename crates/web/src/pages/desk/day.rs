//! The day: what stands where and what holds it, whom to ring, what is awaited, what goes home.

use super::calls::to_ring;
use super::desk_side::with_key;
use super::week::booked;
use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, show, stuck};
use crate::phrases::desk as say;
use crate::tap::{Look, link};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use drawing::{Floor, FloorPerson, FloorPlace, FloorVehicle, Ink, VehicleShape, floor, svg};
use maud::{Markup, PreEscaped, html};
use shop::view::{
    CallKind, CallView, DayOrder, DayPlace, DayView, ExpectedView, HomeView, MineView, OrderRow,
    PlannedView, PromiseView, day as day_view,
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
            say::floor(),
            html! {
                h1 class="spread" {
                    span { (day.date) }
                    span class="on-desk both" {
                        a class="press" href="/sale" { (say::sale()) }
                        a class="press" href="/fit-in" { (say::fit_one_in()) }
                        a class="press confirm" href="/new" data-key=(say::check_in_key()) { span { (with_key(say::check_in_a_vehicle(), say::check_in_key())) } }
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
                    div class="on-phone" { (mine(&day.mine)) @for place in &day.places { (place_row(place)) } }
                    div class="margin on-desk" { (ring(&day.ring)) (to_come(&day.expected)) (awaited(&day.awaited)) (goes_home(&day.home)) }
                }
                div class="on-phone" { (to_come(&day.expected)) (promises(&day.planned)) (left_out(&day.planned)) }
                div class="presses two low on-phone" {
                    (link(Look::Confirm, say::check_in_a_vehicle(), "", "/new"))
                    (link(Look::Plain, say::calls_and_waits(), &(day.ring.len() + day.awaited.len()).to_string(), "/calls"))
                }
                div class="presses even on-phone" {
                    (link(Look::Plain, say::find(), "", "/find"))
                    (link(Look::Plain, say::the_shop(), "", "/shop"))
                    (link(Look::Plain, say::sale(), say::over_the_counter(), "/sale"))
                    (link(Look::Plain, say::fit_one_in(), "", "/fit-in"))
                }
                div class="presses on-phone" {
                    (link(Look::Plain, say::work_it_out_bench(), say::what_is_worked_out(), "/calc"))
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
        "comes" => (say::is_to_come(), Ink::Wait),
        "consent" => (say::waits_for_a_yes(), Ink::Wait),
        "part" => (say::waits_for_a_part(), Ink::Wait),
        "machine work" => (say::machine_work(), Ink::Wait),
        "snag" => (say::snag(), Ink::Stop),
        "left, look" => (say::left_look(), Ink::Stop),
        "ready" => (say::ready(), Ink::Yes),
        "papers" => (say::papers(), Ink::Ink),
        "test" => (say::to_be_tested(), Ink::Ink),
        _ => (say::at_work(), Ink::Ink),
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
                span class="what" { span class="strong line" { (say::free()) } span class="soft line" { (place.called) } }
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
                @if let Some(stopped) = &row.stopped { span class="line" { (say::stopped_here_at(stopped)) } }
                @if let Some(sure) = &order.often { span class={ "line " @if order.slips { "no" } @else { "soft" } } { (say::time_is(sure)) } }
                span class="spread" {
                    span class=(class) { (word) }
                    span class="soft number" {
                        (say::open_count(row.open + row.inside))
                        @if !row.can_roll { (say::cant_roll()) }
                    }
                }
            }
        }
    }
}

/// What whoever looks is to do next, and where the vehicle goes for it.
fn mine(mine: &[MineView]) -> Markup {
    html! {
        @if !mine.is_empty() {
            section {
                h2 { (say::your_day()) }
                @for one in mine {
                    a class="row top" href=(format!("/o/{}", one.number)) {
                        span class="what" {
                            span class="spread" {
                                span class="beside" { (one.vehicle) }
                                span class="beside number" { (one.from) }
                            }
                            span class="line" { (shop::say::capital(&one.what)) " " span class="soft" { @if one.running { (say::at_it_until(&one.to)) } @else { (say::until(&one.to)) } } }
                            @if let Some(stall) = &one.stall {
                                @match &one.stands {
                                    Some(place) => span class="strong line" { (say::bring_it(stall, place)) },
                                    None => span class="soft line" { (stall) },
                                }
                            }
                        }
                    }
                }
            }
        }
    }
}

/// Vehicles that are to come.
fn to_come(expected: &[ExpectedView]) -> Markup {
    html! {
        section {
            h2 class="spread" { span { (say::to_come()) } a class="soft on-desk" href="/week" { (say::the_week()) } }
            @if expected.is_empty() { p class="soft gap" { (say::nothing_booked()) } }
            @for one in expected.iter().take(MOST) { (booked(one)) }
            (more(expected.len().saturating_sub(MOST), "/week"))
            a class="row on-phone" href="/week" { span class="what" { (say::the_week()) } }
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
            h2 class="spread" { span { (with_key(say::ring_now(), say::ring_key())) } a class="soft" href="/calls" data-key=(say::ring_key()) { (calls.len()) } }
            @if calls.is_empty() { p class="soft gap" { (say::no_calls()) } }
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
            h2 { (say::promises()) }
            @if let Some(missing) = planned.missing.first() {
                a class="row" href="/shop#hours" {
                    span class="what wait" { (say::nothing_planned(missing)) }
                    span class="soft" { (say::tell_it()) }
                }
            }
            @if promised.is_empty() && planned.missing.is_empty() { p class="soft gap" { (say::no_time_promised()) } }
            @for one in promised { (promise(one)) }
            @if open > 0 { p class="soft gap" { (say::planned_unpromised(open)) } }
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
                        @if one.slips { span class="soft" { (say::say_hour(&one.say)) } }
                    }
                }
                @if one.beyond { span class="no line" { (say::beyond_the_days()) } }
                @if let Some(why) = &one.why { span class="soft line" { (shop::say::capital(why)) } }
                @if let Some(then) = &one.then { span class="line" { (say::to_keep_it(then)) } }
                @for change in &one.to_keep { span class="line" { (change) } }
                @for cost in &one.costs { span class="wait line" { (say::it_costs(cost)) } }
                @if one.slips && one.to_keep.is_empty() { span class="soft line" { (say::nothing_keeps_it()) } }
            }
        }
    }
}

/// Orders that are left out of the plan, each with why.
fn left_out(planned: &PlannedView) -> Markup {
    html! {
        @if !planned.not_planned.is_empty() {
            section {
                h2 class="spread" { span { (say::not_planned()) } span class="soft" { (planned.not_planned.len()) } }
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
            h2 class="spread" { span { (say::waiting_on()) } span class="soft" { (calls.len()) } }
            @if calls.is_empty() { p class="soft gap" { (say::nothing_on_its_way()) } }
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
            h2 class="spread" { span { (say::goes_home_today()) } span class="soft" { (say::to_pay()) } }
            @if home.is_empty() { p class="soft gap" { (say::nothing_promised_today()) } }
            @for one in home.iter().take(MOST) {
                a class="row" href=(format!("/o/{}", one.number)) {
                    span class="what" {
                        @if let Some(hour) = &one.hour { span class="strong" { (hour) } " " }
                        (one.vehicle) " " span class="soft" { (one.customer) }
                        @if one.ready { span class="yes" { (say::is_ready()) } }
                    }
                    span class="number" { @match &one.to_pay { Some(sum) => (sum), None => (say::not_priced()) } }
                }
            }
            (more(home.len().saturating_sub(MOST), "/find"))
        }
    }
}

fn more(count: usize, to: &str) -> Markup {
    html! { @if count > 0 { a class="row" href=(to) { span class="what soft" { (say::count_more(count)) } } } }
}

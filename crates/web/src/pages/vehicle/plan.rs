//! The plan of an order: what comes off and how it goes back, proven cheapest, with the
//! other ways beside it.

pub mod drawing;
pub mod price;
mod query;
mod rows;
mod targets;
pub mod two;

use crate::State;
use crate::door::blocking;
use crate::pages::{Shown, Visit, count, no_order, order_of, show};
use crate::tap::{Look, button, link, order_fact, order_request};
use axum::extract::{self, Path, RawQuery};
use axum::http::HeaderMap;
use axum::http::header::CONTENT_TYPE;
use axum::response::{IntoResponse, Response};
use maud::{Markup, PreEscaped, html};
use query::{Query, address};
use rows::{Here, dearer, differs, stages};
use serde_json::{Value, json};
use shop::map::Map;
use shop::planning::{self, Asked, OrderMap, Shown as Plan, adopt, map_of_order, on_map_of};
use shop::repair::{AimIs, ItemId, Kind, MapId};
use shop::view::OrderView;
use shop::{ShelvedMap, Trouble};
use targets::targets;

pub async fn plan(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    RawQuery(query): RawQuery,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let query = Query::read(&query.unwrap_or_default());
        let content = match picked(visit, &order, &query)? {
            Some((map, version)) => {
                let on = found_by(visit, &order, &map, version, &query)?;
                by_map(visit, &order, &on, &query)?
            }
            None => pick_map(visit, &order)?,
        };
        Ok(Shown::of(&order, "Plan", content))
    })
    .await
}

/// Where the things of an order stand, as text for `buttonup plan --state`.
pub async fn state(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    let caller = crate::allowed::caller_of(&state, &headers);
    let text = blocking(move || {
        let number = number.parse().map_err(|_| no_order(&number))?;
        state.service.look(&caller, |snap| {
            let (map, version) = map_of_order(snap, number)?
                .ok_or_else(|| Trouble::not_found(format!("order {number} works by no map yet")))?;
            let on = on_map_of(snap, number, &map, Some(version), None)?;
            Ok(on.state_text())
        })
    });
    match text.await {
        Ok(text) => ([(CONTENT_TYPE, "text/plain; charset=utf-8")], text).into_response(),
        Err(trouble) => crate::door::answer(&trouble),
    }
}

/// The order through a map, with what the address asks for.
pub fn found_by(
    visit: &Visit<'_>,
    order: &OrderView,
    map: &MapId,
    version: Option<u32>,
    query: &Query,
) -> Result<OrderMap, Trouble> {
    let kept = visit.snap.map(map, version)?;
    let asked = query.asked(kept.sound()?);
    on_map_of(visit.snap, order.number, map, version, asked)
}

/// The map asked for, else the one the order works by, else the only one of this vehicle.
pub fn picked(
    visit: &Visit<'_>,
    order: &OrderView,
    query: &Query,
) -> Result<Option<(MapId, Option<u32>)>, Trouble> {
    let adopted = map_of_order(visit.snap, order.number)?;
    if let Some(name) = &query.map {
        let map = MapId::new(name);
        let version = adopted.filter(|(adopted, _)| *adopted == map);
        let sound = || -> Result<Option<u32>, Trouble> {
            let shelf = visit.snap.maps()?;
            Ok(shelf
                .iter()
                .find(|one| one.newest.id == map)
                .and_then(|one| one.sound))
        };
        let version = match version {
            Some((_, version)) => Some(version),
            None => sound()?,
        };
        return Ok(Some((map, version)));
    }
    if let Some((map, version)) = adopted {
        return Ok(Some((map, Some(version))));
    }
    let shelf = visit.snap.maps()?;
    let mut suited = shelf.iter().filter(|one| is_for(one, order));
    Ok(match (suited.next(), suited.next()) {
        (Some(one), None) => one
            .sound
            .map(|version| (one.newest.id.clone(), Some(version))),
        _ => None,
    })
}

fn is_for(one: &ShelvedMap, order: &OrderView) -> bool {
    let vehicle = |map: &Map| {
        let (map, this) = (map.vehicle.to_lowercase(), order.row.vehicle.to_lowercase());
        !map.is_empty() && (this.contains(&map) || map.contains(&this))
    };
    one.newest.sound().is_ok_and(vehicle)
}

fn pick_map(visit: &Visit<'_>, order: &OrderView) -> Result<Markup, Trouble> {
    let mut shelf = visit.snap.maps()?;
    shelf.sort_by_key(|one| !is_for(one, order));
    let kind = shop::teaching::known_kind(visit.snap, &order.row.vehicle)?;
    Ok(html! {
        h1 { "By which map?" }
        p class="soft gap" { "A map says what is fitted to what on one kind of vehicle." }
        @if shelf.is_empty() { p class="gap" { "The shop has no maps yet." } }
        @if let Some(kind) = kind.filter(|_| !shelf.iter().any(|one| is_for(one, order))) {
            a class="row" href=(format!("/kinds/{kind}/map")) {
                span class="what" {
                    span class="strong line" { "Make one from our finished orders" }
                    span class="soft line" { "of such vehicles" }
                }
            }
        }
        @for one in shelf.iter().filter(|one| one.sound.is_some()) {
            a class="row" href=(address(order.number, one.newest.id.as_str(), &Asked::default())) {
                span class="what" {
                    span class="strong line" { (crate::pages::maps::list::title(one)) }
                    span class="soft line" { @if is_for(one, order) { "for this vehicle" } @else { "for another vehicle" } }
                }
            }
        }
        div class="presses low" { (link(Look::Plain, "All maps", "", "/maps")) }
    })
}

fn by_map(
    visit: &Visit<'_>,
    order: &OrderView,
    on: &OrderMap,
    query: &Query,
) -> Result<Markup, Trouble> {
    let here = Here {
        number: order.number,
        map: on.kept.id.as_str(),
        asked: &on.asked,
    };
    if !on.asks() || query.pick || !query.find.is_empty() {
        return Ok(targets(order, on, &here, &query.find));
    }
    let aim = aim_words(&on.asked);
    let found = match on.plan(visit.snap) {
        Ok(found) => found,
        Err(trouble) => {
            return Ok(html! {
                h1 { (aim) }
                p class="alarm" { (shop::say::capital(&trouble.what)) }
                p { (shop::say::capital(&trouble.mend)) }
                (asked_of_it(on, &here))
            });
        }
    };
    let nothing = found.off.is_empty() && found.back.is_empty();
    Ok(html! {
        h1 { (aim) }
        @if nothing { p class="beside gap" { "Nothing has to be moved for it." } }
        @else {
            (figures(&found))
            (likely(visit, order, &found))
            a class="row" href=(address(order.number, here.map, &on.asked).replacen("/plan", "/way", 1)) { span class="what strong" { "Show it as a drawing" } }
            a class="row" href=(address(order.number, here.map, &on.asked).replacen("/plan", "/two", 1)) { span class="what strong" { "Share it between two people" } }
        }
        (guesses(visit, on, &found)?)
        (the_same(order, on))
        @for line in on.unforeseen(visit.snap) { p class="wait gap" { (line) } }
        @if let Some(other) = on.straight(visit.snap, &found.plan) {
            div class="beside-plan" {
                p class="strong" { "With nothing ruled out: " (other.cost) " min, " (dearer(other.dearer_tenths)) }
                p { (differs(&other)) }
                a class="row" href=(here.with(|asked| *asked = asked.straight())) { span class="what strong" { "Show that one" } }
            }
        }
        div class="columns" {
            div {
                @if !found.off.is_empty() { h2 { "Comes off" } (stages(&here, "off", &found.off)) }
            }
            div {
                @if !found.back.is_empty() { h2 { "Goes back" } (stages(&here, "back", &found.back)) }
            }
            div { (consequences(&found)) }
            div { (asked_of_it(on, &here)) (others(visit, on, &here, &found)) }
        }
        (take_it(visit, order, on, &found))
    })
}

/// How many of the steps rest on a guess, and where it can be settled.
fn guesses(visit: &Visit<'_>, on: &OrderMap, found: &Plan) -> Result<Markup, Trouble> {
    let rows = || found.off.iter().flat_map(|stage| &stage.rows);
    let guessed = rows().filter(|row| !row.guessed.is_empty()).count();
    if guessed == 0 {
        return Ok(html! {});
    }
    let said = html! {
        span class="what wait" {
            (count(guessed, "step rests", "steps rest")) " on a guess, of " (count(rows().count(), "step off", "steps off"))
        }
    };
    Ok(
        match shop::teaching::known_kind(visit.snap, &on.map.vehicle)? {
            Some(kind) => {
                html! { a class="row" href=(format!("/kinds/{kind}")) { (said) span class="soft" { "settle it" } } }
            }
            None => html! { div class="row" { (said) } },
        },
    )
}

/// Things typed on this order before in the map's own words: one tap makes them one thing.
fn the_same(order: &OrderView, on: &OrderMap) -> Markup {
    let names: Vec<&str> = on.alike.iter().map(|(name, _)| name.as_str()).collect();
    let commands: Vec<Value> = on
        .alike
        .iter()
        .map(|(name, id)| {
            let same = json!({ "item": planning::in_order(name).as_str(), "also": id.as_str() });
            order_fact(&order.order, json!({ "same-as": same }))
        })
        .collect();
    html! {
        @if !names.is_empty() {
            p class="wait gap" { "On this order by the same name: " (names.join(", ")) }
            form { div class="presses" { (button(Look::Plain, "They are the same", "the plan then starts from where they stand", &commands, None)) } }
        }
    }
}

/// What is wanted, as a heading.
pub fn aim_words(asked: &Asked) -> String {
    match asked.aim {
        AimIs::Home => "Everything home again".to_owned(),
        AimIs::Roll => "Button it up so that it rolls".to_owned(),
        AimIs::Reach => {
            let names: Vec<&str> = asked.targets.iter().map(ItemId::as_str).collect();
            format!("Get at {}", names.join(", "))
        }
    }
}

fn figures(found: &Plan) -> Markup {
    let plan = &found.plan;
    html! {
        div class="headline" {
            span class="fact" { (plan.minutes) small { " min" } }
            span class="what" {
                span class="beside line" { (found.minutes_off) " out, " (found.minutes_back) " back" }
                span class="soft line" {
                    (count(plan.place_changes, "change of place", "changes of place")) ", "
                    (count(plan.tool_changes, "of tools", "of tools"))
                }
            }
        }
        @if plan.proven { p class="yes gap" { "Proven: nothing is cheaper. " (plan.cost) " min with all changes." } }
        @else { p class="wait gap" { "The best found, at most " (plan.gap()) " min above the cheapest. " (plan.cost) " min with all changes." } }
    }
}

/// How long it is likely to take here, beside what the book says.
fn likely(visit: &Visit<'_>, order: &OrderView, found: &Plan) -> Markup {
    let rows = found.off.iter().flat_map(|stage| &stage.rows);
    let fasteners: usize = rows
        .filter(|row| row.kind == Kind::Fasteners && row.size.is_some())
        .map(|row| row.at.len())
        .sum();
    let minutes = found.plan.minutes.to_string().parse().unwrap_or(0.0);
    let fasteners = u32::try_from(fasteners).unwrap_or(u32::MAX);
    match shop::odds_of::minutes_of(visit.snap, order.number, minutes, fasteners) {
        Ok((words, stages, working)) => html! {
            p class="gap" {
                span class="strong" { (shop::say::capital(&words)) }
                @if stages == 0 { ", while nobody has timed a stage here" }
            }
            details id="likely" class="working" {
                summary class="row" { span class="soft" { "How was this found?" } }
                (PreEscaped(working))
            }
        },
        // Without minutes there is nothing to be sure of.
        Err(_) => html! {},
    }
}

fn consequences(found: &Plan) -> Markup {
    let list = |title: &str, items: &[String]| {
        html! {
            @if !items.is_empty() {
                h2 { (title) }
                @for item in items { div class="row" { span class="what" { (item) } } }
            }
        }
    };
    html! {
        (list("Renewed", &found.renewed))
        (list("Drained", &found.lost))
        (list("Owed by it", &found.owed))
        (list("Stays until its snag is resolved", &found.stays))
        (list("No legal way back", &found.no_way_back))
    }
}

/// What is ruled out, called for and not to be had, each a tap to turn.
fn asked_of_it(on: &OrderMap, here: &Here<'_>) -> Markup {
    let spoken = |id: &shop::plan::MoveId| planning::move_words(&on.map, id);
    html! {
        h2 { "What if" }
        @for place in planning::places(&on.map) {
            @let taken = on.asked.places_taken.contains(&place);
            @let to = here.with(|asked| { if !asked.places_taken.remove(&place) { asked.places_taken.insert(place.clone()); } });
            a class="row" href=(to) {
                span class={ "mark " @if taken { "home" } } {}
                span class="what" { @if place == "below" { "The lift is taken: nothing from below" } @else { "Nothing from " (place) } }
                span class="soft" { @if taken { "taken: plan with it again" } @else { "free: see what it takes without" } }
            }
        }
        @for variant in &on.kept.sound().map(|map| map.variants.clone()).unwrap_or_default() {
            @let has = on.asked.variants.contains(variant);
            @let to = here.with(|asked| { if !asked.variants.remove(variant) { asked.variants.insert(variant.clone()); } });
            a class="row" href=(to) {
                span class={ "mark " @if has { "home" } } {}
                span class="what" { "It has: " (variant) }
                span class="soft" { @if has { "it has it: plan without" } @else { "not told: plan with it" } }
            }
        }
        @for id in &on.asked.without {
            a class="row" href=(here.with(|asked| { asked.without.remove(id); })) {
                span class="mark home" {}
                span class="what" { "Not: " (spoken(id)) }
                span class="soft" { "allow it again" }
            }
        }
        @for id in &on.asked.also {
            a class="row" href=(here.with(|asked| { asked.also.remove(id); })) {
                span class="mark home" {}
                span class="what" { "In any case: " (spoken(id)) }
                span class="soft" { "let it be" }
            }
        }
        @if on.asked.aim == AimIs::Reach {
            a class="row" href=(format!("{}&pick=yes", here.with(|_| {}))) { span class="what strong" { "Get at one thing more" } }
        }
        a class="row" href=(address_to_targets(here)) { span class="what strong" { "Get at something else" } }
        @if on.adopted { a class="row" href=(format!("/o/{}/state", here.number)) { span class="what" { "Where things stand, as text" } } }
    }
}

fn address_to_targets(here: &Here<'_>) -> String {
    here.with(|asked| {
        asked.aim = AimIs::Reach;
        asked.targets.clear();
    })
}

/// Other ways that there are, before anybody rules one out.
fn others(visit: &Visit<'_>, on: &OrderMap, here: &Here<'_>, found: &Plan) -> Markup {
    let ways = on.other_ways(visit.snap, &found.plan);
    html! {
        @if !ways.is_empty() {
            h2 { "Other ways" }
            @for other in &ways {
                @let to = here.with(|asked| asked.without.extend(other.without.clone()));
                a class="row" href=(to) {
                    span class="what" {
                        span class="strong line" { "Not " (other.not) ": " (dearer(other.dearer_tenths)) }
                        (differs(other))
                    }
                }
            }
        }
    }
}

/// The commands that take a plan over; none if the order works by it already.
pub fn taken_over(order: &OrderView, on: &OrderMap) -> Vec<Value> {
    let words = |text: &str| crate::tap::words(text);
    let mut commands: Vec<Value> = Vec::new();
    if on.current {
        return commands;
    }
    if !on.adopted {
        let request = adopt(&on.kept.id, &on.map, &words);
        commands.push(order_request(&order.order, request));
    }
    commands.push(order_fact(
        &order.order,
        on.asked.fact(&on.map, on.before.as_ref()),
    ));
    commands
}

/// One tap takes the plan over, or leads on where it is taken over already.
fn take_it(visit: &Visit<'_>, order: &OrderView, on: &OrderMap, found: &Plan) -> Markup {
    let next = format!("/o/{}/stage", order.number);
    let many = found.off.len() + found.back.len();
    let small = count(many, "stage", "stages");
    let mut commands = taken_over(order, on);
    // Who takes a plan over works by it: the order is theirs too, and their clock runs.
    let works = visit.snap.caller().works_on(&[]);
    if works && !order.assigned.iter().any(|person| person == visit.who) {
        commands.push(order_fact(
            &order.order,
            json!({ "assigned": { "person": visit.who } }),
        ));
    }
    html! {
        div class="presses two low" {
            @if on.current { (link(Look::Confirm, "Next stage", &small, &next)) }
            @else { form class="bare" { (button(Look::Confirm, "Work by it", &small, &commands, Some(&next))) } }
            (link(Look::Plain, "Price it", "", &address(order.number, on.kept.id.as_str(), &on.asked).replacen("/plan?", "/plan/price?", 1)))
        }
    }
}

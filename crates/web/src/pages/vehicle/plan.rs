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
use crate::pages::{Shown, Visit, no_order, order_of, show};
use crate::phrases::vehicle as say;
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
use shop::planning::{
    self, Asked, OrderMap, Shown as Plan, adopt, in_minutes, map_of_order, on_map_of,
};
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
        Ok(Shown::of(&order, say::plan(), content))
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
                .ok_or_else(|| Trouble::not_found(say::order_without_map(number)))?;
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
        h1 { (say::by_which_map()) }
        p class="soft gap" { (say::what_a_map_says()) }
        @if shelf.is_empty() { p class="gap" { (say::no_maps_yet()) } }
        @if let Some(kind) = kind.filter(|_| !shelf.iter().any(|one| is_for(one, order))) {
            a class="row" href=(format!("/kinds/{kind}/map")) {
                span class="what" {
                    span class="strong line" { (say::make_one_from_our_orders()) }
                    span class="soft line" { (say::of_such_vehicles()) }
                }
            }
        }
        @for one in shelf.iter().filter(|one| one.sound.is_some()) {
            a class="row" href=(address(order.number, one.newest.id.as_str(), &Asked::default())) {
                span class="what" {
                    span class="strong line" { (crate::pages::maps::list::title(one)) }
                    span class="soft line" { @if is_for(one, order) { (say::for_this_vehicle()) } @else { (say::for_another_vehicle()) } }
                }
            }
        }
        div class="presses low" { (link(Look::Plain, say::all_maps(), "", "/maps")) }
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
    let beside = !nothing && on.asked.aim == AimIs::Reach;
    let markup = html! {
        @if nothing { p class="beside gap" { (say::nothing_has_to_be_moved()) } }
        @else {
            (figures(&found))
            (likely(visit, order, &found))
            a class={ "row" @if beside { " on-phone" } } href=(address(order.number, here.map, &on.asked).replacen("/plan", "/way", 1)) { span class="what strong" { (say::show_as_a_drawing()) } }
            a class="row" href=(address(order.number, here.map, &on.asked).replacen("/plan", "/two", 1)) { span class="what strong" { (say::share_between_two()) } }
        }
        (guesses(visit, on, &found)?)
        (the_same(order, on))
        @for line in on.unforeseen(visit.snap) { p class="wait gap" { (line) } }
        @if let Some(other) = on.straight(visit.snap, &found.plan) {
            div class="beside-plan" {
                p class="strong" { (say::with_nothing_ruled_out(other.cost, dearer(other.dearer_tenths))) }
                p { (differs(&other)) }
                a class="row" href=(here.with(|asked| *asked = asked.straight())) { span class="what strong" { (say::show_that_one()) } }
            }
        }
        div class=(if beside { "one-below" } else { "columns" }) {
            div {
                @if !found.off.is_empty() { h2 { (say::comes_off()) } (stages(&here, "off", &found.off)) }
            }
            div {
                @if !found.back.is_empty() { h2 { (say::goes_back()) } (stages(&here, "back", &found.back)) }
            }
            div { (consequences(&found)) }
            div { (asked_of_it(on, &here)) (others(visit, on, &here, &found)) }
        }
    };
    Ok(html! {
        h1 { (aim) }
        @if beside {
            div class="plan" {
                div class="on-desk" {
                    p class="soft" { (say::how_to_read_the_drawing()) }
                    (drawing::beside(order, on, &found))
                }
                div { (markup) }
            }
        } @else { (markup) }
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
            (say::steps_rest_on_a_guess(guessed)) (say::steps_off(rows().count()))
        }
    };
    Ok(
        match shop::teaching::known_kind(visit.snap, &on.map.vehicle)? {
            Some(kind) => {
                html! { a class="row" href=(format!("/kinds/{kind}")) { (said) span class="soft" { (say::settle_it()) } } }
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
            p class="wait gap" { (say::by_the_same_name()) (names.join(", ")) }
            form { div class="presses" { (button(Look::Plain, say::they_are_the_same(), say::plan_starts_from_where_they_stand(), &commands, None)) } }
        }
    }
}

/// What is wanted, as a heading.
pub fn aim_words(asked: &Asked) -> String {
    match asked.aim {
        AimIs::Home => say::everything_home_again().to_owned(),
        AimIs::Roll => say::button_it_up_to_roll().to_owned(),
        AimIs::Reach => {
            let names: Vec<&str> = asked.targets.iter().map(ItemId::as_str).collect();
            say::get_at(names.join(", "))
        }
    }
}

fn figures(found: &Plan) -> Markup {
    let plan = &found.plan;
    html! {
        div class="headline" {
            span class="fact" { (in_minutes(plan.minutes)) small { " min" } }
            span class="what" {
                span class="beside line" { (say::minutes_out_and_back(in_minutes(found.minutes_off), in_minutes(found.minutes_back))) }
                span class="soft line" {
                    (say::changes_of_place(plan.place_changes)) ", "
                    (say::changes_of_tools(plan.tool_changes))
                }
            }
        }
        @if plan.proven { p class="yes gap" { (say::proven_nothing_cheaper(in_minutes(plan.cost))) } }
        @else { p class="wait gap" { (say::best_found(in_minutes(plan.gap()), in_minutes(plan.cost))) } }
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
                @if stages == 0 { (say::while_nobody_timed()) }
            }
            details id="likely" class="working" {
                summary class="row" { span class="soft" { (say::how_was_this_found()) } }
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
        (list(say::renewed(), &found.renewed))
        (list(say::drained(), &found.lost))
        (list(say::owed_by_it(), &found.owed))
        (list(say::stays_until_resolved(), &found.stays))
        (list(say::no_legal_way_back(), &found.no_way_back))
    }
}

/// What is ruled out, called for and not to be had, each a tap to turn.
fn asked_of_it(on: &OrderMap, here: &Here<'_>) -> Markup {
    let spoken = |id: &shop::plan::MoveId| planning::move_words(&on.map, id);
    html! {
        h2 { (say::what_if()) }
        @for place in planning::places(&on.map) {
            @let taken = on.asked.places_taken.contains(&place);
            @let to = here.with(|asked| { if !asked.places_taken.remove(&place) { asked.places_taken.insert(place.clone()); } });
            a class="row" href=(to) {
                span class={ "mark " @if taken { "home" } } {}
                span class="what" { @if place == "below" { (say::lift_is_taken()) } @else { (say::nothing_from(shop::map::called(&place))) } }
                span class="soft" { @if taken { (say::taken_plan_with_it()) } @else { (say::free_see_without()) } }
            }
        }
        @for variant in &on.kept.sound().map(|map| map.variants.clone()).unwrap_or_default() {
            @let has = on.asked.variants.contains(variant);
            @let to = here.with(|asked| { if !asked.variants.remove(variant) { asked.variants.insert(variant.clone()); } });
            a class="row" href=(to) {
                span class={ "mark " @if has { "home" } } {}
                span class="what" { (say::it_has()) (variant) }
                span class="soft" { @if has { (say::has_it_plan_without()) } @else { (say::not_told_plan_with()) } }
            }
        }
        @for id in &on.asked.without {
            a class="row" href=(here.with(|asked| { asked.without.remove(id); })) {
                span class="mark home" {}
                span class="what" { (say::ruled_out()) (spoken(id)) }
                span class="soft" { (say::allow_it_again()) }
            }
        }
        @for id in &on.asked.also {
            a class="row" href=(here.with(|asked| { asked.also.remove(id); })) {
                span class="mark home" {}
                span class="what" { (say::in_any_case_this()) (spoken(id)) }
                span class="soft" { (say::let_it_be()) }
            }
        }
        @if on.asked.aim == AimIs::Reach {
            a class="row" href=(format!("{}&pick=yes", here.with(|_| {}))) { span class="what strong" { (say::get_at_one_thing_more()) } }
        }
        a class="row" href=(address_to_targets(here)) { span class="what strong" { (say::get_at_something_else()) } }
        @if on.adopted { a class="row" href=(format!("/o/{}/state", here.number)) { span class="what" { (say::where_things_stand_as_text()) } } }
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
            h2 { (say::other_ways()) }
            @for other in &ways {
                @let to = here.with(|asked| asked.without.extend(other.without.clone()));
                a class="row" href=(to) {
                    span class="what" {
                        span class="strong line" { (say::not_this(&other.not, dearer(other.dearer_tenths))) }
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
    let small = say::stages(many);
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
            @if on.current { (link(Look::Confirm, say::next_stage(), &small, &next)) }
            @else { form class="bare" { (button(Look::Confirm, say::work_by_it(), &small, &commands, Some(&next))) } }
            (link(Look::Plain, say::price_it(), "", &address(order.number, on.kept.id.as_str(), &on.asked).replacen("/plan?", "/plan/price?", 1)))
        }
    }
}

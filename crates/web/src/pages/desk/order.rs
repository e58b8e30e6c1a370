//! One order: what is so, and what to press next. Its story. Its vehicle.

use super::desk_side;
use crate::State;
use crate::door::blocking;
use crate::pages::vehicle::gates::gates;
use crate::pages::{Shown, Visit, no_order, order_of, show};
use crate::phrases::desk as say;
use crate::tap::{
    Look, amount, button, link, new, odometer, order_fact, signed, spoken as spoken_words,
    thumbnails, words,
};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::{IntoResponse, Redirect, Response};
use drawing::{WayInAndOut, svg, way_in_and_out};
use maud::{Markup, PreEscaped, html};
use phrases::{Language, spoken};
use serde::Deserialize;
use serde_json::{Value, json};
use shop::planning::{OrderMap, map_of_order, on_map_of};
use shop::record::form::Form as _;
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::{ChargeForm, KindForm, PartStepForm, SystemForm, ZoneForm};
use shop::repair::{CommandId, Kind, OrderId, expected, expected_told};
use shop::trade::Vocabulary;
use shop::view::{
    GateView, NewerView, OrderView, PausedView, StandsHere, StoppedView, StoryLine, newer,
    stands_here, way_so_far,
};
use shop::{ItemLine, Trouble, item_lines};
use std::sync::Arc;

/// How wide the way is drawn.
const DESK: f64 = 430.0;
const PHONE: f64 = 358.0;

pub async fn order(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let stalls: Vec<(String, String)> = {
            let world = visit.snap.world();
            world.shop.stalls().into_iter()
                .map(|(id, name, _)| (id.as_str().to_owned(), visit.snap.texts().text(name)))
                .collect()
        };
        let over = order.left.is_some() || order.voided;
        let newer = if over { Vec::new() } else { newer(visit.snap, order.number)? };
        let floor = stands_here(visit.snap)?;
        let comes = expected_told(&*visit.snap.world().order(&OrderId::new(order.order.clone()))?);
        let mut shown = Shown::of(&order, &order.row.vehicle, html! {
            h1 class="spread" { span { (order.row.vehicle) } (head(&order)) }
            @for alarm in &order.alarms { p class="alarm" { (say::left_and_after(alarm)) } }
            @if let Some(left) = &order.left { p class="yes gap" { (say::handed_over_how(&left.how)) } }
            @if order.voided { p class="no gap" { (say::voided_by_mistake()) } }
            @for left in order.stopped.iter().take(3) { (stopped_here(&order, left)) }
            @if !over { @for away in order.paused.iter().take(3) { (away_from_it(away)) } }
            @for standing in &order.standing { p class="wait gap" { (standing) } }
            div class="order" {
                @if !floor.is_empty() { (rail(&floor, order.number)) }
                div { (counts(&order)) (snags(&order)) (way(visit, &order)?) (gates(&order)) (not_on_yet(&order, &visit.snap.vocabulary())) (newer_readings(&order, &newer)) (lines(&order)) }
                div class="on-desk" { (desk_side::money(&order)) }
                div {
                    div class="on-desk" { (desk_side::beside(&order)) }
                    div class="on-phone" { (ways(&order)) }
                    (place(&order, (&stalls, &floor), &comes, visit.who, visit.road_unit()))
                }
            }
            @if !order.voided { (next(&order)) }
        });
        shown.here = (say::floor().to_owned(), "/".to_owned());
        Ok(shown)
    })
    .await
}

/// What else is here, each a press away: where it stands, and what it is. What holds it stands on
/// its own page and on the day: saying it here would look through every order for each page.
fn rail(floor: &[StandsHere], open: u64) -> Markup {
    html! {
        nav class="rail on-desk" aria-label=(say::on_the_floor()) {
            @for one in floor {
                a href=(format!("/o/{}", one.number)) aria-current=[(one.number == open).then_some("page")] {
                    span class="soft line" { (shop::say::capital(one.place.as_deref().unwrap_or(say::no_place_told()))) }
                    span class="strong line" { (one.vehicle) }
                }
            }
        }
    }
}

/// Whose it is and how to reach them, its plate, when it was promised.
fn head(order: &OrderView) -> Markup {
    let asked = order.asks.first();
    html! {
        span class="head soft" {
            span class="on-desk" {
                span { (order.number) @if !order.row.plate.is_empty() { " · " (order.row.plate) } @if let Some(place) = &order.row.place { " · " (within_a_line(place)) } }
                span { (order.row.customer) }
                @if let Some(asked) = asked { @if !asked.phone.is_empty() { span class="strong number" { (asked.phone) } } }
                @if let Some(hour) = &order.row.promised { span { (say::promised_before()) span class="strong number" { (hour) } } }
            }
            span class="upper" { (order.row.word_said()) }
        }
    }
}

/// A place's name within a line, where English begins no word large.
fn within_a_line(place: &str) -> String {
    match spoken() {
        Language::English => place.to_lowercase(),
        Language::German => place.to_owned(),
    }
}

/// Where going on from where somebody stopped is pressed.
fn go_on(order: &OrderView, left: &StoppedView) -> String {
    if left.going_on {
        format!("/o/{}/back#tighten-{}", order.number, left.item)
    } else {
        format!("/o/{}/item/{}", order.number, left.item)
    }
}

/// What the next person sees first.
fn stopped_here(order: &OrderView, left: &StoppedView) -> Markup {
    html! {
        a class="row" href=(go_on(order, left)) {
            span class="mark half" {}
            span class="what" {
                span class="soft line" { (say::stopped_here()) }
                span class="large line" { (left.group) }
                span class="line" { (left.doing) " · " (left.by) ", " (left.at) }
            }
        }
    }
}

/// Who was called away, and what they said to whoever goes on.
fn away_from_it(away: &PausedView) -> Markup {
    html! {
        div class="row" {
            span class="mark half" {}
            span class="what" {
                span class="soft line" { (say::stopped_here()) " · " (away.by) ", " (away.at) }
                @if let Some(words) = &away.words { span class="large line" { (say::quoted(words)) } }
                (spoken_words(away.voice.as_ref()))
            }
        }
    }
}

/// The way in and out: what was off while it was worked on, and by the plan what is to come.
fn way(visit: &Visit<'_>, order: &OrderView) -> Result<Markup, Trouble> {
    if order.left.is_some() || order.voided {
        return Ok(html! {});
    }
    let so_far = way_so_far(visit.snap, &OrderId::new(order.order.clone()))?;
    if so_far.too_long {
        return Ok(html! {});
    }
    let (mut at, mut open) = so_far.done.last().copied().unwrap_or((0.0, 0));
    let mut to_come = Vec::new();
    if let Some((map, version)) = map_of_order(visit.snap, order.number)? {
        let on = on_map_of(visit.snap, order.number, &map, Some(version), None)
            .map(OrderMap::of_the_map);
        // A map that reads no more, or a plan that finds no way, is told on the plan's own page.
        let plan = on
            .ok()
            .filter(OrderMap::asks)
            .and_then(|on| on.plan(visit.snap).ok());
        for (stage, comes_off) in plan.iter().flat_map(|plan| {
            let off = plan.off.iter().map(|stage| (stage, true));
            off.chain(plan.back.iter().map(|stage| (stage, false)))
        }) {
            let things = stage
                .rows
                .iter()
                .filter(|row| !matches!(row.kind, Kind::Work | Kind::PutIn));
            let things = u32::try_from(things.count()).unwrap_or(u32::MAX);
            at += if so_far.timed || so_far.done.is_empty() {
                f64::from(stage.minutes.in_tenths()) / 10.0
            } else {
                1.0
            };
            open = if comes_off {
                open.saturating_add(things)
            } else {
                open.saturating_sub(things)
            };
            to_come.push((at, open));
        }
        // What else is off is not in the map's plan, and is on again when all of it is.
        let comes_home = plan.as_ref().is_some_and(|plan| !plan.back.is_empty());
        if let Some((_, open)) = to_come.last_mut().filter(|_| comes_home) {
            *open = 0;
        }
    }
    let steps = so_far.done.len() + to_come.len();
    if steps < 2 {
        return Ok(html! {});
    }
    let unit = if so_far.timed || so_far.done.is_empty() {
        "min"
    } else {
        say::stages()
    };
    let drawn = WayInAndOut {
        done: so_far.done,
        to_come,
        unit: unit.to_owned(),
    };
    Ok(html! {
        div class="on-desk" { (PreEscaped(svg(&way_in_and_out(&drawn, DESK)))) }
        div class="on-phone" { (PreEscaped(svg(&way_in_and_out(&drawn, PHONE)))) }
    })
}

/// What went wrong and is not put right yet, each a tap from what can be done.
fn snags(order: &OrderView) -> Markup {
    html! {
        @for snag in &order.snags {
            a class="row" href=(format!("/o/{}/snag/{}", order.number, snag.snag)) {
                span class="mark half" {}
                span class="what no" { (shop::say::capital(&snag.text)) }
            }
        }
    }
}

/// What is still off.
fn counts(order: &OrderView) -> Markup {
    let inside = order.row.inside;
    html! {
        a class="row" href=(format!("/o/{}/open", order.number)) {
            span class="fact" { (order.row.open) }
            span class="what" {
                span class="beside line" { (say::still_off()) }
                span class="soft line" { (say::inside_and_owed(inside, order.row.debts)) }
            }
        }
    }
}

/// Parts on the price or needed that nobody has put on, where the trade knows what they are: one
/// tap says that the old one came off and the new one is on.
fn not_on_yet(order: &OrderView, table: &Vocabulary) -> Markup {
    if order.left.is_some() || order.voided || order.aim.is_some() {
        return html! {};
    }
    let priced = order.price.iter().flat_map(|price| &price.entries);
    let priced = priced.filter(|entry| entry.charge == ChargeForm::Part);
    let needed = order
        .parts
        .iter()
        .filter(|part| part.item.is_none() && !part.steps.contains_key(&PartStepForm::Fitted));
    let mut labels: Vec<&str> = Vec::new();
    for label in priced
        .map(|entry| &*entry.label)
        .chain(needed.map(|part| &*part.label))
    {
        if !labels.contains(&label) {
            labels.push(label);
        }
    }
    let read: Vec<ItemLine> = labels
        .iter()
        .filter_map(|label| match item_lines(label, table).as_slice() {
            [one] if one.sort.is_some() && one.amount.is_none() => Some(one.clone()),
            _ => None,
        })
        // Where something of that system was opened, what is new goes on with its stages.
        .filter(|line| {
            let system = SystemForm::of(&line.system);
            !order.items.iter().any(|item| item.system == system)
        })
        .collect();
    html! {
        @if !read.is_empty() {
            h2 { (say::new_part_not_on()) }
            @for (nth, line) in read.iter().enumerate() {
                form { div class="presses" {
                    (button(Look::Plain, &say::renewed(shop::say::capital(&line.label)), say::old_off_new_on(), &renewed(order, nth, line), None))
                } }
            }
        }
    }
}

/// What is said of a thing that was renewed without more.
fn renewed(order: &OrderView, nth: usize, line: &ItemLine) -> [Value; 2] {
    let item = new(&format!("renewed-{nth}"));
    let pieces: Vec<Value> = (1..=line.count)
        .map(|position| json!({ "position": position, "length": null }))
        .collect();
    let at: Vec<u16> = (1..=line.count).collect();
    [
        order_fact(
            &order.order,
            json!({ "declared": { "item": {
                "id": item, "kind": KindForm::of(&line.kind), "system": SystemForm::of(&line.system),
                "zone": ZoneForm::of(&line.zone), "label": words(&line.label), "size": line.size,
                "pieces": pieces, "pattern": null, "spent": true, "may_miss": null, "put_in": null, "holds": null } } }),
        ),
        order_fact(
            &order.order,
            json!({ "moved": { "stage": null, "moves": [{ "item": item, "at": at, "after": [],
                "left": { "state": StateForm::of(&line.kind.home()), "piece": "new" }, "container": null }] } }),
        ),
    ]
}

/// Where one goes on in an order just opened.
#[derive(Debug, Deserialize)]
pub struct Onward {
    to: Option<String>,
}

/// The walk-round of an order just opened, by its name in the record, or its hand-over.
pub async fn by_name(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(name): Path<String>,
    Query(onward): Query<Onward>,
) -> Response {
    let to = match onward.to.as_deref() {
        Some("hand-over") => Some("hand-over"),
        _ => None,
    };
    let service = Arc::clone(&state.service);
    let number = blocking(move || {
        let world = service.world()?;
        let id = OrderId::new(name);
        let Some(number) = world.number_of(&id)? else {
            return Ok(None);
        };
        // Nobody can walk round what is not here; what is asked then is when it is ready.
        let comes = to.is_none() && expected(&*world.order(&id)?).is_some();
        let to = to.unwrap_or(if comes { "promise" } else { "walk" });
        Ok(Some((number, to)))
    });
    match number.await {
        Ok(Some((number, to))) => Redirect::to(&format!("/o/{number}/{to}")).into_response(),
        Ok(None) | Err(_) => {
            show(state, headers, |_| {
                Err(Trouble::not_found(say::no_such_order()))
            })
            .await
        }
    }
}

/// The word a gate has in an address.
pub fn gate_code(gate: &GateView) -> String {
    serde_json::to_value(gate.gate)
        .ok()
        .and_then(|value| value.as_str().map(str::to_owned))
        .unwrap_or_default()
}

/// What a newer table of the trade says of things on this order: offered, never taken by itself.
fn newer_readings(order: &OrderView, newer: &[NewerView]) -> Markup {
    let commands: Vec<Value> = newer
        .iter()
        .map(|one| order_fact(&order.order, one.fact.clone()))
        .collect();
    html! {
        @if !newer.is_empty() {
            details id="newer" {
                summary class="row" { span class="what wait" { (say::read_otherwise(newer.len())) } }
                @for one in newer {
                    div class="row" { span class="what" {
                        span class="strong line" { (one.label) }
                        span class="soft line" { (one.says.join(" · ")) }
                    } }
                }
                form { div class="presses" { (button(Look::Plain, say::read_them_so(), say::owed_follows(), &commands, None)) } }
            }
        }
    }
}

fn lines(order: &OrderView) -> Markup {
    html! {
        h2 { (say::complaint_cause_correction()) }
        @for line in &order.lines {
            p class="strong gap" { (line.complaint) }
            @for (code, label, write, edit, now) in [("cause", say::cause(), say::write_cause(), say::edit_cause(), &line.cause), ("correction", say::correction(), say::write_correction(), say::edit_correction(), &line.correction)] {
                @if let Some(now) = now { p { span class="soft" { (label) ": " } (now) } }
                details id=(format!("{code}-{}", line.line)) {
                    summary class="row" { span { @if now.is_some() { (edit) } @else { (write) } } }
                    form {
                        (crate::tap::required("words", label, "", now.as_deref().unwrap_or("")))
                        @let after = line.told_by.get(code).cloned().unwrap_or_default();
                        div class="presses" {
                            (button(Look::Plain, say::save(), "", &[order_fact(&order.order, json!({ "line-worded": { "line": line.line, "text": code, "words": crate::tap::text("words"), "after": after } }))], None))
                        }
                    }
                }
            }
        }
    }
}

fn ways(order: &OrderView) -> Markup {
    let row = |label: &str, small: String, to: &str| {
        html! {
            a class="row" href=(format!("/o/{}/{to}", order.number)) {
                span class="what strong" { (label) }
                span class="soft" { (small) }
            }
        }
    };
    let snags = order.snags.len();
    html! {
        h2 { (say::this_order()) }
        (row(say::walk_round(), String::new(), "walk"))
        (row(say::the_plan(), order.aim.clone().unwrap_or_default(), "plan"))
        (row(say::owed_checks_proof(), say::owed_count(order.debts.len()), "due"))
        (row(say::snags(), say::open_count(snags), "snag"))
        (row(say::measures(), say::which_measures().to_owned(), "measures"))
        (row(say::parts_and_machine_work(), say::parts_count(order.parts.len()), "parts"))
        (row(say::desk_price_consent_money(), order.totals.first().map_or_else(String::new, |t| t.gross.to_string()), "desk"))
        (row(say::when_ready(), order.row.promised.as_ref().map_or_else(String::new, say::promised_at), "promise"))
        (row(say::trays(), String::new(), "tray"))
        (row(say::story(), say::lines_count(order.story_length), "story"))
        @if order.handed_over {
            a class="row" href=(format!("/maps/from-order/edit?order={}", order.number)) { span class="what strong" { (say::keep_as_map()) } }
        }
        (row(say::edit_details(), String::new(), "mend"))
        @if let Some(vehicle) = &order.row.vehicle_id {
            a class="row" href=(format!("/v/{vehicle}")) { span class="what strong" { (say::the_vehicle()) } span class="soft" { (order.row.plate) } }
        }
    }
}

fn place(
    order: &OrderView,
    (stalls, floor): (&[(String, String)], &[StandsHere]),
    comes: &[CommandId],
    who: &str,
    unit: &str,
) -> Markup {
    let taken = |stall: &str| {
        let mut others = floor.iter().filter(|row| row.number != order.number);
        others.find(|row| row.stall.as_deref() == Some(stall))
    };
    let fact = |content: Value| order_fact(&order.order, content);
    let stood = |place: Value| fact(json!({ "stood": { "place": place } }));
    html! {
        details id="place" {
            summary class="row" {
                span class="strong what" { (say::where_who_when()) }
                @match (&order.row.comes, &order.row.place) {
                    (Some(comes), _) => span class="wait" { (say::comes_at(comes)) },
                    (None, Some(place)) => span class="soft" { (place) },
                    (None, None) => span class="soft" { (say::not_told()) },
                }
            }
            @if order.row.comes.is_some() { p class="soft gap" { (say::here_once_placed()) } }
            form {
                div class="presses even" {
                    @for (id, name) in stalls.iter().filter(|(id, _)| taken(id).is_none()) { (button(Look::Plain, name, "", &[stood(json!({ "stall": id }))], None)) }
                    (button(Look::Plain, say::yard(), "", &[stood(json!("yard"))], None))
                    (button(Look::Plain, say::i_work_on_it(), "", &[fact(json!({ "assigned": { "person": who } }))], None))
                }
            }
            @for (id, name) in stalls {
                @if let Some(other) = taken(id) {
                    details id=(format!("taken-{id}")) {
                        summary class="row" {
                            span class="what" { (say::stands_there(name, &other.vehicle)) }
                        }
                        form { div class="presses" { (button(Look::Plain, &say::all_the_same(name), say::two_in_one_stall(), &[stood(json!({ "stall": id }))], None)) } }
                    }
                }
            }
            a class="row" href=(format!("/o/{}/promise", order.number)) { span class="what strong" { (say::when_ready()) } span class="soft" { (say::what_to_say()) } }
            form {
                label class="field" { span { (say::promised_for()) } input type="datetime-local" name="promised" required; }
                div class="presses" { (button(Look::Plain, say::promise_it(), "", &[fact(json!({ "promised": { "at": { "$time": "promised" } } }))], None)) }
            }
            @let seen: Vec<&str> = comes.iter().map(CommandId::as_str).collect();
            form {
                label class="field" { span { (say::not_here_comes()) } input type="datetime-local" name="comes" required; }
                div class="presses" { (button(Look::Plain, say::it_comes_then(), "", &[fact(json!({ "expected": { "at": { "$time": "comes" }, "after": seen } }))], None)) }
            }
        }
        details id="odometer" {
            summary class="row" { span class="strong" { (say::odometer_on_the_way_out()) } }
            form {
                (odometer("reading", say::odometer(), unit, ""))
                div class="presses" { (button(Look::Plain, say::save(), "", &[fact(json!({ "odometer": { "reading": amount("reading", unit), "at": "out" } }))], None)) }
            }
        }
    }
}

/// What to press next, by what is so.
fn next(order: &OrderView) -> Markup {
    let to = |page: &str| format!("/o/{}/{page}", order.number);
    let touched = order.items.iter().any(|item| item.disturbed);
    // Where the vehicle is fit to go, the papers are seen to at the hand-over itself.
    let fit = |gate: &GateView| {
        let mut fit = gate.fit_to_go.iter();
        fit.all(|reason| !reason.blocks || reason.waived.is_some())
    };
    let last = order.gates.last();
    let hand_over = last.is_some_and(|gate| gate.may || touched && fit(gate));
    html! {
        div class="presses two low" {
            @if order.handed_over {
                (link(Look::Confirm, say::take_it_back_in(), "", &to("hand-over")))
            } @else if let Some(left) = order.stopped.first() {
                (link(Look::Confirm, say::go_on_here(), &left.group, &go_on(order, left)))
            } @else if hand_over {
                (link(Look::Confirm, say::hand_over(), "", &to("hand-over")))
            } @else if order.open_items.is_empty() && touched {
                (link(Look::Confirm, say::cleared_to(), say::everything_is_back(), &to("may")))
            } @else if let Some(aim) = &order.aim {
                (link(Look::Confirm, say::next_stage(), aim, &to("stage")))
            } @else if !touched {
                (link(Look::Confirm, say::plan_it(), say::what_comes_off(), &to("plan")))
            } @else {
                (link(Look::Confirm, say::something_off(), "", &to("off")))
            }
            @if order.open_items.is_empty() { (link(Look::Plain, say::off_press(), say::off_more(), &to("off"))) }
            @else { (link(Look::Plain, say::put_back(), &order.open_items.len().to_string(), &to("back"))) }
        }
    }
}

/// Which part of a story.
#[derive(Debug, Deserialize)]
pub struct Part {
    before: Option<usize>,
}

pub async fn story(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(part): Query<Part>,
) -> Response {
    show(state, headers, move |visit| {
        let order = match part.before {
            None => order_of(visit, &number)?,
            Some(before) => {
                let number = number.parse().map_err(|_| no_order(&number))?;
                shop::view::order_before(visit.snap, number, before)?
            }
        };
        Ok(Shown::of(
            &order,
            say::story(),
            html! {
                h1 { (say::what_happened()) }
                @if part.before.is_some() {
                    a class="row" href=(format!("/o/{}/story", order.number)) { span class="what strong" { (say::to_the_newest()) } }
                }
                @for line in order.story.iter().rev() { (told(&order, line)) }
                @if let Some(before) = order.story_before {
                    a class="row" href=(format!("/o/{}/story?before={before}", order.number)) {
                        span class="what strong" { (say::earlier()) }
                        span class="soft" { (say::count_more(before)) }
                    }
                }
            },
        ))
    })
    .await
}

fn told(order: &OrderView, line: &StoryLine) -> Markup {
    html! {
        details id=(format!("told-{}", line.command)) {
            summary class="row" {
                span class="what" {
                    span class="line" { @if line.undone { s { (line.text) } (say::taken_back()) } @else { (line.text) } }
                    span class="soft line" { (line.who) ", " (line.at) }
                }
            }
            (thumbnails(&line.photos))
            (spoken_words(line.voice.as_ref()))
            (signed(line.signature.as_deref(), ""))
            @if line.decided {
                p class="soft gap" { (say::decision_stays()) }
            } @else if !line.undone {
                form { div class="presses" {
                    (button(Look::Plain, say::take_this_back(), say::as_if_not_been(), &[order_fact(&order.order, json!({ "undo": { "command": line.command, "part": null } }))], None))
                } }
            }
        }
    }
}

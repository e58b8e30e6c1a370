//! A calculator asked for an order: the same form, and its answer kept with the order in a tap.
//! A fluid's readings stand in the order's story and its ticks close what the order owes; how a
//! belt lies stands beside the stage that puts it on; a drive becomes its proof.

use super::calc::{Fields, Place, content, found, within_a_sentence};
use crate::State;
use crate::pages::vehicle::due::done as done_debt;
use crate::pages::vehicle::pieces::disturbed_seen;
use crate::pages::{Shown, Visit, order_of, show};
use crate::phrases::bench as say;
use crate::tap::{Look, button, link, new, order_fact, words};
use axum::Form;
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, PreEscaped, html};
use serde_json::{Value, json};
use shop::Trouble;
use shop::calculators::{self, Answer, Asked, Calculator, Room, Takes};
use shop::drawing::svg;
use shop::fluid_steps;
use shop::mending::known;
use shop::planning::{declared, map_of_order, on_map_of};
use shop::record::v1::codes::{KindForm, SystemForm, WorkIsForm};
use shop::sums::{self, BeltAsFound, Sum};
use shop::view::{ItemView, OrderView};

/// One calculator, for an order.
pub async fn page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, room, code)): Path<(String, String, String)>,
    Query(fields): Query<Fields>,
) -> Response {
    show(state, headers, move |visit| {
        shown(visit, &number, &room, &code, fields)
    })
    .await
}

/// The same, asked with what is too long for an address.
pub async fn sent(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, room, code)): Path<(String, String, String)>,
    Form(fields): Form<Fields>,
) -> Response {
    show(state, headers, move |visit| {
        shown(visit, &number, &room, &code, fields)
    })
    .await
}

fn shown(
    visit: &Visit<'_>,
    number: &str,
    room: &str,
    code: &str,
    mut fields: Fields,
) -> Result<Shown, Trouble> {
    let order = order_of(visit, number)?;
    let (room, one) = found(room, code)?;
    if !is_kept(room, one) {
        return Err(Trouble::not_found(say::nothing_kept_with_an_order(
            within_a_sentence(room),
        )));
    }
    let of = match fields.remove("of") {
        Some(id) => Some(Of::find(visit, &order, id)?),
        None => None,
    };
    let item = of.as_ref().and_then(|of| of.view);
    let sent = !fields.is_empty();
    let mut asked = one.asked(fields, &known(visit.snap.world()));
    let answer = if sent {
        (one.run)(&mut asked)
    } else {
        for (name, value) in one.at_first {
            asked.or_else(name, value());
        }
        if let Some(item) = item {
            known_of(visit, &order, item, one, &mut asked)?;
        }
        None
    };
    let answer = answer.filter(|_| asked.troubles.is_empty());
    let keep = answer
        .as_ref()
        .map(|answer| keep(&order, of.as_ref(), room, one, &asked, answer));
    let place = Place {
        address: format!("/o/{}/calc/{}/{}", order.number, room.code, one.code),
        item: of.as_ref().map(|of| of.id.as_str()),
        keep,
    };
    let earlier = match &of {
        Some(of) if !sent && room.code == "belt" => as_on_another(visit, &order, of)?,
        _ => html! {},
    };
    let content = html! { (content(&place, one, &asked, answer.as_ref(), sent)) (earlier) };
    let mut shown = Shown::of(&order, one.name(), content);
    if let Some(item) = item {
        let home = format!("/o/{}/item/{}", order.number, item.item);
        shown.leads_to(&format!("{} · {}", order.number, item.label), &home);
    }
    Ok(shown)
}

/// The item that is asked of: one of the order, or one that its plan takes off first.
struct Of<'a> {
    id: String,
    label: String,
    view: Option<&'a ItemView>,
    /// What tells the order what it is, where it does not know yet.
    described: Option<Value>,
}

impl<'a> Of<'a> {
    fn find(visit: &Visit<'_>, order: &'a OrderView, id: String) -> Result<Of<'a>, Trouble> {
        if let Some(view) = order.items.iter().find(|item| item.item == id) {
            let label = view.label.clone();
            return Ok(Of {
                id,
                label,
                view: Some(view),
                described: None,
            });
        }
        let nowhere = || Trouble::not_found(say::no_such_item());
        let (map, version) = map_of_order(visit.snap, order.number)?.ok_or_else(nowhere)?;
        let on = on_map_of(visit.snap, order.number, &map, Some(version), None)?;
        let (item, _) = on
            .map
            .items
            .iter()
            .find(|(item, _)| on.id(item).as_str() == id)
            .ok_or_else(nowhere)?;
        let label = item.as_str().to_owned();
        let described = declared(&on.map, item, &words);
        Ok(Of {
            id,
            label,
            view: None,
            described,
        })
    }
}

/// What the order knows of an item stands in the fields: what came out and what went in.
fn known_of(
    visit: &Visit<'_>,
    order: &OrderView,
    item: &ItemView,
    one: &Calculator,
    asked: &mut Asked,
) -> Result<(), Trouble> {
    let told = sums::amounts(visit.snap, order.number, &item.item)?;
    let names = calculators::fields(one.form);
    let ticks: Vec<&str> = names
        .iter()
        .filter(|field| matches!(field.takes, Takes::Tick))
        .map(|field| field.name.as_str())
        .collect();
    // Boxes stand as they were saved last, and as the amounts say.
    let earlier = sums::of_item(visit.snap, order.number, &item.item)?;
    let same = format!("fluids {}", one.code);
    let last = earlier.iter().find(|sum| sum.calculator == same);
    let came_out = !told.out.is_empty();
    let went_in = !told.poured.is_empty();
    for (tick, told) in [
        ("drained", came_out),
        ("recovered", came_out),
        ("filled", went_in),
    ] {
        if told && ticks.contains(&tick) {
            asked.or_else(tick, "yes");
        }
    }
    for tick in ticks {
        if last.is_some_and(|last| last.inputs.contains_key(tick)) {
            asked.or_else(tick, "yes");
        }
    }
    for (name, amounts) in [("out", told.out), ("in", told.poured)] {
        if names.iter().any(|field| field.name == name) {
            asked.or_else(name, &amounts.join(", "));
        }
    }
    Ok(())
}

/// What an order keeps: what is of fluids and of drives, and how a belt lies. Coolant and threads have a way of their
/// own on an order.
fn is_kept(room: &Room, one: &Calculator) -> bool {
    matches!(
        (room.code, one.code),
        ("fluids" | "roadtest", _) | ("belt", "routing")
    )
}

fn keep(
    order: &OrderView,
    of: Option<&Of<'_>>,
    room: &Room,
    one: &Calculator,
    asked: &Asked,
    answer: &Answer,
) -> Markup {
    let kept = one.kept(room.code, asked, answer);
    let item = of.and_then(|of| of.view);
    let fact = |content: Value| order_fact(&order.order, content);
    let described = of.and_then(|of| of.described.clone());
    let mut commands: Vec<Value> = described.map(fact).into_iter().collect();
    commands.push(fact(json!({ "calculated": {
        "id": new("note"), "item": of.map(|of| &of.id), "snag": null,
        "calculator": kept.calculator, "version": kept.version,
        "inputs": kept.inputs, "outputs": kept.outputs, "working": kept.working } })));
    commands.extend(readings(order, item, one, asked));
    let closed = item
        .filter(|_| room.code == "fluids")
        .map(|item| closing(order, item, one, asked, answer));
    let small = closed.as_ref().and_then(|(_, words)| words.clone());
    commands.extend(closed.into_iter().flat_map(|(commands, _)| commands));
    let proof = (room.code == "roadtest").then(|| outcome(answer)).flatten();
    commands.extend(proof.map(|outcome| proved(order, outcome, answer)));
    let (label, usual) = match proof {
        Some("held") => (say::save_road_test_passed(), say::proof_with_readings()),
        Some("failed") => (say::save_road_test_failed(), say::proof_with_readings()),
        Some(_) => (say::save_couldnt_reproduce(), say::did_not_come_back_on()),
        None if room.code == "roadtest" => (say::save_with_the_order(), say::proves_nothing_yet()),
        None if room.code == "belt" => (say::it_lies_like_this(), say::saved_with_the_order()),
        None => (say::save_with_the_order(), say::with_its_readings()),
    };
    let small = small.as_deref().unwrap_or(usual);
    let next = match of {
        Some(Of {
            id, view: Some(_), ..
        }) => format!("/o/{}/item/{id}", order.number),
        Some(_) => format!("/o/{}/stage", order.number),
        None => format!("/o/{}/due", order.number),
    };
    html! { form { div class="presses low" { (button(Look::Confirm, label, small, &commands, Some(&next))) } } }
}

/// What the ticked steps close of what the order owes, and the words for it.
fn closing(
    order: &OrderView,
    item: &ItemView,
    one: &Calculator,
    asked: &Asked,
    answer: &Answer,
) -> (Vec<Value>, Option<String>) {
    let none = Vec::new();
    let owed = answer.outputs["owed"].as_array().unwrap_or(&none);
    let fields = calculators::fields(one.form);
    let done: Vec<&str> = fields
        .iter()
        .filter(|field| matches!(field.takes, Takes::Tick) && asked.some(&field.name).is_some())
        .map(|field| field.name.as_str())
        .filter(|step| !owed.iter().any(|owed| owed == step))
        .collect();
    let closed = fluid_steps::closed(order, item, one.code, &done);
    let mut commands: Vec<Value> = Vec::new();
    if closed.level {
        commands.push(order_fact(
            &order.order,
            json!({ "level-seen": { "item": item.item, "level": "warm", "good": true,
                "reading": null, "temperature": null, "after": item.seen } }),
        ));
    }
    let others = closed.debts.iter().filter(|debt| {
        // The level seen answers it already.
        !(closed.level && debt.work == WorkIsForm::LevelWarm)
    });
    commands.extend(others.map(|debt| done_debt(order, debt)));
    let mut words: Vec<String> = closed
        .level
        .then(|| say::its_level().to_owned())
        .into_iter()
        .collect();
    words.extend(closed.debts.iter().map(|debt| debt.text.clone()));
    let words = (!words.is_empty()).then(|| say::closes(words.join(", ")));
    (commands, words)
}

/// A verdict that proves something; "can't tell" does not.
fn outcome(answer: &Answer) -> Option<&'static str> {
    match answer.outputs["verdict"].as_str() {
        Some("held") => Some("held"),
        Some("failed") => Some("failed"),
        Some("not-provoked") => Some("not-provoked"),
        _ => None,
    }
}

/// The proof, in the place of the earlier ones. Its readings are those that its checks rest on.
fn proved(order: &OrderView, outcome: &str, answer: &Answer) -> Value {
    const MOST: usize = 12;
    let none = Vec::new();
    let checks = answer.outputs["checks"].as_array().unwrap_or(&none);
    let readings: Vec<Value> = checks
        .iter()
        .flat_map(|check| check["readings"].as_array().unwrap_or(&none))
        .filter_map(|one| {
            let value = one["value"].as_f64()?;
            let unit = one["unit"].as_str()?;
            Some(json!({ "what": one["name"], "value": format!("{value:.1} {unit}") }))
        })
        .take(MOST)
        .collect();
    let earlier = order
        .proofs_told
        .get("road-test")
        .cloned()
        .unwrap_or_default();
    order_fact(
        &order.order,
        json!({ "proved": {
            "id": new("proof"), "line": null, "proof": "road-test", "outcome": outcome,
            "words": null, "readings": readings, "calculation": new("note"),
            "after": disturbed_seen(order), "replaces": earlier } }),
    )
}

/// What was read or measured of an item, as it was written: it stands in the story.
fn readings(
    order: &OrderView,
    item: Option<&ItemView>,
    one: &Calculator,
    asked: &Asked,
) -> Vec<Value> {
    let Some(item) = item else {
        return Vec::new();
    };
    let each = calculators::fields(one.form).into_iter().filter_map(|field| {
        let value = match field.takes {
            Takes::Number { .. } => asked.some(&field.name)?,
            _ => return None,
        };
        Some(order_fact(
            &order.order,
            json!({ "read-off": { "id": new(&field.name), "item": item.item, "what": field.name,
                "value": value.replace('\u{2212}', "-"), "temperature": null, "after": item.seen } }),
        ))
    });
    each.collect()
}

/// What a fluid or the battery can be asked, and what was kept of it.
pub fn of_item(visit: &Visit<'_>, order: &OrderView, item: &ItemView) -> Result<Markup, Trouble> {
    let asked = calculators_of(item);
    let kept = sums::of_item(visit.snap, order.number, &item.item)?;
    Ok(html! {
        @for sum in &kept { (kept_row(sum)) }
        @if item.kind == KindForm::Belt { (belt(visit, order, item)?) }
        @for one in asked {
            a class="row" href=(format!("/o/{}/calc/fluids/{}?of={}", order.number, one.code, item.item)) {
                span class="what" { span class="strong line" { (say::steps_and_limits(one.name())) } span class="soft line" { (one.what()) } }
            }
        }
    })
}

/// How a belt lies, or the way to say so while it is still on.
fn belt(visit: &Visit<'_>, order: &OrderView, item: &ItemView) -> Result<Markup, Trouble> {
    let found = sums::belts_as_found(visit.snap, order.number)?;
    let kept = found.iter().find(|one| one.item == item.item);
    Ok(html! {
        @if let Some(kept) = kept { (as_found(kept)) }
        (say_how_it_lies(order, &item.item, item.home, kept.is_some()))
    })
}

/// The row that leads to saying how a belt lies.
pub fn say_how_it_lies(order: &OrderView, item: &str, is_on: bool, again: bool) -> Markup {
    let words = match (again, is_on) {
        (true, _) => say::say_again_how_it_lies(),
        (false, true) => say::say_before_it_comes_off(),
        (false, false) => say::say_how_it_lay(),
    };
    html! {
        a class="row" href=(format!("/o/{}/calc/belt/routing?of={item}", order.number)) {
            span class="what" { span class="strong line" { (words) } span class="soft line" { (say::tap_the_pulleys()) } }
        }
    }
}

/// How a belt was found to lie.
pub fn as_found(kept: &BeltAsFound) -> Markup {
    html! {
        p class="gap" { (say::routed_as_found()) span class="strong" { (kept.sequence) } @if let Some(belt) = &kept.belt { " · " (belt) } }
        @if let Some(drawing) = &kept.drawing { (PreEscaped(svg(drawing))) }
        p class="soft" { (say::seen_by(&kept.by)) }
    }
}

/// The same belt on another vehicle of this kind: looked at, it is one tap to say the same.
fn as_on_another(visit: &Visit<'_>, order: &OrderView, of: &Of<'_>) -> Result<Markup, Trouble> {
    let Some((number, found)) = sums::belt_of_kind(visit.snap, order, &of.label)? else {
        return Ok(html! {});
    };
    let mut query = form_urlencoded::Serializer::new(String::new());
    query.append_pair("of", &of.id);
    query.extend_pairs(&found.inputs);
    let address = format!("/o/{}/calc/belt/routing?{}", order.number, query.finish());
    Ok(html! {
        section {
            h2 { (say::on_another_of_this_kind()) }
            (as_found(&found))
            p class="soft" { (say::on_order(number)) }
            div class="presses" { (link(Look::Plain, say::take_this_one_over(), say::look_whether_the_same(), &address)) }
        }
    })
}

fn kept_row(sum: &Sum) -> Markup {
    let name = sum
        .calculator
        .split_once(' ')
        .and_then(|(room, code)| calculators::calculator(room, code))
        .map_or(sum.calculator.as_str(), |one| one.name());
    html! {
        details id=(format!("sum-{}", sum.id)) class="working" {
            summary class="row" {
                span class="what" {
                    span class="line" { (say::answer_of(name)) span class={ "strong " (sum.tone) } { (sum.fact) } }
                    span class="soft line" { (say::kept_by(&sum.by)) }
                }
            }
            pre { (sum.working) }
        }
    }
}

/// By its kind and its system; a gearbox may be one of three.
fn calculators_of(item: &ItemView) -> Vec<&'static Calculator> {
    let codes: &[&str] = match (item.kind, item.system) {
        (_, SystemForm::Battery) => &["battery"],
        (KindForm::Fluid, SystemForm::Oil | SystemForm::Engine) => &["engine-oil"],
        (KindForm::Fluid, SystemForm::Brakes) => &["brake"],
        (KindForm::Fluid, SystemForm::Steering) => &["power-steering"],
        (KindForm::Fluid, SystemForm::Fuel) => &["fuel"],
        (KindForm::Fluid, SystemForm::Climate) => &["refrigerant"],
        (KindForm::Fluid, SystemForm::Exhaust) => &["urea"],
        (KindForm::Fluid, SystemForm::Transmission) => {
            &["automatic-gearbox", "manual-gearbox", "axle", "clutch"]
        }
        (KindForm::Fluid, SystemForm::Body) => &["washer"],
        _ => &[],
    };
    let one = |code: &&str| calculators::calculator("fluids", code);
    codes.iter().filter_map(one).collect()
}

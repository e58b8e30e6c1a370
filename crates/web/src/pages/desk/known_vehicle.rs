//! One vehicle: how it differs from others of its kind, what is due, what was done, and
//! the way back in for it.

use super::customer::{Twin, look_for};
use super::intake::{customer_row, joined, vehicle_row};
use super::mend::vehicle_form;
use crate::State;
use crate::pages::shop::{not_read, units};
use crate::pages::{Shown, Visit, order_of, show};
use crate::phrases::desk as say;
use crate::tap::{
    Look, amount, button, changed, field, input, needed_day, new, required, text, when, words,
};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::Trouble;
use shop::floor::{HEIGHT, WEIGHT};
use shop::measure::Dimension;
use shop::record::form::Form;
use shop::record::v1::facts::WorkForm;
use shop::repair::{CommandId, Field, VehicleFact, VehicleId};
use shop::view::{OrderRow, known_customer, known_vehicle, standing_text, twins_of_vehicle};

/// Earlier visits that are told at length.
const MOST_VISITS: usize = 10;

pub async fn vehicle(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
    Query(twin): Query<Twin>,
) -> Response {
    show(state, headers, move |visit| {
        let id = VehicleId::new(known_vehicle(visit.snap, &VehicleId::new(id))?.vehicle);
        let visits = shop::view::rows_of_vehicle(visit.snap, &id)?;
        let vehicle = visit.snap.world().vehicle(&id)?;
        let told = |field: Field| {
            let words = vehicle.text(field).words;
            visit.snap.texts().text_of(words).unwrap_or_default()
        };
        let here = visits.iter().find(|row| !row.handed_over && !row.voided);
        Ok(Shown::new(say::vehicle(), html! {
            h1 { (told(Field::Label)) }
            p class="gap" { (told(Field::Plate)) @let vin = told(Field::Vin); @if !vin.is_empty() { " · " (vin) } }
            div class="columns" {
                div {
                    h2 { (say::modified_on_this()) }
                    @if vehicle.differences().next().is_none() { p class="gap" { (say::nothing_known()) } }
                    @for fact in vehicle.differences() { (standing(visit, &id, fact)) }
                    (weight_and_height(visit, &id)?)
                    h2 { (say::due_work()) }
                    @if vehicle.owing().next().is_none() { p class="gap" { (say::nothing()) } }
                    @for fact in vehicle.owing() { (standing(visit, &id, fact)) }
                    (remind(visit, &id)?)
                    @match here {
                        Some(row) => a class="row" href=(format!("/o/{}", row.number)) { span class="what strong" { (say::is_here_order(row.number)) } },
                        None => a class="row" href=(format!("/new?of={id}")) { span class="what strong" { (say::is_back_check_in()) } },
                    }
                    @if let Some(owner) = vehicle.customer() {
                        h2 { (say::whose_it_is()) }
                        (customer_row(&known_customer(visit.snap, owner)?, &format!("/c/{owner}")))
                    }
                    details id="known-by" {
                        summary class="row" { span class="what" { (say::edit_plate_vin_name()) } }
                        (vehicle_form(visit, id.as_str())?)
                    }
                    (twins(visit, &id, &twin.same)?)
                }
                div {
                    @if let Some(kind) = shop::teaching::known_kind(visit.snap, &told(Field::Label))? {
                        a class="row" href=(format!("/kinds/{kind}")) { span class="what strong" { (say::what_work_taught()) } }
                    }
                    @let measured = shop::measures::of_vehicle(visit.snap, &id)?;
                    @if !measured.is_empty() {
                        h2 { (say::measured_last()) }
                        @for (name, value, day) in &measured {
                            div class="row" { span class="what" { (shop::say::capital(name)) } span class="number strong" { (value) } span class="soft" { (day) } }
                        }
                    }
                    h2 { (say::what_was_done()) }
                    @for row in visits.iter().take(MOST_VISITS) { (one_visit(visit, row)?) }
                    @for row in visits.iter().skip(MOST_VISITS) { (visit_row(row)) }
                }
            }
        }))
    })
    .await
}

/// A difference or a debt, with the tap that ends it.
fn standing(visit: &Visit<'_>, id: &VehicleId, fact: &VehicleFact) -> Markup {
    let (ends, label) = match fact {
        VehicleFact::LeftOwing { order, work, .. } => (
            json!({ "owing-done": { "order": order.as_str(), "work": WorkForm::of(work) } }),
            say::it_was_done(),
        ),
        VehicleFact::Differs { id, .. } => (
            json!({ "difference-ended": { "id": id.as_str() } }),
            say::as_others_again(),
        ),
        _ => return html! {},
    };
    let command = json!({ "stream": format!("vehicle:{id}"), "vehicle_fact": ends });
    html! {
        details id=(format!("ends-{}", standing_id(fact))) {
            summary class="row" { span class="mark half" {} span class="what" { (standing_text(visit.snap, fact)) } }
            form { div class="presses" { (button(Look::Plain, label, "", &[command], None)) } }
        }
    }
}

/// What the owner is to be rung about one day: an inspection, tyres to change, a belt by its age. It
/// hangs on the last visit, as what a vehicle left with does.
fn remind(visit: &Visit<'_>, id: &VehicleId) -> Result<Markup, Trouble> {
    let orders = visit.snap.world().orders_of_vehicle(id)?;
    let Some((_, last)) = orders.first() else {
        return Ok(html! {});
    };
    let command = |about: Value, day: &str| {
        json!({ "stream": format!("vehicle:{id}"), "vehicle_fact": { "left-owing": {
            "order": last.as_str(), "work": { "work": "other", "item": null, "own": new("reminder") },
            "item": null, "words": about,
            "until": { "later": { "date": field(day), "distance": null } } } } })
    };
    Ok(html! {
        details id="remind" {
            summary class="row" { span class="what" { (say::ring_one_day()) } }
            form {
                (required("remind", say::about_what(), say::reminder_hint(), ""))
                (needed_day("remind-on", say::on_which_day()))
                div class="presses" { (button(Look::Plain, say::note_it(), "", &[command(text("remind"), "remind-on")], None)) }
            }
        }
        details id="warranty" {
            summary class="row" { span class="what" { (say::ring_before_warranty_ends()) } }
            p class="gap soft" { (say::so_they_can_bring_it()) }
            form {
                (needed_day("warranty-on", say::ring_on_which_day()))
                div class="presses" { (button(Look::Plain, say::ring_them_then(), "", &[command(words(say::our_warranty_ends_soon()), "warranty-on")], None)) }
            }
        }
    })
}

/// How heavy and high it is: a lift is chosen by it.
fn weight_and_height(visit: &Visit<'_>, id: &VehicleId) -> Result<Markup, Trouble> {
    let vehicle = visit.snap.world().vehicle(id)?;
    let told = vehicle.figures();
    let (mass, length) = units(visit);
    let figure = |name: &str| {
        let found = told.iter().find(|(what, _)| what.as_str() == name);
        found.map_or_else(Default::default, |(_, (value, by))| {
            let by: Vec<String> = by.iter().map(|one| one.as_str().to_owned()).collect();
            (value.as_str().to_owned(), by)
        })
    };
    let (weight, weight_by): (String, Vec<String>) = figure(WEIGHT);
    let (height, height_by): (String, Vec<String>) = figure(HEIGHT);
    let tell = |name: &str, unit: &str, after: &[String]| {
        let told = json!({ "stream": format!("vehicle:{id}"), "vehicle_fact": { "figure-told": {
            "what": name, "value": amount(name, unit), "after": after } } });
        changed(name, when(name, told))
    };
    let commands = [
        tell(WEIGHT, mass, &weight_by),
        tell(HEIGHT, length, &height_by),
    ];
    let both = [weight.as_str(), height.as_str()];
    let known: Vec<&str> = both.into_iter().filter(|one| !one.is_empty()).collect();
    Ok(html! {
        details id="weight" {
            summary class="row" {
                span class="what" { (say::weight_and_height()) }
                @if known.is_empty() { span class="wait" { (say::not_told()) } } @else { span class="soft" { (known.join(", ")) } }
            }
            form {
                (input(WEIGHT, say::weight(), &say::with_its_load(mass), &weight))
                (not_read(&weight, Dimension::Mass))
                (input(HEIGHT, say::height(), &say::with_what_is_on_its_roof(length), &height))
                (not_read(&height, Dimension::Length))
                div class="presses" { (button(Look::Plain, say::save(), "", &commands, None)) }
            }
        }
    })
}

fn standing_id(fact: &VehicleFact) -> String {
    match fact {
        VehicleFact::Differs { id, .. } => id.as_str().to_owned(),
        VehicleFact::LeftOwing { order, work, .. } => {
            let item = work.item.as_ref().map_or("", |item| item.as_str());
            format!("{order}-{:?}-{item}", work.work)
        }
        _ => String::new(),
    }
}

/// The same vehicle under another name in the record: those that may be, and how they become
/// one; those that are one, and how they become two again.
fn twins(visit: &Visit<'_>, id: &VehicleId, same: &str) -> Result<Markup, Trouble> {
    let world = visit.snap.world();
    let found = twins_of_vehicle(visit.snap, id, same)?;
    let others: Vec<VehicleId> = world.same_vehicles(id).into_iter().skip(1).collect();
    let command = |of: &str, to: Option<&str>| -> Result<Value, Trouble> {
        let told = world.own_vehicle(&VehicleId::new(of))?.same_as().1;
        let after: Vec<&str> = told.iter().map(CommandId::as_str).collect();
        Ok(json!({ "stream": format!("vehicle:{of}"),
            "vehicle_fact": { "same-as": { "vehicle": to, "after": after } } }))
    };
    Ok(html! {
        details id="twins" open[!same.is_empty()] {
            summary class="row" {
                span class={ "what" @if !found.is_empty() { " wait" } } { @if found.is_empty() { (say::written_down_twice()) } @else { (say::same_vehicle_question()) } }
            }
            p class="gap soft" { (say::vehicles_shown_together()) }
            @for twin in &found {
                (vehicle_row(twin, &format!("/v/{}", twin.vehicle), ""))
                form { div class="presses" {
                    (button(Look::Plain, say::same_vehicle(), &twin.label, &[command(&twin.vehicle, Some(id.as_str()))?], None))
                } }
            }
            (look_for(&format!("/v/{id}"), same, say::plate_vin_model()))
        }
        @for other in &others {
            @let own = world.own_vehicle(other)?;
            @let text = |field| visit.snap.texts().text_of(own.text(field).words).unwrap_or_default();
            details id=(format!("apart-{other}")) {
                summary class="row" { span class="what" { (say::also_written_as(joined(&[&text(Field::Plate), &text(Field::Label)]))) } }
                form { div class="presses" {
                    (button(Look::Plain, say::two_after_all(), "", &[command(other.as_str(), None)?], None))
                } }
            }
        }
    })
}

/// One visit: what was said, found, done and proved.
fn one_visit(visit: &Visit<'_>, row: &OrderRow) -> Result<Markup, Trouble> {
    let order = order_of(visit, &row.number.to_string())?;
    Ok(html! {
        (visit_row(row))
        @for line in &order.lines {
            dl class="told" {
                dt class="soft" { (say::complaint()) } dd { (line.complaint) }
                @if let Some(cause) = &line.cause { dt class="soft" { (say::cause()) } dd { (cause) } }
                @if let Some(correction) = &line.correction { dt class="soft" { (say::correction()) } dd { (correction) } }
            }
        }
        @for proof in &order.papers.proofs {
            p class="gap soft" { (shop::say::capital(&proof.name)) @if let Some(words) = &proof.words { ": " (words) } " (" (proof.at) ")" }
        }
        a class="row" href=(format!("/o/{}/story", row.number)) { span class="what" { (say::story_of(row.number)) } }
    })
}

fn visit_row(row: &OrderRow) -> Markup {
    html! {
        a class="row" href=(format!("/o/{}", row.number)) {
            span class="what strong" { (row.number) }
            span class="strong upper" { (row.word_said()) }
        }
    }
}

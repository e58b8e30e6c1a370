//! Every calculator with no order: its page from its form, and the same through the JSON door.
//! Asked by address, so that an answer can be kept as a link; only a recording is too long.

use super::form::{answered_with, cautions, parts};
use crate::State;
use crate::allowed::caller_of;
use crate::door::{answer as refused, blocking};
use crate::layout::Part;
use crate::pages::{Shown, Visit, show_anybody};
use crate::phrases::bench as say;
use crate::tap::{Look, button, field, required};
use axum::body::Bytes;
use axum::extract::{self, Path, Query};
use axum::http::{HeaderMap, Uri};
use axum::response::{IntoResponse, Response};
use axum::{Form, Json};
use maud::{Markup, html};
use phrases::{Language, spoken};
use serde_json::{Value, json};
use shop::calculators::{self, Answer, Asked, Calculator, Other, ROOMS, Room};
use shop::mending::known;
use shop::{Snapshot, Trouble, TroubleKind};
use std::collections::BTreeMap;

/// Fields by name, as written.
pub type Fields = BTreeMap<String, String>;

/// Where a form stands, and what may be done with its answer.
pub struct Place<'a> {
    /// Where it is asked again.
    pub address: String,
    /// The item of an order that it is asked of.
    pub item: Option<&'a str>,
    /// How its answer is kept.
    pub keep: Option<Markup>,
}

/// Where a calculator stands.
fn address(room: &Room, calculator: &Calculator) -> String {
    format!("/calc/{}/{}", room.code, calculator.code)
}

fn room_of(code: &str) -> Result<&'static Room, Trouble> {
    calculators::room(code).ok_or_else(|| Trouble::not_found(say::no_such_calculator()))
}

/// A subject as it is called within a sentence; German writes its nouns with a capital there, too.
pub fn within_a_sentence(room: &Room) -> String {
    match spoken() {
        Language::English => room.name().to_lowercase(),
        Language::German => room.name().to_owned(),
    }
}

/// A room and one of its calculators.
pub fn found(room: &str, code: &str) -> Result<(&'static Room, &'static Calculator), Trouble> {
    let room = room_of(room)?;
    let one = room.calculators.iter().find(|one| one.code == code);
    let one =
        one.ok_or_else(|| Trouble::not_found(say::cannot_be_asked_that(within_a_sentence(room))))?;
    Ok((room, one))
}

/// All of them.
pub async fn all(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show_anybody(state, headers, |_| {
        Ok(Shown::new(
            say::work_it_out(),
            html! {
                h1 { (say::work_it_out()) }
                div class="columns" {
                    @for room in ROOMS {
                        section {
                            h2 { (room.name()) }
                            (rows(room))
                            a class="row" href=(format!("/calc/{}", room.code)) {
                                span class="what soft" { (say::what_to_know_of_it()) }
                            }
                        }
                    }
                }
            },
        )
        .of_part(Part::Bench))
    })
    .await
}

fn rows(room: &Room) -> Markup {
    html! {
        @for one in room.calculators {
            a class="row" href=(address(room, one)) {
                span class="what" { span class="beside line" { (one.name()) } span class="soft line" { (one.what()) } }
            }
        }
    }
}

/// Those of one subject, at the address that it always had.
pub async fn old_room(state: extract::State<State>, headers: HeaderMap, uri: Uri) -> Response {
    let code = uri.path().trim_matches('/').to_owned();
    room(state, headers, Path(code)).await
}

/// Those of one subject.
pub async fn room(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(code): Path<String>,
) -> Response {
    show_anybody(state, headers, move |visit| {
        let room = room_of(&code)?;
        let mut shown = Shown::new(
            room.name(),
            html! {
                h1 { (room.name()) }
                (cautions(&room.cautions()))
                div class="columns gap" {
                    div { (rows(room)) }
                    div {
                        @for (title, text) in room.notes() { h2 { (title) } p class="gap" { (text) } }
                        @if asks_height(room) { (height(visit)) }
                    }
                }
            },
        );
        shown.leads_to(say::work_it_out(), "/calc");
        Ok(shown)
    })
    .await
}

fn asks_height(room: &Room) -> bool {
    let all = room.calculators.iter();
    all.flat_map(|one| calculators::fields(one.form))
        .any(|field| field.name == "altitude")
}

/// The shop's height, as told; it is kept once for all that asks for it.
fn height(visit: &Visit<'_>) -> Markup {
    let world = visit.snap.world();
    let told = world.shop.altitude();
    let by: Vec<&str> = told.as_ref().map_or(Vec::new(), |(_, by)| {
        by.iter().map(shop::repair::CommandId::as_str).collect()
    });
    html! {
        h2 { (say::height_of_the_shop()) }
        p class="gap" { @match &told {
            Some((told, _)) => { (say::shop_stands_at()) span class="strong" { (told.as_str()) } (say::coolant_boils_lower()) },
            None => { (say::height_not_told()) },
        } }
        @if !visit.who.is_empty() { form class="narrow" {
            (required("altitude", say::height_above_the_sea(), say::height_hint(), ""))
            div class="presses" {
                (button(Look::Plain, say::keep_the_height(), "", &[json!({ "stream": "shop", "shop_fact": { "altitude-told": {
                    "altitude": field("altitude"), "after": by } } })], None))
            }
        } }
    }
}

/// One, at the address that it always had.
pub async fn old_page(
    state: extract::State<State>,
    headers: HeaderMap,
    uri: Uri,
    Path(code): Path<String>,
    query: Query<Fields>,
) -> Response {
    let room = uri.path().split('/').nth(1).unwrap_or_default().to_owned();
    page(state, headers, Path((room, code)), query).await
}

/// One: its form, and its answer where something is asked.
pub async fn page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((room, code)): Path<(String, String)>,
    Query(fields): Query<Fields>,
) -> Response {
    show_anybody(state, headers, move |visit| {
        shown(visit, &room, &code, fields)
    })
    .await
}

/// The same, asked with what is too long for an address.
pub async fn sent(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((room, code)): Path<(String, String)>,
    Form(fields): Form<Fields>,
) -> Response {
    show_anybody(state, headers, move |visit| {
        shown(visit, &room, &code, fields)
    })
    .await
}

fn shown(visit: &Visit<'_>, room: &str, code: &str, fields: Fields) -> Result<Shown, Trouble> {
    let (room, one) = found(room, code)?;
    let sent = !fields.is_empty();
    let mut asked = one.asked(fields, &known(visit.snap.world()));
    let answer = if sent {
        (one.run)(&mut asked)
    } else {
        for (name, value) in one.at_first {
            asked.or_else(name, value());
        }
        None
    };
    let answer = answer.filter(|_| asked.troubles.is_empty());
    let place = Place {
        address: address(room, one),
        item: None,
        keep: None,
    };
    let content = content(&place, one, &asked, answer.as_ref(), sent);
    let mut shown = Shown::new(one.name(), content);
    shown.leads_to(room.name(), &format!("/calc/{}", room.code));
    Ok(shown)
}

/// The form, and the answer beside it.
pub fn content(
    place: &Place<'_>,
    one: &Calculator,
    asked: &Asked,
    answer: Option<&Answer>,
    sent: bool,
) -> Markup {
    let here = &place.address;
    let other = |other: &Other| link(here, asked, other);
    html! {
        h1 { (one.name()) }
        (cautions(&one.cautions()))
        @if !one.how().is_empty() {
            details id="steps" {
                summary class="row" { span class="strong" { (say::how_to_test()) } }
                ol { @for step in one.how() { li class="row" { (step) } } }
            }
        }
        div class="columns" {
            div {
                @match answer {
                    Some(answer) => {
                        (answered_with(answer, "working", &other, &one.cautions()))
                        @if let Some(keep) = &place.keep { (keep) }
                    },
                    None if sent && !asked.troubles.is_empty() => { p class="alarm" { (say::not_worked_out_yet()) } },
                    None => {},
                }
            }
            form method=(if one.takes_file() { "post" } else { "get" }) action=(here) data-still[sent && one.takes_file()] {
                @if let Some(item) = place.item { input type="hidden" name="of" value=(item); }
                (parts(asked, one.form))
                // What is wrong pushes the form down: a press that stays in view would lie over it.
                @if answer.is_some() { div class="presses" { button class="press" type="submit" { (say::work_out()) } } }
                @else { div class={ "presses" @if !sent { " low" } } { button class="press confirm" type="submit" { (say::work_out()) } } }
            }
        }
    }
}

/// The same questions with one more answered.
fn link(here: &str, asked: &Asked, other: &Other) -> String {
    let mut query = form_urlencoded::Serializer::new(String::new());
    let (name, value) = &other.ask;
    for (field, text) in asked.fields().iter().filter(|(field, _)| *field != name) {
        query.append_pair(field, text);
    }
    query.append_pair(name, value);
    format!("{here}?{}", query.finish())
}

/// Every calculator with its fields, for a program.
#[utoipa::path(get, path = "/api/calc", responses((status = 200, body = Vec<Value>)))]
pub async fn described() -> Response {
    let rooms = ROOMS.iter().map(|room| {
        let all: Vec<Value> = room.calculators.iter().map(Calculator::json).collect();
        json!({ "room": room.code, "name": room.name(), "cautions": room.cautions(), "calculators": all })
    });
    Json(rooms.collect::<Vec<_>>()).into_response()
}

/// One answer, for a program: fields by name, as `/api/calc` lists them.
#[utoipa::path(
    get,
    path = "/api/calc/{room}/{calculator}",
    params(("room" = String, Path), ("calculator" = String, Path)),
    responses(
        (status = 200, body = Value),
        (status = 400, description = "a field is wrong: which, why, and how to mend it", body = Trouble),
        (status = 404, description = "there is no such calculator", body = Trouble),
        (status = 503, description = "the record, which says the shop's units, cannot be reached now", body = Trouble),
    )
)]
pub async fn asked(
    state: extract::State<State>,
    headers: HeaderMap,
    at: Path<(String, String)>,
    Query(fields): Query<Fields>,
) -> Response {
    told(state, headers, at, fields).await
}

/// The same with the fields in a JSON object, for what is too long for an address.
#[utoipa::path(
    post,
    path = "/api/calc/{room}/{calculator}",
    params(("room" = String, Path), ("calculator" = String, Path)),
    request_body = Value,
    responses(
        (status = 200, body = Value),
        (status = 400, description = "a field is wrong: which, why, and how to mend it", body = Trouble),
        (status = 404, description = "there is no such calculator", body = Trouble),
        (status = 503, description = "the record, which says the shop's units, cannot be reached now", body = Trouble),
    )
)]
pub async fn asked_in_full(
    state: extract::State<State>,
    headers: HeaderMap,
    at: Path<(String, String)>,
    body: Bytes,
) -> Response {
    match written(&body) {
        Ok(fields) => told(state, headers, at, fields).await,
        Err(trouble) => refused(&trouble),
    }
}

/// Fields out of a JSON object; a number stands for itself as written.
fn written(body: &[u8]) -> Result<Fields, Trouble> {
    let unreadable =
        |what: String| Trouble::unreadable(say::the_body(), what, say::send_an_object());
    let sent: BTreeMap<String, Value> =
        serde_json::from_slice(body).map_err(|error| unreadable(error.to_string()))?;
    let each = sent.into_iter().map(|(name, value)| match value {
        Value::String(text) => Ok((name, text)),
        Value::Number(number) => Ok((name, number.to_string())),
        Value::Bool(true) => Ok((name, "yes".to_owned())),
        Value::Bool(false) | Value::Null => Ok((name, String::new())),
        other => Err(unreadable(say::field_holds(name, other))),
    });
    each.collect()
}

async fn told(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((room, code)): Path<(String, String)>,
    fields: Fields,
) -> Response {
    let caller = caller_of(&state, &headers);
    let answer = blocking(move || {
        let (room, one) = found(&room, &code)?;
        let worked = |snap: &Snapshot<'_>| {
            let answer = one.answer(fields.clone(), &known(snap.world()));
            let mut value = answer.map_err(|troubles| wrong(&troubles))?.json();
            value["room"] = json!(room.code);
            value["calculator"] = json!(one.code);
            value["cautions"] = json!(one.cautions());
            Ok(value)
        };
        state.service.look(&caller, worked)
    });
    match answer.await {
        Ok(value) => Json(value).into_response(),
        Err(trouble) => refused(&trouble),
    }
}

/// The first trouble, with every other as a reason.
fn wrong(troubles: &[calculators::Trouble]) -> Trouble {
    let reasons = troubles.iter().skip(1).map(ToString::to_string).collect();
    let first = troubles.first().cloned();
    let mut trouble = first.map_or_else(
        || {
            Trouble::new(
                TroubleKind::Unreadable,
                say::the_fields(),
                say::no_answer_to_them(),
                say::look_at_each_again(),
            )
        },
        Trouble::from,
    );
    trouble.reasons = reasons;
    trouble
}

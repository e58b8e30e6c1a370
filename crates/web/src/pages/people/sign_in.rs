//! Signing in with a PIN, typing it again before a decision, and changing it.

use crate::State;
use crate::door::{answer, blocking, json_of};
use crate::entrance::{remember, sign_in_cookie};
use crate::network::Peer;
use crate::pages::{Shown, Visit, cookie, show, show_anybody, trouble_answer};
use crate::phrases::people as say;
use crate::tap::Look;
use axum::body::Bytes;
use axum::extract::{self, Extension, Form, Path, Query};
use axum::http::header::LOCATION;
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use serde::Deserialize;
use serde_json::json;
use shop::access::{LONGEST_PIN, SHORTEST_PIN};
use shop::repair::PersonId;
use shop::{Trouble, TroubleKind};
use std::sync::Arc;

/// Where to go on afterwards.
#[derive(Debug, Deserialize)]
pub struct Back {
    pub back: Option<String>,
}

/// A PIN as it was typed.
#[derive(Debug, Deserialize)]
pub struct Typed {
    pin: String,
    /// The same once more, where it is set.
    again: Option<String>,
    back: Option<String>,
}

/// A page of this program, and none elsewhere.
pub fn way_back(back: Option<&str>) -> String {
    match back {
        Some(to) if to.starts_with('/') && !to.starts_with("//") && !to.contains('\\') => {
            to.to_owned()
        }
        _ => "/".to_owned(),
    }
}

pub async fn ask(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(person): Path<String>,
    Query(back): Query<Back>,
) -> Response {
    let service = Arc::clone(&state.service);
    show_anybody(state, headers, move |visit| {
        let name = name_of(visit, &person)?;
        let has = service.access().has_pin(&person)?;
        Ok(Shown::new(
            say::pin(),
            form(&name, &person, has, &way_back(back.back.as_deref()), None),
        ))
    })
    .await
}

fn name_of(visit: &Visit<'_>, person: &str) -> Result<String, Trouble> {
    let people = visit.snap.world().shop.people();
    let found = people.get(&PersonId::new(person));
    let (name, _) = found.ok_or_else(|| Trouble::not_found(say::no_such_person()))?;
    Ok(visit.snap.texts().text(*name))
}

/// The pad: digits to press with gloves on, a field to type in.
fn form(name: &str, person: &str, has: bool, back: &str, wrong: Option<&Trouble>) -> Markup {
    html! {
        h1 { (name) }
        @if let Some(trouble) = wrong {
            p class="alarm" role="alert" { (shop::say::capital(&trouble.what)) }
            p class="soft" { (shop::say::capital(&trouble.mend)) }
        }
        @if !has {
            p class="gap" { (say::set_your_pin(SHORTEST_PIN, LONGEST_PIN)) }
        }
        form method="post" action=(format!("/sign-in/{person}")) class="narrow" data-pad {
            input type="hidden" name="back" value=(back);
            (pin_field("pin", say::pin(), if has { "current-password" } else { "new-password" }))
            @if !has { (pin_field("again", say::same_once_more(), "new-password")) }
            (pad())
            div class="presses two low" {
                button class="press confirm" type="submit" { @if has { (say::sign_in()) } @else { (say::set_pin()) } }
                a class="press" href="/who" { (say::not_this_person(name.split_whitespace().next().unwrap_or(name))) }
            }
        }
    }
}

fn pin_field(name: &str, label: &str, complete: &str) -> Markup {
    html! {
        label class="field" {
            span { (label) }
            input class="pin" type="password" name=(name) inputmode="numeric" pattern="[0-9]*" minlength=(SHORTEST_PIN) maxlength=(LONGEST_PIN) autocomplete=(complete) required;
        }
    }
}

/// Ten digits and one back, as large as a glove needs them.
fn pad() -> Markup {
    html! {
        div class="pad on-phone" aria-hidden="true" {
            @for digit in ["1", "2", "3", "4", "5", "6", "7", "8", "9", "", "0", "\u{232b}"] {
                @if digit.is_empty() { span {} }
                @else { button class="press" type="button" tabindex="-1" data-digit=(digit) { @if digit == "\u{232b}" { (say::back_key()) } @else { (digit) } } }
            }
        }
    }
}

pub async fn sign_in(
    extract::State(state): extract::State<State>,
    peer: Option<Extension<Peer>>,
    headers: HeaderMap,
    Path(person): Path<String>,
    Form(typed): Form<Typed>,
) -> Response {
    let peer = peer.map(|Extension(peer)| peer);
    let (service, network) = (Arc::clone(&state.service), state.network.clone());
    let (device, back) = (
        cookie(&headers, "device-id"),
        way_back(typed.back.as_deref()),
    );
    let (asked, shown_back) = (person.clone(), back.clone());
    let signed = blocking(move || {
        let device = device.ok_or_else(only_on_the_network)?;
        let access = service.access();
        let known = service
            .world()?
            .shop
            .people()
            .contains_key(&PersonId::new(&asked));
        if !known {
            return Err(Trouble::not_found(say::no_such_person()));
        }
        if !access.has_pin(&asked)? {
            if typed.again.as_deref() != Some(typed.pin.as_str()) {
                return Err(Trouble::new(
                    TroubleKind::Pin,
                    say::the_pin(),
                    say::not_the_same(),
                    say::type_it_twice(),
                ));
            }
            access.set_first_pin(&asked, &typed.pin)?;
        }
        access.sign_in(&device, &asked, &typed.pin)
    });
    match signed.await {
        Ok(id) => {
            if let Some(network) = network {
                network.forget();
            }
            let mut answer = (StatusCode::SEE_OTHER, [(LOCATION, back)]).into_response();
            remember(answer.headers_mut(), &sign_in_cookie(Some(&id), peer));
            answer
        }
        Err(trouble) if matches!(trouble.kind, TroubleKind::Pin | TroubleKind::Refused) => {
            again(state, headers, person, shown_back, trouble).await
        }
        Err(trouble) => trouble_answer(&trouble),
    }
}

/// The pad once more, with what was wrong.
async fn again(
    state: State,
    headers: HeaderMap,
    person: String,
    back: String,
    trouble: Trouble,
) -> Response {
    let service = Arc::clone(&state.service);
    let mut answer = show_anybody(state, headers, move |visit| {
        let name = name_of(visit, &person)?;
        let has = service.access().has_pin(&person)?;
        Ok(Shown::new(
            say::pin(),
            form(&name, &person, has, &back, Some(&trouble)),
        ))
    })
    .await;
    *answer.status_mut() = StatusCode::UNPROCESSABLE_ENTITY;
    answer
}

pub async fn sign_out(
    extract::State(state): extract::State<State>,
    peer: Option<Extension<Peer>>,
    headers: HeaderMap,
) -> Response {
    let (service, network) = (Arc::clone(&state.service), state.network.clone());
    let done = blocking(move || {
        let device = cookie(&headers, "device-id").ok_or_else(only_on_the_network)?;
        service.access().sign_out(&device)
    });
    if let Err(trouble) = done.await {
        return trouble_answer(&trouble);
    }
    if let Some(network) = network {
        network.forget();
    }
    let mut answer = (StatusCode::SEE_OTHER, [(LOCATION, "/who")]).into_response();
    let peer = peer.map(|Extension(peer)| peer);
    remember(answer.headers_mut(), &sign_in_cookie(None, peer));
    answer
}

/// The PIN once more, before something that is decided on a page of its own.
pub async fn ask_again(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(back): Query<Back>,
) -> Response {
    let back = way_back(back.back.as_deref());
    show(state, headers, move |_| {
        Ok(Shown::new(say::pin(), again_form(&back, None)))
    })
    .await
}

fn again_form(back: &str, wrong: Option<&Trouble>) -> Markup {
    html! {
        h1 { (say::your_pin_please()) }
        @if let Some(trouble) = wrong {
            p class="alarm" role="alert" { (shop::say::capital(&trouble.what)) }
            p class="soft" { (shop::say::capital(&trouble.mend)) }
        }
        p class="gap" { (say::press_once_more()) }
        form method="post" action="/prove" class="narrow" data-pad {
            input type="hidden" name="back" value=(back);
            (pin_field("pin", say::pin(), "current-password"))
            (pad())
            div class="presses low" { button class="press confirm" type="submit" { (say::go_on()) } }
        }
    }
}

pub async fn proved(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Form(typed): Form<Typed>,
) -> Response {
    let back = way_back(typed.back.as_deref());
    let (service, network) = (Arc::clone(&state.service), state.network.clone());
    let device = cookie(&headers, "device-id");
    let done = blocking(move || {
        let device = device.ok_or_else(only_on_the_network)?;
        service.access().prove(&device, &typed.pin)
    });
    match done.await {
        Ok(()) => {
            if let Some(network) = network {
                network.forget();
            }
            (StatusCode::SEE_OTHER, [(LOCATION, back)]).into_response()
        }
        Err(trouble) => {
            let shown =
                move |_: &Visit<'_>| Ok(Shown::new(say::pin(), again_form(&back, Some(&trouble))));
            let mut answer = show(state, headers, shown).await;
            *answer.status_mut() = StatusCode::UNPROCESSABLE_ENTITY;
            answer
        }
    }
}

/// The PIN of who is signed in, before a decision.
#[derive(Debug, Deserialize)]
struct Proof {
    pin: String,
}

/// The PIN of another person, for one tap on this device.
#[derive(Debug, Deserialize)]
struct Beside {
    person: String,
    pin: String,
}

/// Takes the PIN of who is signed in on this device, so that they may decide for a while.
#[utoipa::path(
    post,
    path = "/api/pin",
    request_body(content = Value, description = "`pin`: the PIN of who is signed in on this device"),
    responses(
        (status = 204, description = "it is right: for a while decisions are taken"),
        (status = 400, description = "cannot be read", body = Trouble),
        (status = 401, description = "it is wrong, or has to be waited for, or nobody is signed in", body = Trouble),
        (status = 503, description = "not now", body = Trouble),
    )
)]
pub async fn prove(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    body: Bytes,
) -> Response {
    let done = blocking(move || {
        let proof: Proof = json_of(&headers, &body, say::a_pin())?;
        let device = cookie(&headers, "device-id").ok_or_else(only_on_the_network)?;
        state.service.access().prove(&device, &proof.pin)?;
        if let Some(network) = &state.network {
            network.forget();
        }
        Ok(())
    });
    match done.await {
        Ok(()) => StatusCode::NO_CONTENT.into_response(),
        Err(trouble) => answer(&trouble),
    }
}

/// Takes the PIN of another person who stands at this device, for one tap of theirs: a second
/// check, a clearance. Who is signed in stays so.
#[utoipa::path(
    post,
    path = "/api/pin/beside",
    request_body(content = Value, description = "`person` and their `pin`"),
    responses(
        (status = 200, description = "`sign_in`: what their tap is sent with", body = Value),
        (status = 400, description = "cannot be read", body = Trouble),
        (status = 401, description = "it is wrong, or has to be waited for", body = Trouble),
        (status = 503, description = "not now", body = Trouble),
    )
)]
pub async fn beside(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    body: Bytes,
) -> Response {
    let done = blocking(move || {
        let asked: Beside = json_of(&headers, &body, say::person_and_pin())?;
        let device = cookie(&headers, "device-id").ok_or_else(only_on_the_network)?;
        state
            .service
            .access()
            .sign_beside(&device, &asked.person, &asked.pin)
    });
    match done.await {
        Ok(id) => axum::Json(json!({ "sign_in": id })).into_response(),
        Err(trouble) => answer(&trouble),
    }
}

pub async fn change(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |_| {
        Ok(Shown::new(say::your_pin(), change_form(None)))
    })
    .await
}

fn change_form(wrong: Option<&Trouble>) -> Markup {
    html! {
        h1 { (say::your_pin()) }
        @if let Some(trouble) = wrong {
            p class="alarm" role="alert" { (shop::say::capital(&trouble.what)) }
            p class="soft" { (shop::say::capital(&trouble.mend)) }
        }
        form method="post" action="/pin" class="narrow" {
            (pin_field("old", say::pin_until_now(), "current-password"))
            (pin_field("pin", say::new_pin(), "new-password"))
            (pin_field("again", say::new_pin_once_more(), "new-password"))
            div class="presses" { button class="press confirm" type="submit" { (say::change_pin()) } }
        }
    }
}

/// An old PIN and a new one.
#[derive(Debug, Deserialize)]
pub struct NewPin {
    old: String,
    pin: String,
    again: String,
}

pub async fn changed(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Form(typed): Form<NewPin>,
) -> Response {
    let service = Arc::clone(&state.service);
    let who = cookie(&headers, "who").unwrap_or_default();
    let done = blocking(move || {
        if typed.pin != typed.again {
            return Err(Trouble::new(
                TroubleKind::Pin,
                say::the_pin(),
                say::not_the_same(),
                say::type_new_one_twice(),
            ));
        }
        service.access().change_pin(&who, &typed.old, &typed.pin)
    });
    let done = done.await;
    show(state, headers, move |_| {
        let content = match &done {
            Ok(()) => html! {
                h1 { (say::pin_is_changed()) }
                div class="presses low" { (crate::tap::link(Look::Confirm, say::to_the_day(), "", "/")) }
            },
            Err(trouble) => change_form(Some(trouble)),
        };
        Ok(Shown::new(say::your_pin(), content))
    })
    .await
}

/// Where one machine alone is served, nobody has a PIN.
fn only_on_the_network() -> Trouble {
    Trouble::new(
        TroubleKind::NotFound,
        say::this_device(),
        say::asks_no_pin(),
        say::start_with_shop_network(),
    )
}

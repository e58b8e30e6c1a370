//! A device joins: with the code that the desk shows, under a name that people know it by.

use super::sign_in::way_back;
use crate::State;
use crate::door::blocking;
use crate::entrance::{device_cookie, remember};
use crate::network::Peer;
use crate::pages::{Shown, bare_page, trouble_answer};
use crate::phrases::people as say;
use crate::tap::{chips, required};
use axum::extract::{self, Extension, Form, Path};
use axum::http::StatusCode;
use axum::http::header::LOCATION;
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use serde::Deserialize;
use shop::Trouble;
use shop::access::Place;
use std::sync::Arc;

/// What is typed on the device that joins.
#[derive(Debug, Deserialize)]
pub struct Joining {
    code: String,
    name: String,
    place: String,
}

pub async fn by_hand() -> Response {
    bare_page(Shown::new(say::join(), form("", "", None)))
}

pub async fn by_code(
    extract::State(state): extract::State<State>,
    Path(code): Path<String>,
) -> Response {
    let (service, asked) = (Arc::clone(&state.service), code.clone());
    match blocking(move || service.access().check_code(&asked)).await {
        Ok(()) => bare_page(Shown::new(say::join(), form(&code, "", None))),
        Err(trouble) => {
            let mut answer = bare_page(Shown::new(say::join(), form("", "", Some(&trouble))));
            *answer.status_mut() = StatusCode::UNPROCESSABLE_ENTITY;
            answer
        }
    }
}

fn form(code: &str, name: &str, wrong: Option<&Trouble>) -> Markup {
    html! {
        h1 { (say::join_the_shop()) }
        @if let Some(trouble) = wrong {
            p class="alarm" role="alert" { (shop::say::capital(&trouble.what)) }
            p class="soft" { (shop::say::capital(&trouble.mend)) }
        }
        form method="post" action="/join" class="narrow" {
            @if code.is_empty() || wrong.is_some() {
                (required("code", say::code(), say::code_hint(), code))
            } @else {
                input type="hidden" name="code" value=(code);
            }
            (required("name", say::what_is_it_called(), say::device_name_hint(), name))
            (chips("place", say::where_used(), &[("stall", say::at_the_vehicles()), ("desk", say::at_the_desk())], "stall"))
            div class="presses" { button class="press confirm" type="submit" { (say::join()) } }
        }
    }
}

pub async fn join(
    extract::State(state): extract::State<State>,
    peer: Option<Extension<Peer>>,
    Form(typed): Form<Joining>,
) -> Response {
    let service = Arc::clone(&state.service);
    let (code, name) = (typed.code.clone(), typed.name.clone());
    let place = match typed.place.as_str() {
        "desk" => Place::Desk,
        _ => Place::Stall,
    };
    match blocking(move || service.access().join(&code, &name, place)).await {
        Ok(joined) => {
            let to = way_back(Some("/who"));
            let mut answer = (StatusCode::SEE_OTHER, [(LOCATION, to)]).into_response();
            let peer = peer.map(|Extension(peer)| peer);
            remember(answer.headers_mut(), &device_cookie(&joined.key, peer));
            answer
        }
        Err(trouble) if trouble.kind == shop::TroubleKind::Refused => {
            let shown = form(&typed.code, &typed.name, Some(&trouble));
            let mut answer = bare_page(Shown::new(say::join(), shown));
            *answer.status_mut() = StatusCode::UNPROCESSABLE_ENTITY;
            answer
        }
        Err(trouble) => trouble_answer(&trouble),
    }
}

//! A device joins: with the code that the desk shows, under a name that people know it by.

use super::sign_in::way_back;
use crate::State;
use crate::door::blocking;
use crate::entrance::{device_cookie, remember};
use crate::network::Peer;
use crate::pages::{Shown, bare_page, trouble_answer};
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
    bare_page(Shown::new("Join", form("", "", None)))
}

pub async fn by_code(
    extract::State(state): extract::State<State>,
    Path(code): Path<String>,
) -> Response {
    let (service, asked) = (Arc::clone(&state.service), code.clone());
    match blocking(move || service.access().check_code(&asked)).await {
        Ok(()) => bare_page(Shown::new("Join", form(&code, "", None))),
        Err(trouble) => {
            let mut answer = bare_page(Shown::new("Join", form("", "", Some(&trouble))));
            *answer.status_mut() = StatusCode::UNPROCESSABLE_ENTITY;
            answer
        }
    }
}

fn form(code: &str, name: &str, wrong: Option<&Trouble>) -> Markup {
    html! {
        h1 { "Join the shop" }
        @if let Some(trouble) = wrong {
            p class="alarm" role="alert" { (shop::say::capital(&trouble.what)) }
            p class="soft" { (shop::say::capital(&trouble.mend)) }
        }
        form method="post" action="/join" class="narrow" {
            @if code.is_empty() || wrong.is_some() {
                (required("code", "Code", "twelve letters and digits, shown at the desk", code))
            } @else {
                input type="hidden" name="code" value=(code);
            }
            (required("name", "What do people call this device?", "such as Pavel's phone, or tablet at lift 2", name))
            (chips("place", "Where is it used?", &[("stall", "at the vehicles"), ("desk", "at the desk")], "stall"))
            div class="presses" { button class="press confirm" type="submit" { "Join" } }
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
            let mut answer = bare_page(Shown::new("Join", shown));
            *answer.status_mut() = StatusCode::UNPROCESSABLE_ENTITY;
            answer
        }
        Err(trouble) => trouble_answer(&trouble),
    }
}

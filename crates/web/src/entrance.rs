//! The entrance of a program that is reached over the shop's network: which device asks, and
//! who is signed in on it.
//!
//! What a browser says of itself counts for nothing but its device's key. Behind the entrance
//! the cookie says who is signed in (`who`), on which device (`device-id`), under which sign-in
//! (`sign-in`): pages and doors read it as they do where one machine alone is served.

use crate::State;
use crate::door::{answer, blocking};
use crate::network::{Known, Network, Peer};
use crate::pages::{cookie, trouble_answer};
use crate::phrases::frame as say;
use axum::body::Body;
use axum::extract::{self, MatchedPath, Request};
use axum::http::header::{CACHE_CONTROL, COOKIE, HeaderValue, LOCATION, SET_COOKIE};
use axum::http::{HeaderMap, StatusCode};
use axum::middleware::Next;
use axum::response::{IntoResponse, Response};
use shop::{Trouble, TroubleKind};
use std::sync::Arc;

/// Routes for whoever has not joined: how to, and the files of a page.
const STRANGERS: &[&str] = &[
    "/join",
    "/join/{code}",
    "/service-worker.js",
    "/manifest.webmanifest",
];

/// Routes for a device on which nobody is signed in: who it is, and what was tapped before.
const NOBODY: &[&str] = &[
    "/who",
    "/who/{person}",
    "/sign-in/{person}",
    "/setup",
    "/api/commands",
    "/api/live",
    "/out-of-reach",
];

/// Lets a request in with what is known of its device.
pub async fn enter(
    extract::State(state): extract::State<State>,
    mut request: Request<Body>,
    next: Next,
) -> Response {
    let Some(network) = state.network.clone() else {
        return next.run(request).await;
    };
    let route = route_of(&request);
    let peer = request.extensions().get::<Peer>().copied();
    let key = cookie(request.headers(), "device");
    let known = match known(&state, &network, key).await {
        Ok(known) => known,
        Err(trouble) => return told(&route, &trouble),
    };
    let asks = match (&known, peer) {
        (Some(known), _) => known.device.clone(),
        (None, Some(peer)) => peer.address.to_string(),
        (None, None) => "nobody".to_owned(),
    };
    if !network.may_ask(&asks, known.is_some()) {
        return too_much(&route);
    }
    if route.starts_with("/assets/") || STRANGERS.contains(&route.as_str()) {
        enters(request.headers_mut(), known.as_ref());
        return next.run(request).await;
    }
    let (known, fresh_key) = match known {
        Some(known) => (known, None),
        None if is_here(peer) && !route.starts_with("/api/") => match this_machine(&state).await {
            Ok((known, key)) => (known, Some(key)),
            Err(trouble) => return told(&route, &trouble),
        },
        None => return told(&route, &not_joined()),
    };
    let mut answer = match kept_out(&route, &known) {
        Some(KeptOut::Nobody) if !route.starts_with("/api/") => {
            let back = request.uri().path_and_query().map_or("/", |to| to.as_str());
            to_sign_in(back)
        }
        Some(kept_out) => told(&route, &kept_out.trouble()),
        None => {
            let page = request.uri().path().to_owned();
            enters(request.headers_mut(), Some(&known));
            let answer = next.run(request).await;
            if answer.status().is_success() && PERSONAL.contains(&route.as_str()) {
                note_opened(&state, &network, &known, page).await;
            }
            answer
        }
    };
    if let Some(key) = fresh_key {
        remember(answer.headers_mut(), &device_cookie(&key, peer));
    }
    // What stands on a page is somebody's: a shared computer keeps no copy of it.
    let cached = answer.headers_mut().entry(CACHE_CONTROL);
    cached.or_insert(HeaderValue::from_static("no-store"));
    answer
}

/// The cookie with a device's key, for ten years: it is put out by the shop, not by time.
pub fn device_cookie(key: &str, peer: Option<Peer>) -> String {
    let secure = secure(peer);
    format!("device={key}; Path=/; SameSite=Strict; Max-Age=315360000; HttpOnly{secure}")
}

/// The cookie with the sign-in: the page stamps each tap with it. It opens nothing by itself.
pub fn sign_in_cookie(id: Option<&str>, peer: Option<Peer>) -> String {
    let secure = secure(peer);
    match id {
        Some(id) => format!("sign-in={id}; Path=/; SameSite=Strict; Max-Age=315360000{secure}"),
        None => format!("sign-in=; Path=/; SameSite=Strict; Max-Age=0{secure}"),
    }
}

fn secure(peer: Option<Peer>) -> &'static str {
    match peer {
        Some(Peer { secure: true, .. }) => "; Secure",
        _ => "",
    }
}

/// Adds a cookie to an answer.
pub fn remember(headers: &mut HeaderMap, cookie: &str) {
    if let Ok(value) = HeaderValue::from_str(cookie) {
        headers.append(SET_COOKIE, value);
    }
}

fn route_of(request: &Request<Body>) -> String {
    let matched = request.extensions().get::<MatchedPath>();
    matched.map_or_else(
        || request.uri().path().to_owned(),
        |path| path.as_str().to_owned(),
    )
}

async fn known(
    state: &State,
    network: &Network,
    key: Option<String>,
) -> Result<Option<Known>, Trouble> {
    let Some(key) = key else { return Ok(None) };
    let (service, network) = (Arc::clone(&state.service), network.clone());
    blocking(move || network.known(&service, &key)).await
}

/// Whether it comes from the machine that the program runs on.
fn is_here(peer: Option<Peer>) -> bool {
    peer.is_some_and(|peer| peer.here)
}

/// The machine itself joins by being it.
async fn this_machine(state: &State) -> Result<(Known, String), Trouble> {
    let service = Arc::clone(&state.service);
    blocking(move || {
        let joined = service.access().join_this_machine()?;
        let found = service.access().device_with(&joined.key)?;
        let (device, card) = found.ok_or_else(not_joined)?;
        let known = Known {
            device,
            card,
            signed: None,
            idle: false,
        };
        Ok((known, joined.key))
    })
    .await
}

/// Pages that show who a customer is.
const PERSONAL: &[&str] = &[
    "/o/{number}",
    "/o/{number}/desk",
    "/o/{number}/story",
    "/o/{number}/ask",
    "/o/{number}/estimate",
    "/o/{number}/added",
    "/o/{number}/invoice",
    "/o/{number}/papers/{kind}",
    "/v/{vehicle}",
    "/file/{id}",
    "/api/orders/{number}",
];

/// Notes for the owner who opened it. What can't be noted now keeps nobody from the work.
async fn note_opened(state: &State, network: &Network, known: &Known, page: String) {
    let Some((_, signed)) = &known.signed else {
        return;
    };
    let day = state.service.now().as_second().div_euclid(24 * 60 * 60);
    if !network.opens(day, &signed.person, &page) {
        return;
    }
    let (service, person) = (Arc::clone(&state.service), signed.person.clone());
    let device = known.card.name.clone();
    let noted = blocking(move || service.access().note_opened(&person, &page, &device));
    let _ = noted.await;
}

/// Why a device that is known does not get what it asks for.
enum KeptOut {
    /// The owner has put it out.
    PutOut,
    /// Nobody is signed in on it.
    Nobody,
}

impl KeptOut {
    fn trouble(&self) -> Trouble {
        let (place, what, mend) = match self {
            Self::PutOut => (say::this_device(), say::was_put_out(), say::let_in_again()),
            Self::Nobody => (
                say::who_it_is(),
                say::nobody_signed_in(),
                say::name_and_pin(),
            ),
        };
        Trouble::new(TroubleKind::SignIn, place, what, mend)
    }
}

/// Why it does not get it; nothing if it does.
fn kept_out(route: &str, known: &Known) -> Option<KeptOut> {
    if known.card.put_out_at.is_some() {
        return (route != "/api/commands").then_some(KeptOut::PutOut);
    }
    let may = NOBODY.contains(&route) || (known.signed.is_some() && !known.idle);
    (!may).then_some(KeptOut::Nobody)
}

/// Puts what was found into the request, in place of what the browser said of itself.
fn enters(headers: &mut HeaderMap, known: Option<&Known>) {
    headers.remove(COOKIE);
    let Some(known) = known else { return };
    let mut cookie = format!("device-id={}", known.device);
    if let Some((id, signed)) = known.signed.as_ref().filter(|_| !known.idle) {
        cookie += &format!("; who={}; sign-in={id}", signed.person);
    }
    if let Ok(value) = HeaderValue::from_str(&cookie) {
        headers.insert(COOKIE, value);
    }
}

fn to_sign_in(back: &str) -> Response {
    let back: String = form_urlencoded::byte_serialize(back.as_bytes()).collect();
    let to = format!("/who?back={back}");
    (StatusCode::SEE_OTHER, [(LOCATION, to)]).into_response()
}

fn not_joined() -> Trouble {
    Trouble::new(
        TroubleKind::SignIn,
        say::this_device(),
        say::has_not_joined(),
        say::scan_the_code(),
    )
}

fn told(route: &str, trouble: &Trouble) -> Response {
    if route.starts_with("/api/") {
        answer(trouble)
    } else {
        trouble_answer(trouble)
    }
}

fn too_much(route: &str) -> Response {
    let trouble = Trouble::new(
        TroubleKind::Away,
        say::this_device(),
        say::asks_too_much(),
        say::wait_a_moment(),
    );
    let mut answer = told(route, &trouble);
    *answer.status_mut() = StatusCode::TOO_MANY_REQUESTS;
    answer
}

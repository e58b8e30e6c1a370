//! Who may open what: every route passes the shop's table of roles before its page or door.

use crate::State;
use crate::door::answer;
use crate::pages::{cookie, trouble_answer};
use axum::body::Body;
use axum::extract::{self, MatchedPath, Request};
use axum::middleware::Next;
use axum::response::Response;
use shop::Caller;
use shop::roles::{self, Act};

/// Routes that need no person: picking one, setting the shop up, and the files of a page.
pub const OPEN: &[&str] = &[
    "/who",
    "/who/{person}",
    "/setup",
    "/join",
    "/join/{code}",
    "/sign-in/{person}",
    "/sign-out",
    "/service-worker.js",
    "/manifest.webmanifest",
    "/out-of-reach",
];

/// Lets a request through if the person of the page may see what it asks for.
///
/// A page that nobody was picked for leads to the list of people by itself. Until people
/// sign in, a program of this machine that asks at the JSON door without naming anybody is
/// taken as the shop's own.
pub async fn allowed(
    extract::State(state): extract::State<State>,
    request: Request<Body>,
    next: Next,
) -> Response {
    let route = request
        .extensions()
        .get::<MatchedPath>()
        .map(|path| path.as_str().to_owned());
    let Some(route) = route.filter(|route| !is_open(route)) else {
        return next.run(request).await;
    };
    let Some(who) = cookie(request.headers(), "who") else {
        return next.run(request).await;
    };
    let caller = state.service.known_caller(Some(&who), "page");
    if caller.roles.is_empty() {
        return next.run(request).await;
    }
    match roles::check(&caller, Act::See(&route)) {
        Ok(()) => next.run(request).await,
        Err(trouble) if route.starts_with("/api/") => answer(&trouble),
        Err(trouble) => trouble_answer(&trouble),
    }
}

fn is_open(route: &str) -> bool {
    OPEN.contains(&route) || route.starts_with("/assets/")
}

/// Who asks at the JSON door: the person of the page, if there is one.
pub fn caller_of(state: &State, headers: &axum::http::HeaderMap) -> Caller {
    match cookie(headers, "who") {
        Some(who) => state.service.known_caller(Some(&who), "page"),
        None => Caller::program(),
    }
}

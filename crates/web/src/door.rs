//! The JSON door.

use crate::State;
use crate::allowed::caller_of;
use crate::pages::{cookie, no_order};
use crate::phrases::frame as say;
use axum::Json;
use axum::body::Bytes;
use axum::extract::{self, Path, Query};
use axum::http::header::CONTENT_TYPE;
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use serde::Deserialize;
use serde::de::DeserializeOwned;
use serde_json::Value;
use shop::view::{self, DayTold, OrderRow, OrderView};
use shop::{Accepted, SentCommand, Snapshot, Trouble, TroubleKind};
use utoipa::OpenApi;

/// The description of the JSON door, made from the code.
#[derive(OpenApi)]
#[openapi(
    info(
        title = "buttonup",
        description = "One shop's record. Facts are never refused; requests may be. Answers follow a synced commit."
    ),
    paths(
        commands,
        check,
        day,
        orders,
        order,
        openapi,
        crate::live::live,
        crate::pages::bench::calc::described,
        crate::pages::bench::calc::asked,
        crate::pages::bench::calc::asked_in_full,
        crate::pages::vehicle::reach::in_work,
        crate::pages::vehicle::reach::bundle,
        crate::pages::people::sign_in::prove,
        crate::pages::people::sign_in::beside
    ),
    components(schemas(SentCommand, Accepted, Trouble, DayTold, OrderRow, OrderView))
)]
pub struct ApiDoc;

/// Runs what may block where blocking is allowed.
pub async fn blocking<T: Send + 'static>(
    work: impl FnOnce() -> Result<T, Trouble> + Send + 'static,
) -> Result<T, Trouble> {
    let language = phrases::spoken();
    tokio::task::spawn_blocking(move || phrases::speaking(language, || shop::whole(work)))
        .await
        .unwrap_or_else(|_| {
            Err(Trouble::new(
                TroubleKind::Record,
                say::the_program(),
                say::stopped_in_the_middle(),
                say::try_again(),
            ))
        })
}

/// The status that a trouble is answered with, on a page as at the door.
pub fn status(trouble: &Trouble) -> StatusCode {
    match trouble.kind {
        TroubleKind::Unreadable => StatusCode::BAD_REQUEST,
        TroubleKind::Refused | TroubleKind::Doubtful => StatusCode::UNPROCESSABLE_ENTITY,
        TroubleKind::Conflict | TroubleKind::IdReused => StatusCode::CONFLICT,
        TroubleKind::NotFound => StatusCode::NOT_FOUND,
        TroubleKind::SignIn | TroubleKind::Pin => StatusCode::UNAUTHORIZED,
        TroubleKind::Record => StatusCode::INTERNAL_SERVER_ERROR,
        TroubleKind::Away | TroubleKind::Waits => StatusCode::SERVICE_UNAVAILABLE,
    }
}

/// A trouble as an answer.
pub fn answer(trouble: &Trouble) -> Response {
    (status(trouble), Json(trouble)).into_response()
}

/// Takes one command: a fact, or a request that may be refused.
#[utoipa::path(
    post,
    path = "/api/commands",
    request_body = SentCommand,
    responses(
        (status = 200, description = "written down; a repeat gets the same answer", body = Accepted),
        (status = 400, description = "cannot be read", body = Trouble),
        (status = 401, description = "over the shop's network: nobody is signed in, or the PIN is asked for first; of kind `sign-in` or `pin`", body = Trouble),
        (status = 409, description = "somebody else was quicker, or the id was used before", body = Trouble),
        (status = 422, description = "refused, with every reason", body = Trouble),
        (status = 503, description = "not now: keep it and send it again; of kind `waits` only its own stream takes nothing, of kind `away` nothing does", body = Trouble),
    )
)]
pub async fn commands(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    body: Bytes,
) -> Response {
    let sent = match json_of(&headers, &body, say::one_command()) {
        Ok(sent) => sent,
        Err(trouble) => return answer(&trouble),
    };
    match blocking(move || command_of(&state, &headers, sent)).await {
        Ok(accepted) => Json(accepted).into_response(),
        Err(trouble) => answer(&trouble),
    }
}

/// What came as JSON.
pub fn json_of<T: DeserializeOwned>(
    headers: &HeaderMap,
    body: &[u8],
    wanted: &str,
) -> Result<T, Trouble> {
    let json = headers
        .get(CONTENT_TYPE)
        .and_then(|value| value.to_str().ok())
        .is_some_and(|media| media.split(';').next().unwrap_or("").trim() == "application/json");
    if !json {
        return Err(Trouble::unreadable(
            say::the_content_type(),
            say::only_json(),
            say::send_json(),
        ));
    }
    serde_json::from_slice(body).map_err(|error| {
        let what = if error.is_data() {
            say::it_is_not(wanted, error)
        } else {
            say::it_is_no_json(error)
        };
        let mend = say::send_what_is_wanted(wanted);
        Trouble::unreadable(say::the_body(), what, &mend)
    })
}

/// Asks whether any of these commands would be refused, and writes nothing: a form of several
/// is sent only if none would.
#[utoipa::path(
    post,
    path = "/api/commands/check",
    request_body(content = Vec<Value>, description = "commands as they are sent, without the fields that a device adds when it sends them: `command_id`, `device`, `device_seq`, `happened_at`"),
    responses(
        (status = 204, description = "none would be refused, as far as that can be known now"),
        (status = 400, description = "one cannot be read", body = Trouble),
        (status = 422, description = "one would be refused, and why", body = Trouble),
        (status = 503, description = "not now", body = Trouble),
    )
)]
pub async fn check(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    body: Bytes,
) -> Response {
    let parts: Vec<Value> = match json_of(&headers, &body, say::list_of_commands()) {
        Ok(parts) => parts,
        Err(trouble) => return answer(&trouble),
    };
    let checked = blocking(move || {
        let page = cookie(&headers, "who");
        // Over the network whoever asks is who is signed in.
        let named = parts.first().and_then(|part| part.get("who")?.as_str());
        let named = named.filter(|_| state.network.is_none());
        let caller = state.service.caller(named.or(page.as_deref()), "page")?;
        state.service.check(&caller, parts)
    });
    match checked.await {
        Ok(()) => StatusCode::NO_CONTENT.into_response(),
        Err(trouble) => answer(&trouble),
    }
}

/// Takes a command of the person it names. Where this machine alone is served, who a page was
/// opened for and who is named in it are one; over the network the sign-in says who it was.
fn command_of(state: &State, headers: &HeaderMap, sent: Value) -> Result<Accepted, Trouble> {
    if let Some(network) = &state.network {
        let device = cookie(headers, "device-id").unwrap_or_default();
        let accepted = state.service.command_from(&device, sent);
        network.forget();
        return accepted;
    }
    let named = sent.get("who").and_then(Value::as_str);
    let device = sent.get("device").and_then(Value::as_str).unwrap_or("");
    let page = cookie(headers, "who");
    let caller = state.service.caller(named.or(page.as_deref()), device)?;
    state.service.command(&caller, sent)
}

/// The days ahead: who works where and when, how sure each promise is, whom to ring. The same as
/// `buttonup day --data FOLDER --json` says.
#[utoipa::path(
    get,
    path = "/api/day",
    responses(
        (status = 200, description = "the days ahead", body = DayTold),
        (status = 503, description = "not now", body = Trouble),
    )
)]
pub async fn day(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    let caller = caller_of(&state, &headers);
    match blocking(move || state.service.look(&caller, view::day_told)).await {
        Ok(day) => Json(day).into_response(),
        Err(trouble) => answer(&trouble),
    }
}

/// What to look for.
#[derive(Debug, Deserialize, utoipa::IntoParams)]
pub struct Find {
    /// A number, a plate, a vehicle or a name; all orders without it.
    pub find: Option<String>,
    /// Only orders below this number: the last one's of the answer before.
    pub before: Option<u64>,
}

/// Orders on one line each, newest first, 50 at a time.
#[utoipa::path(
    get,
    path = "/api/orders",
    params(Find),
    responses(
        (status = 200, description = "orders, newest first", body = Vec<OrderRow>),
        (status = 400, description = "the address cannot be read", body = Trouble),
        (status = 503, description = "not now", body = Trouble),
    )
)]
pub async fn orders(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(find): Query<Find>,
) -> Response {
    let caller = caller_of(&state, &headers);
    let found = blocking(move || {
        let rows = |snap: &Snapshot<'_>| view::rows(snap, find.find.as_deref(), find.before);
        state.service.look(&caller, rows)
    });
    match found.await {
        Ok(rows) => Json(rows).into_response(),
        Err(trouble) => answer(&trouble),
    }
}

/// Which part of a story.
#[derive(Debug, Deserialize, utoipa::IntoParams)]
#[into_params(parameter_in = Query)]
pub struct StoryPart {
    /// The part of the story before this place: `story_before` of the answer before.
    pub before: Option<usize>,
}

/// One order, with the last 200 things of its story.
#[utoipa::path(
    get,
    path = "/api/orders/{number}",
    params(("number" = u64, Path, description = "the number people call it by"), StoryPart),
    responses(
        (status = 200, description = "the order", body = OrderView),
        (status = 400, description = "the address cannot be read", body = Trouble),
        (status = 404, description = "there is no such order", body = Trouble),
        (status = 503, description = "not now", body = Trouble),
    )
)]
pub async fn order(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(part): Query<StoryPart>,
) -> Response {
    let caller = caller_of(&state, &headers);
    let found = blocking(move || {
        let number = number.parse().map_err(|_| no_order(&number))?;
        let order = |snap: &Snapshot<'_>| match part.before {
            None => view::order(snap, number),
            Some(before) => view::order_before(snap, number, before),
        };
        state.service.look(&caller, order)
    });
    match found.await {
        Ok(order) => Json(&*order).into_response(),
        Err(trouble) => answer(&trouble),
    }
}

/// The description of this door.
#[utoipa::path(
    get,
    path = "/api/openapi.json",
    responses((status = 200, description = "this description", body = Value))
)]
pub async fn openapi() -> Response {
    Json(ApiDoc::openapi()).into_response()
}

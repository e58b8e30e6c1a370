//! What the framework refuses by itself gets the same words as everything else: what,
//! where, how to mend it.

use crate::LARGEST;
use crate::door::answer;
use axum::body::Body;
use axum::extract::Request;
use axum::http::StatusCode;
use axum::http::header::{ALLOW, CONTENT_TYPE};
use axum::middleware::Next;
use axum::response::Response;
use shop::{Trouble, TroubleKind};

/// Puts words to an answer that has none of ours.
pub async fn spoken(request: Request<Body>, next: Next) -> Response {
    let method = request.method().clone();
    let path = request.uri().path().to_owned();
    let response = next.run(request).await;
    let status = response.status();
    let bare = (status.is_client_error() || status.is_server_error()) && !is_ours(&response);
    if !bare {
        return response;
    }
    let trouble = match status {
        StatusCode::PAYLOAD_TOO_LARGE => Trouble::unreadable(
            "the body",
            format!("it is larger than {} MiB", LARGEST / 1024 / 1024),
            "make the photo smaller and send it again",
        ),
        StatusCode::METHOD_NOT_ALLOWED => Trouble::unreadable(
            "the method",
            format!("{path} does not take {method}"),
            "commands are sent with POST to /api/commands; all else is asked with GET",
        ),
        StatusCode::SERVICE_UNAVAILABLE => Trouble::new(
            TroubleKind::Record,
            "the program",
            "it took too long",
            "send it again; a command counts once",
        ),
        _ => Trouble::unreadable(
            "the address",
            format!("{path} cannot be read with what stands behind it"),
            "see /api/openapi.json for what it takes",
        ),
    };
    let mut spoken = answer(&trouble);
    *spoken.status_mut() = status;
    if let Some(allowed) = response.headers().get(ALLOW) {
        spoken.headers_mut().insert(ALLOW, allowed.clone());
    }
    spoken
}

/// Our own answers are JSON or pages; the framework's are plain text, or empty.
fn is_ours(response: &Response) -> bool {
    response
        .headers()
        .get(CONTENT_TYPE)
        .and_then(|media| media.to_str().ok())
        .is_some_and(|media| !media.starts_with("text/plain"))
}

//! What the framework refuses by itself gets the same words as everything else: what,
//! where, how to mend it.

use crate::bodies::LARGEST;
use crate::door::answer;
use crate::pages::trouble_answer;
use axum::body::Body;
use axum::extract::Request;
use axum::http::header::{ALLOW, CONTENT_TYPE};
use axum::http::{Method, StatusCode};
use axum::middleware::Next;
use axum::response::Response;
use shop::{Trouble, TroubleKind};

/// Puts words to an answer that has none of ours: a page to whoever asked for one, JSON to a
/// program.
pub async fn spoken(request: Request<Body>, next: Next) -> Response {
    let method = request.method().clone();
    let path = request.uri().path().to_owned();
    let response = next.run(request).await;
    let status = response.status();
    let bare = (status.is_client_error() || status.is_server_error()) && !is_ours(&response);
    if !bare {
        return response;
    }
    let trouble = in_words(status, &method, &path);
    let mut spoken = if is_page(&path) {
        trouble_answer(&trouble)
    } else {
        answer(&trouble)
    };
    *spoken.status_mut() = status;
    if let Some(allowed) = response.headers().get(ALLOW) {
        spoken.headers_mut().insert(ALLOW, allowed.clone());
    }
    spoken
}

/// Everything but the JSON door and the files that pages are made of.
fn is_page(path: &str) -> bool {
    !path.starts_with("/api/") && !path.starts_with("/assets/")
}

fn in_words(status: StatusCode, method: &Method, path: &str) -> Trouble {
    let short = shop::say::shortened(path);
    match status {
        StatusCode::PAYLOAD_TOO_LARGE => Trouble::unreadable(
            "the body",
            format!("it is larger than {} MiB", LARGEST / 1024 / 1024),
            if path == "/api/commands" {
                "make the photo smaller and send it again"
            } else {
                "send less at a time"
            },
        ),
        StatusCode::METHOD_NOT_ALLOWED => Trouble::unreadable(
            "the method",
            format!("{short} does not take {method}"),
            if is_page(path) {
                "open it as a page, and press what stands on it"
            } else {
                "commands are sent with POST to /api/commands; all else is asked with GET"
            },
        ),
        StatusCode::SERVICE_UNAVAILABLE => Trouble::new(
            TroubleKind::Record,
            "the program",
            "it took too long",
            "send it again; a command counts once",
        ),
        _ => Trouble::unreadable(
            "the address",
            format!("{short} cannot be read with what stands behind it"),
            if is_page(path) {
                "go back and open the page anew"
            } else {
                "see /api/openapi.json for what it takes"
            },
        ),
    }
}

/// Our own answers are JSON or pages; the framework's are plain text, or empty.
fn is_ours(response: &Response) -> bool {
    response
        .headers()
        .get(CONTENT_TYPE)
        .and_then(|media| media.to_str().ok())
        .is_some_and(|media| !media.starts_with("text/plain"))
}

//! What the framework refuses by itself gets the same words as everything else: what,
//! where, how to mend it.

use crate::bodies::LARGEST;
use crate::door::answer;
use crate::pages::trouble_answer;
use crate::phrases::frame as say;
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
            say::the_body(),
            say::larger_than(LARGEST / 1024 / 1024),
            if path == "/api/commands" {
                say::smaller_photo()
            } else {
                say::send_less()
            },
        ),
        StatusCode::METHOD_NOT_ALLOWED => Trouble::unreadable(
            say::the_method(),
            say::does_not_take(short, method),
            if is_page(path) {
                say::open_as_a_page()
            } else {
                say::sent_with_post()
            },
        ),
        StatusCode::SERVICE_UNAVAILABLE => Trouble::new(
            TroubleKind::Record,
            say::the_program(),
            say::took_too_long(),
            say::send_again(),
        ),
        _ => Trouble::unreadable(
            say::the_address(),
            say::not_with_that_behind_it(short),
            if is_page(path) {
                say::go_back_and_open_anew()
            } else {
                say::see_what_it_takes()
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

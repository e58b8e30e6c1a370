//! Photos and signatures, by their commitment.

use crate::State;
use crate::door::blocking;
use crate::pages::show_anybody;
use crate::phrases::frame as say;
use axum::extract::{self, Path};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE, ETAG, HeaderValue, IF_NONE_MATCH,
};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use shop::repair::Words;
use shop::{Trouble, TroubleKind};
use std::sync::Arc;

/// What a browser may show in its place. Everything else, drawings that may carry a
/// script among it, is only ever saved.
const SHOWN: [&str; 5] = [
    "image/jpeg",
    "image/png",
    "image/webp",
    "image/gif",
    "image/avif",
];

pub async fn file(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
) -> Response {
    let service = Arc::clone(&state.service);
    let wanted = id.clone();
    let found = blocking(move || {
        let words = Words::from_hex(&wanted).ok_or_else(|| no_file(say::no_such_file()))?;
        match service.texts().file(words) {
            Ok(Some(file)) => Ok(file),
            Ok(None) => Err(no_file(say::file_was_erased())),
            Err(trouble) if trouble.kind == TroubleKind::NotFound => Err(no_file(&trouble.what)),
            Err(trouble) => Err(trouble),
        }
    });
    match found.await {
        Ok((media, content)) => served(&headers, &id, &media, content),
        Err(trouble) => show_anybody(state, headers, move |_| Err(trouble)).await,
    }
}

fn no_file(what: &str) -> Trouble {
    let mut trouble = Trouble::not_found(what);
    trouble.mend = say::back_to_its_order().to_owned();
    trouble
}

/// A browser may keep it, but asks each time whether it is still there, so that what was
/// erased is gone from it too.
fn served(headers: &HeaderMap, id: &str, media: &str, content: Vec<u8>) -> Response {
    let tag = format!("\"{id}\"");
    let known = headers
        .get(IF_NONE_MATCH)
        .and_then(|value| value.to_str().ok())
        .is_some_and(|value| value.split(',').any(|known| known.trim() == tag));
    let shown = SHOWN.iter().find(|shown| **shown == media);
    let mut answer = if known {
        StatusCode::NOT_MODIFIED.into_response()
    } else {
        content.into_response()
    };
    let answer_headers = answer.headers_mut();
    if let Ok(tag) = HeaderValue::from_str(&tag) {
        answer_headers.insert(ETAG, tag);
    }
    answer_headers.insert(CACHE_CONTROL, HeaderValue::from_static("private, no-cache"));
    let media = shown.copied().unwrap_or("application/octet-stream");
    answer_headers.insert(CONTENT_TYPE, HeaderValue::from_static(media));
    let place = match shown {
        Some(_) => "inline",
        None => "attachment",
    };
    answer_headers.insert(CONTENT_DISPOSITION, HeaderValue::from_static(place));
    answer
}

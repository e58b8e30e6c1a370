//! Photos, signatures and recordings, by their commitment.

use crate::State;
use crate::allowed::caller_of;
use crate::door::blocking;
use crate::pages::show_anybody;
use crate::phrases::frame as say;
use axum::extract::{self, Path};
use axum::http::header::{
    ACCEPT_RANGES, CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_RANGE, CONTENT_TYPE, ETAG,
    HeaderValue, IF_NONE_MATCH, IF_RANGE, RANGE,
};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use shop::repair::Words;
use shop::view::PAPER;
use shop::{Trouble, TroubleKind};
use std::ops::Range;
use std::sync::Arc;

/// What a browser may show or play in its place. Everything else, drawings that may carry a
/// script among it, is only ever saved.
const SHOWN: [&str; 9] = [
    "image/jpeg",
    "image/png",
    "image/webp",
    "image/gif",
    "image/avif",
    "audio/webm",
    "audio/ogg",
    "audio/mp4",
    "audio/wav",
];

pub async fn file(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
) -> Response {
    let service = Arc::clone(&state.service);
    let caller = caller_of(&state, &headers);
    let wanted = id.clone();
    let found = blocking(move || {
        let words = Words::from_hex(&wanted).ok_or_else(|| no_file(say::no_such_file()))?;
        match service.texts().file(words) {
            // Prices stand on papers: for who is shown none there is no such file.
            Ok(Some((media, _))) if media == PAPER && !caller.sees_prices() => {
                Err(no_file(say::no_such_file()))
            }
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
        asked_part(headers, &tag, content)
    };
    let answer_headers = answer.headers_mut();
    if let Ok(tag) = HeaderValue::from_str(&tag) {
        answer_headers.insert(ETAG, tag);
    }
    answer_headers.insert(ACCEPT_RANGES, HeaderValue::from_static("bytes"));
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

/// All of it, or the one part that is asked for: some browsers play nothing that they can't have in
/// parts (RFC 9110, section 14).
fn asked_part(headers: &HeaderMap, tag: &str, content: Vec<u8>) -> Response {
    let text = |name| {
        headers
            .get(name)
            .and_then(|value: &HeaderValue| value.to_str().ok())
    };
    let same = text(IF_RANGE).is_none_or(|known| known == tag);
    let whole = content.len();
    match text(RANGE).filter(|_| same).map(|range| part(range, whole)) {
        None | Some(Part::Whole) => content.into_response(),
        Some(Part::Nowhere) => (
            StatusCode::RANGE_NOT_SATISFIABLE,
            [(CONTENT_RANGE, format!("bytes */{whole}"))],
        )
            .into_response(),
        Some(Part::Of(range)) => {
            let told = format!("bytes {}-{}/{whole}", range.start, range.end - 1);
            let bytes = content.get(range).unwrap_or_default().to_vec();
            (StatusCode::PARTIAL_CONTENT, [(CONTENT_RANGE, told)], bytes).into_response()
        }
    }
}

#[derive(Debug, PartialEq, Eq)]
enum Part {
    /// Nothing that is known, or several parts: all of it is an answer to that.
    Whole,
    Of(Range<usize>),
    /// Behind its end.
    Nowhere,
}

fn part(range: &str, whole: usize) -> Part {
    let Some((from, to)) = range
        .strip_prefix("bytes=")
        .filter(|range| !range.contains(','))
        .and_then(|range| range.trim().split_once('-'))
    else {
        return Part::Whole;
    };
    let number = |text: &str| text.parse::<usize>().ok();
    let range = match (number(from), number(to)) {
        (Some(from), Some(to)) if from <= to => from..to.saturating_add(1).min(whole),
        (Some(from), None) if to.is_empty() => from..whole,
        (None, Some(last)) if from.is_empty() => whole.saturating_sub(last)..whole,
        _ => return Part::Whole,
    };
    if range.is_empty() {
        Part::Nowhere
    } else {
        Part::Of(range)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The examples of RFC 9110, 14.1.2 and 14.4, of a file of 10000 bytes, from memory.
    #[test]
    fn one_part_is_cut_out_as_it_is_asked_for() {
        for (asked, part_of) in [
            ("bytes=0-499", Part::Of(0..500)),
            ("bytes=500-999", Part::Of(500..1_000)),
            ("bytes=-500", Part::Of(9_500..10_000)),
            ("bytes=9500-", Part::Of(9_500..10_000)),
            ("bytes=9500-20000", Part::Of(9_500..10_000)),
            ("bytes=-20000", Part::Of(0..10_000)),
            ("bytes=10000-", Part::Nowhere),
            ("bytes=-0", Part::Nowhere),
            ("bytes=0-0,-1", Part::Whole),
            ("bytes=5-2", Part::Whole),
            ("lines=1-2", Part::Whole),
            ("bytes=abc", Part::Whole),
            ("bytes=--1", Part::Whole),
        ] {
            assert_eq!(part(asked, 10_000), part_of, "{asked}");
        }
        assert_eq!(part("bytes=0-", 0), Part::Nowhere);
    }
}

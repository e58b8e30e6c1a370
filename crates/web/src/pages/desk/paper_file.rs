//! A paper as a PDF: made when it is asked for, and kept as it was when it is given out.

use super::papers::For;
use crate::State;
use crate::door::blocking;
use crate::pages::show_anybody;
use axum::extract::{self, Form, Path, Query};
use axum::http::header::{
    CACHE_CONTROL, CONTENT_DISPOSITION, CONTENT_TYPE, HOST, HeaderValue, LOCATION,
};
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use papers::{Asked, Kind, give_out, make};
use serde::Deserialize;
use shop::{Caller, Trouble};

/// What is said when a paper is given out.
#[derive(Debug, Deserialize)]
pub struct Given {
    /// To whom, and how.
    #[serde(default)]
    given: String,
}

/// Where a paper is fetched, and kept by sending its form there.
pub fn address(number: u64, kind: Kind, query: &str) -> String {
    let query = if query.is_empty() {
        String::new()
    } else {
        format!("?{query}")
    };
    format!("/o/{number}/papers/{}.pdf{query}", kind.name())
}

/// Where a paper that is for no payer is fetched.
pub fn of_kind(number: u64, kind: Kind) -> String {
    address(number, kind, "")
}

/// The paper as it is now.
pub async fn paper(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, file)): Path<(String, String)>,
    Query(whose): Query<For>,
) -> Response {
    let service = state.service.clone();
    let (caller, address) = asks(&state, &headers);
    let made = blocking(move || {
        let (number, asked) = wanted(&number, &file, &whose, address)?;
        service.look(&caller, |snap| make(snap, number, &asked))
    });
    match made.await {
        Ok(made) => pdf(&made.file, made.pdf),
        Err(trouble) => show_anybody(state, headers, move |_| Err(trouble)).await,
    }
}

/// Keeps it as given out, and goes back to the desk.
pub async fn give(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, file)): Path<(String, String)>,
    Query(whose): Query<For>,
    Form(given): Form<Given>,
) -> Response {
    let service = state.service.clone();
    let (caller, address) = asks(&state, &headers);
    let kept = blocking(move || {
        let (number, asked) = wanted(&number, &file, &whose, address)?;
        give_out(&service, &caller, number, &asked, &given.given).map(|_| number)
    });
    match kept.await {
        Ok(number) => (
            StatusCode::SEE_OTHER,
            [(LOCATION, format!("/o/{number}/desk"))],
        )
            .into_response(),
        Err(trouble) => show_anybody(state, headers, move |_| Err(trouble)).await,
    }
}

/// Who asks, and where they reached us.
fn asks(state: &State, headers: &HeaderMap) -> (Caller, Option<String>) {
    let host = headers.get(HOST).and_then(|host| host.to_str().ok());
    let address = host.map(|host| format!("http://{host}"));
    (crate::allowed::caller_of(state, headers), address)
}

fn wanted(
    number: &str,
    file: &str,
    whose: &For,
    address: Option<String>,
) -> Result<(u64, Asked), Trouble> {
    let number = number
        .parse()
        .map_err(|_| Trouble::not_found(format!("{number:?} is no order's number")))?;
    let name = file.strip_suffix(".pdf").unwrap_or(file);
    let kind = Kind::named(name)
        .ok_or_else(|| Trouble::not_found(format!("there is no paper called {name:?}")))?;
    let asked = Asked {
        payer: whose.payer(),
        written: whose.written(),
        language: whose.language(),
        address,
        ..Asked::of(kind)
    };
    Ok((number, asked))
}

/// Shown in its place by a browser that can; what is true now is made anew each time.
fn pdf(name: &str, content: Vec<u8>) -> Response {
    let mut answer = content.into_response();
    let headers = answer.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static("application/pdf"));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("private, no-store"));
    // The name holds letters, figures and hyphens alone.
    if let Ok(place) = HeaderValue::from_str(&format!("inline; filename=\"{name}\"")) {
        headers.insert(CONTENT_DISPOSITION, place);
    }
    answer
}

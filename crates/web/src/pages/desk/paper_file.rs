//! A paper as a PDF: made when it is asked for, and kept as it was when it is given out.

use super::papers::{For, show_paper};
use crate::State;
use crate::door::blocking;
use crate::pages::show_anybody;
use crate::phrases::desk as say;
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

/// Where the e-invoice of a paper is fetched by itself.
pub fn of_e_invoice(number: u64, kind: Kind, query: &str) -> String {
    format!("/o/{number}/papers/{}.xml?{query}", kind.name())
}

/// The page of a paper.
pub fn page(number: u64, kind: Kind, query: &str) -> String {
    let query = if query.is_empty() {
        String::new()
    } else {
        format!("?{query}")
    };
    format!("/o/{number}/papers/{}{query}", kind.name())
}

/// The paper as it is now: its page, its PDF, or its e-invoice.
pub async fn paper(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path((number, file)): Path<(String, String)>,
    Query(whose): Query<For>,
) -> Response {
    if !file.contains('.') {
        return match Kind::named(&file) {
            Some(kind) => {
                let state = extract::State(state);
                show_paper((state, headers, Path(number), Query(whose)), kind).await
            }
            None => show_anybody(state, headers, move |_| Err(no_paper(&file))).await,
        };
    }
    let service = state.service.clone();
    let (caller, address) = asks(&state, &headers);
    let made = blocking(move || {
        service.look(&caller, |snap| {
            if let Some(name) = file.strip_suffix(".xml") {
                let (number, asked) = wanted(&number, name, &whose, address)?;
                let made = papers::e_invoice_of(snap, number, &asked)?;
                let name = format!("{name}-{number}.xml");
                return Ok((name, "application/xml", made.xml.into_bytes()));
            }
            let (number, asked) = wanted(&number, &file, &whose, address)?;
            let made = make(snap, number, &asked)?;
            Ok((made.file, "application/pdf", made.pdf))
        })
    });
    match made.await {
        Ok((name, media, content)) => as_file(&name, media, content),
        Err(trouble) => show_anybody(state, headers, move |_| Err(trouble)).await,
    }
}

fn no_paper(name: &str) -> Trouble {
    Trouble::not_found(say::no_paper_called(format_args!("{name:?}")))
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
        .map_err(|_| Trouble::not_found(say::not_an_order_number(format_args!("{number:?}"))))?;
    let name = file.strip_suffix(".pdf").unwrap_or(file);
    let kind = Kind::named(name).ok_or_else(|| no_paper(name))?;
    let asked = Asked {
        address,
        ..whose.asked(kind)?
    };
    Ok((number, asked))
}

/// Shown in its place by a browser that can; what is true now is made anew each time.
fn as_file(name: &str, media: &'static str, content: Vec<u8>) -> Response {
    let mut answer = content.into_response();
    let headers = answer.headers_mut();
    headers.insert(CONTENT_TYPE, HeaderValue::from_static(media));
    headers.insert(CACHE_CONTROL, HeaderValue::from_static("private, no-store"));
    // The name holds letters, figures and hyphens alone.
    if let Ok(place) = HeaderValue::from_str(&format!("inline; filename=\"{name}\"")) {
        headers.insert(CONTENT_DISPOSITION, place);
    }
    answer
}

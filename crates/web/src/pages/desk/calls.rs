//! Calls and waits: whom to ring now and what to say, and what is waited for.

use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, show};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use shop::view::{CallKind, CallView};

pub async fn calls(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let all = shop::view::calls(visit.snap)?;
        let (ring, wait): (Vec<_>, Vec<_>) = all.iter().partition(|call| call.kind.rings());
        Ok(Shown::new(
            "Calls and waits",
            html! {
                h1 { "Calls and waits" }
                div class="columns" {
                    div {
                        h2 class="spread" { span { "Ring now" } span { (ring.len()) } }
                        @if ring.is_empty() { p class="gap" { "No calls to make." } }
                        @for call in ring { (call_row(call)) }
                    }
                    div {
                        h2 class="spread" { span { "Waiting on" } span { (wait.len()) } }
                        @if wait.is_empty() { p class="gap" { "Nothing is on its way or away." } }
                        @for call in wait { (call_row(call)) }
                    }
                }
            },
        )
        .of_part(Part::Calls))
    })
    .await
}

fn call_row(call: &CallView) -> Markup {
    let (class, word) = word(call.kind);
    let page = if call.page.is_empty() {
        format!("/o/{}", call.number)
    } else {
        format!("/o/{}/{}", call.number, call.page)
    };
    html! {
        a class="row top" href=(page) {
            span class="what" {
                span class="spread" {
                    span class=(class) { (word) }
                    @if !call.phone.is_empty() { span class="beside number" { (call.phone) } }
                }
                span class="strong line" { (call.what) }
                span class="soft line" { (call.number) " · " (call.vehicle) " · " (call.customer) }
                @if let Some(left) = &call.left { span class="soft line" { (left) " left under the limit" } }
            }
        }
    }
}

fn word(kind: CallKind) -> (&'static str, &'static str) {
    match kind {
        CallKind::Left => ("no upper", "left, look"),
        CallKind::Ask => ("wait upper", "ask"),
        CallKind::Promise => ("no upper", "promise"),
        CallKind::Ready => ("yes upper", "ready"),
        CallKind::Late => ("no upper", "late"),
        CallKind::Waits => ("wait upper", "waits"),
        CallKind::Core => ("strong upper", "core"),
    }
}

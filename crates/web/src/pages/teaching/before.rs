//! Finished jobs on vehicles like the one at hand, each with its sheet.

use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::teaching as say;
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use shop::teaching::{DoneBefore, done_before};

pub async fn page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let found = done_before(visit.snap, order.number)?;
        Ok(Shown::of(&order, say::done_before(), content(&found)))
    })
    .await
}

fn content(found: &DoneBefore) -> Markup {
    html! {
        h1 { (say::done_before()) }
        @if found.jobs.is_empty() { p class="gap" { (say::nothing_done_before(&found.vehicle)) } }
        @for job in &found.jobs {
            a class="row" href=(format!("/o/{}/how-to", job.number)) {
                span class="what" {
                    @if let Some(title) = &job.title { span class="strong line" { (title) } }
                    span class="line" { (say::order()) span class="strong" { (job.number) } ", " (job.by) }
                    @if !job.wanted.is_empty() { span class="line" { (say::got_at(job.wanted.join(", "))) } }
                    span class="soft line" { (say::things_came_off(job.things)) }
                }
            }
        }
    }
}

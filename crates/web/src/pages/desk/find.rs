//! Finding an order by its number, plate, vehicle, or a name.

use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, count, show};
use axum::extract::{self, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::html;
use serde::Deserialize;
use shop::view::{MOST_ROWS, rows};

/// What to find.
#[derive(Debug, Deserialize)]
pub struct Find {
    q: Option<String>,
    before: Option<u64>,
}

pub async fn find(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(find): Query<Find>,
) -> Response {
    show(state, headers, move |visit| {
        let wanted = find.q.unwrap_or_default();
        let found = rows(visit.snap, Some(&wanted), find.before)?;
        let more = found.len() >= MOST_ROWS;
        Ok(Shown::new(
            "Find",
            html! {
                h1 { "Find an order" }
                form method="get" action="/find" class="narrow" {
                    label class="field" {
                        span { "Number, plate, vehicle or name" }
                        input type="text" name="q" value=(wanted) autocomplete="off";
                    }
                    div class="presses" { button class="press confirm" type="submit" { "Find" } }
                }
                h2 { (count(found.len(), "order", "orders")) @if more { ", and older ones" } }
                @for row in &found {
                    a class="row" href=(format!("/o/{}", row.number)) {
                        span class="what" {
                            span class="strong line" { (row.number) " · " (row.vehicle) }
                            span class="soft line" { (row.plate) " · " (row.customer) }
                        }
                        span class="strong upper" { (row.word) }
                    }
                }
                @if let (true, Some(last)) = (more, found.last()) {
                    form method="get" action="/find" class="narrow" {
                        input type="hidden" name="q" value=(wanted);
                        input type="hidden" name="before" value=(last.number);
                        div class="presses" { button class="press" type="submit" { "Older ones" } }
                    }
                }
            },
        )
        .of_part(Part::Orders))
    })
    .await
}

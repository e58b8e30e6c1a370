//! Every kind of vehicle that the shop has worked on or has a map of.

use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, count, show};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use maud::html;

pub async fn kinds(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let kinds = shop::teaching::kinds(visit.snap)?;
        let mut page = Shown::new("What our work has taught", html! {
            h1 { "What our work has taught" }
            p class="soft gap" { "One row for each kind of vehicle: what its finished orders say of the way in, and what is still a guess." }
            a class="row" href="/history" { span class="what strong" { "Times, snags, comebacks of the whole shop" } }
            @if kinds.is_empty() { p class="gap" { "Nothing yet. The first order that is handed over begins it." } }
            @for kind in &kinds {
                a class="row" href=(format!("/kinds/{}", kind.code)) {
                    span class="what" {
                        span class="strong line" { (kind.vehicle) }
                        span class="soft line" { @if kind.has_map { "has a map" } @else { "no map yet" } }
                    }
                    span class="number" { (count(kind.orders, "order", "orders")) }
                }
            }
        })
        .of_part(Part::Maps);
        page.leads_to("Maps", "/maps");
        Ok(page)
    })
    .await
}

//! Every kind of vehicle that the shop has worked on or has a map of.

use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, show};
use crate::phrases::teaching as say;
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use maud::html;

pub async fn kinds(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let kinds = shop::teaching::kinds(visit.snap)?;
        let mut page = Shown::new(say::what_our_work_has_taught(), html! {
            h1 { (say::what_our_work_has_taught()) }
            p class="soft gap" { (say::one_row_for_each_kind()) }
            a class="row" href="/history" { span class="what strong" { (say::of_the_whole_shop()) } }
            @if kinds.is_empty() { p class="gap" { (say::first_order_begins_it()) } }
            @for kind in &kinds {
                a class="row" href=(format!("/kinds/{}", kind.code)) {
                    span class="what" {
                        span class="strong line" { (kind.vehicle) }
                        span class="soft line" { @if kind.has_map { (say::has_a_map()) } @else { (say::no_map_yet()) } }
                    }
                    span class="number" { (say::orders(kind.orders)) }
                }
            }
        })
        .of_part(Part::Maps);
        page.leads_to(say::maps(), "/maps");
        Ok(page)
    })
    .await
}

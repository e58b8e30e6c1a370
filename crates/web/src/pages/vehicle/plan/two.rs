//! A plan shared between two people: who does what from when.

use super::query::{Query, address};
use super::{aim_words, found_by, picked};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::tap::{Look, link};
use axum::extract::{self, Path, RawQuery};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use shop::Trouble;
use shop::planning::{Shares, Turn, shares};

pub async fn two(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    RawQuery(query): RawQuery,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let query = Query::read(&query.unwrap_or_default());
        let none =
            || Trouble::not_found("there is no plan to share: pick a map and what to get at");
        let (map, version) = picked(visit, &order, &query)?.ok_or_else(none)?;
        let on = found_by(visit, &order, &map, version, &query)?;
        if !on.asks() {
            return Err(none());
        }
        let found = on.plan(visit.snap)?;
        let shared = shares(&on, &found, 2);
        let back = address(order.number, on.kept.id.as_str(), &on.asked);
        let mut page = Shown::of(
            &order,
            "Two people",
            content(&aim_words(&on.asked), &shared, &back),
        );
        page.leads_to("The plan", &back);
        Ok(page)
    })
    .await
}

fn content(aim: &str, shared: &Shares, back: &str) -> Markup {
    html! {
        h1 { (aim) ", two people" }
        div class="headline" {
            span class="fact" { (shared.finish) small { " min" } }
            span class="what" {
                span class="beside line" { "in place of " (shared.one) " alone" }
                span class="soft line" { "walks left out" }
            }
        }
        @if shared.proven { p class="yes gap" { "Proven: two people are not finished sooner." } }
        @else { p class="wait gap" { "The best found; nobody is finished before " (shared.bound) " min." } }
        @if shared.finish == shared.one { p class="gap" { "A second person saves nothing here: each step waits for the one before." } }
        div class="columns" {
            @for (nth, turns) in shared.people.iter().enumerate() {
                div { (lane(if nth == 0 { "One" } else { "The other" }, turns)) }
            }
            @if !shared.alone.is_empty() { div { (lane("By itself", &shared.alone)) } }
        }
        div class="presses low" { (link(Look::Plain, "The plan for one", "", back)) }
    }
}

fn lane(title: &str, turns: &[Turn]) -> Markup {
    html! {
        h2 { (title) }
        @if turns.is_empty() { p class="gap" { "Nothing to do." } }
        @for (nth, turn) in turns.iter().enumerate() {
            @let before = nth.checked_sub(1).and_then(|before| turns.get(before)).map(|before| before.end);
            @if turn.start > before.unwrap_or_default() {
                div class="row" { span class="at soft" { (before.unwrap_or_default()) } span class="what wait" { "waits " @if turn.waits { "for the other" } @else { "for the lift" } } }
            }
            div class="row" {
                span class="at soft" { (turn.start) }
                span class="what" {
                    span class="line" { span class="strong" { (turn.item) } " " (turn.done) }
                    @if let Some(place) = turn.place.as_ref().filter(|_| elsewhere(turns, nth)) { span class="soft line" { (place) } }
                }
                span class="number soft" { "to " (turn.end) }
            }
        }
    }
}

/// Whether a turn is worked on elsewhere than the one before.
fn elsewhere(turns: &[Turn], nth: usize) -> bool {
    let before = nth.checked_sub(1).and_then(|before| turns.get(before));
    before.is_none_or(|before| before.place != turns[nth].place)
}

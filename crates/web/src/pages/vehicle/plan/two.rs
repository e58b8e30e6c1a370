//! A plan shared between two people: who does what from when.

use super::query::{Query, address};
use super::{aim_words, found_by, picked};
use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::vehicle as say;
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
        let none = || Trouble::not_found(say::no_plan_to_share());
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
            say::two_people(),
            content(&aim_words(&on.asked), &shared, &back),
        );
        page.leads_to(say::the_plan(), &back);
        Ok(page)
    })
    .await
}

fn content(aim: &str, shared: &Shares, back: &str) -> Markup {
    html! {
        h1 { (aim) (say::comma_two_people()) }
        div class="headline" {
            span class="fact" { (shared.finish) small { " min" } }
            span class="what" {
                span class="beside line" { (say::in_place_of(shared.one)) }
                span class="soft line" { (say::walks_left_out()) }
            }
        }
        @if shared.proven { p class="yes gap" { (say::proven_for_two()) } }
        @else { p class="wait gap" { (say::best_found_for_two(shared.bound)) } }
        @if shared.finish == shared.one { p class="gap" { (say::second_saves_nothing()) } }
        div class="columns" {
            @for (nth, turns) in shared.people.iter().enumerate() {
                div { (lane(if nth == 0 { say::one_person() } else { say::the_other_person() }, turns)) }
            }
            @if !shared.alone.is_empty() { div { (lane(say::by_itself(), &shared.alone)) } }
        }
        div class="presses low" { (link(Look::Plain, say::the_plan_for_one(), "", back)) }
    }
}

fn lane(title: &str, turns: &[Turn]) -> Markup {
    html! {
        h2 { (title) }
        @if turns.is_empty() { p class="gap" { (say::nothing_to_do()) } }
        @for (nth, turn) in turns.iter().enumerate() {
            @let before = nth.checked_sub(1).and_then(|before| turns.get(before)).map(|before| before.end);
            @if turn.start > before.unwrap_or_default() {
                div class="row" { span class="at soft" { (before.unwrap_or_default()) } span class="what wait" { @if turn.waits { (say::waits_for_the_other()) } @else { (say::waits_for_the_lift()) } } }
            }
            div class="row" {
                span class="at soft" { (turn.start) }
                span class="what" {
                    span class="line" { span class="strong" { (turn.item) } " " (turn.done) }
                    @if let Some(place) = turn.place.as_ref().filter(|_| elsewhere(turns, nth)) { span class="soft line" { (shop::map::called(place)) } }
                }
                span class="number soft" { (say::to_minute(turn.end)) }
            }
        }
    }
}

/// Whether a turn is worked on elsewhere than the one before.
fn elsewhere(turns: &[Turn], nth: usize) -> bool {
    let before = nth.checked_sub(1).and_then(|before| turns.get(before));
    before.is_none_or(|before| before.place != turns[nth].place)
}

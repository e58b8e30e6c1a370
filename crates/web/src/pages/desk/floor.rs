//! The morning floor: each stall, what stands in it, and what holds it. Finding an order.

use crate::State;
use crate::pages::{Shown, Visit, count, show};
use crate::tap::{Look, link};
use axum::extract::{self, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use shop::view::{MOST_ROWS, OrderRow, calls, rows, rows_here, stuck};

pub async fn floor(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    let waiting = state.service.waiting();
    show(state, headers, move |visit| {
        let here = rows_here(visit.snap)?;
        let stalls = stalls(visit)?;
        let elsewhere: Vec<_> = here
            .iter()
            .filter(|row| row.stall.as_ref().is_none_or(|stall| !stalls.iter().any(|(id, _)| id == stall)))
            .collect();
        let calls = calls(visit.snap)?.len();
        let today = today(visit)?;
        Ok(Shown::new(
            "Floor",
            html! {
                h1 { (today) }
                (crate::pages::stuck::list(&stuck(visit.snap, &waiting)?))
                div class="columns" {
                    div {
                        @for (id, name) in &stalls {
                            @let there: Vec<_> = here.iter().filter(|row| row.stall.as_ref() == Some(id)).collect();
                            @for row in &there { (stall_row(name, row)) }
                            @if there.is_empty() {
                                div class="row" {
                                    span class="mark" {}
                                    span class="what" { span class="strong line" { "Free" } span class="soft line" { (name) } }
                                }
                            }
                        }
                    }
                    div {
                        @for row in &elsewhere {
                            (stall_row(row.place.as_deref().unwrap_or("not placed yet"), row))
                        }
                    }
                }
                div class="presses two low" {
                    (link(Look::Confirm, "Take one in", "", "/new"))
                    (link(Look::Plain, "Calls and waits", &calls.to_string(), "/calls"))
                }
                div class="presses even" {
                    (link(Look::Plain, "Find", "", "/find"))
                    (link(Look::Plain, "The shop", "", "/shop"))
                }
                div class="presses" {
                    (link(Look::Plain, "Work it out", "threads, coolant, fluids, belt, road test", "/calc"))
                }
            },
        ))
    })
    .await
}

fn today(visit: &Visit<'_>) -> Result<String, shop::Trouble> {
    let rules = visit.snap.rules();
    Ok(rules.today().strftime("%A %-d %B").to_string())
}

fn stalls(visit: &Visit<'_>) -> Result<Vec<(String, String)>, shop::Trouble> {
    Ok(visit
        .snap
        .world()
        .shop
        .stalls()
        .into_iter()
        .map(|(id, name, _)| (id.as_str().to_owned(), visit.snap.texts().text(name)))
        .collect())
}

/// One vehicle on the floor.
fn stall_row(place: &str, row: &OrderRow) -> Markup {
    let mark = if row.can_roll {
        "mark home"
    } else {
        "mark dashed"
    };
    let class = match row.word.as_str() {
        "consent" | "part" => "wait upper",
        "machine work" | "snag" | "left, look" => "no upper",
        "ready" => "yes upper",
        _ => "strong upper",
    };
    html! {
        a class="row top" href=(format!("/o/{}", row.number)) {
            span class=(mark) {}
            span class="what" {
                span class="spread" {
                    span class="beside" { (row.vehicle) }
                    @if let Some(hour) = &row.promised { span class="beside number" { (hour) } }
                }
                span class="soft line short" { (place) @if let Some(who) = &row.who { " · " (first_name(who)) } " · " (row.complaint) }
                @if let Some(stopped) = &row.stopped { span class="line" { "Stopped here: " (stopped) } }
                span class="spread" {
                    span class=(class) { (row.word) }
                    span class="soft number" {
                        (row.open + row.inside) " open"
                        @if !row.can_roll { ", can't roll" }
                    }
                }
            }
        }
    }
}

/// The name a person is called by across the shop.
fn first_name(name: &str) -> &str {
    name.split_whitespace().next().unwrap_or(name)
}

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
        ))
    })
    .await
}

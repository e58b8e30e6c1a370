//! Customers and vehicles read in from a table: what would change is shown before anything is.

use crate::State;
use crate::allowed::caller_of;
use crate::layout::Part;
use crate::pages::people::decided;
use crate::pages::{Shown, show, trouble_answer};
use crate::phrases::shop as say;
use axum::Form;
use axum::extract;
use axum::http::header::LOCATION;
use axum::http::{HeaderMap, StatusCode};
use axum::response::{IntoResponse, Response};
use maud::{Markup, html};
use serde::Deserialize;
use shop::TroubleKind;
use shop::read_in::{Becomes, ReadIn, look_at, read_in, word};
use std::sync::Arc;

/// So many rows are shown of what would change.
const MOST: usize = 50;

/// The table, as text.
#[derive(Debug, Deserialize)]
pub struct Table {
    table: String,
}

pub async fn page(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |_| {
        Ok(Shown::new(
            say::read_in_customers(),
            html! {
                h1 { (say::read_in_customers_and_vehicles()) }
                (form(""))
            },
        )
        .of_part(Part::Shop))
    })
    .await
}

fn form(table: &str) -> Markup {
    html! {
        p class="gap" { (say::table_as_csv()) }
        form method="post" action="/shop/read-in" class="narrow" {
            label class="field" {
                span { (say::file()) }
                input type="file" accept=".csv,text/csv,text/plain" data-into="table";
            }
            label class="field" {
                span { (say::or_its_text()) }
                textarea name="table" rows="8" autocomplete="off" required { (table) }
            }
            div class="presses" { button class="press confirm" type="submit" { (say::show_what_would_change()) } }
        }
    }
}

pub async fn looked_at(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Form(sent): Form<Table>,
) -> Response {
    show(state, headers, move |visit| {
        let looked = look_at(visit.snap, &sent.table);
        Ok(Shown::new(say::read_in_customers(), html! {
            h1 { (say::read_in_customers_and_vehicles()) }
            @match &looked {
                Ok(read) => (would_change(read, &sent.table)),
                Err(trouble) => {
                    p class="no gap" { (say::where_and_what(shop::say::capital(&trouble.place), &trouble.what)) }
                    p class="gap" { (shop::say::capital(&trouble.mend)) }
                    (form(&sent.table))
                }
            }
        })
        .of_part(Part::Shop))
    })
    .await
}

fn would_change(read: &ReadIn, table: &str) -> Markup {
    let new = read.customers + read.vehicles;
    let bad: Vec<(u64, &str)> = read.bad().collect();
    html! {
        div class="columns" {
            div {
                div class="row" { span class="what" { (say::new_customers()) } span class="strong number" { (read.customers) } }
                div class="row" { span class="what" { (say::new_vehicles()) } span class="strong number" { (read.vehicles) } }
                div class="row" { span class="what" { (say::rows_known_already()) } span class="number" { (read.known()) } }
                div class="row" { span class="what" { (say::rows_not_read_in()) } span class={ "number" @if !bad.is_empty() { " no" } } { (bad.len()) } }
                h2 { (say::columns()) }
                @for (named, word) in &read.columns { div class="row" { span class="what" { (named) } span class="soft" { (word) } } }
                @for named in &read.passed_over { div class="row" { span class="what soft" { (named) } span class="wait" { (say::not_read_in()) } } }
                @if !bad.is_empty() {
                    h2 { (say::cannot_be_read_in()) }
                    @for (line, why) in bad.iter().take(MOST) { div class="row" { span class="what" { (say::line_and_why(line, why)) } } }
                    @if bad.len() > MOST { p class="soft gap" { (say::more(bad.len() - MOST)) } }
                }
                @if new > 0 {
                    form method="post" action="/shop/read-in/done" {
                        textarea name="table" hidden { (table) }
                        div class="presses" { button class="press confirm" type="submit" { (say::read_them_in()) small { (say::new_records(new)) } } }
                    }
                } @else { p class="gap yes" { (say::nothing_is_new()) } }
                div class="presses" { a class="press" href="/shop/read-in" { (say::another_table()) } }
            }
            div {
                h2 { (say::what_is_new()) }
                @let rows = read.rows.iter().filter_map(|row| match row.becomes {
                    Becomes::New { customer, vehicle } => Some((row, customer, vehicle)),
                    _ => None,
                });
                @for (row, customer, vehicle) in rows.take(MOST) {
                    div class="row" {
                        span class="what" {
                            @for (nth, (field, text)) in row.texts.iter().enumerate() {
                                span class={ "line" @if nth > 0 { " soft" } } title=(word(*field)) { (text) }
                            }
                        }
                        span class="soft" {
                            @match (customer, vehicle) {
                                (true, true) => (say::both_new()),
                                (true, false) => (say::customer_new()),
                                _ => (say::vehicle_new()),
                            }
                        }
                    }
                }
                @if new > MOST { p class="soft gap" { (say::first_rows_shown(MOST)) } }
            }
        }
    }
}

pub async fn done(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Form(sent): Form<Table>,
) -> Response {
    let service = Arc::clone(&state.service);
    let caller = caller_of(&state, &headers);
    let done = decided(&state, &headers, move || {
        read_in(&service, &caller, &sent.table).map(drop)
    });
    match done.await {
        Ok(()) => (StatusCode::SEE_OTHER, [(LOCATION, "/customers")]).into_response(),
        Err(trouble) if trouble.kind == TroubleKind::Pin => {
            let back = [(LOCATION, "/prove?back=/shop/read-in")];
            (StatusCode::SEE_OTHER, back).into_response()
        }
        Err(trouble) => trouble_answer(&trouble),
    }
}

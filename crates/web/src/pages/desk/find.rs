//! Finding orders, vehicles and customers by words, and the lists of all of them.

use super::intake::{customer_row, vehicle_row};
use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, show};
use crate::phrases::desk as say;
use axum::extract::{self, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use shop::view::{
    MOST_ROWS, OrderRow, customers_from, customers_saying, rows, vehicles_from, vehicles_saying,
};

/// What to find.
#[derive(Debug, Deserialize)]
pub struct Find {
    q: Option<String>,
    before: Option<u64>,
}

/// How many vehicles and customers stand above the orders.
const FEW: usize = 5;

pub async fn find(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(find): Query<Find>,
) -> Response {
    show(state, headers, move |visit| {
        let wanted = find.q.unwrap_or_default();
        let found = rows(visit.snap, Some(&wanted), find.before)?;
        let more = found.len() >= MOST_ROWS;
        let first = find.before.is_none() && !wanted.trim().is_empty();
        let vehicles = match first {
            true => vehicles_saying(visit.snap, &wanted, FEW)?,
            false => Vec::new(),
        };
        let customers = match first {
            true => customers_saying(visit.snap, &wanted, FEW)?,
            false => Vec::new(),
        };
        Ok(Shown::new(
            say::find(),
            html! {
                h1 { (say::find()) }
                form method="get" action="/find" class="narrow" data-follows="found" {
                    label class="field" {
                        span { (say::find_by()) }
                        input type="text" name="q" value=(wanted) autocomplete="off";
                    }
                    div class="presses" { button class="press confirm" type="submit" { (say::find()) } }
                }
                div id="found" aria-live="polite" {
                    @if wanted.trim().is_empty() && find.before.is_none() {
                        a class="row" href="/customers" { span class="what strong" { (say::all_customers()) } }
                        a class="row" href="/vehicles" { span class="what strong" { (say::all_vehicles()) } }
                    }
                    @if !vehicles.is_empty() {
                        h2 { (say::vehicles()) }
                        @for one in &vehicles { (vehicle_row(one, &format!("/v/{}", one.vehicle), "")) }
                    }
                    @if !customers.is_empty() {
                        h2 { (say::customers()) }
                        @for one in &customers { (customer_row(one, &format!("/c/{}", one.customer))) }
                    }
                    h2 { (say::orders_count(found.len())) @if more { (say::and_older()) } }
                    @for row in &found { (order_row(row)) }
                    @if let (true, Some(last)) = (more, found.last()) {
                        form method="get" action="/find" class="narrow" {
                            input type="hidden" name="q" value=(wanted);
                            input type="hidden" name="before" value=(last.number);
                            div class="presses" { button class="press" type="submit" { (say::older_ones()) } }
                        }
                    }
                }
            },
        )
        .of_part(Part::Orders))
    })
    .await
}

/// An order on one line of a list.
pub fn order_row(row: &OrderRow) -> Markup {
    html! {
        a class="row" href=(format!("/o/{}", row.number)) {
            span class="what" {
                span class="strong line" { (row.number) " · " (row.vehicle) }
                span class="soft line" { (super::intake::joined(&[&row.plate, &row.customer, &row.complaint])) }
            }
            span class="strong upper" { (row.word_said()) }
        }
    }
}

/// From where on a list is shown.
#[derive(Debug, Default, Deserialize)]
pub struct From {
    #[serde(default)]
    after: String,
}

pub async fn customers(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(from): Query<From>,
) -> Response {
    show(state, headers, move |visit| {
        let page = customers_from(visit.snap, &from.after, MOST_ROWS)?;
        let rows: Vec<Markup> = page
            .iter()
            .map(|(_, one)| customer_row(one, &format!("/c/{}", one.customer)))
            .collect();
        let last = page.last().map(|(key, _)| key.as_str());
        let shown = list(say::customers(), "/customers", &rows, last);
        Ok(Shown::new(say::customers(), shown).of_part(Part::Orders))
    })
    .await
}

pub async fn vehicles(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Query(from): Query<From>,
) -> Response {
    show(state, headers, move |visit| {
        let page = vehicles_from(visit.snap, &from.after, MOST_ROWS)?;
        let rows: Vec<Markup> = page
            .iter()
            .map(|(_, one)| vehicle_row(one, &format!("/v/{}", one.vehicle), ""))
            .collect();
        let last = page.last().map(|(key, _)| key.as_str());
        let shown = list(say::vehicles(), "/vehicles", &rows, last);
        Ok(Shown::new(say::vehicles(), shown).of_part(Part::Orders))
    })
    .await
}

fn list(name: &str, page: &str, rows: &[Markup], last: Option<&str>) -> Markup {
    html! {
        h1 { (name) }
        a class="row" href="/find" { span class="what soft" { (say::find_by_words()) } }
        @if rows.is_empty() { p class="gap" { (say::none()) } }
        @for row in rows { (row) }
        @if let (true, Some(last)) = (rows.len() >= MOST_ROWS, last) {
            form method="get" action=(page) class="narrow" {
                input type="hidden" name="after" value=(last);
                div class="presses" { button class="press" type="submit" { (say::more()) } }
            }
        }
    }
}

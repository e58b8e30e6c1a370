//! What finished work says of itself, of one kind of vehicle or of the whole shop: drawn, and
//! every figure a tap from the orders behind it.

use crate::State;
use crate::layout::Part as PagePart;
use crate::pages::{Shown, show};
use crate::phrases::teaching as say;
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use drawing::{SpreadRow, Spreads, spreads, svg};
use maud::{Markup, PreEscaped, html};
use shop::history::{Figure, History, Part, history};
use shop::teaching::vehicle_kind;

pub async fn of_shop(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let found = history(visit.snap, None)?;
        let mut page = Shown::new(say::history(), content(say::the_whole_shop(), &found))
            .of_part(PagePart::Maps);
        page.leads_to(say::what_our_work_has_taught(), "/kinds");
        Ok(page)
    })
    .await
}

pub async fn of_kind(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(code): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let kind = vehicle_kind(visit.snap, &code)?;
        let found = history(visit.snap, Some(&kind))?;
        let mut page =
            Shown::new(say::history(), content(&kind.vehicle, &found)).of_part(PagePart::Maps);
        page.leads_to(&kind.vehicle, &format!("/kinds/{code}"));
        Ok(page)
    })
    .await
}

fn content(title: &str, found: &History) -> Markup {
    html! {
        h1 { (title) }
        p class="soft gap" {
            @if found.more { (say::from_the_newest(found.orders)) } @else { (say::from_orders(found.orders)) }
        }
        @if found.orders == 0 { p class="gap" { (say::first_order_begins_it()) } }
        @else {
            div class="columns" {
                @for part in &found.parts { div { (one_part(part)) } }
            }
        }
    }
}

fn one_part(part: &Part) -> Markup {
    html! {
        h2 id=(part.id) { (part.title) }
        @if !part.about.is_empty() { p class="soft gap" { (part.about) } }
        @if part.figures.is_empty() { p class="gap" { (say::nothing_told_yet()) } }
        (drawn(part))
        @for (nth, figure) in part.figures.iter().enumerate() { (one_figure(part.id, nth, figure)) }
    }
}

/// The width of a column at the desk, and of a telephone's page.
const WIDTH: f64 = 358.0;

/// Figures with a spread, on one scale.
fn drawn(part: &Part) -> Markup {
    let rows: Vec<SpreadRow> = part
        .figures
        .iter()
        .filter_map(|figure| {
            Some(SpreadRow {
                name: figure.name.clone(),
                words: figure.short.clone(),
                values: figure.spread?,
            })
        })
        .collect();
    html! {
        @if !rows.is_empty() {
            @let drawing = spreads(&Spreads {
                title: part.title.to_owned(),
                scale: part.scale.to_owned(),
                mark: part.mark.map(|(at, name)| (at, name.to_owned())),
                rows,
            }, WIDTH);
            (PreEscaped(svg(&drawing)))
        }
    }
}

fn one_figure(part: &str, nth: usize, figure: &Figure) -> Markup {
    html! {
        details id=(format!("{part}-{nth}")) {
            summary class="row" {
                span class="what" {
                    span class="strong line" { (figure.name) }
                    span class="soft line" { (figure.words) }
                }
            }
            @for number in &figure.orders {
                a class="row" href=(format!("/o/{number}")) { span class="what" { (say::order()) span class="strong" { (number) } } }
            }
        }
    }
}

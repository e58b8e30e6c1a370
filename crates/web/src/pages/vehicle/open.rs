//! The open list, and the tray: what lies on the bench.

use crate::State;
use crate::pages::{Shown, order_of, show};
use crate::phrases::vehicle as say;
use crate::tap::{Look, link};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, PreEscaped, html};
use shop::record::v1::basics::StateForm;
use shop::record::v1::codes::KindForm;
use shop::view::OrderView;

pub async fn open(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let (inside, outside): (Vec<_>, Vec<_>) = order.open_items.iter().partition(|open| open.inside);
        let row = |open: &shop::view::OpenItemView| html! {
            a class="row" href=(format!("/o/{}/item/{}", order.number, open.item)) {
                span class={ "mark " (if open.inside { "inside" } else { "" }) } {}
                span class="what" {
                    span class="strong line" { (open.text) }
                    span class="soft line" { (open.by) ", " (open.since) }
                }
            }
        };
        Ok(Shown::of(&order, say::still_open(), html! {
            h1 { (say::still_open()) }
            div class="three" {
                @for (number, word) in [(outside.len(), say::still_off()), (inside.len(), say::inside()), (order.debts.len(), say::owed_count())] {
                    div { span class="fact" { (number) } span class="beside" { (word) } }
                }
            }
            div class="columns" {
                div {
                    @for open in &outside { (row(open)) }
                    @if !inside.is_empty() { h2 { (say::inside_the_vehicle()) } @for open in &inside { (row(open)) } }
                    @if order.open_items.is_empty() { p class="gap yes" { (say::everything_is_home()) } }
                }
                div {
                    @if !order.debts.is_empty() {
                        h2 { (say::owed()) }
                        @for debt in &order.debts { a class="row" href=(format!("/o/{}/due", order.number)) { span class="what" { (debt.text) } } }
                    }
                }
            }
            div class="presses two low" {
                (link(Look::Confirm, say::put_back(), "", &format!("/o/{}/back", order.number)))
                (link(Look::Plain, say::trays(), "", &format!("/o/{}/tray", order.number)))
            }
        }))
    })
    .await
}

pub async fn tray(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let picture = drawing::svg(&drawing::tray(&tray_of(&order), 358.0));
        Ok(Shown::of(&order, say::trays(), html! {
            h1 { (say::trays()) }
            (PreEscaped(picture))
            (count_by_photo(&order))
            div class="presses low" { (link(Look::Confirm, say::put_back(), "", &format!("/o/{}/back", order.number))) }
        }))
    })
    .await
}

/// The offer to count loose fasteners by photo, where any are out.
pub fn count_by_photo(order: &OrderView) -> Markup {
    let (groups, unknown) = shop::tray_count::expected(order);
    html! {
        @if !(groups.is_empty() && unknown.is_empty()) {
            a class="row" href=(format!("/o/{}/tray/count", order.number)) {
                span class="what" {
                    span class="strong line" { (say::count_by_photo()) }
                    span class="soft line" { (say::count_by_photo_why()) }
                }
            }
        }
    }
}

/// What lies on the bench, by the container it was put in.
fn tray_of(order: &OrderView) -> drawing::Tray {
    let mut places: Vec<drawing::TrayPlace> = Vec::new();
    for item in order
        .items
        .iter()
        .filter(|item| !item.home && item.kind != KindForm::PutIn)
    {
        let away: usize = item
            .pieces
            .iter()
            .filter(|group| {
                matches!(
                    group.state,
                    Some(StateForm::Off | StateForm::Out | StateForm::Low)
                )
            })
            .map(|group| group.at.len())
            .sum();
        if away == 0 {
            continue;
        }
        let container = item
            .container
            .clone()
            .unwrap_or_else(|| say::bench().to_owned());
        let mark = match item.kind {
            KindForm::Fluid => drawing::TrayMark::Fluid {
                amount: order
                    .open_items
                    .iter()
                    .find(|open| open.item == item.item)
                    .and_then(|open| open.text.split_once(": "))
                    .map(|(_, amount)| amount.split(", ").next().unwrap_or("").to_owned())
                    .unwrap_or_default(),
            },
            KindForm::Fasteners | KindForm::Clips => drawing::TrayMark::Fasteners,
            _ => drawing::TrayMark::Part,
        };
        let thing = drawing::TrayThing {
            label: item.label.clone(),
            detail: item.size.clone().unwrap_or_default(),
            count: u32::try_from(away).unwrap_or(u32::MAX),
            mark,
        };
        match places.iter_mut().find(|place| place.container == container) {
            Some(place) => place.things.push(thing),
            None => places.push(drawing::TrayPlace {
                stage: String::new(),
                container,
                things: vec![thing],
            }),
        }
    }
    drawing::Tray { places }
}

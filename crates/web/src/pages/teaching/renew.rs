//! The map of a kind made or renewed from finished work: what changes is said in words before
//! anything is kept.

use crate::State;
use crate::layout::Part;
use crate::map_drawing::{Sight, narrow_picture};
use crate::pages::{Shown, show};
use crate::phrases::teaching as say;
use crate::tap::{Look, button, link};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::json;
use shop::repair::ItemId;
use shop::teaching::{Renewed, VehicleKind, renewed, vehicle_kind};

pub async fn renew(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(code): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let kind = vehicle_kind(visit.snap, &code)?;
        let made = renewed(visit.snap, &kind)?;
        let mut page =
            Shown::new(say::map_from_our_work(), content(&kind, &made)).of_part(Part::Maps);
        page.leads_to(&kind.vehicle, &format!("/kinds/{code}"));
        Ok(page)
    })
    .await
}

fn content(kind: &VehicleKind, made: &Renewed) -> Markup {
    let (map, _) = shop::map::look("line", &made.text);
    let to = |item: &ItemId| {
        format!(
            "/kinds/{}?for={}",
            kind.code,
            form_urlencoded::byte_serialize(item.as_str().as_bytes()).collect::<String>()
        )
    };
    html! {
        h1 { (kind.vehicle) }
        p class="gap" {
            @if made.from == 0 { (say::new_map_of(say::things(made.things), say::so_many_finished_orders(kind.finished.len()))) }
            @else if made.changes.is_empty() { (say::says_all_already(made.from)) }
            @else { (say::changes_to_version(made.changes.len(), made.from)) }
        }
        @if made.open > 0 {
            a class="row" href=(format!("/kinds/{}", kind.code)) {
                span class="what wait" { (say::told_differently_left_out(made.open)) }
                span class="soft" { (say::choose()) }
            }
        }
        @for fault in &made.faults { p class="no gap" { (shop::say::capital(fault)) } }
        div class="columns" {
            @if !made.items.is_empty() {
                div {
                    h2 { @if made.from == 0 { (say::what_stands_in_it()) } @else { (say::what_changes()) } }
                    @for (item, lines) in &made.items {
                        div class="row" {
                            span class="what" {
                                span class="strong line" { (item) }
                                @for line in lines { span class="soft line" { (line) } }
                            }
                        }
                    }
                }
            }
            div {
                h2 { (say::as_a_drawing()) }
                (narrow_picture(&map, &Sight::default(), to))
            }
        }
        (keep(kind, made))
    }
}

fn keep(kind: &VehicleKind, made: &Renewed) -> Markup {
    let version = made.from.saturating_add(1);
    let fact = json!({
        "stream": format!("map:{}", made.map),
        "map_fact": { "drafted": {
            "version": version,
            "text": { "$document": "text", "media": "application/toml" },
        } },
    });
    let change = format!("/maps/{}/edit?taught={}", made.map, kind.code);
    html! {
        @if made.from == 0 || !made.changes.is_empty() {
            form {
                details id="as-text" {
                    summary class="row" { span class="what" { (say::as_text()) } }
                    textarea name="text" class="code" rows="20" readonly aria-label=(say::map_as_text()) { (made.text) }
                }
                div class="presses two" {
                    (button(Look::Confirm, say::keep_it(), &say::as_version(version), &[fact], Some(&format!("/maps/{}", made.map))))
                    (link(Look::Plain, say::change_it_first(), "", &change))
                }
            }
        }
    }
}

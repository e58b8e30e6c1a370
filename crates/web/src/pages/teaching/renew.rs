//! The map of a kind made or renewed from finished work: what changes is said in words before
//! anything is kept.

use crate::State;
use crate::layout::Part;
use crate::map_drawing::{Sight, narrow_picture};
use crate::pages::{Shown, count, show};
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
            Shown::new("The map from our work", content(&kind, &made)).of_part(Part::Maps);
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
            @if made.from == 0 { "A new map of " (count(made.things, "thing", "things")) ", from " (count(kind.finished.len(), "finished order", "finished orders")) "." }
            @else if made.changes.is_empty() { "Version " (made.from) " says all of it already. There is nothing to keep." }
            @else { (count(made.changes.len(), "change", "changes")) " to version " (made.from) "." }
        }
        @if made.open > 0 {
            a class="row" href=(format!("/kinds/{}", kind.code)) {
                span class="what wait" { (count(made.open, "thing was", "things were")) " told differently; nobody has chosen, so it is left out" }
                span class="soft" { "choose" }
            }
        }
        @for fault in &made.faults { p class="no gap" { (shop::say::capital(fault)) } }
        div class="columns" {
            @if !made.items.is_empty() {
                div {
                    h2 { @if made.from == 0 { "What stands in it" } @else { "What changes" } }
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
                h2 { "As a drawing" }
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
                    summary class="row" { span class="what" { "As text" } }
                    textarea name="text" class="code" rows="20" readonly aria-label="The map as text" { (made.text) }
                }
                div class="presses two" {
                    (button(Look::Confirm, "Keep it", &format!("as version {version}"), &[fact], Some(&format!("/maps/{}", made.map))))
                    (link(Look::Plain, "Change it first", "", &change))
                }
            }
        }
    }
}

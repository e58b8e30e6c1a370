//! The shop's maps: the list, and one map as a list by layers.

use crate::State;
use crate::layout::Part;
use crate::map_drawing::{Sight, picture};
use crate::pages::{Shown, count, show};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde::Deserialize;
use shop::map::{Map, MapItem};
use shop::repair::{ItemId, MapId};
use shop::{KeptMap, ShelvedMap};
use std::collections::BTreeMap;

pub async fn maps(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, move |visit| {
        let shelf = visit.snap.maps()?;
        Ok(Shown::new("Maps", html! {
            h1 { "Maps" }
            p class="soft gap" { "What is fitted to what, one kind of vehicle each. A plan is made from a map." }
            @if shelf.is_empty() { p class="gap" { "None yet." } }
            div class="presses even" {
                a class="press" href="/maps/new" { "Write a new map" }
                a class="press" href="/maps/read-in" { "Read in a map" }
                a class="press" href="/kinds" { "What our work has taught" }
            }
            @for one in &shelf {
                a class="row" href=(format!("/maps/{}", one.newest.id)) {
                    span class="what" {
                        span class="strong line" { (title(one)) }
                        span class="soft line" { (one.newest.id) ", " (versions(one)) }
                    }
                    @match &one.newest.read {
                        Ok(read) => span class="number" { (count(read.map.items.len(), "item", "items")) },
                        Err(troubles) => span class="no number" { (count(troubles.len(), "error", "errors")) },
                    }
                }
            }
        }).of_part(Part::Maps))
    })
    .await
}

/// What a version is called: its vehicle, or its name where it has errors.
pub fn title_of(kept: &KeptMap) -> String {
    kept.sound().map_or_else(
        |_| kept.id.as_str().replace('-', " "),
        |map| map.vehicle.clone(),
    )
}

/// What a map is called: its vehicle, as it was when the map could last be read.
pub fn title(one: &ShelvedMap) -> String {
    title_of(&one.newest)
}

fn versions(one: &ShelvedMap) -> String {
    let newest = one.newest.version;
    match one.sound {
        Some(sound) if sound != newest => {
            format!("version {newest}, planned by version {sound}")
        }
        Some(_) => format!("version {newest}"),
        None => format!("version {newest}, no plan can be made by it yet"),
    }
}

/// Which version.
#[derive(Debug, Deserialize)]
pub struct Which {
    pub version: Option<u32>,
    /// What to get at, in the drawing.
    #[serde(rename = "for", default)]
    wanted: Option<String>,
}

pub async fn map(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
    Query(which): Query<Which>,
) -> Response {
    show(state, headers, move |visit| {
        let id = MapId::new(id);
        let kept = visit.snap.map(&id, which.version)?;
        let by = {
            let world = visit.snap.world();
            world
                .shop
                .everyone()
                .get(&kept.by.who)
                .map(|(name, _)| visit.snap.texts().text(*name))
        };
        let kind = match kept.sound() {
            Ok(map) => shop::teaching::known_kind(visit.snap, &map.vehicle)?,
            Err(_) => None,
        };
        let shown = match &kept.read {
            Ok(read) => html! {
                (drawn(&read.map, which.wanted.as_deref()))
                (layers(&read.map, &read.warnings))
            },
            Err(troubles) => errors(troubles),
        };
        let mut page = Shown::new(
            "Map",
            html! {
                (heading(&kept, by.as_deref(), kind.as_ref()))
                (shown)
            },
        );
        page.leads_to("Maps", "/maps");
        Ok(page)
    })
    .await
}

fn heading(kept: &KeptMap, by: Option<&str>, kind: Option<&MapId>) -> Markup {
    let vehicle = kept.sound().map_or(kept.id.as_str(), |map| &map.vehicle);

    html! {
        h1 { (vehicle) }
        div class="presses even" {
            a class="press" href=(format!("/maps/{}/edit", kept.id)) { "Change it" }
            a class="press" href=(format!("/maps/{}/file?version={}", kept.id, kept.version)) download { "As a file" }
            @if kept.read.is_ok() { a class="press" href=(format!("/maps/{}/send?version={}", kept.id, kept.version)) { "Send it" } }
        }
        p class="soft gap" { (kept.id) ", version " (kept.version) @if let Some(by) = by { ", kept by " (by) } }
        a class="row" href=(format!("/maps/{}/versions?version={}", kept.id, kept.version)) { span class="what strong" { "What each version changed" } }
        @if let Some(kind) = kind { a class="row" href=(format!("/kinds/{kind}")) { span class="what strong" { "What our work has taught" } } }
    }
}

/// The way in to one item: to the one asked for, or to the deepest. The whole map, where
/// the address asks for nothing in particular (`for=`).
fn drawn(map: &Map, wanted: Option<&str>) -> Markup {
    let known = |name: &&str| map.items.contains_key(&ItemId::new(*name));
    let wanted: Option<ItemId> = match wanted {
        Some("") => None,
        Some(name) => Some(name).filter(known).map(ItemId::new),
        None => map.deepest().cloned(),
    };
    let sight = Sight {
        wanted: wanted.iter().cloned().collect(),
        ..Sight::default()
    };
    let to = |item: &ItemId| format!("?{}", query(&[("for", item.as_str())]));
    html! {
        @if map.items.is_empty() { p class="gap" { "Nothing stands in it yet." } }
        @else {
            @match &wanted {
                Some(item) => p class="gap" { "The way in to " span class="strong" { (item) } ". Press another to see its own." },
                None => p class="gap" { "Everything, from the outside in. Press one to see the way in to it." },
            }
            @if wanted.is_some() { a class="row" href="?for=" { span class="what strong" { "Show everything" } } }
            (picture(map, &sight, to))
        }
    }
}

/// The part of an address behind the question mark.
fn query(pairs: &[(&str, &str)]) -> String {
    let mut out = form_urlencoded::Serializer::new(String::new());
    out.extend_pairs(pairs);
    out.finish()
}

fn errors(troubles: &[shop::map::Trouble]) -> Markup {
    html! {
        p class="alarm" { "No plan can be made by this version: " (count(troubles.len(), "error", "errors")) "." }
        @for trouble in troubles { div class="row" { span class="what" { (trouble.to_string()) } } }
    }
}

/// The items by how deep they sit: what can be reached at once, then what that frees.
fn layers(map: &Map, warnings: &[shop::map::Trouble]) -> Markup {
    let mut by_depth: BTreeMap<usize, Vec<(&ItemId, &MapItem)>> = BTreeMap::new();
    let depths = shop::planning::depths(map);
    for (item, known) in &map.items {
        let depth = depths.get(item).copied().unwrap_or(0);
        by_depth.entry(depth).or_default().push((item, known));
    }
    html! {
        @for warning in warnings { p class="wait gap" { (warning.to_string()) } }
        @for (depth, items) in &by_depth {
            h2 class="spread" {
                span { @if *depth == 0 { "Free at once" } @else { "Layer " (depth) } }
                span class="soft" { (count(items.len(), "item", "items")) }
            }
            @for (item, known) in items { (one_item(map, item, known)) }
        }
    }
}

fn one_item(map: &Map, item: &ItemId, known: &MapItem) -> Markup {
    let needs: Vec<String> = known
        .moves
        .iter()
        .filter_map(|made| shop::planning::need_words(map, &made.need))
        .collect();
    let torque: Vec<&str> = known.torque.iter().map(shop::planning::written).collect();
    html! {
        details id=(shop::planning::in_order(item)) {
            summary class="row" {
                span class="what" {
                    span class="strong line" { (item) @if let Some(size) = &known.size { " " (size) } }
                    @if !needs.is_empty() { span class="soft line" { "after " (needs.join(", then ")) } }
                }
                span class="beside number" { @if known.count > 1 { (known.count) } }
            }
            div class="why" {
                @for made in &known.moves {
                    p { span class="soft" { (made.id) ": " } (shop::planning::time_words(made, known.count))
                        @if let Some(place) = &made.place { ", " (place) }
                        @for tool in &made.tools { ", " (tool) } }
                }
                @if !torque.is_empty() {
                    p { span class="soft" { "Torque: " } (torque.join(", then "))
                        @if let Some(pattern) = &known.pattern { ", " (pattern) }
                        @if let Some(source) = shop::planning::torque_source(map, known) { " (" (source) ")" } }
                }
                @if known.spent { p { "Not used again: a new one goes on" } }
                @if let Some(note) = &known.note { p { (note) } }
            }
        }
    }
}

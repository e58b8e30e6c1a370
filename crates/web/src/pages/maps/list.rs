//! The shop's maps: the list, and one map as a list by layers.

use crate::State;
use crate::layout::Part;
use crate::map_drawing::{Sight, picture};
use crate::pages::{Shown, show};
use crate::phrases::maps as say;
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
        Ok(Shown::new(say::maps(), html! {
            h1 { (say::maps()) }
            p class="soft gap" { (say::what_maps_are()) }
            @if shelf.is_empty() { p class="gap" { (say::none_yet()) } }
            div class="presses even" {
                a class="press" href="/maps/new" { (say::write_a_new_map()) }
                a class="press" href="/maps/read-in" { (say::read_in_a_map()) }
                a class="press" href="/kinds" { (say::what_our_work_has_taught()) }
            }
            @for one in &shelf {
                a class="row" href=(format!("/maps/{}", one.newest.id)) {
                    span class="what" {
                        span class="strong line" { (title(one)) }
                        span class="soft line" { (say::id_and_versions(&one.newest.id, versions(one))) }
                    }
                    @match &one.newest.read {
                        Ok(read) => span class="number" { (say::items(read.map.items.len())) },
                        Err(troubles) => span class="no number" { (say::errors(troubles.len())) },
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
        Some(sound) if sound != newest => say::newest_and_planned_by(newest, sound),
        Some(_) => say::version(newest),
        None => say::newest_and_no_plan(newest),
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
            say::map(),
            html! {
                (heading(&kept, by.as_deref(), kind.as_ref()))
                (shown)
            },
        );
        page.leads_to(say::maps(), "/maps");
        Ok(page)
    })
    .await
}

fn heading(kept: &KeptMap, by: Option<&str>, kind: Option<&MapId>) -> Markup {
    let vehicle = kept.sound().map_or(kept.id.as_str(), |map| &map.vehicle);

    html! {
        h1 { (vehicle) }
        div class="presses even" {
            a class="press" href=(format!("/maps/{}/edit", kept.id)) { (say::change_it()) }
            a class="press" href=(format!("/maps/{}/file?version={}", kept.id, kept.version)) download { (say::as_a_file()) }
            @if kept.read.is_ok() { a class="press" href=(format!("/maps/{}/send?version={}", kept.id, kept.version)) { (say::send_it()) } }
        }
        p class="soft gap" { (say::id_and_version(&kept.id, kept.version)) @if let Some(by) = by { (say::kept_by(by)) } }
        a class="row" href=(format!("/maps/{}/versions?version={}", kept.id, kept.version)) { span class="what strong" { (say::what_each_version_changed()) } }
        @if let Some(kind) = kind { a class="row" href=(format!("/kinds/{kind}")) { span class="what strong" { (say::what_our_work_has_taught()) } } }
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
        @if map.items.is_empty() { p class="gap" { (say::nothing_stands_in_it()) } }
        @else {
            @match &wanted {
                Some(item) => p class="gap" { (say::way_in_to()) span class="strong" { (item) } (say::press_another()) },
                None => p class="gap" { (say::everything_from_outside()) },
            }
            @if wanted.is_some() { a class="row" href="?for=" { span class="what strong" { (say::show_everything()) } } }
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
        p class="alarm" { (say::no_plan_by_this_version(say::errors(troubles.len()))) }
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
                span { @if *depth == 0 { (say::free_at_once()) } @else { (say::layer(depth)) } }
                span class="soft" { (say::items(items.len())) }
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
    let torque: Vec<String> = known.torque.iter().map(shop::planning::amount).collect();
    html! {
        details id=(shop::planning::in_order(item)) {
            summary class="row" {
                span class="what" {
                    span class="strong line" { (item) @if let Some(size) = &known.size { " " (size) } }
                    @if !needs.is_empty() { span class="soft line" { (say::after(needs.join(say::then()))) } }
                }
                span class="beside number" { @if known.count > 1 { (known.count) } }
            }
            div class="why" {
                @for made in &known.moves {
                    p { span class="soft" { (say::of_move(shop::map::move_called(&made.id))) } (shop::planning::time_words(made, known.count))
                        @if let Some(place) = &made.place { ", " (shop::map::called(place)) }
                        @for tool in &made.tools { ", " (tool) } }
                }
                @if !torque.is_empty() {
                    p { span class="soft" { (say::torque()) } (torque.join(say::then()))
                        @if let Some(pattern) = &known.pattern { ", " (pattern) }
                        @if let Some(source) = shop::planning::torque_source(map, known) { " (" (source) ")" } }
                }
                @if known.spent { p { (say::not_used_again()) } }
                @if let Some(note) = &known.note { p { (note) } }
            }
        }
    }
}

//! The versions of a map: who kept each, where it came from, and what it changed, in words and
//! drawn.

use super::list::{Which, title_of};
use crate::State;
use crate::layout::Part;
use crate::map_drawing::{Sight, picture};
use crate::pages::{Shown, Visit, show};
use crate::phrases::dates::dated;
use crate::phrases::maps as say;
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use shop::map::{Change, Map, What, difference, look};
use shop::repair::{ItemId, MapId};
use shop::sent_map::{came_from, log_beside};
use shop::{KeptMap, Trouble};
use std::collections::BTreeSet;
use std::sync::Arc;

/// So many changes of the first version are shown: all of it is new.
const MOST: usize = 80;

pub async fn versions(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(id): Path<String>,
    Query(which): Query<Which>,
) -> Response {
    show(state, headers, move |visit| {
        let id = MapId::new(id);
        let kept = visit.snap.map(&id, which.version)?;
        let all = visit.snap.versions_of(&id)?;
        let before = all.iter().rev().find(|version| **version < kept.version);
        let before = before
            .map(|version| visit.snap.map(&id, Some(*version)))
            .transpose()?;
        let mut page = Shown::new(
            say::versions(),
            content(visit, &kept, before.as_ref(), &all)?,
        );
        page.leads_to(say::the_map(), &format!("/maps/{id}"));
        Ok(page.of_part(Part::Maps))
    })
    .await
}

fn content(
    visit: &Visit<'_>,
    kept: &KeptMap,
    before: Option<&Arc<KeptMap>>,
    all: &[u32],
) -> Result<Markup, Trouble> {
    let (new, _) = look("line", &kept.text);
    let changes = before.map(|before| difference(&look("line", &before.text).0, &new));
    Ok(html! {
        h1 { (title_of(kept)) }
        div class="columns" {
            div {
                h2 { (say::versions()) }
                @for version in all.iter().rev() { (one(visit, &*visit.snap.map(&kept.id, Some(*version))?, *version == kept.version)) }
            }
            div {
                @match (&changes, before) {
                    (Some(changes), Some(before)) => {
                        h2 class="spread" { span { (say::version_against(kept.version, before.version)) } span class="soft" { (say::changes(changes.len())) } }
                        @if changes.is_empty() { p class="gap" { (say::they_say_the_same()) } }
                        @for change in changes.iter().take(MOST) { div class="row" { span class="what" { (change.to_string()) } } }
                        @if changes.len() > MOST { p class="soft" { (say::more(changes.len() - MOST)) } }
                    }
                    _ => { h2 { (say::version_heading(kept.version)) } p class="gap" { (say::first_one_with(new.items.len())) } }
                }
            }
        }
        @if let Some(changes) = &changes { (drawn(&new, changes)) }
    })
}

fn one(visit: &Visit<'_>, kept: &KeptMap, shown: bool) -> Markup {
    let (by, at) = {
        let world = visit.snap.world();
        let people = world.shop.everyone();
        let by = people.get(&kept.by.who);
        let by = by.map(|(name, _)| visit.snap.texts().text(*name));
        (
            by,
            dated("%a %-d %b %Y", visit.snap.rules().day(kept.by.at)),
        )
    };
    html! {
        a class="row" href=(format!("/maps/{}/versions?version={}", kept.id, kept.version)) aria-current=[shown.then_some("page")] {
            span class="what" {
                span class="strong line" { (say::version_heading(kept.version)) }
                span class="soft line" { @if let Some(by) = by { (say::when_and_who(at, by)) } @else { (at) } }
                @if let Some((from, key)) = came_from(visit.snap, &kept.id, kept.version) {
                    span class="soft line" {
                        @match log_beside(&key) { Some(_) => { (say::from_beside(from)) }, None => { (say::from_signed_with(from, key)) } }
                    }
                }
            }
            @if kept.read.is_err() { span class="no" { (say::has_errors()) } }
        }
    }
}

/// What was changed, marked in the drawing of the whole map.
fn drawn(map: &Map, changes: &[Change]) -> Markup {
    let gone = |change: &&Change| matches!(change.what, What::Removed);
    let changed: BTreeSet<ItemId> = changes
        .iter()
        .filter(|change| !gone(change))
        .filter_map(|change| change.item.clone())
        .collect();
    let gone = changes.iter().filter(gone).count();
    if changed.is_empty() || map.items.is_empty() {
        return html! {};
    }
    let sight = Sight {
        next: changed,
        ..Sight::default()
    };
    html! {
        h2 { (say::drawn()) }
        p class="soft" { (say::marked_is_changed()) @if gone > 0 { (say::taken_out(gone)) } }
        (picture(map, &sight, |item: &ItemId| format!("#{}", shop::planning::in_order(item))))
    }
}

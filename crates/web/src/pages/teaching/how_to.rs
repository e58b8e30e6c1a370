//! How a job was done, for the next who does it.

use crate::State;
use crate::pages::desk::paper_address;
use crate::pages::{Shown, order_of, show};
use crate::phrases::teaching as say;
use crate::tap::{Look, link, thumbnails};
use axum::extract::{self, Path};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use papers::Kind;
use shop::how_to::{HowStage, HowTo, how_to};
use shop::repair::MapId;

pub async fn page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let how = how_to(visit.snap, order.number)?;
        let kind = shop::teaching::known_kind(visit.snap, &how.vehicle)?;
        Ok(Shown::of(
            &order,
            say::how_it_was_done(),
            content(&how, kind.as_ref()),
        ))
    })
    .await
}

fn content(how: &HowTo, kind: Option<&MapId>) -> Markup {
    html! {
        h1 { (say::how_it_was_done()) }
        p class="soft gap" { (say::vehicle_order_by(&how.vehicle, how.number, how.by.join(", "))) }
        @for [complaint, cause, correction] in &how.lines {
            dl class="told" {
                dt class="soft" { (say::complaint()) } dd { (complaint) }
                @if !cause.is_empty() { dt class="soft" { (say::cause()) } dd { (cause) } }
                @if !correction.is_empty() { dt class="soft" { (say::correction()) } dd { (correction) } }
            }
        }
        @if !how.cautions.is_empty() {
            div class="caution" { @for caution in &how.cautions { p { (caution) } } }
        }
        div class="columns" {
            div { (stages(say::comes_off(), &how.off)) }
            div { (stages(say::goes_back(), &how.back)) }
            div { (snags(how)) (list(say::torque_by(), &how.sources)) }
            div { (list(say::work_done_after(), &how.work)) (photos(how)) }
        }
        @if let Some(kind) = kind { a class="row" href=(format!("/kinds/{kind}")) { span class="what strong" { (say::all_of_this_kind()) } } }
        div class="presses low" { (link(Look::Confirm, say::paper(), say::pdf(), &paper_address(how.number, Kind::HowTo))) }
    }
}

fn stages(title: &str, stages: &[HowStage]) -> Markup {
    html! {
        @if !stages.is_empty() {
            h2 { (title) }
            @for (nth, stage) in stages.iter().enumerate() {
                div class="row top" {
                    span class="beside nth" { (nth + 1) }
                    span class="what" {
                        @for row in &stage.rows {
                            span class="line" {
                                span class="strong" { (row.label) } " " (row.done) @if row.new { (say::new_one()) }
                                @if let Some(at) = &row.at { ", " (at) }
                                @if !row.torque.is_empty() { " " span class="strong" { (row.torque.join(say::then())) } }
                                @if let Some(lengths) = &row.lengths { span class="soft line" { (say::lengths(lengths)) } }
                            }
                        }
                        @let about = about(nth.checked_sub(1).and_then(|before| stages.get(before)), stage);
                        @if !about.is_empty() { span class="soft line" { (about.join(" · ")) } }
                    }
                    @if let Some(minutes) = &stage.minutes { span class="number soft" { (say::minutes(minutes)) } }
                }
            }
        }
    }
}

/// Where one stands, if it was elsewhere before, and what one holds.
fn about<'a>(before: Option<&HowStage>, stage: &'a HowStage) -> Vec<&'a str> {
    let same = before.is_some_and(|before| before.places == stage.places);
    let places = stage.places.iter().filter(|_| !same);
    places.chain(&stage.tools).map(String::as_str).collect()
}

fn snags(how: &HowTo) -> Markup {
    html! {
        @if !how.snags.is_empty() {
            h2 { (say::what_went_wrong()) }
            @for snag in &how.snags {
                a class="row" href=(format!("/o/{}/snag/{}", how.number, snag.snag)) {
                    span class="what" {
                        span class="strong line" { (snag.text) }
                        @if let Some(words) = &snag.words { span class="line" { (words) } }
                        span class="soft line" { @match &snag.ended { Some(ended) => { (say::ended(ended)) }, None => { (say::still_open()) } } }
                    }
                }
            }
        }
    }
}

fn list(title: &str, lines: &[String]) -> Markup {
    html! {
        @if !lines.is_empty() {
            h2 { (title) }
            @for line in lines { div class="row" { span class="what" { (line) } } }
        }
    }
}

fn photos(how: &HowTo) -> Markup {
    html! {
        @if !how.photos.is_empty() { h2 { (say::photos()) } (thumbnails(&how.photos)) }
    }
}

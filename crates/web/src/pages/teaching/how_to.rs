//! How a job was done, for the next who does it.

use crate::State;
use crate::pages::desk::paper_address;
use crate::pages::{Shown, order_of, show};
use crate::phrases::teaching as say;
use crate::tap::{Look, button, link, new, order_fact, required, text, thumbnails};
use axum::extract::{self, Path, Query};
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use papers::Kind;
use serde::Deserialize;
use serde_json::{Value, json};
use shop::how_to::{HowNote, HowStage, HowTo, how_to};
use shop::repair::MapId;

/// What the address asks for.
#[derive(Debug, Deserialize)]
pub struct Asked {
    /// To write on the sheet; to read it without.
    write: Option<String>,
}

pub async fn page(
    extract::State(state): extract::State<State>,
    headers: HeaderMap,
    Path(number): Path<String>,
    Query(asked): Query<Asked>,
) -> Response {
    show(state, headers, move |visit| {
        let order = order_of(visit, &number)?;
        let how = how_to(visit.snap, order.number)?;
        let kind = shop::teaching::known_kind(visit.snap, &how.vehicle)?;
        Ok(Shown::of(
            &order,
            say::how_it_was_done(),
            content(&how, kind.as_ref(), asked.write.is_some()),
        ))
    })
    .await
}

fn content(how: &HowTo, kind: Option<&MapId>, writes: bool) -> Markup {
    let here = format!("/o/{}/how-to", how.number);
    html! {
        h1 { @match &how.title { Some(title) => { (title) }, None => { (say::how_it_was_done()) } } }
        p class="soft gap" {
            @if how.title.is_some() { (say::how_it_was_done()) ": " }
            (say::vehicle_order_by(&how.vehicle, how.number, how.by.join(", ")))
        }
        @if writes {
            p class="gap" { (say::what_the_next_should_know()) }
            (title_form(how))
        }
        @for [complaint, cause, correction] in &how.lines {
            dl class="told" {
                dt class="soft" { (say::complaint()) } dd { (complaint) }
                @if !cause.is_empty() { dt class="soft" { (say::cause()) } dd { (cause) } }
                @if !correction.is_empty() { dt class="soft" { (say::correction()) } dd { (correction) } }
            }
        }
        @if !how.notes.is_empty() { h2 { (say::notes()) } (notes(how, &how.notes, writes)) }
        @if writes { (note_form(how, ("write", say::note_on_the_job()), None)) }
        @if !how.cautions.is_empty() {
            div class="caution" { @for caution in &how.cautions { p { (caution) } } }
        }
        div class="columns" {
            div { (stages(how, ("off", say::comes_off(), say::note_on_step_off), &how.off, writes)) }
            div { (stages(how, ("back", say::goes_back(), say::note_on_step_back), &how.back, writes)) }
            div { (beside_map(how)) (snags(how)) (list(say::torque_by(), &how.sources)) }
            div { (list(say::work_done_after(), &how.work)) (photos(how)) }
        }
        @if let Some(kind) = kind { a class="row" href=(format!("/kinds/{kind}")) { span class="what strong" { (say::all_of_this_kind()) } } }
        div class="presses low" {
            @if writes { (link(Look::Confirm, say::done_writing(), say::read_it(), &here)) }
            @else {
                (link(Look::Confirm, say::paper(), say::pdf(), &paper_address(how.number, Kind::HowTo)))
                (link(Look::Plain, say::write_on_it(), say::title_and_notes(), &format!("{here}?write=yes")))
            }
        }
    }
}

fn title_form(how: &HowTo) -> Markup {
    let told = json!({ "how-to-titled": { "words": text("title"), "after": how.title_told_by } });
    html! {
        details id="title" {
            summary class="row" { span class="what strong" { @if how.title.is_some() { (say::change_the_title()) } @else { (say::give_it_a_title()) } } }
            form {
                (required("title", say::title_of_the_job(), say::title_hint(), how.title.as_deref().unwrap_or_default()))
                div class="presses" { (button(Look::Plain, say::save_title(), "", &[order_fact(&how.order, told)], None)) }
            }
        }
    }
}

/// Notes of the whole job, or of a stage.
fn notes(how: &HowTo, notes: &[HowNote], writes: bool) -> Markup {
    html! {
        @for (nth, note) in notes.iter().enumerate() {
            @if writes {
                details id=(format!("note-{}", note.note)) {
                    summary class="row" { (note_words(note)) }
                    (one_note(how, note, nth.checked_sub(1).and_then(|before| notes.get(before))))
                }
            } @else { div class="row" { (note_words(note)) } }
        }
    }
}

fn note_words(note: &HowNote) -> Markup {
    html! {
        span class="what" {
            span class="line" { (note.words) }
            span class="soft line" { (say::written_by(&note.by)) }
        }
    }
}

/// What can be done with a note: written better, set before the one above it, taken off.
fn one_note(how: &HowTo, note: &HowNote, above: Option<&HowNote>) -> Markup {
    let stage = how.stage_of(note);
    let noted = |words: Value| {
        order_fact(
            &how.order,
            json!({ "how-to-noted": { "note": note.note, "stage": stage, "words": words, "after": note.told_by } }),
        )
    };
    html! {
        form {
            (required("words", say::note(), "", &note.words))
            div class="presses" { (button(Look::Plain, say::save_note(), "", &[noted(text("words"))], None)) }
        }
        form {
            div class={ "presses" @if above.is_some() { " even" } } {
                @if let Some(above) = above { (button(Look::Plain, say::move_up(), "", &[moved_up(how, note, above)], None)) }
                (button(Look::Plain, say::remove_note(), "", &[noted(Value::Null)], None))
            }
        }
    }
}

/// All notes in their sequence, but this one before the one above it.
fn moved_up(how: &HowTo, note: &HowNote, above: &HowNote) -> Value {
    let mut names: Vec<&str> = how.all_notes().map(|note| note.note.as_str()).collect();
    names.retain(|name| *name != note.note);
    let at = names.iter().position(|name| *name == above.note);
    names.insert(at.unwrap_or_default(), &note.note);
    order_fact(
        &how.order,
        json!({ "how-to-sequenced": { "notes": names, "after": how.sequence_told_by } }),
    )
}

/// A fold in which a note is written: beside a stage, or about the whole job.
fn note_form(how: &HowTo, (id, label): (&str, &str), stage: Option<&HowStage>) -> Markup {
    let beside = stage.map(|stage| stage.told_by.as_str());
    let told = json!({ "how-to-noted": { "note": new("note"), "stage": beside, "words": text("words"), "after": [] } });
    html! {
        details id=(id) {
            summary class="row" { span class="what strong" { (label) } }
            form {
                (required("words", say::note(), "", ""))
                div class="presses" { (button(Look::Plain, say::save_note(), "", &[order_fact(&how.order, told)], None)) }
            }
        }
    }
}

/// One of the two ways, in and back: a name for its folds, its heading, and what a fold in which a
/// note is added to a step is called.
type Side<'a> = (&'a str, &'a str, fn(usize) -> String);

fn stages(how: &HowTo, (id, title, add): Side<'_>, stages: &[HowStage], writes: bool) -> Markup {
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
                        @if !writes {
                            @for note in &stage.notes { span class="line" { (say::note_beside(&note.words)) " " span class="soft" { (note.by) } } }
                        }
                    }
                    @if let Some(minutes) = &stage.minutes { span class="number soft" { (say::minutes(minutes)) } }
                }
                @if writes { (notes(how, &stage.notes, true)) (note_form(how, (&format!("write-{id}-{nth}"), &add(nth + 1)), Some(stage))) }
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

/// What the map says of it, where it was worked by one, and what went otherwise.
fn beside_map(how: &HowTo) -> Markup {
    html! {
        @if let Some(beside) = &how.beside_map {
            h2 { (say::beside_the_map()) }
            a class="row" href=(format!("/maps/{}/versions?version={}", beside.map, beside.version)) {
                span class="what strong" { (beside.vehicle) }
                span class="soft number" { (say::version(beside.version)) }
            }
            @if beside.apart.is_empty() { p class="gap" { (say::all_came_off_by_it()) } }
            @for line in &beside.apart { div class="row" { span class="what" { (shop::say::capital(line)) } } }
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

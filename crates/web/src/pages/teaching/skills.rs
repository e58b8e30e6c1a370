//! What people can do, in a table that the shop writes itself; and what who learns has done,
//! under whose eyes and how often.

use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, show};
use crate::phrases::teaching as say;
use crate::tap::{Look, button, chips, field, required, text, words};
use axum::extract;
use axum::http::HeaderMap;
use axum::response::Response;
use maud::{Markup, html};
use serde_json::{Value, json};
use shop::skills::{Did, Learner, SkillRow, Skills, all_can, can_words, skills};

pub async fn page(extract::State(state): extract::State<State>, headers: HeaderMap) -> Response {
    show(state, headers, |visit| {
        let found = skills(visit.snap)?;
        let mut page = Shown::new(say::skills(), content(&found)).of_part(Part::Shop);
        page.leads_to(say::the_shop(), "/shop");
        Ok(page)
    })
    .await
}

fn content(found: &Skills) -> Markup {
    html! {
        h1 { (say::who_can_do_what()) }
        p class="soft gap" { (say::the_shop_names_the_work()) }
        div class="columns" {
            div {
                h2 { (say::the_table()) }
                @if found.rows.is_empty() { p class="gap" { (say::nothing_said_yet()) } }
                @for (nth, row) in found.rows.iter().enumerate() { (one_row(found, nth, row)) }
                @if found.may_write { (another(found)) }
            }
            div {
                @for learner in &found.learners { (one_learner(learner)) }
                @if found.learners.is_empty() { h2 { (say::who_learns()) } p class="gap" { (say::nobody_is_an_apprentice()) } }
            }
        }
    }
}

/// A piece of work: who can do it, and the taps that say otherwise.
fn one_row(found: &Skills, nth: usize, row: &SkillRow) -> Markup {
    html! {
        h3 { (row.skill) }
        @for (at, (cell, (person, name))) in row.cells.iter().zip(&found.people).enumerate() {
            @let said = cell.can.as_ref().map_or(say::nobody_said(), can_words);
            @if found.may_write {
                details id=(format!("skill-{nth}-{at}")) {
                    summary class="row" { (said_line(name, said, &cell.by)) }
                    form {
                        div class="presses even" {
                            @for (code, label) in all_can().into_iter().filter(|(_, label)| *label != said) {
                                (button(Look::Plain, &shop::say::capital(label), "", &[told(&json!(person), &words(&row.skill), &json!(code), &cell.seen)], None))
                            }
                        }
                    }
                }
            } @else { div class="row" { (said_line(name, said, &cell.by)) } }
        }
    }
}

fn said_line(name: &str, said: &str, by: &str) -> Markup {
    html! {
        span class="what" {
            span class="line" { span class="strong" { (name) } (say::can_so(said)) }
            @if !by.is_empty() { span class="soft line" { (say::said_by(by)) } }
        }
    }
}

fn told(person: &Value, skill: &Value, can: &Value, seen: &[String]) -> Value {
    json!({ "stream": "shop", "shop_fact": { "skill-told": {
        "person": person, "skill": skill, "can": can, "after": seen,
    } } })
}

/// A piece of work that is not in the table yet.
fn another(found: &Skills) -> Markup {
    let people: Vec<(&str, &str)> = found
        .people
        .iter()
        .map(|(person, name)| (person.as_str(), name.as_str()))
        .collect();
    let first = people.first().map_or("", |(person, _)| person);
    let command = told(&field("person"), &text("skill"), &field("can"), &[]);
    html! {
        details id="another" {
            summary class="row" { span class="what strong" { (say::name_another_work()) } }
            form {
                (required("skill", say::which_work(), say::which_work_hint(), ""))
                (chips("person", say::who(), &people, first))
                (chips("can", say::can_do_it(), &all_can(), "watched"))
                div class="presses" { (button(Look::Plain, say::save(), "", &[command], None)) }
            }
        }
    }
}

fn one_learner(learner: &Learner) -> Markup {
    html! {
        h2 class="spread" { span { (say::has_done(&learner.name)) } @if !learner.did.is_empty() { span class="soft" { (say::sorts_of_work(learner.did.len())) } } }
        @if learner.did.is_empty() { p class="gap" { (say::nothing_on_finished_order()) } }
        @for (nth, did) in learner.did.iter().enumerate() { (one_did(nth, did)) }
    }
}

fn one_did(nth: usize, did: &Did) -> Markup {
    let eyes: Vec<String> = did
        .eyes
        .iter()
        .map(|(who, times)| format!("{who} {times}"))
        .collect();
    html! {
        details id=(format!("did-{nth}")) {
            summary class="row" {
                span class="what" {
                    span class="line strong" { (shop::say::capital(&did.what)) }
                    span class="soft line" {
                        @if eyes.is_empty() { (say::nobody_else_checked()) }
                        @else { (say::checked_by(eyes.join(", "))) @if did.unseen > 0 { (say::unseen(did.unseen)) } }
                    }
                }
                span class="number" { (say::times(did.times)) }
            }
            @for number in &did.orders {
                a class="row" href=(format!("/o/{number}")) { span class="what" { (say::order()) span class="strong" { (number) } } }
            }
        }
    }
}

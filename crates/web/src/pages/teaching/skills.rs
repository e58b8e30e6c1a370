//! What people can do, in a table that the shop writes itself; and what who learns has done,
//! under whose eyes and how often.

use crate::State;
use crate::layout::Part;
use crate::pages::{Shown, count, show};
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
        let mut page = Shown::new("Skills", content(&found)).of_part(Part::Shop);
        page.leads_to("The shop", "/shop");
        Ok(page)
    })
    .await
}

fn content(found: &Skills) -> Markup {
    html! {
        h1 { "Who can do what" }
        p class="soft gap" { "The shop names the work and says who can do it; what was done on orders stands beside it." }
        div class="columns" {
            div {
                h2 { "The table" }
                @if found.rows.is_empty() { p class="gap" { "Nothing said yet." } }
                @for (nth, row) in found.rows.iter().enumerate() { (one_row(found, nth, row)) }
                @if found.may_write { (another(found)) }
            }
            div {
                @for learner in &found.learners { (one_learner(learner)) }
                @if found.learners.is_empty() { h2 { "Who learns" } p class="gap" { "Nobody in the shop is an apprentice." } }
            }
        }
    }
}

/// A piece of work: who can do it, and the taps that say otherwise.
fn one_row(found: &Skills, nth: usize, row: &SkillRow) -> Markup {
    html! {
        h3 { (row.skill) }
        @for (at, (cell, (person, name))) in row.cells.iter().zip(&found.people).enumerate() {
            @let said = cell.can.as_ref().map_or("nobody said", can_words);
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
            span class="line" { span class="strong" { (name) } ": " (said) }
            @if !by.is_empty() { span class="soft line" { "said by " (by) } }
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
            summary class="row" { span class="what strong" { "Name another piece of work" } }
            form {
                (required("skill", "Which work", "in the shop's own words, such as timing belt, or air conditioning", ""))
                (chips("person", "Who", &people, first))
                (chips("can", "Can do it", &all_can(), "watched"))
                div class="presses" { (button(Look::Plain, "Save", "", &[command], None)) }
            }
        }
    }
}

fn one_learner(learner: &Learner) -> Markup {
    html! {
        h2 class="spread" { span { (learner.name) " has done" } span class="soft" { (count(learner.did.len(), "sort of work", "sorts of work")) } }
        @if learner.did.is_empty() { p class="gap" { "Nothing on a finished order yet." } }
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
                        @if eyes.is_empty() { "nobody else checked it" }
                        @else { "checked by " (eyes.join(", ")) @if did.unseen > 0 { "; " (did.unseen) " by nobody else" } }
                    }
                }
                span class="number" { (count(did.times, "time", "times")) }
            }
            @for number in &did.orders {
                a class="row" href=(format!("/o/{number}")) { span class="what" { "Order " span class="strong" { (number) } } }
            }
        }
    }
}

//! Forms that ask a calculator, with what is wrong beside each field, and its answer.

use maud::{Markup, PreEscaped, html};
use shop::coolant::{Answer, Asked};

/// A text field that keeps what was typed.
pub fn asked_input(asked: &Asked, name: &str, label: &str, hint: &str) -> Markup {
    let trouble = asked.troubles.get(name);
    let told = format!("{name}-trouble");
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            @if let Some(trouble) = trouble { span class="no" id=(told) { (trouble) } }
            input type="text" name=(name) value=(asked.text(name)) autocomplete="off"
                aria-invalid=[trouble.map(|_| "true")] aria-describedby=[trouble.map(|_| told.as_str())];
        }
    }
}

/// Several lines that keep what was typed.
pub fn asked_lines(asked: &Asked, name: &str, label: &str, hint: &str) -> Markup {
    let trouble = asked.troubles.get(name);
    let told = format!("{name}-trouble");
    html! {
        label class="field" {
            span { (label) }
            @if !hint.is_empty() { span class="soft" { (hint) } }
            @if let Some(trouble) = trouble { span class="no" id=(told) { (trouble) } }
            textarea name=(name) rows="5" autocomplete="off"
                aria-invalid=[trouble.map(|_| "true")] aria-describedby=[trouble.map(|_| told.as_str())] { (asked.text(name)) }
        }
    }
}

/// Chips that keep what was chosen.
pub fn asked_chips(asked: &Asked, name: &str, legend: &str, choices: &[(&str, &str)]) -> Markup {
    let chosen = asked.text(name);
    let first = choices.first().map_or("", |(code, _)| code);
    let known = choices.iter().any(|(code, _)| *code == chosen);
    let chosen = if known { chosen } else { first };
    crate::tap::chips(name, legend, choices, chosen)
}

/// A box that keeps its tick.
pub fn asked_tick(asked: &Asked, name: &str, label: &str, hint: &str) -> Markup {
    html! {
        label class="row" {
            input type="checkbox" name=(name) value="yes" checked[!asked.text(name).is_empty()];
            span class="what" { span class="strong line" { (label) } @if !hint.is_empty() { span class="soft line" { (hint) } } }
        }
    }
}

/// An answer: its one fact large, what goes with it, its drawing, and how it was found.
pub fn answered(answer: &Answer) -> Markup {
    answered_as(answer, "working")
}

/// The same where a page has several: each working is opened by a name of its own.
pub fn answered_as(answer: &Answer, working: &str) -> Markup {
    html! {
        @let alarms: Vec<&str> = answer.alarms.iter().map(String::as_str).collect();
        (cautions(&alarms))
        p class={ "fact gap " (answer.tone) } { (answer.fact) }
        @if !answer.said.eq_ignore_ascii_case(&answer.fact) { p class="beside" { (answer.said) } }
        @for (what, value) in &answer.rows {
            div class="row" { span class="what" { (what) } span class="strong value" { (value) } }
        }
        @if let Some(drawing) = &answer.drawing { (PreEscaped(drawing)) }
        @for note in &answer.notes { p class="soft gap" { (note) } }
        details id=(working) class="working" {
            summary class="row" { span class="strong" { "How it was found" } }
            (PreEscaped(&answer.working))
        }
    }
}

/// What hurts, before the step it concerns.
pub fn cautions(list: &[&str]) -> Markup {
    html! {
        @if !list.is_empty() {
            div class="caution" { @for caution in list { p { (caution) } } }
        }
    }
}

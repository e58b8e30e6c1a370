//! Forms that ask a calculator, with what is wrong beside each field, and its answer.

use crate::phrases::bench as say;
use maud::{Markup, PreEscaped, html};
use shop::calculators::{
    Answer, Asked, Field, Named, Other, Part, Row, Step, Takes, choices, fields, in_row,
};
use shop::drawing::svg;

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

/// A form, as its calculator describes it.
pub fn parts(asked: &Asked, all: &'static [Part]) -> Markup {
    parts_of(asked, all, None)
}

fn parts_of(asked: &Asked, all: &'static [Part], row: Option<usize>) -> Markup {
    html! {
        @for part in all {
            @match part {
                Part::Field(one) => {
                    @let name = row.map_or_else(|| one.name.to_owned(), |row| in_row(one.name, row));
                    (asked_field(asked, &name, one))
                },
                Part::Heading(title) => { h2 { (title()) } },
                Part::Group(group) => { (parts_of(asked, group, row)) },
                Part::Places { title, fields, rows, corners_mm } => { (places(title(), *fields, rows, *corners_mm)) },
                Part::Rows { id, title, most, parts: each } => { (rows(asked, id, title(), *most, each)) },
                Part::More { id, title, parts: folded } => {
                    @let open = fields(folded).iter().any(|one| asked.troubles.contains_key(&one.name) || !is_usual(asked, one));
                    details id=(id) open[open] {
                        summary class="row" { span class="strong" { (title()) } }
                        (parts_of(asked, folded, row))
                    }
                },
            }
        }
    }
}

/// The rows that are written, and one more.
fn rows(asked: &Asked, id: &str, title: &str, most: usize, each: &'static [Part]) -> Markup {
    let written = asked.rows(most, each);
    let shown = (written + 1).max(2).min(most);
    html! {
        div data-rows=(id) data-most=(most) {
            @for row in 1..=shown {
                fieldset id=(in_row(id, row)) class="one-row" {
                    legend class="strong" { (title) " " span data-nth { (row) } @if row > written { span class="soft" { (say::if_there_is_one()) } } }
                    div class="fields" { (parts_of(asked, each, Some(row))) }
                }
            }
            @if shown < most { p class="soft gap" { (say::room_for_another()) } }
        }
    }
}

/// A square to tap; without the page's script it is not there, and the fields are typed.
fn places(
    title: &str,
    (across, up): (&str, &str),
    rows: &str,
    (left, bottom, right, top): (f64, f64, f64, f64),
) -> Markup {
    html! {
        div class="places" hidden data-places=(rows) data-across=(across) data-up=(up) {
            p class="strong gap" { (title) }
            svg viewBox=(format!("{left} {} {} {}", -top, right - left, top - bottom)) role="img" aria-label=(title) {
                path class="grid" d=(grid(left, bottom, right, top)) {}
                g {}
            }
            div class="presses" { button class="press" type="button" data-back { (say::take_the_last_away()) } }
        }
    }
}

/// Lines a hand's breadth apart; the crank's own are drawn with them.
fn grid(left: f64, bottom: f64, right: f64, top: f64) -> String {
    const STEP: f64 = 100.0;
    let lines = |from: f64, to: f64| {
        let first = (from / STEP).ceil();
        let all = ((to / STEP).floor() - first).max(0.0);
        // A few lines: the number of them is small and whole.
        (0..=50)
            .map(f64::from)
            .take_while(move |nth| *nth <= all)
            .map(move |nth| (first + nth) * STEP)
    };
    let upright = lines(left, right).map(|x| format!("M{x} {}V{}", -top, -bottom));
    let level = lines(bottom, top).map(|y| format!("M{left} {}H{right}", -y));
    upright.chain(level).collect()
}

/// Whether a field stands as it does before anybody writes into it.
fn is_usual(asked: &Asked, one: &Named) -> bool {
    let text = asked.text(&one.name);
    match one.takes {
        Takes::Choice { of, .. } => {
            of.first().is_none_or(|(code, _)| *code == text) || text.is_empty()
        }
        _ => text.is_empty(),
    }
}

fn asked_field(asked: &Asked, name: &str, one: &Field) -> Markup {
    if let Some((other, holds)) = one.unless
        && holds.contains(&asked.text(other))
    {
        return html! {};
    }
    match one.takes {
        Takes::Text | Takes::Said | Takes::Number { .. } => {
            asked_input(asked, name, &one.label_in(asked.customary()), one.hint())
        }
        Takes::Lines => asked_lines(asked, name, one.label(), one.hint()),
        Takes::File => html! {
            (asked_lines(asked, name, one.label(), one.hint()))
            label class="field" { span { (say::or_from_a_file()) } input type="file" data-into=(name); }
        },
        Takes::Tick => html! {
            (trouble_of(asked, name))
            (asked_tick(asked, name, one.label(), one.hint()))
        },
        Takes::Link => html! {},
        Takes::Choice { of, first } => html! {
            (trouble_of(asked, name))
            @if !one.hint().is_empty() { p class="soft gap" { (one.hint()) } }
            @if first { (asked_chips(asked, name, one.label(), &choices(of))) }
            @else { (crate::tap::chips(name, one.label(), &choices(of), asked.text(name))) }
        },
    }
}

fn trouble_of(asked: &Asked, name: &str) -> Markup {
    html! { @if let Some(trouble) = asked.troubles.get(name) { p class="no" role="alert" { (trouble) } } }
}

/// An answer: its one fact large, what goes with it, its drawing, and how it was found.
pub fn answered(answer: &Answer) -> Markup {
    answered_as(answer, "working")
}

/// The same where a page has several: each working is opened by a name of its own.
pub fn answered_as(answer: &Answer, working: &str) -> Markup {
    answered_with(answer, working, &|_| String::new(), &[])
}

/// The same with where the other answers stand; what was warned of above is not said again.
pub fn answered_with(
    answer: &Answer,
    working: &str,
    link: &dyn Fn(&Other) -> String,
    above: &[&str],
) -> Markup {
    let alarms: Vec<&str> = answer.alarms.iter().map(String::as_str).collect();
    let alarms: Vec<&str> = alarms
        .into_iter()
        .filter(|text| !above.contains(text))
        .collect();
    html! {
        (cautions(&alarms))
        p class={ "fact gap " (answer.tone) } { (answer.fact) }
        @if !answer.said.eq_ignore_ascii_case(&answer.fact) { p class="beside" { (answer.said) } }
        @for row in &answer.rows { (answer_row(row)) }
        @for (nth, drawing) in answer.drawings.iter().enumerate() {
            @if nth == 0 { (PreEscaped(svg(drawing))) }
            @else {
                details id=(format!("{working}-drawing-{nth}")) {
                    summary class="row" { span class="strong" { (drawing.title) } }
                    (PreEscaped(svg(drawing)))
                }
            }
        }
        @if !answer.steps.is_empty() {
            h2 { (say::what_is_done()) }
            ol class="steps" { @for step in &answer.steps { (answer_step(step)) } }
        }
        @if !answer.others.is_empty() {
            h2 { (say::other_ways()) }
            @for other in &answer.others {
                a class="row" href=(link(other)) {
                    span class="what" {
                        span class="strong line" { (other.name) }
                        span class="soft line" { (other.reason) }
                    }
                    @if other.holds { span class="yes" { (say::holds()) } } @else { span class="no" { (say::no()) } }
                }
            }
        }
        @for note in &answer.notes { p class="soft gap" { (note) } }
        @if let Some(found) = &answer.working {
            details id=(working) class="working" {
                summary class="row" { span class="strong" { (say::how_it_was_found()) } }
                (PreEscaped(found.html()))
            }
        }
    }
}

fn answer_row(row: &Row) -> Markup {
    html! {
        div class="row" {
            span class={ "what " @if row.value.is_empty() { (row.tone) } } {
                (row.what)
                @if !row.beside.is_empty() { span class="soft line" { (row.beside) } }
            }
            @if !row.value.is_empty() { span class={ "strong value " (row.tone) } { (row.value) } }
        }
    }
}

fn answer_step(step: &Step) -> Markup {
    html! {
        li {
            @if let Some(caution) = &step.caution { p class="no" { (caution) } }
            p { (step.what) @if !step.stands.is_empty() { " " span class={ "strong " (step.tone) } { (step.stands) } } }
            @for line in &step.lines { p class="soft" { (line) } }
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

//! The rows of a plan: stage by stage, each with why it is there and what could be asked
//! of it instead.

use super::query::address;
use crate::pages::vehicle::choices::place_of;
use crate::phrases::vehicle as say;
use maud::{Markup, html};
use shop::map::called;
use shop::plan::{Minutes, Way};
use shop::planning::{Asked, Other, RowShown, StageShown, in_minutes};
use shop::repair::{Kind, State};

/// Where the links of a row lead.
pub struct Here<'a> {
    /// The order.
    pub number: u64,
    /// The map.
    pub map: &'a str,
    /// What is asked now.
    pub asked: &'a Asked,
}

impl Here<'_> {
    /// The address of the same plan with this changed.
    pub fn with(&self, change: impl FnOnce(&mut Asked)) -> String {
        let mut asked = self.asked.clone();
        change(&mut asked);
        address(self.number, self.map, &asked)
    }
}

/// The stages of one way, each with its things at a glance; opened, why each is there.
pub fn stages(here: &Here<'_>, name: &str, stages: &[StageShown]) -> Markup {
    html! {
        @for (nth, stage) in stages.iter().enumerate() {
            details id=(format!("{name}-{nth}")) {
                summary class="row" {
                    span class="beside nth" { (nth + 1) }
                    span class="what" {
                        span class="line strong" { (place_of(stage)) " · " (in_minutes(stage.minutes)) " min" }
                        span class="soft line" { (things(stage)) }
                        @if stage.rows.iter().any(|row| !row.guessed.is_empty()) { span class="wait line" { (say::rests_on_a_guess()) } }
                    }
                }
                @for (at, row) in stage.rows.iter().enumerate() { (row_line(here, &format!("{name}-{nth}-{at}"), row)) }
            }
        }
    }
}

/// The things of a stage in one line.
fn things(stage: &StageShown) -> String {
    let owed = |row: &&RowShown| row.kind != Kind::Work || row.way == Way::Back;
    let names: Vec<String> = stage
        .rows
        .iter()
        .filter(owed)
        .map(|row| match row.at.len() {
            0 | 1 => row.label.clone(),
            many => format!("{many} {}", row.label),
        })
        .collect();
    names.join(", ")
}

fn row_line(here: &Here<'_>, id: &str, row: &RowShown) -> Markup {
    let mut about = row.tools.join(", ");
    if !row.torque.is_empty() {
        about = format!("{about} · {}", row.torque.join(say::then_between()));
    }
    html! {
        details id=(id) {
            summary class="row" {
                (mark(row))
                span class="what" {
                    span class="line" { span class="strong" { (row.label) } " " (row.done) @if row.spent && row.way == Way::Back { (say::comma_a_new_one()) } }
                    @if !row.guessed.is_empty() { span class="wait line" { (say::a_guess_comes_first(row.guessed.join(say::the_between()))) } }
                    span class="soft line" { (shop::say::capital(&row.because)) @if !about.is_empty() { " · " (about) } }
                }
                span class="beside number" { @if row.at.len() > 1 { (row.at.len()) } }
            }
            div class="why" {
                p { span class="soft" { (say::takes()) } (in_minutes(row.minutes)) " min" @if let Some(at) = &row.place { ", " (called(at)) } }
                @if let Some(size) = &row.size { p { span class="soft" { (say::size_is()) } (size) } }
                @if row.way == Way::Out && row.kind != Kind::Work {
                    @let without = here.with(|asked| { asked.without.insert(row.id.clone()); asked.also.remove(&row.id); });
                    @let also = here.with(|asked| { asked.also.insert(row.id.clone()); });
                    a class="row" href=(without) { span class="what strong" { (say::not_that_way()) } span class="soft" { (say::show_without_it()) } }
                    a class="row" href=(also) { span class="what strong" { (say::in_any_case()) } span class="soft" { (say::keep_it_in()) } }
                }
            }
        }
    }
}

/// The mark of what a row comes to.
pub fn mark(row: &RowShown) -> Markup {
    let round = match row.kind {
        Kind::Fasteners | Kind::Clips => "round",
        _ => "",
    };
    let state = match (row.to, row.way) {
        (State::Inside, _) => "inside",
        (State::Tight | State::On | State::Plugged | State::AtLevel, _) => "home",
        (State::Done | State::Outside, _) => "home",
        (State::Loose { .. } | State::Cracked, Way::Back) => "half",
        _ => "",
    };
    html! { span class={ "mark " (round) " " (state) } {} }
}

/// How much more, or less, another plan costs.
pub fn dearer(tenths: i64) -> String {
    let minutes = Minutes::tenths(u32::try_from(tenths.abs()).unwrap_or(u32::MAX));
    let minutes = in_minutes(minutes);
    match tenths {
        0 => say::costs_the_same().to_owned(),
        1.. => say::min_more(minutes),
        _ => say::min_less(minutes),
    }
}

/// What differs in another plan, in two lines.
pub fn differs(other: &Other) -> Markup {
    let list = |items: &[String]| match items {
        [] => say::nothing_else().to_owned(),
        items => items.join(", "),
    };
    html! {
        span class="soft line" { (say::other_comes_off()) (list(&other.only_here)) }
        span class="soft line" { (say::other_stays_on()) (list(&other.only_there)) }
    }
}

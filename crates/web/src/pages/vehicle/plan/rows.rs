//! The rows of a plan: stage by stage, each with why it is there and what could be asked
//! of it instead.

use super::query::address;
use maud::{Markup, html};
use shop::plan::Way;
use shop::planning::{Asked, Other, RowShown, StageShown};
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
                        span class="line strong" { (stage.place.as_deref().unwrap_or("anywhere")) " · " (stage.minutes) " min" }
                        span class="soft line" { (things(stage)) }
                        @if stage.rows.iter().any(|row| !row.guessed.is_empty()) { span class="wait line" { "rests on a guess" } }
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
        about = format!("{about} · {}", row.torque.join(", then "));
    }
    html! {
        details id=(id) {
            summary class="row" {
                (mark(row))
                span class="what" {
                    span class="line" { span class="strong" { (row.label) } " " (row.done) @if row.spent && row.way == Way::Back { ", a new one" } }
                    @if !row.guessed.is_empty() { span class="wait line" { "A guess: that the " (row.guessed.join(", the ")) " comes first" } }
                    span class="soft line" { (shop::say::capital(&row.because)) @if !about.is_empty() { " · " (about) } }
                }
                span class="beside number" { @if row.at.len() > 1 { (row.at.len()) } }
            }
            div class="why" {
                p { span class="soft" { "Takes: " } (row.minutes) " min" @if let Some(place) = &row.place { ", " (place) } }
                @if let Some(size) = &row.size { p { span class="soft" { "Size: " } (size) } }
                @if row.way == Way::Out && row.kind != Kind::Work {
                    @let without = here.with(|asked| { asked.without.insert(row.id.clone()); asked.also.remove(&row.id); });
                    @let also = here.with(|asked| { asked.also.insert(row.id.clone()); });
                    a class="row" href=(without) { span class="what strong" { "Not that way" } span class="soft" { "show a plan without it" } }
                    a class="row" href=(also) { span class="what strong" { "In any case" } span class="soft" { "keep it in" } }
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
    let minutes = shop::plan::Minutes::tenths(u32::try_from(tenths.abs()).unwrap_or(u32::MAX));
    match tenths {
        0 => "the same".to_owned(),
        1.. => format!("{minutes} min more"),
        _ => format!("{minutes} min less"),
    }
}

/// What differs in another plan, in two lines.
pub fn differs(other: &Other) -> Markup {
    let list = |items: &[String]| match items {
        [] => "nothing else".to_owned(),
        items => items.join(", "),
    };
    html! {
        span class="soft line" { "Comes off: " (list(&other.only_here)) }
        span class="soft line" { "Stays on: " (list(&other.only_there)) }
    }
}

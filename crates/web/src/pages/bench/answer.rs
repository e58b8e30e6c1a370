//! What a calculator said, shown: a way back, the ladder for a stub, a joint, a working. The
//! same whether it was found now or kept years ago.

use crate::phrases::bench as say;
use maud::{Markup, PreEscaped, html};
use shop::drawing::{joint, svg};
use shop::mending::{
    Figure, JointTold, LineTold, OtherTold, SpreadTold, StepTold, StubTold, Told, WayTold,
    WorkingTold,
};

/// Drawings fit a phone's page.
const WIDTH_PX: f64 = 358.0;
const HEIGHT_PX: f64 = 290.0;

/// Read before anything else.
pub fn cautions(texts: &[String]) -> Markup {
    html! {
        @if !texts.is_empty() {
            div class="caution" { @for text in texts { p { (text) } } }
        }
    }
}

/// A way: the torque large, the joint afterwards, what is worth a line.
pub fn way(way: &WayTold) -> Markup {
    html! {
        div class="headline" {
            @match &way.torque {
                Some((first, second)) => {
                    span class="fact" { (first) }
                    span class="beside" { (second) @if way.torque_as_before { (say::as_before()) } }
                }
                None => {
                    span class="large" { (say::no_torque_is_known()) }
                    span class="soft" { (say::makers_holds()) }
                }
            }
        }
        p class="gap strong" {
            (say::way_with_bolt(shop::say::capital(&way.name), &way.bolt))
            @if way.holds { span class="yes" { (say::holds()) } } @else { span class="no" { (say::does_not_hold()) } }
        }
        @for reason in &way.reasons { p class="no" { (shop::say::capital(reason)) } }
    }
}

/// The joint before and after.
pub fn joints(found: &JointTold, after: &JointTold, holds: bool) -> Markup {
    html! {
        @if holds {
            figure { figcaption class="soft" { (say::afterwards()) } (section(after)) }
        }
        details id="found-joint" open[!holds] {
            summary class="row" { span class="strong" { (say::as_it_was_found()) } }
            (section(found))
        }
    }
}

fn section(told: &JointTold) -> Markup {
    html! { (PreEscaped(svg(&joint(&told.drawn(), WIDTH_PX, HEIGHT_PX)))) }
}

/// Labels and values in rows.
pub fn figures(figures: &[Figure]) -> Markup {
    html! {
        dl class="figures" {
            @for figure in figures { div { dt { (figure.label) } dd { (shop::say::figures(&figure.value)) } } }
        }
    }
}

/// How numbers were found.
pub fn working(id: &str, told: &WorkingTold) -> Markup {
    html! {
        details id=(id) {
            summary class="row" { span class="soft" { (say::how_was_this_found()) } }
            div class="working" {
                p class="strong" { (told.title) }
                ol { @for line in &told.lines { (working_line(line)) } }
                @for text in told.remarks.iter().chain(&told.limits) { p class="soft" { (text) } }
            }
        }
    }
}

fn working_line(line: &LineTold) -> Markup {
    let parts = [
        line.symbol.as_deref(),
        line.formula.as_deref(),
        Some(line.value.as_deref().unwrap_or(say::unknown())),
    ];
    let equation: Vec<&str> = parts.into_iter().flatten().collect();
    let detail = if line.source.detail.is_empty() {
        String::new()
    } else {
        format!(", {}", line.source.detail)
    };
    let grade = match line.source.grade.as_str() {
        "given" | "derived" => String::new(),
        "published" => format!(" ({})", say::published()),
        "other-implementation" => format!(" ({})", say::other_implementation()),
        "common-practice" => format!(" ({})", say::common_practice()),
        "memory" => format!(" ({})", say::from_memory()),
        grade => format!(" ({grade})"),
    };
    html! {
        li {
            p { (say::line_of(&line.what)) output { (shop::say::figures(&equation.join(" = "))) } }
            dl {
                @for input in &line.inputs { dt { (input.name) } dd { (shop::say::figures(&input.value)) } }
                dt { (say::source()) } dd { (line.source.title) (detail) (grade) }
                @if let Some(note) = &line.note { dt { (say::note()) } dd { (note) } }
            }
        }
    }
}

/// Everything that stands behind a way, folded away.
pub fn behind(told: &Told) -> Markup {
    html! {
        (figures(&told.way.figures))
        @for note in told.way.notes.iter().chain(&told.notes) { p class="soft gap" { (note) } }
        @if told.way.holds { p class="soft gap" { (say::why_it_stands_at(told.way.rank, &told.way.why_here)) } }
        (working("working-way", &told.way.working))
        @if let Some(stub) = &told.stub { (ladder(stub)) }
    }
}

/// The ladder for a stub, cautions first.
pub fn ladder(stub: &StubTold) -> Markup {
    html! {
        details id="ladder" {
            summary class="row" { span class="strong" { (say::getting_the_stub_out()) } }
            (ladder_open(stub))
        }
    }
}

/// The same with nothing folded away.
pub fn ladder_open(stub: &StubTold) -> Markup {
    html! {
            (cautions(&stub.cautions))
            ol {
                @for (nth, rung) in stub.rungs.iter().enumerate() {
                    li class="rung" {
                        p { span class="strong" { (nth + 1) ". " (shop::say::capital(&rung.name)) } @if !rung.open { " " span class="no" { (say::not_here()) } } }
                        @if let Some(reason) = &rung.reason { p class="soft" { (reason) } }
                        @if rung.open {
                            @for how in &rung.how { p { (how) } }
                            @for drill in &rung.drills { p class="soft" { (drill) } }
                            @if let Some(most) = &rung.most_torque { p class="soft" { (say::at_most_on_the_stub(most)) } }
                            p class="wait" { (say::stop_when(&rung.stop_when)) }
                        }
                    }
                }
            }
            (working("working-stub", &stub.working))
    }
}

/// The other ways, each with why it stands there.
pub fn others(others: &[OtherTold], link: impl Fn(&OtherTold) -> String) -> Markup {
    html! {
        h2 { (say::other_ways()) }
        @for other in others {
            a class="row" href=(link(other)) {
                span class="what" {
                    span class="strong line" { (other.rank) ". " (shop::say::capital(&other.name)) }
                    span class="soft line" { (other.reason) }
                }
                @if other.holds { span class="yes" { (say::holds()) } } @else { span class="no" { (say::no()) } }
            }
        }
    }
}

/// The caution before a step, unless the step before it has said the same.
pub fn new_caution(steps: &[StepTold], nth: usize) -> Option<&str> {
    let of = |nth: usize| steps.get(nth).and_then(|step| step.caution.as_deref());
    let before = nth.checked_sub(1).and_then(of);
    of(nth).filter(|caution| before != Some(caution))
}

/// `55 min (40 to 90)`.
pub fn minutes(spread: &SpreadTold) -> String {
    say::minutes(&spread.mid, &spread.low, &spread.high)
}

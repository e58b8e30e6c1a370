//! `buttonup thread-repair`.

use super::{Answer, Wrong, answered, members, number, range, reads_us, working_json, wrong};
use clap::Args;
use fastener::holds::Holds;
use fastener::repair::{Planning, RepairOption, what_does_it_hold};
use measure::{Customary, Dimension, Unit};
use serde_json::{Value, json};
use shop::calculators::threads::ask::{RepairAnswer, RepairQuestion, repair as ask};
use shop::calculators::{both_kn, both_mm, both_nm};

/// The damaged hole as it was found.
#[derive(Debug, Args)]
pub struct ThreadRepair {
    /// The thread, perhaps with the bolt's length: M8x75.
    #[arg(long)]
    thread: String,
    /// What the joint holds: brake, steering, suspension, wheel, seat, belt, airbag, fuel, towing,
    /// spark-plug, drain-plug, banjo, pipe, sensor, exhaust, other.
    #[arg(long)]
    joint: Option<String>,
    #[arg(long)]
    class: Option<String>,
    #[arg(long)]
    bolt_length: Option<String>,
    /// Length of full thread that was in engagement.
    #[arg(long)]
    engaged: String,
    /// Depth of a blind hole.
    #[arg(long, conflicts_with = "through")]
    blind: Option<String>,
    /// Length of a through hole.
    #[arg(long)]
    through: Option<String>,
    /// Diameter of the metal around the hole.
    #[arg(long)]
    boss: Option<String>,
    /// Or the least wall beside the old thread.
    #[arg(long, conflicts_with = "boss")]
    wall: Option<String>,
    /// Metal of the hole: aluminium, A380, "grey iron class 30", steel.
    #[arg(long = "in", value_name = "METAL")]
    metal: String,
    /// scarred (its metal all there) or stripped.
    #[arg(long)]
    damage: Option<String>,
    /// How deep the thread is torn out; the engaged length if left out.
    #[arg(long)]
    torn: Option<String>,
    /// The torque that the maker specifies.
    #[arg(long)]
    torque: Option<String>,
    /// State of the threads: oiled, "zinc dry" ...
    #[arg(long)]
    condition: Option<String>,
    #[arg(long)]
    head: Option<String>,
    /// Diameter of the flat under the head.
    #[arg(long)]
    seat: Option<String>,
    /// The part that is held on: metal, plastic, or limiter (plastic with a metal sleeve).
    #[arg(long)]
    other: Option<String>,
    /// Its hole.
    #[arg(long)]
    other_hole: Option<String>,
    /// A drill cannot be held in line.
    #[arg(long)]
    no_drill_room: bool,
    /// How far out of square the drill is held.
    #[arg(long)]
    tilt: Option<String>,
    /// Running torque of a locking insert.
    #[arg(long)]
    locking: Option<String>,
}

/// Ranks the repair options.
pub fn repair(asked: &ThreadRepair) -> Result<Answer, Wrong> {
    let mut planning = Planning::default();
    if let Some(text) = &asked.locking {
        planning.locking_insert_nm = locking_nm(text)?;
    }
    let answer = ask(&question(asked), &planning).map_err(wrong)?;
    let repairs = &answer.repairs;
    let json = members(json!({
        "thread": answer.hole.thread.name(),
        "joint": answer.hole.holds.map(Holds::code),
        "asks": answer.hole.holds.is_none().then(what_does_it_hold),
        "original_clamp_n": range(repairs.original_clamp_n),
        "notes": repairs.notes,
        "options": repairs.options.iter().map(|one| option(one, &answer)).collect::<Vec<_>>(),
    }));
    let us = reads_us(
        asked
            .torque
            .iter()
            .chain([&asked.engaged])
            .map(String::as_str),
        &answer.hole.thread,
    );
    Ok(answered(lines(&answer, us), json, None))
}

fn locking_nm(text: &str) -> Result<f64, Wrong> {
    let mend = "write a torque such as 3 Nm";
    let read = measure::read(text, Dimension::Torque)
        .map_err(|error| Wrong::input("--locking", error.to_string(), mend))?;
    let converted = read
        .convert(Unit::NewtonMetre)
        .map_err(|error| Wrong::input("--locking", error.to_string(), mend))?;
    f64::try_from(converted.number())
        .ok()
        .filter(|torque| (0.0..100.0).contains(torque))
        .ok_or_else(|| Wrong::input("--locking", format!("{text} is no running torque"), mend))
}

fn question(asked: &ThreadRepair) -> RepairQuestion<'_> {
    RepairQuestion {
        thread: &asked.thread,
        joint: asked.joint.as_deref(),
        class: asked.class.as_deref(),
        bolt_length: asked.bolt_length.as_deref(),
        engaged: &asked.engaged,
        blind: asked.blind.as_deref(),
        through: asked.through.as_deref(),
        boss: asked.boss.as_deref(),
        wall: asked.wall.as_deref(),
        metal: &asked.metal,
        damage: asked.damage.as_deref(),
        torn: asked.torn.as_deref(),
        torque: asked.torque.as_deref(),
        condition: asked.condition.as_deref(),
        head: asked.head.as_deref(),
        seat: asked.seat.as_deref(),
        other: asked.other.as_deref(),
        other_hole: asked.other_hole.as_deref(),
        no_drill_room: asked.no_drill_room,
        tilt: asked.tilt.as_deref(),
    }
}

fn option(option: &RepairOption, answer: &RepairAnswer) -> Value {
    let steps: Vec<Value> = option
        .steps
        .iter()
        .map(|step| json!({ "what": step.what, "size_mm": number(step.size_mm), "caution": step.caution }))
        .collect();
    json!({
        "way": option.way.called(answer.hole.holds),
        "rank": option.rank,
        "holds": option.holds,
        "reason": reason(option),
        "steps": steps,
        "drill_mm": number(option.drill.as_ref().map(|drill| drill.diameter_mm)),
        "drill_name": option.drill.as_ref().map(|drill| drill.name.clone()),
        "tap": option.tap,
        "bolt": option.bolt,
        "other_hole_mm": number(option.other_hole_mm),
        "insert_mm": number(option.insert_mm),
        "engaged_mm": number(option.engaged_mm),
        "torque_nm": number(option.torque_nm),
        "clamp_n": range(option.clamp_n),
        "clamp_ratio": number(option.clamp_ratio),
        "strip_margin": number(option.strip_margin),
        "thread_bears_n": number(option.thread_bears_n),
        "bolt_bears_n": number(option.bolt_bears_n),
        "wall_left_mm": number(option.wall_left_mm),
        "centre_tolerance_mm": number(option.centre_tolerance_mm),
        "minutes": range(option.minutes),
        "cost": range(option.cost),
        "left_inside": option.left_inside,
        "next_repair": option.next_repair,
        "notes": option.notes,
        "working": working_json(&option.working),
    })
}

/// Why it does not hold, or how its place came about.
fn reason(option: &RepairOption) -> String {
    if option.holds {
        return option.why_here.clone();
    }
    let reasons: Vec<String> = option.reasons.iter().map(ToString::to_string).collect();
    reasons.join("; ")
}

fn lines(answer: &RepairAnswer, us: Customary) -> Vec<String> {
    let mut lines = answer.repairs.notes.clone();
    for option in &answer.repairs.options {
        let holds = if option.holds {
            "holds"
        } else {
            "does not hold"
        };
        let name = option.way.called(answer.hole.holds);
        lines.push(format!("\n{}. {name}: {holds}", option.rank));
        lines.push(format!("   {}", reason(option)));
        if !option.holds {
            continue;
        }
        lines.push(format!("   {}", figures(option, us)));
        lines.extend(option.notes.iter().map(|note| format!("   {note}")));
        for step in &option.steps {
            if let Some(caution) = step.caution {
                lines.push(format!("   ! {caution}"));
            }
            lines.push(format!("   - {}", step.what));
        }
        if !option.left_inside.is_empty() {
            lines.push(format!(
                "   out of the vehicle again: {}",
                option.left_inside.join(", ")
            ));
        }
        lines.push(format!("   next time: {}", option.next_repair));
        lines.extend(
            option
                .working
                .text()
                .trim_end()
                .lines()
                .map(|line| format!("   {line}")),
        );
    }
    lines
}

fn figures(option: &RepairOption, us: Customary) -> String {
    let mut parts = vec![format!("bolt {}", option.bolt)];
    let mut add = |label: &str, value: Option<String>| {
        parts.extend(value.map(|value| format!("{label} {value}")));
    };
    let mm = |value: Option<f64>| value.map(|mm| both_mm(mm, us));
    add("torque", option.torque_nm.map(|nm| both_nm(nm, us)));
    add(
        "clamp",
        option
            .clamp_n
            .map(|clamp| both_kn(clamp.low(), clamp.high(), us)),
    );
    add(
        "strip margin",
        option.strip_margin.map(|margin| format!("{margin:.2}")),
    );
    add("wall left", mm(option.wall_left_mm));
    add("other part's hole", mm(option.other_hole_mm));
    add("off-centre at most", mm(option.centre_tolerance_mm));
    if let Some(minutes) = option.minutes {
        parts.push(format!(
            "{:.0} to {:.0} minutes",
            minutes.low(),
            minutes.high()
        ));
    }
    parts.join(", ")
}

//! `buttonup thread-repair`.

use super::{Answer, Wrong, answered, members, number, range, working_json, wrong};
use clap::Args;
use fastener::ask::{RepairAnswer, RepairQuestion, repair as ask};
use fastener::repair::{Planning, RepairOption};
use measure::{Dimension, Unit};
use serde_json::{Value, json};

/// The damaged hole as it was found.
#[derive(Debug, Args)]
pub struct ThreadRepair {
    /// The thread, perhaps with the bolt's length: M8x75.
    #[arg(long)]
    thread: String,
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

/// Ranks the ways back.
pub fn repair(asked: &ThreadRepair) -> Result<Answer, Wrong> {
    let mut planning = Planning::default();
    if let Some(text) = &asked.locking {
        planning.locking_insert_nm = locking_nm(text)?;
    }
    let answer = ask(&question(asked), &planning).map_err(wrong)?;
    let repairs = &answer.repairs;
    let json = members(json!({
        "thread": answer.hole.thread.name(),
        "original_clamp_n": range(repairs.original_clamp_n),
        "notes": repairs.notes,
        "options": repairs.options.iter().map(option).collect::<Vec<_>>(),
    }));
    Ok(answered(lines(&answer), json, None))
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

fn option(option: &RepairOption) -> Value {
    let steps: Vec<Value> = option
        .steps
        .iter()
        .map(|step| json!({ "what": step.what, "size_mm": number(step.size_mm), "caution": step.caution }))
        .collect();
    json!({
        "way": option.way.name(),
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

fn lines(answer: &RepairAnswer) -> Vec<String> {
    let mut lines = answer.repairs.notes.clone();
    for option in &answer.repairs.options {
        let holds = if option.holds {
            "holds"
        } else {
            "does not hold"
        };
        lines.push(format!("\n{}. {}: {holds}", option.rank, option.way.name()));
        lines.push(format!("   {}", reason(option)));
        if !option.holds {
            continue;
        }
        lines.push(format!("   {}", figures(option)));
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
    }
    lines
}

fn figures(option: &RepairOption) -> String {
    let mut parts = vec![format!("bolt {}", option.bolt)];
    let mut add = |label: &str, value: Option<f64>, unit: &str, decimals: usize| {
        if let Some(value) = value {
            parts.push(format!("{label} {value:.decimals$}{unit}"));
        }
    };
    add("torque", option.torque_nm, " N·m", 1);
    add("strip margin", option.strip_margin, "", 2);
    add("wall left", option.wall_left_mm, " mm", 1);
    add("other part's hole", option.other_hole_mm, " mm", 1);
    add("off-centre at most", option.centre_tolerance_mm, " mm", 2);
    if let Some(minutes) = option.minutes {
        parts.push(format!(
            "{:.0} to {:.0} minutes",
            minutes.low(),
            minutes.high()
        ));
    }
    parts.join(", ")
}

//! `buttonup extract`.

use super::{Answer, Wrong, answered, members, number, wrong};
use clap::Args;
use fastener::extract::{DrillStep, Extraction, Rung};
use serde_json::{Value, json};
use shop::calculators::threads::ask::{ExtractQuestion, extract as ask};

/// The stub as it sits.
#[derive(Debug, Args)]
pub struct Extract {
    #[arg(long)]
    thread: String,
    /// What the joint holds, as for thread-repair.
    #[arg(long)]
    joint: Option<String>,
    #[arg(long)]
    class: Option<String>,
    /// proud, flush or below.
    #[arg(long)]
    stub: String,
    /// By how much it stands proud or below.
    #[arg(long)]
    by: Option<String>,
    /// Length of thread that holds it.
    #[arg(long)]
    engaged: String,
    #[arg(long, conflicts_with = "through")]
    blind: Option<String>,
    #[arg(long)]
    through: Option<String>,
    /// Metal of the hole.
    #[arg(long = "in", value_name = "METAL")]
    metal: String,
    /// There is room to weld, and nothing near that heat hurts.
    #[arg(long)]
    room_to_weld: bool,
    /// A drill cannot be held in line.
    #[arg(long)]
    no_drill_room: bool,
    /// How far out of square the drill is held.
    #[arg(long)]
    tilt: Option<String>,
}

/// Tells the ways to get the stub out.
pub fn extract(asked: &Extract) -> Result<Answer, Wrong> {
    let found = ask(&ExtractQuestion {
        thread: &asked.thread,
        joint: asked.joint.as_deref(),
        class: asked.class.as_deref(),
        stands: &asked.stub,
        by: asked.by.as_deref(),
        engaged: &asked.engaged,
        blind: asked.blind.as_deref(),
        through: asked.through.as_deref(),
        metal: &asked.metal,
        room_to_weld: asked.room_to_weld,
        no_drill_room: asked.no_drill_room,
        tilt: asked.tilt.as_deref(),
    })
    .map_err(wrong)?;
    let largest = found.largest_drill.as_ref();
    let json = members(json!({
        "cautions": found.cautions,
        "largest_drill_mm": number(largest.map(|drill| drill.diameter_mm)),
        "ladder": found.ladder.iter().map(rung).collect::<Vec<_>>(),
    }));
    Ok(answered(lines(&found), json, Some(&found.working)))
}

fn rung(rung: &Rung) -> Value {
    json!({
        "rank": rung.rank,
        "way": rung.way.name(),
        "open": rung.open,
        "reason": rung.reason,
        "how": rung.how,
        "drills": rung.drills.iter().map(drill).collect::<Vec<_>>(),
        "most_torque_nm": number(rung.most_torque_nm),
        "stop_when": rung.stop_when,
        "left_inside": rung.left_inside,
    })
}

fn drill(step: &DrillStep) -> Value {
    json!({
        "drill_mm": number(step.drill.diameter_mm),
        "centre_tolerance_mm": number(step.centre_tolerance_mm),
        "stub_bears_nm": number(step.stub_bears_nm),
    })
}

fn lines(found: &Extraction) -> Vec<String> {
    let mut lines: Vec<String> = found
        .cautions
        .iter()
        .map(|caution| format!("! {caution}"))
        .collect();
    for rung in &found.ladder {
        match &rung.reason {
            Some(reason) => lines.push(format!(
                "\n{}. {}: not here, {reason}",
                rung.rank,
                rung.way.name()
            )),
            None => {
                lines.push(format!("\n{}. {}", rung.rank, rung.way.name()));
                lines.extend(rung.how.iter().map(|how| format!("   - {how}")));
                lines.extend(rung.drills.iter().map(|step| {
                    format!(
                        "   - drill {}: at most {:.2} mm off the axis",
                        step.drill.name, step.centre_tolerance_mm
                    )
                }));
                if let Some(torque_nm) = rung.most_torque_nm {
                    lines.push(format!(
                        "   at most {torque_nm:.1} N·m, as a guide for sound steel only"
                    ));
                }
                lines.push(format!("   stop when {}", rung.stop_when));
            }
        }
    }
    lines
}

//! `buttonup thread`.

use super::{Answer, Wrong, answered, members, number, wrong};
use clap::Args;
use fastener::near_miss::{Ends, NearMiss};
use fastener::pipe::Pipe;
use fastener::{Geometry, Series, Standard};
use measure::Customary;
use serde_json::{Map, Value, json};
use shop::calculators::threads::ask::{ThreadAnswer, ThreadQuestion, thread as ask};
use shop::calculators::{both_mm, both_n, both_nm};

/// The thread to look at.
#[derive(Debug, Args)]
pub struct Thread {
    /// As people write it: M8, M8x1.25, 5/16-18, #10-24, 1/8 NPT, spark plug M14x1.25.
    #[arg(required = true, num_args = 1..)]
    thread: Vec<String>,
    /// Strength class of the bolt: 8.8, A2-70, "grade 5".
    #[arg(long)]
    class: Option<String>,
    /// Metal of the hole: aluminium, A380, "grey iron class 30", steel.
    #[arg(long = "in", value_name = "METAL")]
    metal: Option<String>,
    /// Length of full thread in engagement.
    #[arg(long)]
    depth: Option<String>,
    /// Wanted percentage of thread, as US charts count it.
    #[arg(long)]
    percent: Option<String>,
}

/// Tells what a thread is.
pub fn thread(asked: &Thread) -> Result<Answer, Wrong> {
    let written = asked.thread.join(" ");
    let answer = ask(&ThreadQuestion {
        thread: &written,
        class: asked.class.as_deref(),
        metal: asked.metal.as_deref(),
        depth: asked.depth.as_deref(),
        percent: asked.percent.as_deref(),
    })
    .map_err(wrong)?;
    let mut found = sizes(&answer);
    found.extend(tools(&answer));
    found.extend(strength(&answer));
    found.insert("notes".to_owned(), json!(answer.notes));
    Ok(answered(lines(&answer), found, answer.working.as_ref()))
}

fn sizes(answer: &ThreadAnswer) -> Map<String, Value> {
    let (Some(thread), Some(sizes)) = (&answer.thread, answer.geometry) else {
        let pipe = answer.pipe.as_ref();
        let drill = pipe.and_then(Pipe::tap_drill);
        return members(json!({
            "thread": answer.name,
            "major_diameter_mm": number(pipe.map(|pipe| pipe.outside_mm)),
            "pitch_mm": number(pipe.map(Pipe::pitch_mm)),
            "threads_per_inch": number(pipe.map(|pipe| pipe.threads_per_inch)),
            "tap_drill_mm": number(drill.as_ref().map(|drill| drill.diameter_mm)),
            "tap_drill_name": drill.map(|drill| drill.name),
        }));
    };
    members(json!({
        "thread": answer.name,
        "standard": match thread.standard() {
            Standard::Metric => "ISO metric",
            Standard::Unified => "unified",
        },
        "series": match thread.series() {
            Series::Coarse => "coarse",
            Series::Fine => "fine",
            Series::NotPreferred => "not preferred",
        },
        "left_hand": thread.is_left_hand(),
        "length_mm": number(answer.designation.length_mm),
        "major_diameter_mm": number(sizes.major_mm),
        "pitch_mm": number(sizes.pitch_mm),
        "pitch_diameter_mm": number(sizes.pitch_diameter_mm),
        "minor_diameter_mm": number(sizes.minor_diameter_mm),
        "root_diameter_mm": number(sizes.root_diameter_mm),
        "stress_area_mm2": number(sizes.stress_area_mm2),
        "lead_angle_deg": number(sizes.lead_angle_deg),
    }))
}

fn tools(answer: &ThreadAnswer) -> Map<String, Value> {
    let Some(tap) = &answer.tap_drill else {
        return Map::new();
    };
    let clearance = |of: fn(&fastener::clearance::ClearanceHoles) -> f64| {
        number(answer.clearance.as_ref().map(of))
    };
    let others: Vec<Value> = answer
        .other_drills
        .iter()
        .map(|other| {
            json!({
                "name": other.drill.name,
                "drill_mm": number(other.drill.diameter_mm),
                "percent_us": number(other.percent_us),
            })
        })
        .collect();
    let wrenches: Vec<Value> = answer
        .wrenches
        .iter()
        .map(|found| {
            let almost: Vec<Value> = found
                .almost
                .iter()
                .map(|near| json!({ "name": near.name, "slack_mm": number(near.slack_mm) }))
                .collect();
            json!({
                "head": found.wrench.head.name(),
                "name": found.wrench.name,
                "across_flats_mm": number(found.wrench.across_flats_mm),
                "almost_fit": almost,
            })
        })
        .collect();
    let hex = answer
        .wrench
        .as_ref()
        .and_then(|wrench| wrench.across_flats_mm);
    members(json!({
        "tap_drill_mm": number(tap.drill.diameter_mm),
        "tap_drill_name": tap.drill.name,
        "tap_drill_percent_iso": number(tap.percent_iso),
        "tap_drill_percent_us": number(tap.percent_us),
        "other_drills": others,
        "clearance_close_mm": clearance(|holes| holes.close_mm),
        "clearance_normal_mm": clearance(|holes| holes.normal_mm),
        "clearance_loose_mm": clearance(|holes| holes.loose_mm),
        "hex_mm": number(hex),
        "wrenches": wrenches,
        "near_misses": answer.near_misses.iter().map(near_miss).collect::<Vec<_>>(),
    }))
}

fn near_miss(miss: &NearMiss) -> Value {
    let (ends, low, high) = match miss.ends {
        Ends::DoesNotStart => ("does not start", None, None),
        Ends::Binds {
            turns_low,
            turns_high,
        } => ("binds", Some(turns_low), Some(turns_high)),
        Ends::NeverBinds => ("never binds", None, None),
        Ends::FallsIn => ("falls in", None, None),
    };
    json!({
        "bolt": miss.bolt.name(),
        "hole": miss.hole.name(),
        "ends": ends,
        "turns_low": number(low),
        "turns_high": number(high),
        "overlap": number(miss.overlap),
    })
}

fn strength(answer: &ThreadAnswer) -> Map<String, Value> {
    let mut found = Map::new();
    if let Some(strength) = &answer.strength {
        let torque = strength.breaking_torque.as_ref();
        found.extend(members(json!({
            "class": strength.class.name(),
            "proof_load_n": number(strength.loads.proof_n),
            "yield_load_n": number(strength.loads.yield_n),
            "breaking_load_n": number(strength.loads.breaking_n),
            "breaking_torque_nm": number(torque.map(|torque| torque.torque_nm)),
        })));
    }
    if let Some(stripping) = &answer.stripping {
        found.extend(members(json!({
            "credited_mm": number(stripping.credited_mm),
            "bolt_thread_strips_n": number(stripping.bolt_thread_strips_n),
            "hole_thread_strips_n": number(stripping.hole_thread_strips_n),
            "fails_first": stripping.first.name(),
            "length_needed_mm": number(stripping.length_needed_mm),
            "stripping_working": super::working_json(&stripping.working),
        })));
    }
    found
}

fn lines(answer: &ThreadAnswer) -> Vec<String> {
    let mut lines = vec![answer.name.clone()];
    lines.extend(answer.notes.iter().map(|note| format!("  {note}")));
    lines.extend(answer.pipe.as_ref().map(pipe_line));
    let inch = answer
        .thread
        .as_ref()
        .is_some_and(|thread| thread.standard() == Standard::Unified);
    lines.extend(answer.geometry.map(|sizes| size_line(&sizes, inch)));
    if let Some(tap) = &answer.tap_drill {
        lines.push(format!(
            "  tap drill {} ({:.0} % of the ISO engagement, {:.0} % as in US charts)",
            tap.drill.name, tap.percent_iso, tap.percent_us
        ));
    }
    if let Some(holes) = &answer.clearance {
        let us = if inch {
            Customary::Us
        } else {
            Customary::Metric
        };
        lines.push(format!(
            "  clearance hole {} close, {} normal, {} loose",
            both_mm(holes.close_mm, us),
            both_mm(holes.normal_mm, us),
            both_mm(holes.loose_mm, us)
        ));
    }
    lines.extend(answer.wrenches.iter().map(|found| {
        let almost: Vec<String> = found
            .almost
            .iter()
            .map(|near| format!("{} {:+.2} mm", near.name, near.slack_mm))
            .collect();
        let almost = match almost.is_empty() {
            true => String::new(),
            false => format!("; almost fits: {}", almost.join(", ")),
        };
        format!(
            "  {}: {}{almost}",
            found.wrench.head.name(),
            found.wrench.name
        )
    }));
    lines.extend(answer.near_misses.iter().map(|miss| {
        let ends = match miss.ends {
            Ends::Binds {
                turns_low,
                turns_high,
            } => {
                format!("binds after {turns_low:.1} to {turns_high:.1} turns")
            }
            _ => format!(
                "never binds, holds by {:.0} % of its depth and strips",
                100.0 * miss.overlap
            ),
        };
        format!(
            "  near miss: bolt {} in {}: {ends}",
            miss.bolt.name(),
            miss.hole.name()
        )
    }));
    lines.extend(strength_lines(answer, inch));
    lines
}

/// Inch threads in inches first.
fn size_line(sizes: &Geometry, inch: bool) -> String {
    let metric = format!(
        "pitch {:.4} mm, pitch diameter {:.3} mm, minor {:.3} mm, root {:.3} mm, stress area {:.2} mm²",
        sizes.pitch_mm,
        sizes.pitch_diameter_mm,
        sizes.minor_diameter_mm,
        sizes.root_diameter_mm,
        sizes.stress_area_mm2
    );
    if !inch {
        return format!("  {metric}");
    }
    let of = |mm: f64| mm / fastener::thread::INCH_MM;
    format!(
        "  pitch {:.5} in, pitch diameter {:.4} in, minor {:.4} in, root {:.4} in, stress area {:.4} in² ({metric})",
        of(sizes.pitch_mm),
        of(sizes.pitch_diameter_mm),
        of(sizes.minor_diameter_mm),
        of(sizes.root_diameter_mm),
        of(of(sizes.stress_area_mm2))
    )
}

fn pipe_line(pipe: &Pipe) -> String {
    let drill = pipe.tap_drill().map_or_else(String::new, |drill| {
        format!(", tap drill {} ({:.2} mm)", drill.name, drill.diameter_mm)
    });
    format!(
        "  outside {:.3} mm ({:.3} in), pitch {:.4} mm ({} threads per inch){drill}",
        pipe.outside_mm,
        pipe.outside_mm / fastener::thread::INCH_MM,
        pipe.pitch_mm(),
        pipe.threads_per_inch
    )
}

fn strength_lines(answer: &ThreadAnswer, inch: bool) -> Vec<String> {
    let us = if inch {
        Customary::Us
    } else {
        Customary::Metric
    };
    let force = |newtons: f64| both_n(newtons, us);
    let mut lines = Vec::new();
    if let Some(strength) = &answer.strength {
        let proof = strength
            .loads
            .proof_n
            .map_or("no proof load".to_owned(), |proof| {
                format!("proof {}", force(proof))
            });
        let torque = strength.breaking_torque.as_ref().map_or(
            "no breaking torque: outside ISO 898-7".to_owned(),
            |torque| format!("breaking torque {} at least", both_nm(torque.torque_nm, us)),
        );
        lines.push(format!(
            "  class {}: {proof}, yield {}, breaks at {}, {torque}",
            strength.class.name(),
            force(strength.loads.yield_n),
            force(strength.loads.breaking_n)
        ));
    }
    if let Some(stripping) = &answer.stripping {
        let needed = stripping
            .length_needed_mm
            .map_or("no length lets the bolt break first".to_owned(), |needed| {
                format!("{} let the bolt break first", both_mm(needed, us))
            });
        lines.push(format!(
            "  strips at {} in the hole, {} on the bolt; {} first; {needed}",
            force(stripping.hole_thread_strips_n),
            force(stripping.bolt_thread_strips_n),
            stripping.first.name()
        ));
        lines.extend(
            stripping
                .working
                .text()
                .trim_end()
                .lines()
                .map(|line| format!("  {line}")),
        );
    }
    lines
}

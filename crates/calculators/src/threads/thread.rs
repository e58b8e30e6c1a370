//! What a thread is and bears.

use super::told;
use crate::threads::ask::{ThreadAnswer, ThreadQuestion, TorqueQuestion, thread as ask, torque};
use crate::{Answer, Asked, Calculator, Holds, Part, Row, both_mm, both_n, both_nm};
use fastener::Standard;
use fastener::near_miss::{Ends, NearMiss};
use measure::Customary;
use serde_json::json;

/// Fields of the page.
const SHOWN: &[&str] = &["thread", "class", "in", "depth", "percent"];

pub(super) const THREAD: Calculator = Calculator {
    code: "thread",
    name: "A thread",
    what: "drill, wrench, holes, strength, near misses",
    cautions: &[],
    how: &[],
    form: &[
        Part::text(
            "thread",
            "Thread",
            "M8, M8x1.25, 5/16-18, #10-24, 1/8 NPT, spark plug M14x1.25",
        ),
        Part::text(
            "class",
            "Class",
            "8.8, grade 5, A2-70; empty if it is not known",
        ),
        Part::choice(
            "in",
            "Tapped in",
            &[
                ("", "not asked"),
                ("aluminium", "alumin\u{ad}ium, cast"),
                ("die-cast aluminium", "alumin\u{ad}ium, die-cast"),
                ("grey iron", "grey iron"),
                ("steel", "steel"),
            ],
        ),
        Part::number(
            "depth",
            "Engaged length",
            Holds::LENGTH,
            "with the metal and the class: what fails first",
        ),
        Part::text(
            "percent",
            "Wanted depth of thread, per cent, US count",
            "75 is assumed",
        ),
    ],
    at_first: &[],
    run,
};

/// Sizes, drills, wrenches, near misses and strength of a thread.
fn run(asked: &mut Asked) -> Option<Answer> {
    let some = Asked::some;
    let question = ThreadQuestion {
        thread: asked.text("thread"),
        class: some(asked, "class"),
        metal: some(asked, "in"),
        depth: some(asked, "depth"),
        percent: some(asked, "percent"),
    };
    match ask(&question) {
        // Inch threads in inches first, whatever the shop reads.
        Ok(found) => Some(answer(&found, units_of(&found, asked.customary()))),
        Err(trouble) => {
            told(asked, &trouble, SHOWN);
            None
        }
    }
}

fn units_of(found: &ThreadAnswer, shop: Customary) -> Customary {
    match &found.thread {
        Some(thread) if thread.standard() == Standard::Unified => Customary::Us,
        _ => shop,
    }
}

/// What is worth knowing of a fastener of this size beside its order; nothing where the size
/// is no thread. Where its class is known, also what its bolt could carry: no specification.
#[must_use]
pub fn facts(size: &str, customary: Customary) -> Option<Answer> {
    let question = ThreadQuestion {
        thread: size,
        ..ThreadQuestion::default()
    };
    let found = ask(&question).ok()?;
    let mut out = answer(&found, customary);
    // First, since it is looked for where no torque is known.
    out.rows.splice(
        ..0,
        could_carry(&found, customary).into_iter().map(Row::from),
    );
    Some(out)
}

/// The torque at which the bolt alone begins to yield, by how its threads are.
fn could_carry(found: &ThreadAnswer, customary: Customary) -> Vec<(String, String)> {
    let Some(strength) = &found.strength else {
        return Vec::new();
    };
    let class = strength.class.name();
    let steel = if class.starts_with('A') {
        "stainless"
    } else {
        "plain"
    };
    let row = |state: &str| {
        let condition = format!("{steel} {state}");
        let question = TorqueQuestion {
            thread: &found.name,
            class: Some(class),
            condition: Some(&condition),
            ..TorqueQuestion::default()
        };
        // Any clamp will do: the yield does not rest on it.
        let yields = torque(&question, "1 N").ok()?.strength.yield_torque_nm?;
        let nm = |value| both_nm(value, customary);
        Some((
            format!("Bolt yields, {state} (no specification)"),
            format!("{} to {}", nm(yields.low()), nm(yields.high())),
        ))
    };
    ["oiled", "dry"].into_iter().filter_map(row).collect()
}

fn answer(found: &ThreadAnswer, customary: Customary) -> Answer {
    let mut rows = sizes(found, customary);
    rows.extend(strength(found, customary));
    rows.extend(found.near_misses.iter().map(near_miss));
    let said = [
        found
            .tap_drill
            .as_ref()
            .map(|tap| format!("tap drill {}", tap.drill.name)),
        found
            .wrench
            .as_ref()
            .map(|wrench| format!("wrench {}", wrench.name)),
    ];
    let working = match (found.working.clone(), &found.stripping) {
        (Some(working), Some(stripping)) => Some(working.then(stripping.working.clone())),
        (working, _) => working,
    };
    Answer {
        fact: found.name.clone(),
        said: said.into_iter().flatten().collect::<Vec<_>>().join(", "),
        rows: rows.into_iter().map(Row::from).collect(),
        notes: found.notes.clone(),
        working,
        outputs: json!({ "thread": found.name }),
        ..Answer::default()
    }
}

fn sizes(found: &ThreadAnswer, customary: Customary) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    let mut row = |what: &str, value: String| rows.push((what.to_owned(), value));
    if let Some(pipe) = &found.pipe {
        row("Outside diameter", both_mm(pipe.outside_mm, customary));
        row(
            "Pitch",
            format!(
                "{:.4} mm ({} threads per inch)",
                pipe.pitch_mm(),
                pipe.threads_per_inch
            ),
        );
        if let Some(drill) = pipe.tap_drill() {
            row(
                "Tap drill",
                format!("{} ({:.2} mm)", drill.name, drill.diameter_mm),
            );
        }
    }
    for found in &found.wrenches {
        let almost: Vec<String> = found
            .almost
            .iter()
            .map(|near| format!("{} ({:+.2} mm)", near.name, near.slack_mm))
            .collect();
        let almost = if almost.is_empty() {
            String::new()
        } else {
            format!("; almost fits: {}", almost.join(", "))
        };
        row(
            &format!("Wrench, {}", found.wrench.head.said()),
            format!("{}{almost}", found.wrench.name),
        );
    }
    if let Some(tap) = &found.tap_drill {
        row(
            "Tap drill",
            format!(
                "{}: {:.0} % by ISO, {:.0} % as in US charts",
                tap.drill.name, tap.percent_iso, tap.percent_us
            ),
        );
    }
    let others: Vec<String> = found
        .other_drills
        .iter()
        .map(|other| format!("{} ({:.0} %)", other.drill.name, other.percent_us))
        .collect();
    if !others.is_empty() {
        row(
            "Drills for the wanted depth of thread, US count",
            others.join(", "),
        );
    }
    if let Some(holes) = &found.clearance {
        let mm = |value| both_mm(value, customary);
        row("Clearance hole, close", mm(holes.close_mm));
        row("Clearance hole, normal", mm(holes.normal_mm));
        row("Clearance hole, loose", mm(holes.loose_mm));
    }
    if let Some(sizes) = found.geometry {
        let mm = |value: f64| match customary {
            Customary::Metric => format!("{value:.3} mm ({:.4} in)", value / 25.4),
            Customary::Us => format!("{:.4} in ({value:.3} mm)", value / 25.4),
        };
        row("Pitch", mm(sizes.pitch_mm));
        row("Pitch diameter", mm(sizes.pitch_diameter_mm));
        row("Minor diameter of the hole", mm(sizes.minor_diameter_mm));
        row("Root of the bolt", mm(sizes.root_diameter_mm));
        row(
            "Stress area",
            format!(
                "{:.2} mm² ({:.4} in²)",
                sizes.stress_area_mm2,
                sizes.stress_area_mm2 / 645.16
            ),
        );
    }
    rows
}

fn strength(found: &ThreadAnswer, customary: Customary) -> Vec<(String, String)> {
    let mut rows = Vec::new();
    let mut row = |what: &str, value: String| rows.push((what.to_owned(), value));
    if let Some(strength) = &found.strength {
        let loads = &strength.loads;
        let newtons = |value: Option<f64>| {
            value.map_or("none is stated".to_owned(), |value| {
                both_n(value, customary)
            })
        };
        row("Proof load", newtons(loads.proof_n));
        row("Yields at", newtons(Some(loads.yield_n)));
        row("Breaks at", newtons(Some(loads.breaking_n)));
        row(
            "Breaks in twist, at least",
            strength
                .breaking_torque
                .as_ref()
                .map_or("outside ISO 898-7: none is stated".to_owned(), |torque| {
                    both_nm(torque.torque_nm, customary)
                }),
        );
    }
    if let Some(strips) = &found.stripping {
        row("Fails first", strips.first.name().to_owned());
        row(
            "Thread in the hole strips at",
            both_n(strips.hole_thread_strips_n, customary),
        );
        row(
            "Bolt's thread strips at",
            both_n(strips.bolt_thread_strips_n, customary),
        );
        row(
            "Engaged length that lets the bolt break first",
            strips
                .length_needed_mm
                .map_or("none does".to_owned(), |mm| both_mm(mm, customary)),
        );
    }
    rows
}

fn near_miss(miss: &NearMiss) -> (String, String) {
    let ends = match miss.ends {
        Ends::Binds {
            turns_low,
            turns_high,
        } => format!("binds after {turns_low:.1} to {turns_high:.1} turns"),
        Ends::NeverBinds => format!(
            "never binds, holds by {:.0} % of its depth and strips",
            100.0 * miss.overlap
        ),
        Ends::DoesNotStart => "does not start".to_owned(),
        Ends::FallsIn => "falls in".to_owned(),
    };
    (
        format!(
            "Near miss: bolt {} in {}",
            miss.bolt.name(),
            miss.hole.name()
        ),
        ends,
    )
}

//! What a thread is and bears.

use super::told;
use crate::phrases::threads as say;
use crate::threads::ask::{ThreadAnswer, ThreadQuestion, TorqueQuestion, thread as ask, torque};
use crate::{Answer, Asked, Calculator, Holds, Part, Row, both_mm, both_n, both_nm};
use fastener::Standard;
use fastener::near_miss::{Ends, NearMiss};
use measure::Customary;
use phrases::figures;
use serde_json::json;

/// Fields of the page.
const SHOWN: &[&str] = &["thread", "class", "in", "depth", "percent"];

pub(super) const THREAD: Calculator = Calculator {
    code: "thread",
    name: say::a_thread,
    what: say::drill_wrench_holes_strength_near_misses,
    cautions: &[],
    how: Vec::new,
    form: &[
        Part::text("thread", say::thread, say::m8_m8x1_25_5_16_18),
        Part::text("class", say::class, say::about_8_8_grade_5_a2_70),
        Part::choice(
            "in",
            say::tapped_in,
            &[
                ("", say::not_asked),
                ("aluminium", say::aluminium_cast),
                ("die-cast aluminium", say::aluminium_die_cast),
                ("grey iron", say::grey_iron),
                ("steel", say::steel),
            ],
        ),
        Part::number(
            "depth",
            say::engaged_length,
            Holds::LENGTH,
            say::with_the_metal_and_the_class,
        ),
        Part::text(
            "percent",
            say::wanted_depth_of_thread_per_cent,
            say::about_75_is_assumed,
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
    let row = |(state, words): (&str, &str)| {
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
            say::bolt_yields(words),
            say::from_to(nm(yields.low()), nm(yields.high())),
        ))
    };
    [("oiled", say::oiled()), ("dry", say::dry())]
        .into_iter()
        .filter_map(row)
        .collect()
}

fn answer(found: &ThreadAnswer, customary: Customary) -> Answer {
    let mut rows = sizes(found, customary);
    rows.extend(strength(found, customary));
    rows.extend(found.near_misses.iter().map(near_miss));
    let said = [
        found
            .tap_drill
            .as_ref()
            .map(|tap| say::tap_drill_of(figures(&tap.drill.name))),
        found
            .wrench
            .as_ref()
            .map(|wrench| say::wrench_of(figures(&wrench.name))),
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
        row(say::outside_diameter(), both_mm(pipe.outside_mm, customary));
        row(
            say::pitch(),
            say::pitch_per_inch(
                figures(&format!("{:.4}", pipe.pitch_mm())),
                pipe.threads_per_inch,
            ),
        );
        if let Some(drill) = pipe.tap_drill() {
            row(
                say::tap_drill(),
                figures(&format!("{} ({:.2} mm)", drill.name, drill.diameter_mm)),
            );
        }
    }
    for found in &found.wrenches {
        let almost: Vec<String> = found
            .almost
            .iter()
            .map(|near| figures(&format!("{} ({:+.2} mm)", near.name, near.slack_mm)))
            .collect();
        let almost = if almost.is_empty() {
            String::new()
        } else {
            format!("; {}", say::almost_fits(almost.join(", ")))
        };
        row(
            &say::wrench_for_head(found.wrench.head.said()),
            format!("{}{almost}", figures(&found.wrench.name)),
        );
    }
    if let Some(tap) = &found.tap_drill {
        row(
            say::tap_drill(),
            say::drill_with_percents(
                figures(&tap.drill.name),
                format!("{:.0}", tap.percent_iso),
                format!("{:.0}", tap.percent_us),
            ),
        );
    }
    let others: Vec<String> = found
        .other_drills
        .iter()
        .map(|other| figures(&format!("{} ({:.0} %)", other.drill.name, other.percent_us)))
        .collect();
    if !others.is_empty() {
        row(say::drills_for_the_wanted_depth_of(), others.join(", "));
    }
    if let Some(holes) = &found.clearance {
        let mm = |value| both_mm(value, customary);
        row(say::clearance_hole_close(), mm(holes.close_mm));
        row(say::clearance_hole_normal(), mm(holes.normal_mm));
        row(say::clearance_hole_loose(), mm(holes.loose_mm));
    }
    if let Some(sizes) = found.geometry {
        let mm = |value: f64| match customary {
            Customary::Metric => figures(&format!("{value:.3} mm ({:.4} in)", value / 25.4)),
            Customary::Us => figures(&format!("{:.4} in ({value:.3} mm)", value / 25.4)),
        };
        row(say::pitch(), mm(sizes.pitch_mm));
        row(say::pitch_diameter(), mm(sizes.pitch_diameter_mm));
        row(
            say::minor_diameter_of_the_hole(),
            mm(sizes.minor_diameter_mm),
        );
        row(say::root_of_the_bolt(), mm(sizes.root_diameter_mm));
        row(
            say::stress_area(),
            figures(&format!(
                "{:.2} mm² ({:.4} in²)",
                sizes.stress_area_mm2,
                sizes.stress_area_mm2 / 645.16
            )),
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
            value.map_or(say::none_is_stated().to_owned(), |value| {
                both_n(value, customary)
            })
        };
        row(say::proof_load(), newtons(loads.proof_n));
        row(say::yields_at(), newtons(Some(loads.yield_n)));
        row(say::breaks_at(), newtons(Some(loads.breaking_n)));
        row(
            say::breaks_in_twist_at_least(),
            strength
                .breaking_torque
                .as_ref()
                .map_or(say::outside_iso_898_7_none_is().to_owned(), |torque| {
                    both_nm(torque.torque_nm, customary)
                }),
        );
    }
    if let Some(strips) = &found.stripping {
        row(say::fails_first(), strips.first.name().to_owned());
        row(
            say::thread_in_the_hole_strips_at(),
            both_n(strips.hole_thread_strips_n, customary),
        );
        row(
            say::bolts_thread_strips_at(),
            both_n(strips.bolt_thread_strips_n, customary),
        );
        row(
            say::engaged_length_that_lets_the_bolt(),
            strips
                .length_needed_mm
                .map_or(say::none_does().to_owned(), |mm| both_mm(mm, customary)),
        );
    }
    rows
}

fn near_miss(miss: &NearMiss) -> (String, String) {
    let ends = match miss.ends {
        Ends::Binds {
            turns_low,
            turns_high,
        } => say::binds_after(
            figures(&format!("{turns_low:.1}")),
            figures(&format!("{turns_high:.1}")),
        ),
        Ends::NeverBinds => say::never_binds(format!("{:.0}", 100.0 * miss.overlap)),
        Ends::DoesNotStart => say::does_not_start().to_owned(),
        Ends::FallsIn => say::falls_in().to_owned(),
    };
    (say::near_miss(miss.bolt.name(), miss.hole.name()), ends)
}

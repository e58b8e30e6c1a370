//! A pulley that its belt holds while a bolt of it is cracked.

use crate::{Answer, Asked, Calculator, Holds, Part, Row, both_mm, both_n, both_nm};
use fastener::pulley::{HoldingBelt, PulleyBolt, held, wrench_across};
use measure::{Line, Source, Unit, Working};
use serde_json::json;

pub(super) const PULLEY: Calculator = Calculator {
    code: "pulley",
    name: "Pulley bolts",
    what: "whether the belt holds while they are cracked",
    cautions: &[
        "Battery off, key out: nothing may turn the engine while a hand is at its pulleys.",
    ],
    how: &[],
    form: &[
        Part::number(
            "bolt-torque",
            "Torque of the bolt",
            Holds::TORQUE,
            "to crack it may take more",
        ),
        Part::number(
            "bolt-circle",
            "Circle of the bolts, across",
            Holds::LENGTH,
            "",
        ),
        Part::number("wrench", "Length of the wrench", Holds::LENGTH, ""),
        Part::number("pulley", "Pulley, across", Holds::LENGTH, ""),
        Part::number(
            "tension",
            "Tension of the belt at rest, each run",
            Holds::FORCE,
            "a spring tensioner's own, in the way it gives",
        ),
        Part::within(
            "wrap",
            "Wrap on the pulley",
            Holds::ANGLE,
            (0.0, 360.0),
            "how far the belt goes round it",
        ),
        Part::choice(
            "side",
            "The belt runs on it with its",
            &[("ribs", "ribs"), ("back", "flat back")],
        ),
    ],
    at_first: &[],
    run,
};

/// Whether a belt holds its pulley while a bolt of it is cracked.
fn run(asked: &mut Asked) -> Option<Answer> {
    let customary = asked.customary();
    let bolt_nm = asked.must("bolt-torque", Unit::NewtonMetre);
    let circle_mm = asked.must("bolt-circle", Unit::Millimetre);
    let wrench_mm = asked.must("wrench", Unit::Millimetre);
    let pulley_mm = asked.must("pulley", Unit::Millimetre);
    let tension_n = asked.must("tension", Unit::Newton);
    let wrap_deg = asked.must("wrap", Unit::Degree);
    let side = if asked.text("side") == "back" {
        0.3
    } else {
        1.0
    };
    let bolt = PulleyBolt {
        bolt_nm: bolt_nm?,
        bolt_circle_radius_mm: circle_mm? / 2.0,
        wrench_mm: wrench_mm?,
    };
    let belt = HoldingBelt {
        pulley_radius_mm: pulley_mm? / 2.0,
        tension_n: tension_n?,
        wrap_deg: wrap_deg?,
        groove_friction: side,
    };
    let found = match held(bolt, belt) {
        Ok(found) => found,
        Err(error) => {
            asked.wrong("bolt-torque", error.to_string());
            return None;
        }
    };
    let nm = |value| both_nm(value, customary);
    let working = Working::new("A pulley bolt cracked against its belt")
        .line(
            Line::new("turns the pulley, wrench across the axis", Source::derived())
                .formula("T", "Tb·|1 − r/L|")
                .input("Tb", nm(bolt.bolt_nm))
                .input("r", both_mm(bolt.bolt_circle_radius_mm, customary))
                .input("L", both_mm(bolt.wrench_mm, customary))
                .value(nm(found.least_turning_nm)),
        )
        .line(
            Line::new("the belt holds", Source::derived())
                .formula("T", "2·F·R·tanh(μ·θ/2)")
                .input("F", both_n(belt.tension_n, customary))
                .input("R", both_mm(belt.pulley_radius_mm, customary))
                .input("μ, as it acts", format!("{side}"))
                .input("θ", format!("{:.0}°", belt.wrap_deg))
                .value(nm(found.belt_holds_nm)),
        )
        .limit("A dry belt, the rest of the drive held; a spring tensioner gives way in one direction.");
    Some(Answer {
        fact: if found.holds { "It holds" } else { "It slips" }.to_owned(),
        said: format!(
            "The belt holds {}, the bolt turns the pulley with {}",
            nm(found.belt_holds_nm),
            nm(found.least_turning_nm)
        ),
        tone: if found.holds { "yes" } else { "no" },
        rows: vec![
            Row::from((
                "Turning, wrench across the axis".to_owned(),
                nm(found.least_turning_nm),
            )),
            Row::from((
                "Turning, wrench straight outwards".to_owned(),
                nm(found.most_turning_nm),
            )),
        ],
        notes: vec![wrench_across().to_owned()],
        working: Some(working),
        outputs: json!({ "holds": found.holds, "belt_holds_nm": found.belt_holds_nm,
            "turns_with_nm": [found.least_turning_nm, found.most_turning_nm] }),
        ..Answer::default()
    })
}

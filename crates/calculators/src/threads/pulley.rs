//! A pulley that its belt holds while a bolt of it is cracked.

use crate::form::none;
use crate::phrases::threads as say;
use crate::{Answer, Asked, Calculator, Holds, Part, Row, both_mm, both_n, both_nm};
use fastener::pulley::{HoldingBelt, PulleyBolt, held, wrench_across};
use measure::{Line, Source, Unit, Working};
use serde_json::json;

pub(super) const PULLEY: Calculator = Calculator {
    code: "pulley",
    name: say::pulley_bolts,
    what: say::whether_the_belt_holds_while_they,
    cautions: &[say::battery_off_key_out_nothing_may],
    how: Vec::new,
    form: &[
        Part::number(
            "bolt-torque",
            say::torque_of_the_bolt,
            Holds::TORQUE,
            say::to_crack_it_may_take_more,
        ),
        Part::number(
            "bolt-circle",
            say::circle_of_the_bolts_across,
            Holds::LENGTH,
            none,
        ),
        Part::number("wrench", say::length_of_the_wrench, Holds::LENGTH, none),
        Part::number("pulley", say::pulley_across, Holds::LENGTH, none),
        Part::number(
            "tension",
            say::tension_of_the_belt_at_rest,
            Holds::FORCE,
            say::a_spring_tensioners_own_in_the,
        ),
        Part::within(
            "wrap",
            say::wrap_on_the_pulley,
            Holds::ANGLE,
            (0.0, 360.0),
            say::how_far_the_belt_goes_round,
        ),
        Part::choice(
            "side",
            say::the_belt_runs_on_it_with,
            &[("ribs", say::ribs), ("back", say::flat_back)],
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
    let working = Working::new(say::a_pulley_bolt_cracked_against_its())
        .line(
            Line::new(say::turns_the_pulley_wrench_across_the(), Source::derived())
                .formula("T", "Tb·|1 − r/L|")
                .input("Tb", nm(bolt.bolt_nm))
                .input("r", both_mm(bolt.bolt_circle_radius_mm, customary))
                .input("L", both_mm(bolt.wrench_mm, customary))
                .value(nm(found.least_turning_nm)),
        )
        .line(
            Line::new(say::the_belt_holds(), Source::derived())
                .formula("T", "2·F·R·tanh(μ·θ/2)")
                .input("F", both_n(belt.tension_n, customary))
                .input("R", both_mm(belt.pulley_radius_mm, customary))
                .input(say::as_it_acts(), format!("{side}"))
                .input("θ", format!("{:.0}°", belt.wrap_deg))
                .value(nm(found.belt_holds_nm)),
        )
        .limit(say::a_dry_belt_the_rest_of());
    Some(Answer {
        fact: if found.holds {
            say::it_holds()
        } else {
            say::it_slips()
        }
        .to_owned(),
        said: say::belt_against_bolt(nm(found.belt_holds_nm), nm(found.least_turning_nm)),
        tone: if found.holds { "yes" } else { "no" },
        rows: vec![
            Row::from((
                say::turning_wrench_across_the_axis().to_owned(),
                nm(found.least_turning_nm),
            )),
            Row::from((
                say::turning_wrench_straight_outwards().to_owned(),
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

//! Wrenches, levers, a pulley held by its belt, and the sequence of a pattern.

use super::{some, told};
use crate::coolant::{Answer, Asked, PHONE_PX};
use crate::mending::{both_mm, both_n, both_nm};
use drawing::{Turn, svg, turns};
use fastener::ask::{AdapterQuestion, LeverQuestion, adapter, lever, wrench_reads};
use fastener::pattern::{Layout, pattern as sequence};
use fastener::pulley::{HoldingBelt, PulleyBolt, WRENCH_ACROSS, held};
use fastener::wrench::Reads;
use measure::{Dimension, Line, Source, Unit, Working};

const WRENCH: &[&str] = &[
    "want", "wrench", "adapter", "angle", "second", "overlap", "range",
];

/// What to set on a torque wrench with an adapter, or the force at a lever.
#[must_use]
pub fn wrench(asked: &mut Asked) -> Option<Answer> {
    let customary = asked.customary();
    let (want, length) = (asked.text("want"), asked.text("wrench"));
    let found = match some(asked, "adapter") {
        Some(reach) => adapter(&AdapterQuestion {
            want,
            wrench: length,
            adapter: reach,
            angle: some(asked, "angle"),
        })
        .map(|set| {
            let answer = Answer {
                fact: both_nm(set.set_to_nm, customary),
                said: "set the wrench to this".to_owned(),
                working: set.working.html(),
                ..Answer::default()
            };
            (answer, Some(set.set_to_nm))
        }),
        None => lever(&LeverQuestion {
            want,
            wrench: length,
            second: some(asked, "second"),
            overlap: some(asked, "overlap"),
        })
        .map(|found| {
            let working = Working::new("Force of a hand at a lever").line(
                Line::new("force", Source::derived())
                    .formula("F", "T / L")
                    .input("T", want)
                    .input("L", both_mm(found.lever_mm, customary))
                    .value(both_n(found.hand_force_n, customary)),
            );
            let mut answer = Answer {
                fact: both_n(found.hand_force_n, customary),
                said: format!("by hand at a lever of {}", both_mm(found.lever_mm, customary)),
                working: working.html(),
                ..Answer::default()
            };
            if some(asked, "second").is_some() {
                answer.alarms.push(
                    "A wrench hooked into another slips: pull so that it falls away from you, and never hammer on it."
                        .to_owned(),
                );
            }
            (answer, None)
        }),
    };
    let (mut answer, set_nm) = match found {
        Ok(found) => found,
        Err(trouble) => {
            told(asked, &trouble, WRENCH);
            return None;
        }
    };
    if let (Some(range), Some(set_nm)) = (some(asked, "range"), set_nm) {
        match wrench_reads(range, set_nm) {
            Ok(Reads::Well) => answer
                .notes
                .push("The wrench can be believed there.".to_owned()),
            Ok(Reads::TooLow { least_nm }) => answer.alarms.push(format!(
                "Below a fifth of its range a wrench says nothing: this one reads from {}.",
                both_nm(least_nm, customary)
            )),
            Ok(Reads::TooHigh { most_nm }) => answer.alarms.push(format!(
                "Beyond the wrench: it ends at {}.",
                both_nm(most_nm, customary)
            )),
            Err(trouble) => {
                told(asked, &trouble, WRENCH);
                return None;
            }
        }
    }
    Some(answer)
}

/// Whether a belt holds its pulley while a bolt of it is cracked.
#[must_use]
pub fn pulley(asked: &mut Asked) -> Option<Answer> {
    let customary = asked.customary();
    let bolt_nm = read(asked, "bolt-torque", Dimension::Torque, Unit::NewtonMetre);
    let circle_mm = read(asked, "bolt-circle", Dimension::Length, Unit::Millimetre);
    let wrench_mm = read(asked, "wrench", Dimension::Length, Unit::Millimetre);
    let pulley_mm = read(asked, "pulley", Dimension::Length, Unit::Millimetre);
    let tension_n = read(asked, "tension", Dimension::Force, Unit::Newton);
    let wrap_deg = read(asked, "wrap", Dimension::Angle, Unit::Degree);
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
            (
                "Turning, wrench across the axis".to_owned(),
                nm(found.least_turning_nm),
            ),
            (
                "Turning, wrench straight outwards".to_owned(),
                nm(found.most_turning_nm),
            ),
        ],
        notes: vec![WRENCH_ACROSS.to_owned()],
        working: working.html(),
        ..Answer::default()
    })
}

fn read(asked: &mut Asked, field: &str, dimension: Dimension, unit: Unit) -> Option<f64> {
    let text = asked.text(field).to_owned();
    if text.is_empty() {
        asked.wrong(
            field,
            "it is missing; write it, with its unit if it is another",
        );
        return None;
    }
    let number = measure::read(&text, dimension)
        .map_err(|error| error.to_string())
        .and_then(|read| read.convert(unit).map_err(|error| error.to_string()))
        .and_then(|read| f64::try_from(read.number()).map_err(|error| error.to_string()));
    number.map_err(|what| asked.wrong(field, what)).ok()
}

/// The sequence in which the bolts of a joint are tightened, drawn.
#[must_use]
pub fn pattern(asked: &mut Asked) -> Option<Answer> {
    let count = |asked: &mut Asked, field: &str| {
        let number = asked.text(field).parse::<usize>().ok();
        if number.is_none() {
            asked.wrong(field, "write a whole number, such as 7");
        }
        number
    };
    let layout = match asked.text("layout") {
        "rows" => {
            let bolts = count(asked, "bolts")?;
            if bolts % 2 == 1 {
                asked.wrong("bolts", "two rows alike have an even number; write one");
                return None;
            }
            Layout::TwoRows { columns: bolts / 2 }
        }
        "rectangle" => {
            let (columns, rows) = (count(asked, "columns"), count(asked, "rows"));
            Layout::Rectangle {
                columns: columns?,
                rows: rows?,
            }
        }
        _ => Layout::Circle {
            bolts: count(asked, "bolts")?,
        },
    };
    let field = if asked.text("layout") == "rectangle" {
        "columns"
    } else {
        "bolts"
    };
    let found = match sequence(layout) {
        Ok(found) => found,
        Err(error) => {
            asked.wrong(field, error.to_string());
            return None;
        }
    };
    let bolts: Vec<Turn> = found
        .places
        .iter()
        .filter_map(|place| {
            let turn = found.sequence.iter().position(|at| *at == place.position)?;
            Some(Turn {
                x: place.x,
                y: place.y,
                turn: turn + 1,
            })
        })
        .collect();
    let drawn = turns("The sequence of tightening", &bolts, PHONE_PX);
    Some(Answer {
        fact: format!("{} bolts", bolts.len()),
        said: "the number in each is its turn; to loosen, turn it round".to_owned(),
        notes: vec!["Shop practice: a maker's own sequence overrides it.".to_owned()],
        drawing: Some(svg(&drawn)),
        working: Working::new("The sequence")
            .line(
                Line::new("positions in turn", Source::derived()).value(
                    found
                        .sequence
                        .iter()
                        .map(ToString::to_string)
                        .collect::<Vec<_>>()
                        .join(", "),
                ),
            )
            .remark(
                "On a circle across and across; in rows and rectangles from the middle outwards.",
            )
            .html(),
        ..Answer::default()
    })
}

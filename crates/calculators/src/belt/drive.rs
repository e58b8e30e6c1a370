//! How a belt runs: path, length, tensioner, slip, and what is wrong with it.

use super::routing::on_the_belts;
use super::{MAKER, STOPPED, refused};
use crate::form::none;
use crate::phrases::belt as say;
use crate::show::apart_mm;
use crate::{Answer, Asked, Calculator, Holds, PHONE_PX, Part, Row, capital, in_row};
use belt::{
    Drive, Facts, Layout, Profile, Pulley, Question, Sense, Side, Tensioner, TensionerKind, Travel,
    code, drive,
};
use drawing::{BeltPath, BeltPulley, Drawing, belt as draw};
use measure::{Customary, Unit};
use serde_json::{Value, json};

/// More than an engine has on one belt, less than a page can hold.
const MOST: usize = 12;

const PULLEY: &[Part] = &[
    Part::text("name", say::name, say::crank_alternator_pump),
    Part::number(
        "x",
        say::to_the_right_of_the_crank,
        Holds::LENGTH,
        say::left_of_it_minus,
    ),
    Part::number(
        "y",
        say::above_the_crank,
        Holds::LENGTH,
        say::below_it_minus,
    ),
    Part::within(
        "across",
        say::diameter,
        Holds::LENGTH,
        (1.0, 20_000.0),
        say::where_the_belt_runs,
    ),
    Part::choice(
        "side",
        say::on_it_lie_the_belts,
        &[("ribs", say::ribs_or_teeth), ("back", say::back)],
    ),
    Part::text(
        "power",
        say::it_takes_kw,
        say::about_0_for_an_idler_empty_if,
    ),
];

pub(super) const DRIVE: Calculator = Calculator {
    code: "drive",
    name: say::how_a_belt_runs,
    what: say::length_wraps_tensioner_slip_what_is,
    cautions: &[STOPPED, MAKER],
    how: Vec::new,
    form: &[
        Part::choice(
            "turns",
            say::seen_from_the_front_the_crank,
            &[("cw", say::clockwise), ("ccw", say::the_other_way)],
        ),
        Part::Rows {
            id: "pulleys",
            title: say::pulley_as_the_belt_meets_it,
            most: MOST,
            parts: PULLEY,
        },
        Part::Heading(say::the_belt),
        Part::text("belt", say::belt, say::its_code_or_its_length_such),
        Part::choice(
            "profile",
            say::belt_is,
            &[
                ("pk", say::ribbed_pk),
                ("given", say::flat_or_v_line_as_measured),
                ("toothed", say::toothed),
            ],
        ),
        Part::Heading(say::what_tensions_it),
        TENSIONER,
        Part::text("tensioned", say::the_pulley_that_moves, say::its_name_above)
            .unless("tensioner", &["none"]),
        Part::More {
            id: "moves",
            title: say::how_that_pulley_moves,
            parts: &[
                Part::number(
                    "pivot-x",
                    say::the_arms_pivot_right_of_the,
                    Holds::LENGTH,
                    none,
                ),
                Part::number(
                    "pivot-y",
                    say::the_arms_pivot_above_the_crank,
                    Holds::LENGTH,
                    none,
                ),
                Part::number(
                    "least",
                    say::arm_at_its_one_stop,
                    Holds::ANGLE,
                    say::from_the_right_counter_clockwise,
                ),
                Part::number("most", say::arm_at_its_other_stop, Holds::ANGLE, none),
                Part::number(
                    "from-x",
                    say::or_it_slides_from_right_of,
                    Holds::LENGTH,
                    none,
                ),
                Part::number("from-y", say::from_above_the_crank, Holds::LENGTH, none),
                Part::number("to-x", say::to_right_of_the_crank, Holds::LENGTH, none),
                Part::number("to-y", say::to_above_the_crank, Holds::LENGTH, none),
                Part::number(
                    "torque",
                    say::the_springs_torque_on_the_arm,
                    Holds::TORQUE,
                    none,
                ),
                Part::number("force", say::or_the_force_at_the_pulley, Holds::FORCE, none),
            ],
        },
        Part::More {
            id: "slip",
            title: say::whether_it_slips,
            parts: &[
                Part::text("friction", say::friction_of_the_ribs, say::none_is_assumed),
                Part::text(
                    "back-friction",
                    say::friction_of_the_back,
                    say::none_is_assumed,
                ),
                Part::number(
                    "tension",
                    say::tension_at_rest,
                    Holds::FORCE,
                    say::where_it_was_measured,
                ),
                Part::number(
                    "rpm",
                    say::speed_of_the_crank,
                    Holds::TURNING,
                    say::at_which_the_powers_hold,
                ),
                Part::text(
                    "pitch",
                    say::pitch_of_the_teeth_mm,
                    say::toothed_belts_alone,
                ),
            ],
        },
        Part::lines(
            "layout",
            say::or_a_layout_as_text,
            say::toml_as_buttonup_belt_reads_it,
        ),
    ],
    at_first: &[("name-1", say::crank), ("x-1", || "0"), ("y-1", || "0")],
    run,
};

const TENSIONER: Part = Part::choice(
    "tensioner",
    say::tensioner,
    &[
        ("", say::not_told),
        ("arm", say::spring_arm),
        ("hydraulic", say::hydraulic),
        ("slot", say::slot),
        ("screw", say::jack_screw),
        ("none", say::none_a_stretch_belt),
    ],
);

fn run(asked: &mut Asked) -> Option<Answer> {
    let mut notes = Vec::new();
    let layout = match asked.some("layout") {
        Some(text) => match belt::read("layout", text) {
            Ok(read) => {
                notes.extend(read.warnings.iter().map(ToString::to_string));
                read.layout
            }
            Err(troubles) => {
                let all: Vec<String> = troubles.iter().map(ToString::to_string).collect();
                asked.wrong("layout", all.join("; "));
                return None;
            }
        },
        None => layout(asked)?,
    };
    let mut layout = layout;
    let length_mm = length(asked, &mut layout);
    if !asked.troubles.is_empty() {
        return None;
    }
    let question = Question { layout, length_mm };
    let found = drive(&question).map_err(|error| refused(&error));
    let found = asked.ok("name-1", found)?;
    Some(answer(asked, &question, &found, notes))
}

/// The fields as a layout; the crank first.
fn layout(asked: &mut Asked) -> Option<Layout> {
    let rows = asked.rows(MOST, PULLEY);
    let pulleys: Vec<Option<Pulley>> = (1..=rows).map(|row| pulley(asked, row)).collect();
    let pulleys: Vec<Pulley> = pulleys.into_iter().flatten().collect();
    let tensioner = tensioner(asked);
    let pitch_mm = plain(asked, "pitch");
    let profile = match asked.text("profile") {
        "given" => Profile::AsGiven,
        "toothed" => match pitch_mm {
            Some(pitch_mm) => Profile::Toothed {
                pitch_mm,
                back_mm: 0.0,
            },
            None => {
                asked.needed("pitch", say::a_toothed_belt_is_reckoned_by());
                return None;
            }
        },
        _ => Profile::PK,
    };
    let facts = Facts {
        friction: plain(asked, "friction"),
        back_friction: plain(asked, "back-friction"),
        tension_n: asked.quantity("tension", Unit::Newton),
        rpm: asked.quantity("rpm", Unit::RevolutionPerMinute),
        ..Facts::default()
    };
    asked.troubles.is_empty().then_some(Layout {
        pulleys,
        tensioner,
        profile,
        facts,
        lies: None,
    })
}

fn pulley(asked: &mut Asked, row: usize) -> Option<Pulley> {
    let at = |name: &str| in_row(name, row);
    asked.needed(&at("name"), say::say_what_it_is_each_pulley());
    let name = asked.text(&at("name")).to_owned();
    let x = asked.must(&at("x"), Unit::Millimetre);
    let y = asked.must(&at("y"), Unit::Millimetre);
    let across = asked.must(&at("across"), Unit::Millimetre);
    let power_kw = plain(asked, &at("power"));
    let mut pulley = Pulley::new(name, x?, y?, across?);
    pulley.power_kw = power_kw;
    Some(lying(asked, row, pulley))
}

/// The pulley of a row with the side of the belt that lies on it; the first one drives.
pub(super) fn lying(asked: &Asked, row: usize, mut pulley: Pulley) -> Pulley {
    if asked.text(&in_row("side", row)) == "back" {
        pulley = pulley.on_back();
    }
    if row == 1 {
        pulley = pulley.driving(match asked.text("turns") {
            "ccw" => Sense::CounterClockwise,
            _ => Sense::Clockwise,
        });
    }
    pulley
}

/// A number without a unit.
fn plain(asked: &mut Asked, name: &str) -> Option<f64> {
    let text = asked.some(name)?.replace(',', ".");
    let number = text.parse::<f64>().ok().filter(|number| number.is_finite());
    if number.is_none() {
        asked.wrong(name, say::is_no_plain_number(&text));
    }
    number
}

fn tensioner(asked: &mut Asked) -> Option<Tensioner> {
    let wanted = asked.text("tensioner").to_owned();
    let kind = TensionerKind::ALL
        .into_iter()
        .find(|kind| kind.name() == wanted)?;
    let torque_nm = asked.quantity("torque", Unit::NewtonMetre);
    let force_n = asked.quantity("force", Unit::Newton);
    if kind == TensionerKind::StretchBelt {
        return Some(Tensioner {
            kind,
            moves: None,
            torque_nm,
            force_n,
        });
    }
    asked.needed("tensioned", say::write_the_name_of_the_pulley());
    let name = asked.text("tensioned").to_owned();
    let mm = Unit::Millimetre;
    let slides = ["from-x", "from-y", "to-x", "to-y"]
        .iter()
        .any(|field| asked.some(field).is_some());
    let travel = if slides {
        let from = (asked.must("from-x", mm), asked.must("from-y", mm));
        let to = (asked.must("to-x", mm), asked.must("to-y", mm));
        Travel::Line {
            from_x_mm: from.0?,
            from_y_mm: from.1?,
            to_x_mm: to.0?,
            to_y_mm: to.1?,
        }
    } else {
        let pivot = (asked.must("pivot-x", mm), asked.must("pivot-y", mm));
        let ends = (
            asked.must("least", Unit::Degree),
            asked.must("most", Unit::Degree),
        );
        Travel::Arc {
            pivot_x_mm: pivot.0?,
            pivot_y_mm: pivot.1?,
            min_deg: ends.0?,
            max_deg: ends.1?,
        }
    };
    Some(Tensioner {
        kind,
        moves: Some((name, travel)),
        torque_nm,
        force_n,
    })
}

/// A length with its unit, a bare one in the shop's, or the code on the belt.
fn length(asked: &mut Asked, layout: &mut Layout) -> Option<f64> {
    let text = asked.some("belt")?.to_owned();
    let bare = match asked.customary() {
        Customary::Metric => Unit::Millimetre,
        Customary::Us => Unit::Inch,
    };
    if let Ok(length) = crate::read(&text, measure::Dimension::Length, Unit::Millimetre, bare) {
        return Some(length);
    }
    let found = code(&text).map_err(|error| refused(&error));
    let found = asked.ok("belt", found)?;
    layout.facts.ribs = layout.facts.ribs.or(found.ribs);
    Some(found.length_mm)
}

fn answer(asked: &Asked, question: &Question, found: &Drive, mut notes: Vec<String>) -> Answer {
    let customary = asked.customary();
    let mm = |value: f64| apart_mm(value, customary).0;
    let other = |value: f64| apart_mm(value, customary).1;
    let faults: Vec<String> = found.faults.iter().map(ToString::to_string).collect();
    let mut answer = Answer::default();
    match (faults.is_empty(), found.length_mm) {
        (true, Some(length)) => {
            answer.fact = mm(length);
            answer.said = match stand(found) {
                Some(stand) => format!("{}, {stand}", other(length)),
                None => say::length_of_this_belt(other(length)),
            };
        }
        _ => {
            answer.fact = say::do_not_start_the_engine().to_owned();
            answer.said = say::this_has_to_be_put_right().to_owned();
            answer.tone = "no";
        }
    }
    answer.rows.extend(faults.iter().map(|fault| Row {
        what: capital(fault),
        tone: "no",
        ..Row::default()
    }));
    if let Some((least, most)) = found.window_mm {
        answer.rows.push(Row {
            what: say::the_tensioner_takes_belts_of().to_owned(),
            value: say::from_to(mm(least), mm(most)),
            beside: say::from_to(other(least), other(most)),
            tone: "",
        });
    }
    if let (false, Some(length)) = (faults.is_empty(), found.length_mm) {
        answer.row(say::its_length_as_listed(), mm(length));
    }
    if let Some(stretch) = found.stretch {
        answer.row(
            say::it_is_stretched_by(),
            format!("{:.2}\u{202f}%", 100.0 * stretch),
        );
    }
    answer.rows.extend(found.pulleys.iter().map(|on| {
        let touches = on.touches.map_or_else(String::new, |touches| {
            let wrap = format!("{:.0}", touches.wrap_deg);
            say::wrap_and_run(wrap, mm(touches.span_mm))
        });
        let slip = on.slip_margin.map_or_else(String::new, |margin| {
            format!(", {}", say::holds_its_load(format!("{margin:.1}")))
        });
        Row {
            what: format!("{}, {}", on.name, on_the_belts(on.side)),
            value: format!("{} {:.2}×", on.turns.words(), on.rpm_ratio),
            beside: format!("{touches}{slip}"),
            tone: "",
        }
    }));
    for between in &found.between_marks {
        answer.row(
            say::from_mark_to_mark(&between.from, &between.to),
            say::so_many_teeth(format!("{:.2}", between.teeth)),
        );
    }
    notes.extend(found.notes.iter().cloned());
    answer.notes = notes;
    answer.alarms = found
        .cautions
        .iter()
        .map(|caution| caution.text().to_owned())
        .collect();
    answer.drawings.extend(drawn(question, found));
    answer.outputs = outputs(found, &faults);
    answer.with_working(&found.working)
}

fn stand(found: &Drive) -> Option<String> {
    let stand = found.stand?;
    let place = match (stand.arm_deg, stand.along_mm) {
        (Some(angle), _) => say::arm_stands_at(format!("{angle:.0}")),
        (None, Some(along)) => say::tensioner_stands_along(format!("{along:.0}")),
        (None, None) => return None,
    };
    let tension = stand
        .tension_n
        .map(|tension| format!(", {}", say::belt_at(format!("{tension:.0}"))));
    Some(place + &tension.unwrap_or_default())
}

/// The path to scale; nothing where no belt can run.
fn drawn(question: &Question, found: &Drive) -> Option<Drawing> {
    let crank = question.layout.pulleys.iter().find(|one| one.drives);
    let pulleys: Option<Vec<BeltPulley>> = found
        .pulleys
        .iter()
        .map(|on| {
            let touches = on.touches?;
            Some(BeltPulley {
                name: on.name.clone(),
                x_mm: on.x_mm,
                y_mm: on.y_mm,
                radius_mm: on.line_radius_mm,
                ribbed: on.side == Side::Ribs,
                wrap_deg: touches.wrap_deg,
                clockwise: on.turns == Sense::Clockwise,
                drives: crank.is_some_and(|crank| crank.name == on.name),
                meets_mm: touches.meets,
                leaves_mm: touches.leaves,
            })
        })
        .collect();
    let path = BeltPath {
        title: say::the_belt_from_the_front_of().to_owned(),
        pulleys: pulleys?,
        rough: false,
        wrong: None,
    };
    Some(draw(&path, PHONE_PX, PHONE_PX))
}

fn outputs(found: &Drive, faults: &[String]) -> Value {
    let pulleys: Vec<Value> = found
        .pulleys
        .iter()
        .map(|on| {
            json!({
                "name": on.name,
                "side": on.side.name(),
                "wrap_deg": on.touches.map(|touches| touches.wrap_deg),
                "span_mm": on.touches.map(|touches| touches.span_mm),
                "turns": on.turns.name(),
                "rpm_ratio": on.rpm_ratio,
                "slip_margin": on.slip_margin,
            })
        })
        .collect();
    json!({
        "length_mm": found.length_mm,
        "window_mm": found.window_mm.map(|(least, most)| [least, most]),
        "arm_deg": found.stand.and_then(|stand| stand.arm_deg),
        "pulleys": pulleys,
        "errors": faults,
    })
}

//! How a belt runs: path, length, tensioner, slip, and what is wrong with it.

use super::{MAKER, STOPPED, refused};
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
    Part::text("name", "Name", "crank, alternator, pump …"),
    Part::number(
        "x",
        "To the right of the crank",
        Holds::LENGTH,
        "left of it: minus",
    ),
    Part::number("y", "Above the crank", Holds::LENGTH, "below it: minus"),
    Part::within(
        "across",
        "Diameter",
        Holds::LENGTH,
        (1.0, 20_000.0),
        "where the belt runs",
    ),
    Part::choice(
        "side",
        "On it lie the belt's",
        &[("ribs", "ribs or teeth"), ("back", "back")],
    ),
    Part::text(
        "power",
        "It takes, kW",
        "0 for an idler; empty if it is not known",
    ),
];

pub(super) const DRIVE: Calculator = Calculator {
    code: "drive",
    name: "How a belt runs",
    what: "length, wraps, tensioner, slip, what is wrong",
    cautions: &[STOPPED, MAKER],
    how: &[],
    form: &[
        Part::choice(
            "turns",
            "Seen from the front, the crank turns",
            &[("cw", "clock\u{ad}wise"), ("ccw", "the other way")],
        ),
        Part::Rows {
            id: "pulleys",
            title: "Pulley, as the belt meets it",
            most: MOST,
            parts: PULLEY,
        },
        Part::Heading("The belt"),
        Part::text(
            "belt",
            "Belt",
            "its code or its length, such as 6PK1285 or 1285 mm; empty for what fits",
        ),
        Part::choice(
            "profile",
            "It is",
            &[
                ("pk", "ribbed, PK"),
                ("given", "flat or V: line as measured"),
                ("toothed", "toothed"),
            ],
        ),
        Part::Heading("What tensions it"),
        TENSIONER,
        Part::text("tensioned", "The pulley that moves", "its name above")
            .unless("tensioner", &["none"]),
        Part::More {
            id: "moves",
            title: "How that pulley moves",
            parts: &[
                Part::number(
                    "pivot-x",
                    "The arm's pivot, right of the crank",
                    Holds::LENGTH,
                    "",
                ),
                Part::number(
                    "pivot-y",
                    "The arm's pivot, above the crank",
                    Holds::LENGTH,
                    "",
                ),
                Part::number(
                    "least",
                    "Arm at its one stop",
                    Holds::ANGLE,
                    "from the right, counter-clockwise",
                ),
                Part::number("most", "Arm at its other stop", Holds::ANGLE, ""),
                Part::number(
                    "from-x",
                    "Or it slides from, right of the crank",
                    Holds::LENGTH,
                    "",
                ),
                Part::number("from-y", "From, above the crank", Holds::LENGTH, ""),
                Part::number("to-x", "To, right of the crank", Holds::LENGTH, ""),
                Part::number("to-y", "To, above the crank", Holds::LENGTH, ""),
                Part::number(
                    "torque",
                    "The spring's torque on the arm",
                    Holds::TORQUE,
                    "",
                ),
                Part::number("force", "Or the force at the pulley", Holds::FORCE, ""),
            ],
        },
        Part::More {
            id: "slip",
            title: "Whether it slips",
            parts: &[
                Part::text("friction", "Friction of the ribs", "none is assumed"),
                Part::text("back-friction", "Friction of the back", "none is assumed"),
                Part::number(
                    "tension",
                    "Tension at rest",
                    Holds::FORCE,
                    "where it was measured",
                ),
                Part::number(
                    "rpm",
                    "Speed of the crank",
                    Holds::TURNING,
                    "at which the powers hold",
                ),
                Part::text("pitch", "Pitch of the teeth, mm", "toothed belts alone"),
            ],
        },
        Part::lines(
            "layout",
            "Or a layout as text",
            "TOML as `buttonup belt` reads it; it goes before the fields above",
        ),
    ],
    at_first: &[("name-1", "crank"), ("x-1", "0"), ("y-1", "0")],
    run,
};

const TENSIONER: Part = Part::choice(
    "tensioner",
    "Tensioner",
    &[
        ("", "not told"),
        ("arm", "spring arm"),
        ("hydraulic", "hydraulic"),
        ("slot", "slot"),
        ("screw", "jack screw"),
        ("none", "none: a stretch belt"),
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
                asked.needed("pitch", "a toothed belt is reckoned by its pitch");
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
    asked.needed(&at("name"), "say what it is, each pulley another name");
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
        asked.wrong(
            name,
            format!("`{text}` is no number; write it without a unit"),
        );
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
    asked.needed("tensioned", "write the name of the pulley that moves");
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
                None => format!("{}, the length of this belt", other(length)),
            };
        }
        _ => {
            answer.fact = "do not start the engine".to_owned();
            answer.said = "this has to be put right first".to_owned();
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
            what: "the tensioner takes belts of".to_owned(),
            value: format!("{} to {}", mm(least), mm(most)),
            beside: format!("{} to {}", other(least), other(most)),
            tone: "",
        });
    }
    if let (false, Some(length)) = (faults.is_empty(), found.length_mm) {
        answer.row("its length as listed", mm(length));
    }
    if let Some(stretch) = found.stretch {
        answer.row(
            "it is stretched by",
            format!("{:.2}\u{202f}%", 100.0 * stretch),
        );
    }
    answer.rows.extend(found.pulleys.iter().map(|on| {
        let touches = on.touches.map_or_else(String::new, |touches| {
            format!(
                "wrap {:.0}°, run after it {}",
                touches.wrap_deg,
                mm(touches.span_mm)
            )
        });
        let slip = on.slip_margin.map_or_else(String::new, |margin| {
            format!(", holds {margin:.1} times its load")
        });
        Row {
            what: format!("{}, on the belt's {}", on.name, on.side.name()),
            value: format!("{} {:.2}×", on.turns.words(), on.rpm_ratio),
            beside: format!("{touches}{slip}"),
            tone: "",
        }
    }));
    for between in &found.between_marks {
        answer.row(
            format!(
                "from the mark of {} to that of {}",
                between.from, between.to
            ),
            format!("{:.2} teeth", between.teeth),
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
        (Some(angle), _) => format!("the arm stands at {angle:.0}°"),
        (None, Some(along)) => format!("the tensioner stands {along:.0} mm along"),
        (None, None) => return None,
    };
    let tension = stand
        .tension_n
        .map(|tension| format!(", the belt at {tension:.0} N"));
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
        title: "The belt from the front of the engine".to_owned(),
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

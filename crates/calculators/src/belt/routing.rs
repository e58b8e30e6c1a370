//! How a belt lies, as it is seen before it comes off: the pulleys in sequence, and the side
//! that lies on each. Places are tapped, so nothing of length is worked out from them.

use super::drive::lying;
use crate::phrases::belt as say;
use crate::{Answer, Asked, Calculator, Holds, PHONE_PX, Part, Row, in_row};
use belt::{Drive, Facts, Fault, Layout, Profile, Pulley, Question, Sense, Side, drive};
use drawing::{BeltPath, BeltPulley, Drawing, belt as draw};
use measure::Unit;
use serde_json::{Value, json};

/// More than an engine has on one belt.
const MOST: usize = 12;

const PULLEY: &[Part] = &[
    Part::text(
        "name",
        say::name,
        say::crank_alternator_coolant_pump_tensioner,
    ),
    Part::choice(
        "side",
        say::on_it_lie_the_belts,
        &[("ribs", say::ribs_or_teeth), ("back", say::back)],
    ),
    Part::within(
        "x",
        say::right_of_the_crank,
        Holds::LENGTH,
        (-2_000.0, 2_000.0),
        say::roughly_left_of_it_minus,
    ),
    Part::within(
        "y",
        say::above_the_crank,
        Holds::LENGTH,
        (-2_000.0, 2_000.0),
        say::roughly_below_it_minus,
    ),
];

pub(super) const ROUTING: Calculator = Calculator {
    code: "routing",
    name: say::how_a_belt_lies,
    what: say::tapped_before_it_comes_off,
    cautions: &[super::STOPPED],
    how: Vec::new,
    form: &[
        Part::Places {
            title: say::tap_where_the_belt_goes_next,
            fields: ("x", "y"),
            rows: "pulleys",
            corners_mm: (-300.0, -120.0, 300.0, 480.0),
        },
        Part::Rows {
            id: "pulleys",
            title: say::pulley_as_the_belt_meets_it,
            most: MOST,
            parts: PULLEY,
        },
        Part::choice(
            "turns",
            say::seen_from_the_front_the_crank,
            &[("cw", say::clockwise), ("ccw", say::the_other_way)],
        ),
        Part::text(
            "belt",
            say::written_on_the_belt,
            say::its_code_such_as_6pk1285,
        ),
    ],
    at_first: &[
        ("name-1", say::crank),
        ("x-1", || "0 mm"),
        ("y-1", || "0 mm"),
    ],
    run,
};

fn run(asked: &mut Asked) -> Option<Answer> {
    let rows = asked.rows(MOST, PULLEY);
    let seen: Vec<Option<Pulley>> = (1..=rows).map(|row| pulley(asked, row)).collect();
    let mut pulleys: Vec<Pulley> = seen.into_iter().flatten().collect();
    if rows < 2 && asked.troubles.is_empty() {
        asked.wrong("x-2", say::tap_where_the_belt_goes_after());
    }
    for (nth, one) in pulleys.iter().enumerate() {
        if pulleys[..nth].iter().any(|other| other.name == one.name) {
            let row = in_row("name", nth + 1);
            asked.wrong(&row, say::is_there_twice(&one.name));
            break;
        }
    }
    if !asked.troubles.is_empty() {
        return None;
    }
    size(&mut pulleys);
    let layout = Layout {
        pulleys,
        tensioner: None,
        profile: Profile::AsGiven,
        facts: Facts::default(),
        lies: None,
    };
    let question = Question {
        layout,
        length_mm: None,
    };
    let (question, found) = as_it_runs(question);
    Some(answer(asked, &question.layout.pulleys, found.as_ref()))
}

/// One taps a belt round either way; it runs the way the crank turns.
fn as_it_runs(question: Question) -> (Question, Option<Drive>) {
    let found = drive(&question).ok();
    let is_other_way = found.as_ref().is_some_and(|found| {
        let mut faults = found.faults.iter();
        faults.any(|fault| matches!(fault, Fault::WrongWayRound { .. }))
    });
    if !is_other_way {
        return (question, found);
    }
    let mut other = question.clone();
    other.layout.pulleys[1..].reverse();
    let found = drive(&other).ok();
    (other, found)
}

fn pulley(asked: &mut Asked, row: usize) -> Option<Pulley> {
    let at = |name: &str| in_row(name, row);
    let x = asked.must(&at("x"), Unit::Millimetre);
    let y = asked.must(&at("y"), Unit::Millimetre);
    let name = match asked.some(&at("name")) {
        Some(name) => name.to_owned(),
        None => say::pulley_of_row(row),
    };
    Some(lying(asked, row, Pulley::new(name, x?, y?, 1.0)))
}

/// Sizes nobody measured: what is usual beside a crank, and never so large that two touch.
fn size(pulleys: &mut [Pulley]) {
    const CRANK_MM: f64 = 140.0;
    const RIBBED_MM: f64 = 90.0;
    const BACK_MM: f64 = 70.0;
    const LEAST_MM: f64 = 2.0;
    let apart = |one: &Pulley, other: &Pulley| (one.x_mm - other.x_mm).hypot(one.y_mm - other.y_mm);
    let room: Vec<f64> = (0..pulleys.len())
        .map(|nth| {
            let others = pulleys
                .iter()
                .enumerate()
                .filter(|(other, _)| *other != nth);
            others
                .map(|(_, other)| apart(&pulleys[nth], other))
                .fold(f64::INFINITY, f64::min)
        })
        .collect();
    for (pulley, room) in pulleys.iter_mut().zip(room) {
        let usual = match (pulley.drives, pulley.side) {
            (true, _) => CRANK_MM,
            (false, Side::Ribs) => RIBBED_MM,
            (false, Side::Back) => BACK_MM,
        };
        pulley.diameter_mm = usual.min(0.8 * room).max(LEAST_MM);
    }
}

fn answer(asked: &Asked, pulleys: &[Pulley], found: Option<&Drive>) -> Answer {
    let named = |pulley: &Pulley| match pulley.side {
        Side::Ribs => pulley.name.clone(),
        Side::Back => say::on_the_back(&pulley.name),
    };
    let names: Vec<String> = pulleys.iter().map(named).collect();
    let mut answer = Answer {
        fact: say::pulleys(pulleys.len()),
        said: names.join(", "),
        ..Answer::default()
    };
    let cannot: Vec<String> = match found {
        Some(found) => found
            .faults
            .iter()
            .filter(|fault| of_shape(fault))
            .map(ToString::to_string)
            .collect(),
        None => vec![say::no_belt_runs_round_these_places().to_owned()],
    };
    if let Some(first) = cannot.first() {
        answer.tone = "wait";
        answer.notes.push(say::could_not_run(first));
    }
    for pulley in found.into_iter().flat_map(|found| &found.pulleys) {
        answer.rows.push(Row {
            what: pulley.name.clone(),
            value: pulley.turns.words().to_owned(),
            beside: on_the_belts(pulley.side).to_owned(),
            tone: "",
        });
    }
    let path = found.map_or(Value::Null, kept_path);
    answer.drawings.extend(as_found(&json!({ "path": path })));
    answer
        .notes
        .push(say::places_are_as_tapped_sizes_are().to_owned());
    answer.outputs = json!({
        "sequence": answer.said,
        "pulleys": pulleys.iter().map(|one| json!({ "name": one.name, "side": one.side.name() })).collect::<Vec<_>>(),
        "belt": asked.some("belt"),
        "cannot_run": cannot,
        "path": path,
    });
    answer
}

/// The side of the belt that lies on a pulley, in words.
pub(super) fn on_the_belts(side: Side) -> &'static str {
    match side {
        Side::Ribs => say::on_the_belts_ribs(),
        Side::Back => say::on_the_belts_back(),
    }
}

/// What does not hang on sizes: whether a belt can run there at all.
fn of_shape(fault: &Fault) -> bool {
    !matches!(
        fault,
        Fault::WrapTooSmall { .. }
            | Fault::ArmAtStop { .. }
            | Fault::DoesNotFit { .. }
            | Fault::DrawnOutsideStops { .. }
            | Fault::PulleysOverlap { .. }
    )
}

/// The run as it is kept with an order, to be drawn again as it was.
fn kept_path(found: &Drive) -> Value {
    let each: Option<Vec<Value>> = found
        .pulleys
        .iter()
        .map(|on| {
            let touches = on.touches?;
            Some(json!({
                "name": on.name, "x_mm": on.x_mm, "y_mm": on.y_mm, "radius_mm": on.line_radius_mm,
                "side": on.side.name(), "turns": on.turns.name(), "wrap_deg": touches.wrap_deg,
                "meets_mm": [touches.meets.0, touches.meets.1],
                "leaves_mm": [touches.leaves.0, touches.leaves.1],
            }))
        })
        .collect();
    each.map_or(Value::Null, Value::Array)
}

/// A routing as it was kept, drawn: from the `outputs` of this calculator.
#[must_use]
pub fn as_found(outputs: &Value) -> Option<Drawing> {
    let pulleys: Option<Vec<BeltPulley>> = outputs["path"]
        .as_array()?
        .iter()
        .enumerate()
        .map(|(nth, one)| {
            let point = |name: &str| Some((one[name][0].as_f64()?, one[name][1].as_f64()?));
            Some(BeltPulley {
                name: one["name"].as_str()?.to_owned(),
                x_mm: one["x_mm"].as_f64()?,
                y_mm: one["y_mm"].as_f64()?,
                radius_mm: one["radius_mm"].as_f64()?,
                ribbed: one["side"] == Side::Ribs.name(),
                wrap_deg: one["wrap_deg"].as_f64()?,
                clockwise: one["turns"] == Sense::Clockwise.name(),
                drives: nth == 0,
                meets_mm: point("meets_mm")?,
                leaves_mm: point("leaves_mm")?,
            })
        })
        .collect();
    let path = BeltPath {
        title: say::how_the_belt_lies_from_the().to_owned(),
        pulleys: pulleys?,
        rough: true,
        wrong: None,
    };
    Some(draw(&path, PHONE_PX, PHONE_PX))
}

//! A drive with no order: what a recording, or readings taken by hand, prove.

use crate::form::none;
use crate::phrases::roadtest as say;
use crate::{Answer, Asked, Calculator, Holds, PHONE_PX, Part, Room, Row, Say, capital, in_row};
use drawing::{Drawing, RoadTest, RoadTestMark, road_test};
use measure::{Customary, Unit};
use roadtest::{
    Caution, Check, Conditions, Kind, Log, LogError, Mapping, Outcome, Reading, Verdict, judge,
    read,
};
use serde_json::{Value, json};
use std::fmt::Write;

const CAUTIONS: &[Say] = &[
    || Caution::SecondPerson.text(),
    || Caution::SafeToDrive.text(),
    || Caution::Insured.text(),
    || Caution::HotEngine.text(),
    || Caution::MakersLimits.text(),
];

/// The room of road tests.
pub const ROOM: Room = Room {
    code: "roadtest",
    name: say::road_test,
    what: say::what_a_drive_proves,
    cautions: CAUTIONS,
    notes: &[(
        say::what_a_drive_can_say,
        say::each_check_says_held_failed_not,
    )],
    calculators: &[RECORDED, BY_HAND],
};

/// What is known besides the readings.
const KNOWN: Part = Part::Group(&[
    Part::said(
        "complaint",
        say::the_complaint_in_the_customers_words,
        say::such_as_comes_on_after_20,
    ),
    Part::number(
        "thermostat",
        say::stamped_on_the_thermostat,
        Holds::TEMPERATURE,
        say::may_stay_empty,
    ),
    Part::number(
        "limit",
        say::the_makers_highest_coolant_temperature,
        Holds::TEMPERATURE,
        say::may_stay_empty,
    ),
    Part::number(
        "boil",
        say::where_this_coolant_boils_under_its,
        Holds::TEMPERATURE,
        say::as_how_far_it_protects_has,
    ),
]);

const RECORDED: Calculator = Calculator {
    code: "recording",
    name: say::a_recorded_drive,
    what: say::a_loggers_table_or_sae_j1979,
    // The drive is over: what stands before it stands in the room.
    cautions: &[|| Caution::MakersLimits.text()],
    how: Vec::new,
    form: &[
        Part::file("log", say::the_recording, say::a_table_with_its_headings_or),
        Part::choice(
            "kind",
            say::it_is,
            &[
                ("", say::found_from_the_file),
                ("csv", say::a_table),
                ("j1979", say::sae_j1979_frames),
            ],
        ),
        KNOWN,
        Part::More {
            id: "columns",
            title: say::a_column_that_the_headings_do,
            parts: &[Part::lines(
                "map",
                say::columns,
                say::one_a_line_such_as_coolant,
            )],
        },
    ],
    at_first: &[],
    run: recorded,
};

/// More than anybody writes down at the kerb.
const MOST: usize = 20;

const READINGS: &[Part] = &[
    Part::number("at", say::minutes_since_the_start, Holds::TIME, none),
    Part::number("coolant", say::coolant, Holds::TEMPERATURE, none),
    Part::number("speed", say::speed, Holds::SPEED, none),
    Part::number("voltage", say::voltage, Holds::VOLTAGE, none),
];

const BY_HAND: Calculator = Calculator {
    code: "by-hand",
    name: say::readings_by_hand,
    what: say::typed_at_the_kerb_by_a,
    cautions: &[
        || Caution::SecondPerson.text(),
        || Caution::HotEngine.text(),
        || Caution::MakersLimits.text(),
    ],
    how: Vec::new,
    form: &[
        Part::Rows {
            id: "readings",
            title: say::reading,
            most: MOST,
            parts: READINGS,
        },
        KNOWN,
    ],
    at_first: &[("at-1", || "0")],
    run: by_hand,
};

fn recorded(asked: &mut Asked) -> Option<Answer> {
    asked.needed("log", say::paste_the_recording_or_take_it());
    let kind = match asked.text("kind") {
        "csv" => Some(Kind::Csv),
        "j1979" => Some(Kind::J1979),
        _ => None,
    };
    let mapping = Mapping::read(asked.text("map")).map_err(|error| told(&error));
    let mapping = asked.ok("map", mapping)?;
    let text = asked.some("log")?.to_owned();
    let log = read(text.as_bytes(), kind, &mapping).map_err(|error| told(&error));
    let log = asked.ok("log", log)?;
    judged(asked, &log)
}

/// The rows as a table of their own, read like any other.
fn by_hand(asked: &mut Asked) -> Option<Answer> {
    let rows = asked.rows(MOST, READINGS);
    let mut table = String::from("time [s],coolant [°C],speed [km/h],voltage [V]\n");
    let mut last_s = f64::NEG_INFINITY;
    for row in 1..=rows {
        let at = |name: &str| in_row(name, row);
        let minutes = asked.must(&at("at"), Unit::Minute);
        let cells = [
            asked.quantity(&at("coolant"), Unit::Celsius),
            asked.quantity(&at("speed"), Unit::KilometrePerHour),
            asked.quantity(&at("voltage"), Unit::Volt),
        ];
        let Some(seconds) = minutes.map(|minutes| minutes * 60.0) else {
            continue;
        };
        if seconds <= last_s {
            let what = say::it_is_not_after_the_one();
            asked.wrong(&at("at"), what);
        }
        last_s = seconds;
        if cells.iter().all(Option::is_none) {
            let what = say::nothing_was_read_then_write_one();
            asked.wrong(&at("coolant"), what);
        }
        // No finer than anybody reads.
        let [coolant, speed, voltage] =
            cells.map(|cell| cell.map_or(String::new(), |cell| format!("{cell:.3}")));
        let _ = writeln!(table, "{seconds},{coolant},{speed},{voltage}");
    }
    if !asked.troubles.is_empty() {
        return None;
    }
    let log = read(table.as_bytes(), Some(Kind::Csv), &Mapping::default());
    let log = asked.ok("at-1", log.map_err(|error| told(&error)))?;
    judged(asked, &log)
}

fn told(error: &LogError) -> String {
    let (what, mend) = error.told();
    format!("{what}; {mend}")
}

fn judged(asked: &mut Asked, log: &Log) -> Option<Answer> {
    let conditions = Conditions {
        complaint: asked.some("complaint").map(str::to_owned),
        thermostat_c: asked.celsius("thermostat"),
        limit_c: asked.celsius("limit"),
        boil_c: asked.celsius("boil"),
    };
    if !asked.troubles.is_empty() {
        return None;
    }
    let verdict = judge(log, &conditions);
    let mut answer = Answer {
        fact: verdict.verdict.said().to_owned(),
        said: capital(&verdict.because),
        tone: tone(verdict.verdict),
        rows: verdict.checks.iter().map(row).collect(),
        drawings: vec![drawn(asked, &verdict)],
        outputs: outputs(&verdict),
        ..Answer::default()
    };
    let unused: Vec<&str> = log
        .columns
        .iter()
        .filter(|column| column.taken_for.is_none())
        .map(|column| column.heading.as_str())
        .collect();
    if !unused.is_empty() {
        answer.notes.push(say::not_used(unused.join(", ")));
    }
    answer.notes.extend(log.notes.iter().take(MOST).map(|note| {
        let line = note
            .line
            .map_or(String::new(), |line| format!("{}: ", say::line(line)));
        capital(&format!("{line}{}", note.what))
    }));
    Some(answer.with_working(&verdict.working))
}

fn row(check: &Check) -> Row {
    let because = capital(&check.because);
    Row {
        what: capital(&check.check.name().replace('-', " ")),
        value: check.verdict.said().to_owned(),
        beside: match &check.next {
            Some(next) => say::because_and_next(because, next),
            None => because,
        },
        tone: tone(check.verdict),
    }
}

fn tone(outcome: Outcome) -> &'static str {
    match outcome {
        Outcome::Held => "yes",
        Outcome::Failed => "no",
        Outcome::NotProvoked | Outcome::CantTell => "wait",
    }
}

fn drawn(asked: &Asked, verdict: &Verdict) -> Drawing {
    const KM_PER_MILE: f64 = 1.609_344;
    let us = asked.customary() == Customary::Us;
    let degrees = |c: f64| if us { c * 1.8 + 32.0 } else { c };
    let speed = |kmh: f64| if us { kmh / KM_PER_MILE } else { kmh };
    let picture = &verdict.picture;
    let each = |pieces: &[Vec<(f64, f64)>], of: &dyn Fn(f64) -> f64| -> Vec<Vec<(f64, f64)>> {
        let piece = |piece: &Vec<(f64, f64)>| piece.iter().map(|(at, y)| (*at, of(*y))).collect();
        pieces.iter().map(piece).collect()
    };
    let marks = picture.marks.iter().map(|mark| RoadTestMark {
        minutes: mark.minutes,
        temperature: degrees(mark.c),
        words: mark.words.clone(),
        wrong: mark.wrong,
    });
    let test = RoadTest {
        coolant: each(&picture.coolant, &degrees),
        speed: each(&picture.speed, &speed),
        band: picture
            .band_c
            .map(|(low, high)| (degrees(low), degrees(high))),
        marks: marks.collect(),
        unit: if us { "°F" } else { "°C" }.to_owned(),
        speed_unit: if us { "mph" } else { "km/h" }.to_owned(),
        verdict: capital(verdict.verdict.said()),
    };
    road_test(&test, PHONE_PX)
}

fn outputs(verdict: &Verdict) -> Value {
    let reading = |one: &Reading| {
        json!({ "name": one.name, "value": one.value, "unit": one.unit, "at_s": one.at_s,
            "within": one.within })
    };
    let check = |check: &Check| {
        json!({ "check": check.check.code(), "verdict": check.verdict.code(),
            "because": check.because, "next": check.next,
            "readings": check.readings.iter().map(reading).collect::<Vec<_>>() })
    };
    json!({
        "verdict": verdict.verdict.code(),
        "because": verdict.because,
        "checks": verdict.checks.iter().map(check).collect::<Vec<_>>(),
    })
}

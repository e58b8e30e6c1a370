//! A day from its text, which is TOML.

mod fields;
mod hours;

use crate::floor::{
    Does, Floor, Lift, Order, Person, Phase, Rules, Running, Stall, StallNeed, Takes, Wait,
    WaitsFor, Work,
};
use crate::phrases::{check as words, read as say};
use crate::spread::Spread;
use crate::windows::{Minute, Windows};
pub use ::fields::Trouble;
use ::fields::{Fields, read as read_fields};
use fields::{Book, DayFields};
pub use hours::Local;
use toml_edit::Document;

/// What a text holds.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Read {
    pub floor: Floor,
    /// The moment the day is looked at, as it was written.
    pub now: Local,
    pub warnings: Vec<Trouble>,
}

/// Minutes of a place: what is written as local time, told as minutes since some origin. Says in
/// words what is wrong with a time that does not exist there.
pub type Clock<'c> = &'c dyn Fn(Local) -> Result<Minute, String>;

const ROOT: [&str; 12] = [
    "now",
    "zone",
    "days",
    "hours",
    "closed",
    "yard_places",
    "stall",
    "person",
    "order",
    "rules",
    "name",
    "note",
];
const STALL: [&str; 7] = [
    "name",
    "lift",
    "carries_kg",
    "clears_mm",
    "cross",
    "held",
    "note",
];
const PERSON: [&str; 5] = ["name", "skills", "hours", "away", "note"];
const ORDER: [&str; 12] = [
    "name",
    "weight_kg",
    "height_mm",
    "promise",
    "promise_weight",
    "comes",
    "stands_in",
    "rolls",
    "begun",
    "begun_by",
    "phase",
    "note",
];
const PHASE: [&str; 9] = [
    "what", "kind", "minutes", "comes", "skill", "stall", "helpers", "rolls", "note",
];
const RULES: [&str; 5] = [
    "broken",
    "late_minute",
    "idle_lift_minute",
    "moved",
    "changed",
];
/// Days that are laid if the file does not say how many.
const DAYS: i64 = 14;

/// The zone that a text names, to choose a clock by before it is read.
///
/// ```
/// assert_eq!(stalls::zone("zone = \"Europe/Vienna\""), Some("Europe/Vienna".to_owned()));
/// assert_eq!(stalls::zone("now = 1"), None);
/// ```
pub fn zone(text: &str) -> Option<String> {
    let document = Document::parse(text).ok()?;
    Some(document.get("zone")?.as_str()?.to_owned())
}

/// The moment that a text is written for, to set an origin by before it is read.
///
/// ```
/// assert_eq!(stalls::now("now = \"2026-11-30T08:10\"").map(|now| now.hour), Some(8));
/// ```
pub fn now(text: &str) -> Option<Local> {
    let document = Document::parse(text).ok()?;
    fields::local(document.get("now")?)
}

/// Reads a day.
///
/// `file` is the name that troubles are told under.
///
/// # Errors
///
/// Everything that is wrong, in the sequence of the text: what is no TOML, missing keys, words
/// that are not known, names that are not there, times that do not exist. Unknown keys are
/// warnings, unless they look like a known one misspelt.
pub fn read(file: &str, text: &str, clock: Clock) -> Result<Read, Vec<Trouble>> {
    let read = read_fields(file, text, say::the_file(), |root, wrong| {
        let book = &mut Book::new(wrong, clock);
        root.only(&ROOT, book);
        let now = root.local("now", book);
        if now.is_none() && !root.has("now") {
            book.missing(root, "now", say::local_time_such_as());
        }
        // Without it no day can be laid.
        now.map(|now| (now, floor(root, now, book)))
    })?;
    let (now, floor) = read.value.expect("without a now the text is wrong");
    Ok(Read {
        floor,
        now,
        warnings: read.warnings,
    })
}

fn floor(root: &Fields, now: Local, book: &mut Book) -> Floor {
    let days = root.between("days", 1..=366, book).unwrap_or(DAYS);
    let span = hours::Days { from: now, days };
    let opening = root.hours("hours", span, book).unwrap_or_else(|| {
        if !root.has("hours") {
            book.missing(root, "hours", say::when_open_such_as());
        }
        Windows::default()
    });
    let closed = root.days("closed", book);
    let opening = opening.minus(&closed);
    let stalls = stalls(root, book);
    let people = people(root, &opening, span, book);
    let orders = root
        .tables("order", book)
        .iter()
        .map(|fields| order(fields, &stalls, &people, book))
        .collect();
    Floor {
        now: book.minute(root, "now", now),
        opening,
        stalls,
        people,
        orders,
        yard_places: root
            .between("yard_places", 0..=1000, book)
            .and_then(|places| usize::try_from(places).ok()),
        rules: rules(root, book),
    }
}

fn rules(root: &Fields, book: &mut Book) -> Rules {
    let mut rules = Rules::default();
    let Some(fields) = root.table("rules", book) else {
        return rules;
    };
    fields.only(&RULES, book);
    let mut read = |key: &str, points: &mut i64| {
        if let Some(written) = fields.between(key, 0..=1_000_000, book) {
            *points = written;
        }
    };
    read("broken", &mut rules.broken);
    read("late_minute", &mut rules.late_minute);
    read("idle_lift_minute", &mut rules.idle_lift_minute);
    read("moved", &mut rules.moved);
    read("changed", &mut rules.changed);
    rules
}

fn stalls(root: &Fields, book: &mut Book) -> Vec<Stall> {
    let tables = root.tables("stall", book);
    let names: Vec<String> = tables
        .iter()
        .map(|fields| fields.needed_text("name", book))
        .collect();
    let read = |(at, fields): (usize, &Fields)| {
        fields.only(&STALL, book);
        let kg = fields.between("carries_kg", 1..=100_000, book);
        let mm = fields.between("clears_mm", 1..=20_000, book);
        let is_lift = fields.yes("lift", kg.is_some() || mm.is_some(), book);
        let crosses = fields.names("cross", &names, words::stall(), book);
        Stall {
            name: names[at].clone(),
            lift: is_lift.then(|| Lift {
                carries_kg: kg.and_then(|kg| u32::try_from(kg).ok()),
                clears_mm: mm.and_then(|mm| u32::try_from(mm).ok()),
            }),
            crosses,
            held: fields.text("held", book),
        }
    };
    tables.iter().enumerate().map(read).collect()
}

fn people(root: &Fields, opening: &Windows, span: hours::Days, book: &mut Book) -> Vec<Person> {
    let tables = root.tables("person", book);
    let read = |fields: &Fields| {
        fields.only(&PERSON, book);
        Person {
            name: fields.needed_text("name", book),
            skills: fields.texts("skills", book),
            hours: fields
                .hours("hours", span, book)
                .unwrap_or_else(|| opening.clone()),
            away: fields.spans("away", book),
        }
    };
    tables.iter().map(read).collect()
}

fn order(fields: &Fields, stalls: &[Stall], people: &[Person], book: &mut Book) -> Order {
    fields.only(&ORDER, book);
    let stall_names: Vec<String> = stalls.iter().map(|stall| stall.name.clone()).collect();
    let people_names: Vec<String> = people.iter().map(|person| person.name.clone()).collect();
    let rolls = fields.yes("rolls", true, book);
    let mut phases: Vec<Phase> = Vec::new();
    for table in &fields.tables("phase", book) {
        let before = phases.last().map_or(rolls, |phase| phase.rolls);
        if let Some(phase) = phase(table, before, book) {
            phases.push(phase);
        }
    }
    let since = fields.moment("begun", book);
    let by = fields.names("begun_by", &people_names, words::person(), book);
    let vehicle = |key: &str, book: &mut Book| {
        let value = fields.between(key, 1..=100_000, book);
        value.and_then(|value| u32::try_from(value).ok())
    };
    Order {
        name: fields.needed_text("name", book),
        weight_kg: vehicle("weight_kg", book),
        height_mm: vehicle("height_mm", book),
        promise: fields.moment("promise", book),
        promise_weight: fields
            .between("promise_weight", 0..=1_000_000, book)
            .unwrap_or(1),
        arrives: fields.moments("comes", book),
        stands_in: fields.one_name("stands_in", &stall_names, words::stall(), book),
        rolls,
        running: since.map(|since| Running { since, people: by }),
        phases,
    }
}

fn phase(fields: &Fields, rolled: bool, book: &mut Book) -> Option<Phase> {
    fields.only(&PHASE, book);
    let waits = WaitsFor::ALL.map(WaitsFor::name);
    let known: Vec<&str> = ["work", "road test"].into_iter().chain(waits).collect();
    let what = fields.needed_text("what", book);
    let kind = fields.word("kind", &known, book);
    if kind.is_none() && fields.has("kind") {
        return None;
    }
    let kind = kind.unwrap_or("work");
    let minutes = fields.spread("minutes", book);
    let Some(waits_for) = WaitsFor::ALL.into_iter().find(|one| one.name() == kind) else {
        let minutes = minutes.or_else(|| {
            if !fields.has("minutes") {
                book.missing(fields, "minutes", say::one_number_or_three());
            }
            None
        })?;
        let on_the_road = kind == "road test";
        let need = fields.word("stall", &StallNeed::ALL.map(StallNeed::name), book);
        let usual = if on_the_road {
            StallNeed::No
        } else {
            StallNeed::Any
        };
        return Some(Phase {
            what,
            does: Does::Work(Work {
                skill: fields.text("skill", book),
                minutes,
                stall: need.map_or(usual, |need| {
                    let all = StallNeed::ALL.into_iter();
                    all.into_iter()
                        .find(|one| one.name() == need)
                        .unwrap_or(usual)
                }),
                helpers: fields
                    .between("helpers", 0..=3, book)
                    .and_then(|helpers| usize::try_from(helpers).ok())
                    .unwrap_or(0),
                on_the_road,
            }),
            rolls: fields.yes("rolls", true, book),
        });
    };
    let comes = fields.moments("comes", book);
    let takes = match (minutes, comes) {
        (Some(minutes), None) => Takes::Minutes(minutes),
        (None, Some(comes)) => Takes::Comes(comes),
        (None, None) => {
            if !fields.has("minutes") && !fields.has("comes") {
                book.missing(fields, "minutes", say::how_long_or_when());
            }
            return None;
        }
        (Some(_), Some(_)) => {
            book.wrong(
                fields.at("comes"),
                say::minutes_and_comes(&fields.name),
                say::write_one_of_both().to_owned(),
            );
            return None;
        }
    };
    Some(Phase {
        what,
        does: Does::Wait(Wait { waits_for, takes }),
        rolls: fields.yes("rolls", rolled, book),
    })
}

/// Least, likely and most in minutes.
fn spread_of(values: &[Minute]) -> Option<Spread> {
    match values {
        [one] => Some(Spread::sure(*one)),
        [least, likely, most] => Some(Spread::new(*least, *likely, *most)),
        _ => None,
    }
}

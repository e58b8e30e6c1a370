//! What who learns has done, under whose eyes and how often; the table that the shop writes; and
//! how a job was done, for the next who does it.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::{Value, json};
use shop::Device;
use shop::how_to::{HowStage, HowTo, how_to};
use shop::record::v1::codes::CanForm;
use shop::skills::{Skills, skills};

/// Kim learns.
fn with_kim() -> Bench {
    let mut bench = Bench::new();
    bench.shop(json!({ "joined": { "person": "kim", "name": Device::words("Kim Oru"), "roles": ["apprentice"] } }));
    bench
}

fn as_person(bench: &Bench, who: &str) -> Skills {
    let caller = bench.service.caller(Some(who), "test").unwrap();
    bench.service.look(&caller, skills).unwrap()
}

/// Kim takes the grille off and puts it back; somebody else checks it.
fn by_kim(bench: &mut Bench, checked_by: Option<&str>) -> String {
    let order = bench.open("Joe Field", "Tessel Van", "TB 100");
    bench.by("kim");
    bench.declare(&order, "grille", ("cover", "body", "outside"), 1);
    bench.clock.later(3);
    bench.move_to(&order, "grille", "off");
    bench.clock.later(3);
    bench.move_to(&order, "grille", "on");
    if let Some(who) = checked_by {
        let view = bench.view(&order);
        let seen: Vec<_> = view.items.iter().flat_map(|item| &item.seen).collect();
        bench.by(who).tell(
            &order,
            json!({ "checked": { "check": "second-person", "items": ["grille"], "after": seen } }),
        );
    }
    bench.by("ana");
    order
}

#[test]
fn what_an_apprentice_did_is_counted_by_thing_and_by_whose_eyes() {
    let mut bench = with_kim();
    for _ in 0..2 {
        // Ben checks it as part of handing over.
        let order = by_kim(&mut bench, None);
        bench.finish(&order);
        bench.hand_over(&order).unwrap();
    }
    let order = by_kim(&mut bench, Some("ana"));
    bench.finish(&order);
    bench.hand_over(&order).unwrap();
    let seen = as_person(&bench, "ana");
    let [kim] = seen.learners.as_slice() else {
        panic!("{seen:?}")
    };
    let [did] = kim.did.as_slice() else {
        panic!("{kim:?}")
    };
    assert_eq!(
        (kim.name.as_str(), did.times, did.unseen),
        ("Kim Oru", 3, 0)
    );
    assert_eq!(
        did.eyes,
        [("Ana Reis".to_owned(), 1), ("Ben Coe".to_owned(), 3)]
    );
    assert_eq!(did.orders, [1003, 1002, 1001]);
}

fn told(person: &str, skill: &str, can: &str, seen: &[String]) -> Value {
    json!({ "skill-told": { "person": person, "skill": Device::words(skill), "can": can, "after": seen } })
}

#[test]
fn the_shop_writes_its_table_and_the_last_word_stands() {
    let mut bench = with_kim();
    bench.shop(told("kim", "Timing belt", "watched", &[]));
    let table = as_person(&bench, "ana");
    let [row] = table.rows.as_slice() else {
        panic!("{table:?}")
    };
    let kim = table
        .people
        .iter()
        .position(|(person, _)| person == "kim")
        .unwrap();
    assert_eq!(
        (row.skill.as_str(), row.cells[kim].can),
        ("Timing belt", Some(CanForm::Watched))
    );
    bench.shop(told("kim", "Timing belt", "alone", &row.cells[kim].seen));
    let table = as_person(&bench, "ana");
    assert_eq!(table.rows[0].cells[kim].can, Some(CanForm::Alone));
    assert_eq!(table.rows[0].cells[kim].by, "Ana Reis, 2026-11-25");
    // Who learns sees their own and writes nothing.
    let own = as_person(&bench, "kim");
    assert_eq!(own.people, [("kim".to_owned(), "Kim Oru".to_owned())]);
    assert!(!own.may_write);
    let refused = bench.by("kim").send(
        "shop",
        "shop_fact",
        told("kim", "Timing belt", "teaches", &[]),
    );
    assert!(refused.unwrap_err().what.contains("owner"));
}

#[test]
fn a_job_is_told_as_it_was_done_with_what_was_undone_left_out() {
    let mut bench = with_kim();
    let order = by_kim(&mut bench, None);
    bench.declare(&order, "horn", ("part", "electrical", "outside"), 1);
    let mistaken = bench.move_to(&order, "horn", "off");
    bench.tell(
        &order,
        json!({ "undo": { "command": mistaken.command_id, "part": null } }),
    );
    let number = bench.number(&order);
    let how = bench.look(|snap| how_to(snap, number)).unwrap();
    let rows = |stages: &[HowStage]| -> Vec<String> {
        let rows = stages.iter().flat_map(|stage| &stage.rows);
        rows.map(|row| format!("{} {}", row.label, row.done))
            .collect()
    };
    assert_eq!(rows(&how.off), ["grille off"]);
    assert_eq!(rows(&how.back), ["grille on"]);
    assert_eq!(how.off[0].places, ["outside"]);
    assert_eq!(how.vehicle, "Tessel Van");
}

fn sheet(bench: &Bench, order: &str) -> HowTo {
    let number = bench.number(order);
    bench.look(|snap| how_to(snap, number)).unwrap()
}

fn noted(note: &str, stage: Option<&str>, words: Option<&str>, after: &[String]) -> Value {
    let words = words.map_or(Value::Null, Device::words);
    json!({ "how-to-noted": { "note": note, "stage": stage, "words": words, "after": after } })
}

/// What stands beside the first stage off, in sequence.
fn beside(how: &HowTo) -> Vec<&str> {
    let notes = how.off[0].notes.iter();
    notes.map(|note| note.words.as_str()).collect()
}

#[test]
fn what_people_write_on_a_sheet_stands_beside_its_stage_and_is_written_better() {
    let mut bench = with_kim();
    let order = by_kim(&mut bench, None);
    bench.finish(&order);
    bench.hand_over(&order).unwrap();
    let off = sheet(&bench, &order).off[0].told_by.clone();

    // Afterwards, when the vehicle has long left.
    bench.tell(&order, json!({ "how-to-titled": { "words": Device::words("Grille, clips kept whole"), "after": [] } }));
    bench.tell(
        &order,
        noted("pry", Some(&off), Some("Pry at the lower edge"), &[]),
    );
    bench.clock.later(1);
    bench.by("kim").tell(
        &order,
        noted("warm", Some(&off), Some("Warm the clips in winter"), &[]),
    );
    bench.tell(&order, noted("whole", None, Some("Two hands"), &[]));
    let how = sheet(&bench, &order);
    assert_eq!(how.title.as_deref(), Some("Grille, clips kept whole"));
    assert_eq!(
        beside(&how),
        ["Pry at the lower edge", "Warm the clips in winter"]
    );
    assert_eq!(how.off[0].notes[1].by, "Kim Oru");
    assert_eq!(how.notes[0].words, "Two hands");
    assert!(how.back.iter().all(|stage| stage.notes.is_empty()));

    // The other way round, one written better, one taken off.
    bench.tell(
        &order,
        json!({ "how-to-sequenced": { "notes": ["warm", "pry"], "after": how.sequence_told_by } }),
    );
    let seen = how.off[0].notes[0].told_by.clone();
    bench.tell(
        &order,
        noted("pry", Some(&off), Some("Pry at the upper edge"), &seen),
    );
    let seen = how.notes[0].told_by.clone();
    bench.tell(&order, noted("whole", None, None, &seen));
    let how = sheet(&bench, &order);
    assert_eq!(
        beside(&how),
        ["Warm the clips in winter", "Pry at the upper edge"]
    );
    assert!(how.notes.is_empty());
    // It opens nothing and calls nobody back.
    let view = bench.view(&order);
    assert!(view.alarms.is_empty(), "{:?}", view.alarms);
    let told: Vec<&str> = view.story.iter().map(|line| line.text.as_str()).collect();
    assert!(
        told.contains(&"How it was done, note: Pry at the upper edge"),
        "{told:?}"
    );
}

#[test]
fn a_note_whose_stage_was_taken_back_is_of_the_whole_job() {
    let mut bench = with_kim();
    let order = by_kim(&mut bench, None);
    bench.declare(&order, "horn", ("part", "electrical", "outside"), 1);
    let mistaken = bench.move_to(&order, "horn", "off").command_id;
    bench.tell(
        &order,
        noted("horn", Some(&mistaken), Some("Mind the bracket"), &[]),
    );
    bench.tell(
        &order,
        json!({ "undo": { "command": mistaken, "part": null } }),
    );
    let how = sheet(&bench, &order);
    assert_eq!(how.notes[0].words, "Mind the bracket");
    assert!(how.off.iter().all(|stage| stage.notes.is_empty()));
}

const MAP: &str = "vehicle = \"Tessel Van\"\n\n[items.grille]\nis = \"cover\"\nplace = \"outside\"\nminutes = { out = 2, back = 3 }\n\n[items.lamp]\nis = \"part\"\nneeds = [\"grille off\"]\nplace = \"outside\"\nminutes = { out = 1, back = 1 }\n";

/// What happened stands beside the version of the map that it was worked by, whatever became of
/// the map since.
#[test]
fn a_job_stands_beside_the_map_it_was_worked_by() {
    let mut bench = Bench::new();
    let keep = |bench: &mut Bench, version: u32, text: &str| {
        let drafted = json!({ "drafted": { "version": version, "text": Device::document(text, "application/toml") } });
        bench.send("map:tessel-van", "map_fact", drafted).unwrap();
    };
    keep(&mut bench, 1, MAP);
    let work = |bench: &mut Bench, sequence: &[&str]| -> HowTo {
        let order = bench.open("Joe Field", "Tessel Van", "TB 100");
        let adopted =
            json!({ "adopt": { "map": "tessel-van", "version": 1, "needs": [], "work": [] } });
        bench.ask(&order, adopted).unwrap();
        for item in sequence {
            bench.declare(&order, item, ("part", "body", "outside"), 1);
            bench.clock.later(3);
            bench.move_to(&order, item, "off");
        }
        sheet(bench, &order)
    };
    let as_said = work(&mut bench, &["grille", "lamp"]);
    assert!(as_said.beside_map.unwrap().apart.is_empty());
    keep(
        &mut bench,
        2,
        &MAP.replace("needs = [\"grille off\"]\n", ""),
    );
    let beside = work(&mut bench, &["lamp", "horn", "grille"])
        .beside_map
        .unwrap();
    assert_eq!((beside.map.as_str(), beside.version), ("tessel-van", 1));
    assert_eq!(
        beside.apart,
        [
            "lamp came off; the map says first: grille off",
            "not on the map: horn"
        ]
    );
    let without = without_a_map(&mut bench);
    assert_eq!(without.beside_map, None);
}

/// A job on which nobody worked by a map.
fn without_a_map(bench: &mut Bench) -> HowTo {
    let order = bench.open("Joe Field", "Tessel Van", "TB 100");
    bench.declare(&order, "horn", ("part", "electrical", "outside"), 1);
    bench.move_to(&order, "horn", "off");
    sheet(bench, &order)
}

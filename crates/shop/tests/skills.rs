//! What who learns has done, under whose eyes and how often; the table that the shop writes; and
//! how a job was done, for the next who does it.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::{Value, json};
use shop::Device;
use shop::how_to::{HowStage, how_to};
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

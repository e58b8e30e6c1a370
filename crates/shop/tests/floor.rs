//! The floor built from the record: what is planned, what is left out and why, and that looking
//! at it changes nothing.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::{Value, json};
use shop::Device;
use shop::floor::{DayPlan, Days, Source, days};
use stalls::Does;
use std::sync::Arc;

/// A bench on Wednesday 25 November 2026 at eight, in a shop that is open from eight to five.
fn open_shop() -> Bench {
    let mut bench = Bench::new();
    bench.shop(hours(None, "mon-fri 08:00-12:00, 13:00-17:00"));
    bench
}

fn hours(person: Option<&str>, week: &str) -> Value {
    json!({ "hours-told": { "person": person, "week": week, "after": [] } })
}

fn days_of(bench: &Bench) -> Arc<Days> {
    bench.look(days).unwrap()
}

fn plan_of(bench: &Bench) -> Arc<DayPlan> {
    let days = days_of(bench);
    let plan = days.plan.clone();
    plan.unwrap_or_else(|| panic!("{:?} {:?}", days.missing, days.not_planned))
}

/// Why an order is left out.
fn why(bench: &Bench, order: &str) -> String {
    let number = bench.number(order);
    let days = days_of(bench);
    let left_out = days.not_planned.iter().find(|one| one.number == number);
    left_out.map_or_else(String::new, |one| one.why.clone())
}

fn told(minutes: &str, skill: Option<&str>, stall: &str) -> Value {
    json!({ "work-left": { "minutes": minutes, "least": minutes, "most": minutes, "skill": skill,
        "stall": stall, "after": [] } })
}

/// From when to when an order is worked on, as one says it.
fn at(plan: &DayPlan, number: u64) -> Vec<String> {
    let place = plan.place_of(number).unwrap();
    let say = |minute| plan.calendar.say(minute);
    let own = plan.plan.placed.iter().filter(|one| one.order == place);
    own.map(|one| format!("{} to {}", say(one.from), say(one.to)))
        .collect()
}

fn promised(bench: &mut Bench, order: &str, at: &str) {
    bench.tell(order, json!({ "promised": { "at": at } }));
}

#[test]
fn without_opening_hours_nothing_is_planned_and_that_is_said() {
    let mut bench = Bench::new();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(&order, told("60", None, "any"));
    let days = days_of(&bench);
    assert!(days.plan.is_none());
    assert_eq!(days.missing, ["no opening hours are told yet"]);
}

#[test]
fn an_order_whose_minutes_nobody_told_is_left_out_until_somebody_does() {
    let mut bench = open_shop();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    assert_eq!(
        why(&bench, &order),
        "no minutes: nobody told how long the work takes"
    );
    bench.tell(&order, told("90", None, "any"));
    let plan = plan_of(&bench);
    assert_eq!(at(&plan, 1001), ["08:00 to 09:30"]);
    assert_eq!(plan.orders[0].source, Source::Told);
    assert_eq!(why(&bench, &order), "");
    // It goes on over the break.
    bench.tell(
        &order,
        json!({ "work-left": { "minutes": "300", "least": "300", "most": "300",
        "skill": null, "stall": "lift", "after": [] } }),
    );
    assert_eq!(at(&plan_of(&bench), 1001), ["08:00 to 14:00"]);
}

#[test]
fn the_hours_on_the_price_are_minutes_with_the_doubt_that_the_record_teaches() {
    let mut bench = open_shop();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench
        .price(
            &order,
            &[
                json!({ "line": "line-1", "charge": "labour", "label": Device::words("brakes"),
            "quantity": "2", "each": "100", "payer": "customer" }),
            ],
        )
        .unwrap();
    assert_eq!(
        why(&bench, &order),
        "it waits for a yes, and nobody told when the answer comes"
    );
    bench.tell(
        &order,
        json!({ "answer-due": { "at": "2026-11-25T10:00:00Z", "after": [] } }),
    );
    let plan = plan_of(&bench);
    assert_eq!(at(&plan, 1001)[0], "08:00 to 10:00");
    bench.tell(&order, bench::consent("400"));
    let plan = plan_of(&bench);
    assert_eq!(plan.orders[0].source, Source::Price);
    let Does::Work(work) = &plan.plan.floor.orders[0].phases[0].does else {
        panic!("it waits");
    };
    let minutes = work.minutes;
    assert!(
        minutes.least < 120 && minutes.most > 120 && minutes.is_sound(),
        "{minutes:?}"
    );
    // What is to be promised is kept so often; later is kept more often.
    let offers = plan.offers(1001);
    assert!(offers.len() >= 2, "{offers:?}");
    for (offer, chance) in offers.iter().zip([0.5, 0.8, 0.9]) {
        assert!(offer.chance >= chance, "{offers:?}");
    }
    assert!(offers.is_sorted_by(|a, b| a.at < b.at && a.chance <= b.chance));
}

#[test]
fn what_is_worked_is_no_longer_left_and_when_all_is_worked_somebody_is_asked() {
    let mut bench = open_shop();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(&order, told("60", None, "any"));
    let clock = |clock: &str| json!({ "timed": { "stage": "s", "clock": clock, "book_minutes": null, "words": null } });
    bench.tell(&order, clock("opened"));
    bench.clock.later(40);
    bench.tell(&order, clock("paused"));
    assert_eq!(at(&plan_of(&bench), 1001), ["08:40 to 09:00"]);
    bench.tell(&order, clock("resumed"));
    bench.clock.later(30);
    bench.tell(&order, clock("paused"));
    assert_eq!(
        why(&bench, &order),
        "no minutes: the 60 that were told are worked"
    );
}

#[test]
fn who_is_told_does_it_who_is_away_does_not_and_what_nobody_knows_is_said() {
    let mut bench = open_shop();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(&order, told("60", Some("brakes"), "any"));
    assert_eq!(why(&bench, &order), "nobody is told to know brakes");
    bench.shop(json!({ "systems-told": { "person": "ben", "systems": ["brakes"], "after": [] } }));
    let who = |bench: &Bench| {
        let plan = plan_of(bench);
        let placed = &plan.plan.placed[0];
        plan.plan.floor.people[placed.people[0]].name.clone()
    };
    assert_eq!(who(&bench), "Ben Coe");
    bench.shop(json!({ "days-off": { "id": "off-1", "person": "ben", "first": "2026-11-25", "last": "2026-11-26" } }));
    assert_eq!(at(&plan_of(&bench), 1001), ["Fri 08:00 to Fri 09:00"]);
    bench.tell(&order, json!({ "assigned": { "person": "ana" } }));
    assert_eq!(
        why(&bench, &order),
        "Ana Reis is to do it and is not told to know brakes"
    );
    bench.shop(json!({ "systems-told": { "person": "ana", "systems": ["brakes"], "after": [] } }));
    assert_eq!(who(&bench), "Ana Reis");
    // Her own hours, and a day on which the shop is closed.
    bench.shop(hours(Some("ana"), "mon-fri 14:00-17:00"));
    assert_eq!(at(&plan_of(&bench), 1001), ["14:00 to 15:00"]);
    bench.shop(json!({ "days-off": { "id": "off-2", "person": null, "first": "2026-11-25", "last": "2026-11-25" } }));
    assert_eq!(at(&plan_of(&bench), 1001), ["Thu 14:00 to Thu 15:00"]);
    bench.shop(json!({ "days-off-ended": { "id": "off-2" } }));
    assert_eq!(at(&plan_of(&bench), 1001), ["14:00 to 15:00"]);
}

#[test]
fn who_learns_does_only_what_they_are_told_to() {
    let mut bench = open_shop();
    let orders = [
        bench.open("Ada Brandt", "Drayman", "KD 2302"),
        bench.open("Cem Okay", "Selwick", "KD 2303"),
    ];
    for order in &orders {
        bench.tell(order, told("60", None, "any"));
    }
    bench.tell(&orders[0], json!({ "assigned": { "person": "ana" } }));
    for (person, name, role) in [
        ("ben", "Ben Coe", "desk"),
        ("ana", "Ana Reis", "apprentice"),
    ] {
        bench.shop(json!({ "person-told": { "person": person, "name": Device::words(name), "roles": [role], "after": [] } }));
    }
    assert_eq!(at(&plan_of(&bench), 1001), ["08:00 to 09:00"]);
    assert_eq!(
        why(&bench, &orders[1]),
        "nobody can do it: only who learns is here"
    );
}

#[test]
fn a_part_is_waited_for_and_one_that_comes_nobody_knows_when_leaves_its_order_out() {
    let mut bench = open_shop();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(&order, told("60", None, "any"));
    bench.tell(
        &order,
        json!({ "part-needed": { "part": "p", "line": null, "item": null,
        "label": Device::words("front pads"), "number": null, "quantity": "1", "cost": null,
        "price": null, "core": null, "has_old": false } }),
    );
    let ordered = |due: Option<&str>| json!({ "part-stepped": { "part": "p", "quantity": "1", "step": "ordered", "due": due, "words": null } });
    bench.tell(&order, ordered(None));
    assert_eq!(why(&bench, &order), "no day was told for front pads");
    bench.tell(&order, ordered(Some("2026-11-26")));
    let plan = plan_of(&bench);
    // Some time on that day, while the shop is open.
    assert_eq!(at(&plan, 1001)[0], "08:00 to Thu 12:30");
    // After the days that are planned, it is not done on any of them.
    bench.tell(&order, ordered(Some("2027-02-01")));
    assert_eq!(plan_of(&bench).plan.beyond, [0]);
    bench.clock.later(70 * 24 * 60);
    let late = why(&bench, &order);
    assert!(late.starts_with("front pads was due on"), "{late}");
    bench.tell(&order, json!({ "part-stepped": { "part": "p", "quantity": "3", "step": "received", "due": null, "words": null } }));
    assert_eq!(at(&plan_of(&bench), 1001), ["08:00 to 09:00"]);
}

#[test]
fn what_cant_roll_holds_its_stall_and_keeps_others_out_of_it() {
    let mut bench = open_shop();
    let (first, second) = (
        bench.open("Ada Brandt", "Drayman", "KD 2302"),
        bench.open("Cem Okay", "Selwick", "KD 2303"),
    );
    bench.tell(&second, told("60", None, "lift"));
    assert_eq!(at(&plan_of(&bench), 1002), ["08:00 to 09:00"]);
    bench.declare(&first, "front-wheel", ("part", "wheels", "outside"), 1);
    bench.move_to(&first, "front-wheel", "off");
    assert_eq!(
        why(&bench, &first),
        "no minutes: nobody told how long the work takes"
    );
    bench.tell(
        &first,
        json!({ "stood": { "place": { "stall": "stall-1" } } }),
    );
    assert_eq!(
        why(&bench, &second),
        "every stall that suits it is held for good: By the door by 1001 Drayman"
    );
    bench.tell(&first, told("30", None, "any"));
    let plan = plan_of(&bench);
    assert_eq!(at(&plan, 1001), ["08:00 to 08:30"]);
    assert_eq!(at(&plan, 1002), ["08:30 to 09:30"]);
}

#[test]
fn looking_again_changes_nothing_until_there_is_news_or_time_passes_it_by() {
    let mut bench = open_shop();
    for (customer, minutes) in [
        ("Ada Brandt", "90"),
        ("Cem Okay", "60"),
        ("Dora Lind", "45"),
    ] {
        let order = bench.open(customer, "Drayman", "KD 2302");
        bench.tell(&order, told(minutes, None, "lift"));
    }
    let plan = plan_of(&bench);
    // News of what nothing follows from, and some minutes.
    bench.clock.later(10);
    assert!(Arc::ptr_eq(&plan, &plan_of(&bench)));
    bench.shop(json!({ "word-removed": { "name": Device::words("nothing") } }));
    assert!(Arc::ptr_eq(&plan, &plan_of(&bench)));
    // Another program comes to the same.
    let other = bench.another_program();
    let caller = shop::Caller::program();
    let theirs = other.look(&caller, days).unwrap();
    let before = theirs.plan.as_ref().unwrap().plan.sequence.clone();
    assert_eq!(before, plan.plan.sequence);
    // Nobody began: it is planned anew, with the same people and in the same sequence.
    bench.clock.later(20);
    let later = plan_of(&bench);
    assert!(!Arc::ptr_eq(&plan, &later));
    assert_eq!(later.plan.sequence, plan.plan.sequence);
    assert_eq!(later.plan.floor.now, 8 * 60 + 30);
    assert!(Arc::ptr_eq(&later, &plan_of(&bench)));
}

/// In the European Union the clocks go on at 01:00 UTC on the last Sunday of March and back at
/// 01:00 UTC on the last of October (Directive 2000/84/EC, articles 2 and 3; memory).
#[test]
fn work_over_a_change_of_the_clocks_is_as_long_as_it_is() {
    const DAY: i64 = 24 * 60;
    // From the bench's Wednesday at eight: Saturday at ten in the evening, in Lisbon.
    for (later, laid) in [
        (122 * DAY + 14 * 60, "22:00 to Sun 04:00"),
        (339 * DAY + 13 * 60, "22:00 to Sun 02:00"),
    ] {
        let mut bench = Bench::new();
        bench.clock.later(later);
        bench.shop(hours(None, "mon-sun 00:00-24:00"));
        let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
        bench.tell(&order, told("300", None, "any"));
        assert_eq!(at(&plan_of(&bench), 1001), [laid]);
    }
}

#[test]
fn a_promise_that_slips_says_what_keeps_it_and_what_that_costs_the_others() {
    let mut bench = open_shop();
    let (ana, other) = (
        bench.open("Ada Brandt", "Drayman", "KD 2302"),
        bench.open("Cem Okay", "Selwick", "KD 2303"),
    );
    // Ana is told to do both, one after the other; Ben is free.
    bench.shop(json!({ "stall-added": { "stall": "stall-2", "name": Device::words("At the back"), "sort": "lift" } }));
    for order in [&ana, &other] {
        bench.tell(order, json!({ "assigned": { "person": "ana" } }));
        bench.tell(order, told("120", None, "lift"));
        promised(&mut bench, order, "2026-11-25T10:30:00Z");
    }
    let plan = plan_of(&bench);
    let chances: Vec<f64> = plan.promises.iter().filter_map(|one| one.chance).collect();
    assert!(
        chances.contains(&1.0) && chances.contains(&0.0),
        "{chances:?}"
    );
    let [keep] = plan.to_keep.as_slice() else {
        panic!("{:?}", plan.to_keep);
    };
    assert_eq!(keep.chance, (0.0, 1.0));
    assert!(
        keep.changes
            .iter()
            .any(|change| change.contains("Ben Coe does work on")),
        "{keep:?}"
    );
    assert_eq!(keep.others, []);
    // Where nobody else is there, it costs the other promise, and where no time is left, nothing
    // keeps it.
    bench.shop(json!({ "days-off": { "id": "off", "person": "ben", "first": "2026-11-25", "last": "2026-11-25" } }));
    let plan = plan_of(&bench);
    let keep = &plan.to_keep[0];
    let others: Vec<(f64, f64)> = keep.others.iter().map(|(_, was, is)| (*was, *is)).collect();
    assert_eq!((keep.chance, others), ((0.0, 1.0), vec![(1.0, 0.0)]));
    promised(&mut bench, &other, "2026-11-25T08:30:00Z");
    let plan = plan_of(&bench);
    let keep = &plan.to_keep[0];
    assert_eq!((keep.chance, keep.changes.len()), ((0.0, 0.0), 0));
}

#[test]
fn an_order_that_is_ready_or_away_is_not_planned() {
    let mut bench = open_shop();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(&order, told("60", None, "any"));
    bench.tell(&order, json!({ "stood": { "place": "away" } }));
    assert_eq!(
        why(&bench, &order),
        "the vehicle is not here, and nobody told when it comes"
    );
}

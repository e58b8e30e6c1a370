//! What can be told of a floor beside the work itself: what a lift carries and how heavy a vehicle
//! is, stalls behind each other, helpers and road tests, vehicles that are booked; and the
//! questions that are asked of a plan without anything being written down.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::{Value, json};
use shop::Device;
use shop::floor::{
    DayPlan, Days, Further, Spread, StallNeed, Unchecked, days, roll_out, take_in, waits_apart,
};
use shop::history::history;
use shop::repair::System;
use shop::view::{CallKind, calls, day, week};
use std::sync::Arc;

/// Wednesday 25 November 2026 at eight, open from eight to five, with a second stall, which is
/// flat.
fn open_shop() -> Bench {
    let mut bench = Bench::new();
    bench.shop(json!({ "hours-told": { "person": null,
        "week": "mon-fri 08:00-12:00, 13:00-17:00", "after": [] } }));
    bench.shop(json!({ "stall-added": { "stall": "stall-2", "name": Device::words("At the back"), "sort": "flat" } }));
    bench
}

fn days_of(bench: &Bench) -> Arc<Days> {
    bench.look(days).unwrap()
}

fn plan_of(bench: &Bench) -> Arc<DayPlan> {
    let days = days_of(bench);
    let plan = days.plan.clone();
    plan.unwrap_or_else(|| panic!("{:?} {:?}", days.missing, days.not_planned))
}

fn why(bench: &Bench, order: &str) -> String {
    let number = bench.number(order);
    let days = days_of(bench);
    let left_out = days.not_planned.iter().find(|one| one.number == number);
    left_out.map_or_else(String::new, |one| one.why.clone())
}

fn told(minutes: &str, stall: &str) -> Value {
    json!({ "work-left": { "minutes": minutes, "least": minutes, "most": minutes, "skill": null,
        "stall": stall, "after": [] } })
}

/// What is done on an order, from when to when and by how many.
fn work(plan: &DayPlan, number: u64) -> Vec<String> {
    let place = plan.place_of(number).unwrap();
    let floor = &plan.plan.floor;
    let say = |minute| plan.calendar.say(minute);
    let own = plan.plan.placed.iter().filter(|one| one.order == place);
    own.map(|one| {
        let what = &floor.orders[place].phases[one.phase].what;
        let (from, to) = (say(one.from), say(one.to));
        format!("{what} {from} to {to}, {}", one.people.len())
    })
    .collect()
}

fn vehicle_of(bench: &Bench, order: &str) -> String {
    bench.view(order).row.vehicle_id.unwrap()
}

fn fitted(stall: &str, carries: Option<&str>, crosses: &[&str]) -> Value {
    json!({ "stall-fitted": { "stall": stall, "carries": carries, "clears": null,
        "crosses": crosses, "after": [] } })
}

fn figure(bench: &mut Bench, order: &str, what: &str, value: &str) {
    let vehicle = vehicle_of(bench, order);
    bench
        .send(
            &format!("vehicle:{vehicle}"),
            "vehicle_fact",
            json!({ "figure-told": { "what": what, "value": value, "after": [] } }),
        )
        .unwrap();
}

#[test]
fn a_lift_carries_what_it_was_told_to_and_what_nobody_told_is_said_to_be_unchecked() {
    let mut bench = open_shop();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(&order, told("60", "lift"));
    // Where no lift has a limit, there is nothing to check.
    assert_eq!(plan_of(&bench).orders[0].unchecked, []);
    bench.shop(fitted("stall-1", Some("2500 kg"), &[]));
    let plan = plan_of(&bench);
    assert_eq!(plan.orders[0].unchecked, [Unchecked::Weight]);
    assert_eq!(work(&plan, 1001), ["work 08:00 to 09:00, 1"]);
    figure(&mut bench, &order, "weight", "2500 kg");
    assert_eq!(plan_of(&bench).orders[0].unchecked, []);
    // A pound is 0.45359237 kg (NIST SP 811, 2008, B.8; published): 5520 lb are 2503.8 kg.
    figure(&mut bench, &order, "weight", "5520 lb");
    assert_eq!(
        why(&bench, &order),
        "it weighs 2504 kg, and the strongest lift carries 2500 kg"
    );
    // On a flat stall nobody lifts it.
    bench.tell(&order, told("60", "flat"));
    assert_eq!(work(&plan_of(&bench), 1001), ["work 08:00 to 09:00, 1"]);
    bench.tell(&order, told("60", "lift"));
    // What can't be read is not known, and so not checked.
    figure(&mut bench, &order, "weight", "heavy");
    assert_eq!(plan_of(&bench).orders[0].unchecked, [Unchecked::Weight]);
}

#[test]
fn a_vehicle_comes_in_behind_another_only_when_that_is_out() {
    let mut bench = open_shop();
    let front = bench.open("Ada Brandt", "Drayman", "KD 2302");
    let behind = bench.open("Cem Okay", "Selwick", "KD 2303");
    bench.tell(&front, told("90", "lift"));
    bench.tell(
        &front,
        json!({ "stood": { "place": { "stall": "stall-1" } } }),
    );
    bench.declare(&front, "front-wheel", ("part", "wheels", "outside"), 1);
    bench.move_to(&front, "front-wheel", "off");
    bench.tell(&behind, told("30", "flat"));
    assert_eq!(work(&plan_of(&bench), 1002), ["work 08:00 to 08:30, 1"]);
    bench.shop(fitted("stall-2", None, &["stall-1"]));
    assert_eq!(work(&plan_of(&bench), 1002), ["work 09:30 to 10:00, 1"]);
    // Stalls that lead back to themselves are no floor.
    bench.shop(fitted("stall-1", None, &["stall-2"]));
    assert_eq!(
        days_of(&bench).missing,
        ["the stalls that are crossed on the way to By the door lead back to it"]
    );
    // A stall that is no more is crossed no more.
    bench.shop(json!({ "stall-removed": { "stall": "stall-2" } }));
    assert_eq!(days_of(&bench).missing, Vec::<String>::new());
}

#[test]
fn a_helper_holds_and_hands_and_the_road_test_comes_last() {
    let mut bench = open_shop();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(
        &order,
        json!({ "work-left": { "minutes": "60", "least": "60", "most": "60", "skill": null,
            "stall": "lift", "after": [], "helpers": 1, "road": "20" } }),
    );
    let plan = plan_of(&bench);
    let all = work(&plan, 1001);
    assert_eq!(all.len(), 2);
    assert_eq!(all[0], "work 08:00 to 09:00, 2");
    assert!(all[1].starts_with("road test 09:00 to "), "{all:?}");
    // The drive is in no stall.
    assert!(plan.plan.placed.iter().any(|one| one.stall.is_none()));
    // Alone nobody can, unless somebody who learns is there to hold.
    bench.shop(json!({ "departed": { "person": "ben" } }));
    assert_eq!(
        why(&bench, &order),
        "it needs somebody to help, and nobody else is there"
    );
    bench.shop(json!({ "joined": { "person": "kim", "name": Device::words("Kim Vos"), "roles": ["apprentice"] } }));
    assert_eq!(work(&plan_of(&bench), 1001)[0], "work 08:00 to 09:00, 2");
}

#[test]
fn a_booked_vehicle_is_waited_for_and_rung_about_when_it_does_not_come() {
    let mut bench = open_shop();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(&order, told("60", "lift"));
    bench.tell(
        &order,
        json!({ "expected": { "at": "2026-11-25T10:00:00Z", "after": [] } }),
    );
    let plan = plan_of(&bench);
    let begins = |plan: &DayPlan| plan.calendar.say(plan.plan.placed[0].from);
    // Some come half an hour late: ten minutes in the mean of its triangle.
    assert_eq!(begins(&plan), "10:10");
    let seen = bench.look(day).unwrap();
    let expected: Vec<(&str, bool)> = (seen.expected.iter())
        .map(|one| (one.at.as_str(), one.late))
        .collect();
    assert_eq!(expected, [("10:00", false)]);
    assert!(seen.places.iter().all(|place| place.order.is_none()));
    let booked = bench.look(week).unwrap().days[0].booked.len();
    assert_eq!(booked, 1);
    // It does not come.
    bench.clock.later(2 * 60 + 30);
    assert_eq!(
        why(&bench, &order),
        "not here yet: it was to come 10:00, and nobody told a new time"
    );
    let rings = bench.look(calls).unwrap();
    let ring = rings.iter().find(|call| call.kind == CallKind::NotCome);
    assert_eq!(
        ring.map(|call| call.what.as_str()),
        Some("Ring Ada Brandt: was to come 10:00 and is not here")
    );
    // Another time; then it stands in a stall, and so is here.
    bench.tell(
        &order,
        json!({ "expected": { "at": "2026-11-26T09:00:00Z", "after": [] } }),
    );
    assert_eq!(begins(&plan_of(&bench)), "Thu 09:10");
    assert!(
        !bench
            .look(calls)
            .unwrap()
            .iter()
            .any(|call| call.kind == CallKind::NotCome)
    );
    bench.clock.later(1);
    bench.tell(
        &order,
        json!({ "stood": { "place": { "stall": "stall-1" } } }),
    );
    assert_eq!(begins(&plan_of(&bench)), "10:31");
    assert_eq!(bench.view(&order).row.comes, None);
}

#[test]
fn places_outside_are_told_and_a_vehicle_is_put_there() {
    let mut bench = open_shop();
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(&order, told("60", "lift"));
    let places = |bench: &Bench| plan_of(bench).plan.floor.yard_places;
    // Nobody told any: there is room enough.
    assert_eq!(places(&bench), None);
    for (stall, name) in [("out-1", "By the fence"), ("out-2", "Under the tree")] {
        bench.shop(
            json!({ "stall-added": { "stall": stall, "name": Device::words(name), "sort": "outside" } }),
        );
    }
    assert_eq!(places(&bench), Some(2));
    // Nobody works out there.
    let names = |bench: &Bench| -> Vec<String> {
        let plan = plan_of(bench);
        let stalls = plan.plan.floor.stalls.iter();
        stalls.map(|stall| stall.name.clone()).collect()
    };
    assert_eq!(names(&bench), ["By the door", "At the back"]);
    let put = |bench: &mut Bench, order: &str| {
        bench.tell(order, json!({ "stood": { "place": { "stall": "out-1" } } }));
    };
    put(&mut bench, &order);
    assert_eq!(work(&plan_of(&bench), 1001), ["work 08:00 to 09:00, 1"]);
    assert_eq!(
        bench.view(&order).row.place.as_deref(),
        Some("By the fence")
    );
    let seen = bench.look(day).unwrap();
    let shown: Vec<(&str, bool)> = (seen.places.iter())
        .map(|place| (place.called.as_str(), place.yard))
        .collect();
    assert_eq!(
        shown,
        [
            ("By the door", false),
            ("At the back", false),
            ("By the fence", true)
        ]
    );
    // It comes in and leaves its place; one of which nobody knows the work keeps it.
    assert_eq!(places(&bench), Some(2));
    let other = bench.open("Cem Okay", "Selwick", "KD 2303");
    put(&mut bench, &other);
    assert_eq!(places(&bench), Some(1));
    bench.tell(&other, json!({ "stood": { "place": "yard" } }));
    assert_eq!(places(&bench), Some(1));
    // What can't roll is not worked on out there.
    bench.declare(&order, "front-wheel", ("part", "wheels", "outside"), 1);
    bench.move_to(&order, "front-wheel", "off");
    assert_eq!(
        why(&bench, &order),
        "it stands outside and can't roll: nobody works on it there"
    );
}

/// A vehicle that is to come at ten on a day.
fn booked(bench: &mut Bench, day: &str) -> String {
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(
        &order,
        json!({ "expected": { "at": format!("{day}T10:00:00Z"), "after": [] } }),
    );
    order
}

#[test]
fn how_often_bookings_come_is_said_from_twenty_on() {
    let mut bench = open_shop();
    assert_eq!(bench.look(week).unwrap().came, None);
    let orders: Vec<String> = (0..20).map(|_| booked(&mut bench, "2026-11-25")).collect();
    let ahead = booked(&mut bench, "2026-12-01");
    let comes = |bench: &mut Bench, orders: &[String]| {
        for order in orders {
            bench.tell(order, json!({ "stood": { "place": "yard" } }));
        }
    };
    bench.clock.later(2 * 60);
    comes(&mut bench, &orders[..17]);
    // The day is not over: those that are not here may still come.
    assert_eq!(
        bench.look(week).unwrap().came.unwrap(),
        "17 bookings so far: 17 came on the day, 0 on another day, 0 not at all: \
         too few to tell, from 20 bookings on it can be said"
    );
    bench.clock.later(24 * 60);
    comes(&mut bench, &orders[17..19]);
    // 3 of 20 with z = 1.2816 (Wilson 1927, memory): 0.0747 and 0.2784.
    let came = bench.look(week).unwrap().came;
    assert_eq!(
        came.unwrap(),
        "20 bookings so far: 17 came on the day, 2 on another day, 1 not at all. \
         In the long run 7 to 28 in 100 do not come on their day."
    );
    // One that is called off before its day does not count.
    bench
        .ask(
            &ahead,
            json!({ "void": { "words": Device::words("called off") } }),
        )
        .unwrap();
    bench.clock.later(10 * 24 * 60);
    let seen = bench.look(|snap| history(snap, None)).unwrap();
    let part = seen
        .parts
        .iter()
        .find(|part| part.id == "bookings")
        .unwrap();
    let figures: Vec<(&str, usize)> = (part.figures.iter())
        .map(|one| (one.name.as_str(), one.orders.len()))
        .collect();
    assert_eq!(
        figures,
        [
            ("Came on the day", 17),
            ("Came on another day", 2),
            ("Did not come", 1)
        ]
    );
    assert!(
        part.figures[0]
            .words
            .starts_with("17 of 20; in the long run ")
    );
    assert_eq!(part.figures[2].orders, [bench.number(&orders[19])]);
}

#[test]
fn one_more_today_is_answered_by_what_it_does_to_the_others() {
    let mut bench = open_shop();
    let further = |minutes: i64| Further {
        minutes: Spread::sure(minutes),
        stall: StallNeed::Lift,
        skill: None,
        helpers: 0,
        comes: None,
        wanted: Some("2026-11-25T17:00:00Z".parse().unwrap()),
    };
    // An empty shop takes it.
    let found = bench.look(|snap| take_in(snap, &further(120))).unwrap();
    let found = found.unwrap();
    assert_eq!(
        (found.own.say.as_str(), found.own.chance),
        ("10:00", Some(1.0))
    );
    assert_eq!(found.others, []);
    // A shop whose only lift is promised until four does not.
    let order = bench.open("Ada Brandt", "Drayman", "KD 2302");
    bench.tell(&order, told("420", "lift"));
    bench.tell(
        &order,
        json!({ "promised": { "at": "2026-11-25T16:30:00Z" } }),
    );
    let found = bench.look(|snap| take_in(snap, &further(120))).unwrap();
    let found = found.unwrap();
    let kept = found.own.chance.unwrap() >= 0.5;
    let spared = found
        .others
        .iter()
        .all(|one| one.chance.is_none_or(|(was, is)| is >= was));
    assert!(!(kept && spared), "{found:?}");
    // Nothing of it was written down.
    assert_eq!(plan_of(&bench).orders.len(), 1);
    let nobody = Further {
        skill: Some(System::Brakes),
        ..further(60)
    };
    let found = bench.look(|snap| take_in(snap, &nobody)).unwrap();
    assert_eq!(found.unwrap_err(), ["nobody is told to know brakes"]);
}

#[test]
fn buttoning_up_is_worth_it_where_others_wait_for_the_stall() {
    let mut bench = open_shop();
    let van = bench.open("Ada Brandt", "Drayman van", "KD 2302");
    bench.tell(
        &van,
        json!({ "stood": { "place": { "stall": "stall-1" } } }),
    );
    bench.declare(&van, "front-wheel", ("part", "wheels", "outside"), 1);
    bench.move_to(&van, "front-wheel", "off");
    bench.tell(&van, told("60", "any"));
    let hatch = bench.open("Cem Okay", "Selwick", "KD 2303");
    bench.tell(&hatch, told("60", "lift"));
    bench.tell(
        &hatch,
        json!({ "promised": { "at": "2026-11-25T15:00:00Z" } }),
    );
    // Its part comes on Friday, and nobody else gets onto the lift until then.
    assert!(!waits_apart(&plan_of(&bench), 1001));
    bench.tell(
        &van,
        json!({ "part-needed": { "part": "p", "line": null, "item": null,
            "label": Device::words("wheel bearing"), "number": null, "quantity": "1", "cost": null,
            "price": null, "core": null, "has_old": false } }),
    );
    bench.tell(
        &van,
        json!({ "part-stepped": { "part": "p", "quantity": "1", "step": "ordered",
            "due": "2026-11-27", "words": null } }),
    );
    assert!(waits_apart(&plan_of(&bench), 1001));
    let (up, again) = (Spread::new(25, 35, 50), Spread::new(20, 30, 40));
    let found = bench.look(|snap| roll_out(snap, 1001, up, again)).unwrap();
    let found = found.unwrap();
    assert!(found.broken.0 - found.broken.1 > 0.8, "{:?}", found.broken);
    let [other] = found.others.as_slice() else {
        panic!("{:?}", found.others);
    };
    assert_eq!(other.number, 1002);
    let (was, is) = other.chance.unwrap();
    assert!(was < 0.1 && is > 0.9, "{other:?}");
    assert!(found.own.work.iter().any(|line| line.what == "button up"));
    let found = bench.look(|snap| roll_out(snap, 1002, up, again)).unwrap();
    assert_eq!(
        found.unwrap_err(),
        ["it never waits in its stall while it can't roll"]
    );
}

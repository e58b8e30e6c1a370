//! What finished work says of itself: time against book, snags, comebacks, declined work; each
//! with the orders behind it.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::json;
use shop::Device;
use shop::history::{Figure, History, Part, history};
use shop::repair::VehicleId;

const VEHICLE: &str = "Tessel Van";

fn seen(bench: &Bench) -> History {
    bench.look(|snap| history(snap, None)).unwrap()
}

fn as_person(bench: &Bench, who: &str) -> History {
    let caller = bench.service.caller(Some(who), "test").unwrap();
    bench
        .service
        .look(&caller, |snap| history(snap, None))
        .unwrap()
}

fn part<'h>(history: &'h History, id: &str) -> &'h Part {
    history.parts.iter().find(|part| part.id == id).unwrap()
}

fn only(part: &Part) -> &Figure {
    let [one] = part.figures.as_slice() else {
        panic!("{:?}", part.figures)
    };
    one
}

/// A stage of four screws out, by the book 10 minutes, that took so many; then all goes back.
fn timed(bench: &mut Bench, minutes: i64, snapped: bool) -> u64 {
    let order = bench.open("Joe Field", VEHICLE, "TB 100");
    bench.declare(&order, "tray-screws", ("fasteners", "body", "below"), 4);
    bench.tell(
        &order,
        json!({ "size-told": { "item": "tray-screws", "size": "M6x16", "after": [] } }),
    );
    let clock = |clock: &str| json!({ "timed": { "stage": "stage-1", "clock": clock, "book_minutes": "10", "words": null } });
    bench.tell(&order, clock("opened"));
    bench.clock.later(minutes);
    let view = bench.view(&order);
    let moves = json!([{ "item": "tray-screws", "at": [1, 2, 3, 4], "after": view.items[0].seen,
        "left": { "state": "out", "piece": "original" }, "container": null }]);
    bench.tell(
        &order,
        json!({ "moved": { "stage": "stage-1", "moves": moves } }),
    );
    if snapped {
        let snag = Device::name();
        bench.tell(
            &order,
            json!({ "snag-found": { "snag": snag, "item": "tray-screws", "at": [2], "what": "stuck",
            "sits": null, "words": null, "photos": [], "moves": [] } }),
        );
        bench.tell(&order, json!({ "snag-resolved": { "snag": snag, "how": "as-before", "words": null, "calculation": null, "moves": [] } }));
    }
    bench.clock.later(2);
    bench.move_to(&order, "tray-screws", "tight");
    bench.finish(&order);
    bench.hand_over(&order).unwrap();
    bench.number(&order)
}

/// The vehicle of an order comes in again.
fn back(bench: &mut Bench, order: &str) -> String {
    let vehicle = bench.view(order).row.vehicle_id.unwrap();
    let customer = bench
        .look(|snap| {
            let vehicle = snap.world().vehicle(&VehicleId::new(&vehicle))?;
            Ok(vehicle.customer().unwrap().as_str().to_owned())
        })
        .unwrap();
    let again = Device::name();
    bench.open_again(&again, &vehicle, &customer);
    again
}

#[test]
fn too_few_say_so_and_enough_say_where_most_lie() {
    let mut bench = Bench::new();
    let first = timed(&mut bench, 8, false);
    let stages = seen(&bench);
    let few = only(part(&stages, "stages"));
    assert_eq!(
        (few.name.as_str(), few.words.as_str()),
        ("Fasteners out", "1 timed stage: too few to tell")
    );
    assert_eq!(
        (few.spread, few.orders.as_slice()),
        (None, [first].as_slice())
    );
    for minutes in [9, 10, 12, 20] {
        timed(&mut bench, minutes, false);
    }
    let stages = seen(&bench);
    let many = only(part(&stages, "stages"));
    // 0.8, 0.9, 1.0, 1.2, 2.0: the middle one, and the neighbours in proportion.
    let (low, middle, high) = many.spread.unwrap();
    assert!((low - 0.84).abs() < 1e-9 && (middle - 1.0).abs() < 1e-9 && (high - 1.68).abs() < 1e-9);
    assert_eq!(many.orders.len(), 5);
    assert_eq!(only(part(&stages, "months")).name, "Nov 2026");
    let of_kind = only(part(&stages, "kinds"));
    assert_eq!(
        (of_kind.name.as_str(), of_kind.spread),
        (VEHICLE, many.spread)
    );
    assert_eq!(of_kind.orders, many.orders);
}

#[test]
fn times_by_person_are_for_the_owner_alone() {
    let mut bench = Bench::new();
    timed(&mut bench, 8, false);
    let owner = as_person(&bench, "ana");
    assert_eq!(only(part(&owner, "people")).name, "Ana Reis");
    let desk = as_person(&bench, "ben");
    assert!(desk.parts.iter().all(|part| part.id != "people"));
    let nobody = bench
        .service
        .look(&bench.service.caller(None, "test").unwrap(), |snap| {
            history(snap, None)
        })
        .unwrap();
    assert!(
        nobody
            .parts
            .iter()
            .all(|part| part.id != "quotes" && part.id != "people")
    );
}

#[test]
fn snags_are_counted_by_pieces_with_their_spread() {
    let mut bench = Bench::new();
    timed(&mut bench, 8, true);
    let seen_once = seen(&bench);
    let few = only(part(&seen_once, "snags"));
    assert_eq!(few.name, "M6x16, metal not told");
    assert_eq!(few.words, "1 of 4: too few to tell, it takes 20");
    for _ in 0..4 {
        timed(&mut bench, 8, false);
    }
    let all = seen(&bench);
    let (low, at, high) = only(part(&all, "snags")).spread.unwrap();
    assert!((at - 5.0).abs() < 1e-9, "1 of 20");
    assert!(low > 0.0 && low < 5.0 && high > 5.0 && high < 20.0);
}

#[test]
fn declined_work_is_followed_to_the_visit_that_did_it() {
    let mut bench = Bench::new();
    let order = bench.open("Joe Field", VEHICLE, "TB 100");
    bench.tell(&order, json!({ "declined": { "entries": [Device::words("Rear brake pads")], "snags": [], "items": [], "at": [],
        "words": Device::words("not this time"), "signature": null } }));
    bench.finish(&order);
    bench.hand_over(&order).unwrap();
    let before = seen(&bench);
    let figure = only(part(&before, "declined"));
    assert_eq!(figure.words, "declined 1 time, not come back yet");
    // The same vehicle comes again, and it is on the price.
    let again = back(&mut bench, &order);
    bench
        .ask(&again, json!({ "price": { "entries": [{ "line": "line-1", "charge": "labour",
            "label": Device::words("rear brake  pads"), "quantity": "1", "each": "100", "payer": "customer" }] } }))
        .unwrap();
    let after = seen(&bench);
    let figure = only(part(&after, "declined"));
    assert_eq!(figure.words, "declined 1 time, came back 1 time");
    assert_eq!(figure.orders, [bench.number(&again), bench.number(&order)]);
}

#[test]
fn a_line_that_goodwill_pays_is_a_comeback_with_the_visit_before() {
    let mut bench = Bench::new();
    let order = bench.open("Joe Field", VEHICLE, "TB 100");
    bench.finish(&order);
    bench.hand_over(&order).unwrap();
    assert!(part(&seen(&bench), "comebacks").figures.is_empty());
    let again = back(&mut bench, &order);
    bench.tell(&again, json!({ "line-opened": { "line": "line-2", "complaint": Device::words("still squeals"), "payer": "goodwill" } }));
    bench.tell(&again, json!({ "line-worded": { "line": "line-2", "text": "cause", "words": Device::words("shim left out"), "after": [] } }));
    bench.tell(&again, json!({ "line-worded": { "line": "line-2", "text": "correction", "words": Device::words("shim put in"), "after": [] } }));
    bench.clock.later(60);
    bench.finish(&again);
    bench.hand_over(&again).unwrap();
    let found = seen(&bench);
    let figure = only(part(&found, "comebacks"));
    assert_eq!(figure.orders, [bench.number(&again), bench.number(&order)]);
    assert_eq!(
        figure.words,
        "1 order of 2: too few to tell how often; 1 not priced"
    );
    // What it cost is not for everybody.
    let nobody = bench.service.caller(None, "test").unwrap();
    let seen = bench.service.look(&nobody, |snap| history(snap, None));
    let seen = seen.unwrap();
    let figure = only(part(&seen, "comebacks"));
    assert_eq!(figure.words, "1 order of 2: too few to tell how often");
}

#[test]
fn whose_torques_were_used_is_told_and_where_nobody_gave_one() {
    let mut bench = Bench::new();
    let first = timed(&mut bench, 8, false);
    let found = seen(&bench);
    let figure = only(part(&found, "torques"));
    assert_eq!(
        (figure.name.as_str(), figure.words.as_str()),
        ("No torque told", "1 group on 1 order")
    );
    assert_eq!(figure.orders, [first]);
}

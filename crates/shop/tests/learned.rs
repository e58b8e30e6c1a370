//! A map made from a finished order, and bettered by the next of the same vehicle.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::seen;
use bench::seen::learned;

use bench::Bench;
use map::{Ground, Map, Weight};
use serde_json::json;
use shop::planning::Learned;
use shop::repair::ItemId;
use shop::{Device, TroubleKind};

const VEHICLE: &str = "Small Van 1.4";

/// An order in which these came off in turn, a minute apart, by who is named.
fn worked(bench: &mut Bench, off: &[(&str, &str)]) -> u64 {
    let order = bench.open("Joe Field", VEHICLE, "TB 100");
    for (_, item) in off {
        bench.declare(&order, item, ("cover", "body", "cabin"), 1);
    }
    for (who, item) in off {
        bench.clock.later(1);
        bench.by(who).move_to(&order, item, "off");
    }
    bench.by("ana");
    bench.number(&order)
}

fn taught(bench: &Bench, number: u64) -> Learned {
    learned(&bench.service, number, VEHICLE).unwrap()
}

/// The map as it can be planned by: nothing in it is wrong.
fn sound(text: &str) -> Map {
    let read =
        map::read("learned.toml", text).unwrap_or_else(|troubles| panic!("{troubles:?}\n{text}"));
    assert!(read.warnings.is_empty(), "{:?}", read.warnings);
    read.map
}

fn keep(bench: &mut Bench, learned: &Learned) {
    let text = Device::document(&learned.text, "application/toml");
    let fact = json!({ "drafted": { "version": learned.from + 1, "text": text } });
    bench
        .send(&format!("map:{}", learned.map), "map_fact", fact)
        .unwrap();
}

fn grounds(map: &Map) -> Vec<String> {
    let said = |pair: map::Pair| {
        let how = match pair.ground {
            Ground::Stated => "stated".to_owned(),
            Ground::Seen { times, people } => format!("seen {times} times by {people}"),
            Ground::BothWays { there, back } => format!("both ways, {there} and {back}"),
        };
        format!("{} before {}: {how}", pair.first, pair.second)
    };
    map.pairs().into_iter().map(said).collect()
}

#[test]
fn one_order_makes_a_map_of_the_sequence_seen_once() {
    let mut bench = Bench::new();
    let number = worked(
        &mut bench,
        &[("ana", "grip"), ("ana", "panel"), ("ana", "lamp")],
    );
    let made = taught(&bench, number);
    assert_eq!((made.from, made.things), (0, 3));
    let map = sound(&made.text);
    assert_eq!(map.vehicle, VEHICLE);
    let lamp = ItemId::new("lamp");
    let once = Ground::Seen {
        times: 1,
        people: 1,
    };
    assert_eq!(map.seen_first(&lamp), [(ItemId::new("panel"), once)].into());
    assert!(map.undecided().is_empty(), "once seen, nothing is asked");
    assert!(
        made.text
            .contains("# From order 1001: what it needs is only what was seen."),
        "{}",
        made.text
    );
    assert_eq!(map.items[&lamp].zone.as_deref(), Some("cabin"));
    // Nothing was kept by looking.
    assert!(seen::maps(&bench.service).unwrap().is_empty());
}

#[test]
fn the_next_order_betters_it_and_only_what_is_undecided_is_asked() {
    let mut bench = Bench::new();
    let first = worked(
        &mut bench,
        &[("ana", "grip"), ("ana", "panel"), ("ana", "lamp")],
    );
    let made = taught(&bench, first);
    keep(&mut bench, &made);
    let second = worked(
        &mut bench,
        &[
            ("ben", "panel"),
            ("ben", "grip"),
            ("ben", "lamp"),
            ("ana", "aerial"),
        ],
    );
    let better = taught(&bench, second);
    assert_eq!((&better.map, better.from, better.things), (&made.map, 1, 4));
    let map = sound(&better.text);
    assert_eq!(
        grounds(&map),
        [
            "grip before aerial: seen 1 times by 2",
            "grip before lamp: seen 2 times by 2",
            "grip before panel: both ways, 1 and 1",
            "lamp before aerial: seen 1 times by 2",
            "panel before aerial: seen 1 times by 2",
            "panel before lamp: seen 2 times by 2",
        ]
    );
    let asked = map.undecided();
    assert_eq!(asked.len(), 1);
    assert_eq!(
        (asked[0].first.as_str(), asked[0].second.as_str()),
        ("grip", "panel")
    );
    // The same order again is no second witness.
    keep(&mut bench, &better);
    let again = taught(&bench, second);
    assert_eq!(grounds(&sound(&again.text)), grounds(&map));
}

#[test]
fn what_a_person_stated_goes_before_what_was_seen() {
    let mut bench = Bench::new();
    let number = worked(&mut bench, &[("ana", "grip"), ("ana", "panel")]);
    let made = taught(&bench, number);
    let panel = |needs: &str| format!("[items.panel]\nis = \"cover\"\nneeds = {needs}\n");
    let stated = format!(
        "vehicle = \"{VEHICLE}\"\n{}[items.grip]\nis = \"cover\"\nneeds = [\"panel off\"] # it hooks behind\n",
        panel("[]")
    );
    keep(
        &mut bench,
        &Learned {
            text: stated.clone(),
            ..made
        },
    );
    let after = taught(&bench, number);
    let map = sound(&after.text);
    assert!(
        after.text.starts_with(&stated),
        "what was written stays: {}",
        after.text
    );
    assert_eq!(grounds(&map), ["panel before grip: stated"]);
    assert!(map.undecided().is_empty());
}

#[test]
fn an_order_that_teaches_nothing_is_told() {
    let mut bench = Bench::new();
    let trouble = |bench: &Bench, number| learned(&bench.service, number, VEHICLE).unwrap_err();
    assert_eq!(trouble(&bench, 4711).kind, TroubleKind::NotFound);
    let order = bench.open("Joe Field", VEHICLE, "TB 100");
    bench.declare(&order, "grip", ("cover", "body", "cabin"), 1);
    let number = bench.number(&order);
    let nothing = trouble(&bench, number);
    assert!(
        nothing.what.contains("") && nothing.to_string().contains("nothing came off"),
        "{nothing}"
    );
    // What was found missing at the walk-round did not come off here.
    bench.tell(
        &order,
        json!({ "found": { "moves": [{ "item": "grip", "at": [1], "after": [],
        "left": { "state": "off", "piece": "original" }, "container": null }] } }),
    );
    assert_eq!(trouble(&bench, number).kind, TroubleKind::NotFound);
}

#[test]
fn a_map_with_errors_is_bettered_as_far_as_it_is_toml() {
    let mut bench = Bench::new();
    let number = worked(&mut bench, &[("ana", "grip"), ("ana", "panel")]);
    let made = taught(&bench, number);
    let wrong = made.text.replace("is = \"cover\"", "is = \"cver\"");
    let (_, troubles) = map::look("a", &wrong);
    assert!(
        troubles
            .iter()
            .any(|trouble| trouble.weight == Weight::Error)
    );
    keep(
        &mut bench,
        &Learned {
            text: wrong,
            ..made
        },
    );
    let next = worked(&mut bench, &[("ben", "panel"), ("ben", "shelf")]);
    let better = taught(&bench, next);
    assert!(better.text.contains("[items.shelf]"), "{}", better.text);
}

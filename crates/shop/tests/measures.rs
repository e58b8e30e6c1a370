//! What is measured on nearly every vehicle, from one visit to the next.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::json;
use shop::measures::{in_lines, measures};
use shop::repair::{Language, OrderId};
use shop::say::Tongue;

#[test]
fn a_reading_stands_beside_the_one_before_and_the_least_that_is_allowed() {
    let mut bench = Bench::new();
    let first = bench.open("Ines Duarte", "Small Van", "A 1");
    let vehicle = bench.view(&first).row.vehicle_id.unwrap();
    let customer = "c";
    let read = |what: &str, value: &str| {
        json!({ "read-off": { "id": shop::Device::name(), "item": null, "what": what, "value": value,
            "temperature": null, "after": [] } })
    };
    bench.tell(&first, read("brake pad front left", "7 mm"));
    bench.tell(&first, read("tyre tread rear left", "5 mm"));
    bench.clock.later(60 * 24 * 200);
    bench.open_again("second", &vehicle, customer);
    bench.tell("second", read("brake pad front left", "4 mm"));
    bench.clock.later(1);
    // Read once more: the last word stands.
    bench.tell("second", read("brake pad front left", "2.5 mm"));
    let pads = |bench: &Bench| {
        let all = bench
            .look(|snap| measures(snap, &OrderId::new("second")))
            .unwrap();
        all[0].clone()
    };
    let left = pads(&bench).each[0].clone();
    assert_eq!(left.now.as_deref(), Some("2.5 mm"));
    assert_eq!(left.before.unwrap().0, "7 mm");
    // Nobody told what is allowed: it is not judged.
    assert!(!left.below);
    let least = |value: &str| json!({ "figure-told": { "what": "least brake pad front", "value": value, "after": [] } });
    let stream = format!("vehicle:{vehicle}");
    bench.send(&stream, "vehicle_fact", least("3 mm")).unwrap();
    let told = pads(&bench);
    assert_eq!(told.least.as_deref(), Some("3 mm"));
    assert!(told.each[0].below, "2.5 mm is below 3 mm");
    assert!(!told.each[1].below, "what was not read is not judged");
    let lines = bench
        .look(|snap| in_lines(Tongue::of(Language::English), snap, &OrderId::new("second")))
        .unwrap();
    assert_eq!(lines.len(), 1);
    assert_eq!((&*lines[0].value, lines[0].below), ("2.5 mm", true));
}

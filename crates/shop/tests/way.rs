//! How much was off while an order was worked on.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::json;
use shop::repair::OrderId;
use shop::view::way_so_far;

#[test]
fn what_is_off_is_counted_step_by_step_and_by_the_clock_where_one_ran() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    let way = |bench: &Bench| {
        let id = OrderId::new(order.as_str());
        bench.look(|snap| way_so_far(snap, &id)).unwrap()
    };
    assert!(way(&bench).done.is_empty());
    bench.declare(&order, "tray", ("cover", "body", "below"), 1);
    bench.declare(&order, "screws", ("fasteners", "body", "below"), 6);
    bench.declare(&order, "rag", ("put-in", "oil", "below"), 1);
    bench.move_to(&order, "screws", "out");
    bench.move_to(&order, "tray", "off");
    // What is put in is inside, not off.
    bench.move_to(&order, "rag", "inside");
    let steps = way(&bench);
    assert!(!steps.timed, "no clock ran, and all was told at once");
    assert_eq!(steps.done, [(1.0, 1), (2.0, 2), (3.0, 2)]);
    for (item, state, minutes) in [("tray", "on", 30), ("screws", "tight", 12)] {
        let stage = format!("stage-{item}");
        bench.tell(
            &order,
            json!({ "timed": { "stage": stage, "clock": "opened", "book_minutes": null } }),
        );
        bench.clock.later(minutes);
        let view = bench.view(&order);
        let known = view.items.iter().find(|known| known.item == item).unwrap();
        let moves = json!([{ "item": item, "at": known.positions, "after": known.seen,
            "left": { "state": state, "piece": "original" }, "container": null }]);
        bench.tell(
            &order,
            json!({ "moved": { "stage": stage, "moves": moves } }),
        );
    }
    let timed = way(&bench);
    assert!(timed.timed);
    let open: Vec<u32> = timed.done.iter().map(|(_, open)| *open).collect();
    assert_eq!(open, [1, 2, 2, 1, 0]);
    let last = timed.done.last().unwrap().0;
    assert!((last - 42.0).abs() < 0.5, "{timed:?}");
}

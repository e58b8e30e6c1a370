//! How a belt lay on a finished order is known on the next vehicle of the kind.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::json;
use shop::sums::{belt_of_kind, belts_as_found};

#[test]
fn the_next_vehicle_of_the_kind_knows_how_the_belt_lay() {
    let mut bench = Bench::new();
    let first = bench.open("Ada", "Korvane Drayman 2.3", "KD 1");
    bench.declare(&first, "belt", ("belt", "drive-belt", "above"), 1);
    let outputs = json!({ "fact": "3 pulleys", "tone": "", "figures": {
        "sequence": "crank, alternator, tensioner (back)", "belt": "6PK1285", "path": null } });
    bench.tell(
        &first,
        json!({ "calculated": { "id": "n", "item": "belt", "snag": null,
        "calculator": "belt routing", "version": 1, "inputs": "{\"name-1\":\"crank\"}",
        "outputs": outputs.to_string(), "working": "" } }),
    );
    let second = bench.open("Bea", "Korvane Drayman 2.3", "KD 2");
    bench.declare(&second, "belt", ("belt", "drive-belt", "above"), 1);
    let label = bench.view(&second).items[0].label.clone();
    let known = |bench: &Bench| {
        let view = bench.view(&second);
        let found = bench.service.look(&shop::Caller::program(), |snap| {
            belt_of_kind(snap, &view, &label)
        });
        found.unwrap()
    };
    assert_eq!(known(&bench), None, "the first is not finished");
    bench.finish(&first);
    bench.hand_over(&first).unwrap();
    let (number, found) = known(&bench).expect("the first is finished now");
    assert_eq!(number, bench.number(&first));
    assert_eq!(found.sequence, "crank, alternator, tensioner (back)");
    assert_eq!(found.belt.as_deref(), Some("6PK1285"));
    assert_eq!(found.inputs["name-1"], "crank");
    // Another kind of vehicle is not told of it.
    let other = bench.open("Cleo", "Selwick Rue 1.4", "SR 1");
    bench.declare(&other, "belt", ("belt", "drive-belt", "above"), 1);
    let view = bench.view(&other);
    let look = bench.service.look(&shop::Caller::program(), |snap| {
        let here = belts_as_found(snap, view.number)?;
        Ok((here.len(), belt_of_kind(snap, &view, &label)?))
    });
    assert_eq!(look.unwrap(), (0, None));
}

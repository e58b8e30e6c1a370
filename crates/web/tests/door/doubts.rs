//! What hardly can be so, or cannot be at all, is said before it is kept; a fact that comes all
//! the same is taken.

use crate::http::{Answer, Door};
use crate::stages::{declare, opened};
use serde_json::{Value, json};
use shop::Device;

fn checked(door: &Door, parts: &[(&str, Value)]) -> Answer {
    let parts: Vec<Value> = parts
        .iter()
        .map(|(part, content)| json!({ "stream": "order:a", "who": "ana", (*part): content }))
        .collect();
    let body = Value::from(parts).to_string();
    let headers = [("Content-Type", "application/json"), ("Cookie", "who=ana")];
    door.ask("POST", "/api/commands/check", &headers, body.as_bytes())
}

fn odometer(reading: &str, at: &str) -> Value {
    json!({ "odometer": { "reading": reading, "at": at } })
}

#[test]
fn an_odometer_that_is_none_is_said_at_its_field() {
    let door = opened();
    for bad in ["abc", "-5 km", "12 L"] {
        let answer = checked(&door, &[("fact", odometer(bad, "in"))]);
        assert_eq!(answer.status, 400, "{bad}: {answer:?}");
        assert_eq!(answer.json()["where"], "0/odometer.reading");
    }
    for good in ["88,200 mi", "148200 km"] {
        let answer = checked(&door, &[("fact", odometer(good, "in"))]);
        assert_eq!(answer.status, 204, "{good}: {answer:?}");
    }
}

#[test]
fn less_on_the_way_out_than_in_is_asked_and_taken_when_said_again() {
    let door = opened();
    door.send("order:a", "fact", odometer("148200 km", "in"));
    let answer = checked(&door, &[("fact", odometer("14820 km", "out"))]);
    assert_eq!(answer.status, 422);
    let trouble = answer.json();
    assert_eq!(trouble["kind"], "doubtful");
    assert!(
        trouble["what"].as_str().unwrap().contains("148200 km"),
        "{trouble}"
    );
    door.send("order:a", "fact", odometer("14820 km", "out"));
}

#[test]
fn the_next_visit_is_held_against_the_last() {
    let door = opened();
    door.send("order:a", "fact", odometer("148200 km", "in"));
    let parts = [
        json!({ "stream": "order:b", "who": "ana", "request": { "open": { "vehicle": "v", "customer": "c" } } }),
        json!({ "stream": "order:b", "who": "ana", "fact": odometer("48300 km", "in") }),
    ];
    let body = Value::from(parts.to_vec()).to_string();
    let headers = [("Content-Type", "application/json"), ("Cookie", "who=ana")];
    let answer = door.ask("POST", "/api/commands/check", &headers, body.as_bytes());
    let trouble = answer.json();
    assert_eq!(
        (answer.status, trouble["where"].as_str()),
        (422, Some("1/odometer.reading"))
    );
    assert!(
        trouble["what"]
            .as_str()
            .unwrap()
            .contains("on the last visit"),
        "{trouble}"
    );
}

#[test]
fn a_torque_that_breaks_the_bolt_is_asked_about() {
    let door = opened();
    declare(&door, "screws", ("fasteners", "engine"), "cover screws", 4);
    let size = json!({ "size-told": { "item": "screws", "size": "M6x20", "after": [] } });
    door.send("order:a", "fact", size);
    let told = |pass: &str| {
        let pattern =
            json!({ "passes": [pass], "sequence": [], "source": Device::words("manual") });
        json!({ "torque-told": { "item": "screws", "pattern": pattern, "after": [] } })
    };
    assert_eq!(checked(&door, &[("fact", told("10 Nm"))]).status, 204);
    assert_eq!(
        checked(&door, &[("fact", told("100 Nm"))]).json()["kind"],
        "doubtful"
    );
    let zero = checked(&door, &[("fact", told("0 Nm"))]);
    assert_eq!(zero.json()["where"], "0/torque-told.pattern.passes.0");
    let other = json!({ "size-told": { "item": "screws", "size": "M8x20", "after": [] } });
    assert_eq!(
        checked(&door, &[("fact", other)]).json()["kind"],
        "doubtful"
    );
}

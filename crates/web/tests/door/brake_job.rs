//! A brake job by a map of one's own, by typed lines, and by the map learned from those lines:
//! the same is owed and the same gates are shut.

use crate::http::Door;
use crate::shop_in_words::set_up;
use crate::stages::{press, screen};
use serde_json::{Value, json};
use shop::Device;
use std::collections::{BTreeMap, BTreeSet};

const MAP: &str = include_str!("brake_job.toml");

const LINES: &str = "5 front left wheel nuts M12x1.5\nfront left wheel\n\
    2 front left caliper bolts M10\nfront left caliper\nfront left brake pads";

fn shop_with(vehicles: &[(&str, &str)]) -> Door {
    let door = Door::open();
    set_up(&door);
    let name = json!({ "declared": { "texts": { "name": Device::words("Ada") } } });
    door.send("customer:c", "customer_fact", name);
    for (id, label) in vehicles {
        let texts = json!({ "label": Device::words(label) });
        let declared = json!({ "declared": { "texts": texts, "vin_read": "none-readable", "rust": null, "customer": "c" } });
        door.send(&format!("vehicle:{id}"), "vehicle_fact", declared);
        let open = json!({ "open": { "vehicle": id, "customer": "c" } });
        door.send(&format!("order:{id}"), "request", open);
    }
    door
}

fn order(door: &Door, number: u64) -> Value {
    door.get(&format!("/api/orders/{number}")).json()
}

/// What is owed, each with its gate, and which gates are open.
fn stands(door: &Door, number: u64) -> (BTreeSet<(String, String)>, BTreeMap<String, bool>) {
    let order = order(door, number);
    let list = |key: &str| order[key].as_array().unwrap().clone();
    let text = |value: &Value| value.as_str().unwrap_or("later").to_owned();
    let owed = list("debts");
    let owed = owed
        .iter()
        .map(|debt| (text(&debt["text"]), text(&debt["before"])));
    let gates = list("gates");
    let gates = gates
        .iter()
        .map(|gate| (text(&gate["gate"]), gate["may"].as_bool().unwrap()));
    (owed.collect(), gates.collect())
}

/// Everything off by the stages of a plan, or everything on again.
fn by_stages(door: &Door, number: u64, labels: &[&str]) {
    for _ in 0..40 {
        let stage = screen(door, &format!("/o/{number}/stage"));
        let Some(label) = labels.iter().find(|label| stage.button(label).is_some()) else {
            return;
        };
        press(door, &stage, label, &[]);
    }
    panic!("it never ends");
}

const OUT: &[&str] = &["Out as shown"];

fn planned(door: &Door, number: u64) {
    let plan = screen(door, &format!("/o/{number}/plan?for=front+left+brake+pads"));
    press(door, &plan, "Work by it", &[]);
    by_stages(door, number, OUT);
}

#[test]
fn a_brake_job_owes_the_same_by_whatever_way_it_was_written() {
    let door = shop_with(&[
        ("own", "Tessel Van"),
        ("typed", "Quarrel Estate"),
        ("learned", "Quarrel Estate"),
    ]);
    let text = Device::document(MAP, "application/toml");
    door.send(
        "map:tessel-van",
        "map_fact",
        json!({ "drafted": { "version": 1, "text": text } }),
    );

    // By the map that somebody wrote from nothing.
    planned(&door, 1001);
    let own = stands(&door, 1001);

    // By typed lines.
    let lines: String = form_urlencoded::byte_serialize(LINES.as_bytes()).collect();
    let read = screen(&door, &format!("/o/1002/off?lines={lines}"));
    press(&door, &read, "Out as shown", &[]);
    let typed = stands(&door, 1002);
    assert_eq!(own, typed);

    // By the map that the typed job became.
    let edit = door.get("/maps/from-order/edit?order=1002");
    let kept = screen(&door, "/maps/from-order/edit?order=1002");
    assert_eq!(edit.status, 200);
    let map = kept.text.clone();
    assert!(map.contains("front left caliper bolts"), "{map}");
    let (_, draft) = edit.body.split_once("data-text>").unwrap();
    let (draft, _) = draft.split_once("</textarea>").unwrap();
    let draft = draft
        .replace("&quot;", "\"")
        .replace("&amp;", "&")
        .replace("&lt;", "<");
    let text = Device::document(&draft, "application/toml");
    door.send(
        "map:quarrel-estate",
        "map_fact",
        json!({ "drafted": { "version": 1, "text": text } }),
    );
    planned(&door, 1003);
    let learned = stands(&door, 1003);
    assert_eq!(own, learned);

    // What a careful technician would sign: the pedal before it rolls, the nuts after a distance.
    let owed: String = own
        .0
        .iter()
        .map(|(text, before)| format!("{text}: {before}\n"))
        .collect();
    assert!(owed.to_lowercase().contains("pedal"), "{owed}");
    assert!(
        !own.1["roll"] && !own.1["road"] && !own.1["hand-over"],
        "{:?}",
        own.1
    );
}

//! Loose bolts counted from a photo against what came off on an order.

use crate::http::{Answer, Door};
use crate::shop_in_words::set_up;
use serde_json::{Value, json};
use shop::Device;

const PHOTOS: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/../../checks/data/tray");

/// A shop with an order on which all these groups are out: name, thread, lengths.
fn order_with(groups: &[(&str, &str, &[u32])]) -> Door {
    let door = Door::open();
    set_up(&door);
    let name = json!({ "declared": { "texts": { "name": Device::words("Ada") } } });
    door.send("customer:c", "customer_fact", name);
    let texts = json!({ "label": Device::words("Tessel Van") });
    let declared = json!({ "declared": { "texts": texts, "vin_read": "none-readable", "rust": null, "customer": "c" } });
    door.send("vehicle:v", "vehicle_fact", declared);
    let open = json!({ "open": { "vehicle": "v", "customer": "c" } });
    door.send("order:o", "request", open);
    for (name, thread, lengths) in groups {
        let id = name.replace(' ', "-");
        let pieces: Vec<Value> = (1_u16..)
            .zip(*lengths)
            .map(|(at, length)| json!({ "position": at, "length": format!("{length} mm") }))
            .collect();
        let at: Vec<u16> = (1..).take(lengths.len()).collect();
        let item = json!({ "id": id, "kind": "fasteners", "system": "engine", "zone": "above",
            "label": Device::words(name), "size": thread, "pieces": pieces, "pattern": null, "spent": false,
            "may_miss": null, "put_in": null, "holds": null });
        door.send("order:o", "fact", json!({ "declared": { "item": item } }));
        let out = json!({ "item": id, "at": at, "after": [], "left": { "state": "out", "piece": "original" }, "container": null });
        let moved = json!({ "moved": { "stage": null, "moves": [out] } });
        door.send("order:o", "fact", moved);
    }
    door
}

fn photo(name: &str) -> Vec<u8> {
    std::fs::read(format!("{PHOTOS}/open/{name}")).unwrap()
}

fn counted(door: &Door, asked: &str, photo: &[u8]) -> Answer {
    let path = format!("/o/1001/tray/count{asked}");
    let heads = [("Content-Type", "image/jpeg"), ("Cookie", "who=ana")];
    door.ask("POST", &path, &heads, photo)
}

#[test]
fn the_long_bolt_is_found_before_it_goes_into_the_short_hole_and_nothing_is_closed() {
    // What was laid on the sheet for this picture, with one bolt of another length among them.
    let truth = std::fs::read_to_string(format!("{PHOTOS}/open.jsonl")).unwrap();
    let truth: Value = truth
        .lines()
        .map(|line| serde_json::from_str::<Value>(line).unwrap())
        .find(|one| one["file"] == "open_041.jpg")
        .unwrap();
    let groups: Vec<(String, String, Vec<u32>)> = truth["expected"]
        .as_array()
        .unwrap()
        .iter()
        .map(|group| {
            let lengths = group["lengths"].as_array().unwrap().iter();
            let length = |one: &Value| u32::try_from(one.as_u64().unwrap()).unwrap();
            let text = |key: &str| group[key].as_str().unwrap().to_owned();
            (text("name"), text("thread"), lengths.map(length).collect())
        })
        .collect();
    let named: Vec<(&str, &str, &[u32])> = groups
        .iter()
        .map(|(name, thread, lengths)| (name.as_str(), thread.as_str(), lengths.as_slice()))
        .collect();
    let door = order_with(&named);
    let page = door.get("/o/1001/tray/count");
    assert!(page.body.contains("housing bolts"), "{}", page.body);

    let answer = counted(&door, "", &photo("open_041.jpg"));
    assert_eq!(answer.status, 200, "{}", answer.body);
    let (told, _) = answer.body.split_once("Another photo").unwrap();
    assert!(told.contains("as they should be"), "{told}");
    assert!(told.contains("× 55 in place of"), "{told}");
    assert!(told.contains("data-photo-shown"));
    // The photo closes nothing: what is kept is a result, and the bolts are out as before.
    assert!(!told.contains("&quot;moved&quot;"));
    let order = door.get("/api/orders/1001").json();
    assert_eq!(order["open_items"].as_array().unwrap().len(), 3, "{order}");
}

#[test]
fn only_the_groups_that_are_ticked_are_counted() {
    let groups: [(&str, &str, &[u32]); 2] = [
        ("cover bolts", "M8", &[30, 30]),
        ("guard screws", "M6", &[16]),
    ];
    let door = order_with(&groups);
    let answer = counted(&door, "?of=cover-bolts", &photo("open_012.jpg"));
    let (told, _) = answer.body.split_once("Another photo").unwrap();
    assert!(told.contains("cover bolts"), "{told}");
    assert!(!told.contains("guard screws"), "{told}");
}

#[test]
fn what_is_no_photo_of_the_sheet_is_said_with_what_to_do() {
    let door = order_with(&[("cover bolts", "M8", &[30, 30])]);
    let none = counted(&door, "", b"no picture at all");
    assert_eq!(none.status, 400, "{}", none.body);
    let line = counted(&door, "?line=a+hand", &photo("open_012.jpg"));
    assert_eq!(line.status, 400, "{}", line.body);
    assert!(line.body.contains("such as 99.5"), "{}", line.body);
    let sheet = door.get("/tray-sheet/a4.pdf");
    assert_eq!(sheet.header("content-type"), "application/pdf");
    assert_eq!(door.get("/tray-sheet/a5.pdf").status, 404);
}

//! A map leaves as a signed file and comes in again; what would change is shown first.

use super::http::Door;
use super::shop_in_words::set_up;
use serde_json::json;
use shop::Device;

const TEXT: &str = "vehicle = \"Lanner estate\"\n\n[items.tray]\nis = \"cover\"\nplace = \"below\"\nminutes = { out = 2, back = 3 }\n";

fn keep(door: &Door, version: u32, text: &str) {
    let drafted = json!({ "drafted": { "version": version, "text": Device::document(text, "application/toml") } });
    let answer = door.send("map:lanner-estate", "map_fact", drafted);
    assert_eq!(answer.status, 200, "{}", answer.body);
}

fn read_in(door: &Door, file: &str) -> String {
    let body = form_urlencoded::Serializer::new(String::new())
        .append_pair("file", file)
        .finish();
    let kind = [
        ("content-type", "application/x-www-form-urlencoded"),
        ("cookie", "who=ana"),
    ];
    let answer = door.ask("POST", "/maps/read-in", &kind, body.as_bytes());
    assert_eq!(answer.status, 200, "{}", answer.body);
    answer.body
}

#[test]
fn a_map_is_sent_and_read_in() {
    let one = Door::open();
    set_up(&one);
    keep(&one, 1, TEXT);
    let page = one.get("/maps/lanner-estate/send?version=1");
    assert!(page.body.contains("Signed with"), "{}", page.body);
    let file = one.get("/maps/lanner-estate/sent-file?version=1");
    assert_eq!(file.header("content-type"), "application/json");
    assert!(
        file.header("content-disposition")
            .contains("lanner-estate.map.json")
    );

    let other = Door::open();
    set_up(&other);
    let page = read_in(&other, &file.body);
    assert!(page.contains("You have no map of it yet"), "{page}");
    assert!(page.contains("Not seen here before"), "{page}");
    keep(&other, 1, &TEXT.replace("out = 2", "out = 4"));
    let page = read_in(&other, &file.body);
    assert!(
        page.contains("What it would change") && page.contains("tray:"),
        "{page}"
    );

    // One letter of the text, and it is refused with what to do; what was sent stays in the field.
    let changed = file.body.replace("out = 2", "out = 3");
    let page = read_in(&other, &changed);
    assert!(page.contains("signature does not fit"), "{page}");
    assert!(page.contains("Ask the shop that sent it"), "{page}");
    assert!(read_in(&other, "no file").contains("no map that a shop has sent"));
}

#[test]
fn a_version_says_what_it_changed() {
    let door = Door::open();
    set_up(&door);
    keep(&door, 1, TEXT);
    keep(&door, 2, &TEXT.replace("out = 2", "out = 4"));
    let page = door.get("/maps/lanner-estate/versions?version=2");
    assert!(page.body.contains("Version 2 against 1"), "{}", page.body);
    assert!(page.body.contains("1 change"), "{}", page.body);
    let first = door.get("/maps/lanner-estate/versions?version=1");
    assert!(first.body.contains("The first one"), "{}", first.body);
}

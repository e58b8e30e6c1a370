//! A map goes from one shop to another: what stands in the file, what it would change, and what
//! is refused.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::{Value, json};
use shop::repair::MapId;
use shop::sent_map::{
    ReceivedMap, SentMap, WouldChange, came_from, log_beside, map_beside, people_named,
    received_map, sent_map, would_change,
};
use shop::{Caller, Device, Service, Signer, Snapshot, Trouble};
use std::sync::Arc;

const TEXT: &str = "vehicle = \"Lanner estate, front door\"\n\n[items.\"handle screws\"]\nis = \"fasteners\"\ncount = 3\nplace = \"cabin\"\nminutes = { out = 1, back = 1.5 }\n\n[items.panel]\nis = \"cover\"\nneeds = [\"handle screws out\"]\nplace = \"cabin\"\nminutes = { out = 2, back = 3 }\n";
const MAP: &str = "lanner-estate-front-door";

fn look<T>(bench: &Bench, see: impl FnOnce(&Snapshot<'_>) -> Result<T, Trouble>) -> T {
    bench.service.look(&Caller::program(), see).unwrap()
}

fn keep(bench: &mut Bench, version: u32, text: &str) {
    let drafted = json!({ "drafted": { "version": version, "text": Device::document(text, "application/toml") } });
    bench
        .send(&format!("map:{MAP}"), "map_fact", drafted)
        .unwrap();
}

fn sent(bench: &Bench) -> SentMap {
    look(bench, |snap| sent_map(snap, &MapId::new(MAP), None))
}

fn signer() -> Signer {
    Signer::read(&Signer::make().unwrap()).unwrap()
}

fn would(bench: &Bench, received: &ReceivedMap) -> WouldChange {
    look(bench, |snap| would_change(snap, received))
}

#[test]
fn a_map_goes_to_another_shop_and_comes_back_changed() {
    let (mut one, mut other) = (Bench::new(), Bench::new());
    keep(&mut one, 1, TEXT);
    let key = signer();
    let file = key.file(&sent(&one));
    let received = received_map(&file).unwrap();
    assert_eq!(received.key, key.mark());
    assert_eq!(received.sent.vehicle, "Lanner estate, front door");

    // The other shop has no such map: all of it is new.
    let first = would(&other, &received);
    assert_eq!((first.changes, first.items, first.version), (None, 2, 1));
    assert_eq!(first.before, Vec::<String>::new());
    keep(&mut other, 1, &received.sent.text);
    let came = json!({ "received": { "version": 1, "from": Device::words(&received.sent.from), "key": received.key } });
    other.send(&format!("map:{MAP}"), "map_fact", came).unwrap();
    let from = look(&other, |snap| Ok(came_from(snap, &MapId::new(MAP), 1)));
    assert_eq!(from.map(|(_, key)| key), Some(key.mark()));
    assert!(would(&other, &received).same);

    // A later version says what differs, and that the key was seen.
    keep(&mut one, 2, &TEXT.replace("count = 3", "count = 4"));
    let later = received_map(&key.file(&sent(&one))).unwrap();
    let second = would(&other, &later);
    assert_eq!(
        second.changes,
        Some(vec!["handle screws: count was 3, is 4".to_owned()])
    );
    assert_eq!(
        (second.version, second.before),
        (2, vec!["Lanner estate, front door".to_owned()])
    );
}

#[test]
fn what_was_changed_or_is_something_else_is_refused() {
    let mut bench = Bench::new();
    keep(&mut bench, 1, TEXT);
    let key = signer();
    let file = key.file(&sent(&bench));
    let mut value: Value = serde_json::from_str(&file).unwrap();
    let why = |text: &str| received_map(text).unwrap_err().what;
    for (field, to) in [
        (
            "content",
            json!(
                value["content"]
                    .as_str()
                    .unwrap()
                    .replace("count = 3", "count = 9")
            ),
        ),
        ("key", json!("AAAA")),
        ("signature", json!("no base64 !")),
    ] {
        let mut changed = value.clone();
        changed[field] = to;
        assert!(
            why(&changed.to_string()).contains("signature does not fit"),
            "{field}"
        );
    }
    // Signed anew by somebody else it is whole, and the mark is theirs.
    let stranger = signer();
    let other = received_map(&stranger.file(&sent(&bench))).unwrap();
    assert_ne!(other.key, key.mark());
    value["form"] = json!(7);
    assert!(why(&value.to_string()).contains("form 7"));
    for text in ["", "{}", "vehicle = \"Van\"", "[1, 2]", "null"] {
        assert!(
            why(text).contains("no map that a shop has sent"),
            "{text:?}"
        );
    }
    assert!(why(&" ".repeat(2 * 1024 * 1024)).contains("at most"));
}

/// Two shops in one database: what one knows, the other looks at and keeps, with where it is from.
#[test]
fn a_map_is_taken_from_another_shop_in_the_same_database() {
    let mut bench = Bench::new();
    let other = Service::open(Arc::clone(&bench.store), "north", bench.clock.as_now()).unwrap();
    let mut desk = Device::new("desk", "mia");
    let now = bench.clock.now();
    for (stream, part, content) in [
        (
            "shop",
            "shop_fact",
            json!({ "set": { "settings": {
            "name": Device::words("North Works"), "rate": "100", "currency": "EUR", "minor_digits": 2,
            "taxes": [], "units": "metric", "zone": "Europe/Lisbon" } } }),
        ),
        (
            "map:lanner-estate-front-door",
            "map_fact",
            json!({ "drafted": { "version": 1,
            "text": Device::document(TEXT, "application/toml") } }),
        ),
    ] {
        let command = desk.command(stream, now, part, content);
        other.command(&Caller::program(), command).unwrap();
    }
    let received = map_beside(&other, "north", &MapId::new(MAP)).unwrap();
    assert_eq!(received.sent.from, "North Works");
    assert_eq!(log_beside(&received.key), Some("north"));
    assert_eq!(log_beside(&signer().mark()), None);
    assert_eq!(would(&bench, &received).changes, None);
    // Nothing of it is here before somebody keeps it; then it says where it is from.
    keep(&mut bench, 1, &received.sent.text);
    let came = json!({ "received": { "version": 1, "from": Device::words(&received.sent.from), "key": received.key } });
    bench.send(&format!("map:{MAP}"), "map_fact", came).unwrap();
    let from = look(&bench, |snap| Ok(came_from(snap, &MapId::new(MAP), 1)));
    assert_eq!(
        from,
        Some(("North Works".to_owned(), "log north".to_owned()))
    );
    assert!(would(&bench, &received).same);
    let none = map_beside(&other, "north", &MapId::new("no-such-map"));
    assert!(none.is_err());
}

/// A name in a note is told before the file goes.
#[test]
fn people_named_in_the_text_are_told() {
    let mut bench = Bench::new();
    keep(&mut bench, 1, TEXT);
    let none = look(&bench, |snap| Ok(people_named(snap, TEXT)));
    assert_eq!(none, Vec::<String>::new());
    let everyone = look(&bench, |snap| {
        let people = snap.world().shop.everyone();
        Ok(people
            .values()
            .map(|(name, _)| snap.texts().text(*name))
            .collect::<Vec<_>>())
    });
    let name = everyone.first().unwrap();
    let first = name.split_whitespace().next().unwrap();
    let noted = format!(
        "{TEXT}note = \"{} always forgets this\"\n",
        first.to_uppercase()
    );
    let named = look(&bench, |snap| Ok(people_named(snap, &noted)));
    assert_eq!(named, std::slice::from_ref(name));
}

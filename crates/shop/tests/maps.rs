//! Maps as the shop keeps them: every version, with whatever errors its text has.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::seen;
use bench::tell_to;

use bench::Bench;
use serde_json::{Value, json};
use shop::repair::MapId;
use shop::{Device, TroubleKind};

const SMALL: &str = "vehicle = \"Small Van\"\n[items.tray]\nis = \"cover\"\n";

fn drafted(version: u32, text: &str) -> Value {
    let text = Device::document(text, "application/toml");
    json!({ "drafted": { "version": version, "text": text } })
}

fn keep(bench: &mut Bench, version: u32, text: &str) -> Result<shop::Accepted, shop::Trouble> {
    let sent = bench.make("map:small-van", "map_fact", drafted(version, text));
    tell_to(&bench.service, sent)
}

#[test]
fn every_version_of_a_map_is_kept_and_read() {
    let mut bench = Bench::new();
    let id = MapId::new("small-van");
    assert_eq!(
        seen::map(&bench.service, &id, None).unwrap_err().kind,
        TroubleKind::NotFound
    );
    keep(&mut bench, 1, SMALL).unwrap();
    let more = format!("{SMALL}[items.belt]\nis = \"belt\"\n");
    keep(&mut bench, 2, &more).unwrap();
    let first = seen::map(&bench.service, &id, Some(1)).unwrap();
    assert_eq!((first.text.as_str(), first.version), (SMALL, 1));
    let newest = seen::map(&bench.another_program(), &id, None).unwrap();
    assert_eq!(newest.text, more);
    assert_eq!(newest.sound().unwrap().items.len(), 2);
    assert_eq!(
        newest.sound().unwrap().version,
        2,
        "the shop counts versions"
    );
    assert_eq!(
        seen::map(&bench.service, &id, Some(3)).unwrap_err().kind,
        TroubleKind::NotFound
    );
}

#[test]
fn a_map_with_errors_is_kept_but_nothing_is_planned_by_it() {
    let mut bench = Bench::new();
    keep(&mut bench, 1, SMALL).unwrap();
    keep(&mut bench, 2, "vehicle = \"Small Van\"\n[items.tray]\n").unwrap();
    let shelf = seen::maps(&bench.service).unwrap();
    assert_eq!((shelf.len(), shelf[0].sound), (1, Some(1)));
    assert_eq!(shelf[0].versions, [1, 2]);
    let trouble = shelf[0].newest.sound().unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Refused);
    assert!(
        trouble.reasons[0].starts_with("small-van.toml:2:"),
        "{:?}",
        trouble.reasons
    );
}

#[test]
fn two_people_cannot_both_keep_the_next_version() {
    let mut bench = Bench::new();
    keep(&mut bench, 1, SMALL).unwrap();
    keep(&mut bench, 2, SMALL).unwrap();
    for version in [0, 1, 2, 4] {
        let trouble = keep(&mut bench, version, "vehicle = \"Another\"\n").unwrap_err();
        assert_eq!(trouble.kind, TroubleKind::Conflict, "version {version}");
        assert!(trouble.what.contains("last version is 2"), "{trouble}");
    }
    let kept = seen::map(&bench.service, &MapId::new("small-van"), None).unwrap();
    assert_eq!(kept.text, SMALL);
}

#[test]
fn what_is_no_text_or_too_long_is_no_map() {
    let mut bench = Bench::new();
    let salt = "5a".repeat(32);
    let picture = json!({ "drafted": { "version": 1, "text": { "file": "/9j/", "media": "image/jpeg", "salt": salt } } });
    let sent = bench.make("map:picture", "map_fact", picture);
    assert_eq!(
        tell_to(&bench.service, sent).unwrap_err().kind,
        TroubleKind::Unreadable
    );
    let long = "# long\n".repeat(40_000);
    assert_eq!(
        keep(&mut bench, 1, &long).unwrap_err().kind,
        TroubleKind::Unreadable
    );
}

#[test]
fn a_map_goes_to_a_map() {
    let mut bench = Bench::new();
    let sent = bench.make("shop", "map_fact", drafted(1, SMALL));
    let trouble = tell_to(&bench.service, sent).unwrap_err();
    assert!(trouble.what.contains("a map_fact to map:…"), "{trouble}");
}

//! What a served shop does with its record at a press: a copy that was checked, and the whole
//! of it as lines of JSON.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod program;

use program::{Server, invented_shop, run};
use std::fs;

#[test]
fn a_press_copies_the_record_while_the_shop_works_and_keeps_so_many() {
    let elsewhere = tempfile::tempdir().unwrap();
    let folder = invented_shop(elsewhere.path());
    let data = folder.to_str().unwrap();
    let copies = elsewhere.path().join("copies");
    let server = Server::start(&[
        "serve",
        "--data",
        data,
        "--backups",
        copies.to_str().unwrap(),
        "--keep-backups",
        "2",
    ]);
    for _ in 0..3 {
        let (status, body) = server.post("/record/backup", "application/x-www-form-urlencoded", "");
        assert_eq!(status, 303, "{body}");
    }
    let (_, page) = server.get("/record");
    assert!(page.contains("less than a day ago"), "{page}");
    assert!(page.contains("the last 2 are kept"), "{page}");
    let mut left: Vec<_> = fs::read_dir(&copies)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.is_dir())
        .collect();
    left.sort();
    assert_eq!(left.len(), 2, "{left:?}");

    let (status, lines) = server.get("/record/export");
    assert_eq!(status, 200);
    assert!(lines.contains("\"prev_hash\""));
    server.kill();
    // What was copied goes on as the shop that it was.
    let restored = elsewhere.path().join("restored");
    let restore = run(&[
        "restore",
        left[1].to_str().unwrap(),
        "--data",
        restored.to_str().unwrap(),
    ]);
    assert_eq!(restore.code, 0, "{restore:?}");
    let copied = run(&["verify", "--json", "--data", restored.to_str().unwrap()]);
    let own = run(&["verify", "--json", "--data", data]);
    assert_eq!(copied.json()["head"], own.json()["head"]);
}

#[test]
fn no_copies_or_none_that_stay_are_refused() {
    let zero = run(&["serve", "--keep-backups", "0", "--data", "nowhere"]);
    assert_eq!(zero.code, 2, "{zero:?}");
}

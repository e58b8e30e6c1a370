//! The same command, sent twice at once: it is kept once, and both are answered the same.
//!
//! `DOUBLED=2000 cargo test -p buttonup --features postgres-tests --test doubled` goes on for
//! longer.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod program;
#[cfg(feature = "postgres-tests")]
#[path = "../../store/tests/server/mod.rs"]
#[allow(dead_code, reason = "the store's tests use the rest")]
mod server;

use program::{Server, invented_shop, number, run};
use serde_json::{Value, json};
use std::sync::Barrier;

/// The kinds of command that are sent: facts, what is decided, what is refused.
const KINDS: u32 = 5;

fn command(nth: u32) -> Value {
    let order = format!("doubled-{}", nth / KINDS);
    let (stream, part, content) = match nth % KINDS {
        0 => ("shop".to_owned(), "shop_fact", stall(nth)),
        1 => (format!("order:{order}"), "fact", seen(nth)),
        2 => (
            format!("order:{order}"),
            "request",
            json!({ "open": { "vehicle": "v", "customer": "c" } }),
        ),
        3 => (
            format!("order:{order}"),
            "request",
            json!({ "price": { "entries": [] } }),
        ),
        // Nobody agreed to anything: refused, with its reasons.
        _ => (
            format!("order:{order}"),
            "request",
            json!({ "take-back": { "words": { "text": "no", "salt": format!("{nth:064x}") } } }),
        ),
    };
    let mut command = json!({
        "command_id": format!("00000000-0000-7000-9000-{nth:012}"),
        "device": "phone-7",
        "device_seq": nth + 1,
        "happened_at": "2026-03-02T08:15:00Z",
        "who": "nuria",
        "stream": stream,
    });
    command[part] = content;
    command
}

fn stall(nth: u32) -> Value {
    json!({ "stall-added": {
        "stall": format!("stall-{nth}"),
        "name": { "text": format!("Yard {nth}"), "salt": format!("{nth:064x}") },
        "sort": "flat",
    } })
}

fn seen(nth: u32) -> Value {
    json!({ "observed": {
        "id": format!("note-{nth}"),
        "zone": "above",
        "what": "other",
        "photos": [],
        "words": { "text": format!("note {nth}"), "salt": format!("{nth:064x}") },
    } })
}

/// Sends each command twice at the same moment; how many events came of all.
fn send_doubled(one: &Server, other: &Server) -> u64 {
    let mut events = 0;
    for nth in 0..number("DOUBLED", 20) {
        let command = command(nth);
        let both = Barrier::new(2);
        let send = |server: &Server| {
            both.wait();
            server.command(&command)
        };
        let (first, second) = std::thread::scope(|scope| {
            let first = scope.spawn(|| send(one));
            let second = scope.spawn(|| send(other));
            (first.join().unwrap(), second.join().unwrap())
        });
        assert_eq!(first, second, "{command}");
        let (status, answer) = first;
        if nth % KINDS == 4 {
            assert!((400..500).contains(&status), "{command}: {status} {answer}");
        } else {
            assert_eq!(status, 200, "{command}: {answer}");
            let answer: Value = serde_json::from_str(&answer).unwrap();
            events += answer["events"].as_array().unwrap().len() as u64;
        }
        // And long after: the same again.
        assert_eq!(one.command(&command), (status, second.1), "{command}");
    }
    events
}

#[test]
fn a_command_that_comes_twice_at_once_is_kept_once_and_answered_alike() {
    let folder = tempfile::tempdir().unwrap();
    let shop = invented_shop(folder.path());
    let verify = ["verify", "--json", "--data", shop.to_str().unwrap()];
    let before = run(&verify).json();
    let server = Server::serve(&shop);
    let events = send_doubled(&server, &server);
    drop(server);
    let after = run(&verify);
    assert_eq!(after.code, 0, "{after:?}");
    let grown = after.json()["events"].as_u64().unwrap() - before["events"].as_u64().unwrap();
    assert_eq!(grown, events);
}

#[cfg(feature = "postgres-tests")]
#[test]
fn a_command_that_reaches_two_programs_at_once_is_kept_once_and_answered_alike() {
    let folder = tempfile::tempdir().unwrap();
    let shop = invented_shop(folder.path());
    let data = shop.to_str().unwrap();
    let postgres = server::shared();
    let url = postgres.new_database();
    assert_eq!(run(&["move-to", &url, "--data", data]).code, 0);
    let verify = ["verify", "--json", "--database", &url, "--data", data];
    let before = run(&verify).json();
    let serve = ["serve", "--database", &url, "--data", data];
    let (one, other) = (Server::start(&serve), Server::start(&serve));
    let events = send_doubled(&one, &other);
    drop((one, other));
    let after = run(&verify);
    assert_eq!(after.code, 0, "{after:?}");
    let grown = after.json()["events"].as_u64().unwrap() - before["events"].as_u64().unwrap();
    assert_eq!(grown, events);
}

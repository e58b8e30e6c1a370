//! The served program, killed at any instant while people work: nothing that it said it had
//! is gone, and the record is sound.
//!
//! This is the death of the program, not of the machine: what was written but not yet
//! synced survives it. That answers follow synced commits is held in `store`.
//!
//! `ROUNDS=1000 cargo test -p buttonup --test crash` goes on for longer.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod program;

use program::{Server, invented_shop, run};
use serde_json::{Value, json};
use std::collections::BTreeSet;
use std::path::Path;
use std::sync::Mutex;
use std::time::{Duration, Instant};
use store::{Sqlite, Store};

/// How many devices send at once.
const DEVICES: u64 = 3;
/// A record that grew without end would make long runs slower and slower.
const ROUNDS_A_RECORD: u64 = 50;

fn fact(round: u64, device: u64, nth: u64) -> Value {
    json!({
        "command_id": format!("{round:08x}-{device:04}-7000-8000-{nth:012}"),
        "device": format!("phone-{device}"),
        "device_seq": round * 100_000 + nth,
        "happened_at": "2026-03-02T08:15:00Z",
        "who": "nuria",
        "stream": format!("order:00000000-0000-7000-8000-{device:012}"),
        "fact": { "observed": {
            "id": format!("note-{round}-{device}-{nth}"),
            "zone": "above",
            "what": "other",
            "photos": [],
            "words": { "text": format!("note {nth}"), "salt": format!("{nth:064x}") },
        } },
    })
}

/// So many answers before a kill are far into the load.
const FAR_IN: usize = 10;

#[test]
fn killed_while_people_work_nothing_acknowledged_is_lost() {
    let rounds: u64 = std::env::var("ROUNDS").map_or(5, |text| text.parse().unwrap());
    let mut place = tempfile::tempdir().unwrap();
    let mut shop = invented_shop(place.path());
    let mut taken = BTreeSet::new();
    let mut most = 0;
    for round in 1..=rounds {
        if round % ROUNDS_A_RECORD == 0 {
            place = tempfile::tempdir().unwrap();
            shop = invented_shop(place.path());
            taken.clear();
        }
        let before = taken.len();
        taken.extend(killed(&shop, round));
        most = most.max(taken.len() - before);
        assert_kept(&shop, &taken, round);
    }
    assert!(
        most > FAR_IN,
        "too few answers before a kill to mean anything"
    );
}

/// Serves, sends from several devices, kills; the commands that were answered.
fn killed(shop: &Path, round: u64) -> BTreeSet<String> {
    let server = Server::serve(shop);
    let taken = Mutex::new(BTreeSet::new());
    // A different instant each round, spread over the first answers and far into the load.
    let moment = Duration::from_micros(round * 7_919 % 60_000);
    std::thread::scope(|scope| {
        for device in 0..DEVICES {
            let (server, taken) = (&server, &taken);
            scope.spawn(move || {
                for nth in 1.. {
                    let fact = fact(round, device, nth);
                    match server.try_command(&fact) {
                        Ok((200, _)) => {
                            let id = fact["command_id"].as_str().unwrap().to_owned();
                            taken.lock().unwrap().insert(id);
                        }
                        Ok((status, answer)) => panic!("{status} {answer}"),
                        // Killed: no answer, or half of one.
                        Err(_) => return,
                    }
                }
            });
        }
        std::thread::sleep(moment);
        // Some kills are far into the load, however slow the machine is.
        let limit = Instant::now() + Duration::from_secs(60);
        while round.is_multiple_of(2)
            && taken.lock().unwrap().len() <= FAR_IN
            && Instant::now() < limit
        {
            std::thread::yield_now();
        }
        server.kill_now();
    });
    taken.into_inner().unwrap()
}

fn assert_kept(shop: &Path, taken: &BTreeSet<String>, round: u64) {
    let verified = run(&["verify", "--json", "--data", shop.to_str().unwrap()]);
    assert_eq!(verified.code, 0, "round {round}: {verified:?}");
    let store = Sqlite::open_for_reading(shop).unwrap();
    let rows = store.log("shop", 0, usize::MAX).unwrap();
    let there: BTreeSet<&str> = rows.iter().map(|row| row.command_id.as_str()).collect();
    for id in taken {
        assert!(
            there.contains(id.as_str()),
            "round {round}: {id} was acknowledged and is gone"
        );
    }
}

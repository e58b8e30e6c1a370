//! The power goes, an operation fails, or the disk fills, at every single operation of a
//! short run: nothing acknowledged is lost, and the log is sound.
//!
//! `SEED=7 cargo test -p store --test faults` lets other sectors survive.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod commands;
mod disk;

use commands::{LOG, checks, erasure, event, fact, fact_with, private};
use disk::{Disk, Fault};
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;
use store::{AppendError, Command, EngineError, OpenError, Row, Sqlite, Store, verify};

/// A disk and the folder it stands for, empty but for the tables or wholly empty.
struct Bench {
    folder: tempfile::TempDir,
    disk: Disk,
}

impl Bench {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let disk = Disk::of(folder.path().to_str().unwrap());
        Self { folder, disk }
    }

    fn open(&self) -> Result<Sqlite, OpenError> {
        Sqlite::open(self.folder.path())
    }
}

/// A short run of every sort of command.
fn run() -> Vec<Command> {
    let text = private(1, &b"Ms Vale, 5 Mill Lane. ".repeat(30));
    let mut several = fact(1, "shop", "number 17 given");
    several.events.push(event("order-1", "began"));
    vec![
        several,
        fact_with(2, vec![text.clone(), private(2, b"rings back")]),
        fact(3, "order-1", &"moved ".repeat(700)),
        erasure(4, &[text.id]),
        fact(5, "order-2", "began"),
        fact(6, "order-2", "ended"),
    ]
}

/// Sends the run to a store, each command once; what was acknowledged, and what was not.
fn send(store: &Sqlite) -> (Vec<Row>, Vec<EngineError>) {
    let (mut taken, mut failed) = (Vec::new(), Vec::new());
    for command in run() {
        match store.append(command) {
            Ok(outcome) => taken.extend(outcome.rows().to_vec()),
            Err(AppendError::Engine(error)) => failed.push(error),
            Err(error) => panic!("refused: {error}"),
        }
    }
    (taken, failed)
}

/// Everything acknowledged is there; and all of it, sent again, is there once.
fn assert_kept(store: &Sqlite, taken: &[Row], when: &str) {
    verify(store, LOG, &checks(None)).unwrap_or_else(|damage| panic!("{when}: {damage}"));
    for row in taken {
        let there = store.command(LOG, &row.command_id).unwrap();
        assert!(
            there.contains(row),
            "{when}: {row:?} was acknowledged and is gone"
        );
    }
    let (_, failed) = send(store);
    assert_eq!(failed, [], "{when}");
    let verified = verify(store, LOG, &checks(None)).unwrap();
    assert_eq!(
        (verified.events, verified.private, verified.erased),
        (7, 1, 1),
        "{when}"
    );
}

fn seed() -> u64 {
    std::env::var("SEED").map_or(1, |text| text.parse().expect("a whole number"))
}

/// How many operations opening, a run, and closing take without a fault: writing ones,
/// and all of them up to the last answer.
fn operations() -> (u64, u64) {
    let bench = Bench::new();
    bench.disk.plan(Fault::None);
    let store = bench.open().unwrap();
    let (taken, failed) = send(&store);
    assert_eq!((taken.len(), failed.len()), (7, 0));
    let (_, all) = bench.disk.counts();
    assert_kept(&store, &taken, "no fault");
    drop(store);
    let (writing, _) = bench.disk.counts();
    (writing, all)
}

#[test]
fn the_power_goes_at_any_operation() {
    let (writing, _) = operations();
    let mut chance = ChaCha8Rng::seed_from_u64(seed());
    let mut acknowledged = std::collections::BTreeSet::new();
    for at in 1..=writing {
        let bench = Bench::new();
        bench.disk.plan(Fault::PowerCut(at));
        let taken = match bench.open() {
            Ok(store) => send(&store).0,
            Err(_) => Vec::new(),
        };
        acknowledged.insert(taken.len());
        bench.disk.power_comes_back(&mut chance);
        let when = format!("power cut at operation {at} of {writing}, seed {}", seed());
        let store = bench
            .open()
            .unwrap_or_else(|error| panic!("{when}: {error}"));
        assert_kept(&store, &taken, &when);
    }
    assert_eq!(
        acknowledged.into_iter().collect::<Vec<_>>(),
        [0, 2, 3, 4, 5, 6, 7]
    );
}

#[test]
fn any_one_operation_fails_and_later_the_power_goes() {
    let (_, all) = operations();
    let mut chance = ChaCha8Rng::seed_from_u64(seed());
    let mut felt = 0;
    for at in 1..=all {
        let bench = Bench::new();
        bench.disk.plan(Fault::Once(at));
        let when = format!("operation {at} of {all} failed, seed {}", seed());
        let store = match bench.open() {
            Ok(store) => store,
            Err(_) => {
                felt += 1;
                bench
                    .open()
                    .unwrap_or_else(|error| panic!("{when}: {error}"))
            }
        };
        let (taken, failed) = send(&store);
        for error in &failed {
            felt += 1;
            let clear = matches!(error, EngineError::Io { .. } | EngineError::ReadOnly { .. });
            assert!(clear, "{when}: {error}");
        }
        // The same store goes on: the fault has passed.
        assert_kept(&store, &taken, &when);
        let (taken, failed) = send(&store);
        assert_eq!(failed, [], "{when}");
        drop(store);
        bench.disk.power_comes_back(&mut chance);
        let store = bench
            .open()
            .unwrap_or_else(|error| panic!("{when}: {error}"));
        assert_kept(&store, &taken, &when);
    }
    assert!(felt > all / 4, "only {felt} of {all} faults were felt");
}

#[test]
fn the_disk_fills_at_any_operation_and_is_cleared() {
    let (writing, _) = operations();
    let mut full = 0;
    for from in 1..=writing {
        let bench = Bench::new();
        let when = format!("full from operation {from} of {writing}");
        bench.disk.plan(Fault::Full(from));
        let Ok(store) = bench.open() else {
            bench.disk.plan(Fault::None);
            let store = bench
                .open()
                .unwrap_or_else(|error| panic!("{when}: {error}"));
            assert_kept(&store, &[], &when);
            continue;
        };
        let (taken, failed) = send(&store);
        // While it is full, everything can still be read.
        assert_eq!(store.log(LOG, 0, 100).unwrap(), taken, "{when}");
        full += failed.len();
        bench.disk.plan(Fault::None);
        assert_kept(&store, &taken, &when);
    }
    assert!(full > 20, "only {full} commands met the full disk");
}

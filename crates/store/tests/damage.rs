//! Whatever is changed in a stored log, `verify` finds it.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod commands;

use commands::{LOG, checks, erasure, event, fact, fact_with, private};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rusqlite::Connection;
use rusqlite::types::Value;
use store::{Damage, Hash, Sqlite, Store, Verified, verify};
use tempfile::TempDir;

/// A small log of every sort, and a second door to its database past all triggers.
struct Bench {
    store: Sqlite,
    database: Connection,
    folder: TempDir,
}

impl Bench {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let store = Sqlite::open(folder.path()).unwrap();
        let (text, gone) = (private(1, b"Ms Vale"), private(2, b"gone"));
        let mut several = fact(1, "shop", "number 17 given");
        several.events.push(event("order-1", "began"));
        for command in [
            several,
            fact_with(2, vec![text, gone.clone()]),
            erasure(3, &[gone.id]),
            fact(4, "order-2", "belt off"),
        ] {
            store.append(command).unwrap();
        }
        let database = Connection::open(folder.path().join("store.db")).unwrap();
        database
            .execute_batch(
                "PRAGMA synchronous = OFF;
                 DROP TRIGGER log_grows_at_its_end;
                 DROP TRIGGER log_keeps_rows;
                 DROP TRIGGER log_keeps_content;",
            )
            .unwrap();
        let bench = Self {
            store,
            database,
            folder,
        };
        assert_eq!(bench.verify(None).unwrap().events, 5);
        bench
    }

    fn verify(&self, head: Option<Hash>) -> Result<Verified, Damage> {
        verify(&self.store, LOG, &checks(head))
    }

    fn change(&self, sql: &str) {
        assert!(self.database.execute(sql, []).unwrap() > 0, "{sql}");
    }
}

/// Flips bits in every byte of one column of every row, one at a time, and puts each
/// back. Counts the flips that the database took; panics if `verify` misses one.
fn flip_all(bench: &Bench, table: &str, column: &str) -> usize {
    let mut statement = bench
        .database
        .prepare(&format!(
            "SELECT rowid, {column} FROM {table} WHERE {column} IS NOT NULL"
        ))
        .unwrap();
    let cells: Vec<(i64, Value)> = statement
        .query_map([], |row| Ok((row.get(0)?, row.get(1)?)))
        .unwrap()
        .map(Result::unwrap)
        .collect();
    let mut taken = 0;
    for (rowid, old) in &cells {
        // Bytes that are no text must get into a text column as well.
        let form = match old {
            Value::Text(_) => "CAST(?1 AS TEXT)",
            _ => "?1",
        };
        let sql = format!("UPDATE {table} SET {column} = {form} WHERE rowid = {rowid}");
        let mut put = bench.database.prepare(&sql).unwrap();
        for new in flips(old) {
            // A uniqueness rule may refuse it: then it can't come about this way.
            if put.execute([&new]).is_err() {
                continue;
            }
            taken += 1;
            let verdict = bench.verify(None);
            let cell = format!("{table}.{column} of row {rowid}: {old:?} -> {new:?}");
            assert!(verdict.is_err(), "{cell} was not found");
            put.execute([old]).unwrap();
        }
    }
    assert!(bench.verify(None).is_ok(), "every flip was put back");
    taken
}

/// Every bit of a number; one bit of every byte of a blob; of a text also such that the
/// bytes are no text any more.
fn flips(value: &Value) -> Vec<Value> {
    match value {
        Value::Integer(number) => (0..64)
            .map(|bit| Value::Integer(number ^ (1 << bit)))
            .collect(),
        Value::Blob(bytes) => flipped(bytes, &[0x01]),
        Value::Text(text) => flipped(text.as_bytes(), &[0x01, 0xff]),
        Value::Real(_) | Value::Null => Vec::new(),
    }
}

fn flipped(bytes: &[u8], masks: &[u8]) -> Vec<Value> {
    let mut values = Vec::new();
    for index in 0..bytes.len() {
        for mask in masks {
            let mut changed = bytes.to_vec();
            changed[index] ^= mask;
            values.push(Value::Blob(changed));
        }
    }
    values
}

#[test]
fn every_byte_of_every_event_is_watched() {
    let bench = Bench::new();
    for column in [
        "log",
        "position",
        "stream",
        "seq",
        "kind",
        "version",
        "body",
        "happened_at",
        "device",
        "device_seq",
        "recorded_at",
        "who",
        "command_id",
        "nth",
        "command_digest",
        "prev_hash",
        "hash",
    ] {
        let taken = flip_all(&bench, "log", column);
        assert!(taken >= 5, "{column}: only {taken} flips were taken");
    }
}

/// `FLIPS=10000 cargo test -p store --test damage` tries more places; `SEED` repeats a run.
#[test]
fn a_bit_flipped_anywhere_in_a_larger_log_is_found() {
    let from_environment = |name: &str, usual: u64| {
        std::env::var(name).map_or(usual, |text| text.parse().expect("a whole number"))
    };
    let (flips, seed) = (from_environment("FLIPS", 40), from_environment("SEED", 1));
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let bench = Bench::new();
    let commands = (10..510).map(|id| fact(id, &format!("order-{}", id % 7), "belt off"));
    for answer in bench.store.append_all(commands.collect()) {
        answer.unwrap();
    }
    let columns = [
        "body",
        "who",
        "kind",
        "happened_at",
        "command_digest",
        "prev_hash",
        "hash",
    ];
    for flip in 0..flips {
        let position = chance.random_range(1..=505_i64);
        let column = columns[chance.random_range(0..columns.len())];
        let read = format!("SELECT CAST({column} AS BLOB) FROM log WHERE position = ?");
        let old: Vec<u8> = bench
            .database
            .query_row(&read, [position], |row| row.get(0))
            .unwrap();
        let mut new = old.clone();
        let byte = chance.random_range(0..new.len());
        // The highest bit would make bytes that are no text, which the database refuses.
        new[byte] ^= 1 << chance.random_range(0..7);
        let form = match column {
            "who" | "kind" | "happened_at" => "CAST(?1 AS TEXT)",
            _ => "?1",
        };
        let sql = format!("UPDATE log SET {column} = {form} WHERE position = ?2");
        bench.database.execute(&sql, (&new, position)).unwrap();
        let damage = bench.verify(None).unwrap_err();
        assert_eq!(
            damage.position(),
            Some(u64::try_from(position).unwrap()),
            "seed {seed}, flip {flip} in {column}: {damage}"
        );
        bench.database.execute(&sql, (&old, position)).unwrap();
    }
    assert_eq!(bench.verify(None).unwrap().events, 505);
}

#[test]
fn every_byte_of_the_head_and_of_private_contents_is_watched() {
    let bench = Bench::new();
    for column in ["log", "position", "hash"] {
        assert!(flip_all(&bench, "head", column) >= 6);
    }
    // What is left of an erased content holds nothing that could be damaged.
    bench.change("DELETE FROM private WHERE salt IS NULL");
    for column in ["log", "id", "salt", "content"] {
        assert!(flip_all(&bench, "private", column) >= 6);
    }
}

#[test]
fn every_file_beside_the_log_is_watched() {
    let bench = Bench::new();
    let photo = private(3, &[7; 70_000]);
    bench.store.append(fact_with(5, vec![photo])).unwrap();
    let files = std::fs::read_dir(bench.folder.path().join("files")).unwrap();
    let photo = files.map(|entry| entry.unwrap().path()).next().unwrap();
    let whole = std::fs::read(&photo).unwrap();
    for index in (0..whole.len()).step_by(4999) {
        let mut changed = whole.clone();
        changed[index] ^= 1;
        std::fs::write(&photo, &changed).unwrap();
        let damage = bench.verify(None).unwrap_err();
        assert!(
            matches!(damage, Damage::Row { position: 6, .. }),
            "{damage}"
        );
    }
    std::fs::remove_file(&photo).unwrap();
    let damage = bench.verify(None).unwrap_err().to_string();
    assert!(
        damage.contains("at position 6") && damage.ends_with("is missing"),
        "{damage}"
    );
}

#[test]
fn the_first_bad_row_is_named() {
    let bench = Bench::new();
    bench.change("UPDATE log SET body = x'00' WHERE position = 4");
    bench.change("UPDATE log SET who = 'someone else' WHERE position = 2");
    let damage = bench.verify(None).unwrap_err();
    assert_eq!(
        damage.to_string(),
        "log \"shop-1\" at position 2: its content does not give its hash"
    );
    // A reader of that row is told as well, and so is who wants to append.
    let error = bench
        .store
        .stream(LOG, "order-1", 0)
        .unwrap_err()
        .to_string();
    assert!(
        error.starts_with("log \"shop-1\" at position 2 is damaged"),
        "{error}"
    );
    bench.change("UPDATE log SET who = 'someone else' WHERE position = 5");
    let error = bench
        .store
        .append(fact(5, "order-3", "began"))
        .unwrap_err()
        .to_string();
    assert!(
        error.starts_with("log \"shop-1\" at position 5 is damaged"),
        "{error}"
    );
}

#[test]
fn missing_rows_are_found() {
    let bench = Bench::new();
    let noted = bench.store.head(LOG).unwrap().hash;
    bench.change("DELETE FROM log WHERE position = 5");
    let damage = bench.verify(None).unwrap_err();
    assert_eq!(damage.position(), Some(5), "{damage}");
    // Nothing is added behind a missing end, and nobody reads up to it as if it were the end.
    let error = bench.store.append(fact(5, "order-3", "began")).unwrap_err();
    assert!(error.to_string().contains("the head says 5"), "{error}");
    let error = bench.store.stream(LOG, "order-2", 0).unwrap_err();
    assert!(
        error.to_string().contains("ends with number 0, but 1"),
        "{error}"
    );
    let error = bench.store.log(LOG, 0, 100).unwrap_err();
    assert!(error.to_string().contains("ends at position 4"), "{error}");
    assert!(bench.store.look_over(LOG).is_err());
    // A careful hand cuts the head and the notes as well: only a hash noted elsewhere sees that.
    bench.change("DELETE FROM stream WHERE stream = 'order-2'");
    let damage = bench.verify(None).unwrap_err();
    assert_eq!(damage.position(), Some(5), "{damage}");
    bench.change("UPDATE head SET position = 4, hash = (SELECT hash FROM log WHERE position = 4)");
    bench.store.look_over(LOG).unwrap();
    assert_eq!(bench.verify(None).unwrap().events, 4);
    let damage = bench.verify(Some(noted)).unwrap_err();
    assert!(
        matches!(damage, Damage::AskedHeadNotFound { .. }),
        "{damage}"
    );

    bench.change("DELETE FROM log WHERE position = 2");
    assert!(bench.verify(None).is_err());
    let error = bench.store.stream(LOG, "order-1", 0).unwrap_err();
    assert!(error.to_string().contains("number 1 of stream"), "{error}");
    let error = bench.store.log(LOG, 0, 100).unwrap_err();
    assert!(
        error
            .to_string()
            .contains("position 2 is missing; 3 comes next"),
        "{error}"
    );
    assert!(bench.store.look_over(LOG).is_err());
    bench.change("DELETE FROM log");
    assert!(bench.verify(None).is_err());
}

#[test]
fn rows_that_changed_places_are_found() {
    let bench = Bench::new();
    bench.change("UPDATE log SET position = 100 WHERE position = 3");
    bench.change("UPDATE log SET position = 3 WHERE position = 4");
    bench.change("UPDATE log SET position = 4 WHERE position = 100");
    let damage = bench.verify(None).unwrap_err();
    assert!(
        matches!(damage, Damage::Row { position: 3, .. }),
        "{damage}"
    );
}

#[test]
fn a_row_hashed_anew_breaks_the_chain_behind_it() {
    let bench = Bench::new();
    let mut row = bench.store.log(LOG, 2, 1).unwrap().remove(0);
    row.body = b"never happened".to_vec();
    row.hash = row.expected_hash();
    let forged = "UPDATE log SET body = ?, hash = ? WHERE position = 3";
    bench
        .database
        .execute(forged, (&row.body, row.hash))
        .unwrap();
    let damage = bench.verify(None).unwrap_err();
    assert_eq!(
        damage.to_string(),
        "log \"shop-1\" at position 4: it is not chained to the row before"
    );
    // The last row has nothing behind it but the head.
    let bench = Bench::new();
    let mut row = bench.store.log(LOG, 4, 1).unwrap().remove(0);
    row.body = b"belt on".to_vec();
    row.hash = row.expected_hash();
    let forged = "UPDATE log SET body = ?, hash = ? WHERE position = 5";
    bench
        .database
        .execute(forged, (&row.body, row.hash))
        .unwrap();
    let damage = bench.verify(None).unwrap_err();
    assert!(matches!(damage, Damage::HeadHash { .. }), "{damage}");
}

//! Durable appends, one a commit and grouped, against bare inserts of the same columns
//! and indexes into SQLite with the same settings.

use crate::{median, timed};
use rusqlite::{Connection, params};
use serde_json::json;
use std::collections::BTreeMap;
use std::path::Path;
use store::{Command, NewEvent, Row, Sqlite, Store};

const LOG: &str = "shop";
const ROUNDS: u64 = 5;
const ALONE: u64 = 1_500;
const GROUP: u64 = 50;
const GROUPS: u64 = 200;

/// Alternating, so that a disk that grows slower is slower for both.
pub fn measure() {
    let (mut alone, mut grouped, mut gain) = (Vec::new(), Vec::new(), Vec::new());
    let (mut alone_a_second, mut grouped_a_second) = (Vec::new(), Vec::new());
    for _ in 0..ROUNDS {
        let ours = ours();
        let bare = bare();
        alone.push(ours.0 / bare.0);
        grouped.push(ours.1 / bare.1);
        gain.push(ours.1 / ours.0);
        alone_a_second.push(ours.0);
        grouped_a_second.push(ours.1);
    }
    println!(
        "{}",
        json!({
            "alone_to_bare": median(alone),
            "grouped_to_bare": median(grouped),
            "grouped_to_alone": median(gain),
            "alone_a_second": median(alone_a_second),
            "grouped_a_second": median(grouped_a_second),
        })
    );
}

/// The commands are made beforehand, as the rows of [`bare`] are.
fn ours() -> (f64, f64) {
    let folder = tempfile::tempdir().unwrap();
    let store = Sqlite::open(folder.path()).unwrap();
    let alone: Vec<Command> = (0..ALONE).map(command).collect();
    let groups: Vec<Vec<Command>> = (0..GROUPS)
        .map(|group| ALONE + group * GROUP)
        .map(|first| (first..first + GROUP).map(command).collect())
        .collect();
    let (_, time) = timed(|| {
        for command in alone {
            store.append(command).unwrap();
        }
    });
    let alone = ALONE as f64 / time.as_secs_f64();
    let (_, time) = timed(|| {
        for commands in groups {
            for answer in store.append_all(commands) {
                answer.unwrap();
            }
        }
    });
    (alone, (GROUPS * GROUP) as f64 / time.as_secs_f64())
}

/// The rows are made beforehand: only inserting and committing is timed.
fn bare() -> (f64, f64) {
    let folder = tempfile::tempdir().unwrap();
    let mut connection = bare_table(folder.path());
    let rows = rows(ALONE + GROUPS * GROUP);
    let (alone_rows, group_rows) = rows.split_at(usize::try_from(ALONE).unwrap());
    let (_, time) = timed(|| insert(&mut connection, alone_rows, 1));
    let alone = ALONE as f64 / time.as_secs_f64();
    let (_, time) = timed(|| insert(&mut connection, group_rows, 50));
    (alone, (GROUPS * GROUP) as f64 / time.as_secs_f64())
}

fn insert(connection: &mut Connection, rows: &[Row], group: usize) {
    for rows in rows.chunks(group) {
        let transaction = connection.transaction().unwrap();
        for row in rows {
            let mut statement = transaction
                .prepare_cached(
                    "INSERT INTO log VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
                )
                .unwrap();
            let parameters = params![
                row.log,
                i64::try_from(row.position).unwrap(),
                row.stream,
                i64::try_from(row.seq).unwrap(),
                row.kind,
                row.version,
                row.body,
                row.happened_at,
                row.device,
                i64::try_from(row.device_seq).unwrap(),
                row.recorded_at,
                row.who,
                row.command_id,
                row.nth,
                row.command_digest,
                row.prev_hash,
                row.hash
            ];
            statement.execute(parameters).unwrap();
        }
        transaction.commit().unwrap();
    }
}

/// The store's own table with its indexes, without its triggers, under its settings.
fn bare_table(folder: &Path) -> Connection {
    drop(Sqlite::open(folder).unwrap());
    let connection = Connection::open(folder.join("store.db")).unwrap();
    connection
        .execute_batch(
            "PRAGMA journal_mode = WAL;
             PRAGMA synchronous = FULL;
             DROP TRIGGER log_grows_at_its_end;
             DROP TRIGGER log_keeps_rows;
             DROP TRIGGER log_keeps_content;",
        )
        .unwrap();
    connection
}

fn rows(count: u64) -> Vec<Row> {
    let memory = store::Memory::new();
    let answers = memory.append_all((0..count).map(command).collect());
    let outcomes = answers.into_iter().map(Result::unwrap);
    outcomes
        .flat_map(|outcome| outcome.rows().to_vec())
        .collect()
}

/// One event of the usual size, in one of forty open orders.
fn command(id: u64) -> Command {
    let body = format!(
        r#"{{"moved":{{"moves":[{{"item":"bolt-{}","at":[1,2,3,4,5,6,7],"after":[],"left":{{"state":"out","piece":"original"}},"container":"tray A"}}]}}}}"#,
        id % 40
    );
    Command {
        log: LOG.to_owned(),
        command_id: format!("00000000-0000-7000-8000-{id:012}"),
        digest: store::commitment(&[0; 32], body.as_bytes()),
        who: "ana".to_owned(),
        device: "tablet-1".to_owned(),
        device_seq: id,
        happened_at: "2026-03-02T08:15:00Z".to_owned(),
        recorded_at: "2026-03-02T08:15:01Z".to_owned(),
        expected: BTreeMap::new(),
        events: vec![NewEvent {
            stream: format!("order:{}", id % 40),
            kind: "moved".to_owned(),
            version: 1,
            body: body.into_bytes(),
        }],
        private: Vec::new(),
        erase: Vec::new(),
    }
}

//! The tables, and how an older form is brought forward.

use std::path::Path;

use rusqlite::{Connection, TransactionBehavior};

use super::connect::{engine_error, open_error};
use crate::error::{EngineError, OpenError};

/// "bttn": marks the file as ours, so that another program's database is never touched.
const APPLICATION_ID: i64 = 0x6274_746e;

/// Where each stream ends, read off the rows themselves and not off an index.
macro_rules! streams {
    () => {
        "
    CREATE TABLE stream (
        log TEXT NOT NULL,
        stream TEXT NOT NULL,
        seq INTEGER NOT NULL,
        position INTEGER NOT NULL,
        hash BLOB NOT NULL,
        PRIMARY KEY (log, stream)
    ) STRICT, WITHOUT ROWID;
    INSERT INTO stream
        SELECT log, stream, max(seq), position, hash FROM log NOT INDEXED GROUP BY log, stream;
"
    };
}

/// Step n brings form n to form n + 1. A step that has been released is never changed.
const STEPS: [&str; 5] = [
    "
    CREATE TABLE log (
        log TEXT NOT NULL,
        position INTEGER NOT NULL,
        stream TEXT NOT NULL,
        seq INTEGER NOT NULL,
        kind TEXT NOT NULL,
        version INTEGER NOT NULL,
        body BLOB NOT NULL,
        happened_at TEXT NOT NULL,
        device TEXT NOT NULL,
        device_seq INTEGER NOT NULL,
        recorded_at TEXT NOT NULL,
        who TEXT NOT NULL,
        command_id TEXT NOT NULL,
        nth INTEGER NOT NULL,
        command_digest BLOB NOT NULL,
        prev_hash BLOB NOT NULL,
        hash BLOB NOT NULL,
        UNIQUE (log, position),
        UNIQUE (log, stream, seq),
        UNIQUE (log, command_id, nth)
    ) STRICT;
    CREATE INDEX log_device ON log (log, device, device_seq);
    -- Also keeps INSERT OR REPLACE out, which would delete without asking the next trigger.
    CREATE TRIGGER log_grows_at_its_end BEFORE INSERT ON log
        WHEN NEW.position IS NOT 1 + coalesce(
                (SELECT max(position) FROM log WHERE log = NEW.log), 0)
            OR NEW.seq IS NOT 1 + coalesce(
                (SELECT max(seq) FROM log WHERE log = NEW.log AND stream = NEW.stream), 0)
            OR EXISTS (SELECT 1 FROM log WHERE log = NEW.log
                AND command_id = NEW.command_id AND nth = NEW.nth)
        BEGIN SELECT RAISE(ABORT, 'rows of the log are only added at its end'); END;
    CREATE TRIGGER log_keeps_rows BEFORE DELETE ON log
        BEGIN SELECT RAISE(ABORT, 'rows of the log are never deleted'); END;
    CREATE TRIGGER log_keeps_content BEFORE UPDATE ON log
        BEGIN SELECT RAISE(ABORT, 'rows of the log are never changed'); END;

    CREATE TABLE head (
        log TEXT PRIMARY KEY,
        position INTEGER NOT NULL,
        hash BLOB NOT NULL
    ) STRICT;

    -- salt NULL: erased, and never to come back.
    -- content NULL but not salt: it stands in the files beside.
    CREATE TABLE private (
        log TEXT NOT NULL,
        id BLOB NOT NULL,
        salt BLOB,
        media TEXT,
        content BLOB,
        PRIMARY KEY (log, id)
    ) STRICT;
    CREATE INDEX private_id ON private (id);
",
    CACHES,
    // What was erased is asked for at every start; without this, by reading every content.
    "
    CREATE INDEX private_erased ON private (id) WHERE salt IS NULL;
",
    // A log that is landing is part of a copy.
    concat!(streams!(), "ALTER TABLE head ADD COLUMN landing BLOB;"),
    // Who may use it; no part of the record, and no cache of it.
    "
    CREATE TABLE access (
        log TEXT NOT NULL,
        drawer TEXT NOT NULL,
        key TEXT NOT NULL,
        version INTEGER NOT NULL,
        value TEXT NOT NULL,
        PRIMARY KEY (log, drawer, key)
    ) STRICT, WITHOUT ROWID;
",
];

const CACHES: &str = "
    CREATE TABLE cache (
        log TEXT NOT NULL,
        cache TEXT NOT NULL,
        position INTEGER NOT NULL,
        hash BLOB NOT NULL,
        PRIMARY KEY (log, cache)
    ) STRICT;
    CREATE TABLE card (
        log TEXT NOT NULL,
        cache TEXT NOT NULL,
        drawer TEXT NOT NULL,
        key TEXT NOT NULL,
        value TEXT NOT NULL,
        of BLOB,
        PRIMARY KEY (log, cache, drawer, key)
    ) STRICT, WITHOUT ROWID;
    CREATE INDEX card_of ON card (log, of) WHERE of IS NOT NULL;
";

/// What an older form that is only read may lack.
#[derive(Debug, Clone, Copy)]
pub(super) struct Has {
    pub(super) caches: bool,
    /// Where streams end, and whether a log is landing.
    pub(super) ends: bool,
    /// Who may use it.
    pub(super) access: bool,
}

impl Has {
    pub(super) const ALL: Self = Self {
        caches: true,
        ends: true,
        access: true,
    };
}

/// Makes everything again that follows from the rows: indexes, where streams end. Caches are
/// thrown away; whoever goes by them makes them again. Rows and head are read only.
pub(super) fn remake(connection: &mut Connection) -> Result<(), EngineError> {
    let mut remake = || -> rusqlite::Result<()> {
        let transaction = connection.transaction_with_behavior(TransactionBehavior::Immediate)?;
        transaction.execute_batch("DROP TABLE stream; DROP TABLE card; DROP TABLE cache;")?;
        transaction.execute_batch(CACHES)?;
        // Before the streams: they are read off the table itself, not off an index.
        transaction.execute_batch("REINDEX;")?;
        transaction.execute_batch(streams!())?;
        transaction.commit()
    };
    remake().map_err(|error| engine_error(&error))
}

/// Makes the tables in a new database, or brings an older one forward, step by step.
pub(super) fn bring_forward(connection: &mut Connection, database: &Path) -> Result<(), OpenError> {
    let fault = |error: rusqlite::Error| open_error(database, &error);
    let found = form(connection, database)?;
    for (form, step) in (0..).zip(STEPS) {
        if form < found {
            continue;
        }
        let transaction = connection.transaction().map_err(fault)?;
        transaction.execute_batch(step).map_err(fault)?;
        transaction
            .pragma_update(None, "application_id", APPLICATION_ID)
            .map_err(fault)?;
        transaction
            .pragma_update(None, "user_version", form + 1)
            .map_err(fault)?;
        transaction.commit().map_err(fault)?;
    }
    Ok(())
}

/// Fails unless the database can be read as it stands, since what only reads brings
/// nothing forward; says what there is in it.
pub(super) fn check_readable(connection: &Connection, database: &Path) -> Result<Has, OpenError> {
    /// The first forms that have these.
    const WITH_CACHES: i64 = 2;
    const WITH_ENDS: i64 = 4;
    const WITH_ACCESS: i64 = 5;
    match form(connection, database)? {
        0 => Err(OpenError::NotAStore {
            place: database.display().to_string(),
            why: "nothing was ever written to it".to_owned(),
        }),
        // The log reads the same in every form so far.
        found => Ok(Has {
            caches: found >= WITH_CACHES,
            ends: found >= WITH_ENDS,
            access: found >= WITH_ACCESS,
        }),
    }
}

/// The form of a database: 0 if it is empty. One that is not ours, or newer, is refused.
fn form(connection: &Connection, database: &Path) -> Result<i64, OpenError> {
    let fault = |error: rusqlite::Error| open_error(database, &error);
    let place = || database.display().to_string();
    let known = STEPS.len() as i64;
    let number = |connection: &Connection, name| {
        connection.pragma_query_value(None, name, |row| row.get::<_, i64>(0))
    };
    let found = number(connection, "user_version").map_err(fault)?;
    let marked = number(connection, "application_id").map_err(fault)?;
    if marked != APPLICATION_ID {
        let tables: i64 = connection
            .query_row("SELECT count(*) FROM sqlite_schema", [], |row| row.get(0))
            .map_err(fault)?;
        if marked != 0 || found != 0 || tables != 0 {
            return Err(OpenError::NotAStore {
                place: place(),
                why: "it is another program's database".to_owned(),
            });
        }
    }
    if found > known {
        return Err(OpenError::Newer {
            place: place(),
            found,
            known,
        });
    }
    Ok(found)
}

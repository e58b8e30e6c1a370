//! The tables, in a schema of their own, and how an older form is brought forward.

use postgres::Client;

use super::connect::engine_error;
use crate::error::{EngineError, OpenError};

/// Held while tables are made, so that two programs started at once don't both do it.
const ADVISORY_LOCK: i64 = 0x6274_746e;

/// Step n brings form n to form n + 1. A step that has been released is never changed.
const STEPS: [&str; 4] = [
    r#"
    CREATE TABLE log (
        log TEXT COLLATE "C" NOT NULL,
        position BIGINT NOT NULL,
        stream TEXT COLLATE "C" NOT NULL,
        seq BIGINT NOT NULL,
        kind TEXT NOT NULL,
        version BIGINT NOT NULL,
        body BYTEA NOT NULL,
        happened_at TEXT NOT NULL,
        device TEXT COLLATE "C" NOT NULL,
        device_seq BIGINT NOT NULL,
        recorded_at TEXT NOT NULL,
        who TEXT NOT NULL,
        command_id TEXT COLLATE "C" NOT NULL,
        nth BIGINT NOT NULL,
        command_digest BYTEA NOT NULL,
        prev_hash BYTEA NOT NULL,
        hash BYTEA NOT NULL,
        PRIMARY KEY (log, position),
        UNIQUE (log, stream, seq),
        UNIQUE (log, command_id, nth)
    );
    CREATE INDEX log_device ON log (log, device, device_seq);
    CREATE FUNCTION keep_log() RETURNS trigger LANGUAGE plpgsql AS
        $$ BEGIN RAISE EXCEPTION 'rows of the log are never changed or deleted'; END $$;
    CREATE TRIGGER log_keeps_rows BEFORE UPDATE OR DELETE OR TRUNCATE ON log
        FOR EACH STATEMENT EXECUTE FUNCTION keep_log();

    CREATE TABLE head (
        log TEXT COLLATE "C" PRIMARY KEY,
        position BIGINT NOT NULL,
        hash BYTEA NOT NULL
    );

    -- salt NULL: erased, and never to come back.
    CREATE TABLE private (
        log TEXT COLLATE "C" NOT NULL,
        id BYTEA NOT NULL,
        salt BYTEA,
        media TEXT,
        content BYTEA,
        PRIMARY KEY (log, id)
    );
"#,
    r#"
    CREATE TABLE cache (
        log TEXT COLLATE "C" NOT NULL,
        cache TEXT COLLATE "C" NOT NULL,
        position BIGINT NOT NULL,
        hash BYTEA NOT NULL,
        PRIMARY KEY (log, cache)
    );
    CREATE TABLE card (
        log TEXT COLLATE "C" NOT NULL,
        cache TEXT COLLATE "C" NOT NULL,
        drawer TEXT COLLATE "C" NOT NULL,
        key TEXT COLLATE "C" NOT NULL,
        value TEXT COLLATE "C" NOT NULL,
        of BYTEA,
        PRIMARY KEY (log, cache, drawer, key)
    );
    CREATE INDEX card_of ON card (log, of) WHERE of IS NOT NULL;
"#,
    // Where each stream ends, beside its rows. A log that is landing is part of a copy.
    r#"
    CREATE TABLE stream (
        log TEXT COLLATE "C" NOT NULL,
        stream TEXT COLLATE "C" NOT NULL,
        seq BIGINT NOT NULL,
        position BIGINT NOT NULL,
        hash BYTEA NOT NULL,
        PRIMARY KEY (log, stream)
    );
    INSERT INTO stream
        SELECT DISTINCT ON (log, stream) log, stream, seq, position, hash
        FROM log ORDER BY log, stream, seq DESC;
    ALTER TABLE head ADD COLUMN landing BYTEA;
"#,
    // Who may use it; no part of the record, and no cache of it.
    r#"
    CREATE TABLE access (
        log TEXT COLLATE "C" NOT NULL,
        drawer TEXT COLLATE "C" NOT NULL,
        key TEXT COLLATE "C" NOT NULL,
        version BIGINT NOT NULL,
        value TEXT NOT NULL,
        PRIMARY KEY (log, drawer, key)
    );
"#,
];

/// Makes again from the rows whatever follows from them.
pub(super) const REMAKE: &str = "
    LOCK TABLE head IN EXCLUSIVE MODE;
    REINDEX TABLE log;
    REINDEX TABLE private;
    DELETE FROM stream;
    INSERT INTO stream
        SELECT DISTINCT ON (log, stream) log, stream, seq, position, hash
        FROM log ORDER BY log, stream, seq DESC;
    DELETE FROM card;
    DELETE FROM cache;
    REINDEX TABLE stream;
    REINDEX TABLE card;
    REINDEX TABLE cache;
";

/// Makes the tables in a new database, or brings an older one forward, step by step.
pub(super) fn bring_forward(client: &mut Client, place: &str) -> Result<(), OpenError> {
    let fault = |error: postgres::Error| engine_error(&error);
    let known = STEPS.len() as i64;
    let mut transaction = client.transaction().map_err(fault)?;
    transaction
        .execute("SELECT pg_advisory_xact_lock($1)", &[&ADVISORY_LOCK])
        .map_err(fault)?;
    let tables: i64 = count(
        &mut transaction,
        "SELECT count(*) FROM pg_tables WHERE schemaname = 'buttonup'",
    )?;
    let forms: i64 = count(
        &mut transaction,
        "SELECT count(*) FROM pg_tables WHERE schemaname = 'buttonup' AND tablename = 'form'",
    )?;
    if forms == 0 {
        if tables != 0 {
            return Err(OpenError::NotAStore {
                place: place.to_owned(),
                why: "another program's tables stand in the schema buttonup".to_owned(),
            });
        }
        transaction
            .batch_execute(
                "CREATE SCHEMA IF NOT EXISTS buttonup;
                 CREATE TABLE form (number BIGINT NOT NULL);
                 INSERT INTO form VALUES (0)",
            )
            .map_err(fault)?;
    }
    let found = count(&mut transaction, "SELECT max(number) FROM form")?;
    if found > known {
        return Err(OpenError::Newer {
            place: place.to_owned(),
            found,
            known,
        });
    }
    for (form, step) in (0..).zip(STEPS) {
        if form >= found {
            transaction.batch_execute(step).map_err(fault)?;
        }
    }
    if found < known {
        transaction
            .execute("UPDATE form SET number = $1", &[&known])
            .map_err(fault)?;
    }
    Ok(transaction.commit().map_err(fault)?)
}

fn count(transaction: &mut postgres::Transaction<'_>, sql: &str) -> Result<i64, EngineError> {
    transaction
        .query_one(sql, &[])
        .and_then(|row| row.try_get(0))
        .map_err(|error| engine_error(&error))
}

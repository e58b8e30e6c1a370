//! Reading, for readers and for the writer inside its transaction alike.

use rusqlite::{Connection, OptionalExtension, Params};

use super::connect::engine_error;
use super::files::Files;
use super::schema::Has;
use crate::append::{
    Locked, StreamEnd, check_log, check_private, check_read, check_stream, damaged,
};
use crate::error::EngineError;
use crate::row::{Hash, Head, Private, Row, StreamHead};

macro_rules! select_rows {
    ($rest:literal) => {
        concat!(
            "SELECT log, position, stream, seq, kind, version, body, happened_at, device,
                device_seq, recorded_at, who, command_id, nth, command_digest, prev_hash, hash
             FROM log ",
            $rest
        )
    };
}

pub(super) fn stream(
    connection: &Connection,
    has: Has,
    log: &str,
    stream: &str,
    after_seq: u64,
) -> Result<Vec<Row>, EngineError> {
    // Read first: what comes in meanwhile is behind it.
    let end = || stream_end(connection, log, stream);
    let mut noted = if has.ends { end()? } else { None };
    let rows = rows_of_stream(connection, log, stream, after_seq)?;
    if !has.ends {
        noted = rows.last().map(StreamEnd::at);
    } else if noted.is_none() && !rows.is_empty() {
        noted = end()?;
    }
    check_stream(log, stream, after_seq, noted, &rows)?;
    Ok(rows)
}

/// The rows as they are found, though some may be missing.
pub(super) fn rows_of_stream(
    connection: &Connection,
    log: &str,
    stream: &str,
    after_seq: u64,
) -> Result<Vec<Row>, EngineError> {
    let sql = select_rows!("WHERE log = ?1 AND stream = ?2 AND seq > ?3 ORDER BY seq");
    rows(connection, sql, (log, stream, number(after_seq)))
}

/// Where a stream was noted to end.
pub(super) fn stream_end(
    connection: &Connection,
    log: &str,
    stream: &str,
) -> Result<Option<StreamEnd>, EngineError> {
    let sql = "SELECT seq, position, hash FROM stream WHERE log = ?1 AND stream = ?2";
    let found = one(connection, sql, (log, stream), |row| {
        Ok((row.get(0)?, row.get(1)?, row.get(2)?))
    })?;
    found
        .map(|(seq, position, hash)| {
            Ok(StreamEnd {
                seq: unsigned(log, seq)?,
                position: unsigned(log, position)?,
                hash,
            })
        })
        .transpose()
}

pub(super) fn last_of_stream(
    connection: &Connection,
    log: &str,
    stream: &str,
) -> Result<Option<Row>, EngineError> {
    let sql = select_rows!("WHERE log = ?1 AND stream = ?2 ORDER BY seq DESC LIMIT 1");
    Ok(rows(connection, sql, (log, stream))?.pop())
}

pub(super) fn log(
    connection: &Connection,
    log: &str,
    after_position: u64,
    limit: usize,
) -> Result<Vec<Row>, EngineError> {
    // Read first: what comes in meanwhile is behind it.
    let head = head(connection, log)?;
    let sql = select_rows!("WHERE log = ?1 AND position > ?2 ORDER BY position LIMIT ?3");
    let most = number(limit as u64);
    let rows = rows(connection, sql, (log, number(after_position), most))?;
    check_log(log, after_position, limit, head, &rows)?;
    Ok(rows)
}

/// Whether as many rows are there as the head says, and it says so of the last one.
pub(super) fn look_over(connection: &Connection, log: &str) -> Result<(), EngineError> {
    let head = head(connection, log)?;
    let sql = "SELECT count(*) FROM log WHERE log = ?1 AND position <= ?2";
    let count = one(connection, sql, (log, number(head.position)), |row| {
        row.get(0)
    })?;
    let count = unsigned(log, count.unwrap_or(0))?;
    let last = match head.position.checked_sub(1) {
        Some(before) => self::log(connection, log, before, 1)?.pop(),
        None => None,
    };
    let last = last.map_or_else(|| Head::empty(log), |row| Head::at(&row));
    if count == head.position && last == head {
        return Ok(());
    }
    let what = format!(
        "it holds {count} rows, but its head says {}, or the last row is another",
        head.position
    );
    Err(damaged(log, None, &what))
}

pub(super) fn landing(connection: &Connection, log: &str) -> Result<Option<Hash>, EngineError> {
    let sql = "SELECT landing FROM head WHERE log = ?1";
    Ok(one(connection, sql, [log], |row| row.get(0))?.flatten())
}

/// The commitments of all contents that are kept.
pub(super) fn held(connection: &Connection, log: &str) -> Result<Vec<Hash>, EngineError> {
    let sql = "SELECT id FROM private WHERE log = ?1 AND salt IS NOT NULL";
    many(connection, sql, [log], |row| row.get(0))
}

pub(super) fn last_row(connection: &Connection, log: &str) -> Result<Option<Row>, EngineError> {
    let sql = select_rows!("WHERE log = ?1 ORDER BY position DESC LIMIT 1");
    Ok(rows(connection, sql, [log])?.pop())
}

pub(super) fn command(
    connection: &Connection,
    log: &str,
    command_id: &str,
) -> Result<Vec<Row>, EngineError> {
    let sql = select_rows!("WHERE log = ?1 AND command_id = ?2 ORDER BY nth");
    rows(connection, sql, (log, command_id))
}

pub(super) fn head(connection: &Connection, log: &str) -> Result<Head, EngineError> {
    let sql = "SELECT position, hash FROM head WHERE log = ?1";
    match one(connection, sql, [log], |row| Ok((row.get(0)?, row.get(1)?)))? {
        Some((position, hash)) => Ok(Head {
            position: unsigned(log, position)?,
            hash,
        }),
        None => Ok(Head::empty(log)),
    }
}

/// The head, and whether the log is landing, in one question.
pub(super) fn locked(connection: &Connection, log: &str) -> Result<Locked, EngineError> {
    let sql = "SELECT position, hash, landing FROM head WHERE log = ?1";
    let found = one(connection, sql, [log], |row| {
        Ok((row.get(0)?, row.get(1)?, row.get(2)?))
    })?;
    let Some((position, hash, landing)) = found else {
        return Ok(Locked {
            head: Head::empty(log),
            landing: None,
        });
    };
    let position = unsigned(log, position)?;
    Ok(Locked {
        head: Head { position, hash },
        landing,
    })
}

pub(super) fn streams(connection: &Connection, log: &str) -> Result<Vec<StreamHead>, EngineError> {
    let sql = "SELECT stream, max(seq) FROM log WHERE log = ?1 GROUP BY stream ORDER BY stream";
    let found: Vec<(String, i64)> =
        many(connection, sql, [log], |row| Ok((row.get(0)?, row.get(1)?)))?;
    found
        .into_iter()
        .map(|(stream, seq)| {
            let seq = unsigned(log, seq)?;
            Ok(StreamHead { stream, seq })
        })
        .collect()
}

pub(super) fn logs(connection: &Connection) -> Result<Vec<String>, EngineError> {
    let sql = "SELECT log FROM head WHERE position > 0 ORDER BY log";
    many(connection, sql, [], |row| row.get(0))
}

pub(super) fn device_seq(
    connection: &Connection,
    log: &str,
    device: &str,
) -> Result<Option<u64>, EngineError> {
    let sql = "SELECT max(device_seq) FROM log WHERE log = ?1 AND device = ?2";
    let highest: Option<Option<i64>> = one(connection, sql, (log, device), |row| row.get(0))?;
    highest
        .flatten()
        .map(|number| unsigned(log, number))
        .transpose()
}

/// One row of the table `private`, before a file beside it is read.
type Kept = (Option<Hash>, Option<String>, Option<Vec<u8>>);

pub(super) fn private(
    connection: &Connection,
    files: &Files,
    log: &str,
    id: &Hash,
) -> Result<Option<Private>, EngineError> {
    let sql = "SELECT salt, media, content FROM private WHERE log = ?1 AND id = ?2";
    let kept: Option<Kept> = one(connection, sql, (log, id), |row| {
        Ok((row.get(0)?, row.get(1)?, row.get(2)?))
    })?;
    let Some((Some(salt), media, content)) = kept else {
        return Ok(None);
    };
    let content = match content {
        Some(content) => content,
        None => match files.read(id)? {
            Some(content) => content,
            // Erased since the row was read, or lost: the row now tells which.
            None if is_erased(connection, log, id)? => return Ok(None),
            None => {
                let what = format!("the file of private content {} is missing", hex::encode(id));
                return Err(damaged(log, None, &what));
            }
        },
    };
    let private = Private {
        id: *id,
        salt,
        media: media.unwrap_or_default(),
        content,
    };
    check_private(log, private).map(Some)
}

/// Whether there is a row that says so; a content that never came was not erased.
pub(super) fn is_erased(
    connection: &Connection,
    log: &str,
    id: &Hash,
) -> Result<bool, EngineError> {
    let sql = "SELECT salt IS NULL FROM private WHERE log = ?1 AND id = ?2";
    let erased = one(connection, sql, (log, id), |row| row.get(0))?;
    Ok(erased.unwrap_or(false))
}

/// Numbers above SQLite's largest stand for "beyond every row".
pub(super) fn number(value: u64) -> i64 {
    i64::try_from(value).unwrap_or(i64::MAX)
}

pub(super) fn unsigned(log: &str, value: i64) -> Result<u64, EngineError> {
    u64::try_from(value).map_err(|_| damaged(log, None, "a number is below zero"))
}

pub(super) fn one<T>(
    connection: &Connection,
    sql: &str,
    parameters: impl Params,
    read: impl FnOnce(&rusqlite::Row<'_>) -> rusqlite::Result<T>,
) -> Result<Option<T>, EngineError> {
    connection
        .prepare_cached(sql)
        .and_then(|mut statement| statement.query_row(parameters, read).optional())
        .map_err(|error| read_error(&error))
}

pub(super) fn many<T>(
    connection: &Connection,
    sql: &str,
    parameters: impl Params,
    read: impl FnMut(&rusqlite::Row<'_>) -> rusqlite::Result<T>,
) -> Result<Vec<T>, EngineError> {
    connection
        .prepare_cached(sql)
        .and_then(|mut statement| statement.query_map(parameters, read)?.collect())
        .map_err(|error| read_error(&error))
}

fn rows(
    connection: &Connection,
    sql: &str,
    parameters: impl Params,
) -> Result<Vec<Row>, EngineError> {
    let fault = |error: rusqlite::Error| read_error(&error);
    let mut statement = connection.prepare_cached(sql).map_err(fault)?;
    let mut found = statement.query(parameters).map_err(fault)?;
    let mut rows = Vec::new();
    while let Some(row) = found.next().map_err(fault)? {
        rows.push(check_read(columns(row)?)?);
    }
    Ok(rows)
}

fn columns(row: &rusqlite::Row<'_>) -> Result<Row, EngineError> {
    let position: i64 = row.get(1).map_err(|error| read_error(&error))?;
    let read = || -> rusqlite::Result<Row> {
        Ok(Row {
            log: row.get(0)?,
            position: unsigned_column(row, 1)?,
            stream: row.get(2)?,
            seq: unsigned_column(row, 3)?,
            kind: row.get(4)?,
            version: row.get(5)?,
            body: row.get(6)?,
            happened_at: row.get(7)?,
            device: row.get(8)?,
            device_seq: unsigned_column(row, 9)?,
            recorded_at: row.get(10)?,
            who: row.get(11)?,
            command_id: row.get(12)?,
            nth: row.get(13)?,
            command_digest: row.get(14)?,
            prev_hash: row.get(15)?,
            hash: row.get(16)?,
        })
    };
    read().map_err(|error| match read_error(&error) {
        EngineError::Damaged { what, .. } => {
            let log: String = row.get(0).unwrap_or_default();
            damaged(&log, u64::try_from(position).ok(), &what)
        }
        other => other,
    })
}

fn unsigned_column(row: &rusqlite::Row<'_>, index: usize) -> rusqlite::Result<u64> {
    let value: i64 = row.get(index)?;
    u64::try_from(value).map_err(|_| rusqlite::Error::IntegralValueOutOfRange(index, value))
}

/// A value that is not of the form that was written is damage, not a fault of the disk.
fn read_error(error: &rusqlite::Error) -> EngineError {
    match error {
        rusqlite::Error::FromSqlConversionFailure(..)
        | rusqlite::Error::IntegralValueOutOfRange(..)
        | rusqlite::Error::InvalidColumnType(..)
        | rusqlite::Error::Utf8Error(..) => damaged("", None, &error.to_string()),
        error => engine_error(error),
    }
}

//! Reading, for readers and inside an appending transaction alike.

use std::collections::BTreeMap;

use postgres::GenericClient;
use postgres::types::FromSql;

use super::connect::{Link, engine_error};
use crate::append::{StreamEnd, check_log, check_private, check_read, check_stream, damaged};
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
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    stream: &str,
    after_seq: u64,
) -> Result<Vec<Row>, EngineError> {
    // Read first: what comes in meanwhile is behind it.
    let mut end = stream_end(link, log, stream)?;
    let rows = rows_of_stream(link, log, stream, after_seq)?;
    if end.is_none() && !rows.is_empty() {
        end = stream_end(link, log, stream)?;
    }
    check_stream(log, stream, after_seq, end, &rows)?;
    Ok(rows)
}

/// The rows as they are found, though some may be missing.
pub(super) fn rows_of_stream(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    stream: &str,
    after_seq: u64,
) -> Result<Vec<Row>, EngineError> {
    let sql = select_rows!("WHERE log = $1 AND stream = $2 AND seq > $3 ORDER BY seq");
    rows(&link.query(sql, &[&log, &stream, &number(after_seq)])?)
}

/// Where a stream was noted to end.
pub(super) fn stream_end(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    stream: &str,
) -> Result<Option<StreamEnd>, EngineError> {
    let sql = "SELECT seq, position, hash FROM stream WHERE log = $1 AND stream = $2";
    let found = link.query(sql, &[&log, &stream])?;
    let end = |row: &postgres::Row| {
        Ok(StreamEnd {
            seq: unsigned(log, column(row, 0)?)?,
            position: unsigned(log, column(row, 1)?)?,
            hash: hash(log, column(row, 2)?)?,
        })
    };
    found.first().map(end).transpose()
}

pub(super) fn last_of_stream(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    stream: &str,
) -> Result<Option<Row>, EngineError> {
    let sql = select_rows!("WHERE log = $1 AND stream = $2 ORDER BY seq DESC LIMIT 1");
    Ok(rows(&link.query(sql, &[&log, &stream])?)?.pop())
}

pub(super) fn log(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    after_position: u64,
    limit: usize,
) -> Result<Vec<Row>, EngineError> {
    // Read first: what comes in meanwhile is behind it.
    let head = head(link, log)?;
    let sql = select_rows!("WHERE log = $1 AND position > $2 ORDER BY position LIMIT $3");
    let most = number(limit as u64);
    let rows = rows(&link.query(sql, &[&log, &number(after_position), &most])?)?;
    check_log(log, after_position, limit, head, &rows)?;
    Ok(rows)
}

/// Whether as many rows are there as the head says, and it says so of the last one.
pub(super) fn look_over(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
) -> Result<(), EngineError> {
    let head = head(link, log)?;
    let sql = "SELECT count(*) FROM log WHERE log = $1 AND position <= $2";
    let count = highest(&link.query(sql, &[&log, &number(head.position)])?, log)?.unwrap_or(0);
    let last = match head.position.checked_sub(1) {
        Some(before) => self::log(link, log, before, 1)?.pop(),
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

pub(super) fn landing(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
) -> Result<Option<Hash>, EngineError> {
    let sql = "SELECT landing FROM head WHERE log = $1";
    match link.query(sql, &[&log])?.first() {
        Some(row) => landing_of(row, 0, log),
        None => Ok(None),
    }
}

pub(super) fn landing_of(
    row: &postgres::Row,
    index: usize,
    log: &str,
) -> Result<Option<Hash>, EngineError> {
    let landing: Option<&[u8]> = column(row, index)?;
    landing.map(|landing| hash(log, landing)).transpose()
}

/// The commitments of all contents that are kept.
pub(super) fn held(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
) -> Result<Vec<Hash>, EngineError> {
    let sql = "SELECT id FROM private WHERE log = $1 AND salt IS NOT NULL";
    let found = link.query(sql, &[&log])?;
    found.iter().map(|row| hash(log, column(row, 0)?)).collect()
}

pub(super) fn last_row(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
) -> Result<Option<Row>, EngineError> {
    let sql = select_rows!("WHERE log = $1 ORDER BY position DESC LIMIT 1");
    Ok(rows(&link.query(sql, &[&log])?)?.pop())
}

pub(super) fn command(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    command_id: &str,
) -> Result<Vec<Row>, EngineError> {
    let sql = select_rows!("WHERE log = $1 AND command_id = $2 ORDER BY nth");
    rows(&link.query(sql, &[&log, &command_id])?)
}

pub(super) fn head(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
) -> Result<Head, EngineError> {
    let sql = "SELECT position, hash FROM head WHERE log = $1";
    match link.query(sql, &[&log])?.first() {
        Some(row) => head_of(row, log),
        None => Ok(Head::empty(log)),
    }
}

pub(super) fn head_of(row: &postgres::Row, log: &str) -> Result<Head, EngineError> {
    Ok(Head {
        position: unsigned(log, column(row, 0)?)?,
        hash: hash(log, column(row, 1)?)?,
    })
}

/// The last position of every log that holds anything.
pub(super) fn heads(
    link: &mut Link<'_, impl GenericClient>,
) -> Result<BTreeMap<String, u64>, EngineError> {
    let sql = "SELECT log, position FROM head WHERE position > 0";
    let mut heads = BTreeMap::new();
    for row in link.query(sql, &[])? {
        let log: String = column(&row, 0)?;
        let position = unsigned(&log, column(&row, 1)?)?;
        heads.insert(log, position);
    }
    Ok(heads)
}

pub(super) fn streams(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
) -> Result<Vec<StreamHead>, EngineError> {
    let sql = "SELECT stream, max(seq) FROM log WHERE log = $1 GROUP BY stream ORDER BY stream";
    let mut streams = Vec::new();
    for row in link.query(sql, &[&log])? {
        streams.push(StreamHead {
            stream: column(&row, 0)?,
            seq: unsigned(log, column(&row, 1)?)?,
        });
    }
    Ok(streams)
}

pub(super) fn device_seq(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    device: &str,
) -> Result<Option<u64>, EngineError> {
    let sql = "SELECT max(device_seq) FROM log WHERE log = $1 AND device = $2";
    highest(&link.query(sql, &[&log, &device])?, log)
}

pub(super) fn private(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    id: &Hash,
) -> Result<Option<Private>, EngineError> {
    let sql = "SELECT salt, media, content FROM private
               WHERE log = $1 AND id = $2 AND salt IS NOT NULL";
    let found = link.query(sql, &[&log, &id.as_slice()])?;
    let Some(row) = found.first() else {
        return Ok(None);
    };
    let media: Option<String> = column(row, 1)?;
    let content: Option<Vec<u8>> = column(row, 2)?;
    let private = Private {
        id: *id,
        salt: hash(log, column(row, 0)?)?,
        media: media.unwrap_or_default(),
        content: content.unwrap_or_default(),
    };
    check_private(log, private).map(Some)
}

/// Whether there is a row that says so; a content that never came was not erased.
pub(super) fn is_erased(
    link: &mut Link<'_, impl GenericClient>,
    log: &str,
    id: &Hash,
) -> Result<bool, EngineError> {
    let sql = "SELECT 1 FROM private WHERE log = $1 AND id = $2 AND salt IS NULL";
    Ok(!link.query(sql, &[&log, &id.as_slice()])?.is_empty())
}

/// Numbers above the database's largest stand for "beyond every row".
pub(super) fn number(value: u64) -> i64 {
    i64::try_from(value).unwrap_or(i64::MAX)
}

fn highest(found: &[postgres::Row], log: &str) -> Result<Option<u64>, EngineError> {
    let highest: Option<i64> = match found.first() {
        Some(row) => column(row, 0)?,
        None => None,
    };
    highest.map(|number| unsigned(log, number)).transpose()
}

fn rows(found: &[postgres::Row]) -> Result<Vec<Row>, EngineError> {
    found.iter().map(|row| check_read(columns(row)?)).collect()
}

fn columns(row: &postgres::Row) -> Result<Row, EngineError> {
    let log: String = column(row, 0)?;
    let position: i64 = column(row, 1)?;
    let here = u64::try_from(position).ok();
    let unsigned = |index| -> Result<u64, EngineError> {
        u64::try_from(column::<i64>(row, index)?)
            .map_err(|_| damaged(&log, here, "a number is below zero"))
    };
    let small = |index| -> Result<u32, EngineError> {
        u32::try_from(column::<i64>(row, index)?)
            .map_err(|_| damaged(&log, here, "a number is out of range"))
    };
    let hash = |index| -> Result<Hash, EngineError> {
        Hash::try_from(column::<&[u8]>(row, index)?)
            .map_err(|_| damaged(&log, here, "a hash has not 32 bytes"))
    };
    Ok(Row {
        position: unsigned(1)?,
        stream: column(row, 2)?,
        seq: unsigned(3)?,
        kind: column(row, 4)?,
        version: small(5)?,
        body: column(row, 6)?,
        happened_at: column(row, 7)?,
        device: column(row, 8)?,
        device_seq: unsigned(9)?,
        recorded_at: column(row, 10)?,
        who: column(row, 11)?,
        command_id: column(row, 12)?,
        nth: small(13)?,
        command_digest: hash(14)?,
        prev_hash: hash(15)?,
        hash: hash(16)?,
        log,
    })
}

pub(super) fn column<'a, T: FromSql<'a>>(
    row: &'a postgres::Row,
    index: usize,
) -> Result<T, EngineError> {
    row.try_get(index).map_err(|error| engine_error(&error))
}

pub(super) fn unsigned(log: &str, value: i64) -> Result<u64, EngineError> {
    u64::try_from(value).map_err(|_| damaged(log, None, "a number is below zero"))
}

pub(super) fn hash(log: &str, bytes: &[u8]) -> Result<Hash, EngineError> {
    Hash::try_from(bytes).map_err(|_| damaged(log, None, "a hash or salt has not 32 bytes"))
}

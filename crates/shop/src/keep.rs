//! Keeping the record: verifying it, and writing it out.

use crate::trouble::{Trouble, TroubleKind};
use repair::Words;
use serde_json::{Value, json};
use store::{Checks, Damage, Hash, Row, Store, Verified};

/// The commitments an event holds: every string of 64 hexadecimal digits in its body.
/// No name of a thing is that long, so nothing else looks like one.
#[must_use]
pub fn commitments(row: &Row) -> Vec<Hash> {
    if row.kind == "erased" {
        return Vec::new();
    }
    let mut out = Vec::new();
    if let Ok(body) = serde_json::from_slice::<Value>(&row.body) {
        gather(&body, &mut out);
    }
    out
}

/// The commitments an event says were erased.
#[must_use]
pub fn erased(row: &Row) -> Vec<Hash> {
    let mut out = Vec::new();
    if row.kind == "erased"
        && let Ok(body) = serde_json::from_slice::<Value>(&row.body)
    {
        gather(&body, &mut out);
    }
    out
}

fn gather(value: &Value, out: &mut Vec<Hash>) {
    match value {
        Value::String(text) => out.extend(Words::from_hex(text).map(|words| words.0)),
        Value::Array(list) => list.iter().for_each(|inner| gather(inner, out)),
        Value::Object(map) => map.values().for_each(|inner| gather(inner, out)),
        _ => {}
    }
}

/// Verifies a shop's log from its first row to its last.
///
/// # Errors
/// The first [`Damage`] found.
pub fn verify(store: &dyn Store, log: &str, head: Option<Hash>) -> Result<Verified, Damage> {
    store::verify(
        store,
        log,
        &Checks {
            head,
            commitments: &commitments,
            erased: &erased,
        },
    )
}

/// Writes every row of a log as one line of JSON, private texts with it.
///
/// # Errors
/// [`Trouble`], if the record cannot be read or the line cannot be written.
pub fn export(
    store: &dyn Store,
    log: &str,
    mut write: impl FnMut(&Value) -> std::io::Result<()>,
) -> Result<u64, Trouble> {
    const PAGE: usize = 1_000;
    let mut after = 0;
    loop {
        let rows = store.log(log, after, PAGE)?;
        let Some(last) = rows.last() else {
            return Ok(after);
        };
        after = last.position;
        for row in &rows {
            write(&line(store, log, row)?).map_err(|error| {
                Trouble::new(
                    TroubleKind::Record,
                    "the export",
                    error.to_string(),
                    "make room, or write it elsewhere",
                )
            })?;
        }
    }
}

fn line(store: &dyn Store, log: &str, row: &Row) -> Result<Value, Trouble> {
    let mut private = Vec::new();
    for id in commitments(row) {
        if let Some(content) = store.private(log, &id)? {
            private.push(json!({
                "id": Words(id).hex(),
                "salt": Words(content.salt).hex(),
                "media": content.media,
                "text": String::from_utf8(content.content).ok(),
            }));
        }
    }
    Ok(json!({
        "log": row.log,
        "position": row.position,
        "stream": row.stream,
        "seq": row.seq,
        "kind": row.kind,
        "version": row.version,
        "body": String::from_utf8_lossy(&row.body),
        "happened_at": row.happened_at,
        "device": row.device,
        "device_seq": row.device_seq,
        "recorded_at": row.recorded_at,
        "who": row.who,
        "command_id": row.command_id,
        "nth": row.nth,
        "command_digest": Words(row.command_digest).hex(),
        "prev_hash": Words(row.prev_hash).hex(),
        "hash": Words(row.hash).hex(),
        "private": private,
    }))
}

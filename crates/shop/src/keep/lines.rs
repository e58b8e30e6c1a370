//! The record as lines of JSON: out, and back in with the same hashes. The form is
//! described in `docs/export.md`; what has been written once stays readable.

use super::commitments;
use super::copy::{Landing, Taken, landed};
use crate::trouble::{Trouble, TroubleKind};
use base64::Engine;
use base64::engine::general_purpose::STANDARD as BASE64;
use repair::Words;
use serde::{Deserialize, Serialize};
use serde_json::Value;
use std::collections::BTreeSet;
use std::io;
use store::{Hash, Head, Private, Row, Store};

/// One event, in the sequence of the table's columns.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct EventLine {
    log: String,
    position: u64,
    stream: String,
    seq: u64,
    kind: String,
    version: u32,
    /// The stored bytes as they are, never written anew: they are what was hashed.
    body: String,
    happened_at: String,
    device: String,
    device_seq: u64,
    recorded_at: String,
    who: String,
    command_id: String,
    nth: u32,
    command_digest: String,
    prev_hash: String,
    hash: String,
    private: Vec<PrivateLine>,
}

/// A text or file that an event holds the commitment of.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct PrivateLine {
    id: String,
    salt: String,
    media: String,
    #[serde(default, skip_serializing_if = "Option::is_none")]
    text: Option<String>,
    /// What is no text.
    #[serde(default, skip_serializing_if = "Option::is_none")]
    base64: Option<String>,
}

/// The last line, without which the lines are not all there.
#[derive(Serialize, Deserialize)]
#[serde(deny_unknown_fields)]
struct EndLine {
    end: String,
    events: u64,
    head: String,
}

/// Writes every row of a log as one line of JSON, private texts and files with it, and a
/// last line with the head.
///
/// # Errors
/// [`Trouble`], if the record cannot be read or the line cannot be written.
pub fn export(
    store: &dyn Store,
    log: &str,
    mut write: impl FnMut(&str) -> io::Result<()>,
) -> Result<Head, Trouble> {
    const PAGE: usize = 1_000;
    let mut write = |line: serde_json::Result<String>| {
        line.map_err(io::Error::from)
            .and_then(|line| write(&line))
            .map_err(|error| {
                Trouble::new(
                    TroubleKind::Record,
                    "the export",
                    error.to_string(),
                    "make room, or write it elsewhere",
                )
            })
    };
    let mut head = Head::empty(log);
    let mut written = BTreeSet::new();
    loop {
        let rows = store.log(log, head.position, PAGE)?;
        for row in &rows {
            let private = contents(store, row, &mut written)?;
            write(serde_json::to_string(&line(row, private)?))?;
            head = Head {
                position: row.position,
                hash: row.hash,
            };
        }
        if rows.is_empty() {
            break;
        }
    }
    write(serde_json::to_string(&EndLine {
        end: log.to_owned(),
        events: head.position,
        head: Words(head.hash).hex(),
    }))?;
    Ok(head)
}

/// The contents that no line before this one brought.
fn contents(
    store: &dyn Store,
    row: &Row,
    written: &mut BTreeSet<Hash>,
) -> Result<Vec<PrivateLine>, Trouble> {
    let mut out = Vec::new();
    for id in commitments(row).into_iter().map(|held| held.id) {
        if !written.insert(id) {
            continue;
        }
        let Some(private) = store.private(&row.log, &id)? else {
            continue;
        };
        let (text, base64) = match String::from_utf8(private.content) {
            Ok(text) => (Some(text), None),
            Err(error) => (None, Some(BASE64.encode(error.as_bytes()))),
        };
        out.push(PrivateLine {
            id: Words(id).hex(),
            salt: Words(private.salt).hex(),
            media: private.media,
            text,
            base64,
        });
    }
    Ok(out)
}

fn line(row: &Row, private: Vec<PrivateLine>) -> Result<EventLine, Trouble> {
    let body = String::from_utf8(row.body.clone()).map_err(|error| {
        Trouble::new(
            TroubleKind::Record,
            format!("row {} of the record", row.position),
            format!("its body is no text: {error}"),
            "copy the record with `buttonup backup` to a folder instead",
        )
    })?;
    Ok(EventLine {
        log: row.log.clone(),
        position: row.position,
        stream: row.stream.clone(),
        seq: row.seq,
        kind: row.kind.clone(),
        version: row.version,
        body,
        happened_at: row.happened_at.clone(),
        device: row.device.clone(),
        device_seq: row.device_seq,
        recorded_at: row.recorded_at.clone(),
        who: row.who.clone(),
        command_id: row.command_id.clone(),
        nth: row.nth,
        command_digest: Words(row.command_digest).hex(),
        prev_hash: Words(row.prev_hash).hex(),
        hash: Words(row.hash).hex(),
        private,
    })
}

/// Where lines that [`export`] wrote end, off their last line.
///
/// # Errors
/// [`Trouble`], if the last line is not the one that says so: the file was cut.
pub fn end_of_lines(lines: impl Iterator<Item = io::Result<String>>) -> Result<Head, Trouble> {
    let mut last = None;
    for (number, text) in (1_u64..).zip(lines) {
        let text = text.map_err(|error| unreadable(number, error.to_string()))?;
        if !text.trim().is_empty() {
            last = Some(text);
        }
    }
    let end = last.and_then(|text| serde_json::from_str::<EndLine>(&text).ok());
    let end = end.ok_or_else(cut)?;
    let hash = Words::from_hex(&end.head).ok_or_else(cut)?.0;
    Ok(Head {
        position: end.events,
        hash,
    })
}

fn cut() -> Trouble {
    Trouble::unreadable(
        "the end of the lines",
        "the last line, with the head, is missing: the file was cut",
        "write the export again, whole",
    )
}

/// Reads lines that [`export`] wrote into a store, with the same hashes. The log keeps
/// its name. Reading that broke off is finished by reading the same lines again.
///
/// # Errors
/// [`Trouble`] with the line: it cannot be read, its content does not give its hash, the
/// last line is missing, or the store cannot be written.
pub fn import(
    lines: impl Iterator<Item = io::Result<String>>,
    end: Head,
    store: &dyn Store,
    log: &str,
    taken: Taken,
) -> Result<Head, Trouble> {
    let head = land_lines(lines, end, store, log, taken)?;
    landed(store, log)?;
    Ok(head)
}

/// The same, but leaves it to the caller to say that they have landed: until then nothing
/// serves them.
///
/// # Errors
/// As for [`import`].
pub fn land_lines(
    lines: impl Iterator<Item = io::Result<String>>,
    end: Head,
    store: &dyn Store,
    log: &str,
    taken: Taken,
) -> Result<Head, Trouble> {
    let mut landing = Landing::new(store, log, taken, end)?;
    let mut end: Option<(u64, EndLine)> = None;
    for (number, text) in (1_u64..).zip(lines) {
        let text = text.map_err(|error| unreadable(number, error.to_string()))?;
        if text.trim().is_empty() {
            continue;
        }
        if end.is_some() {
            return Err(unreadable(number, "it stands behind the last line"));
        }
        let value: Value =
            serde_json::from_str(&text).map_err(|error| unreadable(number, error.to_string()))?;
        if value.get("end").is_some() {
            let line =
                serde_json::from_value(value).map_err(|e| unreadable(number, e.to_string()))?;
            end = Some((number, line));
            continue;
        }
        let line = serde_json::from_value(value).map_err(|e| unreadable(number, e.to_string()))?;
        let (row, private) = row(line).map_err(|what| unreadable(number, what))?;
        landing.take(row, private).map_err(|trouble| Trouble {
            place: format!("line {number}: {}", trouble.place),
            ..trouble
        })?;
    }
    let head = landing.finish()?;
    match end {
        Some((_, end)) if end.events == head.position && end.head == Words(head.hash).hex() => {
            Ok(head)
        }
        Some((number, end)) => Err(unreadable(
            number,
            format!(
                "it says {} events and head {}, but the lines before it come to {} and {}",
                end.events,
                end.head,
                head.position,
                Words(head.hash).hex()
            ),
        )),
        None => Err(cut()),
    }
}

fn unreadable(line: u64, what: impl Into<String>) -> Trouble {
    Trouble::unreadable(
        &format!("line {line}"),
        what,
        "give the lines as `buttonup export` wrote them; docs/export.md describes them",
    )
}

fn row(line: EventLine) -> Result<(Row, Vec<Private>), String> {
    let hash = |field: &str, text: &str| {
        Words::from_hex(text)
            .map(|words| words.0)
            .ok_or_else(|| format!("{field} is not 64 hexadecimal digits"))
    };
    let private = line
        .private
        .into_iter()
        .map(|private| {
            let content = match (private.text, private.base64) {
                (Some(text), None) => text.into_bytes(),
                (None, Some(base64)) => BASE64
                    .decode(base64)
                    .map_err(|error| format!("private base64: {error}"))?,
                _ => return Err("a private content wants either text or base64".to_owned()),
            };
            let private = Private {
                id: hash("private id", &private.id)?,
                salt: hash("private salt", &private.salt)?,
                media: private.media,
                content,
            };
            if private.matches() {
                Ok(private)
            } else {
                Err(format!(
                    "private content {} does not match its commitment",
                    Words(private.id).hex()
                ))
            }
        })
        .collect::<Result<_, _>>()?;
    let row = Row {
        command_digest: hash("command_digest", &line.command_digest)?,
        prev_hash: hash("prev_hash", &line.prev_hash)?,
        hash: hash("hash", &line.hash)?,
        log: line.log,
        position: line.position,
        stream: line.stream,
        seq: line.seq,
        kind: line.kind,
        version: line.version,
        body: line.body.into_bytes(),
        happened_at: line.happened_at,
        device: line.device,
        device_seq: line.device_seq,
        recorded_at: line.recorded_at,
        who: line.who,
        command_id: line.command_id,
        nth: line.nth,
    };
    Ok((row, private))
}

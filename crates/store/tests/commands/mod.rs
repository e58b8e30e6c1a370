//! Commands to try a store with, and the checks that read them.

#![allow(dead_code, reason = "each test uses its own part")]

use std::collections::BTreeMap;

use store::{Checks, Command, Commitment, Hash, NewEvent, Private, Row, commitment};

pub const LOG: &str = "shop-1";

/// A fact with one event in stream `stream`.
pub fn fact(id: u64, stream: &str, body: &str) -> Command {
    Command {
        log: LOG.to_owned(),
        command_id: format!("00000000-0000-7000-8000-{id:012}"),
        digest: commitment(&[0; 32], body.as_bytes()),
        who: "ana".to_owned(),
        device: "tablet-1".to_owned(),
        device_seq: id,
        happened_at: "2026-03-02T08:15:00+01:00".to_owned(),
        recorded_at: "2026-03-02T07:15:01Z".to_owned(),
        expected: BTreeMap::new(),
        events: vec![event(stream, body)],
        private: Vec::new(),
        erase: Vec::new(),
    }
}

pub fn event(stream: &str, body: &str) -> NewEvent {
    NewEvent {
        stream: stream.to_owned(),
        kind: "moved".to_owned(),
        version: 1,
        body: body.as_bytes().to_vec(),
    }
}

pub fn private(salt: u8, content: &[u8]) -> Private {
    let salt = [salt; 32];
    Private {
        id: commitment(&salt, content),
        salt,
        media: "text/plain".to_owned(),
        content: content.to_vec(),
    }
}

/// A fact whose event holds the commitments of its private contents, in the form that
/// [`checks`] reads: `holds <hex>...`.
pub fn fact_with(id: u64, contents: Vec<Private>) -> Command {
    let ids: Vec<_> = contents
        .iter()
        .map(|content| hex::encode(content.id))
        .collect();
    let mut command = fact(id, "order-1", &format!("holds {}", ids.join(" ")));
    command.private = contents;
    command
}

/// A fact that erases, and says so in its event: `erased <hex>...`.
pub fn erasure(id: u64, erased: &[Hash]) -> Command {
    let ids: Vec<_> = erased.iter().map(hex::encode).collect();
    let mut command = fact(id, "order-1", &format!("erased {}", ids.join(" ")));
    command.erase = erased.to_vec();
    command
}

fn hashes_after(word: &str, row: &Row) -> Vec<Hash> {
    let body = String::from_utf8_lossy(&row.body).into_owned();
    match body.split_once(' ') {
        Some((first, rest)) if first == word => rest
            .split(' ')
            .filter_map(|text| hex::decode(text).ok()?.try_into().ok())
            .collect(),
        _ => Vec::new(),
    }
}

pub fn checks(head: Option<Hash>) -> Checks<'static> {
    Checks {
        head,
        landing: false,
        commitments: &|row| {
            let held = hashes_after("holds", row).into_iter();
            held.map(|id| Commitment {
                id,
                media: Some("text/plain".to_owned()),
            })
            .collect()
        },
        erased: &|row| hashes_after("erased", row),
        read: &|row| match row.body.starts_with(b"unreadable") {
            true => Err("it says so itself".to_owned()),
            false => Ok(()),
        },
    }
}

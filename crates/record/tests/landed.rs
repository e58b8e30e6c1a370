//! Events as they were written in earlier months: every one still reads, and is written
//! as the same bytes, or an older log would no longer verify after its events were
//! copied.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod samples;

use record::v1::beside::{CustomerFactForm, ShopFactForm, VehicleFactForm};
use record::v1::decisions::DecisionForm;
use record::v1::facts::FactForm;
use record::v1::maps::MapFactForm;
use record::{Stored, Stream, decode, encode};
use serde_json::Value;
use sha2::{Digest, Sha256};
use std::collections::BTreeSet;

const MONTHS: &[(&str, &str)] = &[
    ("2026-11", include_str!("fixtures/2026-11/events.jsonl")),
    ("2026-12", include_str!("fixtures/2026-12/events.jsonl")),
];

/// What each month's file comes to, so that code and file cannot move together: a line that no
/// longer reads is a fault of the code, never of the line. Only the newest month may still be
/// added to; it is pinned with the next one.
const PINNED: &[(&str, &str)] = &[(
    "2026-11",
    "134c9789c56d99c0fb622769166b024923a7b6d20898017930d5cdcc341a7d61",
)];

#[test]
fn a_month_stays_as_it_landed() {
    let older = &MONTHS[..MONTHS.len() - 1];
    let found: Vec<(&str, String)> = older
        .iter()
        .map(|(month, lines)| (*month, hex(&Sha256::digest(lines))))
        .collect();
    let pinned: Vec<(&str, String)> = PINNED
        .iter()
        .map(|(month, hash)| (*month, (*hash).to_owned()))
        .collect();
    assert_eq!(
        found, pinned,
        "put it back; what is new goes into a new month"
    );
}

fn hex(bytes: &[u8]) -> String {
    bytes.iter().map(|byte| format!("{byte:02x}")).collect()
}

fn rows(lines: &str) -> Vec<(String, Stored)> {
    lines
        .lines()
        .map(|line| {
            let row: Value = serde_json::from_str(line).unwrap();
            let text = |key: &str| row[key].as_str().unwrap().to_owned();
            let stored = Stored {
                kind: text("kind"),
                version: u32::try_from(row["version"].as_u64().unwrap()).unwrap(),
                body: text("body").into_bytes(),
            };
            (text("stream"), stored)
        })
        .collect()
}

#[test]
fn what_was_written_still_reads_and_is_written_the_same() {
    for (month, lines) in MONTHS {
        for (nth, (stream, stored)) in rows(lines).into_iter().enumerate() {
            let event = decode(&Stream::read(&stream).unwrap(), &stored)
                .unwrap_or_else(|e| panic!("{month}, line {}: {e}", nth + 1));
            assert_eq!(encode(&event), stored, "{month}, line {}", nth + 1);
        }
    }
}

/// A kind or word that is new has no event in an older month: the newest month has all.
#[test]
fn the_newest_month_holds_every_kind_and_every_word() {
    let (month, lines) = MONTHS.last().unwrap();
    let there: BTreeSet<(String, String, String)> = rows(lines)
        .into_iter()
        .map(|(stream, stored)| {
            let body = String::from_utf8(stored.body).unwrap();
            (stream, stored.kind, body)
        })
        .collect();
    for (stream, kinds) in [
        (
            "order:order-1",
            [FactForm::KINDS, DecisionForm::KINDS].concat(),
        ),
        ("vehicle:vehicle-1", VehicleFactForm::KINDS.to_vec()),
        ("customer:customer-1", CustomerFactForm::KINDS.to_vec()),
        ("shop", ShopFactForm::KINDS.to_vec()),
        ("map:map-1", MapFactForm::KINDS.to_vec()),
    ] {
        for kind in kinds {
            assert!(
                there.iter().any(|(of, is, _)| of == stream && is == kind),
                "{month} has no {kind:?} of {stream}: write a new month with the example `events`"
            );
        }
    }
    for (stream, kind, content) in samples::fixed::events() {
        let stored = encode(&samples::decoded(&Stream::read(stream).unwrap(), kind, &content).0);
        let body = String::from_utf8(stored.body).unwrap();
        assert!(
            there.contains(&(stream.to_owned(), kind.to_owned(), body.clone())),
            "{month} lacks a {kind:?}: {body}; write a new month with the example `events`"
        );
    }
}

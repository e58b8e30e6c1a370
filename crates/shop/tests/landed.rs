//! Records as they were written in earlier months: every version reads them, row by row,
//! with the same hashes, and shows every order in them.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use record::v1::beside::{CustomerFactForm, ShopFactForm, VehicleFactForm};
use record::v1::decisions::DecisionForm;
use record::v1::facts::FactForm;
use record::v1::maps::MapFactForm;
use record::{Stored, Stream, decode, encode};
use repair::Words;
use serde_json::Value;
use shop::Service;
use std::collections::BTreeSet;
use std::sync::Arc;
use store::{Head, Memory, Row, Store};

const LOG: &str = "shop";

const MONTHS: &[(&str, &str)] = &[
    ("2026-11", include_str!("fixtures/2026-11/log.jsonl")),
    ("2027-01", include_str!("fixtures/2027-01/log.jsonl")),
];

/// The head of each month's log, so that code and file cannot move together.
const PINNED: &[(&str, u64, &str)] = &[(
    "2026-11",
    257,
    "6d59939cc96843c3013a7709dbd1bd70cc5ca331af88aa79e125703d297bc42c",
)];

#[test]
fn a_month_stays_as_it_landed() {
    // The newest may still be added to; it is pinned with the next one.
    assert_eq!(MONTHS.len() - 1, PINNED.len());
    for ((month, lines), pinned) in MONTHS.iter().zip(PINNED) {
        let last = rows(lines).pop().unwrap();
        let found = (*month, last.position, Words(last.hash).hex());
        assert_eq!(found, (pinned.0, pinned.1, pinned.2.to_owned()));
    }
}

/// The rows of an export, read here by hand: how they are read in the program may change.
fn rows(lines: &str) -> Vec<Row> {
    lines
        .lines()
        .map(|line| serde_json::from_str::<Value>(line).unwrap())
        .filter(|line| line.get("end").is_none())
        .map(|line| {
            let text = |field: &str| line[field].as_str().unwrap().to_owned();
            let number = |field: &str| line[field].as_u64().unwrap();
            let hash = |field: &str| Words::from_hex(line[field].as_str().unwrap()).unwrap().0;
            Row {
                log: text("log"),
                position: number("position"),
                stream: text("stream"),
                seq: number("seq"),
                kind: text("kind"),
                version: u32::try_from(number("version")).unwrap(),
                body: text("body").into_bytes(),
                happened_at: text("happened_at"),
                device: text("device"),
                device_seq: number("device_seq"),
                recorded_at: text("recorded_at"),
                who: text("who"),
                command_id: text("command_id"),
                nth: u32::try_from(number("nth")).unwrap(),
                command_digest: hash("command_digest"),
                prev_hash: hash("prev_hash"),
                hash: hash("hash"),
            }
        })
        .collect()
}

#[test]
fn every_row_is_chained_decoded_and_written_the_same() {
    for (month, lines) in MONTHS {
        let mut last = Head::empty(LOG);
        for row in rows(lines) {
            let at = format!("{month}, row {}", row.position);
            assert_eq!(
                (row.position, row.prev_hash),
                (last.position + 1, last.hash),
                "{at}"
            );
            assert_eq!(row.hash, row.expected_hash(), "{at}");
            let stored = Stored {
                kind: row.kind.clone(),
                version: row.version,
                body: row.body.clone(),
            };
            let event = decode(&Stream::read(&row.stream).unwrap(), &stored)
                .unwrap_or_else(|e| panic!("{at}: {e}"));
            assert_eq!(encode(&event), stored, "{at}");
            last = Head {
                position: row.position,
                hash: row.hash,
            };
        }
    }
}

#[test]
fn a_record_of_an_earlier_month_is_taken_in_and_shown() {
    for (month, lines) in MONTHS {
        let store: Arc<dyn Store> = Arc::new(Memory::new());
        let head = shop::import(
            lines.lines().map(|line| Ok(line.to_owned())),
            shop::end_of_lines(lines.lines().map(|line| Ok(line.to_owned()))).unwrap(),
            store.as_ref(),
            LOG,
            shop::Taken::Readable,
        )
        .unwrap_or_else(|e| panic!("{month}: {e}"));
        let last = rows(lines).pop().unwrap();
        assert_eq!(
            (head.position, head.hash),
            (last.position, last.hash),
            "{month}"
        );
        shop::verify(store.as_ref(), LOG, Some(head.hash))
            .unwrap_or_else(|e| panic!("{month}: {e}"));
        let now = || "2026-11-25T18:00:00Z".parse().unwrap();
        let service = Service::open(store, LOG, Arc::new(now)).unwrap();
        let world = service.world().unwrap();
        assert_eq!(world.position, head.position, "{month}");
        for (number, id) in world.orders_before(None, usize::MAX).unwrap() {
            let order = world.order(&id).unwrap();
            assert!(!order.decisions().is_empty(), "{month}: order {number}");
        }
        drop(world);
        let all = service
            .look(&shop::Caller::program(), |snap| {
                shop::view::rows(snap, None, None)
            })
            .unwrap();
        assert!(all.len() >= 9, "{month}: {}", all.len());
        for row in all {
            let view = service
                .look(&shop::Caller::program(), |snap| {
                    shop::view::order(snap, row.number)
                })
                .unwrap();
            assert!(!view.story.is_empty(), "{month}: order {}", row.number);
        }
    }
}

#[test]
fn the_newest_month_holds_every_kind() {
    let (month, lines) = MONTHS.last().unwrap();
    let there: BTreeSet<(String, String)> = rows(lines)
        .into_iter()
        .map(|row| (row.stream.split(':').next().unwrap().to_owned(), row.kind))
        .collect();
    for (family, kinds) in [
        ("order", [FactForm::KINDS, DecisionForm::KINDS].concat()),
        ("vehicle", VehicleFactForm::KINDS.to_vec()),
        ("customer", CustomerFactForm::KINDS.to_vec()),
        ("shop", ShopFactForm::KINDS.to_vec()),
        ("map", MapFactForm::KINDS.to_vec()),
    ] {
        for kind in kinds {
            assert!(
                there.contains(&(family.to_owned(), kind.to_owned())),
                "{month} has no {kind:?} of {family}: see the example `every_kind`"
            );
        }
    }
}

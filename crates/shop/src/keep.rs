//! Keeping the record: verifying it, making its caches again, writing it out and
//! reading it back, taking it elsewhere, and erasing a person's words.

mod copy;
mod erase;
mod lines;
mod rebuild;
mod waits;

pub use copy::copy;
pub use erase::{Breadth, Erased, Erasing, Whom, erase, erase_again, erasures};
pub use lines::{export, import};
pub use rebuild::{Rebuilt, rebuild};
pub use waits::{Waiting, erase_due, erasures_waiting, kept_years};

use repair::Words;
use serde_json::Value;
use store::{Checks, Damage, Hash, Row, Store, Verified};

/// The kind of the event that says what was erased.
const ERASED: &str = "erased";

/// The commitments an event holds: every string of 64 hexadecimal digits in its body.
/// No name of a thing is that long, so nothing else looks like one.
#[must_use]
pub fn commitments(row: &Row) -> Vec<Hash> {
    match row.kind.as_str() {
        ERASED => Vec::new(),
        _ => hashes(row),
    }
}

/// The commitments an event says were erased.
#[must_use]
pub fn erased(row: &Row) -> Vec<Hash> {
    match row.kind.as_str() {
        ERASED => hashes(row),
        _ => Vec::new(),
    }
}

fn hashes(row: &Row) -> Vec<Hash> {
    serde_json::from_slice(&row.body)
        .map(|body| named(&body))
        .unwrap_or_default()
}

/// The commitments that anything names, stored or sent.
pub(crate) fn named(value: &Value) -> Vec<Hash> {
    let mut out = Vec::new();
    gather(value, &mut out);
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

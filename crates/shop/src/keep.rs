//! Keeping the record: verifying it, making its caches again, writing it out and
//! reading it back, taking it elsewhere, and erasing a person's words.

mod copy;
mod erase;
mod lines;
mod rebuild;
mod waits;

pub use copy::{Taken, copy, land_copy, landed};
pub use erase::{Breadth, Erased, Whom, ask_to_erase, erase_again, erasures};
pub use lines::{end_of_lines, export, import, land_lines};
pub use rebuild::{Rebuilt, mend, rebuild};
pub use waits::{
    ClockDoubt, Waiting, call_off, clock_doubt, erase_due, erasures_waiting, kept_years,
};

use repair::Words;
use serde_json::Value;
use store::{Checks, Commitment, Damage, Hash, Row, Store, Verified};

/// The kind of the event that says what was erased.
const ERASED: &str = "erased";

/// A commitment, and what its content is said to be.
#[derive(Debug, Clone, PartialEq, Eq)]
pub(crate) struct Named {
    /// The commitment.
    pub(crate) id: Hash,
    /// The media type: it is no part of the commitment, and stands beside it.
    pub(crate) media: String,
}

/// The commitments an event holds: every string of 64 hexadecimal digits in its body.
/// No name of a thing is that long, so nothing else looks like one.
#[must_use]
pub fn commitments(row: &Row) -> Vec<Commitment> {
    match row.kind.as_str() {
        ERASED => Vec::new(),
        _ => named_in(&row.body)
            .into_iter()
            .map(|named| Commitment {
                id: named.id,
                media: Some(named.media),
            })
            .collect(),
    }
}

/// The commitments an event says were erased.
#[must_use]
pub fn erased(row: &Row) -> Vec<Hash> {
    match row.kind.as_str() {
        ERASED => ids(&named_in(&row.body)),
        _ => Vec::new(),
    }
}

fn ids(named: &[Named]) -> Vec<Hash> {
    named.iter().map(|named| named.id).collect()
}

/// The commitments in the stored form of an event.
pub(crate) fn named_in(body: &[u8]) -> Vec<Named> {
    serde_json::from_slice(body)
        .map(|body| named(&body))
        .unwrap_or_default()
}

/// The commitments that anything names, stored or sent.
pub(crate) fn named(value: &Value) -> Vec<Named> {
    let mut out = Vec::new();
    gather(value, &mut out);
    out
}

fn gather(value: &Value, out: &mut Vec<Named>) {
    const TEXT: &str = "text/plain";
    match value {
        Value::String(text) => out.extend(hash(text).map(|id| Named {
            id,
            media: TEXT.to_owned(),
        })),
        Value::Array(list) => list.iter().for_each(|inner| gather(inner, out)),
        Value::Object(map) => {
            if let (Some(Value::String(words)), Some(Value::String(media))) =
                (map.get("words"), map.get("media"))
                && let Some(id) = hash(words)
            {
                // A file.
                out.push(Named {
                    id,
                    media: media.clone(),
                });
                return;
            }
            map.values().for_each(|inner| gather(inner, out));
        }
        _ => {}
    }
}

fn hash(text: &str) -> Option<Hash> {
    Words::from_hex(text).map(|words| words.0)
}

/// Verifies a shop's log from its first row to its last.
///
/// # Errors
/// The first [`Damage`] found.
pub fn verify(store: &dyn Store, log: &str, head: Option<Hash>) -> Result<Verified, Damage> {
    verified(store, log, head, false)
}

/// The same for a copy that is all set down, but not said to be yet: it must hold the head of
/// what it was made from.
///
/// # Errors
/// The first [`Damage`] found.
pub fn verify_landing(store: &dyn Store, log: &str, head: Hash) -> Result<Verified, Damage> {
    verified(store, log, Some(head), true)
}

fn verified(
    store: &dyn Store,
    log: &str,
    head: Option<Hash>,
    landing: bool,
) -> Result<Verified, Damage> {
    store::verify(
        store,
        log,
        &Checks {
            head,
            landing,
            commitments: &commitments,
            erased: &erased,
            read: &readable,
        },
    )
}

/// Whether this program can read an event.
fn readable(row: &Row) -> Result<(), String> {
    crate::world::read::row(row)
        .map(drop)
        .map_err(|unread| unread.what)
}

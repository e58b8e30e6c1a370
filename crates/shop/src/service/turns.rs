//! Who waits for whom on an order that many write to at once.
//!
//! A decision that others were quicker than is made again. On a busy order that could go on for
//! ever; so one that was passed twice gets the order for itself, and what else is written to it
//! by this program waits that moment.

use record::Stream;
use std::collections::BTreeSet;
use std::hash::{DefaultHasher, Hash, Hasher};
use std::sync::{PoisonError, RwLock, RwLockReadGuard, RwLockWriteGuard};

/// How often a decision is passed before it gets a turn of its own.
const PATIENCE: usize = 2;

/// Streams share doors: there are few, however many orders there are.
const DOORS: usize = 64;

pub(super) struct Turns([RwLock<()>; DOORS]);

/// Held while somebody writes.
#[expect(dead_code, reason = "it is held, not looked at")]
pub(super) enum Turn<'a> {
    WithOthers(Vec<RwLockReadGuard<'a, ()>>),
    Alone(Vec<RwLockWriteGuard<'a, ()>>),
}

impl Default for Turns {
    fn default() -> Self {
        Self(std::array::from_fn(|_| RwLock::default()))
    }
}

impl Turns {
    /// A turn at these streams for somebody who was passed so often.
    pub(super) fn take(&self, streams: &[&Stream], passed: usize) -> Turn<'_> {
        // In order, so that no two wait for each other.
        let doors: BTreeSet<usize> = streams.iter().map(|stream| door(stream)).collect();
        let doors = doors.into_iter().map(|door| &self.0[door]);
        if passed < PATIENCE {
            let open = doors.map(|door| door.read().unwrap_or_else(PoisonError::into_inner));
            Turn::WithOthers(open.collect())
        } else {
            let open = doors.map(|door| door.write().unwrap_or_else(PoisonError::into_inner));
            Turn::Alone(open.collect())
        }
    }
}

fn door(stream: &Stream) -> usize {
    let mut hasher = DefaultHasher::new();
    stream.hash(&mut hasher);
    usize::try_from(hasher.finish() % DOORS as u64).unwrap_or_default()
}

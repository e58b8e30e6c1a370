//! Facts that were turned away because their streams take nothing now. Their devices keep
//! them; here the desk can see that they do.

use crate::command::ReadCommand;
use jiff::Timestamp;
use repair::{CommandId, PersonId};
use std::collections::BTreeMap;
use std::sync::{Mutex, MutexGuard, PoisonError};

/// One fact that waits on a device.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct WaitingFact {
    /// The stream that it is for.
    pub stream: String,
    /// The device that keeps it.
    pub device: String,
    /// Who says so.
    pub who: PersonId,
    /// When it was sent first.
    pub since: Timestamp,
}

#[derive(Default)]
pub(super) struct Waits(Mutex<BTreeMap<CommandId, WaitingFact>>);

/// How many are remembered: a device sends what it keeps again and again.
const MOST: usize = 1_000;

impl Waits {
    pub(super) fn note(&self, command: &ReadCommand, now: Timestamp) {
        let mut waiting = self.lock();
        if waiting.len() < MOST {
            let fact = || WaitingFact {
                stream: command.stream.to_string(),
                device: command.device.clone(),
                who: command.who.clone(),
                since: now,
            };
            waiting.entry(command.id.clone()).or_insert_with(fact);
        }
    }

    pub(super) fn taken(&self, command: &ReadCommand) {
        self.lock().remove(&command.id);
    }

    pub(super) fn all(&self) -> Vec<WaitingFact> {
        let mut all: Vec<_> = self.lock().values().cloned().collect();
        all.sort_by(|a, b| (a.since, &a.device).cmp(&(b.since, &b.device)));
        all
    }

    fn lock(&self) -> MutexGuard<'_, BTreeMap<CommandId, WaitingFact>> {
        self.0.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

//! Whether a log is what was written, row by row.

use std::collections::{BTreeMap, BTreeSet};

use crate::Store;
use crate::error::EngineError;
use crate::row::{Hash, Head, Row};

/// What [`verify`] can't know by itself.
pub struct Checks<'a> {
    /// A hash that was printed or noted earlier: it must still stand in the log. (The
    /// chain alone can't see that its tail was cut or that all of it was written anew.)
    pub head: Option<Hash>,
    /// The commitments that an event holds.
    pub commitments: &'a dyn Fn(&Row) -> Vec<Hash>,
    /// The commitments that an event says were erased.
    pub erased: &'a dyn Fn(&Row) -> Vec<Hash>,
}

/// What a sound log holds.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Verified {
    pub head: Head,
    /// The number of rows.
    pub events: u64,
    /// Commitments whose content is there and matches.
    pub private: u64,
    /// Commitments whose content was erased, and an event says so.
    pub erased: u64,
    /// Where the head that was asked for stands; `None` if none was asked for.
    pub asked_head_at: Option<u64>,
}

/// The first thing found that is not as it was written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Damage {
    #[error("log {log:?}: position {expected} is missing; {found} comes next")]
    Missing {
        log: String,
        expected: u64,
        found: u64,
    },
    #[error("log {log:?} at position {position}: {what}")]
    Row {
        log: String,
        position: u64,
        what: String,
    },
    #[error(
        "log {log:?} ends at position {last}, but its head says {head}: rows are missing at the end, or were added past the program"
    )]
    End { log: String, last: u64, head: u64 },
    #[error("log {log:?}: the last row's hash is not the head's hash")]
    HeadHash { log: String },
    #[error(
        "log {log:?} at position {position}: private content {id} is gone, and no event says that it was erased"
    )]
    PrivateGone {
        log: String,
        position: u64,
        id: String,
    },
    #[error(
        "log {log:?} at position {position}: private content {id} was erased, but is there again"
    )]
    ErasedIsBack {
        log: String,
        position: u64,
        id: String,
    },
    #[error(
        "log {log:?}: no row has the hash {head} that was asked for: the log was cut or written anew since it was noted"
    )]
    AskedHeadNotFound { log: String, head: String },
    #[error("the log could not be read to its end: {0}")]
    Unreadable(EngineError),
}

impl Damage {
    /// The position of the first bad row, where one can be named.
    #[must_use]
    pub fn position(&self) -> Option<u64> {
        match self {
            Self::Missing { expected, .. } => Some(*expected),
            Self::Row { position, .. }
            | Self::PrivateGone { position, .. }
            | Self::ErasedIsBack { position, .. } => Some(*position),
            Self::End { last, .. } => Some(last + 1),
            Self::HeadHash { .. } | Self::AskedHeadNotFound { .. } | Self::Unreadable(_) => None,
        }
    }

    /// What a person can do about it.
    #[must_use]
    pub fn mend(&self) -> &'static str {
        match self {
            Self::Unreadable(error) => error.mend(),
            _ => {
                "Stop, keep a copy of the store as it is, and restore the newest backup that verifies."
            }
        }
    }
}

/// How many rows are held at a time.
const PAGE: usize = 1000;

/// Reads a log from its first row to its last and checks every position, sequence
/// number, hash and link, every private content against its commitment, and the head.
///
/// # Errors
/// The first [`Damage`] found, with the row it was found at.
pub fn verify(store: &dyn Store, log: &str, checks: &Checks<'_>) -> Result<Verified, Damage> {
    let mut walk = Walk::new(log, checks);
    let mut limit = PAGE;
    loop {
        let page = match store.log(log, walk.last.position, limit) {
            Ok(page) => page,
            // Walk up to the bad row one by one: another may be wrong before it.
            Err(EngineError::Damaged { .. }) if limit > 1 => {
                limit = 1;
                continue;
            }
            Err(error) => return Err(unreadable(log, walk.last.position + 1, error)),
        };
        for row in &page {
            walk.step(store, row)?;
        }
        if page.len() == limit {
            continue;
        }
        let head = store.head(log).map_err(Damage::Unreadable)?;
        // Rows may have come in since the page was read: then there is more to walk.
        if head.position <= walk.last.position || page.is_empty() {
            return walk.end(head);
        }
    }
}

/// What is remembered from row to row.
struct Walk<'a> {
    log: &'a str,
    checks: &'a Checks<'a>,
    last: Head,
    seqs: BTreeMap<String, u64>,
    command: (String, u32),
    private: u64,
    /// Contents that are gone, with the first position that asks for them.
    gone: BTreeMap<Hash, u64>,
    erased: BTreeSet<Hash>,
    asked_head_at: Option<u64>,
}

impl<'a> Walk<'a> {
    fn new(log: &'a str, checks: &'a Checks<'a>) -> Self {
        let last = Head::empty(log);
        Self {
            log,
            checks,
            last,
            seqs: BTreeMap::new(),
            command: (String::new(), 0),
            private: 0,
            gone: BTreeMap::new(),
            erased: BTreeSet::new(),
            asked_head_at: (checks.head == Some(last.hash)).then_some(0),
        }
    }

    fn step(&mut self, store: &dyn Store, row: &Row) -> Result<(), Damage> {
        self.check_place(row)?;
        self.last = Head::at(row);
        if self.checks.head == Some(row.hash) {
            self.asked_head_at = Some(row.position);
        }
        for id in (self.checks.erased)(row) {
            self.erase(store, row, id)?;
        }
        for id in (self.checks.commitments)(row) {
            self.check_private(store, row, id)?;
        }
        Ok(())
    }

    fn check_place(&mut self, row: &Row) -> Result<(), Damage> {
        let expected = self.last.position + 1;
        if row.position != expected {
            return Err(Damage::Missing {
                log: self.log.to_owned(),
                expected,
                found: row.position,
            });
        }
        if row.hash != row.expected_hash() {
            return Err(self.wrong(row, "its content does not give its hash"));
        }
        if row.prev_hash != self.last.hash {
            return Err(self.wrong(row, "it is not chained to the row before"));
        }
        let seq = self.seqs.entry(row.stream.clone()).or_default();
        *seq += 1;
        if row.seq != *seq {
            let what = format!(
                "it is number {} of stream {:?}, and should be {}",
                row.seq, row.stream, *seq
            );
            return Err(self.wrong(row, &what));
        }
        if row.nth == 0 {
            self.command = (row.command_id.clone(), 0);
        } else {
            self.command.1 += 1;
            if self.command != (row.command_id.clone(), row.nth) {
                return Err(self.wrong(row, "its command is not in one piece"));
            }
        }
        Ok(())
    }

    fn erase(&mut self, store: &dyn Store, row: &Row, id: Hash) -> Result<(), Damage> {
        self.erased.insert(id);
        match store.private(self.log, &id) {
            Ok(None) => Ok(()),
            Err(error) if !matches!(error, EngineError::Damaged { .. }) => {
                Err(Damage::Unreadable(error))
            }
            Ok(Some(_)) | Err(_) => Err(Damage::ErasedIsBack {
                log: self.log.to_owned(),
                position: row.position,
                id: hex::encode(id),
            }),
        }
    }

    fn check_private(&mut self, store: &dyn Store, row: &Row, id: Hash) -> Result<(), Damage> {
        match store.private(self.log, &id) {
            Ok(Some(_)) => self.private += 1,
            Ok(None) => {
                self.gone.entry(id).or_insert(row.position);
            }
            Err(EngineError::Damaged { what, .. }) => return Err(self.wrong(row, &what)),
            Err(error) => return Err(Damage::Unreadable(error)),
        }
        Ok(())
    }

    fn end(self, head: Head) -> Result<Verified, Damage> {
        let log = || self.log.to_owned();
        if head.position != self.last.position {
            return Err(Damage::End {
                log: log(),
                last: self.last.position,
                head: head.position,
            });
        }
        if head.hash != self.last.hash {
            return Err(Damage::HeadHash { log: log() });
        }
        let unexplained = self
            .gone
            .iter()
            .filter(|(id, _)| !self.erased.contains(*id));
        if let Some((id, &position)) = unexplained.min_by_key(|(_, position)| **position) {
            return Err(Damage::PrivateGone {
                log: log(),
                position,
                id: hex::encode(id),
            });
        }
        if let (Some(asked), None) = (self.checks.head, self.asked_head_at) {
            return Err(Damage::AskedHeadNotFound {
                log: log(),
                head: hex::encode(asked),
            });
        }
        Ok(Verified {
            head,
            events: self.last.position,
            private: self.private,
            erased: self.gone.len() as u64,
            asked_head_at: self.asked_head_at,
        })
    }

    fn wrong(&self, row: &Row, what: &str) -> Damage {
        Damage::Row {
            log: self.log.to_owned(),
            position: row.position,
            what: what.to_owned(),
        }
    }
}

/// A page that could not be read because of one row names that row.
fn unreadable(log: &str, next: u64, error: EngineError) -> Damage {
    match error {
        EngineError::Damaged { position, what, .. } => Damage::Row {
            log: log.to_owned(),
            position: position.unwrap_or(next),
            what,
        },
        error => Damage::Unreadable(error),
    }
}

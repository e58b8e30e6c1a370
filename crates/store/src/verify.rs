//! Whether a log is what was written, row by row.

use std::collections::{BTreeMap, BTreeSet};

use sha2::{Digest, Sha256};

use crate::Store;
use crate::error::EngineError;
use crate::row::{Hash, Head, Row};

/// What [`verify`] can't know by itself.
pub struct Checks<'a> {
    /// A hash that was printed or noted earlier: it must still stand in the log. (The
    /// chain alone can't see that its tail was cut or that all of it was written anew.)
    pub head: Option<Hash>,
    /// Whether the log may still be landing, for whoever sets a copy down.
    pub landing: bool,
    /// The commitments that an event holds.
    pub commitments: &'a dyn Fn(&Row) -> Vec<Commitment>,
    /// The commitments that an event says were erased.
    pub erased: &'a dyn Fn(&Row) -> Vec<Hash>,
    /// Whether an event can be read by whoever reads events; why not, if it can't.
    pub read: &'a dyn Fn(&Row) -> Result<(), String>,
}

/// What an event promises of a private content.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Commitment {
    pub id: Hash,
    /// The media type that the event names, since it is no part of the hash; `None` if it
    /// names none.
    pub media: Option<String>,
}

/// An event that is as it was written, and cannot be read all the same.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Unreadable {
    pub position: u64,
    pub stream: String,
    pub what: String,
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
    /// Events that are as they were written, but say nothing to whoever reads events.
    pub unreadable: Vec<Unreadable>,
}

/// The first thing found that is not as it was written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum Damage {
    /// What is made from the rows is not what they say. It hides rows, or shows what is none.
    #[error("log {log:?}: what is kept beside the rows is not what they say: {}", .faults.join("; "))]
    Beside { log: String, faults: Vec<String> },
    #[error("log {log:?} is not whole: a copy was being set down in it and broke off")]
    HalfLanded { log: String },
    #[error("log {log:?}: private content {id} is kept, but no event names it")]
    Unnamed { log: String, id: String },
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
        "log {log:?} at position {position}: private content {id} is kept as {found:?}, but the event says {said:?}"
    )]
    OtherMedia {
        log: String,
        position: u64,
        id: String,
        said: String,
        found: String,
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
            Self::Row { position, .. }
            | Self::PrivateGone { position, .. }
            | Self::OtherMedia { position, .. }
            | Self::ErasedIsBack { position, .. } => Some(*position),
            Self::End { last, .. } => Some(last + 1),
            Self::HeadHash { .. }
            | Self::Beside { .. }
            | Self::HalfLanded { .. }
            | Self::Unnamed { .. }
            | Self::AskedHeadNotFound { .. }
            | Self::Unreadable(_) => None,
        }
    }

    /// What a person can do about it.
    #[must_use]
    pub fn mend(&self) -> &'static str {
        match self {
            Self::Unreadable(error) => error.mend(),
            Self::Beside { .. } => {
                "Stop the program, keep a copy of the store as it is, and run `buttonup rebuild`: it is made again from the rows. If it is not sound then, restore the newest backup that verifies."
            }
            Self::HalfLanded { .. } => {
                "Set the same copy down there again: it goes on from where it broke off. Or use an empty place."
            }
            _ => {
                "Stop, keep a copy of the store as it is, and restore the newest backup that verifies."
            }
        }
    }
}

/// How many rows are held at a time.
const PAGE: usize = 1000;

/// Reads a log from its first row to its last and checks every position, sequence
/// number, hash and link, every private content against its commitment, and the head; that
/// every stream asked for by name has those same rows; and what is kept beside the rows.
///
/// # Errors
/// The first [`Damage`] found, with the row it was found at.
pub fn verify(store: &dyn Store, log: &str, checks: &Checks<'_>) -> Result<Verified, Damage> {
    // First: rows are found by what this looks at.
    let faults = store.faults().map_err(Damage::Unreadable)?;
    if !faults.is_empty() {
        return Err(Damage::Beside {
            log: log.to_owned(),
            faults,
        });
    }
    let landing = store.landing(log).map_err(Damage::Unreadable)?;
    if landing.is_some() && !checks.landing {
        return Err(Damage::HalfLanded {
            log: log.to_owned(),
        });
    }
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
            return walk.end(store, head);
        }
    }
}

/// What is remembered from row to row.
struct Walk<'a> {
    log: &'a str,
    checks: &'a Checks<'a>,
    last: Head,
    /// Of each stream: its last number, and all its hashes in one.
    streams: BTreeMap<String, (u64, Hash)>,
    command: (String, u32),
    private: u64,
    /// Contents that are gone, with the first position that asks for them.
    gone: BTreeMap<Hash, u64>,
    erased: BTreeSet<Hash>,
    /// Every commitment that an event holds.
    named: BTreeSet<Hash>,
    asked_head_at: Option<u64>,
    unreadable: Vec<Unreadable>,
}

impl<'a> Walk<'a> {
    fn new(log: &'a str, checks: &'a Checks<'a>) -> Self {
        let last = Head::empty(log);
        Self {
            log,
            checks,
            last,
            streams: BTreeMap::new(),
            command: (String::new(), 0),
            private: 0,
            gone: BTreeMap::new(),
            erased: BTreeSet::new(),
            named: BTreeSet::new(),
            asked_head_at: (checks.head == Some(last.hash)).then_some(0),
            unreadable: Vec::new(),
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
        for held in (self.checks.commitments)(row) {
            self.check_private(store, row, held)?;
        }
        if let Err(what) = (self.checks.read)(row) {
            self.unreadable.push(Unreadable {
                position: row.position,
                stream: row.stream.clone(),
                what,
            });
        }
        Ok(())
    }

    fn check_place(&mut self, row: &Row) -> Result<(), Damage> {
        let expected = self.last.position + 1;
        if row.position != expected {
            return Err(self.wrong(row, &format!("position {expected} is missing before it")));
        }
        if row.hash != row.expected_hash() {
            return Err(self.wrong(row, "its content does not give its hash"));
        }
        if row.prev_hash != self.last.hash {
            return Err(self.wrong(row, "it is not chained to the row before"));
        }
        let known = self.streams.entry(row.stream.clone()).or_default();
        *known = (known.0 + 1, chained(known.1, row));
        let seq = known.0;
        if row.seq != seq {
            let what = format!(
                "it is number {} of stream {:?}, and should be {seq}",
                row.seq, row.stream
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

    fn check_private(
        &mut self,
        store: &dyn Store,
        row: &Row,
        held: Commitment,
    ) -> Result<(), Damage> {
        let Commitment { id, media } = held;
        self.named.insert(id);
        match store.private(self.log, &id) {
            Ok(Some(found)) => {
                self.private += 1;
                if let Some(said) = media
                    && said != found.media
                {
                    return Err(Damage::OtherMedia {
                        log: self.log.to_owned(),
                        position: row.position,
                        id: hex::encode(id),
                        said,
                        found: found.media,
                    });
                }
            }
            Ok(None) => {
                self.gone.entry(id).or_insert(row.position);
            }
            Err(EngineError::Damaged { what, .. }) => return Err(self.wrong(row, &what)),
            Err(error) => return Err(Damage::Unreadable(error)),
        }
        Ok(())
    }

    /// Each stream by its name: its rows are those that the log has.
    fn check_streams(&self, store: &dyn Store) -> Result<(), Damage> {
        for (stream, (seq, known)) in &self.streams {
            // The rows themselves were found sound: what differs stands beside them.
            let beside = |fault: String| Damage::Beside {
                log: self.log.to_owned(),
                faults: vec![fault],
            };
            let rows = match store.stream(self.log, stream, 0) {
                Err(EngineError::Damaged { position, what, .. }) => {
                    return Err(match position {
                        // It was noted that there was more.
                        Some(position) if position > self.last.position => Damage::Row {
                            log: self.log.to_owned(),
                            position,
                            what,
                        },
                        _ => beside(what),
                    });
                }
                rows => rows.map_err(Damage::Unreadable)?,
            };
            let found = rows
                .iter()
                .take_while(|row| row.seq <= *seq)
                .fold(Hash::default(), chained);
            if found != *known {
                return Err(beside(format!(
                    "stream {stream:?} asked for by its name has other rows than the log"
                )));
            }
        }
        Ok(())
    }

    /// Nothing private is kept that no event speaks of: nobody could ask for its erasure.
    fn check_held(&self, store: &dyn Store) -> Result<(), Damage> {
        let held = store.held(self.log).map_err(Damage::Unreadable)?;
        // What came in since the walk ended is named by what came with it.
        let grown = store.head(self.log).map_err(Damage::Unreadable)? != self.last;
        match held.iter().find(|id| !self.named.contains(*id)) {
            Some(id) if !grown => Err(Damage::Unnamed {
                log: self.log.to_owned(),
                id: hex::encode(id),
            }),
            _ => Ok(()),
        }
    }

    fn end(self, store: &dyn Store, head: Head) -> Result<Verified, Damage> {
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
        self.check_streams(store)?;
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
        self.check_held(store)?;
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
            unreadable: self.unreadable,
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

fn chained(before: Hash, row: &Row) -> Hash {
    Sha256::new()
        .chain_update(before)
        .chain_update(row.hash)
        .finalize()
        .into()
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

//! Taking a log to another store, row by row, with the same hashes.
//!
//! A row's hash follows from its command and from what stands before it. So the commands
//! are appended again, and every row that comes of it is held against the one it was.

use super::{commitments, erased, named_in};
use crate::trouble::{Trouble, TroubleKind};
use crate::world::read::{self, Unread};
use repair::Words;
use std::collections::BTreeMap;
use store::{AppendError, Head, NewEvent, Private, Row, Store};

/// How many rows are read, and how many commands are written, at a time.
const PAGE: usize = 500;

/// Copies a log whole. A copy that was cut short is finished by copying again.
///
/// # Errors
/// [`Trouble`]: a store cannot be read or written, a row is not what was written, or the
/// other store holds something else under that name.
pub fn copy(from: &dyn Store, to: &dyn Store, log: &str, taken: Taken) -> Result<Head, Trouble> {
    let head = land_copy(from, to, log, taken)?;
    landed(to, log)?;
    Ok(head)
}

/// Copies a log, and leaves it to the caller to say that it has landed: until then nothing
/// serves it. Answers the head of what was copied.
///
/// # Errors
/// As for [`copy`].
pub fn land_copy(
    from: &dyn Store,
    to: &dyn Store,
    log: &str,
    taken: Taken,
) -> Result<Head, Trouble> {
    let end = from.head(log)?;
    let mut landing = Landing::new(to, log, taken, end)?;
    let mut after = 0;
    while after < end.position {
        let rows = from.log(log, after, PAGE)?;
        for row in rows.into_iter().filter(|row| row.position <= end.position) {
            after = row.position;
            let mut private = Vec::new();
            for held in commitments(&row) {
                private.extend(from.private(log, &held.id)?);
            }
            landing.take(row, private)?;
        }
    }
    landing.finish()
}

/// Says that a copy has landed whole: from now on it is served.
///
/// # Errors
/// [`Trouble`], if the store cannot be written to.
pub fn landed(to: &dyn Store, log: &str) -> Result<(), Trouble> {
    Ok(to.end_landing(log)?)
}

/// Which rows from elsewhere are taken.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Taken {
    /// Those that this program can read: what it cannot read stays where it is.
    Readable,
    /// All, as they are. Where one cannot be read, nothing can be written into its stream.
    AsTheyAre,
}

/// Where rows from elsewhere are set down.
pub(super) struct Landing<'a> {
    to: &'a dyn Store,
    log: String,
    taken: Taken,
    /// Where what is copied ends.
    end: Head,
    /// What the store held when this began.
    held: Head,
    /// The last row taken.
    last: Head,
    command: Vec<Row>,
    private: Vec<Private>,
    waiting: Vec<(store::Command, Vec<Row>)>,
}

impl<'a> Landing<'a> {
    pub(super) fn new(
        to: &'a dyn Store,
        log: &str,
        taken: Taken,
        end: Head,
    ) -> Result<Self, Trouble> {
        let held = to.head(log)?;
        // What is there whole already needs no landing, and is none.
        if held != end || to.landing(log)?.is_some() {
            to.begin_landing(log, &end.hash)
                .map_err(|error| match error {
                    AppendError::Landing { .. } => other_log(log, held),
                    AppendError::Engine(error) => error.into(),
                    error => Trouble::unreadable("--log", error.to_string(), error.mend()),
                })?;
        }
        Ok(Self {
            to,
            log: log.to_owned(),
            taken,
            end,
            held,
            last: Head::empty(log),
            command: Vec::new(),
            private: Vec::new(),
            waiting: Vec::new(),
        })
    }

    /// Takes the next row, with the private contents it holds commitments of.
    pub(super) fn take(&mut self, row: Row, private: Vec<Private>) -> Result<(), Trouble> {
        self.check(&row)?;
        check_named(&row, &private)?;
        self.last = Head {
            position: row.position,
            hash: row.hash,
        };
        if row.position <= self.held.position {
            return Ok(());
        }
        if row.nth == 0 {
            self.close_command()?;
        }
        self.command.push(row);
        self.private.extend(private);
        Ok(())
    }

    /// Writes what still waits; answers where the log now ends.
    pub(super) fn finish(mut self) -> Result<Head, Trouble> {
        self.close_command()?;
        self.write()?;
        if self.last != self.end {
            return Err(Trouble::new(
                TroubleKind::Record,
                "what is copied",
                format!(
                    "it ends at event {}, and not with the head that it was to have",
                    self.last.position
                ),
                "take a copy that verifies",
            ));
        }
        // What was added to it here, after all of it was there, is no other log.
        let there = self
            .end
            .position
            .checked_sub(1)
            .map(|before| self.to.log(&self.log, before, 1));
        match there.transpose()?.and_then(|mut rows| rows.pop()) {
            Some(row) if row.hash != self.end.hash => Err(other_log(&self.log, self.held)),
            None if self.end.position > 0 => Err(other_log(&self.log, self.held)),
            _ => Ok(self.end),
        }
    }

    /// Fails before anything is written that is not the next row of the log.
    fn check(&self, row: &Row) -> Result<(), Trouble> {
        let wrong = |what: &str| {
            Trouble::new(
                TroubleKind::Record,
                format!("row {} of what is copied", row.position),
                what,
                "take a copy that verifies",
            )
        };
        if row.log != self.log {
            return Err(wrong(&format!("it belongs to log {:?}", row.log)));
        }
        if row.hash != row.expected_hash() {
            return Err(wrong("its content does not give its hash"));
        }
        if row.position != self.last.position + 1 || row.prev_hash != self.last.hash {
            return Err(wrong("it is not chained to the row before"));
        }
        if row.position == self.held.position && row.hash != self.held.hash {
            return Err(other_log(&self.log, self.held));
        }
        match read::row(row) {
            Err(unread) if self.taken == Taken::Readable => Err(Trouble::new(
                TroubleKind::Refused,
                format!("row {} of what is copied", row.position),
                unread.sentence(),
                format!(
                    "{}; or take it as it is with --unreadable-too: its stream can then only be looked at",
                    Unread::mend()
                ),
            )),
            _ => Ok(()),
        }
    }

    fn close_command(&mut self) -> Result<(), Trouble> {
        let rows = std::mem::take(&mut self.command);
        if let Some(first) = rows.first() {
            let command = again(first, &rows, std::mem::take(&mut self.private));
            self.waiting.push((command, rows));
        }
        if self.waiting.len() >= PAGE {
            self.write()?;
        }
        Ok(())
    }

    fn write(&mut self) -> Result<(), Trouble> {
        let (commands, wanted): (Vec<_>, Vec<_>) = self.waiting.drain(..).unzip();
        for (answer, wanted) in self.to.land_all(commands).into_iter().zip(wanted) {
            let rows = answer.map_err(|error| {
                Trouble::new(
                    TroubleKind::Record,
                    "the place where it is to go",
                    error.to_string(),
                    error.mend(),
                )
            })?;
            if rows.rows() != wanted {
                return Err(Trouble::new(
                    TroubleKind::Record,
                    format!(
                        "command {} where it is to go",
                        wanted.first().map_or("", |row| &row.command_id)
                    ),
                    "its rows came out otherwise than they were: something else is appending there",
                    "copy to an empty place that nothing else uses",
                ));
            }
        }
        Ok(())
    }
}

fn other_log(log: &str, held: Head) -> Trouble {
    Trouble::new(
        TroubleKind::Refused,
        format!("log {log:?} where it is to go"),
        format!(
            "it holds {} events that are not the beginning of this record, or went on after it was copied",
            held.position
        ),
        "name an empty place; if the record goes on there, serve it there and leave this one as it is",
    )
}

/// What comes with a row is named by it, as what it is.
fn check_named(row: &Row, private: &[Private]) -> Result<(), Trouble> {
    if private.is_empty() {
        return Ok(());
    }
    let named = named_in(&row.body);
    for private in private {
        if !named
            .iter()
            .any(|named| named.id == private.id && named.media == private.media)
        {
            return Err(Trouble::new(
                TroubleKind::Record,
                format!("row {} of what is copied", row.position),
                format!(
                    "the content {} that comes with it is not what it names, or as something else",
                    Words(private.id).hex()
                ),
                "take a copy that verifies",
            ));
        }
    }
    Ok(())
}

/// The command that made these rows.
fn again(first: &Row, rows: &[Row], private: Vec<Private>) -> store::Command {
    store::Command {
        log: first.log.clone(),
        command_id: first.command_id.clone(),
        digest: first.command_digest,
        who: first.who.clone(),
        device: first.device.clone(),
        device_seq: first.device_seq,
        happened_at: first.happened_at.clone(),
        recorded_at: first.recorded_at.clone(),
        expected: BTreeMap::new(),
        events: rows
            .iter()
            .map(|row| NewEvent {
                stream: row.stream.clone(),
                kind: row.kind.clone(),
                version: row.version,
                body: row.body.clone(),
            })
            .collect(),
        private,
        erase: rows.iter().flat_map(erased).collect(),
    }
}

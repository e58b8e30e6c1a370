//! Taking a log to another store, row by row, with the same hashes.
//!
//! A row's hash follows from its command and from what stands before it. So the commands
//! are appended again, and every row that comes of it is held against the one it was.

use super::{commitments, erased};
use crate::trouble::{Trouble, TroubleKind};
use std::collections::BTreeMap;
use store::{Head, NewEvent, Private, Row, Store};

/// How many rows are read, and how many commands are written, at a time.
const PAGE: usize = 500;

/// Copies a log. If the other store holds the beginning of the same log already, it goes
/// on from there: a copy that was cut short is finished by copying again.
///
/// # Errors
/// [`Trouble`]: a store cannot be read or written, a row is not what was written, or the
/// other store holds another log of that name.
pub fn copy(from: &dyn Store, to: &dyn Store, log: &str) -> Result<Head, Trouble> {
    let mut landing = Landing::new(to, log)?;
    let mut after = 0;
    loop {
        let rows = from.log(log, after, PAGE)?;
        let Some(last) = rows.last().map(|row| row.position) else {
            return landing.finish();
        };
        after = last;
        for row in rows {
            let mut private = Vec::new();
            for id in commitments(&row) {
                private.extend(from.private(log, &id)?);
            }
            landing.take(row, private)?;
        }
    }
}

/// Where rows from elsewhere are set down.
pub(super) struct Landing<'a> {
    to: &'a dyn Store,
    log: String,
    /// What the store held when this began.
    held: Head,
    /// The last row taken.
    last: Head,
    command: Vec<Row>,
    private: Vec<Private>,
    waiting: Vec<(store::Command, Vec<Row>)>,
}

impl<'a> Landing<'a> {
    pub(super) fn new(to: &'a dyn Store, log: &str) -> Result<Self, Trouble> {
        Ok(Self {
            to,
            log: log.to_owned(),
            held: to.head(log)?,
            last: Head::empty(log),
            command: Vec::new(),
            private: Vec::new(),
            waiting: Vec::new(),
        })
    }

    /// Takes the next row, with the private contents it holds commitments of.
    pub(super) fn take(&mut self, row: Row, private: Vec<Private>) -> Result<(), Trouble> {
        self.check(&row)?;
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
        if self.last.position < self.held.position {
            return Err(self.other_log());
        }
        Ok(self.last)
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
            return Err(self.other_log());
        }
        Ok(())
    }

    fn other_log(&self) -> Trouble {
        Trouble::new(
            TroubleKind::Refused,
            format!("log {:?} where it is to go", self.log),
            format!(
                "it holds {} events that are not the beginning of this record",
                self.held.position
            ),
            "name an empty place",
        )
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
        for (answer, wanted) in self.to.append_all(commands).into_iter().zip(wanted) {
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

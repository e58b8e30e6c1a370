//! The writer's side of one transaction.

use rusqlite::Connection;

use super::connect::engine_error;
use super::files::{Files, LARGEST_IN_TABLE};
use super::read;
use crate::append::{Locked, StreamEnd, Transaction, signed};
use crate::error::EngineError;
use crate::row::{Command, Hash, Head, Private, Row};

/// A transaction or savepoint of the one writer, which is lock enough.
pub(super) struct Writing<'a> {
    connection: &'a Connection,
    files: &'a Files,
    pub(super) touched: Touched,
}

/// The contents that a transaction touched, for what is left to do after its end.
#[derive(Default)]
pub(super) struct Touched {
    pub(super) erased: Vec<Hash>,
    /// Written to files, which a rollback does not take back.
    pub(super) written: Vec<Hash>,
}

impl<'a> Writing<'a> {
    pub(super) fn new(connection: &'a Connection, files: &'a Files) -> Self {
        Self {
            connection,
            files,
            touched: Touched::default(),
        }
    }

    fn execute(&self, sql: &str, parameters: impl rusqlite::Params) -> Result<(), EngineError> {
        self.connection
            .prepare_cached(sql)
            .and_then(|mut statement| statement.execute(parameters))
            .map(|_| ())
            .map_err(|error| engine_error(&error))
    }
}

impl Transaction for Writing<'_> {
    fn lock_head(&mut self, log: &str) -> Result<Locked, EngineError> {
        read::locked(self.connection, log)
    }

    fn last_row(&mut self, log: &str) -> Result<Option<Row>, EngineError> {
        read::last_row(self.connection, log)
    }

    fn command(&mut self, log: &str, command_id: &str) -> Result<Vec<Row>, EngineError> {
        read::command(self.connection, log, command_id)
    }

    fn device_knows(&mut self, command: &Command) -> Result<bool, EngineError> {
        let sql = "SELECT EXISTS (SELECT 1 FROM log INDEXED BY log_device
            WHERE log = ?1 AND device = ?2 AND device_seq = ?3 AND +command_id = ?4)";
        let parameters = (
            &command.log,
            &command.device,
            signed(command.device_seq)?,
            &command.command_id,
        );
        let known = read::one(self.connection, sql, parameters, |row| row.get(0))?;
        Ok(known.unwrap_or(false))
    }

    fn stream_end(&mut self, log: &str, stream: &str) -> Result<Option<StreamEnd>, EngineError> {
        read::stream_end(self.connection, log, stream)
    }

    fn last_of_stream(&mut self, log: &str, stream: &str) -> Result<Option<Row>, EngineError> {
        read::last_of_stream(self.connection, log, stream)
    }

    fn stream(&mut self, log: &str, stream: &str, after: u64) -> Result<Vec<Row>, EngineError> {
        // Where it ends now is noted when the transaction ends.
        read::rows_of_stream(self.connection, log, stream, after)
    }

    fn insert(&mut self, row: &Row) -> Result<(), EngineError> {
        self.execute(
            "INSERT INTO log (log, position, stream, seq, kind, version, body, happened_at,
                device, device_seq, recorded_at, who, command_id, nth, command_digest,
                prev_hash, hash)
             VALUES (?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?, ?)",
            rusqlite::params![
                row.log,
                signed(row.position)?,
                row.stream,
                signed(row.seq)?,
                row.kind,
                row.version,
                row.body,
                row.happened_at,
                row.device,
                signed(row.device_seq)?,
                row.recorded_at,
                row.who,
                row.command_id,
                row.nth,
                row.command_digest,
                row.prev_hash,
                row.hash,
            ],
        )
    }

    fn set_head(&mut self, log: &str, head: &Head) -> Result<(), EngineError> {
        self.execute(
            "INSERT INTO head (log, position, hash) VALUES (?1, ?2, ?3)
             ON CONFLICT (log) DO UPDATE SET position = ?2, hash = ?3",
            (log, signed(head.position)?, head.hash),
        )
    }

    fn set_stream_end(
        &mut self,
        log: &str,
        stream: &str,
        end: &StreamEnd,
    ) -> Result<(), EngineError> {
        self.execute(
            "INSERT INTO stream (log, stream, seq, position, hash) VALUES (?1, ?2, ?3, ?4, ?5)
             ON CONFLICT (log, stream) DO UPDATE SET seq = ?3, position = ?4, hash = ?5",
            (
                log,
                stream,
                signed(end.seq)?,
                signed(end.position)?,
                end.hash,
            ),
        )
    }

    fn set_landing(&mut self, log: &str, to: Option<&Hash>) -> Result<(), EngineError> {
        self.execute(
            "INSERT INTO head (log, position, hash, landing) VALUES (?1, 0, ?2, ?3)
             ON CONFLICT (log) DO UPDATE SET landing = ?3",
            (log, Head::empty(log).hash, to),
        )
    }

    fn keep(&mut self, log: &str, private: &Private) -> Result<(), EngineError> {
        let content = if private.content.len() <= LARGEST_IN_TABLE {
            Some(private.content.as_slice())
        } else {
            if read::is_erased(self.connection, log, &private.id)? {
                return Ok(());
            }
            self.touched.written.push(private.id);
            self.files.write(private)?;
            None
        };
        self.execute(
            "INSERT INTO private (log, id, salt, media, content) VALUES (?, ?, ?, ?, ?)
             ON CONFLICT (log, id) DO NOTHING",
            (log, private.id, private.salt, &private.media, content),
        )
    }

    fn erase(&mut self, log: &str, id: &Hash) -> Result<(), EngineError> {
        self.touched.erased.push(*id);
        self.execute(
            "INSERT INTO private (log, id) VALUES (?, ?)
             ON CONFLICT (log, id) DO UPDATE SET salt = NULL, media = NULL, content = NULL",
            (log, id),
        )?;
        self.execute("DELETE FROM card WHERE log = ? AND of = ?", (log, id))
    }
}

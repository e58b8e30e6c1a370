//! The appending side of one transaction.

use postgres::GenericClient;

use super::connect::Link;
use super::read;
use crate::append::{Locked, StreamEnd, Transaction, signed};
use crate::error::EngineError;
use crate::row::{Command, Hash, Head, Private, Row};

pub(super) struct Writing<'a, C>(pub(super) Link<'a, C>);

impl<C: GenericClient> Transaction for Writing<'_, C> {
    fn lock_head(&mut self, log: &str) -> Result<Locked, EngineError> {
        // Only a row can be locked, so a log's first command makes one. If the command is
        // refused, the savepoint takes it back.
        let sql = "SELECT position, hash, landing FROM head WHERE log = $1 FOR UPDATE";
        let locked = |row: &postgres::Row| {
            Ok(Locked {
                head: read::head_of(row, log)?,
                landing: read::landing_of(row, 2, log)?,
            })
        };
        if let Some(row) = self.0.query(sql, &[&log])?.first() {
            return locked(row);
        }
        let empty = Head::empty(log);
        self.0.query(
            "INSERT INTO head (log, position, hash) VALUES ($1, 0, $2)
             ON CONFLICT (log) DO NOTHING",
            &[&log, &empty.hash.as_slice()],
        )?;
        match self.0.query(sql, &[&log])?.first() {
            Some(row) => locked(row),
            None => Err(EngineError::Refused {
                what: format!("no head could be made for log {log:?}"),
            }),
        }
    }

    fn last_row(&mut self, log: &str) -> Result<Option<Row>, EngineError> {
        read::last_row(&mut self.0, log)
    }

    fn command(&mut self, log: &str, command_id: &str) -> Result<Vec<Row>, EngineError> {
        read::command(&mut self.0, log, command_id)
    }

    fn device_knows(&mut self, command: &Command) -> Result<bool, EngineError> {
        let sql = "SELECT 1 FROM log
            WHERE log = $1 AND device = $2 AND device_seq = $3 AND command_id || '' = $4 LIMIT 1";
        let found = self.0.query(
            sql,
            &[
                &command.log,
                &command.device,
                &signed(command.device_seq)?,
                &command.command_id,
            ],
        )?;
        Ok(!found.is_empty())
    }

    fn stream_end(&mut self, log: &str, stream: &str) -> Result<Option<StreamEnd>, EngineError> {
        read::stream_end(&mut self.0, log, stream)
    }

    fn last_of_stream(&mut self, log: &str, stream: &str) -> Result<Option<Row>, EngineError> {
        read::last_of_stream(&mut self.0, log, stream)
    }

    fn stream(&mut self, log: &str, stream: &str, after: u64) -> Result<Vec<Row>, EngineError> {
        // Where it ends now is noted when the transaction ends.
        read::rows_of_stream(&mut self.0, log, stream, after)
    }

    fn insert(&mut self, row: &Row) -> Result<(), EngineError> {
        self.0.query(
            "INSERT INTO log (log, position, stream, seq, kind, version, body, happened_at,
                device, device_seq, recorded_at, who, command_id, nth, command_digest,
                prev_hash, hash)
             VALUES ($1, $2, $3, $4, $5, $6, $7, $8, $9, $10, $11, $12, $13, $14, $15, $16,
                $17)",
            &[
                &row.log,
                &signed(row.position)?,
                &row.stream,
                &signed(row.seq)?,
                &row.kind,
                &i64::from(row.version),
                &row.body,
                &row.happened_at,
                &row.device,
                &signed(row.device_seq)?,
                &row.recorded_at,
                &row.who,
                &row.command_id,
                &i64::from(row.nth),
                &row.command_digest.as_slice(),
                &row.prev_hash.as_slice(),
                &row.hash.as_slice(),
            ],
        )?;
        Ok(())
    }

    fn set_head(&mut self, log: &str, head: &Head) -> Result<(), EngineError> {
        self.0.query(
            "UPDATE head SET position = $2, hash = $3 WHERE log = $1",
            &[&log, &signed(head.position)?, &head.hash.as_slice()],
        )?;
        Ok(())
    }

    fn set_stream_end(
        &mut self,
        log: &str,
        stream: &str,
        end: &StreamEnd,
    ) -> Result<(), EngineError> {
        self.0.query(
            "INSERT INTO stream (log, stream, seq, position, hash) VALUES ($1, $2, $3, $4, $5)
             ON CONFLICT (log, stream) DO UPDATE SET seq = $3, position = $4, hash = $5",
            &[
                &log,
                &stream,
                &signed(end.seq)?,
                &signed(end.position)?,
                &end.hash.as_slice(),
            ],
        )?;
        Ok(())
    }

    fn set_landing(&mut self, log: &str, to: Option<&Hash>) -> Result<(), EngineError> {
        let to = to.map(<[u8; 32]>::as_slice);
        self.0
            .query("UPDATE head SET landing = $2 WHERE log = $1", &[&log, &to])?;
        Ok(())
    }

    fn keep(&mut self, log: &str, private: &Private) -> Result<(), EngineError> {
        self.0.query(
            "INSERT INTO private (log, id, salt, media, content) VALUES ($1, $2, $3, $4, $5)
             ON CONFLICT (log, id) DO NOTHING",
            &[
                &log,
                &private.id.as_slice(),
                &private.salt.as_slice(),
                &private.media,
                &private.content,
            ],
        )?;
        Ok(())
    }

    fn erase(&mut self, log: &str, id: &Hash) -> Result<(), EngineError> {
        self.0.query(
            "INSERT INTO private (log, id) VALUES ($1, $2)
             ON CONFLICT (log, id) DO UPDATE SET salt = NULL, media = NULL, content = NULL",
            &[&log, &id.as_slice()],
        )?;
        self.0.query(
            "DELETE FROM card WHERE log = $1 AND of = $2",
            &[&log, &id.as_slice()],
        )?;
        Ok(())
    }
}

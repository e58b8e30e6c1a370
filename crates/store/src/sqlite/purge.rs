//! Finishing what a transaction's end leaves: files to remove, and old pages in the
//! write-ahead log.

use rusqlite::Connection;

use super::connect::engine_error;
use super::files::Files;
use crate::error::EngineError;
use crate::row::Hash;

/// What is still to be done.
#[derive(Default)]
pub(super) struct Purge {
    files: Vec<Hash>,
    old_pages: bool,
}

impl Purge {
    /// Everything that erasures before this start may have left.
    pub(super) fn at_start(connection: &Connection) -> Result<Self, EngineError> {
        let files = connection
            .prepare("SELECT DISTINCT id FROM private WHERE salt IS NULL")
            .and_then(|mut statement| statement.query_map([], |row| row.get(0))?.collect())
            .map_err(|error| engine_error(&error))?;
        Ok(Self {
            files,
            old_pages: true,
        })
    }

    /// After a commit that erased these.
    pub(super) fn add_erased(&mut self, ids: Vec<Hash>) {
        self.old_pages |= !ids.is_empty();
        self.files.extend(ids);
    }

    /// After a rollback of a command that wrote these files.
    pub(super) fn add_unwanted(&mut self, ids: Vec<Hash>) {
        self.files.extend(ids);
    }

    pub(super) fn is_due(&self) -> bool {
        self.old_pages || !self.files.is_empty()
    }

    /// Does what can be done now; the rest stays due.
    pub(super) fn run(&mut self, connection: &Connection, files: &Files) {
        self.files.retain(|id| {
            let done = is_wanted(connection, id)
                .and_then(|wanted| if wanted { Ok(()) } else { files.remove(id) });
            done.is_err()
        });
        if self.old_pages {
            let busy = connection.query_row("PRAGMA wal_checkpoint(TRUNCATE)", [], |row| {
                row.get::<_, bool>(0)
            });
            self.old_pages = !matches!(busy, Ok(false));
        }
    }
}

/// Whether any log holds the content: the same one may have come by another command.
fn is_wanted(connection: &Connection, id: &Hash) -> Result<bool, EngineError> {
    connection
        .query_row(
            "SELECT EXISTS (SELECT 1 FROM private WHERE id = ? AND salt IS NOT NULL)",
            [id],
            |row| row.get(0),
        )
        .map_err(|error| engine_error(&error))
}

//! Opening: the folder's lock, and connections with their settings read back.

use std::fs::{File, OpenOptions, TryLockError};
use std::path::Path;
use std::time::Duration;

use rusqlite::{Connection, ErrorCode, OpenFlags};

use crate::error::{EngineError, OpenError};

/// What a connection is for.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Access {
    Read,
    Write,
}

/// Only other programs that pass by the lock can make us wait at all.
const WAIT_WHEN_BUSY: Duration = Duration::from_secs(5);

/// The folder's lock. It ends when dropped, or with the program however that ends.
pub(super) struct Lock(File);

impl Drop for Lock {
    fn drop(&mut self) {
        // Closing is not enough: a child process that is just starting holds a copy of
        // the handle for a moment. If unlocking fails, closing does it soon after.
        let _ = self.0.unlock();
    }
}

/// Takes the folder for this program.
pub(super) fn lock(folder: &Path) -> Result<Lock, OpenError> {
    let refused = |path: &Path, why| OpenError::Folder {
        path: path.to_owned(),
        why,
    };
    std::fs::create_dir_all(folder).map_err(|why| refused(folder, why))?;
    let path = folder.join("store.lock");
    let file = OpenOptions::new()
        .create(true)
        .truncate(false)
        .write(true)
        .open(&path)
        .map_err(|why| refused(&path, why))?;
    match file.try_lock() {
        Ok(()) => Ok(Lock(file)),
        Err(TryLockError::WouldBlock) => Err(OpenError::InUse {
            folder: folder.to_owned(),
        }),
        Err(TryLockError::Error(why)) => Err(refused(&path, why)),
    }
}

/// A connection with every setting that safety rests on, each read back.
pub(super) fn connect(database: &Path, access: Access) -> Result<Connection, OpenError> {
    let flags = match access {
        Access::Read => OpenFlags::SQLITE_OPEN_READ_ONLY,
        Access::Write => OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_CREATE,
    };
    let connection = Connection::open_with_flags(
        database,
        flags | OpenFlags::SQLITE_OPEN_NO_MUTEX | OpenFlags::SQLITE_OPEN_PRIVATE_CACHE,
    )
    .map_err(|error| open_error(database, &error))?;
    connection
        .busy_timeout(WAIT_WHEN_BUSY)
        .map_err(|error| open_error(database, &error))?;
    let wanted = [
        ("journal_mode", "wal", "wal"),
        ("synchronous", "FULL", "2"),
        ("foreign_keys", "ON", "1"),
        ("secure_delete", "ON", "1"),
        ("trusted_schema", "OFF", "0"),
        ("cell_size_check", "ON", "1"),
    ];
    for (setting, value, read_back) in wanted {
        // A reader can't change the journal mode, which lives in the file; it checks it.
        if access == Access::Write || setting != "journal_mode" {
            connection
                .pragma_update_and_check(None, setting, value, |_| Ok(()))
                .or_else(|error| match error {
                    rusqlite::Error::QueryReturnedNoRows => Ok(()),
                    error => Err(open_error(database, &error)),
                })?;
        }
        let found = connection
            .pragma_query_value(None, setting, |row| {
                row.get_ref(0).map(|value| match value {
                    rusqlite::types::ValueRef::Integer(number) => number.to_string(),
                    value => value.as_str().unwrap_or_default().to_owned(),
                })
            })
            .map_err(|error| open_error(database, &error))?;
        if found != read_back {
            return Err(OpenError::Setting { setting, found });
        }
    }
    Ok(connection)
}

/// A fault of SQLite in our words.
pub(super) fn engine_error(error: &rusqlite::Error) -> EngineError {
    let what = error.to_string();
    match error.sqlite_error_code() {
        Some(ErrorCode::DatabaseBusy | ErrorCode::DatabaseLocked) => EngineError::Busy { what },
        Some(ErrorCode::DiskFull) => EngineError::Full { what },
        Some(ErrorCode::ReadOnly | ErrorCode::PermissionDenied | ErrorCode::CannotOpen) => {
            EngineError::ReadOnly { what }
        }
        Some(ErrorCode::SystemIoFailure) => EngineError::Io { what },
        Some(ErrorCode::DatabaseCorrupt | ErrorCode::NotADatabase) => EngineError::Damaged {
            log: String::new(),
            position: None,
            what,
        },
        _ => EngineError::Refused { what },
    }
}

/// The same, while opening: a file that is no database gets its own word.
pub(super) fn open_error(database: &Path, error: &rusqlite::Error) -> OpenError {
    match error.sqlite_error_code() {
        Some(ErrorCode::NotADatabase | ErrorCode::DatabaseCorrupt) => OpenError::NotAStore {
            place: database.display().to_string(),
            why: error.to_string(),
        },
        _ => OpenError::Engine(engine_error(error)),
    }
}

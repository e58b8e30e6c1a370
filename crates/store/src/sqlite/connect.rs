//! Opening: the folder's lock, and connections with their settings read back.

use std::fs::{self, File, TryLockError};
use std::path::Path;
use std::time::Duration;

use rusqlite::config::DbConfig;
use rusqlite::types::ValueRef;
use rusqlite::{Connection, ErrorCode, OpenFlags, ffi};

use super::own;
use crate::error::{EngineError, OpenError};

/// What a connection is for.
#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Opened {
    Write,
    /// Reading beside this program's writer.
    Read,
    /// Reading what another program may be writing, or what lies there as a copy.
    Look,
    /// Reading where nothing may be written at all, not even the files that readers
    /// and a writer speak through: nobody can be writing there.
    LookAtStill,
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
    own::make_folder(folder).map_err(|why| refused(folder, why))?;
    let path = folder.join("store.lock");
    let file = own::open(&path, false).map_err(|why| refused(&path, why))?;
    match file.try_lock() {
        Ok(()) => Ok(Lock(file)),
        Err(TryLockError::WouldBlock) => Err(OpenError::InUse {
            folder: folder.to_owned(),
        }),
        Err(TryLockError::Error(why)) => Err(refused(&path, why)),
    }
}

/// Fails where a database is missing, or empty, though what stands beside it says that there
/// was one: a new one would bury the rest of it.
pub(super) fn check_remains(folder: &Path, database: &Path) -> Result<(), OpenError> {
    if fs::metadata(database).is_ok_and(|about| about.len() > 0) {
        return Ok(());
    }
    let mut found = Vec::new();
    if has_unfinished_log(database) {
        found.push("a write-ahead log with rows in it".to_owned());
    }
    let files = fs::read_dir(folder.join("files")).map_or(0, Iterator::count);
    if files > 0 {
        found.push(format!("{files} of its files"));
    }
    if found.is_empty() {
        return Ok(());
    }
    Err(OpenError::Remains {
        database: database.to_owned(),
        found: found.join(" and "),
    })
}

/// Makes the database's file, so that only its owner may read it from the first moment on, and
/// takes from others what an older program left them. What SQLite makes beside it is as open
/// as it is.
pub(super) fn close_to_others(database: &Path) -> Result<(), OpenError> {
    let path = database.display();
    let mut beside = Vec::new();
    for end in ["-wal", "-shm"] {
        beside.push(format!("{path}{end}"));
    }
    let close = || -> std::io::Result<()> {
        own::open(database, false)?;
        for path in beside {
            if fs::exists(&path)? {
                own::close_to_others(Path::new(&path))?;
            }
        }
        Ok(())
    };
    close().map_err(|why| OpenError::Folder {
        path: database.to_owned(),
        why,
    })
}

/// The settings that safety rests on, and what they say when read back.
const WANTED: [(&str, &str, &str); 6] = [
    ("journal_mode", "wal", "wal"),
    ("synchronous", "FULL", "2"),
    ("foreign_keys", "ON", "1"),
    ("secure_delete", "ON", "1"),
    ("trusted_schema", "OFF", "0"),
    ("cell_size_check", "ON", "1"),
];

/// A connection with every setting that safety rests on, each read back.
pub(super) fn connect(database: &Path, opened: Opened) -> Result<Connection, OpenError> {
    let fault = |error: rusqlite::Error| open_error(database, &error);
    if opened == Opened::Write {
        // The journal mode lives in the file. After a disk fault the connection that set it
        // may say "wal" while the file does not: another one has to read it back.
        let first = open(database, opened).map_err(fault)?;
        set(&first, "journal_mode", "wal").map_err(fault)?;
        first.close().map_err(|(_, error)| fault(error))?;
    }
    let connection = open(database, opened).map_err(fault)?;
    for (setting, value, read_back) in WANTED {
        if setting != "journal_mode" {
            set(&connection, setting, value).map_err(fault)?;
        } else if matches!(opened, Opened::Look | Opened::LookAtStill) {
            // The mode is the writer's affair, and a copy that was never opened has none.
            continue;
        }
        let found = connection
            .pragma_query_value(None, setting, |row| {
                row.get_ref(0).map(|value| match value {
                    ValueRef::Integer(number) => number.to_string(),
                    value => value.as_str().unwrap_or_default().to_owned(),
                })
            })
            .map_err(fault)?;
        if found != read_back {
            return Err(OpenError::Setting { setting, found });
        }
    }
    Ok(connection)
}

/// A connection for reading that takes no lock of the folder, with the opened that it
/// came to need. Nothing but the files that SQLite's readers share is written.
pub(super) fn look(database: &Path) -> Result<(Connection, Opened), OpenError> {
    let readable = |opened| {
        let connection = connect(database, opened)?;
        connection
            .query_row("SELECT count(*) FROM sqlite_schema", [], |_| Ok(()))
            .map_err(|error| open_error(database, &error))?;
        Ok((connection, opened))
    };
    match readable(Opened::Look) {
        Err(OpenError::Engine(EngineError::ReadOnly { .. })) if !has_unfinished_log(database) => {
            readable(Opened::LookAtStill)
        }
        answer => answer,
    }
}

/// Whether rows stand in the write-ahead log alone: without it the database is older.
fn has_unfinished_log(database: &Path) -> bool {
    let mut log = database.as_os_str().to_owned();
    log.push("-wal");
    fs::metadata(log).is_ok_and(|log| log.len() > 0)
}

fn open(database: &Path, opened: Opened) -> rusqlite::Result<Connection> {
    let flags = OpenFlags::SQLITE_OPEN_NO_MUTEX | OpenFlags::SQLITE_OPEN_PRIVATE_CACHE;
    let reading = flags | OpenFlags::SQLITE_OPEN_READ_ONLY;
    let writing = flags | OpenFlags::SQLITE_OPEN_READ_WRITE | OpenFlags::SQLITE_OPEN_CREATE;
    let connection = match opened {
        Opened::Write => Connection::open_with_flags(database, writing)?,
        Opened::Read | Opened::Look => Connection::open_with_flags(database, reading)?,
        Opened::LookAtStill => {
            let address = format!("file:{}?immutable=1", as_address(database));
            Connection::open_with_flags(address, reading | OpenFlags::SQLITE_OPEN_URI)?
        }
    };
    connection.busy_timeout(WAIT_WHEN_BUSY)?;
    // Otherwise every statement is compiled anew when its parameters change, in case another
    // plan suits them better: half of the time an append took. There is one plan for each.
    connection.set_db_config(DbConfig::SQLITE_DBCONFIG_ENABLE_QPSG, true)?;
    Ok(connection)
}

/// A path as it stands in an address, where these three would mean something else.
fn as_address(path: &Path) -> String {
    let path = path.to_string_lossy();
    path.replace('%', "%25")
        .replace('?', "%3f")
        .replace('#', "%23")
}

/// Some settings answer with their new value, others with nothing.
fn set(connection: &Connection, setting: &str, value: &str) -> rusqlite::Result<()> {
    match connection.pragma_update_and_check(None, setting, value, |_| Ok(())) {
        Err(rusqlite::Error::QueryReturnedNoRows) => Ok(()),
        answer => answer,
    }
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
        // The file that readers and the writer share can't grow: there is no other cause.
        Some(ErrorCode::SystemIoFailure)
            if error.sqlite_extended_error_code() == Some(ffi::SQLITE_IOERR_SHMSIZE) =>
        {
            EngineError::Full { what }
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
        Some(ErrorCode::NotADatabase) => OpenError::NotAStore {
            place: database.display().to_string(),
            why: error.to_string(),
        },
        _ => OpenError::Engine(engine_error(error)),
    }
}

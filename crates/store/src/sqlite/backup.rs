//! A copy of a store, taken while it runs. A copy is a store like any other: restoring
//! is opening it, or a copy of it, as one.

use std::collections::BTreeSet;
use std::fs::{self, File};
use std::io;
use std::path::{Path, PathBuf};

use rusqlite::{Connection, OpenFlags};

use super::connect::engine_error;
use super::files::Files;
use super::own;
use crate::append::damaged;
use crate::error::{EngineError, OpenError};
use crate::row::Hash;

/// Copies the store to the new folder `to`. The folder gets its name only when it is
/// whole and synced, so that half a copy is never taken for one.
pub(super) fn back_up(connection: &Connection, files: &Files, to: &Path) -> Result<(), OpenError> {
    if to.exists() {
        return Err(refused(to, io::ErrorKind::AlreadyExists.into()));
    }
    let unfinished = make_beside(to)?;
    let done = copy(connection, files, &unfinished, to);
    if done.is_err() {
        // It is in nobody's way: this only frees the space, which may be what lacked.
        let _ = fs::remove_dir_all(&unfinished);
    }
    done
}

fn copy(
    connection: &Connection,
    files: &Files,
    unfinished: &Path,
    to: &Path,
) -> Result<(), OpenError> {
    let copies = Files::open(unfinished)?;

    // Files first: one that is erased during the copy is in the snapshot no more, and one
    // that is new during the copy is copied after it.
    for id in files.all()? {
        files.copy(&id, &copies)?;
    }
    let database = unfinished.join("store.db");
    let mut missing = snapshot_with_files(connection, files, &database, &copies)?;
    if missing.is_some() {
        // New and erased again within that moment: the next snapshot knows.
        fs::remove_file(&database).map_err(|why| refused(&database, why))?;
        missing = snapshot_with_files(connection, files, &database, &copies)?;
    }
    if let Some(id) = missing {
        let what = format!("the file of private content {} is missing", hex::encode(id));
        return Err(damaged("", None, &what).into());
    }

    let finished = || -> io::Result<()> {
        File::open(&database)?.sync_all()?;
        copies.sync()?;
        super::files::sync_folder(unfinished)?;
        fs::rename(unfinished, to)?;
        match to.parent() {
            Some(parent) if parent != Path::new("") => super::files::sync_folder(parent),
            _ => Ok(()),
        }
    };
    finished().map_err(|why| refused(to, why))
}

/// Takes a snapshot and makes the copied files those it speaks of; names one that is gone.
fn snapshot_with_files(
    connection: &Connection,
    files: &Files,
    database: &Path,
    copies: &Files,
) -> Result<Option<Hash>, EngineError> {
    let wanted = snapshot(connection, database)?;
    let copied: BTreeSet<Hash> = copies.all()?.into_iter().collect();
    for id in wanted.difference(&copied) {
        files.copy(id, copies)?;
    }
    for id in copied.difference(&wanted) {
        copies.remove(id)?;
    }
    let copied: BTreeSet<Hash> = copies.all()?.into_iter().collect();
    Ok(wanted.difference(&copied).next().copied())
}

/// Writes the database as it stands at this moment; says which files it speaks of.
fn snapshot(connection: &Connection, to: &Path) -> Result<BTreeSet<Hash>, EngineError> {
    let fault = |error: rusqlite::Error| engine_error(&error);
    // Nothing of what was erased is in it: free pages are not copied.
    let path = to.to_str().ok_or_else(|| EngineError::Refused {
        what: format!("{} is not valid Unicode", to.display()),
    })?;
    own::open(to, true).map_err(|error| super::files::file_error(to, &error))?;
    connection.execute("VACUUM INTO ?", [path]).map_err(fault)?;
    let copy = Connection::open_with_flags(to, OpenFlags::SQLITE_OPEN_READ_ONLY).map_err(fault)?;
    copy.prepare("SELECT DISTINCT id FROM private WHERE salt IS NOT NULL AND content IS NULL")
        .and_then(|mut statement| statement.query_map([], |row| row.get(0))?.collect())
        .map_err(fault)
}

fn refused(path: &Path, why: io::Error) -> OpenError {
    OpenError::Folder {
        path: path.to_owned(),
        why,
    }
}

/// A new folder beside the place where the copy is to go. Whatever is there already belongs to
/// somebody else, or to a copy that is being made now.
fn make_beside(to: &Path) -> Result<PathBuf, OpenError> {
    if let Some(parent) = to.parent().filter(|parent| *parent != Path::new("")) {
        own::make_folder(parent).map_err(|why| refused(parent, why))?;
    }
    for nth in 1.. {
        let mut name = to.as_os_str().to_owned();
        name.push(format!(".unfinished-{nth}"));
        let folder = PathBuf::from(name);
        match own::make_new_folder(&folder) {
            Ok(()) => return Ok(folder),
            Err(why) if why.kind() == io::ErrorKind::AlreadyExists => {}
            Err(why) => return Err(refused(&folder, why)),
        }
    }
    Err(refused(to, io::ErrorKind::AlreadyExists.into()))
}

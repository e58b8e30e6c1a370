//! Larger private contents, each a file named by its commitment.
//!
//! A file is complete and synced before the row that speaks of it is committed, and is
//! removed only after the row that erased it was, or after a rollback. What a crash
//! leaves between is a file without a row: its command was never answered and will be
//! sent again.

use std::fs::{self, File};
use std::io::{self, ErrorKind, Write};
use std::path::{Path, PathBuf};
use std::time::Duration;

use super::own;
use crate::error::{EngineError, OpenError};
use crate::row::{Hash, Private};

#[derive(Clone)]
pub(super) struct Files {
    folder: PathBuf,
}

/// Contents up to here stand in the table: small ones are read faster there, and large
/// ones would make every checkpoint and backup of the database slow.
pub(super) const LARGEST_IN_TABLE: usize = 64 * 1024;

const UNFINISHED: &str = "unfinished";

impl Files {
    pub(super) fn open(store: &Path) -> Result<Self, OpenError> {
        let folder = store.join("files");
        let made = own::make_folder(&folder)
            .and_then(|()| own::close_to_others(&folder))
            .and_then(|()| remove(&folder.join(UNFINISHED)))
            .and_then(|()| sync_folder(store));
        match made {
            Ok(()) => Ok(Self { folder }),
            Err(why) => Err(OpenError::Folder { path: folder, why }),
        }
    }

    /// The contents of a store that is only read.
    pub(super) fn look(store: &Path) -> Self {
        Self {
            folder: store.join("files"),
        }
    }

    /// Writes a content, whole or not at all. Only the one writer calls this.
    pub(super) fn write(&self, private: &Private) -> Result<(), EngineError> {
        let path = self.path(&private.id);
        let unfinished = self.folder.join(UNFINISHED);
        let write = || -> io::Result<()> {
            let mut file = own::open(&unfinished, true)?;
            file.write_all(&private.content)?;
            file.sync_all()?;
            fs::rename(&unfinished, &path)?;
            sync_folder(&self.folder)
        };
        write().map_err(|error| {
            // It is written anew with the next content; removing it now only frees space.
            let _ = remove(&unfinished);
            file_error(&path, &error)
        })
    }

    pub(super) fn read(&self, id: &Hash) -> Result<Option<Vec<u8>>, EngineError> {
        let path = self.path(id);
        match fs::read(&path) {
            Ok(content) => Ok(Some(content)),
            Err(error) if error.kind() == ErrorKind::NotFound => Ok(None),
            Err(error) => Err(file_error(&path, &error)),
        }
    }

    /// Removes a content, if it is there.
    pub(super) fn remove(&self, id: &Hash) -> Result<(), EngineError> {
        let path = self.path(id);
        if !path.exists() {
            return Ok(());
        }
        remove(&path)
            .and_then(|()| sync_folder(&self.folder))
            .map_err(|error| file_error(&path, &error))
    }

    /// The contents that are there, whether or not a row speaks of them.
    pub(super) fn all(&self) -> Result<Vec<Hash>, EngineError> {
        let read = || -> io::Result<Vec<Hash>> {
            let mut ids = Vec::new();
            for entry in fs::read_dir(&self.folder)? {
                let name = entry?.file_name();
                let id = name.to_str().and_then(|name| hex::decode(name).ok());
                ids.extend(id.and_then(|id| Hash::try_from(id).ok()));
            }
            Ok(ids)
        };
        read().map_err(|error| file_error(&self.folder, &error))
    }

    /// The names of files that no row speaks of, as far as `spoken_of` knows. What is only just
    /// there may be on its way in.
    pub(super) fn strays(
        &self,
        spoken_of: impl Fn(&Hash) -> Result<bool, EngineError>,
    ) -> Result<Vec<String>, EngineError> {
        const JUST_THERE: Duration = Duration::from_secs(60);
        let fault = |error: io::Error| file_error(&self.folder, &error);
        let mut strays = Vec::new();
        let entries = match fs::read_dir(&self.folder) {
            Err(error) if error.kind() == ErrorKind::NotFound => return Ok(strays),
            entries => entries.map_err(fault)?,
        };
        for entry in entries {
            let entry = entry.map_err(fault)?;
            let name = entry.file_name().to_string_lossy().into_owned();
            let id = hex::decode(&name)
                .ok()
                .and_then(|id| Hash::try_from(id).ok());
            let known = match &id {
                Some(id) => spoken_of(id)?,
                None => name == UNFINISHED,
            };
            let age = entry.metadata().and_then(|about| about.modified());
            let just_there = age.is_ok_and(|at| at.elapsed().is_ok_and(|age| age < JUST_THERE));
            if !known && !just_there {
                strays.push(name);
            }
        }
        strays.sort();
        Ok(strays)
    }

    /// Moves files out of the way, into a folder beside this one.
    pub(super) fn put_aside(&self, names: &[String]) -> Result<(), EngineError> {
        if names.is_empty() {
            return Ok(());
        }
        let aside = self.folder.with_file_name("files-without-event");
        let put = || -> io::Result<()> {
            own::make_folder(&aside)?;
            for name in names {
                fs::rename(self.folder.join(name), aside.join(name))?;
            }
            sync_folder(&aside)?;
            sync_folder(&self.folder)
        };
        put().map_err(|error| file_error(&aside, &error))
    }

    /// Copies a content to another store, if it has not been erased meanwhile.
    pub(super) fn copy(&self, id: &Hash, to: &Self) -> Result<(), EngineError> {
        let path = to.path(id);
        let copy = || -> io::Result<()> {
            match fs::copy(self.path(id), &path) {
                Err(error) if error.kind() == ErrorKind::NotFound => Ok(()),
                Err(error) => Err(error),
                Ok(_) => {
                    own::close_to_others(&path)?;
                    File::open(&path)?.sync_all()
                }
            }
        };
        copy().map_err(|error| file_error(&path, &error))
    }

    pub(super) fn sync(&self) -> io::Result<()> {
        sync_folder(&self.folder)
    }

    fn path(&self, id: &Hash) -> PathBuf {
        self.folder.join(hex::encode(id))
    }
}

fn remove(path: &Path) -> io::Result<()> {
    match fs::remove_file(path) {
        Err(error) if error.kind() == ErrorKind::NotFound => Ok(()),
        done => done,
    }
}

/// A new or removed name is safe only when its folder is synced.
pub(super) fn sync_folder(folder: &Path) -> io::Result<()> {
    if cfg!(unix) {
        File::open(folder)?.sync_all()?;
    }
    Ok(())
}

pub(super) fn file_error(path: &Path, error: &io::Error) -> EngineError {
    let what = format!("{}: {error}", path.display());
    match error.kind() {
        ErrorKind::StorageFull | ErrorKind::QuotaExceeded => EngineError::Full { what },
        ErrorKind::PermissionDenied | ErrorKind::ReadOnlyFilesystem => {
            EngineError::ReadOnly { what }
        }
        _ => EngineError::Io { what },
    }
}

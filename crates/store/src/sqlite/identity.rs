//! Whether the files that the program has open are still the ones in the folder. A file that
//! was removed or replaced can be written to and read as before, and what is written is lost.

use std::path::{Path, PathBuf};
use std::sync::OnceLock;

use crate::error::EngineError;

pub(super) struct Identity {
    database: Known,
    /// Known once it is there: it comes with the first writing, and stays while the writer is
    /// connected.
    ahead: Known,
}

struct Known {
    path: PathBuf,
    file: OnceLock<FileId>,
}

impl Identity {
    /// Of the database as it is now. One that is on no disk of this machine is not watched.
    pub(super) fn of(database: &Path) -> Self {
        let mut ahead = database.as_os_str().to_owned();
        ahead.push("-wal");
        let known = |path| {
            let known = Known {
                path,
                file: OnceLock::new(),
            };
            known.note();
            known
        };
        Self {
            database: known(database.to_owned()),
            ahead: known(PathBuf::from(ahead)),
        }
    }

    /// Fails if they are others now, or gone.
    pub(super) fn check(&self) -> Result<(), EngineError> {
        self.database.check()?;
        if self.ahead.file.get().is_none() {
            self.ahead.note();
        }
        self.ahead.check()
    }

    /// The same for a reader: the file ahead of the database is its writer's affair.
    pub(super) fn check_database(&self) -> Result<(), EngineError> {
        self.database.check()
    }
}

impl Known {
    fn note(&self) {
        if let Some(file) = file_id(&self.path) {
            // Whoever noted it first saw the same.
            let _ = self.file.set(file);
        }
    }

    fn check(&self) -> Result<(), EngineError> {
        match self.file.get() {
            Some(known) if file_id(&self.path) != Some(*known) => Err(EngineError::Gone {
                what: format!(
                    "{} was removed or replaced while the program had it open",
                    self.path.display()
                ),
            }),
            _ => Ok(()),
        }
    }
}

#[cfg(unix)]
type FileId = (u64, u64);

#[cfg(unix)]
fn file_id(path: &Path) -> Option<FileId> {
    use std::os::unix::fs::MetadataExt;
    let about = std::fs::metadata(path).ok()?;
    Some((about.dev(), about.ino()))
}

#[cfg(not(unix))]
type FileId = ();

/// Elsewhere a file that is open cannot be removed or replaced.
#[cfg(not(unix))]
fn file_id(path: &Path) -> Option<FileId> {
    path.exists().then_some(())
}

//! What can go wrong, with where it went wrong and how to mend it.

use std::path::PathBuf;

use crate::row::Row;

/// Why the engine below could not do its work. The same for reading and appending.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum EngineError {
    #[error("the database is held by another program: {what}")]
    Busy { what: String },
    #[error("the disk is full: {what}")]
    Full { what: String },
    #[error("the store can't be written to: {what}")]
    ReadOnly { what: String },
    #[error("the disk failed: {what}")]
    Io { what: String },
    #[error("the database can't be reached: {what}")]
    Unreachable { what: String },
    /// Something stored is not what was written.
    #[error("{} is damaged: {what}", place(log, *.position))]
    Damaged {
        /// The log; empty where none can be named.
        log: String,
        /// The row, where one can be named.
        position: Option<u64>,
        what: String,
    },
    /// What holds the store was taken away under the running program.
    #[error("the store is gone: {what}")]
    Gone { what: String },
    #[error("the store's writer has stopped")]
    Stopped,
    /// None of the above: a fault of this program.
    #[error("the database refused: {what}")]
    Refused { what: String },
}

impl EngineError {
    /// What a person can do about it.
    #[must_use]
    pub fn mend(&self) -> &'static str {
        match self {
            Self::Busy { .. } => "Stop the other program that uses this store, then try again.",
            Self::Full { .. } => {
                "Free some space on the disk, then try again. Nothing that was saved is lost."
            }
            Self::ReadOnly { .. } => {
                "Let the program's user write to the store's folder and to the files in it."
            }
            Self::Io { .. } => {
                "Try again. If it comes back, copy the newest backup to another disk and restore there."
            }
            Self::Unreachable { .. } => {
                "Check that the database server runs and that its address and password are right."
            }
            Self::Damaged { .. } => {
                "Stop, keep a copy of the store as it is, and restore the newest backup that verifies."
            }
            Self::Gone { .. } => {
                "Stop the program. Put the folder back as it was, or restore the newest backup; what was sent since is sent again."
            }
            Self::Stopped => "Start the program again.",
            Self::Refused { .. } => "Report this message: it is a fault of the program.",
        }
    }
}

/// Why something could not be read.
pub type ReadError = EngineError;

/// Why a command was not appended. Nothing of it was written.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum AppendError {
    #[error("command {command_id} was already accepted in log {log:?} with other content")]
    IdReusedWithOtherContent { log: String, command_id: String },
    /// A decision was made on a stream that has moved on; `since` is what it has not seen.
    #[error("stream {stream:?} stands at {actual}, the decision was made at {expected}")]
    Conflict {
        stream: String,
        expected: u64,
        actual: u64,
        since: Vec<Row>,
    },
    #[error("command {command_id} brings no event")]
    NoEvents { command_id: String },
    #[error("a private text or file does not match its commitment {id}")]
    PrivateDoesNotMatch { id: String },
    /// A copy is being set down in the log, or was and broke off: it takes nothing else until
    /// all of it is there.
    #[error("log {log:?} is not whole: a copy is being set down in it, or broke off")]
    Landing { log: String },
    #[error("{field} can't be stored: {why}")]
    NotStorable { field: &'static str, why: String },
    #[error(transparent)]
    Engine(#[from] EngineError),
}

impl AppendError {
    /// What a person, or the program that sent the command, can do about it.
    #[must_use]
    pub fn mend(&self) -> &'static str {
        match self {
            Self::IdReusedWithOtherContent { .. } => "Send the new content under a new id.",
            Self::Conflict { .. } => "Look at what came in since, and decide again.",
            Self::NoEvents { .. } => "Send at least one event.",
            Self::PrivateDoesNotMatch { .. } => {
                "Send the salt and the content from which the commitment was made."
            }
            Self::Landing { .. } => {
                "Set the same copy down there again: it goes on from where it broke off. Or use an empty place."
            }
            Self::NotStorable { .. } => "Correct the field and send the command again.",
            Self::Engine(error) => error.mend(),
        }
    }
}

/// Why a store could not be opened.
#[derive(Debug, thiserror::Error)]
pub enum OpenError {
    #[error("{} is in use by another running program", .folder.display())]
    InUse { folder: PathBuf },
    #[error("{} can't be used as a store: {why}", .path.display())]
    Folder { path: PathBuf, why: std::io::Error },
    #[error("{place} is not a store of this program: {why}")]
    NotAStore { place: String, why: String },
    /// A new store here would bury what is left of the one before.
    #[error("the database {} is missing or empty, but beside it there is {found}", .database.display())]
    Remains { database: PathBuf, found: String },
    #[error(
        "{place} was written by a newer version of this program (form {found}, this one knows up to {known})"
    )]
    Newer {
        place: String,
        found: i64,
        known: i64,
    },
    #[error("the database would not take the setting {setting}: it says {found:?}")]
    Setting {
        setting: &'static str,
        found: String,
    },
    #[error(transparent)]
    Engine(#[from] EngineError),
}

impl OpenError {
    /// What a person can do about it.
    #[must_use]
    pub fn mend(&self) -> &'static str {
        match self {
            Self::InUse { .. } => "Stop the other program, or choose another folder.",
            Self::Folder { .. } => {
                "Choose a folder that exists on a writable disk and that the program's user owns."
            }
            Self::NotAStore { .. } => {
                "Choose another place, or restore a backup if the store once was there."
            }
            Self::Remains { .. } => {
                "Delete nothing. Put the database file back if you have it, with the files beside it; else restore the newest backup into a new folder."
            }
            Self::Newer { .. } => "Install the newer version of the program.",
            Self::Setting { .. } => {
                "Try again. If it comes back: a store wants a local disk, not a network folder, and a database server that syncs what it writes."
            }
            Self::Engine(error) => error.mend(),
        }
    }
}

fn place(log: &str, position: Option<u64>) -> String {
    match position {
        _ if log.is_empty() => "the store".to_owned(),
        None => format!("log {log:?}"),
        Some(position) => format!("log {log:?} at position {position}"),
    }
}

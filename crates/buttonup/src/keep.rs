//! Keeping the record: checking it, copying it, taking it elsewhere, erasing from it.

mod backup;
mod check;
pub mod daily;
mod elsewhere;
mod erase;
mod import;
mod lines;
mod map_key;
mod notes;
pub mod own;
mod place;
mod restore;
mod sealed;

pub use erase::{clock_agrees, erase_due};
pub use map_key::signer;
pub use place::Place;

use crate::answer::{Answer, Wrong};
use clap::Subcommand;

/// What can be done with the record.
#[derive(Debug, Subcommand)]
pub enum Command {
    /// Check the record from its first row to its last.
    Verify(check::Verify),
    /// Make every cache again from the record, and check that the answers are the same.
    Rebuild(check::Rebuild),
    /// Copy the record while it is in use, and check the copy.
    Backup(backup::Backup),
    /// Put a copy back, into an empty folder or database.
    Restore(restore::Restore),
    /// Write the whole record as lines of JSON.
    Export(lines::Export),
    /// Read lines of JSON that `export` wrote, into an empty folder or database.
    Import(import::Import),
    /// Erase a customer's words; the books stay whole.
    Erase(erase::Erase),
    /// Say for how many years records are kept; until then erasures wait.
    KeepFor(erase::KeepFor),
    /// Seal the keys of the shop's network with a word, so that they go along with each backup.
    SealKeys(sealed::Keys),
    /// Open sealed keys after a restore.
    OpenKeys(sealed::Keys),
    /// Move the record from its folder to a PostgreSQL database.
    MoveTo(elsewhere::MoveTo),
}

/// Does one of these.
pub fn run(command: &Command) -> Result<Answer, Wrong> {
    match command {
        Command::Verify(verify) => check::verify(verify),
        Command::Rebuild(rebuild) => check::rebuild(rebuild),
        Command::Backup(backup) => backup::backup(backup),
        Command::Restore(restore) => restore::restore(restore),
        Command::Export(export) => lines::export(export),
        Command::Import(asked) => import::import(asked),
        Command::Erase(erase) => erase::erase(erase),
        Command::KeepFor(keep) => erase::keep_for(keep),
        Command::SealKeys(asked) => sealed::seal_keys(asked),
        Command::OpenKeys(asked) => sealed::open_keys(asked),
        Command::MoveTo(move_to) => elsewhere::move_to(move_to),
    }
}

//! `import`: lines of JSON that `export` wrote, read back in.

use super::check::Also;
use super::place::Place;
use super::restore::{self, From};
use crate::answer::{Answer, Wrong};
use clap::Args;
use std::path::PathBuf;

/// Which lines, and where to.
#[derive(Debug, Args)]
pub struct Import {
    /// The lines that `export` wrote.
    #[arg(value_name = "FILE")]
    file: PathBuf,
    /// A list of what was erased since they were written.
    #[arg(long, value_name = "FILE")]
    erasures: Option<PathBuf>,
    #[command(flatten)]
    also: Also,
    #[command(flatten)]
    place: Place,
}

/// Reads lines back in, with the same hashes.
pub fn import(import: &Import) -> Result<Answer, Wrong> {
    let from = From {
        path: &import.file,
        is_lines: true,
        erasures: import.erasures.as_deref(),
        taken: import.also.taken(),
    };
    restore::land(&from, &import.place, "imported and checked")
}

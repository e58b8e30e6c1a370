//! `restore`: a copy put back, erased again where that is due, and checked.

use super::backup::{HEAD, is_lines};
use super::check::must_be_sound;
use super::lines;
use super::notes;
use super::place::{Place, not_opened, reading, writing};
use crate::answer::{Answer, Wrong};
use clap::Args;
use jiff::Timestamp;
use serde_json::{Value, json};
use shop::repair::Words;
use std::fs;
use std::path::{Path, PathBuf};
use store::{Hash, Store, Verified};

/// Which copy, and where to.
#[derive(Debug, Args)]
pub struct Restore {
    /// A folder or file that `backup` made.
    #[arg(value_name = "BACKUP")]
    backup: PathBuf,
    /// A list of what was erased since, if it is not the one beside the backup.
    #[arg(long, value_name = "FILE")]
    erasures: Option<PathBuf>,
    #[command(flatten)]
    place: Place,
}

/// Where a record comes from.
pub struct From<'a> {
    pub path: &'a Path,
    pub is_lines: bool,
    pub erasures: Option<&'a Path>,
}

/// Puts a copy back.
pub fn restore(restore: &Restore) -> Result<Answer, Wrong> {
    let from = From {
        path: &restore.backup,
        is_lines: is_lines(&restore.backup),
        erasures: restore.erasures.as_deref(),
    };
    land(&from, &restore.place, "restored and checked")
}

/// What landed, and how many contents were erased again.
struct Landed {
    found: Verified,
    erased_again: u64,
}

/// Sets a record down in an empty place, erases again and verifies before it says done.
pub fn land(from: &From<'_>, place: &Place, done: &str) -> Result<Answer, Wrong> {
    let erasures = notes::erasures(from.path, from.erasures)?;
    let landed = match &place.database {
        Some(_) => {
            let opened = place.write()?;
            refuse_taken(opened.store(), place)?;
            fill(from, opened.store(), &place.log)?;
            settle(opened.store(), place, &erasures)?
        }
        None => land_in_folder(from, place, &erasures)?,
    };
    let head = Words(landed.found.head.hash).hex();
    let again = match landed.erased_again {
        0 => String::new(),
        count => format!("\n{count} texts or files that were erased since were erased again"),
    };
    Ok(Answer {
        text: format!(
            "{done}: {}\n{} events, head {head}{again}",
            place.name(),
            landed.found.events
        ),
        json: json!({
            "to": place.name(),
            "events": landed.found.events,
            "head": head,
            "private": landed.found.private,
            "erased": landed.found.erased,
            "erased_again": landed.erased_again,
        }),
        good: true,
    })
}

/// The folder gets its name only when everything is done: half a record is never served.
fn land_in_folder(from: &From<'_>, place: &Place, erasures: &[Hash]) -> Result<Landed, Wrong> {
    let to = &place.data;
    let taken = fs::read_dir(to).is_ok_and(|mut entries| entries.next().is_some());
    if taken || to.is_file() {
        return Err(Wrong {
            code: 1,
            place: to.display().to_string(),
            what: "it is not empty, and restoring writes over nothing".to_owned(),
            mend: "name a new folder with --data".to_owned(),
        });
    }
    let mut unfinished = to.as_os_str().to_owned();
    unfinished.push(".restoring");
    let unfinished = PathBuf::from(unfinished);
    let landed = || -> Result<Landed, Wrong> {
        let refused = |error: std::io::Error| {
            Wrong::input(
                to.display().to_string(),
                error.to_string(),
                "name a folder on a disk that can be written to",
            )
        };
        if unfinished.exists() {
            fs::remove_dir_all(&unfinished).map_err(refused)?;
        }
        if from.is_lines {
            fill(from, &writing(&unfinished)?, &place.log)?;
        } else {
            copied(from.path, &place.log)?
                .back_up(&unfinished)
                .map_err(|error| not_opened(unfinished.display().to_string(), &error))?;
        }
        let landed = settle(&writing(&unfinished)?, place, erasures)?;
        if to.exists() {
            fs::remove_dir(to).map_err(refused)?;
        }
        fs::rename(&unfinished, to).map_err(refused)?;
        Ok(landed)
    };
    landed().inspect_err(|_| {
        // It is in nobody's way: this only frees the space.
        let _ = fs::remove_dir_all(&unfinished);
    })
}

fn refuse_taken(store: &dyn Store, place: &Place) -> Result<(), Wrong> {
    let head = store.head(&place.log).map_err(shop::Trouble::from)?;
    if head.position == 0 {
        return Ok(());
    }
    Err(Wrong {
        code: 1,
        place: place.name(),
        what: format!("it holds {} events already", head.position),
        mend: "name another log with --log, or an empty database".to_owned(),
    })
}

fn fill(from: &From<'_>, to: &dyn Store, log: &str) -> Result<(), Wrong> {
    if from.is_lines {
        lines::read_file(from.path, to, log)?;
    } else {
        shop::copy(&copied(from.path, log)?, to, log)?;
    }
    Ok(())
}

/// A backup's folder, held against the head noted in it.
fn copied(backup: &Path, log: &str) -> Result<store::Sqlite, Wrong> {
    let place = backup.display().to_string();
    if !backup.is_dir() {
        return Err(Wrong::input(
            place,
            "there is no such backup",
            "name the folder or the .jsonl file that `buttonup backup` made",
        ));
    }
    let store = reading(backup)?;
    let found = must_be_sound(&store, log, &place)?;
    let noted = fs::read_to_string(backup.join(HEAD))
        .ok()
        .and_then(|text| serde_json::from_str::<Value>(&text).ok());
    match noted {
        Some(noted) if noted["log"] == log && noted["head"] != Words(found.head.hash).hex() => {
            Err(Wrong {
                code: 1,
                place,
                what: format!(
                    "it ends at event {} with head {}, but was made with {} events and head {}",
                    found.events,
                    Words(found.head.hash).hex(),
                    noted["events"],
                    noted["head"].as_str().unwrap_or("?")
                ),
                mend: "restore another backup; keep this one as it is".to_owned(),
            })
        }
        _ if found.events == 0 => Err(Wrong::input(
            place,
            format!("it holds nothing in log {log:?}"),
            "name the log with --log",
        )),
        _ => Ok(store),
    }
}

/// Erases again, and verifies.
fn settle(store: &dyn Store, place: &Place, erasures: &[Hash]) -> Result<Landed, Wrong> {
    let now = Timestamp::now().to_string();
    let erased_again = shop::erase_again(store, &place.log, erasures, &now)?;
    let found = must_be_sound(store, &place.log, &place.name())?;
    Ok(Landed {
        found,
        erased_again,
    })
}

//! `restore`: a copy put back, erased again where that is due, and checked.

use super::backup::HEAD;
use super::check::{Also, must_be_sound};
use super::lines;
use super::notes;
use super::own;
use super::place::{Place, not_opened, reading, writing};
use super::sealed::{SEALED, take_along};
use crate::answer::{Answer, Wrong};
use clap::Args;
use jiff::Timestamp;
use serde_json::{Value, json};
use shop::Taken;
use shop::repair::Words;
use std::fs;
use std::path::{Path, PathBuf};
use store::{Hash, Head, Store, Verified};

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
    also: Also,
    #[command(flatten)]
    place: Place,
}

/// Where a record comes from.
pub struct From<'a> {
    pub path: &'a Path,
    pub is_lines: bool,
    pub erasures: Option<&'a Path>,
    pub taken: Taken,
}

/// Puts a copy back.
pub fn restore(restore: &Restore) -> Result<Answer, Wrong> {
    let from = From {
        path: &restore.backup,
        is_lines: lines::is_lines(&restore.backup),
        erasures: restore.erasures.as_deref(),
        taken: restore.also.taken(),
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
            let end = from.end(&place.log)?;
            refuse_taken(opened.store(), place, end)?;
            fill(from, opened.store(), &place.log)?;
            settle(opened.store(), place, &erasures, end)?
        }
        None => land_in_folder(from, place, &erasures)?,
    };
    let head = Words(landed.found.head.hash).hex();
    let again = match landed.erased_again {
        0 => String::new(),
        count => format!("\n{count} texts or files that were erased since were erased again"),
    };
    let sealed = place.data.join("network").join(SEALED).exists();
    let keys = match sealed {
        true => {
            "\nThe network's keys came along, sealed: open them with `buttonup open-keys` before the network is served."
        }
        false => "",
    };
    Ok(Answer {
        text: format!(
            "{done}: {}\n{} events, head {head}{again}{keys}",
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
            "sealed_keys": sealed,
        }),
        good: true,
    })
}

impl From<'_> {
    /// Where it ends: what lands is held against it.
    fn end(&self, log: &str) -> Result<Head, Wrong> {
        if self.is_lines {
            return lines::end_of_file(self.path);
        }
        let copied = copied(self.path, log, self.taken)?;
        Ok(copied.head(log).map_err(shop::Trouble::from)?)
    }
}

/// The folder gets its name only when everything is done: half a record is never served. Until
/// then it has a name of its own, so that two at once are not in each other's way.
fn land_in_folder(from: &From<'_>, place: &Place, erasures: &[Hash]) -> Result<Landed, Wrong> {
    let to = &place.data;
    let taken = || Wrong {
        code: 1,
        place: to.display().to_string(),
        what: "it is not empty, and restoring writes over nothing".to_owned(),
        mend: "name a new folder with --data".to_owned(),
    };
    let is_taken = fs::read_dir(to).is_ok_and(|mut entries| entries.next().is_some());
    if is_taken || to.is_file() {
        return Err(taken());
    }
    let unfinished = own::beside(to, "restoring");
    let landed = || -> Result<Landed, Wrong> {
        let end = from.end(&place.log)?;
        if from.is_lines {
            fill(from, &writing(&unfinished)?, &place.log)?;
        } else {
            copied(from.path, &place.log, from.taken)?
                .back_up(&unfinished)
                .map_err(|error| not_opened(unfinished.display().to_string(), &error))?;
        }
        let landed = settle(&writing(&unfinished)?, place, erasures, end)?;
        if !from.is_lines {
            let keys = unfinished.join("network").join(SEALED);
            take_along(&from.path.join(SEALED), &keys).map_err(|error| {
                Wrong::input(keys.display().to_string(), error.to_string(), "make room")
            })?;
        }
        own::finish(&unfinished, to).map_err(|error| match error.kind() {
            std::io::ErrorKind::AlreadyExists | std::io::ErrorKind::DirectoryNotEmpty => taken(),
            _ => Wrong::input(
                to.display().to_string(),
                error.to_string(),
                "name a folder on a disk that can be written to",
            ),
        })?;
        Ok(landed)
    };
    landed().inspect_err(|_| {
        // It is in nobody's way: this only frees the space.
        let _ = fs::remove_dir_all(&unfinished);
    })
}

/// Whatever a database holds stays as it is, but for a part of the same copy: that is finished.
fn refuse_taken(store: &dyn Store, place: &Place, end: Head) -> Result<(), Wrong> {
    let trouble = |error| Wrong::from(shop::Trouble::from(error));
    let landing = store.landing(&place.log).map_err(trouble)?;
    let head = store.head(&place.log).map_err(trouble)?;
    match landing {
        Some(landing) if landing == end.hash => Ok(()),
        None if head.position == 0 => Ok(()),
        Some(_) => Err(Wrong {
            code: 1,
            place: place.name(),
            what: "a part of another copy is there: setting it down goes on, or broke off"
                .to_owned(),
            mend: "restore that same copy again, which finishes it; or name another log with --log, or an empty database".to_owned(),
        }),
        None => Err(Wrong {
            code: 1,
            place: place.name(),
            what: format!("it holds {} events already", head.position),
            mend: "name another log with --log, or an empty database".to_owned(),
        }),
    }
}

fn fill(from: &From<'_>, to: &dyn Store, log: &str) -> Result<(), Wrong> {
    if from.is_lines {
        lines::read_file(from.path, to, log, from.taken)?;
    } else {
        shop::land_copy(&copied(from.path, log, from.taken)?, to, log, from.taken)?;
    }
    Ok(())
}

/// A backup's folder, held against the head noted in it.
fn copied(backup: &Path, log: &str, taken: Taken) -> Result<store::Sqlite, Wrong> {
    let place = backup.display().to_string();
    if !backup.is_dir() {
        return Err(Wrong::input(
            place,
            "there is no such backup",
            "name the folder or the .jsonl file that `buttonup backup` made",
        ));
    }
    let store = reading(backup)?;
    let found = must_be_sound(&store, log, &place, taken)?;
    let noted = fs::read_to_string(backup.join(HEAD))
        .ok()
        .and_then(|text| serde_json::from_str::<Value>(&text).ok());
    let head = Words(found.head.hash).hex();
    match noted {
        None => Err(Wrong {
            code: 1,
            place,
            what: format!("{HEAD} is missing in it, or does not read: the copy is not whole, or no backup"),
            mend: "restore another backup; a shop's own folder is served with --data, and copied with `buttonup backup`".to_owned(),
        }),
        Some(noted) if noted["log"] != log => Err(Wrong::input(
            place,
            format!("it is a copy of log {}, not of {log:?}", noted["log"]),
            "name the log with --log",
        )),
        Some(noted) if noted["head"] != head => Err(Wrong {
            code: 1,
            place,
            what: format!(
                "it ends at event {} with head {head}, but was made with {} events and head {}",
                found.events,
                noted["events"],
                noted["head"].as_str().unwrap_or("?")
            ),
            mend: "restore another backup; keep this one as it is".to_owned(),
        }),
        Some(_) => Ok(store),
    }
}

/// Erases again, verifies, and says that it has landed: from then on it is served.
fn settle(store: &dyn Store, place: &Place, erasures: &[Hash], end: Head) -> Result<Landed, Wrong> {
    let now = Timestamp::now().to_string();
    let erased_again = shop::erase_again(store, &place.log, erasures, &now)?;
    let found = shop::verify_landing(store, &place.log, end.hash).map_err(|damage| Wrong {
        code: 1,
        place: place.name(),
        what: format!("it is not sound: {damage}"),
        mend: damage.mend().to_owned(),
    })?;
    shop::landed(store, &place.log)?;
    Ok(Landed {
        found,
        erased_again,
    })
}

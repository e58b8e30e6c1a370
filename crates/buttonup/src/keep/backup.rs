//! `backup`: a copy that was checked, taken while the shop goes on working.

use super::check::not_sound;
use super::lines;
use super::notes::{self, Note};
use super::own;
use super::place::{Opened, Place, not_opened, reading};
use super::sealed::{SEALED, take_along};
use crate::answer::{Answer, Wrong};
use clap::Args;
use jiff::Timestamp;
use serde_json::json;
use shop::Taken;
use shop::repair::Words;
use std::fs;
use std::io;
use std::path::{Path, PathBuf};
use store::{Damage, Head, Memory, Sqlite, Verified};

/// Which record, and where to.
#[derive(Debug, Args)]
pub struct Backup {
    /// A new folder, or a folder that is there to put it in; or a new file whose name ends
    /// in .jsonl, for lines of JSON.
    #[arg(value_name = "FOLDER|FILE")]
    to: PathBuf,
    #[command(flatten)]
    place: Place,
}

/// What stands in a backup's folder to hold it against.
pub const HEAD: &str = "head.json";

/// Copies the record and checks the copy.
pub fn backup(backup: &Backup) -> Result<Answer, Wrong> {
    copy(&backup.place, &backup.to)
}

/// The same of a place, to a folder or file.
pub fn copy(place: &Place, to: &Path) -> Result<Answer, Wrong> {
    let opened = place.read()?;
    place.must_hold(opened.store())?;
    let now = Timestamp::now();
    let to = target(to, &place.log, now)?;
    let checked = if lines::is_lines(&to) {
        copy_lines(&opened, &place.log, &to)?
    } else {
        copy_folder(&opened, place, &to)?
    };
    let found = match checked {
        Ok(found) => found,
        Err(damage) => {
            let mut answer = not_sound(&damage);
            answer.text = format!("{}: the copy is {}", to.display(), answer.text);
            return Ok(answer);
        }
    };
    let erased = shop::erasures(opened.store(), &place.log)?;
    notes::write_erasures(&to, &erased).map_err(|error| not_written(&to, &error))?;
    let note = Note {
        at: now,
        to: fs::canonicalize(&to).unwrap_or_else(|_| to.clone()),
        log: place.log.clone(),
        events: found.events,
        head: Words(found.head.hash),
    };
    // The copy is made; a record that lies on a read-only disk can't be told of it.
    let noted = notes::note(place, &note).is_ok();
    Ok(Answer {
        text: format!(
            "copied and checked: {}\n{} events, head {}{}",
            to.display(),
            found.events,
            note.head.hex(),
            if noted {
                ""
            } else {
                "\nNot noted beside the record, which can't be written to."
            }
        ),
        json: json!({
            "to": to.display().to_string(),
            "at": now.to_string(),
            "events": found.events,
            "head": note.head.hex(),
            "private": found.private,
            "erased": found.erased,
            "noted": noted,
        }),
        good: true,
    })
}

/// When a copy was made, in its name.
const DATED: &str = "%Y-%m-%dT%H%M%S%.3fZ";

/// Whether a name is one that a copy of this log gets in a folder that is there.
pub fn is_dated(name: &str, log: &str) -> bool {
    let when = name
        .strip_prefix(log)
        .and_then(|rest| rest.strip_prefix('-'));
    let date = when.and_then(|when| when.strip_suffix('Z'));
    date.is_some_and(|date| {
        let [day, time] = match date.split('T').collect::<Vec<_>>()[..] {
            [day, time] => [day, time],
            _ => return false,
        };
        let digits = time.bytes().all(|c| c.is_ascii_digit() || c == b'.');
        day.parse::<jiff::civil::Date>().is_ok() && time.len() == 10 && digits
    })
}

/// The new folder or file. In a folder that is there it gets a name of its own.
fn target(to: &Path, log: &str, now: Timestamp) -> Result<PathBuf, Wrong> {
    if to.is_dir() && !to.join("store.db").exists() {
        return Ok(to.join(format!("{log}-{}", now.strftime(DATED))));
    }
    if to.exists() {
        return Err(Wrong::input(
            to.display().to_string(),
            "it is there already, and a backup writes over nothing",
            "name a new folder or file",
        ));
    }
    Ok(to.to_owned())
}

/// The copy gets its name when it is whole, checked, and says in itself where it ends.
fn copy_folder(
    opened: &Opened,
    place: &Place,
    to: &Path,
) -> Result<Result<Verified, Damage>, Wrong> {
    let log = &place.log;
    let unfinished = own::beside(to, "unfinished");
    let keys = place.data.join("network").join(SEALED);
    let copied = || -> Result<Result<Verified, Damage>, Wrong> {
        match opened {
            Opened::Folder(store) => store
                .back_up(&unfinished)
                .map_err(|error| not_opened(to.display().to_string(), &error))?,
            Opened::Database(store) => {
                let copy = Sqlite::open(&unfinished)
                    .map_err(|error| not_opened(to.display().to_string(), &error))?;
                shop::copy(store.as_ref(), &copy, log, Taken::AsTheyAre)?;
            }
        }
        let checked = shop::verify(&reading(&unfinished)?, log, None);
        if let Ok(found) = &checked {
            take_along(&keys, &unfinished.join(SEALED))
                .and_then(|_| write_head(&unfinished, log, found.head))
                .and_then(|()| own::finish(&unfinished, to))
                .map_err(|error| not_written(to, &error))?;
        }
        Ok(checked)
    };
    let checked = copied();
    if !matches!(checked, Ok(Ok(_))) {
        // It is in nobody's way: this only frees the space.
        let _ = fs::remove_dir_all(&unfinished);
    }
    checked
}

/// A copy that is cut at its end would still be sound: the head tells.
fn write_head(to: &Path, log: &str, head: Head) -> io::Result<()> {
    let head = json!({ "log": log, "events": head.position, "head": Words(head.hash).hex() });
    own::write_new(&to.join(HEAD), &format!("{head}\n"))
}

fn copy_lines(opened: &Opened, log: &str, to: &Path) -> Result<Result<Verified, Damage>, Wrong> {
    let unfinished = own::beside(to, "unfinished");
    let copied = || -> Result<Result<Verified, Damage>, Wrong> {
        lines::write_file(opened.store(), log, &unfinished)?;
        let read_back = Memory::new();
        lines::read_file(&unfinished, &read_back, log, Taken::AsTheyAre)?;
        shop::landed(&read_back, log)?;
        let checked = shop::verify(&read_back, log, None);
        if checked.is_ok() {
            own::finish(&unfinished, to).map_err(|error| not_written(to, &error))?;
        }
        Ok(checked)
    };
    let checked = copied();
    if !matches!(checked, Ok(Ok(_))) {
        let _ = fs::remove_file(&unfinished);
    }
    checked
}

fn not_written(to: &Path, error: &io::Error) -> Wrong {
    Wrong::input(
        to.display().to_string(),
        error.to_string(),
        "make room, or name a place that can be written to",
    )
}

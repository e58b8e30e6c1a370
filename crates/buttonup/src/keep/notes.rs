//! What is noted beside the record: where its backups are, and beside the backups, what
//! was erased since.

use super::own;
use super::place::Place;
use crate::answer::Wrong;
use jiff::Timestamp;
use serde_json::{Value, json};
use shop::repair::Words;
use std::collections::BTreeSet;
use std::fs::{self, OpenOptions};
use std::io::{self, Write};
use std::path::{Path, PathBuf};
use store::Hash;

/// One backup that was made and checked.
#[derive(Debug, Clone)]
pub struct Note {
    pub at: Timestamp,
    pub to: PathBuf,
    pub log: String,
    pub events: u64,
    pub head: Words,
}

const BACKUPS: &str = "backups.jsonl";
const ERASURES: &str = "erasures.txt";

impl Note {
    fn line(&self) -> Value {
        json!({
            "at": self.at.to_string(),
            "to": self.to.display().to_string(),
            "log": self.log,
            "events": self.events,
            "head": self.head.hex(),
        })
    }

    fn read(line: &str) -> Option<Self> {
        let line: Value = serde_json::from_str(line).ok()?;
        Some(Self {
            at: line["at"].as_str()?.parse().ok()?,
            to: line["to"].as_str()?.into(),
            log: line["log"].as_str()?.to_owned(),
            events: line["events"].as_u64()?,
            head: Words::from_hex(line["head"].as_str()?)?,
        })
    }
}

/// Notes a backup beside the record.
pub fn note(place: &Place, note: &Note) -> io::Result<()> {
    fs::create_dir_all(&place.data)?;
    let mut options = OpenOptions::new();
    options.create(true).append(true);
    #[cfg(unix)]
    std::os::unix::fs::OpenOptionsExt::mode(&mut options, 0o600);
    let mut file = options.open(place.data.join(BACKUPS))?;
    file.write_all(format!("{}\n", note.line()).as_bytes())?;
    file.sync_all()
}

/// The backups noted for this record, oldest first. A line that was cut is passed over.
pub fn noted(place: &Place) -> Vec<Note> {
    let text = fs::read_to_string(place.data.join(BACKUPS)).unwrap_or_default();
    text.lines()
        .filter_map(Note::read)
        .filter(|note| note.log == place.log)
        .collect()
}

/// What the page about the record shows beside what stands in it.
pub fn kept(place: &Place) -> web::Kept {
    web::Kept {
        folder: place.data.display().to_string(),
        bytes: place
            .database
            .is_none()
            .then(|| size(&place.data).ok())
            .flatten(),
        last_backup: noted(place).pop().map(|note| web::LastBackup {
            at: note.at,
            to: note.to.display().to_string(),
            events: note.events,
        }),
        ..web::Kept::default()
    }
}

fn size(folder: &Path) -> io::Result<u64> {
    let mut bytes = 0;
    for entry in fs::read_dir(folder)? {
        let entry = entry?;
        let about = entry.metadata()?;
        bytes += if about.is_dir() {
            size(&entry.path())?
        } else {
            about.len()
        };
    }
    Ok(bytes)
}

/// The list beside a backup: in the folder in which the backup stands, one for all there.
fn list_beside(backup: &Path) -> PathBuf {
    match backup.parent() {
        Some(folder) if folder != Path::new("") => folder.join(ERASURES),
        _ => PathBuf::from(ERASURES),
    }
}

/// Writes what was erased beside a backup, so that restoring it erases again. What the
/// list held before stays in it.
pub fn write_erasures(backup: &Path, erased: &[Hash]) -> io::Result<()> {
    let list = list_beside(backup);
    let before: BTreeSet<Hash> = match fs::read_to_string(&list) {
        Ok(text) => text.lines().filter_map(hash).collect(),
        Err(error) if error.kind() == io::ErrorKind::NotFound => BTreeSet::new(),
        Err(error) => return Err(error),
    };
    let all: BTreeSet<Hash> = before.iter().chain(erased).copied().collect();
    if all.len() == before.len() {
        return Ok(());
    }
    let text: String = all
        .iter()
        .map(|id| format!("{}\n", Words(*id).hex()))
        .collect();
    let unfinished = own::beside(&list, "unfinished");
    own::write_new(&unfinished, &text)?;
    fs::rename(unfinished, &list)?;
    own::sync_folder_of(&list)
}

/// What was erased since a backup was taken, from the list beside it and from another.
pub fn erasures(backup: &Path, other: Option<&Path>) -> Result<Vec<Hash>, Wrong> {
    let beside = list_beside(backup);
    let mut all = BTreeSet::new();
    let lists = [beside.exists().then_some(beside.as_path()), other];
    for list in lists.into_iter().flatten() {
        let text = fs::read_to_string(list).map_err(|error| {
            Wrong::input(
                list.display().to_string(),
                error.to_string(),
                "give the list of erasures that stands beside the backups",
            )
        })?;
        for (number, line) in (1..).zip(text.lines()) {
            all.insert(hash(line).ok_or_else(|| {
                Wrong::input(
                    format!("{} line {number}", list.display()),
                    format!("{line:?} is no hash"),
                    "put 64 hexadecimal digits on each line, as the program wrote them",
                )
            })?);
        }
    }
    Ok(all.into_iter().collect())
}

fn hash(line: &str) -> Option<Hash> {
    Words::from_hex(line.trim()).map(|words| words.0)
}

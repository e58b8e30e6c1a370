//! Copies that a served shop makes of itself: one a day and one at a press, so many kept.

use super::backup::{self, HEAD};
use super::map_key::signer;
use super::notes;
use super::place::Place;
use super::sealed::{seal, state};
use crate::answer::Wrong;
use clap::Args;
use jiff::{SignedDuration, Timestamp};
use serde_json::Value;
use std::fs;
use std::path::{Path, PathBuf};
use std::sync::{Mutex, PoisonError};
use web::{Kept, LastBackup};

/// Where a served shop's copies go, and how many stay.
#[derive(Debug, Clone, Args)]
pub struct Copies {
    /// Where the daily copies go, best on another disk; `backups` in the shop's folder if none
    /// is named.
    #[arg(long, value_name = "FOLDER")]
    backups: Option<PathBuf>,
    /// How many of them are kept; older ones that this program made there are deleted.
    #[arg(long, value_name = "COUNT", default_value_t = 14, value_parser = clap::value_parser!(u16).range(1..))]
    keep_backups: u16,
    /// Make no copy by itself each day.
    #[arg(long)]
    no_daily_backup: bool,
}

/// The record of a served shop as its pages see it.
pub struct Keeper {
    place: Place,
    folder: PathBuf,
    most: usize,
    pub daily: bool,
    /// One copy at a time.
    turn: Mutex<()>,
}

impl Keeper {
    pub fn new(place: &Place, copies: Option<&Copies>) -> Self {
        let named = copies.and_then(|copies| copies.backups.clone());
        Self {
            place: place.clone(),
            folder: named.unwrap_or_else(|| place.data.join("backups")),
            most: copies.map_or(usize::MAX, |copies| usize::from(copies.keep_backups)),
            daily: copies.is_some_and(|copies| !copies.no_daily_backup),
            turn: Mutex::new(()),
        }
    }

    /// Copies and checks the copy; then lets go of the oldest that are too many.
    fn copy(&self) -> Result<LastBackup, Wrong> {
        let _turn = self.turn.lock().unwrap_or_else(PoisonError::into_inner);
        fs::create_dir_all(&self.folder).map_err(|error| {
            Wrong::input(
                self.folder.display().to_string(),
                error.to_string(),
                "name a folder that can be written to with --backups",
            )
        })?;
        let answer = backup::copy(&self.place, &self.folder)?;
        if !answer.good {
            return Err(Wrong {
                code: 1,
                place: self.folder.display().to_string(),
                what: answer.text,
                mend: "stop the program and run `buttonup verify`".to_owned(),
            });
        }
        prune(&self.folder, &self.place.log, self.most);
        let last = notes::noted(&self.place).pop();
        last.map(shown).ok_or_else(|| {
            Wrong::input(
                self.place.data.display().to_string(),
                "the copy was made, but could not be noted there",
                "see that the shop's folder can be written to",
            )
        })
    }

    /// Makes the day's copy, if it is time for one and something was written since the last.
    pub fn daily_copy(&self, events: u64) -> Result<bool, Wrong> {
        let last = notes::noted(&self.place).pop();
        let fresh = last.is_some_and(|last| {
            last.events == events || Timestamp::now().duration_since(last.at) < A_DAY
        });
        if fresh || events == 0 {
            return Ok(false);
        }
        self.copy().map(|_| true)
    }
}

const A_DAY: SignedDuration = SignedDuration::from_hours(24);

fn shown(note: notes::Note) -> LastBackup {
    LastBackup {
        at: note.at,
        to: note.to.display().to_string(),
        events: note.events,
    }
}

impl web::Keeper for Keeper {
    fn kept(&self) -> Kept {
        Kept {
            folder: self.place.data.display().to_string(),
            backups: self.folder.display().to_string(),
            daily: self.daily.then_some(self.most),
            keys: state(&self.place),
            ..notes::kept(&self.place)
        }
    }

    fn back_up(&self) -> Result<LastBackup, shop::Trouble> {
        self.copy().map_err(|wrong| {
            shop::Trouble::new(
                shop::TroubleKind::Record,
                wrong.place,
                wrong.what,
                wrong.mend,
            )
        })
    }

    fn seal_keys(&self, word: &str) -> Result<(), shop::Trouble> {
        seal(&self.place, word)
            .map(drop)
            .map_err(|wrong| shop::Trouble::unreadable(&wrong.place, wrong.what, &wrong.mend))
    }

    fn signer(&self) -> Result<shop::Signer, shop::Trouble> {
        signer(&self.place).map_err(|wrong| {
            shop::Trouble::new(
                shop::TroubleKind::Record,
                wrong.place,
                wrong.what,
                wrong.mend,
            )
        })
    }
}

/// Deletes the oldest copies of a log in a folder until so many are left. Only what this
/// program made there is touched: its name says when, and its head says of which log.
fn prune(folder: &Path, log: &str, most: usize) {
    let made = |path: &Path| -> bool {
        let head = fs::read_to_string(path.join(HEAD)).ok();
        let head: Option<Value> = head.and_then(|text| serde_json::from_str(&text).ok());
        head.is_some_and(|head| head["log"] == log)
    };
    let Ok(entries) = fs::read_dir(folder) else {
        return;
    };
    let mut copies: Vec<PathBuf> = entries
        .filter_map(|entry| Some(entry.ok()?.path()))
        .filter(|path| {
            let name = path.file_name().and_then(|name| name.to_str());
            name.is_some_and(|name| backup::is_dated(name, log)) && made(path)
        })
        .collect();
    copies.sort();
    let over = copies.len().saturating_sub(most);
    for copy in copies.iter().take(over) {
        if let Err(error) = fs::remove_dir_all(copy) {
            tracing::warn!("{}: {error}", copy.display());
        }
    }
}

#[cfg(test)]
mod tests {
    #![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

    use super::*;

    #[test]
    fn the_oldest_copies_of_this_log_are_let_go_and_nothing_else() {
        let folder = tempfile::tempdir().unwrap();
        let make = |name: &str, head: Option<&str>| {
            let path = folder.path().join(name);
            fs::create_dir(&path).unwrap();
            if let Some(head) = head {
                fs::write(path.join(HEAD), head).unwrap();
            }
        };
        let (own, other) = (r#"{"log":"shop"}"#, r#"{"log":"other"}"#);
        make("shop-2026-03-01T080000.000Z", Some(own));
        make("shop-2026-03-02T080000.000Z", Some(own));
        make("shop-2026-03-03T080000.000Z", Some(own));
        make("shop-2026-02-01T080000.000Z", Some(other));
        make("shop-2026-01-01T080000.000Z", None);
        make("shop-photos", Some(own));
        prune(folder.path(), "shop", 2);
        let mut left: Vec<String> = fs::read_dir(folder.path())
            .unwrap()
            .map(|entry| entry.unwrap().file_name().into_string().unwrap())
            .collect();
        left.sort();
        assert_eq!(
            left,
            [
                "shop-2026-01-01T080000.000Z",
                "shop-2026-02-01T080000.000Z",
                "shop-2026-03-02T080000.000Z",
                "shop-2026-03-03T080000.000Z",
                "shop-photos",
            ]
        );
    }
}

//! `move-to`: the record goes on in a database.

use super::check::{Also, must_be_sound};
use super::own;
use super::place::{MOVED, Place, database, not_opened, reading, writing};
use crate::answer::{Answer, Wrong};
use clap::Args;
use jiff::Timestamp;
use serde_json::{Value, json};
use shop::repair::Words;
use std::fs;
use std::path::{Path, PathBuf};
use store::{Postgres, Sqlite, Store};

/// Which record, and where to.
#[derive(Debug, Args)]
pub struct MoveTo {
    /// The PostgreSQL database, as `postgres://user@host/name`.
    #[arg(value_name = "URL")]
    to: String,
    /// The shop's folder.
    #[arg(long, value_name = "FOLDER", default_value = "shop")]
    data: PathBuf,
    /// The name of the shop's log.
    #[arg(long, value_name = "NAME", default_value = "shop")]
    log: String,
    #[command(flatten)]
    also: Also,
}

/// Copies every row with its hash, checks the copy, and notes in the folder that the
/// record goes on there; only then is it served there. The folder's own record is left as it is.
pub fn move_to(move_to: &MoveTo) -> Result<Answer, Wrong> {
    let folder = move_to.data.display().to_string();
    let taken = move_to.also.taken();
    let place = Place {
        log: move_to.log.clone(),
        ..Place::folder(move_to.data.clone())
    };
    place.must_hold(&reading(&move_to.data)?)?;
    let to = database(&move_to.to)?;
    // Held until the end: nobody may append here while rows leave.
    let from = if moving_there(&to, move_to)? {
        Sqlite::open(&move_to.data).map_err(|error| not_opened(folder.clone(), &error))?
    } else {
        writing(&move_to.data)?
    };
    let here = must_be_sound(&from, &move_to.log, &folder, taken)?;
    shop::land_copy(&from, &to, &move_to.log, taken)?;
    let there =
        shop::verify_landing(&to, &move_to.log, here.head.hash).map_err(|damage| Wrong {
            code: 1,
            place: to.place().to_owned(),
            what: format!("it is not sound: {damage}"),
            mend: damage.mend().to_owned(),
        })?;
    let head = Words(there.head.hash).hex();
    if there.head != here.head {
        return Err(Wrong {
            code: 1,
            place: to.place().to_owned(),
            what: format!(
                "it came to {} events and head {head}, not to the same",
                there.events
            ),
            mend: "move it to an empty database that nothing else uses".to_owned(),
        });
    }
    let note = json!({
        "at": Timestamp::now().to_string(),
        "to": to.place(),
        "log": move_to.log,
        "events": there.events,
        "head": head,
    });
    note_move(&move_to.data.join(MOVED), &note)?;
    shop::landed(&to, &move_to.log)?;
    Ok(Answer {
        text: format!(
            "moved and checked: {}\n{} events, head {head}\nServe it with --database; {folder} stays as it was and is not served any more.",
            to.place(),
            there.events
        ),
        json: note,
        good: true,
    })
}

/// Whether moving the record there was begun, and broke off after it was noted here.
fn moving_there(to: &Postgres, move_to: &MoveTo) -> Result<bool, Wrong> {
    let text = fs::read_to_string(move_to.data.join(MOVED)).unwrap_or_default();
    let noted = serde_json::from_str::<Value>(&text).unwrap_or_default();
    let landing = to.landing(&move_to.log).map_err(shop::Trouble::from)?;
    Ok(noted["to"] == to.place()
        && noted["log"] == move_to.log
        && landing.is_some_and(|landing| noted["head"] == Words(landing).hex()))
}

/// Nobody serves the folder from here on, also not after a power cut.
fn note_move(path: &Path, note: &Value) -> Result<(), Wrong> {
    let unfinished = own::beside(path, "unfinished");
    own::write_new(&unfinished, &format!("{note}\n"))
        .and_then(|()| fs::rename(&unfinished, path))
        .and_then(|()| own::sync_folder_of(path))
        .map_err(|error| {
            Wrong::input(
                path.display().to_string(),
                error.to_string(),
                "make room and move it again: nothing is served there until it is noted here",
            )
        })
}

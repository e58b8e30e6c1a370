//! `move-to`: the record goes on in a database.

use super::check::must_be_sound;
use super::place::{MOVED, database, reading, writing};
use crate::answer::{Answer, Wrong};
use clap::Args;
use jiff::Timestamp;
use serde_json::json;
use shop::repair::Words;
use std::fs;
use std::path::PathBuf;

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
}

/// Copies every row with its hash, checks the copy, and notes in the folder that the
/// record goes on there. The folder's own record is left as it is.
pub fn move_to(move_to: &MoveTo) -> Result<Answer, Wrong> {
    let folder = move_to.data.display().to_string();
    reading(&move_to.data)?;
    // Held until the end: nobody may append here while rows leave.
    let from = writing(&move_to.data)?;
    let here = must_be_sound(&from, &move_to.log, &folder)?;
    let to = database(&move_to.to)?;
    shop::copy(&from, &to, &move_to.log)?;
    let there = must_be_sound(&to, &move_to.log, to.place())?;
    let head = Words(there.head.hash).hex();
    if there != here {
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
    let path = move_to.data.join(MOVED);
    fs::write(&path, format!("{note}\n")).map_err(|error| {
        Wrong::input(
            path.display().to_string(),
            error.to_string(),
            "everything is moved; see to it that nobody goes on in this folder",
        )
    })?;
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

//! Keeping the record: `verify` and `export`.

use crate::answer::{Answer, Wrong};
use crate::serve::{LOG, open_store};
use clap::Args;
use serde_json::{Value, json};
use shop::repair::Words;
use std::io::Write;
use std::path::{Path, PathBuf};
use store::Store;

/// Where the record is, and what it is held against.
#[derive(Debug, Args)]
pub struct Verify {
    /// The shop's folder.
    #[arg(long, value_name = "FOLDER", default_value = "shop")]
    data: PathBuf,
    /// A head hash printed on an invoice or backup.
    #[arg(long, value_name = "HASH")]
    head: Option<String>,
}

/// Where the record is.
#[derive(Debug, Args)]
pub struct Export {
    /// The shop's folder.
    #[arg(long, value_name = "FOLDER", default_value = "shop")]
    data: PathBuf,
}

fn existing(data: &Path) -> Result<store::Sqlite, Wrong> {
    if !data.is_dir() {
        return Err(Wrong::input(
            data.display().to_string(),
            "there is no such folder",
            "name the shop's folder with --data",
        ));
    }
    open_store(data)
}

/// Checks every row, and says where the record stops being what was written.
pub fn verify(verify: &Verify) -> Result<Answer, Wrong> {
    let head = match &verify.head {
        None => None,
        Some(text) => Some(Words::from_hex(text).map(|words| words.0).ok_or_else(|| {
            Wrong::input(
                "--head",
                format!("{text:?} is no hash"),
                "give its 64 hexadecimal digits",
            )
        })?),
    };
    let store = existing(&verify.data)?;
    Ok(match shop::verify(&store, LOG, head) {
        Ok(found) => Answer {
            text: format!(
                "sound: {} events, head {}{}",
                found.events,
                Words(found.head.hash).hex(),
                found
                    .asked_head_at
                    .map(|at| format!("; the hash asked for stands at event {at}"))
                    .unwrap_or_default()
            ),
            json: json!({
                "sound": true,
                "events": found.events,
                "head": Words(found.head.hash).hex(),
                "private": found.private,
                "erased": found.erased,
                "asked_head_at": found.asked_head_at,
            }),
            good: true,
        },
        Err(damage) => Answer {
            text: format!("not sound: {damage}"),
            json: json!({ "sound": false, "what": damage.to_string() }),
            good: false,
        },
    })
}

/// Writes every row as a line of JSON on standard output.
pub fn export(export: &Export) -> Result<Answer, Wrong> {
    let store = existing(&export.data)?;
    let mut out = std::io::BufWriter::new(std::io::stdout().lock());
    shop::export(&store as &dyn Store, LOG, |line| writeln!(out, "{line}"))?;
    out.flush().map_err(|error| {
        Wrong::input("standard output", error.to_string(), "write it elsewhere")
    })?;
    Ok(Answer {
        text: String::new(),
        json: Value::Null,
        good: true,
    })
}

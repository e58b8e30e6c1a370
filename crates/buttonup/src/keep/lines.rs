//! `export`, and the record as lines of JSON in a file.

use super::own;
use super::place::Place;
use crate::answer::{Answer, Wrong};
use clap::Args;
use serde_json::Value;
use shop::Taken;
use std::fs::File;
use std::io::{self, BufRead, BufReader, BufWriter, Write};
use std::path::Path;
use store::{Head, Store};

/// Which record.
#[derive(Debug, Args)]
pub struct Export {
    #[command(flatten)]
    place: Place,
}

/// Writes every row as a line of JSON on standard output.
pub fn export(export: &Export) -> Result<Answer, Wrong> {
    let opened = export.place.read()?;
    export.place.must_hold(opened.store())?;
    let mut out = BufWriter::new(io::stdout().lock());
    shop::export(opened.store(), &export.place.log, |line| {
        writeln!(out, "{line}")
    })?;
    out.flush().map_err(|error| {
        Wrong::input("standard output", error.to_string(), "write it elsewhere")
    })?;
    Ok(Answer {
        text: String::new(),
        json: Value::Null,
        good: true,
    })
}

/// Writes the record's lines into a new file, synced.
pub fn write_file(store: &dyn Store, log: &str, to: &Path) -> Result<Head, Wrong> {
    let fault = |error: io::Error| {
        Wrong::input(
            to.display().to_string(),
            error.to_string(),
            "make room, or name a place that can be written to",
        )
    };
    let mut out = BufWriter::new(own::new_file(to).map_err(fault)?);
    let head = shop::export(store, log, |line| writeln!(out, "{line}"))?;
    out.flush()
        .and_then(|()| out.get_ref().sync_all())
        .map_err(fault)?;
    Ok(head)
}

/// Reads lines from a file into a store, and leaves it to the caller to say that they have
/// landed.
pub fn read_file(from: &Path, store: &dyn Store, log: &str, taken: Taken) -> Result<Head, Wrong> {
    let end = end_of_file(from)?;
    shop::land_lines(lines(from)?, end, store, log, taken).map_err(|trouble| within(from, trouble))
}

/// Whether a name is that of lines of JSON.
pub fn is_lines(path: &Path) -> bool {
    path.extension().is_some_and(|end| end == "jsonl")
}

/// Where the lines of a file end.
pub fn end_of_file(from: &Path) -> Result<Head, Wrong> {
    shop::end_of_lines(lines(from)?).map_err(|trouble| within(from, trouble))
}

fn lines(from: &Path) -> Result<io::Lines<BufReader<File>>, Wrong> {
    let file = File::open(from).map_err(|error| {
        Wrong::input(
            from.display().to_string(),
            error.to_string(),
            "name the file that `buttonup export` wrote",
        )
    })?;
    Ok(BufReader::new(file).lines())
}

fn within(from: &Path, trouble: shop::Trouble) -> Wrong {
    let mut wrong = Wrong::from(trouble);
    wrong.place = format!("{}, {}", from.display(), wrong.place);
    wrong
}

//! A map's text made from a finished job, or bettered by one.

use crate::words::{ZONES, kind_word};
use states::{Kind, Position};
use std::collections::{BTreeMap, BTreeSet};
use toml_edit::{Array, DocumentMut, InlineTable, Item, Table, TomlError, Value, value};

/// A finished job, as a map sees it.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Job {
    /// What it is called, such as the order's number.
    pub name: String,
    /// The vehicle.
    pub vehicle: String,
    /// Who worked on it, by their names in the record.
    pub by: BTreeSet<String>,
    /// What came off, in that sequence.
    pub off: Vec<JobItem>,
}

/// One thing that came off.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobItem {
    /// Its name.
    pub name: String,
    /// Its kind.
    pub kind: Kind,
    /// How many pieces.
    pub count: Position,
    /// Its size as written.
    pub size: Option<String>,
    /// The lengths of its pieces as written, where they are known.
    pub lengths: BTreeMap<Position, String>,
    /// The system it belongs to.
    pub system: Option<String>,
    /// Where it is worked on.
    pub zone: Option<String>,
    /// How much it holds, as written.
    pub holds: Option<String>,
    /// Whether it may not go back.
    pub spent: bool,
    /// Its share of the time that was clocked out, in tenths of a minute.
    pub out_tenths: Option<u32>,
    /// The same for the way back.
    pub back_tenths: Option<u32>,
}

/// Adds a job to a map's text: the sequence that was seen, and the items the map does not
/// have yet. An empty text becomes a new map. What is written already stays as it is; a
/// job of the same name is written over.
///
/// # Errors
/// If the text is no TOML.
pub fn merge(text: &str, job: &Job) -> Result<String, TomlError> {
    let mut document: DocumentMut = text.parse()?;
    if !document.contains_key("vehicle") {
        document.insert("vehicle", value(&job.vehicle));
    }
    let items = table(document.as_table_mut(), "items");
    for item in &job.off {
        if !items.contains_key(&item.name) {
            items.insert(&item.name, Item::Table(new_item(item, &job.name)));
        }
    }
    let mut seen = Table::new();
    seen.insert("by", list(job.by.iter().map(String::as_str)));
    seen.insert("off", list(job.off.iter().map(|item| item.name.as_str())));
    table(document.as_table_mut(), "seen").insert(&job.name, Item::Table(seen));
    Ok(document.to_string())
}

/// The table of that name under the root, made if it is not there.
fn table<'t>(root: &'t mut Table, name: &str) -> &'t mut Table {
    let is_table = root.get(name).is_some_and(Item::is_table);
    if !is_table {
        let mut made = Table::new();
        made.set_implicit(true);
        // Written in line, it is written out; anything else is no table and gives way.
        let old = root.remove(name).and_then(|old| old.into_table().ok());
        root.insert(name, Item::Table(old.unwrap_or(made)));
    }
    root[name].as_table_mut().expect("it was just made one")
}

fn list<'n>(names: impl Iterator<Item = &'n str>) -> Item {
    value(Array::from_iter(names))
}

fn new_item(item: &JobItem, job: &str) -> Table {
    let mut made = Table::new();
    made.decor_mut().set_prefix(format!(
        "\n# From {job}: what it needs is only what was seen.\n"
    ));
    made.insert("is", value(kind_word(item.kind)));
    if item.count > 1 && item.kind.is_counted() {
        made.insert("count", value(i64::from(item.count)));
    }
    let texts = [
        ("size", &item.size),
        ("holds", &item.holds),
        ("system", &item.system),
        ("zone", &item.zone),
    ];
    for (key, text) in texts {
        if let Some(text) = text {
            made.insert(key, value(text));
        }
    }
    if !item.lengths.is_empty() {
        let mut lengths = InlineTable::new();
        for (at, length) in &item.lengths {
            lengths.insert(at.to_string(), Value::from(length));
        }
        made.insert("length-at", value(lengths));
    }
    if let Some(zone) = item.zone.as_deref().filter(|zone| ZONES.contains(zone)) {
        made.insert("place", value(zone));
    }
    if item.spent {
        made.insert("spent", value(true));
    }
    made.insert("needs", value("as seen"));
    let mut minutes = InlineTable::new();
    for (key, tenths) in [("out", item.out_tenths), ("back", item.back_tenths)] {
        if let Some(tenths) = tenths {
            minutes.insert(key, minutes_value(tenths));
        }
    }
    if !minutes.is_empty() {
        made.insert("minutes", value(minutes));
    }
    made
}

/// Minutes as a person writes them: whole if they are whole.
fn minutes_value(tenths: u32) -> Value {
    match tenths % 10 {
        0 => i64::from(tenths / 10).into(),
        _ => (f64::from(tenths) / 10.0).into(),
    }
}

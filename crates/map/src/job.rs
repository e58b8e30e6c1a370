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
    /// How it is tightened, and who says so; nothing where nobody did.
    pub torque: Option<JobTorque>,
    /// Whether it may not go back.
    pub spent: bool,
    /// Its share of the time that was clocked out, in tenths of a minute.
    pub out_tenths: Option<u32>,
    /// The same for the way back.
    pub back_tenths: Option<u32>,
}

/// A torque that was told on a job.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct JobTorque {
    /// Pass by pass, as written.
    pub passes: Vec<String>,
    /// Who says so.
    pub title: String,
    /// Of which date, year first.
    pub date: String,
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
    for item in &job.off {
        if let Some(torque) = &item.torque {
            add_torque(document.as_table_mut(), &item.name, torque);
        }
    }
    let mut seen = Table::new();
    seen.insert("by", list(job.by.iter().map(String::as_str)));
    seen.insert("off", list(job.off.iter().map(|item| item.name.as_str())));
    table(document.as_table_mut(), "seen").insert(&job.name, Item::Table(seen));
    Ok(document.to_string())
}

/// The table of that name under the root, made if it is not there.
pub(crate) fn table<'t>(root: &'t mut Table, name: &str) -> &'t mut Table {
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

/// Gives an item the torque that was told of it, unless the map gives one already.
pub(crate) fn add_torque(root: &mut Table, name: &str, torque: &JobTorque) {
    let items = table(root, "items");
    let Some(item) = items.get_mut(name).and_then(Item::as_table_like_mut) else {
        return;
    };
    if item.contains_key("torque") {
        return;
    }
    item.insert("torque", list(torque.passes.iter().map(String::as_str)));
    let source = source_named(table(root, "sources"), torque);
    let item = table(root, "items").get_mut(name);
    if let Some(item) = item.and_then(Item::as_table_like_mut) {
        item.insert("torque-from", value(source));
    }
}

/// The source of that title and date, made if there is none.
fn source_named(sources: &mut Table, torque: &JobTorque) -> String {
    let word = |held: &Item, key: &str| held.get(key).and_then(Item::as_str).map(str::to_owned);
    let is_it = |held: &Item| {
        word(held, "title").as_ref() == Some(&torque.title)
            && word(held, "date").as_ref() == Some(&torque.date)
    };
    if let Some((name, _)) = sources.iter().find(|(_, held)| is_it(held)) {
        return name.to_owned();
    }
    let name = (1..)
        .map(|nth| match nth {
            1 => "told".to_owned(),
            nth => format!("told-{nth}"),
        })
        .find(|name| !sources.contains_key(name))
        .unwrap_or_default();
    let mut source = Table::new();
    source.insert("title", value(&torque.title));
    source.insert("date", value(&torque.date));
    sources.insert(&name, Item::Table(source));
    name
}

pub(crate) fn list<'n>(names: impl Iterator<Item = &'n str>) -> Item {
    value(Array::from_iter(names))
}

pub(crate) fn new_item(item: &JobItem, job: &str) -> Table {
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
pub(crate) fn minutes_value(tenths: u32) -> Value {
    match tenths % 10 {
        0 => i64::from(tenths / 10).into(),
        _ => (f64::from(tenths) / 10.0).into(),
    }
}

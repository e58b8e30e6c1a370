//! Two people's edits of one map brought together over the version that both began from.

use crate::phrases as say;
use crate::read::look;
use crate::trouble::{Trouble, Weight};
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;
use toml_edit::{
    Array, Document, DocumentMut, InlineTable, Item, Table, TableLike, TomlError, Value,
};

/// Two edits brought together.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reconciled {
    /// The first edit's text with everything of the second that does not touch it.
    pub text: String,
    /// Where both changed the same thing; the text has the first edit's.
    pub conflicts: Vec<Conflict>,
    /// What is wrong with the text though neither edit was: one took out what the other
    /// names.
    pub troubles: Vec<Trouble>,
}

/// One thing that both edits changed, each in its own way.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Conflict {
    /// What it is of: an item, or a part of the map.
    pub of: String,
    /// The field; empty if the whole item is meant.
    pub field: String,
    /// What both began from; nothing if it was not there.
    pub base: Option<String>,
    /// What the first made of it; nothing if it was taken out.
    pub mine: Option<String>,
    /// What the second made of it.
    pub theirs: Option<String>,
}

impl fmt::Display for Conflict {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let said =
            |value: &Option<String>| value.clone().unwrap_or_else(|| say::taken_out().to_owned());
        let what = match self.field.as_str() {
            "" => self.of.clone(),
            field => format!("{}, {field}", self.of),
        };
        let was = self
            .base
            .clone()
            .unwrap_or_else(|| say::not_there().to_owned());
        f.write_str(&say::conflict(
            what,
            was,
            said(&self.mine),
            said(&self.theirs),
        ))
    }
}

/// What stands in a text: its values by the keys that lead to them.
type Leaves = BTreeMap<Vec<String>, Value>;

/// Keys whose lists have no sequence, so that two people may both add to them.
const LISTS: [&str; 14] = [
    "needs",
    "seen-needs",
    "guessed",
    "needs-back",
    "seen-needs-back",
    "guessed-back",
    "owes",
    "renews",
    "tools",
    "only-with",
    "variants",
    "first",
    "either-way",
    "by",
];

/// Keys that say one thing together: a torque and who says it.
const TOGETHER: [&[&str]; 2] = [
    &["torque", "torque-from", "pattern"],
    &["length", "length-at"],
];

/// Brings two edits of one base together. What only one of them changed is kept, comments and
/// layout of the first included; lists without a sequence, such as needs, take the additions
/// and removals of both. What both changed differently comes back as a conflict.
///
/// # Errors
/// If one of the texts is no TOML.
///
/// ```
/// let base = "vehicle = \"Van\"\n[items.tray]\nis = \"cover\"\n";
/// let mine = format!("{base}tools = [\"pliers\"]\n");
/// let theirs = format!("{base}zone = \"below\"\n");
/// let both = map::reconcile("van.toml", base, &mine, &theirs)?;
/// assert!(both.conflicts.is_empty() && both.troubles.is_empty());
/// assert!(both.text.contains("pliers") && both.text.contains("below"));
/// # Ok::<(), Box<dyn std::error::Error>>(())
/// ```
pub fn reconcile(
    file: &str,
    base: &str,
    mine: &str,
    theirs: &str,
) -> Result<Reconciled, TomlError> {
    let [was, ours, others] = [base, mine, theirs].map(leaves);
    let (was, ours, others) = (was?, ours?, others?);
    let mut document: DocumentMut = mine.parse()?;
    let mut conflicts = BTreeSet::new();
    let whole = removed_and_changed(&was, &ours, &others, &mut conflicts);
    let keys: BTreeSet<&Vec<String>> = was.keys().chain(others.keys()).collect();
    for key in keys {
        let (base, mine, theirs) = (was.get(key), ours.get(key), others.get(key));
        if same(base, theirs)
            || same(mine, theirs)
            || owner(key).is_some_and(|of| whole.contains(of))
        {
            continue;
        }
        let unit = unit_of(key);
        let touched = unit.iter().any(|key| !same(was.get(key), ours.get(key)));
        if !touched {
            set(document.as_table_mut(), key, theirs);
            continue;
        }
        let lists = key.last().is_some_and(|key| LISTS.contains(&key.as_str()));
        match (lists, mine, theirs) {
            (true, Some(mine), Some(theirs)) if is_list(mine) && is_list(theirs) => {
                let list = both_lists(base, mine, theirs);
                set(document.as_table_mut(), key, Some(&list));
            }
            _ => {
                conflicts.insert(conflict(key, &unit, [&was, &ours, &others]));
            }
        }
    }
    let text = document.to_string();
    let errors = |text: &str| {
        let mut troubles = look(file, text).1;
        troubles.retain(|trouble| trouble.weight == Weight::Error);
        troubles
    };
    let known: BTreeSet<String> = [mine, theirs]
        .into_iter()
        .flat_map(errors)
        .map(|trouble| trouble.what)
        .collect();
    let mut troubles = errors(&text);
    troubles.retain(|trouble| !known.contains(&trouble.what));
    Ok(Reconciled {
        text,
        conflicts: conflicts.into_iter().collect(),
        troubles,
    })
}

fn leaves(text: &str) -> Result<Leaves, TomlError> {
    let document = Document::parse(text.to_owned())?;
    let mut leaves = Leaves::new();
    collect(document.as_table(), &[], &mut leaves);
    Ok(leaves)
}

fn collect(table: &dyn TableLike, before: &[String], into: &mut Leaves) {
    for (key, held) in table.iter() {
        let mut path = before.to_vec();
        path.push(key.to_owned());
        match held.as_table_like() {
            Some(within) => collect(within, &path, into),
            None => {
                if let Some(value) = held.as_value() {
                    into.insert(path, bare(value));
                }
            }
        }
    }
}

/// A value without the blanks and comments around it and within it.
fn bare(value: &Value) -> Value {
    let mut value = match value {
        Value::Array(list) => Value::Array(list.iter().map(bare).collect()),
        Value::InlineTable(table) => {
            let mut plain = InlineTable::new();
            for (key, value) in table {
                plain.insert(key, bare(value));
            }
            Value::InlineTable(plain)
        }
        other => other.clone(),
    };
    value.decor_mut().clear();
    value
}

/// A value as it reads, however it was typed.
fn read_as(value: &Value) -> String {
    match value {
        Value::String(text) => format!("\"{}\"", text.value()),
        Value::Integer(number) => number.value().to_string(),
        Value::Float(number) => number.value().to_string(),
        Value::Boolean(yes) => yes.value().to_string(),
        Value::Array(list) => {
            let each: Vec<_> = list.iter().map(read_as).collect();
            format!("[{}]", each.join(", "))
        }
        other => other.to_string(),
    }
}

fn same(one: Option<&Value>, other: Option<&Value>) -> bool {
    one.map(read_as) == other.map(read_as)
}

fn is_list(value: &Value) -> bool {
    value.is_array()
}

/// The items and sources, by the keys that lead to them.
fn owner(key: &[String]) -> Option<&[String]> {
    let sections = ["items", "sources", "seen"];
    let is_one = key.len() > 2 && sections.contains(&key[0].as_str());
    is_one.then(|| &key[..2])
}

/// The keys that say one thing with this one. A source or a job says one thing as a whole.
fn unit_of(key: &[String]) -> Vec<Vec<String>> {
    let beside = |names: &[&str]| -> Vec<Vec<String>> {
        let mut keys = Vec::new();
        for name in names {
            let mut other = key[..key.len() - 1].to_vec();
            other.push((*name).to_owned());
            keys.push(other);
        }
        keys
    };
    match key.first().map(String::as_str) {
        Some("sources") => beside(&["title", "date"]),
        Some("seen") => beside(&["by", "off"]),
        Some("items") => {
            let last = key.last().map(String::as_str).unwrap_or_default();
            let unit = TOGETHER.iter().find(|unit| unit.contains(&last));
            unit.map_or_else(|| vec![key.to_vec()], |unit| beside(unit))
        }
        _ => vec![key.to_vec()],
    }
}

/// Items that one took out and the other changed: neither is done to the other's.
fn removed_and_changed(
    was: &Leaves,
    ours: &Leaves,
    others: &Leaves,
    conflicts: &mut BTreeSet<Conflict>,
) -> BTreeSet<Vec<String>> {
    let owners: BTreeSet<&[String]> = was.keys().filter_map(|key| owner(key)).collect();
    let mut whole = BTreeSet::new();
    for of in owners {
        let within = |leaves: &Leaves| -> Vec<(Vec<String>, String)> {
            let own = leaves.iter().filter(|(key, _)| key.starts_with(of));
            own.map(|(key, value)| (key.clone(), read_as(value)))
                .collect()
        };
        let (base, mine, theirs) = (within(was), within(ours), within(others));
        let gone = (mine.is_empty(), theirs.is_empty());
        let clash = match gone {
            (true, false) => theirs != base,
            (false, true) => mine != base,
            _ => false,
        };
        if clash {
            let said = |gone: bool| (!gone).then(|| say::changed().to_owned());
            whole.insert(of.to_vec());
            conflicts.insert(Conflict {
                of: of[1].clone(),
                field: String::new(),
                base: Some(say::there().to_owned()),
                mine: said(gone.0),
                theirs: said(gone.1),
            });
        }
    }
    whole
}

fn conflict(key: &[String], unit: &[Vec<String>], texts: [&Leaves; 3]) -> Conflict {
    let said = |leaves: &Leaves| {
        let each: Vec<String> = unit
            .iter()
            .filter_map(|key| leaves.get(key))
            .map(|value| value.as_str().map_or_else(|| read_as(value), str::to_owned))
            .collect();
        (!each.is_empty()).then(|| each.join(", "))
    };
    let [base, mine, theirs] = texts.map(said);
    let first = unit.first().map_or(key, Vec::as_slice);
    let (of, field) = match owner(first) {
        Some(of) => (of[1].clone(), first[2..].join(".")),
        None => (say::the_map().to_owned(), first.join(".")),
    };
    Conflict {
        of,
        field,
        base,
        mine,
        theirs,
    }
}

/// A list without what either took out, and with what either added.
fn both_lists(base: Option<&Value>, mine: &Value, theirs: &Value) -> Value {
    let each = |value: Option<&Value>| -> Vec<Value> {
        let list = value.and_then(Value::as_array);
        list.into_iter().flat_map(Array::iter).map(bare).collect()
    };
    let has = |list: &[Value], one: &Value| list.iter().any(|other| read_as(other) == read_as(one));
    let (base, mine, theirs) = (each(base), each(Some(mine)), each(Some(theirs)));
    let kept = mine
        .iter()
        .filter(|one| !has(&base, one) || has(&theirs, one));
    let added = theirs
        .iter()
        .filter(|one| !has(&base, one) && !has(&mine, one));
    Value::Array(kept.chain(added).cloned().collect())
}

/// Writes a value at its key, or takes it away with the tables that are empty then.
fn set(table: &mut dyn TableLike, key: &[String], to: Option<&Value>) {
    let [first, rest @ ..] = key else { return };
    if rest.is_empty() {
        match to {
            Some(to) => {
                let mut new = to.clone();
                if let Some(old) = table.get(first).and_then(Item::as_value) {
                    *new.decor_mut() = old.decor().clone();
                }
                table.insert(first, Item::Value(new));
            }
            None => {
                table.remove(first);
            }
        }
        return;
    }
    if to.is_none() && !table.contains_key(first) {
        return;
    }
    // What stands under an item is written in line; an item has a table of its own.
    let in_line = rest.len() == 1 && !matches!(first.as_str(), "sources" | "settled") && {
        // A field within a field, such as minutes.
        table.contains_key("is")
    };
    let made = || match in_line {
        true => Item::Value(Value::InlineTable(InlineTable::new())),
        false => {
            let mut table = Table::new();
            table.set_implicit(true);
            Item::Table(table)
        }
    };
    let held = table.entry(first).or_insert_with(made);
    if let Some(within) = held.as_table_like_mut() {
        set(within, rest, to);
        if within.is_empty() {
            table.remove(first);
        }
    }
}

//! Changing a map's text with its comments and layout kept.

use crate::mirror::{lacking, mirror};
use crate::moves::{MOVE, TAUGHT};
use crate::read::{Read, read};
use crate::trouble::Trouble;
use crate::value::Source;
use std::collections::BTreeMap;
use toml_edit::{
    Array, DocumentMut, InlineTable, Item, Key, Table, TableLike, TomlError, Value, value,
};

/// One change.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Edit {
    /// Writes what stands at the head of the map, such as `vehicle` or `place-change`; with
    /// nothing, it is taken away.
    Head {
        /// The key.
        key: String,
        /// The value as TOML, or words.
        value: Option<String>,
    },
    /// Adds a source of torques, or changes one.
    Source {
        /// Its name.
        name: String,
        /// Who says so.
        title: String,
        /// Of which date.
        date: String,
    },
    /// Adds an item of a kind, or changes the kind of one that is there.
    Item {
        /// Its name.
        item: String,
        /// What it is, such as `part`.
        is: String,
    },
    /// Takes an item out.
    Remove {
        /// Its name.
        item: String,
    },
    /// Gives an item another name, everywhere.
    Rename {
        /// Its name.
        item: String,
        /// The name it goes by from now on.
        to: String,
    },
    /// Writes a field as TOML writes a value, such as `"8 Nm"`, `4` or `["a", "b"]`; what
    /// is no TOML is taken as words. With nothing, the field is taken away. A field
    /// within a field is written with a point, such as `minutes.out`.
    Field {
        /// The item.
        item: String,
        /// The field, such as `count`.
        field: String,
        /// The value as TOML, or words.
        value: Option<String>,
    },
    /// Adds a need; several at once are alternatives.
    Need {
        /// The item that needs it.
        item: String,
        /// The key it stands under: `needs`, `needs-back`, or of fasteners that are first
        /// cracked `crack.needs` and the like.
        at: String,
        /// What it needs, such as `belt on`.
        any: Vec<String>,
    },
    /// Takes a need away.
    Unneed {
        /// The item that needed it.
        item: String,
        /// The key it stands under.
        at: String,
        /// Which of its needs, from 0.
        nth: usize,
    },
    /// Makes two moves of the one by which fasteners come out: cracked first, then out.
    Crack {
        /// Its name.
        item: String,
    },
    /// Makes one move of the two again.
    Whole {
        /// Its name.
        item: String,
    },
    /// Makes the other side of every item that names a side and has no like on the other.
    Mirror,
    /// Answers what was seen both ways.
    Settle {
        /// What comes off first.
        first: String,
        /// The other.
        second: String,
        /// Whether it does not matter after all.
        either_way: bool,
    },
}

/// Makes a change and reads the map again, so that nothing is kept that cannot be read.
///
/// # Errors
/// What is wrong with the changed map; the text given is then still as it was.
pub fn edit(file: &str, text: &str, edit: &Edit) -> Result<(String, Read), Vec<Trouble>> {
    let changed = apply(text, edit).unwrap_or_else(|_| text.to_owned());
    let read = read(file, &changed)?;
    Ok((changed, read))
}

/// Makes a change without asking whether the map is then a good one: half a map is no
/// hindrance while somebody works on it.
///
/// # Errors
/// If the text is no TOML.
pub fn apply(text: &str, edit: &Edit) -> Result<String, TomlError> {
    let mut document: DocumentMut = text.parse()?;
    match edit {
        Edit::Head { key, value } => {
            set_field(document.as_table_mut(), key, value.as_deref());
        }
        Edit::Source { name, title, date } => {
            let sources = part(document.as_table_mut(), "sources");
            if let Some(source) = sources.and_then(|sources| part(sources, name)) {
                put(source, "title", value(title));
                put(source, "date", value(date));
            }
        }
        Edit::Settle {
            first,
            second,
            either_way,
        } => {
            settle(document.as_table_mut(), first, second, *either_way);
        }
        Edit::Rename { item, to } => rename(document.as_table_mut(), item, to),
        Edit::Item { item, is } => {
            if let Some(table) = item_table(&mut document, item) {
                put(table, "is", value(is));
            }
        }
        Edit::Remove { item } => {
            if let Some(items) = part(document.as_table_mut(), "items") {
                items.remove(item);
            }
        }
        Edit::Field { item, field, value } => {
            if let Some(table) = item_table(&mut document, item) {
                set_field(table, field, value.as_deref());
            }
        }
        Edit::Need { item, at, any } => {
            if let Some(table) = item_table(&mut document, item) {
                let (table, key) = within(table, at);
                add_need(table, key, any);
            }
        }
        Edit::Unneed { item, at, nth } => {
            if let Some(table) = item_table(&mut document, item) {
                let (table, key) = within(table, at);
                take_need(table, key, *nth);
            }
        }
        Edit::Crack { item } => {
            if let Some(table) = item_table(&mut document, item) {
                two_moves(table);
            }
        }
        Edit::Mirror => {
            if let Some(items) = part(document.as_table_mut(), "items") {
                mirror(items);
            }
        }
        Edit::Whole { item } => {
            if let Some(table) = item_table(&mut document, item) {
                one_move(table);
            }
        }
    }
    Ok(document.to_string())
}

/// Words as TOML writes them.
#[must_use]
pub fn quoted(words: &str) -> String {
    Value::from(words).to_string()
}

/// Several words as TOML writes them.
#[must_use]
pub fn listed(words: &[&str]) -> String {
    Value::Array(words.iter().copied().collect()).to_string()
}

/// The items of a text in the sequence they are written, however good a map it is.
#[must_use]
pub fn names(text: &str) -> Vec<String> {
    let document: DocumentMut = text.parse().unwrap_or_default();
    let items = document.get("items").and_then(Item::as_table_like);
    let names = items.into_iter().flat_map(|items| items.iter());
    names.map(|(name, _)| name.to_owned()).collect()
}

/// The items of a text that name one side and have no like on the other, each with the name
/// that it would have there.
#[must_use]
pub fn one_sided(text: &str) -> Vec<(String, String)> {
    let document: DocumentMut = text.parse().unwrap_or_default();
    let items = document.get("items").and_then(Item::as_table_like);
    items.map(lacking).unwrap_or_default()
}

/// The sources of a text, however good a map it is.
#[must_use]
pub fn sources(text: &str) -> BTreeMap<String, Source> {
    let document: DocumentMut = text.parse().unwrap_or_default();
    let sources = document.get("sources").and_then(Item::as_table_like);
    let sources = sources.into_iter().flat_map(|sources| sources.iter());
    sources
        .filter_map(|(name, held)| {
            let word = |key: &str| Some(held.get(key)?.as_str()?.to_owned());
            let source = Source {
                title: word("title")?,
                date: word("date")?,
            };
            Some((name.to_owned(), source))
        })
        .collect()
}

/// A value as TOML writes it; words where it is none.
fn toml(text: &str) -> Value {
    text.parse().unwrap_or_else(|_| text.into())
}

fn item_table<'t>(document: &'t mut DocumentMut, item: &str) -> Option<&'t mut dyn TableLike> {
    let items = part(document.as_table_mut(), "items")?;
    part(items, item)
}

/// The table of that name, made if there is none; nothing if it is something else.
fn part<'t>(table: &'t mut dyn TableLike, name: &str) -> Option<&'t mut dyn TableLike> {
    let made = || {
        let mut table = Table::new();
        // Not written itself while it only holds other tables.
        table.set_implicit(true);
        Item::Table(table)
    };
    table.entry(name).or_insert_with(made).as_table_like_mut()
}

/// The table that a key such as `crack.needs` stands in, and its last part.
fn within<'t, 'k>(table: &'t mut dyn TableLike, key: &'k str) -> (&'t mut dyn TableLike, &'k str) {
    match key.split_once('.') {
        Some((outer, inner)) if table.get(outer).is_some_and(Item::is_table_like) => {
            let held = table.get_mut(outer).and_then(Item::as_table_like_mut);
            (held.expect("it is a table"), inner)
        }
        Some((_, inner)) => (table, inner),
        None => (table, key),
    }
}

/// The keys of a move, which go where the move goes.
fn two_moves(table: &mut dyn TableLike) {
    if table.contains_key("crack") {
        return;
    }
    let mut out = Table::new();
    for key in MOVE {
        if let Some(held) = table.remove(key) {
            out.insert(key, held);
        }
    }
    let mut crack = Table::new();
    for key in ["place", "tools"] {
        if let Some(held) = out.get(key) {
            crack.insert(key, held.clone());
        }
    }
    table.insert("crack", Item::Table(crack));
    table.insert("out", Item::Table(out));
}

/// What is lost is what was said of the cracking alone.
fn one_move(table: &mut dyn TableLike) {
    table.remove("crack");
    let out = table.remove("out").and_then(|out| out.into_table().ok());
    for (key, held) in out.into_iter().flatten() {
        table.insert(&key, held);
    }
}

fn set_field(table: &mut dyn TableLike, field: &str, to: Option<&str>) {
    if let Some((outer, inner)) = field.split_once('.') {
        if to.is_none() && !table.contains_key(outer) {
            return;
        }
        let made = || value(InlineTable::new());
        let held = table.entry(outer).or_insert_with(made);
        if let Some(held) = held.as_table_like_mut() {
            let before = held.len();
            set_field(held, inner, to);
            let after = held.len();
            if after == 0 && outer != "crack" {
                table.remove(outer);
            } else if after != before {
                tidy(table.get_mut(outer));
            }
        }
        return;
    }
    match to {
        Some(to) => put(table, field, Item::Value(toml(to))),
        None => {
            table.remove(field);
        }
    }
}

/// Takes the blanks away that stood behind what was the last within braces: they would
/// stand before a comma, or twice.
fn tidy(held: Option<&mut Item>) {
    let Some(table) = held.and_then(Item::as_inline_table_mut) else {
        return;
    };
    let blank = |text: Option<&toml_edit::RawString>| {
        text.and_then(|text| text.as_str())
            .is_none_or(|text| text.trim_matches(' ').is_empty())
    };
    for (mut key, value) in table.iter_mut() {
        for decor in [key.leaf_decor_mut(), value.decor_mut()] {
            if blank(decor.prefix()) && blank(decor.suffix()) {
                decor.clear();
            }
        }
    }
}

/// Writes a value where the old one stood, with the comment behind it.
fn put(table: &mut dyn TableLike, field: &str, mut new: Item) {
    let old = table.get(field).and_then(Item::as_value);
    if let (Some(old), Some(new)) = (old, new.as_value_mut()) {
        *new.decor_mut() = old.decor().clone();
    }
    table.insert(field, new);
}

fn add_need(table: &mut dyn TableLike, key: &str, any: &[String]) {
    let new: Value = match any {
        [one] => one.as_str().into(),
        several => {
            let mut alternatives = InlineTable::new();
            let several: Array = several.iter().map(String::as_str).collect();
            alternatives.insert("any", Value::Array(several));
            Value::InlineTable(alternatives)
        }
    };
    match table.get_mut(key).and_then(Item::as_value_mut) {
        Some(Value::Array(list)) => list.push(new),
        // What was seen gives way to what is stated.
        Some(Value::String(seen)) if seen.value() == "as seen" => {
            put(table, key, value(Array::from_iter([new])));
            TAUGHT.into_iter().flatten().for_each(|key| {
                table.remove(key);
            });
        }
        Some(other) => {
            let decor = other.decor().clone();
            let mut first = other.clone();
            first.decor_mut().clear();
            let mut list = Array::from_iter([first, new]);
            *list.decor_mut() = decor;
            *other = Value::Array(list);
        }
        None => {
            table.insert(key, value(Array::from_iter([new])));
        }
    }
}

fn take_need(table: &mut dyn TableLike, key: &str, nth: usize) {
    let Some(needs) = table.get_mut(key) else {
        return;
    };
    let left = match needs.as_value_mut() {
        Some(Value::Array(list)) if nth < list.len() => {
            let taken = list.remove(nth);
            if let Some(next) = list.get_mut(nth).filter(|_| nth == 0) {
                *next.decor_mut() = taken.decor().clone();
            }
            list.len()
        }
        Some(Value::Array(list)) => list.len(),
        _ => usize::from(nth != 0),
    };
    if left == 0 {
        table.remove(key);
    }
}

fn settle(root: &mut Table, first: &str, second: &str, either_way: bool) {
    let Some(settled) = part(root, "settled") else {
        return;
    };
    let pair = Array::from_iter([first, second]);
    let key = if either_way { "either-way" } else { "first" };
    let made = || value(Array::new());
    if let Some(list) = settled.entry(key).or_insert_with(made).as_array_mut() {
        list.push(pair);
    }
}

fn rename(root: &mut Table, item: &str, to: &str) {
    let Some(items) = root.get_mut("items").and_then(Item::as_table_mut) else {
        return;
    };
    if item == to || items.contains_key(to) {
        return;
    }
    if let Some((key, held)) = items.remove_entry(item) {
        let new = Key::new(to).with_leaf_decor(key.leaf_decor().clone());
        items.insert_formatted(&new, held);
    }
    // A longer name that begins the same is another item.
    let longer: Vec<String> = root
        .get("items")
        .and_then(Item::as_table_like)
        .into_iter()
        .flat_map(|items| items.iter())
        .map(|(name, _)| name.to_owned())
        .filter(|name| name.starts_with(&format!("{item} ")))
        .collect();
    for (_, held) in root.iter_mut() {
        rename_in(held, item, to, &longer);
    }
}

/// Where items are named: nowhere else is a word renamed that happens to be the same.
const NAMING: [&str; 11] = [
    "needs",
    "seen-needs",
    "guessed",
    "needs-back",
    "seen-needs-back",
    "guessed-back",
    "owes",
    "renews",
    "off",
    "first",
    "either-way",
];

fn rename_in(held: &mut Item, item: &str, to: &str, longer: &[String]) {
    let Some(table) = held.as_table_like_mut() else {
        return;
    };
    for (key, held) in table.iter_mut() {
        match held.as_value_mut().filter(|_| NAMING.contains(&key.get())) {
            Some(value) => rename_value(value, item, to, longer),
            None => rename_in(held, item, to, longer),
        }
    }
}

/// Renames in every text that is the name or begins with it and a space.
fn rename_value(value: &mut Value, item: &str, to: &str, longer: &[String]) {
    match value {
        Value::String(text) => {
            let other = longer
                .iter()
                .any(|name| text.value().starts_with(name.as_str()));
            let rest = text.value().strip_prefix(item).filter(|_| !other);
            let rest = rest.filter(|rest| rest.is_empty() || rest.starts_with(' '));
            if let Some(renamed) = rest.map(|rest| format!("{to}{rest}")) {
                let decor = text.decor().clone();
                *value = renamed.into();
                *value.decor_mut() = decor;
            }
        }
        Value::Array(list) => list
            .iter_mut()
            .for_each(|held| rename_value(held, item, to, longer)),
        Value::InlineTable(table) => {
            table
                .iter_mut()
                .for_each(|(_, held)| rename_value(held, item, to, longer));
        }
        _ => {}
    }
}

//! Changing a map's text with its comments and layout kept.

use crate::read::{Read, read};
use crate::trouble::Trouble;
use toml_edit::{Array, DocumentMut, InlineTable, Item, Table, Value, value};

/// One change.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Edit {
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
    /// Writes a field as TOML writes a value, such as `"8 Nm"`, `4` or `["a", "b"]`.
    Field {
        /// The item.
        item: String,
        /// The field, such as `count`.
        field: String,
        /// The value as TOML.
        value: String,
    },
    /// Adds a need; several at once are alternatives.
    Need {
        /// The item that needs it.
        item: String,
        /// What it needs, such as `belt on`.
        any: Vec<String>,
    },
}

/// Makes a change and reads the map again, so that nothing is kept that cannot be read.
///
/// # Errors
/// What is wrong with the changed map; the text given is then still as it was.
pub fn edit(file: &str, text: &str, edit: &Edit) -> Result<(String, Read), Vec<Trouble>> {
    let mut document: DocumentMut = match text.parse() {
        Ok(document) => document,
        Err(_) => return read(file, text).map(|read| (text.to_owned(), read)),
    };
    let items = document.entry("items").or_insert_with(|| {
        let mut items = Table::new();
        items.set_implicit(true);
        Item::Table(items)
    });
    if let Some(items) = items.as_table_like_mut() {
        match edit {
            Edit::Remove { item } => {
                items.remove(item);
            }
            Edit::Item { item, is } => set(items, item, "is", value(is)),
            Edit::Field { item, field, value } => {
                let parsed = value
                    .parse::<Value>()
                    .unwrap_or_else(|_| value.as_str().into());
                set(items, item, field, Item::Value(parsed));
            }
            Edit::Need { item, any } => add_need(items, item, any),
        }
    }
    let changed = document.to_string();
    let read = read(file, &changed)?;
    Ok((changed, read))
}

fn table<'t>(
    items: &'t mut dyn toml_edit::TableLike,
    item: &str,
) -> Option<&'t mut dyn toml_edit::TableLike> {
    items
        .entry(item)
        .or_insert(Item::Table(Table::new()))
        .as_table_like_mut()
}

fn set(items: &mut dyn toml_edit::TableLike, item: &str, field: &str, new: Item) {
    let Some(table) = table(items, item) else {
        return;
    };
    let mut new = new;
    if let (Some(old), Some(new)) = (
        table.get(field).and_then(Item::as_value),
        new.as_value_mut(),
    ) {
        *new.decor_mut() = old.decor().clone();
    }
    table.insert(field, new);
}

fn add_need(items: &mut dyn toml_edit::TableLike, item: &str, any: &[String]) {
    let Some(table) = table(items, item) else {
        return;
    };
    let new: Value = match any {
        [one] => one.as_str().into(),
        several => {
            let mut alternatives = InlineTable::new();
            alternatives.insert(
                "any",
                Value::Array(several.iter().map(String::as_str).collect()),
            );
            Value::InlineTable(alternatives)
        }
    };
    match table.get_mut("needs").and_then(Item::as_value_mut) {
        Some(Value::Array(list)) => list.push(new),
        Some(other) => {
            let mut list = Array::new();
            list.push(other.clone());
            list.push(new);
            *other = Value::Array(list);
        }
        None => {
            table.insert("needs", value(Array::from_iter([new])));
        }
    }
}

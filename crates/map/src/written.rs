//! What stands in a map's text, as a person writes it into a field, however good a map it
//! is: so that what is wrong can be shown, and mended, where it was written.

use crate::trouble::Trouble;
use std::collections::BTreeMap;
use toml_edit::{Document, Item, TableLike, Value};

/// The fields of an item as a person would write them. A field within a field is named
/// with a point, such as `minutes.out`; what is one of several stands between commas.
///
/// ```
/// let text = "[items.tray]\nis = \"cover\"\ntools = [\"pliers\", \"8 mm\"]\nminutes = { out = 1.5 }\n";
/// let fields = map::fields(text, "tray");
/// assert_eq!(fields["tools"], "pliers, 8 mm");
/// assert_eq!(fields["minutes.out"], "1.5");
/// ```
#[must_use]
pub fn fields(text: &str, item: &str) -> BTreeMap<String, String> {
    let mut fields = BTreeMap::new();
    with_item(text, item, |table| collect(table, "", &mut fields));
    fields
}

/// The needs under a key of an item, one each, in words; `any` of them joined by "or".
#[must_use]
pub fn needs_written(text: &str, item: &str, key: &str) -> Vec<String> {
    let mut needs = Vec::new();
    with_item(text, item, |table| {
        let (within, key) = key
            .split_once('.')
            .map_or((None, key), |(within, key)| (Some(within), key));
        let table = match within {
            Some(within) => table.get(within).and_then(Item::as_table_like),
            None => Some(table),
        };
        needs = match table
            .and_then(|table| table.get(key))
            .and_then(Item::as_value)
        {
            Some(Value::Array(list)) => list.iter().map(words).collect(),
            Some(value) => vec![words(value)],
            None => Vec::new(),
        };
    });
    needs
}

/// The item that a trouble is about, and its field as [`fields`] names it; the field is
/// empty where the item itself is meant. Nothing for what stands outside the items.
#[must_use]
pub fn placed(text: &str, troubles: &[Trouble]) -> Vec<Option<(String, String)>> {
    let none = || vec![None; troubles.len()];
    let Ok(document) = Document::parse(text) else {
        return none();
    };
    let Some(items) = document.get("items").and_then(Item::as_table_like) else {
        return none();
    };
    let mut spans = Vec::new();
    for (name, held) in items.iter() {
        let key = items.get_key_value(name).and_then(|(key, _)| key.span());
        spans.extend(key.map(|span| (span, (name.to_owned(), String::new()))));
        if let Some(table) = held.as_table_like() {
            let mut within = Vec::new();
            collect_spans(table, "", &mut within);
            let own = |(span, key)| (span, (name.to_owned(), key));
            spans.extend(within.into_iter().map(own));
        }
    }
    let lines: Vec<usize> = [0]
        .into_iter()
        .chain(text.match_indices('\n').map(|(at, _)| at + 1))
        .collect();
    let find = |trouble: &Trouble| {
        let begin = *lines.get(trouble.line - 1)?;
        let letters = text.get(begin..)?.chars().take(trouble.column - 1);
        let at = begin + letters.map(char::len_utf8).sum::<usize>();
        // The narrowest that holds it.
        let holding = spans.iter().filter(|(span, _)| span.contains(&at));
        let narrowest = holding.min_by_key(|(span, _)| span.len());
        narrowest.map(|(_, owner)| owner.clone())
    };
    troubles.iter().map(find).collect()
}

fn with_item(text: &str, item: &str, look: impl FnOnce(&dyn TableLike)) {
    let Ok(document) = Document::parse(text) else {
        return;
    };
    let items = document.get("items").and_then(Item::as_table_like);
    if let Some(table) = items
        .and_then(|items| items.get(item))
        .and_then(Item::as_table_like)
    {
        look(table);
    }
}

fn collect(table: &dyn TableLike, before: &str, into: &mut BTreeMap<String, String>) {
    for (key, held) in table.iter() {
        let name = format!("{before}{key}");
        match held.as_table_like() {
            Some(within) => collect(within, &format!("{name}."), into),
            None => {
                into.extend(held.as_value().map(|value| (name, words(value))));
            }
        }
    }
}

type Spans = Vec<(std::ops::Range<usize>, String)>;

fn collect_spans(table: &dyn TableLike, before: &str, into: &mut Spans) {
    for (key, held) in table.iter() {
        let name = format!("{before}{key}");
        let own = table.get_key_value(key).and_then(|(key, _)| key.span());
        for span in [own, held.span()].into_iter().flatten() {
            into.push((span, name.clone()));
        }
        if let Some(within) = held.as_table_like() {
            collect_spans(within, &format!("{name}."), into);
        }
    }
}

fn words(value: &Value) -> String {
    let joined =
        |list: &toml_edit::Array, by: &str| list.iter().map(words).collect::<Vec<_>>().join(by);
    match value {
        Value::String(text) => text.value().clone(),
        Value::Array(list) if list.iter().any(Value::is_array) => joined(list, " and "),
        Value::Array(list) => joined(list, ", "),
        Value::InlineTable(table) => match table.get("any") {
            Some(Value::Array(ways)) => {
                let way = |way: &Value| match way {
                    Value::Array(all) => joined(all, " and "),
                    one => words(one),
                };
                ways.iter().map(way).collect::<Vec<_>>().join(" or ")
            }
            _ => table.to_string().trim().to_owned(),
        },
        other => {
            let mut bare = other.clone();
            bare.decor_mut().clear();
            bare.to_string()
        }
    }
}

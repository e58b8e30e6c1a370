//! Left and right: what was written for one side is made for the other.

use toml_edit::{Array, InlineTable, Item, Table, TableLike, Value};

/// Words of one side and of the other.
const SIDES: [(&str, &str); 15] = [
    ("left", "right"),
    ("lh", "rh"),
    ("nearside", "offside"),
    ("ns", "os"),
    ("fl", "fr"),
    ("rl", "rr"),
    ("nsf", "osf"),
    ("nsr", "osr"),
    ("links", "rechts"),
    ("linke", "rechte"),
    ("linker", "rechter"),
    ("linkes", "rechtes"),
    ("linken", "rechten"),
    ("vl", "vr"),
    ("hl", "hr"),
];

/// The same name on the other side; nothing where it names no side, or both.
///
/// ```
/// assert_eq!(map::mirrored("left caliper bolts").as_deref(), Some("right caliper bolts"));
/// assert_eq!(map::mirrored("Caliper FR").as_deref(), Some("Caliper FL"));
/// assert_eq!(map::mirrored("undertray"), None);
/// assert_eq!(map::mirrored("link from left to right"), None);
/// ```
#[must_use]
pub fn mirrored(name: &str) -> Option<String> {
    let (text, sides) = swapped(name);
    let [first, rest @ ..] = sides.as_slice() else {
        return None;
    };
    rest.iter().all(|side| side == first).then_some(text)
}

/// Which side a word is of.
#[derive(Clone, Copy, PartialEq, Eq)]
enum Side {
    One,
    Other,
}

fn other(word: &str) -> Option<(&'static str, Side)> {
    let small = word.to_lowercase();
    SIDES.iter().find_map(|(one, other)| match small.as_str() {
        small if small == *one => Some((*other, Side::One)),
        small if small == *other => Some((*one, Side::Other)),
        _ => None,
    })
}

/// The text with each word of a side as the other's, and which sides there were.
fn swapped(text: &str) -> (String, Vec<Side>) {
    let mut out = String::new();
    let mut sides = Vec::new();
    let mut word = String::new();
    let mut end = |word: &mut String, out: &mut String| {
        match other(word) {
            Some((with, side)) => {
                sides.push(side);
                out.push_str(&as_written(word, with));
            }
            None => out.push_str(word),
        }
        word.clear();
    };
    for letter in text.chars() {
        if letter.is_alphanumeric() {
            word.push(letter);
        } else {
            end(&mut word, &mut out);
            out.push(letter);
        }
    }
    end(&mut word, &mut out);
    (out, sides)
}

/// Large letters stay large.
fn as_written(word: &str, with: &str) -> String {
    let large = |c: char| c.is_uppercase();
    if word.chars().all(large) {
        with.to_uppercase()
    } else if word.starts_with(large) {
        let mut letters = with.chars();
        let first = letters.next().into_iter().flat_map(char::to_uppercase);
        first.chain(letters).collect()
    } else {
        with.to_owned()
    }
}

/// The items of a table that name one side and lack their like on the other: both names.
pub(crate) fn lacking(items: &dyn TableLike) -> Vec<(String, String)> {
    items
        .iter()
        .filter_map(|(name, _)| Some((name.to_owned(), mirrored(name)?)))
        .filter(|(_, other)| !items.contains_key(other))
        .collect()
}

/// Adds the other side of every item that lacks it, with what it needs and owes on that side.
pub(crate) fn mirror(items: &mut dyn TableLike) {
    for (name, other) in lacking(items) {
        let Some(mut made) = items.get(&name).cloned() else {
            continue;
        };
        swap_item(&mut made);
        items.insert(&other, made);
    }
}

fn swap_item(item: &mut Item) {
    match item {
        Item::Value(value) => swap_value(value),
        Item::Table(table) => swap_table(table),
        Item::ArrayOfTables(_) | Item::None => {}
    }
}

fn swap_table(table: &mut Table) {
    for (_, item) in table.iter_mut() {
        swap_item(item);
    }
}

fn swap_value(value: &mut Value) {
    match value {
        Value::String(text) => {
            let (other, sides) = swapped(text.value());
            if !sides.is_empty() {
                *value = other.into();
            }
        }
        Value::Array(list) => swap_list(list),
        Value::InlineTable(table) => swap_inline(table),
        _ => {}
    }
}

fn swap_list(list: &mut Array) {
    for value in list.iter_mut() {
        swap_value(value);
    }
}

fn swap_inline(table: &mut InlineTable) {
    for (_, value) in table.iter_mut() {
        swap_value(value);
    }
}

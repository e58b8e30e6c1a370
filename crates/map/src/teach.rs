//! A map's text made, or renewed, from what many finished jobs have taught.

use crate::job::{JobItem, add_torque, list, minutes_value, new_item, table};
use crate::moves::TAUGHT;
use crate::words::{home_word, kind_of, need_word};
use states::{Kind, State};
use std::collections::{BTreeMap, BTreeSet};
use toml_edit::{DocumentMut, InlineTable, Item, Table, TableLike, TomlError, value};

/// What jobs have taught of one kind of vehicle.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Taught {
    /// The vehicle.
    pub vehicle: String,
    /// The items, in the sequence in which they mostly come off.
    pub items: Vec<TaughtItem>,
}

/// What jobs have taught of one item.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TaughtItem {
    /// What was told of it, and its times.
    pub is: JobItem,
    /// The items that come off before it, each with the state it has to have reached.
    pub needs: BTreeMap<String, State>,
    /// Of these, the ones that are only guessed to be needed.
    pub guessed: BTreeSet<String>,
    /// What it needs to go back, where that is not the way out turned round.
    pub back: Option<TaughtBack>,
    /// The tools that were used.
    pub tools: BTreeSet<String>,
    /// Work that it leaves.
    pub owes: BTreeSet<String>,
}

/// What jobs have taught that an item needs to go back.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct TaughtBack {
    /// Items that are still away, each with the state it has to have reached.
    pub away: BTreeMap<String, State>,
    /// Items that are home again.
    pub home: BTreeSet<String>,
    /// Of those, the ones that are only guessed to be needed so.
    pub guessed: BTreeSet<String>,
}

/// Writes what jobs have taught into a map's text. An empty text becomes a new map.
///
/// Of an item that needs what was seen, the needs and the minutes are renewed. Of an item
/// whose needs a person stated, nothing is changed that is written; what it lacks is filled in.
///
/// # Errors
/// If the text is no TOML.
///
/// ```
/// use map::{JobItem, Taught, TaughtItem, teach};
/// use states::{Kind, State};
///
/// let item = |name: &str, needs: &[&str]| TaughtItem {
///     is: JobItem::new(name, Kind::Cover),
///     needs: needs.iter().map(|need| (need.to_string(), State::Off)).collect(),
///     guessed: needs.iter().map(|need| need.to_string()).collect(),
///     back: None,
///     tools: [].into(),
///     owes: [].into(),
/// };
/// let taught = Taught {
///     vehicle: "Van".to_owned(),
///     items: vec![item("grille", &[]), item("lamp", &["grille"])],
/// };
/// let text = teach("", &taught)?;
/// let read = map::read("van.toml", &text).unwrap();
/// assert!(read.map.items[&states::ItemId::new("lamp")].guessed.contains(&states::ItemId::new("grille")));
/// # Ok::<(), toml_edit::TomlError>(())
/// ```
pub fn teach(text: &str, taught: &Taught) -> Result<String, TomlError> {
    let mut document: DocumentMut = text.parse()?;
    let root = document.as_table_mut();
    if !root.contains_key("vehicle") {
        root.insert("vehicle", value(&taught.vehicle));
        root.insert("place-change", value(1));
        root.insert("tool-change", value(0.2));
    }
    for item in &taught.items {
        let items = table(root, "items");
        if !items.contains_key(&item.is.name) {
            let made = new_item(&item.is, "finished jobs");
            items.insert(&item.is.name, Item::Table(made));
        }
    }
    let known = kinds(table(root, "items"));
    for item in &taught.items {
        add_works(table(root, "items"), &item.owes, &known);
        let items = table(root, "items");
        if let Some(held) = items
            .get_mut(&item.is.name)
            .and_then(Item::as_table_like_mut)
        {
            fill_in(held, item);
            renew(held, item, &known);
        }
        if let Some(torque) = &item.is.torque {
            add_torque(root, &item.is.name, torque);
        }
    }
    Ok(document.to_string())
}

impl JobItem {
    /// An item of which nothing is known but its name and kind.
    #[must_use]
    pub fn new(name: &str, kind: Kind) -> Self {
        Self {
            name: name.to_owned(),
            kind,
            count: 1,
            size: None,
            lengths: BTreeMap::new(),
            system: None,
            zone: None,
            holds: None,
            torque: None,
            spent: false,
            out_tenths: None,
            back_tenths: None,
        }
    }
}

fn kinds(items: &Table) -> BTreeMap<String, Kind> {
    let kind = |(name, held): (&str, &Item)| {
        let is = held.as_table_like()?.get("is")?.as_str()?;
        Some((name.to_owned(), kind_of(is)?))
    };
    items.iter().filter_map(kind).collect()
}

/// Work that is owed stands in the map as an item of its own.
fn add_works(items: &mut Table, owes: &BTreeSet<String>, known: &BTreeMap<String, Kind>) {
    for work in owes.iter().filter(|work| !known.contains_key(*work)) {
        if !items.contains_key(work) {
            let mut made = Table::new();
            made.insert("is", value("work"));
            items.insert(work, Item::Table(made));
        }
    }
}

/// What an item lacks.
fn fill_in(held: &mut dyn TableLike, item: &TaughtItem) {
    let is_counted = item.is.kind.is_counted() && item.is.count > 1;
    if is_counted && !held.contains_key("count") {
        held.insert("count", value(i64::from(item.is.count)));
    }
    // Two moves have their own tools and work.
    let one_move = !held.contains_key("crack") && !held.contains_key("out");
    let texts = [
        ("size", &item.is.size),
        ("holds", &item.is.holds),
        ("system", &item.is.system),
        ("zone", &item.is.zone),
    ];
    for (key, text) in texts {
        if let Some(text) = text.as_ref().filter(|_| !held.contains_key(key)) {
            held.insert(key, value(text));
        }
    }
    let lists = [("tools", &item.tools), ("owes", &item.owes)];
    for (key, names) in lists {
        if one_move && !names.is_empty() && !held.contains_key(key) {
            held.insert(key, list(names.iter().map(String::as_str)));
        }
    }
    if one_move && !held.contains_key("minutes") {
        set_minutes(held, item);
    }
}

/// What an item needs, where that was learned and not stated, and how long it takes here.
fn renew(held: &mut dyn TableLike, item: &TaughtItem, known: &BTreeMap<String, Kind>) {
    if held.get("needs").and_then(Item::as_str) != Some("as seen") {
        return;
    }
    let is_other = |name: &&String| **name != item.is.name && known.contains_key(*name);
    let away = |needs: &BTreeMap<String, State>| -> Vec<String> {
        let needs = needs.iter().filter(|(name, _)| is_other(name));
        let word = |(name, state): (&String, &State)| match state {
            State::Cracked if known[name] == Kind::Fasteners => format!("{name} cracked"),
            _ => format!("{name} {}", need_word(known[name])),
        };
        needs.map(word).collect()
    };
    let names = |names: &BTreeSet<String>| -> Vec<String> {
        names.iter().filter(is_other).cloned().collect()
    };
    let [out, back] = TAUGHT;
    set_taught(held, out, Some(&away(&item.needs)), &names(&item.guessed));
    // What a person stated of the way back stands alone.
    let taught = item
        .back
        .as_ref()
        .filter(|_| !held.contains_key("needs-back"));
    let needs_back = taught.map(|taught| {
        let home = names(&taught.home).into_iter();
        let home = home.map(|name| format!("{name} {}", home_word(known[&name])));
        let mut needs = away(&taught.away);
        needs.extend(home);
        needs
    });
    let guessed = taught.map_or_else(Vec::new, |taught| names(&taught.guessed));
    set_taught(held, back, needs_back.as_deref(), &guessed);
    set_minutes(held, item);
}

/// Writes what was taught of one way, and which of it is a guess; takes out what is no longer.
fn set_taught(
    held: &mut dyn TableLike,
    [seen, guesses]: [&str; 2],
    needs: Option<&[String]>,
    guessed: &[String],
) {
    let mut set = |key: &str, names: Option<&[String]>| {
        match names {
            Some(names) => held.insert(key, list(names.iter().map(String::as_str))),
            None => held.remove(key),
        };
    };
    set(seen, needs);
    set(guesses, (!guessed.is_empty()).then_some(guessed));
}

fn set_minutes(held: &mut dyn TableLike, item: &TaughtItem) {
    let times = [("out", item.is.out_tenths), ("back", item.is.back_tenths)];
    if times.iter().all(|(_, tenths)| tenths.is_none()) {
        return;
    }
    if held.get("minutes").is_none_or(|held| !held.is_table_like()) {
        held.insert("minutes", value(InlineTable::new()));
    }
    let minutes = held.get_mut("minutes").and_then(Item::as_table_like_mut);
    if let Some(minutes) = minutes {
        for (key, tenths) in times {
            if let Some(tenths) = tenths {
                minutes.insert(key, value(minutes_value(tenths)));
            }
        }
    }
}

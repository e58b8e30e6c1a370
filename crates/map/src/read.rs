//! Reading a map from its text.

use crate::check::check;
use crate::fields::Fields;
use crate::hints::hints;
use crate::item::read_item;
use crate::learned;
use crate::needs::Known;
use crate::phrases as say;
use crate::syntax;
use crate::trouble::{Trouble, Troubles, Weight};
use crate::value::{Map, Source};
use crate::words::KINDS;
use states::{ItemId, Kind, Position};
use std::collections::BTreeMap;
use toml_edit::Document;

/// A map, and what in it has no effect.
#[derive(Debug, Clone, PartialEq)]
pub struct Read {
    /// The map.
    pub map: Map,
    /// Warnings only.
    pub warnings: Vec<Trouble>,
}

const HEAD: [&str; 8] = [
    "vehicle",
    "version",
    "start",
    "place-change",
    "tool-change",
    "between",
    "note",
    "variants",
];

/// Reads a map and checks it.
///
/// `file` is the name that troubles are told under.
///
/// # Errors
/// Everything that is wrong, warnings included, in the sequence of the text: what is
/// no TOML, unknown keys, kinds, states and items, quantities that cannot be read,
/// torques without a source, and moves that nothing free can ever support.
pub fn read(file: &str, text: &str) -> Result<Read, Vec<Trouble>> {
    let (map, troubles) = look(file, text);
    let failed = troubles
        .iter()
        .any(|trouble| trouble.weight == Weight::Error);
    match failed {
        true => Err(troubles),
        false => Ok(Read {
            map,
            warnings: troubles,
        }),
    }
}

/// A map as far as it can be read, and everything that is wrong with it: for showing it
/// while somebody works on it, never for planning.
#[must_use]
pub fn look(file: &str, text: &str) -> (Map, Vec<Trouble>) {
    let mut troubles = Troubles::new(file, text);
    let document = match Document::parse(text) {
        Ok(document) => document,
        Err(error) => {
            syntax::tell(&error, text, &mut troubles);
            return (Map::default(), troubles.all);
        }
    };
    let root = Fields {
        table: document.as_table(),
        span: None,
        name: say::the_map().to_owned(),
    };
    let map = read_map(&root, &mut troubles);
    if !troubles.any_error() {
        check(&map, &root, &mut troubles);
        hints(&map, &root, &mut troubles);
    }
    let mut all = troubles.all;
    all.sort_by_key(|trouble| (trouble.line, trouble.column));
    (map, all)
}

fn read_map(root: &Fields, troubles: &mut Troubles) -> Map {
    let known_keys: Vec<_> = HEAD
        .into_iter()
        .chain(["sources", "items", "seen", "settled"])
        .collect();
    root.only(&known_keys, troubles);
    let vehicle = root.text("vehicle", troubles);
    let unnamed = vehicle.as_ref().is_some_and(|name| name.trim().is_empty());
    if unnamed || !root.has("vehicle") {
        troubles.error(&root.at("vehicle"), say::no_vehicle(), say::add_vehicle());
    }
    let sources = read_sources(root, troubles);
    let variants = root
        .texts("variants", troubles)
        .into_iter()
        .map(|(name, _)| name)
        .collect();
    let mut map = Map {
        vehicle: vehicle.unwrap_or_default(),
        version: root.count("version", troubles).map_or(1, u32::from),
        start: root.text("start", troubles),
        place_change_tenths: root.tenths("place-change", troubles),
        between_tenths: read_between(root, troubles),
        tool_change_tenths: root.tenths("tool-change", troubles),
        sources,
        variants,
        items: BTreeMap::new(),
        seen: BTreeMap::new(),
        settled: learned::Settled::default(),
    };
    let Some(items) = root.table("items", troubles) else {
        return map;
    };
    let names: Vec<_> = items.table.iter().map(|(name, _)| name).collect();
    let tables: Vec<_> = names
        .into_iter()
        .filter_map(|name| items.table(name, troubles))
        .collect();
    for table in tables
        .iter()
        .filter(|table| table.name.trim() != table.name || table.name.is_empty())
    {
        let what = say::name_with_blanks(&table.name);
        troubles.error(&table.span, what, say::name_without_blanks());
    }
    let known: Known = tables
        .iter()
        .filter_map(|table| Some((table.name.clone(), kind_and_count(table, troubles)?)))
        .collect();
    for table in &tables {
        if let Some((kind, count)) = known.get(&table.name) {
            let item = read_item(table, *kind, *count, &map, &known, troubles);
            map.items.insert(ItemId::new(&table.name), item);
        }
    }
    learned::read(root, &known, &mut map, troubles);
    learned::apply(&mut map);
    map
}

fn read_sources(root: &Fields, troubles: &mut Troubles) -> BTreeMap<String, Source> {
    let Some(sources) = root.table("sources", troubles) else {
        return BTreeMap::new();
    };
    let mut read = BTreeMap::new();
    let names: Vec<_> = sources.table.iter().map(|(name, _)| name).collect();
    for name in names {
        let Some(source) = sources.table(name, troubles) else {
            continue;
        };
        source.only(&["title", "date"], troubles);
        let (title, date) = (
            source.text("title", troubles),
            source.text("date", troubles),
        );
        if !source.has("title") {
            let what = say::source_without_title(name);
            troubles.error(&source.span, what, say::add_title());
        }
        if !source.has("date") {
            let what = say::source_without_date(name);
            troubles.error(&source.span, what, say::add_date());
        }
        if let Some(date) = date.as_ref().filter(|date| !is_date(date)) {
            let what = say::no_date(date);
            let mend = say::write_year_first();
            troubles.error(&source.at("date"), what, mend);
        }
        // A source that lacks something is told once, and stands for the torques it gives.
        let (title, date) = (title.unwrap_or_default(), date.unwrap_or_default());
        read.insert(name.to_owned(), Source { title, date });
    }
    read
}

/// A year, or a month or day of one, in digits.
fn is_date(text: &str) -> bool {
    let parts: Vec<&str> = text.trim().split('-').collect();
    let digits = |part: &str, many: usize| {
        part.len() == many && part.bytes().all(|digit| digit.is_ascii_digit())
    };
    let within = |part: &str, most: u8| {
        digits(part, 2)
            && part
                .parse()
                .is_ok_and(|number: u8| (1..=most).contains(&number))
    };
    match parts.as_slice() {
        [year] => digits(year, 4),
        [year, month] => digits(year, 4) && within(month, 12),
        [year, month, day] => digits(year, 4) && within(month, 12) && within(day, 31),
        _ => false,
    }
}

fn read_between(root: &Fields, troubles: &mut Troubles) -> BTreeMap<(String, String), u32> {
    let Some(from_each) = root.table("between", troubles) else {
        return BTreeMap::new();
    };
    let mut between = BTreeMap::new();
    let from: Vec<_> = from_each.table.iter().map(|(from, _)| from).collect();
    for from in from {
        if let Some(to_each) = from_each.table(from, troubles) {
            for (to, _) in to_each.table.iter() {
                let tenths = to_each.tenths(to, troubles);
                between.insert((from.to_owned(), to.to_owned()), tenths);
            }
        }
    }
    between
}

fn kind_and_count(table: &Fields, troubles: &mut Troubles) -> Option<(Kind, Position)> {
    let Some(word) = table.text("is", troubles) else {
        if !table.has("is") {
            let mend = say::add_kind();
            troubles.error(&table.span, say::does_not_say_what_it_is(&table.name), mend);
        }
        return None;
    };
    let Some((_, kind)) = KINDS.into_iter().find(|(known, _)| *known == word) else {
        let words = KINDS.map(|(word, _)| word);
        let mend = troubles.meant(&word, words, say::write_one_of(words.join(", ")));
        troubles.error(&table.at("is"), say::no_kind_of_item(&word), mend);
        return None;
    };
    let count = table.count("count", troubles).unwrap_or(1);
    if count == 0 || (count > 1 && !kind.is_counted()) {
        let mend = say::only_fasteners_are_counted();
        troubles.error(
            &table.at("count"),
            say::cannot_have_pieces(&table.name, count),
            mend,
        );
    }
    Some((kind, count.max(1)))
}

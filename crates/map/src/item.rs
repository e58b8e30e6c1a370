//! Reading one item of a map.

use crate::fields::{Fields, measure_text};
use crate::moves::{MOVE, TAUGHT, as_seen, read_moves, read_taught};
use crate::needs::Known;
use crate::phrases as say;
use crate::trouble::Troubles;
use crate::value::{Map, MapItem};
use crate::words::{SYSTEMS, ZONES};
use measure::{Dimension, Measured};
use states::{Kind, Position};
use std::collections::{BTreeMap, BTreeSet};
use toml_edit::Key;

const ITEM: [&str; 20] = [
    "is",
    "system",
    "zone",
    "count",
    "size",
    "length",
    "length-at",
    "torque",
    "torque-from",
    "pattern",
    "spent",
    "may-miss",
    "holds",
    "drains",
    "due-after",
    "sort",
    "note",
    "only-with",
    "crack",
    "out",
];

pub(crate) fn read_item(
    table: &Fields,
    kind: Kind,
    count: Position,
    map: &Map,
    known: &Known,
    troubles: &mut Troubles,
) -> MapItem {
    let keys: Vec<_> = ITEM.into_iter().chain(MOVE).collect();
    table.only(&keys, troubles);
    let torque = read_torque(table, troubles);
    let torque_from = table.text("torque-from", troubles);
    check_source(
        table,
        !torque.is_empty(),
        torque_from.as_deref(),
        map,
        troubles,
    );
    let only_with = table.texts("only-with", troubles);
    for (variant, span) in &only_with {
        if !map.variants.contains(variant) {
            let known = map.variants.iter().map(String::as_str);
            let mend = troubles.meant(variant, known, say::add_to_variants());
            troubles.error(span, say::no_such_variant(variant), mend);
        }
    }
    let holds = table
        .measured("holds", Dimension::Volume, troubles)
        .into_iter()
        .next();
    let drains = table
        .measured("drains", Dimension::Volume, troubles)
        .into_iter()
        .next();
    let [(taught, guessed), (taught_back, guessed_back)] = TAUGHT.map(|keys| {
        let taught = read_taught(table, keys, known, troubles);
        taught.map_or((None, BTreeSet::new()), |(need, guessed)| {
            (Some(need), guessed)
        })
    });
    MapItem {
        kind,
        count,
        taught,
        guessed,
        taught_back,
        guessed_back,
        system: table.word("system", &SYSTEMS, troubles),
        zone: table.word("zone", &ZONES, troubles),
        size: table.text("size", troubles),
        lengths: read_lengths(table, count, troubles),
        torque,
        torque_from,
        pattern: table.text("pattern", troubles),
        spent: table.yes("spent", troubles),
        may_miss: read_may_miss(table, count, troubles),
        holds,
        drains,
        due_after: table.text("due-after", troubles),
        sort: read_sort(table, kind, troubles),
        note: table.text("note", troubles),
        as_seen: as_seen(table),
        only_with: only_with.into_iter().map(|(variant, _)| variant).collect(),
        moves: read_moves(table, kind, known, troubles),
    }
}

/// The sort of a work, a code of small letters and hyphens.
fn read_sort(table: &Fields, kind: Kind, troubles: &mut Troubles) -> Option<String> {
    let sort = table.text("sort", troubles)?;
    let is_code = sort
        .split('-')
        .all(|word| !word.is_empty() && word.chars().all(|letter| letter.is_ascii_lowercase()));
    if kind != Kind::Work {
        let what = say::no_work_and_no_sort(&table.name);
        troubles.error(&table.at("sort"), what, say::take_sort_out());
    } else if !is_code || sort.len() > 30 {
        let what = say::no_sort_of_work(&sort);
        let mend = say::write_code_of_sort();
        troubles.error(&table.at("sort"), what, mend);
    } else {
        return Some(sort);
    }
    None
}

/// A torque counts only with who says so: none is taken on trust.
fn check_source(
    table: &Fields,
    has_torque: bool,
    from: Option<&str>,
    map: &Map,
    troubles: &mut Troubles,
) {
    match from {
        Some(name) if map.sources.contains_key(name) => {}
        Some(name) => {
            let known = map.sources.keys().map(String::as_str);
            let add = say::add_source_table(Key::new(name));
            let mend = troubles.meant(name, known, add);
            let what = say::no_such_source(name);
            troubles.error(&table.at("torque-from"), what, mend);
        }
        None if has_torque => {
            let what = say::torque_without_source(&table.name);
            let mend = say::add_torque_from();
            troubles.error(&table.at("torque"), what, mend);
        }
        None => {}
    }
}

/// Passes by torque, the last ones perhaps by angle.
fn read_torque(table: &Fields, troubles: &mut Troubles) -> Vec<Measured> {
    let passes = table.texts("torque", troubles);
    let read = |(text, span): (String, _)| {
        let angle = measure::read(&text, Dimension::Angle).ok();
        angle.or_else(|| measure_text(&text, Dimension::Torque, &span, troubles))
    };
    passes.into_iter().filter_map(read).collect()
}

fn read_lengths(
    table: &Fields,
    count: Position,
    troubles: &mut Troubles,
) -> BTreeMap<Position, Measured> {
    let mut lengths = BTreeMap::new();
    if let Some(length) = table.measured("length", Dimension::Length, troubles).pop() {
        lengths.extend((1..=count).map(|at| (at, length.clone())));
    }
    let Some(by_position) = table.table("length-at", troubles) else {
        return lengths;
    };
    for (key, _) in by_position.table.iter() {
        let length = by_position.measured(key, Dimension::Length, troubles).pop();
        match key.parse().ok().filter(|at| (1..=count).contains(at)) {
            Some(at) => lengths.extend(length.map(|length| (at, length))),
            None => troubles.error(
                &by_position.at(key),
                say::no_position(key),
                say::write_one_from_to(1, count),
            ),
        }
    }
    let without: Vec<String> = (1..=count)
        .filter(|at| !lengths.contains_key(at))
        .map(|at| at.to_string())
        .collect();
    if !without.is_empty() && !lengths.is_empty() {
        let what = say::no_length_at(&table.name, without.join(", "));
        let mend = say::add_lengths();
        troubles.warn(&table.at("length-at"), what, mend);
    }
    lengths
}

fn read_may_miss(
    table: &Fields,
    count: Position,
    troubles: &mut Troubles,
) -> Option<(u16, Vec<Position>)> {
    let may_miss = table.table("may-miss", troubles)?;
    may_miss.only(&["up-to", "never-at"], troubles);
    let up_to = may_miss.count("up-to", troubles)?;
    if up_to > count {
        let what = say::more_may_miss_than_are(up_to, &table.name, count);
        troubles.error(
            &may_miss.at("up-to"),
            what,
            say::write_one_from_to(0, count),
        );
    }
    Some((up_to, may_miss.positions("never-at", count, troubles)))
}

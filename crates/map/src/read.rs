//! Reading a map from its text.

use crate::check::check;
use crate::fields::{Fields, measure_text};
use crate::learned;
use crate::needs::{self, Known};
use crate::trouble::{Trouble, Troubles, nearest};
use crate::value::{Map, MapItem, MapMove, MoveTimes, Source};
use crate::words::{KINDS, SYSTEMS, ZONES, verb};
use measure::{Dimension, Measured};
use states::{ItemId, Kind, Need, Position, State};
use std::collections::{BTreeMap, BTreeSet};
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

const ITEM: [&str; 19] = [
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
    "note",
    "only-with",
    "crack",
    "out",
];

const MOVE: [&str; 9] = [
    "needs",
    "needs-back",
    "owes",
    "minutes",
    "lost",
    "risk",
    "place",
    "tools",
    "by-itself",
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
    let mut troubles = Troubles::new(file, text);
    let document = match Document::parse(text) {
        Ok(document) => document,
        Err(error) => {
            let what = error.message().lines().collect::<Vec<_>>().join(", ");
            troubles.error(&error.span(), what, "correct the TOML here");
            return Err(troubles.all);
        }
    };
    let root = Fields {
        table: document.as_table(),
        span: None,
        name: "the map".to_owned(),
    };
    let map = read_map(&root, &mut troubles);
    if !troubles.any_error() {
        check(&map, &root, &mut troubles);
    }
    let failed = troubles.any_error();
    let mut all = troubles.all;
    all.sort_by_key(|trouble| (trouble.line, trouble.column));
    if failed {
        return Err(all);
    }
    Ok(Read { map, warnings: all })
}

fn read_map(root: &Fields, troubles: &mut Troubles) -> Map {
    let known_keys: Vec<_> = HEAD
        .into_iter()
        .chain(["sources", "items", "seen", "settled"])
        .collect();
    root.only(&known_keys, troubles);
    let vehicle = root.text("vehicle", troubles);
    if vehicle.is_none() && !root.has("vehicle") {
        troubles.error(
            &None,
            "the map names no vehicle",
            "add a line `vehicle = \"...\"`",
        );
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
        match (title, date) {
            (Some(title), Some(date)) => {
                read.insert(name.to_owned(), Source { title, date });
            }
            _ => troubles.error(
                &source.span,
                format!("the source `{name}` lacks its title or date"),
                "write both",
            ),
        }
    }
    read
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
            let mend = "add a line `is = \"part\"`, or another kind";
            troubles.error(
                &table.span,
                format!("`{}` does not say what it is", table.name),
                mend,
            );
        }
        return None;
    };
    let Some((_, kind)) = KINDS.into_iter().find(|(known, _)| *known == word) else {
        let words = KINDS.map(|(word, _)| word);
        let mend = match nearest(&word, words) {
            Some(near) => format!("did you mean `{near}`?"),
            None => format!("write one of {}", words.join(", ")),
        };
        troubles.error(
            &table.at("is"),
            format!("`{word}` is no kind of item"),
            mend,
        );
        return None;
    };
    let count = table.count("count", troubles).unwrap_or(1);
    if count == 0 || (count > 1 && !kind.is_counted()) {
        let mend = "only fasteners and clips are counted, from 1";
        troubles.error(
            &table.at("count"),
            format!("`{}` cannot have {count} pieces", table.name),
            mend,
        );
    }
    Some((kind, count.max(1)))
}

fn read_item(
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
    let stated = torque_from
        .as_ref()
        .is_some_and(|name| map.sources.contains_key(name));
    if (!torque.is_empty() || torque_from.is_some()) && !stated {
        let mend = "add `torque-from = \"...\"` with a name under [sources]";
        troubles.error(
            &table.at("torque"),
            format!("the torque of `{}` has no source", table.name),
            mend,
        );
    }
    let only_with = table.texts("only-with", troubles);
    for (variant, span) in &only_with {
        if !map.variants.contains(variant) {
            troubles.error(
                span,
                format!("no variant is called `{variant}`"),
                "add it to `variants`",
            );
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
    MapItem {
        kind,
        count,
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
        note: table.text("note", troubles),
        as_seen: as_seen(table),
        only_with: only_with.into_iter().map(|(variant, _)| variant).collect(),
        moves: read_moves(table, kind, known, troubles),
    }
}

/// Whether what an item needs is taken from what jobs have shown.
fn as_seen(table: &Fields) -> bool {
    table.item("needs").and_then(toml_edit::Item::as_str) == Some("as seen")
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
                format!("{key} is no position"),
                format!("write one from 1 to {count}"),
            ),
        }
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
    Some((up_to, may_miss.positions("never-at", count, troubles)))
}

/// One move for most items; for fasteners that are first cracked, two.
fn read_moves(table: &Fields, kind: Kind, known: &Known, troubles: &mut Troubles) -> Vec<MapMove> {
    let whole = (kind.home(), kind.away());
    if !table.has("crack") && !table.has("out") {
        return vec![read_move(table, table, verb(kind), whole, known, troubles)];
    }
    if kind != Kind::Fasteners || MOVE.iter().any(|key| table.has(key)) {
        let mend =
            "only fasteners have `crack` and `out`, and then each with its own needs and minutes";
        troubles.error(
            &table.span,
            format!("`{}` cannot have its moves written so", table.name),
            mend,
        );
        return Vec::new();
    }
    let mut moves = Vec::new();
    let ends = [(State::Tight, State::Cracked), (State::Cracked, State::Out)];
    for (verb, ends) in ["crack", "out"].into_iter().zip(ends) {
        match table.table(verb, troubles) {
            Some(fields) => {
                fields.only(&MOVE, troubles);
                moves.push(read_move(table, &fields, verb, ends, known, troubles));
            }
            None if verb == "crack" => {
                let mend = "write `crack` as well, or the keys of `out` without it";
                troubles.error(
                    &table.span,
                    format!("`{}` comes out without being cracked", table.name),
                    mend,
                );
            }
            None => {}
        }
    }
    moves
}

fn read_move(
    item: &Fields,
    fields: &Fields,
    verb: &str,
    (from, to): (State, State),
    known: &Known,
    troubles: &mut Troubles,
) -> MapMove {
    let need = |key: &str, troubles: &mut Troubles| {
        let written = fields
            .item(key)
            .filter(|_| key != "needs" || !as_seen(fields));
        written.map(|item| needs::read(item, known, troubles))
    };
    let owes = fields.texts("owes", troubles);
    for (work, span) in &owes {
        if known.get(work).is_none_or(|(kind, _)| *kind != Kind::Work) {
            let mend = "add it as an item that is = \"work\"";
            troubles.error(span, format!("no work is called `{work}`"), mend);
        }
    }
    let step = MapMove {
        id: format!("{}.{verb}", item.name),
        from,
        to,
        need: need("needs", troubles).unwrap_or(Need::All(Vec::new())),
        need_back: need("needs-back", troubles),
        owes: owes
            .into_iter()
            .map(|(work, _)| ItemId::new(work))
            .collect(),
        minutes: read_minutes(fields, troubles),
        lost_tenths: fields.tenths("lost", troubles),
        risk_tenths: fields.tenths("risk", troubles),
        place: fields.text("place", troubles),
        tools: fields
            .texts("tools", troubles)
            .into_iter()
            .map(|(tool, _)| tool)
            .collect::<BTreeSet<_>>(),
        by_itself: fields.yes("by-itself", troubles),
    };
    for (key, need) in [
        ("needs", Some(&step.need)),
        ("needs-back", step.need_back.as_ref()),
    ] {
        if need.is_some_and(|need| need.items().contains(&ItemId::new(&item.name))) {
            let mend = "take it out; where a move starts is known already";
            troubles.error(
                &fields.at(key),
                format!("`{}` needs a state of itself", item.name),
                mend,
            );
        }
    }
    step
}

fn read_minutes(fields: &Fields, troubles: &mut Troubles) -> MoveTimes {
    let Some(minutes) = fields.table("minutes", troubles) else {
        return MoveTimes::default();
    };
    minutes.only(&["out", "back", "each-out", "each-back"], troubles);
    MoveTimes {
        out_tenths: minutes.tenths("out", troubles),
        back_tenths: minutes.tenths("back", troubles),
        each_out_tenths: minutes.tenths("each-out", troubles),
        each_back_tenths: minutes.tenths("each-back", troubles),
    }
}

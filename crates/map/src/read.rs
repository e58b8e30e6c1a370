//! Reading a map from its text.

use crate::check::check;
use crate::fields::{Fields, measure_text};
use crate::hints::hints;
use crate::learned;
use crate::needs::{self, Known};
use crate::syntax;
use crate::trouble::{Trouble, Troubles, Weight};
use crate::value::{Map, MapItem, MapMove, MoveTimes, Source};
use crate::words::{KINDS, SYSTEMS, ZONES, kind_word, verb};
use measure::{Dimension, Measured};
use states::{ItemId, Kind, Need, Position, State};
use std::collections::{BTreeMap, BTreeSet};
use toml_edit::{Document, Key};

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

/// The keys of a move.
pub(crate) const MOVE: [&str; 10] = [
    "needs",
    "needs-back",
    "owes",
    "renews",
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
        name: "the map".to_owned(),
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
        troubles.error(
            &root.at("vehicle"),
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
    for table in tables
        .iter()
        .filter(|table| table.name.trim() != table.name || table.name.is_empty())
    {
        let what = format!(
            "the name `{}` is empty, or begins or ends with a blank",
            table.name
        );
        troubles.error(
            &table.span,
            what,
            "name it as people call it, without blanks around it",
        );
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
        for (key, such_as) in [("title", "Workshop manual"), ("date", "2021-09-15")] {
            if !source.has(key) {
                let what = format!("the source `{name}` has no {key}");
                let mend = format!("add a line such as `{key} = \"{such_as}\"`");
                troubles.error(&source.span, what, mend);
            }
        }
        if let Some(date) = date.as_ref().filter(|date| !is_date(date)) {
            let what = format!("`{date}` is no date");
            let mend = "write it year first, such as 2021-09-15, 2021-09 or 2021";
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
        let mend = troubles.meant(&word, words, format!("write one of {}", words.join(", ")));
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
            let mend = troubles.meant(variant, known, "add it to `variants`");
            troubles.error(span, format!("no variant is called `{variant}`"), mend);
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
            let add = format!("add `[sources.{}]` with its title and date", Key::new(name));
            let mend = troubles.meant(name, known, add);
            let what = format!("no source is called `{name}`");
            troubles.error(&table.at("torque-from"), what, mend);
        }
        None if has_torque => {
            let what = format!("the torque of `{}` has no source", table.name);
            let mend = "add `torque-from = \"...\"` with a name under [sources]";
            troubles.error(&table.at("torque"), what, mend);
        }
        None => {}
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
    let without: Vec<String> = (1..=count)
        .filter(|at| !lengths.contains_key(at))
        .map(|at| at.to_string())
        .collect();
    if !without.is_empty() && !lengths.is_empty() {
        let what = format!(
            "`{}` has no length at {}, where the others have one",
            table.name,
            without.join(", ")
        );
        let mend = "add them, or `length` for those that are alike";
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
        let what = format!(
            "{up_to} of `{}` may be missing, and there are {count}",
            table.name
        );
        troubles.error(
            &may_miss.at("up-to"),
            what,
            format!("write one from 0 to {count}"),
        );
    }
    Some((up_to, may_miss.positions("never-at", count, troubles)))
}

/// One move for most items; for fasteners that are first cracked, two.
fn read_moves(table: &Fields, kind: Kind, known: &Known, troubles: &mut Troubles) -> Vec<MapMove> {
    let whole = (kind.home(), kind.away());
    if !table.has("crack") && !table.has("out") {
        return vec![read_move(table, table, verb(kind), whole, known, troubles)];
    }
    if kind != Kind::Fasteners {
        let what = format!("`{}` cannot be cracked: it is no fastener", table.name);
        let mend = "take `crack` away, and write what stood in `out` without it";
        troubles.error(&table.span, what, mend);
        return Vec::new();
    }
    for key in MOVE.into_iter().filter(|key| table.has(key)) {
        let what = format!(
            "`{key}` of `{}` says not which of its two moves is meant",
            table.name
        );
        let mend = "write it within `crack` or `out`";
        troubles.error(&table.key_span(key).or_else(|| table.at(key)), what, mend);
    }
    let mut moves = Vec::new();
    let ends = [(State::Tight, State::Cracked), (State::Cracked, State::Out)];
    for (verb, ends) in ["crack", "out"].into_iter().zip(ends) {
        match table.table(verb, troubles) {
            Some(fields) => {
                fields.only(&MOVE, troubles);
                moves.push(read_move(table, &fields, verb, ends, known, troubles));
            }
            None if verb == "crack" && !table.has(verb) => {
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
        let is = known.get(work).map(|(kind, _)| *kind);
        if is != Some(Kind::Work) {
            let what = match is {
                Some(kind) => format!("`{work}` is written as {}, not as work", kind_word(kind)),
                None => format!("no work is called `{work}`"),
            };
            let works = known.iter().filter(|(_, (kind, _))| *kind == Kind::Work);
            let works = works.map(|(name, _)| name.as_str());
            let mend = troubles.meant(work, works, "add it as an item that is = \"work\"");
            troubles.error(span, what, mend);
        }
    }
    let renews = fields.texts("renews", troubles);
    for (seal, span) in &renews {
        if known.get(seal).is_none() {
            let mend = "add it as an item with `spent = true`";
            troubles.error(span, format!("no item is called `{seal}`"), mend);
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
        renews: renews
            .into_iter()
            .map(|(seal, _)| ItemId::new(seal))
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

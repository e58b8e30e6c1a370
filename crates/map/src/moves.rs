//! Reading the moves of an item: one for most, two for fasteners that are first cracked.

use crate::fields::Fields;
use crate::needs::{self, Known};
use crate::phrases as say;
use crate::trouble::Troubles;
use crate::value::{MapMove, MoveTimes};
use crate::words::{kind_word, verb};
use states::{ItemId, Kind, Need, State};
use std::collections::BTreeSet;

/// The keys of a move.
pub(crate) const MOVE: [&str; 15] = [
    "needs",
    "seen-needs",
    "guessed",
    "needs-back",
    "seen-needs-back",
    "guessed-back",
    "owes",
    "renews",
    "minutes",
    "lost",
    "risk",
    "place",
    "place-back",
    "tools",
    "by-itself",
];

/// Whether what an item needs is taken from what jobs have shown.
pub(crate) fn as_seen(table: &Fields) -> bool {
    table.item("needs").and_then(toml_edit::Item::as_str) == Some("as seen")
}

/// The key of what jobs have taught, and that of the guesses in it: of the way out, of the way back.
pub(crate) const TAUGHT: [[&str; 2]; 2] = [
    ["seen-needs", "guessed"],
    ["seen-needs-back", "guessed-back"],
];

/// What jobs have taught that an item needs on one way, as the shop wrote it down; and of these
/// the items that it is only guessed to need. Nothing where the text keeps what was seen job by
/// job, or says nothing of that way.
pub(crate) fn read_taught(
    table: &Fields,
    [seen, guesses]: [&str; 2],
    known: &Known,
    troubles: &mut Troubles,
) -> Option<(Need, BTreeSet<ItemId>)> {
    let written = table.item(seen).filter(|_| as_seen(table));
    if written.is_none() {
        let keys = [seen, guesses];
        for key in keys.into_iter().filter(|key| table.has(key)) {
            let what = say::counts_only_as_seen(key, &table.name);
            let mend = say::write_as_seen();
            troubles.error(&table.at(key), what, mend);
        }
        return None;
    }
    let need = needs::read(written?, known, troubles);
    let items = need.items();
    let mut guessed = BTreeSet::new();
    for (name, span) in table.texts(guesses, troubles) {
        let item = ItemId::new(&name);
        if !items.contains(&item) {
            let names = items.iter().map(|item| item.as_str());
            let mend = troubles.meant(&name, names, say::name_a_seen_need());
            let what = say::not_said_to_need(&table.name, &name);
            troubles.error(&span, what, mend);
        }
        guessed.insert(item);
    }
    Some((need, guessed))
}

/// One move for most items; for fasteners that are first cracked, two.
pub(crate) fn read_moves(
    table: &Fields,
    kind: Kind,
    known: &Known,
    troubles: &mut Troubles,
) -> Vec<MapMove> {
    let whole = (kind.home(), kind.away());
    if !table.has("crack") && !table.has("out") {
        return vec![read_move(table, table, verb(kind), whole, known, troubles)];
    }
    if kind != Kind::Fasteners {
        let what = say::cannot_be_cracked(&table.name);
        let mend = say::take_crack_away();
        troubles.error(&table.span, what, mend);
        return Vec::new();
    }
    for key in MOVE.into_iter().filter(|key| table.has(key)) {
        let what = say::which_of_two_moves(key, &table.name);
        let mend = say::write_within_crack_or_out();
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
                let mend = say::write_crack_as_well();
                troubles.error(&table.span, say::out_without_crack(&table.name), mend);
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
                Some(kind) => say::written_not_as_work(work, kind_word(kind)),
                None => say::no_such_work(work),
            };
            let works = known.iter().filter(|(_, (kind, _))| *kind == Kind::Work);
            let works = works.map(|(name, _)| name.as_str());
            let mend = troubles.meant(work, works, say::add_as_work());
            troubles.error(span, what, mend);
        }
    }
    let renews = fields.texts("renews", troubles);
    for (seal, span) in &renews {
        if known.get(seal).is_none() {
            let mend = say::add_as_spent();
            troubles.error(span, say::no_such_item(seal), mend);
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
        place_back: fields.text("place-back", troubles),
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
            let mend = say::start_is_known();
            troubles.error(&fields.at(key), say::needs_itself(&item.name), mend);
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

//! The trade's words for kinds, states and moves.

use crate::phrases as say;
use crate::value::Map;
use states::{Kind, Need, Position, State};
use std::collections::BTreeSet;

/// The words for kinds, as `is` takes them.
pub(crate) const KINDS: [(&str, Kind); 11] = [
    ("part", Kind::Part),
    ("cover", Kind::Cover),
    ("hose", Kind::Hose),
    ("seal", Kind::Seal),
    ("belt", Kind::Belt),
    ("fasteners", Kind::Fasteners),
    ("clips", Kind::Clips),
    ("connector", Kind::Connector),
    ("fluid", Kind::Fluid),
    ("work", Kind::Work),
    ("put-in", Kind::PutIn),
];

/// The words for states that a need may end in, the longest first.
pub(crate) const STATES: [&str; 13] = [
    "at level",
    "unplugged",
    "cracked",
    "plugged",
    "outside",
    "inside",
    "tight",
    "done",
    "due",
    "off",
    "out",
    "low",
    "on",
];

/// The words for kinds, to be offered.
#[must_use]
pub fn kinds() -> Vec<&'static str> {
    KINDS.iter().map(|(word, _)| *word).collect()
}

/// The kind that a word stands for.
#[must_use]
pub fn kind_of(word: &str) -> Option<Kind> {
    let known = KINDS.iter().find(|(known, _)| *known == word);
    known.map(|(_, kind)| *kind)
}

/// The word for one kind.
#[must_use]
pub fn kind_word(kind: Kind) -> &'static str {
    let word = KINDS.iter().find(|(_, known)| *known == kind);
    word.map_or("part", |(word, _)| *word)
}

/// The places where items are mostly worked on, to be offered.
#[must_use]
pub fn places() -> &'static [&'static str] {
    &ZONES
}

/// The systems that an item may belong to, to be offered.
#[must_use]
pub fn systems() -> &'static [&'static str] {
    &SYSTEMS
}

/// The word for having left its home, as a need says it: `out`, `off`, `unplugged`.
#[must_use]
pub fn need_word(kind: Kind) -> &'static str {
    away_word(kind)
}

/// The states that a word means for a kind, "or further" included; nothing if the kind
/// has no such state.
pub(crate) fn states(kind: Kind, word: &str) -> Option<BTreeSet<State>> {
    let loose = State::Loose { passes: 0 };
    let snapped = State::Stub { holds: false };
    let stuck = State::Stub { holds: true };
    let states: &[State] = match (kind, word) {
        (Kind::Fasteners, "cracked") => &[State::Cracked, State::Out, loose, snapped],
        (Kind::Fasteners, "out" | "off") => &[State::Out, snapped],
        (Kind::Fasteners, "on") => &[State::Tight, State::Cracked, loose, stuck],
        (Kind::Fasteners, "tight") => &[State::Tight],
        (Kind::Clips, "out" | "off") => &[State::Out],
        (Kind::Clips | Kind::Part | Kind::Cover | Kind::Hose | Kind::Seal | Kind::Belt, "on") => {
            &[State::On]
        }
        (Kind::Part | Kind::Cover | Kind::Hose | Kind::Seal | Kind::Belt, "off") => &[State::Off],
        (Kind::Connector, "plugged" | "on") => &[State::Plugged],
        (Kind::Connector, "unplugged" | "off") => &[State::Unplugged],
        (Kind::Fluid, "at level") => &[State::AtLevel],
        (Kind::Fluid, "low" | "out") => &[State::Low],
        (Kind::Work, "done") => &[State::Done],
        (Kind::Work, "due") => &[State::Due],
        (Kind::PutIn, "inside") => &[State::Inside],
        (Kind::PutIn, "outside") => &[State::Outside],
        _ => return None,
    };
    Some(states.iter().copied().collect())
}

/// The other words for where a kind may stand, as a need says them.
#[must_use]
pub fn other_words(kind: Kind) -> &'static [&'static str] {
    match kind {
        Kind::Part | Kind::Cover | Kind::Hose | Kind::Seal | Kind::Belt | Kind::Clips => &["on"],
        Kind::Fasteners => &["cracked", "on", "tight"],
        Kind::Connector => &["plugged"],
        Kind::Fluid => &["at level"],
        Kind::Work => &["done"],
        Kind::PutIn => &["outside"],
    }
}

/// The word for having left its home, as a need says it.
pub(crate) fn away_word(kind: Kind) -> &'static str {
    match kind {
        Kind::Part | Kind::Cover | Kind::Hose | Kind::Seal | Kind::Belt => "off",
        Kind::Fasteners | Kind::Clips => "out",
        Kind::Connector => "unplugged",
        Kind::Fluid => "low",
        Kind::Work => "due",
        Kind::PutIn => "inside",
    }
}

/// The word for being home, as a need says it.
pub(crate) fn home_word(kind: Kind) -> &'static str {
    match kind {
        Kind::Part | Kind::Cover | Kind::Hose | Kind::Seal | Kind::Belt | Kind::Clips => "on",
        Kind::Fasteners => "tight",
        Kind::Connector => "plugged",
        Kind::Fluid => "at level",
        Kind::Work => "done",
        Kind::PutIn => "outside",
    }
}

/// What a word of a map's text for a kind, a place or a system is called; another word is its
/// own name.
#[must_use]
pub fn called(word: &str) -> &str {
    match word {
        "part" => say::kind_part(),
        "cover" => say::kind_cover(),
        "hose" => say::kind_hose(),
        "seal" => say::kind_seal(),
        "belt" => say::kind_belt(),
        "fasteners" => say::kind_fasteners(),
        "clips" => say::kind_clips(),
        "connector" => say::kind_connector(),
        "fluid" => say::kind_fluid(),
        "work" => say::kind_work(),
        "put-in" => say::kind_put_in(),
        "above" => say::above(),
        "below" => say::below(),
        "wheel well" => say::wheel_well(),
        "cabin" => say::cabin(),
        "rear" => say::rear(),
        "outside" => say::outside(),
        "brakes" => say::brakes(),
        "steering" => say::steering(),
        "wheels" => say::wheels(),
        "suspension" => say::suspension(),
        "fuel" => say::fuel(),
        "restraints" => say::restraints(),
        "drive belt" => say::drive_belt(),
        "high voltage" => say::high_voltage(),
        "cooling" => say::cooling(),
        "oil" => say::oil(),
        "engine" => say::engine(),
        "transmission" => say::transmission(),
        "intake" => say::intake(),
        "exhaust" => say::exhaust(),
        "battery" => say::battery(),
        "electrical" => say::electrical(),
        "climate" => say::climate(),
        "body" => say::body(),
        other => other,
    }
}

/// What a word of a map's text for a state is called.
#[must_use]
pub fn state_called(word: &str) -> &str {
    match word {
        "off" => say::state_off(),
        "out" => say::state_out(),
        "on" => say::state_on(),
        "cracked" => say::state_cracked(),
        "tight" => say::state_tight(),
        "loose" => say::state_loose(),
        "stub" => say::state_stub(),
        "stuck" => say::state_stuck(),
        "plugged" => say::state_plugged(),
        "unplugged" => say::state_unplugged(),
        "at level" => say::state_at_level(),
        "low" => say::state_low(),
        "done" => say::state_done(),
        "due" => say::state_due(),
        "outside" => say::state_outside(),
        "inside" => say::state_inside(),
        other => other,
    }
}

/// What a move is called by its id, such as `tray.off`.
#[must_use]
pub fn move_called(id: &str) -> String {
    match id.rsplit_once('.') {
        Some((item, "off")) => say::move_off(item),
        Some((item, "out")) => say::move_out(item),
        Some((item, "crack")) => say::move_crack(item),
        Some((item, "unplug")) => say::move_unplug(item),
        Some((item, "drain")) => say::move_drain(item),
        Some((item, "due")) => say::move_due(item),
        Some((item, "in")) => say::move_in(item),
        _ => id.to_owned(),
    }
}

/// A need in what is spoken, alternatives joined by "or".
#[must_use]
pub fn said(map: &Map, need: &Need) -> String {
    in_words(map, need, &state_called, (say::and(), say::or()))
}

/// A need as it is written in a map.
pub(crate) fn as_written(map: &Map, need: &Need) -> String {
    in_words(map, need, &|word| word, (" and ", " or "))
}

fn in_words(
    map: &Map,
    need: &Need,
    called: &dyn Fn(&'static str) -> &'static str,
    (and, or): (&str, &str),
) -> String {
    let join = |needs: &[Need], word: &str| {
        let each: Vec<_> = needs
            .iter()
            .map(|need| in_words(map, need, called, (and, or)))
            .collect();
        each.join(word)
    };
    match need {
        Need::Is {
            item,
            at,
            states: wanted,
        } => {
            let kind = map.items.get(item).map_or(Kind::Part, |known| known.kind);
            let means = |word: &&str| states(kind, word).is_some_and(|meant| meant == *wanted);
            let words = [away_word(kind)].into_iter().chain(STATES);
            let word = called(words.into_iter().find(means).unwrap_or_default());
            let at: Vec<String> = at.iter().map(Position::to_string).collect();
            match at.is_empty() {
                true => format!("{item} {word}"),
                false => format!("{item} {} {word}", at.join(", ")),
            }
        }
        Need::All(needs) => join(needs, and),
        Need::Any(needs) => join(needs, or),
    }
}

/// The states in which a kind has left its home.
pub(crate) fn away(kind: Kind) -> BTreeSet<State> {
    states(kind, away_word(kind)).unwrap_or_default()
}

/// The words of the states a kind has, to be offered.
pub(crate) fn words_of(kind: Kind) -> Vec<&'static str> {
    STATES
        .into_iter()
        .filter(|word| states(kind, word).is_some())
        .collect()
}

/// What the single move of a kind is called.
pub(crate) fn verb(kind: Kind) -> &'static str {
    match kind {
        Kind::Part | Kind::Cover | Kind::Hose | Kind::Seal | Kind::Belt => "off",
        Kind::Fasteners | Kind::Clips => "out",
        Kind::Connector => "unplug",
        Kind::Fluid => "drain",
        Kind::Work => "due",
        Kind::PutIn => "in",
    }
}

/// The systems an item may belong to.
pub(crate) const SYSTEMS: [&str; 18] = [
    "brakes",
    "steering",
    "wheels",
    "suspension",
    "fuel",
    "restraints",
    "drive belt",
    "high voltage",
    "cooling",
    "oil",
    "engine",
    "transmission",
    "intake",
    "exhaust",
    "battery",
    "electrical",
    "climate",
    "body",
];

/// Where an item may be worked on.
pub(crate) const ZONES: [&str; 6] = ["above", "below", "wheel well", "cabin", "rear", "outside"];

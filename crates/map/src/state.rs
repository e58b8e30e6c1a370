//! Where things stand that are not at home, as text: for a plan from the middle.
//!
//! ```
//! let text = r#"
//! at = "above"
//! [items."tray screws"]
//! stands = "out"
//! [items."housing bolts"]
//! stands = { out = [1, 2, 3], stub = [6] }
//! [items."heat shield"] # not on the map
//! is = "cover"
//! stands = "off"
//! "#;
//! let map = map::read("small.toml", r#"
//! vehicle = "Small Van"
//! [items."tray screws"]
//! is = "fasteners"
//! count = 6
//! [items."housing bolts"]
//! is = "fasteners"
//! count = 7
//! "#).unwrap().map;
//! let read = map::read_state("state.toml", text, &map).unwrap();
//! assert_eq!(read.items.len(), 3);
//! assert_eq!(map::write_state(&read), map::write_state(&map::read_state("again", &map::write_state(&read), &map).unwrap()));
//! ```

use crate::fields::Fields;
use crate::phrases as say;
use crate::syntax;
use crate::trouble::{Trouble, Troubles, nearest};
use crate::value::Map;
use crate::words::{KINDS, said, state_called};
use states::{ItemId, Kind, Need, Position, State};
use std::collections::BTreeMap;
use toml_edit::{Array, Document, DocumentMut, InlineTable, Item, Table, value};

/// Where the pieces of an item stand.
pub type Pieces = (Kind, BTreeMap<Position, State>);

/// Where things stand that are not at home.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct StateOf {
    /// Where one stands.
    pub at: Option<String>,
    /// The items.
    pub items: BTreeMap<ItemId, Pieces>,
}

/// The words for states, as `stands` takes them: those of needs, and the two of stubs.
const WORDS: [(&str, State); 16] = [
    ("on", State::On),
    ("off", State::Off),
    ("tight", State::Tight),
    ("cracked", State::Cracked),
    ("out", State::Out),
    ("loose", State::Loose { passes: 0 }),
    ("stub", State::Stub { holds: false }),
    ("stuck", State::Stub { holds: true }),
    ("plugged", State::Plugged),
    ("unplugged", State::Unplugged),
    ("at level", State::AtLevel),
    ("low", State::Low),
    ("done", State::Done),
    ("due", State::Due),
    ("outside", State::Outside),
    ("inside", State::Inside),
];

/// Reads where things stand on a vehicle of this map. Items that the map does not have
/// say what they are with `is`.
///
/// # Errors
/// Everything that is wrong, in the sequence of the text.
pub fn read_state(file: &str, text: &str, map: &Map) -> Result<StateOf, Vec<Trouble>> {
    let mut troubles = Troubles::new(file, text);
    let document = match Document::parse(text) {
        Ok(document) => document,
        Err(error) => {
            syntax::tell(&error, text, &mut troubles);
            return Err(troubles.all);
        }
    };
    let root = Fields {
        table: document.as_table(),
        span: None,
        name: say::the_state().to_owned(),
    };
    root.only(&["at", "items"], &mut troubles);
    let mut out = StateOf {
        at: root.text("at", &mut troubles),
        items: BTreeMap::new(),
    };
    if let Some(items) = root.table("items", &mut troubles) {
        let names: Vec<_> = items.table.iter().map(|(name, _)| name).collect();
        for name in names {
            if let Some(fields) = items.table(name, &mut troubles)
                && let Some(pieces) = read_item(&fields, map, &mut troubles)
            {
                out.items.insert(ItemId::new(name), pieces);
            }
        }
    }
    match troubles.any_error() {
        true => Err(troubles.all),
        false => Ok(out),
    }
}

fn read_item(fields: &Fields, map: &Map, troubles: &mut Troubles) -> Option<Pieces> {
    fields.only(&["is", "stands"], troubles);
    let known = map.items.get(&ItemId::new(&fields.name));
    let said = fields.text("is", troubles);
    let said = said.and_then(|word| KINDS.iter().find(|(known, _)| *known == word));
    let Some(kind) = known.map(|item| item.kind).or(said.map(|(_, kind)| *kind)) else {
        let near = nearest(&fields.name, map.items.keys().map(ItemId::as_str));
        let mend = match near {
            Some(near) => say::near_or_add_kind(near),
            None => say::add_kind_here().to_owned(),
        };
        troubles.error(&fields.span, say::map_has_no(&fields.name), mend);
        return None;
    };
    let count = known.map_or(1, |item| item.count);
    let Some(stands) = fields.item("stands") else {
        troubles.error(
            &fields.span,
            say::not_said_where(&fields.name),
            say::add_stands(),
        );
        return None;
    };
    let mut pieces: BTreeMap<Position, State> = (1..=count).map(|at| (at, kind.home())).collect();
    if let Some(word) = stands.as_str() {
        let state = state(fields, word, kind, troubles)?;
        pieces.values_mut().for_each(|piece| *piece = state);
        return Some((kind, pieces));
    }
    let by_state = fields.table("stands", troubles)?;
    let mut told: BTreeMap<Position, String> = BTreeMap::new();
    for (word, _) in by_state.table.iter() {
        if let Some(state) = state(fields, word, kind, troubles) {
            let most = if known.is_some() {
                count
            } else {
                Position::MAX
            };
            for at in by_state.positions(word, most, troubles) {
                if let Some(other) = told.insert(at, word.to_owned()) {
                    let what = say::stands_both(&fields.name, at, other, word);
                    troubles.error(&by_state.at(word), what, say::take_one_out());
                }
                pieces.insert(at, state);
            }
        }
    }
    Some((kind, pieces))
}

fn state(fields: &Fields, word: &str, kind: Kind, troubles: &mut Troubles) -> Option<State> {
    let fits = |state: &State| kind.states().contains(&state.rung());
    let found = WORDS
        .iter()
        .find(|(known, state)| *known == word && fits(state));
    if found.is_none() {
        let words: Vec<_> = WORDS
            .iter()
            .filter(|(_, state)| fits(state))
            .map(|(word, _)| *word)
            .collect();
        troubles.error(
            &fields.at("stands"),
            say::cannot_stand(&fields.name, word),
            say::write_one_of(words.join(", ")),
        );
    }
    found.map(|(_, state)| *state)
}

/// What in a state cannot well be so, as questions: something is off, and what holds it on is
/// in; one stands where nothing is worked on.
#[must_use]
pub fn questions(map: &Map, state: &StateOf) -> Vec<String> {
    let stands = |item: &ItemId| -> Vec<(Position, State)> {
        match (state.items.get(item), map.items.get(item)) {
            (Some((_, pieces)), _) => pieces.iter().map(|(at, state)| (*at, *state)).collect(),
            (None, Some(known)) => (1..=known.count)
                .map(|at| (at, known.kind.home()))
                .collect(),
            (None, None) => Vec::new(),
        }
    };
    let mut asked = Vec::new();
    for (item, (_, pieces)) in &state.items {
        let Some(known) = map.items.get(item) else {
            continue;
        };
        for step in &known.moves {
            let made = pieces.values().all(|state| state.rung() == step.to.rung());
            let holding = holding(map, &step.need);
            if made && !holding.holds(&stands) {
                asked.push(say::stands_and_yet_not(
                    item,
                    state_called(word(step.to)),
                    said(map, &holding),
                ));
            }
        }
    }
    let places = || map.moves().flat_map(|(_, step)| step.places());
    if let Some(at) = state
        .at
        .as_deref()
        .filter(|at| !places().any(|place| place == *at))
    {
        let near = nearest(at, places());
        asked.push(match near {
            Some(near) => say::is_near_meant(at, near),
            None => say::where_does_one_stand(at),
        });
    }
    asked
}

/// The part of a need that still has to hold afterwards: what must be away. What had to be in
/// place at the time may have gone since.
fn holding(map: &Map, need: &Need) -> Need {
    let at_home = |item: &ItemId, states: &std::collections::BTreeSet<State>| {
        let home = map.items.get(item).map(|known| known.kind.home());
        home.is_none_or(|home| states.contains(&home))
    };
    match need {
        Need::Is { item, states, .. } if at_home(item, states) => Need::All(Vec::new()),
        Need::Is { .. } => need.clone(),
        Need::All(needs) => Need::All(needs.iter().map(|need| holding(map, need)).collect()),
        Need::Any(needs) => Need::Any(needs.iter().map(|need| holding(map, need)).collect()),
    }
}

fn word(state: State) -> &'static str {
    let known = WORDS.iter().find(|(_, known)| *known == state.rung());
    known.map_or("off", |(word, _)| *word)
}

/// Writes where things stand, as [`read_state`] reads it.
#[must_use]
pub fn write_state(state: &StateOf) -> String {
    let mut document = DocumentMut::new();
    if let Some(at) = &state.at {
        document.insert("at", value(at.as_str()));
    }
    let mut items = Table::new();
    items.set_implicit(true);
    for (item, (kind, pieces)) in &state.items {
        let mut fields = Table::new();
        let is = KINDS.iter().find(|(_, known)| known == kind);
        fields.insert("is", value(is.map_or("part", |(word, _)| *word)));
        fields.insert("stands", stands(*kind, pieces));
        items.insert(item.as_str(), Item::Table(fields));
    }
    document.insert("items", Item::Table(items));
    document.to_string()
}

fn stands(kind: Kind, pieces: &BTreeMap<Position, State>) -> Item {
    let mut by_state: BTreeMap<&str, Vec<Position>> = BTreeMap::new();
    for (at, state) in pieces {
        by_state.entry(word(*state)).or_default().push(*at);
    }
    let mut each = by_state.iter();
    match (each.next(), each.next()) {
        (Some((word, _)), None) => value(*word),
        _ => {
            let home = word(kind.home());
            let away = by_state.into_iter().filter(|(word, _)| *word != home);
            let table: InlineTable = away
                .map(|(word, at)| (word, at.into_iter().map(i64::from).collect::<Array>()))
                .collect();
            value(table)
        }
    }
}

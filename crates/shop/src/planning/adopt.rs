//! What an order takes over from a map: its needs and work, and each item as it is
//! first touched.

use super::names::in_order;
use super::work;
use crate::item_line::item_line;
use map::{Map, MapItem};
use record::form::Form;
use record::v1::codes::{KindForm, PutInForm, SystemForm, ZoneForm};
use record::v1::decisions::StatedNeedForm;
use repair::{ItemId, Kind, MapId, Need, State, StatedNeed, System, Token, Written, Zone};
use serde_json::{Value, json};

/// The request by which an order works by a version of a map. `words` makes what stands
/// for a text in a command.
#[must_use]
pub fn adopt(id: &MapId, map: &Map, words: &dyn Fn(&str) -> Value) -> Value {
    let needs: Vec<_> = needs(map).iter().map(StatedNeedForm::of).collect();
    json!({ "adopt": {
        "map": id.as_str(),
        "version": map.version,
        "needs": needs,
        "work": work::stated(map, words),
    } })
}

/// The needs of a map under the names of an order, for the way out and the way home.
///
/// Work is no item of an order. What a tightening needs out of its place is only for
/// room: the torque holds without it, so that it is left out.
#[must_use]
pub fn needs(map: &Map) -> Vec<StatedNeed> {
    let mut out = Vec::new();
    for (item, made) in map.moves() {
        let kind = map.items.get(item).map(|known| known.kind);
        if matches!(kind, None | Some(Kind::Work)) {
            continue;
        }
        let mut state = |to: State, need: Option<&Need>| {
            let need = need.and_then(|need| copied(map, need, to == State::Tight));
            out.extend(need.map(|need| StatedNeed {
                item: in_order(item),
                at: Vec::new(),
                to,
                need,
            }));
        };
        state(made.to, Some(&made.need));
        state(made.from, made.need_back.as_ref());
    }
    out
}

/// A need under an order's names; nothing if nothing of it is left to ask.
fn copied(map: &Map, need: &Need, home_only: bool) -> Option<Need> {
    match need {
        Need::Is { item, at, states } => {
            let kind = map.items.get(item)?.kind;
            let left_out = kind == Kind::Work || home_only && !states.contains(&kind.home());
            (!left_out).then(|| Need::Is {
                item: in_order(item),
                at: at.clone(),
                states: states.clone(),
            })
        }
        Need::All(needs) => {
            let all: Vec<Need> = needs
                .iter()
                .filter_map(|need| copied(map, need, home_only))
                .collect();
            (!all.is_empty()).then_some(Need::All(all))
        }
        // One alternative that asks for nothing makes the whole ask for nothing.
        Need::Any(needs) => needs
            .iter()
            .map(|need| copied(map, need, home_only))
            .collect::<Option<Vec<_>>>()
            .map(Need::Any),
    }
}

/// The fact that tells an order what an item of the map is.
#[must_use]
pub fn declared(map: &Map, item: &ItemId, words: &dyn Fn(&str) -> Value) -> Option<Value> {
    let known = map.items.get(item)?;
    let name = item.as_str();
    let pieces: Vec<Value> = (1..=known.count)
        .map(|position| {
            let length = known.lengths.get(&position).map(measure::Measured::written);
            json!({ "position": position, "length": length })
        })
        .collect();
    let system = known.system.as_deref().and_then(coded::<SystemForm>);
    let zone = known.zone.as_deref().and_then(coded::<ZoneForm>);
    let put_in = item_line(name).put_in.map_or("tool", PutInForm::word);
    let may_miss = known
        .may_miss
        .as_ref()
        .map(|(up_to, never_at)| json!({ "up_to": up_to, "never_at": never_at }));
    Some(json!({ "declared": { "item": {
        "id": in_order(item).as_str(),
        "kind": KindForm::of(&known.kind),
        "system": system.unwrap_or(SystemForm::of(&System::Unknown)),
        "zone": zone.unwrap_or(ZoneForm::of(&Zone::Unknown)),
        "label": words(name),
        "size": known.size.as_deref().and_then(|size| Token::new(size).ok()).map(|size| size.as_str().to_owned()),
        "pieces": pieces,
        "pattern": pattern(map, known, words),
        "spent": known.spent,
        "may_miss": may_miss,
        "put_in": (known.kind == Kind::PutIn).then_some(put_in),
        "holds": known.holds.as_ref().map(measure::Measured::written),
    } } }))
}

/// The passes of a torque with who says so; nothing where the map knows none.
fn pattern(map: &Map, known: &MapItem, words: &dyn Fn(&str) -> Value) -> Option<Value> {
    let written = |pass: &measure::Measured| {
        let pass = Written::new(pass.written()).ok()?;
        Some(pass.as_str().to_owned())
    };
    let passes: Vec<String> = known.torque.iter().filter_map(written).collect();
    let source = torque_source(map, known);
    (!passes.is_empty()).then(|| {
        json!({
            "passes": passes,
            "sequence": [],
            "source": source.map(|source| words(&source)),
        })
    })
}

/// Who says what a torque of the map is, and of which date.
#[must_use]
pub fn torque_source(map: &Map, known: &MapItem) -> Option<String> {
    let source = map.sources.get(known.torque_from.as_ref()?)?;
    Some(format!("{}, {}", source.title, source.date))
}

/// The code of a word of the map, such as `drive belt`.
fn coded<F: serde::de::DeserializeOwned>(word: &str) -> Option<F> {
    serde_json::from_value(Value::from(word.replace(' ', "-"))).ok()
}

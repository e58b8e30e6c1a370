//! The work that a map makes due, as an order owes it.

use super::names::in_order;
use map::{Map, MapMove};
use measure::Dimension;
use record::form::Form;
use record::v1::basics::{StateForm, UntilForm};
use record::v1::codes::WorkIsForm;
use repair::{Account, Gate, ItemId, Until, Work, WorkIs, Written};
use serde_json::{Value, json};

/// The moves that make a work due, each with its item.
pub fn owing<'a>(
    map: &'a Map,
    work: &'a ItemId,
) -> impl Iterator<Item = (&'a ItemId, &'a MapMove)> + 'a {
    map.moves()
        .filter(move |(_, made)| made.owes.contains(work))
}

/// What sort of work an item of the map is: what the map says of it, never what its name
/// sounds like.
#[must_use]
pub fn sort(map: &Map, work: &ItemId) -> WorkIs {
    let stated = map.items.get(work).and_then(|item| item.sort.as_deref());
    match stated.unwrap_or_default() {
        "bleed-brakes" | "bleed-cooling" | "bleed-steering" | "bleed-clutch" => WorkIs::Bleed,
        "level-warm" => WorkIs::LevelWarm,
        "level-cold" => WorkIs::LevelCold,
        "leak-look" | "gas-look" => WorkIs::LookForLeaks,
        "torque" => WorkIs::TorqueAgain,
        "torque-after-distance" => WorkIs::TorqueAfterDistance,
        "pedal-hard" => WorkIs::PumpPedal,
        "relearn" => WorkIs::Relearn,
        "alignment" => WorkIs::Alignment,
        _ => WorkIs::Other,
    }
}

/// Whether work that an order owes is this work of its map.
#[must_use]
pub fn is_work(map: &Map, account: &Account, work: &ItemId, owed: &Work) -> bool {
    let of_item = |item: &ItemId| {
        owing(map, work).any(|(moved, _)| account.moves.name(&in_order(moved)) == item)
    };
    match &owed.named {
        Some(named) => *named == in_order(work),
        // A cold level is the account's own, and so is the work of older adoptions.
        None => {
            owed.own.is_none()
                && owed.work == sort(map, work)
                && owed.work != WorkIs::Other
                && owed.item.as_ref().is_none_or(of_item)
        }
    }
}

/// The work a map makes due, as an adoption copies it. A cold level is left to the
/// account, which knows on what day it can be seen.
#[must_use]
pub fn stated(map: &Map, words: &dyn Fn(&str) -> Value) -> Vec<Value> {
    let pairs = map.moves().flat_map(|(item, made)| {
        let works = made.owes.iter();
        works.map(move |work| (item, made, work))
    });
    pairs
        .filter(|(_, _, work)| sort(map, work) != WorkIs::LevelCold)
        .map(|(item, made, work)| {
            let sort = sort(map, work);
            json!({
                "item": in_order(item).as_str(),
                "to": StateForm::of(&made.to),
                "work": WorkIsForm::of(&sort),
                "words": words(work.as_str()),
                "until": UntilForm::of(&until(map, work, sort)),
                "named": in_order(work).as_str(),
                "sort": map.items.get(work).and_then(|item| item.sort.as_deref()),
            })
        })
        .collect()
}

pub(crate) fn until(map: &Map, work: &ItemId, sort: WorkIs) -> Until {
    let due_after = map
        .items
        .get(work)
        .and_then(|item| item.due_after.as_deref());
    if let Some(due_after) = due_after {
        let distance = measure::read(due_after, Dimension::Length).ok();
        return Until::Later {
            date: None,
            distance: distance.and_then(|_| Written::new(due_after).ok()),
        };
    }
    Until::Before(match sort {
        WorkIs::PumpPedal => Gate::Roll,
        WorkIs::Bleed | WorkIs::TorqueAgain => Gate::Road,
        _ => Gate::HandOver,
    })
}

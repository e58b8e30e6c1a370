//! What of a map no plan reaches, or brings home again.

use super::{Stands, problem, trouble};
use crate::phrases::planning as words;
use map::Map;
use plan::{Budget, PlanError};
use repair::{ItemId, Kind};
use std::collections::BTreeSet;

/// States looked at for each item: maps are small, and what takes longer is not told.
const LOOK: u64 = 50_000;

/// Items that nobody can get at, or whose way back no sequence keeps, each with why; on a
/// vehicle with each of the map's variants, and with none.
#[must_use]
pub fn unreachable(map: &Map) -> Vec<String> {
    let one_each = map.variants.iter().map(|one| BTreeSet::from([one.clone()]));
    let sorts: Vec<BTreeSet<String>> = [BTreeSet::new()].into_iter().chain(one_each).collect();
    let mut told = Vec::new();
    for variants in &sorts {
        let map = map.of_variant(variants);
        for item in map.items.keys() {
            let what = why_not(&map, item).filter(|what| !told.contains(what));
            told.extend(what);
        }
    }
    told
}

fn why_not(map: &Map, item: &ItemId) -> Option<String> {
    let known = map.items.get(item)?;
    if known.kind == Kind::Work || known.due_after.is_some() || known.moves.is_empty() {
        return None;
    }
    let problem = problem(map, std::slice::from_ref(item), &Stands::new());
    match plan::plan(&problem, Budget { expansions: LOOK }) {
        Ok(found) if found.no_way_back.is_empty() => None,
        Ok(found) => {
            let stuck: Vec<String> = found
                .no_way_back
                .iter()
                .map(|id| super::move_words(map, id))
                .collect();
            Some(words::no_legal_way_back(item, stuck.join(", ")))
        }
        // Too large, or too long to look through: nothing is said.
        Err(PlanError::TooManyMoves { .. } | PlanError::BudgetSpent { .. }) => None,
        Err(error) => Some(words::nobody_gets_at(item, trouble(map, &error).what)),
    }
}

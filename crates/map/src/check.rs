//! Whether every move of a map can be reached by starting from what is free.

use crate::fields::Fields;
use crate::trouble::{Span, Troubles};
use crate::value::{Map, MapMove};
use states::{ItemId, Need, State};
use std::collections::{BTreeMap, BTreeSet};

/// The states each item has come to have, if what once held holds for ever.
type Had = BTreeMap<ItemId, BTreeSet<State>>;

/// Reports moves that nothing free can ever support, on any vehicle the map is for, and
/// alternatives that can never support anything.
pub(crate) fn check(map: &Map, root: &Fields, troubles: &mut Troubles) {
    let one_each = map.variants.iter().map(|variant| [variant.clone()].into());
    let some: Vec<BTreeSet<String>> = match map.variants.is_empty() {
        true => Vec::new(),
        false => one_each.chain([BTreeSet::new()]).collect(),
    };
    check_reach(map, "", root, troubles);
    for variants in some {
        if troubles.any_error() {
            return;
        }
        let names: Vec<_> = variants.iter().map(String::as_str).collect();
        let on = match names.as_slice() {
            [] => "on a vehicle with no variant, ".to_owned(),
            names => format!("on a vehicle with {}, ", names.join(" and ")),
        };
        check_reach(&map.of_variant(&variants), &on, root, troubles);
    }
    if !troubles.any_error() {
        for (item, step) in map.moves() {
            warn_of_useless(map, item, step, root, troubles);
        }
    }
}

fn check_reach(map: &Map, on: &str, root: &Fields, troubles: &mut Troubles) {
    let (had, made) = reach(map, None);
    let mut told = BTreeSet::new();
    for (item, step) in map.moves() {
        if made.contains(step.id.as_str()) {
            continue;
        }
        let circle = circle(map, &had, step);
        let span = span_of(root, item, troubles);
        let first = circle.iter().min().copied().unwrap_or(&step.id).to_owned();
        if circle.is_empty() {
            let missing = missing(&step.need, &had);
            let what = format!("{on}`{}` can never be reached: {missing}", step.id);
            troubles.error(
                &span,
                what,
                "state another way as `any`, or mend what it needs",
            );
        } else if told.insert(first) {
            let names: Vec<_> = circle.iter().chain(circle.first()).copied().collect();
            let what = format!(
                "{on}these moves wait for each other: {}",
                names.join(" needs ")
            );
            troubles.error(
                &span,
                what,
                "take one need away, or state another way as `any`",
            );
        }
    }
}

fn span_of(root: &Fields, item: &ItemId, troubles: &mut Troubles) -> Span {
    let items = root.table("items", troubles)?;
    items.table(item.as_str(), troubles)?.span
}

/// What can be reached without one move, if one is named, and the moves that can be made.
fn reach<'m>(map: &'m Map, without: Option<&str>) -> (Had, BTreeSet<&'m str>) {
    let mut had: Had = map
        .items
        .iter()
        .map(|(id, item)| (id.clone(), [item.kind.home()].into()))
        .collect();
    let mut made = BTreeSet::new();
    loop {
        let before = made.len();
        for (item, step) in map.moves() {
            let free = had
                .get(item)
                .is_some_and(|states| states.contains(&step.from));
            let open = Some(step.id.as_str()) != without && !made.contains(step.id.as_str());
            if open && free && holds(&step.need, &had) {
                made.insert(step.id.as_str());
                had.entry(item.clone()).or_default().insert(step.to);
            }
        }
        if made.len() == before {
            return (had, made);
        }
    }
}

fn holds(need: &Need, had: &Had) -> bool {
    match need {
        Need::Is { item, states, .. } => had.get(item).is_some_and(|had| !had.is_disjoint(states)),
        Need::All(needs) => needs.iter().all(|need| holds(need, had)),
        Need::Any(needs) => needs.iter().any(|need| holds(need, had)),
    }
}

/// The first part of a need that was never met.
fn unmet<'n>(need: &'n Need, had: &Had) -> Option<&'n Need> {
    match need {
        Need::All(needs) => needs.iter().find_map(|need| unmet(need, had)),
        Need::Is { .. } | Need::Any(_) => (!holds(need, had)).then_some(need),
    }
}

fn missing(need: &Need, had: &Had) -> String {
    let items = unmet(need, had).map(Need::items).unwrap_or_default();
    let names: Vec<_> = items.iter().map(|item| item.as_str()).collect();
    match names.as_slice() {
        [] => "the move before it cannot be made".to_owned(),
        names => format!("{} never comes to stand as needed", names.join(" or ")),
    }
}

/// Follows what a move waits for until a move comes again; empty if it ends elsewhere.
fn circle<'m>(map: &'m Map, had: &Had, from: &'m MapMove) -> Vec<&'m str> {
    let mut path = vec![from.id.as_str()];
    let mut at = from;
    loop {
        let Some(need) = unmet(&at.need, had) else {
            return Vec::new();
        };
        let wanted = need.items();
        let next = map.moves().find(|(item, step)| {
            let had = had.get(*item);
            wanted.contains(item) && had.is_some_and(|had| !had.contains(&step.to))
        });
        let Some((_, next)) = next else {
            return Vec::new();
        };
        if let Some(met) = path.iter().position(|id| *id == next.id) {
            return path.split_off(met);
        }
        path.push(&next.id);
        at = next;
    }
}

/// An alternative that holds only once the move itself is made can never support it.
fn warn_of_useless(
    map: &Map,
    item: &ItemId,
    step: &MapMove,
    root: &Fields,
    troubles: &mut Troubles,
) {
    let mut alternatives = Vec::new();
    collect(&step.need, &mut alternatives);
    if alternatives.is_empty() {
        return;
    }
    let (had, _) = reach(map, Some(&step.id));
    for need in alternatives.into_iter().filter(|need| !holds(need, &had)) {
        let names: Vec<_> = need.items().iter().map(|item| item.as_str()).collect();
        let what = format!(
            "`{}` has an alternative by {} that can never support it",
            step.id,
            names.join(" and ")
        );
        let span = span_of(root, item, troubles);
        troubles.warn(
            &span,
            what,
            "take the alternative out, or mend what it needs",
        );
    }
}

fn collect<'n>(need: &'n Need, into: &mut Vec<&'n Need>) {
    match need {
        Need::Is { .. } => {}
        Need::All(needs) => needs.iter().for_each(|need| collect(need, into)),
        Need::Any(needs) => {
            into.extend(needs);
            needs.iter().for_each(|need| collect(need, into));
        }
    }
}

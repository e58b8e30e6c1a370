//! What people said of a kind of vehicle: answers, names that mean one thing, values chosen;
//! and what its maps state.

use super::kind::VehicleKind;
use crate::snapshot::Snapshot;
use crate::words::ERASED;
use lessons::{About, Answers, Joins, Step};
use map::{Map, MapItem};
use repair::{CommandId, CouldBe, ItemId, MapDrafts, MapFact, Stamp, State, Words};
use states::Need;
use std::collections::{BTreeMap, BTreeSet};

/// The words behind a name; nothing where they were erased.
fn name(snap: &Snapshot<'_>, words: Words) -> Option<ItemId> {
    let text = snap.texts().text(words);
    let text = text.trim();
    (!text.is_empty() && text != ERASED).then(|| ItemId::new(text))
}

/// Two names, the lesser first.
type Pair = (ItemId, ItemId);

/// What was said of two names: whether they mean one thing, which is kept, by which commands.
pub(super) struct SaidOfNames {
    pub same: bool,
    pub other: ItemId,
    pub kept: ItemId,
    pub seen: Vec<CommandId>,
}

/// What was said of names, by the two names.
pub(super) fn of_names(snap: &Snapshot<'_>, said: &MapDrafts) -> BTreeMap<Pair, SaidOfNames> {
    let both = |fact: &MapFact| {
        let MapFact::NamesJoined {
            name: kept,
            other,
            same,
            ..
        } = fact
        else {
            return None;
        };
        Some((name(snap, *other)?, name(snap, *kept)?, *same))
    };
    let key = |fact: &MapFact| {
        let (other, kept, _) = both(fact)?;
        Some(match other < kept {
            true => (other, kept),
            false => (kept, other),
        })
    };
    let of = |(pair, (_, fact, seen)): (Pair, (&Stamp, &MapFact, Vec<CommandId>))| {
        let (other, kept, same) = both(fact)?;
        let said = SaidOfNames {
            same,
            other,
            kept,
            seen,
        };
        Some((pair, said))
    };
    said.said(key).into_iter().filter_map(of).collect()
}

/// The names that people joined: the other, then the one that is kept.
pub(super) fn joined(snap: &Snapshot<'_>, said: &MapDrafts) -> BTreeSet<(ItemId, ItemId)> {
    let said = of_names(snap, said).into_values();
    said.filter(|one| one.same)
        .map(|one| (one.other, one.kept))
        .collect()
}

/// An answer about two steps, with who gave it.
#[derive(Debug, Clone)]
pub(super) struct Answered {
    pub first: Step,
    pub second: Step,
    pub answer: CouldBe,
    pub by: Stamp,
    pub seen: Vec<CommandId>,
}

/// The answers that stand, by the names that the steps go by.
pub(super) fn answered(snap: &Snapshot<'_>, said: &MapDrafts, joins: &Joins) -> Vec<Answered> {
    let step = |words: Words, to: State| {
        let item = joins.name(&name(snap, words)?).clone();
        Some(Step {
            item,
            to: to.rung(),
        })
    };
    let steps = |fact: &MapFact| match fact {
        MapFact::Answered {
            first,
            first_to,
            second,
            second_to,
            ..
        } => Some((step(*first, *first_to)?, step(*second, *second_to)?)),
        _ => None,
    };
    let of = |((first, second), (by, fact, seen)): (
        (Step, Step),
        (&Stamp, &MapFact, Vec<CommandId>),
    )| match fact {
        MapFact::Answered { answer, .. } => Some(Answered {
            first,
            second,
            answer: *answer,
            by: by.clone(),
            seen,
        }),
        _ => None,
    };
    said.said(steps).into_iter().filter_map(of).collect()
}

/// What people said about the sequence: their answers, and what the kind's maps state.
pub(super) fn answers(snap: &Snapshot<'_>, kind: &VehicleKind, joins: &Joins) -> Answers {
    let mut out = Answers::default();
    for one in answered(snap, &kind.said, joins) {
        let pair = (one.first, one.second);
        match one.answer {
            CouldBe::Yes => out.not_needed.insert(pair),
            CouldBe::No => out.needed.insert(pair),
            CouldBe::CannotSay => out.unsaid.insert(pair),
        };
    }
    for map in kind.maps.iter().filter_map(|kept| kept.sound().ok()) {
        stated(map, joins, &mut out);
    }
    out
}

/// What a map states of the sequence. What it was taught by jobs is no statement.
fn stated(map: &Map, joins: &Joins, out: &mut Answers) {
    let step = |item: &ItemId, known: &MapItem| Step {
        item: joins.name(item).clone(),
        to: known.kind.away(),
    };
    for (item, known) in map.items.iter().filter(|(_, known)| !known.as_seen) {
        let Some(first_move) = known.moves.first() else {
            continue;
        };
        let all = match &first_move.need {
            Need::All(all) => all.as_slice(),
            one => std::slice::from_ref(one),
        };
        for need in all {
            let Need::Is {
                item: first,
                at,
                states,
            } = need
            else {
                continue;
            };
            let Some(other) = map.items.get(first) else {
                continue;
            };
            if at.is_empty() && states.contains(&other.kind.away()) {
                out.needed.insert((step(first, other), step(item, known)));
            }
        }
    }
    let both = |(one, other): &(ItemId, ItemId)| {
        let (a, b) = (map.items.get(one)?, map.items.get(other)?);
        Some((step(one, a), step(other, b)))
    };
    out.needed.extend(map.settled.first.iter().filter_map(both));
    for (one, other) in map.settled.either_way.iter().filter_map(both) {
        out.not_needed.insert((one.clone(), other.clone()));
        out.not_needed.insert((other, one));
    }
}

/// A respect in which something is told, as a code, with its position.
pub(super) fn about_code(about: About) -> (&'static str, Option<u16>) {
    match about {
        About::Count => ("count", None),
        About::Size => ("size", None),
        About::Length(at) => ("length", Some(at)),
        About::Torque => ("torque", None),
        About::Place => ("place", None),
        About::Tool => ("tool", None),
        About::Spent => ("spent", None),
        About::Owes => ("owes", None),
    }
}

/// The code under which people choose what an item is: a cover, a hose.
pub(super) const KIND: &str = "kind";

/// The item, the respect as a code, and the position, that a value was chosen for.
pub(super) type ChosenOf = (ItemId, String, Option<u16>);

/// The values that people chose where several were told, with the commands that did.
pub(super) fn chosen(
    snap: &Snapshot<'_>,
    said: &MapDrafts,
    joins: &Joins,
) -> BTreeMap<ChosenOf, (String, Stamp, Vec<CommandId>)> {
    let key = |fact: &MapFact| match fact {
        MapFact::ValueChosen {
            item, about, at, ..
        } => {
            let item = joins.name(&name(snap, *item)?).clone();
            Some((item, about.as_str().to_owned(), *at))
        }
        _ => None,
    };
    let of = |(key, (by, fact, seen)): (ChosenOf, (&Stamp, &MapFact, Vec<CommandId>))| match fact {
        MapFact::ValueChosen { value, .. } => {
            Some((key, (snap.texts().text(*value), by.clone(), seen)))
        }
        _ => None,
    };
    said.said(key).into_iter().filter_map(of).collect()
}

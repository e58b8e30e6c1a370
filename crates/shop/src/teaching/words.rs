//! What jobs have taught, in words.

use super::job::{THE_MAP, THE_TRADE};
use crate::say;
use crate::snapshot::Snapshot;
use lessons::{About, Alike, Contradiction, SameName, Step};
use repair::{Kind, PersonId, State};
use std::collections::BTreeSet;

/// A question as one asks it across the shop.
pub(super) fn could(first: &Step, second: &Step) -> String {
    let does = match second.to {
        State::Off => "come off",
        State::Out => "come out",
        State::Cracked => "be cracked loose",
        State::Unplugged => "be unplugged",
        State::Low => "be drained",
        State::Inside => "go in",
        _ => "be done",
    };
    let before = match first.to {
        State::Cracked => " are cracked loose",
        State::Unplugged => " is unplugged",
        State::Low => " is drained",
        State::Inside => " is in",
        _ => "",
    };
    format!(
        "Could the {} {does} before the {}{before}?",
        second.item, first.item
    )
}

/// What is done with a thing that comes to a state.
pub(super) fn done(to: State) -> &'static str {
    match to {
        State::Low => "drained",
        State::Inside => "put in",
        State::Cracked => "cracked loose",
        other => say::state(Kind::Part, other),
    }
}

pub(super) fn about_words(about: About) -> String {
    match about {
        About::Count => "how many".to_owned(),
        About::Size => "size".to_owned(),
        About::Length(at) => format!("length at {at}"),
        About::Torque => "torque".to_owned(),
        About::Place => "where".to_owned(),
        About::Tool => "tool".to_owned(),
        About::Spent => "goes back".to_owned(),
        About::Owes => "owed after it".to_owned(),
    }
}

pub(super) fn alike(same: &SameName) -> String {
    let why = match &same.alike {
        Alike::SameWords => "the same words".to_owned(),
        Alike::Plural => "one and many".to_owned(),
        Alike::Meaning { sort } => format!("both are {}", sort.replace('-', " ")),
        Alike::Spelling { letters: 1 } => "one letter differs".to_owned(),
        Alike::Spelling { letters } => format!("{letters} letters differ"),
    };
    format!(
        "{why}; in {} and {}",
        jobs(same.times.0),
        jobs(same.times.1)
    )
}

pub(super) fn circle(one: &Contradiction) -> String {
    let (first, second, what) = match one {
        Contradiction::Answers { first, second } => (
            first,
            second,
            "answers exclude each other; until somebody answers again it counts as needed",
        ),
        Contradiction::Circle { first, second } => (
            first,
            second,
            "the orders go round in a circle; this is the least sure of it and was left out",
        ),
    };
    format!(
        "{} {} before {} {}: {what}",
        first.item,
        done(first.to),
        second.item,
        done(second.to)
    )
}

/// So many jobs, in words.
pub(super) fn jobs(times: u32) -> String {
    match times {
        1 => "1 order".to_owned(),
        _ => format!("{times} orders"),
    }
}

/// People by their first names, sources by their titles.
pub(super) fn people(snap: &Snapshot<'_>, by: &BTreeSet<String>) -> String {
    let names: Vec<String> = by.iter().map(|who| person(snap, who)).collect();
    match names.split_last() {
        Some((last, rest)) if !rest.is_empty() => format!("{} and {last}", rest.join(", ")),
        Some((last, _)) => last.clone(),
        None => "nobody named".to_owned(),
    }
}

pub(super) fn person(snap: &Snapshot<'_>, who: &str) -> String {
    if who.is_empty() || who == THE_MAP || who == THE_TRADE {
        let who = if who.is_empty() { "nobody named" } else { who };
        return who.to_owned();
    }
    let people = snap.world().shop.everyone();
    let known = people.get(&PersonId::new(who));
    known.map_or_else(
        || who.to_owned(),
        |(name, _)| {
            let name = snap.texts().text(*name);
            name.split_whitespace().next().unwrap_or(&name).to_owned()
        },
    )
}

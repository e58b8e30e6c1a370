//! What jobs have taught, in words.

use super::job::{A_NEW_ONE, THE_MAP, THE_TRADE};
use crate::phrases::teaching as told;
use crate::say;
use crate::snapshot::Snapshot;
use lessons::{About, Alike, Contradiction, SameName, Step};
use repair::{Kind, PersonId, State};
use std::collections::BTreeSet;

/// A question as one asks it across the shop.
pub(super) fn could(first: &Step, second: &Step) -> String {
    let before = match first.to {
        State::Cracked => told::are_cracked(&first.item),
        State::Unplugged => told::is_unplugged(&first.item),
        State::Low => told::is_drained(&first.item),
        State::Inside => told::is_in(&first.item),
        _ => first.item.to_string(),
    };
    let what = &second.item;
    match second.to {
        State::Off => told::could_come_off(what, before),
        State::Out => told::could_come_out(what, before),
        State::Cracked => told::could_be_cracked(what, before),
        State::Unplugged => told::could_be_unplugged(what, before),
        State::Low => told::could_be_drained(what, before),
        State::Inside => told::could_go_in(what, before),
        _ => told::could_be_done(what, before),
    }
}

/// What is done with a thing that comes to a state.
pub(super) fn done(to: State) -> &'static str {
    match to {
        State::Low => told::drained(),
        State::Inside => told::put_in(),
        State::Cracked => told::cracked_loose(),
        other => say::state(Kind::Part, other),
    }
}

pub(super) fn about_words(about: About) -> String {
    match about {
        About::Count => told::how_many().to_owned(),
        About::Size => told::size().to_owned(),
        About::Length(at) => told::length_at(at),
        About::Torque => told::torque().to_owned(),
        About::Place => told::place().to_owned(),
        About::Tool => told::tool().to_owned(),
        About::Spent => told::goes_back().to_owned(),
        About::Owes => told::owed_after_it().to_owned(),
    }
}

/// What was told in some respect: what the program itself calls so is said in what is spoken.
pub(super) fn value_words(about: About, value: &str) -> String {
    match about {
        About::Spent if value == A_NEW_ONE => told::a_new_one().to_owned(),
        About::Owes => crate::trade_read::work_spoken(value),
        _ => value.to_owned(),
    }
}

/// A kind of thing by the word that is kept of it.
pub(super) fn kind_words(word: &str) -> String {
    map::kind_of(word).map_or_else(|| word.to_owned(), |kind| kind_name(kind).to_owned())
}

/// A kind of thing.
pub(crate) fn kind_name(kind: Kind) -> &'static str {
    match kind {
        Kind::Part => told::kind_part(),
        Kind::Cover => told::kind_cover(),
        Kind::Hose => told::kind_hose(),
        Kind::Seal => told::kind_seal(),
        Kind::Belt => told::kind_belt(),
        Kind::Fasteners => told::kind_fasteners(),
        Kind::Clips => told::kind_clips(),
        Kind::Connector => told::kind_connector(),
        Kind::Fluid => told::kind_fluid(),
        Kind::Work => told::kind_work(),
        Kind::PutIn => told::kind_put_in(),
    }
}

pub(super) fn alike(same: &SameName) -> String {
    let why = match &same.alike {
        Alike::SameWords => told::the_same_words().to_owned(),
        Alike::Plural => told::one_and_many().to_owned(),
        Alike::Meaning { sort } => told::both_are(sort.replace('-', " ")),
        Alike::Spelling { letters } => told::letters_differ(*letters),
    };
    told::in_orders(why, told::orders(same.times.0), told::orders(same.times.1))
}

pub(super) fn circle(one: &Contradiction) -> String {
    let step = |step: &Step| told::step(&step.item, done(step.to));
    match one {
        Contradiction::Answers { first, second } => {
            told::answers_exclude(step(first), step(second))
        }
        Contradiction::Circle { first, second } => {
            told::goes_in_a_circle(step(first), step(second))
        }
    }
}

/// People by their first names, sources by their titles.
pub(super) fn people(snap: &Snapshot<'_>, by: &BTreeSet<String>) -> String {
    let names: Vec<String> = by.iter().map(|who| person(snap, who)).collect();
    match names.split_last() {
        Some((last, rest)) if !rest.is_empty() => told::and(rest.join(", "), last),
        Some((last, _)) => last.clone(),
        None => told::nobody_named().to_owned(),
    }
}

pub(super) fn person(snap: &Snapshot<'_>, who: &str) -> String {
    match who {
        "" => return told::nobody_named().to_owned(),
        THE_MAP => return told::the_map().to_owned(),
        THE_TRADE => return told::the_trade().to_owned(),
        _ => {}
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

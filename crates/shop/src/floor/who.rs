//! Who works on vehicles, when, and who can do an order's work.

use super::calendar::Calendar;
use crate::phrases::floor as words;
use crate::say::in_each::InEach;
use crate::say::system_name;
use crate::snapshot::Snapshot;
use repair::{PersonId, Role, System};
use stalls::{Person, Windows};
use std::collections::BTreeSet;

/// Who can do an order's work: those who are told to, and all who know how.
pub struct Able {
    pub told: Vec<usize>,
    pub all: Vec<usize>,
}

/// On the floor a skill is who can do one order's work: these words, and its number.
pub const TOLD: &str = "told for order ";
pub const ABLE: &str = "able to do order ";

/// Names that tell people or stalls apart, whatever they are called.
pub fn unique(names: impl Iterator<Item = String>) -> Vec<String> {
    let mut out: Vec<String> = Vec::new();
    for name in names {
        let name = match name.trim() {
            "" => "without a name".to_owned(),
            name => name.to_owned(),
        };
        let nth = (2..).map(|nth| format!("{name} ({nth})"));
        let free = std::iter::once(name.clone())
            .chain(nth)
            .find(|one| !out.contains(one));
        out.extend(free);
    }
    out
}

/// Who works on vehicles, and whoever is named for one, with their hours; where somebody has to
/// hold and hand, who learns as well.
pub fn people(
    snap: &Snapshot<'_>,
    calendar: &Calendar,
    opening: &Windows,
    named: &BTreeSet<&PersonId>,
    helps: bool,
) -> (Vec<PersonId>, Vec<Person>) {
    let shop = &snap.world().shop;
    let all: Vec<_> = shop
        .people()
        .into_iter()
        .filter(|(person, (_, roles))| {
            works(roles) || named.contains(person) || helps && roles.contains(&Role::Apprentice)
        })
        .collect();
    let names = unique(all.iter().map(|(_, (name, _))| snap.texts().text(*name)));
    let people = all.iter().zip(names).map(|((person, _), name)| {
        let own = shop.hours(Some(person));
        Person {
            name,
            skills: Vec::new(),
            hours: own.map_or_else(|| opening.clone(), |week| calendar.windows(week)),
            away: calendar.off(shop, Some(person)),
        }
    });
    let people = people.collect();
    let ids = all.into_iter().map(|(person, _)| person.clone());
    (ids.collect(), people)
}

/// Who learns does what they are told to and helps, and is given nothing else.
fn works(roles: &[Role]) -> bool {
    roles.contains(&Role::Technician)
}

/// Who can do it, by their places on the floor: those who are told to, if they know how; without
/// either, every technician.
///
/// # Errors
/// Why nobody can, and the page of the order where that is told.
pub fn able(
    snap: &Snapshot<'_>,
    people: &[PersonId],
    assigned: &BTreeSet<PersonId>,
    skill: Option<System>,
) -> Result<Able, (InEach, &'static str)> {
    let shop = &snap.world().shop;
    let known = shop.people();
    let told = |person: &PersonId| assigned.contains(person);
    let some_told = people.iter().any(told);
    let can = |person: &PersonId| {
        let works = known.get(person).is_some_and(|(_, roles)| works(roles));
        let knows = skill.is_none_or(|skill| shop.works_on(person).contains(&skill));
        (works || told(person)) && knows
    };
    let all: Vec<usize> = (0..people.len()).filter(|at| can(&people[*at])).collect();
    let own = all.iter().copied();
    let able = Able {
        told: own.filter(|at| !some_told || told(&people[*at])).collect(),
        all,
    };
    if !able.told.is_empty() {
        return Ok(able);
    }
    let Some(skill) = skill else {
        return Err((InEach::of(words::only_who_learns), "#place"));
    };
    let names: Vec<String> = people
        .iter()
        .filter(|person| told(person))
        .filter_map(|person| Some(snap.texts().text(known.get(person)?.0)))
        .collect();
    let why = match names.is_empty() {
        true => InEach::of(|| words::nobody_knows(system_name(skill))),
        false => InEach::of(|| words::told_does_not_know(names.join(", "), system_name(skill))),
    };
    Err((why, "promise"))
}

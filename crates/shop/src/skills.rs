//! What people who learn have done, under whose eyes and how often; and what people can do, in
//! a table that the shop writes itself.

use crate::history::done_by;
use crate::phrases::shop as words;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::words::ERASED;
use record::form::Form;
use record::v1::codes::CanForm;
use repair::{Can, CommandId, PersonId, Role, ShopFact};
use std::collections::{BTreeMap, BTreeSet};

/// Who is shown everybody's: who leads the work.
const LEADS: &[Role] = &[Role::Owner, Role::Foreman];

/// What people can do and have done.
#[derive(Debug, Clone, PartialEq)]
pub struct Skills {
    /// The people, by their names in the record, with what they are called.
    pub people: Vec<(String, String)>,
    /// The table: a row for each piece of work that the shop has named.
    pub rows: Vec<SkillRow>,
    /// What people who learn have done.
    pub learners: Vec<Learner>,
    /// Whether who asks may write the table.
    pub may_write: bool,
}

/// A piece of work, and what each person can do of it.
#[derive(Debug, Clone, PartialEq)]
pub struct SkillRow {
    /// The work.
    pub skill: String,
    /// In the sequence of the people.
    pub cells: Vec<SkillCell>,
}

/// What one person can do of a piece of work.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct SkillCell {
    /// What was said; nothing where nobody did.
    pub can: Option<CanForm>,
    /// Who said so, and on which day.
    pub by: String,
    /// The commands seen, for a device to name.
    pub seen: Vec<String>,
}

/// What somebody who learns has done.
#[derive(Debug, Clone, PartialEq)]
pub struct Learner {
    /// What they are called.
    pub name: String,
    /// Each sort of work, what was done most first.
    pub did: Vec<Did>,
}

/// A sort of work that somebody did.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Did {
    /// What.
    pub what: String,
    /// On how many orders.
    pub times: usize,
    /// Who looked on or checked it, and how often.
    pub eyes: Vec<(String, usize)>,
    /// On how many orders nobody did.
    pub unseen: usize,
    /// The orders, the newest first.
    pub orders: Vec<u64>,
}

/// What people can do and have done. Who does not lead the work sees their own.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn skills(snap: &Snapshot<'_>) -> Result<Skills, Trouble> {
    let shop = &snap.world().shop;
    let leads = snap.caller().has_any(LEADS);
    let own = |person: &PersonId| snap.caller().person.as_ref() == Some(person);
    let people: Vec<(&PersonId, String, &[Role])> = shop
        .people()
        .into_iter()
        .filter(|(person, _)| leads || own(person))
        .map(|(person, (name, roles))| (person, snap.texts().text(name), roles))
        .collect();
    let learn = people
        .iter()
        .filter(|(.., roles)| roles.contains(&Role::Apprentice));
    let learners = learn
        .map(|(person, name, _)| {
            Ok(Learner {
                name: name.clone(),
                did: did(snap, person)?,
            })
        })
        .collect::<Result<_, Trouble>>()?;
    Ok(Skills {
        rows: rows(snap, &people),
        people: people
            .iter()
            .map(|(person, name, _)| (person.as_str().to_owned(), name.clone()))
            .collect(),
        learners,
        may_write: leads,
    })
}

fn rows(snap: &Snapshot<'_>, people: &[(&PersonId, String, &[Role])]) -> Vec<SkillRow> {
    let shop = &snap.world().shop;
    let names = shop.everyone();
    let name = |words| {
        let text = snap.texts().text(words).trim().to_owned();
        (!text.is_empty() && text != ERASED).then_some(text)
    };
    let told = shop.skills(name);
    let all: BTreeSet<&String> = told.keys().map(|(skill, _)| skill).collect();
    let cell = |skill: &String, person: &PersonId| {
        let Some((stamp, fact, seen)) = told.get(&(skill.clone(), person)) else {
            return SkillCell::default();
        };
        let ShopFact::SkillTold { can, .. } = fact else {
            return SkillCell::default();
        };
        let by = names.get(&stamp.who);
        let by = by.map_or_else(String::new, |(name, _)| snap.texts().text(*name));
        SkillCell {
            can: Some(CanForm::of(can)),
            by: format!("{by}, {}", snap.rules().day(stamp.at)),
            seen: seen
                .iter()
                .map(|seen: &CommandId| seen.as_str().to_owned())
                .collect(),
        }
    };
    let row = |skill: &String| SkillRow {
        skill: skill.clone(),
        cells: people
            .iter()
            .map(|(person, ..)| cell(skill, person))
            .collect(),
    };
    all.into_iter().map(row).collect()
}

/// What somebody did on finished orders.
fn did(snap: &Snapshot<'_>, person: &PersonId) -> Result<Vec<Did>, Trouble> {
    let names = snap.world().shop.everyone();
    let name = |who: &String| {
        let known = names.get(&PersonId::new(who));
        known.map_or_else(|| who.clone(), |(name, _)| snap.texts().text(*name))
    };
    let mut all: BTreeMap<String, (Did, BTreeMap<String, usize>)> = BTreeMap::new();
    for (number, what, eyes) in done_by(snap, person.as_str())? {
        let (did, seen) = all.entry(what.clone()).or_default();
        did.what = what;
        did.times += 1;
        did.orders.push(number);
        did.unseen += usize::from(eyes.is_empty());
        for who in &eyes {
            *seen.entry(name(who)).or_default() += 1;
        }
    }
    let mut out: Vec<Did> = all
        .into_values()
        .map(|(did, seen)| Did {
            eyes: seen.into_iter().collect(),
            ..did
        })
        .collect();
    out.sort_by(|a, b| b.times.cmp(&a.times).then_with(|| a.what.cmp(&b.what)));
    Ok(out)
}

/// What somebody can do, in words.
#[must_use]
pub fn can_words(can: &CanForm) -> &'static str {
    match can {
        CanForm::NotYet => words::can_not_yet(),
        CanForm::Watched => words::can_watched(),
        CanForm::Alone => words::can_alone(),
        CanForm::Teaches => words::can_teach(),
    }
}

/// Every answer that the table takes, with its code.
#[must_use]
pub fn all_can() -> [(&'static str, &'static str); 4] {
    [Can::NotYet, Can::Watched, Can::Alone, Can::Teaches]
        .map(|can| (CanForm::word(can), can_words(&CanForm::of(&can))))
}

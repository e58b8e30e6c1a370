//! The shop's real days: the floor built from the record, planned, and held against its promises.
//!
//! What nobody told stays unknown: an order without minutes, or whose part comes nobody knows
//! when, is left out and said. The plan is kept as long as nothing that it follows from has
//! changed and time has not passed it by, so that looking at it changes nothing.

mod build;
mod calendar;
mod fits;
mod keep;
mod left;
mod spread;
mod waits;
mod what_if;
mod who;
mod worked;

pub use build::{NotPlanned, Planned, Unchecked};
pub use calendar::Calendar;
pub use fits::{HEIGHT, WEIGHT, reads};
pub use keep::ToKeep;
pub use left::Source;
pub use stalls::{Spread, StallNeed};
pub use what_if::{Further, Line, Other, Own, WhatIf, roll_out, take_in, waits_apart};
pub(crate) use worked::{NEAR, worked};

use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
pub(crate) use build::COMES_LATE;
use build::{Built, build};
use jiff::Timestamp;
use phrases::{Language, speaking};
use repair::PersonId;
use stalls::{Ask, Fault, Floor, Minute, Outlook, Plan, Policy, Promise, Windows};
use std::sync::{Arc, Mutex, PoisonError};

/// So many plans are looked at: a count and no time, so that the same record gives the same plan.
const PLANS: u64 = 400;
const SEED: u64 = 1;

/// A promise that is kept less often than this slips.
pub const SLIPS: f64 = 0.5;

/// So long after its time work may begin before the plan is made anew.
const GRACE: Minute = 15;

/// The days ahead, as they are planned.
pub struct DayPlan {
    pub plan: Plan,
    pub calendar: Calendar,
    /// The orders of the plan's floor, by their place in it.
    pub orders: Vec<Planned>,
    /// The people of the plan's floor, by their place in it.
    pub people: Vec<PersonId>,
    pub promises: Vec<Promise>,
    /// What to move so that promises that slip are kept.
    pub to_keep: Vec<ToKeep>,
    outlook: Arc<Outlook>,
}

/// What came of planning.
pub struct Days {
    /// The plan; nothing where it can't be made, or nothing is to be done.
    pub plan: Option<Arc<DayPlan>>,
    /// Orders that are left out, each with why.
    pub not_planned: Vec<NotPlanned>,
    /// What keeps all of it from being planned.
    pub missing: Vec<String>,
    /// What is planned on; nothing where that is not known.
    pub ground: Option<Arc<Ground>>,
}

/// The stalls, the people and their hours, whatever is to be done.
pub struct Ground {
    /// With its orders, if there are any.
    pub floor: Floor,
    pub calendar: Calendar,
    /// The people of the floor, by their place in it.
    pub people: Vec<PersonId>,
}

/// A plan that is kept, with what it follows from.
#[derive(Default)]
struct Kept {
    /// Where the log stood and what the clock showed when it was looked at last.
    looked: Option<(u64, Timestamp)>,
    /// The same in every language, in the sequence of [`Language::ALL`].
    days: Option<[Arc<Days>; Language::ALL.len()]>,
    news: String,
}

type Shelf = Mutex<Kept>;

/// The days ahead.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn days(snap: &Snapshot<'_>) -> Result<Arc<Days>, Trouble> {
    let shelf = snap.shelf::<Shelf>();
    // Held while it is planned: who comes meanwhile waits for the same plan.
    let mut kept = shelf.lock().unwrap_or_else(PoisonError::into_inner);
    let looked = (snap.world().position, minute(snap.now()));
    if kept.looked == Some(looked)
        && let Some(days) = &kept.days
    {
        return Ok(in_what_is_spoken(days));
    }
    let built = build(snap)?;
    let days = match kept.days.take() {
        Some(days) if kept.news == built.news && !passed_by(&days[0], &built) => days,
        before => {
            let before = before.and_then(|[days, ..]| days.plan.clone());
            kept.news.clone_from(&built.news);
            made(built, before.as_deref())
        }
    };
    kept.looked = Some(looked);
    let spoken = in_what_is_spoken(&days);
    kept.days = Some(days);
    Ok(spoken)
}

fn in_what_is_spoken(days: &[Arc<Days>; Language::ALL.len()]) -> Arc<Days> {
    let nth = Language::ALL
        .iter()
        .position(|one| *one == phrases::spoken());
    Arc::clone(&days[nth.unwrap_or_default()])
}

fn minute(at: Timestamp) -> Timestamp {
    let second = at.as_second();
    Timestamp::from_second(second - second.rem_euclid(60)).unwrap_or(at)
}

/// Whether time has passed a plan by: something was to begin and has not, or was to end and goes
/// on, or the day it was made on is over.
fn passed_by(days: &Days, built: &Built) -> bool {
    let Some(kept) = &days.plan else {
        return false;
    };
    let now = built.calendar.time(built.floor.now);
    let late = |minute: Minute| kept.calendar.time(minute.saturating_add(GRACE)) < now;
    let work = kept.plan.placed.iter().filter(|one| !one.people.is_empty());
    let other_day = built.calendar.time(0) != kept.calendar.time(0);
    other_day
        || work.into_iter().any(
            |one| match kept.orders[one.order].running && one.phase == 0 {
                true => late(one.to),
                false => late(one.from),
            },
        )
}

/// One plan, said in every language.
fn made(built: Built, before: Option<&DayPlan>) -> [Arc<Days>; Language::ALL.len()] {
    let ground = built.missing.is_empty().then(|| {
        Arc::new(Ground {
            floor: built.floor.clone(),
            calendar: built.calendar.clone(),
            people: built.people.clone(),
        })
    });
    let told = |faults: &dyn Fn() -> Vec<Fault>| {
        Language::ALL.map(|language| {
            let missing = built.missing.iter();
            let missing = missing.map(|missing| missing.said(language).to_owned());
            let not_planned = built.not_planned.iter();
            let faults = speaking(language, faults);
            Days {
                plan: None,
                ground: ground.clone(),
                not_planned: not_planned.map(|one| one.said(language)).collect(),
                missing: missing.chain(faults.iter().map(Fault::to_string)).collect(),
            }
        })
    };
    if !built.missing.is_empty() || built.floor.orders.is_empty() {
        return told(&Vec::new).map(Arc::new);
    }
    let same_day = |before: &&DayPlan| before.calendar.time(0) == built.calendar.time(0);
    let previous = before.filter(same_day).map(|before| &before.plan);
    let mut plan = match stalls::plan(&built.floor, previous, SEED, &mut |seen| seen < PLANS) {
        Ok(plan) => plan,
        Err(_) => return told(&|| built.floor.faults()).map(Arc::new),
    };
    // What nothing but the moment sets apart is said once.
    plan.placed
        .sort_by_key(|one| (one.from, one.order, one.phase));
    let ask = Ask::default();
    let outlook = match stalls::outlook(&plan.floor, Policy::Plan(&plan), &ask) {
        Ok(outlook) => outlook,
        Err(_) => return told(&|| built.floor.faults()).map(Arc::new),
    };
    let promises = stalls::promises_of(&plan.floor, &outlook, &ask);
    let to_keep = keep::to_keep(&plan, &promises, &ask);
    let outlook = Arc::new(outlook);
    let mut days = told(&Vec::new);
    for (language, days) in Language::ALL.into_iter().zip(&mut days) {
        let plan = speaking(language, || {
            let say = |minute| built.calendar.say(minute);
            let to_keep = to_keep.iter().map(|keep| keep.said(&plan, &say));
            DayPlan {
                to_keep: to_keep.collect(),
                plan: left::named(&plan),
                calendar: built.calendar.clone(),
                orders: built.orders.clone(),
                people: built.people.clone(),
                promises: promises.clone(),
                outlook: Arc::clone(&outlook),
            }
        });
        days.plan = Some(Arc::new(plan));
    }
    days.map(Arc::new)
}

/// A time to promise, and how often it is kept.
#[derive(Debug, Clone, PartialEq)]
pub struct Offer {
    /// From 0 to 1.
    pub chance: f64,
    pub at: Timestamp,
    /// The same as it is said on the phone.
    pub say: String,
}

/// The chances that are offered.
const OFFERED: [f64; 3] = [0.5, 0.8, 0.9];

impl DayPlan {
    /// The place of an order on the floor.
    #[must_use]
    pub fn place_of(&self, number: u64) -> Option<usize> {
        self.orders.iter().position(|order| order.number == number)
    }

    /// The promise of an order, as it looks.
    #[must_use]
    pub fn promise_of(&self, number: u64) -> Option<&Promise> {
        let at = self.place_of(number)?;
        self.promises.iter().find(|promise| promise.order == at)
    }

    /// Times that could be promised, each with how often it is kept.
    #[must_use]
    pub fn offers(&self, number: u64) -> Vec<Offer> {
        let Some(at) = self.place_of(number) else {
            return Vec::new();
        };
        let step = Ask::default().step_minutes;
        let mut out: Vec<Offer> = Vec::new();
        for chance in OFFERED {
            let Some(by) = self.outlook.by(at, chance) else {
                continue;
            };
            let said = stalls::said(by, step, &self.plan.floor.opening);
            let offer = Offer {
                // Rounded up, it is kept more often than was asked.
                chance: self.outlook.chance(at, said),
                at: self.calendar.time(said),
                say: self.calendar.say(said),
            };
            if out.iter().all(|other| other.at != offer.at) {
                out.push(offer);
            }
        }
        out
    }

    /// When somebody works on a phase, pauses and nights left out.
    #[must_use]
    pub fn at_work(&self, placed: &stalls::Placed) -> Vec<(Minute, Minute)> {
        let floor = &self.plan.floor;
        let span = Windows::new([(placed.from, placed.to)]);
        let hours = placed.people.iter().fold(span, |hours, person| {
            let person = &floor.people[*person];
            hours
                .and(&person.hours)
                .and(&floor.opening)
                .minus(&person.away)
        });
        hours.spans().to_vec()
    }

    /// Why an order is ready no earlier, in words.
    #[must_use]
    pub fn why(&self, order: usize) -> Option<String> {
        self.plan.why(order, &|minute| self.calendar.say(minute))
    }
}

//! What if: another vehicle taken in, or one that waits apart buttoned up and rolled out. Nothing
//! of it is written down.

use super::calendar::Calendar;
use super::who::{ABLE, able};
use super::{DayPlan, PLANS, Planned, SEED, days};
use crate::phrases::floor as words;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use jiff::Timestamp;
use repair::{PersonId, System};
use stalls::{
    Ask, Compared, Does, Fault, Minute, Order, Phase, Plan, RollOut, Spread, StallNeed, Work,
};
use std::collections::BTreeSet;

/// Another vehicle, as somebody asks about it on the phone.
#[derive(Debug, Clone, PartialEq)]
pub struct Further {
    pub minutes: Spread,
    pub stall: StallNeed,
    /// What whoever does it knows.
    pub skill: Option<System>,
    pub helpers: usize,
    /// When it comes; nothing, if it is at the door.
    pub comes: Option<Timestamp>,
    /// By when they want it.
    pub wanted: Option<Timestamp>,
}

/// What a change comes to.
#[derive(Debug, Clone, PartialEq)]
pub struct WhatIf {
    /// The vehicle that is asked about.
    pub own: Own,
    /// The others that feel it, those whose promise suffers most first.
    pub others: Vec<Other>,
    /// How many promises break on average, as things are and then; by their weights.
    pub broken: (f64, f64),
    /// What is done otherwise, a sentence each.
    pub changes: Vec<String>,
}

/// The vehicle that is asked about.
#[derive(Debug, Clone, PartialEq)]
pub struct Own {
    /// By when it is ready eight times in ten, as things are; nothing for one that is not here.
    pub was: Option<String>,
    /// The same with the change, rounded up to what one says.
    pub say: String,
    pub say_at: Timestamp,
    /// How often it is ready by when it is wanted or was promised.
    pub chance: Option<f64>,
    /// The same as things are.
    pub chance_was: Option<f64>,
    /// What is done on it, when, by whom and where.
    pub work: Vec<Line>,
}

/// One piece of work on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Line {
    pub what: String,
    pub from: String,
    pub to: String,
    /// By whom, in which stall.
    pub who: String,
}

/// Another order that feels it.
#[derive(Debug, Clone, PartialEq)]
pub struct Other {
    pub number: u64,
    pub vehicle: String,
    /// How often its promise is kept, as things are and then; nothing, if none was given.
    pub chance: Option<(f64, f64)>,
    /// By how many minutes it is ready later eight times in ten; earlier below 0.
    pub later_minutes: i64,
}

/// A promise that is kept so much less or more often is told.
const FELT: f64 = 0.05;
/// Minutes later or earlier from which on it is told.
const FELT_MINUTES: i64 = 30;
/// So many sentences of what is done otherwise are told.
const MOST_SAID: usize = 8;

/// The days as they are planned, with whom each part of the plan is about.
struct Before {
    plan: Plan,
    calendar: Calendar,
    orders: Vec<Planned>,
    people: Vec<PersonId>,
}

impl Before {
    fn of(day: &DayPlan) -> Self {
        Self {
            plan: day.plan.clone(),
            calendar: day.calendar.clone(),
            orders: day.orders.clone(),
            people: day.people.clone(),
        }
    }
}

/// The plan that is followed; one without orders, where nothing is to be done; or what keeps
/// anything from being planned.
fn before(snap: &Snapshot<'_>) -> Result<Result<Before, Vec<String>>, Trouble> {
    let days = days(snap)?;
    if let Some(day) = &days.plan {
        return Ok(Ok(Before::of(day)));
    }
    if !days.missing.is_empty() {
        return Ok(Err(days.missing.clone()));
    }
    let Some(ground) = &days.ground else {
        return Ok(Err(Vec::new()));
    };
    let plan = stalls::plan(&ground.floor, None, SEED, &mut |_| false);
    Ok(plan.map_err(|faults| said(&faults)).map(|plan| Before {
        plan,
        calendar: ground.calendar.clone(),
        orders: Vec::new(),
        people: ground.people.clone(),
    }))
}

fn said(faults: &[Fault]) -> Vec<String> {
    faults.iter().map(|fault| fault.what.clone()).collect()
}

/// Could this one be taken in? Answers with what it does to the others, or with why not.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn take_in(
    snap: &Snapshot<'_>,
    further: &Further,
) -> Result<Result<WhatIf, Vec<String>>, Trouble> {
    let mut before = match before(snap)? {
        Ok(before) => before,
        Err(missing) => return Ok(Err(missing)),
    };
    let able = match able(snap, &before.people, &BTreeSet::new(), further.skill) {
        Ok(able) => able,
        Err((why, _)) => return Ok(Err(vec![why.said(phrases::spoken()).to_owned()])),
    };
    let name = words::the_further_one();
    let label = format!("{ABLE}{name}");
    for person in able.all {
        before.plan.floor.people[person].skills.push(label.clone());
    }
    let minute = |at: Timestamp| before.calendar.minute(at);
    let comes = further.comes.map(minute);
    let order = Order {
        name: name.to_owned(),
        promise: further.wanted.map(minute),
        arrives: comes
            .filter(|at| *at > before.plan.floor.now)
            .map(Spread::sure),
        phases: vec![Phase {
            what: words::work().to_owned(),
            does: Does::Work(Work {
                skill: Some(label),
                minutes: further.minutes,
                stall: further.stall,
                helpers: further.helpers,
                on_the_road: false,
            }),
            rolls: true,
        }],
        ..Order::default()
    };
    let place = before.plan.floor.orders.len();
    let ask = Ask::default();
    let compared = stalls::take_in(&before.plan, order, &ask, SEED, &mut |seen| seen < PLANS);
    Ok(match compared {
        Ok(compared) => Ok(told(&before, &compared, place, None)),
        Err(faults) => Err(said(&faults)),
    })
}

/// Whether an order waits in its stall since it can't roll, so that buttoning it up is a question.
#[must_use]
pub fn waits_apart(plan: &DayPlan, number: u64) -> bool {
    let place = plan.place_of(number);
    place.is_some_and(|at| stalls::waits_apart(&plan.plan.floor.orders[at]).is_some())
}

/// Is it worth buttoning it up to roll it out while it waits? Answers with what each does to the
/// others, or with why it is no question.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn roll_out(
    snap: &Snapshot<'_>,
    number: u64,
    button_up: Spread,
    open_again: Spread,
) -> Result<Result<WhatIf, Vec<String>>, Trouble> {
    let days = days(snap)?;
    let Some(day) = &days.plan else {
        return Ok(Err(days.missing.clone()));
    };
    let place = day.place_of(number);
    let waits = place.and_then(|at| {
        let phase = stalls::waits_apart(&day.plan.floor.orders[at])?;
        Some((at, phase))
    });
    let Some((order, phase)) = waits else {
        return Ok(Err(vec![words::never_waits_apart().to_owned()]));
    };
    let asked = RollOut {
        order,
        phase,
        button_up,
        open_again,
    };
    let ask = Ask::default();
    let compared = stalls::roll_out(&day.plan, asked, &ask, SEED, &mut |seen| seen < PLANS);
    let was = day.promises.iter().find(|one| one.order == order);
    Ok(match compared {
        Ok(compared) => Ok(told(&Before::of(day), &compared, order, was)),
        Err(faults) => Err(said(&faults)),
    })
}

fn told(
    before: &Before,
    compared: &Compared,
    place: usize,
    was: Option<&stalls::Promise>,
) -> WhatIf {
    let say = |minute: Minute| before.calendar.say(minute);
    let promise = compared.promises.iter().find(|one| one.order == place);
    let end = compared.plan.ends[place];
    let ready = promise.map_or(end, |promise| promise.say);
    let changes = compared.plan.changes_from(&before.plan, &say).into_iter();
    let own_name = &compared.plan.floor.orders[place].name;
    WhatIf {
        own: Own {
            was: was.map(|promise| say(promise.say)),
            say: say(ready),
            say_at: before.calendar.time(ready),
            chance: promise.and_then(|promise| promise.chance),
            chance_was: was.and_then(|promise| promise.chance),
            work: work(before, &compared.plan, place),
        },
        others: others(before, compared, place),
        broken: compared.broken,
        changes: changes
            .filter(|change| change.order != *own_name)
            .map(|change| change.sentence)
            .take(MOST_SAID)
            .collect(),
    }
}

fn work(before: &Before, plan: &Plan, place: usize) -> Vec<Line> {
    let floor = &plan.floor;
    let say = |minute: Minute| before.calendar.say(minute);
    let own = plan.placed.iter().filter(|one| one.order == place);
    own.map(|one| {
        let people = one.people.iter();
        let mut who: Vec<&str> = people.map(|at| floor.people[*at].name.as_str()).collect();
        let stall = one.stall.filter(|_| !one.people.is_empty());
        who.extend(stall.map(|stall| floor.stalls[stall].name.as_str()));
        Line {
            what: floor.orders[place].phases[one.phase].what.clone(),
            from: say(one.from),
            to: say(one.to),
            who: who.join(", "),
        }
    })
    .collect()
}

/// The others that feel it. Effects name orders as the floor does.
fn others(before: &Before, compared: &Compared, place: usize) -> Vec<Other> {
    let floor = &before.plan.floor;
    let mut others: Vec<Other> = compared
        .effects
        .iter()
        .filter_map(|effect| {
            let at = (floor.orders.iter()).position(|order| order.name == effect.order)?;
            let planned = before.orders.get(at).filter(|_| at != place)?;
            let promised = floor.orders[at].promise.is_some();
            let moved = promised && (effect.chance.0 - effect.chance.1).abs() >= FELT;
            let later = effect.later_minutes.abs() >= FELT_MINUTES;
            (moved || later).then(|| Other {
                number: planned.number,
                vehicle: planned.vehicle.clone(),
                chance: promised.then_some(effect.chance),
                later_minutes: effect.later_minutes,
            })
        })
        .collect();
    let lost = |other: &Other| other.chance.map_or(0.0, |(was, is)| is - was);
    others.sort_by(|a, b| {
        let by_promise = lost(a).total_cmp(&lost(b));
        by_promise.then(b.later_minutes.cmp(&a.later_minutes))
    });
    others
}

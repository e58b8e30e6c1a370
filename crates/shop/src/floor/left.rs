//! What is still to be done on an order: how long it takes by whose word, and what it waits for.

use super::calendar::Calendar;
use super::spread::{sorted, triangle};
use super::waits::{Waits, asks, waits};
use super::worked::{Worked, minutes, worked};
use crate::odds_of::Learnt;
use crate::phrases::floor as words;
use crate::planning::{OrderMap, map_of_order, on_map_of, to_roll_from};
use crate::say::figures;
use crate::say::in_each::InEach;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::view::OrderRow;
use crate::world::vehicle_of;
use jiff::Timestamp;
use jiff::civil::Date;
use repair::price::Charge;
use repair::{Fact, Order, StallNeeded, System, papers};
use rust_decimal::Decimal;
use rust_decimal::prelude::ToPrimitive;
use stalls::{
    Does, Floor, Minute, Phase, Plan, Spread, StallNeed, Takes, Wait, WaitsFor, Windows, Work,
};

/// Where the minutes of an order come from.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Source {
    /// Somebody looked at it and said so.
    Told,
    /// The plan on its map.
    Plan,
    /// The hours on its price.
    Price,
}

impl Source {
    /// The word for it.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Self::Told => "told",
            Self::Plan => "plan",
            Self::Price => "price",
        }
    }
}

/// What is left of an order.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Left {
    /// Nothing: it can be collected.
    Nothing,
    Phases(Box<Phases>),
    /// It can't be planned: why, and the page where that is told.
    Unknown(InEach, &'static str),
}

/// The phases that are left.
#[derive(Debug, Clone, PartialEq)]
pub struct Phases {
    pub phases: Vec<Phase>,
    pub source: Source,
    /// What whoever works on it knows.
    pub skill: Option<System>,
    /// Who works on it at this moment.
    pub at_it: Vec<Worked>,
    /// What it follows from, but for the time that passes: where this changes, there is news.
    pub news: String,
}

/// What the floor is looked at with.
pub struct Around<'a> {
    pub snap: &'a Snapshot<'a>,
    pub calendar: &'a Calendar,
    pub opening: &'a Windows,
    pub learnt: &'a Learnt,
    pub now: Minute,
}

/// Work, before it is known what it waits for.
struct ToDo {
    /// What comes off first, and whether the vehicle still rolls then.
    off: Option<(Spread, bool)>,
    back: Spread,
    source: Source,
    skill: Option<System>,
    stall: StallNeed,
    /// How many more people hold and hand.
    helpers: usize,
    /// Minutes of a drive when the rest is done.
    road: Option<Spread>,
    /// The minutes that somebody or something gave.
    given: String,
}

/// What is left of an order.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn left(around: &Around<'_>, order: &Order, row: &OrderRow) -> Result<Left, Trouble> {
    let snap = around.snap;
    if is_done(order, row) {
        return Ok(Left::Nothing);
    }
    let all = worked(order, Timestamp::MIN, snap.now());
    let to_do = match to_do(around, order, row, &all)? {
        Ok(to_do) => to_do,
        Err(why) => return Ok(Left::Unknown(why, "promise")),
    };
    let waits = match waits(around, order) {
        Ok(waits) => waits,
        Err((why, page)) => return Ok(Left::Unknown(why, page)),
    };
    let asks = match asks(around, order) {
        Ok(asks) => asks,
        Err(why) => return Ok(Left::Unknown(why, "promise")),
    };
    let news = format!("{} {asks:?} {waits:?} {}", to_do.given, row.can_roll);
    Ok(Left::Phases(Box::new(Phases {
        source: to_do.source,
        skill: to_do.skill,
        at_it: all.into_iter().filter(|one| one.open).collect(),
        news,
        phases: phases(&to_do, asks, waits, row.can_roll),
    })))
}

/// Whether the work is done: it can be collected, or was worked on and only papers are missing.
/// What nobody has begun lacks papers as well.
fn is_done(order: &Order, row: &OrderRow) -> bool {
    let moved = || {
        order
            .facts()
            .any(|(_, filed)| matches!(filed.fact, Fact::Moved { .. }))
    };
    match row.word.as_str() {
        "ready" => true,
        "papers" => moved() && repair::work_left(order).is_none(),
        _ => false,
    }
}

// What the program itself calls a phase on the floor, whatever is spoken: one plan is kept for all.
const THE_ANSWER: &str = "the customer's answer";
const TAKE_APART: &str = "take apart";
const PUT_TOGETHER: &str = "put together";
const WORK: &str = "work";
const ROAD_TEST: &str = "road test";

/// The same plan with its phases called what they are called in what is spoken.
pub fn named(plan: &Plan) -> Plan {
    let mut plan = plan.clone();
    name_phases(&mut plan.floor);
    plan
}

fn name_phases(floor: &mut Floor) {
    let phases = floor.orders.iter_mut().flat_map(|order| &mut order.phases);
    for phase in phases {
        let own = match &phase.does {
            Does::Work(_) => true,
            Does::Wait(wait) => wait.waits_for == WaitsFor::Consent,
        };
        let name = match phase.what.as_str() {
            _ if !own => continue,
            THE_ANSWER => words::the_customers_answer(),
            TAKE_APART => words::take_apart(),
            PUT_TOGETHER => words::put_together(),
            WORK => words::work(),
            ROAD_TEST => words::road_test(),
            _ => continue,
        };
        name.clone_into(&mut phase.what);
    }
}

/// First the answer, then what comes off, what is waited for, what is put together again, and the
/// drive.
fn phases(to_do: &ToDo, asks: Option<Spread>, waits: Waits, rolls: bool) -> Vec<Phase> {
    let wait = |waits_for, what: String, comes, rolls| Phase {
        what,
        does: Does::Wait(Wait {
            waits_for,
            takes: Takes::Comes(comes),
        }),
        rolls,
    };
    let work = |what: &str, minutes, rolls| Phase {
        what: what.to_owned(),
        does: Does::Work(Work {
            skill: None,
            minutes,
            stall: to_do.stall,
            helpers: to_do.helpers,
            on_the_road: false,
        }),
        rolls,
    };
    let drive = |minutes| Phase {
        what: ROAD_TEST.to_owned(),
        does: Does::Work(Work {
            skill: None,
            minutes,
            stall: StallNeed::No,
            helpers: 0,
            on_the_road: true,
        }),
        rolls: true,
    };
    let mut out = Vec::new();
    if let Some(comes) = asks {
        out.push(wait(WaitsFor::Consent, THE_ANSWER.to_owned(), comes, rolls));
    }
    let mut rolls = rolls;
    if let Some((minutes, still_rolls)) = to_do.off {
        rolls = rolls && still_rolls;
        out.push(work(TAKE_APART, minutes, rolls));
    }
    for (waits_for, what, comes) in waits {
        out.push(wait(waits_for, what, comes, rolls));
    }
    let what = match (to_do.source, to_do.off) {
        (Source::Plan, _) => PUT_TOGETHER,
        _ => WORK,
    };
    out.push(work(what, to_do.back, true));
    out.extend(to_do.road.map(drive));
    out
}

/// How long the work that is left takes: by whoever looked at it, else by the plan on its map,
/// else by the hours on its price. Nothing else is known.
fn to_do(
    around: &Around<'_>,
    order: &Order,
    row: &OrderRow,
    all: &[Worked],
) -> Result<Result<ToDo, InEach>, Trouble> {
    if let Some(told) = repair::work_left(order) {
        let since: Vec<Worked> = worked(order, told.told_at, around.snap.now());
        return Ok(told_left(around, order, &told, minutes(&since)));
    }
    if let Some(to_do) = planned(around, order, row.number)? {
        return Ok(Ok(to_do));
    }
    Ok(priced(around, order, minutes(all)))
}

fn told_left(
    around: &Around<'_>,
    order: &Order,
    told: &repair::WorkLeft,
    worked: i64,
) -> Result<ToDo, InEach> {
    let whole = |minutes: Decimal| minutes.ceil().to_i64().unwrap_or(i64::MAX);
    let left = whole(told.minutes).saturating_sub(worked);
    let most = told
        .range
        .map(|(_, most)| whole(most).saturating_sub(worked));
    if left.max(most.unwrap_or(left)) <= 0 || left > LONGEST {
        let minutes = told.minutes.normalize();
        return Err(InEach::of(|| {
            words::told_minutes_worked(figures(&minutes.to_string()))
        }));
    }
    let minutes = match told.range {
        Some((least, most)) => {
            let ends = (whole(least), whole(most));
            sorted(
                ends.0.saturating_sub(worked),
                left,
                ends.1.saturating_sub(worked),
            )
        }
        None => around.spread(order, left),
    };
    Ok(ToDo {
        off: None,
        back: minutes,
        source: Source::Told,
        skill: told.skill,
        stall: match told.stall {
            StallNeeded::Lift => StallNeed::Lift,
            StallNeeded::Flat => StallNeed::Flat,
            StallNeeded::Any => StallNeed::Any,
            StallNeeded::No => StallNeed::No,
        },
        helpers: usize::from(told.helpers),
        road: told
            .road
            .map(whole)
            .filter(|minutes| (1..=LONGEST).contains(minutes))
            .map(|minutes| around.spread(order, minutes)),
        given: format!("{told:?}"),
    })
}

/// A month of minutes: more is a slip.
const LONGEST: i64 = 31 * 24 * 60;

/// What the plan on the order's map leaves to be done from where things stand.
fn planned(around: &Around<'_>, order: &Order, number: u64) -> Result<Option<ToDo>, Trouble> {
    let snap = around.snap;
    let Some((map, version)) = map_of_order(snap, number)? else {
        return Ok(None);
    };
    // A map that can't be read, or on which nothing leads there, gives no minutes.
    let Ok(on) = on_map_of(snap, number, &map, Some(version), None) else {
        return Ok(None);
    };
    if !on.asks() {
        return Ok(None);
    }
    let Ok(found) = on.plan(snap) else {
        return Ok(None);
    };
    let minutes = |tenths: u32| i64::from(tenths.div_ceil(10));
    let (off, back) = (
        minutes(found.minutes_off.in_tenths()),
        minutes(found.minutes_back.in_tenths()),
    );
    if off + back == 0 {
        return Ok(None);
    }
    let rolls = still_rolls(&on, &found.plan.off);
    Ok(Some(ToDo {
        off: (off > 0).then(|| (around.spread(order, off), rolls)),
        back: around.spread(order, back.max(1)),
        source: Source::Plan,
        skill: None,
        stall: StallNeed::Any,
        helpers: 0,
        road: None,
        given: format!("{map} {version} {off} {back} {rolls}"),
    }))
}

/// Whether a vehicle rolls with what a plan takes off.
fn still_rolls(on: &OrderMap, off: &[plan::Planned]) -> bool {
    let mut stands = on.stands.clone();
    for row in off {
        let Some(known) = on.map.items.get(&row.item) else {
            continue;
        };
        let home = (1..=known.count).map(|at| (at, known.kind.home()));
        let (_, pieces) = stands
            .entry(row.item.clone())
            .or_insert_with(|| (known.kind, home.collect()));
        pieces.extend(row.at.iter().map(|at| (*at, row.to)));
    }
    to_roll_from(&on.map, &stands).is_empty()
}

/// The hours of work on the price that are not worked yet.
fn priced(around: &Around<'_>, order: &Order, worked: i64) -> Result<ToDo, InEach> {
    let price = papers::price(order);
    let entries = price.iter().flat_map(papers::Price::all);
    let hours = entries
        .filter(|entry| entry.charge == Charge::Labour)
        .fold(Decimal::ZERO, |sum, entry| {
            sum.saturating_add(entry.quantity)
        });
    let given = hours.checked_mul(Decimal::from(60));
    let given = given
        .and_then(|minutes| minutes.ceil().to_i64())
        .unwrap_or(0);
    if given <= 0 || given > LONGEST {
        return Err(InEach::of(words::no_minutes));
    }
    let left = given - worked;
    if left <= 0 {
        let hours = hours.normalize();
        return Err(InEach::of(|| {
            words::priced_hours_worked(figures(&hours.to_string()))
        }));
    }
    Ok(ToDo {
        off: None,
        back: around.spread(order, left),
        source: Source::Price,
        skill: None,
        stall: StallNeed::Any,
        helpers: 0,
        road: None,
        given: format!("{given}"),
    })
}

impl Around<'_> {
    /// Least, likely and most of so many minutes by the book, as the record teaches it.
    fn spread(&self, order: &Order, minutes: i64) -> Spread {
        let world = self.snap.world();
        let vehicle = vehicle_of(order);
        let rust = vehicle
            .as_ref()
            .and_then(|id| world.vehicle(id).ok()?.rust());
        let name = vehicle.map(|id| id.as_str().to_owned());
        let (low, middle, high) = self.learnt.minutes(name, rust, minutes);
        triangle(low, middle, high)
    }

    /// When something comes that is due on a day: some time while the shop is open.
    pub fn comes_on(&self, due: Date) -> Option<Spread> {
        let (first, last) = self.calendar.days_from(due, due);
        if self.opening.end().is_some_and(|end| end <= first) {
            // After the days that are planned.
            return Some(Spread::new(first, first.midpoint(last), last));
        }
        let (opens, closes) = self.calendar.open_on(self.opening, due)?;
        let from = opens.max(self.now);
        (closes > from).then(|| Spread::new(from, from.midpoint(closes), closes))
    }
}

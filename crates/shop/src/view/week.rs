//! The week: what is booked for each day, and how much room is honestly left.

use super::day::{ExpectedView, expected};
use super::row::{promised, rows_here};
use crate::floor::{DayPlan, Days, days};
use crate::say::dates;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use jiff::ToSpan;
use jiff::civil::Date;
use repair::{PersonId, Role};
use serde::Serialize;
use stalls::{Does, Minute, Windows};

/// So many days are shown.
const DAYS: i64 = 7;

/// Room is what is left where work takes as long as it does eight times in ten.
const SURE: f64 = 0.8;

/// The days ahead, with what is booked and what room is left.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WeekView {
    /// What keeps all of it from being planned.
    pub missing: Vec<String>,
    pub days: Vec<WeekDay>,
    /// How many orders are left out of the plan, so that their work is not in it.
    pub not_planned: usize,
    /// How often bookings came so far, in a sentence; nothing where none is known. The room takes
    /// every booking as coming all the same: who stays away is known only on the day.
    pub came: Option<String>,
}

/// One day.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct WeekDay {
    /// As `2026-11-30`.
    pub date: String,
    /// In words: `Mon 30 Nov`.
    pub name: String,
    /// Vehicles that are to come on it.
    pub booked: Vec<ExpectedView>,
    /// How many were promised for it.
    pub promised: usize,
    /// Minutes in which people work on it, all of them together; nothing where nothing is planned.
    pub open_minutes: i64,
    /// Of these, those that are planned, each work as long as it takes eight times in ten.
    pub planned_minutes: i64,
    /// Minutes of work that can still be taken in: by people and by stalls, whichever is less.
    pub room_minutes: i64,
    /// Whether it is the stalls that leave so little.
    pub by_stalls: bool,
}

/// The week.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn week(snap: &Snapshot<'_>) -> Result<WeekView, Trouble> {
    let rules = snap.rules();
    let world = snap.world();
    let days = days(snap)?;
    let (mut booked, mut promises) = (Vec::new(), Vec::new());
    for row in rows_here(snap)? {
        let Some(id) = world.order_numbered(row.number)? else {
            continue;
        };
        let order = world.order(&id)?;
        let day = |at: jiff::Timestamp| at.to_zoned_datetime(rules.zone.clone()).date();
        promises.extend(promised(&order).filter(|_| !row.handed_over).map(day));
        if let Some(at) = repair::expected(&order) {
            booked.push((day(at), expected(&row, at, &rules)));
        }
    }
    booked.sort_by_key(|(_, one)| (one.time, one.number));
    let today = rules.today();
    let dates = (0..DAYS).filter_map(|day| today.checked_add(day.days()).ok());
    Ok(WeekView {
        missing: days.missing.clone(),
        not_planned: days.not_planned.len(),
        came: crate::history::bookings(snap)?.said(),
        days: dates
            .map(|date| {
                let room = room(snap, &days, date);
                let of_day = booked.iter().filter(|(day, _)| *day == date);
                WeekDay {
                    date: date.to_string(),
                    name: dates::day(date),
                    booked: of_day.map(|(_, one)| one.clone()).collect(),
                    promised: promises.iter().filter(|day| **day == date).count(),
                    open_minutes: room.open,
                    planned_minutes: room.planned,
                    room_minutes: room.by_people.min(room.by_stalls),
                    by_stalls: room.by_stalls < room.by_people,
                }
            })
            .collect(),
    })
}

/// The minutes of a day.
#[derive(Default)]
struct Room {
    open: i64,
    planned: i64,
    by_people: i64,
    by_stalls: i64,
}

fn room(snap: &Snapshot<'_>, days: &Days, date: Date) -> Room {
    let Some(ground) = &days.ground else {
        return Room::default();
    };
    let floor = &ground.floor;
    let (from, to) = ground.calendar.days_from(date, date);
    let from = from.max(ground.calendar.minute(snap.now()));
    if from >= to {
        return Room::default();
    }
    let day = Windows::new([(from, to)]);
    let known = snap.world().shop.people();
    // Who learns helps, and takes nothing in.
    let works = |person: &PersonId| {
        let roles = known.get(person).map(|(_, roles)| *roles);
        roles.is_some_and(|roles| roles.contains(&Role::Technician))
    };
    let people = ground.people.iter().zip(&floor.people);
    let open: i64 = people
        .filter(|(person, _)| works(person))
        .map(|(_, person)| {
            let hours = person.hours.and(&floor.opening).minus(&person.away);
            hours.open_between(from, to)
        })
        .sum();
    let free = floor.stalls.iter().filter(|stall| stall.held.is_none());
    let free = i64::try_from(free.count()).unwrap_or(i64::MAX);
    let stalls = free.saturating_mul(floor.opening.open_between(from, to));
    let plan = days.plan.as_deref();
    let planned = plan.map_or(0, |plan| planned(plan, &day, &works));
    let stood = plan.map_or(0, |plan| stood(plan, (from, to)));
    Room {
        open,
        planned: planned.min(open),
        by_people: (open - planned).max(0),
        by_stalls: (stalls - stood).max(0),
    }
}

/// Minutes of these people that are planned on a day, each work as long as it takes eight times in
/// ten.
fn planned(plan: &DayPlan, day: &Windows, works: &dyn Fn(&PersonId) -> bool) -> i64 {
    let floor = &plan.plan.floor;
    let each = plan.plan.placed.iter().filter_map(|one| {
        let Does::Work(work) = &floor.orders[one.order].phases[one.phase].does else {
            return None;
        };
        let hours = Windows::new(plan.at_work(one)).and(day);
        let minutes: i64 = hours.spans().iter().map(|(from, to)| to - from).sum();
        #[allow(clippy::cast_precision_loss, reason = "minutes of a day")]
        let (minutes, mean) = (minutes as f64, work.minutes.mean().max(1) as f64);
        let people = one.people.iter().filter(|at| works(&plan.people[**at]));
        #[allow(clippy::cast_precision_loss, reason = "a handful of people")]
        let people = people.count() as f64;
        Some(minutes * people * (work.minutes.quantile(SURE) / mean).max(1.0))
    });
    #[allow(clippy::cast_possible_truncation, reason = "minutes of a day")]
    let all = each.sum::<f64>().ceil() as i64;
    all
}

/// Open minutes of a day in which vehicles stand in stalls, all of them together.
fn stood(plan: &DayPlan, (from, to): (Minute, Minute)) -> i64 {
    let opening = &plan.plan.floor.opening;
    let stays = plan.plan.stays.iter();
    let minutes = stays.map(|stay| opening.open_between(stay.from.max(from), stay.to.min(to)));
    minutes.sum()
}

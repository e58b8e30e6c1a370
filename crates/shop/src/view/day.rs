//! The day at the desk: what stands where, what was worked and what waits, whom to ring, what is
//! awaited, what goes home.

use super::calls::{CallKind, CallView, calls};
use super::planned::{PlannedView, hours_of_order, hours_of_person, planned, short};
use super::row::{OrderRow, promised, rows_here};
use super::{desk, goods};
use crate::floor::{COMES_LATE, DayPlan, NEAR, days, worked};
use crate::phrases::calls as words;
use crate::say::{Names, day_words};
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use jiff::civil::Date;
use jiff::tz::TimeZone;
use jiff::{SignedDuration, Timestamp};
use repair::{Fact, Order, OrderId, PersonId, Rules, StallIs};
use serde::Serialize;
use std::collections::{BTreeMap, BTreeSet};

/// The day at the desk.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DayView {
    /// The day in words: `Monday 30 November`.
    pub date: String,
    /// What the clock shows, in hours since midnight.
    pub now: f64,
    /// The hours that the day is shown over.
    pub hours: (f64, f64),
    /// Each stall, then each vehicle that stands elsewhere.
    pub places: Vec<DayPlace>,
    /// Who belongs to the shop and works on vehicles, with what each worked on today.
    pub people: Vec<DayPerson>,
    /// Whom to ring now.
    pub ring: Vec<CallView>,
    /// What is waited for.
    pub awaited: Vec<CallView>,
    /// Vehicles that are to come, the next first.
    pub expected: Vec<ExpectedView>,
    /// What whoever looks works on today by the plan, what is next first.
    pub mine: Vec<MineView>,
    /// What was promised for today, or can be collected.
    pub home: Vec<HomeView>,
    /// The days ahead, how sure each promise is, and what is left out.
    pub planned: PlannedView,
}

/// A place with what stands in it.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DayPlace {
    /// Short: `1`, `Y1`.
    pub name: String,
    /// What it is called.
    pub called: String,
    /// Whether it is no stall.
    pub yard: bool,
    /// Whether it has a lift.
    pub lift: bool,
    /// What stands there.
    pub order: Option<DayOrder>,
}

/// A vehicle on the floor with its day.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DayOrder {
    /// How it stands.
    pub row: OrderRow,
    /// Who works on it, by first names.
    pub people: Vec<String>,
    /// When it was worked on today, in hours.
    pub worked: Vec<(f64, f64)>,
    /// When it is planned to be worked on today, in hours.
    pub planned: Vec<(f64, f64)>,
    /// From when to when it waits today, and what for.
    pub waits: Option<(f64, f64, String)>,
    /// The hour promised, in hours since today's midnight.
    pub promised: Option<f64>,
    /// Whether the promise is past, or cannot be kept, or is kept less than five times in ten.
    pub slips: bool,
    /// How often the promise is kept, where it is planned.
    pub often: Option<String>,
    /// Why it stands as it does, in a few words.
    pub because: String,
}

/// A person's day.
#[derive(Debug, Clone, PartialEq, Serialize)]
pub struct DayPerson {
    /// What they are called.
    pub name: String,
    /// Where they are, by what they were at last.
    pub at: String,
    /// From, to, and on what.
    pub worked: Vec<(f64, f64, String)>,
    /// The same as it is planned.
    pub planned: Vec<(f64, f64, String)>,
}

/// A vehicle that is to come.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct ExpectedView {
    /// The order's number.
    pub number: u64,
    /// The vehicle.
    pub vehicle: String,
    /// The customer.
    pub customer: String,
    /// What it comes for.
    pub complaint: String,
    /// When, as one says it.
    pub at: String,
    /// The same as a moment.
    pub time: Timestamp,
    /// Whether that is past by more than one comes late.
    pub late: bool,
}

/// A piece of work of whoever looks.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct MineView {
    /// The order's number.
    pub number: u64,
    /// The vehicle.
    pub vehicle: String,
    /// What is done.
    pub what: String,
    /// From when to when.
    pub from: String,
    pub to: String,
    /// Where it is done; nothing, if in no stall.
    pub stall: Option<String>,
    /// Where the vehicle has to be brought from, if it is not there.
    pub stands: Option<String>,
    /// Whether it has begun.
    pub running: bool,
}

/// A vehicle that goes home.
#[derive(Debug, Clone, PartialEq, Eq, Serialize)]
pub struct HomeView {
    /// The order's number.
    pub number: u64,
    /// The vehicle.
    pub vehicle: String,
    /// The customer.
    pub customer: String,
    /// The hour promised.
    pub hour: Option<String>,
    /// Whether it can be collected.
    pub ready: bool,
    /// What the customer still has to pay; nothing, if there is no price, or it is not shown.
    pub to_pay: Option<crate::Amount>,
}

/// The hours that a day is shown over, unless somebody worked before or after.
const DAY: (f64, f64) = (8.0, 18.0);

/// The day at the desk.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn day(snap: &Snapshot<'_>) -> Result<DayView, Trouble> {
    let world = snap.world();
    let rules = snap.rules();
    let clock = Hours::of(&rules);
    let all = calls(snap)?;
    let days = days(snap)?;
    let planned = planned(&days);
    let rows = rows_here(snap)?;
    let mut orders = Vec::new();
    let mut worked: BTreeMap<PersonId, Vec<(f64, f64, String)>> = BTreeMap::new();
    let mut home = Vec::new();
    let mut coming = Vec::new();
    for row in rows {
        let Some(id) = world.order_numbered(row.number)? else {
            continue;
        };
        let order = world.order(&id)?;
        if let Some(at) = repair::expected(&order) {
            coming.push(expected(&row, at, &rules));
            continue;
        }
        let times = worked_today(&order, &clock);
        for (person, from, to) in &times {
            let of = worked.entry(person.clone()).or_default();
            of.push((*from, *to, row.vehicle.clone()));
        }
        home.extend(goes_home(snap, &order, &row, &clock));
        let mut shown = day_order(snap, &id, &order, row, &times, &all, &clock)?;
        if let Some(plan) = &days.plan {
            shown.plan(plan, &planned);
        }
        orders.push(shown);
    }
    coming.sort_by_key(|one| (one.time, one.number));
    let mine = mine(snap, days.plan.as_deref(), &orders);
    home.sort_by(|a, b| (&a.hour, a.number).cmp(&(&b.hour, b.number)));
    let (ring, awaited): (Vec<_>, Vec<_>) = all.into_iter().partition(|call| call.kind.rings());
    let people = people(snap, &orders, worked, days.plan.as_deref());
    let hours = shown_hours(&orders, &people, clock.now);
    Ok(DayView {
        date: crate::say::dates::long_day(rules.today()),
        now: clock.now,
        hours,
        places: places(snap, orders),
        people,
        ring,
        awaited: awaited
            .into_iter()
            .filter(|call| call.kind != CallKind::Core)
            .collect(),
        expected: coming,
        mine,
        home,
        planned,
    })
}

impl DayOrder {
    /// Adds what is planned of it.
    fn plan(&mut self, plan: &DayPlan, planned: &PlannedView) {
        self.planned = hours_of_order(plan, self.row.number);
        let mut promises = planned.promises.iter();
        if let Some(promise) = promises.find(|promise| promise.number == self.row.number) {
            self.slips |= promise.slips;
            self.often = promise.chance.map(short);
        }
        // It waits until somebody works on it.
        let next = self.planned.iter().map(|(from, _)| *from);
        if let Some((from, to, _)) = &mut self.waits {
            *to = next.filter(|at| at > from).fold(*to, f64::min);
        }
    }
}

/// Times of today as hours since midnight.
struct Hours {
    today: Date,
    zone: TimeZone,
    at: Timestamp,
    now: f64,
}

impl Hours {
    fn of(rules: &Rules) -> Self {
        let mut hours = Self {
            today: rules.today(),
            zone: rules.zone.clone(),
            at: rules.now,
            now: 0.0,
        };
        hours.now = hours.since_midnight(rules.now);
        hours
    }

    /// Hours since today's midnight; negative before it.
    #[allow(
        clippy::cast_precision_loss,
        reason = "seconds of a few days are far below what a float counts"
    )]
    fn since_midnight(&self, at: Timestamp) -> f64 {
        let local = at.to_zoned_datetime(self.zone.clone()).datetime();
        let midnight = self.today.to_datetime(jiff::civil::Time::midnight());
        let since = local.duration_since(midnight);
        since.as_secs() as f64 / 3600.0
    }

    fn midnight(&self) -> Timestamp {
        let midnight = self.today.to_zoned_datetime(self.zone.clone());
        midnight.map_or(self.at, |midnight| midnight.timestamp())
    }

    fn is_today(&self, at: Timestamp) -> bool {
        at.to_zoned_datetime(self.zone.clone()).date() == self.today
    }
}

/// When somebody worked on an order today, in hours.
fn worked_today(order: &Order, clock: &Hours) -> Vec<(PersonId, f64, f64)> {
    worked(order, clock.midnight(), clock.at)
        .into_iter()
        .map(|one| {
            let (from, to) = (clock.since_midnight(one.from), clock.since_midnight(one.to));
            (one.person, from, to)
        })
        .collect()
}

fn day_order(
    snap: &Snapshot<'_>,
    id: &OrderId,
    order: &Order,
    row: OrderRow,
    times: &[(PersonId, f64, f64)],
    calls: &[CallView],
    clock: &Hours,
) -> Result<DayOrder, Trouble> {
    let world = snap.world();
    let names = Names::of(snap, world, order);
    let of_it = |kind: &dyn Fn(CallKind) -> bool| {
        calls
            .iter()
            .find(|call| call.number == row.number && kind(call.kind))
    };
    let waiting = of_it(&|kind| matches!(kind, CallKind::Late | CallKind::Waits));
    let because = match row.word.as_str() {
        "part" | "machine work" => waiting.map(|call| call.what.clone()),
        "consent" => of_it(&|kind| matches!(kind, CallKind::Ask | CallKind::SaidNo))
            .map(|call| call.what.clone()),
        "ready" | "papers" => snap
            .caller()
            .sees_prices()
            .then(|| balance(order))
            .flatten()
            .map(words::to_pay),
        _ => row.stopped.clone(),
    };
    let last = times.iter().map(|(_, _, to)| *to).fold(f64::NAN, f64::max);
    let stands = matches!(row.word.as_str(), "part" | "machine work" | "consent");
    let waits = stands.then(|| {
        let from = if last.is_nan() { 0.0 } else { last };
        let due = goods::last_due(order).map(|due| words::due(day_words(&due.to_string())));
        (from, 24.0, due.unwrap_or_default())
    });
    let promised = promised(order).map(|at| clock.since_midnight(at));
    let slips = of_it(&|kind| kind == CallKind::Promise).is_some();
    let mut people: BTreeSet<PersonId> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Assigned { person } => Some(person.clone()),
            _ => None,
        })
        .collect();
    people.extend(times.iter().map(|(person, ..)| person.clone()));
    debug_assert_eq!(world.number_of(id)?, Some(row.number));
    Ok(DayOrder {
        people: people
            .iter()
            .map(|person| first_name(&names.person(person)))
            .collect(),
        worked: times.iter().map(|(_, from, to)| (*from, *to)).collect(),
        planned: Vec::new(),
        often: None,
        waits,
        promised,
        slips,
        because: because.unwrap_or_else(|| row.complaint.clone()),
        row,
    })
}

/// A vehicle that is to come, with when.
pub(super) fn expected(row: &OrderRow, at: Timestamp, rules: &Rules) -> ExpectedView {
    let late = SignedDuration::from_mins(COMES_LATE);
    ExpectedView {
        number: row.number,
        vehicle: row.vehicle.clone(),
        customer: row.customer.clone(),
        complaint: row.complaint.clone(),
        at: row.comes.clone().unwrap_or_default(),
        time: at,
        late: at.checked_add(late).is_ok_and(|late| late <= rules.now),
    }
}

/// What whoever looks is to work on today, from now on.
fn mine(snap: &Snapshot<'_>, plan: Option<&DayPlan>, orders: &[DayOrder]) -> Vec<MineView> {
    let (Some(plan), Some(person)) = (plan, &snap.caller().person) else {
        return Vec::new();
    };
    let Some(at) = plan.people.iter().position(|one| one == person) else {
        return Vec::new();
    };
    let now = plan.calendar.minute(snap.now());
    let own = plan.plan.placed.iter().filter(|one| {
        one.people.contains(&at) && one.to > now && plan.calendar.hour(one.from) < 24.0
    });
    own.map(|one| {
        let planned = &plan.orders[one.order];
        let floor = &plan.plan.floor;
        let stall = one.stall.map(|stall| floor.stalls[stall].name.clone());
        let row = orders
            .iter()
            .find(|order| order.row.number == planned.number);
        let place = row.and_then(|order| order.row.place.clone());
        MineView {
            number: planned.number,
            vehicle: planned.vehicle.clone(),
            what: floor.orders[one.order].phases[one.phase].what.clone(),
            from: plan.calendar.say(one.from),
            to: plan.calendar.say(one.to),
            stands: place.filter(|place| stall.as_ref().is_some_and(|stall| stall != place)),
            stall,
            running: one.from <= now,
        }
    })
    .collect()
}

fn first_name(name: &str) -> String {
    name.split_whitespace().next().unwrap_or(name).to_owned()
}

/// What the customer still has to pay.
fn balance(order: &Order) -> Option<crate::Amount> {
    let totals = desk::totals(order);
    let of = totals
        .into_iter()
        .find(|total| total.payer == record::v1::codes::PayerForm::Customer)?;
    Some(of.balance)
}

/// A vehicle that goes home today, or stands ready.
fn goes_home(
    snap: &Snapshot<'_>,
    order: &Order,
    row: &OrderRow,
    clock: &Hours,
) -> Option<HomeView> {
    let today = promised(order).is_some_and(|at| clock.is_today(at));
    let ready = row.word == "ready";
    (!row.handed_over && (today || ready)).then(|| HomeView {
        number: row.number,
        vehicle: row.vehicle.clone(),
        customer: row.customer.clone(),
        hour: row.promised.clone(),
        ready,
        to_pay: snap
            .caller()
            .sees_prices()
            .then(|| balance(order))
            .flatten(),
    })
}

/// Each stall with what stands in it, then what stands elsewhere: outside too, by the name of the
/// place where that is told.
fn places(snap: &Snapshot<'_>, orders: Vec<DayOrder>) -> Vec<DayPlace> {
    let stalls = snap.world().shop.stalls();
    let mut out: Vec<DayPlace> = Vec::new();
    let mut elsewhere = orders;
    let stalls = stalls.iter().filter(|one| one.2 != StallIs::Outside);
    for (nth, (id, name, sort)) in stalls.enumerate() {
        let here = |one: &DayOrder| one.row.stall.as_deref() == Some(id.as_str());
        let (there, rest): (Vec<_>, Vec<_>) = elsewhere.into_iter().partition(here);
        elsewhere = rest;
        let place = DayPlace {
            name: (nth + 1).to_string(),
            called: snap.texts().text(*name),
            yard: false,
            lift: matches!(sort, StallIs::Lift),
            order: None,
        };
        if there.is_empty() {
            out.push(place);
        } else {
            // Two that were told to one stall both show.
            out.extend(there.into_iter().map(|order| DayPlace {
                order: Some(order),
                ..place.clone()
            }));
        }
    }
    out.extend(elsewhere.into_iter().enumerate().map(|(nth, order)| {
        DayPlace {
            name: words::yard_letter(nth + 1),
            called: order
                .row
                .place
                .clone()
                .unwrap_or_else(|| words::not_placed_yet().to_owned()),
            yard: true,
            lift: false,
            order: Some(order),
        }
    }));
    out
}

/// Everybody who works on vehicles, with what they worked on today.
fn people(
    snap: &Snapshot<'_>,
    orders: &[DayOrder],
    mut worked: BTreeMap<PersonId, Vec<(f64, f64, String)>>,
    plan: Option<&DayPlan>,
) -> Vec<DayPerson> {
    let shop = &snap.world().shop;
    let all = shop.people();
    let mut out = Vec::new();
    for (person, (name, roles)) in all {
        let mut times = worked.remove(person).unwrap_or_default();
        times.sort_by(|a, b| a.0.total_cmp(&b.0));
        times.dedup_by(|next, before| {
            // What touches on one vehicle is one bar.
            let touches = next.2 == before.2 && next.0 <= before.1 + NEAR.as_secs_f64() / 3600.0;
            if touches {
                before.1 = before.1.max(next.1);
            }
            touches
        });
        let works = roles
            .iter()
            .any(|role| matches!(role, repair::Role::Technician | repair::Role::Apprentice));
        let name = snap.texts().text(name);
        let first = first_name(&name);
        let assigned = orders.iter().any(|order| order.people.contains(&first));
        let planned = plan.map_or_else(Vec::new, |plan| hours_of_person(plan, person));
        if !works && !assigned && times.is_empty() && planned.is_empty() {
            continue;
        }
        let last = times.last().map(|(_, _, vehicle)| vehicle.clone());
        let of = orders.iter().find(|order| match &last {
            Some(vehicle) => order.row.vehicle == *vehicle,
            None => order.people.contains(&first),
        });
        let at = of.map_or_else(String::new, |order| match &order.row.place {
            Some(place) => crate::say::within(place),
            None => order.row.vehicle.clone(),
        });
        out.push(DayPerson {
            name,
            at,
            worked: times,
            planned,
        });
    }
    out
}

/// The hours shown: a usual day, longer where somebody worked before it or promised after it.
fn shown_hours(orders: &[DayOrder], people: &[DayPerson], now: f64) -> (f64, f64) {
    let (mut from, mut to) = DAY;
    from = from.min(now);
    to = to.max(now + 1.0);
    for order in orders {
        let promised = order.promised.filter(|at| (0.0..24.0).contains(at));
        to = to.max(promised.map_or(to, |at| at + 0.5));
    }
    for person in people {
        for (start, end, _) in person.worked.iter().chain(&person.planned) {
            from = from.min(*start);
            to = to.max(*end);
        }
    }
    (from.floor().max(0.0), to.ceil().min(24.0))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_hours_shown_hold_what_was_worked_and_what_is_now() {
        let person = DayPerson {
            name: String::new(),
            at: String::new(),
            worked: vec![(6.5, 7.25, String::new())],
            planned: Vec::new(),
        };
        assert_eq!(shown_hours(&[], &[], 10.5), (8.0, 18.0));
        assert_eq!(shown_hours(&[], &[person], 19.2), (6.0, 21.0));
        assert_eq!(shown_hours(&[], &[], 23.9), (8.0, 24.0));
    }
}

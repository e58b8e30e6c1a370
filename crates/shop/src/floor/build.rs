//! The floor as the record tells it: stalls, people, and what is left of each order.

use super::calendar::Calendar;
use super::left::{Around, Left, Phases, Source, left};
use super::who::{ABLE, Able, TOLD, able, people, unique};
use crate::odds_of::Learnt;
use crate::phrases::floor as words;
use crate::say::in_each::InEach;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::view::{OrderRow, assigned, promised, rows_here, stands};
use phrases::Language;
use record::Stream;
use repair::{Order, OrderId, PersonId, Place, StallId, StallIs, System};
use stalls::{Does, Floor, Lift, Minute, Order as OnFloor, Running, Stall, Windows};
use std::collections::{BTreeMap, BTreeSet};

/// The floor, and what of it can't be planned.
pub struct Built {
    pub floor: Floor,
    pub calendar: Calendar,
    /// The orders on the floor, by their place in it.
    pub orders: Vec<Planned>,
    /// The people on the floor, by their place in it.
    pub people: Vec<PersonId>,
    pub not_planned: Vec<LeftOut>,
    /// What keeps all of it from being planned: in words, with the page where it is told.
    pub missing: Vec<InEach>,
    /// What it follows from, but for the time that passes.
    pub news: String,
}

/// An order on the floor.
#[derive(Debug, Clone, PartialEq)]
pub struct Planned {
    pub number: u64,
    pub vehicle: String,
    pub customer: String,
    pub source: Source,
    /// Whether somebody works on it at this moment.
    pub running: bool,
}

/// An order that can't be planned.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NotPlanned {
    pub number: u64,
    pub vehicle: String,
    /// Why, in words.
    pub why: String,
    /// The page of the order where what is missing is told.
    pub page: &'static str,
}

/// The same in every language.
pub struct LeftOut {
    pub number: u64,
    vehicle: String,
    why: InEach,
    page: &'static str,
}

impl LeftOut {
    /// As it is said in this language.
    pub fn said(&self, language: Language) -> NotPlanned {
        NotPlanned {
            number: self.number,
            vehicle: self.vehicle.clone(),
            why: self.why.said(language).to_owned(),
            page: self.page,
        }
    }
}

/// An order on its way to the floor.
struct Coming {
    row: OrderRow,
    id: OrderId,
    promise: Option<Minute>,
    assigned: BTreeSet<PersonId>,
    left: Result<Box<Phases>, (InEach, &'static str)>,
}

/// Builds the floor from the record.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn build(snap: &Snapshot<'_>) -> Result<Built, Trouble> {
    let rules = snap.rules();
    let calendar = Calendar::of(&rules);
    let now = calendar.minute(rules.now);
    let shop = &snap.world().shop;
    let mut missing = Vec::new();
    let opening = match shop.hours(None) {
        Some(week) => calendar.windows(week).minus(&calendar.off(shop, None)),
        None => {
            missing.push(InEach::of(words::no_opening_hours));
            Windows::default()
        }
    };
    let (mut floor, stall_ids) = stalls(snap, now, &opening);
    // Without hours nothing else needs to be looked at.
    let coming = match missing.is_empty() {
        true => coming(snap, &calendar, &opening, now)?,
        false => Vec::new(),
    };
    let named = coming.iter().flat_map(|one| &one.assigned).collect();
    let (people, on_floor) = people(snap, &calendar, &opening, &named);
    floor.people = on_floor;
    if floor.stalls.is_empty() {
        missing.push(InEach::of(words::no_stalls));
    }
    if people.is_empty() {
        missing.push(InEach::of(words::nobody_works));
    }
    if missing.is_empty() && opening.end().is_none_or(|end| end <= now) {
        missing.push(InEach::of(words::closed_ahead));
    }
    let skills: Vec<&[System]> = people.iter().map(|person| shop.works_on(person)).collect();
    let mut built = Built {
        news: format!("{:?}", (&floor.stalls, &floor.people, &opening, &skills)),
        floor,
        calendar,
        orders: Vec::new(),
        people,
        not_planned: Vec::new(),
        missing,
    };
    built.take(snap, coming, &stall_ids);
    Ok(built)
}

fn stalls(snap: &Snapshot<'_>, now: Minute, opening: &Windows) -> (Floor, Vec<StallId>) {
    let shop = &snap.world().shop;
    let all = shop.stalls();
    let names = unique(all.iter().map(|(_, name, _)| snap.texts().text(*name)));
    let stalls = all.iter().zip(names).map(|((.., sort), name)| Stall {
        name,
        lift: matches!(sort, StallIs::Lift).then(Lift::default),
        ..Stall::default()
    });
    let floor = Floor {
        now,
        opening: opening.clone(),
        stalls: stalls.collect(),
        ..Floor::default()
    };
    (floor, all.into_iter().map(|(id, ..)| id.clone()).collect())
}

/// The orders that are here, each with what is left of it.
fn coming(
    snap: &Snapshot<'_>,
    calendar: &Calendar,
    opening: &Windows,
    now: Minute,
) -> Result<Vec<Coming>, Trouble> {
    let learnt = Learnt::of(snap)?;
    let around = Around {
        snap,
        calendar,
        opening,
        learnt: &learnt,
        now,
    };
    let world = snap.world();
    let mut out = Vec::new();
    for row in rows_here(snap)? {
        let Some(id) = world
            .order_numbered(row.number)?
            .filter(|_| !row.handed_over)
        else {
            continue;
        };
        let order = world.order(&id)?;
        let left = match known(snap, &id, &order)? {
            Some(why) => Err((why, "")),
            None => match left(&around, &order, &row)? {
                Left::Nothing => continue,
                Left::Phases(phases) => Ok(phases),
                Left::Unknown(why, page) => Err((why, page)),
            },
        };
        out.push(Coming {
            promise: promised(&order).map(|at| calendar.minute(at)),
            assigned: assigned_to(&order),
            row,
            id,
            left,
        });
    }
    out.sort_by_key(|one| one.row.number);
    Ok(out)
}

fn assigned_to(order: &Order) -> BTreeSet<PersonId> {
    assigned(order).into_iter().map(PersonId::new).collect()
}

/// What keeps anything from being known of an order.
fn known(snap: &Snapshot<'_>, id: &OrderId, order: &Order) -> Result<Option<InEach>, Trouble> {
    let unread = snap.world().unread(&Stream::Order(id.clone()))?;
    if unread.is_some() {
        return Ok(Some(InEach::of(words::record_unread)));
    }
    let away = stands(order) == Some(Place::Away);
    Ok(away.then(|| InEach::of(words::not_here)))
}

impl Built {
    /// Takes in each order that can be planned; the others are told, and what can't roll of them
    /// holds its stall.
    fn take(&mut self, snap: &Snapshot<'_>, coming: Vec<Coming>, stalls: &[StallId]) {
        let stands = |row: &OrderRow| {
            let stall = row.stall.as_deref()?;
            stalls.iter().position(|id| id.as_str() == stall)
        };
        // Who can't roll keeps its place; of others only the first stands where it was told.
        let mut taken: BTreeMap<usize, u64> = BTreeMap::new();
        let still_first = coming.iter().filter(|one| !one.row.can_roll);
        for one in still_first.chain(coming.iter().filter(|one| one.row.can_roll)) {
            if let Some(stall) = stands(&one.row) {
                taken.entry(stall).or_insert(one.row.number);
            }
        }
        let mut ready = Vec::new();
        for one in coming {
            let stall = stands(&one.row).filter(|stall| taken[stall] == one.row.number);
            self.news.push_str(&news(&one, stall));
            let order = self.on_floor(snap, &one, stall);
            match order {
                Ok(order) => ready.push((one, stall, order)),
                Err((why, page)) => self.leave_out(&one.row, stall, why, page),
            }
        }
        let mut at_work: BTreeSet<usize> = BTreeSet::new();
        for (one, stall, (mut order, able)) in ready {
            for (start, people) in [(TOLD, &able.told), (ABLE, &able.all)] {
                let label = format!("{start}{}", one.row.number);
                for person in people {
                    self.floor.people[*person].skills.push(label.clone());
                }
            }
            // Who is told at two vehicles is at the first of them.
            if let Some(running) = &order.running
                && running.people.iter().any(|who| at_work.contains(who))
            {
                order.running = None;
            }
            let running = order.running.iter().flat_map(|running| &running.people);
            at_work.extend(running.copied());
            let is_running = order.running.is_some();
            self.floor.orders.push(order);
            if let Some(why) = self.fault(one.row.number) {
                self.floor.orders.pop();
                self.leave_out(&one.row, stall, why, "promise");
                continue;
            }
            let source = one.left.map_or(Source::Told, |phases| phases.source);
            self.orders.push(Planned {
                number: one.row.number,
                vehicle: one.row.vehicle,
                customer: one.row.customer,
                source,
                running: is_running,
            });
        }
    }

    /// What keeps the order that came last from being planned.
    fn fault(&self, number: u64) -> Option<InEach> {
        if !self.missing.is_empty() {
            return None;
        }
        let start = format!("{number} ");
        let found = || {
            let faults = self.floor.faults();
            let own = faults.iter().find(|fault| fault.place.starts_with(&start));
            own.or(faults.first()).map(|fault| fault.what.clone())
        };
        found()?;
        Some(InEach::of(|| found().unwrap_or_default()))
    }

    fn leave_out(&mut self, row: &OrderRow, stall: Option<usize>, why: InEach, page: &'static str) {
        if let Some(stall) = stall.filter(|_| !row.can_roll) {
            self.floor.stalls[stall].held = Some(name(row));
        }
        self.not_planned.push(LeftOut {
            number: row.number,
            vehicle: row.vehicle.clone(),
            why,
            page,
        });
    }

    /// An order as the floor takes it, and who can do it.
    fn on_floor(
        &self,
        snap: &Snapshot<'_>,
        one: &Coming,
        stall: Option<usize>,
    ) -> Result<(OnFloor, Able), (InEach, &'static str)> {
        let left = one.left.as_ref().map_err(Clone::clone)?;
        if !one.row.can_roll && stall.is_none() {
            let why = match &one.row.stall {
                Some(_) => InEach::of(words::another_in_its_stall),
                None => InEach::of(words::stall_not_told),
            };
            return Err((why, "#place"));
        }
        let able = able(snap, &self.people, &one.assigned, left.skill)?;
        let label = format!("{TOLD}{}", one.row.number);
        let mut phases = left.phases.clone();
        for phase in &mut phases {
            if let Does::Work(work) = &mut phase.does {
                work.skill = Some(label.clone());
            }
        }
        let works = matches!(phases.first().map(|phase| &phase.does), Some(Does::Work(_)));
        let at_it = left.at_it.iter().rev();
        let mut at_it: Vec<usize> = at_it
            .filter_map(|one| self.people.iter().position(|person| *person == one.person))
            .filter(|person| able.told.contains(person))
            .collect();
        at_it.truncate(1);
        let runs = works && stall.is_some() && !at_it.is_empty();
        let order = OnFloor {
            name: name(&one.row),
            promise: one.promise,
            stands_in: stall,
            rolls: one.row.can_roll,
            running: runs.then_some(Running {
                since: self.floor.now,
                people: at_it,
            }),
            phases,
            ..OnFloor::default()
        };
        Ok((order, able))
    }
}

fn name(row: &OrderRow) -> String {
    format!("{} {}", row.number, row.vehicle)
}

/// What an order's place in a plan follows from.
fn news(one: &Coming, stall: Option<usize>) -> String {
    let left = match &one.left {
        Ok(phases) => {
            let at_it: Vec<&PersonId> = phases.at_it.iter().map(|one| &one.person).collect();
            format!("{} {:?} {at_it:?}", phases.news, phases.skill)
        }
        Err((why, _)) => why.code().to_owned(),
    };
    format!(
        "|{} {:?} {stall:?} {:?} {left}",
        one.id, one.promise, one.assigned
    )
}

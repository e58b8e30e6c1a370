//! The floor as the record tells it: stalls, people, and what is left of each order.

use super::calendar::Calendar;
use super::fits::{Figures, figures, lift};
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
use repair::{Order, OrderId, PersonId, Place, StallId, StallIs, System, expected};
use stalls::{Does, Floor, Minute, Order as OnFloor, Running, Spread, Stall, StallNeed, Windows};
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
    /// What nobody told of the vehicle, and so is not checked on a lift whose limit is known.
    pub unchecked: Vec<Unchecked>,
}

/// What of a vehicle is not checked, since nobody told it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Unchecked {
    Weight,
    Height,
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

/// So long after its time a vehicle may still come without anybody asking after it.
pub(crate) const COMES_LATE: Minute = 30;

/// An order on its way to the floor.
struct Coming {
    row: OrderRow,
    id: OrderId,
    promise: Option<Minute>,
    assigned: BTreeSet<PersonId>,
    /// When the vehicle comes, if it is not here.
    arrives: Option<Spread>,
    /// Whether it stands outside.
    outside: bool,
    figures: Figures,
    left: Result<Box<Phases>, (InEach, &'static str)>,
}

/// The places of the shop: its stalls by their place on the floor, and those outside.
struct Places {
    stalls: Vec<StallId>,
    outside: BTreeSet<StallId>,
}

impl Places {
    /// Whether a vehicle stands outside.
    fn stands_outside(&self, order: &Order) -> bool {
        match stands(order) {
            Some(Place::Stall(stall)) => self.outside.contains(&stall),
            Some(Place::Yard) => true,
            Some(Place::Away) | None => false,
        }
    }
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
    let (mut floor, places) = stalls(snap, now, &opening);
    // Without hours nothing else needs to be looked at.
    let (coming, done_outside) = match missing.is_empty() {
        true => coming(snap, &calendar, &opening, now, &places)?,
        false => Default::default(),
    };
    let named = coming.iter().flat_map(|one| &one.assigned).collect();
    let helps = coming.iter().any(Coming::asks_for_helpers);
    let (people, on_floor) = people(snap, &calendar, &opening, &named, helps);
    floor.people = on_floor;
    if floor.stalls.is_empty() {
        missing.push(InEach::of(words::no_stalls));
    }
    if people.is_empty() {
        missing.push(InEach::of(words::nobody_works));
    }
    if let Some(stall) = in_a_circle(&floor.stalls) {
        let name = floor.stalls[stall].name.clone();
        missing.push(InEach::of(|| words::stalls_cross_in_a_circle(&name)));
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
    built.take(snap, coming, &places, done_outside);
    Ok(built)
}

fn stalls(snap: &Snapshot<'_>, now: Minute, opening: &Windows) -> (Floor, Places) {
    let shop = &snap.world().shop;
    let (outside, all): (Vec<_>, Vec<_>) = shop
        .stalls()
        .into_iter()
        .partition(|(.., sort)| *sort == StallIs::Outside);
    let names = unique(all.iter().map(|(_, name, _)| snap.texts().text(*name)));
    let place = |id: &StallId| all.iter().position(|(other, ..)| *other == id);
    let stalls = all.iter().zip(names).map(|((id, _, sort), name)| {
        let fitted = shop.fitted(id);
        let crosses = fitted.map_or(&[][..], |fitted| fitted.crosses);
        Stall {
            name,
            lift: matches!(sort, StallIs::Lift).then(|| lift(fitted)),
            // One that is no more is crossed no more.
            crosses: crosses.iter().filter_map(place).collect(),
            ..Stall::default()
        }
    });
    let floor = Floor {
        now,
        opening: opening.clone(),
        stalls: stalls.collect(),
        ..Floor::default()
    };
    let places = Places {
        stalls: all.into_iter().map(|(id, ..)| id.clone()).collect(),
        outside: outside.into_iter().map(|(id, ..)| id.clone()).collect(),
    };
    (floor, places)
}

/// A stall to which one comes only by crossing itself, if there is one.
fn in_a_circle(stalls: &[Stall]) -> Option<usize> {
    let reaches_itself = |stall: &usize| {
        let mut seen = BTreeSet::new();
        let mut open = stalls[*stall].crosses.clone();
        while let Some(next) = open.pop() {
            if seen.insert(next) {
                open.extend(&stalls[next].crosses);
            }
        }
        seen.contains(stall)
    };
    (0..stalls.len()).find(reaches_itself)
}

/// The orders that are here or come, each with what is left of it; and how many more stand outside
/// on which nothing is left.
fn coming(
    snap: &Snapshot<'_>,
    calendar: &Calendar,
    opening: &Windows,
    now: Minute,
    places: &Places,
) -> Result<(Vec<Coming>, usize), Trouble> {
    let learnt = Learnt::of(snap)?;
    let around = Around {
        snap,
        calendar,
        opening,
        learnt: &learnt,
        now,
    };
    let world = snap.world();
    let (mut out, mut done_outside) = (Vec::new(), 0);
    for row in rows_here(snap)? {
        let Some(id) = world
            .order_numbered(row.number)?
            .filter(|_| !row.handed_over)
        else {
            continue;
        };
        let order = world.order(&id)?;
        let comes = expected(&order).map(|at| calendar.minute(at));
        let outside = comes.is_none() && places.stands_outside(&order);
        let left = match known(snap, &id, &order, comes, now)? {
            Some(why) => Err(why),
            None => match left(&around, &order, &row)? {
                Left::Nothing => {
                    done_outside += usize::from(outside);
                    continue;
                }
                Left::Phases(phases) => Ok(phases),
                Left::Unknown(why, page) => Err((why, page)),
            },
        };
        out.push(Coming {
            arrives: comes.map(|at| Spread::new(at, at, at + COMES_LATE)),
            figures: figures(snap, &order)?,
            promise: promised(&order).map(|at| calendar.minute(at)),
            assigned: assigned_to(&order),
            outside,
            row,
            id,
            left,
        });
    }
    out.sort_by_key(|one| one.row.number);
    Ok((out, done_outside))
}

fn assigned_to(order: &Order) -> BTreeSet<PersonId> {
    assigned(order).into_iter().map(PersonId::new).collect()
}

/// What keeps anything from being known of an order, and the page where that is told.
fn known(
    snap: &Snapshot<'_>,
    id: &OrderId,
    order: &Order,
    comes: Option<Minute>,
    now: Minute,
) -> Result<Option<(InEach, &'static str)>, Trouble> {
    let unread = snap.world().unread(&Stream::Order(id.clone()))?;
    if unread.is_some() {
        return Ok(Some((InEach::of(words::record_unread), "")));
    }
    if let Some(at) = comes {
        let calendar = Calendar::of(&snap.rules());
        let late = at.saturating_add(COMES_LATE) <= now;
        let why = || InEach::of(|| words::did_not_come(calendar.say(at)));
        return Ok(late.then(|| (why(), "#place")));
    }
    let away = stands(order) == Some(Place::Away);
    Ok(away.then(|| (InEach::of(words::not_here), "#place")))
}

impl Coming {
    fn asks_for_helpers(&self) -> bool {
        let phases = self.left.iter().flat_map(|left| &left.phases);
        let mut work = phases.filter_map(|phase| match &phase.does {
            Does::Work(work) => Some(work),
            Does::Wait(_) => None,
        });
        work.any(|work| work.helpers > 0)
    }

    /// What is not known of the vehicle and would have to be on one of these lifts.
    fn unchecked(&self, stalls: &[Stall]) -> Vec<Unchecked> {
        let phases = self.left.iter().flat_map(|left| &left.phases);
        let mut needs = phases.map(|phase| match &phase.does {
            Does::Work(work) => work.stall,
            Does::Wait(_) => StallNeed::No,
        });
        if !needs.any(|need| need == StallNeed::Lift) {
            return Vec::new();
        }
        let known = |limit: fn(&stalls::Lift) -> Option<u32>| {
            let mut lifts = stalls.iter().filter_map(|stall| stall.lift.as_ref());
            lifts.any(|lift| limit(lift).is_some())
        };
        let weight = self.figures.weight_kg.is_none() && known(|lift| lift.carries_kg);
        let height = self.figures.height_mm.is_none() && known(|lift| lift.clears_mm);
        let weight = weight.then_some(Unchecked::Weight);
        weight
            .into_iter()
            .chain(height.then_some(Unchecked::Height))
            .collect()
    }
}

impl Built {
    /// Takes in each order that can be planned; the others are told, and what can't roll of them
    /// holds its stall, and what stands outside its place there. So many more stand outside on which
    /// nothing is left.
    fn take(
        &mut self,
        snap: &Snapshot<'_>,
        coming: Vec<Coming>,
        places: &Places,
        done_outside: usize,
    ) {
        let stands = |row: &OrderRow| {
            let stall = row.stall.as_deref()?;
            places.stalls.iter().position(|id| id.as_str() == stall)
        };
        let outside: BTreeSet<u64> = coming
            .iter()
            .filter(|one| one.outside)
            .map(|one| one.row.number)
            .collect();
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
            let unchecked = one.unchecked(&self.floor.stalls);
            let source = one.left.map_or(Source::Told, |phases| phases.source);
            self.orders.push(Planned {
                unchecked,
                number: one.row.number,
                vehicle: one.row.vehicle,
                customer: one.row.customer,
                source,
                running: is_running,
            });
        }
        // What is to be worked on leaves its place outside to what comes out for it.
        let left_out = self.not_planned.iter().map(|one| one.number);
        let stays = done_outside + left_out.filter(|one| outside.contains(one)).count();
        let told = (!places.outside.is_empty()).then_some(places.outside.len());
        self.floor.yard_places = told.map(|told| told.saturating_sub(stays));
        self.news
            .push_str(&format!("|{:?}", self.floor.yard_places));
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
                _ if one.outside => InEach::of(words::outside_and_cannot_roll),
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
            weight_kg: one.figures.weight_kg,
            height_mm: one.figures.height_mm,
            arrives: one.arrives.filter(|_| stall.is_none()),
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
        "|{} {:?} {stall:?} {:?} {:?} {:?} {left}",
        one.id, one.promise, one.assigned, one.arrives, one.figures
    )
}

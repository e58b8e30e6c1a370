//! A floor lived through, minute by minute, by people who don't know what is to come.
//!
//! Whoever is free takes the first vehicle in the plan's sequence that can be gone on with: its
//! part is there, somebody with the skill is here, a stall is free. Nobody waits for what might
//! come sooner. Every number is drawn by the name of its order and by how many phases are left, so
//! that two ways of doing things are compared on the same luck.

use crate::floor::{Does, Floor, Order, Running, Takes};
use crate::guard::{Vehicle, Where, is_safe, way_is_clear};
use crate::plan::Plan;
use crate::ready::{Ready, Sitting};
use crate::windows::{FAR, Minute};
use std::cmp::Reverse;
use std::collections::BinaryHeap;

/// In which sequence vehicles are taken.
#[derive(Clone, Copy, Debug)]
pub enum Policy<'p> {
    /// As the plan begins them; with its people and stalls where they are free.
    Plan(&'p Plan),
    /// As they came.
    FirstCome,
}

/// Where the luck comes from.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Luck {
    pub(crate) seed: u64,
    pub(crate) draw: u64,
    /// What has begun ends when it was to end from the start, not as far as one can tell by now.
    pub(crate) fate: bool,
}

/// A number above 0 and below 1.
fn number(luck: Luck, name: u64, left: usize) -> f64 {
    let mut mixed = luck.seed;
    for part in [luck.draw, name, left as u64] {
        mixed = mix(mixed ^ mix(part.wrapping_add(0x9e37_79b9_7f4a_7c15)));
    }
    #[allow(clippy::cast_precision_loss, reason = "53 bits are exact")]
    let number = (mixed >> 11) as f64 + 0.5;
    number / (1_u64 << 53) as f64
}

/// The finisher of `SplitMix64`.
fn mix(mut bits: u64) -> u64 {
    bits = (bits ^ (bits >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
    bits = (bits ^ (bits >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
    bits ^ (bits >> 31)
}

/// A name as a number (FNV-1a).
fn named(name: &str) -> u64 {
    name.bytes().fold(0xcbf2_9ce4_8422_2325, |hash, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0100_0000_01b3)
    })
}

/// When a vehicle comes that is not here yet.
pub(crate) fn arrival(order: &Order, luck: Luck, now: Minute) -> Option<Minute> {
    let passed = (!luck.fate).then_some(now);
    let drawn = order
        .arrives?
        .drawn(number(luck, named(&order.name), 0), passed);
    Some(drawn.max(now + 1))
}

/// Whether something has to come while the vehicle is in its stall.
fn waits_inside(order: &Order, sitting: &Sitting) -> bool {
    let phases = order.phases[sitting.first..sitting.end].iter();
    let mut comes = phases.filter(|phase| match &phase.does {
        Does::Wait(wait) => matches!(wait.takes, Takes::Comes(_)),
        Does::Work(_) => false,
    });
    sitting.seated && !sitting.begun && comes.next().is_some()
}

/// What may happen next.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Event {
    Done(usize),
    Here(usize),
    Opens(usize),
    /// A vehicle that was to be taken apart no earlier.
    MayBegin(usize),
}

/// A vehicle on its way through.
#[derive(Clone, Debug)]
struct Course {
    phase: usize,
    sitting: usize,
    /// In its stall for a stretch that is not over.
    seated: bool,
    here: bool,
    at: Where,
    since: Option<Minute>,
    crew: Vec<usize>,
    end: Option<Minute>,
}

/// The room in which floors are lived through.
pub(crate) struct Life<'r, 'f> {
    ready: &'r Ready<'f>,
    names: Vec<u64>,
    crosses: Vec<Vec<usize>>,
    /// Orders in the sequence in which they are taken.
    sequence: Vec<usize>,
    /// By order and phase: who was planned, and where.
    wished: Vec<Vec<(Option<usize>, Option<usize>)>>,
    /// By order and stretch: in the plan it waits inside for something to come, so it does not take
    /// the last stall of its kind earlier than planned.
    not_before: Vec<Vec<Option<Minute>>>,
    worth: Vec<u32>,
    courses: Vec<Course>,
    held: Vec<Option<usize>>,
    busy: Vec<bool>,
    opens: Vec<Minute>,
    outside: usize,
    events: BinaryHeap<Reverse<(Minute, Event)>>,
    now: Minute,
}

impl<'r, 'f> Life<'r, 'f> {
    pub(crate) fn new(ready: &'r Ready<'f>, policy: Policy) -> Self {
        let floor = ready.floor;
        let orders = floor.orders.len();
        let mut wished: Vec<Vec<_>> = (floor.orders.iter())
            .map(|order| vec![(None, None); order.phases.len()])
            .collect();
        let mut sequence: Vec<usize> = (0..orders).collect();
        let mut not_before: Vec<Vec<_>> = (ready.sittings.iter())
            .map(|sittings| vec![None; sittings.len()])
            .collect();
        match policy {
            Policy::Plan(plan) => {
                let place = |order: &usize| plan.sequence.iter().position(|one| one == order);
                sequence.sort_by_key(|order| place(order).unwrap_or(usize::MAX));
                for one in &plan.placed {
                    let wish = wished
                        .get_mut(one.order)
                        .and_then(|of| of.get_mut(one.phase));
                    if let Some(wish) = wish {
                        *wish = (one.people.first().copied(), one.stall);
                    }
                }
                for (order, sittings) in ready.sittings.iter().enumerate() {
                    for (at, sitting) in sittings.iter().enumerate() {
                        if waits_inside(&floor.orders[order], sitting) {
                            let first = plan.of(order, sitting.first);
                            not_before[order][at] = first.map(|first| first.from);
                        }
                    }
                }
            }
            Policy::FirstCome => {
                let comes =
                    |order: &Order| order.arrives.map_or(Minute::MIN, |spread| spread.mean());
                sequence.sort_by_key(|order| comes(&floor.orders[*order]));
            }
        }
        Self {
            ready,
            names: (floor.orders.iter())
                .map(|order| named(&order.name))
                .collect(),
            crosses: floor
                .stalls
                .iter()
                .map(|stall| stall.crosses.clone())
                .collect(),
            sequence,
            wished,
            not_before,
            worth: floor.stalls.iter().map(crate::Stall::good_for).collect(),
            courses: Vec::new(),
            held: Vec::new(),
            busy: Vec::new(),
            opens: Vec::new(),
            outside: 0,
            events: BinaryHeap::new(),
            now: floor.now,
        }
    }

    /// Lives on until everything is done, until `only` is done, or until a minute; answers when
    /// each order was ready, as far as it was.
    pub(crate) fn live(
        &mut self,
        luck: Luck,
        only: Option<usize>,
        until: Minute,
    ) -> Vec<Option<Minute>> {
        self.begin(luck);
        let done = |this: &Self| match only {
            Some(order) => this.courses[order].end.is_some(),
            None => this.courses.iter().all(|course| course.end.is_some()),
        };
        while !done(self) {
            match self.events.peek() {
                Some(Reverse((at, _))) if *at <= until => self.now = *at,
                _ => break,
            }
            while let Some(Reverse((at, event))) = self.events.peek().copied() {
                if at > self.now {
                    break;
                }
                self.events.pop();
                self.happens(event);
            }
            while self.dispatch(luck) {}
            self.wake();
        }
        self.courses.iter().map(|course| course.end).collect()
    }

    fn begin(&mut self, luck: Luck) {
        let floor = self.ready.floor;
        self.now = floor.now;
        self.events.clear();
        self.held = vec![None; floor.stalls.len()];
        self.busy = vec![false; floor.people.len()];
        self.opens = vec![Minute::MIN; floor.people.len()];
        self.outside = 0;
        self.courses.clear();
        for (at, order) in floor.orders.iter().enumerate() {
            let first = self.ready.sittings[at].first();
            let seated = first.is_some_and(|first| first.begun && first.seated);
            let place = match order.stands_in {
                Some(stall) if seated => Where::Stall(stall),
                _ => Where::Street,
            };
            if let Where::Stall(stall) = place {
                self.held[stall] = Some(at);
            }
            self.courses.push(Course {
                phase: 0,
                sitting: 0,
                seated,
                here: order.arrives.is_none(),
                at: place,
                since: None,
                crew: Vec::new(),
                end: None,
            });
            if let Some(running) = &order.running {
                let end = self.end_of_running(at, running, luck);
                for person in &running.people {
                    self.busy[*person] = true;
                }
                self.courses[at].since = Some(running.since);
                self.courses[at].crew.clone_from(&running.people);
                self.events.push(Reverse((end, Event::Done(at))));
            }
            for may in self.not_before[at].iter().flatten() {
                if *may > self.now {
                    self.events.push(Reverse((*may, Event::MayBegin(at))));
                }
            }
            if let Some(comes) = arrival(order, luck, self.now) {
                self.events.push(Reverse((comes, Event::Here(at))));
            }
        }
        while self.dispatch(luck) {}
        self.wake();
    }

    fn phase_number(&self, order: usize, luck: Luck) -> f64 {
        let phases = self.ready.floor.orders[order].phases.len();
        number(luck, self.names[order], phases - self.courses[order].phase)
    }

    /// When that which runs now ends.
    fn end_of_running(&self, order: usize, running: &Running, luck: Luck) -> Minute {
        let ready = self.ready;
        let number = self.phase_number(order, luck);
        let drawn = |spread: crate::Spread, passed: Minute| {
            let told = (!luck.fate).then_some(passed);
            spread.drawn(number, told).max(passed + 1)
        };
        match &ready.floor.orders[order].phases[0].does {
            Does::Work(work) => {
                let passed = ready.worked(&running.people, running.since, self.now);
                let left = drawn(work.minutes, passed) - passed;
                ready.done(&running.people, self.now, left)
            }
            Does::Wait(wait) => match wait.takes {
                Takes::Minutes(spread) => {
                    let passed = self.now - running.since;
                    running.since + drawn(spread, passed)
                }
                Takes::Comes(spread) => drawn(spread, self.now),
            },
        }
    }

    fn happens(&mut self, event: Event) {
        match event {
            Event::Here(order) => self.courses[order].here = true,
            Event::Opens(_) | Event::MayBegin(_) => {}
            Event::Done(order) => {
                let sittings = &self.ready.sittings[order];
                let course = &mut self.courses[order];
                for person in course.crew.drain(..) {
                    self.busy[person] = false;
                }
                course.since = None;
                course.phase += 1;
                if course.phase == sittings[course.sitting].end {
                    course.sitting += 1;
                    course.seated = false;
                }
            }
        }
    }

    /// People who are idle and not here come when their hours begin.
    fn wake(&mut self) {
        for person in 0..self.busy.len() {
            let hours = &self.ready.hours[person];
            if self.busy[person] || hours.is_open(self.now) {
                continue;
            }
            let next = hours.next_open(self.now).unwrap_or(FAR);
            if self.opens[person] < next {
                self.opens[person] = next;
                self.events.push(Reverse((next, Event::Opens(person))));
            }
        }
    }

    /// Lets vehicles out and begins what can be begun; whether something changed.
    fn dispatch(&mut self, luck: Luck) -> bool {
        let mut changed = false;
        for at in 0..self.sequence.len() {
            let order = self.sequence[at];
            changed |= self.leave(order);
        }
        for at in 0..self.sequence.len() {
            let order = self.sequence[at];
            changed |= self.begin_next(order, luck);
        }
        changed
    }

    /// Takes a vehicle out of its stall if it has nothing more to do there.
    fn leave(&mut self, order: usize) -> bool {
        let course = &self.courses[order];
        if course.end.is_some() || course.seated || course.since.is_some() {
            return false;
        }
        let all_done = course.sitting == self.ready.sittings[order].len();
        let Where::Stall(stall) = course.at else {
            if all_done {
                self.outside -= usize::from(course.at == Where::Yard);
                let course = &mut self.courses[order];
                course.at = Where::Street;
                course.end = Some(self.now);
                return true;
            }
            return false;
        };
        let places = self.ready.floor.yard_places.unwrap_or(usize::MAX);
        let needs_place = !all_done && self.is_seated_again(order);
        if !way_is_clear(&self.crosses, &self.held, stall, order)
            || (needs_place && self.outside >= places)
        {
            return false;
        }
        let to = if needs_place {
            Where::Yard
        } else {
            Where::Street
        };
        if self.ready.tight && !self.stays_safe(order, to) {
            return false;
        }
        self.held[stall] = None;
        self.outside += usize::from(needs_place);
        let course = &mut self.courses[order];
        course.at = to;
        if all_done {
            course.end = Some(self.now);
        }
        true
    }

    fn is_seated_again(&self, order: usize) -> bool {
        let sittings = &self.ready.sittings[order][self.courses[order].sitting..];
        sittings.iter().any(|sitting| sitting.seated)
    }

    /// Whether all that were begun can still be finished with this vehicle there.
    fn stays_safe(&self, order: usize, to: Where) -> bool {
        let vehicles: Vec<Vehicle> = (0..self.courses.len())
            .map(|one| {
                let course = &self.courses[one];
                let moved = one == order;
                let now_seated = moved && matches!(to, Where::Stall(_));
                let from = course.sitting + usize::from(course.seated || now_seated);
                let sittings = self.ready.sittings[one].get(from..).unwrap_or_default();
                Vehicle {
                    at: if moved { to } else { course.at },
                    needs: (sittings.iter())
                        .filter(|sitting| sitting.seated)
                        .map(|sitting| sitting.stalls.as_slice())
                        .collect(),
                }
            })
            .collect();
        is_safe(&self.crosses, &vehicles)
    }

    /// Begins the next phase of an order, if everything for it is there.
    fn begin_next(&mut self, order: usize, luck: Luck) -> bool {
        let ready = self.ready;
        let course = &self.courses[order];
        let sittings = &ready.sittings[order];
        if course.end.is_some()
            || !course.here
            || course.since.is_some()
            || course.sitting >= sittings.len()
        {
            return false;
        }
        let phase = course.phase;
        let sitting = &sittings[course.sitting];
        let number = self.phase_number(order, luck);
        let end = match &ready.floor.orders[order].phases[phase].does {
            Does::Wait(wait) => match wait.takes {
                Takes::Minutes(spread) => self.now + spread.drawn(number, None),
                Takes::Comes(spread) => {
                    let told = (!luck.fate).then_some(ready.floor.now);
                    spread.drawn(number, told).max(self.now)
                }
            },
            Does::Work(work) => {
                let Some(crew) = self.crew(order, phase, work.helpers) else {
                    return false;
                };
                if sitting.seated && !course.seated {
                    let may = self.not_before[order][course.sitting];
                    if may.is_some_and(|may| self.now < may) && !self.room_to_spare(sitting) {
                        return false;
                    }
                    let Some(stall) = self.stall(order, sitting, phase) else {
                        return false;
                    };
                    self.enter(order, stall);
                }
                let minutes = work.minutes.drawn(number, None);
                let end = ready.done(&crew, self.now, minutes);
                for person in &crew {
                    self.busy[*person] = true;
                }
                self.courses[order].crew = crew;
                end
            }
        };
        self.courses[order].since = Some(self.now);
        self.events.push(Reverse((end, Event::Done(order))));
        true
    }

    /// Whether another stall of the kind stays free if one is taken.
    fn room_to_spare(&self, sitting: &Sitting) -> bool {
        let free = sitting
            .stalls
            .iter()
            .filter(|stall| self.held[**stall].is_none());
        free.count() > 1
    }

    fn crew(&self, order: usize, phase: usize, helpers: usize) -> Option<Vec<usize>> {
        let free = |one: &usize| !self.busy[*one] && self.ready.hours[*one].is_open(self.now);
        let able = self.ready.able[order][phase].iter().copied().filter(free);
        let wished = self.wished[order][phase].0;
        let skills = |one: usize| self.ready.floor.people[one].skills.len();
        let first = able.min_by_key(|one| (Some(*one) != wished, skills(*one), *one))?;
        let mut crew = vec![first];
        if helpers > 0 {
            let others = (0..self.busy.len())
                .filter(|one| *one != first)
                .filter(free);
            let mut others: Vec<usize> = others.collect();
            others.sort_by_key(|one| (skills(*one), *one));
            crew.extend(others.into_iter().take(helpers));
        }
        (crew.len() == helpers + 1).then_some(crew)
    }

    fn stall(&self, order: usize, sitting: &Sitting, phase: usize) -> Option<usize> {
        let at = self.courses[order].at;
        let wished = self.wished[order][phase].1;
        let clear = |stall: usize| way_is_clear(&self.crosses, &self.held, stall, order);
        if let Where::Stall(from) = at
            && !clear(from)
            && !sitting.stalls.contains(&from)
        {
            return None;
        }
        let fits = |stall: &usize| {
            let own = at == Where::Stall(*stall);
            let free = own || (self.held[*stall].is_none() && clear(*stall));
            free && (!self.ready.tight || self.stays_safe(order, Where::Stall(*stall)))
        };
        let open = sitting.stalls.iter().copied().filter(fits);
        open.min_by_key(|stall| (Some(*stall) != wished, self.worth[*stall], *stall))
    }

    fn enter(&mut self, order: usize, stall: usize) {
        match self.courses[order].at {
            Where::Stall(from) => self.held[from] = None,
            Where::Yard => self.outside -= 1,
            Where::Street => {}
        }
        self.held[stall] = Some(order);
        let course = &mut self.courses[order];
        course.at = Where::Stall(stall);
        course.seated = true;
    }

    /// The floor as it is after living on until a minute: what is done is gone.
    pub(crate) fn floor(&self, now: Minute) -> Floor {
        let floor = self.ready.floor;
        let orders = self.courses.iter().zip(&floor.orders);
        let orders = orders.filter(|(course, _)| course.end.is_none());
        let orders = orders.filter(|(course, order)| course.phase < order.phases.len());
        let orders = orders.map(|(course, order)| {
            let rolled = course.phase.checked_sub(1);
            let rolled = rolled.map_or(order.rolls, |last| order.phases[last].rolls);
            let apart =
                course.seated && course.since.is_some() && !order.phases[course.phase].rolls;
            Order {
                arrives: order.arrives.filter(|_| !course.here),
                stands_in: match course.at {
                    Where::Stall(stall) => Some(stall),
                    Where::Street | Where::Yard => None,
                },
                rolls: rolled && !apart,
                running: course.since.map(|since| Running {
                    since,
                    people: course.crew.clone(),
                }),
                phases: order.phases[course.phase..].to_vec(),
                ..order.clone()
            }
        });
        Floor {
            now,
            orders: orders.collect(),
            ..floor.clone()
        }
    }
}

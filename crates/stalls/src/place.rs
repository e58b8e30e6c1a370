//! Orders placed one stretch after another, each as early as what was placed before lets it.

mod marks;
mod outside;
mod people;
mod room;
mod stretch;
mod taken;

use crate::floor::{Does, Takes};
use crate::ready::{Ready, Sitting};
use crate::spread::Spread;
use crate::windows::Minute;
use marks::Marks;
pub(crate) use room::Room;
pub(crate) use taken::{Crew, MOST_HELPERS};
use taken::{fill, take};

/// A phase in its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Placed {
    pub order: usize,
    pub phase: usize,
    pub from: Minute,
    pub to: Minute,
    /// Who works on it, the first with the skill; nobody on a wait.
    pub people: Vec<usize>,
    /// The stall in which the vehicle stands.
    pub stall: Option<usize>,
}

/// A vehicle in a stall, from when it comes in until the stall is free again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Stay {
    pub order: usize,
    pub stall: usize,
    pub from: Minute,
    pub to: Minute,
    /// Its first phase there.
    pub first: usize,
    /// The phase after its last there.
    pub end: usize,
    /// Whether it was there before, so that nobody has to drive it in.
    pub was_there: bool,
}

/// Which of several ways is taken, for each phase: 0 is the best at hand.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Choices<'g> {
    genes: &'g [u8],
}

impl<'g> Choices<'g> {
    pub(crate) fn new(genes: &'g [u8]) -> Self {
        Self { genes }
    }

    fn at(self, index: usize) -> usize {
        self.genes.get(index).copied().map_or(0, usize::from)
    }
}

/// When something is planned to be done that has begun, or comes some time.
pub(crate) fn expected_end(ready: &Ready, order: usize) -> Minute {
    let it = &ready.floor.orders[order];
    let now = ready.floor.now;
    let running = it
        .running
        .as_ref()
        .expect("asked only where something runs");
    match &it.phases[0].does {
        Does::Work(work) => {
            let worked = ready.worked(&running.people, running.since, now);
            let left = left_of(work.minutes, worked);
            ready.done(&running.people, now, left)
        }
        Does::Wait(wait) => match wait.takes {
            Takes::Minutes(spread) => now + left_of(spread, now - running.since),
            Takes::Comes(spread) => comes(spread, now),
        },
    }
}

/// Minutes left of a spread when so many have passed: of its mean, or where that is over, of the
/// middle of what can still come.
fn left_of(spread: Spread, passed: Minute) -> Minute {
    if passed < spread.mean() {
        spread.mean() - passed
    } else if passed >= spread.most {
        1
    } else {
        spread.drawn(0.5, Some(passed)) - passed
    }
}

/// When something is expected that has not come by now.
pub(crate) fn comes(spread: Spread, now: Minute) -> Minute {
    if spread.mean() > now {
        spread.mean()
    } else if spread.most <= now {
        now + 1
    } else {
        spread.drawn(0.5, Some(now))
    }
}

/// A phase as it is being placed: the first of its people has the skill.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Slot {
    pub(crate) order: usize,
    pub(crate) phase: usize,
    pub(crate) from: Minute,
    pub(crate) to: Minute,
    pub(crate) crew: Crew,
    pub(crate) stall: Option<usize>,
}

/// Places orders in a room.
pub(crate) struct Placer<'r, 'f> {
    pub(crate) ready: &'r Ready<'f>,
    /// Where the choices of each order begin: one a phase for who, one a phase for where.
    offset: Vec<usize>,
    /// Ends of what runs.
    running: Vec<Option<Minute>>,
    pub(crate) room: Room,
    /// How the room was before anything was placed.
    empty: Room,
    marks: Marks,
    chain: Vec<Slot>,
    tried: Vec<Slot>,
    open: Vec<usize>,
}

impl<'r, 'f> Placer<'r, 'f> {
    pub(crate) fn new(ready: &'r Ready<'f>) -> Self {
        let floor = ready.floor;
        let mut offset = vec![0];
        for order in &floor.orders {
            offset.push(offset[offset.len() - 1] + 2 * order.phases.len());
        }
        let running = (0..floor.orders.len()).map(|order| {
            let runs = floor.orders[order].running.is_some();
            runs.then(|| expected_end(ready, order))
        });
        let running: Vec<Option<Minute>> = running.collect();
        let empty = Room::new(ready, &running);
        Self {
            ready,
            offset,
            running,
            room: empty.clone(),
            empty,
            marks: Marks::default(),
            chain: Vec::new(),
            tried: Vec::new(),
            open: Vec::new(),
        }
    }

    /// How many choices there are.
    pub(crate) fn choices(&self) -> usize {
        self.offset[self.offset.len() - 1]
    }

    /// The place of the choice of who does a phase; that of where is the next.
    pub(crate) fn choice(&self, order: usize, phase: usize) -> usize {
        self.offset[order] + 2 * phase
    }

    /// Places the next stretch of an order; with few places outside, all its stretches.
    fn place_next(&mut self, order: usize, choices: Choices) {
        let ready = self.ready;
        if self.room.next[order] >= ready.sittings[order].len() {
            return;
        }
        if ready.floor.yard_places.is_some() {
            self.place_whole(order, choices);
            return;
        }
        let sitting = &ready.sittings[order][self.room.next[order]];
        self.free_way(order, sitting, choices);
        if self.room.next[order] > 0 && sitting.begun {
            // It was placed to free a stall.
            return;
        }
        let from = self.room.free_at[order];
        let (stall, leaves) = self.best(order, sitting, from, choices);
        self.settle(order, sitting, stall, leaves);
    }

    /// Places first whoever holds a stall that this stretch cannot do without.
    fn free_way(&mut self, order: usize, sitting: &Sitting, choices: Choices) {
        if !sitting.seated {
            return;
        }
        let ready = self.ready;
        let is_held = |this: &Self, stall: usize| this.room.holds[stall].filter(|by| *by != order);
        let all_held = sitting
            .stalls
            .iter()
            .all(|one| is_held(self, *one).is_some());
        if all_held && let Some(by) = sitting.stalls.first().and_then(|one| is_held(self, *one)) {
            self.place_next(by, choices);
        }
        let stood = ready.floor.orders[order].stands_in;
        for stall in sitting.stalls.iter().chain(&stood) {
            for crossed in &ready.floor.stalls[*stall].crosses {
                if let Some(by) = is_held(self, *crossed) {
                    self.place_next(by, choices);
                }
            }
        }
    }

    /// Takes what `chain` holds.
    fn settle(&mut self, order: usize, sitting: &Sitting, stall: Option<usize>, leaves: Minute) {
        let ready = self.ready;
        let runs = ready.floor.orders[order].running.is_some();
        for slot in &self.chain {
            if !(slot.phase == 0 && runs) {
                for person in slot.crew.people() {
                    let own = &ready.own[*person];
                    let span = (own.worked(slot.from), own.worked(slot.to));
                    fill(&mut self.room.people[*person], span);
                }
            }
            self.room.free_at[order] = slot.to;
        }
        if let Some(stall) = stall {
            self.sit(order, sitting, stall, leaves);
        }
        self.room.slots.extend_from_slice(&self.chain);
        self.room.next[order] += 1;
        let late = ready.late(order, self.room.free_at[order] + sitting.shortest_after);
        let more = late.max(self.room.late[order]) - self.room.late[order];
        self.room.late[order] += more;
        self.room.all_late += more;
    }

    /// Takes the stall, and the way to it.
    fn sit(&mut self, order: usize, sitting: &Sitting, stall: usize, leaves: Minute) {
        let floor = self.ready.floor;
        let starts = self.chain.first().map_or(leaves, |slot| slot.from);
        let from = if sitting.begun {
            starts.min(floor.now)
        } else {
            starts
        };
        let passes = self.comes_out_over(order, stall);
        let room = &mut self.room;
        room.free_at[order] = room.free_at[order].max(leaves);
        let empty_before = room.stalls[stall].first().is_none_or(|one| one.0 >= from);
        let was_there = match room.last_stay[order] {
            Some(stay) => room.stays[stay].stall == stall && room.stays[stay].to == from,
            None => sitting.begun || floor.orders[order].stands_in == Some(stall) && empty_before,
        };
        // What is there was there the minute before: nobody slips past it at this one.
        let there = from - i64::from(sitting.begun);
        take(&mut room.stalls[stall], (there, leaves));
        for crossed in passes {
            room.crossed[*crossed].push(from);
        }
        for crossed in &floor.stalls[stall].crosses {
            if !sitting.begun {
                room.crossed[*crossed].push(from);
            }
            room.crossed[*crossed].push(leaves);
        }
        if room.holds[stall] == Some(order) {
            room.holds[stall] = None;
        }
        let worked = self.chain.iter().filter_map(|slot| {
            let own = &self.ready.own[*slot.crew.people().first()?];
            Some(own.worked(slot.to) - own.worked(slot.from.max(from)))
        });
        room.worked.push(worked.sum());
        room.last_stay[order] = Some(room.stays.len());
        room.stays.push(Stay {
            order,
            stall,
            from,
            to: leaves,
            first: sitting.first,
            end: sitting.end,
            was_there,
        });
    }
}

//! Orders placed one stretch after another, each as early as what was placed before lets it.

mod outside;
mod taken;

use crate::floor::{Does, Running, Takes};
use crate::ready::{Ready, Sitting};
use crate::spread::Spread;
use crate::windows::Minute;
pub(crate) use taken::{Crew, MOST_HELPERS};
use taken::{Taken, inside, overlaps, take};

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

/// The room in which orders are placed.
pub(crate) struct Placer<'r, 'f> {
    pub(crate) ready: &'r Ready<'f>,
    /// Where the choices of each order begin: one a phase for who, one a phase for where.
    offset: Vec<usize>,
    /// Ends of what runs.
    running: Vec<Option<Minute>>,
    people: Vec<Taken>,
    stalls: Vec<Taken>,
    /// Minutes at which somebody crosses this stall.
    crossed: Vec<Vec<Minute>>,
    /// Who stands in a stall for an unknown time, since the end of that stay is not placed yet.
    holds: Vec<Option<usize>>,
    yard: Taken,
    next: Vec<usize>,
    free_at: Vec<Minute>,
    last_stay: Vec<Option<usize>>,
    pub(crate) slots: Vec<Slot>,
    pub(crate) stays: Vec<Stay>,
    chain: Vec<Slot>,
    tried: Vec<Slot>,
}

/// To begin later by less than this is not worth trying.
const SHORTEST_PUT_OFF: Minute = 15;
/// How many later starts are tried, each half as late.
const PUT_OFF_TRIES: usize = 3;

impl<'r, 'f> Placer<'r, 'f> {
    pub(crate) fn new(ready: &'r Ready<'f>) -> Self {
        let floor = ready.floor;
        let mut offset = vec![0];
        for order in &floor.orders {
            offset.push(offset[offset.len() - 1] + 2 * order.phases.len());
        }
        let running = (0..floor.orders.len())
            .map(|order| {
                let runs = floor.orders[order].running.is_some();
                runs.then(|| expected_end(ready, order))
            })
            .collect();
        Self {
            ready,
            offset,
            running,
            people: vec![Vec::new(); floor.people.len()],
            stalls: vec![Vec::new(); floor.stalls.len()],
            crossed: vec![Vec::new(); floor.stalls.len()],
            holds: vec![None; floor.stalls.len()],
            yard: Vec::new(),
            next: vec![0; floor.orders.len()],
            free_at: vec![0; floor.orders.len()],
            last_stay: vec![None; floor.orders.len()],
            slots: Vec::new(),
            stays: Vec::new(),
            chain: Vec::new(),
            tried: Vec::new(),
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

    /// Places everything in this sequence; an order as often as it has stretches.
    pub(crate) fn place(&mut self, sequence: &[u16], choices: Choices) {
        self.clear();
        for token in sequence {
            self.place_next(usize::from(*token), choices);
        }
        // A sequence that leaves something out is completed.
        for order in 0..self.next.len() {
            while self.next[order] < self.ready.sittings[order].len() {
                self.place_next(order, choices);
            }
        }
    }

    fn clear(&mut self) {
        let floor = self.ready.floor;
        let lists = self.people.iter_mut().chain(&mut self.stalls);
        lists.for_each(Vec::clear);
        self.crossed.iter_mut().for_each(Vec::clear);
        self.holds.fill(None);
        self.yard.clear();
        self.next.fill(0);
        self.last_stay.fill(None);
        self.slots.clear();
        self.stays.clear();
        for (order, it) in floor.orders.iter().enumerate() {
            self.free_at[order] = it
                .arrives
                .map_or(floor.now, |spread| comes(spread, floor.now));
            let begun = self.ready.sittings[order]
                .first()
                .filter(|first| first.begun);
            if let (Some(_), Some(stall)) = (begun, it.stands_in) {
                self.holds[stall] = Some(order);
            }
            if let (Some(Running { since, people }), Some(end)) = (&it.running, self.running[order])
            {
                for person in people {
                    take(&mut self.people[*person], (*since, end));
                }
            }
        }
    }

    /// Places the next stretch of an order; with few places outside, all its stretches.
    fn place_next(&mut self, order: usize, choices: Choices) {
        let ready = self.ready;
        if self.next[order] >= ready.sittings[order].len() {
            return;
        }
        if ready.floor.yard_places.is_some() {
            self.place_whole(order, choices);
            return;
        }
        let sitting = &ready.sittings[order][self.next[order]];
        self.free_way(order, sitting, choices);
        if self.next[order] > 0 && sitting.begun {
            // It was placed to free a stall.
            return;
        }
        let from = self.free_at[order];
        let (stall, leaves) = self.best(order, sitting, from, choices);
        self.settle(order, sitting, stall, leaves);
    }

    /// Places first whoever holds a stall that this stretch cannot do without.
    fn free_way(&mut self, order: usize, sitting: &Sitting, choices: Choices) {
        if !sitting.seated {
            return;
        }
        let ready = self.ready;
        let is_held = |this: &Self, stall: usize| this.holds[stall].filter(|by| *by != order);
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

    /// The stall in which a stretch is done soonest, and when the stall is free again; of several
    /// that in which it stands, else the one that is good for least. Leaves its phases in `chain`.
    fn best(
        &mut self,
        order: usize,
        sitting: &Sitting,
        from: Minute,
        choices: Choices,
    ) -> (Option<usize>, Minute) {
        if !sitting.seated {
            let leaves = self.attempt(order, sitting, None, from, choices);
            return (None, leaves);
        }
        if sitting.begun {
            let stall = self.ready.floor.orders[order].stands_in;
            let leaves = self.attempt(order, sitting, stall, from, choices);
            return (stall, leaves);
        }
        let open: Vec<usize> = (sitting.stalls.iter().copied())
            .filter(|stall| self.holds[*stall].is_none_or(|by| by == order))
            .collect();
        let wanted = choices.at(self.choice(order, sitting.first) + 1);
        if let Some(at) = wanted.checked_sub(1) {
            let stall = open[at % open.len()];
            let leaves = self.attempt(order, sitting, Some(stall), from, choices);
            self.put_off(order, sitting, stall, leaves, choices);
            return (Some(stall), leaves);
        }
        // No stall lets it be done sooner than if all were free.
        let soonest = self.link(order, sitting, None, from, choices);
        let starts = self.chain.first().map_or(from, |slot| slot.from);
        let stood = self.stood_in(order).filter(|stall| open.contains(stall));
        let in_turn = stood.into_iter().chain(open.iter().copied());
        for stall in in_turn.clone() {
            if self.clash(order, stall, starts, soonest, false) == Ok(soonest) {
                for slot in &mut self.chain {
                    slot.stall = Some(stall);
                }
                self.put_off(order, sitting, stall, soonest, choices);
                return (Some(stall), soonest);
            }
        }
        let mut best: Option<(Minute, usize)> = None;
        for stall in in_turn {
            let leaves = self.attempt(order, sitting, Some(stall), from, choices);
            if best.is_none_or(|best| leaves < best.0) {
                best = Some((leaves, stall));
                std::mem::swap(&mut self.chain, &mut self.tried);
            }
        }
        std::mem::swap(&mut self.chain, &mut self.tried);
        let (leaves, stall) = best.expect("a stretch in a stall has a stall that suits it");
        self.put_off(order, sitting, stall, leaves, choices);
        (Some(stall), leaves)
    }

    /// Begins what `chain` holds later, as long as the vehicle leaves no later: so nothing is
    /// taken apart long before its part comes.
    fn put_off(
        &mut self,
        order: usize,
        sitting: &Sitting,
        stall: usize,
        leaves: Minute,
        choices: Choices,
    ) {
        let between = self.chain.windows(2).map(|pair| pair[1].from - pair[0].to);
        let phases = &self.ready.floor.orders[order].phases;
        let awaited = self
            .chain
            .iter()
            .filter(|slot| match &phases[slot.phase].does {
                Does::Wait(wait) => matches!(wait.takes, Takes::Comes(_)),
                Does::Work(_) => false,
            });
        let awaited: Minute = awaited.map(|slot| slot.to - slot.from).sum();
        let (Some(first), true) = (self.chain.first().copied(), awaited > 0) else {
            return;
        };
        let mut slack = awaited + between.sum::<Minute>();
        self.tried.clone_from(&self.chain);
        for _ in 0..PUT_OFF_TRIES {
            if slack < SHORTEST_PUT_OFF {
                break;
            }
            let end = self.link(order, sitting, Some(stall), first.from + slack, choices);
            let starts = self.chain.first().map_or(end, |slot| slot.from);
            if end <= leaves
                && self
                    .clash(order, stall, starts, end, false)
                    .is_ok_and(|to| to <= leaves)
            {
                return;
            }
            slack /= 2;
        }
        std::mem::swap(&mut self.chain, &mut self.tried);
    }

    fn stood_in(&self, order: usize) -> Option<usize> {
        match self.last_stay[order] {
            Some(stay) => Some(self.stays[stay].stall),
            None => self.ready.floor.orders[order].stands_in,
        }
    }

    /// Finds the first time from a minute on at which a stretch can be done in this stall.
    /// Leaves its phases in `chain`; answers when the stall is free again.
    fn attempt(
        &mut self,
        order: usize,
        sitting: &Sitting,
        stall: Option<usize>,
        from: Minute,
        choices: Choices,
    ) -> Minute {
        let mut from = from;
        loop {
            let end = self.link(order, sitting, stall, from, choices);
            let (Some(stall), Some(first)) = (stall, self.chain.first()) else {
                return end;
            };
            match self.clash(order, stall, first.from, end, sitting.begun) {
                Ok(leaves) => return leaves,
                Err(later) => from = later,
            }
        }
    }

    /// The stalls that a vehicle crosses to leave the one in which it stood at first.
    fn comes_out_over(&self, order: usize, to: usize) -> &'r [usize] {
        let ready: &'r Ready<'f> = self.ready;
        match (self.last_stay[order], ready.floor.orders[order].stands_in) {
            (None, Some(stood)) if stood != to => &ready.floor.stalls[stood].crosses,
            _ => &[],
        }
    }

    /// When a vehicle that is here from one minute to another leaves at last; or from when on it
    /// may be tried again.
    fn clash(
        &self,
        order: usize,
        stall: usize,
        from: Minute,
        to: Minute,
        begun: bool,
    ) -> Result<Minute, Minute> {
        let crosses = &self.ready.floor.stalls[stall].crosses;
        if !begun {
            let passes = crosses.iter().chain(self.comes_out_over(order, stall));
            let enters = passes.filter_map(|one| inside(&self.stalls[*one], from));
            if let Some(later) = enters.max() {
                return Err(later);
            }
        }
        let mut leaves = to;
        while let Some(later) = crosses
            .iter()
            .filter_map(|one| inside(&self.stalls[*one], leaves))
            .max()
        {
            leaves = later;
        }
        if let Some(later) = overlaps(&self.stalls[stall], from, leaves) {
            return Err(later);
        }
        let passing = self.crossed[stall].iter().copied();
        let passing = passing.filter(|at| from < *at && *at < leaves).min();
        passing.map_or(Ok(leaves), Err)
    }

    /// Links the phases of a stretch, each as early as can be.
    fn link(
        &mut self,
        order: usize,
        sitting: &Sitting,
        stall: Option<usize>,
        from: Minute,
        choices: Choices,
    ) -> Minute {
        self.chain.clear();
        let ready = self.ready;
        let it = &ready.floor.orders[order];
        let mut at = from;
        for phase in sitting.first..sitting.end {
            let runs = (phase == 0).then_some(it.running.as_ref()).flatten();
            let (from, to, crew) = if let (Some(running), Some(end)) = (runs, self.running[order]) {
                (running.since, end, Crew::of(&running.people))
            } else {
                match &it.phases[phase].does {
                    Does::Wait(wait) => match wait.takes {
                        Takes::Minutes(spread) => (at, at + spread.mean(), Crew::default()),
                        Takes::Comes(spread) => {
                            (at, at.max(comes(spread, ready.floor.now)), Crew::default())
                        }
                    },
                    Does::Work(work) => {
                        let wanted = choices.at(self.choice(order, phase));
                        let able = &ready.able[order][phase];
                        self.crew(able, wanted, work.helpers, at, work.minutes.mean())
                    }
                }
            };
            self.chain.push(Slot {
                order,
                phase,
                from,
                to,
                crew,
                stall,
            });
            at = to;
        }
        at
    }

    /// Who is done soonest, and when.
    fn crew(
        &self,
        able: &[usize],
        wanted: usize,
        helpers: usize,
        from: Minute,
        minutes: i64,
    ) -> (Minute, Minute, Crew) {
        let of = |person: usize| {
            let mut crew = Crew::of(&[person]);
            let mut span = self.together(crew.people(), from, minutes);
            for _ in 0..helpers.min(MOST_HELPERS) {
                let others = (0..self.people.len()).filter(|one| !crew.people().contains(one));
                let with = others.map(|one| {
                    let with = crew.with(one);
                    (self.together(with.people(), from, minutes), with)
                });
                if let Some((found, with)) = with.min_by_key(|with| (with.0.1, with.0.0)) {
                    (span, crew) = (found, with);
                }
            }
            (span.0, span.1, crew)
        };
        if let Some(at) = wanted.checked_sub(1) {
            return of(able[at % able.len()]);
        }
        let skills = |person: usize| self.ready.floor.people[person].skills.len();
        let found = able.iter().map(|one| (of(*one), skills(*one)));
        let best = found.min_by_key(|(found, skills)| (found.1, *skills));
        best.expect("somebody can do it").0
    }

    /// The first span from a minute on in which all of them are free and get this done.
    fn together(&self, people: &[usize], from: Minute, minutes: i64) -> (Minute, Minute) {
        if let [one] = people {
            return self.alone(*one, from, minutes);
        }
        let mut at = from;
        loop {
            let starts = self.ready.all_here(people, at);
            let ends = self.ready.done(people, starts, minutes);
            let busy = people
                .iter()
                .filter_map(|one| overlaps(&self.people[*one], starts, ends));
            match busy.max() {
                None => return (starts, ends),
                Some(later) => at = later,
            }
        }
    }

    /// The same for one, gap by gap: most gaps are too short even by the clock on the wall.
    fn alone(&self, person: usize, from: Minute, minutes: i64) -> (Minute, Minute) {
        let taken = &self.people[person];
        let mut next = taken.partition_point(|one| one.1 <= from);
        let mut at = from;
        loop {
            let gap_ends = taken.get(next).map_or(Minute::MAX, |one| one.0);
            if gap_ends - at >= minutes {
                let starts = self.ready.all_here(&[person], at);
                let ends = self.ready.done(&[person], starts, minutes);
                if ends <= gap_ends {
                    return (starts, ends);
                }
            }
            at = at.max(taken[next].1);
            next += 1;
        }
    }

    /// Takes what `chain` holds.
    fn settle(&mut self, order: usize, sitting: &Sitting, stall: Option<usize>, leaves: Minute) {
        let floor = self.ready.floor;
        let runs = floor.orders[order].running.is_some();
        let mut chain = std::mem::take(&mut self.chain);
        let starts = chain.first().map_or(leaves, |slot| slot.from);
        for slot in &chain {
            if !(slot.phase == 0 && runs) {
                for person in slot.crew.people() {
                    take(&mut self.people[*person], (slot.from, slot.to));
                }
            }
            self.free_at[order] = slot.to;
        }
        self.slots.append(&mut chain);
        self.chain = chain;
        if let Some(stall) = stall {
            let from = if sitting.begun {
                starts.min(floor.now)
            } else {
                starts
            };
            self.free_at[order] = self.free_at[order].max(leaves);
            let empty_before = self.stalls[stall].first().is_none_or(|one| one.0 >= from);
            let was_there = match self.last_stay[order] {
                Some(stay) => self.stays[stay].stall == stall && self.stays[stay].to == from,
                None => {
                    sitting.begun || floor.orders[order].stands_in == Some(stall) && empty_before
                }
            };
            // What is there was there the minute before: nobody slips past it at this one.
            let there = from - i64::from(sitting.begun);
            take(&mut self.stalls[stall], (there, leaves));
            for crossed in self.comes_out_over(order, stall) {
                self.crossed[*crossed].push(from);
            }
            for crossed in &floor.stalls[stall].crosses {
                if !sitting.begun {
                    self.crossed[*crossed].push(from);
                }
                self.crossed[*crossed].push(leaves);
            }
            if self.holds[stall] == Some(order) {
                self.holds[stall] = None;
            }
            self.last_stay[order] = Some(self.stays.len());
            self.stays.push(Stay {
                order,
                stall,
                from,
                to: leaves,
                first: sitting.first,
                end: sitting.end,
                was_there,
            });
        }
        self.next[order] += 1;
    }
}

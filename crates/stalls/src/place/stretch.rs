//! One stretch of an order: in which stall it is done soonest, and when.

use super::taken::{Crew, inside, overlaps};
use super::{Choices, Placer, Slot, comes};
use crate::floor::{Does, Takes};
use crate::ready::{Ready, Sitting};
use crate::windows::Minute;

/// To begin later by less than this is not worth trying.
const SHORTEST_PUT_OFF: Minute = 15;
/// How many later starts are tried, each half as late.
const PUT_OFF_TRIES: usize = 3;

impl<'r, 'f> Placer<'r, 'f> {
    /// The stall in which a stretch is done soonest, and when the stall is free again; of several
    /// that in which it stands, else the one that is good for least. Leaves its phases in `chain`.
    pub(super) fn best(
        &mut self,
        order: usize,
        sitting: &Sitting,
        from: Minute,
        choices: Choices,
    ) -> (Option<usize>, Minute) {
        if !sitting.seated {
            return (None, self.link(order, sitting, None, from, choices));
        }
        let mut open = std::mem::take(&mut self.open);
        open.clear();
        self.open_stalls(order, sitting, choices, &mut open);
        let (stall, leaves) = self.soonest(order, sitting, &open, from, choices);
        self.open = open;
        if !sitting.begun {
            self.put_off(order, sitting, stall, leaves, choices);
        }
        (Some(stall), leaves)
    }

    /// The stalls that a stretch may be done in, the one to prefer first.
    fn open_stalls(
        &self,
        order: usize,
        sitting: &Sitting,
        choices: Choices,
        open: &mut Vec<usize>,
    ) {
        if sitting.begun {
            open.extend(self.ready.floor.orders[order].stands_in);
            return;
        }
        let free = |stall: &usize| self.room.holds[*stall].is_none_or(|by| by == order);
        open.extend(sitting.stalls.iter().copied().filter(free));
        let wanted = choices.at(self.choice(order, sitting.first) + 1);
        if let Some(at) = wanted.checked_sub(1) {
            let stall = open[at % open.len()];
            open.clear();
            open.push(stall);
        } else if let Some(stood) = self.stood_in(order)
            && let Some(at) = open.iter().position(|one| *one == stood)
        {
            open[..=at].rotate_right(1);
        }
    }

    /// Goes through time: as soon as a stretch fits into one of the stalls, it is done there.
    fn soonest(
        &mut self,
        order: usize,
        sitting: &Sitting,
        open: &[usize],
        from: Minute,
        choices: Choices,
    ) -> (usize, Minute) {
        let mut from = from;
        let mut best: Option<(Minute, usize)> = None;
        loop {
            let end = self.link(order, sitting, None, from, choices);
            if best.is_some_and(|best| best.0 <= end) {
                break;
            }
            let starts = self.chain.first().map_or(from, |slot| slot.from);
            let mut next = Minute::MAX;
            for stall in open {
                match self.clash(order, *stall, starts, end, sitting) {
                    Ok(leaves) if best.is_none_or(|best| leaves < best.0) => {
                        best = Some((leaves, *stall));
                        self.tried.clone_from(&self.chain);
                    }
                    Ok(_) => {}
                    Err(later) => next = next.min(later),
                }
            }
            if next == Minute::MAX || best.is_some_and(|best| best.0 <= end) {
                break;
            }
            from = next;
        }
        let (leaves, stall) = best.expect("a stretch in a stall has a stall that suits it");
        std::mem::swap(&mut self.chain, &mut self.tried);
        for slot in &mut self.chain {
            slot.stall = Some(stall);
        }
        (stall, leaves)
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
            let leaves_then = self.clash(order, stall, starts, end, sitting);
            if end <= leaves && leaves_then.is_ok_and(|to| to <= leaves) {
                return;
            }
            slack /= 2;
        }
        std::mem::swap(&mut self.chain, &mut self.tried);
    }

    fn stood_in(&self, order: usize) -> Option<usize> {
        match self.room.last_stay[order] {
            Some(stay) => Some(self.room.stays[stay].stall),
            None => self.ready.floor.orders[order].stands_in,
        }
    }

    /// The stalls that a vehicle crosses to leave the one in which it stood at first.
    pub(super) fn comes_out_over(&self, order: usize, to: usize) -> &'r [usize] {
        let ready: &'r Ready<'f> = self.ready;
        match (
            self.room.last_stay[order],
            ready.floor.orders[order].stands_in,
        ) {
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
        sitting: &Sitting,
    ) -> Result<Minute, Minute> {
        let crosses = &self.ready.floor.stalls[stall].crosses;
        let stalls = &self.room.stalls;
        if !sitting.begun {
            let passes = crosses.iter().chain(self.comes_out_over(order, stall));
            let enters = passes.filter_map(|one| inside(&stalls[*one], from));
            if let Some(later) = enters.max() {
                return Err(later);
            }
        }
        let mut leaves = to;
        while let Some(later) = crosses
            .iter()
            .filter_map(|one| inside(&stalls[*one], leaves))
            .max()
        {
            leaves = later;
        }
        if let Some(later) = overlaps(&stalls[stall], from, leaves) {
            return Err(long_gap(&stalls[stall], later, sitting.shortest));
        }
        let passing = self.room.crossed[stall].iter().copied();
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
}

/// The first end of a taken span, from one on, after which there is a gap of so many minutes.
#[inline]
fn long_gap(taken: &[(Minute, Minute)], from: Minute, minutes: Minute) -> Minute {
    let mut at = from;
    for (begins, ends) in taken.iter().skip_while(|one| one.1 <= from) {
        if begins - at >= minutes {
            break;
        }
        at = at.max(*ends);
    }
    at
}

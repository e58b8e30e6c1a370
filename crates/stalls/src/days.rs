//! A floor's orders as something to search: points, first sequences, and what is worth changing.

use crate::moves::Moves;
use crate::place::{Placer, comes};
use crate::ready::Ready;
use crate::search::Genes;
use crate::windows::Minute;
use rand_chacha::ChaCha8Rng;

/// What a plan costs, by what it is for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Cost {
    /// Weights of the promises that are not kept.
    pub broken: i64,
    /// Minutes late, times their weights.
    pub late: i64,
    /// Open minutes in which a vehicle stands on a lift and nobody works on it.
    pub idle_lift: i64,
    /// Vehicles driven or pushed into a stall.
    pub moves: i64,
    /// Phases for which somebody was told another person, stall or day.
    pub changes: i64,
    /// All of it in points, by the rules.
    pub points: i64,
}

/// What somebody was told about a phase: who, where, and on which stretch of opening hours.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Told {
    pub(crate) person: Option<usize>,
    pub(crate) stall: Option<usize>,
    pub(crate) day: usize,
}

/// Score units a point has; below a point, the sum of all ends decides.
pub(crate) const PARTS: i64 = 1_000_000;

/// The orders of a floor for the search.
pub(crate) struct Days<'r, 'f> {
    pub(crate) placer: Placer<'r, 'f>,
    pub(crate) told: Vec<Vec<Option<Told>>>,
    pub(crate) ends: Vec<Minute>,
    pub(crate) moves: Moves<'r, 'f>,
}

impl<'r, 'f> Days<'r, 'f> {
    pub(crate) fn new(ready: &'r Ready<'f>, told: Vec<Vec<Option<Told>>>) -> Self {
        let placer = Placer::new(ready);
        let mut ways = Vec::new();
        for (order, sittings) in ready.sittings.iter().enumerate() {
            for sitting in sittings {
                let stalls = sitting.stalls.len();
                if sitting.seated && !sitting.begun && stalls > 1 {
                    ways.push((placer.choice(order, sitting.first) + 1, stalls + 1));
                }
                for phase in sitting.first..sitting.end {
                    let able = ready.able[order][phase].len();
                    if able > 1 {
                        ways.push((placer.choice(order, phase), able + 1));
                    }
                }
            }
        }
        let orders = ready.floor.orders.len();
        Self {
            placer,
            told,
            ends: vec![0; orders],
            moves: Moves::new(ready, ways),
        }
    }

    fn ready(&self) -> &'r Ready<'f> {
        self.placer.ready
    }

    /// What the placed phases cost.
    pub(crate) fn cost(&mut self) -> Cost {
        let floor = self.ready().floor;
        let mut cost = Cost::default();
        self.ends.clone_from(&self.placer.room.free_at);
        for (order, end) in floor.orders.iter().zip(&self.ends) {
            let late = order.promise.map_or(0, |promise| (end - promise).max(0));
            if late > 0 {
                cost.broken += order.promise_weight;
                cost.late += order.promise_weight * late;
            }
        }
        let room = &self.placer.room;
        for (stay, worked) in room.stays.iter().zip(&room.worked) {
            if floor.stalls[stay.stall].lift.is_some() {
                let held = floor.opening.open_between(stay.from, stay.to);
                cost.idle_lift += (held - worked).max(0);
            }
            cost.moves += i64::from(!stay.was_there);
        }
        if !self.told.is_empty() {
            cost.changes = self.changes();
        }
        let rules = &floor.rules;
        cost.points = rules.broken * cost.broken
            + rules.late_minute * cost.late
            + rules.idle_lift_minute * cost.idle_lift
            + rules.moved * cost.moves
            + rules.changed * cost.changes;
        cost
    }

    fn changes(&self) -> i64 {
        let opening = &self.ready().floor.opening;
        let changed = |slot: &crate::place::Slot| {
            let Some(told) = self.told.get(slot.order).and_then(|told| told[slot.phase]) else {
                return false;
            };
            told != told_of(slot, opening)
        };
        let changed = self
            .placer
            .room
            .slots
            .iter()
            .filter(|slot| changed(slot))
            .count();
        i64::try_from(changed).unwrap_or(i64::MAX)
    }

    /// Sequences by plain rules: by promise, by what is left until it, by weight, as they came.
    pub(crate) fn first(&self) -> Vec<Genes> {
        let ready = self.ready();
        let floor = ready.floor;
        let work = |order: usize| -> i64 {
            let phases = floor.orders[order].phases.iter();
            phases
                .map(|phase| match &phase.does {
                    crate::Does::Work(work) => work.minutes.mean(),
                    crate::Does::Wait(wait) => match wait.takes {
                        crate::Takes::Minutes(spread) => spread.mean(),
                        crate::Takes::Comes(spread) => {
                            (comes(spread, floor.now) - floor.now).max(0)
                        }
                    },
                })
                .sum()
        };
        let promise = |order: usize| floor.orders[order].promise.unwrap_or(ready.beyond);
        let comes = |order: usize| {
            let arrives = floor.orders[order].arrives;
            arrives.map_or(floor.now, |spread| spread.mean())
        };
        let rules: [&dyn Fn(usize) -> i64; 4] = [
            &|order| promise(order),
            &|order| promise(order) - work(order),
            &|order| (promise(order) - floor.now) / floor.orders[order].promise_weight.max(1),
            &|order| comes(order),
        ];
        let mut orders: Vec<usize> = (0..floor.orders.len()).collect();
        rules
            .iter()
            .map(|rule| {
                orders.sort_by_key(|order| (rule(*order), *order));
                self.sequence_of(orders.iter().copied())
            })
            .collect()
    }

    /// Each order with all its stretches in one go.
    pub(crate) fn sequence_of(&self, orders: impl Iterator<Item = usize>) -> Genes {
        let mut genes = Genes {
            sequence: Vec::new(),
            choices: vec![0; self.placer.choices()],
        };
        for order in orders {
            let token = u16::try_from(order).expect("a floor has fewer than 65,536 orders");
            let stretches = self.ready().sittings[order].len();
            genes.sequence.extend(std::iter::repeat_n(token, stretches));
        }
        genes
    }
}

/// What a placed phase tells somebody.
pub(crate) fn told_of(slot: &crate::place::Slot, opening: &crate::Windows) -> Told {
    Told {
        person: slot.crew.people().first().copied(),
        stall: slot.stall,
        day: day_of(opening, slot.from),
    }
}

/// The stretch of opening hours that a minute lies in or before.
pub(crate) fn day_of(opening: &crate::Windows, minute: Minute) -> usize {
    opening.spans().partition_point(|span| span.1 <= minute)
}

impl Days<'_, '_> {
    /// Places everything and says how many points that costs. As soon as being late costs more
    /// than `most` it stops, and says so with the highest number.
    pub(crate) fn score(&mut self, genes: &Genes, most: i64) -> i64 {
        let late_enough = most / PARTS;
        if !self
            .placer
            .place(&genes.sequence, &genes.choices, late_enough)
        {
            return i64::MAX;
        }
        let points = self.cost().points;
        let now = self.ready().floor.now;
        let sum: i64 = self.ends.iter().map(|end| (end - now).min(PARTS)).sum();
        points * PARTS + (sum / self.ends.len().max(1).try_into().unwrap_or(1)).clamp(0, PARTS - 1)
    }

    /// What was placed last is what the next changes start from.
    pub(crate) fn keep(&mut self, genes: &Genes) {
        self.placer.keep(&genes.sequence, &genes.choices);
        self.moves.kept.keep(self.placer.ready, &self.placer.room);
    }

    /// Changes something.
    pub(crate) fn change(&mut self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        self.moves.change(genes, chance);
    }

    /// Changes so much that what follows can lead elsewhere.
    pub(crate) fn leap(&mut self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        self.moves.leap(genes, chance);
    }
}

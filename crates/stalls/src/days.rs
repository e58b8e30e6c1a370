//! A floor's orders as something to search: points, first sequences, and what is worth changing.

use crate::place::{Choices, Placer, comes};
use crate::ready::Ready;
use crate::search::{Decode, Genes, below, shift};
use crate::windows::Minute;
use rand::RngExt;
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
const PARTS: i64 = 1_000_000;

/// The orders of a floor for the search.
pub(crate) struct Days<'r, 'f> {
    pub(crate) placer: Placer<'r, 'f>,
    pub(crate) told: Vec<Vec<Option<Told>>>,
    pub(crate) ends: Vec<Minute>,
    /// Where the choices of phases are, and how many ways each has.
    ways: Vec<(usize, usize)>,
    /// Orders that are late in the kept plan.
    late: Vec<u16>,
    worked: Vec<i64>,
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
            ways,
            late: Vec::new(),
            worked: Vec::new(),
        }
    }

    fn ready(&self) -> &'r Ready<'f> {
        self.placer.ready
    }

    /// What the placed phases cost.
    pub(crate) fn cost(&mut self) -> Cost {
        let floor = self.ready().floor;
        let mut cost = Cost::default();
        self.find_ends();
        for (order, end) in floor.orders.iter().zip(&self.ends) {
            let late = order.promise.map_or(0, |promise| (end - promise).max(0));
            if late > 0 {
                cost.broken += order.promise_weight;
                cost.late += order.promise_weight * late;
            }
        }
        self.worked.clear();
        self.worked.resize(self.placer.stays.len(), 0);
        self.count_work();
        for (stay, worked) in self.placer.stays.iter().zip(&self.worked) {
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

    fn find_ends(&mut self) {
        self.ends.fill(0);
        for slot in &self.placer.slots {
            let end = &mut self.ends[slot.order];
            *end = (*end).max(slot.to);
        }
        for stay in &self.placer.stays {
            let end = &mut self.ends[stay.order];
            *end = (*end).max(stay.to);
        }
    }

    /// Adds up for each stay the minutes in which somebody works on the vehicle.
    fn count_work(&mut self) {
        let ready = self.ready();
        for slot in &self.placer.slots {
            let (Some(_), Some(person)) = (slot.stall, slot.crew.people().first()) else {
                continue;
            };
            let of_slot = |stay: &crate::place::Stay| {
                stay.order == slot.order && (stay.first..stay.end).contains(&slot.phase)
            };
            if let Some(stay) = self.placer.stays.iter().position(of_slot) {
                let from = slot.from.max(self.placer.stays[stay].from);
                self.worked[stay] += ready.hours[*person].open_between(from, slot.to);
            }
        }
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

    /// The place in a sequence where an order's last stretch stands.
    fn place_of(genes: &Genes, order: u16, chance: &mut ChaCha8Rng) -> Option<usize> {
        let places: Vec<usize> = (0..genes.sequence.len())
            .filter(|at| genes.sequence[*at] == order)
            .collect();
        (!places.is_empty()).then(|| places[below(chance, places.len())])
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

impl Decode for Days<'_, '_> {
    fn score(&mut self, genes: &Genes) -> i64 {
        self.placer
            .place(&genes.sequence, Choices::new(&genes.choices));
        let points = self.cost().points;
        let now = self.ready().floor.now;
        let sum: i64 = self.ends.iter().map(|end| (end - now).min(PARTS)).sum();
        points * PARTS + (sum / self.ends.len().max(1).try_into().unwrap_or(1)).clamp(0, PARTS - 1)
    }

    fn keep(&mut self, _genes: &mut Genes) {
        let floor = self.ready().floor;
        self.late.clear();
        for (at, order) in floor.orders.iter().enumerate() {
            if order.promise.is_some_and(|promise| self.ends[at] > promise) {
                self.late.extend(u16::try_from(at));
            }
        }
    }

    fn change(&mut self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        let length = genes.sequence.len();
        match below(chance, 10) {
            // A late order earlier.
            0..=2 if !self.late.is_empty() => {
                let late = self.late[below(chance, self.late.len())];
                if let Some(from) = Self::place_of(genes, late, chance) {
                    let to = below(chance, from + 1);
                    shift(&mut genes.sequence, from, to);
                }
            }
            // Another way for one phase, or again the best at hand.
            3 | 4 if !self.ways.is_empty() => {
                let (at, ways) = self.ways[below(chance, self.ways.len())];
                let way = if genes.choices[at] > 0 && chance.random_bool(0.5) {
                    0
                } else {
                    below(chance, ways)
                };
                genes.choices[at] = u8::try_from(way).unwrap_or(0);
            }
            5 => {
                let (one, two) = (below(chance, length), below(chance, length));
                genes.sequence.swap(one, two);
            }
            // All of an order to one place.
            6 => {
                let order = genes.sequence[below(chance, length)];
                let at = below(chance, length);
                let many = genes.sequence.iter().filter(|one| **one == order).count();
                genes.sequence.retain(|one| *one != order);
                let at = at.min(genes.sequence.len());
                let same = std::iter::repeat_n(order, many);
                genes.sequence.splice(at..at, same);
            }
            // Near or far.
            7 | 8 => {
                let from = below(chance, length);
                let near = below(chance, 9);
                let to = (from + near).saturating_sub(4).min(length - 1);
                shift(&mut genes.sequence, from, to);
            }
            _ => {
                let (from, to) = (below(chance, length), below(chance, length));
                shift(&mut genes.sequence, from, to);
            }
        }
    }

    fn anew(&self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        for _ in 0..genes.sequence.len() / 4 {
            let from = below(chance, genes.sequence.len());
            let to = below(chance, genes.sequence.len());
            shift(&mut genes.sequence, from, to);
        }
    }

    fn heat(&self) -> (f64, f64) {
        #[allow(clippy::cast_precision_loss, reason = "a constant")]
        let point = PARTS as f64;
        (1_000.0 * point, 2.0 * point)
    }

    fn round(&self) -> u64 {
        5_000
    }
}

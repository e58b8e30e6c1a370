//! How often one must at least change, if only the place counted, or only the tools.
//!
//! Entering a class of moves (those at one place, or with one set of tools) costs what
//! its cheapest arrival costs; within a class every move that its rule allows is made
//! at once. Both only make ways cheaper, so the result is a lower bound; with one cost
//! for all changes it is the least for that class alone.

use crate::rule::{Held, Rule, Set};
use rustc_hash::FxHashMap;

/// No place, or nothing in hand.
pub(crate) const NONE: usize = usize::MAX;

/// The moves of one class each, and what entering a class costs at least.
#[derive(Debug, Clone)]
pub(crate) struct Blocks {
    held: Vec<Held>,
    wanted: Set,
    of_class: Vec<Set>,
    /// For each class, its moves and those of none, each after what it can be made after.
    in_turn: Vec<Vec<usize>>,
    /// The moves of no class alike.
    of_none_in_turn: Vec<usize>,
    entry: Vec<u32>,
    known: FxHashMap<(Set, usize), Option<u32>>,
    /// How many states to look at before a cheaper bound is taken instead.
    most: usize,
}

impl Blocks {
    /// Sorts the wanted moves by class; `costs` is from class to class.
    pub(crate) fn new(
        rules: &[Rule],
        wanted: Set,
        class_of: &[usize],
        costs: &[Vec<u32>],
        most: usize,
    ) -> Self {
        let mut of_class = vec![Set::default(); costs.len()];
        let mut of_none = Set::default();
        for index in wanted.iter() {
            match of_class.get_mut(class_of[index]) {
                Some(class) => class.add(index),
                None => of_none.add(index),
            }
        }
        let entry = (0..costs.len())
            .map(|to| {
                let arrivals = (0..costs.len()).filter(|from| *from != to);
                arrivals.map(|from| costs[from][to]).min().unwrap_or(0)
            })
            .collect();
        let mut held = vec![Held::default(); rules.len()];
        for index in wanted.iter() {
            held[index] = Held::new(&rules[index]);
        }
        let turns = turns(&held, wanted);
        let of = |class: &Set| -> Vec<usize> {
            let here = class.or(&of_none);
            turns.iter().copied().filter(|at| here.has(*at)).collect()
        };
        Self {
            in_turn: of_class.iter().map(of).collect(),
            of_none_in_turn: of(&Set::default()),
            held,
            wanted,
            of_class,
            entry,
            known: FxHashMap::default(),
            most,
        }
    }

    /// How many states were looked at.
    pub(crate) fn looked_at(&self) -> u64 {
        self.known.len() as u64
    }

    /// The least cost of the changes still to come, or nothing if some wanted move
    /// can never be made. Moves outside the wanted ones count as made if in `done`.
    pub(crate) fn rest(&mut self, done: &Set, class: usize) -> Option<u32> {
        let done = self.close(*done, class);
        self.rest_closed(done, class)
    }

    fn rest_closed(&mut self, done: Set, class: usize) -> Option<u32> {
        let left = self.wanted.minus(&done);
        if left.is_empty() {
            return Some(0);
        }
        if let Some(known) = self.known.get(&(done, class)) {
            return *known;
        }
        if self.known.len() >= self.most {
            return Some(self.one_entry_each(&left, class));
        }
        let mut least = None;
        for next in (0..self.of_class.len()).filter(|next| *next != class) {
            if self.of_class[next].minus(&done).is_empty() {
                continue;
            }
            let after = self.close(done, next);
            if after == done {
                continue;
            }
            let entry = if class == NONE { 0 } else { self.entry[next] };
            let finished = class != NONE && self.of_class[next].within(&after);
            let rest = self.rest_closed(after, next);
            let cost = rest.map(|rest| rest + entry);
            if finished {
                // It must be entered once in any case, and nothing is left for later.
                least = cost;
                break;
            }
            least = [least, cost].into_iter().flatten().min();
        }
        self.known.insert((done, class), least);
        least
    }

    fn one_entry_each(&self, left: &Set, class: usize) -> u32 {
        let open = (0..self.of_class.len())
            .filter(|next| *next != class && !self.of_class[*next].and(left).is_empty());
        let entries: Vec<_> = open.map(|next| self.entry[next]).collect();
        let first = if class == NONE {
            entries.iter().max().copied().unwrap_or(0)
        } else {
            0
        };
        entries.iter().sum::<u32>() - first
    }

    /// What has been done once every move that can be made in this class is made.
    fn close(&self, mut done: Set, class: usize) -> Set {
        let here = self.in_turn.get(class).unwrap_or(&self.of_none_in_turn);
        loop {
            let (mut more, mut waits) = (false, false);
            for &index in here {
                if done.has(index) {
                    continue;
                }
                if self.held[index].by(&done) {
                    done.add(index);
                    more = true;
                } else {
                    waits |= self.held[index].has_choice();
                }
            }
            // Only a move with alternatives can be let in by one that stands after it.
            if !more || !waits {
                return done;
            }
        }
    }
}

/// The wanted moves, each after all that it must wait for, others taken as made; those that can
/// never be made last.
fn turns(held: &[Held], wanted: Set) -> Vec<usize> {
    let all: Set = (0..held.len()).collect();
    let (mut done, mut left) = (all.minus(&wanted), wanted);
    let mut turns = Vec::with_capacity(wanted.len());
    loop {
        let ready = left.iter().filter(|index| held[*index].by(&done));
        let ready: Set = ready.collect();
        if ready.is_empty() {
            turns.extend(left.iter());
            return turns;
        }
        turns.extend(ready.iter());
        done = done.or(&ready);
        left = left.minus(&ready);
    }
}

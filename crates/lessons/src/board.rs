//! What is settled about a sequence, what is open, and how much an answer would settle.

use crate::lessons::{DOUBT, Lessons, SURE, excluded};
use crate::relation::{Relation, has, ones, set};

/// What is settled, and what is open.
pub(crate) struct Board {
    /// What is needed before what.
    pub(crate) needed: Relation,
    /// For each step, what may still turn out to be needed after it.
    open: Vec<Vec<u64>>,
    /// The same, seen from behind.
    open_before: Vec<Vec<u64>>,
    /// Pairs nobody can say, which are not asked.
    unsaid: Vec<Vec<u64>>,
    /// The turn of each step in the sequence that was mostly seen.
    turns: Vec<usize>,
    /// For each class of distance between two turns, how many answers said needed, and how
    /// many said not; one of each is taken as given.
    shares: Vec<(u32, u32)>,
}

/// Distances of 1, of 2 and 3, of 4 to 7, and so on.
fn class(distance: usize) -> usize {
    (usize::BITS - distance.leading_zeros()) as usize
}

impl Lessons {
    pub(crate) fn board(&self) -> Board {
        let count = self.steps.len();
        let words = count.div_ceil(64);
        let mut board = Board {
            needed: self.surely_needed(),
            open: vec![vec![0; words]; count],
            open_before: vec![vec![0; words]; count],
            unsaid: vec![vec![0; words]; count],
            turns: (0..count).map(|one| self.turn(one)).collect(),
            shares: vec![(1, 1); class(count) + 1],
        };
        for first in 0..count {
            for second in (0..count).filter(|second| *second != first) {
                let settled = board.needed.has(first, second) || board.needed.has(second, first);
                // Of moves in one go nothing is asked until they are seen apart.
                let apart = self.seen(first, second).totals() != (0, 0);
                if !settled && apart && self.chance(first, second) >= DOUBT {
                    set(&mut board.open[first], second);
                    set(&mut board.open_before[second], first);
                }
            }
        }
        let numbers = |pair: &(crate::Step, crate::Step)| {
            Some((self.number(&pair.0)?, self.number(&pair.1)?))
        };
        for (first, second) in self.answers.unsaid.iter().filter_map(numbers) {
            set(&mut board.unsaid[first], second);
        }
        for (first, second) in self.answers.needed.iter().filter_map(numbers) {
            board.share_of(first, second).0 += 1;
        }
        for (first, second) in self.answers.not_needed.iter().filter_map(numbers) {
            board.share_of(first, second).1 += 1;
            if !board.needed.has(first, second) {
                board.close_if_not(first, second);
            }
        }
        board
    }

    fn surely_needed(&self) -> Relation {
        let count = self.steps.len();
        let mut sure: Vec<(usize, usize)> = Vec::new();
        for first in 0..count {
            let seconds = (0..count).filter(|second| *second != first);
            let seconds = seconds.filter(|second| self.chance(first, *second) >= SURE);
            sure.extend(seconds.map(|second| (first, second)));
        }
        let surest = |(first, second): &(usize, usize)| self.chance(*first, *second);
        sure.sort_by(|a, b| surest(b).total_cmp(&surest(a)).then(a.cmp(b)));
        let mut needed = self.stated.clone();
        for (first, second) in sure {
            needed.add(first, second);
        }
        needed
    }

    /// How many steps were mostly seen before this one.
    fn turn(&self, one: usize) -> usize {
        let before = (0..self.steps.len()).filter(|other| *other != one);
        let before = before.filter(|other| {
            let (there, back) = self.seen(*other, one).totals();
            if *other < one {
                there > back
            } else {
                back > there
            }
        });
        before.count()
    }
}

impl Board {
    /// What may be needed before a step and is open.
    pub(crate) fn before(&self, second: usize) -> &[u64] {
        &self.open_before[second]
    }

    /// Whether a pair is open and may be asked.
    pub(crate) fn may_ask(&self, first: usize, second: usize) -> bool {
        has(&self.open[first], second) && !has(&self.unsaid[first], second)
    }

    pub(crate) fn turn(&self, step: usize) -> usize {
        self.turns[step]
    }

    pub(crate) fn distance(&self, first: usize, second: usize) -> usize {
        self.turns[first].abs_diff(self.turns[second])
    }

    fn share_of(&mut self, first: usize, second: usize) -> &mut (u32, u32) {
        let class = class(self.distance(first, second));
        &mut self.shares[class]
    }

    /// The chance that the answer is "needed": what jobs say, and how often answers about
    /// steps as far apart as these were so.
    pub(crate) fn chance(&self, lessons: &Lessons, first: usize, second: usize) -> f64 {
        let (needed, not) = self.shares[class(self.distance(first, second))];
        let seen = lessons.chance(first, second).clamp(DOUBT, SURE);
        let (for_it, against) = (seen * f64::from(needed), (1.0 - seen) * f64::from(not));
        for_it / (for_it + against)
    }

    pub(crate) fn close_if_needed(&mut self, first: usize, second: usize) {
        let seconds: Vec<usize> = with(self.needed.after(second), second);
        for one in with(self.needed.before(first), first) {
            seconds.iter().for_each(|other| self.close(one, *other));
        }
    }

    pub(crate) fn close_if_not(&mut self, first: usize, second: usize) {
        for (one, other) in excluded(&self.needed, first, second) {
            self.close(one, other);
        }
    }

    fn close(&mut self, first: usize, second: usize) {
        self.open[first][second / 64] &= !(1 << (second % 64));
        self.open_before[second][first / 64] &= !(1 << (first % 64));
    }

    /// How many open pairs it settles that the first is needed before the second, and how
    /// many that it is not.
    pub(crate) fn gains(&self, first: usize, second: usize) -> (usize, usize) {
        let (before, after) = (self.needed.before(first), self.needed.after(first));
        let needed = self.within(with(before, first), self.needed.after(second), second);
        let not = self.within(with(after, first), self.needed.before(second), second);
        (needed, not)
    }

    /// The same, counting only what would be settled of the second step.
    pub(crate) fn gains_of_one(&self, first: usize, second: usize) -> (usize, usize) {
        let open = &self.open_before[second];
        let common = |others: &[u64]| {
            let both = open.iter().zip(others);
            let many: u32 = both
                .map(|(open, others)| (open & others).count_ones())
                .sum();
            many as usize + 1
        };
        let (before, after) = (self.needed.before(first), self.needed.after(first));
        (common(before), common(after))
    }

    /// How many pairs are open from these steps to those, the one more among them.
    fn within(&self, firsts: Vec<usize>, seconds: &[u64], one_more: usize) -> usize {
        let row = |first: usize| {
            let both = self.open[first].iter().zip(seconds);
            let many: u32 = both
                .map(|(open, seconds)| (open & seconds).count_ones())
                .sum();
            many as usize + usize::from(has(&self.open[first], one_more))
        };
        firsts.into_iter().map(row).sum()
    }
}

fn with(set: &[u64], one: usize) -> Vec<usize> {
    ones(set).chain([one]).collect()
}

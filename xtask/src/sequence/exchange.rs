//! Local search: two neighbouring runs of a sequence change places wherever that is
//! shorter and no node of the first run must come before one of the second.

use super::instance::Instance;
use plan::bits::Bits;
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// The most nodes that a random exchange moves.
const LONGEST_SHAKE: usize = 12;

/// Shakes in vain before the search starts again from near the best.
const PATIENCE: usize = 300;

pub struct Exchange<'a, const W: usize> {
    instance: &'a Instance,
    before: Vec<Bits<W>>,
    chance: ChaCha8Rng,
}

impl<'a, const W: usize> Exchange<'a, W> {
    pub fn new(instance: &'a Instance) -> Self {
        let all = 0..instance.nodes;
        let before = |node: usize| {
            all.clone()
                .filter(|other| instance.before(*other, node))
                .collect()
        };
        Self {
            before: all.clone().map(before).collect(),
            instance,
            chance: ChaCha8Rng::seed_from_u64(1),
        }
    }

    /// A sequence that always takes the nearest node that may come.
    pub fn nearest(&self) -> Vec<usize> {
        let mut done = Bits::<W>::default().with(0);
        let mut sequence = vec![0];
        let mut at = 0;
        while sequence.len() < self.instance.nodes {
            let ready = (0..self.instance.nodes)
                .filter(|node| !done.has(*node) && self.before[*node].within(&done));
            let Some(next) = ready.min_by_key(|node| self.instance.cost(at, *node)) else {
                break;
            };
            done.add(next);
            sequence.push(next);
            at = next;
        }
        sequence
    }

    /// Exchanges runs at these nodes, and at those whose neighbours that changes, until
    /// no scan finds a shorter sequence or `more` says no.
    pub fn improve(
        &self,
        sequence: &mut [usize],
        mut open: Vec<usize>,
        mut more: impl FnMut() -> bool,
    ) {
        let mut is_open: Bits<W> = open.iter().copied().collect();
        while let Some(node) = open.pop().filter(|_| more()) {
            is_open.remove(node);
            let at = sequence
                .iter()
                .position(|known| *known == node)
                .unwrap_or(0);
            while let Some((first, middle, end)) = self.find(sequence, at) {
                sequence[first..end].rotate_left(middle - first);
                for cut in [first, first + end - middle, end] {
                    for changed in [sequence[cut - 1], sequence[cut]] {
                        if !is_open.has(changed) {
                            is_open.add(changed);
                            open.push(changed);
                        }
                    }
                }
            }
        }
    }

    fn find(&self, sequence: &[usize], at: usize) -> Option<(usize, usize, usize)> {
        let runs = (at.max(1)..(at + 2).min(sequence.len() - 1)).map(|at| {
            self.first_run_at(sequence, at)
                .or_else(|| self.second_run_at(sequence, at))
        });
        runs.flatten().next()
    }

    fn gain(&self, sequence: &[usize], from: usize, old: usize, new: usize) -> i64 {
        let cost = |to: usize| i64::from(self.instance.cost(sequence[from], sequence[to]));
        cost(old) - cost(new)
    }

    /// Looks for a shorter exchange whose first run starts here, and whose second may
    /// well follow the node before. (In any shorter exchange one of the three new steps
    /// is shorter than the step it replaces.)
    fn first_run_at(&self, sequence: &[usize], first: usize) -> Option<(usize, usize, usize)> {
        let last = sequence.len() - 1;
        let mut run = Bits::<W>::default();
        for middle in first + 1..last {
            run.add(sequence[middle - 1]);
            let gain = self.gain(sequence, first - 1, first, middle);
            if gain <= 0 {
                continue;
            }
            for end in middle + 1..=last {
                if !self.before[sequence[end - 1]].and(&run).is_empty() {
                    break;
                }
                let saved = gain
                    + self.gain(sequence, middle - 1, middle, end)
                    + self.gain(sequence, end - 1, end, first);
                if saved > 0 {
                    return Some((first, middle, end));
                }
            }
        }
        None
    }

    /// Looks for a shorter exchange whose second run starts here.
    fn second_run_at(&self, sequence: &[usize], middle: usize) -> Option<(usize, usize, usize)> {
        let last = sequence.len() - 1;
        let mut before = Bits::<W>::default();
        for end in middle + 1..=last {
            before = before.or(&self.before[sequence[end - 1]]);
            let gain = self.gain(sequence, middle - 1, middle, end);
            if gain <= 0 {
                continue;
            }
            for first in (1..middle).rev() {
                if before.has(sequence[first]) {
                    break;
                }
                let saved = gain
                    + self.gain(sequence, first - 1, first, middle)
                    + self.gain(sequence, end - 1, end, first);
                if saved > 0 {
                    return Some((first, middle, end));
                }
            }
        }
        None
    }

    /// Exchanges two neighbouring runs at random, where that is legal; answers the
    /// nodes whose neighbours changed.
    fn shake(&mut self, sequence: &mut [usize]) -> Vec<usize> {
        let last = sequence.len() - 1;
        if last < 4 {
            return Vec::new();
        }
        for _ in 0..20 {
            let first = self.chance.random_range(1..last - 1);
            let reach = (last - first).min(LONGEST_SHAKE);
            let end = first + self.chance.random_range(2..=reach);
            let middle = self.chance.random_range(first + 1..end);
            let run: Bits<W> = sequence[first..middle].iter().copied().collect();
            let legal = |node: &usize| self.before[*node].and(&run).is_empty();
            if sequence[middle..end].iter().all(legal) {
                sequence[first..end].rotate_left(middle - first);
                let cuts = [first, first + end - middle, end];
                return cuts
                    .into_iter()
                    .flat_map(|cut| [sequence[cut - 1], sequence[cut]])
                    .collect();
            }
        }
        Vec::new()
    }

    fn shake_and_improve(&mut self, sequence: &mut [usize], times: usize) -> u32 {
        let open = (0..times).flat_map(|_| self.shake(sequence)).collect();
        self.improve(sequence, open, || true);
        self.length(sequence)
    }

    /// The length of a sequence known to be legal.
    fn length(&self, sequence: &[usize]) -> u32 {
        sequence
            .windows(2)
            .map(|pair| self.instance.cost(pair[0], pair[1]))
            .sum()
    }

    /// Shakes and improves, keeping what is no longer, as long as `more` says so; it is
    /// told how many shakes ago the best was found.
    pub fn search(
        &mut self,
        sequence: Vec<usize>,
        mut more: impl FnMut(usize) -> bool,
    ) -> Vec<usize> {
        let mut best = (self.length(&sequence), sequence);
        let mut now = best.clone();
        let mut since = 0;
        while more(since) {
            let mut next = now.1.clone();
            let length = self.shake_and_improve(&mut next, 3);
            since += 1;
            if length <= now.0 {
                now = (length, next);
            }
            if now.0 < best.0 {
                best.clone_from(&now);
                since = 0;
            } else if since.is_multiple_of(PATIENCE) {
                now.1.clone_from(&best.1);
                now.0 = self.shake_and_improve(&mut now.1, 10);
            }
        }
        best.1
    }
}

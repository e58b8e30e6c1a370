//! Changes of a plan: each takes the genes of a plan and makes them those of a neighbour.

mod sequence;
mod waits;
mod ways;
mod whole;

use crate::kept::Kept;
use crate::ready::Ready;
use crate::search::{Genes, below};
use rand_chacha::ChaCha8Rng;

/// What changes look at, and the memory they need.
pub(crate) struct Moves<'r, 'f> {
    ready: &'r Ready<'f>,
    /// Where the choices of phases are, and how many ways each has.
    ways: Vec<(usize, usize)>,
    /// The plan that is changed.
    pub(crate) kept: Kept,
    waits: Vec<usize>,
}

impl<'r, 'f> Moves<'r, 'f> {
    pub(crate) fn new(ready: &'r Ready<'f>, ways: Vec<(usize, usize)>) -> Self {
        Self {
            ready,
            ways,
            kept: Kept::new(ready),
            waits: Vec::new(),
        }
    }

    /// Changes something.
    pub(crate) fn change(&mut self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        match below(chance, 10) {
            0..=4 if self.before_the_wait(genes, chance) => {}
            5 => self.another_way(genes, chance),
            6 => self.whole_elsewhere(genes, chance),
            7 => sequence::swap(genes, chance),
            8 => sequence::near(genes, chance),
            _ => sequence::far(genes, chance),
        }
    }

    /// Changes so much that what follows can lead elsewhere.
    pub(crate) fn leap(&mut self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        self.whole_earlier(genes, chance);
    }
}

#[cfg(test)]
mod tests;

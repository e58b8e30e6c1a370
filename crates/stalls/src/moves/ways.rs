//! Another person or stall.

use super::Moves;
use crate::search::{Genes, below};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

impl Moves<'_, '_> {
    /// Another way for one phase, or again the best at hand.
    pub(super) fn another_way(&self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        if self.ways.is_empty() {
            return;
        }
        let (at, ways) = self.ways[below(chance, self.ways.len())];
        let way = if genes.choices[at] > 0 && chance.random_bool(0.5) {
            0
        } else {
            below(chance, ways)
        };
        genes.choices[at] = u8::try_from(way).unwrap_or(0);
    }
}

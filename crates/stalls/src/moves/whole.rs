//! All stretches of an order to one place in the sequence.

use super::Moves;
use crate::search::{Genes, below};
use rand::RngExt;
use rand_chacha::ChaCha8Rng;

impl Moves<'_, '_> {
    /// A late order, or any, to anywhere.
    pub(super) fn whole_elsewhere(&self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        let length = genes.sequence.len();
        let late = chance.random_bool(0.5).then(|| self.kept.late(chance));
        let order = late
            .flatten()
            .unwrap_or_else(|| usize::from(genes.sequence[below(chance, length)]));
        whole(genes, order, below(chance, length));
    }

    /// A late order further to the front; if none is late, any.
    pub(super) fn whole_earlier(&self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        let length = genes.sequence.len();
        let late = self.kept.late(chance);
        let order = late.unwrap_or_else(|| usize::from(genes.sequence[below(chance, length)]));
        let mut own = genes.sequence.iter();
        let first = own.position(|one| usize::from(*one) == order);
        whole(genes, order, below(chance, first.unwrap_or(0) + 1));
    }
}

fn whole(genes: &mut Genes, order: usize, at: usize) {
    let Ok(order) = u16::try_from(order) else {
        return;
    };
    let length = genes.sequence.len();
    genes.sequence.retain(|one| *one != order);
    let at = at.min(genes.sequence.len());
    let many = length - genes.sequence.len();
    let same = std::iter::repeat_n(order, many);
    genes.sequence.splice(at..at, same);
}

//! Changes of the sequence that look at nothing else.

use crate::search::{Genes, below, shift};
use rand_chacha::ChaCha8Rng;

/// Two change places.
pub(super) fn swap(genes: &mut Genes, chance: &mut ChaCha8Rng) {
    let length = genes.sequence.len();
    let (one, two) = (below(chance, length), below(chance, length));
    genes.sequence.swap(one, two);
}

/// One a few places on or back.
pub(super) fn near(genes: &mut Genes, chance: &mut ChaCha8Rng) {
    let length = genes.sequence.len();
    let from = below(chance, length);
    let to = (from + below(chance, 9)).saturating_sub(4).min(length - 1);
    shift(&mut genes.sequence, from, to);
}

/// One to anywhere.
pub(super) fn far(genes: &mut Genes, chance: &mut ChaCha8Rng) {
    let length = genes.sequence.len();
    let (from, to) = (below(chance, length), below(chance, length));
    shift(&mut genes.sequence, from, to);
}

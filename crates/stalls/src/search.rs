//! A search for schedules: a sequence and choices, changed a little again and again.
//!
//! It knows nothing of machines. Whoever asks places things one after another in the
//! sequence, and says what came of it in points. A change that is better is kept, one that is
//! worse now and then, less often as a round goes on; each round begins again from the best.

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// What is changed: who is placed when, and which of several ways is taken (0: the best at hand).
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(crate) struct Genes {
    /// Each thing as often as it has parts.
    pub(crate) sequence: Vec<u16>,
    pub(crate) choices: Vec<u8>,
}

/// Whoever turns genes into a schedule.
pub(crate) trait Decode {
    /// Places everything and says how many points that costs.
    fn score(&mut self, genes: &Genes) -> i64;
    /// What was placed last is what the next changes start from.
    fn keep(&mut self, genes: &mut Genes);
    /// Changes something.
    fn change(&mut self, genes: &mut Genes, chance: &mut ChaCha8Rng);
    /// Changes much, to leave a corner.
    fn shake(&mut self, genes: &mut Genes, chance: &mut ChaCha8Rng) {
        for _ in 0..6 {
            self.change(genes, chance);
        }
    }
    /// Changes so much that it is another corner.
    fn anew(&self, genes: &mut Genes, chance: &mut ChaCha8Rng);
    /// Points that a worse change may cost at the start and at the end of a round.
    fn heat(&self) -> (f64, f64);
    /// How many changes a round has.
    fn round(&self) -> u64;
}

/// The best that was found.
#[derive(Clone, Debug)]
pub(crate) struct Best {
    pub(crate) genes: Genes,
    pub(crate) score: i64,
    /// How many schedules were looked at.
    pub(crate) looked_at: u64,
}

/// After so many rounds without anything better, another corner is looked at.
const STALE: u64 = 4;

/// Searches from the best of these until `go_on` says no, or the score is down to `enough`.
///
/// `go_on` is asked before each schedule, with how many were looked at. The same seed and the
/// same answers give the same schedule.
pub(crate) fn search(
    decoder: &mut impl Decode,
    from: &[Genes],
    seed: u64,
    enough: i64,
    go_on: &mut dyn FnMut(u64) -> bool,
) -> Option<Best> {
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let mut looked_at = 0;
    let mut best: Option<Best> = None;
    for genes in from {
        // The first is always taken, so that there is an answer.
        if best.is_some() && !go_on(looked_at) {
            break;
        }
        let score = decoder.score(genes);
        looked_at += 1;
        if best.as_ref().is_none_or(|best| score < best.score) {
            best = Some(Best {
                genes: genes.clone(),
                score,
                looked_at,
            });
        }
    }
    let mut best = best?;
    let round = decoder.round();
    let (hot, cold) = decoder.heat();
    let mut rounds = 0;
    // The best of this corner, and for how many rounds it has been that.
    let mut corner = (best.genes.clone(), best.score);
    let mut stale = 0;
    'all: while best.score > enough && !best.genes.sequence.is_empty() {
        let mut here = corner.0.clone();
        if stale == STALE {
            decoder.anew(&mut here, &mut chance);
            stale = 0;
            corner.1 = i64::MAX;
        } else if rounds > 0 {
            decoder.score(&here);
            decoder.keep(&mut here);
            decoder.shake(&mut here, &mut chance);
        }
        rounds += 1;
        stale += 1;
        let mut score = decoder.score(&here);
        decoder.keep(&mut here);
        for step in 0..round {
            if best.score <= enough || !go_on(looked_at) {
                break 'all;
            }
            #[allow(
                clippy::cast_precision_loss,
                reason = "counts of some millions are exact"
            )]
            let part = step as f64 / round as f64;
            let heat = hot * (cold / hot).powf(part);
            let mut next = here.clone();
            decoder.change(&mut next, &mut chance);
            let found = decoder.score(&next);
            looked_at += 1;
            #[allow(
                clippy::cast_precision_loss,
                reason = "points are compared by chance only"
            )]
            let worse = (found - score) as f64;
            if worse <= 0.0 || chance.random::<f64>() < (-worse / heat).exp() {
                decoder.keep(&mut next);
                here = next;
                score = found;
                if score < corner.1 {
                    corner = (here.clone(), score);
                    stale = 0;
                }
                if score < best.score {
                    best.genes.clone_from(&here);
                    best.score = score;
                }
            }
        }
    }
    best.looked_at = looked_at;
    Some(best)
}

/// Takes what stands at one place to another; the rest closes up.
pub(crate) fn shift(sequence: &mut [u16], from: usize, to: usize) {
    if from < to {
        sequence[from..=to].rotate_left(1);
    } else {
        sequence[to..=from].rotate_right(1);
    }
}

/// Takes what stands at one place to another, together with its like on the way: so a step gets
/// behind (or before) another although the next step of the same job stands between them.
pub(crate) fn gather(sequence: &mut [u16], from: usize, to: usize) {
    let moved = sequence[from];
    if from < to {
        sequence[from..=to].sort_by_key(|one| *one == moved);
    } else {
        sequence[to..=from].sort_by_key(|one| *one != moved);
    }
}

/// Takes out all that are like one, and puts them back anywhere.
pub(crate) fn scatter(sequence: &mut Vec<u16>, like: usize, chance: &mut ChaCha8Rng) {
    let moved = sequence[like];
    let before = sequence.len();
    sequence.retain(|one| *one != moved);
    while sequence.len() < before {
        let at = below(chance, sequence.len() + 1);
        sequence.insert(at, moved);
    }
}

/// A number below a limit.
pub(crate) fn below(chance: &mut ChaCha8Rng, limit: usize) -> usize {
    chance.random_range(0..limit.max(1))
}

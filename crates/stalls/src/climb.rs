//! The search for a plan of days: climb, leap, climb again.
//!
//! A few hundred small changes lead to a plan that none of them betters soon. What holds it there is
//! mostly one order that is in the wrong place by days. So a leap puts an order that is late further
//! to the front, whatever that costs, and the next climb begins there. Where a climb ends is where
//! the next leap starts, unless that is much worse than where the last one did.

use crate::days::{Days, PARTS};
use crate::search::{Best, Genes};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;

/// How many changes a climb has.
const CLIMB: u32 = 300;
/// Points that a worse change may cost in the mean at the start and at the end of a climb.
const HOT: f64 = 1_000.0;
const COLD: f64 = 10.0;
/// Points that the end of a climb may be worse than its start, in the mean.
const DRIFT: f64 = 5_000.0;
/// After so many climbs without anything better the best is gone back to.
const STALE: u32 = 40;

/// Searches from the best of these until `go_on` says no, or the score is down to `enough`.
///
/// `go_on` is asked before each plan, with how many were looked at. The same seed and the same
/// answers give the same plan.
pub(crate) fn climb(
    days: &mut Days,
    from: &[Genes],
    seed: u64,
    enough: i64,
    go_on: &mut dyn FnMut(u64) -> bool,
) -> Option<Best> {
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let mut best = best_of(days, from, go_on)?;
    // Where the next leap starts.
    let (mut here, mut here_score) = (best.genes.clone(), best.score);
    let mut genes = here.clone();
    let (mut next, mut top) = (genes.clone(), genes.clone());
    let mut stale = 0;
    'all: while best.score > enough && !here.sequence.is_empty() && go_on(best.looked_at) {
        let mut score = days.score(&genes, i64::MAX);
        days.keep(&genes);
        best.looked_at += 1;
        better(&mut best, &genes, score);
        top.clone_from(&genes);
        let (before, mut top_score) = (best.score, score);
        for step in 0..CLIMB {
            if best.score <= enough || !go_on(best.looked_at) {
                break 'all;
            }
            let heat = HOT * (COLD / HOT).powf(f64::from(step) / f64::from(CLIMB));
            // What it may cost is drawn first, so that looking can stop when it costs more.
            let most = score.saturating_add(drawn(heat, &mut chance));
            next.clone_from(&genes);
            days.change(&mut next, &mut chance);
            let found = days.score(&next, most);
            best.looked_at += 1;
            if found <= most {
                days.keep(&next);
                std::mem::swap(&mut genes, &mut next);
                score = found;
                if score < top_score {
                    top.clone_from(&genes);
                    top_score = score;
                }
                better(&mut best, &genes, score);
            }
        }
        stale = if best.score < before { 0 } else { stale + 1 };
        if top_score <= here_score.saturating_add(drawn(DRIFT, &mut chance)) {
            (here, here_score) = (top.clone(), top_score);
        }
        if stale == STALE {
            (here, here_score) = (best.genes.clone(), best.score);
            stale = 0;
        }
        // The leap looks at the plan it starts from.
        days.score(&here, i64::MAX);
        days.keep(&here);
        genes.clone_from(&here);
        days.leap(&mut genes, &mut chance);
    }
    Some(best)
}

fn better(best: &mut Best, genes: &Genes, score: i64) {
    if score < best.score {
        best.genes.clone_from(genes);
        best.score = score;
    }
}

fn best_of(days: &mut Days, from: &[Genes], go_on: &mut dyn FnMut(u64) -> bool) -> Option<Best> {
    let mut best: Option<Best> = None;
    let mut looked_at = 0;
    for genes in from {
        // The first is always taken, so that there is an answer.
        if best.is_some() && !go_on(looked_at) {
            break;
        }
        let score = days.score(genes, i64::MAX);
        looked_at += 1;
        if best.as_ref().is_none_or(|best| score < best.score) {
            let genes = genes.clone();
            best = Some(Best {
                genes,
                score,
                looked_at,
            });
        }
    }
    best.map(|best| Best { looked_at, ..best })
}

/// How much worse something may be: so many points in the mean, the more often few.
fn drawn(points: f64, chance: &mut ChaCha8Rng) -> i64 {
    #[allow(
        clippy::cast_precision_loss,
        clippy::cast_possible_truncation,
        reason = "a share of a point does not matter, and it is far from the largest number"
    )]
    let worse = (-points * (1.0 - chance.random::<f64>()).ln() * PARTS as f64) as i64;
    worse
}

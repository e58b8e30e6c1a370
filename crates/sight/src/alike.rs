//! What lies on one sheet comes in a few kinds: bolts of one part are mostly alike.
//!
//! Each bolt by itself leaves open whether its head is a hexagon or a cylinder, and with it where
//! its length begins. What the bolts around it are taken for speaks for it as well: what the kinds
//! on the sheet are, and which bolt is of which, is settled by turns.

use crate::bolt::{Head, SIZES};
use crate::find::Found;

/// By how much two sums of logarithms have to differ to speak as one: cells beside each other
/// err alike, so that their sum says too much.
const SUM_COUNTS: f64 = 0.05;
/// How far apart two bolts lie that count half for each other, in millimetres.
const NEAR_MM: f64 = 60.0;
/// How much one counts that was not seen well.
const NOT_CLEAR: f64 = 0.4;
/// How many bolts' worth it takes to speak against what was never seen around.
const BY_ITSELF: f64 = 0.3;
/// Turns after which nothing changes any more.
const TURNS: usize = 4;

/// One number for each size and head.
pub type ByKind = [[f64; Head::ALL.len()]; SIZES.len()];

/// How likely a bolt is of each kind by itself: logarithms, 0 for the likeliest.
pub fn alone(bolt: &Found) -> ByKind {
    bolt.by_kind
        .map(|heads| heads.map(|(score, _)| (score - bolt.score).max(-1e5) * SUM_COUNTS))
}

/// How likely each bolt is of each kind: logarithms, 0 for the likeliest, below for the others.
pub fn settled(bolts: &[Found]) -> Vec<ByKind> {
    let alone: Vec<ByKind> = bolts.iter().map(alone).collect();
    let mut out = alone.clone();
    for _ in 1..TURNS {
        let shares: Vec<ByKind> = out.iter().map(shares).collect();
        out = (0..bolts.len())
            .map(|i| {
                let around = around(bolts, &shares, i);
                let mut sum = alone[i];
                for (sum, around) in sum.iter_mut().flatten().zip(around.iter().flatten()) {
                    *sum += libm::log(*around);
                }
                let most = sum.iter().flatten().copied().fold(f64::MIN, f64::max);
                sum.map(|heads| heads.map(|v| v - most))
            })
            .collect();
    }
    out
}

/// What the others around a bolt are: shares that add up to one.
fn around(bolts: &[Found], shares: &[ByKind], me: usize) -> ByKind {
    let kinds = (SIZES.len() * Head::ALL.len()) as f64;
    let mut sum = [[BY_ITSELF / kinds; Head::ALL.len()]; SIZES.len()];
    let mut all = BY_ITSELF;
    let [x, y] = bolts[me].bolt.middle();
    for (i, other) in bolts.iter().enumerate() {
        if i == me {
            continue;
        }
        let [there_x, there_y] = other.bolt.middle();
        let away = libm::hypot(there_x - x, there_y - y) / NEAR_MM;
        let clear = if other.clear() { 1.0 } else { NOT_CLEAR };
        let counts = clear / (1.0 + away * away);
        all += counts;
        for (sum, share) in sum.iter_mut().flatten().zip(shares[i].iter().flatten()) {
            *sum += counts * share;
        }
    }
    sum.map(|heads| heads.map(|v| v / all))
}

/// From logarithms to shares.
fn shares(logs: &ByKind) -> ByKind {
    let likely = logs.map(|heads| heads.map(libm::exp));
    let all: f64 = likely.iter().flatten().sum();
    likely.map(|heads| heads.map(|v| v / all.max(1e-300)))
}

/// The likeliest kind: size and head.
pub fn likeliest(logs: &ByKind) -> (usize, Head) {
    let mut best = (f64::MIN, 0, Head::Hex);
    for (size, heads) in logs.iter().enumerate() {
        for (log, head) in heads.iter().zip(Head::ALL) {
            if *log > best.0 {
                best = (*log, size, head);
            }
        }
    }
    (best.1, best.2)
}

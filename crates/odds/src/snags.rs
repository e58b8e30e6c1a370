//! Snags of the past: how often a piece snaps or tears, learned by size, material, rust and
//! whether it was opened before.

use crate::error::OddsError;
use crate::fit::log_beta_binomial;
use crate::phrases as say;
use crate::prior::Prior;
use libm::exp;
use std::collections::BTreeMap;

/// What a piece is and how it sits. Unknown is a class of its own.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Joint {
    /// From 0, none, to 3, heavy.
    pub rust: Option<u8>,
    pub opened_before: Option<bool>,
    /// What it is screwed into, such as `aluminium`.
    pub material: Option<String>,
    /// Such as `M8`.
    pub size: Option<String>,
}

impl Joint {
    /// Its classes from the widest to the narrowest.
    fn classes(&self) -> [String; 4] {
        let unknown = || "?".to_owned();
        [
            self.rust.map_or_else(unknown, |rust| rust.to_string()),
            self.opened_before
                .map_or_else(unknown, |opened| opened.to_string()),
            self.material.clone().unwrap_or_else(unknown),
            self.size.clone().unwrap_or_else(unknown),
        ]
    }
}

/// Pieces that were worked on, and how many of them brought a snag.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Seen {
    pieces: u64,
    snags: u64,
}

/// Everything that was learned of snags, as counts: all, then by rust, by rust and opened before,
/// with the material, with the size.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct SnagHistory {
    levels: [BTreeMap<Vec<String>, Seen>; LEVELS],
}

const LEVELS: usize = 5;

/// How many pieces the chance of the wider class may count as: a declared grid.
pub const WEIGHTS: [f64; 7] = [2.0, 5.0, 15.0, 50.0, 150.0, 500.0, 1500.0];

/// The chance of a snag of one piece: a weighted mixture of Beta distributions.
#[derive(Clone, Debug, PartialEq)]
pub struct SnagChance {
    /// Weight, and the two parameters, for each.
    pub parts: Vec<(f64, f64, f64)>,
    /// The mean of the mixture.
    pub mean: f64,
    /// Pieces of just this sort that were seen.
    pub pieces: u64,
    /// Snags among them.
    pub snags: u64,
}

impl SnagHistory {
    /// Adds pieces that were worked on.
    ///
    /// # Errors
    ///
    /// More snags than pieces, or rust above 3; then nothing is added.
    pub fn learn(&mut self, joint: &Joint, pieces: u32, snags: u32) -> Result<(), OddsError> {
        check(joint)?;
        if snags > pieces {
            return Err(OddsError::MoreSnagsThanPieces {
                what: joint
                    .size
                    .clone()
                    .unwrap_or_else(|| say::a_joint().to_owned()),
                snags,
                pieces,
            });
        }
        let classes = joint.classes();
        for (level, cells) in self.levels.iter_mut().enumerate() {
            let seen = cells.entry(classes[..level].to_vec()).or_default();
            seen.pieces += u64::from(pieces);
            seen.snags += u64::from(snags);
        }
        Ok(())
    }

    /// How many pieces were learned.
    pub fn pieces(&self) -> u64 {
        self.levels[0].values().map(|seen| seen.pieces).sum()
    }

    /// The chance that one piece of this sort brings a snag.
    ///
    /// Formula: the shop's chance is `Beta(m0 s0 + x, (1 - m0) s0 + n - x)` by the entered belief
    /// `m0` worth `s0` pieces. Each narrower class starts from its wider class's mean `m` as
    /// `Beta(m s, (1 - m) s)`; `s` runs over [`WEIGHTS`], each weighted by the beta-binomial
    /// likelihood of all cells of that level.
    ///
    /// # Errors
    ///
    /// A prior outside its range, or rust above 3.
    ///
    /// # Limits
    ///
    /// The wider class's mean is taken as known, and its counts hold those of the narrower.
    ///
    /// # Source
    ///
    /// The beta-binomial model; its moments and updates are held against published ones.
    ///
    /// ```
    /// use odds::{Joint, Prior, SnagHistory};
    ///
    /// let none = SnagHistory::default().chance(&Joint::default(), &Prior::default())?;
    /// assert!((none.mean - 0.01).abs() < 1e-12);
    /// # Ok::<(), odds::OddsError>(())
    /// ```
    pub fn chance(&self, joint: &Joint, prior: &Prior) -> Result<SnagChance, OddsError> {
        prior.check()?;
        check(joint)?;
        let levels = self.weights(prior);
        let classes = joint.classes();
        let narrow = LEVELS - 1;
        let seen = self.seen(narrow, &classes);
        let mean = mean_of(self, prior, &levels, &classes[..narrow - 1]);
        let (n, x) = numbers(seen);
        let parts: Vec<(f64, f64, f64)> = WEIGHTS
            .iter()
            .zip(&levels[narrow])
            .map(|(s, weight)| (*weight, mean * s + x, (1.0 - mean) * s + n - x))
            .collect();
        Ok(SnagChance {
            mean: parts.iter().map(|(w, a, b)| w * a / (a + b)).sum(),
            parts,
            pieces: seen.pieces,
            snags: seen.snags,
        })
    }

    /// The chance over all pieces, whatever they are: where every class starts.
    ///
    /// Formula: `(m0 s0 + snags) / (s0 + pieces)`.
    ///
    /// # Errors
    ///
    /// A prior outside its range.
    pub fn shop(&self, prior: &Prior) -> Result<f64, OddsError> {
        prior.check()?;
        Ok(mean_of(self, prior, &[], &[]))
    }

    fn seen(&self, level: usize, classes: &[String]) -> Seen {
        self.levels[level]
            .get(&classes[..level])
            .copied()
            .unwrap_or_default()
    }

    /// For each level, the weight of each of [`WEIGHTS`].
    fn weights(&self, prior: &Prior) -> Vec<Vec<f64>> {
        let even = vec![1.0 / WEIGHTS.len() as f64; WEIGHTS.len()];
        let mut levels = vec![even];
        for level in 1..LEVELS {
            let logs: Vec<f64> = WEIGHTS
                .iter()
                .map(|s| {
                    self.levels[level]
                        .iter()
                        .map(|(classes, seen)| {
                            let mean = mean_of(self, prior, &levels, &classes[..level - 1]);
                            let (n, x) = numbers(*seen);
                            log_beta_binomial(x, n, mean * s, (1.0 - mean) * s)
                        })
                        .sum()
                })
                .collect();
            let most = logs.iter().copied().fold(f64::NEG_INFINITY, f64::max);
            let all: f64 = logs.iter().map(|log| exp(log - most)).sum();
            levels.push(logs.iter().map(|log| exp(log - most) / all).collect());
        }
        levels
    }
}

/// The mean of a class, found from the widest down.
fn mean_of(history: &SnagHistory, prior: &Prior, levels: &[Vec<f64>], classes: &[String]) -> f64 {
    let (n, x) = numbers(history.seen(0, classes));
    let mut mean = (prior.snag_mean * prior.snag_pieces + x) / (prior.snag_pieces + n);
    for (level, weights) in levels.iter().enumerate().take(classes.len() + 1).skip(1) {
        let (n, x) = numbers(history.seen(level, classes));
        mean = WEIGHTS
            .iter()
            .zip(weights)
            .map(|(s, weight)| weight * (mean * s + x) / (s + n))
            .sum();
    }
    mean
}

#[allow(clippy::cast_precision_loss, reason = "counts stay far below 2^52")]
fn numbers(seen: Seen) -> (f64, f64) {
    (seen.pieces as f64, seen.snags as f64)
}

pub(crate) fn check(joint: &Joint) -> Result<(), OddsError> {
    crate::history::check_condition(crate::Condition {
        rust: joint.rust,
        ..crate::Condition::default()
    })
}

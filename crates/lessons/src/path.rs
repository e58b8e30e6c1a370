//! A sequence of steps to a target, with what it rests on.

use crate::job::Step;
use crate::lessons::Lessons;
use crate::pair::Held;
use crate::relation::{has, ones, set};
use std::fmt;

/// One step of a path.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct PathStep {
    /// The step.
    pub step: Step,
    /// Whether it was never seen apart from the one before: the two are done in one go.
    pub in_one_go: bool,
    /// The steps before it that it is only guessed to need; its place rests on them.
    pub guessed: Vec<Step>,
}

/// A way to a target as jobs have taught it.
#[derive(Debug, Clone, PartialEq)]
pub struct Path {
    /// The steps in their sequence, the targets among them.
    pub steps: Vec<PathStep>,
    /// The chance that it can be carried out as it stands: at least this, under the model.
    pub holds: f64,
}

/// A target that no job has shown.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct NeverSeen {
    /// The target.
    pub target: Step,
}

impl fmt::Display for NeverSeen {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(
            f,
            "{}: no job has shown it yet; do one, or write the map by hand",
            self.target
        )
    }
}

impl std::error::Error for NeverSeen {}

impl Lessons {
    /// The steps that bring the targets about, in a sequence that keeps to all that is known
    /// and to what is guessed.
    ///
    /// `holds` is 1 less the chances of all that could be wrong: for each two steps, that the
    /// later is needed before the earlier; for each step that is left out, that one of these needs
    /// it. The sum is an upper bound of the chance that anything is wrong, whatever hangs
    /// together with what, so the true chance is at least `holds`, if the model is right.
    /// Of steps never seen apart no sequence is claimed; they come in one go.
    ///
    /// # Errors
    /// [`NeverSeen`] with the first target that no job has shown.
    pub fn path_to(&self, targets: &[Step]) -> Result<Path, NeverSeen> {
        let mut wanted = vec![0; self.steps.len().div_ceil(64)];
        for target in targets {
            let number = self.number(target).ok_or_else(|| NeverSeen {
                target: target.clone(),
            })?;
            set(&mut wanted, number);
            for before in ones(self.kept.before(number)) {
                set(&mut wanted, before);
            }
        }
        let sequence = self.sequence(&wanted);
        let steps = self.described(&sequence);
        let holds = (1.0 - self.risk_of(&sequence) - self.risk_left_out(&wanted)).max(0.0);
        Ok(Path { steps, holds })
    }

    /// Of what may come next, always what is least likely to need something still to come.
    fn sequence(&self, wanted: &[u64]) -> Vec<usize> {
        let mut left: Vec<usize> = ones(wanted).collect();
        let mut sequence = Vec::new();
        while !left.is_empty() {
            let free = |one: &usize| {
                let before = self.kept.before(*one);
                left.iter().all(|other| !has(before, *other))
            };
            let key = |one: &usize| {
                let others = left.iter().filter(|other| *other != one);
                let mut risk = 0.0;
                let mut later = 0_i64;
                for other in others {
                    if self.is_ordered(*one, *other) {
                        risk += self.chance(*other, *one);
                    }
                    let seen = self.seen(*one, *other).totals();
                    let ahead = i64::from(seen.0) - i64::from(seen.1);
                    later += if one < other { -ahead } else { ahead };
                }
                (risk, later)
            };
            let mut best: Option<(f64, i64, usize)> = None;
            for (risk, later, at) in
                left.iter()
                    .enumerate()
                    .filter(|(_, one)| free(one))
                    .map(|(at, one)| {
                        let (risk, later) = key(one);
                        (risk, later, at)
                    })
            {
                let better = best.is_none_or(|(least, rank, _)| {
                    risk.total_cmp(&least).then(later.cmp(&rank)).is_lt()
                });
                if better {
                    best = Some((risk, later, at));
                }
            }
            // A relation without circles always leaves something free.
            let Some((.., at)) = best else { break };
            sequence.push(left.remove(at));
        }
        self.gathered(sequence)
    }

    /// Steps never seen apart stand side by side, where nothing has to come between.
    fn gathered(&self, mut sequence: Vec<usize>) -> Vec<usize> {
        let mut at = 0;
        while at + 1 < sequence.len() {
            let one = sequence[at];
            let mate = (at + 1..sequence.len()).find(|later| {
                self.is_one_go(one, sequence[*later])
                    && sequence[at + 1..*later]
                        .iter()
                        .all(|between| !self.kept.has(*between, sequence[*later]))
            });
            if let Some(later) = mate {
                let mate = sequence.remove(later);
                sequence.insert(at + 1, mate);
            }
            at += 1;
        }
        sequence
    }

    /// Whether the jobs tell anything of the sequence of two steps.
    fn is_ordered(&self, one: usize, other: usize) -> bool {
        !self.is_one_go(one, other)
    }

    fn is_one_go(&self, one: usize, other: usize) -> bool {
        let seen = self.seen(one, other);
        let is_stated = self.stated.has(one, other) || self.stated.has(other, one);
        seen.together > 0 && seen.totals() == (0, 0) && !is_stated
    }

    fn described(&self, sequence: &[usize]) -> Vec<PathStep> {
        let direct: Vec<(usize, usize)> = self.kept.direct();
        let mut steps = Vec::new();
        for (at, one) in sequence.iter().enumerate() {
            let guessed = direct.iter().filter(|(first, second)| {
                second == one
                    && self.held(*first, *second) == Held::Guess
                    && sequence[..at].contains(first)
            });
            steps.push(PathStep {
                step: self.steps[*one].clone(),
                in_one_go: at > 0 && self.is_one_go(sequence[at - 1], *one),
                guessed: guessed
                    .map(|(first, _)| self.steps[*first].clone())
                    .collect(),
            });
        }
        steps
    }

    fn risk_of(&self, sequence: &[usize]) -> f64 {
        let mut risk = 0.0;
        for (at, first) in sequence.iter().enumerate() {
            let mut in_one_go = true;
            for pair in sequence[at..].windows(2) {
                // Two that were never apart, with others between: a sequence is claimed.
                in_one_go &= self.is_one_go(pair[0], pair[1]);
                let second = pair[1];
                if !in_one_go || self.is_ordered(*first, second) {
                    risk += self.chance(second, *first);
                }
            }
        }
        risk
    }

    /// A step left out harms as often as the likeliest of these steps needs it: that others
    /// need it as well is the same mistake of the same jobs.
    fn risk_left_out(&self, wanted: &[u64]) -> f64 {
        let out = (0..self.steps.len()).filter(|one| !has(wanted, *one));
        out.map(|one| {
            let each = ones(wanted).map(|other| self.chance(one, other));
            each.fold(0.0, f64::max)
        })
        .sum()
    }
}

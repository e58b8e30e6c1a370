//! Different ways to one step, as jobs have taken them.

use crate::job::{Step, Way};
use crate::learner::Learner;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

/// A step that jobs have reached in different ways: a proposal to be asked about, since
/// the jobs may just have had different things to do.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Alternative {
    /// The step that was reached.
    pub target: Step,
    /// The ways, the most frequent first: every job took exactly one of them.
    pub ways: Vec<TakenWay>,
}

/// One way to a step.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct TakenWay {
    /// What came before the step on this way and on no other.
    pub steps: BTreeSet<Step>,
    /// In how many jobs.
    pub times: u32,
    /// By how many independent witnesses.
    pub witnesses: usize,
}

/// So many different bundles of steps are looked at; more differ by chance.
const MOST_BUNDLES: usize = 40;

impl Learner {
    /// The alternatives to reach a step, the best supported first.
    ///
    /// Steps that came before it in exactly the same jobs belong together. Two or three such
    /// bundles are alternatives if every job that made the step has exactly one of them, and
    /// no job has made a step of one only after the target.
    #[must_use]
    pub fn alternatives(&self, target: &Step) -> Vec<Alternative> {
        let Some(number) = self.number(target, Way::Out) else {
            return Vec::new();
        };
        let witness_of = self.witness_of();
        let mut jobs = Vec::new();
        let mut befores: BTreeMap<u16, BTreeSet<usize>> = BTreeMap::new();
        let mut afters = BTreeSet::new();
        for kept in self.jobs.values() {
            let steps = &kept.ways[Way::Out as usize];
            let Some((_, turn)) = steps.iter().find(|(step, _)| *step == number) else {
                continue;
            };
            for (step, at) in steps {
                match at < turn {
                    true => {
                        befores.entry(*step).or_default().insert(jobs.len());
                    }
                    false if at > turn => {
                        afters.insert(*step);
                    }
                    false => {}
                }
            }
            jobs.push(witness_of[kept.group]);
        }
        let mut bundles: BTreeMap<BTreeSet<usize>, BTreeSet<Step>> = BTreeMap::new();
        for (step, within) in befores {
            if within.len() < jobs.len() && !afters.contains(&step) {
                let steps = bundles.entry(within).or_default();
                steps.insert(self.step(step).clone());
            }
        }
        if bundles.len() > MOST_BUNDLES {
            return Vec::new();
        }
        let bundles: Vec<_> = bundles.into_iter().collect();
        let mut found: Vec<Alternative> = partitions(&bundles, jobs.len())
            .into_iter()
            .map(|which| {
                let mut ways: Vec<TakenWay> = which
                    .into_iter()
                    .map(|at| taken(&bundles[at], &jobs))
                    .collect();
                ways.sort_by(|a, b| b.times.cmp(&a.times).then(a.cmp(b)));
                Alternative {
                    target: target.clone(),
                    ways,
                }
            })
            .collect();
        let least = |one: &Alternative| one.ways.last().map_or(0, |way| way.times);
        found.sort_by(|a, b| least(b).cmp(&least(a)).then_with(|| a.ways.cmp(&b.ways)));
        found
    }
}

fn taken((within, steps): &(BTreeSet<usize>, BTreeSet<Step>), jobs: &[usize]) -> TakenWay {
    let witnesses: BTreeSet<usize> = within.iter().map(|job| jobs[*job]).collect();
    TakenWay {
        steps: steps.clone(),
        times: u32::try_from(within.len()).unwrap_or(u32::MAX),
        witnesses: witnesses.len(),
    }
}

/// Two or three bundles of which every job has exactly one.
fn partitions(bundles: &[(BTreeSet<usize>, BTreeSet<Step>)], jobs: usize) -> Vec<Vec<usize>> {
    let mut found = Vec::new();
    for one in 0..bundles.len() {
        for other in one + 1..bundles.len() {
            let (a, b) = (&bundles[one].0, &bundles[other].0);
            if !a.is_disjoint(b) {
                continue;
            }
            if a.len() + b.len() == jobs {
                found.push(vec![one, other]);
                continue;
            }
            for (third, (c, _)) in bundles.iter().enumerate().skip(other + 1) {
                let apart = a.is_disjoint(c) && b.is_disjoint(c);
                if apart && a.len() + b.len() + c.len() == jobs {
                    found.push(vec![one, other, third]);
                }
            }
        }
    }
    found
}

impl fmt::Display for Alternative {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let way = |way: &TakenWay| {
            let steps: Vec<_> = way.steps.iter().map(Step::to_string).collect();
            let jobs = if way.times == 1 { "job" } else { "jobs" };
            format!("{} ({} {jobs})", steps.join(" and "), way.times)
        };
        let ways: Vec<_> = self.ways.iter().map(way).collect();
        write!(
            f,
            "before {}: {}; will either do?",
            self.target,
            ways.join(" or ")
        )
    }
}

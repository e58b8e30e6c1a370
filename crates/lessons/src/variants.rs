//! What tells variants of one kind of vehicle apart.

use crate::counts::Group;
use crate::job::{Step, Way};
use crate::learner::Learner;
use crate::model::{Evidence, Judge};
use std::collections::BTreeSet;

/// A step that only vehicles with a variant have, as far as jobs show.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct OnlyWith {
    /// The step.
    pub step: Step,
    /// The variant.
    pub variant: String,
    /// In how many jobs it was seen, all of them with the variant.
    pub times: u32,
    /// In how many jobs without the variant it was missing where it would have been expected.
    pub missing: u32,
}

/// So much better must two sides explain what was seen than one: twenty to one.
const TELLING: f64 = 20.0;

/// The steps that only a variant has. A step counts as such if every job that shows it has
/// the variant, and some other step that always came with it was seen without it at least
/// twice where the variant is missing.
pub(crate) fn only_with(learner: &Learner, way: Way, steps: &[(Step, u16)]) -> Vec<OnlyWith> {
    let variants = variants(learner);
    let mut found = Vec::new();
    for (step, number) in steps {
        let seen = |has: &dyn Fn(&Group) -> bool, number: u16| -> u32 {
            let groups = learner.groups().iter().filter(|group| has(group));
            groups.map(|group| group.seen(way, number)).sum()
        };
        for variant in &variants {
            let with = |group: &Group| group.variants.contains(*variant);
            let without = |group: &Group| !group.variants.contains(*variant);
            let times = seen(&with, *number);
            if times < 2 || seen(&without, *number) > 0 {
                continue;
            }
            let missing = |(_, other): &(Step, u16)| {
                let both: u32 = learner
                    .groups()
                    .iter()
                    .filter(|group| with(group))
                    .map(|group| {
                        let (there, back, together) = group.pair(way, *number, *other);
                        there + back + together
                    })
                    .sum();
                let alone = seen(&without, *other);
                (other != number && both >= 2 && both == seen(&with, *other) && alone >= 2)
                    .then_some(alone)
            };
            let Some(missing) = steps.iter().filter_map(missing).max() else {
                continue;
            };
            found.push(OnlyWith {
                step: step.clone(),
                variant: (*variant).clone(),
                times,
                missing,
            });
            break;
        }
    }
    found
}

/// The variant by which the sequence of two steps differs, if one explains what was seen so
/// much better than chance.
pub(crate) fn differs_by(
    learner: &Learner,
    way: Way,
    pair: (u16, u16),
    witness_of: &[usize],
    all: &Evidence,
    judge: &mut Judge,
) -> Option<String> {
    let (there, back) = all.totals();
    if there == 0 || back == 0 {
        return None;
    }
    let whole = judge.likelihood(all);
    let mut best: Option<(f64, &String)> = None;
    for variant in variants(learner) {
        let side = |wanted: bool| {
            let fits = |group: &Group| group.variants.contains(variant) == wanted;
            learner.evidence(way, pair, witness_of, &fits)
        };
        let (with, without) = (side(true), side(false));
        let any = |side: &Evidence| side.totals() != (0, 0);
        if !any(&with) || !any(&without) {
            continue;
        }
        let gain = judge.likelihood(&with) + judge.likelihood(&without) - whole;
        if gain > libm::log(TELLING) && best.is_none_or(|(most, _)| gain > most) {
            best = Some((gain, variant));
        }
    }
    best.map(|(_, variant)| variant.clone())
}

/// The variants that some jobs have and others have not.
fn variants(learner: &Learner) -> BTreeSet<&String> {
    let groups = || learner.groups().iter().filter(|group| group.jobs > 0);
    let all: BTreeSet<&String> = groups().flat_map(|group| &group.variants).collect();
    let everywhere = |variant: &&String| groups().all(|group| group.variants.contains(*variant));
    all.into_iter()
        .filter(|variant| !everywhere(variant))
        .collect()
}

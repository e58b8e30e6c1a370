//! What jobs have taught: for each two steps, whether one is needed before the other, how
//! that is known, and how sure it is.

use crate::counts::Group;
use crate::job::{Step, Way};
use crate::learner::Learner;
use crate::model::{Evidence, Judge, Model};
use crate::pair::{Contradiction, Ground, Held, Pair};
use crate::relation::{Relation, ones};
use crate::variants::{OnlyWith, differs_by, only_with};
use states::{Need, State};
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};
use std::fmt;

/// What people have said about pairs of steps: in the map, or when asked.
#[derive(Debug, Clone, PartialEq, Eq, Default)]
pub struct Answers {
    /// The first is needed before the second.
    pub needed: BTreeSet<(Step, Step)>,
    /// The first is not needed before the second: the second can come without it.
    pub not_needed: BTreeSet<(Step, Step)>,
    /// Asked, and nobody could say; such a pair is not asked again.
    pub unsaid: BTreeSet<(Step, Step)>,
}

/// What the lessons are wanted for.
#[derive(Debug, Clone, Copy)]
pub struct Ask<'a> {
    /// The way out, or the way back.
    pub way: Way,
    /// What the vehicle at hand has; nothing where all are looked at together.
    pub variants: Option<&'a BTreeSet<String>>,
    /// What people have said.
    pub answers: &'a Answers,
    /// How counts are weighed.
    pub model: &'a Model,
}

/// So many steps are weighed against each other, those seen in the most jobs.
pub const MOST_STEPS: usize = 600;
/// From this chance on, a need is not worth a question.
pub const SURE: f64 = 0.95;
/// From this chance on, a step is not said to rest on a guess.
pub const KNOWN: f64 = 0.8;
/// From this chance on, a plan keeps to a need, as a guess.
pub const GUESS: f64 = 0.12;
/// Below this chance, a need is not worth a question.
pub const DOUBT: f64 = 0.05;

/// What is to be known before anybody leans on lessons.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Caution {
    /// No job was seen.
    NoJob,
    /// One job only.
    OneJob,
    /// So many of the rarest steps are left out.
    LeftOut(usize),
}

impl fmt::Display for Caution {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoJob => f.write_str("no job was seen; nothing is known of the sequence"),
            Self::OneJob => f.write_str(
                "one job only: the sequence is the one it went by, and nothing tells which of it is needed",
            ),
            Self::LeftOut(steps) => write!(
                f,
                "the {steps} rarest steps are left out; join names that mean one thing"
            ),
        }
    }
}

/// What is known of the sequence on one kind of vehicle, for one way and set of variants.
#[derive(Debug, Clone)]
pub struct Lessons {
    pub(crate) steps: Vec<Step>,
    pub(crate) evidence: Vec<Evidence>,
    /// The chance that the row is needed before the column.
    pub(crate) needed: Vec<f64>,
    pub(crate) kept: Relation,
    /// What follows from answers alone.
    pub(crate) stated: Relation,
    pub(crate) answers: Answers,
    jobs: u32,
    /// How many steps were too rare to be weighed.
    left_out: usize,
    model: Model,
    differs: BTreeMap<(usize, usize), String>,
    only_with: Vec<OnlyWith>,
    contradictions: Vec<Contradiction>,
}

impl Learner {
    /// What all jobs together have taught.
    #[must_use]
    pub fn lessons(&self, ask: &Ask<'_>) -> Lessons {
        let witness_of = self.witness_of();
        let (mut steps, left_out) = self.most_seen(ask.way);
        let only = only_with(self, ask.way, &steps);
        let lacks = |variant: &String| ask.variants.is_some_and(|has| !has.contains(variant));
        let here = |step: &Step| {
            let bound = only.iter().find(|one| one.step == *step);
            bound.is_none_or(|one| !lacks(&one.variant))
        };
        steps.retain(|(step, _)| here(step));
        let bound = |step: &Step| only.iter().find(|one| one.step == *step);
        let count = steps.len();
        let mut judge = Judge::new(ask.model);
        let mut lessons = Lessons {
            evidence: Vec::with_capacity(count * count.saturating_sub(1) / 2),
            needed: vec![0.0; count * count],
            kept: Relation::new(count),
            stated: Relation::new(count),
            answers: ask.answers.clone(),
            jobs: self.groups().iter().map(|group| group.jobs).sum(),
            left_out,
            model: *ask.model,
            differs: BTreeMap::new(),
            only_with: only.clone(),
            contradictions: Vec::new(),
            steps: steps.iter().map(|(step, _)| step.clone()).collect(),
        };
        for first in 0..count {
            for second in first + 1..count {
                let bounds = [first, second].map(|one| bound(&steps[one].0));
                let pair = (steps[first].1, steps[second].1);
                let of = Counting {
                    learner: self,
                    ask,
                    witness_of: &witness_of,
                    bounds,
                };
                let (evidence, differs) = of.evidence(pair, &mut judge);
                if let Some(variant) = differs {
                    lessons.differs.insert((first, second), variant);
                }
                let chances = judge.chances(&evidence);
                lessons.needed[first * count + second] = chances.first;
                lessons.needed[second * count + first] = chances.second;
                lessons.evidence.push(evidence);
            }
        }
        lessons.heed();
        lessons.keep();
        lessons
    }
}

impl Learner {
    /// The steps seen in the most jobs, by name, and how many there are besides.
    fn most_seen(&self, way: Way) -> (Vec<(Step, u16)>, usize) {
        let mut steps = self.steps(way, &|group| group.jobs > 0);
        let left_out = steps.len().saturating_sub(MOST_STEPS);
        if left_out > 0 {
            let seen = |(_, number): &(Step, u16)| -> u32 {
                let groups = self.groups().iter();
                groups.map(|group| group.seen(way, *number)).sum()
            };
            steps.sort_by_cached_key(|step| (Reverse(seen(step)), step.0.clone()));
            steps.truncate(MOST_STEPS);
            steps.sort();
        }
        (steps, left_out)
    }
}

/// Which jobs count for a pair of steps.
struct Counting<'a> {
    learner: &'a Learner,
    ask: &'a Ask<'a>,
    witness_of: &'a [usize],
    /// Variants without which the one or the other step is not there.
    bounds: [Option<&'a OnlyWith>; 2],
}

impl Counting<'_> {
    /// What was seen of a pair on vehicles like the one at hand, and the variant by which it
    /// differs, if it does.
    fn evidence(&self, pair: (u16, u16), judge: &mut Judge) -> (Evidence, Option<String>) {
        let way = self.ask.way;
        let of = |counts: &dyn Fn(&Group) -> bool| {
            self.learner.evidence(way, pair, self.witness_of, counts)
        };
        let fits = |group: &Group| {
            let has = |one: &&OnlyWith| group.variants.contains(&one.variant);
            self.bounds.iter().flatten().all(has)
        };
        let all = of(&fits);
        let differs = differs_by(self.learner, way, pair, self.witness_of, &all, judge);
        match (&differs, self.ask.variants) {
            (Some(variant), Some(has)) => {
                let side = has.contains(variant);
                let like = |group: &Group| fits(group) && group.variants.contains(variant) == side;
                (of(&like), differs)
            }
            _ => (all, differs),
        }
    }
}

impl Lessons {
    /// The steps that were seen, by name.
    #[must_use]
    pub fn steps(&self) -> &[Step] {
        &self.steps
    }

    /// What is known of each two steps that were moved in one job.
    #[must_use]
    pub fn pairs(&self) -> Vec<Pair> {
        let mut pairs = Vec::new();
        for first in 0..self.steps.len() {
            for second in first + 1..self.steps.len() {
                pairs.extend(self.pair(first, second));
            }
        }
        pairs
    }

    /// The pairs that a plan keeps to, without those that others imply, for display.
    #[must_use]
    pub fn direct(&self) -> Vec<Pair> {
        let kept = self.kept.direct();
        kept.into_iter()
            .filter_map(|(first, second)| self.pair(first, second))
            .collect()
    }

    /// What each step needs, guesses included, as a plan takes it: each step that no others
    /// imply, done or gone further.
    #[must_use]
    pub fn needs(&self) -> BTreeMap<Step, Need> {
        let mut needs: BTreeMap<Step, Vec<Need>> = BTreeMap::new();
        for (first, second) in self.kept.direct() {
            let first = &self.steps[first];
            needs
                .entry(self.steps[second].clone())
                .or_default()
                .push(Need::Is {
                    item: first.item.clone(),
                    at: Vec::new(),
                    states: or_further(first.to),
                });
        }
        let all = needs.into_iter();
        all.map(|(step, needs)| (step, Need::All(needs))).collect()
    }

    /// What is known of these two steps; nothing if they never were in one job and nobody
    /// said anything.
    #[must_use]
    pub fn between(&self, one: &Step, other: &Step) -> Option<Pair> {
        self.pair(self.number(one)?, self.number(other)?)
    }

    /// What cannot all be right.
    #[must_use]
    pub fn contradictions(&self) -> &[Contradiction] {
        &self.contradictions
    }

    /// Steps that are there on vehicles with a variant only.
    #[must_use]
    pub fn only_with(&self) -> &[OnlyWith] {
        &self.only_with
    }

    /// What is to be known before anybody leans on this; empty when there is nothing to say.
    #[must_use]
    pub fn caution(&self) -> Option<Caution> {
        match self.jobs {
            0 => Some(Caution::NoJob),
            1 => Some(Caution::OneJob),
            _ if self.left_out > 0 => Some(Caution::LeftOut(self.left_out)),
            _ => None,
        }
    }

    pub(crate) fn number(&self, step: &Step) -> Option<usize> {
        self.steps.binary_search(step).ok()
    }

    pub(crate) fn chance(&self, first: usize, second: usize) -> f64 {
        self.needed[first * self.steps.len() + second]
    }

    pub(crate) fn seen(&self, one: usize, other: usize) -> &Evidence {
        let (first, second) = (one.min(other), one.max(other));
        let count = self.steps.len();
        // Row by row, each row one shorter than the one above.
        &self.evidence[first * (2 * count - first - 1) / 2 + second - first - 1]
    }

    pub(crate) fn held(&self, first: usize, second: usize) -> Held {
        let known = self.stated.has(first, second) || self.chance(first, second) >= KNOWN;
        match self.kept.has(first, second) {
            true if known => Held::Needed,
            true => Held::Guess,
            false => Held::Either,
        }
    }

    fn pair(&self, one: usize, other: usize) -> Option<Pair> {
        if one == other {
            return None;
        }
        let seen = self.seen(one, other);
        let (there, back) = match one < other {
            true => seen.totals(),
            false => seen.turned().totals(),
        };
        let turned = self.kept.has(other, one) || (!self.kept.has(one, other) && back > there);
        let (first, second) = if turned { (other, one) } else { (one, other) };
        let (there, back) = if turned { (back, there) } else { (there, back) };
        let runs = seen.runs.iter().map(|(there, back)| there + back);
        let ground = if self.stated.has(first, second) {
            Ground::Stated
        } else if there > 0 && back > 0 {
            Ground::BothWays { there, back }
        } else if there + back > 0 {
            Ground::Seen {
                times: there + back,
                witnesses: seen.runs.len(),
            }
        } else if seen.together > 0 {
            Ground::NeverApart {
                times: seen.together,
            }
        } else {
            return None;
        };
        let shown = match ground {
            Ground::Seen { .. } => self.model.shown(&runs.collect::<Vec<_>>()),
            Ground::BothWays { .. } => 1.0,
            Ground::Stated | Ground::NeverApart { .. } => 0.0,
        };
        let key = (one.min(other), one.max(other));
        Some(Pair {
            first: self.steps[first].clone(),
            second: self.steps[second].clone(),
            ground,
            held: self.held(first, second),
            needed: self.chance(first, second),
            opposite: self.chance(second, first),
            shown,
            differs_by: self.differs.get(&key).cloned(),
        })
    }

    /// Puts what people said, and what follows from it, over what was seen.
    fn heed(&mut self) {
        let count = self.steps.len();
        let numbers = |pairs: &BTreeSet<(Step, Step)>| -> Vec<(usize, usize)> {
            let number =
                |(first, second): &(Step, Step)| Some((self.number(first)?, self.number(second)?));
            pairs.iter().filter_map(number).collect()
        };
        let needed = numbers(&self.answers.needed);
        let not_needed = numbers(&self.answers.not_needed);
        for (first, second) in needed {
            if !self.stated.add(first, second) {
                self.contradict(first, second);
            }
        }
        for first in 0..count {
            for second in 0..count {
                if self.stated.has(first, second) {
                    self.needed[first * count + second] = 1.0;
                    self.needed[second * count + first] = 0.0;
                }
            }
        }
        for (first, second) in not_needed {
            if self.stated.has(first, second) {
                self.contradict(first, second);
                continue;
            }
            for (first, second) in excluded(&self.stated, first, second) {
                self.rule_out(first, second);
            }
        }
    }

    fn contradict(&mut self, first: usize, second: usize) {
        let (first, second) = (self.steps[first].clone(), self.steps[second].clone());
        self.contradictions
            .push(Contradiction::Answers { first, second });
    }

    /// The first is not needed before the second: what is left is shared out anew.
    fn rule_out(&mut self, first: usize, second: usize) {
        let count = self.steps.len();
        let gone = self.needed[first * count + second];
        self.needed[first * count + second] = 0.0;
        let left = &mut self.needed[second * count + first];
        *left = if gone < 1.0 {
            *left / (1.0 - gone)
        } else {
            0.0
        };
    }

    /// The needs that a plan keeps to: the surest first, none that would go round.
    fn keep(&mut self) {
        let count = self.steps.len();
        let mut likely: Vec<(usize, usize)> = Vec::new();
        for first in 0..count {
            for second in 0..count {
                let chance = self.chance(first, second);
                if first != second && chance >= GUESS && chance > self.chance(second, first) {
                    likely.push((first, second));
                }
            }
        }
        let surest = |(first, second): &(usize, usize)| self.needed[first * count + second];
        likely.sort_by(|a, b| surest(b).total_cmp(&surest(a)).then(a.cmp(b)));
        self.kept = self.stated.clone();
        for (first, second) in likely {
            if !self.kept.add(first, second) {
                let (first, second) = (self.steps[first].clone(), self.steps[second].clone());
                self.contradictions
                    .push(Contradiction::Circle { first, second });
            }
        }
    }
}

/// A state, and those that lie beyond it: what is out was cracked before, and a piece that
/// snapped is out of the way.
fn or_further(state: State) -> BTreeSet<State> {
    let snapped = State::Stub { holds: false };
    match state {
        State::Cracked => [state, State::Out, State::Loose { passes: 0 }, snapped].into(),
        State::Out => [state, snapped].into(),
        other => [other].into(),
    }
}

/// What cannot be needed if the first is not needed before the second: nothing after the
/// first before anything that comes before the second.
pub(crate) fn excluded(order: &Relation, first: usize, second: usize) -> Vec<(usize, usize)> {
    let firsts: Vec<usize> = ones(order.after(first)).chain([first]).collect();
    let seconds: Vec<usize> = ones(order.before(second)).chain([second]).collect();
    let mut pairs = Vec::new();
    for one in firsts {
        pairs.extend(seconds.iter().map(|other| (one, *other)));
    }
    pairs
}

//! Vehicles whose true order is known, and people who work on them, from a seed.

use lessons::{
    Answer, Answers, Ask, Held, Job, Learner, Lessons, Model, Moved, Question, Step, Way,
};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use states::{ItemId, Kind, State};
use std::collections::BTreeSet;

/// How a true order is made.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Shape {
    /// Parts of it one after the other or side by side, again and again.
    SeriesParallel,
    /// Chains with needs between them at random.
    Random,
}

/// Who works.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum People {
    /// One person, who chooses anew each time.
    One,
    /// Six of them.
    Several,
    /// Six, each with a habit that he never changes.
    Bound,
}

/// A vehicle: which step is needed before which, closed.
#[derive(Debug, Clone)]
pub struct Truth {
    pub count: usize,
    before: Vec<bool>,
}

pub fn chance(seed: u64) -> ChaCha8Rng {
    ChaCha8Rng::seed_from_u64(seed)
}

impl Truth {
    pub fn new(shape: Shape, count: usize, width: usize, chance: &mut ChaCha8Rng) -> Self {
        let mut truth = Self {
            count,
            before: vec![false; count * count],
        };
        match shape {
            Shape::SeriesParallel => {
                let all: Vec<usize> = (0..count).collect();
                truth.compose(&all, width, chance);
            }
            Shape::Random => truth.chains(width, chance),
        }
        truth.close();
        // So that names tell nothing of the order.
        let mut names: Vec<usize> = (0..count).collect();
        shuffle(&mut names, chance);
        let mut named = vec![false; count * count];
        for a in 0..count {
            for b in 0..count {
                named[names[a] * count + names[b]] = truth.before[a * count + b];
            }
        }
        truth.before = named;
        truth
    }

    /// From direct pairs.
    pub fn of(count: usize, pairs: impl Iterator<Item = (usize, usize)>) -> Self {
        let mut truth = Self {
            count,
            before: vec![false; count * count],
        };
        for (first, second) in pairs {
            truth.add(first, second);
        }
        truth.close();
        truth
    }

    pub fn has(&self, first: usize, second: usize) -> bool {
        self.before[first * self.count + second]
    }

    fn add(&mut self, first: usize, second: usize) {
        self.before[first * self.count + second] = true;
    }

    fn compose(&mut self, all: &[usize], width: usize, chance: &mut ChaCha8Rng) {
        if width <= 1 || all.len() <= 1 {
            for pair in all.windows(2) {
                self.add(pair[0], pair[1]);
            }
            return;
        }
        let spare = all.len() - width;
        if spare > 0 && chance.random_range(0..2) == 0 {
            // One after the other: the first part as wide as may be, the other somewhat less.
            let cut = width + chance.random_range(0..spare);
            let other = chance.random_range(1..=width.min(all.len() - cut));
            let (mut one, mut two) = all.split_at(cut);
            let (mut wide, mut narrow) = (width, other);
            if chance.random_range(0..2) == 0 {
                (one, two) = all.split_at(all.len() - cut);
                (wide, narrow) = (other, width);
            }
            self.compose(one, wide, chance);
            self.compose(two, narrow, chance);
            for first in one {
                for second in two {
                    self.add(*first, *second);
                }
            }
        } else {
            let left = chance.random_range(1..width);
            let cut = left + chance.random_range(0..=spare);
            let (one, two) = all.split_at(cut);
            self.compose(one, left, chance);
            self.compose(two, width - left, chance);
        }
    }

    fn chains(&mut self, width: usize, chance: &mut ChaCha8Rng) {
        let mut chain: Vec<usize> = (0..self.count)
            .map(|at| {
                if at < width {
                    at
                } else {
                    chance.random_range(0..width)
                }
            })
            .collect();
        shuffle(&mut chain, chance);
        let dense = chance.random_range(2..25);
        for second in 0..self.count {
            for first in 0..second {
                let same = chain[first] == chain[second];
                if same || chance.random_range(0..100) < dense / 2 {
                    self.add(first, second);
                }
            }
        }
    }

    fn close(&mut self) {
        for middle in 0..self.count {
            for first in 0..self.count {
                if self.has(first, middle) {
                    for second in 0..self.count {
                        if self.has(middle, second) {
                            self.add(first, second);
                        }
                    }
                }
            }
        }
    }

    /// The most steps of which no two have a fixed sequence: all, less a largest matching of
    /// each with a later one (Dilworth).
    pub fn width(&self) -> usize {
        let mut mate: Vec<Option<usize>> = vec![None; self.count];
        let mut matched = 0;
        for first in 0..self.count {
            let mut tried = vec![false; self.count];
            matched += usize::from(self.augment(first, &mut tried, &mut mate));
        }
        self.count - matched
    }

    fn augment(&self, first: usize, tried: &mut [bool], mate: &mut [Option<usize>]) -> bool {
        for second in 0..self.count {
            if self.has(first, second) && !tried[second] {
                tried[second] = true;
                if mate[second].is_none_or(|other| self.augment(other, tried, mate)) {
                    mate[second] = Some(first);
                    return true;
                }
            }
        }
        false
    }

    /// The steps that these need, with themselves.
    pub fn closure(&self, targets: &[usize]) -> Vec<usize> {
        let needed = |one: &usize| targets.iter().any(|to| to == one || self.has(*one, *to));
        (0..self.count).filter(needed).collect()
    }

    /// Whether a sequence can be carried out: whatever a step needs came before it.
    pub fn allows(&self, sequence: &[usize]) -> bool {
        sequence.iter().enumerate().all(|(at, step)| {
            let mut needs = (0..self.count).filter(|first| self.has(*first, *step));
            needs.all(|first| sequence[..at].contains(&first))
        })
    }

    /// What a person who knows would answer.
    pub fn answer(&self, question: &Question) -> Answer {
        let (first, second) = (number(&question.first), number(&question.second));
        match self.has(first, second) {
            true => Answer::No,
            false => Answer::Yes,
        }
    }
}

/// People on one kind of vehicle, job after job.
pub struct Shop<'t> {
    pub truth: &'t Truth,
    people: Vec<Option<Vec<usize>>>,
    /// Of a hundred moves, so many are told in the wrong place.
    errors: u32,
    /// Whether all jobs take everything off.
    pub everything: bool,
    /// The most moves that are told at once, as rows of a stage.
    pub at_once: u32,
    chance: ChaCha8Rng,
    jobs: usize,
}

impl<'t> Shop<'t> {
    pub fn new(truth: &'t Truth, people: People, errors: u32, seed: u64) -> Self {
        let mut chance = chance(seed);
        let many = if people == People::One { 1 } else { 6 };
        let mut habit = || {
            let mut ranks: Vec<usize> = (0..truth.count).collect();
            shuffle(&mut ranks, &mut chance);
            (people == People::Bound).then_some(ranks)
        };
        Self {
            people: (0..many).map(|_| habit()).collect(),
            truth,
            errors,
            everything: false,
            at_once: 1,
            chance,
            jobs: 0,
        }
    }

    /// The next job: everything, or what one to three steps need.
    pub fn job(&mut self) -> Job {
        let who = self.chance.random_range(0..self.people.len());
        let wanted: Vec<usize> = match self.everything || self.chance.random_range(0..2) == 0 {
            true => (0..self.truth.count).collect(),
            false => (0..self.chance.random_range(1..=3))
                .map(|_| self.chance.random_range(0..self.truth.count))
                .collect(),
        };
        let mut told = self.worked(&self.truth.closure(&wanted), who);
        for at in 0..told.len() {
            if self.chance.random_range(0..100) < self.errors {
                let step = told.remove(at);
                let to = self.chance.random_range(0..=told.len());
                told.insert(to, step);
            }
        }
        self.jobs += 1;
        let (mut minute, mut left) = (0, 0);
        let mut moves = Vec::new();
        for step in told {
            if left == 0 {
                minute += 1;
                left = match self.at_once {
                    // So that the same seed gives the same jobs whether stages are told of or not.
                    1 => 1,
                    most => self.chance.random_range(1..=most),
                };
            }
            left -= 1;
            moves.push(off(step, minute));
        }
        Job {
            name: format!("order {}", self.jobs),
            by: [format!("person {who}")].into(),
            moves,
            ..Job::default()
        }
    }

    fn worked(&mut self, steps: &[usize], who: usize) -> Vec<usize> {
        let mut left = steps.to_vec();
        let mut done = Vec::new();
        while !left.is_empty() {
            let free = |one: &usize| !left.iter().any(|other| self.truth.has(*other, *one));
            let free: Vec<usize> = (0..left.len()).filter(|at| free(&left[*at])).collect();
            let chosen = match &self.people[who] {
                Some(ranks) => free.into_iter().min_by_key(|at| ranks[left[*at]]),
                None => Some(free[self.chance.random_range(0..free.len())]),
            };
            done.push(left.remove(chosen.expect("a true order always leaves something free")));
        }
        done
    }
}

pub fn off(step: usize, minute: usize) -> Moved {
    Moved {
        item: item(step),
        kind: Kind::Part,
        from: State::On,
        to: State::Off,
        minute: u32::try_from(minute).expect("a job has few moves"),
    }
}

pub fn item(step: usize) -> ItemId {
    ItemId::new(format!("item {step:03}"))
}

pub fn step(number: usize) -> Step {
    Step {
        item: item(number),
        to: State::Off,
    }
}

pub fn number(step: &Step) -> usize {
    let digits = step.item.as_str().trim_start_matches("item ");
    digits.parse().expect("steps are named by their number")
}

pub fn taught(learner: &Learner, answers: &Answers) -> Lessons {
    let model = Model::default();
    learner.lessons(&Ask {
        way: Way::Out,
        variants: None,
        answers,
        model: &model,
    })
}

/// How well lessons know the pairs of steps that they have seen.
#[derive(Debug, Clone, Copy, Default)]
pub struct Score {
    pub right: usize,
    pub wrong: usize,
    pub missed: usize,
}

impl Score {
    /// Pairs that a plan would keep to, guesses among them, against the truth.
    pub fn of(truth: &Truth, lessons: &Lessons) -> Self {
        let mut score = Self::default();
        let chosen: BTreeSet<(usize, usize)> = lessons
            .pairs()
            .iter()
            .filter(|pair| pair.held != Held::Either)
            .map(|pair| (number(&pair.first), number(&pair.second)))
            .collect();
        let steps: Vec<usize> = lessons.steps().iter().map(number).collect();
        for first in &steps {
            for second in &steps {
                match (
                    truth.has(*first, *second),
                    chosen.contains(&(*first, *second)),
                ) {
                    (true, true) => score.right += 1,
                    (false, true) => score.wrong += 1,
                    (true, false) => score.missed += 1,
                    (false, false) => {}
                }
            }
        }
        score
    }

    pub fn add(&mut self, other: Score) {
        self.right += other.right;
        self.wrong += other.wrong;
        self.missed += other.missed;
    }

    pub fn precision(self) -> f64 {
        share(self.right, self.right + self.wrong)
    }

    pub fn recall(self) -> f64 {
        share(self.right, self.right + self.missed)
    }
}

/// So many of so many; all of none.
pub fn share(part: usize, of: usize) -> f64 {
    if of == 0 {
        1.0
    } else {
        part as f64 / of as f64
    }
}

/// Asks what is worth most, so many times at most; how many were asked.
pub fn ask(learner: &Learner, truth: &Truth, answers: &mut Answers, most: usize) -> usize {
    let targets: Vec<Step> = (0..truth.count).map(step).collect();
    for asked in 0..most {
        let question = taught(learner, answers).questions(&targets, 1).pop();
        let Some(question) = question else {
            return asked;
        };
        answers.take(&question, truth.answer(&question));
    }
    most
}

/// Asks until all is settled; how many were asked.
pub fn settle(learner: &Learner, truth: &Truth, answers: &mut Answers) -> usize {
    let targets: Vec<Step> = (0..truth.count).map(step).collect();
    let mut asked = 0;
    while let Some(question) = taught(learner, answers).next_to_settle(&targets) {
        answers.take(&question, truth.answer(&question));
        asked += 1;
    }
    asked
}

pub fn shuffle(list: &mut [usize], chance: &mut ChaCha8Rng) {
    for at in (1..list.len()).rev() {
        list.swap(at, chance.random_range(0..=at));
    }
}

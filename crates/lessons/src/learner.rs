//! Jobs taken in, and the counts that are kept of them.

use crate::counts::Group;
use crate::job::{Job, Moved, Note, Step, Told, Way, away_from_home};
use crate::joins::Joins;
use crate::model::Evidence;
use crate::said::Facts;
use states::{ItemId, Kind, State};
use std::collections::{BTreeMap, BTreeSet};

/// So many moves of one job are taken in.
pub const MOST_MOVES: usize = 1000;

/// What was counted of all jobs on one kind of vehicle.
///
/// For each crew and each set of variants it keeps how often one step came before another; a
/// job is added or taken back by its own pairs alone. So it does not matter in which
/// sequence jobs arrive, nor whether one was in for a while and is out again.
///
/// A *witness* is a crew, and whoever shares a person with a smaller crew is the same witness as
/// that one: what Ana does alone and what she does with Ben is not seen independently.
#[derive(Debug, Clone, Default)]
pub struct Learner {
    joins: Joins,
    steps: Vec<(Step, Way)>,
    numbers: BTreeMap<(Step, Way), u16>,
    groups: Vec<Group>,
    group_numbers: BTreeMap<(BTreeSet<String>, BTreeSet<String>), usize>,
    pub(crate) jobs: BTreeMap<String, Kept>,
    kinds: BTreeMap<ItemId, BTreeMap<Kind, u32>>,
    pub(crate) facts: Facts,
}

/// What is kept of one job, so that it can be taken back.
#[derive(Debug, Clone)]
pub(crate) struct Kept {
    pub(crate) group: usize,
    /// The steps out and back, each with its turn; steps of one turn came in one go.
    pub(crate) ways: [Vec<(u16, u16)>; 2],
    kinds: Vec<(ItemId, Kind)>,
    told: Vec<Told>,
}

impl Learner {
    /// Nothing seen yet; names are joined as confirmed. When a join is added later, the jobs
    /// are learned again.
    #[must_use]
    pub fn new(joins: Joins) -> Self {
        Self {
            joins,
            ..Self::default()
        }
    }

    /// Takes a job in and tells what is odd about it. A job of a known name takes the place
    /// of the one before, as when an order was opened again.
    pub fn add(&mut self, job: &Job) -> Vec<Note> {
        let mut notes = Vec::new();
        if self.take_back(&job.name) {
            let job = job.name.clone();
            notes.push(Note::Replaced { job });
        }
        let kept = self.kept(job, &mut notes);
        self.count(&kept, true);
        self.jobs.insert(job.name.clone(), kept);
        notes.sort();
        notes
    }

    /// Forgets a job, as if it had never been added; false if none of that name is known.
    pub fn take_back(&mut self, job: &str) -> bool {
        let Some(kept) = self.jobs.remove(job) else {
            return false;
        };
        self.count(&kept, false);
        true
    }

    /// How many jobs are known.
    #[must_use]
    pub fn jobs(&self) -> usize {
        self.jobs.len()
    }

    /// How many independent witnesses there are.
    #[must_use]
    pub fn witnesses(&self) -> usize {
        let of = self.witness_of();
        let jobs = self
            .groups
            .iter()
            .zip(of)
            .filter(|(group, _)| group.jobs > 0);
        jobs.map(|(_, witness)| witness)
            .collect::<BTreeSet<_>>()
            .len()
    }

    /// Every count there is, by names: how often a step was seen, by which crew on which
    /// variants, and before or together with which others.
    #[must_use]
    pub fn counts(&self) -> BTreeMap<Vec<String>, u32> {
        let mut counts = BTreeMap::new();
        let list = |names: &BTreeSet<String>| names.iter().cloned().collect::<Vec<_>>().join(", ");
        for group in &self.groups {
            let mut put = |words: Vec<String>, count: u32| {
                if count > 0 {
                    let mut key = vec![list(&group.by), list(&group.variants)];
                    key.extend(words);
                    *counts.entry(key).or_default() += count;
                }
            };
            put(vec!["jobs".to_owned()], group.jobs);
            for (number, (step, way)) in self.steps.iter().enumerate() {
                let table = &group.tables[*way as usize];
                let name = format!("{step}");
                let Some(place) = number_of(number).and_then(|number| table.known(number)) else {
                    continue;
                };
                put(vec![name.clone()], table.seen[place]);
                for (other, (second, _)) in self.steps.iter().enumerate() {
                    let known = number_of(other).and_then(|number| table.known(number));
                    let Some(other) = known else { continue };
                    let pair = place * table.side + other;
                    let words = |how: &str| vec![name.clone(), how.to_owned(), format!("{second}")];
                    put(words("before"), table.before[pair]);
                    let mut pair_words = words("with");
                    pair_words.sort();
                    put(pair_words, table.together[pair]);
                }
            }
        }
        counts
    }

    /// Every item that was moved, with its kinds and how many jobs say so.
    #[must_use]
    pub fn kinds(&self) -> &BTreeMap<ItemId, BTreeMap<Kind, u32>> {
        &self.kinds
    }

    /// Names that were confirmed to mean one thing.
    #[must_use]
    pub fn joins(&self) -> &Joins {
        &self.joins
    }

    /// The numbers of the steps of one way that were seen in a job that counts, by name.
    pub(crate) fn steps(&self, way: Way, counts: &dyn Fn(&Group) -> bool) -> Vec<(Step, u16)> {
        let mut steps: Vec<(Step, u16)> = Vec::new();
        for ((step, its_way), number) in &self.numbers {
            let seen = |group: &&Group| group.seen(way, *number) > 0 && counts(group);
            if *its_way == way && self.groups.iter().any(|group| seen(&group)) {
                steps.push((step.clone(), *number));
            }
        }
        steps
    }

    pub(crate) fn groups(&self) -> &[Group] {
        &self.groups
    }

    pub(crate) fn step(&self, number: u16) -> &Step {
        &self.steps[usize::from(number)].0
    }

    pub(crate) fn number(&self, step: &Step, way: Way) -> Option<u16> {
        self.numbers.get(&(step.clone(), way)).copied()
    }

    /// The numbers of all steps of an item.
    pub(crate) fn numbers_of(&self, item: &ItemId, way: Way) -> Vec<u16> {
        let first = Step {
            item: item.clone(),
            to: State::On,
        };
        // States of one item stand together, whichever is the least of them.
        let from = self.numbers.range((first, Way::Out)..);
        from.take_while(|((step, _), _)| step.item == *item)
            .filter(|((_, its_way), _)| *its_way == way)
            .map(|(_, number)| *number)
            .collect()
    }

    /// Which witness each group is: the crews from the smallest, by name; one that shares a
    /// person with a witness that is there already is that witness.
    pub(crate) fn witness_of(&self) -> Vec<usize> {
        let mut crews: BTreeSet<(usize, &BTreeSet<String>)> = BTreeSet::new();
        for group in self.groups.iter().filter(|group| group.jobs > 0) {
            crews.insert((group.by.len(), &group.by));
        }
        let mut founders: Vec<&BTreeSet<String>> = Vec::new();
        let mut of: BTreeMap<&BTreeSet<String>, usize> = BTreeMap::new();
        for (_, crew) in crews {
            let shares = |founder: &&BTreeSet<String>| !founder.is_disjoint(crew);
            let known = founders.iter().position(shares);
            let witness = known.unwrap_or_else(|| {
                founders.push(crew);
                founders.len() - 1
            });
            of.insert(crew, witness);
        }
        let of_group = |group: &Group| of.get(&group.by).copied().unwrap_or(0);
        self.groups.iter().map(of_group).collect()
    }

    /// What was seen of two steps in the groups that count.
    pub(crate) fn evidence(
        &self,
        way: Way,
        (first, second): (u16, u16),
        witness_of: &[usize],
        counts: &dyn Fn(&Group) -> bool,
    ) -> Evidence {
        let mut evidence = Evidence::default();
        let mut runs: Vec<(usize, (u32, u32))> = Vec::new();
        for (group, witness) in self.groups.iter().zip(witness_of) {
            if group.jobs == 0 || !counts(group) {
                continue;
            }
            let (there, back, together) = group.pair(way, first, second);
            let both = there + back + together;
            evidence.together += together;
            evidence.first_alone += group.seen(way, first) - both;
            evidence.second_alone += group.seen(way, second) - both;
            if there + back == 0 {
                continue;
            }
            match runs.iter_mut().find(|(known, _)| known == witness) {
                Some((_, run)) => *run = (run.0 + there, run.1 + back),
                None => runs.push((*witness, (there, back))),
            }
        }
        runs.sort_unstable();
        evidence.runs = runs.into_iter().map(|(_, run)| run).collect();
        evidence
    }

    fn count(&mut self, kept: &Kept, add: bool) {
        let group = &mut self.groups[kept.group];
        group.jobs = match add {
            true => group.jobs + 1,
            false => group.jobs.saturating_sub(1),
        };
        for (table, steps) in group.tables.iter_mut().zip(&kept.ways) {
            table.count(steps, add);
        }
        for (item, kind) in &kept.kinds {
            let kinds = self.kinds.entry(item.clone()).or_default();
            let times = kinds.entry(*kind).or_default();
            *times = if add {
                *times + 1
            } else {
                times.saturating_sub(1)
            };
            kinds.retain(|_, times| *times > 0);
            if kinds.is_empty() {
                self.kinds.remove(item);
            }
        }
        self.facts.count(&kept.told, add);
    }

    /// A job with its names joined, its steps numbered, and what is odd told.
    fn kept(&mut self, job: &Job, notes: &mut Vec<Note>) -> Kept {
        let name = || job.name.clone();
        if job.moves.is_empty() {
            notes.push(Note::NothingMoved { job: name() });
        }
        if job.by.is_empty() {
            notes.push(Note::Nobody { job: name() });
        }
        let mut taken = job.moves.as_slice();
        if taken.len() > MOST_MOVES {
            taken = &taken[..MOST_MOVES];
            let taken = MOST_MOVES;
            notes.push(Note::TooMany { job: name(), taken });
        }
        let mut kinds: BTreeMap<&ItemId, BTreeSet<Kind>> = BTreeMap::new();
        for moved in taken {
            let item = self.joins.name(&moved.item);
            kinds.entry(item).or_default().insert(moved.kind);
        }
        let mut odd: BTreeSet<Note> = BTreeSet::new();
        let [first_out, last_back] = self.times(&job.name, taken, &kinds, &mut odd);
        notes.extend(odd);
        let kinds = kinds.iter().flat_map(|(item, kinds)| {
            let each = kinds.iter().map(|kind| ((*item).clone(), *kind));
            each.collect::<Vec<_>>()
        });
        let kinds = kinds.collect();
        let told: BTreeSet<Told> = job
            .told
            .iter()
            .map(|told| Told {
                item: self.joins.name(&told.item).clone(),
                ..told.clone()
            })
            .collect();
        Kept {
            group: self.group(job),
            ways: [
                self.numbered(first_out, Way::Out, &job.name, notes),
                self.numbered(last_back, Way::Back, &job.name, notes),
            ],
            kinds,
            told: told.into_iter().collect(),
        }
    }

    /// When each step out was made first, and each step back last: what came off twice is
    /// home after the last time.
    fn times(
        &self,
        job: &str,
        moves: &[Moved],
        kinds: &BTreeMap<&ItemId, BTreeSet<Kind>>,
        odd: &mut BTreeSet<Note>,
    ) -> [BTreeMap<Step, u32>; 2] {
        let [mut first_out, mut last_back] = [BTreeMap::new(), BTreeMap::new()];
        for moved in moves {
            let item = self.joins.name(&moved.item);
            let (job, name) = (job.to_owned(), item.clone());
            if kinds.get(item).is_some_and(|kinds| kinds.len() > 1) {
                odd.insert(Note::TwoKinds { job, item: name });
                continue;
            }
            let ranks = [moved.from, moved.to].map(|state| away_from_home(moved.kind, state));
            let [Some(from), Some(to)] = ranks else {
                odd.insert(Note::NoSuchState { job, item: name });
                continue;
            };
            let step = Step {
                item: name,
                to: moved.to.rung(),
            };
            if from < to {
                let at = first_out.entry(step).or_insert(moved.minute);
                *at = moved.minute.min(*at);
            } else if to < from {
                let at = last_back.entry(step).or_insert(moved.minute);
                *at = moved.minute.max(*at);
            }
        }
        [first_out, last_back]
    }

    fn group(&mut self, job: &Job) -> usize {
        let key = (job.by.clone(), job.variants.clone());
        if let Some(known) = self.group_numbers.get(&key) {
            return *known;
        }
        self.groups.push(Group {
            by: job.by.clone(),
            variants: job.variants.clone(),
            ..Group::default()
        });
        self.group_numbers.insert(key, self.groups.len() - 1);
        self.groups.len() - 1
    }

    fn numbered(
        &mut self,
        steps: BTreeMap<Step, u32>,
        way: Way,
        job: &str,
        notes: &mut Vec<Note>,
    ) -> Vec<(u16, u16)> {
        let mut timed: Vec<(u32, u16)> = Vec::new();
        for (step, minute) in steps {
            let key = (step, way);
            let number = match self.numbers.get(&key) {
                Some(known) => *known,
                None => {
                    let Some(number) = number_of(self.steps.len()) else {
                        let (job, step) = (job.to_owned(), key.0);
                        notes.push(Note::NoRoom { job, step });
                        continue;
                    };
                    self.steps.push(key.clone());
                    self.numbers.insert(key, number);
                    number
                }
            };
            timed.push((minute, number));
        }
        timed.sort_unstable();
        let mut turn = 0;
        let mut before = None;
        let in_turn = |(minute, number): (u32, u16)| {
            if before.is_some_and(|before| before != minute) {
                turn += 1;
            }
            before = Some(minute);
            (number, turn)
        };
        timed.into_iter().map(in_turn).collect()
    }
}

/// So many different steps can be told apart on one kind of vehicle.
fn number_of(at: usize) -> Option<u16> {
    u16::try_from(at).ok().filter(|number| *number < u16::MAX)
}

//! What finished work on a kind of vehicle has taught, as a page shows it.

use super::at_work::at_work;
use super::job::{OrderTaught, is_away};
use super::kind::{Counted, VehicleKind, counted};
use super::said::{self, about_code, chosen};
use super::words::{about_words, circle, done, people, value_words};
use crate::phrases::teaching as told;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use lessons::{Ask, Gathered, Ground, Held, Learner, Lessons, Model, Pair, PathStep, Step, Way};
use repair::{CommandId, ItemId};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// What is shown of one kind of vehicle.
pub struct Taught {
    /// The finished orders, the newest first, with who worked on them.
    pub orders: Vec<(u64, String)>,
    /// Of how many independent witnesses they are.
    pub witnesses: usize,
    /// What is to be known before anybody leans on it.
    pub caution: Option<String>,
    /// What may be asked for.
    pub targets: Vec<String>,
    /// What is asked for; nothing for all of it.
    pub target: Option<String>,
    /// How likely the sequence can be carried out as it stands, as one says it.
    pub holds: String,
    /// The steps in their sequence.
    pub steps: Vec<StepTaught>,
    /// How many of them rest on a guess.
    pub guesses: usize,
    /// The question to ask now.
    pub question: Option<Asked>,
    /// How many more there are.
    pub more: usize,
    /// Why nothing is asked now.
    pub waits: Option<String>,
    /// Names that may mean one thing.
    pub names: Vec<SameAsked>,
    /// What contradicts itself.
    pub differ: Vec<Differ>,
    /// What the jobs and answers cannot be brought into one sequence by.
    pub circles: Vec<String>,
    /// What either sequence was seen of.
    pub both_ways: Vec<String>,
    /// What went back in the sequence in which it came off, and not the other way round.
    pub back: Vec<String>,
    /// Steps that only some vehicles have, and different ways to one step.
    pub variants: Vec<String>,
    /// What was answered before.
    pub answered: Vec<AnsweredShown>,
}

/// One step.
pub struct StepTaught {
    /// What is moved.
    pub item: String,
    /// What is done with it.
    pub done: String,
    /// Whether it was never seen apart from the step before.
    pub in_one_go: bool,
    /// What its place rests on.
    pub rests: Vec<Rest>,
    /// What was told of it.
    pub facts: Vec<FactTaught>,
    /// Minutes off and back, as the shop's own clocks say.
    pub minutes: (Option<String>, Option<String>),
}

/// One thing that a step's place rests on.
pub struct Rest {
    /// What comes before.
    pub before: String,
    /// How that is known.
    pub how: String,
    /// Whether it is a guess.
    pub guess: bool,
}

/// What was told of an item in one respect.
pub struct FactTaught {
    /// In which respect.
    pub about: String,
    /// What was told, with who said it how often.
    pub values: Vec<(String, String)>,
    /// What was chosen of several.
    pub chosen: Option<String>,
}

/// A question, with the facts that answer it.
pub struct Asked {
    /// As it is asked.
    pub words: String,
    /// Why it is asked: what was seen.
    pub why: String,
    /// What each answer is recorded as: yes, no, can't say. `words` stands for a text.
    pub facts: [Value; 3],
}

/// Two names that may mean one thing.
pub struct SameAsked {
    /// The name that would be kept.
    pub name: String,
    /// The other.
    pub other: String,
    /// Why.
    pub why: String,
    /// What yes and no are recorded as.
    pub facts: [Value; 2],
}

/// What contradicts itself.
pub struct Differ {
    /// As it is asked.
    pub words: String,
    /// What may be right, with who says so and what choosing it is recorded as.
    pub values: Vec<(String, String, Value)>,
    /// What was chosen, and by whom.
    pub chosen: Option<String>,
}

/// What was answered before.
pub struct AnsweredShown {
    /// What was asked.
    pub words: String,
    /// What was said, and by whom.
    pub said: String,
    /// What each other answer is recorded as, with its word.
    pub others: Vec<(&'static str, Value)>,
}

/// How words are written into a fact that a device sends.
pub type AsWords<'a> = &'a dyn Fn(&str) -> Value;

/// What finished work has taught of a kind, for an item or for all of it.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn taught(
    snap: &Snapshot<'_>,
    kind: &VehicleKind,
    target: Option<&str>,
    words: AsWords<'_>,
) -> Result<Taught, Trouble> {
    let counted = counted(snap, kind)?;
    let learner = &*counted.learner;
    let answers = said::answers(snap, kind, learner.joins());
    let model = Model::default();
    let lessons = learner.lessons(&Ask {
        way: Way::Out,
        variants: None,
        answers: &answers,
        model: &model,
    });
    let page = Page {
        snap,
        kind,
        counted: &counted,
        lessons: &lessons,
        words,
        chosen: chosen(snap, &kind.said, learner.joins()),
        gathered: learner.gathered(),
    };
    let all: Vec<Step> = lessons.steps().to_vec();
    let aims: Vec<Step> = all
        .iter()
        .filter(|step| target.is_some_and(|wanted| step.item.as_str() == wanted))
        .cloned()
        .collect();
    let aims = if aims.is_empty() { all } else { aims };
    // Steps that were seen are never unseen.
    let path = lessons.path_to(&aims).ok();
    let (steps, holds) = path.map_or_else(Default::default, |path| (path.steps, path.holds));
    let questions = lessons.questions(&aims, MOST_QUESTIONS);
    let waits = at_work(snap, kind)?;
    let names = page.names();
    let shown: Vec<StepTaught> = steps.iter().map(|step| page.step(step)).collect();
    Ok(Taught {
        orders: page.orders(),
        witnesses: learner.witnesses(),
        caution: lessons.caution().map(caution),
        targets: targets(&lessons),
        target: target
            .filter(|wanted| aims.iter().all(|step| step.item.as_str() == *wanted))
            .map(str::to_owned),
        holds: crate::odds_of::often(holds),
        guesses: shown
            .iter()
            .filter(|step| step.rests.iter().any(|rest| rest.guess))
            .count(),
        steps: shown,
        more: questions.len().saturating_sub(1),
        question: match waits {
            Some(_) => None,
            None => page
                .next(&questions, &names)
                .map(|question| page.question(question)),
        },
        waits: waits.filter(|_| !questions.is_empty()),
        names,
        differ: page.differ(),
        circles: lessons.contradictions().iter().map(circle).collect(),
        both_ways: page.both_ways(),
        back: page.back_otherwise(&model),
        variants: page.variants(),
        answered: page.answered(),
    })
}

/// So many questions are counted; one is asked at a time.
const MOST_QUESTIONS: usize = 20;
/// So many pairs of which either sequence was seen are listed.
const MOST_BOTH_WAYS: usize = 20;

fn targets(lessons: &Lessons) -> Vec<String> {
    let items: BTreeSet<&ItemId> = lessons.steps().iter().map(|step| &step.item).collect();
    items.into_iter().map(ItemId::to_string).collect()
}

/// What a page is made from.
pub(super) struct Page<'a> {
    pub(super) snap: &'a Snapshot<'a>,
    pub(super) kind: &'a VehicleKind,
    pub(super) counted: &'a Counted,
    pub(super) lessons: &'a Lessons,
    pub(super) words: AsWords<'a>,
    pub(super) chosen: BTreeMap<said::ChosenOf, (String, repair::Stamp, Vec<CommandId>)>,
    pub(super) gathered: Vec<Gathered>,
}

impl Page<'_> {
    pub(super) fn learner(&self) -> &Learner {
        &self.counted.learner
    }

    fn orders(&self) -> Vec<(u64, String)> {
        let one = |taught: &std::sync::Arc<OrderTaught>| {
            (taught.number, people(self.snap, &taught.job.by))
        };
        self.counted.orders.iter().map(one).collect()
    }

    fn step(&self, step: &PathStep) -> StepTaught {
        let direct = self.lessons.direct();
        let rests = direct
            .iter()
            .filter(|pair| pair.second == step.step && pair.held != Held::Either);
        let rests = rests.map(|pair| Rest {
            before: self.step_words(&pair.first),
            how: self.how(pair),
            guess: pair.held == Held::Guess,
        });
        let item = &step.step.item;
        let facts = self.gathered.iter().filter(|one| one.item == *item);
        let (out, back) = minutes(self.counted, item);
        StepTaught {
            item: item.to_string(),
            done: done(step.step.to).to_owned(),
            in_one_go: step.in_one_go,
            rests: rests.collect(),
            facts: facts.map(|one| self.fact(one)).collect(),
            minutes: (out.map(written), back.map(written)),
        }
    }

    fn fact(&self, one: &Gathered) -> FactTaught {
        let (code, at) = about_code(one.about);
        let chosen = self.chosen.get(&(one.item.clone(), code.to_owned(), at));
        let said = |value: &lessons::Value| {
            let by = self.said_by(&value.by, value.times);
            (value_words(one.about, &value.value), by)
        };
        FactTaught {
            about: about_words(one.about),
            values: one.values.iter().map(said).collect(),
            chosen: chosen
                .filter(|_| one.values.len() > 1)
                .map(|(value, ..)| value_words(one.about, value)),
        }
    }

    pub(super) fn said_by(&self, by: &BTreeSet<String>, times: u32) -> String {
        let who = people(self.snap, by);
        told::who_times(times, who)
    }

    /// How a pair is known, in words.
    pub(super) fn how(&self, pair: &Pair) -> String {
        let how = match pair.ground {
            Ground::Stated => told::stated().to_owned(),
            Ground::Seen { times: 1, .. } => told::seen_once().to_owned(),
            Ground::Seen {
                times,
                witnesses: 1,
            } => told::seen_with(times, people(self.snap, &self.crew(pair))),
            Ground::Seen { times, witnesses } => told::seen_by_witnesses(times, witnesses),
            Ground::BothWays { there, back } => told::seen_both_ways(there, back),
            Ground::NeverApart { times: 1 } => told::told_in_one_go().to_owned(),
            Ground::NeverApart { times } => told::never_apart(times),
        };
        match &pair.differs_by {
            Some(variant) => told::differs_by(how, variant),
            None => how,
        }
    }

    /// Who worked in the jobs that show both steps.
    fn crew(&self, pair: &Pair) -> BTreeSet<String> {
        let joins = self.learner().joins();
        let moved = |taught: &OrderTaught, step: &Step| {
            let mut moves = taught.job.moves.iter();
            moves.any(|moved| joins.name(&moved.item) == &step.item)
        };
        let jobs = self.counted.orders.iter();
        let both = jobs.filter(|job| moved(job, &pair.first) && moved(job, &pair.second));
        both.flat_map(|job| job.job.by.iter().cloned()).collect()
    }

    pub(super) fn step_words(&self, step: &Step) -> String {
        told::step(&step.item, done(step.to))
    }

    fn both_ways(&self) -> Vec<String> {
        let pairs = self.lessons.pairs().into_iter();
        let both = pairs.filter(|pair| {
            pair.held == Held::Either && matches!(pair.ground, Ground::BothWays { .. })
        });
        let words = |pair: Pair| {
            let (first, second) = (self.step_words(&pair.first), self.step_words(&pair.second));
            told::both_ways(first, second, self.how(&pair))
        };
        both.take(MOST_BOTH_WAYS).map(words).collect()
    }

    fn variants(&self) -> Vec<String> {
        let only = self.lessons.only_with().iter().map(|one| {
            let step = self.step_words(&one.step);
            told::only_with(step, &one.variant, told::orders(one.times))
        });
        let steps = self.lessons.steps().iter();
        let ways = steps.flat_map(|step| self.learner().alternatives(step).into_iter().take(1));
        let ways = ways.map(|one| {
            let way = |way: &lessons::TakenWay| {
                let steps: Vec<String> =
                    way.steps.iter().map(|step| self.step_words(step)).collect();
                told::way(steps.join(told::and_between()), told::orders(way.times))
            };
            let each: Vec<String> = one.ways.iter().map(way).collect();
            told::before_ways(self.step_words(&one.target), each.join(told::or_between()))
        });
        only.chain(ways).collect()
    }
}

/// The middle of the times that the shop's clocks gave an item, off and back, in tenths.
pub(super) fn minutes(counted: &Counted, item: &ItemId) -> (Option<u32>, Option<u32>) {
    let joins = counted.learner.joins();
    let items = || {
        let each = counted.orders.iter().flat_map(|job| &job.items);
        each.filter(|is| joins.name(&ItemId::new(&is.name)) == item)
    };
    (
        middle(items().filter_map(|is| is.out_tenths).collect()),
        middle(items().filter_map(|is| is.back_tenths).collect()),
    )
}

fn middle(mut all: Vec<u32>) -> Option<u32> {
    all.sort_unstable();
    let (half, many) = (all.len() / 2, all.len());
    match many {
        0 => None,
        _ if many % 2 == 1 => all.get(half).copied(),
        _ => Some(u32::midpoint(*all.get(half - 1)?, *all.get(half)?)),
    }
}

/// Tenths of a minute as one writes minutes.
pub(super) fn written(tenths: u32) -> String {
    plan::Minutes::tenths(tenths).to_string()
}

/// The steps by which things leave their places.
pub(super) fn away_steps(learner: &Learner, steps: &[Step]) -> Vec<Step> {
    let kinds = learner.kinds();
    let is_last = |step: &&Step| {
        let kind = kinds.get(&step.item).and_then(|kinds| kinds.keys().next());
        kind.is_some_and(|kind| is_away(*kind, step.to))
    };
    steps.iter().filter(is_last).cloned().collect()
}

/// What is to be known before anybody leans on what was learned, in words.
fn caution(caution: lessons::Caution) -> String {
    use lessons::Caution::{LeftOut, NoJob, OneJob};
    match caution {
        NoJob => told::no_job_seen().to_owned(),
        OneJob => told::one_job_only().to_owned(),
        LeftOut(steps) => told::rarest_left_out(steps),
    }
}

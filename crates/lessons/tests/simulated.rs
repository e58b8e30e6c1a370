//! Simulated shops on vehicles whose true order is known.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]
#![allow(
    clippy::cast_possible_truncation,
    clippy::cast_sign_loss,
    reason = "chances are between 0 and 1"
)]

#[allow(dead_code, reason = "other checks ask for more")]
mod common;

use common::{People, Score, Shape, Shop, Truth, ask, chance, number, settle, share, step, taught};
use lessons::{Answers, Joins, Learner, Step};
use rand::RngExt;
use std::time::{Duration, Instant};

const SHAPES: [Shape; 2] = [Shape::SeriesParallel, Shape::Random];
const PEOPLE: [People; 3] = [People::One, People::Several, People::Bound];

#[test]
fn true_orders_are_as_wide_as_asked() {
    for (seed, shape) in (0..40).flat_map(|seed| SHAPES.map(|shape| (seed, shape))) {
        let mut chance = chance(seed);
        let width = chance.random_range(2..=12);
        let count = chance.random_range(width.max(10)..=60);
        let truth = Truth::new(shape, count, width, &mut chance);
        assert!(truth.width() <= width && truth.width() >= 1);
        if shape == Shape::SeriesParallel {
            assert_eq!(truth.width(), width, "seed {seed}");
        }
        let mut shop = Shop::new(&truth, People::Several, 0, seed);
        for _ in 0..3 {
            let job = shop.job();
            let steps: Vec<usize> = job
                .moves
                .iter()
                .map(|one| {
                    number(&Step {
                        item: one.item.clone(),
                        to: one.to,
                    })
                })
                .collect();
            assert!(
                truth.allows(&steps),
                "without errors, what is told can be done"
            );
        }
    }
}

/// Paths of learned lessons, carried out on the true order: how often that fails must not be
/// more than they say, among all and among those that say they are nearly sure.
#[test]
fn paths_hold_at_least_as_often_as_they_say() {
    let mut all = (0_usize, 0.0, 0_usize);
    let mut sure = (0_usize, 0.0, 0_usize);
    let mut told_sure = 0;
    for seed in 0..240_u64 {
        let mut chance = chance(seed);
        let shape = SHAPES[chance.random_range(0..2)];
        let people = PEOPLE[chance.random_range(0..3)];
        let width = chance.random_range(2..=12);
        let count = chance.random_range(width.max(10)..=60);
        let truth = Truth::new(shape, count, width, &mut chance);
        let mut shop = Shop::new(&truth, people, 2, seed);
        let mut learner = Learner::new(Joins::default());
        for jobs in 1..=30 {
            learner.add(&shop.job());
            if ![1, 2, 3, 5, 10, 30].contains(&jobs) {
                continue;
            }
            let lessons = taught(&learner, &Answers::default());
            for _ in 0..4 {
                let target = lessons.steps()[chance.random_range(0..lessons.steps().len())].clone();
                let path = lessons.path_to(&[target]).unwrap();
                let steps: Vec<usize> = path.steps.iter().map(|one| number(&one.step)).collect();
                let fails = usize::from(!truth.allows(&steps));
                let add = |sums: &mut (usize, f64, usize)| {
                    *sums = (sums.0 + 1, sums.1 + 1.0 - path.holds, sums.2 + fails);
                };
                add(&mut all);
                if path.holds >= 0.9 {
                    add(&mut sure);
                    told_sure += 1;
                }
            }
        }
    }
    for (name, (paths, said, failed)) in [("all", all), ("nearly sure", sure)] {
        // Three standard deviations of counting.
        let most = said + 3.0 * said.max(1.0).sqrt();
        assert!(
            (failed as f64) <= most,
            "{name}: {failed} of {paths} failed, {said:.1} said"
        );
    }
    // A claim that nobody makes is easily kept.
    assert!(
        told_sure * 3 > all.0,
        "{told_sure} of {} are nearly sure",
        all.0
    );
}

/// People confirm several moves at once, so that nobody knows which of them came first. What a
/// path does in one go may then be done in any sequence that works.
#[test]
fn paths_of_jobs_told_by_stages_hold_as_well() {
    let (mut paths, mut said, mut failed, mut at_once) = (0, 0.0, 0, 0);
    for seed in 0..60_u64 {
        let mut chance = chance(seed);
        let truth = Truth::new(SHAPES[usize::from(seed % 2 == 0)], 24, 5, &mut chance);
        let mut shop = Shop::new(&truth, People::Several, 2, seed);
        shop.at_once = 4;
        let mut learner = Learner::new(Joins::default());
        for jobs in 1..=10 {
            learner.add(&shop.job());
            if ![1, 3, 10].contains(&jobs) {
                continue;
            }
            let lessons = taught(&learner, &Answers::default());
            for target in lessons.steps().iter().step_by(5) {
                let path = lessons.path_to(std::slice::from_ref(target)).unwrap();
                let mut done: Vec<usize> = Vec::new();
                let mut fails = false;
                for go in path.steps.chunk_by(|_, next| next.in_one_go) {
                    at_once += go.len() - 1;
                    let mut left: Vec<usize> = go.iter().map(|one| number(&one.step)).collect();
                    while let Some(at) = left.iter().position(|step| {
                        let mut tried = done.clone();
                        tried.push(*step);
                        truth.allows(&tried)
                    }) {
                        done.push(left.remove(at));
                    }
                    fails |= !left.is_empty();
                }
                paths += 1;
                said += 1.0 - path.holds;
                failed += usize::from(fails);
            }
        }
    }
    let most = said + 3.0 * said.max(1.0).sqrt();
    assert!(
        (failed as f64) <= most,
        "{failed} of {paths}, {said:.1} said"
    );
    assert!(at_once > 50, "{at_once}");
}

#[test]
fn fewer_questions_than_sorting_an_order_may_take_settle_it() {
    let mut hardest: f64 = 0.0;
    for seed in 0..24_u64 {
        for shape in SHAPES {
            let mut chance = chance(seed);
            let width = chance.random_range(2..=12);
            let count = chance.random_range(width.max(10)..=60);
            let truth = Truth::new(shape, count, width, &mut chance);
            let mut shop = Shop::new(&truth, People::One, 0, seed);
            shop.everything = true;
            let mut learner = Learner::new(Joins::default());
            learner.add(&shop.job());
            let mut answers = Answers::default();
            let asked = settle(&learner, &truth, &mut answers);
            let bound = count as f64 * (truth.width() as f64 + (count as f64).log2());
            assert!(
                (asked as f64) < bound,
                "seed {seed} {shape:?}: {asked} questions of {bound:.0}"
            );
            hardest = hardest.max(asked as f64 / bound);
            let score = Score::of(&truth, &taught(&learner, &answers));
            assert_eq!((score.wrong, score.missed), (0, 0), "seed {seed} {shape:?}");
        }
    }
    assert!(hardest > 0.05, "{hardest}: something was asked");
}

/// Of pairs that are said to be needed with some chance, at least about that share is; of those
/// said to be hardly ever needed, hardly any.
#[test]
fn chances_are_as_true_as_they_say() {
    // How many pairs, the sum of their chances, and how many are needed, by tenths.
    let mut tenths = [(0_usize, 0.0, 0_usize); 10];
    for seed in 0..24_u64 {
        for people in PEOPLE {
            let (count, width) = [(10, 2), (40, 8)][usize::from(seed % 3 == 1)];
            let shape = SHAPES[usize::from(seed % 2 == 0)];
            let truth = Truth::new(shape, count, width, &mut chance(seed));
            let mut shop = Shop::new(&truth, people, 2, seed);
            let mut learner = Learner::new(Joins::default());
            for jobs in 1..=30 {
                learner.add(&shop.job());
                if ![1, 3, 10, 30].contains(&jobs) {
                    continue;
                }
                for pair in taught(&learner, &Answers::default()).pairs() {
                    let (one, two) = (number(&pair.first), number(&pair.second));
                    for (said, is) in [
                        (pair.needed, truth.has(one, two)),
                        (pair.opposite, truth.has(two, one)),
                    ] {
                        let at = ((said * 10.0) as usize).min(9);
                        let (pairs, sum, true_ones) = tenths[at];
                        tenths[at] = (pairs + 1, sum + said, true_ones + usize::from(is));
                    }
                }
            }
        }
    }
    for (pairs, sum, true_ones) in &tenths[4..] {
        let (said, is) = (sum / (*pairs).max(1) as f64, share(*true_ones, *pairs));
        assert!(is > said - 0.05, "{said:.3} said, {is:.3} true, of {pairs}");
    }
    let (pairs, sum, true_ones) = tenths[0];
    let (said, is) = (sum / pairs as f64, share(true_ones, pairs));
    assert!(
        is < said + 0.005,
        "{said:.3} said, {is:.3} true, of {pairs}"
    );
}

#[test]
fn several_people_teach_most_of_the_order() {
    let mut scores = [Score::default(); 3];
    for seed in 0..30_u64 {
        for (people, sum) in PEOPLE.into_iter().zip(&mut scores) {
            let mut chance = chance(seed);
            let truth = Truth::new(SHAPES[usize::from(seed % 2 == 0)], 30, 5, &mut chance);
            let mut shop = Shop::new(&truth, people, 2, seed);
            let mut learner = Learner::new(Joins::default());
            for _ in 0..30 {
                learner.add(&shop.job());
            }
            sum.add(Score::of(&truth, &taught(&learner, &Answers::default())));
        }
    }
    let [_, several, bound] = scores;
    assert!(several.recall() > 0.95, "{several:?}");
    assert!(several.precision() > 0.85, "{several:?}");
    // Habits hide what is free: less is known for sure, and it is not made up.
    assert!(bound.recall() > 0.9, "{bound:?}");
}

/// A question answered teaches more than a job of someone whose habit is known.
#[test]
fn questions_settle_what_habits_hide() {
    let (mut before, mut after, mut all) = (Score::default(), Score::default(), Score::default());
    for seed in 0..10_u64 {
        let shape = SHAPES[usize::from(seed % 2 == 0)];
        let truth = Truth::new(shape, 24, 4, &mut chance(seed));
        let mut shop = Shop::new(&truth, People::Bound, 2, seed);
        let mut learner = Learner::new(Joins::default());
        for _ in 0..6 {
            learner.add(&shop.job());
        }
        let mut answers = Answers::default();
        before.add(Score::of(&truth, &taught(&learner, &answers)));
        ask(&learner, &truth, &mut answers, 40);
        after.add(Score::of(&truth, &taught(&learner, &answers)));
        settle(&learner, &truth, &mut answers);
        all.add(Score::of(&truth, &taught(&learner, &answers)));
    }
    assert!(
        after.precision() > before.precision(),
        "{before:?} {after:?}"
    );
    // What is ruled out by an answer shifts what is left, so a pair or two may go the other way.
    assert!(
        after.recall() > before.recall() - 0.01,
        "{before:?} {after:?}"
    );
    assert!(all.precision() > 0.97 && all.recall() > 0.99, "{all:?}");
}

#[test]
fn ten_thousand_jobs_are_learned_in_seconds_and_one_more_at_once() {
    let truth = Truth::new(Shape::Random, 60, 8, &mut chance(1));
    let mut shop = Shop::new(&truth, People::Several, 2, 1);
    let jobs: Vec<_> = (0..10_000).map(|_| shop.job()).collect();
    let one_more = shop.job();
    let start = Instant::now();
    let mut learner = Learner::new(Joins::default());
    for job in &jobs {
        learner.add(job);
    }
    let all = start.elapsed();
    let start = Instant::now();
    learner.add(&one_more);
    let more = start.elapsed();
    assert!(all < Duration::from_secs(5), "{all:?}");
    assert!(more < Duration::from_millis(10), "{more:?}");
    assert_eq!(learner.jobs(), 10_001);
    let path = taught(&learner, &Answers::default())
        .path_to(&[step(0)])
        .unwrap();
    let steps: Vec<usize> = path.steps.iter().map(|one| number(&one.step)).collect();
    assert!(truth.allows(&steps));
}

//! Simulated shops whose truth is drawn from the declared prior: bands have to hold what they say.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test fails by panicking, and prints what it measured"
)]

use odds::{
    Ask, Condition, Done, Given, Grid, History, Line, Order, Prior, SnagHistory, Verdict, quote,
    score,
};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use rand_distr::{Distribution, Gamma, StandardNormal};
use std::sync::atomic::{AtomicUsize, Ordering};

const KINDS: usize = 5;
const PEOPLE: usize = 3;
const SHOPS: usize = 2_500;
const JOBS_A_SHOP: usize = 4;

/// What is true in one shop, and nobody knows.
struct Truth {
    deviation: f64,
    shop: f64,
    kinds: Vec<f64>,
    people: Vec<f64>,
    condition: [f64; 3],
    vehicle: f64,
    /// The error of a stage is a Student t with three degrees of freedom.
    heavy: bool,
}

impl Truth {
    fn draw(chance: &mut ChaCha8Rng) -> Truth {
        let (prior, grid) = (Prior::default(), Grid::default());
        let shape = 1.0 + prior.jobs / 2.0;
        let scale = shape * prior.factor.ln().powi(2);
        let deviation = (scale / Gamma::new(shape, 1.0).unwrap().sample(chance)).sqrt();
        let pick = |ratios: &[f64], chance: &mut ChaCha8Rng| {
            deviation * ratios[chance.random_range(0..ratios.len())].sqrt()
        };
        let (kind, person) = (pick(&grid.kind, chance), pick(&grid.person, chance));
        let (condition, vehicle) = (pick(&grid.condition, chance), pick(&grid.vehicle, chance));
        let normal = |chance: &mut ChaCha8Rng| -> f64 { StandardNormal.sample(chance) };
        Truth {
            deviation,
            shop: normal(chance) * deviation / prior.jobs.sqrt(),
            kinds: (0..KINDS).map(|_| normal(chance) * kind).collect(),
            people: (0..PEOPLE).map(|_| normal(chance) * person).collect(),
            condition: [(); 3].map(|()| normal(chance) * condition),
            vehicle,
            heavy: false,
        }
    }

    /// The stages of one job, on a vehicle of its own.
    fn job(&self, chance: &mut ChaCha8Rng) -> Vec<Done> {
        let normal = |chance: &mut ChaCha8Rng| -> f64 { StandardNormal.sample(chance) };
        let condition = Condition {
            age_years: Some(f64::from(chance.random_range(1..25_u8))),
            rust: Some(chance.random_range(0..=3)),
            opened_before: Some(chance.random_bool(0.2)),
        };
        let steps = [
            condition.age_years.unwrap() / 10.0 - 1.0,
            f64::from(condition.rust.unwrap()) - 1.0,
            f64::from(condition.opened_before.unwrap()),
        ];
        let shared: f64 = steps.iter().zip(&self.condition).map(|(x, b)| x * b).sum();
        let vehicle = normal(chance) * self.vehicle;
        let person = chance.random_range(0..PEOPLE);
        (0..6)
            .map(|_| {
                let kind = chance.random_range(0..KINDS);
                let mut error = normal(chance);
                if self.heavy {
                    let square: f64 = (0..3).map(|_| normal(chance).powi(2)).sum();
                    error /= (square / 3.0).sqrt();
                }
                let y = self.shop
                    + self.kinds[kind]
                    + self.people[person]
                    + shared
                    + vehicle
                    + self.deviation * error;
                let book_minutes = [6.0, 12.0, 30.0, 45.0][chance.random_range(0..4)];
                Done {
                    kind: format!("kind {kind}"),
                    person: Some(format!("person {person}")),
                    condition,
                    book_minutes,
                    // Where it takes eight times the book, the technician stops and asks.
                    minutes: (book_minutes * y.exp().min(8.0)).max(0.01),
                    left: y.exp() >= 8.0,
                }
            })
            .collect()
    }
}

fn order(job: &[Done]) -> Order {
    Order {
        condition: job[0].condition,
        lines: job
            .iter()
            .map(|stage| Line {
                what: stage.kind.clone(),
                kind: stage.kind.clone(),
                person: stage.person.clone(),
                book_minutes: stage.book_minutes,
                times: 1,
                pieces: None,
            })
            .collect(),
        ..Order::default()
    }
}

/// Quotes of finished jobs by each grid, in minutes over book minutes.
fn quotes(past: usize, grids: &[Grid], world: fn(&mut Truth)) -> Vec<Vec<Given>> {
    let next = AtomicUsize::new(0);
    let mut found: Vec<(usize, Vec<Vec<Given>>)> = std::thread::scope(|scope| {
        let workers: Vec<_> = (0..2)
            .map(|_| {
                scope.spawn(|| {
                    let mut found = Vec::new();
                    loop {
                        let shop = next.fetch_add(1, Ordering::Relaxed);
                        if shop >= SHOPS {
                            return found;
                        }
                        found.push((shop, one_shop(shop, past, grids, world)));
                    }
                })
            })
            .collect();
        workers
            .into_iter()
            .flat_map(|worker| worker.join().unwrap())
            .collect()
    });
    found.sort_by_key(|(shop, _)| *shop);
    let mut all = vec![Vec::new(); grids.len()];
    for (_, shop) in found {
        for (all, given) in all.iter_mut().zip(shop) {
            all.extend(given);
        }
    }
    all
}

fn one_shop(shop: usize, past: usize, grids: &[Grid], world: fn(&mut Truth)) -> Vec<Vec<Given>> {
    let mut chance = ChaCha8Rng::seed_from_u64(shop as u64 * 1_000 + past as u64);
    let mut truth = Truth::draw(&mut chance);
    let jobs: Vec<Vec<Done>> = (0..past).map(|_| truth.job(&mut chance)).collect();
    world(&mut truth);
    let asked: Vec<Vec<Done>> = (0..JOBS_A_SHOP).map(|_| truth.job(&mut chance)).collect();
    grids
        .iter()
        .map(|grid| {
            let mut history = History::new(Prior::default(), grid.clone()).unwrap();
            for (at, job) in jobs.iter().enumerate() {
                history.learn(&format!("vehicle {at}"), job).unwrap();
            }
            let learned = history.fit().unwrap();
            asked
                .iter()
                .enumerate()
                .map(|(at, job)| {
                    let ask = Ask {
                        seed: (shop * JOBS_A_SHOP + at) as u64,
                        draws: 1_000,
                        causes: false,
                        ..Ask::default()
                    };
                    let order = order(job);
                    let found = quote(&learned, &SnagHistory::default(), &order, &ask).unwrap();
                    let book = order.book_minutes() / 60.0;
                    let minutes: f64 = job.iter().map(|stage| stage.minutes).sum();
                    Given {
                        quantiles: found
                            .hours
                            .quantiles
                            .iter()
                            .map(|(p, q, _)| (*p, q / book))
                            .collect(),
                        happened: minutes / 60.0 / book,
                    }
                })
                .collect()
        })
        .collect()
}

/// Told that kinds differ widely, and that people, vehicles and conditions do not matter: each
/// kind learns nearly on its own.
fn without_pooling() -> Grid {
    Grid {
        kind: vec![1.0],
        person: vec![1e-4],
        condition: vec![1e-4],
        vehicle: vec![1e-4],
    }
}

fn bands_hold(past: usize) {
    let found = quotes(past, &[Grid::default(), without_pooling()], |_| ());
    let (pooled, alone) = (score(&found[0]).unwrap(), score(&found[1]).unwrap());
    assert_eq!(pooled.quotes, SHOPS * JOBS_A_SHOP);
    for band in &pooled.bands {
        println!("{past} past jobs: {} held {:.4}", band.said, band.share());
        assert!((band.share() - band.said).abs() < 0.02, "{past}: {band:?}");
    }
    println!(
        "{past} past jobs: pinball {:.5}, without pooling {:.5}",
        pooled.pinball, alone.pinball
    );
    assert!(pooled.pinball < alone.pinball, "{past}");
}

#[test]
fn bands_hold_after_two_jobs() {
    bands_hold(2);
}

#[test]
fn bands_hold_after_five_jobs() {
    bands_hold(5);
}

#[test]
fn bands_hold_after_twenty_jobs() {
    bands_hold(20);
}

#[test]
fn bands_hold_after_a_hundred_jobs() {
    bands_hold(100);
}

/// Outside the prior nothing is promised: what it comes to is printed, and the score says so.
#[test]
fn habits_that_change_are_caught() {
    let slower = quotes(20, &[Grid::default()], |truth| truth.shop += 0.6);
    let found = score(&slower[0]).unwrap();
    println!("nearly twice as slow: {:?}", found.bands);
    assert_eq!(found.verdict, Verdict::TooNarrow);
    // Forty quotes are enough to see it.
    let few = score(&slower[0][..40]).unwrap();
    assert_eq!(few.verdict, Verdict::TooNarrow, "{:?}", few.bands);
    assert!(few.bands[1].above > few.bands[1].below);

    let heavy = quotes(20, &[Grid::default()], |truth| truth.heavy = true);
    let found = score(&heavy[0]).unwrap();
    println!("heavier tails: {:?}", found.bands);
    assert_ne!(found.verdict, Verdict::TooWide);
}

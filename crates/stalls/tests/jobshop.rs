//! The search against published job shops, and blocking ones against counting them through.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test fails by panicking, and prints what it measured"
)]

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use stalls::{JobPlan, JobShop};
use std::path::PathBuf;
use std::time::Instant;

fn instance(name: &str, blocking: bool) -> (JobShop, i64) {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../checks/data/jobshop");
    let text = std::fs::read_to_string(folder.join(format!("{name}.json"))).unwrap();
    let read: serde_json::Value = serde_json::from_str(&text).unwrap();
    let rows = |key: &str| -> Vec<Vec<i64>> { serde_json::from_value(read[key].clone()).unwrap() };
    let jobs = rows("machine")
        .iter()
        .zip(rows("duration"))
        .map(|(machines, minutes)| {
            let machines = machines.iter().map(|one| usize::try_from(*one).unwrap());
            machines.zip(minutes).collect()
        })
        .collect();
    (
        JobShop { jobs, blocking },
        read["optimum"].as_i64().unwrap(),
    )
}

/// The plain rules of a job shop; with blocking, a machine is held until the next step starts.
fn check(shop: &JobShop, plan: &JobPlan) {
    let mut on_machine: Vec<(usize, i64, i64)> = Vec::new();
    let mut end = 0;
    for (job, starts) in shop.jobs.iter().zip(&plan.starts) {
        for (number, (machine, minutes)) in job.iter().enumerate() {
            let done = starts[number] + minutes;
            let next = starts.get(number + 1).copied();
            assert!(starts[number] >= 0);
            assert!(
                next.is_none_or(|next| next >= done),
                "steps of a job overlap"
            );
            let leaves = if shop.blocking {
                next.unwrap_or(done)
            } else {
                done
            };
            on_machine.push((*machine, starts[number], leaves));
            end = end.max(done);
        }
    }
    assert_eq!(end, plan.makespan);
    for (at, one) in on_machine.iter().enumerate() {
        for other in &on_machine[at + 1..] {
            let apart = one.0 != other.0 || one.2 <= other.1 || other.2 <= one.1;
            assert!(apart, "two at once on a machine: {one:?} {other:?}");
        }
    }
    assert!(plan.bound <= plan.makespan);
}

/// The best that is found: as many schedules as one core looks at in two seconds or less. The
/// clock itself is in `cargo xtask floor-bench`, so that this can't fail for want of a quiet machine.
fn found(name: &str) {
    let (shop, optimum) = instance(name, false);
    let began = Instant::now();
    let plan = shop.plan(1, &mut |looked_at| looked_at < 1_000_000);
    check(&shop, &plan);
    println!(
        "{name}: {} of {optimum}, bound {}, {} schedules in {:?}",
        plan.makespan,
        plan.bound,
        plan.looked_at,
        began.elapsed()
    );
    assert_eq!(plan.makespan, optimum, "{name}");
    assert!(plan.bound <= optimum);
}

#[test]
fn the_best_of_ft06() {
    found("ft06");
}

#[test]
fn the_best_of_la01_to_la05() {
    for name in ["la01", "la02", "la03", "la04", "la05"] {
        found(name);
    }
}

#[test]
fn no_bound_is_above_a_published_optimum() {
    for name in ["abz5", "ft10", "la16", "orb01"] {
        let (shop, optimum) = instance(name, false);
        assert!(shop.bound() <= optimum, "{name}");
        assert!(shop.bound() * 10 > optimum * 8, "{name}: {}", shop.bound());
        let plan = shop.plan(1, &mut |looked_at| looked_at < 20_000);
        check(&shop, &plan);
        assert!(plan.makespan >= optimum, "{name}");
        assert!(
            plan.makespan * 100 < optimum * 110,
            "{name}: {}",
            plan.makespan
        );
    }
}

#[test]
fn the_same_seed_finds_the_same() {
    let (shop, _) = instance("ft10", false);
    let plan = |seed| shop.plan(seed, &mut |looked_at| looked_at < 3_000);
    assert_eq!(plan(1), plan(1));
    assert_eq!(plan(1).looked_at, 3_000);
}

fn published_blocking() -> Vec<(String, i64)> {
    let folder = PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../../checks/data/jobshop");
    let text = std::fs::read_to_string(folder.join("blocking.csv")).unwrap();
    let rows = text
        .lines()
        .skip(1)
        .map(|line| line.split_once(',').unwrap());
    rows.map(|(name, optimum)| (name.to_owned(), optimum.parse().unwrap()))
        .collect()
}

#[test]
fn no_blocking_schedule_undercuts_what_another_solver_proved() {
    for (name, optimum) in published_blocking() {
        let (shop, _) = instance(&name, true);
        let plan = shop.plan(1, &mut |looked_at| looked_at < 60_000);
        check(&shop, &plan);
        println!("{name}: blocking {} of {optimum}", plan.makespan);
        assert!(plan.makespan >= optimum, "{name}");
        if name == "ft06" {
            assert_eq!(plan.makespan, optimum, "{name}");
        }
        assert!(
            plan.makespan * 100 <= optimum * 115,
            "{name}: {}",
            plan.makespan
        );
    }
}

/// The shortest blocking schedule, by every sequence on every machine. Steps that follow each
/// other are arcs; a circle without length is jobs that change places, any other is impossible.
fn counted_through(shop: &JobShop) -> i64 {
    let jobs = shop.jobs.len();
    let machines = shop
        .jobs
        .iter()
        .flatten()
        .map(|step| step.0 + 1)
        .max()
        .unwrap();
    let mut sequences = Vec::new();
    permutations(&mut (0..jobs).collect::<Vec<_>>(), 0, &mut sequences);
    let mut best = i64::MAX;
    let mut chosen = vec![0; machines];
    loop {
        let sequence: Vec<&Vec<usize>> = chosen.iter().map(|at| &sequences[*at]).collect();
        best = best.min(length(shop, &sequence).unwrap_or(i64::MAX));
        let Some(next) = chosen.iter().position(|at| at + 1 < sequences.len()) else {
            return best;
        };
        chosen[next] += 1;
        chosen[..next].fill(0);
    }
}

fn permutations(list: &mut Vec<usize>, from: usize, found: &mut Vec<Vec<usize>>) {
    if from == list.len() {
        found.push(list.clone());
    }
    for at in from..list.len() {
        list.swap(from, at);
        permutations(list, from + 1, found);
        list.swap(from, at);
    }
}

fn length(shop: &JobShop, sequence: &[&Vec<usize>]) -> Option<i64> {
    let mut first = vec![0];
    for job in &shop.jobs {
        first.push(first.last().unwrap() + job.len());
    }
    let mut arcs = Vec::new();
    for (job, steps) in shop.jobs.iter().enumerate() {
        for number in 1..steps.len() {
            arcs.push((
                first[job] + number - 1,
                first[job] + number,
                steps[number - 1].1,
            ));
        }
    }
    for (machine, jobs) in sequence.iter().enumerate() {
        let on = |job: usize| shop.jobs[job].iter().position(|step| step.0 == machine);
        for pair in jobs.windows(2) {
            let (Some(one), Some(two)) = (on(pair[0]), on(pair[1])) else {
                continue;
            };
            let to = first[pair[1]] + two;
            if one + 1 < shop.jobs[pair[0]].len() {
                arcs.push((first[pair[0]] + one + 1, to, 0));
            } else {
                arcs.push((first[pair[0]] + one, to, shop.jobs[pair[0]][one].1));
            }
        }
    }
    let mut starts = vec![0; *first.last().unwrap()];
    for _ in 0..=starts.len() {
        let mut changed = false;
        for (from, to, long) in &arcs {
            if starts[*to] < starts[*from] + long {
                starts[*to] = starts[*from] + long;
                changed = true;
            }
        }
        if !changed {
            let ends = shop.jobs.iter().enumerate().map(|(job, steps)| {
                starts[first[job] + steps.len() - 1] + steps[steps.len() - 1].1
            });
            return ends.max();
        }
    }
    None
}

#[test]
fn small_blocking_shops_are_as_short_as_counting_through_says() {
    let mut chance = ChaCha8Rng::seed_from_u64(19);
    let mut longer_than_free = 0;
    for case in 0..40 {
        let (jobs, machines) = [(3, 3), (4, 3), (3, 4), (2, 5)][case % 4];
        let job = |chance: &mut ChaCha8Rng| -> Vec<(usize, i64)> {
            let mut left: Vec<usize> = (0..machines).collect();
            let mut steps = Vec::new();
            while !left.is_empty() {
                let machine = left.swap_remove(chance.random_range(0..left.len()));
                steps.push((machine, chance.random_range(1..20)));
            }
            steps
        };
        let shop = JobShop {
            jobs: (0..jobs).map(|_| job(&mut chance)).collect(),
            blocking: true,
        };
        let plan = shop.plan(1, &mut |looked_at| looked_at < 20_000);
        check(&shop, &plan);
        assert_eq!(
            plan.makespan,
            counted_through(&shop),
            "case {case}: {shop:?}"
        );
        let free = JobShop {
            blocking: false,
            ..shop
        };
        let free = free.plan(1, &mut |looked_at| looked_at < 20_000);
        longer_than_free += usize::from(free.makespan < plan.makespan);
    }
    assert!(
        longer_than_free > 10,
        "blocking matters: {longer_than_free}"
    );
}

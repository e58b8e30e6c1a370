//! How long random maps take to plan, and how many plans are proven: a table.
//!
//! `cargo run --release -p plan --example plan_bench [SEEDS]`

#![allow(clippy::print_stdout, reason = "the table is what it is for")]

#[path = "../tests/common/mod.rs"]
mod common;

use common::{Size, random_map};
use plan::{Budget, plan};
use std::time::Instant;

fn main() {
    let seeds = std::env::args()
        .nth(1)
        .and_then(|seeds| seeds.parse().ok())
        .unwrap_or(100);
    println!(
        "items  moves  targets  planned  proven  in 1 s  median ms  slowest ms  rows  mean gap %"
    );
    for (items, targets) in [
        (36, 0),
        (36, 3),
        (36, 8),
        (36, 20),
        (54, 3),
        (54, 10),
        (136, 3),
    ] {
        row(items, targets, seeds);
    }
}

fn row(items: usize, targets: usize, seeds: u64) {
    let size = Size {
        items,
        places: 4,
        tools: 8,
        targets,
        all_sorts: false,
    };
    let (mut times, mut gaps) = (Vec::new(), Vec::new());
    let (mut moves, mut proven, mut quick, mut rows) = (0, 0, 0, 0);
    for seed in 0..seeds {
        let problem = random_map(seed, size);
        moves += problem.moves.len();
        let start = Instant::now();
        let Ok(plan) = plan(&problem, Budget::default()) else {
            continue;
        };
        let time = start.elapsed().as_millis();
        rows += plan.off.len();
        proven += usize::from(plan.proven);
        quick += usize::from(plan.proven && time < 1_000);
        gaps.push(f64::from(plan.gap().in_tenths()) / f64::from(plan.cost.in_tenths().max(1)));
        times.push(time);
    }
    times.sort_unstable();
    let planned = times.len();
    let mean = |sum: usize, of: u64| sum / usize::try_from(of).unwrap_or(1).max(1);
    println!(
        "{items:5}  {:5}  {:7}  {planned:7}  {proven:6}  {quick:6}  {:9}  {:10}  {:4}  {:10.2}",
        mean(moves, seeds),
        targets + 1,
        times.get(planned / 2).copied().unwrap_or(0),
        times.last().copied().unwrap_or(0),
        rows / planned.max(1),
        100.0 * gaps.iter().sum::<f64>() / gaps.len().max(1) as f64,
    );
}

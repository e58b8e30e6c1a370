//! How well days are laid: published job shops with their optima, and shop days beside a general
//! constraint solver.

#[path = "../../crates/stalls/tests/common/mod.rs"]
mod days;
mod other;

use crate::bench::{DOCUMENT, Table, machine, write_between};
use crate::sequence::clock::Clock;
use anyhow::{Context, Result, ensure};
use days::{Size, breaches, random_floor};
use other::Other;
use serde_json::Value;
use stalls::{Floor, JobShop, Plan, Windows, plan};
use std::path::Path;
use std::process::ExitCode;
use std::time::Duration;

/// How much to measure.
#[derive(clap::Args)]
pub struct Choice {
    /// How many shop days are laid.
    #[arg(long, default_value_t = 50)]
    days: u64,
    /// The other solver gets these seconds for each; none leaves it out.
    #[arg(long, default_value_t = 60.0)]
    other_seconds: f64,
    /// How many days the other solver gets.
    #[arg(long, default_value_t = 50)]
    compared: usize,
    /// How long a plan is looked for.
    #[arg(long, default_value_t = 2.0)]
    seconds: f64,
    /// Count only the time that the processor gave, where the system tells: other programs
    /// beside it do not matter then.
    #[arg(long)]
    processor_time: bool,
    /// Write the rows into docs/bench.md as well.
    #[arg(long)]
    write: bool,
}

/// How long is searched, and by which clock.
#[derive(Clone, Copy)]
struct Limit {
    seconds: Duration,
    processor_time: bool,
}

impl Limit {
    fn of(self, seconds: Duration) -> Self {
        Self { seconds, ..self }
    }

    fn start(self) -> Clock {
        Clock::start(self.seconds, self.processor_time)
    }
}

const JOB_SHOPS: &str = "checks/data/jobshop";
/// The marks around the table in `docs/bench.md`.
const MARKS: [&str; 2] = [
    "<!-- floor: written by `cargo xtask floor-bench --write` -->",
    "<!-- /floor -->",
];

/// Takes the figures, prints their rows, and writes them down if asked to.
///
/// # Errors
/// If an instance cannot be read, a plan breaks a rule, or two bounds contradict each other.
pub fn bench(choice: &Choice) -> Result<ExitCode> {
    let machine = machine();
    let seconds = Duration::try_from_secs_f64(choice.seconds).context("--seconds")?;
    let limit = Limit {
        seconds,
        processor_time: choice.processor_time,
    };
    let mut table = Table::default();
    for name in ["ft06", "la01", "la02", "la03", "la04", "la05"] {
        job_shop(name, false, limit, "the optimum", &mut table)?;
    }
    for name in ["abz5", "ft10", "la16", "orb01"] {
        job_shop(name, false, limit, "-", &mut table)?;
    }
    for name in [
        "ft06", "la01", "la02", "la03", "la04", "la05", "abz5", "ft10", "orb01",
    ] {
        job_shop(name, true, limit, "-", &mut table)?;
    }
    if choice.days > 0 {
        shop_days(choice, limit, &mut table)?;
    }
    let text = format!("{machine}\n{}", table.text);
    if choice.write {
        write_between(Path::new(DOCUMENT), MARKS, &text)?;
    }
    println!("{text}");
    Ok(ExitCode::SUCCESS)
}

fn job_shop(name: &str, blocking: bool, limit: Limit, aim: &str, table: &mut Table) -> Result<()> {
    let (shop, mut optimum) = instance(name)?;
    let shop = JobShop { blocking, ..shop };
    if blocking {
        optimum = blocking_optimum(name)?;
    }
    let clock = limit.start();
    let found = shop.plan(1, &mut |seen| seen % 64 > 0 || clock.within(1.0));
    let mut best_at = clock.passed();
    // When the best was there: asked again with fewer and fewer schedules.
    let (mut low, mut high) = (0, found.looked_at);
    while high - low > found.looked_at / 50 + 1 {
        let middle = low + (high - low) / 2;
        let clock = limit.start();
        let again = shop.plan(1, &mut |seen| seen < middle);
        if again.makespan == found.makespan {
            high = middle;
            best_at = clock.passed();
        } else {
            low = middle;
        }
    }
    ensure!(
        found.makespan >= optimum,
        "{name} has an optimum of {optimum}"
    );
    ensure!(
        found.bound <= optimum,
        "{name}: the bound {} is above it",
        found.bound
    );
    #[allow(clippy::cast_precision_loss, reason = "a share")]
    let gap = 100.0 * (found.makespan - optimum) as f64 / optimum as f64;
    let what = format!("{name}{}", if blocking { ", blocking" } else { "" });
    let measured = format!(
        "{} of {optimum}, {gap:.1} % above; own bound {}; {} schedules in {:.1} s, this one after {:.2} s",
        found.makespan,
        found.bound,
        found.looked_at,
        limit.seconds.as_secs_f64(),
        best_at.as_secs_f64()
    );
    table.row(&what, &measured, aim);
    Ok(())
}

/// A published instance and its optimum.
fn instance(name: &str) -> Result<(JobShop, i64)> {
    let text = std::fs::read_to_string(Path::new(JOB_SHOPS).join(format!("{name}.json")))
        .with_context(|| format!("run it at the top of the project: {name} is not there"))?;
    let read: Value = serde_json::from_str(&text)?;
    let machines: Vec<Vec<usize>> = serde_json::from_value(read["machine"].clone())?;
    let minutes: Vec<Vec<i64>> = serde_json::from_value(read["duration"].clone())?;
    let jobs = machines.into_iter().zip(minutes);
    let jobs = jobs.map(|(machines, minutes)| machines.into_iter().zip(minutes).collect());
    let shop = JobShop {
        jobs: jobs.collect(),
        blocking: false,
    };
    Ok((shop, read["optimum"].as_i64().context("no optimum")?))
}

fn blocking_optimum(name: &str) -> Result<i64> {
    let text = std::fs::read_to_string(Path::new(JOB_SHOPS).join("blocking.csv"))?;
    let row = text
        .lines()
        .find_map(|line| line.strip_prefix(&format!("{name},")));
    Ok(row
        .with_context(|| format!("no row {name}"))?
        .trim()
        .parse()?)
}

/// Two weeks of a shop with eight stalls and forty vehicles. All have the same hours, so that
/// another solver can reckon in open minutes.
fn shop_day(seed: u64) -> Floor {
    let size = Size {
        stalls: 8,
        people: 6,
        orders: 40,
        days: 14,
        narrow: false,
    };
    let mut floor = random_floor(seed, size);
    let days = 0..size.days;
    floor.opening = Windows::new(days.flat_map(|day| {
        let day = day * 1440;
        [(day + 480, day + 720), (day + 750, day + 1020)]
    }));
    for person in &mut floor.people {
        person.hours = floor.opening.clone();
        person.away = Windows::default();
    }
    for order in &mut floor.orders {
        // The other model knows when work is over, not when a last wait is.
        let works = |phase: &stalls::Phase| matches!(phase.does, stalls::Does::Work(_));
        let end = order
            .phases
            .iter()
            .rposition(works)
            .map_or(0, |last| last + 1);
        order.phases.truncate(end);
    }
    let faults = floor.faults();
    floor.orders.retain(|order| {
        let place = |fault: &stalls::Fault| fault.place.split(',').next() == Some(&order.name);
        !faults.iter().any(place)
    });
    floor
}

fn shop_days(choice: &Choice, limit: Limit, table: &mut Table) -> Result<()> {
    let floors: Vec<Floor> = (0..choice.days).map(shop_day).collect();
    let mut plans = Vec::new();
    let (mut slowest, mut first_gap) = (Duration::ZERO, Vec::new());
    for floor in &floors {
        let clock = limit.start();
        let quick = laid(floor, limit.of(Duration::from_millis(80)))?;
        slowest = slowest.max(clock.passed());
        let best = laid(floor, limit)?;
        first_gap.push(percent(
            quick.cost.points - best.cost.points,
            best.cost.points,
        ));
        plans.push(best);
    }
    first_gap.sort_by(f64::total_cmp);
    let mut gaps: Vec<f64> = plans.iter().map(|plan| 100.0 * plan.gap()).collect();
    gaps.sort_by(f64::total_cmp);
    let measured = format!(
        "slowest first answer {} ms; in the middle {:.1} % above that of {} s, whose own gap to its bound is {:.0} % in the middle",
        slowest.as_millis(),
        first_gap[first_gap.len() / 2],
        choice.seconds,
        gaps[gaps.len() / 2]
    );
    let what = format!(
        "{} shop days of 8 stalls and up to 40 vehicles over two weeks",
        floors.len()
    );
    table.row(&what, &measured, "an answer within 100 ms");
    if choice.other_seconds > 0.0 && choice.compared > 0 {
        let compared = choice.compared.min(plans.len());
        let measured = match Other::prepare() {
            Ok(other) => beside(&plans[..compared], &other, choice)?,
            Err(error) => format!("not taken: {error:#}"),
        };
        let what = format!(
            "{compared} of these beside {} in {} s",
            other::NAME,
            choice.other_seconds
        );
        table.row(&what, &measured, "within 2 % on 9 of 10");
    }
    Ok(())
}

fn laid(floor: &Floor, limit: Limit) -> Result<Plan> {
    let clock = limit.start();
    let laid = plan(floor, None, 1, &mut |seen| {
        seen % 8 > 0 || clock.within(1.0)
    });
    let laid = laid.map_err(|faults| anyhow::anyhow!("{faults:?}"))?;
    let broken = breaches(&laid);
    ensure!(broken.is_empty(), "a rule is broken: {broken:?}");
    Ok(laid)
}

/// The very first plan.
fn first(floor: &Floor) -> Result<Plan> {
    plan(floor, None, 1, &mut |_| false).map_err(|faults| anyhow::anyhow!("{faults:?}"))
}

#[allow(clippy::cast_precision_loss, reason = "a share of points")]
fn percent(part: i64, all: i64) -> f64 {
    100.0 * part as f64 / all.max(1) as f64
}

fn beside(plans: &[Plan], other: &Other, choice: &Choice) -> Result<String> {
    let mut above = Vec::new();
    let (mut none, mut proven) = (0, 0);
    for (at, plan) in plans.iter().enumerate() {
        let first = first(&plan.floor)?;
        let answer = other.solve(&first, choice.other_seconds, choice.processor_time)?;
        // Whoever bounds too high is wrong.
        ensure!(
            answer.bound <= plan.cost.points,
            "its bound {} is above the plan of {} on day {at}",
            answer.bound,
            plan.cost.points
        );
        let Some(points) = answer.points else {
            none += 1;
            continue;
        };
        ensure!(
            plan.bound <= points,
            "a bound of {} above {points}",
            plan.bound
        );
        proven += usize::from(answer.bound == points);
        let share = percent(plan.cost.points - points, points);
        eprintln!(
            "day {at}: {} points (bound {}), the other {points} (bound {}) from {}: {share:+.1} %",
            plan.cost.points, plan.bound, answer.bound, first.cost.points
        );
        above.push(share);
    }
    above.sort_by(f64::total_cmp);
    let within = above.iter().filter(|share| **share <= 2.0).count();
    Ok(format!(
        "within 2 % of it, or better, on {within} of {}; in the middle {:+.1} %, at worst {:+.1} %; it proves {proven}, finds nothing on {none}",
        above.len(),
        above.get(above.len() / 2).copied().unwrap_or_default(),
        above.last().copied().unwrap_or_default()
    ))
}

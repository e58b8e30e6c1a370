//! How soon plans are proven on random maps, beside a general constraint solver.
//!
//! The maps are those of the checks of `plan`: the same seed gives the same map.

#[allow(
    dead_code,
    reason = "the checks ask for every kind of map, this for some"
)]
#[path = "../../crates/plan/tests/common/mod.rs"]
mod maps;
mod other;

use crate::bench::{DOCUMENT, Table, machine, write_between};
use crate::sequence::clock::Clock;
use anyhow::{Result, ensure};
use maps::{Size, random_map};
use other::Other;
use plan::{Budget, Plan, Problem, plan};
use std::path::Path;
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// How much to measure.
#[derive(clap::Args)]
pub struct Choice {
    /// How many maps of the smallest size; fewer of the larger.
    #[arg(long, default_value_t = 100)]
    maps: u64,
    /// How many of the smallest maps the other solver gets; none leaves it out.
    #[arg(long, default_value_t = 8)]
    compared: usize,
    /// How long the other solver may work on each, in its own measure: one is about
    /// two seconds.
    #[arg(long, default_value_t = 5.0)]
    effort: f64,
    /// Count only the time that the processor gave, where the system tells: other programs
    /// that run beside it then do not count.
    #[arg(long)]
    processor_time: bool,
    /// Write the rows into docs/bench.md as well.
    #[arg(long)]
    write: bool,
}

/// What takes as long as this is timed once only.
const LONG: Duration = Duration::from_secs(4);

/// What takes less than a turn of the processor is timed by the clock: the system counts by turns.
const TURN: Duration = Duration::from_millis(20);

/// One row of what is measured.
struct Group {
    moves: usize,
    wanted: Wanted,
    maps: u64,
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Wanted {
    Three,
    Everything,
}

impl Wanted {
    /// One in so many maps is planned.
    fn share(self) -> u64 {
        match self {
            Wanted::Three => 1,
            Wanted::Everything => 4,
        }
    }
}

/// A map, its plan, and how long that took.
struct Planned {
    problem: Problem,
    plan: Plan,
    took: Duration,
}

/// The marks around the table in `docs/bench.md`.
const MARKS: [&str; 2] = [
    "<!-- plans: written by `cargo xtask plan-bench --write` -->",
    "<!-- /plans -->",
];

/// Takes the figures, prints their rows, and writes them down if asked to.
///
/// # Errors
/// If a map has no plan, the other solver contradicts one, or the rows cannot be written.
pub fn bench(choice: &Choice) -> Result<ExitCode> {
    let machine = machine();
    let mut table = Table::default();
    let other = (choice.compared > 0).then(Other::prepare);
    for wanted in [Wanted::Three, Wanted::Everything] {
        for (moves, share) in [(40, 1), (60, 4), (150, 20)] {
            let group = Group {
                moves,
                wanted,
                maps: choice.maps.div_ceil(share * wanted.share()),
            };
            let planned = group.plan(choice.processor_time)?;
            let aim = match (moves, wanted) {
                (40, _) => "95 of 100 proven in under a second",
                _ => "-",
            };
            table.row(&group.name(), &measured(&planned), aim);
            if let (40, Wanted::Three, Some(other)) = (moves, wanted, &other) {
                let few = &planned[..planned.len().min(choice.compared)];
                table.row(
                    &format!("the first {} of these beside {}", few.len(), other::NAME),
                    &beside(few, other, choice.effort)?,
                    "10 times as fast at the same cost",
                );
            }
        }
    }
    let text = format!("{machine}\n{}", table.text);
    if choice.write {
        write_between(Path::new(DOCUMENT), MARKS, &text)?;
    }
    println!("{text}");
    Ok(ExitCode::SUCCESS)
}

fn beside(planned: &[Planned], other: &Result<Other>, effort: f64) -> Result<String> {
    match other {
        Ok(other) => compared(planned, &other.solve(planned, effort)?),
        Err(error) => Ok(format!("not taken: {error:#}")),
    }
}

impl Group {
    fn name(&self) -> String {
        let wanted = match self.wanted {
            Wanted::Three => "three things wanted",
            Wanted::Everything => "everything wanted",
        };
        format!(
            "plans of {} maps of {} moves, 4 places, 8 tools, {wanted}",
            self.maps, self.moves
        )
    }

    /// The largest map of a seed that has no more moves than wanted.
    fn map(&self, seed: u64) -> Option<Problem> {
        let of_items = |items: usize| {
            let size = Size {
                items,
                places: 4,
                tools: 8,
                targets: 2,
                all_sorts: false,
            };
            let mut problem = random_map(seed, size);
            if self.wanted == Wanted::Everything {
                problem.forced_moves = problem.moves.iter().map(|step| step.id.clone()).collect();
            }
            problem
        };
        (1..=self.moves)
            .rev()
            .map(of_items)
            .find(|problem| problem.moves.len() <= self.moves)
    }

    fn plan(&self, processor_time: bool) -> Result<Vec<Planned>> {
        let mut planned = Vec::new();
        for problem in (0..self.maps).filter_map(|seed| self.map(seed)) {
            let (plan, mut took) = timed(&problem, processor_time)?;
            if took < LONG {
                // The lesser of two, since the machine does other things beside.
                took = took.min(timed(&problem, processor_time)?.1);
            }
            planned.push(Planned {
                problem,
                plan,
                took,
            });
        }
        Ok(planned)
    }
}

fn timed(problem: &Problem, processor_time: bool) -> Result<(Plan, Duration)> {
    let (start, clock) = (Instant::now(), Clock::start(Duration::ZERO, processor_time));
    let plan = plan(problem, Budget::default())?;
    let whole = start.elapsed();
    let took = match whole < TURN {
        true => whole,
        false => clock.passed().min(whole),
    };
    Ok((plan, took))
}

fn measured(planned: &[Planned]) -> String {
    let soon = |one: &&Planned| one.plan.proven && one.took < Duration::from_secs(1);
    let within = |hundredths| milliseconds(part(planned, hundredths, |one| one.took));
    let mut text = format!(
        "{} proven, {} in under a second; half within {}, 95 of 100 within {}, all within {}",
        planned.iter().filter(|one| one.plan.proven).count(),
        planned.iter().filter(soon).count(),
        within(50),
        within(95),
        within(100),
    );
    let open: Vec<_> = planned.iter().filter(|one| !one.plan.proven).collect();
    if !open.is_empty() {
        let thousandths = |one: &&Planned| {
            u64::from(one.plan.gap().in_tenths()) * 1000 / u64::from(one.plan.cost.in_tenths())
        };
        let gap = |hundredths| part(&open, hundredths, thousandths) as f64 / 10.0;
        text += &format!(
            "; the others may miss by {:.1} % in the middle, {:.1} % at most",
            gap(50),
            gap(100)
        );
    }
    let made = part(planned, 50, |one| one.plan.off.len());
    text + &format!("; {made} moves in the middle plan")
}

fn compared(planned: &[Planned], answers: &[other::Answer]) -> Result<String> {
    let mut both = (0, Duration::ZERO, Duration::ZERO);
    let (mut proven, mut dearer, mut none) = (0, 0, 0);
    for (one, answer) in planned.iter().zip(answers) {
        let (cost, bound) = (one.plan.cost.in_tenths(), one.plan.bound.in_tenths());
        // So two that are both proven cost the same.
        ensure!(
            answer.bound <= f64::from(cost) && answer.cost.is_none_or(|other| bound <= other),
            "two bounds that cannot both be right: {cost} and {bound} against {answer:?}"
        );
        proven += usize::from(answer.proven);
        dearer += usize::from(answer.cost.is_some_and(|other| other > cost));
        none += usize::from(answer.cost.is_none());
        if answer.proven && one.plan.proven {
            both = (both.0 + 1, both.1 + one.took, both.2 + answer.took);
        }
    }
    let ours = planned.iter().filter(|one| one.plan.proven).count();
    let mut text = format!("it proves {proven}, `plan` {ours}; its cost is higher on {dearer}");
    if none > 0 {
        text += &format!(", none found on {none}");
    }
    if both.0 > 0 {
        text += &format!(
            "; the {} proven by both cost the same and took it {}, `plan` {}: {:.0} times as fast",
            both.0,
            milliseconds(both.2),
            milliseconds(both.1),
            both.2.as_secs_f64() / both.1.as_secs_f64().max(1e-6),
        );
    }
    Ok(text)
}

/// What so many of a hundred do not exceed; the least of nothing.
fn part<T, V: Ord + Default + Copy>(all: &[T], hundredths: usize, value: impl Fn(&T) -> V) -> V {
    let mut values: Vec<_> = all.iter().map(value).collect();
    values.sort_unstable();
    let index = (values.len() * hundredths).div_ceil(100).saturating_sub(1);
    values.get(index).copied().unwrap_or_default()
}

fn milliseconds(time: Duration) -> String {
    let milliseconds = time.as_secs_f64() * 1e3;
    match milliseconds {
        few if few < 10.0 => format!("{few:.1} ms"),
        many => format!("{many:.0} ms"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn parts_of_a_hundred() {
        let all: Vec<u32> = (1..=200).rev().collect();
        assert_eq!(part(&all, 50, |one| *one), 100);
        assert_eq!(part(&all, 100, |one| *one), 200);
        assert_eq!(part(&Vec::<u32>::new(), 50, |one| *one), 0);
    }

    #[test]
    fn two_bounds_that_contradict_each_other_are_an_error() {
        let group = Group {
            moves: 12,
            wanted: Wanted::Everything,
            maps: 1,
        };
        let planned = group.plan(false).unwrap();
        let cost = planned[0].plan.cost.in_tenths();
        let answer = |cost, bound| {
            [other::Answer {
                cost: Some(cost),
                bound,
                proven: true,
                took: Duration::from_secs(1),
            }]
        };
        let same = compared(&planned, &answer(cost, f64::from(cost))).unwrap();
        assert!(same.contains("the 1 proven by both"), "{same}");
        assert!(compared(&planned, &answer(cost - 1, f64::from(cost) - 1.0)).is_err());
    }
}

//! How well and how fast `lessons` learns on simulated vehicles whose true order is known.
//!
//! The vehicles and the people are those of the checks of `lessons`: the same seed gives
//! the same jobs.

#[allow(dead_code, reason = "the checks ask for more than this")]
#[path = "../../crates/lessons/tests/common/mod.rs"]
mod shops;

use crate::bench::{DOCUMENT, Table, machine, write_between};
use anyhow::{Context, Result, ensure};
use lessons::{Answers, Joins, Learner};
use rand::RngExt;
use shops::{People, Score, Shape, Shop, Truth, ask, chance, number, settle, step, taught};
use std::fmt::Write as _;
use std::path::Path;
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// How much to measure.
#[derive(clap::Args)]
pub struct Choice {
    /// How many vehicles of each size, half of each shape.
    #[arg(long, default_value_t = 20)]
    vehicles: u64,
    /// How many jobs for the times.
    #[arg(long, default_value_t = 10_000)]
    jobs: usize,
    /// Write the rows into docs/bench.md as well.
    #[arg(long)]
    write: bool,
}

/// The marks around the rows in `docs/bench.md`.
const MARKS: [&str; 2] = [
    "<!-- lessons: written by `cargo xtask lessons-bench --write` -->",
    "<!-- /lessons -->",
];

const SIZES: [(usize, usize); 4] = [(10, 2), (20, 4), (40, 8), (60, 12)];
const PEOPLE: [(People, &str); 3] = [
    (People::One, "one, who varies"),
    (People::Several, "six, who vary"),
    (People::Bound, "six, each with a fixed habit"),
];
const JOBS: [usize; 4] = [1, 3, 10, 30];
/// After how many jobs questions are asked, and how many.
const QUESTIONS: [(usize, usize); 3] = [(3, 5), (3, 20), (3, usize::MAX)];
/// Of a hundred moves, so many are told in the wrong place.
const ERRORS: u32 = 2;

/// Takes the figures, prints their rows, and writes them down if asked to.
///
/// # Errors
/// If the rows cannot be written, or a path fails more often than it says.
pub fn bench(choice: &Choice) -> Result<ExitCode> {
    let mut text = format!("{}\n", machine());
    text += "| moves, width | who | 1 job | 3 jobs | 10 jobs | 30 jobs | 3 jobs, 5 questions | 3 jobs, 20 questions | 3 jobs, all questions |\n";
    text += "| --- | --- | --- | --- | --- | --- | --- | --- | --- |\n";
    for (moves, width) in SIZES {
        for (people, name) in PEOPLE {
            let row = pairs_row(moves, width, people, choice.vehicles);
            let row = format!("| {moves}, {width} | {name} | {row} |\n");
            eprint!("{row}");
            text += &row;
        }
    }
    let mut table = Table::default();
    for (moves, width) in SIZES {
        settled(&mut table, moves, width, choice.vehicles)?;
    }
    for (moves, width) in SIZES {
        guessed(&mut table, moves, width, choice.vehicles)?;
    }
    held(&mut table, choice.vehicles * 10)?;
    times(&mut table, choice.jobs)?;
    let _ = write!(text, "\n{}", table.text);
    if choice.write {
        write_between(Path::new(DOCUMENT), MARKS, &text)?;
    }
    println!("{text}");
    Ok(ExitCode::SUCCESS)
}

fn shape(seed: u64) -> Shape {
    match seed % 2 {
        0 => Shape::SeriesParallel,
        _ => Shape::Random,
    }
}

/// Precision and recall of pairs by jobs, then by questions.
fn pairs_row(moves: usize, width: usize, people: People, vehicles: u64) -> String {
    let mut by_jobs = [Score::default(); JOBS.len()];
    let mut by_questions = [(Score::default(), 0_usize); QUESTIONS.len()];
    for seed in 0..vehicles {
        let truth = Truth::new(shape(seed), moves, width, &mut chance(seed));
        let mut shop = Shop::new(&truth, people, ERRORS, seed);
        let mut learner = Learner::new(Joins::default());
        for jobs in 1..=JOBS[JOBS.len() - 1] {
            learner.add(&shop.job());
            if let Some(at) = JOBS.iter().position(|wanted| *wanted == jobs) {
                by_jobs[at].add(Score::of(&truth, &taught(&learner, &Answers::default())));
            }
            let mut answers = Answers::default();
            let mut before = 0;
            for (at, (after, most)) in QUESTIONS.into_iter().enumerate() {
                if after == jobs {
                    before += match most {
                        usize::MAX => settle(&learner, &truth, &mut answers),
                        _ => ask(&learner, &truth, &mut answers, most - before),
                    };
                    by_questions[at]
                        .0
                        .add(Score::of(&truth, &taught(&learner, &answers)));
                    by_questions[at].1 += before;
                }
            }
        }
    }
    let said = |score: &Score| {
        format!(
            "{:.0} / {:.0}",
            score.precision() * 100.0,
            score.recall() * 100.0
        )
    };
    let mut cells: Vec<String> = by_jobs.iter().map(said).collect();
    for ((score, asked), (_, most)) in by_questions.iter().zip(QUESTIONS) {
        let mean = *asked as f64 / vehicles.max(1) as f64;
        cells.push(match most {
            usize::MAX => format!("{} ({mean:.0})", said(score)),
            _ => said(score),
        });
    }
    cells.join(" | ")
}

/// Questions until all is settled after one job without errors.
fn settled(table: &mut Table, moves: usize, width: usize, vehicles: u64) -> Result<()> {
    let (mut all, mut bounds, mut hardest) = (0, 0.0, 0.0_f64);
    for seed in 0..vehicles {
        let truth = Truth::new(shape(seed), moves, width, &mut chance(seed));
        let mut shop = Shop::new(&truth, People::One, 0, seed);
        shop.everything = true;
        let mut learner = Learner::new(Joins::default());
        learner.add(&shop.job());
        let asked = settle(&learner, &truth, &mut Answers::default());
        let bound = moves as f64 * (truth.width() as f64 + (moves as f64).log2());
        ensure!(
            (asked as f64) < bound,
            "seed {seed}: {asked} questions, not under {bound:.0}"
        );
        all += asked;
        bounds += bound;
        hardest = hardest.max(asked as f64 / bound);
    }
    let each = |sum: f64| sum / vehicles.max(1) as f64;
    table.row(
        &format!(
            "questions that settle {moves} moves of width {width}, after one job without errors"
        ),
        &format!(
            "{:.0} of {} pairs; {:.2} of the bound in the mean, {hardest:.2} at most",
            each(all as f64),
            moves * (moves - 1) / 2,
            all as f64 / bounds
        ),
        &format!("under n (w + log2 n), {:.0}", each(bounds)),
    );
    Ok(())
}

/// How many steps of a path to one thing rest on a guess, as its questions are answered.
fn guessed(table: &mut Table, moves: usize, width: usize, vehicles: u64) -> Result<()> {
    let asked = [0, 3, 10];
    let (mut steps, mut guesses, mut all) = (0, [0; 3], 0);
    for seed in 0..vehicles {
        let mut chance = chance(seed);
        let truth = Truth::new(shape(seed), moves, width, &mut chance);
        let mut shop = Shop::new(&truth, People::Several, ERRORS, seed);
        let mut learner = Learner::new(Joins::default());
        for _ in 0..10 {
            learner.add(&shop.job());
        }
        let mut answers = Answers::default();
        let lessons = taught(&learner, &answers);
        let target = [lessons.steps()[chance.random_range(0..lessons.steps().len())].clone()];
        for nth in 0..=asked[2] {
            let lessons = taught(&learner, &answers);
            if let Some(at) = asked.iter().position(|asked| *asked == nth) {
                let path = lessons.path_to(&target)?;
                steps += if at == 0 { path.steps.len() } else { 0 };
                guesses[at] += path
                    .steps
                    .iter()
                    .filter(|one| !one.guessed.is_empty())
                    .count();
            }
            if let Some(question) = lessons.questions(&target, 1).pop() {
                answers.take(&question, truth.answer(&question));
            }
        }
        let mut answers = Answers::default();
        while let Some(question) = taught(&learner, &answers).next_to_settle(&target) {
            answers.take(&question, truth.answer(&question));
            all += 1;
        }
    }
    let each = |sum: usize| sum as f64 / vehicles.max(1) as f64;
    table.row(
        &format!("{moves} moves of width {width}, ten jobs by six who vary: steps of a path to one thing that rest on a guess"),
        &format!(
            "{:.1} of {:.1}; {:.1} after 3 questions, {:.1} after 10; all settled after {:.1}",
            each(guesses[0]),
            each(steps),
            each(guesses[1]),
            each(guesses[2]),
            each(all)
        ),
        "-",
    );
    Ok(())
}

/// Paths carried out on the true order, against what they say.
fn held(table: &mut Table, vehicles: u64) -> Result<()> {
    for jobs in JOBS {
        let (mut paths, mut failed, mut said) = (0_usize, 0_usize, 0.0);
        for seed in 0..vehicles {
            let mut chance = chance(seed);
            let (moves, width) = SIZES[chance.random_range(0..SIZES.len())];
            let (people, _) = PEOPLE[chance.random_range(0..PEOPLE.len())];
            let truth = Truth::new(shape(seed), moves, width, &mut chance);
            let mut shop = Shop::new(&truth, people, ERRORS, seed);
            let mut learner = Learner::new(Joins::default());
            for _ in 0..jobs {
                learner.add(&shop.job());
            }
            let lessons = taught(&learner, &Answers::default());
            for _ in 0..4 {
                let target = lessons.steps()[chance.random_range(0..lessons.steps().len())].clone();
                let path = lessons.path_to(&[target])?;
                let steps: Vec<usize> = path.steps.iter().map(|one| number(&one.step)).collect();
                paths += 1;
                failed += usize::from(!truth.allows(&steps));
                said += 1.0 - path.holds;
            }
        }
        let of = |count: f64| 100.0 * count / paths.max(1) as f64;
        table.row(
            &format!("paths after {jobs} jobs that cannot be carried out on the true order"),
            &format!("{:.1} of 100, of {paths}", of(failed as f64)),
            &format!("at most the {:.1} of 100 that they say", of(said)),
        );
        ensure!(
            failed as f64 <= said + 3.0 * said.max(1.0).sqrt(),
            "more fail than is said"
        );
    }
    Ok(())
}

fn times(table: &mut Table, jobs: usize) -> Result<()> {
    let truth = Truth::new(Shape::Random, 60, 8, &mut chance(1));
    let mut shop = Shop::new(&truth, People::Several, ERRORS, 1);
    let all: Vec<_> = (0..jobs).map(|_| shop.job()).collect();
    let mut learner = Learner::new(Joins::default());
    let taken = timed(|| all.iter().for_each(|job| drop(learner.add(job))));
    table.row(
        &format!("learning {jobs} jobs of up to 60 moves by six people"),
        &milliseconds(taken),
        "5 s",
    );
    let mut more: Vec<Duration> = Vec::new();
    for _ in 0..9 {
        let job = shop.job();
        more.push(timed(|| drop(learner.add(&job))));
    }
    more.sort_unstable();
    let middle = more.get(more.len() / 2).context("nine were timed")?;
    table.row("one more", &milliseconds(*middle), "10 ms");
    let answers = Answers::default();
    let mut lessons = None;
    let taken = timed(|| lessons = Some(taught(&learner, &answers)));
    table.row(
        "the lessons of them, all pairs weighed",
        &milliseconds(taken),
        "-",
    );
    let lessons = lessons.context("they were just taken")?;
    let targets: Vec<_> = (0..truth.count).map(step).collect();
    let taken = timed(|| drop(lessons.questions(&targets, 5)));
    table.row("the five questions worth most", &milliseconds(taken), "-");
    Ok(())
}

fn timed(work: impl FnOnce()) -> Duration {
    let start = Instant::now();
    work();
    start.elapsed()
}

fn milliseconds(time: Duration) -> String {
    match time.as_secs_f64() * 1e3 {
        few if few < 10.0 => format!("{few:.2} ms"),
        many => format!("{many:.0} ms"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_has_a_cell_for_each_count_of_jobs_and_questions() {
        let row = pairs_row(10, 2, People::Several, 2);
        let cells: Vec<&str> = row.split(" | ").collect();
        assert_eq!(cells.len(), JOBS.len() + QUESTIONS.len(), "{row}");
        assert!(cells[6].starts_with("100 / 100 ("), "all asked: {row}");
    }

    #[test]
    fn what_is_measured_becomes_rows() {
        let mut table = Table::default();
        settled(&mut table, 10, 2, 2).unwrap();
        guessed(&mut table, 10, 2, 2).unwrap();
        times(&mut table, 50).unwrap();
        assert_eq!(table.text.lines().count(), 2 + 1 + 1 + 4);
    }
}

//! How soon an order of eighty stages is quoted, beside the same model drawn with NumPy, and
//! whether both come to the same.

use anyhow::{Context, Result, ensure};
use odds::{
    Ask, Condition, Done, Grid, History, Joint, Learned, Line, Model, ModelRange, Order, Pieces,
    Prior, Range, Rule, SnagHistory, model, quote,
};
use serde_json::{Value, json};
use std::io::Write;
use std::path::PathBuf;
use std::process::{Command, ExitCode, Stdio};
use std::time::{Duration, Instant};

const PACKAGE: &str = "numpy==2.3.5";
const PROGRAM: &str = include_str!("odds_bench/model.py");
/// As the estimate page asks.
const DRAWS: usize = 100_000;
const STAGES: u32 = 80;
const ROUNDS: usize = 9;
/// Quantiles that are held against each other.
const CHANCES: [f64; 5] = [0.1, 0.25, 0.5, 0.75, 0.9];
/// Both are drawn: they may differ by so many of their sampling errors together.
const ERRORS: f64 = 4.0;

/// How to measure.
#[derive(clap::Args)]
pub struct Choice {
    /// Threads of the quote; NumPy draws on one.
    #[arg(long, default_value_t = 2, value_parser = clap::value_parser!(u16).range(1..=64))]
    threads: u16,
}

pub fn bench(choice: &Choice) -> Result<ExitCode> {
    let python = crate::python::with("odds-bench", PACKAGE, "numpy")?;
    let (learned, snags) = history()?;
    let order = order();
    let threads = usize::from(choice.threads);
    let ask = |seed| Ask {
        seed,
        draws: DRAWS,
        threads,
        ceiling: Some(4_000.0),
        causes: false,
        ..Ask::default()
    };
    quote(&learned, &snags, &order, &ask(1))?;
    let mut took: Vec<Duration> = Vec::new();
    let mut found = None;
    for seed in 2..2 + ROUNDS as u64 {
        let began = Instant::now();
        found = Some(quote(&learned, &snags, &order, &ask(seed))?);
        took.push(began.elapsed());
    }
    took.sort();
    let own = took[ROUNDS / 2].as_secs_f64();
    let found = found.context("nothing was quoted")?;
    let with_causes = {
        let began = Instant::now();
        quote(
            &learned,
            &snags,
            &order,
            &Ask {
                causes: true,
                ..ask(1)
            },
        )?;
        began.elapsed().as_secs_f64()
    };
    let other = drawn_elsewhere(&python, &model(&learned, &snags, &order)?)?;
    let seconds = other["seconds"].as_f64().context("no time")?;
    println!(
        "an order of {STAGES} stages in {} lines, {DRAWS} draws",
        order.lines.len()
    );
    println!(
        "  here, {threads} threads       {:8.1} ms  (with causes {:.1} ms)",
        own * 1e3,
        with_causes * 1e3
    );
    println!(
        "  NumPy {}, vectorised {:8.1} ms  {:.1} times as long",
        other["numpy"].as_str().unwrap_or(""),
        seconds * 1e3,
        seconds / own
    );
    let mut good = true;
    for (name, spread) in [("hours", &found.hours), ("price", &found.price)] {
        for (nth, chance) in CHANCES.iter().enumerate() {
            let theirs = other[name][nth].as_f64().context("no quantile")?;
            let row = spread.quantiles.iter().find(|(at, ..)| at == chance);
            let (_, ours, error) = row.context("no quantile here")?;
            // An error as told is 1.96 standard deviations; both sides have one.
            let apart = (ours - theirs).abs() / (error / 1.96 * std::f64::consts::SQRT_2);
            let holds = apart <= ERRORS;
            good &= holds;
            println!(
                "  {name} {chance:4.2}  {ours:9.3}  {theirs:9.3}  {apart:4.1} sampling errors apart{}",
                if holds { "" } else { "  TOO FAR" }
            );
        }
    }
    Ok(if good {
        ExitCode::SUCCESS
    } else {
        ExitCode::FAILURE
    })
}

/// Forty jobs of five stages each, of a shop that takes a fifth longer than the book.
fn history() -> Result<(Learned, SnagHistory)> {
    let mut history = History::new(Prior::default(), Grid::default())?;
    for job in 0..40_u32 {
        let stages: Vec<Done> = (0..5_u32)
            .map(|stage| Done {
                kind: kind(stage),
                person: Some(["Ana", "Ben"][(job % 2) as usize].to_owned()),
                condition: Condition::default(),
                book_minutes: 20.0,
                // Fixed numbers that look like a shop's: no chance is needed here.
                minutes: 24.0 * (1.0 + 0.3 * f64::from((job * 7 + stage * 3) % 11) / 11.0),
                left: false,
            })
            .collect();
        history.learn(&format!("vehicle {}", job % 25), &stages)?;
    }
    let mut snags = SnagHistory::default();
    snags.learn(&joint(), 400, 22)?;
    Ok((history.fit()?, snags))
}

fn kind(nth: u32) -> String {
    ["covers", "fasteners", "hoses", "connectors", "parts"][(nth % 5) as usize].to_owned()
}

fn joint() -> Joint {
    Joint {
        size: Some("M8".to_owned()),
        material: Some("aluminium".to_owned()),
        ..Joint::default()
    }
}

/// Twenty lines, each done four times.
fn order() -> Order {
    let lines = (0..20_u32).map(|nth| Line {
        what: format!("line {nth}"),
        kind: kind(nth),
        person: Some("Ana".to_owned()),
        book_minutes: 6.0 + f64::from(nth),
        times: STAGES / 20,
        pieces: (nth % 4 == 1).then(|| Pieces {
            count: 8,
            joint: joint(),
            minutes: Range {
                low: 40.0,
                likely: 55.0,
                high: 90.0,
            },
            price: Range::sure(14.0),
        }),
    });
    Order {
        vehicle: Some("vehicle 7".to_owned()),
        lines: lines.collect(),
        rule: Rule {
            rate: 120.0,
            tax_percent: 20.0,
            ..Rule::default()
        },
        ..Order::default()
    }
}

fn drawn_elsewhere(python: &PathBuf, model: &Model) -> Result<Value> {
    let range =
        |range: &ModelRange| json!({ "low": range.low, "width": range.width, "beta": range.beta });
    let lines = model.lines.iter().map(|line| {
        let snags = line.snags.as_ref().map(|snags| {
            json!({ "count": snags.count, "parts": snags.parts,
                "minutes": range(&snags.minutes), "price": range(&snags.price) })
        });
        json!({ "row": line.row, "book": line.book, "times": line.times, "snags": snags })
    });
    let points = model.points.iter().map(|point| {
        json!({ "weight": point.weight, "scale": point.scale, "shape": point.shape, "mean": point.mean,
            "triangle": point.triangle, "shrink": point.shrink, "vehicle": point.vehicle })
    });
    let sent = json!({
        "points": points.collect::<Vec<_>>(), "rows": model.rows, "visits": model.visits,
        "visits_y": model.visits_y, "center": model.center, "floor": model.floor, "cap": model.cap,
        "vehicle_on_snags": model.vehicle_on_snags, "lines": lines.collect::<Vec<_>>(),
        "amounts": model.amounts.iter().map(range).collect::<Vec<_>>(),
        "rate": model.rate, "tax_percent": model.tax_percent, "chances": CHANCES,
    });
    let mut child = Command::new(python)
        .args(["-c", PROGRAM, &DRAWS.to_string(), "11", &ROUNDS.to_string()])
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .spawn()
        .context("cannot run python")?;
    let mut input = child.stdin.take().context("python takes no input")?;
    input.write_all(sent.to_string().as_bytes())?;
    drop(input);
    let output = child.wait_with_output()?;
    ensure!(output.status.success(), "the model fails");
    serde_json::from_slice(&output.stdout).context("no answer")
}

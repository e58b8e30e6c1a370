//! How well lines are read, and how soon.
//!
//! The rows and how a reading is held against them are those of the checks of `trade`.

#[path = "../../crates/trade/tests/common/mod.rs"]
mod rows;

use anyhow::{Context, Result, ensure};
use rows::{Fit, Row, components, fit, known, rows};
use std::collections::BTreeMap;
use std::path::Path;
use std::process::ExitCode;
use std::time::{Duration, Instant};
use trade::{Sure, Vocabulary, kind_code, says};

/// What to hold the reading against.
#[derive(clap::Args)]
pub struct Choice {
    /// Tables of rows; without, the open rows and those written before tuning.
    tables: Vec<std::path::PathBuf>,
    /// Name every row that is not read as meant.
    #[arg(long)]
    rows: bool,
}

const TABLES: [&str; 2] = [
    "checks/data/trade/open.tsv",
    "checks/data/trade/held-out.tsv",
];

/// Terms of published lists, each with what it is.
const COMPONENTS: &str = "checks/data/trade/components.tsv";

pub fn bench(choice: &Choice) -> Result<ExitCode> {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
    let started = Instant::now();
    let vocabulary = Vocabulary::shipped();
    println!(
        "{} terms, version {}, ready in {:?}",
        vocabulary.terms(),
        vocabulary.version(),
        started.elapsed()
    );
    let tables = if choice.tables.is_empty() {
        TABLES.iter().map(|table| root.join(table)).collect()
    } else {
        choice.tables.clone()
    };
    let mut all = Vec::new();
    for table in &tables {
        let text =
            std::fs::read_to_string(table).with_context(|| format!("{}", table.display()))?;
        let rows = rows(&text);
        ensure!(!rows.is_empty(), "{}: no row in it", table.display());
        report(&table.display().to_string(), &rows, choice.rows);
        all.extend(rows);
    }
    if choice.tables.is_empty() {
        let text = std::fs::read_to_string(root.join(COMPONENTS)).context(COMPONENTS)?;
        report_components(&text, choice.rows);
    }
    time(&all);
    Ok(ExitCode::SUCCESS)
}

/// How much of the table of components is read, and how well.
fn report_components(text: &str, each: bool) {
    let vocabulary = Vocabulary::shipped();
    let table = components(text);
    let read: Vec<_> = table
        .iter()
        .map(|component| known(component, vocabulary))
        .collect();
    println!("{COMPONENTS}: {} terms", table.len());
    for sure in [Sure::Sure, Sure::Likely, Sure::Unknown] {
        let count = read.iter().filter(|known| known.sure == sure).count();
        println!("  {}: {count}", sure.code());
    }
    for (what, right) in [
        ("kind", read.iter().filter(|known| known.kind).count()),
        ("system", read.iter().filter(|known| known.system).count()),
        ("safety", read.iter().filter(|known| known.safety).count()),
        (
            "safety read as harmless",
            read.iter().filter(|known| known.harmless).count(),
        ),
    ] {
        println!("  {what}: {right} of {}", table.len());
    }
    if each {
        for (component, known) in table.iter().zip(&read) {
            if !(known.kind && known.system && known.safety) || known.sure != Sure::Sure {
                println!("  {}: {}", component.term, known.got);
            }
        }
    }
}

fn report(name: &str, rows: &[Row], each: bool) {
    let vocabulary = Vocabulary::shipped();
    let fits: Vec<Fit> = rows.iter().map(|row| fit(row, vocabulary)).collect();
    let all = fits.len();
    let count = |test: &dyn Fn(&Fit) -> bool| fits.iter().filter(|fit| test(fit)).count();
    let tell = |what: &str, count: usize| {
        let share = 100.0 * f64::from(u32::try_from(count).unwrap_or(u32::MAX))
            / f64::from(u32::try_from(all).unwrap_or(1));
        println!("  {what}: {share:.1} % ({count} of {all})");
    };
    println!("{name}");
    tell("kind", count(&|fit| fit.kind));
    tell("system", count(&|fit| fit.system));
    tell("safety", count(&|fit| fit.safety));
    tell("safety read as harmless", count(&|fit| fit.harmless));
    tell("owed and gates exact or stricter", count(&|fit| !fit.lax()));
    tell("stricter", count(&Fit::stricter));
    tell("count", count(&|fit| fit.count));
    tell("side", count(&|fit| fit.side));
    tell("size", count(&|fit| fit.size));
    tell("caution", count(&|fit| fit.caution));
    confusion(
        "kind",
        rows,
        |row| row.kinds.join("+"),
        |line| {
            says(line, vocabulary)
                .iter()
                .map(|said| kind_code(said.kind))
                .collect::<Vec<_>>()
                .join("+")
        },
    );
    confusion(
        "system",
        rows,
        |row| row.systems.join("+"),
        |line| {
            let mut codes: Vec<&str> = says(line, vocabulary)
                .iter()
                .map(|said| said.system.code())
                .collect();
            codes.dedup();
            codes.join("+")
        },
    );
    if each {
        for (row, fit) in rows.iter().zip(&fits) {
            if !(fit.kind && fit.system && fit.safety) || fit.lax() || fit.stricter() {
                println!(
                    "  {}: {} owed -{:?} +{:?} gates -{:?} +{:?}",
                    row.line,
                    fit.got,
                    fit.owed_missing,
                    fit.owed_more,
                    fit.gates_missing,
                    fit.gates_more
                );
            }
        }
    }
}

/// What was meant against what was read, one line each pair; the right ones as one number.
fn confusion(
    what: &str,
    rows: &[Row],
    meant: impl Fn(&Row) -> String,
    read: impl Fn(&str) -> String,
) {
    let mut pairs: BTreeMap<(String, String), u32> = BTreeMap::new();
    for row in rows {
        *pairs.entry((meant(row), read(&row.line))).or_default() += 1;
    }
    println!("  {what}, meant -> read:");
    for ((meant, read), count) in &pairs {
        let mark = if meant == read { "" } else { "   <- otherwise" };
        println!("    {meant:>24} -> {read:<24} {count:>4}{mark}");
    }
}

/// The time to read a thousand lines, the best and the middle of several rounds.
fn time(rows: &[Row]) {
    let vocabulary = Vocabulary::shipped();
    let mut times: Vec<Duration> = (0..21)
        .map(|_| {
            let started = Instant::now();
            let things: usize = rows
                .iter()
                .cycle()
                .take(1000)
                .map(|row| says(&row.line, vocabulary).len())
                .sum();
            assert!(things >= 1000, "every line names at least one thing");
            started.elapsed()
        })
        .collect();
    times.sort_unstable();
    println!(
        "1000 lines: best {:?}, middle {:?}",
        times[0],
        times[times.len() / 2]
    );
}

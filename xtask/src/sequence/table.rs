//! What was found beside what is published, for `docs/bench.md`.

use super::Answer;
use crate::bench::{DOCUMENT, machine, write_between};
use anyhow::{Context, Result};
use std::fmt::Write;
use std::path::Path;
use std::time::Duration;

const MARKS: [&str; 2] = [
    "<!-- sequences: written by `cargo xtask sequence-bench --write` -->",
    "<!-- /sequences -->",
];

/// Rows of the document's table.
pub struct Table {
    text: String,
}

impl Table {
    pub fn new() -> Self {
        let head = "| instance | length | best known | bound | seconds |\n| --- | --- | --- | --- | --- |\n";
        Self {
            text: format!("{}\n{head}", machine()),
        }
    }

    /// Adds what was found for the instance in this file.
    pub fn row(&mut self, file: &Path, answer: &Answer, took: Duration) -> Result<()> {
        let name = file.file_stem().unwrap_or_default().to_string_lossy();
        let best = best_known(file, &name)?;
        let bound = match answer.proven {
            true => "proven".to_owned(),
            false => format!(
                "{}, {} below",
                answer.bound,
                percent(best.saturating_sub(answer.bound), best)
            ),
        };
        let length = match answer.length == best {
            true => best.to_string(),
            false => format!(
                "{}, {} above",
                answer.length,
                percent(answer.length.saturating_sub(best), best)
            ),
        };
        let seconds = took.as_secs_f64();
        writeln!(
            self.text,
            "| {name} | {length} | {best} | {bound} | {seconds:.2} |"
        )?;
        Ok(())
    }

    /// Writes the rows into the document.
    pub fn write(&self) -> Result<()> {
        write_between(Path::new(DOCUMENT), MARKS, &self.text)
    }
}

fn percent(part: u64, whole: u64) -> String {
    format!("{:.1} %", 100.0 * part as f64 / whole as f64)
}

/// The published length, from the list beside the file.
fn best_known(file: &Path, name: &str) -> Result<u64> {
    let list = file.with_file_name("optima.csv");
    let text = std::fs::read_to_string(&list)
        .with_context(|| format!("cannot read {}", list.display()))?;
    let row = text
        .lines()
        .find_map(|line| line.strip_prefix(name)?.strip_prefix(','));
    let best = row.and_then(|row| row.split(',').next()?.parse().ok());
    best.with_context(|| format!("{} has no length for {name}", list.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_row_says_how_far_from_the_best_known() {
        let data = concat!(env!("CARGO_MANIFEST_DIR"), "/../checks/data/sop/ft53.1.sop");
        let mut table = Table::new();
        let answer = Answer {
            sequence: Vec::new(),
            length: 7606,
            bound: 6778,
            proven: false,
        };
        table
            .row(Path::new(data), &answer, Duration::from_millis(9700))
            .unwrap();
        let row = "| ft53.1 | 7606, 1.0 % above | 7531 | 6778, 10.0 % below | 9.70 |\n";
        assert!(table.text.ends_with(row), "{}", table.text);
    }
}

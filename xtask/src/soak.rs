//! `cargo xtask soak`: the tests that gain by running long, run long.

use crate::bench::{DOCUMENT, write_between};
use crate::setup::has_postgres;
use anyhow::{Context, Result};
use clap::Args;
use std::fmt::Write;
use std::path::Path;
use std::process::{Command, ExitCode};
use std::time::Instant;

/// How long.
#[derive(Args)]
pub struct Choice {
    /// How often the store's program, and the served one, are killed under load.
    #[arg(long, default_value_t = 1_000)]
    rounds: u32,
    /// In how many places of a larger log a bit is flipped.
    #[arg(long, default_value_t = 10_000)]
    flips: u32,
    /// How often each kind of tampering is tried.
    #[arg(long, default_value_t = 200)]
    tamperings: u32,
    /// How often a copy breaks off in a database, and how often each way of copying is killed.
    #[arg(long, default_value_t = 50)]
    copies: u32,
    /// How often the database freezes.
    #[arg(long, default_value_t = 10)]
    freezes: u32,
    /// How many commands are sent twice at once.
    #[arg(long, default_value_t = 2_000)]
    doubled: u32,
    /// How many decisions are made about an order that others write to without end.
    #[arg(long, default_value_t = 3_000)]
    decisions: u32,
    /// How many seeded shops are simulated.
    #[arg(long, default_value_t = 50_000)]
    simulations: u32,
    /// How many seeded days three devices work out of reach.
    #[arg(long, default_value_t = 500)]
    devices: u32,
    /// How many cases each property of the parsers is tried with.
    #[arg(long, default_value_t = 100_000)]
    cases: u32,
    /// Where chance starts, for the parts that take a seed.
    #[arg(long, default_value_t = 1)]
    seed: u64,
    /// Run only the parts whose names hold these words.
    #[arg(long, value_name = "WORDS", default_value = "")]
    only: String,
    /// Write what was run into docs/bench.md.
    #[arg(long)]
    write: bool,
}

const MARKS: [&str; 2] = [
    "<!-- soak: written by `cargo xtask soak --write` -->",
    "<!-- /soak -->",
];

/// One thing that is run long, and the variable that says how long.
struct Part {
    name: &'static str,
    cargo: String,
    variable: &'static str,
    length: u32,
    /// What `length` counts.
    of: &'static str,
    seeds: String,
}

/// Turns on the tests that start a PostgreSQL server.
const POSTGRES: &str = " --features postgres-tests";

impl Part {
    /// Leaves out what needs a PostgreSQL server; whether anything is left to run.
    fn without_postgres(&mut self) -> bool {
        if !self.cargo.contains(POSTGRES) {
            return true;
        }
        self.cargo = self.cargo.replace(POSTGRES, "");
        // All of that test needs it.
        !self.cargo.contains("--test database")
    }
}

/// Runs every part, goes on after one that failed, and says which did and what was run.
///
/// # Errors
/// If cargo could not be run, or the document could not be written.
pub fn soak(choice: &Choice) -> Result<ExitCode> {
    let mut table =
        "| what | how often | seeds | took | came of it |\n| --- | --- | --- | --- | --- |\n"
            .to_owned();
    let mut failed = Vec::new();
    let parts = parts(choice).into_iter();
    for mut part in parts.filter(|part| part.name.contains(&choice.only)) {
        if !has_postgres() && !part.without_postgres() {
            println!("== {}: not run, there is no PostgreSQL here", part.name);
            let _ = writeln!(
                table,
                "| {} | - | - | - | not run: no PostgreSQL here |",
                part.name
            );
            continue;
        }
        println!(
            "== {}: {}={} cargo {}",
            part.name, part.variable, part.length, part.cargo
        );
        // Built beforehand: only the run is timed.
        built(&part, choice).status().context("cannot run cargo")?;
        let start = Instant::now();
        let status = cargo(&part, choice).status().context("cannot run cargo")?;
        let took = start.elapsed();
        if !status.success() {
            failed.push(part.name);
        }
        let _ = writeln!(
            table,
            "| {} | {} {} | {} | {:.0} s | {} |",
            part.name,
            part.length,
            part.of,
            part.seeds,
            took.as_secs_f64(),
            if status.success() {
                "nothing failed"
            } else {
                "**failed**"
            },
        );
    }
    println!("\n{table}");
    if choice.write {
        write_between(Path::new(DOCUMENT), MARKS, &table)?;
        println!("written into {DOCUMENT}");
    }
    if failed.is_empty() {
        println!("nothing failed");
        return Ok(ExitCode::SUCCESS);
    }
    println!("failed: {}", failed.join(", "));
    Ok(ExitCode::FAILURE)
}

/// The same without the run; what follows a bare `--` is for the test itself.
fn built(part: &Part, choice: &Choice) -> Command {
    let mut command = Command::new("cargo");
    let of_cargo = part.cargo.split(" -- ").next().unwrap_or(&part.cargo);
    command
        .args(of_cargo.split(' '))
        .arg("--no-run")
        .env("SEED", choice.seed.to_string());
    command
}

fn cargo(part: &Part, choice: &Choice) -> Command {
    let mut command = Command::new("cargo");
    command
        .args(part.cargo.split(' '))
        .env(part.variable, part.length.to_string())
        .env("SEED", choice.seed.to_string());
    command
}

fn parts(choice: &Choice) -> [Part; 12] {
    let seed = choice.seed.to_string();
    [
        Part {
            name: "the store killed while it appends",
            cargo: "test --package store --test crash killed".to_owned(),
            variable: "ROUNDS",
            length: choice.rounds,
            of: "kills",
            seeds: seed.clone(),
        },
        Part {
            name: "the server killed while people work",
            cargo: "test --package buttonup --test crash".to_owned(),
            variable: "ROUNDS",
            length: choice.rounds,
            of: "kills",
            seeds: "none: moments by round".to_owned(),
        },
        Part {
            name: "bits flipped in a larger log",
            cargo: "test --package store --test damage larger".to_owned(),
            variable: "FLIPS",
            length: choice.flips,
            of: "flips",
            seeds: seed,
        },
        Part {
            name: "a store tampered with: bits of rows and indexes, missing rows, cut tails, texts, files",
            cargo: "test --package store --test tampering".to_owned(),
            variable: "TAMPERINGS",
            length: choice.tamperings,
            of: "tries a kind",
            seeds: choice.seed.to_string(),
        },
        Part {
            name: "copies that broke off, moves to where somebody wrote",
            cargo: "test --package buttonup --features postgres-tests --test database broke_off"
                .to_owned(),
            variable: "COPIES",
            length: choice.copies,
            of: "copies",
            seeds: "none".to_owned(),
        },
        Part {
            name: "copies and moves killed at any instant, into a folder and into a database",
            cargo: "test --package buttonup --features postgres-tests --test copies".to_owned(),
            variable: "COPIES",
            length: choice.copies,
            of: "kills a way",
            seeds: "none: moments by round".to_owned(),
        },
        Part {
            name: "a database that freezes under the program",
            cargo: "test --package buttonup --features postgres-tests --test database frozen"
                .to_owned(),
            variable: "FREEZES",
            length: choice.freezes,
            of: "freezes",
            seeds: "none".to_owned(),
        },
        Part {
            name: "commands sent twice at once, to one program and to two",
            cargo: "test --package buttonup --features postgres-tests --test doubled".to_owned(),
            variable: "DOUBLED",
            length: choice.doubled,
            of: "commands",
            seeds: "none: threads".to_owned(),
        },
        Part {
            name: "a hot order, and requests that come twice at once",
            cargo: "test --package shop --test faults -- --nocapture".to_owned(),
            variable: "DECISIONS",
            length: choice.decisions,
            of: "decisions",
            seeds: "none: threads".to_owned(),
        },
        Part {
            name: "seeded shops against a plain model",
            cargo: "test --package repair --test simulation".to_owned(),
            variable: "BUTTONUP_SIMULATION_RUNS",
            length: choice.simulations,
            of: "shops",
            seeds: format!("0 to {}", choice.simulations.saturating_sub(1)),
        },
        Part {
            name: "phones and a tablet out of reach, with a page's own queue, against a plain model",
            cargo: "test --package web --test door many_devices".to_owned(),
            variable: "DEVICE_RUNS",
            length: choice.devices,
            of: "days of three devices",
            seeds: format!(
                "{} to {}",
                choice.seed,
                choice.seed + u64::from(choice.devices.saturating_sub(1))
            ),
        },
        Part {
            name: "what people and programs write, read",
            cargo: "test --package measure --package vin --package record --package fastener"
                .to_owned(),
            variable: "PROPTEST_CASES",
            length: choice.cases,
            of: "cases a property",
            seeds: "a new one each run; a failure names its own".to_owned(),
        },
    ]
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn without_a_database_the_rest_of_a_part_runs() {
        let part = |cargo: &str| Part {
            name: "",
            cargo: cargo.to_owned(),
            variable: "",
            length: 1,
            of: "",
            seeds: String::new(),
        };
        let mut mixed = part("test --package buttonup --features postgres-tests --test copies");
        assert!(mixed.without_postgres());
        assert_eq!(mixed.cargo, "test --package buttonup --test copies");
        let mut all =
            part("test --package buttonup --features postgres-tests --test database frozen");
        assert!(!all.without_postgres());
    }
}

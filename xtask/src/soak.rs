//! `cargo xtask soak`: the tests that gain by running long, run long.

use anyhow::{Context, Result};
use clap::Args;
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
    /// How many seeded shops are simulated.
    #[arg(long, default_value_t = 50_000)]
    simulations: u32,
    /// How many cases each property of the parsers is tried with.
    #[arg(long, default_value_t = 100_000)]
    cases: u32,
}

/// One thing that is run long, and the variable that says how long.
struct Part {
    name: &'static str,
    cargo: &'static str,
    variable: &'static str,
    length: u32,
}

/// Runs every part, goes on after one that failed, and says which did.
///
/// # Errors
/// If cargo could not be run.
pub fn soak(choice: &Choice) -> Result<ExitCode> {
    let mut failed = Vec::new();
    for part in parts(choice) {
        println!(
            "== {}: {}={} cargo {}",
            part.name, part.variable, part.length, part.cargo
        );
        let start = Instant::now();
        let status = Command::new("cargo")
            .args(part.cargo.split(' '))
            .env(part.variable, part.length.to_string())
            .status()
            .context("cannot run cargo")?;
        println!("== {}: {:.0?}", part.name, start.elapsed());
        if !status.success() {
            failed.push(part.name);
        }
    }
    if failed.is_empty() {
        println!("nothing failed");
        return Ok(ExitCode::SUCCESS);
    }
    println!("failed: {}", failed.join(", "));
    Ok(ExitCode::FAILURE)
}

fn parts(choice: &Choice) -> [Part; 5] {
    [
        Part {
            name: "the store killed while it appends",
            cargo: "test --package store --test crash killed",
            variable: "ROUNDS",
            length: choice.rounds,
        },
        Part {
            name: "the server killed while people work",
            cargo: "test --package buttonup --test crash",
            variable: "ROUNDS",
            length: choice.rounds,
        },
        Part {
            name: "bits flipped in a larger log",
            cargo: "test --package store --test damage larger",
            variable: "FLIPS",
            length: choice.flips,
        },
        Part {
            name: "seeded shops against a plain model",
            cargo: "test --package repair --test simulation",
            variable: "BUTTONUP_SIMULATION_RUNS",
            length: choice.simulations,
        },
        Part {
            name: "what people and programs write, read",
            cargo: "test --package measure --package vin --package record --package fastener",
            variable: "PROPTEST_CASES",
            length: choice.cases,
        },
    ]
}

//! The project's own chores, run as `cargo xtask`.

#![allow(clippy::print_stdout, clippy::print_stderr)] // Its whole purpose is to tell a developer.

mod bench;
mod counts;
mod e_invoice;
mod floor;
mod lessons_bench;
mod odds_bench;
mod package;
mod pictures;
mod plans;
mod python;
mod sequence;
mod setup;
mod soak;
mod steps;
mod trade_bench;
mod tray;

use clap::{Parser, Subcommand};
use std::process::ExitCode;

/// The project's own chores.
#[derive(Parser)]
struct Arguments {
    #[command(subcommand)]
    chore: Chore,
}

#[derive(Subcommand)]
enum Chore {
    /// Set up what the tests need, then run every check; stop at the first that fails.
    Test(steps::Choice),
    /// Run the tests that gain by running long: kills under load, simulations, parsers.
    Soak(soak::Choice),
    /// Take the figures of docs/bench.md, and write them there.
    Bench(bench::Choice),
    /// Measure many who look and many who write at once; print it, or write it there as well.
    Load(bench::LoadChoice),
    /// Take only the figures of plans on random maps, and print them.
    PlanBench(plans::Choice),
    /// Learn from simulated jobs on vehicles whose order is known: how well, and how fast.
    LessonsBench(lessons_bench::Choice),
    /// Quote an order of eighty stages beside the same model drawn with NumPy; print both.
    OddsBench(odds_bench::Choice),
    /// Hold papers with an e-invoice in them against the schema and the rules of Factur-X.
    EInvoice(e_invoice::Choice),
    /// Hold the planning of days against published job shops and a general solver; print it.
    FloorBench(floor::Choice),
    /// Hold the reading of lines against the rows of the trade: figures, confusion, time.
    TradeBench(trade_bench::Choice),
    /// Make a Debian package and a tar of the release program.
    Package(package::Choice),
    /// Take pictures of the pages: phone, desk and a wide screen, light and dark, each language.
    Pictures(pictures::Choice),
    /// Hold the search behind plans against a published sequential ordering instance.
    SequenceBench(sequence::Choice),
    /// Read pictures of loose fasteners whose truth is known, and print how well that went.
    TrayBench(tray::Choice),
    /// Fit the weights that tell what each cell of such a picture shows.
    TrayTrain(tray::train::Choice),
}

fn main() -> ExitCode {
    let done = match Arguments::parse().chore {
        Chore::Test(choice) => steps::test(&choice),
        Chore::Soak(choice) => soak::soak(&choice),
        Chore::Bench(choice) => bench::bench(&choice),
        Chore::Load(choice) => bench::load(&choice),
        Chore::PlanBench(choice) => plans::bench(&choice),
        Chore::LessonsBench(choice) => lessons_bench::bench(&choice),
        Chore::OddsBench(choice) => odds_bench::bench(&choice),
        Chore::EInvoice(choice) => e_invoice::check(&choice),
        Chore::FloorBench(choice) => floor::bench(&choice),
        Chore::TradeBench(choice) => trade_bench::bench(&choice),
        Chore::Package(choice) => package::package(&choice),
        Chore::Pictures(choice) => pictures::take(&choice),
        Chore::SequenceBench(choice) => sequence::bench(&choice),
        Chore::TrayBench(choice) => tray::bench(&choice),
        Chore::TrayTrain(choice) => tray::train::train(&choice),
    };
    match done {
        Ok(code) => code,
        Err(error) => {
            eprintln!("{error:#}");
            ExitCode::FAILURE
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use clap::CommandFactory;

    #[test]
    fn the_command_line_is_sound() {
        Arguments::command().debug_assert();
    }
}

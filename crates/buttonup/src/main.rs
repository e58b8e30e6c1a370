//! The shop's program: command line and server.
//!
//! Every command prints what a person reads, or with `--json` what a program reads.
//! Exit 0: done. Exit 1: refused, or not valid. Exit 2: wrong usage, or input that
//! cannot be read; then the words on standard error say where, what, and how to mend it.

#![expect(
    clippy::print_stdout,
    clippy::print_stderr,
    reason = "this is the command line"
)]

mod answer;
mod belt_command;
mod calc_command;
mod coolant_command;
mod day_command;
mod demo;
mod drive_command;
mod fastener_command;
mod fluid_command;
mod keep;
mod network;
mod odds_command;
mod paper_command;
mod plan_command;
mod sent_map_command;
mod serve;
mod trade_command;
mod tray_command;
mod vin_command;

use answer::{Answer, Wrong};
use clap::{Parser, Subcommand};
use std::io::Write;
use std::process::ExitCode;
use tracing_subscriber::filter::{LevelFilter, Targets};
use tracing_subscriber::layer::{Layer, SubscriberExt};
use tracing_subscriber::util::SubscriberInitExt;

/// Keeps the account of what is open, owed and agreed on every vehicle in a repair shop.
#[derive(Debug, Parser)]
#[command(name = "buttonup", version)]
struct Line {
    /// Print JSON instead of text.
    #[arg(long, global = true)]
    json: bool,
    #[command(subcommand)]
    command: Command,
}

#[derive(Debug, Subcommand)]
enum Command {
    /// Make an invented shop in a fresh folder and serve it on this machine.
    Demo(serve::Demo),
    /// Serve a shop on this machine; an empty folder is set up in the browser.
    Serve(serve::Serve),
    /// Look at a vehicle identification number.
    Vin(vin_command::Vin),
    /// Plan the cheapest way in and back, from a map.
    Plan(plan_command::Plan),
    /// Maps: what is fitted to what on one kind of vehicle.
    #[command(subcommand)]
    Map(plan_command::MapCommand),
    #[command(flatten)]
    Trade(trade_command::Trade),
    #[command(flatten)]
    Fastener(fastener_command::Fastener),
    /// A belt: path, length, wraps, tensioner, slip, and what is wrong with how it runs.
    Belt(belt_command::Belt),
    /// Coolant: freezing, boiling, mixing, filling, leak test.
    #[command(subcommand)]
    Coolant(coolant_command::Coolant),
    /// The spread of hours and price of an order: what covers it how often, and what drives it.
    Odds(odds_command::Odds),
    /// Who works where and when: stalls, people, promises, whom to ring.
    Day(day_command::Day),
    /// A recorded drive: what it proves, check by check.
    Drive(drive_command::Drive),
    /// A fluid besides coolant, or the battery: steps, what is owed, limits, levels, amounts.
    Fluid(Box<fluid_command::Fluid>),
    /// A paper of an order, as PDF: estimate, added-work, invoice, credit-note, receipt, apart, work-sheet, labels, how-to.
    Paper(paper_command::Paper),
    /// Any calculator by its fields, as its page asks them.
    Calc(calc_command::Calc),
    #[command(flatten)]
    Tray(tray_command::Command),
    #[command(flatten)]
    Keep(keep::Command),
}

/// What goes on is told on the error channel: warnings, or what `BUTTONUP_LOG` asks for, such as
/// `info` or `web=debug,info`.
fn tell_what_goes_on() {
    let asked = std::env::var("BUTTONUP_LOG").ok();
    let wanted = asked.and_then(|asked| asked.parse::<Targets>().ok());
    let wanted = wanted.unwrap_or_else(|| Targets::new().with_default(LevelFilter::WARN));
    let lines = tracing_subscriber::fmt::layer().with_writer(std::io::stderr);
    tracing_subscriber::registry()
        .with(lines.with_filter(wanted))
        .init();
}

fn main() -> ExitCode {
    tell_what_goes_on();
    let line = match Line::try_parse() {
        Ok(line) => line,
        Err(error) => return not_understood(&error),
    };
    let json = line.json;
    let answer = match line.command {
        Command::Demo(place) => serve::demo(&place),
        Command::Serve(place) => serve::serve(&place),
        Command::Vin(vin) => Ok(vin_command::run(&vin)),
        Command::Plan(asked) => plan_command::plan(&asked),
        Command::Map(asked) => plan_command::map(&asked),
        Command::Trade(asked) => trade_command::run(&asked),
        Command::Fastener(asked) => fastener_command::run(&asked),
        Command::Belt(asked) => belt_command::run(&asked),
        Command::Coolant(asked) => coolant_command::run(&asked),
        Command::Odds(asked) => odds_command::run(&asked),
        Command::Day(asked) => day_command::run(&asked),
        Command::Drive(asked) => drive_command::run(&asked),
        Command::Fluid(asked) => fluid_command::run(&asked),
        Command::Paper(asked) => paper_command::run(&asked),
        Command::Calc(asked) => calc_command::run(&asked),
        Command::Tray(asked) => tray_command::run(&asked),
        Command::Keep(command) => keep::run(&command),
    };
    match answer {
        Ok(answer) => print(&answer, json),
        Err(wrong) => complain(&wrong, json),
    }
}

/// Help and version are answers; everything else is wrong usage, said in the form that was
/// asked for.
fn not_understood(error: &clap::Error) -> ExitCode {
    let wants_json = std::env::args_os().skip(1).any(|word| word == "--json");
    if !error.use_stderr() || !wants_json {
        // Whoever read it may have seen enough and gone: that is no fault.
        let _ = error.print();
        return ExitCode::from(u8::try_from(error.exit_code()).unwrap_or(2));
    }
    let told = error.render().to_string();
    let what = told.split("\n\nUsage").next().unwrap_or_default();
    let what = what.strip_prefix("error: ").unwrap_or(what);
    let what = what.split_whitespace().collect::<Vec<_>>().join(" ");
    complain(
        &Wrong::input("the command line", what, "see `buttonup help`"),
        true,
    )
}

fn print(answer: &Answer, json: bool) -> ExitCode {
    let text = if json && !answer.json.is_null() {
        answer.json.to_string()
    } else {
        answer.text.clone()
    };
    if !text.is_empty() {
        // Whoever read it may have seen enough and gone: that is no fault.
        let _ = writeln!(std::io::stdout(), "{text}");
    }
    if answer.good {
        ExitCode::SUCCESS
    } else {
        ExitCode::from(1)
    }
}

fn complain(wrong: &Wrong, json: bool) -> ExitCode {
    if json {
        eprintln!("{}", wrong.json());
    } else {
        eprintln!("{wrong}");
    }
    ExitCode::from(wrong.code)
}

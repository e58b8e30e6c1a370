//! The steps of `cargo xtask test`.

use crate::counts::Counts;
use crate::setup::{self, Need, Outcome};
use anyhow::{Context, Result};
use cargo_metadata::MetadataCommand;
use clap::{Args, ValueEnum};
use std::io::{BufRead, BufReader, Write};
use std::process::{Command, ExitCode, Stdio};

/// Something outside the project is missing: not a failed test.
const MISSING: u8 = 2;

/// Which steps to run.
#[derive(Args)]
pub struct Choice {
    /// Leave out the tests in a browser, and what they need.
    #[arg(long)]
    no_browser: bool,
    /// Run this step alone, after setting up what it needs.
    #[arg(long, value_name = "STEP", conflicts_with = "no_browser")]
    only: Option<Step>,
    /// Where chance starts in the property tests: the same seed tries the same cases.
    #[arg(long, value_name = "NUMBER", default_value_t = 1)]
    seed: u64,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq, ValueEnum)]
enum Step {
    /// Install what the tests need.
    Setup,
    /// Is the code formatted?
    Format,
    /// Has the compiler or clippy anything to say?
    Lint,
    /// Unit, property, store, command line and documentation tests.
    Test,
    /// The pages in a real browser.
    Browser,
    /// The log on PostgreSQL.
    Postgres,
    /// Does the documentation build?
    Doc,
}

impl Step {
    fn needs(self) -> &'static [Need] {
        match self {
            Step::Setup => &[Need::Browser, Need::Postgres],
            Step::Browser => &[Need::Browser],
            Step::Postgres => &[Need::Postgres],
            Step::Format | Step::Lint | Step::Test | Step::Doc => &[],
        }
    }

    /// What is run, as words for cargo.
    fn cargo(self) -> &'static str {
        match self {
            Step::Setup => "",
            Step::Format => "fmt --all --check",
            Step::Lint => "clippy --workspace --all-targets --all-features -- -D warnings",
            Step::Test => "test --workspace",
            Step::Browser => {
                "test -p buttonup -p chromium --features buttonup/browser-tests,chromium/browser-tests --test browser"
            }
            Step::Postgres => {
                "test -p store -p buttonup --features store/postgres-tests,buttonup/postgres-tests --test postgres --test database"
            }
            Step::Doc => "doc --workspace --no-deps",
        }
    }

    /// The step's name on the command line.
    fn name(self) -> String {
        self.to_possible_value()
            .map(|value| value.get_name().to_owned())
            .expect("no step is hidden from the command line")
    }
}

/// Sets up what is needed and runs the chosen steps, stopping at the first that fails;
/// the last line is always `N passed, N failed`.
///
/// # Errors
/// If something could not be run at all.
pub fn test(choice: &Choice) -> Result<ExitCode> {
    let mut total = Counts::default();
    let code = run(choice, &mut total);
    if let Err(error) = &code {
        eprintln!("{error:#}");
    }
    println!("{total}");
    Ok(code.unwrap_or(ExitCode::FAILURE))
}

fn run(choice: &Choice, total: &mut Counts) -> Result<ExitCode> {
    let steps = chosen(choice, has_postgres_tests()?);
    let needs: Vec<Need> = steps
        .iter()
        .flat_map(|step| step.needs())
        .copied()
        .collect();
    if let Outcome::Missing(missing) = setup::prepare(&needs)? {
        eprintln!(
            "missing, and not to be installed from here: {}\n\
             Install them as your system does (the names are Debian's), then run `cargo xtask test` again;\n\
             `cargo xtask test --no-browser` needs no browser.",
            missing.join(", ")
        );
        return Ok(ExitCode::from(MISSING));
    }
    for step in steps {
        if step == Step::Setup {
            continue;
        }
        println!("== {}: cargo {}", step.name(), step.cargo());
        let (passed, counts) = cargo(step, choice.seed)?;
        *total += counts;
        if !passed {
            // What fails without a test, a lint or a page of documentation, counts too.
            total.failed = total.failed.max(1);
            eprintln!(
                "\nThe step \"{0}\" failed. To run it alone: cargo xtask test --only {0}",
                step.name()
            );
            return Ok(ExitCode::FAILURE);
        }
    }
    Ok(ExitCode::SUCCESS)
}

fn chosen(choice: &Choice, has_postgres_tests: bool) -> Vec<Step> {
    match choice.only {
        Some(step) => vec![step],
        None => Step::value_variants()
            .iter()
            .copied()
            .filter(|step| match step {
                // Each step brings its own needs; alone, setup stands for all of them.
                Step::Setup => false,
                Step::Browser => !choice.no_browser,
                Step::Postgres => has_postgres_tests,
                Step::Format | Step::Lint | Step::Test | Step::Doc => true,
            })
            .collect(),
    }
}

/// Whether the log can be tested on PostgreSQL yet.
fn has_postgres_tests() -> Result<bool> {
    let metadata = MetadataCommand::new()
        .no_deps()
        .exec()
        .context("cannot read the workspace")?;
    Ok(metadata
        .packages
        .iter()
        .any(|package| package.name == "store" && package.features.contains_key("postgres-tests")))
}

/// Runs a step's cargo command, passing its output through and counting its tests.
///
/// A change is judged by the same cases wherever it is tested, so that what passes here does
/// not fail elsewhere by chance; another seed looks further.
fn cargo(step: Step, seed: u64) -> Result<(bool, Counts)> {
    let mut command = Command::new("cargo");
    command
        .args(step.cargo().split(' '))
        .env("PROPTEST_RNG_SEED", seed.to_string())
        .stdin(Stdio::null())
        .stdout(Stdio::piped());
    match step {
        Step::Doc => command.env("RUSTDOCFLAGS", "-D warnings"),
        // Of the tests that kill programs; `cargo xtask soak` goes on for longer.
        Step::Test if std::env::var_os("ROUNDS").is_none() => command.env("ROUNDS", "200"),
        _ => &mut command,
    };
    let mut child = command.spawn().context("cannot run cargo")?;
    let output = child.stdout.take().expect("standard output is piped above");
    let mut counts = Counts::default();
    let mut shown = std::io::stdout().lock();
    for line in BufReader::new(output).split(b'\n') {
        let line = line.context("cannot read what cargo prints")?;
        shown.write_all(&line)?;
        shown.write_all(b"\n")?;
        if let Some(more) = Counts::in_line(&String::from_utf8_lossy(&line)) {
            counts += more;
        }
    }
    Ok((child.wait().context("cargo did not end")?.success(), counts))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn names(steps: &[Step]) -> Vec<String> {
        steps.iter().map(|step| step.name()).collect()
    }

    #[test]
    fn all_steps_run_in_order_unless_told_otherwise() {
        let all = Choice {
            no_browser: false,
            only: None,
            seed: 1,
        };
        assert_eq!(
            names(&chosen(&all, true)),
            ["format", "lint", "test", "browser", "postgres", "doc"]
        );
        let few = Choice {
            no_browser: true,
            only: None,
            seed: 1,
        };
        assert_eq!(
            names(&chosen(&few, false)),
            ["format", "lint", "test", "doc"]
        );
    }

    #[test]
    fn one_step_runs_alone() {
        let one = Choice {
            no_browser: false,
            only: Some(Step::Browser),
            seed: 1,
        };
        assert_eq!(names(&chosen(&one, true)), ["browser"]);
    }
}

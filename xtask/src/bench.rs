//! `cargo xtask bench`: figures of one run, written into `docs/bench.md` by the command
//! itself, so that no figure there is older than its neighbours.

mod crowd;
mod devices;
mod load;
mod program;
mod under_load;

pub use under_load::{Choice as LoadChoice, load};

use self::load::{Connection, Load};
use anyhow::{Context, Result, ensure};
use clap::Args;
use program::{Figures, Program};
use serde_json::{Value, json};
use std::fmt::Write;
use std::path::Path;
use std::process::{Command, ExitCode};
use std::time::{Duration, Instant};

/// How much to measure.
#[derive(Args)]
pub struct Choice {
    /// Also time a build of everything from nothing; takes some minutes.
    #[arg(long)]
    fresh_build: bool,
    /// How many events the long log has.
    #[arg(long, value_name = "EVENTS", default_value_t = 1_000_000)]
    events: u64,
}

pub const DOCUMENT: &str = "docs/bench.md";
const MARKS: [&str; 2] = [
    "<!-- figures: written by `cargo xtask bench` -->",
    "<!-- /figures -->",
];
/// The order of the invented shop with the most events.
const ORDER: u64 = 1002;

/// Measures, and writes the table.
///
/// # Errors
/// If something could not be run, or the document could not be written.
pub fn bench(choice: &Choice) -> Result<ExitCode> {
    let machine = machine();
    let scratch = tempfile::tempdir().context("no temporary folder")?;
    let mut table = Table::default();
    program::build()?;
    let shop = scratch.path().join("shop");
    serving(&shop, &mut table)?;
    appends(&mut table)?;
    folds(&shop, &mut table)?;
    for events in [10_000, choice.events] {
        long_log(
            &shop,
            &scratch.path().join(events.to_string()),
            events,
            &mut table,
        )?;
    }
    if choice.fresh_build {
        fresh_build(&scratch.path().join("target"), &mut table)?;
    }
    let text = format!("{machine}\n{}", table.text);
    write_between(Path::new(DOCUMENT), MARKS, &text)?;
    println!("{text}\nwritten into {DOCUMENT}");
    Ok(ExitCode::SUCCESS)
}

/// Rows of the document's table.
pub struct Table {
    pub text: String,
}

impl Default for Table {
    fn default() -> Self {
        Self {
            text: "| what | measured | aim |\n| --- | --- | --- |\n".to_owned(),
        }
    }
}

impl Table {
    pub fn row(&mut self, what: &str, measured: &str, aim: &str) {
        eprintln!("{what}: {measured}");
        let _ = writeln!(self.text, "| {what} | {measured} | {aim} |");
    }
}

fn appends(table: &mut Table) -> Result<()> {
    let figures = program::record(&["appends"])?;
    let figure = |name| number(&figures[0], name);
    table.row(
        "durable appends, one event a commit, to bare inserts",
        &format!(
            "{:.2} ({:.0} a second)",
            figure("alone_to_bare")?,
            figure("alone_a_second")?
        ),
        "0.9",
    );
    table.row(
        "durable appends, 50 a commit, to bare inserts 50 a commit",
        &format!(
            "{:.2} ({:.0} a second)",
            figure("grouped_to_bare")?,
            figure("grouped_a_second")?
        ),
        "-",
    );
    table.row(
        "50 a commit to one a commit",
        &format!("{:.1} times", figure("grouped_to_alone")?),
        "10 times",
    );
    Ok(())
}

fn folds(shop: &Path, table: &mut Table) -> Result<()> {
    let figures = program::record(&["folds", text(shop)?])?;
    for (figures, aim) in figures.iter().zip(["-", "1 ms", "10 times that"]) {
        table.row(
            &format!("fold of {} events of one order", figures["events"]),
            &format!(
                "{:.2} ms ({:.2} ms with reading them from their stored form)",
                number(figures, "read_millis")?,
                number(figures, "stored_millis")?
            ),
            aim,
        );
    }
    Ok(())
}

/// What the invented shop's server does: memory, pages, live updates.
fn serving(shop: &Path, table: &mut Table) -> Result<()> {
    let server = Program::start(&["demo", "--data", text(shop)?])?;
    server.wait_for("/")?;
    table.row(
        "memory, idle, the invented shop",
        &mebibytes(server.memory()),
        "40 MiB",
    );
    let seconds = Duration::from_secs(4);
    let page = Load::put_on(&server.address, &format!("/o/{ORDER}"), seconds)?;
    let fixed = Load::put_on(&server.address, "/assets/app.css", seconds)?;
    table.row(
        "page of an open order (78 events), four connections",
        &format!(
            "{:.0} a second, 99 of 100 within {:.1} ms",
            page.a_second(),
            page.slowest_of(99)
        ),
        "-",
    );
    table.row(
        "that to a static file of the same server",
        &format!(
            "{:.3} of its {:.0} a second; 99 of 100 of the file within {:.1} ms",
            page.a_second() / fixed.a_second(),
            fixed.a_second(),
            fixed.slowest_of(99)
        ),
        "-",
    );
    table.row(
        "page of a plan on the benchmark's map, each asked for once",
        &format!(
            "slowest of {}: {:.0} ms",
            TARGETS.len(),
            plans(&server)?.slowest_of(100)
        ),
        "200 ms",
    );
    let heard = live(&server)?;
    table.row(
        "from a tap on one connection to the news on another",
        &format!(
            "half within {:.1} ms, 95 of 100 within {:.1} ms",
            heard.slowest_of(50),
            heard.slowest_of(95)
        ),
        "-",
    );
    Ok(())
}

/// What the plans that are timed get at.
const TARGETS: [&str; 6] = [
    "housing+gasket",
    "housing+gasket&for=housing+o-rings&for=thermostat",
    "housing+gasket&without=shroud.off",
    "radiator",
    "pump",
    "bracket&taken=wheel+well",
];

/// Pages of plans from a whole vehicle, none of which was searched for before.
fn plans(server: &Program) -> Result<Load> {
    let mut asking = Connection::open(&server.address)?;
    let mut times = Vec::new();
    for target in TARGETS {
        let start = Instant::now();
        let page = asking.get(&format!(
            "/o/1006/plan?map=korvane-drayman-engine-front&for={target}"
        ))?;
        times.push(start.elapsed());
        if !page.contains("Proven") {
            anyhow::bail!("no plan to {target}: {page}");
        }
    }
    Ok(Load::of(times))
}

/// Sends facts on one connection and waits for each on another.
fn live(server: &Program) -> Result<Load> {
    const TAPS: u64 = 200;
    let mut asking = Connection::open(&server.address)?;
    let order = asking.get(&format!("/api/orders/{ORDER}"))?;
    let order: Value = serde_json::from_str(&order).context("no order")?;
    let order = order["order"].as_str().context("an order without a name")?;
    let mut news = Connection::open(&server.address)?;
    news.listen("/api/live")?;
    let mut times = Vec::new();
    for tap in 1..=TAPS {
        let command = json!({
            "command_id": format!("00000000-0000-7000-8000-{tap:012}"),
            "device": "bench", "device_seq": tap,
            "happened_at": "2026-03-02T08:15:00Z", "who": "nuria",
            "stream": format!("order:{order}"),
            "fact": { "odometer": { "reading": "148200 km", "at": "in" } },
        });
        let start = Instant::now();
        let answer = asking.post("/api/commands", &command.to_string())?;
        let answer: Value = serde_json::from_str(&answer).context("no answer")?;
        let position = answer["position"]
            .as_u64()
            .with_context(|| format!("the fact was not taken: {answer}"))?;
        news.hear(position)?;
        times.push(start.elapsed());
    }
    Ok(Load::of(times))
}

/// What is looked for in the long log. But for the month and the name of which there are most,
/// only orders of the invented shop itself are found, the newest few of all: so every card is
/// looked at.
const SOUGHT: [(&str, &str); 8] = [
    ("a plate", "kd2302"),
    ("a name", "tilde+aumann"),
    ("the name that most orders have", "joris+maan"),
    ("a number that is not there", "99999"),
    ("words of a complaint", "battery+lamp+glimmers"),
    ("a part", "alternator,+rebuilt"),
    ("a day", "2+March+2026"),
    ("a month", "2025-03"),
];

fn long_log(shop: &Path, to: &Path, events: u64, table: &mut Table) -> Result<()> {
    let start = Instant::now();
    program::record(&["log", text(shop)?, text(to)?, &events.to_string()])?;
    eprintln!("{events} events written in {:.0?}", start.elapsed());
    let name = grouped(events);
    // Once without an index, which also warms the disk's cache: the program is started
    // often, the machine seldom.
    let start = Instant::now();
    Program::start(&["serve", "--data", text(to)?])?.wait_for("/")?;
    table.row(
        &format!("the same where the index has to be made first, {name} events"),
        &format!("{:.1?}", start.elapsed()),
        "-",
    );
    let start = Instant::now();
    let server = Program::start(&["serve", "--data", text(to)?])?;
    let listening = start.elapsed();
    server.wait_for("/")?;
    let aim = if events == 1_000_000 { "100 ms" } else { "-" };
    table.row(
        &format!("start to first page, {name} events"),
        &format!("{:.0?} ({listening:.0?} until it listens)", start.elapsed()),
        aim,
    );
    let again = Instant::now();
    server.wait_for("/")?;
    table.row(
        &format!("the floor again, {name} events"),
        &format!("{:.1?}", again.elapsed()),
        "-",
    );
    for (what, words) in SOUGHT {
        let again = Instant::now();
        server.wait_for(&format!("/find?q={words}"))?;
        table.row(
            &format!("finding {what}, {name} events"),
            &format!("{:.1?}", again.elapsed()),
            if events == 1_000_000 { "50 ms" } else { "-" },
        );
    }
    table.row(
        &format!("memory, {name} events"),
        &mebibytes(server.memory()),
        "40 MiB",
    );
    Ok(())
}

fn fresh_build(target: &Path, table: &mut Table) -> Result<()> {
    let start = Instant::now();
    let status = Command::new("cargo")
        .args(["build", "--release", "--package", "buttonup"])
        .env("CARGO_TARGET_DIR", target)
        .status()
        .context("cannot run cargo")?;
    ensure!(status.success(), "the program does not build");
    table.row(
        "build from nothing, release",
        &format!("{:.0} s", start.elapsed().as_secs_f64()),
        "360 s",
    );
    Ok(())
}

/// What machine it is, and what it was doing when asked.
pub fn machine() -> String {
    let load = read_or("/proc/loadavg", "");
    let cpu = read_or("/proc/cpuinfo", "");
    let model = cpu
        .lines()
        .find_map(|line| line.strip_prefix("model name")?.split_once(": "))
        .map_or("unknown processor", |(_, model)| model);
    let memory = read_or("/proc/meminfo", "");
    let kibibytes = memory.lines().find_map(|line| {
        line.strip_prefix("MemTotal:")?
            .trim()
            .split(' ')
            .next()?
            .parse()
            .ok()
    });
    let gibibytes = kibibytes.map_or(0, |kibibytes: u64| kibibytes.div_ceil(1024 * 1024));
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    let rustc = Command::new("rustc").arg("--version").output();
    let rustc = rustc.map_or_else(
        |_| "rustc".to_owned(),
        |output| String::from_utf8_lossy(&output.stdout).trim().to_owned(),
    );
    let system = format!("{} {}", std::env::consts::OS, std::env::consts::ARCH);
    format!(
        "{model}, {cores} cores, {gibibytes} GiB; {system}; {rustc}. Load before the run (1, 5 and 15\nminutes): {}.\n",
        load.split(' ').take(3).collect::<Vec<_>>().join(", ")
    )
}

/// Writes a text between two marks of a document.
pub fn write_between(document: &Path, marks: [&str; 2], text: &str) -> Result<()> {
    let before = std::fs::read_to_string(document)
        .with_context(|| format!("cannot read {}", document.display()))?;
    let after = replaced(&before, marks, text).with_context(|| {
        format!(
            "{} has no line {:?} with {:?} behind it",
            document.display(),
            marks[0],
            marks[1]
        )
    })?;
    std::fs::write(document, after).with_context(|| format!("cannot write {}", document.display()))
}

fn replaced(document: &str, [start, end]: [&str; 2], text: &str) -> Option<String> {
    let (head, rest) = document.split_once(start)?;
    let (_, tail) = rest.split_once(end)?;
    Some(format!("{head}{start}\n{text}{end}{tail}"))
}

fn number(figures: &Figures, name: &str) -> Result<f64> {
    figures[name]
        .as_f64()
        .with_context(|| format!("no figure {name:?} in {figures}"))
}

fn mebibytes(bytes: Option<u64>) -> String {
    bytes.map_or_else(
        || "not known on this system".to_owned(),
        |bytes| format!("{} MiB", bytes / 1024 / 1024),
    )
}

fn grouped(number: u64) -> String {
    let digits = number.to_string();
    let mut out = String::new();
    for (index, digit) in digits.chars().enumerate() {
        if index > 0 && (digits.len() - index).is_multiple_of(3) {
            out.push(',');
        }
        out.push(digit);
    }
    out
}

fn read_or(path: &str, otherwise: &str) -> String {
    std::fs::read_to_string(path).unwrap_or_else(|_| otherwise.to_owned())
}

fn text(path: &Path) -> Result<&str> {
    path.to_str().context("a path that is no text")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn only_what_stands_between_the_marks_is_replaced() {
        let [start, end] = MARKS;
        let document = format!("# Figures\n{start}\nold\n{end}\nafter\n");
        let after = replaced(&document, MARKS, "new\n").unwrap();
        assert_eq!(after, format!("# Figures\n{start}\nnew\n{end}\nafter\n"));
        assert_eq!(replaced("# Figures\n", MARKS, "new\n"), None);
    }

    #[test]
    fn digits_stand_in_threes() {
        assert_eq!(grouped(999), "999");
        assert_eq!(grouped(1_000_000), "1,000,000");
    }
}

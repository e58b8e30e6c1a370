//! `cargo xtask load`: many who look and many who write, on a small shop and on orders larger
//! than any. With another build of the program beside it, both are measured in turn in one run.

use super::crowd::{Crowd, Writer};
use super::devices::{Tapped, many_devices};
use super::load::{Connection, Load};
use super::program::{self, Program};
use super::{DOCUMENT, machine, mebibytes, text, write_between};
use anyhow::{Context, Result};
use clap::Args;
use serde_json::Value;
use std::fmt::Write;
use std::path::{Path, PathBuf};
use std::process::ExitCode;
use std::time::{Duration, Instant};

/// How much to measure.
#[derive(Args)]
pub struct Choice {
    /// Another build of the program, from before a change: measured in the same run.
    #[arg(long, value_name = "PROGRAM")]
    before: Option<PathBuf>,
    /// A build of the program to measure, in place of building it.
    #[arg(long, value_name = "PROGRAM")]
    program: Option<PathBuf>,
    /// Only the small shop: no large orders are made.
    #[arg(long)]
    small: bool,
    /// Only a hundred signed-in devices that tap.
    #[arg(long, conflicts_with = "small")]
    devices: bool,
    /// For how many seconds each crowd goes on.
    #[arg(long, value_name = "SECONDS", default_value_t = 5)]
    seconds: u64,
    /// How many facts the largest order has.
    #[arg(long, value_name = "FACTS", default_value_t = 50_000)]
    facts: u64,
    /// Write the table into the document; otherwise it is only printed.
    #[arg(long)]
    write: bool,
}

const MARKS: [&str; 2] = [
    "<!-- load: written by `cargo xtask load --write` -->",
    "<!-- /load -->",
];
/// The order of the invented shop with the most events, and the others that stand open.
const ORDER: u64 = 1002;
const OTHERS: [u64; 3] = [1003, 1004, 1006];
/// The orders of the large shop, by how many facts they have.
const THOUSAND: u64 = 1001;
const THREE_THOUSAND: u64 = 1002;
const LARGEST: u64 = 1003;

/// What one build came to: the row, its figure, and the figure as a number for the ratio.
type Rows = Vec<(String, String, f64)>;

/// Measures, and prints or writes the table.
///
/// # Errors
/// If something could not be run, or the document could not be written.
pub fn load(choice: &Choice) -> Result<ExitCode> {
    let machine = machine();
    let now = match &choice.program {
        Some(program) => program.clone(),
        None => {
            program::build()?;
            program::path()?
        }
    };
    let scratch = tempfile::tempdir().context("no temporary folder")?;
    let large = scratch.path().join("large");
    if !choice.small && !choice.devices {
        let facts = choice.facts.to_string();
        eprintln!("making orders of 1,000, 3,000 and {facts} facts");
        program::record(&["large", text(&large)?, "1000", "3000", &facts])?;
    }
    let before = match &choice.before {
        Some(before) => Some(measured(choice, before, &large, scratch.path())?),
        None => None,
    };
    let after = measured(choice, &now, &large, scratch.path())?;
    let table = table(&after, before.as_ref());
    let text = format!("{machine}\n{table}");
    println!("{text}");
    if choice.write {
        write_between(Path::new(DOCUMENT), MARKS, &text)?;
        println!("written into {DOCUMENT}");
    }
    Ok(ExitCode::SUCCESS)
}

fn aim(row: &str) -> &'static str {
    match row {
        row if row.starts_with("100 signed-in devices") => "none lost, 99 of 100 within 100 ms",
        row if row.starts_with("memory as they") => "as much at the end",
        row if row.starts_with("100 readers") => "2000 a second, 99 of 100 within 150 ms",
        row if row.starts_with("70 readers and 30 writers over") => {
            "1500 and 1000 a second, 99 of 100 within 150 ms"
        }
        row if row.starts_with("70 readers and 30 writers on one") => "1000 a second",
        row if row.starts_with("slowest page") => "100 ms",
        row if row.contains("as many times") => "10 times",
        row if row.starts_with("memory, at most") => "150 MiB",
        _ => "-",
    }
}

fn table(after: &Rows, before: Option<&Rows>) -> String {
    let mut out = String::new();
    let Some(before) = before else {
        let _ = writeln!(out, "| what | measured | aim |\n| --- | --- | --- |");
        for (row, figure, _) in after {
            let _ = writeln!(out, "| {row} | {figure} | {} |", aim(row));
        }
        return out;
    };
    let _ = writeln!(
        out,
        "| what | before | now | now to before | aim |\n| --- | --- | --- | --- | --- |"
    );
    for ((row, now, number), (_, then, was)) in after.iter().zip(before) {
        let ratio = number / was;
        let _ = writeln!(
            out,
            "| {row} | {then} | {now} | {ratio:.2} | {} |",
            aim(row)
        );
    }
    out
}

fn measured(choice: &Choice, program: &Path, large: &Path, scratch: &Path) -> Result<Rows> {
    eprintln!("{}", program.display());
    let mut rows = Rows::new();
    let during = Duration::from_secs(choice.seconds);
    signed_in(program, scratch, during, &mut rows)?;
    if choice.devices {
        return Ok(rows);
    }
    small_shop(program, scratch, during, &mut rows)?;
    if !choice.small {
        large_orders(program, large, scratch, during, &mut rows)?;
    }
    Ok(rows)
}

fn row(rows: &mut Rows, what: impl Into<String>, figure: impl Into<String>, number: f64) {
    let (what, figure) = (what.into(), figure.into());
    eprintln!("  {what}: {figure}");
    rows.push((what, figure, number));
}

/// A hundred devices that were let in, each with somebody signed in, tap once a second.
fn signed_in(program: &Path, scratch: &Path, during: Duration, rows: &mut Rows) -> Result<()> {
    let Tapped {
        taps,
        lost,
        memory: [early, late],
    } = many_devices(program, scratch, during)?;
    row(
        rows,
        format!(
            "100 signed-in devices, each a tap a second for {} s",
            during.as_secs()
        ),
        format!(
            "{} taps, {lost} lost, half within {:.1} ms, 99 of 100 within {:.1} ms",
            taps.count(),
            taps.slowest_of(50),
            taps.slowest_of(99)
        ),
        taps.slowest_of(99),
    );
    let number = late.zip(early);
    #[expect(clippy::cast_precision_loss, reason = "mebibytes are few")]
    let number = number.map_or(f64::NAN, |(late, early)| late as f64 / early as f64);
    row(
        rows,
        "memory as they tap, after a tenth of the time and at the end",
        format!("{}, {}", mebibytes(early), mebibytes(late)),
        number,
    );
    Ok(())
}

/// The invented shop, with more people looking and tapping than it has.
fn small_shop(program: &Path, scratch: &Path, during: Duration, rows: &mut Rows) -> Result<()> {
    let shop = tempfile::tempdir_in(scratch)?;
    let folder = shop.path().join("shop");
    let server = Program::start_at(program, &["demo", "--data", text(&folder)?])?;
    server.wait_for("/")?;
    let page = |number: u64| format!("/o/{number}");
    let names = names(&server, &OTHERS)?;
    let open = [page(ORDER)];
    let crowd = Crowd {
        address: &server.address,
        readers: 100,
        writers: 0,
        pages: &open,
        orders: &names,
        during,
    };
    let came = crowd.go()?;
    row(
        rows,
        "100 readers of an open order (78 events)",
        speed(&came.reads),
        came.reads.a_second(),
    );
    let mut all: Vec<String> = OTHERS.into_iter().map(page).collect();
    all.push(page(ORDER));
    let mixed = Crowd {
        readers: 70,
        writers: 30,
        pages: &all,
        ..crowd
    };
    let came = mixed.go()?;
    both(rows, "over the open orders", &came.reads, &came.writes);
    let one = self::names(&server, &[ORDER])?;
    let growing = Crowd {
        pages: &open,
        orders: &one,
        ..mixed
    };
    let came = growing.go()?;
    both(rows, "on one growing order", &came.reads, &came.writes);
    peak(rows, "of the small shop", &server);
    Ok(())
}

/// Orders of a thousand facts and of many more.
fn large_orders(
    program: &Path,
    large: &Path,
    scratch: &Path,
    during: Duration,
    rows: &mut Rows,
) -> Result<()> {
    let copy = tempfile::tempdir_in(scratch)?;
    copy_folder(large, copy.path())?;
    let server = Program::start_at(program, &["serve", "--data", text(copy.path())?])?;
    server.wait_for("/")?;
    let name = |number| Ok::<_, anyhow::Error>(names(&server, &[number])?.remove(0));
    let pages = slowest_page(&server, &name(THREE_THOUSAND)?)?;
    row(
        rows,
        format!(
            "slowest page of an order of 150 items and 3,000 facts, first look after a write ({})",
            pages.0
        ),
        format!("{:.0} ms", pages.1),
        pages.1,
    );
    let mut looks = Vec::new();
    for number in [THOUSAND, LARGEST] {
        let mut writer = Writer::new(&name(number)?);
        let mut connection = Connection::open(&server.address)?;
        writer.declare(&mut connection)?;
        let mut first = Vec::new();
        let mut again = Vec::new();
        for _ in 0..7 {
            writer.tap(&mut connection)?;
            first.push(timed(&mut connection, &format!("/o/{number}"))?);
            again.push(timed(&mut connection, &format!("/o/{number}"))?);
        }
        let (first, again) = (Load::of(first), Load::of(again));
        let page = [format!("/o/{number}")];
        let order = [name(number)?];
        let crowd = Crowd {
            address: &server.address,
            readers: 20,
            writers: 2,
            pages: &page,
            orders: &order,
            during,
        };
        let came = crowd.go()?;
        let events = if number == THOUSAND {
            "1,000"
        } else {
            "the largest"
        };
        let what = format!("page of an order of {events} facts, first look after a write");
        let half = first.slowest_of(50);
        row(rows, &what, format!("{half:.1} ms"), half);
        let half = again.slowest_of(50);
        let what = format!("the same, looked at again ({events})");
        row(rows, what, format!("{half:.1} ms"), half);
        row(
            rows,
            format!("20 readers and 2 writers of it ({events})"),
            format!("{}; {}", speed(&came.reads), speed(&came.writes)),
            came.reads.a_second(),
        );
        looks.push((first.slowest_of(50), came.reads.a_second()));
    }
    let slower = looks[1].0 / looks[0].0;
    row(
        rows,
        "the largest takes as many times as long to look at first as that of 1,000",
        format!("{slower:.1}"),
        slower,
    );
    peak(rows, "of the shop with the large orders", &server);
    Ok(())
}

/// Pages of an order; each is asked for after a fact that changed the order.
const PAGES: [&str; 23] = [
    "",
    "/story",
    "/mend",
    "/walk",
    "/off",
    "/back",
    "/open",
    "/tray",
    "/item/item-0",
    "/snag",
    "/due",
    "/second",
    "/may",
    "/may/roll",
    "/hand-over",
    "/desk",
    "/price",
    "/ask",
    "/parts",
    "/pay",
    "/decline",
    "/estimate",
    "/plan",
];

fn slowest_page(server: &Program, order: &str) -> Result<(String, f64)> {
    let mut connection = Connection::open(&server.address)?;
    let mut writer = Writer::new(order);
    writer.declare(&mut connection)?;
    let mut slowest = (String::new(), 0.0);
    for page in PAGES {
        let mut best = f64::MAX;
        for _ in 0..3 {
            writer.tap(&mut connection)?;
            let address = format!("/o/{THREE_THOUSAND}{page}");
            let took = timed(&mut connection, &address)?;
            best = best.min(took.as_secs_f64() * 1e3);
        }
        if best > slowest.1 {
            slowest = (format!("/o/…{page}"), best);
        }
    }
    Ok(slowest)
}

fn timed(connection: &mut Connection, address: &str) -> Result<Duration> {
    let start = Instant::now();
    connection
        .get(address)
        .with_context(|| format!("asking for {address}"))?;
    Ok(start.elapsed())
}

fn names(server: &Program, numbers: &[u64]) -> Result<Vec<String>> {
    let mut connection = Connection::open(&server.address)?;
    numbers
        .iter()
        .map(|number| {
            let order = connection.get(&format!("/api/orders/{number}"))?;
            let order: Value = serde_json::from_str(&order).context("no order")?;
            let name = order["order"].as_str().context("an order without a name")?;
            Ok(name.to_owned())
        })
        .collect()
}

fn both(rows: &mut Rows, which: &str, reads: &Load, writes: &Load) {
    let what = format!("70 readers and 30 writers {which}, read");
    row(rows, what, speed(reads), reads.a_second());
    let what = format!("70 readers and 30 writers {which}, written");
    row(rows, what, speed(writes), writes.a_second());
}

fn speed(load: &Load) -> String {
    format!(
        "{:.0} a second, 99 of 100 within {:.0} ms",
        load.a_second(),
        load.slowest_of(99)
    )
}

#[expect(clippy::cast_precision_loss, reason = "mebibytes are few")]
fn peak(rows: &mut Rows, which: &str, server: &Program) {
    let peak = server.peak_memory();
    let number = peak.map_or(f64::NAN, |bytes| bytes as f64);
    row(
        rows,
        format!("memory, at most, {which}"),
        mebibytes(peak),
        number,
    );
}

fn copy_folder(from: &Path, to: &Path) -> Result<()> {
    for entry in std::fs::read_dir(from)? {
        let entry = entry?;
        let to = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            std::fs::create_dir_all(&to)?;
            copy_folder(&entry.path(), &to)?;
        } else {
            std::fs::copy(entry.path(), &to)?;
        }
    }
    Ok(())
}

//! A program for the tests to kill: it appends without end, or so many commands, and
//! prints a line for each answer, only after it has it.
//!
//! `store-appender FOLDER ROUND THREADS [COMMANDS]`

#![allow(
    clippy::unwrap_used,
    reason = "part of the tests: it fails by panicking"
)]

#[path = "../commands/mod.rs"]
mod commands;

use std::io::Write;

use commands::{erasure, fact, fact_with, private};
use store::{AppendError, Command, Outcome, Private, Sqlite, Store};

fn main() {
    let arguments: Vec<String> = std::env::args().collect();
    let number = |index: usize| arguments[index].parse::<u64>().unwrap();
    let store = match Sqlite::open(arguments[1].as_ref()) {
        Ok(store) => store,
        Err(error) => return say(&format!("not opened: {error}")),
    };
    let (round, threads) = (number(2), number(3));
    let count = arguments.get(4).map_or(1_000_000, |_| number(4));
    std::thread::scope(|scope| {
        for thread in 0..threads {
            let store = &store;
            let first = (round * 10 + thread) * 1_000_000;
            scope.spawn(move || append_all(store, first, count));
        }
    });
}

fn append_all(store: &Sqlite, first: u64, count: u64) {
    for id in first..first + count {
        let command = command(id);
        let name = command.command_id.clone();
        let erased = command.erase.first().map(hex::encode);
        match store.append(command) {
            Ok(Outcome::Appended(_)) => match erased {
                Some(erased) => say(&format!("taken {name} erased {erased}")),
                None => say(&format!("taken {name}")),
            },
            Ok(Outcome::Repeated(_)) => say(&format!("repeated {name}")),
            Err(AppendError::Engine(error)) => say(&format!("failed {name} {error}")),
            Err(error) => say(&format!("refused {name} {error}")),
        }
    }
}

/// The same command for the same id, always: of every sort, in turn.
fn command(id: u64) -> Command {
    let stream = format!("order-{}", id % 5);
    match id % 10 {
        3 => fact_with(id, vec![content(id, 30)]),
        5 => fact_with(id, vec![content(id, 70_000)]),
        7 => erasure(id, &[content(id - 4, 30).id]),
        8 => erasure(id, &[content(id - 3, 70_000).id]),
        _ => fact(
            id,
            &stream,
            &"moved ".repeat(usize::try_from(id % 7).unwrap() * 30),
        ),
    }
}

fn content(id: u64, length: usize) -> Private {
    let mut bytes = format!("words {id}").into_bytes();
    bytes.resize(length, b'.');
    private(u8::try_from(id % 251).unwrap(), &bytes)
}

fn say(line: &str) {
    // One write, so that a kill can't cut a line after its answer but before its end
    // without the test seeing a line that has no end.
    let _ = std::io::stdout()
        .lock()
        .write_all(format!("{line}\n").as_bytes());
}

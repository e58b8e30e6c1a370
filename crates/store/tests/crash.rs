//! A program that is killed at any instant, or may not write any more, loses nothing that
//! was acknowledged.
//!
//! `ROUNDS=1000 cargo test -p store --test crash` goes on for longer; `SEED` repeats a run.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod commands;

use std::collections::BTreeSet;
use std::io::{BufRead, BufReader};
use std::path::Path;
use std::process::{ChildStdout, Command, Stdio};
use std::time::{Duration, Instant};

use commands::{LOG, checks};
use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use store::{Sqlite, Store, verify};

const APPENDER: &str = env!("CARGO_BIN_EXE_store-appender");

fn from_environment(name: &str, usual: u64) -> u64 {
    std::env::var(name).map_or(usual, |text| text.parse().expect("a whole number"))
}

/// What the program said before it ended.
#[derive(Default)]
struct Said {
    taken: Vec<String>,
    erased: Vec<String>,
    failed: Vec<String>,
}

impl Said {
    fn hear(&mut self, line: &str) {
        let words: Vec<&str> = line.splitn(4, ' ').collect();
        match words[..] {
            ["taken", id] => self.taken.push(id.to_owned()),
            ["taken", id, "erased", content] => {
                self.taken.push(id.to_owned());
                self.erased.push(content.to_owned());
            }
            ["failed", ..] | ["not", "opened:", ..] => self.failed.push(line.to_owned()),
            _ => panic!("the appender said {line:?}"),
        }
    }
}

#[test]
fn killed_at_any_instant_nothing_acknowledged_is_lost() {
    let (rounds, seed) = (from_environment("ROUNDS", 20), from_environment("SEED", 1));
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let mut folder = tempfile::tempdir().unwrap();
    let mut said = Said::default();
    let mut erased = 0;
    for round in 1..=rounds {
        // A store that grew without end would make long runs slower and slower.
        if round % 20 == 0 {
            folder = tempfile::tempdir().unwrap();
            erased += said.erased.len();
            said = Said::default();
        }
        let mut child = Command::new(APPENDER)
            .arg(folder.path())
            .args([round.to_string(), "4".to_owned()])
            .stdout(Stdio::piped())
            .spawn()
            .unwrap();
        let mut lines = BufReader::new(child.stdout.take().unwrap());
        let answers = chance.random_range(1..80);
        let moment = Duration::from_micros(chance.random_range(0..3000));
        for _ in 0..answers {
            assert!(
                hear_line(&mut lines, &mut said),
                "the appender ended by itself"
            );
        }
        let since = Instant::now();
        while since.elapsed() < moment {
            std::hint::spin_loop();
        }
        child.kill().unwrap();
        while hear_line(&mut lines, &mut said) {}
        child.wait().unwrap();
        assert_eq!(said.failed, Vec::<String>::new());
        assert_kept(folder.path(), &said, &format!("seed {seed}, round {round}"));
    }
    erased += said.erased.len();
    assert!(
        erased as u64 > rounds / 4,
        "too few erasures to mean anything"
    );
}

/// Hears one whole line; `false` when there are no more.
fn hear_line(lines: &mut BufReader<ChildStdout>, said: &mut Said) -> bool {
    let mut line = String::new();
    lines.read_line(&mut line).unwrap();
    let whole = line.ends_with('\n');
    if whole {
        said.hear(line.trim_end());
    }
    whole
}

/// Everything that was acknowledged is there, and the log is sound.
fn assert_kept(folder: &Path, said: &Said, when: &str) {
    let store = Sqlite::open(folder).unwrap();
    let verified =
        verify(&store, LOG, &checks(None)).unwrap_or_else(|damage| panic!("{when}: {damage}"));
    let rows = store.log(LOG, 0, usize::MAX).unwrap();
    assert_eq!(rows.len() as u64, verified.events, "{when}");
    let there: BTreeSet<&str> = rows.iter().map(|row| row.command_id.as_str()).collect();
    for id in &said.taken {
        assert!(
            there.contains(id.as_str()),
            "{when}: {id} was acknowledged and is gone"
        );
    }
    for id in &said.erased {
        let bytes = hex::decode(id).unwrap().try_into().unwrap();
        assert_eq!(store.private(LOG, &bytes).unwrap(), None, "{when}: {id}");
        assert!(
            !folder.join("files").join(id).exists(),
            "{when}: {id} is on the disk"
        );
    }
}

/// Runs the appender on its own, with no file allowed to grow past so many blocks of 512
/// bytes: beyond them every write fails.
#[cfg(unix)]
fn run_limited(folder: &Path, round: u64, blocks: u64) -> Said {
    let script = format!("trap '' XFSZ; ulimit -f {blocks}; exec \"$0\" \"$@\"");
    let output = Command::new("/bin/sh")
        .args(["-c", &script, APPENDER])
        .arg(folder)
        .args([round.to_string(), "1".to_owned(), "10".to_owned()])
        .output()
        .unwrap();
    assert!(output.status.success(), "{output:?}");
    let mut said = Said::default();
    String::from_utf8(output.stdout)
        .unwrap()
        .lines()
        .for_each(|line| said.hear(line));
    said
}

#[test]
#[cfg(unix)]
fn writes_that_the_system_refuses_lose_nothing_acknowledged() {
    let (mut failed, mut whole) = (0, 0);
    // A page in the write-ahead log takes 8 blocks; see tests/faults.rs for every one.
    for blocks in (0..768).step_by(32) {
        let folder = tempfile::tempdir().unwrap();
        let said = run_limited(folder.path(), 0, blocks);
        for line in &said.failed {
            let clear = [
                "the disk failed: ",
                "the disk is full: ",
                "can't be used as a store: ",
            ];
            assert!(clear.iter().any(|words| line.contains(words)), "{line}");
        }
        failed += usize::from(!said.failed.is_empty());
        whole += usize::from(said.failed.is_empty());
        assert_kept(folder.path(), &said, &format!("{blocks} blocks"));
        // With room again, the same commands sent again each count once.
        let store = Sqlite::open(folder.path()).unwrap();
        let before = store.head(LOG).unwrap().position;
        drop(store);
        let output = Command::new(APPENDER)
            .arg(folder.path())
            .args(["0", "1", "10"])
            .output()
            .unwrap();
        let again = String::from_utf8(output.stdout).unwrap();
        let repeated = again
            .lines()
            .filter(|line| line.starts_with("repeated "))
            .count();
        assert_eq!(repeated as u64, before, "{blocks} blocks: {again}");
        let store = Sqlite::open(folder.path()).unwrap();
        assert_eq!(verify(&store, LOG, &checks(None)).unwrap().events, 10);
    }
    assert!(
        failed > 15 && whole > 0,
        "{failed} failed, {whole} went through"
    );
}

#[test]
fn a_full_disk_is_said_and_nothing_acknowledged_is_lost() {
    for pages in (14..60).step_by(5) {
        let folder = tempfile::tempdir().unwrap();
        // The tables themselves need some pages.
        drop(Sqlite::open(folder.path()).unwrap());
        let store = Sqlite::open_limited(folder.path(), Some(pages)).unwrap();
        let mut taken = 0;
        let mut full = None;
        for id in 0..200 {
            match store.append(commands::fact(id, "order-1", &"moved ".repeat(100))) {
                Ok(_) => taken += 1,
                Err(error) => full = Some(error),
            }
        }
        // A photo whose row finds no room does not stay behind as a file.
        let photo = commands::private(1, &[7; 70_000]);
        let with_photo = (0..40)
            .map(|_| photo.clone())
            .enumerate()
            .map(|(salt, mut photo)| {
                photo.salt[0] = u8::try_from(salt).unwrap();
                photo.id = store::commitment(&photo.salt, &photo.content);
                photo
            });
        let with_photo = commands::fact_with(300, with_photo.collect());
        assert!(store.append(with_photo).is_err());
        let files = std::fs::read_dir(folder.path().join("files"))
            .unwrap()
            .count();
        assert_eq!(files, 0);
        let full = full.expect("200 events do not fit");
        assert!(full.to_string().starts_with("the disk is full: "), "{full}");
        assert!(full.mend().starts_with("Free some space"), "{full}");
        assert_eq!(verify(&store, LOG, &checks(None)).unwrap().events, taken);
        drop(store);
        // With room again it goes on where it stopped.
        let store = Sqlite::open(folder.path()).unwrap();
        store
            .append(commands::fact(1000, "order-1", "moved"))
            .unwrap();
        assert_eq!(
            verify(&store, LOG, &checks(None)).unwrap().events,
            taken + 1
        );
    }
}

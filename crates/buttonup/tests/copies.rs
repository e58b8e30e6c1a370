//! Copies that are killed at any instant: what has landed by half is never taken for whole, and
//! the same command run again finishes it.
//!
//! `COPIES=500 cargo test -p buttonup --features postgres-tests --test copies` goes on for longer.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod program;
#[cfg(feature = "postgres-tests")]
#[path = "../../store/tests/server/mod.rs"]
#[allow(dead_code, reason = "the store's tests use the rest")]
mod server;

use program::{Run, invented_shop, killed_after, number, run};
use serde_json::Value;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};
use tempfile::TempDir;

/// A shop with a copy of each form.
struct Bench {
    folder: TempDir,
    #[cfg_attr(
        not(feature = "postgres-tests"),
        expect(dead_code, reason = "only a move to a database starts from it")
    )]
    shop: PathBuf,
    copy: PathBuf,
    lines: PathBuf,
    /// Where the record ends.
    head: Value,
}

impl Bench {
    fn new() -> Self {
        let folder = tempfile::tempdir().unwrap();
        let shop = invented_shop(folder.path());
        let (copy, lines) = (folder.path().join("copy"), folder.path().join("copy.jsonl"));
        for to in [&copy, &lines] {
            let copied = run(&["backup", text(to), "--data", text(&shop)]);
            assert_eq!(copied.code, 0, "{copied:?}");
        }
        let head = run(&["verify", "--json", "--data", text(&shop)]).json()["head"].clone();
        Self {
            folder,
            shop,
            copy,
            lines,
            head,
        }
    }

    fn path(&self, name: &str) -> PathBuf {
        self.folder.path().join(name)
    }

    /// The ways to set a record down, without where.
    fn ways(&self) -> [[&str; 3]; 3] {
        [
            ["restore", text(&self.copy), "--json"],
            ["restore", text(&self.lines), "--json"],
            ["import", text(&self.lines), "--json"],
        ]
    }

    fn is_whole(&self, verified: &Run) -> bool {
        verified.code == 0 && verified.json()["head"] == self.head
    }
}

fn text(path: &Path) -> &str {
    path.to_str().unwrap()
}

/// How long a whole run takes.
fn timed(arguments: &[&str]) -> Duration {
    let began = Instant::now();
    let done = run(arguments);
    assert_eq!(done.code, 0, "{done:?}");
    began.elapsed()
}

/// Another instant each round, spread evenly from the beginning to shortly after the end.
fn moment(round: u32, whole: Duration) -> Duration {
    let golden = (f64::from(round) * 0.618_033_988_75).fract();
    whole.mul_f64(golden * 1.1)
}

#[test]
fn a_copy_killed_on_its_way_into_a_folder_is_there_whole_or_not_at_all() {
    let bench = Bench::new();
    let mut broke_off = 0;
    for (nth, way) in bench.ways().iter().enumerate() {
        let first = bench.path(&format!("first-{nth}"));
        let whole = timed(&[&way[..], &["--data", text(&first)]].concat());
        for round in 1..=number("COPIES", 4) {
            let told = format!("{way:?}, round {round}");
            let place = tempfile::tempdir().unwrap();
            let back = place.path().join("back");
            let there = [&way[..], &["--data", text(&back)]].concat();
            let ended = killed_after(&there, moment(round, whole));
            assert!(!ended || back.exists(), "{told}");
            if back.exists() {
                let verified = run(&["verify", "--json", "--data", text(&back)]);
                assert!(bench.is_whole(&verified), "{told}: {verified:?}");
                let again = run(&there);
                assert!(
                    again.code == 1 && again.err.contains("not empty"),
                    "{told}: {again:?}"
                );
            } else {
                broke_off += 1;
                // Nor does what lies beside it pass for the record.
                for entry in std::fs::read_dir(place.path()).unwrap() {
                    let left = entry.unwrap().path();
                    let verified = run(&["verify", "--json", "--data", text(&left)]);
                    assert!(
                        verified.code != 0 || bench.is_whole(&verified),
                        "{told}: {verified:?}"
                    );
                }
                let done = run(&there);
                assert_eq!(done.code, 0, "{told}: {done:?}");
                let verified = run(&["verify", "--json", "--data", text(&back)]);
                assert!(bench.is_whole(&verified), "{told}: {verified:?}");
            }
        }
    }
    eprintln!("{broke_off} copies broke off on their way into a folder");
    assert!(broke_off > 0, "no copy broke off");
}

#[cfg(feature = "postgres-tests")]
mod database {
    use super::{Bench, moment, text, timed};
    use crate::program::{copy_folder, killed_after, number, run};
    use crate::server;

    fn line(words: &[String]) -> Vec<&str> {
        words.iter().map(String::as_str).collect()
    }

    #[test]
    fn a_copy_killed_on_its_way_into_a_database_is_not_served_and_goes_on() {
        let bench = Bench::new();
        let postgres = server::shared();
        let (mut nothing, mut half) = (0, 0);
        for way in bench.ways() {
            let notes = bench.path("notes");
            let to = |url: &str, way: &[&str]| -> Vec<String> {
                let there = ["--database", url, "--json", "--data", text(&notes)];
                let all = way.iter().filter(|word| **word != "--json").chain(&there);
                all.map(ToString::to_string).collect()
            };
            let whole = timed(&line(&to(&postgres.new_database(), &way)));
            for round in 1..=number("COPIES", 4) {
                let told = format!("{way:?}, round {round}");
                let url = postgres.new_database();
                let there = to(&url, &way);
                killed_after(&line(&there), moment(round, whole));
                let verified = run(&line(&to(&url, &["verify"])));
                if bench.is_whole(&verified) {
                    let again = run(&line(&there));
                    assert!(
                        again.code == 1 && again.err.contains("events already"),
                        "{told}: {again:?}"
                    );
                    continue;
                }
                match verified.code {
                    1 => {
                        half += 1;
                        let served = run(&line(&to(&url, &["serve", "--no-open"])));
                        assert!(
                            served.code != 0 && served.err.contains("a part of a copy"),
                            "{told}: {served:?}"
                        );
                    }
                    _ => {
                        nothing += 1;
                        assert_eq!(verified.code, 2, "{told}: {verified:?}");
                    }
                }
                let done = run(&line(&there));
                assert_eq!(done.code, 0, "{told}: {done:?}");
                let verified = run(&line(&to(&url, &["verify"])));
                assert!(bench.is_whole(&verified), "{told}: {verified:?}");
            }
        }
        eprintln!("{half} copies broke off in a database, {nothing} before anything landed");
        assert!(half + nothing > 0, "no copy broke off");
    }

    #[test]
    fn a_move_killed_at_any_instant_leaves_one_record_that_is_served() {
        let bench = Bench::new();
        let postgres = server::shared();
        let place = tempfile::tempdir().unwrap();
        let shop = |round: u32| {
            let to = place.path().join(format!("shop-{round}"));
            copy_folder(&bench.shop, &to);
            to
        };
        let first = shop(0);
        let whole = timed(&["move-to", &postgres.new_database(), "--data", text(&first)]);
        for round in 1..=number("COPIES", 4) {
            let (shop, url) = (shop(round), postgres.new_database());
            let there = ["move-to", &url, "--json", "--data", text(&shop)];
            killed_after(&there, moment(round, whole));
            // Its own record is whole in any case.
            let here = run(&["verify", "--json", "--data", text(&shop)]);
            assert!(bench.is_whole(&here), "round {round}: {here:?}");
            let verify = ["verify", "--json", "--database", &url];
            let moved = bench.is_whole(&run(&verify));
            let noted = shop.join("moved.json").exists();
            assert!(!moved || noted, "round {round}: both could be served");
            let again = run(&there);
            match moved {
                true => assert!(
                    again.code == 1 && again.err.contains("was moved to"),
                    "round {round}: {again:?}"
                ),
                false => assert_eq!(again.code, 0, "round {round}: {again:?}"),
            }
            let there = run(&verify);
            assert!(bench.is_whole(&there), "round {round}: {there:?}");
            let served = run(&["serve", "--no-open", "--data", text(&shop)]);
            assert!(
                served.code == 1 && served.err.contains("was moved to"),
                "round {round}: {served:?}"
            );
            std::fs::remove_dir_all(&shop).unwrap();
        }
    }
}

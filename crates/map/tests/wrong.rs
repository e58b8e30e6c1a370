//! Maps that are wrong, one file each under `wrong/`, and beside each what must be said
//! of it: file, line, column, what, and how to mend it. `NAME.says` holds the lines.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

use map::{Trouble, read};
use std::fmt::Write as _;
use std::fs;
use std::path::{Path, PathBuf};
use std::time::{Duration, Instant};

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/wrong")
}

fn said(file: &str, text: &str) -> Vec<Trouble> {
    match read(file, text) {
        Ok(read) => read.warnings,
        Err(troubles) => troubles,
    }
}

fn lines(troubles: &[Trouble]) -> String {
    troubles
        .iter()
        .map(|trouble| format!("{trouble}\n"))
        .collect()
}

#[test]
fn each_wrong_map_is_told_as_its_neighbour_says() {
    let mut differ = String::new();
    let mut many = 0;
    let mut files: Vec<PathBuf> = fs::read_dir(folder())
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .filter(|path| path.extension().is_some_and(|end| end == "toml"))
        .collect();
    files.sort();
    for path in files {
        let file = path.file_name().unwrap().to_str().unwrap();
        let says = lines(&said(file, &fs::read_to_string(&path).unwrap()));
        let wanted = fs::read_to_string(path.with_extension("says")).unwrap_or_default();
        if says != wanted || says.is_empty() {
            write!(differ, "--- {file}, wanted\n{wanted}--- said\n{says}").unwrap();
        }
        many += 1;
    }
    assert!(differ.is_empty(), "{differ}");
    assert!(many >= 20, "only {many} wrong maps");
}

#[test]
fn cut_off_anywhere_they_are_answered_all_the_same() {
    for entry in fs::read_dir(folder()).unwrap() {
        let path = entry.unwrap().path();
        if path.extension().is_some_and(|end| end == "toml") {
            let text = fs::read_to_string(&path).unwrap();
            let ends = (0..text.len()).step_by(1 + text.len() / 200);
            for end in ends.filter(|end| text.is_char_boundary(*end)) {
                assert!(
                    !said("cut.toml", &text[..end])
                        .iter()
                        .any(|told| told.what.is_empty())
                );
            }
        }
    }
}

/// Names in a sequence that the alphabet turns round, so that nothing comes easily.
fn name(nth: usize) -> String {
    format!("part {:05}", 10_000 - nth)
}

/// Ten thousand items, each with this need of the one before.
fn many(need: impl Fn(usize) -> String) -> String {
    let mut text = "vehicle = \"Small Van\"\n".to_owned();
    for nth in 0..10_000 {
        writeln!(
            text,
            "[items.\"{}\"]\nis = \"part\"\nplace = \"above\"\nminutes = {{ out = 1, back = 1 }}\n{}",
            name(nth),
            need(nth)
        )
        .unwrap();
    }
    text
}

/// What is said of a text, told soon even by a build for tests on a busy machine.
fn soon(what: &str, text: &str) -> Vec<Trouble> {
    let began = Instant::now();
    let said = said("huge.toml", text);
    let took = began.elapsed();
    assert!(took < Duration::from_secs(60), "{what}: {took:?}");
    said
}

#[test]
fn ten_thousand_items_are_read_and_checked_soon() {
    let before = |nth: usize| name(nth.max(1) - 1);
    let chain = |nth: usize| match nth {
        0 => String::new(),
        _ => format!("needs = [\"{} off\"]", before(nth)),
    };
    assert_eq!(soon("a chain", &many(chain)), []);
    let circle = |nth: usize| format!("needs = [\"{} off\"]", name((nth + 9_999) % 10_000));
    let circle = soon("a circle", &many(circle));
    assert_eq!(circle.len(), 1);
    assert!(circle[0].what.contains("9988 more"), "{}", circle[0]);
    let wrong = soon(
        "wrong needs",
        &many(|nth| format!("needs = [\"{}x off\"]", before(nth))),
    );
    assert_eq!(wrong.len(), 10_000);
    assert_eq!((wrong[9_999].line, wrong[9_999].column), (50_001, 10));
    let ways = |nth: usize| match nth {
        0..3 => String::new(),
        _ => format!(
            "needs = {{ any = [\"{} off\", \"{} off\"] }}",
            before(nth),
            before(nth - 2)
        ),
    };
    assert_eq!(soon("two ways each", &many(ways)), []);
    // Of each five hundred the first has a way by the third, which waits for it.
    let useless = |nth: usize| match nth % 500 {
        0 => format!(
            "needs = {{ any = [\"{} off\", \"{} off\"] }}",
            name(50),
            name(nth + 2)
        ),
        50 => String::new(),
        _ => format!("needs = [\"{} off\"]", before(nth)),
    };
    assert_eq!(soon("some ways too many", &many(useless)).len(), 20);
}

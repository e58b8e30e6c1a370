//! What the documents name is there: files and folders, the program's commands, the chores.

use crate::{project, read};
use std::collections::BTreeSet;
use std::process::Command;

const DOCUMENTS: [&str; 11] = [
    "README.md",
    "ARCHITECTURE.md",
    "CONTRIBUTING.md",
    "docs/bench.md",
    "docs/decisions/0001-forms-of-events.md",
    "docs/export.md",
    "docs/maps.md",
    "docs/papers.md",
    "docs/scaling.md",
    "docs/security.md",
    "docs/state.md",
];

/// Folders at the top of the project: a code span that begins with one names a file.
const FOLDERS: [&str; 5] = ["checks/", "crates/", "demo/", "docs/", "xtask/"];

/// What hashes of the record begin with: no commands, though the program's name stands before.
const HASHED: [&str; 2] = ["row", "log"];

/// What stands between backticks, in lines and in blocks of code.
fn code(text: &str) -> Vec<&str> {
    let (mut out, mut block) = (Vec::new(), false);
    for line in text.lines() {
        if line.trim_start().starts_with("```") {
            block = !block;
        } else if block {
            out.push(line);
        } else {
            out.extend(line.split('`').skip(1).step_by(2));
        }
    }
    out
}

/// Where the document's links lead, but those to other places.
fn links(text: &str) -> impl Iterator<Item = &str> {
    text.split("](")
        .skip(1)
        .filter_map(|rest| rest.split([')', '#']).next())
        .filter(|link| !link.is_empty() && !link.contains("://"))
}

fn paths(text: &str) -> impl Iterator<Item = &str> {
    let words = code(text).into_iter().flat_map(str::split_whitespace);
    words
        .map(|word| word.trim_matches(|c: char| !c.is_alphanumeric() && c != '/'))
        .filter(|word| FOLDERS.iter().any(|folder| word.starts_with(folder)))
        .filter(|word| !word.contains(['<', '*', '{']))
}

/// The words that follow a name at the beginning of a piece of code.
fn following<'a>(text: &'a str, before: &'a [&'a str]) -> impl Iterator<Item = &'a str> {
    code(text).into_iter().filter_map(move |code| {
        let mut words = code.split_whitespace();
        let begins = before.iter().all(|word| words.next() == Some(*word));
        begins.then(|| words.next()).flatten()
    })
}

/// The names under `Commands:` of a help text.
fn commands(help: &str) -> BTreeSet<String> {
    help.lines()
        .skip_while(|line| !line.starts_with("Commands:"))
        .skip(1)
        .take_while(|line| !line.is_empty())
        .filter(|line| line.starts_with("  ") && !line.starts_with("   "))
        .filter_map(|line| line.split_whitespace().next())
        .map(str::to_owned)
        .collect()
}

#[test]
fn every_file_that_a_document_names_is_there() {
    let mut seen = 0;
    for document in DOCUMENTS {
        let text = read(document);
        let beside = project().join(document);
        let beside = beside.parent().expect("a document lies in a folder");
        for link in links(&text) {
            assert!(beside.join(link).exists(), "{document} links to {link}");
            seen += 1;
        }
        for path in paths(&text) {
            assert!(project().join(path).exists(), "{document} names {path}");
            seen += 1;
        }
    }
    assert!(seen > 10, "the documents name files");
}

#[test]
fn every_command_that_a_document_names_is_there() {
    let help = Command::new(env!("CARGO_BIN_EXE_buttonup"))
        .arg("--help")
        .output()
        .expect("the program runs");
    let known = commands(&String::from_utf8_lossy(&help.stdout));
    assert!(known.contains("serve"), "{known:?}");
    let mut seen = 0;
    for document in DOCUMENTS {
        let text = read(document);
        let run = following(&text, &["cargo", "run", "--release", "--"]);
        for named in following(&text, &["buttonup"]).chain(run) {
            let named = named.trim_end_matches([',', '.']);
            let word = named.starts_with(|c: char| c.is_ascii_lowercase());
            if word && !HASHED.contains(&named) {
                assert!(known.contains(named), "{document}: buttonup {named}");
                seen += 1;
            }
        }
    }
    assert!(seen > 10, "the documents name commands");
}

#[test]
fn every_chore_that_a_document_names_is_there() {
    let chores = read("xtask/src/main.rs").to_lowercase();
    for document in DOCUMENTS {
        let text = read(document);
        for chore in following(&text, &["cargo", "xtask"]) {
            let name = chore.replace('-', "");
            assert!(
                chores.contains(&format!("    {name}(")),
                "{document}: cargo xtask {chore}"
            );
        }
    }
}

/// The names of tests in a line of the table: set slanted, of three words or more. Fewer are a
/// heading or a page.
fn tests_named(line: &str) -> Vec<String> {
    line.split('*')
        .skip(1)
        .step_by(2)
        .filter(|said| said.split_whitespace().count() >= 3)
        .map(|said| {
            let plain = said.replace('\'', "").to_lowercase();
            let words = plain.split(|c: char| !c.is_alphanumeric());
            let words: Vec<&str> = words.filter(|word| !word.is_empty()).collect();
            words.join("_")
        })
        .collect()
}

/// Every Rust file below a folder.
fn sources(folder: &std::path::Path, out: &mut String) {
    for entry in std::fs::read_dir(folder).expect("a folder of the project") {
        let path = entry.expect("a file of the project").path();
        if path.is_dir() {
            sources(&path, out);
        } else if path.extension().is_some_and(|is| is == "rs") {
            out.push_str(&std::fs::read_to_string(&path).expect("a source is text"));
        }
    }
}

#[test]
fn every_test_that_security_names_is_there() {
    let mut all = String::new();
    sources(&project().join("crates"), &mut all);
    let text = read("docs/security.md");
    let table = text.split("## Rows").nth(1).expect("it has rows");
    let named: BTreeSet<String> = table.lines().flat_map(tests_named).collect();
    assert!(named.len() > 30, "{named:?}");
    for name in named {
        assert!(
            all.contains(&format!("fn {name}")),
            "no test begins with {name}"
        );
    }
}

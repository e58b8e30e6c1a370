//! Words that have no place in any file that is kept.

use crate::project;
use std::process::Command;

/// Each forbidden word in two pieces, so that this file does not hold it.
const FORBIDDEN: [(&str, &str); 8] = [
    ("trans", "cript"),
    ("/wo", "rk/"),
    ("TO", "DO"),
    ("FIX", "ME"),
    ("to", "do!("),
    ("unimple", "mented!("),
    ("#[ign", "ore"),
    ("../sha", "red"),
];

#[test]
fn no_kept_file_holds_a_forbidden_word() {
    let mut found = Vec::new();
    for name in kept_files() {
        // A file that was deleted but not yet from the index has nothing to say.
        let Ok(bytes) = std::fs::read(project().join(&name)) else {
            continue;
        };
        for (line, word) in forbidden_in(&String::from_utf8_lossy(&bytes)) {
            found.push(format!("{name}:{line}: {word}"));
        }
    }
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
}

fn kept_files() -> Vec<String> {
    let listed = Command::new("git")
        .args(["ls-files", "-z"])
        .current_dir(project())
        .output()
        .expect("git lists the files");
    assert!(
        listed.status.success(),
        "this test needs the project's git repository"
    );
    let names = String::from_utf8(listed.stdout).expect("file names are UTF-8");
    let files: Vec<String> = names.split_terminator('\0').map(str::to_owned).collect();
    assert!(files.iter().any(|name| name == "Cargo.toml"), "{files:?}");
    files
}

fn forbidden_in(text: &str) -> Vec<(usize, String)> {
    let words = FORBIDDEN.map(|(start, end)| [start, end].concat());
    let mut found = Vec::new();
    for (at, line) in text.lines().enumerate() {
        for word in &words {
            if line.contains(word.as_str()) {
                found.push((at + 1, word.clone()));
            }
        }
    }
    found
}

#[test]
fn each_forbidden_word_is_found() {
    for (start, end) in FORBIDDEN {
        let text = format!("one line\nthen {start}{end}");
        assert_eq!(forbidden_in(&text), [(2, [start, end].concat())]);
        assert_eq!(forbidden_in(&format!("{start} {end}")), []);
    }
}

//! Does the source of a pure room touch the world? The standard library needs no entry
//! in a manifest, so this is looked for in the text.

use crate::{project, read, table};
use std::fs;
use std::path::{Path, PathBuf};

/// What a room without input, output, clock, environment or chance never says.
const IMPURE: [&str; 15] = [
    "std::fs",
    "std::io",
    "std::net",
    "std::env",
    "std::process",
    "std::thread",
    "SystemTime",
    "Instant::now",
    "::now()",
    "println!",
    "getrandom",
    "thread_rng",
    "rand::rng",
    "OsRng",
    "new_v4",
];

/// The modules of the standard library that must not hide in `use std::{...}`.
const IMPURE_MODULES: [&str; 6] = ["fs", "io", "net", "env", "process", "thread"];

#[test]
fn pure_rooms_do_not_touch_the_world() {
    let rooms = table::rooms(&read("ARCHITECTURE.md")).expect("the table of rooms can be read");
    let mut found = Vec::new();
    for (name, _) in rooms.iter().filter(|(_, room)| room.is_pure()) {
        let files = rust_files(&project().join("crates").join(name).join("src"));
        assert!(!files.is_empty(), "{name} has no source");
        for file in files {
            let text = fs::read_to_string(&file).expect("a source file can be read");
            // A cursor over bytes in memory only has its place there: it reads nothing outside.
            let text = text.replace("std::io::Cursor", "");
            // Threads that end before their function does share its work and see nothing else.
            let text = text.replace("std::thread::scope", "");
            for (line, what) in impurities(&text) {
                found.push(format!("{}:{line}: {what}", file.display()));
            }
        }
    }
    assert!(found.is_empty(), "\n{}\n", found.join("\n"));
}

/// The Rust files in a folder and its folders; files of tests alone are left out.
fn rust_files(folder: &Path) -> Vec<PathBuf> {
    let mut files = Vec::new();
    for entry in fs::read_dir(folder)
        .expect("a source folder can be read")
        .flatten()
    {
        let path = entry.path();
        let is_test = path.file_stem().is_some_and(|stem| stem == "tests");
        if path.is_dir() && !is_test {
            files.extend(rust_files(&path));
        } else if path.extension().is_some_and(|extension| extension == "rs") && !is_test {
            files.push(path);
        }
    }
    files
}

/// Line and finding of each impure word in the code; comments and tests may say them.
fn impurities(text: &str) -> Vec<(usize, &'static str)> {
    let mut found = Vec::new();
    let mut inside_std = false;
    for (number, line) in code_lines(text) {
        found.extend(
            IMPURE
                .into_iter()
                .filter(|word| line.contains(word))
                .map(|word| (number, word)),
        );
        inside_std |= line.contains("std::{");
        if inside_std {
            found.extend(
                line.split(|letter: char| !letter.is_alphanumeric())
                    .filter_map(|word| IMPURE_MODULES.into_iter().find(|module| *module == word))
                    .map(|module| (number, module)),
            );
            inside_std = !line.contains(';');
        }
    }
    found
}

/// The lines of code with their numbers, without comments and without test modules.
///
/// A test module stands last in its file, or in a file of its own named `tests.rs`.
fn code_lines(text: &str) -> impl Iterator<Item = (usize, &str)> {
    let lines: Vec<&str> = text.lines().collect();
    let is_test_module = |at: usize| {
        lines[at].trim() == "#[cfg(test)]"
            && lines
                .get(at + 1)
                .is_some_and(|next| next.starts_with("mod ") && next.ends_with('{'))
    };
    let end = (0..lines.len())
        .find(|at| is_test_module(*at))
        .unwrap_or(lines.len());
    let code: Vec<(usize, &str)> = lines[..end]
        .iter()
        .enumerate()
        .map(|(at, line)| (at + 1, line.trim()))
        .filter(|(_, line)| !line.starts_with("//"))
        .collect();
    code.into_iter()
}

#[test]
fn impure_code_is_found_with_its_line() {
    assert_eq!(
        impurities("use std::fs;\n\nfn f() {\n    println!(\"x\");\n}\n"),
        [(1, "std::fs"), (4, "println!")]
    );
    assert_eq!(
        impurities("let now = jiff::Timestamp::now();"),
        [(1, "::now()")]
    );
    assert_eq!(
        impurities("use std::{\n    collections::BTreeMap,\n    fs,\n};\nlet io = 1;"),
        [(3, "fs")]
    );
}

#[test]
fn comments_and_tests_may_say_what_code_may_not() {
    let text = "//! Never reads std::fs.\n/// println!(\"an example\");\nfn f() {}\n\n\
                #[cfg(test)]\nmod tests {\n    use std::fs;\n}\n";
    assert_eq!(impurities(text), []);
    // Only a module ends the code: one test-only line does not.
    assert_eq!(
        impurities("#[cfg(test)]\nuse a::b;\nuse std::env;"),
        [(3, "std::env")]
    );
}

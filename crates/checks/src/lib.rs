//! The rows of `checks/published` as the tests of the calculators read them.
//!
//! `checks/published/README.md` says how a file looks. What does not keep to it is refused here,
//! so that no test can lean on a row whose source nobody can find.

mod file;
mod row;
mod source;

pub use file::{Published, Trouble};
pub use row::Row;
pub use source::{Grade, Source};

use std::path::PathBuf;

/// The folder of the rows. It is asked for when a test runs: two copies of the project may share
/// what was built, and each reads its own rows.
fn folder() -> PathBuf {
    let crate_folder = std::env::var_os("CARGO_MANIFEST_DIR").expect("cargo says it to every test");
    PathBuf::from(crate_folder).join("../../checks/published")
}

/// The rows of one subject: `published("units")` reads `checks/published/units.toml`.
///
/// # Panics
///
/// Where the file cannot be read or does not keep to the form. It is made for tests, which fail
/// by panicking.
pub fn published(subject: &str) -> Published {
    let path = folder().join(format!("{subject}.toml"));
    let text = std::fs::read_to_string(&path)
        .unwrap_or_else(|error| panic!("cannot read {}: {error}", path.display()));
    Published::read(subject, &text).unwrap_or_else(|troubles| {
        let lines: Vec<String> = troubles.iter().map(ToString::to_string).collect();
        panic!("\n{}\n", lines.join("\n"))
    })
}

/// Every subject that has rows, in alphabetical order.
///
/// # Panics
///
/// Where the folder cannot be read.
pub fn subjects() -> Vec<String> {
    let folder = folder();
    let entries = std::fs::read_dir(&folder)
        .unwrap_or_else(|error| panic!("cannot read {}: {error}", folder.display()));
    let mut subjects: Vec<String> = entries
        .map(|entry| entry.expect("the folder can be listed").path())
        .filter(|path| {
            path.extension()
                .is_some_and(|extension| extension == "toml")
        })
        .filter_map(|path| Some(path.file_stem()?.to_str()?.to_owned()))
        .collect();
    subjects.sort();
    subjects
}

//! Where the programs are that this crate drives.

use std::env;
use std::path::{Path, PathBuf};

/// The Chromium to drive, if this machine has one.
pub fn chromium() -> Option<PathBuf> {
    ["chromium", "chromium-browser", "google-chrome"]
        .into_iter()
        .find_map(on_path)
}

/// The program that drives Chromium, if this machine has it.
pub fn chromedriver() -> Option<PathBuf> {
    on_path("chromedriver").or_else(|| {
        // Some distributions keep it beside the browser, off the path.
        [
            "/usr/lib/chromium/chromedriver",
            "/usr/lib/chromium-browser/chromedriver",
        ]
        .into_iter()
        .map(PathBuf::from)
        .find(|place| place.is_file())
    })
}

/// The first file of this name in the folders of `PATH`.
pub fn on_path(name: &str) -> Option<PathBuf> {
    let folders = env::var_os("PATH")?;
    first_in(env::split_paths(&folders), name)
}

fn first_in(folders: impl Iterator<Item = PathBuf>, name: &str) -> Option<PathBuf> {
    folders
        .map(|folder| folder.join(name))
        .find(|place: &PathBuf| Path::is_file(place))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_first_folder_that_has_the_file_wins() {
        let early = tempfile::tempdir().unwrap();
        let late = tempfile::tempdir().unwrap();
        let folders = || [early.path().to_owned(), late.path().to_owned()].into_iter();

        assert_eq!(first_in(folders(), "tool"), None);
        std::fs::write(late.path().join("tool"), "").unwrap();
        assert_eq!(first_in(folders(), "tool"), Some(late.path().join("tool")));
        std::fs::write(early.path().join("tool"), "").unwrap();
        assert_eq!(first_in(folders(), "tool"), Some(early.path().join("tool")));
    }
}

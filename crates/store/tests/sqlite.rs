//! The story in a folder, and what only a folder can do.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod story;

use std::sync::Arc;

use store::{Sqlite, Store};
use tempfile::TempDir;

struct InFolder(TempDir);

impl story::House for InFolder {
    fn open(&mut self) -> Arc<dyn Store> {
        Arc::new(Sqlite::open(self.0.path()).unwrap())
    }
}

fn make() -> InFolder {
    InFolder(tempfile::tempdir().unwrap())
}

story!(make);

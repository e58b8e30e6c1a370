//! Those who want to hear of commits.

use std::collections::BTreeMap;
use std::panic::{AssertUnwindSafe, catch_unwind};
use std::sync::{PoisonError, RwLock};

use crate::OnAppend;

#[derive(Default)]
pub(crate) struct Watchers(RwLock<Vec<OnAppend>>);

impl Watchers {
    pub(crate) fn add(&self, tell: OnAppend) {
        self.0
            .write()
            .unwrap_or_else(PoisonError::into_inner)
            .push(tell);
    }

    /// Tells all of each log's new last position.
    pub(crate) fn tell(&self, news: &BTreeMap<String, u64>) {
        let watchers = self.0.read().unwrap_or_else(PoisonError::into_inner);
        for (log, position) in news {
            for tell in watchers.iter() {
                // A watcher's panic is its own affair: the store goes on for the others.
                let _ = catch_unwind(AssertUnwindSafe(|| tell(log, *position)));
            }
        }
    }
}

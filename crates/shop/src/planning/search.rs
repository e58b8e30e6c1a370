//! Plans that were made before: a page that shows what is true now asks for the same
//! plan again and again.

use crate::snapshot::Snapshot;
use plan::{Budget, Plan, PlanError, Problem};
use sha2::{Digest, Sha256};
use std::collections::BTreeMap;
use std::sync::{Mutex, PoisonError};

/// Plans by a digest of their problem.
pub(crate) type Made = Mutex<BTreeMap<[u8; 32], Result<Plan, PlanError>>>;

/// So many fit before all are let go: those of the stages that follow, for some orders.
const MOST: usize = 256;

impl Snapshot<'_> {
    /// The cheapest plan, found once for each problem.
    ///
    /// # Errors
    /// [`PlanError`], as the search says.
    pub fn plan(&self, problem: &Problem) -> Result<Plan, PlanError> {
        let key = key(problem);
        if let Some(found) = self.made(key) {
            return found;
        }
        let found = plan::plan(problem, Budget::default());
        self.keep(key, &found);
        found
    }

    /// The cheapest plan of each of these, those that are not known yet searched for side by side.
    #[must_use]
    pub fn plans(&self, problems: &[Problem]) -> Vec<Result<Plan, PlanError>> {
        let keys: Vec<_> = problems.iter().map(key).collect();
        let known: Vec<_> = keys.iter().map(|key| self.made(*key)).collect();
        std::thread::scope(|threads| {
            let search = |problem| threads.spawn(move || plan::plan(problem, Budget::default()));
            let searched = known.into_iter().zip(problems).map(|(known, problem)| {
                let search = known.is_none().then(|| search(problem));
                (known, problem, search)
            });
            // All are begun before the first is waited for.
            let searched: Vec<_> = searched.collect();
            let searched = searched.into_iter().zip(keys);
            let found = searched.map(|((known, problem, search), key)| {
                let found = search.and_then(|search| search.join().ok()).or(known);
                // A search that broke off is done again where it can be told what broke.
                let found = found.unwrap_or_else(|| plan::plan(problem, Budget::default()));
                self.keep(key, &found);
                found
            });
            found.collect()
        })
    }

    fn made(&self, key: [u8; 32]) -> Option<Result<Plan, PlanError>> {
        let made = self.shelf::<Made>();
        let made = made.lock().unwrap_or_else(PoisonError::into_inner);
        made.get(&key).cloned()
    }

    fn keep(&self, key: [u8; 32], found: &Result<Plan, PlanError>) {
        let made = self.shelf::<Made>();
        let mut made = made.lock().unwrap_or_else(PoisonError::into_inner);
        if made.len() >= MOST {
            made.clear();
        }
        made.insert(key, found.clone());
    }
}

fn key(problem: &Problem) -> [u8; 32] {
    Sha256::digest(format!("{problem:?}")).into()
}

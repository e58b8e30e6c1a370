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
        let key: [u8; 32] = Sha256::digest(format!("{problem:?}")).into();
        let made = self.shelf::<Made>();
        let known = || made.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(found) = known().get(&key) {
            return found.clone();
        }
        let found = plan::plan(problem, Budget::default());
        let mut kept = known();
        if kept.len() >= MOST {
            kept.clear();
        }
        kept.insert(key, found.clone());
        found
    }
}

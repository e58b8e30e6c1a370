//! For how long somebody who does nothing stays signed in.

use super::Access;
use crate::phrases::access as words;
use crate::trouble::Trouble;
use serde::{Deserialize, Serialize};

/// Minutes, as the owner sets them.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, Deserialize)]
pub struct Limits {
    /// At a desk: then the PIN is asked before the next page.
    pub desk: u32,
    /// Everywhere: then the PIN is asked before the next decision. At a vehicle the page stays.
    pub decision: u32,
}

impl Default for Limits {
    fn default() -> Self {
        Self {
            desk: 30,
            decision: 10,
        }
    }
}

/// A working day.
const MOST: u32 = 12 * 60;

impl Access<'_> {
    /// The limits of this shop.
    ///
    /// # Errors
    /// [`Trouble`], if it cannot be read.
    pub fn limits(&self) -> Result<Limits, Trouble> {
        Ok(self.drawer("limits").get("idle")?.unwrap_or_default())
    }

    /// Sets them.
    ///
    /// # Errors
    /// [`Trouble`], refused: below a minute, or longer than a day's work.
    pub fn set_limits(&self, limits: Limits) -> Result<(), Trouble> {
        if [limits.desk, limits.decision]
            .iter()
            .any(|minutes| !(1..=MOST).contains(minutes))
        {
            return Err(super::refused(
                words::the_minutes(),
                words::no_time_to_stay(),
                words::write_minutes(),
            ));
        }
        self.drawer("limits").put("idle", &limits)
    }
}

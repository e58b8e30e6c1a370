//! Who uses the shop's program over its network: devices that joined, PINs, who is signed in.
//!
//! ```text
//!  invite ─▶ code (10 minutes, once) ─▶ join ─▶ device with a key of its own
//!  sign_in(device, person, PIN) ─▶ sign-in: what a tap says of who is bound to it
//!  bound(device, sign-in, who)  ─▶ the person of that tap, also when it comes days later
//! ```
//!
//! Nothing of this stands in the record: a PIN is never in the log, and a device that was put
//! out is forgotten when the shop wants. It stands in the store's table of who may use it, so
//! that several programs on one database count the same tries.

mod device;
mod drawer;
mod limits;
mod opened;
mod pin;
mod signed;

pub use device::{DeviceCard, Joined, Place};
pub use limits::Limits;
pub use opened::OpenedPage;
pub use pin::{LONGEST_PIN, SHORTEST_PIN};
pub(crate) use signed::LEFT;
pub use signed::{Bound, LateFact, SignIn};

use crate::trouble::{Trouble, TroubleKind};
use drawer::Drawer;
use jiff::Timestamp;
use sha2::{Digest, Sha256};
use store::Store;
use uuid::Uuid;

/// What stands beside one log about who may use it, at one time.
#[derive(Clone, Copy)]
pub struct Access<'a> {
    store: &'a dyn Store,
    log: &'a str,
    now: Timestamp,
}

impl<'a> Access<'a> {
    /// Who may use this log's shop, at this time.
    #[must_use]
    pub fn new(store: &'a dyn Store, log: &'a str, now: Timestamp) -> Self {
        Self { store, log, now }
    }

    fn drawer(&self, name: &'static str) -> Drawer<'a> {
        Drawer::new(self.store, self.log, name)
    }
}

/// A secret that nobody guesses: two version 4 uuids hold 244 random bits.
fn secret() -> String {
    format!("{}{}", Uuid::new_v4().simple(), Uuid::new_v4().simple())
}

/// What is kept of a secret, and what it is found by.
fn digest(secret: &str) -> String {
    let digest = Sha256::digest(secret.as_bytes());
    digest.iter().map(|byte| format!("{byte:02x}")).collect()
}

fn refused(place: &str, what: impl Into<String>, mend: &str) -> Trouble {
    Trouble::new(TroubleKind::Refused, place, what, mend)
}

#[cfg(test)]
mod tests;

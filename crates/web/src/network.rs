//! The shop's network: the names this program answers to on it, what is known of its devices
//! for a moment, and how much each may ask for.

use jiff::Timestamp;
use shop::access::{Access, DeviceCard, SignIn};
use shop::{Service, Trouble};
use std::collections::{HashMap, HashSet};
use std::net::IpAddr;
use std::sync::{Arc, Mutex, MutexGuard, PoisonError, RwLock};
use std::time::{Duration, Instant};

/// How a program is reached over the shop's network.
#[derive(Clone, Default)]
pub struct Network {
    names: Arc<RwLock<Names>>,
    known: Arc<Mutex<HashMap<String, Read>>>,
    asked: Arc<Mutex<HashMap<String, Allowance>>>,
    /// What was noted lately as opened: day, person and page.
    opened: Arc<Mutex<HashSet<(i64, String, String)>>>,
}

/// What was found of a device's key, and when it was looked up.
type Read = (Instant, Option<Known>);

/// Where it is reached.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Names {
    /// Host and port of each name and address, as a browser writes them, the best first.
    pub hosts: Vec<String>,
    /// The page in plain HTTP that says what to install, without a trailing slash.
    pub help: Option<String>,
}

/// A device and who is signed in on it.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Known {
    pub device: String,
    pub card: DeviceCard,
    pub signed: Option<(String, SignIn)>,
    /// Whether nothing was done at a desk for too long.
    pub idle: bool,
}

/// What came over which connection.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Peer {
    pub address: IpAddr,
    /// Whether it is encrypted, so that nobody between can read it.
    pub secure: bool,
    /// Whether it came in at the door for this machine alone.
    pub here: bool,
}

/// What a device may still ask for, in requests.
#[derive(Debug, Clone, Copy)]
struct Allowance {
    at: Instant,
    left: f64,
}

/// For so long what was read of a device counts: a device that is put out is out within it.
const KNOWN_FOR: Duration = Duration::from_secs(1);
/// A page with its files and a queue that empties are a few dozen requests.
const AT_ONCE: f64 = 400.0;
const EACH_SECOND: f64 = 60.0;
/// Whoever has not joined may ask for the page that says how.
const STRANGER_AT_ONCE: f64 = 60.0;
const STRANGER_EACH_SECOND: f64 = 5.0;
/// So many are remembered; then those who asked longest ago are forgotten.
const MOST_REMEMBERED: usize = 4_096;

impl Network {
    /// A program that is reached so.
    #[must_use]
    pub fn new(names: Names) -> Self {
        let network = Self::default();
        network.rename(names);
        network
    }

    /// The machine has other addresses now.
    pub fn rename(&self, names: Names) {
        *self.names.write().unwrap_or_else(PoisonError::into_inner) = names;
    }

    /// Where it is reached.
    #[must_use]
    pub fn names(&self) -> Names {
        self.names
            .read()
            .unwrap_or_else(PoisonError::into_inner)
            .clone()
    }

    pub(crate) fn is_named(&self, host: &str) -> bool {
        let names = self.names.read().unwrap_or_else(PoisonError::into_inner);
        names.hosts.iter().any(|own| own.eq_ignore_ascii_case(host))
    }

    /// The device that shows this key, with who is signed in on it.
    pub(crate) fn known(&self, service: &Service, key: &str) -> Result<Option<Known>, Trouble> {
        if let Some((at, known)) = lock(&self.known).get(key)
            && at.elapsed() < KNOWN_FOR
        {
            return Ok(known.clone());
        }
        let known = read(&service.access(), service.now(), key)?;
        let mut all = lock(&self.known);
        if all.len() >= MOST_REMEMBERED {
            all.retain(|_, (at, _)| at.elapsed() < KNOWN_FOR);
        }
        all.insert(key.to_owned(), (Instant::now(), known.clone()));
        Ok(known)
    }

    /// Whether this person opens this page for the first time on this day, as far as this
    /// program knows.
    pub(crate) fn opens(&self, day: i64, person: &str, page: &str) -> bool {
        let mut opened = lock(&self.opened);
        if opened.len() >= MOST_REMEMBERED {
            opened.clear();
        }
        opened.insert((day, person.to_owned(), page.to_owned()))
    }

    /// Something changed: what was read before counts no more.
    pub(crate) fn forget(&self) {
        lock(&self.known).clear();
    }

    /// Whether somebody may ask once more now: a device by its name, a stranger by address.
    pub(crate) fn may_ask(&self, who: &str, joined: bool) -> bool {
        let (most, rate) = if joined {
            (AT_ONCE, EACH_SECOND)
        } else {
            (STRANGER_AT_ONCE, STRANGER_EACH_SECOND)
        };
        let mut asked = lock(&self.asked);
        if asked.len() >= MOST_REMEMBERED {
            asked.retain(|_, one| one.at.elapsed() < Duration::from_secs(60));
        }
        let now = Instant::now();
        let allowance = asked.entry(who.to_owned()).or_insert(Allowance {
            at: now,
            left: most,
        });
        let since = now.duration_since(allowance.at).as_secs_f64();
        allowance.left = (allowance.left + since * rate).min(most);
        allowance.at = now;
        if allowance.left < 1.0 {
            return false;
        }
        allowance.left -= 1.0;
        true
    }
}

fn read(access: &Access<'_>, now: Timestamp, key: &str) -> Result<Option<Known>, Trouble> {
    let Some((device, card)) = access.device_with(key)? else {
        return Ok(None);
    };
    let signed = access.standing(&device)?;
    let idle = match &signed {
        Some((_, signed)) => access.is_idle(&card, signed.proved_at.min(now))?,
        None => false,
    };
    Ok(Some(Known {
        device,
        card,
        signed,
        idle,
    }))
}

fn lock<T>(mutex: &Mutex<T>) -> MutexGuard<'_, T> {
    mutex.lock().unwrap_or_else(PoisonError::into_inner)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_flood_is_held_and_nobody_else_with_it() {
        let network = Network::default();
        let taken = (0..1_000)
            .filter(|_| network.may_ask("phone", true))
            .count();
        assert!((400..500).contains(&taken), "{taken}");
        let taken = (0..1_000)
            .filter(|_| network.may_ask("10.0.0.9", false))
            .count();
        assert!((60..70).contains(&taken), "{taken}");
        assert!(network.may_ask("tablet", true));
    }

    #[test]
    fn names_are_compared_as_browsers_write_them() {
        let hosts = vec!["desk.local:7462".to_owned(), "192.168.1.5:7462".to_owned()];
        let network = Network::new(Names { hosts, help: None });
        assert!(network.is_named("DESK.local:7462") && network.is_named("192.168.1.5:7462"));
        assert!(!network.is_named("desk.local") && !network.is_named("evil.example:7462"));
    }
}

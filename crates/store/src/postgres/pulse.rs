//! Whether a server is there at all, asked only when it is slow to answer.

use std::sync::{Mutex, PoisonError, mpsc};
use std::thread;
use std::time::{Duration, Instant};

use super::tls::Address;

/// How long a server may take to greet a new connection.
const GREETING: Duration = Duration::from_secs(2);

/// How long what was found is gone by.
const HOLDS: Duration = Duration::from_secs(1);

#[derive(Default)]
pub(super) struct Pulse(Mutex<Option<Felt>>);

#[derive(Clone, Copy)]
struct Felt {
    at: Instant,
    beats: bool,
}

impl Felt {
    fn holds(self) -> bool {
        self.at.elapsed() < HOLDS
    }
}

impl Pulse {
    /// Whether nothing was felt a moment ago: then nobody has to wait to find out again. Does
    /// not wait for who is feeling now.
    pub(super) fn was_missed(&self) -> bool {
        let felt = self.0.try_lock().ok().and_then(|felt| *felt);
        felt.is_some_and(|felt| felt.holds() && !felt.beats)
    }

    /// Whether the server greets a new connection. Those who ask at once share one answer.
    pub(super) fn beats(&self, address: &Address) -> bool {
        let mut felt = self.0.lock().unwrap_or_else(PoisonError::into_inner);
        if let Some(felt) = *felt
            && felt.holds()
        {
            return felt.beats;
        }
        let beats = greets(address.clone());
        *felt = Some(Felt {
            at: Instant::now(),
            beats,
        });
        beats
    }
}

fn greets(address: Address) -> bool {
    let (answer, answers) = mpsc::sync_channel(1);
    let asking = thread::Builder::new()
        .name("store pulse".to_owned())
        .spawn(move || {
            let greeted = address.connect();
            // A server that has too many connections is there; so is one that refuses.
            let there = greeted.map_or_else(|error| error.code().is_some(), |_| true);
            // Whoever asked may have given up.
            let _ = answer.send(there);
        });
    asking.is_ok() && answers.recv_timeout(GREETING).unwrap_or(false)
}

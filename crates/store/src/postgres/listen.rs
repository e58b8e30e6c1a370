//! Hearing of commits, this program's and others': by notice, and by polling in case a
//! notice was lost.

use std::collections::BTreeMap;
use std::io;
use std::sync::Arc;
use std::sync::atomic::{AtomicBool, Ordering};
use std::thread;
use std::time::{Duration, Instant};

use postgres::Client;
use postgres::fallible_iterator::FallibleIterator;

use super::connect::{Connection, connect, engine_error};
use super::read;
use super::tls::Address;
use crate::error::{EngineError, OpenError};
use crate::watch::Watchers;

/// How often all heads are looked at, whatever was heard.
const POLL: Duration = Duration::from_secs(5);

/// How soon the listener notices that the store was dropped.
const LOOK_UP: Duration = Duration::from_millis(250);

/// How long it waits before it tries an unreachable server again.
const RECONNECT: Duration = Duration::from_secs(1);

/// Tells every program that listens, this one included.
pub(super) fn notify(client: &mut Client, log: &str, position: u64) -> Result<(), EngineError> {
    // After the commit, not within it: a notice in a transaction would make the commits of
    // all shops wait for one another.
    client
        .execute(
            "SELECT pg_notify('buttonup', $1)",
            &[&format!("{position} {log}")],
        )
        .map(|_| ())
        .map_err(|error| engine_error(&error))
}

/// Starts the listener; it ends by itself once `stopped` is set.
pub(super) fn start(
    address: Address,
    told: BTreeMap<String, u64>,
    watchers: Arc<Watchers>,
    stopped: Arc<AtomicBool>,
) -> io::Result<()> {
    let mut listener = Listener {
        told,
        watchers,
        stopped,
    };
    thread::Builder::new()
        .name("store listener".to_owned())
        .spawn(move || {
            while !listener.is_stopped() {
                // An unreachable server is told to whoever reads or appends.
                if listener.listen(&address).is_err() && !listener.is_stopped() {
                    thread::sleep(RECONNECT);
                }
            }
        })
        .map(|_| ())
}

struct Listener {
    /// What the watchers know: each log's last position.
    told: BTreeMap<String, u64>,
    watchers: Arc<Watchers>,
    stopped: Arc<AtomicBool>,
}

impl Listener {
    fn is_stopped(&self) -> bool {
        self.stopped.load(Ordering::Relaxed)
    }

    /// Listens until the connection breaks or the store is dropped.
    fn listen(&mut self, address: &Address) -> Result<(), OpenError> {
        let fault = |error: postgres::Error| engine_error(&error);
        let mut connection = connect(address)?;
        connection
            .client
            .batch_execute("LISTEN buttonup")
            .map_err(fault)?;
        // Whatever came while nobody listened.
        let mut polled = self.poll(&mut connection)?;
        while !self.is_stopped() {
            let heard = connection
                .client
                .notifications()
                .timeout_iter(LOOK_UP)
                .next()
                .map_err(fault)?;
            if let Some(notice) = heard
                && let Some((position, log)) = notice.payload().split_once(' ')
                && let Ok(position) = position.parse()
            {
                self.tell(log, position);
            }
            if polled.elapsed() >= POLL {
                polled = self.poll(&mut connection)?;
            }
        }
        Ok(())
    }

    fn poll(&mut self, connection: &mut Connection) -> Result<Instant, EngineError> {
        for (log, position) in read::heads(&mut connection.link())? {
            self.tell(&log, position);
        }
        Ok(Instant::now())
    }

    fn tell(&mut self, log: &str, position: u64) {
        let known = self.told.entry(log.to_owned()).or_default();
        if position > *known {
            *known = position;
            self.watchers
                .tell(&BTreeMap::from([(log.to_owned(), position)]));
        }
    }
}

//! A few connections, lent to whoever works. Each is held by a thread of its own, so that
//! nobody has to wait for a server that does not answer: whoever asked is told, and the thread
//! is left behind until the server lets go of it.

use std::io;
use std::sync::mpsc::{self, Receiver, RecvTimeoutError, Sender};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread;
use std::time::Duration;

use super::connect::{Connection, connect};
use super::pulse::Pulse;
use super::tls::Address;
use crate::error::{EngineError, OpenError};

/// How many connections one program holds at most: a server allows a hundred in all
/// unless told otherwise, and several programs share it.
const MOST_CONNECTIONS: usize = 16;

/// How long an answer may take before it is asked whether the server is there at all. Whatever
/// takes longer is waited for as long as the server answers others.
const PATIENCE: Duration = Duration::from_secs(1);

pub(super) struct Pool {
    address: Arc<Address>,
    state: Mutex<State>,
    given_back: Condvar,
    pulse: Pulse,
}

struct State {
    idle: Vec<Worker>,
    lent: usize,
}

/// Does jobs on its connection, and ends when this is dropped.
struct Worker(Sender<Job>);

type Job = Box<dyn FnOnce(&mut Option<Connection>) + Send>;

impl Pool {
    pub(super) fn new(address: Address, first: Connection) -> io::Result<Self> {
        Ok(Self {
            address: Arc::new(address),
            state: Mutex::new(State {
                idle: vec![Worker::start(Some(first))?],
                lent: 0,
            }),
            given_back: Condvar::new(),
            pulse: Pulse::default(),
        })
    }

    /// Does some work on a connection of its own. An idle connection may have died
    /// with its server, unnoticed: then the work is done again on a new one. That is
    /// safe for appending as well, because a command counts once.
    pub(super) fn with<T: Send + 'static>(
        &self,
        work: impl Fn(&mut Connection) -> Result<T, EngineError> + Send + 'static,
    ) -> Result<T, EngineError> {
        if self.pulse.was_missed() {
            return Err(silent());
        }
        let mut loan = self.lend()?;
        let worker = match loan.worker.take() {
            Some(worker) => worker,
            None => Worker::start(None).map_err(|error| EngineError::Refused {
                what: error.to_string(),
            })?,
        };
        let (answer, answers) = mpsc::sync_channel(1);
        let address = Arc::clone(&self.address);
        let job: Job = Box::new(move |connection| {
            // Whoever asked may have given up.
            let _ = answer.send(done(connection, &address, work));
        });
        worker.0.send(job).map_err(|_| EngineError::Stopped)?;
        let answer = self.wait_for(&answers)?;
        loan.worker = Some(worker);
        answer
    }

    /// Waits as long as the server is there.
    fn wait_for<T>(&self, answers: &Receiver<T>) -> Result<T, EngineError> {
        loop {
            match answers.recv_timeout(PATIENCE) {
                Ok(answer) => return Ok(answer),
                Err(RecvTimeoutError::Disconnected) => return Err(EngineError::Stopped),
                Err(RecvTimeoutError::Timeout) if self.pulse.beats(&self.address) => {}
                Err(RecvTimeoutError::Timeout) => return Err(silent()),
            }
        }
    }

    /// Leave to use one connection: an idle one, or none yet.
    fn lend(&self) -> Result<Loan<'_>, EngineError> {
        let mut state = self.state();
        while state.lent >= MOST_CONNECTIONS {
            let (woken, slept) = self
                .given_back
                .wait_timeout(state, PATIENCE)
                .unwrap_or_else(PoisonError::into_inner);
            state = woken;
            if slept.timed_out() && state.lent >= MOST_CONNECTIONS {
                drop(state);
                if !self.pulse.beats(&self.address) {
                    return Err(silent());
                }
                state = self.state();
            }
        }
        state.lent += 1;
        Ok(Loan {
            pool: self,
            worker: state.idle.pop(),
        })
    }

    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

fn silent() -> EngineError {
    EngineError::Unreachable {
        what: "the server does not answer".to_owned(),
    }
}

fn done<T>(
    slot: &mut Option<Connection>,
    address: &Address,
    work: impl Fn(&mut Connection) -> Result<T, EngineError>,
) -> Result<T, EngineError> {
    if let Some(connection) = slot {
        match work(connection) {
            Err(EngineError::Unreachable { .. }) => *slot = None,
            answer => return answer,
        }
    }
    let connection = connect(address).map_err(|error| match error {
        OpenError::Engine(error) => error,
        other => EngineError::Unreachable {
            what: other.to_string(),
        },
    })?;
    let answer = work(slot.insert(connection));
    if matches!(answer, Err(EngineError::Unreachable { .. })) {
        *slot = None;
    }
    answer
}

impl Worker {
    fn start(mut connection: Option<Connection>) -> io::Result<Self> {
        let (jobs, to_do) = mpsc::channel::<Job>();
        thread::Builder::new()
            .name("store connection".to_owned())
            .spawn(move || {
                for job in to_do {
                    job(&mut connection);
                }
            })?;
        Ok(Self(jobs))
    }
}

/// Gives its worker back when dropped, also by a panic.
struct Loan<'a> {
    pool: &'a Pool,
    worker: Option<Worker>,
}

impl Drop for Loan<'_> {
    fn drop(&mut self) {
        let mut state = self.pool.state();
        state.lent -= 1;
        state.idle.extend(self.worker.take());
        drop(state);
        self.pool.given_back.notify_one();
    }
}

//! A few connections, lent to whoever works.

use std::sync::{Condvar, Mutex, MutexGuard, PoisonError};

use postgres::Config;

use super::connect::{Connection, connect};
use crate::error::{EngineError, OpenError};

/// How many connections one program holds at most: a server allows a hundred in all
/// unless told otherwise, and several programs share it.
const MOST_CONNECTIONS: usize = 16;

pub(super) struct Pool {
    config: Config,
    state: Mutex<State>,
    given_back: Condvar,
}

struct State {
    idle: Vec<Connection>,
    lent: usize,
}

impl Pool {
    pub(super) fn new(config: Config, first: Connection) -> Self {
        Self {
            config,
            state: Mutex::new(State {
                idle: vec![first],
                lent: 0,
            }),
            given_back: Condvar::new(),
        }
    }

    /// Does some work on a connection of its own. An idle connection may have died
    /// with its server, unnoticed: then the work is done again on a new one. That is
    /// safe for appending as well, because a command counts once.
    pub(super) fn with<T>(
        &self,
        work: impl Fn(&mut Connection) -> Result<T, EngineError>,
    ) -> Result<T, EngineError> {
        let mut loan = self.lend();
        if let Some(connection) = &mut loan.connection {
            match work(connection) {
                Err(EngineError::Unreachable { .. }) => {
                    loan.connection = None;
                    // The other idle ones died with the same server.
                    drop(self.take_idle());
                }
                answer => return answer,
            }
        }
        let connection = connect(&self.config).map_err(|error| match error {
            OpenError::Engine(error) => error,
            other => EngineError::Unreachable {
                what: other.to_string(),
            },
        })?;
        let answer = work(loan.connection.insert(connection));
        if matches!(answer, Err(EngineError::Unreachable { .. })) {
            loan.connection = None;
        }
        answer
    }

    pub(super) fn take_idle(&self) -> Vec<Connection> {
        std::mem::take(&mut self.state().idle)
    }

    /// Leave to use one connection: an idle one, or none yet.
    fn lend(&self) -> Loan<'_> {
        let mut state = self
            .given_back
            .wait_while(self.state(), |state| state.lent >= MOST_CONNECTIONS)
            .unwrap_or_else(PoisonError::into_inner);
        state.lent += 1;
        Loan {
            pool: self,
            connection: state.idle.pop(),
        }
    }

    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// Gives its connection back when dropped, also by a panic.
struct Loan<'a> {
    pool: &'a Pool,
    connection: Option<Connection>,
}

impl Drop for Loan<'_> {
    fn drop(&mut self) {
        let mut state = self.pool.state();
        state.lent -= 1;
        state.idle.extend(self.connection.take());
        drop(state);
        self.pool.given_back.notify_one();
    }
}

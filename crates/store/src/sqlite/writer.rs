//! The one writer: it commits once for all that came together.

use std::collections::BTreeMap;
use std::sync::Arc;

use rusqlite::{Connection, Transaction, TransactionBehavior};

use super::connect::engine_error;
use super::files::Files;
use super::purge::Purge;
use super::transaction::{Touched, Writing};
use crate::append::append;
use crate::error::{AppendError, EngineError};
use crate::row::{Command, Outcome};
use crate::watch::Watchers;

pub(super) type Answers = Vec<Result<Outcome, AppendError>>;

/// Work on the caches, in a commit of its own: no append fails with it.
pub(super) type CardWork = Box<dyn FnOnce(&mut Connection) + Send>;

/// The only connection that writes, and what it has still to do.
pub(super) struct Writer {
    connection: Connection,
    files: Files,
    watchers: Arc<Watchers>,
    purge: Purge,
}

impl Writer {
    pub(super) fn new(connection: Connection, files: Files, watchers: Arc<Watchers>) -> Self {
        Self {
            connection,
            files,
            watchers,
            purge: Purge::default(),
        }
    }

    /// One transaction for all jobs. If it fails as a whole, every command in it fails.
    pub(super) fn commit(&mut self, jobs: &[&[Command]]) -> Vec<Answers> {
        let Self {
            connection,
            files,
            purge,
            ..
        } = self;
        let mut touched = Touched::default();
        let answers = match transact(connection, files, jobs, &mut touched, purge) {
            Ok(answers) => {
                purge.add_erased(touched.erased);
                answers
            }
            Err(error) => {
                purge.add_unwanted(touched.written);
                let answers = jobs
                    .iter()
                    .map(|commands| vec![Err(error.clone().into()); commands.len()]);
                answers.collect()
            }
        };
        self.purge();
        answers
    }

    pub(super) fn cards(&mut self, work: CardWork) {
        work(&mut self.connection);
    }

    /// Tells who wants to hear of it that logs have grown.
    pub(super) fn tell(&self, news: &BTreeMap<String, u64>) {
        self.watchers.tell(news);
    }

    /// Finishes what ends of transactions left, as far as that is possible now.
    pub(super) fn purge(&mut self) {
        self.purge.run(&self.connection, &self.files);
    }

    pub(super) fn purge_is_due(&self) -> bool {
        self.purge.is_due()
    }
}

fn transact(
    connection: &mut Connection,
    files: &Files,
    jobs: &[&[Command]],
    touched: &mut Touched,
    purge: &mut Purge,
) -> Result<Vec<Answers>, EngineError> {
    let fault = |error: rusqlite::Error| engine_error(&error);
    let mut transaction = connection
        .transaction_with_behavior(TransactionBehavior::Immediate)
        .map_err(fault)?;
    if let [[command]] = jobs {
        // Nobody else is in it: if the command fails, so may the transaction.
        let answer = append_to(&transaction, files, command, touched, purge);
        let ended = match answer {
            Ok(_) => transaction.commit(),
            Err(_) => transaction.finish(),
        };
        ended.map_err(fault)?;
        return Ok(vec![vec![answer]]);
    }
    let mut answers = Vec::with_capacity(jobs.len());
    for commands in jobs {
        let mut of_job = Vec::with_capacity(commands.len());
        for command in *commands {
            of_job.push(append_alone(
                &mut transaction,
                files,
                command,
                touched,
                purge,
            )?);
        }
        answers.push(of_job);
    }
    transaction.commit().map_err(fault)?;
    Ok(answers)
}

/// Appends one command in a savepoint, so that it fails alone. The outer error is one
/// that has already ended the whole transaction.
fn append_alone(
    transaction: &mut Transaction<'_>,
    files: &Files,
    command: &Command,
    touched: &mut Touched,
    purge: &mut Purge,
) -> Result<Result<Outcome, AppendError>, EngineError> {
    let fault = |error: rusqlite::Error| engine_error(&error);
    let savepoint = transaction.savepoint().map_err(fault)?;
    match append_to(&savepoint, files, command, touched, purge) {
        Ok(outcome) => {
            savepoint.commit().map_err(fault)?;
            Ok(Ok(outcome))
        }
        Err(AppendError::Engine(error)) if savepoint.is_autocommit() => Err(error),
        Err(error) => {
            savepoint.finish().map_err(fault)?;
            Ok(Err(error))
        }
    }
}

/// Appends one command, and remembers what its transaction's end will leave.
fn append_to(
    connection: &Connection,
    files: &Files,
    command: &Command,
    touched: &mut Touched,
    purge: &mut Purge,
) -> Result<Outcome, AppendError> {
    let mut writing = Writing {
        connection,
        files,
        touched: Touched::default(),
    };
    let answer = append(&mut writing, command);
    let here = writing.touched;
    if answer.is_ok() {
        touched.erased.extend(here.erased);
        touched.written.extend(here.written);
    } else {
        purge.add_unwanted(here.written);
    }
    answer
}

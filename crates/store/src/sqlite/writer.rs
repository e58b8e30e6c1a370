//! The one writer: it commits once for all that came together.

use std::collections::BTreeMap;
use std::sync::Arc;

use rusqlite::{Connection, Transaction, TransactionBehavior};

use super::connect::engine_error;
use super::files::Files;
use super::identity::Identity;
use super::purge::Purge;
use super::transaction::{Touched, Writing};
use crate::append::{Heads, Part, append};
use crate::error::{AppendError, EngineError};
use crate::row::{Command, Outcome};
use crate::watch::Watchers;

pub(super) type Answers = Vec<Result<Outcome, AppendError>>;

/// Commands that came together, and what they are part of.
pub(super) type Work<'a> = (&'a [Command], Part);

/// Work on the caches, in a commit of its own: no append fails with it.
pub(super) type CardWork = Box<dyn FnOnce(&mut Connection) + Send>;

/// The only connection that writes, and what it has still to do.
pub(super) struct Writer {
    connection: Connection,
    files: Files,
    identity: Arc<Identity>,
    watchers: Arc<Watchers>,
    purge: Purge,
}

impl Writer {
    pub(super) fn new(
        connection: Connection,
        files: Files,
        identity: Arc<Identity>,
        watchers: Arc<Watchers>,
    ) -> Self {
        Self {
            connection,
            files,
            identity,
            watchers,
            purge: Purge::default(),
        }
    }

    /// One transaction for all jobs. If it fails as a whole, every command in it fails.
    pub(super) fn commit(&mut self, jobs: &[Work<'_>]) -> Vec<Answers> {
        if let Err(gone) = self.identity.check() {
            return failed(jobs, &gone);
        }
        let answers = match self.together(jobs) {
            Ok(Some(answers)) => Ok(answers),
            Ok(None) => self.apart(jobs),
            Err(error) => Err(error),
        };
        self.purge();
        // What was taken away in the middle holds nothing of this, committed or not.
        let answers = answers.and_then(|answers| self.identity.check().map(|()| answers));
        answers.unwrap_or_else(|error| failed(jobs, &error))
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

    /// Needs no savepoints, since a refused command has written nothing. `None`, and all
    /// is taken back, if a command met a fault of the engine's.
    fn together(&mut self, jobs: &[Work<'_>]) -> Result<Option<Vec<Answers>>, EngineError> {
        let transaction = begin(&mut self.connection)?;
        let mut writing = Writing::new(&transaction, &self.files);
        let mut heads = Heads::default();
        let answers = each(jobs, |command, part| {
            match append(&mut writing, &mut heads, command, part) {
                Err(AppendError::Engine(error)) => Err(error),
                answer => Ok(answer),
            }
        });
        let touched = writing.touched;
        let Ok(answers) = answers else {
            self.purge.add_unwanted(touched.written);
            transaction.finish().map_err(|error| engine_error(&error))?;
            return Ok(None);
        };
        end(transaction, &self.files, &heads, touched, &mut self.purge)?;
        Ok(Some(answers))
    }

    /// Each command in a savepoint, so that one that meets a fault fails alone.
    fn apart(&mut self, jobs: &[Work<'_>]) -> Result<Vec<Answers>, EngineError> {
        let mut transaction = begin(&mut self.connection)?;
        let mut heads = Heads::default();
        let mut touched = Touched::default();
        let answers = each(jobs, |command, part| {
            append_alone(
                &mut transaction,
                &self.files,
                &mut heads,
                (command, part),
                &mut touched,
                &mut self.purge,
            )
        });
        match answers {
            Ok(answers) => {
                end(transaction, &self.files, &heads, touched, &mut self.purge)?;
                Ok(answers)
            }
            Err(error) => {
                self.purge.add_unwanted(touched.written);
                Err(error)
            }
        }
    }
}

fn begin(connection: &mut Connection) -> Result<Transaction<'_>, EngineError> {
    connection
        .transaction_with_behavior(TransactionBehavior::Immediate)
        .map_err(|error| engine_error(&error))
}

/// Writes the heads and commits.
fn end(
    transaction: Transaction<'_>,
    files: &Files,
    heads: &Heads,
    touched: Touched,
    purge: &mut Purge,
) -> Result<(), EngineError> {
    let written = heads.write(&mut Writing::new(&transaction, files));
    let ended = written.and_then(|()| transaction.commit().map_err(|error| engine_error(&error)));
    match ended {
        Ok(()) => purge.add_erased(touched.erased),
        Err(_) => purge.add_unwanted(touched.written),
    }
    ended
}

/// Answers in the order of the commands; the error is one that ended the transaction.
fn each(
    jobs: &[Work<'_>],
    mut append: impl FnMut(&Command, Part) -> Result<Result<Outcome, AppendError>, EngineError>,
) -> Result<Vec<Answers>, EngineError> {
    jobs.iter()
        .map(|(commands, part)| {
            let each = commands.iter().map(|command| append(command, *part));
            each.collect()
        })
        .collect()
}

fn failed(jobs: &[Work<'_>], error: &EngineError) -> Vec<Answers> {
    let failed = |(commands, _): &Work<'_>| vec![Err(error.clone().into()); commands.len()];
    jobs.iter().map(failed).collect()
}

/// Appends one command in a savepoint. The outer error is one that has already ended the
/// whole transaction.
fn append_alone(
    transaction: &mut Transaction<'_>,
    files: &Files,
    heads: &mut Heads,
    (command, part): (&Command, Part),
    touched: &mut Touched,
    purge: &mut Purge,
) -> Result<Result<Outcome, AppendError>, EngineError> {
    let fault = |error: rusqlite::Error| engine_error(&error);
    let savepoint = transaction.savepoint().map_err(fault)?;
    let mut writing = Writing::new(&savepoint, files);
    let answer = append(&mut writing, heads, command, part);
    let touched_here = writing.touched;
    match answer {
        Ok(outcome) => {
            savepoint.commit().map_err(fault)?;
            touched.erased.extend(touched_here.erased);
            touched.written.extend(touched_here.written);
            Ok(Ok(outcome))
        }
        Err(error) => {
            purge.add_unwanted(touched_here.written);
            match error {
                AppendError::Engine(error) if savepoint.is_autocommit() => Err(error),
                error => {
                    savepoint.finish().map_err(fault)?;
                    Ok(Err(error))
                }
            }
        }
    }
}

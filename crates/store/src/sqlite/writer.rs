//! The one writer: it drains its queue, commits once for all that waited, and only
//! then answers.

use std::io;
use std::sync::Arc;
use std::sync::mpsc::{Receiver, RecvTimeoutError, SyncSender};
use std::thread::{self, JoinHandle};
use std::time::Duration;

use rusqlite::{Connection, Transaction, TransactionBehavior};

use super::connect::engine_error;
use super::files::Files;
use super::purge::Purge;
use super::transaction::{Touched, Writing};
use crate::append::{append, news};
use crate::error::{AppendError, EngineError};
use crate::row::{Command, Outcome};
use crate::watch::Watchers;

type Answers = Vec<Result<Outcome, AppendError>>;

/// Commands that came together, and where their answers go.
pub(super) struct Job {
    pub(super) commands: Vec<Command>,
    pub(super) answer: SyncSender<Answers>,
}

/// What the writer is asked for.
pub(super) enum Chore {
    Append(Job),
    /// Work on the caches, in a commit of its own: no append fails with it.
    Cards(Box<dyn FnOnce(&mut Connection) + Send>),
}

/// How many jobs share a commit at most, so that the first is not kept waiting for ever.
const MOST_JOBS: usize = 256;

/// How soon an erasure that could not be finished is tried again.
const PURGE_AGAIN: Duration = Duration::from_millis(200);

/// Starts the writer; it ends when the queue's last sender is dropped.
pub(super) fn start(
    connection: Connection,
    files: Files,
    queue: Receiver<Chore>,
    watchers: Arc<Watchers>,
) -> io::Result<JoinHandle<()>> {
    thread::Builder::new()
        .name("store writer".to_owned())
        .spawn(move || run(connection, &files, &queue, &watchers))
}

fn run(mut connection: Connection, files: &Files, queue: &Receiver<Chore>, watchers: &Watchers) {
    let mut purge = Purge::default();
    loop {
        let first = if purge.is_due() {
            queue.recv_timeout(PURGE_AGAIN)
        } else {
            queue.recv().map_err(RecvTimeoutError::from)
        };
        match first {
            Ok(chore) => {
                let mut jobs = Vec::new();
                let mut cards = Vec::new();
                for chore in [chore].into_iter().chain(queue.try_iter()).take(MOST_JOBS) {
                    match chore {
                        Chore::Append(job) => jobs.push(job),
                        Chore::Cards(work) => cards.push(work),
                    }
                }
                if !jobs.is_empty() {
                    let answers = commit(&mut connection, files, &jobs, &mut purge);
                    purge.run(&connection, files);
                    publish(jobs, answers, watchers);
                }
                for work in cards {
                    work(&mut connection);
                }
            }
            Err(RecvTimeoutError::Timeout) => purge.run(&connection, files),
            Err(RecvTimeoutError::Disconnected) => return,
        }
    }
}

/// One transaction for all jobs. If it fails as a whole, every command in it fails.
fn commit(
    connection: &mut Connection,
    files: &Files,
    jobs: &[Job],
    purge: &mut Purge,
) -> Vec<Answers> {
    let mut touched = Touched::default();
    match transact(connection, files, jobs, &mut touched, purge) {
        Ok(answers) => {
            purge.add_erased(touched.erased);
            answers
        }
        Err(error) => {
            purge.add_unwanted(touched.written);
            let answers = jobs
                .iter()
                .map(|job| vec![Err(error.clone().into()); job.commands.len()]);
            answers.collect()
        }
    }
}

fn transact(
    connection: &mut Connection,
    files: &Files,
    jobs: &[Job],
    touched: &mut Touched,
    purge: &mut Purge,
) -> Result<Vec<Answers>, EngineError> {
    let mut transaction = connection
        .transaction_with_behavior(TransactionBehavior::Immediate)
        .map_err(|error| engine_error(&error))?;
    let mut answers = Vec::with_capacity(jobs.len());
    for job in jobs {
        let mut of_job = Vec::with_capacity(job.commands.len());
        for command in &job.commands {
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
    transaction.commit().map_err(|error| engine_error(&error))?;
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
    let mut writing = Writing {
        connection: &savepoint,
        files,
        touched: Touched::default(),
    };
    let answer = append(&mut writing, command);
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

fn publish(jobs: Vec<Job>, answers: Vec<Answers>, watchers: &Watchers) {
    let news = news(answers.iter().flatten());
    for (job, answers) in jobs.into_iter().zip(answers) {
        // Whoever asked may have gone; what was committed stays.
        let _ = job.answer.send(answers);
    }
    watchers.tell(&news);
}

//! Where commands are handed in, and who writes them.
//!
//! Whoever comes while nobody writes or waits writes on the spot: handing over to another
//! thread and back takes two wake-ups, on a busy machine a good part of a commit. What comes
//! meanwhile is taken by the writer's own thread, all of it in one commit.

use std::io;
use std::sync::mpsc::{self, SyncSender};
use std::sync::{Arc, Condvar, Mutex, MutexGuard, PoisonError};
use std::thread::{self, JoinHandle};
use std::time::Duration;

use rusqlite::Connection;

use super::writer::{Answers, CardWork, Writer};
use crate::append::{Part, news};
use crate::row::Command;

/// How many jobs share a commit at most, so that the first is not kept waiting for ever.
const MOST_JOBS: usize = 256;

/// How soon an erasure that could not be finished is tried again.
const PURGE_AGAIN: Duration = Duration::from_millis(200);

pub(super) struct Desk {
    state: Mutex<State>,
    /// The writer's thread sleeps on it.
    work: Condvar,
}

struct State {
    /// `None` while somebody writes, and after the end.
    writer: Option<Writer>,
    waiting: Vec<Chore>,
    /// The store is being closed; what waits is still done.
    closing: bool,
    /// Nothing will be done any more.
    ended: bool,
}

enum Chore {
    Append(Job),
    Cards(CardWork),
}

/// Commands that came together, and where their answers go.
struct Job {
    commands: Vec<Command>,
    part: Part,
    answer: SyncSender<Answers>,
}

/// Opens the desk and starts the thread, which ends after [`Desk::close`].
pub(super) fn open(writer: Writer) -> io::Result<(Arc<Desk>, JoinHandle<()>)> {
    let desk = Arc::new(Desk {
        state: Mutex::new(State {
            writer: Some(writer),
            waiting: Vec::new(),
            closing: false,
            ended: false,
        }),
        work: Condvar::new(),
    });
    let served = Arc::clone(&desk);
    let thread = thread::Builder::new()
        .name("store writer".to_owned())
        .spawn(move || served.serve())?;
    Ok((desk, thread))
}

impl Desk {
    /// Appends; nothing if the writer has stopped.
    pub(super) fn append(&self, commands: Vec<Command>, part: Part) -> Option<Answers> {
        let mut state = self.state();
        if state.waiting.is_empty()
            && let Some(writer) = state.writer.take()
        {
            drop(state);
            return self.turn(writer).append(&commands, part);
        }
        let (answer, answers) = mpsc::sync_channel(1);
        let job = Job {
            commands,
            part,
            answer,
        };
        self.stand_in_line(state, Chore::Append(job));
        answers.recv().ok()
    }

    /// Has work done on the writer's connection; nothing if the writer has stopped.
    pub(super) fn cards<T: Send + 'static>(
        &self,
        work: impl FnOnce(&mut Connection) -> T + Send + 'static,
    ) -> Option<T> {
        let (answer, answers) = mpsc::sync_channel(1);
        let work = move |connection: &mut Connection| {
            // Whoever asked may have gone.
            let _ = answer.send(work(connection));
        };
        self.stand_in_line(self.state(), Chore::Cards(Box::new(work)));
        answers.recv().ok()
    }

    /// Lets the thread end once nobody waits, and the connection with it.
    pub(super) fn close(&self) {
        self.state().closing = true;
        self.work.notify_one();
    }

    fn stand_in_line(&self, mut state: MutexGuard<'_, State>, chore: Chore) {
        // After the end it is dropped here, and so is its sender: that is the answer.
        if !state.ended {
            state.waiting.push(chore);
            self.work.notify_one();
        }
    }

    /// The thread's life.
    fn serve(&self) {
        let mut state = self.state();
        while !state.ended {
            if !state.waiting.is_empty()
                && let Some(writer) = state.writer.take()
            {
                let most = state.waiting.len().min(MOST_JOBS);
                let chores = state.waiting.drain(..most).collect();
                drop(state);
                self.turn(writer).work_off(chores);
                state = self.state();
            } else if state.closing && state.writer.take().is_some() {
                state.ended = true;
            } else if state.purge_is_due() {
                state = self.sleep_and_purge(state);
            } else {
                // Whoever writes on the spot wakes this thread if there is work for it.
                let woken = self.work.wait(state);
                state = woken.unwrap_or_else(PoisonError::into_inner);
            }
        }
    }

    fn sleep_and_purge<'a>(&'a self, state: MutexGuard<'a, State>) -> MutexGuard<'a, State> {
        let woken = self.work.wait_timeout(state, PURGE_AGAIN);
        let (mut state, slept) = woken.unwrap_or_else(PoisonError::into_inner);
        if slept.timed_out()
            && let Some(writer) = state.writer.take()
        {
            drop(state);
            self.turn(writer).writer().purge();
            state = self.state();
        }
        state
    }

    fn turn(&self, writer: Writer) -> Turn<'_> {
        Turn {
            desk: self,
            writer: Some(writer),
        }
    }

    fn state(&self) -> MutexGuard<'_, State> {
        self.state.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl State {
    fn purge_is_due(&self) -> bool {
        self.writer.as_ref().is_some_and(Writer::purge_is_due)
    }
}

/// The writer in somebody's hands; it goes back to the desk when this is dropped.
struct Turn<'a> {
    desk: &'a Desk,
    writer: Option<Writer>,
}

impl Turn<'_> {
    fn writer(&mut self) -> &mut Writer {
        self.writer.as_mut().expect("it goes back when dropped")
    }

    fn append(&mut self, commands: &[Command], part: Part) -> Option<Answers> {
        let mut answers = self.writer().commit(&[(commands, part)]);
        self.writer().tell(&news(answers.iter().flatten()));
        answers.pop()
    }

    fn work_off(&mut self, chores: Vec<Chore>) {
        let (mut jobs, mut cards) = (Vec::new(), Vec::new());
        for chore in chores {
            match chore {
                Chore::Append(job) => jobs.push(job),
                Chore::Cards(work) => cards.push(work),
            }
        }
        if !jobs.is_empty() {
            let commands: Vec<_> = jobs
                .iter()
                .map(|job| (&job.commands[..], job.part))
                .collect();
            let answers = self.writer().commit(&commands);
            let news = news(answers.iter().flatten());
            for (job, answers) in jobs.into_iter().zip(answers) {
                // Whoever asked may have gone; what was committed stays.
                let _ = job.answer.send(answers);
            }
            self.writer().tell(&news);
        }
        for work in cards {
            self.writer().cards(work);
        }
    }
}

impl Drop for Turn<'_> {
    fn drop(&mut self) {
        let mut state = self.desk.state();
        if thread::panicking() {
            // Nobody knows how far it came: nothing is written any more, and all who wait
            // are told so. What was committed stays.
            state.ended = true;
            state.waiting.clear();
        } else {
            state.writer = self.writer.take();
        }
        if state.ended || state.closing || !state.waiting.is_empty() || state.purge_is_due() {
            self.desk.work.notify_one();
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use std::path::Path;

    fn desk(folder: &Path) -> (Arc<Desk>, JoinHandle<()>) {
        let connection = Connection::open(folder.join("store.db")).unwrap();
        let files = super::super::files::Files::open(folder).unwrap();
        let identity = super::super::identity::Identity::of(&folder.join("store.db"));
        open(Writer::new(
            connection,
            files,
            Arc::new(identity),
            Arc::default(),
        ))
        .unwrap()
    }

    #[test]
    fn closing_does_what_waits_and_ends_the_thread() {
        let folder = tempfile::tempdir().unwrap();
        let (desk, thread) = desk(folder.path());
        let (began, begins) = mpsc::channel();
        let (let_go, goes) = mpsc::channel::<()>();
        thread::scope(|scope| {
            let slow = scope.spawn(|| {
                desk.cards(move |_| {
                    began.send(()).unwrap();
                    goes.recv().unwrap();
                })
            });
            begins.recv().unwrap();
            let waits = scope.spawn(|| desk.cards(|_| 7));
            while desk.state().waiting.is_empty() {
                thread::yield_now();
            }
            desk.close();
            let_go.send(()).unwrap();
            assert_eq!(slow.join().unwrap(), Some(()));
            assert_eq!(waits.join().unwrap(), Some(7));
        });
        thread.join().unwrap();
        assert_eq!(desk.cards(|_| 7), None, "after the end");
        assert!(
            desk.append(Vec::new(), Part::OfWork).is_none(),
            "after the end"
        );
    }

    #[test]
    fn if_the_writer_panics_all_who_wait_are_told_that_it_stopped() {
        let folder = tempfile::tempdir().unwrap();
        let (desk, thread) = desk(folder.path());
        let (began, begins) = mpsc::channel();
        let (let_go, goes) = mpsc::channel::<()>();
        thread::scope(|scope| {
            let fails = scope.spawn(|| {
                desk.cards(move |_| {
                    began.send(()).unwrap();
                    goes.recv().unwrap();
                    panic!("on purpose");
                })
            });
            begins.recv().unwrap();
            let waits = scope.spawn(|| desk.append(Vec::new(), Part::OfWork));
            while desk.state().waiting.is_empty() {
                thread::yield_now();
            }
            let_go.send(()).unwrap();
            assert_eq!(fails.join().unwrap(), None);
            assert!(waits.join().unwrap().is_none());
        });
        assert!(thread.join().is_err());
        assert!(desk.append(Vec::new(), Part::OfWork).is_none());
    }
}

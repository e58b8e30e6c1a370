//! The store of one shop on one machine: a folder with an SQLite database, larger
//! files beside it, and a lock that keeps a second program out.

mod access;
mod backup;
mod cards;
mod connect;
mod desk;
mod faults;
mod files;
mod identity;
mod own;
mod purge;
mod read;
mod schema;
mod transaction;
mod writer;

use std::path::Path;
use std::sync::{Arc, Mutex, PoisonError};
use std::thread::JoinHandle;

use rusqlite::{Connection, TransactionBehavior};

use self::connect::{Lock, Opened, connect};
use self::desk::Desk;
use self::files::Files;
use self::identity::Identity;
use self::purge::Purge;
use self::schema::Has;
use self::transaction::Writing;
use self::writer::Writer;
use crate::access::{Access, AccessChange};
use crate::append::{self, Part};
use crate::cache::{CacheChange, Card, Wanted};
use crate::error::{AppendError, EngineError, OpenError, ReadError};
use crate::row::{Command, Hash, Head, Outcome, Private, Row, StreamHead};
use crate::watch::Watchers;
use crate::{OnAppend, Store};

/// How many readers' connections are kept open for the next ones.
const MOST_IDLE_READERS: usize = 8;

/// A store in a folder.
pub struct Sqlite {
    files: Files,
    database: std::path::PathBuf,
    readers: Mutex<Vec<Connection>>,
    watchers: Arc<Watchers>,
    /// How readers' connections are opened.
    opened: Opened,
    /// What there is of it in a store of an older form that is only read.
    has: Has,
    identity: Arc<Identity>,
    /// Where commands are handed in, and the writer's thread; `None` where nothing may be
    /// appended.
    desk: Option<Arc<Desk>>,
    thread: Option<JoinHandle<()>>,
    /// Held until the store is dropped.
    _lock: Option<Lock>,
}

impl Sqlite {
    /// Opens the store in a folder; makes the folder and the store if there is none yet,
    /// and brings an older form forward.
    ///
    /// # Errors
    /// See [`OpenError`].
    pub fn open(folder: &Path) -> Result<Self, OpenError> {
        Self::open_limited(folder, None)
    }

    /// Like [`Sqlite::open`], with the database held to so many pages of 4096 bytes:
    /// beyond them appending fails as on a full disk. For a share of a disk.
    ///
    /// # Errors
    /// See [`OpenError`].
    pub fn open_limited(folder: &Path, most_pages: Option<u32>) -> Result<Self, OpenError> {
        let database = folder.join("store.db");
        connect::check_remains(folder, &database)?;
        let lock = connect::lock(folder)?;
        let files = Files::open(folder)?;
        connect::close_to_others(&database)?;
        let mut connection = connect(&database, Opened::Write)?;
        schema::bring_forward(&mut connection, &database)?;
        if let Some(pages) = most_pages {
            connection
                .pragma_update(None, "max_page_count", pages)
                .map_err(|error| connect::engine_error(&error))?;
        }
        Purge::at_start(&connection)?.run(&connection, &files);
        let watchers = Arc::new(Watchers::default());
        let identity = Arc::new(Identity::of(&database));
        let writer = Writer::new(
            connection,
            files.clone(),
            Arc::clone(&identity),
            Arc::clone(&watchers),
        );
        let (desk, thread) = desk::open(writer).map_err(|why| OpenError::Folder {
            path: folder.to_owned(),
            why,
        })?;
        Ok(Self {
            files,
            database,
            readers: Mutex::new(Vec::new()),
            watchers,
            opened: Opened::Read,
            has: Has::ALL,
            identity,
            desk: Some(desk),
            thread: Some(thread),
            _lock: Some(lock),
        })
    }

    /// Opens the store in a folder for reading only, also while another program serves it
    /// and where nothing may be written. Appending is refused, and nobody is told of what
    /// the other program appends.
    ///
    /// # Errors
    /// See [`OpenError`]; a folder without a store is not made into one.
    pub fn open_for_reading(folder: &Path) -> Result<Self, OpenError> {
        let database = folder.join("store.db");
        connect::check_remains(folder, &database)?;
        if !database.is_file() {
            return Err(OpenError::NotAStore {
                place: folder.display().to_string(),
                why: "there is no record in it".to_owned(),
            });
        }
        let (connection, opened) = connect::look(&database)?;
        let has = schema::check_readable(&connection, &database)?;
        let identity = Arc::new(Identity::of(&database));
        Ok(Self {
            files: Files::look(folder),
            database,
            readers: Mutex::new(vec![connection]),
            watchers: Arc::default(),
            opened,
            has,
            identity,
            desk: None,
            thread: None,
            _lock: None,
        })
    }

    /// Copies the store, as it stands at one moment, to the new folder `to`; appending
    /// goes on meanwhile. The copy is a store: to restore, open it or a copy of it.
    ///
    /// What was erased before is not in it; what is erased later has to be erased in the
    /// copy as well before it is put to use.
    ///
    /// # Errors
    /// See [`OpenError`]; a folder that already exists is not written to.
    pub fn back_up(&self, to: &Path) -> Result<(), OpenError> {
        let connection = connect(&self.database, self.opened)?;
        backup::back_up(&connection, &self.files, to)
    }

    /// Reads on a connection of its own: readers never wait for the writer.
    fn read<T>(
        &self,
        read: impl FnOnce(&Connection) -> Result<T, EngineError>,
    ) -> Result<T, EngineError> {
        self.identity.check_database()?;
        let idle = self.readers().pop();
        let connection = match idle {
            Some(connection) => connection,
            None => connect(&self.database, self.opened).map_err(|error| match error {
                OpenError::Engine(error) => error,
                other => EngineError::Io {
                    what: other.to_string(),
                },
            })?,
        };
        let answer = read(&connection);
        let mut readers = self.readers();
        if answer.is_ok() && readers.len() < MOST_IDLE_READERS {
            readers.push(connection);
        }
        answer
    }

    fn append_part(&self, commands: Vec<Command>, part: Part) -> Vec<Result<Outcome, AppendError>> {
        let count = commands.len();
        match &self.desk {
            None => vec![Err(only_reading().into()); count],
            Some(desk) => desk
                .append(commands, part)
                .unwrap_or_else(|| vec![Err(EngineError::Stopped.into()); count]),
        }
    }

    /// Has something done on the writer's connection that commits by itself.
    fn write_whole<T, E>(
        &self,
        write: impl FnOnce(&mut Connection) -> Result<T, E> + Send + 'static,
    ) -> Result<T, E>
    where
        T: Send + 'static,
        E: From<EngineError> + Send + 'static,
    {
        self.identity.check()?;
        let desk = self.desk.as_ref().ok_or_else(only_reading)?;
        let done = desk.cards(write).ok_or(EngineError::Stopped)??;
        self.identity.check()?;
        Ok(done)
    }

    fn readers(&self) -> std::sync::MutexGuard<'_, Vec<Connection>> {
        self.readers.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

impl Store for Sqlite {
    fn append_all(&self, commands: Vec<Command>) -> Vec<Result<Outcome, AppendError>> {
        self.append_part(commands, Part::OfWork)
    }

    fn land_all(&self, commands: Vec<Command>) -> Vec<Result<Outcome, AppendError>> {
        self.append_part(commands, Part::OfCopy)
    }

    fn begin_landing(&self, log: &str, to: &Hash) -> Result<(), AppendError> {
        let (files, log, to) = (self.files.clone(), log.to_owned(), *to);
        self.write_whole(move |connection| {
            within(connection, &files, |writing| {
                append::begin_landing(writing, &log, &to)
            })
        })
    }

    fn end_landing(&self, log: &str) -> Result<(), EngineError> {
        let (files, log) = (self.files.clone(), log.to_owned());
        self.write_whole(move |connection| {
            within(connection, &files, |writing| {
                append::end_landing(writing, &log)
            })
        })
    }

    fn landing(&self, log: &str) -> Result<Option<Hash>, ReadError> {
        if !self.has.ends {
            return Ok(None);
        }
        self.read(|connection| read::landing(connection, log))
    }

    fn look_over(&self, log: &str) -> Result<(), ReadError> {
        self.read(|connection| read::look_over(connection, log))
    }

    fn faults(&self) -> Result<Vec<String>, ReadError> {
        self.read(|connection| faults::find(connection, &self.files))
    }

    fn remake(&self) -> Result<(), EngineError> {
        let files = self.files.clone();
        self.write_whole(move |connection| {
            schema::remake(connection)?;
            let strays = faults::strays(connection, &files)?;
            files.put_aside(&strays)
        })
    }

    fn held(&self, log: &str) -> Result<Vec<Hash>, ReadError> {
        self.read(|connection| read::held(connection, log))
    }

    fn stream(&self, log: &str, stream: &str, after_seq: u64) -> Result<Vec<Row>, ReadError> {
        self.read(|connection| read::stream(connection, self.has, log, stream, after_seq))
    }

    fn log(&self, log: &str, after_position: u64, limit: usize) -> Result<Vec<Row>, ReadError> {
        self.read(|connection| read::log(connection, log, after_position, limit))
    }

    fn command(&self, log: &str, command_id: &str) -> Result<Vec<Row>, ReadError> {
        self.read(|connection| read::command(connection, log, command_id))
    }

    fn head(&self, log: &str) -> Result<Head, ReadError> {
        self.read(|connection| read::head(connection, log))
    }

    fn streams(&self, log: &str) -> Result<Vec<StreamHead>, ReadError> {
        self.read(|connection| read::streams(connection, log))
    }

    fn private(&self, log: &str, id: &Hash) -> Result<Option<Private>, ReadError> {
        self.read(|connection| read::private(connection, &self.files, log, id))
    }

    fn is_erased(&self, log: &str, id: &Hash) -> Result<bool, ReadError> {
        self.read(|connection| read::is_erased(connection, log, id))
    }

    fn device_seq(&self, log: &str, device: &str) -> Result<Option<u64>, ReadError> {
        self.read(|connection| read::device_seq(connection, log, device))
    }

    fn cache_head(&self, log: &str, cache: &str) -> Result<Option<Head>, ReadError> {
        if !self.has.caches {
            return Ok(None);
        }
        self.read(|connection| cards::head(connection, log, cache))
    }

    fn cards(&self, log: &str, cache: &str, wanted: &Wanted<'_>) -> Result<Vec<Card>, ReadError> {
        if !self.has.caches {
            return Ok(Vec::new());
        }
        self.read(|connection| cards::find(connection, log, cache, wanted))
    }

    fn change_cache(&self, change: CacheChange) -> Result<bool, EngineError> {
        self.write_whole(move |connection| cards::change(connection, &change))
    }

    fn drop_cache(&self, log: &str, cache: &str) -> Result<(), EngineError> {
        let (log, cache) = (log.to_owned(), cache.to_owned());
        self.write_whole(move |connection| cards::drop(connection, &log, &cache))
    }

    fn caches(&self, log: &str) -> Result<Vec<String>, ReadError> {
        if !self.has.caches {
            return Ok(Vec::new());
        }
        self.read(|connection| cards::caches(connection, log))
    }

    fn accesses(
        &self,
        log: &str,
        drawer: &str,
        key: Option<&str>,
    ) -> Result<Vec<Access>, ReadError> {
        if !self.has.access {
            return Ok(Vec::new());
        }
        self.read(|connection| access::find(connection, log, drawer, key))
    }

    fn change_access(&self, change: AccessChange) -> Result<bool, EngineError> {
        self.write_whole(move |connection| access::change(connection, &change))
    }

    fn logs(&self) -> Result<Vec<String>, ReadError> {
        self.read(read::logs)
    }

    fn on_append(&self, tell: OnAppend) {
        self.watchers.add(tell);
    }
}

/// Does something in one transaction.
fn within<T, E: From<EngineError>>(
    connection: &mut Connection,
    files: &Files,
    act: impl FnOnce(&mut Writing<'_>) -> Result<T, E>,
) -> Result<T, E> {
    let fault = |error: rusqlite::Error| connect::engine_error(&error);
    let transaction = connection
        .transaction_with_behavior(TransactionBehavior::Immediate)
        .map_err(fault)?;
    let done = act(&mut Writing::new(&transaction, files))?;
    transaction.commit().map_err(fault)?;
    Ok(done)
}

fn only_reading() -> EngineError {
    EngineError::ReadOnly {
        what: "it was opened for reading only".to_owned(),
    }
}

impl Drop for Sqlite {
    fn drop(&mut self) {
        self.readers().clear();
        if let Some(desk) = &self.desk {
            desk.close();
        }
        if let Some(thread) = self.thread.take() {
            // A watcher may hold the last handle: the writer can't wait for itself. And one
            // that panicked has already answered `Stopped` to whoever waited.
            if thread.thread().id() != std::thread::current().id() {
                let _ = thread.join();
            }
        }
    }
}

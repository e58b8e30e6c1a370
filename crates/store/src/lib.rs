//! An append-only log with one hash chain a shop.
//!
//! A command brings one or more events; the store gives each a position in its
//! log and a number in its stream, chains it to the row before, and answers only
//! after a synced commit. Personal words and photos stand outside the chain, in
//! `private`, under a commitment that the events hold; they alone can be erased.
//!
//! This crate knows nothing of repair: an event is bytes. It reads no clock and
//! draws no random numbers: times and salts come from the caller.
//!
//! One trait, [`Store`], and three engines behind it that behave alike: [`Memory`]
//! (tests and demonstrations), [`Sqlite`] (one shop, one machine) and [`Postgres`]
//! (several programs on one database).

mod access;
mod append;
mod cache;
mod error;
mod memory;
mod postgres;
mod row;
mod sqlite;
mod verify;
mod watch;

pub use access::{Access, AccessChange};
pub use cache::{CacheChange, Card, Wanted};
pub use error::{AppendError, EngineError, OpenError, ReadError};
pub use memory::Memory;
pub use postgres::Postgres;
pub use row::{
    Command, Hash, Head, NewEvent, Outcome, Private, Row, StreamHead, commitment, first_hash,
};
pub use sqlite::Sqlite;
pub use verify::{Checks, Commitment, Damage, Unreadable, Verified, verify};

/// What is called after each commit with a log's name and its new last position.
///
/// It holds up the answers of others: it must be quick and must not append; it may
/// read. It is a hint: positions may come out of order, so poll [`Store::head`] as well.
pub type OnAppend = Box<dyn Fn(&str, u64) + Send + Sync>;

/// An append-only log. Calls block; call them where blocking is allowed.
///
/// A log or stream that was never written to reads as empty, never as an error.
pub trait Store: Send + Sync {
    /// Appends every command, each for itself: one that is refused holds up none of
    /// the others. The answers stand in the order of the commands. An answer that is
    /// not an error has been committed and synced.
    ///
    /// A command that fails with [`AppendError::Engine`] may or may not be kept when
    /// the machine stops at that moment; sent again with its id it counts once.
    fn append_all(&self, commands: Vec<Command>) -> Vec<Result<Outcome, AppendError>>;

    /// Appends one command; see [`Store::append_all`].
    ///
    /// # Errors
    /// See [`AppendError`].
    fn append(&self, command: Command) -> Result<Outcome, AppendError> {
        self.append_all(vec![command])
            .pop()
            .unwrap_or(Err(AppendError::Engine(EngineError::Stopped)))
    }

    /// Begins setting down a copy whose last row has the hash `to`. Until [`Store::end_landing`]
    /// the log takes only what [`Store::land_all`] brings: half a copy is never taken for a
    /// whole one. Where the same copy was begun before and broke off, it may go on.
    ///
    /// # Errors
    /// [`AppendError::Landing`] if the log holds anything else.
    fn begin_landing(&self, log: &str, to: &Hash) -> Result<(), AppendError>;

    /// Appends what belongs to a copy; else like [`Store::append_all`].
    fn land_all(&self, commands: Vec<Command>) -> Vec<Result<Outcome, AppendError>>;

    /// Says that the copy is all there.
    ///
    /// # Errors
    /// See [`EngineError`].
    fn end_landing(&self, log: &str) -> Result<(), EngineError>;

    /// The hash that a copy will end with which is being set down in a log, or was and broke
    /// off; `None` if the log is whole.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn landing(&self, log: &str) -> Result<Option<Hash>, ReadError>;

    /// Looks quickly whether all rows of a log are there, for whoever starts.
    ///
    /// # Errors
    /// [`EngineError::Damaged`] if there are more or fewer than its head says.
    fn look_over(&self, log: &str) -> Result<(), ReadError>;

    /// Whatever the engine knows to be wrong with what stands beside the rows and can be made
    /// from them again: indexes, files that no row speaks of. Takes long.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn faults(&self) -> Result<Vec<String>, ReadError>;

    /// Makes again from the rows what [`Store::faults`] looks at. Files that no row speaks of
    /// are put aside, not deleted. Takes long.
    ///
    /// # Errors
    /// See [`EngineError`].
    fn remake(&self) -> Result<(), EngineError>;

    /// The commitments of every private content that is kept for a log.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn held(&self, log: &str) -> Result<Vec<Hash>, ReadError>;

    /// The rows of one stream after sequence number `after_seq` (0: all), in order.
    ///
    /// # Errors
    /// See [`ReadError`]; [`EngineError::Damaged`] also where rows are missing.
    fn stream(&self, log: &str, stream: &str, after_seq: u64) -> Result<Vec<Row>, ReadError>;

    /// At most `limit` rows of a log after `after_position` (0: from the first), in order.
    ///
    /// # Errors
    /// See [`ReadError`]; [`EngineError::Damaged`] also where rows are missing.
    fn log(&self, log: &str, after_position: u64, limit: usize) -> Result<Vec<Row>, ReadError>;

    /// The rows that a command made, in order; none if it was never accepted.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn command(&self, log: &str, command_id: &str) -> Result<Vec<Row>, ReadError>;

    /// The last position and hash of a log; position 0 and [`first_hash`] if empty.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn head(&self, log: &str) -> Result<Head, ReadError>;

    /// Every stream of a log with its last sequence number, by name.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn streams(&self, log: &str) -> Result<Vec<StreamHead>, ReadError>;

    /// The private text or file behind a commitment; `None` if it was erased or
    /// never came. What is returned has been checked against its commitment.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn private(&self, log: &str, id: &Hash) -> Result<Option<Private>, ReadError>;

    /// Whether a private content was erased here: it was deleted, and that is remembered.
    /// What never came was not erased.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn is_erased(&self, log: &str, id: &Hash) -> Result<bool, ReadError>;

    /// The highest number that a device has sent to this log; `None` if it sent nothing.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn device_seq(&self, log: &str, device: &str) -> Result<Option<u64>, ReadError>;

    /// Where a cache of a log stands; `None` if there is none of that name.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn cache_head(&self, log: &str, cache: &str) -> Result<Option<Head>, ReadError>;

    /// Cards of one drawer, in the order of their keys or backwards.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn cards(&self, log: &str, cache: &str, wanted: &Wanted<'_>) -> Result<Vec<Card>, ReadError>;

    /// Changes a cache if it stands where the change starts from; false if it does not:
    /// another program was quicker.
    ///
    /// # Errors
    /// See [`EngineError`]. Nothing is lost by it that the log does not hold.
    fn change_cache(&self, change: CacheChange) -> Result<bool, EngineError>;

    /// Throws a cache away, if there is one of that name.
    ///
    /// # Errors
    /// See [`EngineError`].
    fn drop_cache(&self, log: &str, cache: &str) -> Result<(), EngineError>;

    /// The names of a log's caches, in order.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn caches(&self, log: &str) -> Result<Vec<String>, ReadError>;

    /// What stands in a drawer beside a log about who may use it, by key; only the one of this
    /// key, if one is given.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn accesses(
        &self,
        log: &str,
        drawer: &str,
        key: Option<&str>,
    ) -> Result<Vec<Access>, ReadError>;

    /// Changes one such entry; false if it is not of the version that the change starts from.
    /// What is answered has been synced.
    ///
    /// # Errors
    /// See [`EngineError`].
    fn change_access(&self, change: AccessChange) -> Result<bool, EngineError>;

    /// The names of all logs, in order.
    ///
    /// # Errors
    /// See [`ReadError`].
    fn logs(&self) -> Result<Vec<String>, ReadError>;

    /// Asks to be told of every commit from now on.
    fn on_append(&self, tell: OnAppend);
}

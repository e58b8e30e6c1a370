//! How a command becomes rows: written once, run inside each engine's transaction.

use std::collections::BTreeMap;

use crate::error::{AppendError, EngineError};
use crate::row::{Command, Hash, Head, Outcome, Private, Row};

/// What an engine offers inside one transaction.
pub(crate) trait Transaction {
    /// The head of the log, locked until the transaction ends.
    fn lock_head(&mut self, log: &str) -> Result<Locked, EngineError>;
    /// The last row of the log, as it stands among the rows.
    fn last_row(&mut self, log: &str) -> Result<Option<Row>, EngineError>;
    fn command(&mut self, log: &str, command_id: &str) -> Result<Vec<Row>, EngineError>;
    /// Whether a device's row under this number is this command's: the same as
    /// [`Transaction::command`] asks, looked up another way.
    fn device_knows(&mut self, command: &Command) -> Result<bool, EngineError>;
    /// Where a stream ends, as it was noted beside its rows; `None` if it holds nothing.
    fn stream_end(&mut self, log: &str, stream: &str) -> Result<Option<StreamEnd>, EngineError>;
    /// The last row of a stream, as it stands among the rows.
    fn last_of_stream(&mut self, log: &str, stream: &str) -> Result<Option<Row>, EngineError>;
    fn stream(&mut self, log: &str, stream: &str, after: u64) -> Result<Vec<Row>, EngineError>;
    fn insert(&mut self, row: &Row) -> Result<(), EngineError>;
    fn set_head(&mut self, log: &str, head: &Head) -> Result<(), EngineError>;
    fn set_stream_end(
        &mut self,
        log: &str,
        stream: &str,
        end: &StreamEnd,
    ) -> Result<(), EngineError>;
    /// Marks a log as landing, or as landed with `None`; its head is there and locked.
    fn set_landing(&mut self, log: &str, to: Option<&Hash>) -> Result<(), EngineError>;
    /// Keeps a private content, unless it is already kept or was erased.
    fn keep(&mut self, log: &str, private: &Private) -> Result<(), EngineError>;
    /// Deletes a private content and its salt; remembers that it is not to come back.
    fn erase(&mut self, log: &str, id: &Hash) -> Result<(), EngineError>;
}

/// A head that is locked.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Locked {
    pub(crate) head: Head,
    /// The hash that a copy which is being set down here will end with, once all of it is.
    pub(crate) landing: Option<Hash>,
}

/// Where a stream ends. It is noted beside the rows, so that an index which lost some of them
/// is found out by whoever reads or writes.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) struct StreamEnd {
    pub(crate) seq: u64,
    pub(crate) position: u64,
    pub(crate) hash: Hash,
}

impl StreamEnd {
    pub(crate) fn at(row: &Row) -> Self {
        Self {
            seq: row.seq,
            position: row.position,
            hash: row.hash,
        }
    }
}

/// Whether what is appended is part of a copy that is being set down.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Part {
    OfWork,
    OfCopy,
}

/// Where the logs and streams stand that a transaction has appended to. The logs are locked and
/// all were held against their last rows; where they end is written once, at the
/// transaction's end.
#[derive(Default)]
pub(crate) struct Heads {
    logs: BTreeMap<String, Head>,
    streams: BTreeMap<(String, String), StreamEnd>,
}

impl Heads {
    /// The last writing of a transaction that appended anything.
    pub(crate) fn write(&self, transaction: &mut dyn Transaction) -> Result<(), EngineError> {
        for ((log, stream), end) in &self.streams {
            transaction.set_stream_end(log, stream, end)?;
        }
        self.logs
            .iter()
            .try_for_each(|(log, head)| transaction.set_head(log, head))
    }

    /// The last sequence number of a stream: what is noted of it and its last row have to
    /// agree, or nobody knows what is missing.
    fn last_seq(
        &self,
        transaction: &mut dyn Transaction,
        log: &str,
        stream: &str,
    ) -> Result<u64, EngineError> {
        if let Some(end) = self.streams.get(&(log.to_owned(), stream.to_owned())) {
            return Ok(end.seq);
        }
        let noted = transaction.stream_end(log, stream)?;
        let last = transaction.last_of_stream(log, stream)?;
        let found = last.as_ref().map(StreamEnd::at);
        if noted == found {
            return Ok(noted.map_or(0, |end| end.seq));
        }
        let seq = |end: Option<StreamEnd>| end.map_or(0, |end| end.seq);
        Err(damaged(
            log,
            noted.or(found).map(|end| end.position),
            &format!(
                "stream {stream:?} ends with number {}, but {} was noted: nothing is written to it",
                seq(found),
                seq(noted)
            ),
        ))
    }
}

/// Fails if rows of a stream are missing: in the middle, or up to where it is noted to end.
pub(crate) fn check_stream(
    log: &str,
    stream: &str,
    after: u64,
    end: Option<StreamEnd>,
    rows: &[Row],
) -> Result<(), EngineError> {
    let mut last = after;
    for row in rows {
        if row.seq != last + 1 {
            let what = format!(
                "number {} of stream {stream:?} is missing; {} comes next",
                last + 1,
                row.seq
            );
            return Err(damaged(log, Some(row.position), &what));
        }
        last = row.seq;
    }
    let Some(end) = end else {
        return match rows.last() {
            None => Ok(()),
            Some(row) => {
                let what = format!("where stream {stream:?} ends was not noted");
                Err(damaged(log, Some(row.position), &what))
            }
        };
    };
    // A note with one thing wrong in it is a wrong note; one that speaks of another row, behind
    // all that are there, says that rows are missing.
    let at = match rows.last() {
        Some(row) if row.seq == end.seq || row.hash == end.hash => row.position,
        _ => end.position,
    };
    let noted = rows.iter().find(|row| row.seq == end.seq);
    if last < end.seq || noted.is_some_and(|row| StreamEnd::at(row) != end) {
        let what = format!(
            "stream {stream:?} ends with number {last}, but {} was noted, or it is another row",
            end.seq
        );
        return Err(damaged(log, Some(at), &what));
    }
    Ok(())
}

/// Fails if rows of a log are missing: in the middle, or up to its head.
pub(crate) fn check_log(
    log: &str,
    after: u64,
    limit: usize,
    head: Head,
    rows: &[Row],
) -> Result<(), EngineError> {
    let mut last = after;
    for row in rows {
        if row.position != last + 1 {
            let what = format!(
                "position {} is missing; {} comes next",
                last + 1,
                row.position
            );
            return Err(damaged(log, Some(last + 1), &what));
        }
        last = row.position;
    }
    if rows.len() < limit && last < head.position {
        let what = format!(
            "it ends at position {last}, but its head says {}: rows are missing at the end",
            head.position
        );
        return Err(damaged(log, Some(last + 1), &what));
    }
    Ok(())
}

/// Marks an empty log, or goes on with one that is marked for the same.
pub(crate) fn begin_landing(
    transaction: &mut dyn Transaction,
    log: &str,
    to: &Hash,
) -> Result<(), AppendError> {
    check_name("log", log)?;
    let locked = transaction.lock_head(log)?;
    match locked.landing {
        Some(landing) if landing == *to => Ok(()),
        None if locked.head.position == 0 => Ok(transaction.set_landing(log, Some(to))?),
        _ => Err(AppendError::Landing {
            log: log.to_owned(),
        }),
    }
}

/// Takes the mark off.
pub(crate) fn end_landing(transaction: &mut dyn Transaction, log: &str) -> Result<(), EngineError> {
    transaction.lock_head(log)?;
    transaction.set_landing(log, None)
}

/// Appends one command. Every refusal comes before the first write, so a refused
/// command leaves nothing behind. [`Heads::write`] has to follow before the commit.
pub(crate) fn append(
    transaction: &mut dyn Transaction,
    heads: &mut Heads,
    command: &Command,
    part: Part,
) -> Result<Outcome, AppendError> {
    check_form(command)?;
    let log = &command.log;
    let known = heads.logs.get(log).copied();
    // Locked first, so that nothing that is read below can change before the commit.
    let head = match known {
        Some(head) => head,
        None => {
            let locked = transaction.lock_head(log)?;
            if locked.landing.is_some() != (part == Part::OfCopy) {
                return Err(AppendError::Landing { log: log.clone() });
            }
            locked.head
        }
    };
    let earlier = transaction.command(log, &command.command_id)?;
    if let Some(first) = earlier.first() {
        return if first.command_digest == command.digest {
            Ok(Outcome::Repeated(earlier))
        } else {
            Err(AppendError::IdReusedWithOtherContent {
                log: log.clone(),
                command_id: command.command_id.clone(),
            })
        };
    }
    if transaction.device_knows(command)? {
        let what = format!(
            "command {} is there, but is not found by its id: nothing is written",
            command.command_id
        );
        return Err(damaged(log, None, &what).into());
    }
    check_expected(transaction, heads, command)?;
    if known.is_none() {
        check_head(transaction, log, &head)?;
    }

    let rows = rows_of(transaction, heads, command, head)?;
    for private in &command.private {
        transaction.keep(log, private)?;
    }
    for id in &command.erase {
        transaction.erase(log, id)?;
    }
    for row in &rows {
        transaction.insert(row)?;
    }
    // What will be read later is what was meant, or the command fails now.
    if transaction.command(log, &command.command_id)? != rows {
        return Err(damaged(log, None, "a row read back before its commit differs").into());
    }
    for row in &rows {
        let stream = (log.clone(), row.stream.clone());
        heads.streams.insert(stream, StreamEnd::at(row));
    }
    if let Some(last) = rows.last() {
        heads.logs.insert(log.clone(), Head::at(last));
    }
    Ok(Outcome::Appended(rows))
}

/// What there is to tell after a commit: each log that grew, with its last position.
pub(crate) fn news<'a>(
    answers: impl IntoIterator<Item = &'a Result<Outcome, AppendError>>,
) -> BTreeMap<String, u64> {
    let mut news = BTreeMap::new();
    for answer in answers {
        if let Ok(Outcome::Appended(rows)) = answer {
            news.extend(rows.iter().map(|row| (row.log.clone(), row.position)));
        }
    }
    news
}

/// Fails if a row that was read is not the row that was written.
pub(crate) fn check_read(row: Row) -> Result<Row, EngineError> {
    if row.hash == row.expected_hash() {
        Ok(row)
    } else {
        Err(damaged(
            &row.log,
            Some(row.position),
            "its content does not give its hash",
        ))
    }
}

/// Fails if a private content is not what its commitment promised.
pub(crate) fn check_private(log: &str, private: Private) -> Result<Private, EngineError> {
    if private.matches() {
        Ok(private)
    } else {
        Err(damaged(
            log,
            None,
            &format!(
                "private content {} does not match its commitment",
                hex::encode(private.id)
            ),
        ))
    }
}

/// A number as the databases hold it.
pub(crate) fn signed(number: u64) -> Result<i64, EngineError> {
    i64::try_from(number).map_err(|_| EngineError::Refused {
        what: format!("{number} is above the largest number that can be stored"),
    })
}

pub(crate) fn damaged(log: &str, position: Option<u64>, what: &str) -> EngineError {
    EngineError::Damaged {
        log: log.to_owned(),
        position,
        what: what.to_owned(),
    }
}

/// The longest name (log, stream, kind, id, person, device, time, media) in bytes. Every
/// engine can index names up to here; a uuid takes 36.
const LONGEST_NAME: usize = 200;

/// The longest event body in bytes; words and photos are private contents, not events.
const LONGEST_BODY: usize = 16 * 1024 * 1024;

/// The longest private content in bytes.
const LONGEST_CONTENT: usize = 256 * 1024 * 1024;

fn check_form(command: &Command) -> Result<(), AppendError> {
    if command.events.is_empty() {
        return Err(AppendError::NoEvents {
            command_id: command.command_id.clone(),
        });
    }
    check_name("log", &command.log)?;
    check_name("command_id", &command.command_id)?;
    check_name("who", &command.who)?;
    check_name("device", &command.device)?;
    check_name("happened_at", &command.happened_at)?;
    check_name("recorded_at", &command.recorded_at)?;
    if i64::try_from(command.device_seq).is_err() {
        return Err(AppendError::NotStorable {
            field: "device_seq",
            why: format!("{} is above {}", command.device_seq, i64::MAX),
        });
    }
    for stream in command.expected.keys() {
        check_name("expected", stream)?;
    }
    for event in &command.events {
        check_name("stream", &event.stream)?;
        check_name("kind", &event.kind)?;
        check_length("body", &event.body, LONGEST_BODY)?;
    }
    for private in &command.private {
        check_name("media", &private.media)?;
        check_length("private content", &private.content, LONGEST_CONTENT)?;
        if !private.matches() {
            return Err(AppendError::PrivateDoesNotMatch {
                id: hex::encode(private.id),
            });
        }
    }
    Ok(())
}

fn check_name(field: &'static str, text: &str) -> Result<(), AppendError> {
    let why = if text.is_empty() {
        "it is empty".to_owned()
    } else if text.contains('\0') {
        "it holds a NUL character".to_owned()
    } else if text.len() > LONGEST_NAME {
        format!("it has {} bytes, the most is {LONGEST_NAME}", text.len())
    } else {
        return Ok(());
    };
    Err(AppendError::NotStorable { field, why })
}

fn check_length(field: &'static str, bytes: &[u8], most: usize) -> Result<(), AppendError> {
    if bytes.len() <= most {
        return Ok(());
    }
    Err(AppendError::NotStorable {
        field,
        why: format!("it has {} bytes, the most is {most}", bytes.len()),
    })
}

fn check_expected(
    transaction: &mut dyn Transaction,
    heads: &Heads,
    command: &Command,
) -> Result<(), AppendError> {
    for (stream, &expected) in &command.expected {
        let actual = heads.last_seq(transaction, &command.log, stream)?;
        if actual != expected {
            return Err(AppendError::Conflict {
                stream: stream.clone(),
                expected,
                actual,
                since: if expected < actual {
                    transaction.stream(&command.log, stream, expected)?
                } else {
                    Vec::new()
                },
            });
        }
    }
    Ok(())
}

/// Nothing is chained to a row that is not the one the head speaks of.
fn check_head(
    transaction: &mut dyn Transaction,
    log: &str,
    head: &Head,
) -> Result<(), EngineError> {
    let last = transaction
        .last_row(log)?
        .map_or_else(|| Head::empty(log), |row| Head::at(&row));
    if last == *head {
        return Ok(());
    }
    Err(damaged(
        log,
        Some(last.position),
        &format!(
            "the last row stands at {}, the head says {}, or their hashes differ",
            last.position, head.position
        ),
    ))
}

fn rows_of(
    transaction: &mut dyn Transaction,
    heads: &Heads,
    command: &Command,
    head: Head,
) -> Result<Vec<Row>, EngineError> {
    let mut seqs: BTreeMap<&str, u64> = BTreeMap::new();
    let mut rows = Vec::with_capacity(command.events.len());
    let mut head = head;
    for (nth, event) in (0u32..).zip(&command.events) {
        let last_seq = match seqs.get(event.stream.as_str()) {
            Some(&seq) => seq,
            None => heads.last_seq(transaction, &command.log, &event.stream)?,
        };
        seqs.insert(&event.stream, last_seq + 1);
        let mut row = Row {
            log: command.log.clone(),
            position: head.position + 1,
            stream: event.stream.clone(),
            seq: last_seq + 1,
            kind: event.kind.clone(),
            version: event.version,
            body: event.body.clone(),
            happened_at: command.happened_at.clone(),
            device: command.device.clone(),
            device_seq: command.device_seq,
            recorded_at: command.recorded_at.clone(),
            who: command.who.clone(),
            command_id: command.command_id.clone(),
            nth,
            command_digest: command.digest,
            prev_hash: head.hash,
            hash: [0; 32],
        };
        row.hash = row.expected_hash();
        head = Head::at(&row);
        rows.push(row);
    }
    Ok(rows)
}

//! How a command becomes rows: written once, run inside each engine's transaction.

use std::collections::BTreeMap;

use crate::error::{AppendError, EngineError};
use crate::row::{Command, Hash, Head, Outcome, Private, Row};

/// What an engine offers inside one transaction.
pub(crate) trait Transaction {
    /// The head of the log, locked until the transaction ends.
    fn lock_head(&mut self, log: &str) -> Result<Head, EngineError>;
    /// The last row of the log, as it stands among the rows.
    fn last_row(&mut self, log: &str) -> Result<Option<Row>, EngineError>;
    fn command(&mut self, log: &str, command_id: &str) -> Result<Vec<Row>, EngineError>;
    fn last_seq(&mut self, log: &str, stream: &str) -> Result<u64, EngineError>;
    fn stream(&mut self, log: &str, stream: &str, after: u64) -> Result<Vec<Row>, EngineError>;
    fn insert(&mut self, row: &Row) -> Result<(), EngineError>;
    fn set_head(&mut self, log: &str, head: &Head) -> Result<(), EngineError>;
    /// Keeps a private content, unless it is already kept or was erased.
    fn keep(&mut self, log: &str, private: &Private) -> Result<(), EngineError>;
    /// Deletes a private content and its salt; remembers that it is not to come back.
    fn erase(&mut self, log: &str, id: &Hash) -> Result<(), EngineError>;
}

/// Where the logs stand that a transaction has appended to. They are locked and were held
/// against their last rows; their heads are written once, at the transaction's end.
#[derive(Default)]
pub(crate) struct Heads(BTreeMap<String, Head>);

impl Heads {
    /// The last writing of a transaction that appended anything.
    pub(crate) fn write(&self, transaction: &mut dyn Transaction) -> Result<(), EngineError> {
        self.0
            .iter()
            .try_for_each(|(log, head)| transaction.set_head(log, head))
    }
}

/// Appends one command. Every refusal comes before the first write, so a refused
/// command leaves nothing behind. [`Heads::write`] has to follow before the commit.
pub(crate) fn append(
    transaction: &mut dyn Transaction,
    heads: &mut Heads,
    command: &Command,
) -> Result<Outcome, AppendError> {
    check_form(command)?;
    let log = &command.log;
    let known = heads.0.get(log).copied();
    // Locked first, so that nothing that is read below can change before the commit.
    let head = known.map_or_else(|| transaction.lock_head(log), Ok)?;
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
    check_expected(transaction, command)?;
    if known.is_none() {
        check_head(transaction, log, &head)?;
    }

    let rows = rows_of(transaction, command, head)?;
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
    if let Some(last) = rows.last() {
        heads.0.insert(log.clone(), Head::at(last));
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

fn check_expected(transaction: &mut dyn Transaction, command: &Command) -> Result<(), AppendError> {
    for (stream, &expected) in &command.expected {
        let actual = transaction.last_seq(&command.log, stream)?;
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
    command: &Command,
    head: Head,
) -> Result<Vec<Row>, EngineError> {
    let mut seqs: BTreeMap<&str, u64> = BTreeMap::new();
    let mut rows = Vec::with_capacity(command.events.len());
    let mut head = head;
    for (nth, event) in (0u32..).zip(&command.events) {
        let last_seq = match seqs.get(event.stream.as_str()) {
            Some(&seq) => seq,
            None => transaction.last_seq(&command.log, &event.stream)?,
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

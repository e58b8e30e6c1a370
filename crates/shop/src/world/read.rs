//! Rows as events.

use crate::phrases::keep as words;
use crate::trouble::{Trouble, TroubleKind};
use record::{AnyEvent, Stored, Stream, decode};
use repair::{CommandId, PersonId, Recorded, Stamp};
use serde::{Deserialize, Serialize};
use store::Row;

/// A row that this program cannot read. A newer program wrote it, or it should never have been
/// written; whichever it is, only its own stream suffers by it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, Deserialize)]
pub struct Unread {
    /// Its position in the log.
    pub position: u64,
    /// Its stream.
    pub stream: String,
    /// Its place in the stream.
    pub seq: u64,
    /// Its kind.
    pub kind: String,
    /// The version of its form.
    pub version: u32,
    /// What the reader says of it.
    pub what: String,
}

impl Unread {
    fn of(row: &Row, what: String) -> Self {
        Self {
            position: row.position,
            stream: row.stream.clone(),
            seq: row.seq,
            kind: row.kind.clone(),
            version: row.version,
            what,
        }
    }

    /// What to do about it.
    #[must_use]
    pub fn mend() -> &'static str {
        words::use_the_newer_program()
    }

    /// What is wrong, in one sentence.
    #[must_use]
    pub fn sentence(&self) -> String {
        let kind = format!("{:?}", self.kind);
        words::event_cannot_be_read(self.position, kind, self.version, &self.what)
    }

    /// The answer to whoever wants to write into its stream.
    #[must_use]
    pub fn trouble(&self) -> Trouble {
        let mend = words::sent_again_by_itself(Self::mend());
        let what = words::nothing_written_there(self.sentence());
        Trouble::new(TroubleKind::Waits, self.stream.clone(), what, mend)
    }
}

/// The event of a row, with its stream.
///
/// # Errors
/// [`Unread`], if this program cannot read it.
pub(crate) fn row(row: &Row) -> Result<(Stream, Recorded<AnyEvent>), Box<Unread>> {
    let unread = |what: String| Box::new(Unread::of(row, what));
    let stream = Stream::read(&row.stream).map_err(|e| unread(e.to_string()))?;
    let stored = Stored {
        kind: row.kind.clone(),
        version: row.version,
        body: row.body.clone(),
    };
    let event = decode(&stream, &stored).map_err(|e| unread(e.to_string()))?;
    let stamp = Stamp {
        who: PersonId::new(row.who.clone()),
        at: row
            .happened_at
            .parse()
            .map_err(|_| unread(format!("{:?} is no time", row.happened_at)))?,
    };
    Ok((
        stream,
        Recorded {
            command: CommandId::new(row.command_id.clone()),
            nth: row.nth,
            stamp,
            event,
        },
    ))
}

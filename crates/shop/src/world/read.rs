//! Rows as events.

use crate::trouble::{Trouble, TroubleKind};
use record::{AnyEvent, Stored, Stream, decode};
use repair::{CommandId, PersonId, Recorded, Stamp};
use store::Row;

/// The event of a row, with its stream.
///
/// # Errors
/// [`Trouble`], if this program cannot read it: the log is newer, or damaged.
pub(super) fn row(row: &Row) -> Result<(Stream, Recorded<AnyEvent>), Trouble> {
    let unreadable = |what: String| {
        Trouble::new(
            TroubleKind::Record,
            format!("row {} of the record", row.position),
            what,
            "run `buttonup verify`; if the record is sound, use the newer program",
        )
    };
    let stream = Stream::read(&row.stream).map_err(|e| unreadable(e.to_string()))?;
    let stored = Stored {
        kind: row.kind.clone(),
        version: row.version,
        body: row.body.clone(),
    };
    let event = decode(&stream, &stored).map_err(|e| unreadable(e.to_string()))?;
    let stamp = Stamp {
        who: PersonId::new(row.who.clone()),
        at: row
            .happened_at
            .parse()
            .map_err(|_| unreadable(format!("{:?} is no time", row.happened_at)))?,
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

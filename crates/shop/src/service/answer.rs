//! What a command is answered with: what it became, or why it could not be kept.

use crate::phrases::service as words;
use crate::trouble::{Trouble, TroubleKind};
use serde::Serialize;
use store::{AppendError, Row};
use utoipa::ToSchema;

/// What an accepted command is answered with: a function of its events alone, so that a
/// repeat gets the same.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Accepted {
    /// The command.
    pub command_id: String,
    /// The last position it was given in the shop's log.
    pub position: u64,
    /// Its events.
    pub events: Vec<AcceptedEvent>,
}

/// One event of an accepted command.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct AcceptedEvent {
    /// Its stream.
    pub stream: String,
    /// Its place in the stream.
    pub seq: u64,
    /// Its kind.
    pub kind: String,
}

pub(super) fn accepted(rows: &[Row]) -> Accepted {
    Accepted {
        command_id: rows
            .first()
            .map(|row| row.command_id.clone())
            .unwrap_or_default(),
        position: rows.last().map_or(0, |row| row.position),
        events: rows
            .iter()
            .map(|row| AcceptedEvent {
                stream: row.stream.clone(),
                seq: row.seq,
                kind: row.kind.clone(),
            })
            .collect(),
    }
}

pub(super) fn id_reused() -> Trouble {
    Trouble::new(
        TroubleKind::IdReused,
        "command_id",
        words::another_command(),
        words::own_id_each(),
    )
}

pub(crate) fn append_trouble(error: &AppendError) -> Trouble {
    match error {
        AppendError::IdReusedWithOtherContent { .. } => id_reused(),
        AppendError::Conflict {
            stream,
            expected,
            actual,
            since,
        } => {
            let mut trouble = Trouble::new(
                TroubleKind::Conflict,
                stream.clone(),
                words::somebody_was_quicker(actual, expected),
                words::look_at_what_is_new(),
            );
            trouble.reasons = since
                .iter()
                .map(|row| format!("{} {}: {}", row.stream, row.seq, row.kind))
                .collect();
            trouble
        }
        AppendError::NotStorable { field, .. } => {
            Trouble::unreadable(field, error.to_string(), error.mend())
        }
        AppendError::Engine(error) => Trouble::of_record(words::the_record(), error),
        other => Trouble::new(
            TroubleKind::Record,
            words::the_record(),
            other.to_string(),
            other.mend(),
        ),
    }
}

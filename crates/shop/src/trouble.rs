//! What went wrong, the same for page, command line and JSON: what, where, how to mend.

use crate::phrases::service as words;
use serde::Serialize;
use utoipa::ToSchema;

/// What sort of trouble.
#[derive(Debug, Clone, Copy, PartialEq, Eq, Serialize, ToSchema)]
#[serde(rename_all = "kebab-case")]
pub enum TroubleKind {
    /// What was sent cannot be read.
    Unreadable,
    /// A request is refused.
    Refused,
    /// Somebody else was quicker.
    Conflict,
    /// There is no such thing.
    NotFound,
    /// The same command id came with other content.
    IdReused,
    /// The record cannot be read or written.
    Record,
    /// The record cannot be reached now: it may be there again soon.
    Away,
    /// It hardly can be so: a page asks, and what is pressed once more is kept.
    Doubtful,
    /// This part of the record takes nothing as long as something in it cannot be read. What
    /// was sent for it is kept where it is, and sent again.
    Waits,
    /// Nobody is signed in on the device, or the device was not let in.
    SignIn,
    /// The PIN is wrong, or is asked for again.
    Pin,
}

/// One trouble.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema, thiserror::Error)]
#[error("{place}: {what}; {mend}")]
pub struct Trouble {
    /// What sort.
    pub kind: TroubleKind,
    /// What is wrong.
    pub what: String,
    /// Where.
    #[serde(rename = "where")]
    pub place: String,
    /// How to mend it.
    pub mend: String,
    /// Every reason, where a gate refused.
    #[serde(skip_serializing_if = "Vec::is_empty")]
    pub reasons: Vec<String>,
    /// What was sent beside what stands, where somebody else changed the same meanwhile. It is
    /// decided again by sending it with what has been seen by then.
    #[serde(skip_serializing_if = "Option::is_none")]
    #[schema(value_type = Option<Vec<Both>>)]
    pub both: Option<Box<[Both]>>,
}

/// What a calculator cannot read.
impl From<calculators::Trouble> for Trouble {
    fn from(trouble: calculators::Trouble) -> Self {
        Self::new(
            TroubleKind::Unreadable,
            trouble.place,
            trouble.what,
            trouble.mend,
        )
    }
}

/// One thing that two people changed at the same time.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct Both {
    /// What it is.
    pub what: String,
    /// What was sent; nothing, if it was left out.
    pub yours: Option<String>,
    /// What stands; nothing, if it is gone.
    pub now: Option<String>,
}

impl Trouble {
    /// Trouble of a kind.
    #[must_use]
    pub fn new(
        kind: TroubleKind,
        place: impl Into<String>,
        what: impl Into<String>,
        mend: impl Into<String>,
    ) -> Self {
        Self {
            kind,
            place: place.into(),
            what: what.into(),
            mend: mend.into(),
            reasons: Vec::new(),
            both: None,
        }
    }

    /// Something that cannot be read. However long it was, not all of it is said back.
    #[must_use]
    pub fn unreadable(place: &str, what: impl Into<String>, mend: &str) -> Self {
        Self::new(TroubleKind::Unreadable, place, cut(what.into()), mend)
    }

    /// Something that is not there.
    #[must_use]
    pub fn not_found(what: impl Into<String>) -> Self {
        Self::new(
            TroubleKind::NotFound,
            words::the_record(),
            what,
            words::look_it_up(),
        )
    }
}

impl Trouble {
    /// A fault of what keeps the record.
    pub(crate) fn of_record(place: impl Into<String>, error: &store::EngineError) -> Self {
        use store::EngineError::{Busy, Stopped, Unreachable};
        let kind = match error {
            Busy { .. } | Unreachable { .. } | Stopped => TroubleKind::Away,
            _ => TroubleKind::Record,
        };
        Self::new(kind, place, error.to_string(), error.mend())
    }
}

/// A text without its middle, where it is longer than any that is written here: then it holds
/// something that was sent. What is wrong and what would be right stand at its ends.
fn cut(text: String) -> String {
    const BEGINNING: usize = 200;
    const END: usize = 3_000;
    if text.len() <= BEGINNING + END {
        return text;
    }
    let boundary = |at: usize| (0..=at).rev().find(|at| text.is_char_boundary(*at));
    let beginning = boundary(BEGINNING).unwrap_or(0);
    let end = boundary(text.len() - END).unwrap_or(0);
    format!("{} \u{2026} {}", &text[..beginning], &text[end..])
}

impl From<store::ReadError> for Trouble {
    fn from(error: store::ReadError) -> Self {
        Self::of_record(words::the_record(), &error)
    }
}

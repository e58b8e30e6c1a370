//! What a command comes to, for people and for programs.

use serde_json::{Value, json};
use std::fmt;

/// What a command answers.
#[derive(Debug)]
pub struct Answer {
    /// For a person.
    pub text: String,
    /// For a program.
    pub json: Value,
    /// Whether it is good: valid, sound, done.
    pub good: bool,
}

/// What went wrong: where, what, and how to mend it.
#[derive(Debug)]
pub struct Wrong {
    /// The exit code: 1 refused or not valid, 2 wrong usage or unreadable input.
    pub code: u8,
    /// Where.
    pub place: String,
    /// What.
    pub what: String,
    /// How to mend it.
    pub mend: String,
}

impl Wrong {
    /// Input that cannot be read, or wrong usage.
    pub fn input(
        place: impl Into<String>,
        what: impl Into<String>,
        mend: impl Into<String>,
    ) -> Self {
        Self {
            code: 2,
            place: place.into(),
            what: what.into(),
            mend: mend.into(),
        }
    }

    /// The same for a program.
    pub fn json(&self) -> Value {
        json!({ "where": self.place, "what": self.what, "mend": self.mend })
    }
}

impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}: {}\n  mend: {}", self.place, self.what, self.mend)
    }
}

impl From<shop::calculators::Trouble> for Wrong {
    fn from(trouble: shop::calculators::Trouble) -> Self {
        Self::input(trouble.place, trouble.what, trouble.mend)
    }
}

impl From<shop::Trouble> for Wrong {
    fn from(trouble: shop::Trouble) -> Self {
        let code = match trouble.kind {
            shop::TroubleKind::Unreadable
            | shop::TroubleKind::Record
            | shop::TroubleKind::Away
            | shop::TroubleKind::Waits => 2,
            _ => 1,
        };
        Self {
            code,
            place: trouble.place,
            // Every reason, a line each: who types a command has no page to look at.
            what: [vec![trouble.what], trouble.reasons].concat().join("\n  "),
            mend: trouble.mend,
        }
    }
}

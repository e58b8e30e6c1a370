//! Why a log cannot be read.

use crate::phrases::log as say;

/// Why a log cannot be read: what is wrong, and after the colon how to mend it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum LogError {
    #[error("{}", say::log_is_empty())]
    Empty,
    #[error("{}", say::no_heading(.first))]
    NoHeading { first: String },
    #[error("{}", say::no_time(.columns))]
    NoTime { columns: String },
    #[error("{}", say::nothing_known(.columns))]
    NothingKnown { columns: String },
    #[error("{}", say::no_column(.column, .columns))]
    NoColumn { column: String, columns: String },
    #[error("{}", say::mapping_not_understood(.line, .text, .mend))]
    Mapping {
        line: usize,
        text: String,
        mend: String,
    },
    #[error("{}", say::no_rows(.first))]
    NoRows { first: String },
    #[error("{}", say::no_frames(.first))]
    NoFrames { first: String },
    #[error("{}", say::no_answers())]
    NoAnswers,
}

impl LogError {
    /// What is wrong, and how to mend it.
    #[must_use]
    pub fn told(&self) -> (String, String) {
        let words = self.to_string();
        // Columns may hold colons of their own: the last one starts the mending.
        match words.rsplit_once(": ") {
            Some((what, mend)) => (what.to_owned(), mend.to_owned()),
            None => (words, say::check_the_file().to_owned()),
        }
    }
}

//! Why a log cannot be read.

/// Why a log cannot be read: what is wrong, and after the colon how to mend it.
#[derive(Debug, Clone, PartialEq, Eq, thiserror::Error)]
pub enum LogError {
    #[error("the file is empty: record the drive again, or give the file that holds it")]
    Empty,
    #[error(
        "no heading says what is recorded (first line: {first}): the first line has to name each \
         column, such as time, coolant, speed; or map the columns by their number"
    )]
    NoHeading { first: String },
    #[error(
        "no column tells the time (columns: {columns}): map one to `time`, or say how many \
         seconds lie between rows with `step`"
    )]
    NoTime { columns: String },
    #[error(
        "no column is known but the time (columns: {columns}): map those that matter, such as \
         `coolant`"
    )]
    NothingKnown { columns: String },
    #[error(
        "the mapping names the column `{column}`, which is not there (columns: {columns}): write it as in the heading, or by its number"
    )]
    NoColumn { column: String, columns: String },
    #[error("line {line} of the mapping, `{text}`, is not understood: {mend}")]
    Mapping {
        line: usize,
        text: String,
        mend: String,
    },
    #[error(
        "no row can be read ({first}): check the delimiter and the decimal sign; where commas part \
         the columns, decimals take a point"
    )]
    NoRows { first: String },
    #[error(
        "no line holds seconds, an id and bytes in hex ({first}): write each frame as in `12.40 \
         7E8 03 41 05 7B`"
    )]
    NoFrames { first: String },
    #[error(
        "no answer of service 01, 03, 07 or 0A is in these frames: record the answers of the \
         units (7E8 to 7EF), not the requests alone"
    )]
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
            None => (words, "check the file".to_owned()),
        }
    }
}

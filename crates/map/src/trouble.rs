//! What is wrong with a map, where, and how to mend it.

use crate::phrases as say;
use std::fmt;
use std::ops::Range;

/// Whether the map can be used as it is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum Weight {
    /// It cannot.
    Error,
    /// It can, but something in it has no effect.
    Warning,
}

/// One thing that is wrong.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Trouble {
    /// Whether the map can be used all the same.
    pub weight: Weight,
    /// The file, as it was named.
    pub file: String,
    /// The line, from 1.
    pub line: usize,
    /// The column in that line, in characters, from 1.
    pub column: usize,
    /// What is wrong.
    pub what: String,
    /// How to mend it.
    pub mend: String,
}

impl fmt::Display for Trouble {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let Trouble {
            file,
            line,
            column,
            what,
            mend,
            ..
        } = self;
        let weight = match self.weight {
            Weight::Error => say::error(),
            Weight::Warning => say::warning(),
        };
        write!(f, "{file}:{line}:{column}: {weight}: {what}; {mend}")
    }
}

/// A place in the text, as bytes.
pub(crate) type Span = Option<Range<usize>>;

/// Collects what is wrong while a text is read.
#[derive(Debug)]
pub(crate) struct Troubles<'a> {
    file: &'a str,
    text: &'a str,
    /// Where each line begins, so that a thousand troubles are placed as fast as one.
    lines: Vec<usize>,
    pub all: Vec<Trouble>,
}

/// So many troubles are told with the name that may have been meant: looking for it
/// compares with every name there is.
const WITH_NEAREST: usize = 40;

impl<'a> Troubles<'a> {
    pub(crate) fn new(file: &'a str, text: &'a str) -> Self {
        // A mark of the bytes' order before the first letter is no letter.
        let first = text.len() - text.trim_start_matches('\u{feff}').len();
        let further = text.match_indices('\n').map(|(at, _)| at + 1);
        Self {
            file,
            text,
            lines: [first].into_iter().chain(further).collect(),
            all: Vec::new(),
        }
    }

    pub(crate) fn error(&mut self, span: &Span, what: impl Into<String>, mend: impl Into<String>) {
        self.add(Weight::Error, span, what.into(), mend.into());
    }

    pub(crate) fn warn(&mut self, span: &Span, what: impl Into<String>, mend: impl Into<String>) {
        self.add(Weight::Warning, span, what.into(), mend.into());
    }

    fn add(&mut self, weight: Weight, span: &Span, what: String, mend: String) {
        let start = span.as_ref().map_or(0, |span| span.start);
        let line = self.lines.partition_point(|begin| *begin <= start).max(1);
        let begin = self.lines.get(line - 1).copied().unwrap_or(0);
        let before = self.text.get(begin..start).unwrap_or_default();
        self.all.push(Trouble {
            weight,
            file: self.file.to_owned(),
            line,
            column: before.chars().count() + 1,
            what,
            mend,
        });
    }

    pub(crate) fn any_error(&self) -> bool {
        self.all
            .iter()
            .any(|trouble| trouble.weight == Weight::Error)
    }

    /// "Did you mean" with the nearest known word; other words if none is near.
    pub(crate) fn meant<'b>(
        &self,
        written: &str,
        known: impl IntoIterator<Item = &'b str>,
        otherwise: impl Into<String>,
    ) -> String {
        let near = (self.all.len() < WITH_NEAREST).then(|| nearest(written, known));
        match near.flatten() {
            Some(near) => say::did_you_mean(near),
            None => otherwise.into(),
        }
    }
}

/// The known word nearest to the one written, if one is near at all: one letter, and one
/// more for every four letters there are.
pub(crate) fn nearest<'b>(
    written: &str,
    known: impl IntoIterator<Item = &'b str>,
) -> Option<&'b str> {
    let letters = written.chars().count();
    let near = known.into_iter().filter_map(|word| {
        let others = word.chars().count();
        let most = 1 + letters.min(others) / 4;
        let distance = (letters.abs_diff(others) <= most).then(|| distance(written, word))?;
        (distance <= most && distance < letters).then_some((distance, word))
    });
    near.min().map(|(_, word)| word)
}

/// How many letters must be added, taken away or changed.
fn distance(one: &str, other: &str) -> usize {
    let other: Vec<char> = other.chars().collect();
    let mut row: Vec<usize> = (0..=other.len()).collect();
    for (at, letter) in one.chars().enumerate() {
        let mut corner = at;
        row[0] = at + 1;
        for (n, known) in other.iter().enumerate() {
            let changed = corner + usize::from(letter != *known);
            corner = row[n + 1];
            row[n + 1] = changed.min(row[n] + 1).min(corner + 1);
        }
    }
    row[other.len()]
}

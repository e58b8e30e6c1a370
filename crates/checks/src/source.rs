//! What a row leans on, and how far.

use toml::Table;

/// How far a row can be trusted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Grade {
    /// The source was opened and read, and anybody can find it again.
    Published,
    /// A library of somebody else was run.
    OtherImplementation,
    /// A fact of the trade with no source.
    CommonPractice,
    /// The source is named, but was not opened.
    Memory,
}

impl Grade {
    /// Every grade, the most trusted first.
    pub const ALL: [Grade; 4] = [
        Grade::Published,
        Grade::OtherImplementation,
        Grade::CommonPractice,
        Grade::Memory,
    ];

    /// Its name in a row.
    pub fn name(self) -> &'static str {
        match self {
            Grade::Published => "published",
            Grade::OtherImplementation => "other-implementation",
            Grade::CommonPractice => "common-practice",
            Grade::Memory => "memory",
        }
    }

    /// The grade of that name.
    pub fn named(name: &str) -> Option<Grade> {
        Grade::ALL.into_iter().find(|grade| grade.name() == name)
    }

    /// What a source must say for a row of this grade.
    pub(crate) fn needs(self) -> &'static [&'static str] {
        match self {
            Grade::Published => &["title", "publisher", "edition", "at", "read"],
            Grade::OtherImplementation => &["title", "edition", "at"],
            Grade::CommonPractice | Grade::Memory => &["title"],
        }
    }
}

/// One `[source.name]` of a file.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Source {
    pub title: String,
    pub publisher: String,
    /// Edition, version or date.
    pub edition: String,
    /// Table, page or clause; a row may name its own.
    pub at: String,
    /// Where its text was opened.
    pub read: String,
}

impl Source {
    /// The fields that a source may have, as they are written.
    pub(crate) const FIELDS: [&'static str; 5] = ["title", "publisher", "edition", "at", "read"];

    /// A field by the name that it is written with.
    pub(crate) fn field(&self, name: &str) -> &str {
        match name {
            "title" => &self.title,
            "publisher" => &self.publisher,
            "edition" => &self.edition,
            "at" => &self.at,
            "read" => &self.read,
            _ => "",
        }
    }

    pub(crate) fn of(table: &Table) -> Source {
        let field = |name: &str| {
            let text = table.get(name).and_then(toml::Value::as_str);
            text.unwrap_or_default().trim().to_owned()
        };
        Source {
            title: field("title"),
            publisher: field("publisher"),
            edition: field("edition"),
            at: field("at"),
            read: field("read"),
        }
    }
}

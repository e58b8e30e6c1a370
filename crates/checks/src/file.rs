//! One file: its sources and its rows.

use crate::row::Row;
use crate::source::{Grade, Source};
use std::collections::{BTreeMap, BTreeSet};
use toml::{Table, Value};

/// The rows of one subject, by their kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Published {
    subject: String,
    kinds: BTreeMap<String, Vec<Row>>,
}

/// Why a file is refused: where, what, and how to mend it.
#[derive(Clone, Debug, PartialEq, Eq, thiserror::Error)]
pub enum Trouble {
    #[error("checks/published/{subject}.toml is no TOML: {why}")]
    NoToml { subject: String, why: String },
    #[error("{subject}, {name}: write it as [[{name}]] rows, or as [source.name]")]
    NoRows { subject: String, name: String },
    #[error(
        "{subject}, source {source_name}: a source has no field {field}; it has title, publisher, edition, at, read"
    )]
    NoField {
        subject: String,
        source_name: String,
        field: String,
    },
    #[error("{subject}, source {source_name}: no row names it; take it out")]
    Unused {
        subject: String,
        source_name: String,
    },
    #[error("{subject}, {row}: there is no [source.{source_name}] in this file")]
    NoSource {
        subject: String,
        row: String,
        source_name: String,
    },
    #[error(
        "{subject}, {row}: grade {grade} is none of published, other-implementation, common-practice, memory"
    )]
    NoGrade {
        subject: String,
        row: String,
        grade: String,
    },
    #[error(
        "{subject}, {row}: a row of grade {grade} needs the {field} of its source {source_name}; say it, or grade the row memory or common-practice"
    )]
    Unfindable {
        subject: String,
        row: String,
        grade: &'static str,
        field: &'static str,
        source_name: String,
    },
    #[error("{subject}, {row}: only a row of grade memory can be of the same memory as the code")]
    NotMemory { subject: String, row: String },
}

impl Published {
    /// Reads a file's text.
    ///
    /// # Errors
    ///
    /// Everything in which it does not keep to the form.
    pub fn read(subject: &str, text: &str) -> Result<Published, Vec<Trouble>> {
        let table: Table = text.parse().map_err(|error: toml::de::Error| {
            vec![Trouble::NoToml {
                subject: subject.to_owned(),
                why: error.message().to_owned(),
            }]
        })?;
        let mut reading = Reading::new(subject, &table);
        let kinds = reading.kinds(&table);
        reading.unused_sources();
        if reading.troubles.is_empty() {
            Ok(Published {
                subject: subject.to_owned(),
                kinds,
            })
        } else {
            Err(reading.troubles)
        }
    }

    /// The rows of a kind.
    ///
    /// # Panics
    ///
    /// Where the file has none: a test that reads none would check nothing.
    pub fn rows(&self, kind: &str) -> &[Row] {
        self.kinds
            .get(kind)
            .unwrap_or_else(|| panic!("{} has no [[{kind}]]", self.subject))
    }

    pub fn kinds(&self) -> impl Iterator<Item = &str> {
        self.kinds.keys().map(String::as_str)
    }

    /// Every row of the file.
    pub fn all(&self) -> impl Iterator<Item = &Row> {
        self.kinds.values().flatten()
    }

    /// How many rows have a grade.
    pub fn count(&self, grade: Grade) -> usize {
        self.all().filter(|row| row.grade() == grade).count()
    }
}

/// A file while it is read.
struct Reading {
    subject: String,
    sources: BTreeMap<String, Source>,
    used: BTreeSet<String>,
    troubles: Vec<Trouble>,
}

impl Reading {
    fn new(subject: &str, table: &Table) -> Reading {
        let mut reading = Reading {
            subject: subject.to_owned(),
            sources: BTreeMap::new(),
            used: BTreeSet::new(),
            troubles: Vec::new(),
        };
        let sources = table.get("source").and_then(Value::as_table);
        for (name, value) in sources.into_iter().flatten() {
            let empty = Table::new();
            let fields = value.as_table().unwrap_or(&empty);
            for field in fields.keys() {
                if !Source::FIELDS.contains(&field.as_str()) {
                    reading.troubles.push(Trouble::NoField {
                        subject: subject.to_owned(),
                        source_name: name.clone(),
                        field: field.clone(),
                    });
                }
            }
            reading.sources.insert(name.clone(), Source::of(fields));
        }
        reading
    }

    fn kinds(&mut self, table: &Table) -> BTreeMap<String, Vec<Row>> {
        let mut kinds = BTreeMap::new();
        for (kind, value) in table.iter().filter(|(name, _)| *name != "source") {
            let Some(rows) = value.as_array() else {
                self.troubles.push(Trouble::NoRows {
                    subject: self.subject.clone(),
                    name: kind.clone(),
                });
                continue;
            };
            let rows = rows.iter().enumerate();
            let rows =
                rows.filter_map(|(at, value)| self.row(&format!("{kind} {}", at + 1), value));
            kinds.insert(kind.clone(), rows.collect());
        }
        kinds
    }

    /// A row, if its grade and its source can be read. `place` is what a trouble calls it.
    fn row(&mut self, place: &str, value: &Value) -> Option<Row> {
        let empty = Table::new();
        let fields = value.as_table().unwrap_or(&empty);
        let text = |name: &str| fields.get(name).and_then(Value::as_str).unwrap_or_default();
        let grade = Grade::named(text("grade"));
        if grade.is_none() {
            self.troubles.push(Trouble::NoGrade {
                subject: self.subject.clone(),
                row: place.to_owned(),
                grade: text("grade").to_owned(),
            });
        }
        let source_name = text("source").to_owned();
        let Some(mut source) = self.sources.get(&source_name).cloned() else {
            self.troubles.push(Trouble::NoSource {
                subject: self.subject.clone(),
                row: place.to_owned(),
                source_name,
            });
            return None;
        };
        self.used.insert(source_name.clone());
        if !text("at").is_empty() {
            text("at").clone_into(&mut source.at);
        }
        let row = Row {
            fields: fields.clone(),
            grade: grade?,
            source,
        };
        self.needed(place, &row, &source_name);
        Some(row)
    }

    /// What the row's grade asks of its source.
    fn needed(&mut self, place: &str, row: &Row, source_name: &str) {
        for &field in row.grade.needs() {
            if row.source.field(field).is_empty() {
                self.troubles.push(Trouble::Unfindable {
                    subject: self.subject.clone(),
                    row: place.to_owned(),
                    grade: row.grade.name(),
                    field,
                    source_name: source_name.to_owned(),
                });
            }
        }
        if row.same_memory() && row.grade != Grade::Memory {
            self.troubles.push(Trouble::NotMemory {
                subject: self.subject.clone(),
                row: place.to_owned(),
            });
        }
    }

    fn unused_sources(&mut self) {
        for name in self
            .sources
            .keys()
            .filter(|name| !self.used.contains(*name))
        {
            self.troubles.push(Trouble::Unused {
                subject: self.subject.clone(),
                source_name: name.clone(),
            });
        }
    }
}

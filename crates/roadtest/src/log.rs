//! A drive as it was recorded.

use crate::Quantity;
use std::collections::{BTreeMap, BTreeSet};

/// One reading.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Sample {
    /// Seconds since the first line.
    pub t_s: f64,
    /// In the unit of its [`Quantity`].
    pub value: f64,
    /// The line that it stands in, from 1.
    pub line: usize,
}

/// What a column was taken for.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Column {
    /// As the log writes it.
    pub heading: String,
    /// What it was taken for; nothing where it is not used.
    pub taken_for: Option<String>,
    /// The unit it was read in.
    pub unit: String,
    /// Whether the log itself says that unit.
    pub unit_told: bool,
}

/// Something to know of the log: a broken line, a gap, a clock that stood.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Note {
    /// The line that it concerns, from 1.
    pub line: Option<usize>,
    pub what: String,
}

/// Which list of trouble codes was asked for.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub enum CodeList {
    /// Service 03: stored, lamp or not.
    Stored,
    /// Service 07: seen in this drive or the last.
    Pending,
    /// Service 0A: goes by itself once its monitor has passed.
    Permanent,
}

/// Trouble codes as read at one moment.
#[derive(Debug, Clone, PartialEq)]
pub struct CodeReading {
    pub t_s: f64,
    pub line: usize,
    /// The unit that answered; empty in a table.
    pub unit: String,
    pub list: CodeList,
    pub codes: BTreeSet<String>,
}

/// The answer to PID 01: lamp, count and monitors.
#[derive(Debug, Clone, PartialEq)]
pub struct StatusReading {
    pub t_s: f64,
    pub line: usize,
    pub unit: String,
    pub lamp: bool,
    pub count: u8,
    /// Monitors that the vehicle has and that are not complete since codes were cleared; nothing
    /// where the log does not say.
    pub incomplete: Option<Vec<&'static str>>,
}

/// A drive as it was recorded: every series in its own time, codes, and what was wrong with it.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Log {
    pub series: BTreeMap<Quantity, Vec<Sample>>,
    pub codes: Vec<CodeReading>,
    pub statuses: Vec<StatusReading>,
    /// PIDs of service 01 that the engine's unit says it supports, and how far it was asked
    /// (the highest PID that an answered bitmap covers).
    pub supported: Option<(BTreeSet<u8>, u8)>,
    pub columns: Vec<Column>,
    pub notes: Vec<Note>,
}

impl Log {
    /// The readings of one quantity; none is an empty list.
    #[must_use]
    pub fn of(&self, quantity: Quantity) -> &[Sample] {
        self.series.get(&quantity).map_or(&[], Vec::as_slice)
    }

    /// First and last second of any reading.
    #[must_use]
    pub fn span_s(&self) -> (f64, f64) {
        let ends = self
            .series
            .values()
            .flatten()
            .map(|sample| sample.t_s)
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), t| {
                (low.min(t), high.max(t))
            });
        if ends.0 > ends.1 { (0.0, 0.0) } else { ends }
    }

    pub(crate) fn note(&mut self, line: Option<usize>, what: impl Into<String>) {
        self.notes.push(Note {
            line,
            what: what.into(),
        });
    }
}

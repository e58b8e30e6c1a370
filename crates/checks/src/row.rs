//! One row, read by the names of its fields.

use crate::source::{Grade, Source};
use std::fmt;
use toml::{Table, Value};

/// One `[[kind]]` of a file.
///
/// Its fields are read by name; a field that is missing or of another type makes the test fail
/// with the whole row.
#[derive(Clone, Debug, PartialEq)]
pub struct Row {
    pub(crate) fields: Table,
    pub(crate) grade: Grade,
    pub(crate) source: Source,
}

impl Row {
    pub fn grade(&self) -> Grade {
        self.grade
    }

    /// Its source, with the row's own table, page or clause where it names one.
    pub fn source(&self) -> &Source {
        &self.source
    }

    /// Row and code were typed from the same memory: it pins a table, and checks nothing.
    pub fn same_memory(&self) -> bool {
        self.flag("same_memory")
    }

    pub fn has(&self, name: &str) -> bool {
        self.fields.contains_key(name)
    }

    pub fn text(&self, name: &str) -> &str {
        self.get(name, "a text", Value::as_str)
    }

    /// A number written with a point.
    pub fn real(&self, name: &str) -> f64 {
        self.get(name, "a number with a point", Value::as_float)
    }

    pub fn whole(&self, name: &str) -> i64 {
        self.get(name, "a whole number", Value::as_integer)
    }

    /// False where the row does not say.
    pub fn flag(&self, name: &str) -> bool {
        self.has(name) && self.get(name, "true or false", Value::as_bool)
    }

    pub fn list(&self, name: &str) -> &[Value] {
        self.get(name, "a list", Value::as_array)
    }

    /// Holds `got` against the number `expected` within the row's number `tolerance`.
    ///
    /// # Panics
    ///
    /// Where it is farther off.
    pub fn assert_near(&self, got: f64, expected: &str, tolerance: &str) {
        let off = (got - self.real(expected)).abs();
        assert!(off <= self.real(tolerance), "{self}: {expected} is {got}");
    }

    fn get<'row, T>(
        &'row self,
        name: &str,
        what: &str,
        read: impl FnOnce(&'row Value) -> Option<T>,
    ) -> T {
        self.fields
            .get(name)
            .and_then(read)
            .unwrap_or_else(|| panic!("{self}: {name} must be {what}"))
    }
}

impl fmt::Display for Row {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        let fields: Vec<String> = self
            .fields
            .iter()
            .map(|(name, value)| format!("{name} = {value}"))
            .collect();
        formatter.write_str(&fields.join(", "))
    }
}

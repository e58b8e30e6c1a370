//! Which column is what, where headings do not say it, or to remember what they said.

use crate::phrases::log as say;
use crate::{Column, LogError, Quantity};
use std::collections::BTreeMap;

/// A mapping of columns, as a person gives it; empty is fine.
///
/// ```
/// use roadtest::{Mapping, Quantity};
///
/// let mapping = Mapping::read("time = 1\ncoolant = Temp 3 [°F]\n")?;
/// assert_eq!(mapping.columns[&Quantity::Coolant].heading, "Temp 3");
/// # Ok::<(), roadtest::LogError>(())
/// ```
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Mapping {
    /// The column of the time.
    pub time: Option<Place>,
    pub columns: BTreeMap<Quantity, Place>,
    /// Seconds from row to row, where no column tells the time.
    pub step_s: Option<f64>,
}

/// A column by its heading, or by its number from 1, and its unit if told.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Place {
    pub heading: String,
    pub unit: Option<String>,
}

impl Mapping {
    /// Reads lines such as `coolant = Temp 3 [°F]`; `#` starts a remark.
    ///
    /// # Errors
    ///
    /// A line that is not understood.
    pub fn read(text: &str) -> Result<Mapping, LogError> {
        let mut mapping = Mapping::default();
        for (nth, line) in text.lines().enumerate() {
            let line = line.trim();
            if !line.is_empty() && !line.starts_with('#') {
                mapping.add(nth + 1, line)?;
            }
        }
        Ok(mapping)
    }

    fn add(&mut self, line: usize, text: &str) -> Result<(), LogError> {
        let wrong = |mend: String| LogError::Mapping {
            line,
            text: crate::text::start_of(text),
            mend,
        };
        let (name, place) = text
            .split_once('=')
            .ok_or_else(|| wrong(say::write_name_heading().to_owned()))?;
        let (name, place) = (name.trim(), place.trim());
        let (heading, unit) = match place.rsplit_once('[') {
            Some((heading, unit)) => (heading.trim(), Some(unit.trim_end_matches(']').trim())),
            None => (place, None),
        };
        if let Some(unit) = unit
            && crate::unit::Unit::named(unit).is_none()
        {
            return Err(wrong(say::unit_not_known(unit)));
        }
        if heading.is_empty() {
            return Err(wrong(say::write_the_heading_or_the_number().to_owned()));
        }
        let place = Place {
            heading: heading.to_owned(),
            unit: unit.map(str::to_owned),
        };
        if name.eq_ignore_ascii_case("time") {
            self.time = Some(place);
        } else if name.eq_ignore_ascii_case("step") {
            let seconds = crate::number::number(heading.trim_end_matches(['s', ' ']), false);
            self.step_s = Some(
                seconds
                    .filter(|s| *s > 0.0 && *s <= 3600.0)
                    .ok_or_else(|| wrong(say::write_the_seconds_from_row_to().to_owned()))?,
            );
        } else {
            let quantity = Quantity::named(name).ok_or_else(|| {
                let names: Vec<&str> = Quantity::ALL.iter().map(|q| q.name()).take(12).collect();
                wrong(say::write_a_quantity(names.join(", ")))
            })?;
            self.columns.insert(quantity, place);
        }
        Ok(())
    }

    /// The mapping that a read log shows, to be remembered for the next one.
    #[must_use]
    pub fn of_columns(columns: &[Column]) -> Mapping {
        let mut mapping = Mapping::default();
        for column in columns {
            let Some(taken) = &column.taken_for else {
                continue;
            };
            let place = Place {
                heading: column.heading.clone(),
                unit: (!column.unit.is_empty()).then(|| column.unit.clone()),
            };
            if taken == "time" {
                mapping.time = Some(place);
            } else if let Some(quantity) = Quantity::named(taken) {
                mapping.columns.insert(quantity, place);
            }
        }
        mapping
    }
}

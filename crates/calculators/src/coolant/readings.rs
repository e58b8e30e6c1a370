//! A table of pressure readings, as a file has it or a person pastes it.

use crate::Trouble;
use crate::asked::read;
use crate::phrases::coolant as say;
use coolant::{CoolantError, Reading};
use measure::{Dimension, Unit};

/// Readings, and the smallest step written.
#[derive(Debug, Clone, PartialEq)]
pub struct Readings {
    /// In the order written.
    pub readings: Vec<Reading>,
    /// The last digit written, which stands for the gauge's division.
    pub step_kpa: f64,
    /// The line that each reading stands on.
    pub lines: Vec<usize>,
}

impl Readings {
    /// Where an error of the leak test lies: at the line of its reading, or in the table.
    #[must_use]
    pub fn place(&self, name: &str, error: &CoolantError) -> String {
        let position = match error {
            CoolantError::ReadingImpossible { position, .. }
            | CoolantError::TimeNotRising { position, .. } => *position,
            _ => return name.to_owned(),
        };
        let line = position.checked_sub(1).and_then(|at| self.lines.get(at));
        line.map_or_else(|| name.to_owned(), |line| say::name_and_line(name, line))
    }
}

const GAUGES: [&str; 3] = ["gauge_kpa", "gauge_bar", "gauge_psi"];
const TEMPERATURES: [&str; 2] = ["temperature_c", "temperature_f"];

/// Reads a table: a heading of `minutes`, `gauge_kpa` (or `gauge_bar`, `gauge_psi`) and, if
/// it was read, `temperature_c` (or `temperature_f`); then one reading a line, parted by
/// commas, semicolons, tabs or blanks. Where the first line is a reading, `heading` stands
/// before it. A byte-order mark at the start counts for nothing.
///
/// # Errors
/// [`Trouble`] with the line: also for a row with more cells than the heading names, as a
/// decimal comma makes them.
pub fn readings(text: &str, name: &str, heading: Option<&str>) -> Result<Readings, Trouble> {
    let mut lines = text
        .trim_start_matches('\u{feff}')
        .lines()
        .enumerate()
        .map(|(index, line)| (index + 1, line.trim()))
        .filter(|(_, line)| !line.is_empty() && !line.starts_with('#'))
        .peekable();
    let starts_with_number = |line: &str| line.starts_with(|first: char| first.is_ascii_digit());
    let told = match (lines.peek(), heading) {
        (Some((_, line)), Some(heading)) if starts_with_number(line) => heading.to_owned(),
        _ => lines
            .next()
            .map_or(String::new(), |(_, line)| line.to_lowercase()),
    };
    let columns = Columns::of(&told, name)?;
    let mut table = Readings {
        readings: Vec::new(),
        step_kpa: f64::INFINITY,
        lines: Vec::new(),
    };
    for (number, line) in lines {
        let (reading, step_kpa) = columns.reading(line, &say::name_and_line(name, number))?;
        table.step_kpa = table.step_kpa.min(step_kpa);
        table.readings.push(reading);
        table.lines.push(number);
    }
    Ok(table)
}

fn unreadable(place: &str, what: impl Into<String>, mend: &str) -> Trouble {
    Trouble {
        place: place.to_owned(),
        what: what.into(),
        mend: mend.to_owned(),
    }
}

/// Which cell holds what, and in which unit.
struct Columns {
    headings: usize,
    minutes: usize,
    gauge: (usize, Unit),
    temperature: Option<(usize, Unit)>,
}

impl Columns {
    fn of(heading: &str, name: &str) -> Result<Self, Trouble> {
        let names = cells(heading);
        let find = |wanted: &[&str]| {
            wanted.iter().enumerate().find_map(|(which, wanted)| {
                let at = names.iter().position(|name| name == wanted)?;
                Some((at, which))
            })
        };
        let missing = |wanted: &[&str]| {
            unreadable(
                &say::name_and_heading(name),
                say::no_such_column(heading, wanted.join(say::or_between())),
                say::write_minutes_gauge_kpa_temperature_c(),
            )
        };
        let minutes = find(&["minutes"]).ok_or_else(|| missing(&["minutes"]))?;
        let gauge = find(&GAUGES).ok_or_else(|| missing(&GAUGES))?;
        let gauge_units = [Unit::Kilopascal, Unit::Bar, Unit::PoundPerSquareInch];
        let units = [Unit::Celsius, Unit::Fahrenheit];
        Ok(Self {
            headings: names.len(),
            minutes: minutes.0,
            gauge: (
                gauge.0,
                gauge_units
                    .get(gauge.1)
                    .copied()
                    .unwrap_or(Unit::Kilopascal),
            ),
            temperature: find(&TEMPERATURES)
                .map(|(at, which)| (at, units.get(which).copied().unwrap_or(Unit::Celsius))),
        })
    }

    fn reading(&self, line: &str, place: &str) -> Result<(Reading, f64), Trouble> {
        let cells = cells(line);
        if cells.len() > self.headings {
            return Err(unreadable(
                place,
                say::fields_under_headings(cells.len(), self.headings),
                say::a_decimal_comma_parts_a_number(),
            ));
        }
        let cell = |at: usize| cells.get(at).map_or("", String::as_str);
        let number = |text: &str, dimension, unit, bare| {
            read(text, dimension, unit, bare)
                .map_err(|what| unreadable(place, what, say::write_a_number_in_this_column()))
        };
        let pressure =
            |text: &str| number(text, Dimension::Pressure, Unit::Kilopascal, self.gauge.1);
        let written = cell(self.gauge.0);
        let minutes = number(
            cell(self.minutes),
            Dimension::Time,
            Unit::Minute,
            Unit::Minute,
        )?;
        let told = self
            .temperature
            .map(|(at, unit)| (cell(at), unit))
            .filter(|(text, _)| !text.is_empty());
        let temperature_c = told
            .map(|(text, unit)| number(text, Dimension::Temperature, Unit::Celsius, unit))
            .transpose()?;
        let reading = Reading {
            minutes,
            gauge_kpa: pressure(written)?,
            temperature_c,
        };
        Ok((reading, pressure(&last_digit(written))?))
    }
}

fn cells(line: &str) -> Vec<String> {
    let line = line.trim();
    let apart = [';', '\t', ',']
        .into_iter()
        .find(|apart| line.contains(*apart));
    match apart {
        Some(apart) => line
            .split(apart)
            .map(|cell| cell.trim().trim_matches('"').trim().to_owned())
            .collect(),
        None => line.split_whitespace().map(str::to_owned).collect(),
    }
}

/// One of the last digit written: `101.3` has 0.1.
#[must_use]
pub fn last_digit(written: &str) -> String {
    let number: String = written
        .chars()
        .take_while(|c| c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+'))
        .collect();
    let decimals = number
        .rsplit_once(['.', ','])
        .map_or(0, |(_, decimals)| decimals.len());
    match decimals {
        0 => "1".to_owned(),
        decimals => format!("0.{}1", "0".repeat(decimals - 1)),
    }
}

#[cfg(test)]
mod tests {
    use super::{last_digit, readings};

    #[test]
    fn tables_are_read_with_their_units() {
        let text = "minutes;gauge_bar;temperature_f\n0;1.00;68\n1;0.99;\n";
        let table = readings(text, "t", None).unwrap();
        assert!((table.readings[1].gauge_kpa - 99.0).abs() < 1e-9);
        assert!((table.readings[0].temperature_c.unwrap() - 20.0).abs() < 1e-9);
        assert_eq!(table.readings[1].temperature_c, None);
        assert!((table.step_kpa - 1.0).abs() < 1e-9);
    }

    #[test]
    fn rows_typed_without_a_heading_take_the_one_given() {
        let heading = Some("minutes,gauge_psi,temperature_c");
        let table = readings("0 15.0 20\n5 14.9\n", "t", heading).unwrap();
        assert!((table.readings[0].gauge_kpa - 103.42).abs() < 0.01);
        assert_eq!(table.readings.len(), 2);
        // A heading of its own goes before.
        let own = readings("minutes\tgauge_kpa\n0\t100\n", "t", heading).unwrap();
        assert!((own.readings[0].gauge_kpa - 100.0).abs() < 1e-9);
    }

    #[test]
    fn a_bad_cell_is_named_by_its_line() {
        let trouble = |text: &str| readings(text, "readings.csv", None).unwrap_err().place;
        let line = trouble("minutes,gauge_kpa\n0,100\n1,high\n");
        assert_eq!(line, "readings.csv, line 3");
        assert_eq!(trouble("time,gauge_kpa\n"), "readings.csv, heading");
        assert_eq!(trouble(""), "readings.csv, heading");
    }

    #[test]
    fn a_byte_order_mark_is_no_part_of_the_heading() {
        let marked = "\u{feff}minutes,gauge_kpa\n0,100\n";
        assert_eq!(readings(marked, "t", None).unwrap().readings.len(), 1);
        let quoted = "\u{feff}\"minutes\";\"gauge_bar\"\r\n\"0\";\"1,00\"\r\n";
        let table = readings(quoted, "t", None).unwrap();
        assert!((table.readings[0].gauge_kpa - 100.0).abs() < 1e-9);
    }

    /// Six fields under three headings would be read as tight at a rate that cannot be.
    #[test]
    fn a_decimal_comma_between_commas_is_refused_with_its_line() {
        let text = "minutes,gauge_kpa,temperature_c\n0,100,20\n1,0,99,8,20,1\n";
        let trouble = readings(text, "log.csv", None).unwrap_err();
        assert_eq!(trouble.place, "log.csv, line 3");
        assert!(trouble.what.contains("6 fields") && trouble.what.contains("3 headings"));
        let short = "minutes,gauge_kpa\n0,5,100\n";
        assert!(readings(short, "log.csv", None).is_err());
        // Parted by semicolons it is plain.
        let table = readings("minutes;gauge_kpa\n0;100\n0,5;99,8\n", "t", None).unwrap();
        assert!((table.readings[1].gauge_kpa - 99.8).abs() < 1e-9);
        assert_eq!(table.lines, [2, 3]);
    }

    #[test]
    fn the_last_digit_written_is_the_step() {
        assert_eq!(last_digit("1.25"), "0.01");
        assert_eq!(last_digit("100"), "1");
        assert_eq!(last_digit("1.05 bar"), "0.01");
    }
}

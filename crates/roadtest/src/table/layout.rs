//! Delimiter, heading, and what each column is taken for.

use crate::heading::{Meaning, heading};
use crate::mapping::Place;
use crate::number::{is_blank, number};
use crate::text::{cells, start_of};
use crate::unit::Unit;
use crate::{LogError, Mapping, Quantity};
use std::collections::BTreeSet;

/// Lines looked at for a heading: some loggers write a preface.
const PREFACE: usize = 40;

/// How a table is laid out.
pub(super) struct Layout {
    pub(super) delimiter: char,
    pub(super) decimal_comma: bool,
    /// The first row of readings, from 0.
    pub(super) first_row: usize,
    pub(super) columns: Vec<ColumnUse>,
    pub(super) time: Option<usize>,
    pub(super) time_unit: Option<Unit>,
    /// Each row holds one reading: name, value, perhaps unit.
    pub(super) one_a_row: bool,
}

pub(super) struct ColumnUse {
    pub(super) heading: String,
    pub(super) taken_for: Use,
    pub(super) unit: Option<Unit>,
    pub(super) unit_words: String,
}

/// What a column is taken for.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Use {
    Of(Quantity),
    Codes,
    Lamp,
    CodeCount,
    Name,
    Value,
    UnitOfValue,
    Nothing,
}

/// A line that may be the heading.
struct Candidate {
    line: usize,
    delimiter: char,
    cells: Vec<String>,
    known: usize,
    has_time: bool,
}

/// Finds the layout.
pub(super) fn find(lines: &[&str], mapping: &Mapping) -> Result<Layout, LogError> {
    let first = lines
        .iter()
        .find(|line| !line.trim().is_empty())
        .map_or(String::new(), |line| start_of(line));
    let best = best(lines, mapping).ok_or(LogError::NoHeading { first })?;
    let columns_told = || {
        best.cells
            .iter()
            .map(|cell| start_of(cell))
            .collect::<Vec<_>>()
            .join(", ")
    };
    let mut columns: Vec<ColumnUse> = best.cells.iter().map(|cell| column(cell)).collect();
    let rows = lines.get(best.line + 1..).unwrap_or(&[]);
    let mut time = time_column(&best.cells, rows, best.delimiter);
    apply(mapping, &mut columns, &mut time, &columns_told())?;
    let one_a_row = is_one_a_row(&columns);
    let known = columns.iter().any(|column| {
        matches!(
            column.taken_for,
            Use::Of(_) | Use::Codes | Use::Lamp | Use::CodeCount
        )
    });
    // The run time of the engine is a clock too, if there is no other.
    let time = time.or_else(|| {
        columns
            .iter()
            .position(|column| column.taken_for == Use::Of(Quantity::RunTime))
    });
    if time.is_none() && mapping.step_s.is_none() {
        return Err(if known || one_a_row {
            LogError::NoTime {
                columns: columns_told(),
            }
        } else {
            LogError::NoHeading {
                first: start_of(lines.get(best.line).unwrap_or(&"")),
            }
        });
    }
    let useful = columns
        .iter()
        .enumerate()
        .any(|(nth, column)| Some(nth) != time && !matches!(column.taken_for, Use::Nothing));
    if !useful {
        return Err(LogError::NothingKnown {
            columns: columns_told(),
        });
    }
    if !one_a_row {
        keep_first_of_each(&mut columns, time);
    }
    let mut first_row = best.line + 1;
    if let Some(units) = units_row(lines, first_row, best.delimiter, columns.len()) {
        first_row += 1;
        for (column, unit) in columns.iter_mut().zip(units) {
            if column.unit.is_none() && Unit::named(&unit).is_some() {
                column.unit = Unit::named(&unit);
                column.unit_words = unit;
            }
        }
    }
    let time_unit = time
        .and_then(|time| columns.get(time))
        .and_then(|column| column.unit);
    Ok(Layout {
        delimiter: best.delimiter,
        decimal_comma: decimal_comma(lines, first_row, best.delimiter),
        first_row,
        columns,
        time,
        time_unit,
        one_a_row,
    })
}

/// The line and delimiter under which most columns are known.
fn best(lines: &[&str], mapping: &Mapping) -> Option<Candidate> {
    let mut best: Option<Candidate> = None;
    let filled = lines
        .iter()
        .enumerate()
        .filter(|(_, line)| !line.trim().is_empty())
        .take(PREFACE);
    for (line, text) in filled {
        for delimiter in [',', ';', '\t', '|'] {
            let mut cells = cells(text, delimiter);
            while cells.last().is_some_and(String::is_empty) {
                cells.pop();
            }
            if cells.len() < 2 {
                continue;
            }
            let candidate = candidate(line, delimiter, cells, mapping);
            let score = |c: &Candidate| (c.known, c.has_time);
            if candidate.known > 0
                && best
                    .as_ref()
                    .is_none_or(|best| score(&candidate) > score(best))
            {
                best = Some(candidate);
            }
        }
    }
    best
}

fn candidate(line: usize, delimiter: char, cells: Vec<String>, mapping: &Mapping) -> Candidate {
    let mapped = |cell: &str| {
        let wanted = mapping.columns.values().chain(&mapping.time);
        wanted.into_iter().any(|place| same(&place.heading, cell))
    };
    let known = cells
        .iter()
        // A heading is no number, but for the standard's own (0105) beside others.
        .filter(|cell| number(cell, true).is_none() || cell.starts_with("01"))
        .filter(|cell| heading(cell).meaning.is_some() || mapped(cell))
        .count();
    // By number, a mapping needs no heading at all: any first line will do.
    let by_number = mapping.columns.values().chain(&mapping.time).any(|place| {
        number(&place.heading, false).is_some()
            && !cells.iter().any(|cell| same(&place.heading, cell))
    });
    Candidate {
        line,
        delimiter,
        has_time: cells
            .iter()
            .any(|cell| heading(cell).meaning == Some(Meaning::Time)),
        known: known + usize::from(by_number && known == 0) * cells.len().min(2),
        cells,
    }
}

fn column(cell: &str) -> ColumnUse {
    let read = heading(cell);
    let taken_for = match read.meaning {
        Some(Meaning::Of(quantity)) => Use::Of(quantity),
        Some(Meaning::Codes) => Use::Codes,
        Some(Meaning::Lamp) => Use::Lamp,
        Some(Meaning::CodeCount) => Use::CodeCount,
        Some(Meaning::Name) => Use::Name,
        Some(Meaning::Value) => Use::Value,
        Some(Meaning::UnitOfValue) => Use::UnitOfValue,
        Some(Meaning::Time) | None => Use::Nothing,
    };
    ColumnUse {
        heading: cell.to_owned(),
        taken_for,
        unit: read.unit,
        unit_words: read.unit.map_or(String::new(), |_| unit_words(cell)),
    }
}

/// The words of the unit in a heading, for the mapping to remember.
fn unit_words(cell: &str) -> String {
    let inside = cell
        .rsplit_once(['(', '[', '{'])
        .map(|(_, unit)| unit.trim_end_matches([')', ']', '}', ' ']).to_owned());
    inside
        .filter(|unit| Unit::named(unit).is_some())
        .or_else(|| {
            cell.rsplit([' ', '_', ','])
                .next()
                .filter(|unit| Unit::named(unit).is_some())
                .map(str::to_owned)
        })
        .unwrap_or_default()
}

/// The column that tells the time of a row: one whose cells are times, best with a unit.
fn time_column(headings: &[String], rows: &[&str], delimiter: char) -> Option<usize> {
    let first: Vec<Vec<String>> = rows
        .iter()
        .filter(|row| !row.trim().is_empty())
        .take(50)
        .map(|row| cells(row, delimiter))
        .collect();
    let is_read = |nth: usize| {
        let times = first
            .iter()
            .filter_map(|row| row.get(nth))
            .filter(|cell| crate::clock::seconds_of(cell, None, true).is_some())
            .count();
        2 * times > first.len()
    };
    headings
        .iter()
        .enumerate()
        .filter(|(_, cell)| heading(cell).meaning == Some(Meaning::Time))
        .map(|(nth, cell)| ((is_read(nth), heading(cell).unit.is_some()), nth))
        // Of equals the first.
        .max_by_key(|(score, nth)| (*score, usize::MAX - nth))
        .map(|(_, nth)| nth)
}

fn same(wanted: &str, cell: &str) -> bool {
    let plain = |text: &str| {
        text.to_lowercase()
            .chars()
            .filter(|c| c.is_alphanumeric())
            .collect::<String>()
    };
    wanted.trim() == cell.trim() || !plain(wanted).is_empty() && plain(wanted) == plain(cell)
}

/// What the mapping says goes before what the headings say.
fn apply(
    mapping: &Mapping,
    columns: &mut [ColumnUse],
    time: &mut Option<usize>,
    told: &str,
) -> Result<(), LogError> {
    let headings: Vec<String> = columns
        .iter()
        .map(|column| column.heading.clone())
        .collect();
    let place_of = |place: &Place| {
        let exact = headings
            .iter()
            .position(|cell| place.heading.trim() == cell.trim());
        let by_words = || {
            // A heading may carry its unit; the mapping has it apart.
            headings.iter().position(|cell| {
                same(&place.heading, cell)
                    || cell
                        .rsplit_once(['(', '['])
                        .is_some_and(|(name, _)| same(&place.heading, name))
            })
        };
        let by_number = || {
            let nth: usize = place.heading.trim().parse().ok()?;
            nth.checked_sub(1).filter(|nth| *nth < headings.len())
        };
        exact
            .or_else(by_words)
            .or_else(by_number)
            .ok_or_else(|| LogError::NoColumn {
                column: start_of(&place.heading),
                columns: told.to_owned(),
            })
    };
    let set_unit = |column: &mut ColumnUse, place: &Place| {
        if let Some(unit) = &place.unit {
            column.unit = Unit::named(unit);
            column.unit_words.clone_from(unit);
        }
    };
    for (quantity, place) in &mapping.columns {
        let nth = place_of(place)?;
        for (other, column) in columns.iter_mut().enumerate() {
            if column.taken_for == Use::Of(*quantity) {
                column.taken_for = Use::Nothing;
            }
            if other == nth {
                column.taken_for = Use::Of(*quantity);
                set_unit(column, place);
            }
        }
    }
    if let Some(place) = &mapping.time {
        let nth = place_of(place)?;
        if let Some(column) = columns.get_mut(nth) {
            set_unit(column, place);
        }
        *time = Some(nth);
    }
    Ok(())
}

fn is_one_a_row(columns: &[ColumnUse]) -> bool {
    let has = |wanted: Use| columns.iter().any(|column| column.taken_for == wanted);
    let others = columns
        .iter()
        .filter(
            |column| matches!(column.taken_for, Use::Of(quantity) if quantity != Quantity::RunTime),
        )
        .count();
    has(Use::Name) && has(Use::Value) && others == 0
}

/// Two columns of one meaning: the first counts, and the vehicle's own before a satellite's.
fn keep_first_of_each(columns: &mut [ColumnUse], time: Option<usize>) {
    let mut seen = BTreeSet::new();
    let of_vehicle = |column: &ColumnUse| !column.heading.to_lowercase().contains("gps");
    for own in [true, false] {
        for column in columns
            .iter_mut()
            .filter(|column| of_vehicle(column) == own)
        {
            if let Use::Of(quantity) = column.taken_for
                && !seen.insert(quantity)
            {
                column.taken_for = Use::Nothing;
            }
        }
    }
    for (nth, column) in columns.iter_mut().enumerate() {
        let is_time = Some(nth) == time && column.taken_for != Use::Of(Quantity::RunTime);
        if is_time || matches!(column.taken_for, Use::Name | Use::Value | Use::UnitOfValue) {
            column.taken_for = Use::Nothing;
        }
    }
}

/// A second line of the heading that holds units alone.
fn units_row(lines: &[&str], row: usize, delimiter: char, width: usize) -> Option<Vec<String>> {
    let cells = cells(lines.get(row)?, delimiter);
    let bare: Vec<String> = cells
        .iter()
        .map(|cell| {
            cell.trim_matches(|c: char| matches!(c, '(' | ')' | '[' | ']') || c.is_whitespace())
                .to_owned()
        })
        .collect();
    let units = bare
        .iter()
        .filter(|cell| Unit::named(cell).is_some())
        .count();
    let numbers = bare
        .iter()
        .filter(|cell| number(cell, true).is_some())
        .count();
    (cells.len() == width
        && units > 0
        && numbers == 0
        && 2 * units >= bare.iter().filter(|c| !is_blank(c)).count())
    .then_some(bare)
}

/// Whether decimals take a comma: only where commas do not part the columns.
fn decimal_comma(lines: &[&str], first_row: usize, delimiter: char) -> bool {
    lines
        .iter()
        .skip(first_row)
        .take(500)
        .flat_map(|line| cells(line, delimiter))
        .any(|cell| {
            let cell = cell.trim_start_matches(['-', '+']);
            cell.split_once(',').is_some_and(|(whole, part)| {
                let digits =
                    |text: &str| !text.is_empty() && text.chars().all(|c| c.is_ascii_digit());
                digits(&whole.replace('.', "")) && digits(part)
            })
        })
}

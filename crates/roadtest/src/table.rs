//! A table of any logger, read into a log.

mod layout;
mod values;

use crate::clock::{self, Oddity};
use crate::number::is_blank;
use crate::phrases::log as say;
use crate::text::{cells, decoded, start_of};
use crate::unit::Unit;
use crate::{Column, Log, LogError, Mapping, Quantity, Sample};
use layout::{Layout, Use};
use std::collections::BTreeMap;

/// Broken lines that are told one by one; the others are counted.
const TOLD_ONE_BY_ONE: usize = 20;

/// One line with its number.
struct Row {
    line: usize,
    cells: Vec<String>,
}

/// Reads a table of any logger.
pub(crate) fn read(bytes: &[u8], mapping: &Mapping) -> Result<Log, LogError> {
    let text = decoded(bytes);
    let lines: Vec<&str> = text.lines().collect();
    if lines.iter().all(|line| line.trim().is_empty()) {
        return Err(LogError::Empty);
    }
    let layout = layout::find(&lines, mapping)?;
    let mut log = Log::default();
    let rows = rows(&lines, &layout, &mut log);
    let first = lines.get(layout.first_row).copied().unwrap_or("");
    if rows.is_empty() {
        return Err(LogError::NoRows {
            first: start_of(first),
        });
    }
    let times = times(&rows, &layout, mapping, &mut log);
    if times.iter().flatten().next().is_none() {
        return Err(LogError::NoRows {
            first: start_of(first),
        });
    }
    values::fill(&mut log, &rows, &times, &layout);
    told(&mut log, &layout);
    if log.series.values().all(Vec::is_empty) && log.codes.is_empty() && log.statuses.is_empty() {
        return Err(LogError::NoRows {
            first: start_of(first),
        });
    }
    Ok(log)
}

/// The rows that have as many cells as the heading; the others are told by their line.
fn rows(lines: &[&str], layout: &Layout, log: &mut Log) -> Vec<Row> {
    let width = layout.columns.len();
    let mut broken = Vec::new();
    let mut rows = Vec::new();
    for (nth, line) in lines.iter().enumerate().skip(layout.first_row) {
        if line.trim().is_empty() {
            continue;
        }
        let mut cells = cells(line, layout.delimiter);
        while cells.len() > width && cells.last().is_some_and(String::is_empty) {
            cells.pop();
        }
        if cells.len() == width {
            rows.push(Row {
                line: nth + 1,
                cells,
            });
        } else {
            broken.push((nth + 1, cells.len()));
        }
    }
    for (line, found) in broken.iter().take(TOLD_ONE_BY_ONE) {
        log.note(Some(*line), say::other_count_of_cells(found, width));
    }
    if broken.len() > TOLD_ONE_BY_ONE {
        let more = broken.len() - TOLD_ONE_BY_ONE;
        log.note(None, say::more_lines_left_out(more));
    }
    rows
}

/// Seconds since the start for each row.
fn times(rows: &[Row], layout: &Layout, mapping: &Mapping, log: &mut Log) -> Vec<Option<f64>> {
    let Some(column) = layout.time else {
        let step = mapping.step_s.unwrap_or(1.0);
        return (0..rows.len())
            .map(|nth| Some(crate::number::real(nth) * step))
            .collect();
    };
    let cell = |row: &Row| row.cells.get(column).cloned().unwrap_or_default();
    let unit = layout.time_unit.or_else(|| {
        let told = guessed_unit(rows.iter().map(cell), layout.decimal_comma);
        if let Some(Unit::Milliseconds) = told {
            log.note(None, say::the_time_has_no_unit_by());
        }
        told
    });
    let raw: Vec<Option<f64>> = rows
        .iter()
        .map(|row| clock::seconds_of(&cell(row), unit, layout.decimal_comma))
        .collect();
    let rpm = layout
        .columns
        .iter()
        .position(|column| column.taken_for == Use::Of(Quantity::Rpm));
    let stands: Vec<bool> = rows
        .iter()
        .map(|row| {
            rpm.and_then(|column| row.cells.get(column))
                .and_then(|cell| crate::number::number(cell, layout.decimal_comma))
                .is_some_and(|rpm| rpm < 400.0)
        })
        .collect();
    for (row, time) in rows.iter().zip(&raw) {
        if time.is_none() && !is_blank(&cell(row)) {
            log.note(Some(row.line), say::is_no_time(cell(row)));
        }
    }
    let (placed, oddities) = if layout.one_a_row {
        // Each quantity may come on its own line: lines of one moment are no stall.
        clock::in_sequence(&raw, &vec![true; raw.len()])
    } else {
        clock::in_sequence(&raw, &stands)
    };
    tell(&oddities, rows, log);
    placed
}

/// Milliseconds where the steps are far too long for seconds.
fn guessed_unit(cells: impl Iterator<Item = String>, decimal_comma: bool) -> Option<Unit> {
    let times: Vec<Option<f64>> = cells
        .map(|cell| crate::number::number(&cell, decimal_comma))
        .collect();
    let large = times.iter().flatten().any(|time| *time > 1e11);
    let step = clock::usual_step(&times);
    let known = times.iter().flatten().count();
    (large || known > 20 && step >= 50.0 && step != 60.0).then_some(Unit::Milliseconds)
}

fn tell(oddities: &[Oddity], rows: &[Row], log: &mut Log) {
    for oddity in oddities.iter().take(TOLD_ONE_BY_ONE) {
        let (row, what) = match oddity {
            Oddity::OutOfOrder { row } => (row, say::the_time_does_not_fit_those().to_owned()),
            Oddity::BeganAgain { row } => (row, say::the_time_begins_again_here_the().to_owned()),
            Oddity::StoodStill { row, rows } => (row, say::clock_stands_still(rows)),
            Oddity::Gap { row, seconds } => {
                (row, say::nothing_recorded_for(format!("{seconds:.0}")))
            }
        };
        log.note(rows.get(*row).map(|row| row.line), what);
    }
    if oddities.len() > TOLD_ONE_BY_ONE {
        let more = oddities.len() - TOLD_ONE_BY_ONE;
        log.note(None, say::more_slips_of_the_clock(more));
    }
}

/// What each column was taken for, to be shown and remembered.
fn told(log: &mut Log, layout: &Layout) {
    log.columns = layout
        .columns
        .iter()
        .enumerate()
        .map(|(nth, column)| {
            let is_time = layout.time == Some(nth);
            let taken_for = match column.taken_for {
                _ if is_time => Some("time".to_owned()),
                Use::Of(quantity) => Some(quantity.name().to_owned()),
                Use::Codes => Some("codes".to_owned()),
                Use::Lamp => Some("lamp".to_owned()),
                Use::CodeCount => Some("count of codes".to_owned()),
                Use::Name | Use::Value | Use::UnitOfValue | Use::Nothing => None,
            };
            Column {
                heading: column.heading.clone(),
                taken_for,
                unit: column.unit_words.clone(),
                unit_told: column.unit.is_some(),
            }
        })
        .collect();
}

/// Puts a reading in its series, if it can be true.
fn put(series: &mut BTreeMap<Quantity, Vec<Sample>>, quantity: Quantity, sample: Sample) -> bool {
    let (low, high) = quantity.range();
    let fits = sample.value >= low - 0.01 && sample.value <= high + 0.01;
    if fits {
        series.entry(quantity).or_default().push(sample);
    }
    fits
}

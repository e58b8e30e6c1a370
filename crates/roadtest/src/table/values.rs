//! Cells become readings.

use super::{Layout, Row, Use, put};
use crate::heading::{Meaning, heading};
use crate::number::{is_blank, median, number};
use crate::phrases::log as say;
use crate::unit::Unit;
use crate::{CodeList, CodeReading, Log, Quantity, Sample, StatusReading};
use std::collections::BTreeMap;

/// Cells of one column that are told one by one.
const TOLD: usize = 5;

/// Fills the log from the rows.
pub(super) fn fill(log: &mut Log, rows: &[Row], times: &[Option<f64>], layout: &Layout) {
    if layout.one_a_row {
        by_name(log, rows, times, layout);
        return;
    }
    for (nth, column) in layout.columns.iter().enumerate() {
        let cells = rows.iter().zip(times).filter_map(|(row, time)| {
            let cell = row.cells.get(nth)?.as_str();
            // Of codes, "none" is an answer.
            let answers = column.taken_for == Use::Codes && !cell.trim().is_empty();
            Some((row.line, (*time)?, cell)).filter(|_| answers || !is_blank(cell))
        });
        match column.taken_for {
            Use::Of(quantity) => {
                let cells: Vec<_> = cells.collect();
                series(
                    log,
                    quantity,
                    column.unit,
                    &column.heading,
                    &cells,
                    layout.decimal_comma,
                );
            }
            Use::Codes => codes(log, cells),
            Use::Lamp => lamp(log, cells),
            Use::CodeCount => count(log, cells),
            Use::Name | Use::Value | Use::UnitOfValue | Use::Nothing => {}
        }
    }
}

/// Each row holds one reading: its name, its value, perhaps its unit.
fn by_name(log: &mut Log, rows: &[Row], times: &[Option<f64>], layout: &Layout) {
    let place = |wanted: Use| {
        layout
            .columns
            .iter()
            .position(|column| column.taken_for == wanted)
    };
    let (Some(name_at), Some(value_at)) = (place(Use::Name), place(Use::Value)) else {
        return;
    };
    let unit_at = place(Use::UnitOfValue);
    let mut found: BTreeMap<&str, Vec<(usize, f64, &str)>> = BTreeMap::new();
    let mut units: BTreeMap<&str, &str> = BTreeMap::new();
    for (row, time) in rows.iter().zip(times) {
        let cell = |at: usize| row.cells.get(at).map_or("", String::as_str);
        let Some(time) = time else { continue };
        if is_blank(cell(value_at)) {
            continue;
        }
        found
            .entry(cell(name_at))
            .or_default()
            .push((row.line, *time, cell(value_at)));
        if let Some(unit_at) = unit_at {
            units.entry(cell(name_at)).or_insert(cell(unit_at));
        }
    }
    for (name, cells) in found {
        let told = heading(name);
        let unit = units
            .get(name)
            .and_then(|unit| Unit::named(unit))
            .or(told.unit);
        match told.meaning {
            Some(Meaning::Of(quantity)) if log.of(quantity).is_empty() => {
                series(log, quantity, unit, name, &cells, layout.decimal_comma);
            }
            Some(Meaning::Codes) => codes(log, cells.into_iter()),
            Some(Meaning::Lamp) => lamp(log, cells.into_iter()),
            Some(Meaning::CodeCount) => count(log, cells.into_iter()),
            _ => {}
        }
    }
}

/// One column of numbers.
fn series(
    log: &mut Log,
    quantity: Quantity,
    unit: Option<Unit>,
    heading: &str,
    cells: &[(usize, f64, &str)],
    decimal_comma: bool,
) {
    let raw: Vec<(usize, f64, Option<f64>, &str)> = cells
        .iter()
        .map(|(line, t_s, cell)| (*line, *t_s, value(quantity, cell, decimal_comma), *cell))
        .collect();
    let unit = unit.or_else(|| {
        let told = assumed(quantity, raw.iter().filter_map(|cell| cell.2));
        if told == Some(Unit::Fahrenheit) {
            log.note(None, say::taken_as_fahrenheit(heading));
        }
        told
    });
    let mut untrue = 0_usize;
    for (line, t_s, number, cell) in raw {
        let converted = number.and_then(|n| unit.map_or(Some(n), |unit| unit.convert(n, quantity)));
        let fits = converted.is_some_and(|value| {
            !is_dead_sensor(quantity, value)
                && put(&mut log.series, quantity, Sample { t_s, value, line })
        });
        if !fits {
            untrue += 1;
            if untrue <= TOLD {
                log.note(Some(line), say::cannot_be_true(cell, quantity.said()));
            }
        }
    }
    if untrue > TOLD {
        let more = untrue - TOLD;
        log.note(None, say::more_readings_left_out(more, quantity.said()));
    }
}

/// A sensor that is cut off reads the end of its scale.
fn is_dead_sensor(quantity: Quantity, value: f64) -> bool {
    quantity == Quantity::Coolant && (value <= -39.5 || value >= 214.5)
}

fn value(quantity: Quantity, cell: &str, decimal_comma: bool) -> Option<f64> {
    if let Some(plain) = number(cell, decimal_comma) {
        return Some(plain);
    }
    let words = cell.trim().to_lowercase();
    match quantity {
        Quantity::Fan => match words.as_str() {
            "on" | "true" | "yes" | "high" | "low" | "ein" | "an" => Some(1.0),
            "off" | "false" | "no" | "aus" => Some(0.0),
            _ => None,
        },
        Quantity::ClosedLoop => {
            if words.contains("closed") || words == "cl" {
                Some(1.0)
            } else if words.contains("open") || words == "ol" {
                Some(0.0)
            } else {
                None
            }
        }
        // A unit behind the number: "88 °C".
        _ => {
            let end = words
                .find(|c: char| !(c.is_ascii_digit() || matches!(c, '.' | ',' | '-' | '+')))?;
            let (front, rest) = words.split_at(end);
            let unit = Unit::named(rest)?;
            unit.convert(number(front, decimal_comma)?, quantity)
        }
    }
}

/// What a column without a unit is read in: the standard's, unless its height forbids that.
fn assumed(quantity: Quantity, values: impl Iterator<Item = f64>) -> Option<Unit> {
    let values: Vec<f64> = values.collect();
    match quantity {
        // No engine lives at 150 °C, and every warm one reads 160 °F or more.
        Quantity::Coolant | Quantity::Oil => {
            let high = crate::number::quantile(values, 0.98)?;
            (high > 150.0).then_some(Unit::Fahrenheit)
        }
        Quantity::Voltage => {
            let middle = median(values)?;
            (middle > 1000.0).then_some(Unit::Millivolts)
        }
        _ => None,
    }
}

fn codes<'a>(log: &mut Log, cells: impl Iterator<Item = (usize, f64, &'a str)>) {
    for (line, t_s, cell) in cells {
        let codes = crate::j1979::codes_in(cell);
        let said_none = matches!(
            cell.trim().to_lowercase().as_str(),
            "0" | "no" | "none" | "no codes" | "ok"
        );
        if codes.is_empty() && !said_none {
            continue;
        }
        let same = log.codes.last().is_some_and(|last| last.codes == codes);
        if !same {
            log.codes.push(CodeReading {
                t_s,
                line,
                unit: String::new(),
                list: CodeList::Stored,
                codes,
            });
        }
    }
}

fn lamp<'a>(log: &mut Log, cells: impl Iterator<Item = (usize, f64, &'a str)>) {
    for (line, t_s, cell) in cells {
        let lamp = match cell.trim().to_lowercase().as_str() {
            "on" | "1" | "true" | "yes" => true,
            "off" | "0" | "false" | "no" => false,
            _ => continue,
        };
        if log.statuses.last().is_some_and(|last| last.lamp == lamp) {
            continue;
        }
        log.statuses.push(StatusReading {
            t_s,
            line,
            unit: String::new(),
            lamp,
            count: 0,
            incomplete: None,
        });
    }
}

fn count<'a>(log: &mut Log, cells: impl Iterator<Item = (usize, f64, &'a str)>) {
    for (line, t_s, cell) in cells {
        let Some(count) = cell
            .trim()
            .parse::<f64>()
            .ok()
            .filter(|n| *n >= 0.0 && *n <= 127.0)
        else {
            continue;
        };
        let count = u8::try_from(crate::number::index(count)).unwrap_or(u8::MAX);
        if log.statuses.last().is_some_and(|last| last.count == count) {
            continue;
        }
        log.statuses.push(StatusReading {
            t_s,
            line,
            unit: String::new(),
            lamp: false,
            count,
            incomplete: None,
        });
    }
}

//! The time of each row: read from a cell, then put in sequence.

use crate::number::{index, median, number, real};
use crate::unit::Unit;

/// A cell of the time column, in seconds of some zero; nothing where it is no time.
pub(crate) fn seconds_of(cell: &str, unit: Option<Unit>, decimal_comma: bool) -> Option<f64> {
    if let Some(plain) = number(cell, decimal_comma) {
        return unit.unwrap_or(Unit::Seconds).seconds(plain);
    }
    let cell = cell.trim().trim_end_matches('Z');
    let mut days = 0.0;
    let mut clock = None;
    let mut afternoon = None;
    let spaced: String = cell
        .replace("GMT", " ")
        .replace("UTC", " ")
        .replace('T', " ");
    for part in spaced.split_whitespace() {
        if part.contains(':') {
            // An offset from UTC has a colon too.
            clock = clock.or(clock_of(part));
        } else if part.eq_ignore_ascii_case("am") || part.eq_ignore_ascii_case("pm") {
            afternoon = Some(part.eq_ignore_ascii_case("pm"));
        } else if let Some(day) = day_of(part) {
            days = day;
        }
    }
    let mut clock = clock?;
    if let Some(afternoon) = afternoon {
        let noon = 43_200.0;
        clock = clock % noon + if afternoon { noon } else { 0.0 };
    }
    Some(days * 86_400.0 + clock)
}

/// `12:01:02.5`, `01:02.5`, with an offset from UTC left out.
fn clock_of(text: &str) -> Option<f64> {
    let text = text.split(['+', 'Z']).next()?;
    let parts: Vec<&str> = text.split(':').collect();
    if parts.len() > 4 || text.is_empty() {
        return None;
    }
    let mut numbers = Vec::new();
    for part in &parts {
        let value = number(&part.replace(',', "."), false)?;
        if value < 0.0 {
            return None;
        }
        numbers.push(value);
    }
    match numbers.as_slice() {
        // Two parts: a stop watch from zero (12:30 is twelve minutes and a half).
        [minutes, seconds] => Some(minutes * 60.0 + seconds),
        [hours, minutes, seconds] => Some(hours * 3600.0 + minutes * 60.0 + seconds),
        [hours, minutes, seconds, milliseconds] => {
            Some(hours * 3600.0 + minutes * 60.0 + seconds + milliseconds / 1000.0)
        }
        _ => None,
    }
}

/// A date as a count of days, good enough for drives over midnight.
fn day_of(text: &str) -> Option<f64> {
    let parts: Vec<&str> = text.split(['-', '/', '.']).collect();
    let [a, b, c] = parts.as_slice() else {
        return None;
    };
    let (a, b, c) = (number(a, false)?, number(b, false)?, number(c, false)?);
    let (year, month, day) = match (a > 31.0, b > 12.0) {
        (true, _) => (a, b, c),
        (false, true) => (c, a, b),
        (false, false) => (c, b, a),
    };
    // The year begins in March here, so that the leap day is its last.
    let (year, month) = if month > 2.0 {
        (year, month - 3.0)
    } else {
        (year - 1.0, month + 9.0)
    };
    let leap_days = (year / 4.0).floor() - (year / 100.0).floor() + (year / 400.0).floor();
    Some(365.0 * year + leap_days + ((153.0 * month + 2.0) / 5.0).floor() + day)
}

/// What putting the times in sequence has found.
#[derive(Debug, Clone, PartialEq)]
pub(crate) enum Oddity {
    /// A row earlier than those around it, left out.
    OutOfOrder { row: usize },
    /// The clock began again; the rest is put after it.
    BeganAgain { row: usize },
    /// The clock stood still for so many rows.
    StoodStill { row: usize, rows: usize },
    /// Nothing for so many seconds.
    Gap { row: usize, seconds: f64 },
}

/// Times since the first row, never falling; nothing for a row that is left out.
///
/// `engine_runs` says for each row whether the engine is known to run: the run time of an
/// engine that stands still does not count on, and that is no fault of the log.
pub(crate) fn in_sequence(
    times: &[Option<f64>],
    engine_stands: &[bool],
) -> (Vec<Option<f64>>, Vec<Oddity>) {
    let mut placed = vec![None; times.len()];
    let mut oddities = Vec::new();
    let step = usual_step(times);
    let (mut last, mut shift) = (None::<f64>, 0.0);
    for row in 0..times.len() {
        let Some(raw) = times.get(row).copied().flatten() else {
            continue;
        };
        let mut now = raw + shift;
        if let Some(before) = last {
            if now < before - 1e-9 {
                let resumes = times
                    .iter()
                    .skip(row + 1)
                    .flatten()
                    .next()
                    .is_some_and(|next| next + shift >= before);
                if resumes {
                    oddities.push(Oddity::OutOfOrder { row });
                    continue;
                }
                oddities.push(Oddity::BeganAgain { row });
                shift = before + step - raw;
                now = before + step;
            } else if now - before > 20.0 * 3600.0 {
                // No drive takes that long: a slip in one cell.
                oddities.push(Oddity::OutOfOrder { row });
                continue;
            } else if now - before > gap_s(step) {
                oddities.push(Oddity::Gap {
                    row,
                    seconds: now - before,
                });
            }
        }
        last = Some(now);
        if let Some(slot) = placed.get_mut(row) {
            *slot = Some(now);
        }
    }
    let first = placed.iter().flatten().next().copied().unwrap_or(0.0);
    for time in placed.iter_mut().flatten() {
        *time -= first;
    }
    oddities.extend(stood_still(&placed, engine_stands));
    (placed, oddities)
}

/// How long a hole may be until it counts as one.
pub(crate) fn gap_s(step_s: f64) -> f64 {
    (4.0 * step_s).max(15.0)
}

/// The usual seconds from one time to the next that differs.
pub(crate) fn usual_step(times: &[Option<f64>]) -> f64 {
    let known: Vec<f64> = times.iter().flatten().copied().collect();
    let steps = known
        .windows(2)
        .filter_map(|pair| pair.first().zip(pair.last()))
        .map(|(one, next)| next - one)
        .filter(|step| *step > 1e-9);
    median(steps).unwrap_or(1.0)
}

/// Runs of rows with one time, far longer than its resolution explains.
fn stood_still(placed: &[Option<f64>], engine_stands: &[bool]) -> Vec<Oddity> {
    let mut runs = Vec::new();
    let (mut start, mut time) = (0, None::<f64>);
    for (row, now) in placed.iter().enumerate() {
        let Some(now) = now else { continue };
        if time.is_none_or(|time| (now - time).abs() > 1e-9) {
            runs.push((start, row - start));
            (start, time) = (row, Some(*now));
        }
    }
    runs.push((start, placed.len().saturating_sub(start)));
    let usual = median(runs.iter().map(|(_, rows)| real(*rows))).unwrap_or(1.0);
    let long = index((usual * 8.0).max(20.0));
    runs.into_iter()
        .filter(|(start, rows)| {
            *rows > long && !engine_stands.get(*start).copied().unwrap_or(false)
        })
        .map(|(row, rows)| Oddity::StoodStill { row, rows })
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sequence(times: &[f64]) -> (Vec<Option<f64>>, Vec<Oddity>) {
        let times: Vec<_> = times.iter().copied().map(Some).collect();
        in_sequence(&times, &[])
    }

    #[test]
    fn times_in_many_manners() {
        let s = |cell: &str| seconds_of(cell, None, false);
        assert_eq!(s("12.5"), Some(12.5));
        assert_eq!(
            seconds_of("1500", Some(Unit::Milliseconds), false),
            Some(1.5)
        );
        assert_eq!(s("00:01:02.5"), Some(62.5));
        assert_eq!(s("01:02"), Some(62.0));
        assert_eq!(s("12:00:00 AM"), Some(0.0));
        assert_eq!(s("01:00:00 PM"), Some(46_800.0));
        assert_eq!(s("bad"), None);
        assert_eq!(s("31-May-2024 00:01:02.5"), Some(62.5));
        assert_eq!(s("Fri May 31 00:01:02 GMT+02:00 2024"), Some(62.0));
        for (evening, morning) in [
            ("2024-05-31T23:59:59.5Z", "2024-06-01T00:00:00.5Z"),
            ("2024-02-29 23:59:59.5", "2024-03-01 00:00:00.5"),
            ("28.02.2023 23:59:59.5", "01.03.2023 00:00:00.5"),
            ("12/31/2023 11:59:59.5 PM", "01/01/2024 00:00:00.5"),
        ] {
            let seconds = s(morning).unwrap() - s(evening).unwrap();
            assert!((seconds - 1.0).abs() < 1e-4, "{evening}: {seconds}");
        }
    }

    #[test]
    fn a_row_out_of_order_is_left_out_and_a_restart_goes_on() {
        let (placed, odd) = sequence(&[0.0, 1.0, 2.0, 0.5, 3.0, 4.0]);
        assert_eq!(placed[3], None);
        assert_eq!(odd, [Oddity::OutOfOrder { row: 3 }]);
        let (placed, odd) = sequence(&[0.0, 1.0, 2.0, 0.0, 1.0, 2.0]);
        assert_eq!(placed[5], Some(5.0));
        assert_eq!(odd, [Oddity::BeganAgain { row: 3 }]);
    }

    #[test]
    fn a_clock_that_stands_and_a_gap_are_told() {
        let mut times: Vec<f64> = (0..30).map(f64::from).collect();
        times.extend([29.0; 40]);
        times.extend([80.0, 81.0]);
        let (_, odd) = sequence(&times);
        assert!(
            odd.iter().any(|o| matches!(o, Oddity::Gap { row: 70, .. })),
            "{odd:?}"
        );
        assert!(
            odd.iter()
                .any(|o| matches!(o, Oddity::StoodStill { row: 29, .. })),
            "{odd:?}"
        );
    }
}

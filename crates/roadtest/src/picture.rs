//! The drive as plain values for a drawing.

use crate::judge::{Case, Check, CheckName, Outcome};
use crate::limits::TOO_HOT_C;
use crate::number::index;
use crate::phrases::judge as say;

/// Points at most of the line: more than a phone has columns.
const MOST_POINTS: usize = 600;

/// What a drawing of the drive shows.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Picture {
    /// Minutes and °C; a hole in the log parts it.
    pub coolant: Vec<Vec<(f64, f64)>>,
    /// Minutes and km/h.
    pub speed: Vec<Vec<(f64, f64)>>,
    /// The band that the coolant may keep to once it is warm, °C.
    pub band_c: Option<(f64, f64)>,
    /// Opening, fan, and what is wrong.
    pub marks: Vec<PictureMark>,
}

/// One thing pointed at.
#[derive(Debug, Clone, PartialEq)]
pub struct PictureMark {
    pub minutes: f64,
    pub c: f64,
    pub words: String,
    /// Ringed.
    pub wrong: bool,
}

impl Picture {
    pub(crate) fn of<'a>(case: &Case, checks: impl Iterator<Item = &'a Check>) -> Picture {
        let drive = &case.drive;
        let band_c = case.opening.level().map(|level| {
            let low = case.conditions.thermostat_c.unwrap_or(level.c) - 8.0;
            (
                low.min(level.c - 4.0),
                case.conditions.limit_c.unwrap_or(TOO_HOT_C),
            )
        });
        Picture {
            coolant: pieces(case, &drive.coolant),
            speed: pieces(case, &drive.speed),
            band_c,
            marks: checks.flat_map(marks).collect(),
        }
    }
}

fn pieces(case: &Case, series: &[Option<f64>]) -> Vec<Vec<(f64, f64)>> {
    let stride = (series.len() / MOST_POINTS).max(1);
    let mut pieces = vec![Vec::new()];
    for (step, value) in series.iter().enumerate().step_by(stride) {
        match (value, pieces.last_mut()) {
            (Some(value), Some(piece)) => piece.push((case.drive.at_s(step) / 60.0, *value)),
            (None, Some(piece)) if !piece.is_empty() => pieces.push(Vec::new()),
            _ => {}
        }
    }
    pieces.retain(|piece| !piece.is_empty());
    pieces
}

fn marks(check: &Check) -> Vec<PictureMark> {
    let wrong = check.verdict == Outcome::Failed;
    let mark = |at_s: f64, c: f64, words: String| PictureMark {
        minutes: at_s / 60.0,
        c,
        words,
        wrong,
    };
    let named = |name: &str| {
        check
            .readings
            .iter()
            .filter(|reading| reading.name == name)
            .filter_map(|reading| Some((reading.at_s?, reading.value, reading.within)))
            .collect::<Vec<_>>()
    };
    match check.check {
        CheckName::Thermostat => {
            let opening = named("opening").into_iter().map(|(at_s, c, within)| {
                let within = index(within.unwrap_or(0.0) + 0.5);
                mark(at_s, c, say::mark_opens(format!("{c:.0}"), within))
            });
            let level = named("level")
                .into_iter()
                .filter(|_| wrong)
                .map(|(at_s, c, _)| mark(at_s, c, say::mark_settles(format!("{c:.0}"))));
            opening.chain(level).collect()
        }
        CheckName::Air => named("spike")
            .into_iter()
            .map(|(at_s, c, _)| mark(at_s, c, say::mark_spike(format!("{c:.0}"))))
            .collect(),
        CheckName::Overheating if wrong => named("most")
            .into_iter()
            .map(|(at_s, c, _)| mark(at_s, c, format!("{c:.0} °C")))
            .collect(),
        CheckName::Fan if !wrong => named("fan on")
            .into_iter()
            .map(|(at_s, c, _)| mark(at_s, c, say::mark_fan(format!("{c:.0}"))))
            .collect(),
        _ => Vec::new(),
    }
}

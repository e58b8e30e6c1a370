//! A vessel: what is in and what is missing.

use super::wide_enough;
use crate::phrases as say;
use crate::plot::{LETTERING, label, line};
use crate::{Anchor, Area, Dash, Drawing, Ink, Mark, Pen, Slope, Style, Weight, hatch, wrap};

/// A vessel, how far it is filled, and what may be missing.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Filling {
    /// Full when cold, in litres, and how to say it.
    pub full: f64,
    pub full_words: String,
    /// What is in.
    pub level: f64,
    pub level_words: String,
    /// Least and most that may be missing, where it is known.
    pub missing: Option<(f64, f64)>,
    pub missing_words: String,
    /// Where it stands hot.
    pub hot: Option<f64>,
    pub hot_words: String,
}

const VESSEL: f64 = 112.0;
const VESSEL_HEIGHT: f64 = 264.0;
const EDGE: f64 = 2.0;

/// Draws the vessel with its level, what may be missing, and where it stands hot.
#[must_use]
pub fn filling(filling: &Filling, width_px: f64) -> Drawing {
    let width = wide_enough(width_px);
    let top = [filling.full, filling.level, filling.hot.unwrap_or(0.0)]
        .into_iter()
        .filter(|litres| litres.is_finite())
        .fold(0.1, f64::max)
        * 1.06;
    let y_of = |litres: f64| {
        let part = if litres.is_finite() {
            litres / top
        } else {
            0.0
        };
        EDGE + VESSEL_HEIGHT * (1.0 - part.clamp(0.0, 1.0))
    };
    let vessel = Area {
        x: EDGE,
        y: EDGE,
        width: VESSEL,
        height: VESSEL_HEIGHT,
    };
    let level = y_of(filling.level);
    let inside = Area {
        y: level,
        height: vessel.bottom() - level,
        ..vessel
    };
    let mut marks = hatch(inside, 10.0, Slope::Rising, Pen::fine(Ink::Ink));
    if let Some((least, most)) = filling.missing {
        let (from, to) = (y_of(filling.full - least), y_of(filling.full - most));
        let band = Area {
            y: from,
            height: (to - from).max(0.0),
            ..vessel
        };
        marks.extend(hatch(band, 5.0, Slope::Falling, Pen::fine(Ink::Accent)));
    }
    marks.push(Mark::Rect {
        area: vessel,
        corner_radius: 8.0,
        style: Style::line(Pen::outline(Ink::Ink)),
    });
    let right = vessel.right();
    let across = |y: f64, pen: Pen| line(vessel.x, y, right + 8.0, y, pen);
    let solid = Pen::outline(Ink::Ink);
    let mut rows = vec![(y_of(filling.full), filling.full_words.as_str())];
    marks.push(across(y_of(filling.full), solid));
    marks.push(across(level, solid));
    if let Some(hot) = filling.hot {
        marks.push(across(y_of(hot), solid.dashed(Dash::Dashed)));
        rows.push((y_of(hot), filling.hot_words.as_str()));
    }
    if filling.missing.is_some() {
        let middle = y_of(filling.full).midpoint(level);
        rows.push((middle, filling.missing_words.as_str()));
    }
    rows.push((level, filling.level_words.as_str()));
    let lowest = beside(&mut marks, &mut rows, right + 8.0, width);
    let said: Vec<&str> = rows.iter().map(|(_, words)| *words).collect();
    Drawing {
        width,
        height: lowest.max(vessel.bottom()) + EDGE + 4.0,
        title: say::in_the_system().to_owned(),
        description: format!("{}.", said.join("; ")),
        marks,
    }
}

/// Writes words beside heights, each led to its own, none over another; gives the lowest
/// edge.
fn beside(marks: &mut Vec<Mark>, rows: &mut [(f64, &str)], from_x: f64, width: f64) -> f64 {
    const LEAD: f64 = 28.0;
    const ROW: f64 = 1.2 * LETTERING;
    rows.sort_by(|one, other| one.0.total_cmp(&other.0));
    let x = from_x + LEAD;
    let mut free = 0.0;
    for (y, words) in rows.iter() {
        let lines = wrap(words, LETTERING, Weight::Regular, width - x - 4.0, 3);
        let first = (y - 0.5 * ROW).max(free);
        marks.push(line(
            from_x,
            *y,
            x - 4.0,
            first + 0.55 * ROW,
            Pen::fine(Ink::Ink),
        ));
        let mut base = first + 0.8 * ROW;
        for text in &lines {
            marks.push(label(x, base, text, Anchor::Start, Weight::Regular));
            base += ROW;
        }
        free = base - 0.8 * ROW + 8.0;
    }
    free
}

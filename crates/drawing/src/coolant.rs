//! What is in a system and what is missing, pressure against time, and where a mixture
//! freezes and boils.

use crate::plot::{Frame, LETTERING, Scale, label, line};
use crate::{
    Anchor, Area, Dash, Drawing, Ink, Mark, Pen, Slope, Style, Weight, hatch, text_width_px, wrap,
};

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

/// A pressure test.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct PressureRun {
    /// Minutes and pressure as read.
    pub readings: Vec<(f64, f64)>,
    /// Minutes, fitted pressure, least, most.
    pub line: Vec<(f64, f64, f64, f64)>,
    /// The unit of pressure.
    pub unit: String,
    /// What the readings say.
    pub verdict: String,
}

/// Freezing and boiling against strength.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct MixChart {
    /// What the strength counts, with its unit.
    pub strength: String,
    /// The unit of temperature.
    pub unit: String,
    /// Strength and temperature.
    pub freeze: Vec<(f64, f64)>,
    pub boil: Vec<(f64, f64)>,
    pub boil_open: Vec<(f64, f64)>,
    /// Points that a label states.
    pub published: Vec<(f64, f64)>,
    /// The strength that was read, and where it freezes and boils.
    pub reading: Option<Reading>,
}

/// A strength on the chart.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Reading {
    pub strength: f64,
    pub freeze: f64,
    pub freeze_words: String,
    pub boil: Option<f64>,
    pub boil_words: String,
}

const LEAST_WIDTH: f64 = 280.0;
const VESSEL: f64 = 112.0;
const VESSEL_HEIGHT: f64 = 264.0;
const EDGE: f64 = 2.0;

/// Draws the vessel with its level, what may be missing, and where it stands hot.
#[must_use]
pub fn filling(filling: &Filling, width_px: f64) -> Drawing {
    let width = sound(width_px).max(LEAST_WIDTH);
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
        title: "What is in the system".to_owned(),
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

/// Draws readings as rings, the fitted line, and its band dashed.
#[must_use]
pub fn pressure(run: &PressureRun, width_px: f64) -> Drawing {
    let run = &finite(run);
    let width = sound(width_px).max(LEAST_WIDTH);
    let height = 320.0;
    let ends = |values: &mut dyn Iterator<Item = f64>| {
        values
            .filter(|value| value.is_finite())
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), value| {
                (low.min(value), high.max(value))
            })
    };
    let read = run.readings.iter().map(|(_, pressure)| *pressure);
    let (low, high) = ends(
        &mut read.chain(
            run.line
                .iter()
                .flat_map(|(_, _, least, most)| [*least, *most]),
        ),
    );
    let (_, last) = ends(&mut run.readings.iter().map(|(minutes, _)| *minutes));
    if low > high {
        return Drawing {
            width,
            height: 2.0 * LETTERING,
            title: "No readings yet".to_owned(),
            description: "No pressure was read yet.".to_owned(),
            marks: vec![label(
                0.0,
                1.3 * LETTERING,
                "No readings yet",
                Anchor::Start,
                Weight::Regular,
            )],
        };
    }
    let room = ((high - low) * 0.15).max(high.abs() * 0.01).max(1e-3);
    let (frame, mut marks) = Frame::drawn(
        width,
        height - 2.0 * LETTERING,
        Scale {
            low: 0.0,
            high: last.max(1.0) * 1.03,
            name: "minutes",
        },
        Scale {
            low: low - room,
            high: high + room,
            name: &format!("gauge, {}", run.unit),
        },
    );
    type End = fn(&(f64, f64, f64, f64)) -> f64;
    let band: [End; 2] = [|point| point.2, |point| point.3];
    let dashed = Pen::fine(Ink::Ink).dashed(Dash::Dashed);
    for end in band {
        let points: Vec<_> = run.line.iter().map(|point| (point.0, end(point))).collect();
        marks.push(frame.curve(&points, dashed));
    }
    let fitted: Vec<_> = run.line.iter().map(|point| (point.0, point.1)).collect();
    marks.push(frame.curve(&fitted, Pen::outline(Ink::Accent)));
    for (minutes, pressure) in &run.readings {
        marks.push(frame.ring(*minutes, *pressure, 5.0, Ink::Ink));
    }
    marks.extend(legend(height - 6.0));
    Drawing {
        width,
        height,
        title: "Pressure against time".to_owned(),
        description: pressure_said(run),
        marks,
    }
}

/// Without what is no number.
fn finite(run: &PressureRun) -> PressureRun {
    let mut run = run.clone();
    run.readings
        .retain(|(minutes, pressure)| minutes.is_finite() && pressure.is_finite());
    run.line.retain(|(minutes, middle, least, most)| {
        [minutes, middle, least, most].iter().all(|n| n.is_finite())
    });
    run
}

fn legend(y: f64) -> Vec<Mark> {
    let middle = y - 0.3 * LETTERING;
    let stroke = |x: f64, pen| line(x, middle, x + 24.0, middle, pen);
    let words = |x: f64, text| label(x, y, text, Anchor::Start, Weight::Regular);
    vec![
        Mark::Circle {
            centre: crate::Point::new(8.0, middle),
            radius: 5.0,
            style: Style::line(Pen::outline(Ink::Ink)),
        },
        words(20.0, "read"),
        stroke(72.0, Pen::outline(Ink::Accent)),
        words(102.0, "fitted"),
        stroke(164.0, Pen::fine(Ink::Ink).dashed(Dash::Dashed)),
        words(194.0, "95 % band"),
    ]
}

fn pressure_said(run: &PressureRun) -> String {
    let told = |(minutes, pressure): &(f64, f64)| {
        format!("{pressure:.2} {} at {minutes:.1} minutes", run.unit)
    };
    let ends: Vec<String> = [run.readings.first(), run.readings.last()]
        .into_iter()
        .flatten()
        .map(told)
        .collect();
    let verdict = if run.verdict.is_empty() {
        String::new()
    } else {
        format!(" {}.", run.verdict)
    };
    format!(
        "{} readings, from {}.{verdict}",
        run.readings.len(),
        ends.join(" to ")
    )
}

/// Draws where a mixture freezes and boils, with the reading on it.
#[must_use]
pub fn mix_chart(chart: &MixChart, width_px: f64) -> Drawing {
    let width = sound(width_px).max(LEAST_WIDTH);
    let height = 360.0;
    let all = || {
        chart
            .freeze
            .iter()
            .chain(&chart.boil)
            .chain(&chart.boil_open)
            .chain(&chart.published)
    };
    let low = all()
        .map(|point| point.1)
        .filter(|t| t.is_finite())
        .fold(0.0, f64::min);
    let high = all()
        .map(|point| point.1)
        .filter(|t| t.is_finite())
        .fold(1.0, f64::max);
    let last = all()
        .map(|point| point.0)
        .filter(|x| x.is_finite())
        .fold(1.0, f64::max);
    let room = (high - low) * if chart.boil.is_empty() { 0.16 } else { 0.08 };
    let (frame, mut marks) = Frame::drawn(
        width,
        height,
        Scale {
            low: 0.0,
            high: last,
            name: &chart.strength,
        },
        Scale {
            low: low - room,
            high: high + room,
            name: &chart.unit,
        },
    );
    let solid = Pen::outline(Ink::Ink);
    marks.push(frame.curve(&chart.freeze, solid));
    marks.push(frame.curve(&chart.boil, solid));
    marks.push(frame.curve(&chart.boil_open, solid.dashed(Dash::Dashed)));
    for (strength, freeze) in &chart.published {
        marks.push(frame.ring(*strength, *freeze, 4.0, Ink::Accent));
    }
    let strong = chart
        .reading
        .as_ref()
        .is_some_and(|reading| reading.strength > last / 2.0);
    // Names keep to the half that the reading leaves free.
    let named = |curve: &[(f64, f64)], at_start: bool, down: f64, words: &str| {
        let end = if at_start {
            curve.first()
        } else {
            curve.last()
        };
        end.map(|(x, y)| {
            let at = frame.at(*x, *y);
            let (x, anchor) = if at_start {
                (at.x + 8.0, Anchor::Start)
            } else {
                (at.x - 8.0, Anchor::End)
            };
            label(x, at.y + down, words, anchor, Weight::Regular)
        })
    };
    const UNDER: f64 = 1.4 * LETTERING;
    marks.extend(named(&chart.boil, true, -10.0, "boils under its cap"));
    marks.extend(named(&chart.boil_open, strong, UNDER, "boils open"));
    let down = if strong { -12.0 } else { -2.6 * LETTERING };
    marks.extend(named(&chart.freeze, strong, down, "freezes"));
    if let Some(reading) = &chart.reading {
        let at = reading.strength;
        marks.push(frame.upright(at, Ink::Accent));
        let down = if strong { 0.4 * LETTERING } else { -14.0 };
        marks.push(frame.ring(at, reading.freeze, 6.0, Ink::Accent));
        let place = frame.at(at, reading.freeze);
        marks.push(on_chart(
            &frame,
            place.x,
            place.y + down,
            &reading.freeze_words,
        ));
        if let Some(boil) = reading.boil {
            marks.push(frame.ring(at, boil, 6.0, Ink::Accent));
            let lowest = chart
                .boil_open
                .iter()
                .map(|(_, open)| *open)
                .fold(boil, f64::min);
            let y = frame.at(at, lowest).y + 2.0 * UNDER;
            marks.push(on_chart(&frame, place.x, y, &reading.boil_words));
        }
    }
    Drawing {
        width,
        height,
        title: "Freezing and boiling against strength".to_owned(),
        description: mix_said(chart),
        marks,
    }
}

/// Words beside a reading, on the side that has room.
fn on_chart(frame: &Frame, x: f64, y: f64, words: &str) -> Mark {
    let room = frame.area().right() - x - 14.0;
    let fits = text_width_px(words, LETTERING, Weight::Bold) <= room;
    let (x, anchor) = if fits {
        (x + 12.0, Anchor::Start)
    } else {
        (x - 12.0, Anchor::End)
    };
    label(x, y, words, anchor, Weight::Bold)
}

fn mix_said(chart: &MixChart) -> String {
    match &chart.reading {
        Some(reading) => {
            let boil = if reading.boil_words.is_empty() {
                String::new()
            } else {
                format!("; it {}", reading.boil_words)
            };
            format!(
                "At {:.0} {} it {}{boil}.",
                reading.strength, chart.strength, reading.freeze_words
            )
        }
        None => format!("Freezing and boiling points against {}.", chart.strength),
    }
}

fn sound(width_px: f64) -> f64 {
    if width_px.is_finite() {
        width_px
    } else {
        LEAST_WIDTH
    }
}

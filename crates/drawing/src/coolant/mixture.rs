//! Where a mixture freezes and boils.

use super::wide_enough;
use crate::phrases as say;
use crate::plot::{Frame, LETTERING, Scale, label};
use crate::{Anchor, Dash, Drawing, Ink, Mark, Pen, Weight, text_width_px};

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

/// Draws where a mixture freezes and boils, with the reading on it.
#[must_use]
pub fn mix_chart(chart: &MixChart, width_px: f64) -> Drawing {
    let width = wide_enough(width_px);
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
    marks.extend(named(&chart.boil, true, -10.0, say::boils_under_cap()));
    marks.extend(named(&chart.boil_open, strong, UNDER, say::boils_open()));
    let down = if strong { -12.0 } else { -2.6 * LETTERING };
    marks.extend(named(&chart.freeze, strong, down, say::freezes()));
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
        title: say::freezing_and_boiling().to_owned(),
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
                say::and_it(&reading.boil_words)
            };
            say::at_strength(
                reading.strength,
                &chart.strength,
                &reading.freeze_words,
                boil,
            )
        }
        None => say::points_against(&chart.strength),
    }
}

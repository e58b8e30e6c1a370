//! A pressure test: pressure against time.

use super::wide_enough;
use crate::phrases as say;
use crate::plot::{Frame, LETTERING, Scale, label, line};
use crate::{Anchor, Dash, Drawing, Ink, Mark, Pen, Style, Weight};

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

/// Draws readings as rings, the fitted line, and its band dashed.
#[must_use]
pub fn pressure(run: &PressureRun, width_px: f64) -> Drawing {
    let run = &finite(run);
    let width = wide_enough(width_px);
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
            title: say::no_readings_yet().to_owned(),
            description: say::no_pressure_yet().to_owned(),
            marks: vec![label(
                0.0,
                1.3 * LETTERING,
                say::no_readings_yet(),
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
            name: say::minutes(),
        },
        Scale {
            low: low - room,
            high: high + room,
            name: &say::gauge_axis(&run.unit),
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
        title: say::pressure_against_time().to_owned(),
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
        words(20.0, say::read()),
        stroke(72.0, Pen::outline(Ink::Accent)),
        words(102.0, say::fitted()),
        stroke(164.0, Pen::fine(Ink::Ink).dashed(Dash::Dashed)),
        words(194.0, say::band_of_95()),
    ]
}

fn pressure_said(run: &PressureRun) -> String {
    let told = |(minutes, pressure): &(f64, f64)| say::pressure_at(pressure, &run.unit, minutes);
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
    say::readings_from(run.readings.len(), ends.join(say::from_to()), verdict)
}

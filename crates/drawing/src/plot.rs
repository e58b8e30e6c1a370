//! A frame with two scales, for curves and readings.

use crate::{Anchor, Area, Dash, Ink, Mark, Pen, Point, Style, Text, Weight, text_width_px};

pub(crate) const LETTERING: f64 = 16.0;
/// From the frame to the figures beside and below it.
const GAP: f64 = 8.0;
const TICK: f64 = 6.0;

/// What a scale runs over, and how its figures are written.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Scale<'a> {
    pub(crate) low: f64,
    pub(crate) high: f64,
    /// What is told, with its unit.
    pub(crate) name: &'a str,
}

/// A frame on the paper, with its two scales.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Frame {
    area: Area,
    x: (f64, f64),
    y: (f64, f64),
}

impl Frame {
    /// Draws a frame of this size with figures beside it; the marks come first.
    ///
    /// The name of the upright scale stands above the frame, since a phone has no room
    /// beside it.
    pub(crate) fn drawn(width: f64, height: f64, x: Scale, y: Scale) -> (Self, Vec<Mark>) {
        let (x_steps, y_steps) = (steps(x.low, x.high, 6), steps(y.low, y.high, 5));
        let figures = |steps: &[f64]| steps.iter().map(|at| figure(*at, steps)).collect();
        let (x_figures, y_figures): (Vec<String>, Vec<String>) =
            (figures(&x_steps), figures(&y_steps));
        let widest = y_figures
            .iter()
            .map(|text| text_width_px(text, LETTERING, Weight::Regular))
            .fold(0.0, f64::max);
        let left = widest + GAP + TICK;
        let top = 1.8 * LETTERING;
        let bottom = 2.0 * GAP + 2.4 * LETTERING;
        let area = Area {
            x: left,
            y: top,
            width: (width - left - 12.0).max(40.0),
            height: (height - top - bottom).max(40.0),
        };
        let frame = Self {
            area,
            x: (x.low, x.high),
            y: (y.low, y.high),
        };
        let mut marks = vec![
            label(0.0, LETTERING, y.name, Anchor::Start, Weight::Bold),
            label(
                area.right(),
                height - 4.0,
                x.name,
                Anchor::End,
                Weight::Bold,
            ),
        ];
        for (at, words) in y_steps.iter().zip(&y_figures) {
            let y = frame.at(x.low, *at).y;
            marks.push(line(area.x, y, area.right(), y, Pen::fine(Ink::Rule)));
            let text = label(
                area.x - GAP,
                y + 0.35 * LETTERING,
                words,
                Anchor::End,
                Weight::Regular,
            );
            // A figure at the very top would touch the scale's name above it.
            if y >= area.y + 0.2 * LETTERING {
                marks.push(text);
            }
        }
        for (at, words) in x_steps.iter().zip(&x_figures) {
            let x = frame.at(*at, y.low).x;
            marks.push(line(
                x,
                area.bottom(),
                x,
                area.bottom() + TICK,
                Pen::fine(Ink::Ink),
            ));
            let text = label(
                x,
                area.bottom() + TICK + 1.1 * LETTERING,
                words,
                Anchor::Middle,
                Weight::Regular,
            );
            marks.push(text);
        }
        marks.push(Mark::Rect {
            area,
            corner_radius: 0.0,
            style: Style::line(Pen::outline(Ink::Ink)),
        });
        (frame, marks)
    }

    /// Where two values lie on the paper; what lies outside is drawn on the edge.
    pub(crate) fn at(&self, x: f64, y: f64) -> Point {
        let part =
            |value: f64, (low, high): (f64, f64)| ((value - low) / (high - low)).clamp(0.0, 1.0);
        Point::new(
            self.area.x + part(x, self.x) * self.area.width,
            self.area.bottom() - part(y, self.y) * self.area.height,
        )
    }

    /// The frame on the paper.
    pub(crate) fn area(&self) -> Area {
        self.area
    }

    /// A curve through these values.
    pub(crate) fn curve(&self, points: &[(f64, f64)], pen: Pen) -> Mark {
        Mark::Polyline {
            points: points.iter().map(|(x, y)| self.at(*x, *y)).collect(),
            closed: false,
            style: Style::line(pen),
        }
    }

    /// A ring at a value: paper inside, so that it reads on a line.
    pub(crate) fn ring(&self, x: f64, y: f64, radius: f64, ink: Ink) -> Mark {
        Mark::Circle {
            centre: self.at(x, y),
            radius,
            style: Style {
                line: Some(Pen::outline(ink)),
                fill: Some(Ink::Paper),
            },
        }
    }

    /// A dashed line from the lower to the upper edge.
    pub(crate) fn upright(&self, x: f64, ink: Ink) -> Mark {
        let foot = self.at(x, self.y.0);
        line(
            foot.x,
            self.area.y,
            foot.x,
            self.area.bottom(),
            Pen::outline(ink).dashed(Dash::Dashed),
        )
    }
}

pub(crate) fn line(x1: f64, y1: f64, x2: f64, y2: f64, pen: Pen) -> Mark {
    Mark::Line {
        from: Point::new(x1, y1),
        to: Point::new(x2, y2),
        pen,
    }
}

pub(crate) fn label(x: f64, y: f64, text: &str, anchor: Anchor, weight: Weight) -> Mark {
    Mark::Text(Text {
        at: Point::new(x, y),
        text: text.to_owned(),
        size: LETTERING,
        weight,
        anchor,
        ink: Ink::Ink,
    })
}

/// Round values from `low` to `high`, about as many as asked for.
fn steps(low: f64, high: f64, about: u32) -> Vec<f64> {
    let span = high - low;
    if !span.is_finite() || span <= 0.0 {
        return Vec::new();
    }
    let rough = span / f64::from(about);
    let ten = libm::pow(10.0, libm::floor(libm::log10(rough)));
    let step = [1.0, 2.0, 5.0, 10.0]
        .into_iter()
        .map(|part| part * ten)
        .find(|step| *step >= rough * 0.999)
        .unwrap_or(10.0 * ten);
    let first = libm::ceil(low / step - 1e-9);
    (0_u32..=4 * about)
        .map(|nth| (first + f64::from(nth)) * step)
        .take_while(|at| *at <= high + 1e-9 * step)
        .collect()
}

/// A figure with as many decimals as its scale needs.
fn figure(at: f64, steps: &[f64]) -> String {
    let step = steps
        .first()
        .zip(steps.get(1))
        .map_or(1.0, |(one, next)| next - one);
    let decimals = (0..6_usize)
        .find(|decimals| {
            let scaled = step * libm::pow(10.0, f64::from(u32::try_from(*decimals).unwrap_or(6)));
            (scaled - libm::round(scaled)).abs() < 1e-6
        })
        .unwrap_or(6);
    // No figure reads "-0".
    let at = if at.abs() < 1e-9 * step { 0.0 } else { at };
    format!("{at:.decimals$}").replace('-', "\u{2212}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn steps_are_round_and_inside() {
        assert_eq!(
            steps(0.0, 60.0, 6),
            [0.0, 10.0, 20.0, 30.0, 40.0, 50.0, 60.0]
        );
        let kpa = steps(94.2, 101.1, 5);
        assert_eq!(kpa, [96.0, 98.0, 100.0]);
        assert!(steps(1.0, 1.0, 5).is_empty());
        assert!(steps(0.0, f64::NAN, 5).is_empty());
    }

    #[test]
    fn a_figure_has_the_decimals_of_its_scale() {
        let steps = [0.95, 1.0, 1.05];
        assert_eq!(figure(0.95, &steps), "0.95");
        assert_eq!(figure(-20.0, &[-40.0, -20.0]), "\u{2212}20");
        assert_eq!(figure(-0.0, &[-1.0, 0.0]), "0");
    }
}

//! What was seen on a photo, drawn over it.

use crate::phrases as say;
use crate::{Anchor, Area, Drawing, Ink, Mark, Pen, Point, Style, Text, Weight, text_width_px};

/// A piece on a photo: what it is, whether that is sure, and its outlines in the photo's pixels.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct OnPhoto {
    pub label: String,
    pub sure: bool,
    pub outlines: Vec<Vec<(f64, f64)>>,
}

const LETTERING: f64 = 18.0;

/// Draws pieces over a photo of this size in pixels, as wide as is asked. What is not sure is
/// dashed, and its words say so.
#[must_use]
pub fn on_photo(size_px: (f64, f64), pieces: &[OnPhoto], width_px: f64) -> Drawing {
    let sound = |value: f64, least: f64| {
        if value.is_finite() {
            value.max(least)
        } else {
            least
        }
    };
    let (across, down) = (sound(size_px.0, 1.0), sound(size_px.1, 1.0));
    let width = sound(width_px, 100.0);
    let scale = width / across;
    let height = (down * scale).min(4.0 * width);
    let mut marks = Vec::new();
    for piece in pieces {
        let mut lowest: Option<Point> = None;
        for outline in &piece.outlines {
            let points: Vec<Point> = outline
                .iter()
                .filter(|(x, y)| x.is_finite() && y.is_finite())
                .map(|(x, y)| {
                    Point::new(
                        (x * scale).clamp(0.0, width),
                        (y * scale).clamp(0.0, height),
                    )
                })
                .collect();
            if points.len() < 2 {
                continue;
            }
            for point in &points {
                if lowest.is_none_or(|low| point.y > low.y) {
                    lowest = Some(*point);
                }
            }
            // A light line under a dark one reads on metal, paper and bench.
            let dash = if piece.sure {
                crate::Dash::Solid
            } else {
                crate::Dash::Dashed
            };
            for pen in [
                Pen {
                    stroke: crate::Stroke::Belt,
                    ..Pen::outline(Ink::Paper)
                },
                Pen::outline(if piece.sure { Ink::Accent } else { Ink::Stop }).dashed(dash),
            ] {
                marks.push(Mark::Polyline {
                    points: points.clone(),
                    closed: true,
                    style: Style::line(pen),
                });
            }
        }
        let Some(low) = lowest else { continue };
        let words = if piece.sure {
            piece.label.clone()
        } else {
            format!("{}?", piece.label)
        };
        let room = text_width_px(&words, LETTERING, Weight::Bold) / 2.0 + 3.0;
        let x = low
            .x
            .clamp(room.min(width / 2.0), (width - room).max(width / 2.0));
        let y = (low.y + LETTERING + 2.0).min(height - 4.0);
        marks.push(Mark::Rect {
            area: Area {
                x: x - room,
                y: y - LETTERING,
                width: 2.0 * room,
                height: LETTERING + 5.0,
            },
            corner_radius: 3.0,
            style: Style::fill(Ink::Paper),
        });
        marks.push(Mark::Text(Text {
            at: Point::new(x, y),
            text: words,
            size: LETTERING,
            weight: Weight::Bold,
            anchor: Anchor::Middle,
            ink: if piece.sure { Ink::Ink } else { Ink::Stop },
        }));
    }
    let each: Vec<String> = pieces
        .iter()
        .map(|piece| {
            if piece.sure {
                piece.label.clone()
            } else {
                say::look_at_it(&piece.label)
            }
        })
        .collect();
    Drawing {
        width,
        height,
        title: say::pieces_on_photo(pieces.len()),
        description: each.join("; "),
        marks,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use proptest::prelude::*;

    fn bolt(sure: bool) -> OnPhoto {
        OnPhoto {
            label: "M8×30".to_owned(),
            sure,
            outlines: vec![vec![(10.0, 10.0), (90.0, 10.0), (90.0, 30.0), (10.0, 30.0)]],
        }
    }

    #[test]
    fn what_is_not_sure_is_dashed_and_asked_about() {
        let drawn = on_photo((100.0, 80.0), &[bolt(true), bolt(false)], 358.0);
        let words: Vec<&str> = drawn
            .texts()
            .iter()
            .map(|text| text.text.as_str())
            .collect();
        assert_eq!(words, ["M8×30", "M8×30?"]);
        assert_eq!(drawn.description, "M8×30; M8×30, look at it");
        let dashed = drawn.marks.iter().filter(|mark| {
            matches!(mark, Mark::Polyline { style, .. }
                if style.line.is_some_and(|pen| pen.dash == crate::Dash::Dashed))
        });
        assert_eq!(dashed.count(), 1);
    }

    proptest! {
        #[test]
        fn any_outline_stays_on_the_photo(
            size in (-10.0..5000.0_f64, -10.0..5000.0_f64),
            outline in proptest::collection::vec((-9e3..9e3_f64, -9e3..9e3_f64), 0..9),
            label in "\\PC{0,20}",
        ) {
            let piece = OnPhoto { label, sure: true, outlines: vec![outline] };
            let drawn = on_photo(size, &[piece], 358.0);
            for mark in &drawn.marks {
                if let Mark::Polyline { points, .. } = mark {
                    for point in points {
                        prop_assert!((0.0..=drawn.width).contains(&point.x));
                        prop_assert!((0.0..=drawn.height).contains(&point.y));
                    }
                }
            }
        }
    }
}

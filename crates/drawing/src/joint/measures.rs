//! The sizes written around a section: along the axis at its sides, across it below.

use super::sheet::Sheet;
use super::{Joint, JointMeasure, JointPart};
use crate::text::{text_width_px, wrap};
use crate::{Anchor, Dash, Ink, Mark, Pen, Point, Text, Weight};

pub(super) const LINE: f64 = 19.0;
const LETTERING: f64 = 16.0;
/// Widest a label at the side may grow.
const LABEL: f64 = 92.0;
/// From the metal to the first dimension line, and from one to the next.
const STEP: f64 = 14.0;

/// Dimension lines beside the metal, each with its label.
pub(super) fn sides(marks: &mut Vec<Mark>, joint: &Joint, sheet: &mut Sheet) {
    for side in [Side::Left, Side::Right] {
        let sign = if side == Side::Left { -1.0 } else { 1.0 };
        let mut labels = Vec::new();
        let mut outermost = sheet.axis_x + sign * sheet.half_px;
        for measure in depths(joint, side) {
            outermost += sign * STEP;
            let (from, to) = (sheet.y(measure.from_mm.1), sheet.y(measure.to_mm.1));
            dimension_line(marks, sheet, measure, outermost, sign);
            labels.push(Label {
                y: f64::midpoint(from, to),
                lines: label_lines(measure),
                ink: ink_of(joint, measure),
            });
        }
        if side == Side::Left {
            for measure in passages(joint) {
                let y = sheet.y(measure.from_mm.1);
                let edge = sheet.axis_x - sheet.half_px;
                marks.push(Mark::Line {
                    from: Point::new(edge - 8.0, y),
                    to: Point::new(sheet.x(-(measure.from_mm.0.abs())), y),
                    pen: Pen::fine(Ink::Ink),
                });
                labels.push(Label {
                    y,
                    lines: label_lines(measure),
                    ink: Ink::Ink,
                });
            }
        } else if let Some(head) = joint.pieces.iter().find(|p| p.is == JointPart::Head) {
            labels.push(Label {
                y: sheet.y(f64::midpoint(head.top_mm, head.bottom_mm)),
                lines: vec![(joint.bolt.clone(), Weight::Bold)],
                ink: Ink::Ink,
            });
        }
        write_labels(marks, labels, outermost + sign * 8.0, side, sheet);
    }
}

/// Sizes across the axis in the metal, below it. Returns the room they take.
pub(super) fn across(marks: &mut Vec<Mark>, joint: &Joint, sheet: &Sheet) -> f64 {
    let mut y = sheet.floor_px + 4.0;
    let start = y;
    let below = |measure: &&JointMeasure| !is_depth(measure) && measure.from_mm.1 >= 0.0;
    for measure in joint.measures.iter().filter(below) {
        let (from, to) = (sheet.x(measure.from_mm.0), sheet.x(measure.to_mm.0));
        for x in [from, to] {
            marks.push(Mark::Line {
                from: Point::new(x, sheet.y(measure.from_mm.1)),
                to: Point::new(x, y + 12.0),
                pen: Pen::fine(Ink::Ink).dashed(Dash::Dashed),
            });
            marks.push(Mark::Line {
                from: Point::new(x - 4.0, y + 11.0),
                to: Point::new(x + 4.0, y + 3.0),
                pen: Pen::outline(Ink::Ink),
            });
        }
        marks.push(Mark::Line {
            from: Point::new(from, y + 7.0),
            to: Point::new(to, y + 7.0),
            pen: Pen::fine(Ink::Ink),
        });
        let text = format!("{} {}", measure.label, measure.figure);
        let half = text_width_px(&text, LETTERING, Weight::Regular) / 2.0;
        let middle = f64::midpoint(from, to);
        y += 12.0 + LINE;
        marks.push(Mark::Text(Text {
            at: Point::new(middle.min(sheet.width - half).max(half), y - 3.0),
            text,
            size: LETTERING,
            weight: Weight::Regular,
            anchor: Anchor::Middle,
            ink: Ink::Ink,
        }));
        y += 4.0;
    }
    y - start + 4.0
}

pub(super) fn margin(joint: &Joint, side: Side) -> f64 {
    let lines = depths(joint, side);
    let mut labels: Vec<(String, Weight)> = lines.iter().flat_map(|m| label_lines(m)).collect();
    match side {
        Side::Left => labels.extend(passages(joint).flat_map(label_lines)),
        Side::Right => labels.push((joint.bolt.clone(), Weight::Bold)),
    }
    let widest = labels
        .iter()
        .map(|(text, weight)| text_width_px(text, LETTERING, *weight))
        .fold(0.0, f64::max);
    let count = u32::try_from(lines.len()).unwrap_or(u32::MAX);
    widest + STEP * f64::from(count) + 12.0
}

#[derive(Clone, Copy, PartialEq, Eq)]
pub(super) enum Side {
    Left,
    Right,
}

/// Whether a size runs along the axis.
fn is_depth(measure: &JointMeasure) -> bool {
    (measure.from_mm.0 - measure.to_mm.0).abs() < 1e-9
}

/// What ends at the bottom of the hole stands on the right, all else on the left.
fn side_of(joint: &Joint, measure: &JointMeasure) -> Side {
    let deepest = joint
        .pieces
        .iter()
        .filter(|piece| piece.is == JointPart::Hole)
        .map(|piece| piece.bottom_mm)
        .fold(0.0, f64::max);
    if is_depth(measure) && (measure.to_mm.1 - deepest).abs() < 1e-6 {
        Side::Right
    } else {
        Side::Left
    }
}

/// The sizes along the axis of one side, the shorter nearer to the metal.
fn depths(joint: &Joint, side: Side) -> Vec<&JointMeasure> {
    let mut found: Vec<&JointMeasure> = joint
        .measures
        .iter()
        .filter(|measure| is_depth(measure) && side_of(joint, measure) == side)
        .collect();
    let length = |measure: &JointMeasure| (measure.to_mm.1 - measure.from_mm.1).abs();
    found.sort_by(|a, b| length(a).total_cmp(&length(b)));
    found
}

/// Sizes across the axis that lie in the other part are told at the left, with a line to them.
fn passages(joint: &Joint) -> impl Iterator<Item = &JointMeasure> {
    joint
        .measures
        .iter()
        .filter(|measure| !is_depth(measure) && measure.from_mm.1 < 0.0)
}

fn label_lines(measure: &JointMeasure) -> Vec<(String, Weight)> {
    let words = wrap(&measure.label, LETTERING, Weight::Regular, LABEL, 3);
    [(measure.figure.clone(), Weight::Bold)]
        .into_iter()
        .chain(words.into_iter().map(|line| (line, Weight::Regular)))
        .collect()
}

/// A label to be placed: where it points, and its lines.
struct Label {
    y: f64,
    lines: Vec<(String, Weight)>,
    ink: Ink,
}

/// What is new is written in the colour that it is drawn in.
fn ink_of(joint: &Joint, measure: &JointMeasure) -> Ink {
    let new = joint.pieces.iter().any(|piece| {
        matches!(piece.is, JointPart::NewThread | JointPart::Bushing)
            && (piece.top_mm - measure.from_mm.1).abs() < 1e-6
            && (piece.bottom_mm - measure.to_mm.1).abs() < 1e-6
    });
    if new { Ink::Accent } else { Ink::Ink }
}

fn dimension_line(marks: &mut Vec<Mark>, sheet: &Sheet, measure: &JointMeasure, x: f64, sign: f64) {
    let pen = Pen::fine(Ink::Ink);
    let ends = [measure.from_mm, measure.to_mm].map(|(radius, depth)| {
        let y = sheet.y(depth);
        marks.push(Mark::Line {
            from: Point::new(sheet.x(sign * radius.abs()) + sign * 2.0, y),
            to: Point::new(x + sign * 5.0, y),
            pen,
        });
        marks.push(Mark::Line {
            from: Point::new(x - 5.0, y + 5.0),
            to: Point::new(x + 5.0, y - 5.0),
            pen: Pen::outline(Ink::Ink),
        });
        Point::new(x, y)
    });
    marks.push(Mark::Line {
        from: ends[0],
        to: ends[1],
        pen,
    });
}

/// Writes labels one below the other, each as near as may be to what it names.
fn write_labels(
    marks: &mut Vec<Mark>,
    mut labels: Vec<Label>,
    x: f64,
    side: Side,
    sheet: &mut Sheet,
) {
    labels.sort_by(|a, b| a.y.total_cmp(&b.y));
    let rows = |label: &Label| f64::from(u32::try_from(label.lines.len()).unwrap_or(1)) * LINE;
    let mut tops = Vec::with_capacity(labels.len());
    let mut free = 0.0_f64;
    for label in &labels {
        let top = (label.y - rows(label) / 2.0).max(free);
        free = top + rows(label) + 4.0;
        tops.push(top);
    }
    // Nothing runs past the lower edge while there is room above.
    let needed: f64 = labels.iter().map(|label| rows(label) + 4.0).sum();
    sheet.floor_px = sheet.floor_px.max(needed);
    let mut limit = sheet.floor_px;
    for (label, top) in labels.iter().zip(&mut tops).rev() {
        *top = top.min(limit - rows(label)).max(0.0);
        limit = *top - 4.0;
    }
    for (label, top) in labels.into_iter().zip(tops) {
        let mut base = top + LINE * 0.8;
        for (text, weight) in label.lines {
            marks.push(Mark::Text(Text {
                at: Point::new(x, base),
                text,
                size: LETTERING,
                weight,
                anchor: if side == Side::Left {
                    Anchor::End
                } else {
                    Anchor::Start
                },
                ink: label.ink,
            }));
            base += LINE;
        }
    }
}

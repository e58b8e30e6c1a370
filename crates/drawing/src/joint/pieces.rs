//! The pieces of a section, one by one.

use super::sheet::{BELOW, Sheet};
use super::{Joint, JointPart, JointPiece};
use crate::{Area, Dash, Ink, Mark, Pen, Point, Slope, Stroke, Style, hatch};

/// A wire or thread flank is as high as this share of its pitch.
const FLANK: f64 = 0.54;
/// The tip of a drill is so deep, as a share of its diameter (118 degrees).
const TIP: f64 = 0.3;

pub(super) fn draw(marks: &mut Vec<Mark>, joint: &Joint, sheet: &Sheet, piece: &JointPiece) {
    match piece.is {
        JointPart::Parent => parent(marks, joint, sheet, piece),
        JointPart::OtherPart => {
            for sign in [-1.0, 1.0] {
                let area = half(sheet, piece, sign);
                metal(marks, area, Slope::Falling);
                marks.push(rect(area, None));
            }
        }
        JointPart::Hole => hole(marks, joint, sheet, piece),
        JointPart::Thread => teeth(marks, sheet, piece, pen(Ink::Ink, Stroke::Outline)),
        JointPart::NewThread => teeth(marks, sheet, piece, pen(Ink::Accent, Stroke::Outline)),
        JointPart::Bushing => bushing(marks, sheet, piece),
        JointPart::LostThread => lost(marks, sheet, piece),
        JointPart::Bolt => bolt(marks, joint, sheet, piece),
        JointPart::Head => head(marks, sheet, piece),
    }
}

fn whole(sheet: &Sheet, piece: &JointPiece) -> Area {
    let right = half(
        sheet,
        &JointPiece {
            inner_mm: 0.0,
            ..*piece
        },
        1.0,
    );
    Area {
        x: right.x - right.width,
        width: 2.0 * right.width,
        ..right
    }
}

fn rect(area: Area, fill: Option<Ink>) -> Mark {
    Mark::Rect {
        area,
        corner_radius: 0.0,
        style: Style {
            line: Some(Pen::outline(Ink::Ink)),
            fill,
        },
    }
}

/// The metal: open below a blind hole, and at its sides where nobody measured them.
fn parent(marks: &mut Vec<Mark>, joint: &Joint, sheet: &Sheet, piece: &JointPiece) {
    let mut area = whole(sheet, piece);
    if joint.blind {
        area.height = sheet.y(sheet.deepest_mm) - area.y;
    }
    metal(marks, area, Slope::Rising);
    let mut edge = |from: Point, to: Point, known: bool| {
        let pen = Pen::outline(Ink::Ink);
        let dashed = Pen::fine(Ink::Ink).dashed(Dash::Dashed);
        marks.push(Mark::Line {
            from,
            to,
            pen: if known { pen } else { dashed },
        });
    };
    let (left, right) = (area.x, area.right());
    let (top, bottom) = (area.y, area.bottom());
    edge(Point::new(left, top), Point::new(right, top), true);
    edge(
        Point::new(left, top),
        Point::new(left, bottom),
        joint.edges_known,
    );
    edge(
        Point::new(right, top),
        Point::new(right, bottom),
        joint.edges_known,
    );
    if !joint.blind {
        edge(Point::new(left, bottom), Point::new(right, bottom), true);
    }
}

fn hole(marks: &mut Vec<Mark>, joint: &Joint, sheet: &Sheet, piece: &JointPiece) {
    let area = whole(sheet, piece);
    let tip = if joint.blind {
        TIP.min(BELOW) * area.width
    } else {
        0.0
    };
    let points = vec![
        Point::new(area.x, area.y),
        Point::new(area.x, area.bottom()),
        Point::new(sheet.axis_x, area.bottom() + tip),
        Point::new(area.right(), area.bottom()),
        Point::new(area.right(), area.y),
    ];
    marks.push(polygon(points.clone(), true, Style::fill(Ink::Paper)));
    if joint.blind {
        marks.push(polygon(points, false, Style::line(Pen::outline(Ink::Ink))));
    } else {
        for x in [area.x, area.right()] {
            marks.push(Mark::Line {
                from: Point::new(x, area.y),
                to: Point::new(x, area.bottom()),
                pen: Pen::outline(Ink::Ink),
            });
        }
    }
}

/// Thread that is gone: the hole is as wide as its outside there.
fn lost(marks: &mut Vec<Mark>, sheet: &Sheet, piece: &JointPiece) {
    for sign in [-1.0, 1.0] {
        let area = half(sheet, piece, sign);
        marks.push(Mark::Rect {
            area,
            corner_radius: 0.0,
            style: Style {
                line: Some(Pen::outline(Ink::Stop).dashed(Dash::Dashed)),
                fill: Some(Ink::Paper),
            },
        });
    }
}

/// A sleeve of new metal.
fn bushing(marks: &mut Vec<Mark>, sheet: &Sheet, piece: &JointPiece) {
    for sign in [-1.0, 1.0] {
        let area = half(sheet, piece, sign);
        marks.push(Mark::Rect {
            area,
            corner_radius: 0.0,
            style: Style {
                line: Some(Pen::outline(Ink::Accent)),
                fill: Some(Ink::Paper),
            },
        });
        marks.extend(hatch(area, 4.0, Slope::Falling, Pen::fine(Ink::Accent)));
    }
}

/// Flanks between two diameters, on both sides.
fn teeth(marks: &mut Vec<Mark>, sheet: &Sheet, piece: &JointPiece, pen: Pen) {
    for sign in [-1.0, 1.0] {
        let area = half(sheet, piece, sign);
        if area.width < 1.0 || area.height < 2.0 {
            continue;
        }
        marks.push(Mark::Rect {
            area,
            corner_radius: 0.0,
            style: Style::fill(Ink::Paper),
        });
        let pitch = (area.width / FLANK).max(5.0);
        let count = libm::floor(area.height / pitch * 2.0).clamp(2.0, 400.0);
        let step = area.height / count;
        let (inner, outer) = if sign > 0.0 {
            (area.x, area.right())
        } else {
            (area.right(), area.x)
        };
        let points = (0_u32..=400)
            .take_while(|&nth| f64::from(nth) <= count)
            .map(|nth| {
                let x = if nth % 2 == 0 { inner } else { outer };
                Point::new(x, area.y + step * f64::from(nth))
            })
            .collect();
        marks.push(polygon(points, false, Style::line(pen)));
    }
}

/// A shank above the face; below it the core, so that the flanks are seen beside it.
fn bolt(marks: &mut Vec<Mark>, joint: &Joint, sheet: &Sheet, piece: &JointPiece) {
    let core_mm = joint
        .pieces
        .iter()
        .filter(|other| {
            matches!(
                other.is,
                JointPart::Thread
                    | JointPart::NewThread
                    | JointPart::Bushing
                    | JointPart::LostThread
            )
        })
        .map(|other| other.inner_mm)
        .fold(piece.outer_mm, f64::min);
    let (shank, core) = (piece.outer_mm / 2.0, core_mm / 2.0 - 0.04 * piece.outer_mm);
    let outline = [
        (-shank, piece.top_mm),
        (-shank, 0.0),
        (-core, 0.0),
        (-core, piece.bottom_mm),
        (core, piece.bottom_mm),
        (core, 0.0),
        (shank, 0.0),
        (shank, piece.top_mm),
    ];
    let points = outline.map(|(radius, depth)| Point::new(sheet.x(radius), sheet.y(depth)));
    marks.push(polygon(
        points.to_vec(),
        true,
        Style {
            line: Some(Pen::outline(Ink::Ink)),
            fill: Some(Ink::Paper),
        },
    ));
}

fn head(marks: &mut Vec<Mark>, sheet: &Sheet, piece: &JointPiece) {
    let area = whole(sheet, piece);
    marks.push(rect(area, Some(Ink::Paper)));
    for share in [0.25, 0.75] {
        let x = area.x + share * area.width;
        marks.push(Mark::Line {
            from: Point::new(x, area.y),
            to: Point::new(x, area.bottom()),
            pen: Pen::fine(Ink::Ink),
        });
    }
}

/// A rectangle from one radius to another, to the right of the axis or to its left.
fn half(sheet: &Sheet, piece: &JointPiece, sign: f64) -> Area {
    let (inner, outer) = (
        sheet.x(sign * piece.inner_mm / 2.0),
        sheet.x(sign * piece.outer_mm / 2.0),
    );
    Area {
        x: inner.min(outer),
        y: sheet.y(piece.top_mm),
        width: (outer - inner).abs(),
        height: ((piece.bottom_mm - piece.top_mm) * sheet.px_per_mm).max(0.0),
    }
}

fn metal(marks: &mut Vec<Mark>, area: Area, slope: Slope) {
    marks.extend(hatch(area, 7.0, slope, Pen::fine(Ink::Ink)));
}

fn polygon(points: Vec<Point>, closed: bool, style: Style) -> Mark {
    Mark::Polyline {
        points,
        closed,
        style,
    }
}

fn pen(ink: Ink, stroke: Stroke) -> Pen {
    Pen {
        ink,
        stroke,
        dash: Dash::Solid,
    }
}

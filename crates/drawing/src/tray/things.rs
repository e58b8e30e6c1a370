//! One thing in its compartment: its words, its count, its picture.

use super::{LINE_SPACING, Lettering, TrayMark, TrayThing, lettering};
use crate::phrases as say;
use crate::{Anchor, Ink, Mark, Pen, Point, Style, Text, Weight, text_width_px};

/// Fasteners are drawn one by one up to here; more are not counted by eye.
const MOST_FASTENERS: u32 = 12;
const MOST_PARTS: u32 = 4;
const BOLT: Glyph = Glyph {
    width: 18.0,
    height: 18.0,
    gap: 8.0,
    draw: bolt_head,
};
const COVER: Glyph = Glyph {
    width: 60.0,
    height: 36.0,
    gap: 12.0,
    draw: cover,
};
const JUG: Glyph = Glyph {
    width: 48.0,
    height: 44.0,
    gap: 12.0,
    draw: jug,
};

const LABEL: Lettering = Lettering {
    size: 18.0,
    weight: Weight::Bold,
    ink: Ink::Ink,
    lines: 3,
};
const DETAIL: Lettering = Lettering {
    size: 16.0,
    weight: Weight::Regular,
    ink: Ink::Soft,
    lines: 3,
};
const LONG_FIGURE: Lettering = Lettering { lines: 4, ..LABEL };
const FIGURE_SIZE: f64 = 24.0;
const FIGURE_GAP: f64 = 12.0;
const PADDING: f64 = 10.0;

/// A small picture that is repeated for each piece.
struct Glyph {
    width: f64,
    height: f64,
    gap: f64,
    draw: fn(&mut Vec<Mark>, Point),
}

/// Draws a thing and says where its compartment ends.
pub(super) fn draw(marks: &mut Vec<Mark>, at: Point, width: f64, thing: &TrayThing) -> f64 {
    let top = Point::new(at.x, at.y + PADDING);
    let (top, room) = draw_figure(marks, top, width, &figure(thing));
    let labelled = lettering(marks, top, &LABEL, &thing.label, room);
    let said = lettering(
        marks,
        Point::new(at.x, labelled),
        &DETAIL,
        &thing.detail,
        room,
    );
    let pictured = Point::new(at.x, said.max(top.y + LABEL.size * LINE_SPACING) + 8.0);
    picture(marks, pictured, width, thing) + PADDING
}

/// Puts a figure at the right, on the label's base line; says where the label
/// starts and how much room is left for it. A figure is not to be shortened: one
/// that is too long for that takes lines of its own.
fn draw_figure(marks: &mut Vec<Mark>, at: Point, width: f64, figure: &str) -> (Point, f64) {
    let figure_width = text_width_px(figure, FIGURE_SIZE, Weight::Bold);
    if figure_width > width * 0.45 {
        let y = lettering(marks, at, &LONG_FIGURE, figure, width);
        return (Point::new(at.x, y), width);
    }
    marks.push(Mark::Text(Text {
        at: Point::new(at.x + width, at.y + LABEL.size),
        text: figure.to_owned(),
        size: FIGURE_SIZE,
        weight: Weight::Bold,
        anchor: Anchor::End,
        ink: Ink::Ink,
    }));
    (at, width - figure_width - FIGURE_GAP)
}

/// A thing in words, nothing shortened.
pub(super) fn words(thing: &TrayThing) -> String {
    let detail = match thing.detail.trim() {
        "" => String::new(),
        detail => format!(" ({detail})"),
    };
    format!("{} {}{detail}", figure(thing), thing.label.trim())
}

fn figure(thing: &TrayThing) -> String {
    match &thing.mark {
        TrayMark::Fluid { amount } if amount.trim().is_empty() => say::not_measured().to_owned(),
        TrayMark::Fluid { amount } => amount.trim().to_owned(),
        TrayMark::Fasteners | TrayMark::Part => thing.count.to_string(),
    }
}

fn picture(marks: &mut Vec<Mark>, at: Point, width: f64, thing: &TrayThing) -> f64 {
    match thing.mark {
        TrayMark::Fasteners => repeated(marks, at, width, &BOLT, thing.count, MOST_FASTENERS),
        TrayMark::Part => repeated(marks, at, width, &COVER, thing.count, MOST_PARTS),
        TrayMark::Fluid { .. } => repeated(marks, at, width, &JUG, 1, 1),
    }
}

/// One glyph a piece, in rows; too many for that are one glyph and a number.
fn repeated(
    marks: &mut Vec<Mark>,
    at: Point,
    width: f64,
    glyph: &Glyph,
    count: u32,
    most: u32,
) -> f64 {
    let drawn = if count > most { 1 } else { count };
    let (mut x, mut y) = (at.x, at.y);
    for nth in 0..drawn {
        if nth > 0 && x + glyph.width > at.x + width {
            x = at.x;
            y += glyph.height + glyph.gap;
        }
        (glyph.draw)(marks, Point::new(x, y));
        x += glyph.width + glyph.gap;
    }
    if count > most {
        marks.push(Mark::Text(Text {
            at: Point {
                x,
                y: y + glyph.height / 2.0 + 0.36 * DETAIL.size,
            },
            text: format!("× {count}"),
            size: DETAIL.size,
            weight: Weight::Regular,
            anchor: Anchor::Start,
            ink: Ink::Ink,
        }));
    }
    if drawn == 0 { at.y } else { y + glyph.height }
}

/// A hexagon head from above, on its washer face.
fn bolt_head(marks: &mut Vec<Mark>, at: Point) {
    let centre = Point::new(at.x + 9.0, at.y + 9.0);
    marks.push(Mark::Circle {
        centre,
        radius: 8.0,
        style: Style::line(Pen::outline(Ink::Ink)),
    });
    // Corners at 5 px: half and half of the square root of 3.
    let corners = [
        (5.0, 0.0),
        (2.5, 4.33),
        (-2.5, 4.33),
        (-5.0, 0.0),
        (-2.5, -4.33),
        (2.5, -4.33),
    ];
    marks.push(closed(centre, &corners, Pen::fine(Ink::Ink)));
}

/// A plain cover with a hole at each end.
fn cover(marks: &mut Vec<Mark>, at: Point) {
    let edge = [
        (1.0, 11.0),
        (11.0, 11.0),
        (18.0, 1.0),
        (42.0, 1.0),
        (49.0, 11.0),
        (59.0, 11.0),
        (59.0, 25.0),
        (49.0, 25.0),
        (42.0, 35.0),
        (18.0, 35.0),
        (11.0, 25.0),
        (1.0, 25.0),
    ];
    marks.push(closed(at, &edge, Pen::outline(Ink::Ink)));
    for x in [7.0, 53.0] {
        let centre = Point::new(at.x + x, at.y + 18.0);
        marks.push(Mark::Circle {
            centre,
            radius: 3.0,
            style: Style::line(Pen::fine(Ink::Ink)),
        });
    }
    for y in [12.0, 24.0] {
        marks.push(line(at, (18.0, y), (42.0, y), Pen::fine(Ink::Ink)));
    }
}

/// A jug from the side, with its handle, its level and its scale.
fn jug(marks: &mut Vec<Mark>, at: Point) {
    let body = [
        (1.0, 1.0),
        (8.0, 6.0),
        (4.0, 43.0),
        (36.0, 43.0),
        (32.0, 6.0),
        (32.0, 1.0),
    ];
    let pen = Pen::outline(Ink::Ink);
    marks.push(closed(at, &body, pen));
    let grip = [(32.5, 10.0), (44.0, 10.0), (44.0, 30.0), (34.7, 30.0)];
    marks.push(Mark::Polyline {
        points: grip.map(|(x, y)| Point::new(at.x + x, at.y + y)).to_vec(),
        closed: false,
        style: Style::line(pen),
    });
    let fine = Pen::fine(Ink::Ink);
    marks.push(line(at, (7.2, 17.0), (32.8, 17.0), fine));
    for (y, from, to) in [(23.0, 10.0, 20.0), (29.0, 14.0, 28.0), (35.0, 9.0, 22.0)] {
        marks.push(line(at, (from, y), (to, y), fine));
    }
}

fn line(at: Point, from: (f64, f64), to: (f64, f64), pen: Pen) -> Mark {
    let point = |(x, y): (f64, f64)| Point::new(at.x + x, at.y + y);
    Mark::Line {
        from: point(from),
        to: point(to),
        pen,
    }
}

fn closed(at: Point, corners: &[(f64, f64)], pen: Pen) -> Mark {
    Mark::Polyline {
        points: corners
            .iter()
            .map(|&(x, y)| Point::new(at.x + x, at.y + y))
            .collect(),
        closed: true,
        style: Style::line(pen),
    }
}

//! A drawing on paper: the same marks as on the screen, in black on white.

use super::face::{Weight, width_pt};
use super::page::{DrawingMark, Grey, TextMark};
use super::pdf::{fill, letters, short, stroke};
use drawing::{Anchor, Area, Dash, Ink, Mark, Pen, Point, Stroke, Style, Text};
use krilla::geom::{Path, PathBuilder, Transform};
use krilla::surface::Surface;

/// Draws it in its place.
pub fn drawing(surface: &mut Surface<'_>, placed: &DrawingMark) {
    let scale = short(placed.scale);
    surface.push_transform(&Transform::from_row(
        scale,
        0.0,
        0.0,
        scale,
        short(placed.x),
        short(placed.y),
    ));
    marks(surface, &placed.drawing.marks);
    surface.pop();
}

fn marks(surface: &mut Surface<'_>, all: &[Mark]) {
    for one in all {
        mark(surface, one);
    }
}

fn mark(surface: &mut Surface<'_>, mark: &Mark) {
    match mark {
        Mark::Line { from, to, pen } => {
            path(surface, lines(&[*from, *to], false), Style::line(*pen));
        }
        Mark::Polyline {
            points,
            closed,
            style,
        } => path(surface, lines(points, *closed), *style),
        Mark::Arc {
            centre,
            radius,
            start_deg,
            sweep_deg,
            pen,
        } => path(
            surface,
            arc(*centre, *radius, *start_deg, *sweep_deg, false),
            Style::line(*pen),
        ),
        Mark::Circle {
            centre,
            radius,
            style,
        } => path(surface, arc(*centre, *radius, 0.0, 360.0, true), *style),
        Mark::Rect {
            area,
            corner_radius,
            style,
        } => path(surface, rect(*area, *corner_radius), *style),
        Mark::Text(text) => lettering(surface, text),
        Mark::Group(group) => marks(surface, &group.marks),
    }
}

/// The grey that stands for an ink: whatever is coloured on the screen is black on paper.
pub fn grey(ink: Ink) -> Grey {
    match ink {
        Ink::Ink | Ink::Accent | Ink::Stop | Ink::Wait | Ink::Yes => Grey::Black,
        Ink::Soft => Grey::Soft,
        Ink::Rule => Grey::Pale,
        Ink::Paper => Grey::White,
    }
}

fn path(surface: &mut Surface<'_>, path: Option<Path>, style: Style) {
    let Some(path) = path else {
        return;
    };
    if style.line.is_none() && style.fill.is_none() {
        return;
    }
    surface.set_fill(style.fill.map(|ink| fill(grey(ink))));
    surface.set_stroke(style.line.map(pen));
    surface.draw_path(&path);
}

fn pen(pen: Pen) -> krilla::paint::Stroke {
    let width = match pen.stroke {
        Stroke::Fine => 1.0,
        Stroke::Outline => 2.0,
        Stroke::Heavy => 3.0,
        Stroke::Wrong => 4.0,
        Stroke::Belt => 5.0,
    };
    let dash = match pen.dash {
        Dash::Solid => None,
        Dash::Dashed => Some(vec![6.0, 4.0]),
        Dash::Centre => Some(vec![14.0, 3.0, 3.0, 3.0]),
    };
    stroke(grey(pen.ink), width, dash)
}

/// What a drawing says, without letters that cannot be set: its words stand in the text too.
pub fn set_text(text: &Text) -> TextMark {
    let weight = match text.weight {
        drawing::Weight::Regular => Weight::Regular,
        drawing::Weight::Bold => Weight::Bold,
    };
    let words = super::face::clean(&text.text).replace('\n', " ");
    let width = width_pt(&words, text.size, weight);
    let x = match text.anchor {
        Anchor::Start => text.at.x,
        Anchor::Middle => text.at.x - width / 2.0,
        Anchor::End => text.at.x - width,
    };
    TextMark {
        x,
        y: text.at.y,
        text: words,
        size: text.size,
        weight,
        grey: grey(text.ink),
        leaf: None,
        goes_on: false,
    }
}

fn lettering(surface: &mut Surface<'_>, text: &Text) {
    let mark = set_text(text);
    if !mark.text.trim().is_empty() {
        letters(surface, &mark);
    }
}

fn lines(points: &[Point], closed: bool) -> Option<Path> {
    let mut path = PathBuilder::new();
    let (first, rest) = points.split_first()?;
    path.move_to(short(first.x), short(first.y));
    for point in rest {
        path.line_to(short(point.x), short(point.y));
    }
    if closed {
        path.close();
    }
    path.finish()
}

/// An arc as curves of at most 45 degrees; a curve misses the circle by less than a
/// hundred-thousandth of its radius.
fn arc(centre: Point, radius: f64, start_deg: f64, sweep_deg: f64, closed: bool) -> Option<Path> {
    let radius = radius.max(0.0);
    let sweep = sweep_deg.clamp(-360.0, 360.0);
    let mut path = PathBuilder::new();
    let at = |degrees: f64| {
        let angle = degrees.to_radians();
        // The standard library's may differ from machine to machine.
        (libm::cos(angle), libm::sin(angle))
    };
    let (cos, sin) = at(start_deg);
    path.move_to(
        short(centre.x + radius * cos),
        short(centre.y + radius * sin),
    );
    let step = sweep / 8.0;
    // The arm of a Bezier curve that stands for an arc: 4/3 tan(angle / 4).
    let arm = 4.0 / 3.0 * libm::tan(step.to_radians() / 4.0) * radius;
    for nth in 0..8 {
        let (from, to) = (
            at(start_deg + step * f64::from(nth)),
            at(start_deg + step * f64::from(nth + 1)),
        );
        path.cubic_to(
            short(centre.x + radius * from.0 - arm * from.1),
            short(centre.y + radius * from.1 + arm * from.0),
            short(centre.x + radius * to.0 + arm * to.1),
            short(centre.y + radius * to.1 - arm * to.0),
            short(centre.x + radius * to.0),
            short(centre.y + radius * to.1),
        );
    }
    if closed {
        path.close();
    }
    path.finish()
}

fn rect(area: Area, corner_radius: f64) -> Option<Path> {
    let radius = corner_radius.clamp(0.0, (area.width.min(area.height) / 2.0).max(0.0));
    let (left, top, right, bottom) = (area.x, area.y, area.right(), area.bottom());
    let mut path = PathBuilder::new();
    path.move_to(short(left + radius), short(top));
    let mut side = |to: (f64, f64), corner: (f64, f64), end: (f64, f64)| {
        path.line_to(short(to.0), short(to.1));
        if radius > 0.0 {
            path.quad_to(short(corner.0), short(corner.1), short(end.0), short(end.1));
        }
    };
    side((right - radius, top), (right, top), (right, top + radius));
    side(
        (right, bottom - radius),
        (right, bottom),
        (right - radius, bottom),
    );
    side(
        (left + radius, bottom),
        (left, bottom),
        (left, bottom - radius),
    );
    side((left, top + radius), (left, top), (left + radius, top));
    path.close();
    path.finish()
}

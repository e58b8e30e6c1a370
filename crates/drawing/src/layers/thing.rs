//! One thing as it is drawn: its box, its name, its mark, and how it is spoken.

use super::{DETAIL_SIZE, Form, LayerCall, LayerMark, LayerStand, LayerThing};
use crate::phrases as say;
use crate::{
    Anchor, Area, Dash, Group, Ink, Mark, Pen, Point, Style, Text, Weight, ellipsis, text_width_px,
    wrap,
};

const PADDING: f64 = 9.0;
const LABEL_SIZE: f64 = 18.0;
const MARK_SIZE: f64 = 16.0;

/// A thing as a box of its own.
pub(super) fn boxed(thing: &LayerThing, top_middle: Point, form: Form) -> Group {
    let area = Area {
        x: top_middle.x - form.width / 2.0,
        y: top_middle.y,
        width: form.width,
        height: form.height,
    };
    let ink = ink(thing.call);
    let edge = match thing.call {
        LayerCall::Beside => Pen::fine(ink),
        _ => Pen::outline(ink),
    };
    let dash = match thing.stands {
        LayerStand::Away => Dash::Dashed,
        LayerStand::Home | LayerStand::Partly => Dash::Solid,
    };
    let mut marks = vec![Mark::Rect {
        area,
        corner_radius: 4.0,
        style: Style {
            line: Some(edge.dashed(dash)),
            fill: Some(Ink::Paper),
        },
    }];
    if matches!(thing.call, LayerCall::Wanted | LayerCall::Next) {
        // A second edge inside the first: it reads without colour too.
        marks.push(Mark::Rect {
            area: Area {
                x: area.x + 4.0,
                y: area.y + 4.0,
                width: area.width - 8.0,
                height: area.height - 8.0,
            },
            corner_radius: 2.0,
            style: Style::line(Pen::fine(ink)),
        });
    }
    let (x, room) = (area.x + PADDING, area.width - 2.0 * PADDING);
    let lines = wrap(&thing.label, LABEL_SIZE, Weight::Bold, room, 2);
    let one_line = lines.len() < 2;
    for (base, line) in [24.0, 45.6].into_iter().zip(lines) {
        marks.push(lettering(
            x,
            area.y + base,
            line,
            LABEL_SIZE,
            Weight::Bold,
            Ink::Ink,
        ));
    }
    let base = area.bottom() - 14.0;
    marks.extend(mark(thing, Point::new(x, base - MARK_SIZE + 2.0)));
    let (after_mark, right) = (x + MARK_SIZE + 8.0, area.right() - PADDING);
    if one_line {
        let (called, _) = called_at(thing, x, area.y + 46.0);
        marks.extend(called);
        marks.extend(detail_at(thing, after_mark, base, right));
    } else {
        marks.extend(second_line(thing, after_mark, base, right));
    }
    group(thing, marks)
}

/// A thing with a row to itself: its mark among the lines, its words beside them.
pub(super) fn in_a_row(thing: &LayerThing, mark_top: Point, area: Area) -> Group {
    let mut marks = vec![
        Mark::Rect {
            area,
            corner_radius: 0.0,
            style: Style::fill(Ink::Paper),
        },
        // From edge to edge: the row is as wide as the page.
        Mark::Line {
            from: Point::new(0.0, area.bottom()),
            to: Point::new(area.right(), area.bottom()),
            pen: Pen::fine(Ink::Rule),
        },
    ];
    let label = ellipsis(&thing.label, LABEL_SIZE, Weight::Bold, area.width);
    let ink = match thing.call {
        LayerCall::Next => Ink::Accent,
        _ => Ink::Ink,
    };
    marks.push(lettering(
        area.x,
        area.y + 28.0,
        label,
        LABEL_SIZE,
        Weight::Bold,
        ink,
    ));
    marks.extend(second_line(thing, area.x, area.y + 50.0, area.right()));
    if matches!(thing.call, LayerCall::Wanted | LayerCall::Next) {
        marks.push(Mark::Circle {
            centre: Point::new(mark_top.x, mark_top.y + MARK_SIZE / 2.0 + 1.0),
            radius: MARK_SIZE / 2.0 + 5.0,
            style: Style {
                line: Some(Pen::outline(ink)),
                fill: Some(Ink::Paper),
            },
        });
    }
    let corner = Point::new(mark_top.x - MARK_SIZE / 2.0, mark_top.y + 1.0);
    marks.extend(mark(thing, corner));
    group(thing, marks)
}

fn group(thing: &LayerThing, marks: Vec<Mark>) -> Group {
    Group {
        id: None,
        label: Some(spoken(thing)),
        link: thing.link.clone(),
        marks,
    }
}

fn ink(call: LayerCall) -> Ink {
    match call {
        LayerCall::Wanted | LayerCall::OnTheWay => Ink::Ink,
        LayerCall::Next => Ink::Accent,
        LayerCall::Beside => Ink::Soft,
    }
}

/// What it is marked with, in words, and what else is to be known of it.
fn second_line(thing: &LayerThing, x: f64, base: f64, right: f64) -> Vec<Mark> {
    let (mut marks, x) = called_at(thing, x, base);
    marks.extend(detail_at(thing, x, base, right));
    marks
}

/// What it is marked with, and where that ends.
fn called_at(thing: &LayerThing, x: f64, base: f64) -> (Vec<Mark>, f64) {
    let words = [stands(thing), called(thing.call)];
    let words: Vec<&str> = words.into_iter().filter(|word| !word.is_empty()).collect();
    let words = words.join(", ");
    if words.is_empty() {
        return (Vec::new(), x);
    }
    let end = x + text_width_px(&words, DETAIL_SIZE, Weight::Bold) + 6.0;
    let mark = lettering(x, base, words, DETAIL_SIZE, Weight::Bold, ink(thing.call));
    (vec![mark], end)
}

fn detail_at(thing: &LayerThing, x: f64, base: f64, right: f64) -> Option<Mark> {
    let detail = ellipsis(&thing.detail, DETAIL_SIZE, Weight::Regular, right - x);
    let shown = !detail.is_empty();
    shown.then(|| lettering(x, base, detail, DETAIL_SIZE, Weight::Regular, Ink::Soft))
}

pub(super) fn lettering(x: f64, y: f64, text: String, size: f64, weight: Weight, ink: Ink) -> Mark {
    Mark::Text(Text {
        at: Point::new(x, y),
        text,
        size,
        weight,
        anchor: Anchor::Start,
        ink,
    })
}

/// The mark of a thing: filled where it is home, hollow where it is not.
fn mark(thing: &LayerThing, at: Point) -> Vec<Mark> {
    let (x, y) = (at.x, at.y);
    let (right, bottom, half) = (x + MARK_SIZE, y + MARK_SIZE, MARK_SIZE / 2.0);
    let outline = Some(Pen::outline(Ink::Ink));
    let style = Style {
        line: outline,
        fill: (thing.stands == LayerStand::Home).then_some(Ink::Ink),
    };
    let mut marks = match thing.mark {
        LayerMark::Pieces => vec![Mark::Circle {
            centre: Point::new(x + half, y + half),
            radius: half - 1.0,
            style,
        }],
        LayerMark::Part => vec![Mark::Rect {
            area: Area {
                x: x + 1.0,
                y: y + 1.0,
                width: MARK_SIZE - 2.0,
                height: MARK_SIZE - 2.0,
            },
            corner_radius: 0.0,
            style,
        }],
        LayerMark::Fluid => vec![Mark::Polyline {
            points: vec![
                Point::new(x + half, y),
                Point::new(right - 2.0, y + 9.0),
                Point::new(right - 4.0, bottom - 2.0),
                Point::new(x + half, bottom),
                Point::new(x + 4.0, bottom - 2.0),
                Point::new(x + 2.0, y + 9.0),
            ],
            closed: true,
            style,
        }],
        LayerMark::PutIn => [(x, right), (right, x)]
            .map(|(from, to)| Mark::Line {
                from: Point::new(from, y),
                to: Point::new(to, bottom),
                pen: Pen::outline(if thing.stands == LayerStand::Away {
                    Ink::Ink
                } else {
                    Ink::Soft
                }),
            })
            .into(),
    };
    if thing.stands == LayerStand::Partly {
        marks.push(Mark::Rect {
            area: Area {
                x: x + 2.0,
                y: y + half,
                width: MARK_SIZE - 4.0,
                height: half - 2.0,
            },
            corner_radius: 0.0,
            style: Style::fill(Ink::Ink),
        });
    }
    marks
}

pub(super) fn spoken(thing: &LayerThing) -> String {
    let parts = [
        thing.label.as_str(),
        thing.detail.as_str(),
        stands(thing),
        called(thing.call),
    ];
    let said: Vec<&str> = parts.into_iter().filter(|part| !part.is_empty()).collect();
    said.join(", ")
}

fn stands(thing: &LayerThing) -> &'static str {
    match thing.stands {
        LayerStand::Home => "",
        LayerStand::Partly => say::partly_out(),
        LayerStand::Away if thing.mark == LayerMark::PutIn => say::put_in(),
        LayerStand::Away if thing.mark == LayerMark::Fluid => say::drained(),
        LayerStand::Away => say::off(),
    }
}

fn called(call: LayerCall) -> &'static str {
    match call {
        LayerCall::Wanted => say::wanted(),
        LayerCall::Next => say::next(),
        LayerCall::OnTheWay | LayerCall::Beside => "",
    }
}

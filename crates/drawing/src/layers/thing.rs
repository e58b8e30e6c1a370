//! One thing as it is drawn: its name, its mark, and how it is spoken.

use super::{DETAIL_SIZE, LayerCall, LayerMark, LayerStand, LayerThing, MARK_SIZE, wide};
use crate::phrases as say;
use crate::{
    Anchor, Area, Group, Ink, Mark, Pen, Point, Style, Text, Weight, ellipsis, text_width_px, wrap,
};

const LABEL_SIZE: f64 = 18.0;

/// The words of a thing beside its mark, line by line.
pub(super) struct Node {
    lines: Vec<(String, Weight, Ink)>,
}

const LINE_HEIGHT: f64 = 20.0;
/// From the middle of the mark to the words.
pub(super) const TO_WORDS: f64 = MARK_SIZE / 2.0 + 9.0;

/// What stands beside the mark of a thing that reaches so far to its right.
pub(super) fn node(thing: &LayerThing, right: f64) -> Node {
    let room = right - TO_WORDS;
    let name = match thing.call {
        LayerCall::Wanted => (Weight::Bold, Ink::Accent),
        LayerCall::Next | LayerCall::OnTheWay => (Weight::Bold, Ink::Ink),
        LayerCall::Beside => (Weight::Regular, Ink::Soft),
    };
    let words = marked_with(thing);
    let called = (Weight::Bold, ink(thing.call));
    let detail = (Weight::Regular, Ink::Soft);
    let mut lines: Vec<(String, Weight, Ink)> = Vec::new();
    for (text, (weight, ink)) in [
        (thing.label.as_str(), name),
        (words.as_str(), called),
        (thing.detail.as_str(), detail),
    ] {
        let wrapped = wrap(text, DETAIL_SIZE, weight, room, 2);
        lines.extend(wrapped.into_iter().map(|line| (line, weight, ink)));
    }
    Node { lines }
}

impl Node {
    pub(super) fn height(&self) -> f64 {
        super::count(self.lines.len()) * LINE_HEIGHT
    }

    /// Drawn with the middle of its mark's upper edge there.
    pub(super) fn drawn(&self, thing: &LayerThing, at: Point, right: f64) -> Group {
        let words = Area {
            x: at.x + TO_WORDS - 3.0,
            y: at.y - 2.0,
            width: right - TO_WORDS + 3.0,
            height: self.height().max(MARK_SIZE + 4.0),
        };
        let mut marks = vec![Mark::Rect {
            area: words,
            corner_radius: 0.0,
            style: Style::fill(Ink::Paper),
        }];
        marks.extend(thing.stage.map(|number| wide::stage(number, at)));
        if thing.call == LayerCall::Next {
            marks.push(Mark::Circle {
                centre: Point::new(at.x, at.y + MARK_SIZE / 2.0),
                radius: MARK_SIZE / 2.0 + 3.0,
                style: Style {
                    line: Some(wide::RING),
                    fill: Some(Ink::Paper),
                },
            });
        }
        marks.extend(mark(thing, Point::new(at.x - MARK_SIZE / 2.0, at.y)));
        for (nth, (line, weight, ink)) in self.lines.iter().enumerate() {
            let base = at.y + 14.0 + super::count(nth) * LINE_HEIGHT;
            let text = line.clone();
            marks.push(lettering(
                at.x + TO_WORDS,
                base,
                text,
                DETAIL_SIZE,
                *weight,
                *ink,
            ));
        }
        group(thing, marks)
    }
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

/// What it is marked with, in words.
fn marked_with(thing: &LayerThing) -> String {
    let words = [stands(thing), called(thing.call)];
    let words: Vec<&str> = words.into_iter().filter(|word| !word.is_empty()).collect();
    words.join(", ")
}

/// The same where it stands, and where that ends.
fn called_at(thing: &LayerThing, x: f64, base: f64) -> (Vec<Mark>, f64) {
    let words = marked_with(thing);
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
    // What this way leaves where it is stands back.
    let ink = match thing.call {
        LayerCall::Beside => Ink::Soft,
        _ => Ink::Ink,
    };
    let style = Style {
        line: Some(Pen::outline(ink)),
        fill: (thing.stands == LayerStand::Home).then_some(ink),
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

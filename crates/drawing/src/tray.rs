//! What lies on the bench: trays in plan, last off first, each thing counted.

mod things;

use crate::phrases as say;
use crate::{
    Anchor, Area, Drawing, Ink, Mark, Pen, Point, Style, Text, Weight, text_width_px, wrap,
};

/// Everything that has come off and lies on the bench.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Tray {
    /// In the sequence in which they came off.
    pub places: Vec<TrayPlace>,
}

/// What one stage left in one container.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TrayPlace {
    pub container: String,
    pub stage: String,
    pub things: Vec<TrayThing>,
}

/// One item, or the part of it that lies here.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct TrayThing {
    pub label: String,
    /// A second line: a size, or what is to be known of it.
    pub detail: String,
    /// How many pieces; a fluid's amount stands in its mark.
    pub count: u32,
    pub mark: TrayMark,
}

/// What a thing is drawn as.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum TrayMark {
    /// Bolt heads in rows, each drawn as far as they can be told at a glance.
    Fasteners,
    /// A plain outline.
    Part,
    /// A jug; the amount as it was written, with its unit.
    Fluid { amount: String },
}

const LEAST_WIDTH: f64 = 240.0;
/// No column is narrower than this while there is more than one.
const COLUMN: f64 = 320.0;
const COLUMN_GAP: f64 = 32.0;
const PLACE_GAP: f64 = 24.0;
/// From a tray's edge to what lies in it.
const RIM: f64 = 16.0;
/// From a tray's edge to its inner edge.
const LIP: f64 = 5.0;
/// Size of the words that say when a place's things came off.
const TURN_SIZE: f64 = 16.0;
const LINE_SPACING: f64 = 1.25;

/// Draws what lies on the bench: what came off last stands first.
///
/// Everything is counted in figures as well as drawn, and the description says
/// it in full where a label had to be shortened. Widths under 240 px are drawn
/// at 240.
#[must_use]
pub fn tray(tray: &Tray, width_px: f64) -> Drawing {
    let width = if width_px.is_finite() {
        width_px.max(LEAST_WIDTH)
    } else {
        LEAST_WIDTH
    };
    let title = title(tray);
    let mut marks = Vec::new();
    let mut y = heading(&mut marks, &title, width);

    if tray.places.is_empty() {
        outline(
            &mut marks,
            Area {
                x: 1.0,
                y,
                width: width - 2.0,
                height: 96.0,
            },
        );
        y += 97.0;
    }
    let columns = columns(width, tray.places.len());
    let column_width = (width + COLUMN_GAP) / f64::from(columns) - COLUMN_GAP;
    for row in newest_first(tray).chunks(usize::from(columns)) {
        let mut x = 0.0;
        let mut bottom = y;
        for &(turn, place) in row {
            bottom = bottom.max(draw_place(
                &mut marks,
                Point::new(x, y),
                column_width,
                place,
                turn,
            ));
            x += column_width + COLUMN_GAP;
        }
        y = bottom + PLACE_GAP;
    }
    let height = if tray.places.is_empty() {
        y
    } else {
        y - PLACE_GAP
    };
    Drawing {
        width,
        height,
        description: description(tray),
        title,
        marks,
    }
}

/// When a place's things came off.
#[derive(Clone, Copy)]
struct Turn {
    nth: usize,
    last: bool,
    alone: bool,
}

fn newest_first(tray: &Tray) -> Vec<(Turn, &TrayPlace)> {
    let last = tray.places.len();
    let turn = |index| Turn {
        nth: index + 1,
        last: index + 1 == last,
        alone: last == 1,
    };
    tray.places
        .iter()
        .enumerate()
        .rev()
        .map(|(index, place)| (turn(index), place))
        .collect()
}

impl Turn {
    fn words(self) -> String {
        if self.last {
            say::last_off().to_owned()
        } else {
            say::nth_off(ordinal(self.nth), self.nth)
        }
    }
}

fn columns(width: f64, places: usize) -> u16 {
    (1..=4_u16)
        .rev()
        .find(|&n| {
            usize::from(n) <= places.max(1)
                && f64::from(n) * (COLUMN + COLUMN_GAP) - COLUMN_GAP <= width
        })
        .unwrap_or(1)
}

fn heading(marks: &mut Vec<Mark>, title: &str, width: f64) -> f64 {
    let bottom = lettering(marks, Point::new(0.0, 0.0), &HEADING, title, width);
    let y = bottom + 7.0;
    marks.push(Mark::Line {
        from: Point::new(0.0, y),
        to: Point::new(width, y),
        pen: Pen::outline(Ink::Ink),
    });
    y + 15.0
}

/// Draws one place and says where it ends.
fn draw_place(marks: &mut Vec<Mark>, at: Point, width: f64, place: &TrayPlace, turn: Turn) -> f64 {
    let mut room = width;
    if !turn.alone {
        let words = turn.words();
        room -= text_width_px(&words, TURN_SIZE, Weight::Bold) + 12.0;
        let (ink, weight) = if turn.last {
            (Ink::Accent, Weight::Bold)
        } else {
            (Ink::Soft, Weight::Regular)
        };
        marks.push(Mark::Text(Text {
            at: Point::new(at.x + width, at.y + PLACE.size),
            text: words,
            size: TURN_SIZE,
            weight,
            anchor: Anchor::End,
            ink,
        }));
    }
    let named = lettering(marks, at, &PLACE, &place.container, room);
    // A place without a name still leaves room for its turn.
    let named = named.max(at.y + PLACE.size * LINE_SPACING);
    let top = lettering(marks, Point::new(at.x, named), &STAGE, &place.stage, width) + 8.0;

    let inner = Point::new(at.x + RIM, top + LIP);
    let mut y = inner.y;
    for (nth, thing) in place.things.iter().enumerate() {
        if nth > 0 {
            marks.push(Mark::Line {
                from: Point::new(at.x + LIP + 1.0, y),
                to: Point::new(at.x + width - LIP - 1.0, y),
                pen: Pen::fine(Ink::Ink),
            });
        }
        y = things::draw(marks, Point::new(inner.x, y), width - 2.0 * RIM, thing);
    }
    if place.things.is_empty() {
        let at = Point::new(inner.x, y + 12.0);
        y = lettering(marks, at, &STAGE, say::empty(), width - 2.0 * RIM) + 12.0;
    }
    let bottom = y + LIP;
    outline(
        marks,
        Area {
            x: at.x + 1.0,
            y: top,
            width: width - 2.0,
            height: bottom - top,
        },
    );
    bottom + 1.0
}

/// A tray from above: its edge, and the inner edge of its rim.
fn outline(marks: &mut Vec<Mark>, area: Area) {
    let inner = Area {
        x: area.x + LIP,
        y: area.y + LIP,
        width: area.width - 2.0 * LIP,
        height: area.height - 2.0 * LIP,
    };
    for (area, corner_radius, pen) in [
        (area, 12.0, Pen::outline(Ink::Ink)),
        (inner, 7.0, Pen::fine(Ink::Ink)),
    ] {
        marks.push(Mark::Rect {
            area,
            corner_radius,
            style: Style::line(pen),
        });
    }
}

/// How one kind of lettering looks, and how many lines of it there may be.
struct Lettering {
    size: f64,
    weight: Weight,
    ink: Ink,
    lines: usize,
}

const HEADING: Lettering = Lettering {
    size: 24.0,
    weight: Weight::Bold,
    ink: Ink::Ink,
    lines: 3,
};
const PLACE: Lettering = Lettering {
    size: 20.0,
    weight: Weight::Bold,
    ink: Ink::Ink,
    lines: 2,
};
const STAGE: Lettering = Lettering {
    size: 16.0,
    weight: Weight::Regular,
    ink: Ink::Soft,
    lines: 2,
};

/// Letters a text from its upper left corner downwards and says where it ends.
fn lettering(marks: &mut Vec<Mark>, at: Point, how: &Lettering, text: &str, width: f64) -> f64 {
    let mut y = at.y;
    for line in wrap(text, how.size, how.weight, width, how.lines) {
        marks.push(Mark::Text(Text {
            at: Point::new(at.x, y + how.size),
            text: line,
            size: how.size,
            weight: how.weight,
            anchor: Anchor::Start,
            ink: how.ink,
        }));
        y += how.size * LINE_SPACING;
    }
    y
}

fn title(tray: &Tray) -> String {
    let things = || tray.places.iter().flat_map(|place| &place.things);
    let pieces: u64 = things()
        .filter(|thing| !matches!(thing.mark, TrayMark::Fluid { .. }))
        .map(|thing| u64::from(thing.count))
        .sum();
    let fluid = things().any(|thing| matches!(thing.mark, TrayMark::Fluid { .. }));
    match (pieces, fluid) {
        (0, false) => say::nothing_on_bench().to_owned(),
        (0, true) => say::only_fluid_on_bench().to_owned(),
        (_, _) => say::pieces_on_bench(pieces),
    }
}

/// All that the drawing says, last off first, nothing shortened.
fn description(tray: &Tray) -> String {
    if tray.places.is_empty() {
        return say::nothing_lies_on_bench().to_owned();
    }
    let sentence = |(turn, place): (Turn, &TrayPlace)| {
        let things: Vec<String> = place.things.iter().map(things::words).collect();
        let things = if things.is_empty() {
            say::empty().to_owned()
        } else {
            things.join("; ")
        };
        let head: Vec<String> = [place.container.clone(), turn.words(), place.stage.clone()]
            .into_iter()
            .filter(|part| !part.trim().is_empty())
            .collect();
        format!("{}: {things}.", head.join(", "))
    };
    newest_first(tray)
        .into_iter()
        .map(sentence)
        .collect::<Vec<_>>()
        .join(" ")
}

fn ordinal(n: usize) -> String {
    let ending = match (n % 10, n % 100) {
        (_, 11..=13) => "th",
        (1, _) => "st",
        (2, _) => "nd",
        (3, _) => "rd",
        _ => "th",
    };
    format!("{n}{ending}")
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn ordinals_are_spoken_right() {
        let said = [1, 2, 3, 4, 11, 12, 13, 21, 102, 111].map(ordinal);
        assert_eq!(
            said,
            [
                "1st", "2nd", "3rd", "4th", "11th", "12th", "13th", "21st", "102nd", "111th"
            ]
        );
    }

    #[test]
    fn a_desk_has_more_columns_but_none_for_nothing() {
        assert_eq!(columns(358.0, 5), 1);
        assert_eq!(columns(700.0, 5), 2);
        assert_eq!(columns(1200.0, 5), 3);
        assert_eq!(columns(1200.0, 2), 2);
        assert_eq!(columns(1200.0, 0), 1);
    }
}

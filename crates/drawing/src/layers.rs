//! Things in layers: what is free stands at the top, what it all leads to at the
//! bottom, and a line goes down from each thing to what cannot be had before it.
//!
//! The rows are as wide as the paper allows and no wider, so that a telephone shows the
//! same drawing with more rows. Lines that end at one thing run together on their way
//! past other rows. A general layout of graphs in layers (`rust-sugiyama` was looked at)
//! takes the width that it needs, which on a telephone is lettering too small to read.

mod across;
mod rows;
mod sequence;
mod thing;

use crate::phrases as say;
use crate::{Area, Dash, Drawing, Ink, Mark, Pen, Point, Style, Weight, wrap};
use rows::{Cell, Filling, Rows};
use thing::{lettering, spoken};

/// Things and what each needs first.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Layers {
    /// What the drawing shows.
    pub title: String,
    pub things: Vec<LayerThing>,
}

/// One thing.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct LayerThing {
    pub label: String,
    /// A second line: how many, where, how much.
    pub detail: String,
    pub mark: LayerMark,
    pub stands: LayerStand,
    pub call: LayerCall,
    /// Where pressing it leads.
    pub link: Option<String>,
    pub needs: Vec<LayerNeed>,
}

/// What must be out of the way first.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct LayerNeed {
    /// The thing, by its place among the things.
    pub thing: usize,
    /// Whether it is one of several of which one is enough.
    pub either: bool,
}

/// What a thing is drawn as.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LayerMark {
    /// Counted pieces: a ring.
    Pieces,
    /// A square.
    Part,
    /// A drop.
    Fluid,
    /// Put in for the work: a cross.
    PutIn,
}

/// Whether a thing is where it belongs.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LayerStand {
    /// Its mark is filled.
    Home,
    /// Its mark is half filled.
    Partly,
    /// Its mark is hollow and its outline broken: it is not there.
    Away,
}

/// What a thing is marked with.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum LayerCall {
    /// What it all leads to.
    Wanted,
    /// What comes next.
    Next,
    /// On the way to what is wanted.
    OnTheWay,
    /// Shown, and no more.
    Beside,
}

const LEAST_WIDTH: f64 = 240.0;
/// Narrower than this, each thing has a row to itself, with the lines at its left.
const LEAST_FOR_BOXES: f64 = 600.0;
const DETAIL_SIZE: f64 = 16.0;
const LEGEND_HEIGHT: f64 = 24.0;

/// The measures of one way to draw: things as boxes side by side with the lines between
/// their rows, or a row each with only its mark among the lines.
#[derive(Debug, Clone, Copy, PartialEq)]
struct Form {
    /// What of a thing stands among the lines, and how far from another.
    width: f64,
    height: f64,
    gap: f64,
    /// Between a line that passes and a thing, and between two such lines.
    line_gap: f64,
    /// From the top of one row to the next, and to what stands among the lines.
    pitch: f64,
    drop: f64,
}

const BOXES: Form = Form {
    width: 176.0,
    height: 96.0,
    gap: 20.0,
    line_gap: 10.0,
    pitch: 136.0,
    drop: 0.0,
};

const ROWS: Form = Form {
    width: 18.0,
    height: 18.0,
    gap: 10.0,
    line_gap: 9.0,
    pitch: 64.0,
    drop: 12.0,
};

/// Draws things in layers.
///
/// No wider than asked for, but at least 240 px. Needs that others imply are left out,
/// and so are needs of things that are not there. The description says every layer in
/// full, since labels may have been shortened.
#[must_use]
pub fn layers(layers: &Layers, width_px: f64) -> Drawing {
    let width = match width_px.is_finite() {
        true => width_px.max(LEAST_WIDTH),
        false => LEAST_WIDTH,
    };
    let edges = rows::edges(&layers.things);
    let (form, filling) = match width < LEAST_FOR_BOXES {
        true => (ROWS, Filling::OneByOne),
        false => (BOXES, Filling::Broad),
    };
    let rows = rows::rows(layers.things.len(), &edges, filling, |things, lines| {
        form.room(things, lines) <= width
    });
    let rows = sequence::sorted(rows);
    let room = match filling {
        Filling::Broad => width,
        Filling::OneByOne => gutter(&rows, form).min(width / 2.0),
    };
    let middles = across::middles(
        &rows,
        room,
        |row, at| form.apart(&rows.rows[row][at], &rows.rows[row][at + 1]),
        |row, at| form.margin(&rows.rows[row][at]),
    );
    let mut marks = legend(layers, &edges, width);
    let top = 2.0 + LEGEND_HEIGHT * count(marks.len());
    let place = |row: usize, at: usize| {
        Point::new(middles[row][at], top + form.drop + count(row) * form.pitch)
    };
    lines(&mut marks, layers, &rows, form, &place);
    for (row, cells) in rows.rows.iter().enumerate() {
        for (at, cell) in cells.iter().enumerate() {
            if let Cell::Thing(thing) = cell {
                let (thing, place) = (&layers.things[*thing], place(row, at));
                marks.push(Mark::Group(match filling {
                    Filling::Broad => thing::boxed(thing, place, form),
                    Filling::OneByOne => {
                        let area = Area {
                            x: room + 6.0,
                            y: place.y - form.drop,
                            width: width - room - 6.0,
                            height: form.pitch,
                        };
                        thing::in_a_row(thing, place, area)
                    }
                }));
            }
        }
    }
    let last = rows.rows.len().checked_sub(1);
    let bottom = last.map_or(0.0, |last| {
        count(last) * form.pitch + form.height.max(form.pitch * form.drop.min(1.0))
    });
    Drawing {
        width,
        height: top + bottom + 2.0,
        title: layers.title.clone(),
        description: description(layers, &rows),
        marks,
    }
}

impl Form {
    /// The room that so many things and passing lines take, however they are arranged.
    fn room(self, things: usize, lines: usize) -> f64 {
        count(things) * (self.width + self.gap) - self.gap + 2.0 + count(lines) * self.line_gap
    }

    fn apart(self, one: &Cell, other: &Cell) -> f64 {
        match (one, other) {
            (Cell::Thing(_), Cell::Thing(_)) => self.width + self.gap,
            (Cell::Trunk { .. }, Cell::Trunk { .. }) => self.line_gap,
            _ => self.width / 2.0 + self.line_gap,
        }
    }

    fn margin(self, cell: &Cell) -> f64 {
        match cell {
            Cell::Thing(_) => self.width / 2.0 + 1.0,
            Cell::Trunk { .. } => 2.0,
        }
    }
}

/// The room that the fullest row takes.
fn gutter(rows: &Rows, form: Form) -> f64 {
    let room = |row: &Vec<Cell>| {
        let between: f64 = row
            .windows(2)
            .map(|pair| form.apart(&pair[0], &pair[1]))
            .sum();
        let ends = [row.first(), row.last()].into_iter().flatten();
        between + ends.map(|cell| form.margin(cell)).sum::<f64>()
    };
    rows.rows.iter().map(room).fold(0.0, f64::max)
}

fn count(n: usize) -> f64 {
    f64::from(u32::try_from(n).unwrap_or(u32::MAX))
}

/// What broken lines mean, where there are any.
fn legend(layers: &Layers, edges: &[rows::Edge], width: f64) -> Vec<Mark> {
    if layers.things.is_empty() || !edges.iter().any(|edge| edge.either) {
        return Vec::new();
    }
    let words = say::broken_line();
    let lines = wrap(words, DETAIL_SIZE, Weight::Regular, width, 2);
    let base = |nth: usize| DETAIL_SIZE + LEGEND_HEIGHT * count(nth);
    let lines = lines.into_iter().enumerate();
    lines
        .map(|(nth, line)| {
            lettering(
                0.0,
                base(nth),
                line,
                DETAIL_SIZE,
                Weight::Regular,
                Ink::Soft,
            )
        })
        .collect()
}

fn lines(
    marks: &mut Vec<Mark>,
    layers: &Layers,
    rows: &Rows,
    form: Form,
    place: &impl Fn(usize, usize) -> Point,
) {
    for (row, joined) in rows.lines.iter().enumerate() {
        for &(from, to) in joined {
            let (upper, lower) = (rows.rows[row][from], rows.rows[row + 1][to]);
            let (start, end) = (place(row, from), place(row + 1, to));
            let (either, turned, lit) = manner(layers, upper, lower);
            let pen = Pen {
                dash: if either { Dash::Dashed } else { Dash::Solid },
                ..if lit {
                    Pen::outline(Ink::Ink)
                } else {
                    Pen::fine(Ink::Soft)
                }
            };
            let mut points = vec![
                Point::new(start.x, start.y + form.height),
                Point::new(end.x, end.y),
            ];
            if matches!(lower, Cell::Trunk { .. }) {
                points.push(Point::new(end.x, end.y + form.height));
            }
            marks.push(Mark::Polyline {
                points,
                closed: false,
                style: Style::line(pen),
            });
            match (upper, lower) {
                (_, Cell::Thing(_)) if !turned => marks.push(tip(end, 1.0, pen.ink)),
                (Cell::Thing(_), _) if turned => {
                    marks.push(tip(
                        Point::new(start.x, start.y + form.height),
                        -1.0,
                        pen.ink,
                    ));
                }
                _ => {}
            }
        }
    }
}

/// Whether a line is one of several, turned, and on the way to what is wanted.
fn manner(layers: &Layers, upper: Cell, lower: Cell) -> (bool, bool, bool) {
    let lit = |thing: usize| {
        matches!(
            layers.things[thing].call,
            LayerCall::Wanted | LayerCall::Next | LayerCall::OnTheWay
        )
    };
    match (upper, lower) {
        (
            Cell::Trunk {
                lower,
                either,
                turned,
            },
            _,
        ) => (either, turned, lit(lower)),
        (
            Cell::Thing(upper),
            Cell::Trunk {
                lower,
                either,
                turned,
            },
        ) => (either, turned, lit(lower) && lit(upper)),
        (Cell::Thing(upper), Cell::Thing(lower)) => {
            let need = |of: usize, thing: usize| {
                let mut all = layers.things[of]
                    .needs
                    .iter()
                    .filter(move |n| n.thing == thing);
                all.next()
                    .map(|first| first.either && all.all(|n| n.either))
            };
            let straight = need(lower, upper);
            let either = straight.or_else(|| need(upper, lower)).unwrap_or(false);
            (either, straight.is_none(), lit(lower) && lit(upper))
        }
    }
}

/// The end of a line: it points at what can be had next.
fn tip(at: Point, direction: f64, ink: Ink) -> Mark {
    let back = at.y - 9.0 * direction;
    Mark::Polyline {
        points: vec![
            at,
            Point::new(at.x - 5.0, back),
            Point::new(at.x + 5.0, back),
        ],
        closed: true,
        style: Style::fill(ink),
    }
}

fn description(layers: &Layers, rows: &Rows) -> String {
    let mut said = String::new();
    for (nth, row) in rows.rows.iter().enumerate() {
        let names: Vec<String> = row
            .iter()
            .filter_map(|cell| match cell {
                Cell::Thing(thing) => Some(spoken(&layers.things[*thing])),
                Cell::Trunk { .. } => None,
            })
            .collect();
        said.push_str(&say::row_of_things(nth + 1, names.join("; ")));
    }
    said.truncate(said.trim_end().len());
    said
}

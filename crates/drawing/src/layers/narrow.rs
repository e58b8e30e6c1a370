//! One thing a row, as a telephone has room for: its mark among the lines, its words beside them.

use super::across::{self, Part, average};
use super::rows::{self, Cell, Edge, Filling, Rows};
use super::{Layers, MARK_SIZE, count, manner, pen, sequence, thing};
use crate::{Area, Ink, Mark, Point, Style};

/// What of a thing stands among the lines.
const SIZE: f64 = MARK_SIZE + 2.0;
/// Between two lines that pass.
const LINE_GAP: f64 = 9.0;
/// From the top of one row to the next, and to what stands among the lines.
const PITCH: f64 = 64.0;
const DROP: f64 = 12.0;

/// Draws the rows; gives them, and where they end.
pub(super) fn draw(
    marks: &mut Vec<Mark>,
    layers: &Layers,
    edges: &[Edge],
    width: f64,
    top: f64,
) -> (Rows, f64) {
    let rows = rows::rows(layers.things.len(), edges, Filling::OneByOne, |_, _| false);
    let rows = sequence::sorted(rows, &|_| 0);
    let room = gutter(&rows).min(width / 2.0);
    let whole = |row: &Vec<Cell>| {
        vec![Part {
            cells: 0..row.len(),
            left: 0.0,
            right: room,
        }]
    };
    let parts: Vec<Vec<Part>> = rows.rows.iter().map(whole).collect();
    let places = across::places(
        &rows,
        &parts,
        average,
        |row, at| apart(&rows.rows[row][at], &rows.rows[row][at + 1]),
        |row, at| (reach(&rows.rows[row][at]), reach(&rows.rows[row][at])),
    );
    let place =
        |row: usize, at: usize| Point::new(places[row][at], top + DROP + count(row) * PITCH);
    lines(marks, layers, &rows, &place);
    for (row, cells) in rows.rows.iter().enumerate() {
        for (at, cell) in cells.iter().enumerate() {
            if let Cell::Thing(thing) = cell {
                let place = place(row, at);
                let area = Area {
                    x: room + 6.0,
                    y: place.y - DROP,
                    width: width - room - 6.0,
                    height: PITCH,
                };
                let drawn = thing::in_a_row(&layers.things[*thing], place, area);
                marks.push(Mark::Group(drawn));
            }
        }
    }
    let bottom = top + count(rows.rows.len()) * PITCH;
    (rows, bottom)
}

fn apart(one: &Cell, other: &Cell) -> f64 {
    match (one, other) {
        (Cell::Trunk { .. }, Cell::Trunk { .. }) => LINE_GAP,
        _ => SIZE / 2.0 + LINE_GAP,
    }
}

fn reach(cell: &Cell) -> f64 {
    match cell {
        Cell::Thing(_) => SIZE / 2.0 + 1.0,
        Cell::Trunk { .. } => 2.0,
    }
}

/// The room that the fullest row takes.
fn gutter(rows: &Rows) -> f64 {
    let room = |row: &Vec<Cell>| {
        let between: f64 = row.windows(2).map(|pair| apart(&pair[0], &pair[1])).sum();
        let ends = [row.first(), row.last()].into_iter().flatten();
        between + ends.map(reach).sum::<f64>()
    };
    rows.rows.iter().map(room).fold(0.0, f64::max)
}

fn lines(
    marks: &mut Vec<Mark>,
    layers: &Layers,
    rows: &Rows,
    place: &impl Fn(usize, usize) -> Point,
) {
    for (row, joined) in rows.lines.iter().enumerate() {
        for &(from, to) in joined {
            let (upper, lower) = (rows.rows[row][from], rows.rows[row + 1][to]);
            let (start, end) = (place(row, from), place(row + 1, to));
            let (either, turned, lit) = manner(layers, upper, lower);
            let pen = pen(either, lit);
            let begin = Point::new(start.x, start.y + SIZE);
            let mut points = vec![begin, end];
            if matches!(lower, Cell::Trunk { .. }) {
                points.push(Point::new(end.x, end.y + SIZE));
            }
            marks.push(Mark::Polyline {
                points,
                closed: false,
                style: Style::line(pen),
            });
            match (upper, lower) {
                (_, Cell::Thing(_)) if !turned => marks.push(tip(end, 1.0, pen.ink)),
                (Cell::Thing(_), _) if turned => marks.push(tip(begin, -1.0, pen.ink)),
                _ => {}
            }
        }
    }
}

/// The end of a line: it points at what can be had next.
pub(super) fn tip(at: Point, direction: f64, ink: Ink) -> Mark {
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

//! Things side by side, as a desk has room for: depth downward, place across. No boxes: a mark,
//! its words at its right, the stage it comes off in at its left, and lines that run down and
//! across and through no thing. A dot joins; where lines cross there is none.

use super::across::{self, Part, middle_one};
use super::narrow::tip;
use super::routes::{self, Lane, Run};
use super::rows::{self, Cell, Edge, Filling, Rows};
use super::thing::{Node, TO_WORDS, lettering, node};
use super::{DETAIL_SIZE, Layers, MARK_SIZE, count, manner, pen, sequence};
use crate::{
    Anchor, Dash, Ink, Mark, Pen, Point, Stroke, Style, Text, Weight, ellipsis, text_width_px,
};
use std::collections::BTreeSet;

/// How far a thing reaches to the left of its mark's middle, with and without a stage's number.
const LEFT: f64 = 36.0;
const LEFT_BARE: f64 = 14.0;
/// The room for words beside a mark: as much as the longest word takes, within these.
const LEAST_WORDS: f64 = 92.0;
const MOST_WORDS: f64 = 150.0;
/// Between things and lines beside each other.
const GAP: f64 = 8.0;
/// The part of the room left over that goes to the fullest place.
const MOST_SPARE: f64 = 0.7;
/// Between two lanes in which lines run across.
const LANE: f64 = 9.0;
/// Over the first lane and under the last.
const OVER_LANES: f64 = 9.0;
const UNDER_LANES: f64 = 12.0;
/// The least room between two rows.
const BETWEEN_ROWS: f64 = 24.0;
/// Over the rows, where the places are named.
const HEADING: f64 = 40.0;
/// Between two places.
const BETWEEN_PLACES: f64 = 16.0;
const DOT: f64 = 4.0;

/// Rows, and where each place begins and ends.
struct Arranged {
    rows: Rows,
    places: Vec<(f64, f64)>,
}

/// Draws the rows; gives them, and where they end.
pub(super) fn draw(
    marks: &mut Vec<Mark>,
    layers: &Layers,
    edges: &[Edge],
    width: f64,
    top: f64,
) -> (Rows, f64) {
    let sheet = Sheet {
        layers,
        left: match layers.things.iter().any(|thing| thing.stage.is_some()) {
            true => LEFT,
            false => LEFT_BARE,
        },
        right: TO_WORDS + room_for_words(layers),
    };
    let arranged = sheet
        .in_places(edges, width)
        .unwrap_or_else(|| sheet.in_one(edges, width));
    let places = sheet.across(&arranged);
    let rows = &arranged.rows;
    let nodes: Vec<Node> = layers
        .things
        .iter()
        .map(|thing| node(thing, sheet.right))
        .collect();
    let named = arranged.places.len() > 1;
    let begin = top + if named { HEADING } else { 0.0 };
    let lanes = lanes_of(rows, &places);
    let tops = tops(rows, &nodes, &lanes, begin);
    let last = rows.rows.len().checked_sub(1);
    let bottom = last.map_or(begin, |last| tops[last] + height(&rows.rows[last], &nodes));
    if named {
        headings(marks, layers, &arranged.places, top, bottom);
    }
    lines(
        marks,
        layers,
        rows,
        &places,
        &Down {
            tops: &tops,
            nodes: &nodes,
            lanes: &lanes,
        },
    );
    for (row, cells) in rows.rows.iter().enumerate() {
        for (at, cell) in cells.iter().enumerate() {
            if let Cell::Thing(thing) = cell {
                let place = Point::new(places[row][at], tops[row]);
                let drawn = nodes[*thing].drawn(&layers.things[*thing], place, sheet.right);
                marks.push(Mark::Group(drawn));
            }
        }
    }
    (arranged.rows, bottom)
}

struct Sheet<'a> {
    layers: &'a Layers,
    left: f64,
    right: f64,
}

fn room_for_words(layers: &Layers) -> f64 {
    let words = layers.things.iter().flat_map(|thing| {
        let name = thing.label.split_whitespace();
        name.map(|word| text_width_px(word, DETAIL_SIZE, Weight::Bold))
    });
    words.fold(LEAST_WORDS, f64::max).min(MOST_WORDS)
}

impl Sheet<'_> {
    /// The place of a thing; of a line, that of what it leads to.
    fn place(&self, cell: &Cell) -> usize {
        let thing = match cell {
            Cell::Thing(thing) => *thing,
            Cell::Trunk { lower, .. } => *lower,
        };
        self.layers.things[thing].place.unwrap_or(0)
    }

    /// The room that so many things and lines beside each other take.
    fn room(&self, things: usize, lines: usize) -> f64 {
        count(things) * (self.left + self.right) + count(things + lines) * GAP
    }

    fn reach(&self, cell: &Cell) -> (f64, f64) {
        match cell {
            Cell::Thing(_) => (self.left, self.right),
            Cell::Trunk { .. } => (2.0, 2.0),
        }
    }

    /// All things in one place, as wide as the drawing.
    fn in_one(&self, edges: &[Edge], width: f64) -> Arranged {
        let rows = rows::rows(
            self.layers.things.len(),
            edges,
            Filling::Broad,
            |things, lines| self.room(things.len(), lines.len()) <= width,
        );
        Arranged {
            rows: sequence::sorted(rows, &|_| 0),
            places: vec![(0.0, width)],
        }
    }

    /// Each thing under its place; nothing where there are no places, or they need more room.
    fn in_places(&self, edges: &[Edge], width: f64) -> Option<Arranged> {
        let places = self.layers.places.len();
        let told = |place: Option<usize>| place.is_some_and(|place| place < places);
        let things = &self.layers.things;
        if places < 2 || !things.iter().all(|thing| told(thing.place)) {
            return None;
        }
        let mut counts = vec![0_usize; places];
        for place in things.iter().filter_map(|thing| thing.place) {
            counts[place] += 1;
        }
        let between = BETWEEN_PLACES * count(places - 1);
        let most = (1..=things.len().max(places))
            .take_while(|columns| self.room(*columns, 0) + between <= width)
            .last()?;
        (places..=most).rev().find_map(|columns| {
            let shares = shares(columns, &counts);
            let mut widths: Vec<f64> = shares.iter().map(|share| self.room(*share, 0)).collect();
            // What is left over goes where the most lines pass.
            let spare = width - between - self.room(columns, 0);
            let fullest = (0..places).rev().max_by_key(|&place| counts[place])?;
            widths[fullest] += spare * MOST_SPARE;
            for width in &mut widths {
                *width += spare * (1.0 - MOST_SPARE) / count(places);
            }
            let within = |things: &[usize], lines: &BTreeSet<Cell>| {
                (0..places).all(|place| self.fits(place, things, lines, widths[place]))
            };
            let rows = rows::rows(things.len(), edges, Filling::Broad, within);
            let all_fit = rows
                .rows
                .iter()
                .all(|row| (0..places).all(|place| self.taken(place, row) <= widths[place]));
            all_fit.then(|| Arranged {
                rows: sequence::sorted(rows, &|cell| self.place(cell)),
                places: side_by_side(&widths),
            })
        })
    }

    fn fits(&self, place: usize, things: &[usize], lines: &BTreeSet<Cell>, width: f64) -> bool {
        let of_it = |cell: &Cell| self.place(cell) == place;
        let things = things.iter().filter(|thing| of_it(&Cell::Thing(**thing)));
        let lines = lines.iter().filter(|line| of_it(line));
        let (things, lines) = (things.count(), lines.count());
        things == 0 || self.room(things, lines) <= width
    }

    /// The room that a row takes in a place.
    fn taken(&self, place: usize, row: &[Cell]) -> f64 {
        let of_it = row.iter().filter(|cell| self.place(cell) == place);
        let (things, lines): (Vec<&Cell>, Vec<&Cell>) =
            of_it.partition(|cell| matches!(cell, Cell::Thing(_)));
        self.room(things.len(), lines.len())
    }

    /// Where the mark of each thing and each line stands.
    fn across(&self, arranged: &Arranged) -> Vec<Vec<f64>> {
        let rows = &arranged.rows;
        let parts = |row: &Vec<Cell>| {
            let mut parts: Vec<Part> = Vec::new();
            for (place, &(left, right)) in arranged.places.iter().enumerate() {
                let one = arranged.places.len() == 1;
                let before = |cell: &&Cell| !one && self.place(cell) < place;
                let upto = |cell: &&Cell| one || self.place(cell) <= place;
                let start = row.iter().filter(before).count();
                let end = row.iter().filter(upto).count();
                let cells = start..end;
                parts.push(Part { cells, left, right });
            }
            parts
        };
        let parts: Vec<Vec<Part>> = rows.rows.iter().map(parts).collect();
        across::places(
            rows,
            &parts,
            middle_one,
            |row, at| {
                let cells = &rows.rows[row];
                let lines = matches!(cells[at..=at + 1], [Cell::Trunk { .. }, Cell::Trunk { .. }]);
                let gap = if lines { GAP - 4.0 } else { GAP - 2.0 };
                self.reach(&cells[at]).1 + gap + self.reach(&cells[at + 1]).0
            },
            |row, at| self.reach(&rows.rows[row][at]),
        )
    }
}

/// So many columns shared out by how many things stand in each place, one at least.
fn shares(columns: usize, counts: &[usize]) -> Vec<usize> {
    let mut shares = vec![1; counts.len()];
    for _ in counts.len()..columns {
        // The one with the most things a column, the first of those.
        let fullest = (0..counts.len())
            .rev()
            .max_by(|&a, &b| (counts[a] * (shares[b] + 1)).cmp(&(counts[b] * (shares[a] + 1))));
        if let Some(fullest) = fullest {
            shares[fullest] += 1;
        }
    }
    shares
}

fn side_by_side(widths: &[f64]) -> Vec<(f64, f64)> {
    let mut left = 0.0;
    widths
        .iter()
        .map(|width| {
            let place = (left, left + width);
            left += width + BETWEEN_PLACES;
            place
        })
        .collect()
}

/// The lanes under each row but the last, and how many levels they take.
fn lanes_of(rows: &Rows, places: &[Vec<f64>]) -> Vec<(Vec<Lane>, usize)> {
    rows.lines
        .iter()
        .enumerate()
        .map(|(row, lines)| {
            let run = |&(upper, lower): &(usize, usize)| Run {
                from: places[row][upper],
                to: places[row + 1][lower],
                lower,
            };
            routes::lanes(&lines.iter().map(run).collect::<Vec<_>>())
        })
        .collect()
}

fn height(row: &[Cell], nodes: &[Node]) -> f64 {
    let of = |cell: &Cell| match cell {
        Cell::Thing(thing) => nodes[*thing].height(),
        Cell::Trunk { .. } => 0.0,
    };
    row.iter().map(of).fold(MARK_SIZE, f64::max)
}

fn tops(rows: &Rows, nodes: &[Node], lanes: &[(Vec<Lane>, usize)], begin: f64) -> Vec<f64> {
    let mut top = begin;
    let mut tops = Vec::new();
    for (row, cells) in rows.rows.iter().enumerate() {
        tops.push(top);
        let levels = lanes.get(row).map_or(0, |(_, levels)| *levels);
        let lanes = OVER_LANES + UNDER_LANES + LANE * count(levels.saturating_sub(1));
        top += height(cells, nodes) + lanes.max(BETWEEN_ROWS);
    }
    tops
}

/// The name of each place over a rule, dots between two of them.
fn headings(marks: &mut Vec<Mark>, layers: &Layers, places: &[(f64, f64)], top: f64, bottom: f64) {
    let base = top + DETAIL_SIZE;
    for (name, &(left, right)) in layers.places.iter().zip(places) {
        let name = ellipsis(name, DETAIL_SIZE, Weight::Bold, right - left);
        marks.push(lettering(
            left,
            base,
            name,
            DETAIL_SIZE,
            Weight::Bold,
            Ink::Ink,
        ));
        marks.push(Mark::Line {
            from: Point::new(left, base + 8.0),
            to: Point::new(right, base + 8.0),
            pen: Pen::outline(Ink::Ink),
        });
    }
    for &(left, _) in places.iter().skip(1) {
        let x = left - BETWEEN_PLACES / 2.0;
        marks.push(Mark::Line {
            from: Point::new(x, top),
            to: Point::new(x, bottom),
            pen: Pen::fine(Ink::Rule).dashed(Dash::Dashed),
        });
    }
}

/// How far down everything is.
struct Down<'a> {
    tops: &'a [f64],
    nodes: &'a [Node],
    lanes: &'a [(Vec<Lane>, usize)],
}

impl Down<'_> {
    /// Where the lanes of a level run under a row.
    fn lane(&self, rows: &Rows, row: usize, level: usize) -> f64 {
        self.tops[row] + height(&rows.rows[row], self.nodes) + OVER_LANES + LANE * count(level)
    }
}

fn lines(
    marks: &mut Vec<Mark>,
    layers: &Layers,
    rows: &Rows,
    places: &[Vec<f64>],
    down: &Down<'_>,
) {
    // What leads nowhere wanted lies under the rest.
    let mut drawn: Vec<(bool, Vec<Mark>)> = Vec::new();
    for (row, joined) in rows.lines.iter().enumerate() {
        let (lanes, _) = &down.lanes[row];
        for &(from, to) in joined {
            let (upper, lower) = (rows.rows[row][from], rows.rows[row + 1][to]);
            let (either, turned, lit) = manner(layers, upper, lower);
            let pen = pen(either, lit);
            let (x, end) = (places[row][from], places[row + 1][to]);
            let begin = down.tops[row]
                + if matches!(upper, Cell::Thing(_)) {
                    MARK_SIZE + 3.0
                } else {
                    0.0
                };
            let next = down.tops[row + 1];
            let mut points = vec![Point::new(x, begin)];
            let lane = lanes.iter().find(|lane| lane.lower == to);
            if let Some(lane) = lane.filter(|_| (x - end).abs() > 0.5) {
                let y = down.lane(rows, row, lane.level);
                points.extend([Point::new(x, y), Point::new(end, y)]);
            }
            let stop = match lower {
                Cell::Thing(_) => next - 3.0,
                Cell::Trunk { .. } => next,
            };
            points.push(Point::new(end, stop));
            let mut one = vec![Mark::Polyline {
                points,
                closed: false,
                style: Style::line(pen),
            }];
            // A line that passes a row by goes on to its end.
            if matches!(lower, Cell::Trunk { .. }) {
                let through = height(&rows.rows[row + 1], down.nodes);
                one.push(Mark::Line {
                    from: Point::new(end, next),
                    to: Point::new(end, next + through),
                    pen,
                });
            }
            if turned && matches!(upper, Cell::Thing(_)) {
                one.push(tip(Point::new(x, begin), -1.0, pen.ink));
            }
            drawn.push((lit, one));
        }
        for lane in lanes {
            let y = down.lane(rows, row, lane.level);
            let lower = rows.rows[row + 1][lane.lower];
            let lit = joined
                .iter()
                .filter(|(_, to)| *to == lane.lower)
                .any(|&(from, _)| manner(layers, rows.rows[row][from], lower).2);
            let ink = if lit { Ink::Ink } else { Ink::Soft };
            let dots = lane.joints().into_iter().map(|x| Mark::Circle {
                centre: Point::new(x, y),
                radius: DOT,
                style: Style::fill(ink),
            });
            drawn.push((true, dots.collect()));
        }
    }
    drawn.sort_by_key(|(lit, _)| *lit);
    marks.extend(drawn.into_iter().flat_map(|(_, marks)| marks));
}

/// The number of the stage at the left of a mark.
pub(super) fn stage(number: usize, mark: Point) -> Mark {
    Mark::Text(Text {
        at: Point::new(mark.x - MARK_SIZE / 2.0 - 8.0, mark.y + 14.0),
        text: number.to_string(),
        size: DETAIL_SIZE,
        weight: Weight::Regular,
        anchor: Anchor::End,
        ink: Ink::Soft,
    })
}

/// The heavier ring of what comes next.
pub(super) const RING: Pen = Pen {
    ink: Ink::Accent,
    stroke: Stroke::Heavy,
    dash: Dash::Solid,
};

//! Which thing stands in which row, and where a line has to pass a row by.

use super::LayerThing;
use std::cmp::Reverse;
use std::collections::{BTreeMap, BTreeSet};

/// A need as it is drawn: from the thing above down to the thing below.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Edge {
    pub upper: usize,
    pub lower: usize,
    /// One of several that will do.
    pub either: bool,
    /// The thing above is the one that needs: part of a circle.
    pub turned: bool,
}

/// What takes room in a row.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord)]
pub(super) enum Cell {
    Thing(usize),
    /// Lines on their way down to one thing; those of one kind run together.
    Trunk {
        lower: usize,
        either: bool,
        turned: bool,
    },
}

/// Rows from the top down, with the lines between each and the next.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub(super) struct Rows {
    pub rows: Vec<Vec<Cell>>,
    /// For each row but the last, lines as places in the row and in the next.
    pub lines: Vec<Vec<(usize, usize)>>,
}

/// The needs to draw: none twice, none that others imply, and no circle.
pub(super) fn edges(things: &[LayerThing]) -> Vec<Edge> {
    let mut needs: Vec<BTreeMap<usize, bool>> = vec![BTreeMap::new(); things.len()];
    for (lower, thing) in things.iter().enumerate() {
        for need in &thing.needs {
            if need.thing < things.len() && need.thing != lower {
                let either = needs[lower].entry(need.thing).or_insert(need.either);
                *either &= need.either;
            }
        }
    }
    let turned = turned(&needs);
    let mut all: BTreeMap<(usize, usize), Edge> = BTreeMap::new();
    for (from, needed) in needs.iter().enumerate() {
        for (&to, &either) in needed {
            let turned = turned.contains(&(from, to));
            let (upper, lower) = if turned { (from, to) } else { (to, from) };
            let edge = Edge {
                upper,
                lower,
                either,
                turned,
            };
            all.entry((upper, lower)).or_insert(edge);
        }
    }
    let all: Vec<Edge> = all.into_values().collect();
    let implied: BTreeSet<Edge> = all
        .iter()
        .filter(|e| is_implied(e, &all))
        .copied()
        .collect();
    all.into_iter().filter(|e| !implied.contains(e)).collect()
}

/// The needs that close a circle, found by following needs from each thing in turn.
fn turned(needs: &[BTreeMap<usize, bool>]) -> BTreeSet<(usize, usize)> {
    let mut turned = BTreeSet::new();
    let mut done = vec![false; needs.len()];
    let mut on_path = vec![false; needs.len()];
    for start in 0..needs.len() {
        let mut path: Vec<(usize, Vec<usize>)> = Vec::new();
        if !done[start] {
            on_path[start] = true;
            path.push((start, needs[start].keys().rev().copied().collect()));
        }
        while let Some((at, left)) = path.last_mut() {
            let at = *at;
            match left.pop() {
                Some(next) if on_path[next] => {
                    turned.insert((at, next));
                }
                Some(next) if !done[next] => {
                    on_path[next] = true;
                    path.push((next, needs[next].keys().rev().copied().collect()));
                }
                Some(_) => {}
                None => {
                    on_path[at] = false;
                    done[at] = true;
                    path.pop();
                }
            }
        }
    }
    turned
}

/// Whether other needs, none of them one of several, lead the same way.
fn is_implied(edge: &Edge, all: &[Edge]) -> bool {
    if edge.either || edge.turned {
        return false;
    }
    let strict = |from: usize| {
        let below = all.iter().filter(move |e| e.upper == from);
        below.filter(|e| !e.either && !e.turned).map(|e| e.lower)
    };
    let mut met = BTreeSet::new();
    let mut open: Vec<usize> = strict(edge.upper).filter(|n| *n != edge.lower).collect();
    while let Some(at) = open.pop() {
        if at == edge.lower {
            return true;
        }
        if met.insert(at) {
            open.extend(strict(at));
        }
    }
    false
}

/// How rows are filled.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(super) enum Filling {
    /// What has been asked for longest comes first, so that rows are layers.
    Broad,
    /// One thing a row. What was asked for last comes first, so that what leads to one
    /// thing stands together and few lines run side by side.
    OneByOne,
}

/// Fills rows from the bottom up with as many things as `fits` allows beside the lines
/// that pass: `fits(things, lines)`. A row always takes one thing.
pub(super) fn rows(
    count: usize,
    edges: &[Edge],
    filling: Filling,
    fits: impl Fn(&[usize], &BTreeSet<Cell>) -> bool,
) -> Rows {
    let heights = heights(count, edges);
    let mut row_of: Vec<Option<usize>> = vec![None; count];
    let mut upwards: Vec<Vec<usize>> = Vec::new();
    while row_of.iter().any(Option::is_none) {
        let mut ready = ready(&row_of, edges, filling);
        match filling {
            Filling::Broad => {
                ready.sort_by_key(|&(thing, asked)| (asked, Reverse(heights[thing]), thing));
            }
            Filling::OneByOne => {
                let key = |&(thing, asked): &(usize, usize)| {
                    (asked == usize::MAX, Reverse(asked), heights[thing], thing)
                };
                ready.sort_by_key(key);
                ready.truncate(1);
            }
        }
        let mut row: Vec<usize> = Vec::new();
        for (thing, _) in ready {
            row_of[thing] = Some(upwards.len());
            row.push(thing);
            if row.len() > 1 && !fits(&row, &passing(&row_of, edges)) {
                row_of[thing] = None;
                row.pop();
            }
        }
        upwards.push(row);
    }
    upwards.reverse();
    joined(&upwards, edges)
}

/// The longest way up from each thing.
fn heights(count: usize, edges: &[Edge]) -> Vec<usize> {
    let mut heights = vec![0; count];
    // There is no circle, so that the longest way has fewer lines than there are things.
    for _ in 0..count {
        let mut same = true;
        for edge in edges {
            let least = heights[edge.upper] + 1;
            same &= heights[edge.lower] >= least;
            heights[edge.lower] = heights[edge.lower].max(least);
        }
        if same {
            break;
        }
    }
    heights
}

/// The things below which all is placed, with the row that asked for them. What
/// nothing is tied to comes last, and so stands at the top: it is free.
fn ready(row_of: &[Option<usize>], edges: &[Edge], filling: Filling) -> Vec<(usize, usize)> {
    let things = (0..row_of.len()).filter(|thing| row_of[*thing].is_none());
    things
        .filter_map(|thing| {
            let below = edges.iter().filter(|e| e.upper == thing);
            let rows: Option<Vec<usize>> = below.map(|e| row_of[e.lower]).collect();
            let tied = edges.iter().any(|e| e.lower == thing);
            let rows = rows?.into_iter();
            let asked = match filling {
                Filling::Broad => rows.min(),
                Filling::OneByOne => rows.max(),
            };
            Some((thing, asked.unwrap_or(if tied { 0 } else { usize::MAX })))
        })
        .collect()
}

/// The trunks that go on above the things placed.
fn passing(row_of: &[Option<usize>], edges: &[Edge]) -> BTreeSet<Cell> {
    let open = edges.iter().filter(|e| row_of[e.upper].is_none());
    let placed = open.filter(|e| row_of[e.lower].is_some());
    placed.map(trunk).collect()
}

fn trunk(edge: &Edge) -> Cell {
    Cell::Trunk {
        lower: edge.lower,
        either: edge.either,
        turned: edge.turned,
    }
}

fn joined(rows: &[Vec<usize>], edges: &[Edge]) -> Rows {
    let row_of: BTreeMap<usize, usize> = rows
        .iter()
        .enumerate()
        .flat_map(|(at, row)| row.iter().map(move |thing| (*thing, at)))
        .collect();
    let mut cells: Vec<Vec<Cell>> = rows
        .iter()
        .map(|row| row.iter().map(|thing| Cell::Thing(*thing)).collect())
        .collect();
    let mut lines: Vec<BTreeSet<(usize, usize)>> = vec![BTreeSet::new(); rows.len()];
    let place = |row: &mut Vec<Cell>, cell: Cell| {
        let found = row.iter().position(|known| *known == cell);
        found.unwrap_or_else(|| {
            row.push(cell);
            row.len() - 1
        })
    };
    for edge in edges {
        let (top, bottom) = (row_of[&edge.upper], row_of[&edge.lower]);
        let mut from = place(&mut cells[top], Cell::Thing(edge.upper));
        for row in top + 1..=bottom {
            let cell = match row == bottom {
                true => Cell::Thing(edge.lower),
                false => trunk(edge),
            };
            let to = place(&mut cells[row], cell);
            lines[row - 1].insert((from, to));
            from = to;
        }
    }
    lines.pop();
    Rows {
        rows: cells,
        lines: lines
            .into_iter()
            .map(|set| set.into_iter().collect())
            .collect(),
    }
}

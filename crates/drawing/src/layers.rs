//! Things in layers: what is free stands at the top, what it all leads to at the
//! bottom, and a line goes down from each thing to what cannot be had before it.
//!
//! The rows are as wide as the paper allows and no wider, so that a telephone shows the
//! same drawing with more rows. Where there is room, things stand beside each other under the
//! place where they are worked on. Lines that end at one thing run together on their way
//! past other rows. A general layout of graphs in layers (`rust-sugiyama` was looked at)
//! takes the width that it needs, which on a telephone is lettering too small to read.

mod across;
mod narrow;
mod routes;
mod rows;
mod sequence;
mod thing;
mod wide;

use crate::phrases as say;
use crate::{Dash, Drawing, Ink, Mark, Pen, Weight, wrap};
use rows::{Cell, Rows};
use thing::{lettering, spoken};

/// Things and what each needs first.
#[derive(Debug, Clone, Default, PartialEq, Eq)]
pub struct Layers {
    /// What the drawing shows.
    pub title: String,
    /// Where things are worked on, from the left to the right; none where nobody said.
    pub places: Vec<String>,
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
    /// Where it is worked on, as one of the places of the drawing.
    pub place: Option<usize>,
    /// In which stage it comes off, counted from 1.
    pub stage: Option<usize>,
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
const LEAST_SIDE_BY_SIDE: f64 = 600.0;
const DETAIL_SIZE: f64 = 16.0;
const MARK_SIZE: f64 = 16.0;
const LEGEND_HEIGHT: f64 = 24.0;

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
    let mut marks = legend(layers, &edges, width);
    let top = 2.0 + LEGEND_HEIGHT * count(marks.len());
    let (rows, bottom) = match width < LEAST_SIDE_BY_SIDE {
        true => narrow::draw(&mut marks, layers, &edges, width, top),
        false => wide::draw(&mut marks, layers, &edges, width, top),
    };
    Drawing {
        width,
        height: bottom + 2.0,
        title: layers.title.clone(),
        description: description(layers, &rows),
        marks,
    }
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

/// How a line is drawn: broken where it is one of several, thin where it leads nowhere wanted.
fn pen(either: bool, lit: bool) -> Pen {
    let pen = if lit {
        Pen::outline(Ink::Ink)
    } else {
        Pen::fine(Ink::Soft)
    };
    pen.dashed(if either { Dash::Dashed } else { Dash::Solid })
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

//! Rows grouped into stages: what is done in one go, at one place.

use crate::Place;
use crate::problem::Planned;
use std::collections::BTreeSet;
use std::ops::Range;

/// The most rows a stage has.
pub const MOST_ROWS: usize = 8;

/// A handful of rows done in one go.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Stage {
    /// Where one stands; nothing if none of its rows has a place.
    pub place: Option<Place>,
    /// Its rows, by their index.
    pub rows: Range<usize>,
}

/// Groups rows into stages, in their sequence: one place a stage, at most
/// [`MOST_ROWS`] rows; a longer run is cut where the tools change, if they do in its
/// second half.
#[must_use]
pub fn stages(rows: &[Planned]) -> Vec<Stage> {
    let mut stages = Vec::new();
    let mut start = 0;
    while start < rows.len() {
        let (end, place) = run(rows, start);
        let cut = cut(rows, start, end);
        stages.push(Stage {
            place,
            rows: start..cut,
        });
        start = cut;
    }
    stages
}

/// How far one place reaches, rows without a place belonging to what goes before.
fn run(rows: &[Planned], start: usize) -> (usize, Option<Place>) {
    let mut place: Option<&Place> = None;
    for (at, row) in rows.iter().enumerate().skip(start) {
        match (&row.place, place) {
            (Some(here), Some(there)) if here != there => return (at, place.cloned()),
            (Some(here), None) => place = Some(here),
            _ => {}
        }
    }
    (rows.len(), place.cloned())
}

fn cut(rows: &[Planned], start: usize, end: usize) -> usize {
    if end - start <= MOST_ROWS {
        return end;
    }
    let none = BTreeSet::new();
    let tools = |at: usize| rows.get(at).map_or(&none, |row| &row.tools);
    (start + MOST_ROWS / 2..start + MOST_ROWS)
        .rev()
        .map(|last| last + 1)
        .find(|next| tools(*next) != tools(*next - 1))
        .unwrap_or(start + MOST_ROWS)
}

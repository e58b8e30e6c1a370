//! The sequence in which the bolts of a joint are tightened, and where each stands.

use crate::phrases::torque as say;
use std::f64::consts::TAU;
use thiserror::Error;

/// How bolts stand.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layout {
    /// On a circle, numbered clockwise from the top.
    Circle { bolts: usize },
    /// Two rows of the same count, numbered along the upper, then along the lower.
    TwoRows { columns: usize },
    /// Around the edge of a rectangle, numbered clockwise from the upper left.
    Rectangle { columns: usize, rows: usize },
}

/// A bolt's place in the drawing: the unit is the spacing, y grows downwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// Counted from 1.
    pub position: usize,
    pub x: f64,
    pub y: f64,
}

/// A pattern: the places, and the positions in the sequence of tightening.
#[derive(Clone, Debug, PartialEq)]
pub struct Pattern {
    pub places: Vec<Place>,
    pub sequence: Vec<usize>,
}

/// Why a layout has no pattern.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum PatternTrouble {
    #[error("{}", say::no_pattern(.bolts, .most))]
    Count { bolts: usize, most: usize },
    #[error("{}", say::pass_is_not_above(.nth))]
    Passes { nth: usize },
}

const MOST: usize = 64;

/// The pattern of a layout.
///
/// Formula: on a circle across and across, each pair as far from the done ones as can be (an odd
/// count in a star); in rows and rectangles from the middle outwards, each bolt followed by
/// the one opposite. To loosen, the sequence is turned round.
///
/// Inputs: 2 to 64 bolts. Returns the places and the sequence.
///
/// # Errors
///
/// [`PatternTrouble::Count`] for fewer or more bolts.
///
/// # Source
///
/// Shop practice; a maker's own sequence overrides it.
///
/// ```
/// use fastener::pattern::{Layout, pattern};
/// assert_eq!(pattern(Layout::Circle { bolts: 5 })?.sequence, [1, 3, 5, 2, 4]);
/// assert_eq!(pattern(Layout::Circle { bolts: 8 })?.sequence, [1, 5, 3, 7, 2, 6, 4, 8]);
/// # Ok::<(), fastener::pattern::PatternTrouble>(())
/// ```
pub fn pattern(layout: Layout) -> Result<Pattern, PatternTrouble> {
    let bolts = match layout {
        Layout::Circle { bolts } => bolts,
        Layout::TwoRows { columns } => columns.saturating_mul(2),
        Layout::Rectangle { columns, rows } if columns >= 2 && rows >= 2 => columns
            .saturating_add(rows)
            .saturating_mul(2)
            .saturating_sub(4),
        Layout::Rectangle { columns, rows } => columns.saturating_mul(rows),
    };
    if !(2..=MOST).contains(&bolts) {
        return Err(PatternTrouble::Count { bolts, most: MOST });
    }
    let places = places(layout, bolts);
    let sequence = match layout {
        Layout::Circle { .. } => around(bolts),
        Layout::TwoRows { .. } | Layout::Rectangle { .. } => from_the_middle(&places),
    };
    Ok(Pattern { places, sequence })
}

/// The torque of each pass from the final one and the passes' shares of it.
///
/// # Errors
///
/// [`PatternTrouble::Passes`] where the shares do not rise to at most 1.
///
/// ```
/// assert_eq!(fastener::pattern::passes_nm(22.0, &[0.5, 1.0])?, [11.0, 22.0]);
/// # Ok::<(), fastener::pattern::PatternTrouble>(())
/// ```
pub fn passes_nm(final_nm: f64, shares: &[f64]) -> Result<Vec<f64>, PatternTrouble> {
    let mut before = 0.0;
    let mut passes = Vec::with_capacity(shares.len());
    for (index, &share) in shares.iter().enumerate() {
        if !(share > before && share <= 1.0) {
            return Err(PatternTrouble::Passes { nth: index + 1 });
        }
        before = share;
        passes.push(final_nm * share);
    }
    Ok(passes)
}

fn places(layout: Layout, bolts: usize) -> Vec<Place> {
    let place = |index: usize, (x, y): (f64, f64)| Place {
        position: index + 1,
        x,
        y,
    };
    let points: Vec<(f64, f64)> = match layout {
        Layout::Circle { bolts } => {
            let radius = real(bolts) / TAU;
            (0..bolts)
                .map(|index| TAU * real(index) / real(bolts))
                .map(|angle| (radius * libm::sin(angle), -radius * libm::cos(angle)))
                .collect()
        }
        Layout::TwoRows { columns } => (0..bolts)
            .map(|index| (real(index % columns), real(index / columns)))
            .collect(),
        Layout::Rectangle { columns, rows } => edge(columns, rows),
    };
    points
        .into_iter()
        .enumerate()
        .map(|(index, point)| place(index, point))
        .collect()
}

/// The points of the edge of a grid, clockwise from the upper left.
fn edge(columns: usize, rows: usize) -> Vec<(f64, f64)> {
    let (right, bottom) = (columns.saturating_sub(1), rows.saturating_sub(1));
    if right == 0 || bottom == 0 {
        let line = 0..columns.max(rows);
        return line
            .map(|n| {
                if bottom == 0 {
                    (real(n), 0.0)
                } else {
                    (0.0, real(n))
                }
            })
            .collect();
    }
    let top = (0..right).map(|x| (x, 0));
    let side = (0..bottom).map(|y| (right, y));
    let under = (0..right).map(|x| (right - x, bottom));
    let back = (0..bottom).map(|y| (0, bottom - y));
    top.chain(side)
        .chain(under)
        .chain(back)
        .map(|(x, y)| (real(x), real(y)))
        .collect()
}

fn around(bolts: usize) -> Vec<usize> {
    if bolts % 2 == 1 {
        // Half the way round less a half step never comes back early: it shares no factor
        // with an odd count.
        let step = (bolts - 1) / 2;
        return (0..bolts)
            .map(|nth| nth * step.max(1) % bolts + 1)
            .collect();
    }
    let apart = |a: usize, b: usize| {
        let steps = a.abs_diff(b);
        steps.min(bolts - steps)
    };
    let mut done: Vec<usize> = Vec::with_capacity(bolts);
    while done.len() < bolts {
        let free = (0..bolts / 2).filter(|position| !done.contains(position));
        let farthest = free.max_by_key(|&position| {
            let nearest = done.iter().map(|&other| apart(position, other)).min();
            (nearest, std::cmp::Reverse(position))
        });
        let Some(next) = farthest else { break };
        done.extend([next, next + bolts / 2]);
    }
    done.into_iter().map(|position| position + 1).collect()
}

/// Nearest to the middle first, each followed by the place opposite.
fn from_the_middle(places: &[Place]) -> Vec<usize> {
    let count = real(places.len());
    let middle_x = places.iter().map(|place| place.x).sum::<f64>() / count;
    let middle_y = places.iter().map(|place| place.y).sum::<f64>() / count;
    let distance = |place: &Place| {
        let (x, y) = (place.x - middle_x, place.y - middle_y);
        x * x + y * y
    };
    let mut left: Vec<&Place> = places.iter().collect();
    left.sort_by(|a, b| {
        distance(a)
            .total_cmp(&distance(b))
            .then(a.position.cmp(&b.position))
    });
    let mut sequence = Vec::with_capacity(places.len());
    while !left.is_empty() {
        let first = left.remove(0);
        sequence.push(first.position);
        let opposite = left.iter().position(|other| {
            (other.x + first.x - 2.0 * middle_x).abs() < 1e-9
                && (other.y + first.y - 2.0 * middle_y).abs() < 1e-9
        });
        if let Some(index) = opposite {
            sequence.push(left.remove(index).position);
        }
    }
    sequence
}

/// A count as a real number; counts here are at most 64.
fn real(count: usize) -> f64 {
    u32::try_from(count).map_or(f64::MAX, f64::from)
}

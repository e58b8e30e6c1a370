//! The sheet's own edges: how large it was printed.
//!
//! A printer that "fits to the page" makes the tags smaller, and everything measured by them
//! larger by as much. The paper itself stays as large as it is.

use crate::flat::{Flat, MARGIN_MM, to_cell};

/// How far an edge is looked for inside where it should be. Beyond, it is the whole margin.
const INSIDE_MM: f64 = 4.0;
/// The least change of brightness (of 256) at an edge.
const LEAST_CHANGE: f32 = 12.0;
/// The least share of places along a side where the edge is seen.
const LEAST_SHARE: f64 = 0.5;
/// How far places of one edge may lie apart, in millimetres, at half of them.
const MOST_SPREAD_MM: f64 = 0.6;
/// A scale nearer to one than this is one: paper is not flatter.
const NEAR_ONE: f64 = 0.006;

/// How large the sheet was printed, as a share, as far as its edges are seen; none if neither
/// two opposite edges are.
#[must_use]
pub fn printed(flat: &Flat) -> Option<f64> {
    let [w, h] = flat.sheet_mm;
    let across = pair(flat, w, h, &|along, off| [off, along]);
    let down = pair(flat, h, w, &|along, off| [along, off]);
    let scales: Vec<f64> = [across, down].into_iter().flatten().collect();
    if scales.is_empty() {
        return None;
    }
    let scale = scales.iter().sum::<f64>() / scales.len() as f64;
    // Two directions that tell different stories tell none.
    if scales.iter().any(|s| (s - scale).abs() > 0.008) {
        return None;
    }
    Some(if (scale - 1.0).abs() < NEAR_ONE {
        1.0
    } else {
        scale
    })
}

/// The scale from two opposite edges `size` apart, each `length` long.
fn pair(flat: &Flat, size: f64, length: f64, place: &dyn Fn(f64, f64) -> [f64; 2]) -> Option<f64> {
    let before = edge(flat, length, &|along, out| place(along, -out))?;
    let behind = edge(flat, length, &|along, out| place(along, size + out))?;
    Some(size / (size + before + behind))
}

/// How far outside (or, below zero, inside) its place an edge is seen.
fn edge(flat: &Flat, length: f64, place: &dyn Fn(f64, f64) -> [f64; 2]) -> Option<f64> {
    let step = 0.25;
    let steps = ((MARGIN_MM - 1.5 + INSIDE_MM) / step) as usize;
    let mut seen = Vec::new();
    let mut tried = 0;
    let mut along = 12.0;
    while along < length - 12.0 {
        tried += 1;
        let value = |out: f64| bright(flat, place(along, out));
        // The outermost strong change: what lies on the sheet changes further inside.
        let changes: Vec<(f64, f32)> = (0..steps)
            .map(|i| MARGIN_MM - 1.5 - i as f64 * step)
            .map(|out| (out, (value(out - 0.5) - value(out + 0.5)).abs()))
            .collect();
        let most = changes.iter().map(|c| c.1).fold(0.0, f32::max);
        if most > LEAST_CHANGE
            && let Some(at) = changes.iter().position(|c| c.1 > 0.6 * most)
        {
            let end = (at + 6).min(changes.len());
            let peak = changes[at..end]
                .iter()
                .max_by(|a, b| a.1.total_cmp(&b.1))
                .map_or(0.0, |c| c.0);
            seen.push(peak);
        }
        along += 3.0;
    }
    if (seen.len() as f64) < LEAST_SHARE * f64::from(tried) {
        return None;
    }
    let middle = median(&mut seen)?;
    let mut off: Vec<f64> = seen.iter().map(|s| (s - middle).abs()).collect();
    let spread = median(&mut off)?;
    if spread > MOST_SPREAD_MM {
        return None;
    }
    let near: Vec<f64> = seen
        .into_iter()
        .filter(|s| (s - middle).abs() < 1.0)
        .collect();
    Some(near.iter().sum::<f64>() / near.len() as f64)
}

fn median(values: &mut [f64]) -> Option<f64> {
    values.sort_by(f64::total_cmp);
    values.get(values.len() / 2).copied()
}

fn bright(flat: &Flat, [x, y]: [f64; 2]) -> f32 {
    let column = to_cell(x).clamp(0.0, flat.width as f64 - 1.001);
    let row = to_cell(y).clamp(0.0, flat.height as f64 - 1.001);
    let (left, top) = (column as usize, row as usize);
    let (fx, fy) = ((column - left as f64) as f32, (row - top as f64) as f32);
    let get = |dx: usize, dy: usize| flat.bright[(top + dy) * flat.width + left + dx];
    let upper = get(0, 0) * (1.0 - fx) + get(1, 0) * fx;
    let lower = get(0, 1) * (1.0 - fx) + get(1, 1) * fx;
    upper * (1.0 - fy) + lower * fy
}

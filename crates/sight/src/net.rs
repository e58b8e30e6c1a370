//! What each cell of the flat sheet shows: paper, head, shank, end, or another piece.
//!
//! A small network of eight layers; each looks at three by three cells, wider and wider apart.
//! Its weights were fitted by `cargo xtask tray-train` to the rendered pictures named in
//! `docs/tray.md`; they are numbers, not rules, and nothing about them was taken from photos.

use crate::flat::CHANNELS;

/// Values a cell carries between layers.
pub const INNER: usize = 16;
/// Values a cell gets: five classes, and the direction of a shank (cosine and sine of twice the
/// angle); the last is not used.
pub const OUTER: usize = 8;
/// How far apart each of the middle layers looks, in cells.
pub const REACH: [usize; 6] = [1, 2, 4, 8, 4, 1];
/// Number of weights.
pub const WEIGHTS: usize = 9 * CHANNELS * INNER
    + INNER
    + REACH.len() * (9 * INNER * INNER + INNER)
    + INNER * OUTER
    + OUTER;

/// Paper, bench, shadow, stain.
pub const PAPER: usize = 0;
/// Head of a bolt.
pub const HEAD: usize = 1;
/// Shank of a bolt.
pub const SHANK: usize = 2;
/// The end of a shank.
pub const END: usize = 3;
/// Any other piece.
pub const OTHER: usize = 4;
/// Number of classes.
pub const CLASSES: usize = 5;

/// How much a cell of each class counted when the weights were fitted: the rarer the more. What
/// comes out is divided by it again, or every piece would seem wider than it is.
pub const COUNTED: [f32; CLASSES] = [1.0, 2.0, 2.0, 3.0, 2.5];

/// What is known of a cell: shares of the classes that add up to one, and twice the direction.
#[derive(Debug, Clone, Copy, Default, PartialEq)]
pub struct Known {
    /// Shares of the classes.
    pub class: [f32; CLASSES],
    /// Cosine and sine of twice the direction, where it is a shank.
    pub twice: [f32; 2],
}

/// One layer over a whole field: sums over three by three cells `reach` apart. Outside is zero.
/// `weights` go by place, then input, then output; then one number for each output.
pub fn layer<const I: usize, const O: usize>(
    from: &[[f32; I]],
    width: usize,
    height: usize,
    reach: usize,
    weights: &[f32],
) -> Vec<[f32; O]> {
    let (table, bias) = weights.split_at(9 * I * O);
    let mut start = [0.0; O];
    start.copy_from_slice(&bias[..O]);
    let mut out = vec![start; width * height];
    let mut at = [[0.0; O]; I];
    for y in 0..height {
        for place in 0..9 {
            let row = (y + place / 3 * reach).wrapping_sub(reach);
            if row >= height {
                continue;
            }
            for (i, to) in at.iter_mut().enumerate() {
                to.copy_from_slice(&table[(place * I + i) * O..][..O]);
            }
            // Cells of this row that have a neighbour there.
            let (skip_to, skip_from) = match place % 3 {
                0 => (reach, 0),
                1 => (0, 0),
                _ => (0, reach),
            };
            let n = width.saturating_sub(skip_to + skip_from);
            let to = &mut out[y * width + skip_to..][..n];
            let from = &from[row * width + skip_from..][..n];
            for (sum, value) in to.iter_mut().zip(from) {
                let mut here = *sum;
                for i in 0..I {
                    for o in 0..O {
                        here[o] += value[i] * at[i][o];
                    }
                }
                *sum = here;
            }
        }
    }
    out
}

/// The last layer: each cell by itself.
pub fn last(from: &[[f32; INNER]], weights: &[f32]) -> Vec<[f32; OUTER]> {
    let (table, bias) = weights.split_at(INNER * OUTER);
    from.iter()
        .map(|value| {
            let mut out = [0.0; OUTER];
            out.copy_from_slice(&bias[..OUTER]);
            for i in 0..INNER {
                for o in 0..OUTER {
                    out[o] += value[i] * table[i * OUTER + o];
                }
            }
            out
        })
        .collect()
}

/// What is below zero becomes zero.
pub fn cut_off<const N: usize>(cells: &mut [[f32; N]]) {
    for cell in cells {
        for value in cell {
            *value = value.max(0.0);
        }
    }
}

/// What is below zero becomes a fifth: what the middle layers add may also take away.
pub fn flattened<const N: usize>(cells: &mut [[f32; N]]) {
    for cell in cells {
        for value in cell {
            *value = value.max(BELOW * *value);
        }
    }
}

/// The share that is left of what is below zero.
pub const BELOW: f32 = 0.2;

/// Where each layer's weights begin: the first, the middle ones, the last, and the end of all.
#[must_use]
pub fn starts() -> [usize; REACH.len() + 3] {
    let mut out = [0; REACH.len() + 3];
    out[1] = 9 * CHANNELS * INNER + INNER;
    for i in 0..REACH.len() {
        out[i + 2] = out[i + 1] + 9 * INNER * INNER + INNER;
    }
    out[REACH.len() + 2] = WEIGHTS;
    out
}

/// Looks at a whole field.
#[must_use]
pub fn look(cells: &[[f32; CHANNELS]], width: usize, height: usize, weights: &[f32]) -> Vec<Known> {
    let starts = starts();
    let part = |i: usize| &weights[starts[i]..starts[i + 1]];
    let mut inner: Vec<[f32; INNER]> = layer(cells, width, height, 1, part(0));
    cut_off(&mut inner);
    for (i, reach) in REACH.into_iter().enumerate() {
        let mut more: Vec<[f32; INNER]> = layer(&inner, width, height, reach, part(i + 1));
        flattened(&mut more);
        for (sum, more) in inner.iter_mut().zip(&more) {
            for (s, m) in sum.iter_mut().zip(more) {
                *s += m;
            }
        }
    }
    last(&inner, part(REACH.len() + 1))
        .iter()
        .map(|out| {
            let mut class = [0.0; CLASSES];
            class.copy_from_slice(&out[..CLASSES]);
            for (score, counted) in class.iter_mut().zip(COUNTED) {
                *score -= libm::logf(counted);
            }
            Known {
                class: shares(class),
                twice: [out[CLASSES], out[CLASSES + 1]],
            }
        })
        .collect()
}

/// Shares that add up to one.
#[must_use]
pub fn shares(mut class: [f32; CLASSES]) -> [f32; CLASSES] {
    let most = class.iter().copied().fold(f32::MIN, f32::max);
    let mut sum = 0.0;
    for value in &mut class {
        *value = libm::expf(*value - most);
        sum += *value;
    }
    class.map(|v| v / sum)
}

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

/// Which cells of each row are looked at: from, to (not with it).
pub type Rows = Vec<Vec<(usize, usize)>>;

/// One layer over a whole field: sums over three by three cells `reach` apart. Outside is zero.
/// `weights` go by place, then input, then output; then one number for each output.
pub fn layer<const I: usize, const O: usize>(
    from: &[[f32; I]],
    width: usize,
    height: usize,
    reach: usize,
    weights: &[f32],
) -> Vec<[f32; O]> {
    let all = vec![vec![(0, width)]; height];
    layer_at(from, &all, [width, height, reach], weights, [0.0; O])
}

/// The same at some cells only; the others get what is told.
fn layer_at<const I: usize, const O: usize>(
    from: &[[f32; I]],
    rows: &[Vec<(usize, usize)>],
    [width, height, reach]: [usize; 3],
    weights: &[f32],
    elsewhere: [f32; O],
) -> Vec<[f32; O]> {
    let (table, bias) = weights.split_at(9 * I * O);
    let mut start = [0.0; O];
    start.copy_from_slice(&bias[..O]);
    let mut out = vec![elsewhere; width * height];
    let mut at = [[0.0; O]; I];
    for (y, parts) in rows.iter().enumerate() {
        for &(left, right) in parts {
            out[y * width + left..y * width + right].fill(start);
        }
        if parts.is_empty() {
            continue;
        }
        for place in 0..9 {
            let row = (y + place / 3 * reach).wrapping_sub(reach);
            if row >= height {
                continue;
            }
            for (i, to) in at.iter_mut().enumerate() {
                to.copy_from_slice(&table[(place * I + i) * O..][..O]);
            }
            // Cells of this row that have a neighbour there.
            let (first, last, back, on) = match place % 3 {
                0 => (reach, width, reach, 0),
                1 => (0, width, 0, 0),
                _ => (0, width.saturating_sub(reach), 0, reach),
            };
            for &(left, right) in parts {
                let (left, right) = (left.max(first), right.min(last));
                if left >= right {
                    continue;
                }
                let to = &mut out[y * width + left..y * width + right];
                let from = &from[row * width + left + on - back..][..right - left];
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
    }
    out
}

/// What a layer makes of a field that is the same everywhere.
fn of_same<const I: usize, const O: usize>(value: [f32; I], weights: &[f32]) -> [f32; O] {
    let (table, bias) = weights.split_at(9 * I * O);
    let mut out = [0.0; O];
    out.copy_from_slice(&bias[..O]);
    for place in 0..9 {
        for i in 0..I {
            for o in 0..O {
                out[o] += value[i] * table[(place * I + i) * O + o];
            }
        }
    }
    out
}

/// How far a cell has to be from blank paper to be looked at.
const STANDS_OUT: f32 = 0.12;
/// Cells along a block; how many of a block have to stand out; how many blocks around such a one
/// are looked at as well: as far as the network sees.
const BLOCK: usize = 4;
const LEAST_OF_BLOCK: usize = 2;
const AROUND_BLOCKS: usize = 5;

/// The cells worth looking at: those near to where something stands out from the paper.
#[must_use]
pub fn worth(cells: &[[f32; CHANNELS]], width: usize, height: usize) -> Rows {
    let (across, down) = (width.div_ceil(BLOCK), height.div_ceil(BLOCK));
    let mut standing = vec![0_usize; across * down];
    for (i, [grey, red, blue, uneven]) in cells.iter().enumerate() {
        let most = grey.abs().max(red.abs()).max(blue.abs()).max(uneven * 0.6);
        let block = i / width / BLOCK * across + i % width / BLOCK;
        standing[block] += usize::from(most > STANDS_OUT);
    }
    let mut wanted = vec![false; across * down];
    for (i, _) in standing
        .iter()
        .enumerate()
        .filter(|s| *s.1 >= LEAST_OF_BLOCK)
    {
        let (x, y) = (i % across, i / across);
        for row in y.saturating_sub(AROUND_BLOCKS)..(y + AROUND_BLOCKS + 1).min(down) {
            let left = x.saturating_sub(AROUND_BLOCKS);
            let right = (x + AROUND_BLOCKS + 1).min(across);
            wanted[row * across + left..row * across + right].fill(true);
        }
    }
    (0..height)
        .map(|y| {
            let mut parts: Vec<(usize, usize)> = Vec::new();
            for x in (0..across).filter(|x| wanted[y / BLOCK * across + x]) {
                let (left, right) = (x * BLOCK, ((x + 1) * BLOCK).min(width));
                match parts.last_mut() {
                    Some(part) if part.1 == left => part.1 = right,
                    _ => parts.push((left, right)),
                }
            }
            parts
        })
        .collect()
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
    let rows = worth(cells, width, height);
    look_at(cells, &rows, [width, height], weights)
}

/// Looks at some cells of a field; the others are taken for blank paper.
#[must_use]
pub fn look_at(
    cells: &[[f32; CHANNELS]],
    rows: &Rows,
    [width, height]: [usize; 2],
    weights: &[f32],
) -> Vec<Known> {
    let starts = starts();
    let part = |i: usize| &weights[starts[i]..starts[i + 1]];
    // What the layers make of blank paper stands where nothing is looked at.
    let mut blank = [of_same([0.0; CHANNELS], part(0))];
    cut_off(&mut blank);
    let mut inner: Vec<[f32; INNER]> = layer_at(cells, rows, [width, height, 1], part(0), blank[0]);
    cut_off(&mut inner);
    for (i, reach) in REACH.into_iter().enumerate() {
        let mut more: Vec<[f32; INNER]> = layer_at(
            &inner,
            rows,
            [width, height, reach],
            part(i + 1),
            [0.0; INNER],
        );
        let mut more_blank = [of_same(blank[0], part(i + 1))];
        flattened(&mut more_blank);
        let next = {
            let mut next = blank[0];
            add(&mut next, &more_blank[0]);
            next
        };
        flattened(&mut more);
        let mut nowhere = 0;
        for (y, parts) in rows.iter().enumerate() {
            for &(left, right) in parts.iter().chain([&(width, width)]) {
                inner[y * width + nowhere..y * width + left].fill(next);
                for at in y * width + left..y * width + right {
                    add(&mut inner[at], &more[at]);
                }
                nowhere = right;
            }
            nowhere = 0;
        }
        blank[0] = next;
    }
    let paper = Known {
        class: [1.0, 0.0, 0.0, 0.0, 0.0],
        twice: [0.0; 2],
    };
    let mut out = vec![paper; width * height];
    for (y, parts) in rows.iter().enumerate() {
        for &(left, right) in parts {
            let here = y * width + left..y * width + right;
            let told = last(&inner[here.clone()], part(REACH.len() + 1));
            for (to, told) in out[here].iter_mut().zip(&told) {
                *to = known(told);
            }
        }
    }
    out
}

fn add(sum: &mut [f32; INNER], more: &[f32; INNER]) {
    for (s, m) in sum.iter_mut().zip(more) {
        *s += m;
    }
}

fn known(out: &[f32; OUTER]) -> Known {
    let mut class = [0.0; CLASSES];
    class.copy_from_slice(&out[..CLASSES]);
    for (score, counted) in class.iter_mut().zip(COUNTED) {
        *score -= libm::logf(counted);
    }
    Known {
        class: shares(class),
        twice: [out[CLASSES], out[CLASSES + 1]],
    }
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

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_not_looked_at_changes_nothing_where_something_lies() {
        let (width, height) = (150, 120);
        let mut cells = vec![[0.0; CHANNELS]; width * height];
        for y in 50..60 {
            for x in 60..90 {
                cells[y * width + x] = [-0.8, 0.1, -0.1, 0.4];
            }
        }
        let weights = crate::weights::weights();
        let rows = worth(&cells, width, height);
        let looked_at: usize = rows.iter().flatten().map(|part| part.1 - part.0).sum();
        assert!(looked_at * 3 < width * height, "{looked_at} cells");
        let some = look_at(&cells, &rows, [width, height], &weights);
        let all = look_at(
            &cells,
            &vec![vec![(0, width)]; height],
            [width, height],
            &weights,
        );
        for y in 48..62 {
            for x in 58..92 {
                let (some, all) = (some[y * width + x], all[y * width + x]);
                for (a, b) in some.class.iter().zip(all.class) {
                    assert!((a - b).abs() < 1e-3, "{x}, {y}: {some:?} for {all:?}");
                }
            }
        }
    }
}

//! The sheet laid flat: the photo seen straight from above, with the light evened out.

use crate::camera::Camera;
use crate::mat::{TAG_INSET_MM, TAG_MM};
use crate::photo::Photo;

/// Cells a millimetre.
pub const CELLS_PER_MM: f64 = 2.0;
/// How far beyond the sheet's edges is looked at.
pub const MARGIN_MM: f64 = 8.0;
/// What is known of a cell: brightness against paper, two differences of colour against paper,
/// and how uneven the cell is.
pub const CHANNELS: usize = 4;
/// How near to the sheet's edge, and to a tag, nothing is told.
pub const BLIND_MM: f64 = 0.8;
/// Cells along a patch in which the paper's brightness is estimated.
const PATCH: usize = 4;

/// The flat sheet, cell by cell, row by row.
#[derive(Debug, Clone)]
pub struct Flat {
    /// Cells across.
    pub width: usize,
    /// Cells down.
    pub height: usize,
    /// See [`CHANNELS`].
    pub cells: Vec<[f32; CHANNELS]>,
    /// Which cells the photo shows, on the sheet and not on a tag. The others look like paper.
    pub seen: Vec<bool>,
    /// The evened light: the brightness of blank paper there, 0 to 255, in coarse patches.
    pub paper: Vec<[f32; 3]>,
    /// Patches across and down.
    pub patches: [usize; 2],
    /// Brightness of each cell as photographed, 0 to 255.
    pub bright: Vec<f32>,
    /// The sheet's size in millimetres.
    pub sheet_mm: [f64; 2],
}

/// The column or row (not whole) of a place in millimetres.
#[must_use]
pub fn to_cell(mm: f64) -> f64 {
    (mm + MARGIN_MM) * CELLS_PER_MM - 0.5
}

/// The place in millimetres of a column or row.
#[must_use]
pub fn to_mm(cell: f64) -> f64 {
    (cell + 0.5) / CELLS_PER_MM - MARGIN_MM
}

impl Flat {
    /// Lays the sheet flat.
    #[must_use]
    pub fn new(photo: &Photo, camera: &Camera) -> Self {
        let [w_mm, h_mm] = camera.paper.size_mm();
        let width = ((w_mm + 2.0 * MARGIN_MM) * CELLS_PER_MM) as usize;
        let height = ((h_mm + 2.0 * MARGIN_MM) * CELLS_PER_MM) as usize;
        let mut rgb = vec![[0.0_f32; 3]; width * height];
        let mut uneven = vec![0.0_f32; width * height];
        let mut seen = vec![false; width * height];
        let (right, bottom) = (photo.width as f64 - 2.0, photo.height as f64 - 2.0);
        for row in 0..height {
            for column in 0..width {
                let at = row * width + column;
                let mut sum = [0.0_f32; 3];
                let (mut low, mut high) = (f32::MAX, 0.0_f32);
                let mut inside = true;
                for (dx, dy) in [(-0.25, -0.25), (0.25, -0.25), (-0.25, 0.25), (0.25, 0.25)] {
                    let x = to_mm(column as f64 + dx);
                    let y = to_mm(row as f64 + dy);
                    let [u, v] = camera.pixel([x, y, 0.0]);
                    inside &= u >= 1.0 && v >= 1.0 && u <= right && v <= bottom;
                    let value = between(photo, u, v);
                    let grey = brightness(value);
                    low = low.min(grey);
                    high = high.max(grey);
                    for (s, v) in sum.iter_mut().zip(value) {
                        *s += v * 0.25;
                    }
                }
                rgb[at] = sum;
                seen[at] = inside;
                uneven[at] = (high - low) / (high + 12.0);
            }
        }
        let patches = [width.div_ceil(PATCH), height.div_ceil(PATCH)];
        let paper = paper_light(&rgb, &uneven, &seen, width, height, [w_mm, h_mm]);
        let mut cells = against_paper(&rgb, &uneven, &paper, width, patches);
        for (at, cell) in cells.iter_mut().enumerate() {
            let x = to_mm((at % width) as f64);
            let y = to_mm((at / width) as f64);
            let [w, h] = [w_mm - BLIND_MM, h_mm - BLIND_MM];
            let inside = x > BLIND_MM && y > BLIND_MM && x < w && y < h;
            seen[at] &= inside && !on_tag([w_mm, h_mm], x, y, BLIND_MM);
            if !seen[at] {
                *cell = [0.0; CHANNELS];
            }
        }
        Self {
            width,
            height,
            cells,
            seen,
            paper,
            patches,
            bright: rgb.iter().map(|&p| brightness(p)).collect(),
            sheet_mm: [w_mm, h_mm],
        }
    }

    /// Whether a place lies on the sheet, at least `inside_mm` from its edges.
    #[must_use]
    pub fn on_sheet(&self, x: f64, y: f64, inside_mm: f64) -> bool {
        let [w, h] = self.sheet_mm;
        x >= inside_mm && y >= inside_mm && x <= w - inside_mm && y <= h - inside_mm
    }
}

/// Whether a place lies on one of the tags, or within `near_mm` of it.
#[must_use]
pub fn on_tag([w, h]: [f64; 2], x: f64, y: f64, near_mm: f64) -> bool {
    let along = |at: f64, size: f64| {
        let from_edge = at.min(size - at);
        from_edge >= TAG_INSET_MM - near_mm && from_edge <= TAG_INSET_MM + TAG_MM + near_mm
    };
    along(x, w) && along(y, h)
}

fn brightness([r, g, b]: [f32; 3]) -> f32 {
    0.3 * r + 0.59 * g + 0.11 * b
}

fn between(photo: &Photo, u: f64, v: f64) -> [f32; 3] {
    let u = u.clamp(0.0, photo.width as f64 - 1.001);
    let v = v.clamp(0.0, photo.height as f64 - 1.001);
    let (left, top) = (u as usize, v as usize);
    let (fx, fy) = ((u - left as f64) as f32, (v - top as f64) as f32);
    let i = (top * photo.width + left) * 3;
    let below = i + photo.width * 3;
    let mut out = [0.0; 3];
    for (c, value) in out.iter_mut().enumerate() {
        let get = |i: usize| f32::from(photo.rgb[i + c]);
        let upper = get(i) * (1.0 - fx) + get(i + 3) * fx;
        let lower = get(below) * (1.0 - fx) + get(below + 3) * fx;
        *value = upper * (1.0 - fy) + lower * fy;
    }
    out
}

/// A patch: its mean colour, and how sure it is that it shows paper.
#[derive(Clone, Copy, Default)]
struct Patch {
    rgb: [f32; 3],
    uneven: f32,
    usable: bool,
    weight: f32,
}

/// What blank paper would look like, patch by patch.
fn paper_light(
    rgb: &[[f32; 3]],
    uneven: &[f32],
    seen: &[bool],
    width: usize,
    height: usize,
    sheet: [f64; 2],
) -> Vec<[f32; 3]> {
    let (across, down) = (width.div_ceil(PATCH), height.div_ceil(PATCH));
    let mut patches = vec![Patch::default(); across * down];
    for (i, patch) in patches.iter_mut().enumerate() {
        let (x0, y0) = (i % across * PATCH, i / across * PATCH);
        let mut n = 0.0;
        let (mut low, mut high) = (f32::MAX, 0.0_f32);
        patch.usable = true;
        for row in y0..(y0 + PATCH).min(height) {
            for column in x0..(x0 + PATCH).min(width) {
                let at = row * width + column;
                let (x, y) = (to_mm(column as f64), to_mm(row as f64));
                let inside = x > 1.0 && y > 1.0 && x < sheet[0] - 1.0 && y < sheet[1] - 1.0;
                patch.usable &= seen[at] && inside && !on_tag(sheet, x, y, 1.5);
                for (sum, v) in patch.rgb.iter_mut().zip(rgb[at]) {
                    *sum += v;
                }
                patch.uneven += uneven[at];
                low = low.min(brightness(rgb[at]));
                high = high.max(brightness(rgb[at]));
                n += 1.0;
            }
        }
        patch.rgb = patch.rgb.map(|v| v / n);
        patch.uneven = patch.uneven / n + (high - low) / (high + 12.0);
    }
    let first = bright_reference(&patches, across, down);
    for (patch, reference) in patches.iter_mut().zip(&first) {
        let ratio = brightness(patch.rgb) / reference.max(1.0);
        let fits = patch.usable && patch.uneven < 0.22 && (0.78..1.2).contains(&ratio);
        patch.weight = f32::from(u8::from(fits));
    }
    let mut paper = smoothed(&patches, across, down);
    for tolerance in [0.14, 0.10, 0.09] {
        for (patch, paper) in patches.iter_mut().zip(&paper) {
            let off = patch
                .rgb
                .iter()
                .zip(paper)
                .map(|(a, b)| (a / b.max(1.0) - 1.0).abs())
                .fold(0.0, f32::max);
            let fits = patch.usable && patch.uneven < 0.2 && off < tolerance;
            patch.weight = f32::from(u8::from(fits));
        }
        paper = smoothed(&patches, across, down);
    }
    paper
}

/// The brightness which three quarters of the usable patches around stay below.
fn bright_reference(patches: &[Patch], across: usize, down: usize) -> Vec<f32> {
    let reach = 9;
    let step = 3;
    let mut coarse = vec![0.0; across.div_ceil(step) * down.div_ceil(step)];
    let coarse_across = across.div_ceil(step);
    let mut near = Vec::new();
    for (i, value) in coarse.iter_mut().enumerate() {
        let (x, y) = (i % coarse_across * step, i / coarse_across * step);
        near.clear();
        for row in y.saturating_sub(reach)..(y + reach + 1).min(down) {
            for patch in
                &patches[row * across..][x.saturating_sub(reach)..(x + reach + 1).min(across)]
            {
                if patch.usable {
                    near.push(brightness(patch.rgb));
                }
            }
        }
        if !near.is_empty() {
            let at = near.len() * 3 / 4;
            *value = *near.select_nth_unstable_by(at, f32::total_cmp).1;
        }
    }
    (0..across * down)
        .map(|i| coarse[i / across / step * coarse_across + i % across / step])
        .collect()
}

/// Weighted means over small neighbourhoods, and over larger ones where those hold nothing.
fn smoothed(patches: &[Patch], across: usize, down: usize) -> Vec<[f32; 3]> {
    let mut sums = vec![[0.0_f32; 4]; across * down];
    for (reach, share) in [(3, 1.0), (8, 0.04), (24, 0.001), (80, 1e-6)] {
        let mut layer: Vec<[f32; 4]> = patches
            .iter()
            .map(|p| {
                let [r, g, b] = p.rgb;
                [r * p.weight, g * p.weight, b * p.weight, p.weight]
            })
            .collect();
        for _ in 0..2 {
            layer = box_mean(&layer, across, down, reach);
        }
        for (sum, value) in sums.iter_mut().zip(&layer) {
            for (s, v) in sum.iter_mut().zip(value) {
                *s += v * share;
            }
        }
    }
    sums.iter()
        .map(|&[r, g, b, w]| {
            if w > 1e-12 {
                [r / w, g / w, b / w]
            } else {
                [128.0; 3]
            }
        })
        .collect()
}

fn box_mean(from: &[[f32; 4]], across: usize, down: usize, reach: usize) -> Vec<[f32; 4]> {
    let one_way = |from: &[[f32; 4]], lines: usize, length: usize, line: usize, step: usize| {
        let mut out = vec![[0.0_f32; 4]; from.len()];
        let by = 1.0 / (2 * reach + 1) as f32;
        for l in 0..lines {
            let at = |i: usize| l * line + i * step;
            let mut sum = [0.0_f64; 4];
            let change = |value: [f32; 4], sign: f64, sum: &mut [f64; 4]| {
                for (s, v) in sum.iter_mut().zip(value) {
                    *s += sign * f64::from(v);
                }
            };
            for i in 0..reach.min(length) {
                change(from[at(i)], 1.0, &mut sum);
            }
            for i in 0..length {
                if i + reach < length {
                    change(from[at(i + reach)], 1.0, &mut sum);
                }
                if i > reach {
                    change(from[at(i - reach - 1)], -1.0, &mut sum);
                }
                out[at(i)] = sum.map(|s| (s as f32 * by).max(0.0));
            }
        }
        out
    };
    let rows = one_way(from, down, across, across, 1);
    one_way(&rows, across, down, 1, across)
}

fn against_paper(
    rgb: &[[f32; 3]],
    uneven: &[f32],
    paper: &[[f32; 3]],
    width: usize,
    [across, down]: [usize; 2],
) -> Vec<[f32; CHANNELS]> {
    // Between the middles of patches.
    let paper_at = |column: usize, row: usize| {
        let half = (PATCH as f32 - 1.0) / 2.0;
        let place = |at: usize, n: usize| {
            let at = ((at as f32 - half) / PATCH as f32).clamp(0.0, n as f32 - 1.0);
            let low = (at as usize).min(n.saturating_sub(2));
            (low, at - low as f32)
        };
        let ((x, fx), (y, fy)) = (place(column, across), place(row, down));
        let mut out = [0.0; 3];
        for (c, value) in out.iter_mut().enumerate() {
            let get = |x: usize, y: usize| paper[y * across + x][c];
            let upper = get(x, y) * (1.0 - fx) + get(x + 1, y) * fx;
            let lower = get(x, y + 1) * (1.0 - fx) + get(x + 1, y + 1) * fx;
            *value = upper * (1.0 - fy) + lower * fy;
        }
        out
    };
    rgb.iter()
        .zip(uneven)
        .enumerate()
        .map(|(i, (&value, &uneven))| {
            let paper = paper_at(i % width, i / width);
            let log = |c: usize| libm::logf((value[c] + 6.0) / (paper[c] + 6.0));
            let (r, g, b) = (log(0), log(1), log(2));
            let grey = libm::logf((brightness(value) + 6.0) / (brightness(paper) + 6.0));
            [
                grey.clamp(-3.0, 1.0),
                (r - g).clamp(-1.0, 1.0) * 2.0,
                (b - g).clamp(-1.0, 1.0) * 2.0,
                uneven.min(1.0) * 2.0,
            ]
        })
        .collect()
}

//! The sheet's four tags in a photo: dark squares, their corners, their codes.

use crate::mat::{TAG_MODULES, is_white};
use crate::solve::{Homography, homography, mapped};

/// Modules inside a tag's border that may be read wrong. Any two of the four codes, in any of
/// their turns, differ in at least ten.
const WRONG_MODULES: usize = 4;
/// The least contrast between paper and print, in steps of 256.
const LEAST_CONTRAST: u8 = 24;

/// A picture in shades of grey.
pub struct Grey {
    pub width: usize,
    pub height: usize,
    pub data: Vec<u8>,
}

impl Grey {
    pub fn of(width: usize, height: usize, rgb: &[u8]) -> Self {
        let data = rgb
            .chunks_exact(3)
            .map(|p| {
                let sum = 77 * u32::from(p[0]) + 150 * u32::from(p[1]) + 29 * u32::from(p[2]);
                (sum >> 8) as u8
            })
            .collect();
        Self {
            width,
            height,
            data,
        }
    }

    /// Between the pixels; outside, the nearest one.
    pub fn at(&self, x: f64, y: f64) -> f64 {
        let x = x.clamp(0.0, self.width as f64 - 1.001);
        let y = y.clamp(0.0, self.height as f64 - 1.001);
        let (left, top) = (x as usize, y as usize);
        let (fx, fy) = (x - left as f64, y - top as f64);
        let i = top * self.width + left;
        let get = |i: usize| f64::from(self.data[i]);
        let upper = get(i) * (1.0 - fx) + get(i + 1) * fx;
        let lower = get(i + self.width) * (1.0 - fx) + get(i + self.width + 1) * fx;
        upper * (1.0 - fy) + lower * fy
    }
}

/// A tag as found.
#[derive(Debug, Clone, PartialEq)]
pub struct Tag {
    /// Which of the four.
    pub id: usize,
    /// Corners in pixels, clockwise from the tag's own top left.
    pub corners: [[f64; 2]; 4],
    /// Modules read wrong.
    pub wrong: usize,
    /// Over how many pixels its edges change from dark to bright, on the side where it is worst.
    pub edge_px: f64,
}

/// Finds the four tags; of two with the same code the one with fewer modules wrong counts.
pub fn find(grey: &Grey) -> [Option<Tag>; 4] {
    let mut found: [Option<Tag>; 4] = [None, None, None, None];
    for quad in dark_quads(grey) {
        let Some(tag) = refined(grey, &quad).and_then(|quad| read(grey, &quad)) else {
            continue;
        };
        let place = &mut found[tag.id];
        if place.as_ref().is_none_or(|old| tag.wrong < old.wrong) {
            *place = Some(tag);
        }
    }
    found
}

/// Looks for a tag where it must be, given the plane that the others show.
pub fn find_at(grey: &Grey, id: usize, expected: &[[f64; 2]; 4]) -> Option<Tag> {
    let quad = refined(grey, expected)?;
    read(grey, &quad).filter(|tag| tag.id == id)
}

/// Dark where a pixel is nearer to the darkest than to the brightest of its neighbourhood.
fn dark(grey: &Grey) -> Vec<bool> {
    let tile = (grey.width.max(grey.height) / 200).max(4);
    let (across, down) = (grey.width.div_ceil(tile), grey.height.div_ceil(tile));
    let mut range = vec![(255_u8, 0_u8); across * down];
    for (y, line) in grey.data.chunks_exact(grey.width).enumerate() {
        for (x, chunk) in line.chunks(tile).enumerate() {
            let at = &mut range[(y / tile) * across + x];
            for &value in chunk {
                at.0 = at.0.min(value);
                at.1 = at.1.max(value);
            }
        }
    }
    let wide: Vec<(u8, u8)> = (0..across * down)
        .map(|i| {
            let (x, y) = (i % across, i / across);
            let mut seen = (255, 0);
            for row in y.saturating_sub(2)..=(y + 2).min(down - 1) {
                for column in x.saturating_sub(2)..=(x + 2).min(across - 1) {
                    let (low, high) = range[row * across + column];
                    seen = (low.min(seen.0), high.max(seen.1));
                }
            }
            seen
        })
        .collect();
    let mut out = vec![false; grey.data.len()];
    for (i, value) in grey.data.iter().enumerate() {
        let (x, y) = (i % grey.width / tile, i / grey.width / tile);
        let (low, high) = wide[y * across + x];
        out[i] = high - low >= LEAST_CONTRAST
            && u16::from(*value) * 2 < u16::from(low) + u16::from(high);
    }
    out
}

/// Four-cornered dark patches of a size a tag can have.
fn dark_quads(grey: &Grey) -> Vec<[[f64; 2]; 4]> {
    let (w, h) = (grey.width, grey.height);
    let mut dark = dark(grey);
    let mut quads = Vec::new();
    let mut queue = Vec::new();
    let mut patch = Vec::new();
    let largest = w.max(h) / 3;
    for start in 0..dark.len() {
        if !dark[start] {
            continue;
        }
        dark[start] = false;
        queue.push(start);
        patch.clear();
        while let Some(at) = queue.pop() {
            patch.push(at);
            let (x, y) = (at % w, at / w);
            let mut visit = |next: usize| {
                if dark[next] {
                    dark[next] = false;
                    queue.push(next);
                }
            };
            if x > 0 {
                visit(at - 1);
            }
            if x + 1 < w {
                visit(at + 1);
            }
            if y > 0 {
                visit(at - w);
            }
            if y + 1 < h {
                visit(at + w);
            }
        }
        if patch.len() < 150 || patch.len() > largest * largest {
            continue;
        }
        if let Some(quad) = quad_of(&patch, w, largest) {
            quads.push(quad);
        }
    }
    quads
}

fn quad_of(patch: &[usize], width: usize, largest: usize) -> Option<[[f64; 2]; 4]> {
    let rows = patch.iter().map(|at| at / width);
    let (top, bottom) = (rows.clone().min()?, rows.max()?);
    if !(13..=largest).contains(&(bottom - top)) {
        return None;
    }
    let mut ends = vec![(usize::MAX, 0_usize); bottom - top + 1];
    for at in patch {
        let end = &mut ends[at / width - top];
        *end = (end.0.min(at % width), end.1.max(at % width));
    }
    let points: Vec<[f64; 2]> = ends
        .iter()
        .enumerate()
        .flat_map(|(i, &(left, right))| {
            let y = (top + i) as f64;
            [[left as f64, y], [right as f64, y]]
        })
        .collect();
    let hull = crate::shape::hull(&points);
    let n = hull.len() as f64;
    let middle = hull
        .iter()
        .fold([0.0, 0.0], |m, p| [m[0] + p[0] / n, m[1] + p[1] / n]);
    let away = |from: [f64; 2]| {
        move |a: &&[f64; 2], b: &&[f64; 2]| {
            let d = |p: &[f64; 2]| libm::hypot(p[0] - from[0], p[1] - from[1]);
            d(a).total_cmp(&d(b))
        }
    };
    let first = *hull.iter().max_by(away(middle))?;
    let third = *hull.iter().max_by(away(first))?;
    let side = |p: &[f64; 2]| {
        (third[0] - first[0]) * (p[1] - first[1]) - (third[1] - first[1]) * (p[0] - first[0])
    };
    let second = *hull.iter().min_by(|a, b| side(a).total_cmp(&side(b)))?;
    let fourth = *hull.iter().max_by(|a, b| side(a).total_cmp(&side(b)))?;
    // With y downwards a negative side comes first when going clockwise.
    let quad = [first, second, third, fourth];
    let area = crate::shape::area(&quad);
    let covered = crate::shape::area(&hull) / area.max(1.0);
    let lengths: Vec<f64> = (0..4)
        .map(|i| {
            let (a, b) = (quad[i], quad[(i + 1) % 4]);
            libm::hypot(a[0] - b[0], a[1] - b[1])
        })
        .collect();
    let shortest = lengths.iter().copied().fold(f64::MAX, f64::min);
    let longest = lengths.iter().copied().fold(0.0, f64::max);
    let square = (0.85..1.25).contains(&covered) && shortest > 12.0 && longest < 2.2 * shortest;
    // A frame with holes at most: a solid one has more, a line far less.
    let filled = patch.len() as f64 / area.max(1.0);
    (square && (0.3..1.1).contains(&filled)).then_some(quad)
}

/// Moves the sides to where the picture changes most, and crosses them.
fn refined(grey: &Grey, quad: &[[f64; 2]; 4]) -> Option<[[f64; 2]; 4]> {
    let mut quad = *quad;
    for _ in 0..2 {
        let mut lines = [[0.0; 3]; 4];
        for (i, line) in lines.iter_mut().enumerate() {
            *line = side_line(grey, quad[i], quad[(i + 1) % 4])?;
        }
        let mut next = quad;
        for i in 0..4 {
            let (a, b) = (lines[(i + 3) % 4], lines[i]);
            let det = a[0] * b[1] - a[1] * b[0];
            if det.abs() < 0.1 {
                return None;
            }
            next[i] = [
                (a[2] * b[1] - a[1] * b[2]) / det,
                (a[0] * b[2] - a[2] * b[0]) / det,
            ];
        }
        quad = next;
    }
    Some(quad)
}

/// The line [a, b, c], a x + b y = c, of the change from dark to bright beside a side.
fn side_line(grey: &Grey, from: [f64; 2], to: [f64; 2]) -> Option<[f64; 3]> {
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    let length = libm::hypot(dx, dy);
    if length < 8.0 {
        return None;
    }
    // Outwards, as the corners go clockwise with y downwards.
    let (nx, ny) = (dy / length, -dx / length);
    let reach = (length * 0.06).clamp(2.5, 12.0);
    let steps = (reach * 2.0) as i32;
    let mut points = Vec::new();
    for i in 0..32 {
        let along = 0.08 + 0.84 * f64::from(i) / 31.0;
        let (x, y) = (from[0] + along * dx, from[1] + along * dy);
        let rise = |step: i32| {
            let at = f64::from(step) * 0.5;
            let value = |d: f64| grey.at(x + nx * (at + d), y + ny * (at + d));
            value(1.0) - value(-1.0)
        };
        let best = (-steps..=steps).max_by(|&a, &b| rise(a).total_cmp(&rise(b)))?;
        let (before, peak, after) = (rise(best - 1), rise(best), rise(best + 1));
        if peak < 8.0 {
            continue;
        }
        let bend = before - 2.0 * peak + after;
        let shift = if bend < -1e-9 {
            (0.5 * (before - after) / bend).clamp(-0.5, 0.5)
        } else {
            0.0
        };
        let at = (f64::from(best) + shift) * 0.5;
        points.push([x + nx * at, y + ny * at]);
    }
    if points.len() < 14 {
        return None;
    }
    let mut line = fitted_line(&points)?;
    for trim in [1.5, 0.8] {
        let near: Vec<[f64; 2]> = points
            .iter()
            .copied()
            .filter(|p| (line[0] * p[0] + line[1] * p[1] - line[2]).abs() < trim)
            .collect();
        if near.len() < 10 {
            break;
        }
        line = fitted_line(&near)?;
    }
    Some(line)
}

fn fitted_line(points: &[[f64; 2]]) -> Option<[f64; 3]> {
    let n = points.len() as f64;
    let (mx, my) = points
        .iter()
        .fold((0.0, 0.0), |m, p| (m.0 + p[0] / n, m.1 + p[1] / n));
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for p in points {
        let (x, y) = (p[0] - mx, p[1] - my);
        xx += x * x;
        xy += x * y;
        yy += y * y;
    }
    let turn = 0.5 * libm::atan2(2.0 * xy, xx - yy);
    let (a, b) = (-libm::sin(turn), libm::cos(turn));
    (xx + yy > 1e-6).then_some([a, b, a * mx + b * my])
}

/// From modules of a tag (0 to 8 each way) to pixels.
fn modules_to_pixels(quad: &[[f64; 2]; 4]) -> Option<Homography> {
    let n = TAG_MODULES as f64;
    homography(&[
        ([0.0, 0.0], quad[0]),
        ([n, 0.0], quad[1]),
        ([n, n], quad[2]),
        ([0.0, n], quad[3]),
    ])
}

fn read(grey: &Grey, quad: &[[f64; 2]; 4]) -> Option<Tag> {
    let plane = modules_to_pixels(quad)?;
    let n = TAG_MODULES;
    let module = |row: f64, column: f64| {
        let mut sum = 0.0;
        for dy in [-0.2, 0.0, 0.2] {
            for dx in [-0.2, 0.0, 0.2] {
                let [x, y] = mapped(&plane, [column + dx, row + dy]);
                sum += grey.at(x, y);
            }
        }
        sum / 9.0
    };
    let (mut black, mut white) = (0.0, 0.0);
    for i in 0..n {
        let at = i as f64 + 0.5;
        let last = n as f64 - 0.5;
        black += module(0.5, at) + module(last, at) + module(at, 0.5) + module(at, last);
        let out = n as f64 + 0.8;
        white += module(-0.8, at) + module(out, at) + module(at, -0.8) + module(at, out);
    }
    let limit = (black + white) / 2.0 / (4 * n) as f64;
    if white - black < f64::from(LEAST_CONTRAST) * (4 * n) as f64 * 0.6 {
        return None;
    }
    let mut seen = [[false; TAG_MODULES]; TAG_MODULES];
    for (row, line) in seen.iter_mut().enumerate() {
        for (column, value) in line.iter_mut().enumerate() {
            *value = module(row as f64 + 0.5, column as f64 + 0.5) > limit;
        }
    }
    let mut best: Option<Tag> = None;
    for turn in 0..4 {
        for id in 0..4 {
            let mut wrong = 0;
            for row in 0..n {
                for column in 0..n {
                    // The tag's own module, seen turned clockwise by quarter turns.
                    let (r, c) = (0..turn).fold((row, column), |(r, c), _| (c, n - 1 - r));
                    wrong += usize::from(seen[r][c] != is_white(id, row, column));
                }
            }
            if wrong <= WRONG_MODULES && best.as_ref().is_none_or(|old| wrong < old.wrong) {
                let corner = |i: usize| quad[(i + turn) % 4];
                best = Some(Tag {
                    id,
                    corners: [corner(0), corner(1), corner(2), corner(3)],
                    wrong,
                    edge_px: 0.0,
                });
            }
        }
    }
    if let Some(tag) = &mut best {
        tag.edge_px = (0..4)
            .map(|i| edge_width(grey, quad[i], quad[(i + 1) % 4]))
            .fold(0.0, f64::max);
    }
    best
}

/// Over how many pixels the picture changes across a side: the whole change over the steepest.
fn edge_width(grey: &Grey, from: [f64; 2], to: [f64; 2]) -> f64 {
    let (dx, dy) = (to[0] - from[0], to[1] - from[1]);
    let length = libm::hypot(dx, dy).max(1.0);
    let (nx, ny) = (dy / length, -dx / length);
    let reach = (length * 0.1).clamp(3.0, 24.0);
    let mut widths: Vec<f64> = (1..16)
        .map(|i| {
            let along = f64::from(i) / 16.0;
            let (x, y) = (from[0] + along * dx, from[1] + along * dy);
            let value = |d: f64| grey.at(x + nx * d, y + ny * d);
            let whole = value(reach) - value(-reach);
            let steps = (reach * 2.0) as i32;
            let steepest = (-steps..=steps)
                .map(|s| f64::from(s) * 0.5)
                .map(|d| (value(d + 1.0) - value(d - 1.0)) / 2.0)
                .fold(1e-3, f64::max);
            whole / steepest
        })
        .collect();
    widths.sort_by(f64::total_cmp);
    widths[widths.len() / 2]
}

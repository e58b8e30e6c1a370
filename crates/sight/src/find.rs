//! Bolts among what the cells show: from each head along its shank to the end.

use crate::bolt::{Bolt, Head, Outline, SIZES, outline};
use crate::fit::fitted;
use crate::flat::{CELLS_PER_MM, Flat, to_cell, to_mm};
use crate::net::{END, HEAD, Known, OTHER, PAPER, SHANK};
use crate::patch::patches;
use crate::shape::hull;

/// The smallest patch of head that is looked at, in square millimetres.
const LEAST_HEAD_MM2: f64 = 7.0;
/// A cell counts as head from this share on, when heads are looked for.
const HEAD_FROM: f32 = 0.4;
/// The least that has to speak for a shank in a direction from a head, in millimetres.
const LEAST_RAY: f64 = 5.0;
/// The longest bolt that is looked for, and the shortest.
pub(crate) const LENGTHS_MM: (f64, f64) = (5.0, 135.0);
/// How short bolts are sold, as a share of their thread (an M8 from 10 mm on), from common practice.
const LEAST_OF_THREAD: f64 = 1.15;
/// What a cell says that is not seen: hardly anything, so that nothing is drawn out over it.
pub(crate) const UNSEEN: f32 = -0.05;

/// A bolt as found, with what speaks for it.
#[derive(Debug, Clone)]
pub struct Found {
    /// The bolt that fits best.
    pub bolt: Bolt,
    /// Logarithm of how much more likely than paper, summed over cells.
    pub score: f64,
    /// For each size, and each head in the order of [`Head::ALL`], the best score, and the bolt
    /// with it.
    pub by_kind: [[(f64, Bolt); Head::ALL.len()]; SIZES.len()],
    /// Shares (0 to 1) of the outline of the head, the shank and the end that look like it.
    pub looks: [f64; 3],
    /// Share (0 to 1) of the outline that looks like a nut, a washer or another piece.
    pub other: f64,
    /// Share of its outline in which something lies.
    pub covered: f64,
    /// How much lies right around it that no bolt explains, as a share of its outline.
    pub spill: f64,
    /// How much the length may be off, in millimetres (one standard deviation).
    pub length_error_mm: f64,
}

impl Found {
    /// Whether it was seen so well that a count may rest on it. A nut on its side, or a clip, can
    /// pass for a short bolt, so a short one has to show its head and its end the better.
    #[must_use]
    pub fn clear(&self) -> bool {
        let [head, shank, end] = self.looks;
        let parts = if self.bolt.length < 22.0 {
            head > 0.6 && shank > 0.65 && end > 0.45
        } else {
            head > 0.5 && shank > 0.75 && end > 0.3
        };
        parts && self.covered > 0.88 && self.other < 0.12
    }

    /// How likely it is a bolt at all, from how often what looks so was one in the pictures that
    /// the rules were fitted to: clips, nuts on their side, and two that lie along each other pass
    /// for one.
    #[must_use]
    pub fn bolt_chance(&self) -> f64 {
        let [head, _, end] = self.looks;
        let weak = head < 0.05 || end < 0.05;
        if self.spill > 0.1 {
            0.4
        } else if self.clear() {
            0.997
        } else if self.bolt.length > 30.0 {
            match (weak, self.spill < 0.03) {
                (false, _) => 0.97,
                (true, true) => 0.85,
                (true, false) => 0.6,
            }
        } else if self.spill < 0.05 {
            0.93
        } else {
            0.7
        }
    }

    /// Whether it is a clip, a nut or the like after all: short, and of another shape, or shorter
    /// than bolts of its thread are sold.
    #[must_use]
    pub fn is_no_bolt(&self) -> bool {
        let of_other_shape = self.bolt.length < 30.0 && self.spill > 0.1 && self.other > 0.07;
        let least = LEAST_OF_THREAD * SIZES[self.bolt.size].thread;
        of_other_shape || (self.bolt.length < least && !self.clear())
    }

    /// Whether head, shank and end look enough like it to call it a bolt. What does not is left
    /// for somebody to look at.
    fn holds(&self) -> bool {
        let [head, shank, end] = self.looks;
        let ends = (head > 0.25 && end > 0.12) || head > 0.65;
        let by_parts = ends && shank > 0.5 && self.bolt.length > 7.0;
        // A long one is a bolt even if one of its ends is not plain.
        let by_shank = shank > 0.75 && self.covered > 0.85 && self.bolt.length > 18.0;
        (by_parts || (by_shank && head.max(end) > 0.3)) && self.other < 0.4
    }

    /// What it looks like from where the camera is.
    #[must_use]
    pub fn outline(&self, eye: [f64; 3]) -> Outline {
        outline(eye, self.bolt.head, self.bolt.size, &self.bolt.axis())
    }
}

/// What the cells show, in the form in which outlines are summed up.
pub struct Field<'a> {
    pub known: &'a [Known],
    /// Which cells tell something; the others speak neither for nor against.
    pub seen: &'a [bool],
    pub width: usize,
    pub height: usize,
    pub eye: [f64; 3],
}

/// How much another class speaks for a head, and for a shank: where something lies, its outline
/// is surer than what it is taken for.
pub(crate) const OTHER_FOR_HEAD: f32 = 0.35;
pub(crate) const OTHER_FOR_SHANK: f32 = 0.12;

/// How much more likely a cell shows this than anything else; another piece in its place counts
/// less against it than paper, as it may hide it.
pub(crate) fn likelier(share: f32, paper: f32, other: f32) -> f32 {
    let rest = (1.0 - share - paper).max(0.0);
    libm::logf((share + other * rest + 0.05) / (paper + 0.15 * rest + 0.05))
}

/// Finds all bolts, each with its score; where two claim the same cells the better one stays.
pub fn bolts(flat: &Flat, field: &Field) -> Vec<Found> {
    let mut left: Vec<bool> = field
        .known
        .iter()
        .map(|k| k.class[HEAD] > HEAD_FROM)
        .collect();
    let mut found: Vec<Found> = Vec::new();
    // Heads that led to nothing, and are the same a round later.
    let mut in_vain: Vec<[f64; 2]> = Vec::new();
    for round in 0..3 {
        let mut more = Vec::new();
        for patch in patches(&left, field.width) {
            let area = patch.len() as f64 / (CELLS_PER_MM * CELLS_PER_MM);
            if area < LEAST_HEAD_MM2 * if round == 0 { 1.0 } else { 1.6 } {
                continue;
            }
            let n = patch.len() as f64;
            let (x, y) = patch.iter().fold((0.0, 0.0), |m, &at| {
                let (column, row) = (at % field.width, at / field.width);
                (m.0 + to_mm(column as f64) / n, m.1 + to_mm(row as f64) / n)
            });
            if !flat.on_sheet(x, y, -MARGIN_FOR_HEADS_MM) {
                continue;
            }
            let same = |p: &[f64; 2]| libm::hypot(p[0] - x, p[1] - y) < 0.3;
            if in_vain.iter().any(same) {
                continue;
            }
            match from_head(field, [x, y], round) {
                Some(bolt) => more.push(bolt),
                None => in_vain.push([x, y]),
            }
        }
        if more.is_empty() {
            break;
        }
        for bolt in &more {
            clear(field, &bolt.bolt, &mut left);
        }
        found.extend(more);
    }
    found.extend(without_a_head(field, &found));
    apart(field, found)
}

/// Long patches that no bolt explains yet: tried with the head at either end.
fn without_a_head(field: &Field, found: &[Found]) -> Vec<Found> {
    let mut left: Vec<bool> = field.known.iter().map(|k| k.class[PAPER] < 0.5).collect();
    for one in found {
        clear(field, &one.bolt, &mut left);
    }
    let mut more = Vec::new();
    for patch in patches(&left, field.width) {
        let area = patch.len() as f64 / (CELLS_PER_MM * CELLS_PER_MM);
        let bolt_like = patch
            .iter()
            .filter(|&&at| field.known[at].class[OTHER] < 0.5)
            .count();
        if area < 25.0 || bolt_like * 2 < patch.len() {
            continue;
        }
        let (middle, turn, half) = long_axis(field, &patch);
        if half < 5.0 {
            continue;
        }
        let both = [turn, turn + std::f64::consts::PI];
        let best = both
            .into_iter()
            .filter_map(|yaw| {
                let back = half - 3.0;
                let head = [
                    middle[0] - back * libm::cos(yaw),
                    middle[1] - back * libm::sin(yaw),
                ];
                fitted(field, head, yaw, half + back)
            })
            .filter(|f| f.covered > 0.8 && f.holds())
            .max_by(|a, b| a.score.total_cmp(&b.score));
        more.extend(best);
    }
    more
}

/// Middle, direction and half the length of a patch.
fn long_axis(field: &Field, patch: &[usize]) -> ([f64; 2], f64, f64) {
    let n = patch.len() as f64;
    let place = |at: usize| {
        let (column, row) = (at % field.width, at / field.width);
        [to_mm(column as f64), to_mm(row as f64)]
    };
    let mut middle = [0.0, 0.0];
    for &at in patch {
        let [x, y] = place(at);
        middle = [middle[0] + x / n, middle[1] + y / n];
    }
    let (mut xx, mut xy, mut yy) = (0.0, 0.0, 0.0);
    for &at in patch {
        let [x, y] = place(at);
        let (x, y) = (x - middle[0], y - middle[1]);
        xx += x * x / n;
        xy += x * y / n;
        yy += y * y / n;
    }
    let turn = 0.5 * libm::atan2(2.0 * xy, xx - yy);
    let long = (xx + yy) / 2.0 + libm::hypot((xx - yy) / 2.0, xy);
    // A bar's cells have a spread of a twelfth of its length squared.
    (middle, turn, libm::sqrt(3.0 * long))
}

/// How far over the sheet's edge a head's middle may appear (it stands above the sheet).
const MARGIN_FOR_HEADS_MM: f64 = 5.0;

/// Takes the cells of a bolt's head, and a little around, off what is left.
fn clear(field: &Field, bolt: &Bolt, left: &mut [bool]) {
    let shown = outline(field.eye, bolt.head, bolt.size, &bolt.axis());
    for polygon in shown.head.iter().chain([&shown.shank]) {
        for at in cells_of(polygon, field, 1.0) {
            left[at] = false;
        }
    }
}

/// The cells inside a convex polygon of millimetres that is made larger by `grow_mm` each way.
pub fn cells_of(polygon: &[[f64; 2]], field: &Field, grow_mm: f64) -> Vec<usize> {
    let points: Vec<[f64; 2]> = if grow_mm > 0.0 {
        let around: Vec<[f64; 2]> = polygon
            .iter()
            .flat_map(|&[x, y]| EIGHT.map(|[dx, dy]| [x + dx * grow_mm, y + dy * grow_mm]))
            .collect();
        hull(&around)
    } else {
        polygon.to_vec()
    };
    let points: Vec<[f64; 2]> = points.iter().map(|p| p.map(to_cell)).collect();
    crate::shape::rows_inside(&points, field.width, field.height)
        .into_iter()
        .flat_map(|(row, left, right)| (left..=right).map(move |c| row * field.width + c))
        .collect()
}

/// Eight directions, one long each.
const EIGHT: [[f64; 2]; 8] = {
    let half = std::f64::consts::FRAC_1_SQRT_2;
    [
        [1.0, 0.0],
        [half, half],
        [0.0, 1.0],
        [-half, half],
        [-1.0, 0.0],
        [-half, -half],
        [0.0, -1.0],
        [half, -half],
    ]
};

/// How far around a bolt is looked for what its outline does not explain, in millimetres.
const AROUND_MM: (f64, f64) = (0.9, 3.4);

/// Notes for each bolt how much lies right around it that belongs to none of them, as a share of
/// its outline: a clip or a nut is of another shape.
pub fn spilt(field: &Field, bolts: &mut [Found]) {
    let mut taken = vec![false; field.known.len()];
    let outlines: Vec<Vec<Vec<[f64; 2]>>> = bolts
        .iter()
        .map(|one| {
            let shown = one.outline(field.eye);
            shown.head.into_iter().chain([shown.shank]).collect()
        })
        .collect();
    for polygon in outlines.iter().flatten() {
        for at in cells_of(polygon, field, AROUND_MM.0) {
            taken[at] = true;
        }
    }
    for (one, outline) in bolts.iter_mut().zip(&outlines) {
        let cells = |grow: f64| {
            let mut cells: Vec<usize> = outline
                .iter()
                .flat_map(|polygon| cells_of(polygon, field, grow))
                .collect();
            cells.sort_unstable();
            cells.dedup();
            cells
        };
        let over = cells(AROUND_MM.1)
            .into_iter()
            .filter(|&at| field.seen[at] && !taken[at] && field.known[at].class[PAPER] < 0.5)
            .count();
        one.spill = over as f64 / cells(0.0).len().max(1) as f64;
    }
}

/// Of two bolts that cover the same cells for the most part, keeps the better one.
fn apart(field: &Field, mut found: Vec<Found>) -> Vec<Found> {
    found.sort_by(|a, b| b.score.total_cmp(&a.score));
    let mut taken = vec![false; field.known.len()];
    let mut kept = Vec::new();
    for one in found {
        let shown = outline(field.eye, one.bolt.head, one.bolt.size, &one.bolt.axis());
        let mut cells: Vec<usize> = shown
            .head
            .iter()
            .chain([&shown.shank])
            .flat_map(|p| cells_of(p, field, 0.0))
            .collect();
        cells.sort_unstable();
        cells.dedup();
        let both = cells.iter().filter(|&&at| taken[at]).count();
        if both * 2 > cells.len() {
            continue;
        }
        for at in cells {
            taken[at] = true;
        }
        kept.push(one);
    }
    kept
}

fn at(field: &Field, x: f64, y: f64) -> Option<usize> {
    let (column, row) = (libm::round(to_cell(x)), libm::round(to_cell(y)));
    let inside =
        column >= 0.0 && row >= 0.0 && column < field.width as f64 && row < field.height as f64;
    inside.then(|| row as usize * field.width + column as usize)
}

/// The share of shank in a cell, as far as it runs in this direction.
pub(crate) fn shank_share(known: &Known, twice: [f32; 2]) -> f32 {
    let agrees = known.twice[0] * twice[0] + known.twice[1] * twice[1];
    let plain = libm::hypotf(known.twice[0], known.twice[1]);
    // Up to 13 degrees it counts in full, from 27 not at all; where no direction is plain, partly.
    let counts = if plain > 0.3 {
        ((agrees / plain - 0.6) / 0.3).clamp(0.0, 1.0)
    } else {
        0.6
    };
    (known.class[SHANK] + known.class[END]) * counts
}

pub(crate) fn twice(yaw: f64) -> [f32; 2] {
    [libm::cos(2.0 * yaw) as f32, libm::sin(2.0 * yaw) as f32]
}

/// How well a shank runs from a head's middle in a direction: the sum along the best length,
/// and how far that reaches.
fn ray(field: &Field, [x, y]: [f64; 2], yaw: f64) -> (f64, f64) {
    let (dx, dy) = (libm::cos(yaw), libm::sin(yaw));
    let twice = twice(yaw);
    let step = 0.75;
    let (mut sum, mut best, mut reach) = (0.0, 0.0, 0.0);
    let mut along = 1.0;
    while along < LENGTHS_MM.1 {
        let mut here = 0.0;
        let mut heads = 0;
        for aside in [-1.25, 0.0, 1.25] {
            let Some(at) = at(
                field,
                x + along * dx - aside * dy,
                y + along * dy + aside * dx,
            ) else {
                here -= 3.0;
                continue;
            };
            let known = &field.known[at];
            if known.class[HEAD] > 0.5 && along < 16.0 {
                heads += 1;
                continue;
            }
            here += f64::from(if field.seen[at] {
                likelier(
                    shank_share(known, twice),
                    known.class[PAPER],
                    OTHER_FOR_SHANK,
                )
            } else {
                UNSEEN
            });
        }
        if heads < 2 {
            sum += here / 3.0 * step;
        }
        if sum > best {
            best = sum;
            reach = along;
        }
        if sum < best - 40.0 {
            break;
        }
        along += step;
    }
    (best, reach)
}

/// The bolt that has its head here; in later rounds only what stands well by itself.
fn from_head(field: &Field, head: [f64; 2], round: usize) -> Option<Found> {
    let turns = 90;
    let rays: Vec<(f64, f64)> = (0..turns)
        .map(|i| {
            ray(
                field,
                head,
                f64::from(i) * std::f64::consts::TAU / f64::from(turns),
            )
        })
        .collect();
    let n = rays.len();
    let mut peaks: Vec<usize> = (0..n)
        .filter(|&i| rays[i].0 > LEAST_RAY)
        .filter(|&i| rays[i].0 >= rays[(i + 1) % n].0 && rays[i].0 > rays[(i + n - 1) % n].0)
        .collect();
    peaks.sort_by(|&a, &b| rays[b].0.total_cmp(&rays[a].0));
    let best = peaks.first().map_or(0.0, |&i| rays[i].0);
    let mut likeliest: Option<Found> = None;
    for i in peaks
        .into_iter()
        .filter(|&i| rays[i].0 > 0.4 * best)
        .take(2)
    {
        let yaw = i as f64 * std::f64::consts::TAU / n as f64;
        let Some(found) = fitted(field, head, yaw, rays[i].1) else {
            continue;
        };
        if found.covered < if round == 0 { 0.75 } else { 0.85 } || !found.holds() {
            continue;
        }
        // What is plain needs no second direction.
        let plain = found.clear();
        if likeliest.as_ref().is_none_or(|old| found.score > old.score) {
            likeliest = Some(found);
        }
        if plain {
            break;
        }
    }
    likeliest
}

/// Mean share of other pieces in a bolt's outline.
pub(crate) fn other(field: &Field, bolt: &Bolt) -> f64 {
    let shown = outline(field.eye, bolt.head, bolt.size, &bolt.axis());
    let cells: Vec<usize> = shown
        .head
        .iter()
        .chain([&shown.shank])
        .flat_map(|p| cells_of(p, field, 0.0))
        .filter(|&at| field.seen[at])
        .collect();
    let sum: f64 = cells
        .iter()
        .map(|&at| f64::from(field.known[at].class[OTHER]))
        .sum();
    sum / cells.len().max(1) as f64
}

/// Share of a bolt's outline in which something else than paper is seen.
pub(crate) fn covered(field: &Field, bolt: &Bolt) -> f64 {
    let shown = outline(field.eye, bolt.head, bolt.size, &bolt.axis());
    let (mut something, mut all) = (0_u32, 0_u32);
    for polygon in shown.head.iter().chain([&shown.shank]) {
        for at in cells_of(polygon, field, 0.0) {
            if field.seen[at] {
                all += 1;
                something += u32::from(field.known[at].class[PAPER] < 0.5);
            }
        }
    }
    f64::from(something) / f64::from(all.max(1))
}

/// Mean shares of what head, shank and end should look like.
pub(crate) fn looks(field: &Field, bolt: &Bolt) -> [f64; 3] {
    let shown = outline(field.eye, bolt.head, bolt.size, &bolt.axis());
    let twice = twice(bolt.yaw);
    let mean = |polygons: &[Vec<[f64; 2]>], share: &dyn Fn(&Known) -> f32| {
        let cells: Vec<usize> = polygons
            .iter()
            .flat_map(|p| cells_of(p, field, 0.0))
            .filter(|&at| field.seen[at])
            .collect();
        let sum: f64 = cells
            .iter()
            .map(|&at| f64::from(share(&field.known[at])))
            .sum();
        sum / cells.len().max(1) as f64
    };
    let head = mean(&shown.head, &|k| k.class[HEAD]);
    let shank = mean(std::slice::from_ref(&shown.shank), &|k| {
        shank_share(k, twice) + k.class[HEAD] * 0.5
    });
    let end = mean(std::slice::from_ref(&shown.end), &|k| k.class[END]);
    [head, shank, end]
}

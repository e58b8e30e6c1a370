//! Bolts among what the cells show: from each head along its shank to the end.

use crate::bolt::{Bolt, Head, Outline, SIZES, outline};
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
const LENGTHS_MM: (f64, f64) = (5.0, 135.0);
/// How short bolts are sold, as a share of their thread (an M8 from 10 mm on), from common practice.
const LEAST_OF_THREAD: f64 = 1.15;
/// What a cell says that is not seen: hardly anything, so that nothing is drawn out over it.
const UNSEEN: f32 = -0.05;
/// How many of the twenty kinds of bolt are looked at in steps of a millimetre, and how many
/// closely.
const COARSELY: usize = 8;
const CLOSELY: usize = 4;
/// The size from which the search sets out.
const MIDDLE: usize = 2;

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
const OTHER_FOR_HEAD: f32 = 0.35;
const OTHER_FOR_SHANK: f32 = 0.12;
/// How much a head speaks for a shank: an end, and what is right under a head, look like one.
const HEAD_FOR_SHANK: f32 = 0.45;
/// How much a shank that runs the right way speaks for a head: the cylinder of a socket head looks
/// like one. More, and heads reach into the shank; less, and cylinders pass for hexagons.
const SHANK_FOR_HEAD: f32 = 0.5;

/// How much more likely a cell shows this than anything else; another piece in its place counts
/// less against it than paper, as it may hide it.
fn likelier(share: f32, paper: f32, other: f32) -> f32 {
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
fn shank_share(known: &Known, twice: [f32; 2]) -> f32 {
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

fn twice(yaw: f64) -> [f32; 2] {
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

/// Sums from the left of each row, of what speaks for head, shank and end.
struct Sums {
    left: usize,
    top: usize,
    width: usize,
    height: usize,
    head: Vec<f32>,
    shank: Vec<f32>,
    end: Vec<f32>,
}

impl Sums {
    fn new(field: &Field, from: [f64; 2], yaw: f64, length: f64, covers: Option<&[u8]>) -> Self {
        let around = 20.0;
        let to = [
            from[0] + length * libm::cos(yaw),
            from[1] + length * libm::sin(yaw),
        ];
        let bound = |a: f64, b: f64, size: usize| {
            let low = to_cell(a.min(b) - around).clamp(0.0, size as f64 - 1.0) as usize;
            let high = to_cell(a.max(b) + around).clamp(0.0, size as f64 - 1.0) as usize;
            (low, high - low + 1)
        };
        let (left, width) = bound(from[0], to[0], field.width);
        let (top, height) = bound(from[1], to[1], field.height);
        let line = width + 1;
        let mut sums = Self {
            left,
            top,
            width,
            height,
            head: vec![0.0; line * height],
            shank: vec![0.0; line * height],
            end: vec![0.0; line * height],
        };
        let twice = twice(yaw);
        for row in 0..height {
            for column in 0..width {
                let from = (top + row) * field.width + left + column;
                let known = &field.known[from];
                let seen = field.seen[from];
                let taken = covers.is_some_and(|covers| covers[from] > 0);
                let paper = known.class[PAPER];
                let shank = shank_share(known, twice);
                let of_end = known.class[END] / (known.class[SHANK] + known.class[END]).max(1e-3);
                let to = row * line + column;
                let add = |sum: &mut Vec<f32>, share: f32, other: f32| {
                    let tells = if taken {
                        TAKEN
                    } else if seen {
                        likelier(share, paper, other)
                    } else {
                        UNSEEN
                    };
                    sum[to + 1] = sum[to] + tells;
                };
                let as_head = known.class[HEAD] + SHANK_FOR_HEAD * shank;
                add(&mut sums.head, as_head, OTHER_FOR_HEAD);
                let head = HEAD_FOR_SHANK * known.class[HEAD];
                let along = shank * (1.0 - 0.8 * of_end) + head;
                add(&mut sums.shank, along, OTHER_FOR_SHANK);
                let at_end = shank * (0.25 + 0.75 * of_end) + head;
                add(&mut sums.end, at_end, OTHER_FOR_SHANK);
            }
        }
        sums
    }

    /// The sum between two places of a row, each of which may lie between cells.
    fn between(&self, sums: &[f32], row: f64, left: f64, right: f64) -> f64 {
        if right <= left {
            return 0.0;
        }
        let row = row.clamp(0.0, self.height as f64 - 1.0);
        let upper = (row as usize).min(self.height.saturating_sub(2));
        let share = (row - upper as f64) as f32;
        let lower = (upper + 1).min(self.height - 1);
        let line = self.width + 1;
        let reach = |x: f64| {
            // A cell's middle is a whole number, so its left side is half a cell before.
            let x = (x + 0.5).clamp(0.0, self.width as f64);
            let whole = (x as usize).min(self.width - 1);
            let part = (x - whole as f64) as f32;
            let of = |row: usize| {
                let a = sums[row * line + whole];
                a + (sums[row * line + whole + 1] - a) * part
            };
            if share == 0.0 {
                return of(upper);
            }
            of(upper) * (1.0 - share) + of(lower) * share
        };
        f64::from(reach(right) - reach(left))
    }
}

/// Where a convex polygon begins and ends in each fine row.
struct Spans {
    first: i64,
    spans: Vec<(f64, f64)>,
}

impl Spans {
    fn new(polygon: &[[f64; 2]], sums: &Sums, fine: f64) -> Self {
        let points: Vec<[f64; 2]> = polygon
            .iter()
            .map(|p| {
                [
                    to_cell(p[0]) - sums.left as f64,
                    (to_cell(p[1]) - sums.top as f64) * fine,
                ]
            })
            .collect();
        let low = points.iter().map(|p| p[1]).fold(f64::MAX, f64::min);
        let high = points.iter().map(|p| p[1]).fold(f64::MIN, f64::max);
        let first = libm::ceil(low).clamp(-4e3, 4e3) as i64;
        let last = libm::floor(high).clamp(-4e3, 8e3) as i64;
        let mut spans = vec![(f64::MAX, f64::MIN); usize::try_from(last - first + 1).unwrap_or(0)];
        for (i, a) in points.iter().enumerate() {
            let b = points[(i + 1) % points.len()];
            let (a, b) = if a[1] <= b[1] { (*a, b) } else { (b, *a) };
            let slope = (b[0] - a[0]) / (b[1] - a[1]).max(1e-9);
            let from = (libm::ceil(a[1]) as i64).max(first);
            for row in from..=(libm::floor(b[1]) as i64).min(last) {
                let x = a[0] + (row as f64 - a[1]) * slope;
                let span = &mut spans[(row - first) as usize];
                *span = (span.0.min(x), span.1.max(x));
            }
        }
        Self { first, spans }
    }

    fn at(&self, row: i64) -> Option<(f64, f64)> {
        let i = usize::try_from(row - self.first).ok()?;
        self.spans.get(i).copied().filter(|s| s.0 < s.1)
    }

    fn last(&self) -> i64 {
        self.first + self.spans.len() as i64 - 1
    }
}

fn common(a: Option<(f64, f64)>, b: Option<(f64, f64)>) -> Option<(f64, f64)> {
    let (a, b) = (a?, b?);
    let both = (a.0.max(b.0), a.1.min(b.1));
    (both.0 < both.1).then_some(both)
}

/// What speaks for a bolt with this outline, summed up.
/// `fine` is in how many steps each row of cells is taken.
fn score(sums: &Sums, shown: &Outline, fine: f64) -> f64 {
    let spans = |p: &Vec<[f64; 2]>| Spans::new(p, sums, fine);
    let heads: Vec<Spans> = shown.head.iter().map(spans).collect();
    let (shank, end) = (spans(&shown.shank), spans(&shown.end));
    let all = || heads.iter().chain([&shank, &end]);
    let first = all().map(|s| s.first).min().unwrap_or(0);
    let last = all().map(Spans::last).max().unwrap_or(-1);
    let mut total = 0.0;
    for row in first..=last {
        let y = row as f64 / fine;
        let sum = |of: &[f32], span: Option<(f64, f64)>| {
            span.map_or(0.0, |(left, right)| sums.between(of, y, left, right))
        };
        let mut head: [Option<(f64, f64)>; 2] = [None, None];
        for (place, spans) in head.iter_mut().zip(&heads) {
            *place = spans.at(row);
        }
        if let (Some(a), Some(b)) = (head[0], head[1])
            && a.0 <= b.1
            && b.0 <= a.1
        {
            head = [Some((a.0.min(b.0), a.1.max(b.1))), None];
        }
        let (shank, end) = (shank.at(row), end.at(row));
        let end_here = common(shank, end);
        let mut here = sum(&sums.shank, shank) - sum(&sums.shank, end_here) + sum(&sums.end, end);
        for head in head {
            here += sum(&sums.head, head);
            here -= sum(&sums.shank, common(shank, head));
            here += sum(&sums.shank, common(end_here, head));
            here -= sum(&sums.end, common(end, head));
        }
        total += here / fine;
    }
    total
}

/// A bolt by its two ends on the axis: under the head, and at the end.
#[derive(Clone, Copy)]
struct Ends {
    under_head: [f64; 2],
    end: [f64; 2],
}

impl Ends {
    fn bolt(&self, head: Head, size: usize) -> Bolt {
        let (dx, dy) = (
            self.end[0] - self.under_head[0],
            self.end[1] - self.under_head[1],
        );
        let level = libm::hypot(dx, dy).max(1.0);
        let drop = SIZES[size].head_rests_on(head) - SIZES[size].thread / 2.0;
        // As it slopes, it is longer than it looks from above.
        let length = libm::sqrt(level * level + drop * drop);
        Bolt {
            head,
            size,
            x: self.under_head[0],
            y: self.under_head[1],
            yaw: libm::atan2(dy, dx),
            length,
        }
    }

    fn moved(&self, step: [f64; 4]) -> Self {
        let (dx, dy) = (
            self.end[0] - self.under_head[0],
            self.end[1] - self.under_head[1],
        );
        let n = libm::hypot(dx, dy).max(1e-6);
        let (c, s) = (dx / n, dy / n);
        let shift = |p: [f64; 2], a: f64, b: f64| [p[0] + a * c - b * s, p[1] + a * s + b * c];
        Self {
            under_head: shift(self.under_head, step[0], step[1]),
            end: shift(self.end, step[2], step[3]),
        }
    }
}

struct Fit<'a, 'b> {
    field: &'a Field<'b>,
    sums: &'a Sums,
    head: Head,
    size: usize,
    fine: f64,
}

impl Fit<'_, '_> {
    fn score(&self, ends: &Ends) -> f64 {
        let bolt = ends.bolt(self.head, self.size);
        if !(LENGTHS_MM.0..LENGTHS_MM.1 + 10.0).contains(&bolt.length) {
            return f64::MIN;
        }
        let shown = outline(self.field.eye, self.head, self.size, &bolt.axis());
        score(self.sums, &shown, self.fine)
    }

    /// Moves both ends along and aside as long as that gains.
    fn climbed(&self, start: Ends, steps: &[f64], rounds: usize) -> (f64, Ends) {
        let mut best = (self.score(&start), start);
        for &step in steps {
            for _ in 0..rounds {
                let before = best.0;
                let moves = [
                    [1.0, 0.0, 0.0, 0.0],
                    [0.0, 1.0, 0.0, 0.0],
                    [0.0, 0.0, 1.0, 0.0],
                    [0.0, 0.0, 0.0, 1.0],
                    [1.0, 0.0, 1.0, 0.0],
                ];
                for by in moves {
                    for sign in [1.0, -1.0] {
                        let there = best.1.moved(by.map(|b| b * sign * step));
                        let score = self.score(&there);
                        if score > best.0 {
                            best = (score, there);
                            break;
                        }
                    }
                }
                if best.0 <= before {
                    break;
                }
            }
        }
        best
    }
}

/// Fits each head and size to what is seen from a head's middle in a direction.
fn fitted(field: &Field, head: [f64; 2], yaw: f64, reach: f64) -> Option<Found> {
    let sums = Sums::new(field, head, yaw, reach, None);
    if sums.width < 4 || sums.height < 4 {
        return None;
    }
    let fit = |head: Head, size: usize, fine: f64| Fit {
        field,
        sums: &sums,
        head,
        size,
        fine,
    };
    let (c, s) = (libm::cos(yaw), libm::sin(yaw));
    let half = SIZES[MIDDLE].head_height(Head::Hex) / 2.0;
    let guess = Ends {
        under_head: [head[0] + half * c, head[1] + half * s],
        end: [head[0] + reach * c, head[1] + reach * s],
    };
    let (_, guess) = fit(Head::Hex, MIDDLE, 1.0).climbed(guess, &[2.0, 1.0], 4);
    let mut tried: Vec<(f64, Ends, Head, usize)> = Vec::new();
    for (size, known) in SIZES.iter().enumerate() {
        for kind in Head::ALL {
            let fit = fit(kind, size, 1.0);
            // Where a head's underside lies is tried along the axis: it is the place that a
            // search by small steps does not leave again.
            let mut start = (fit.score(&guess), guess);
            for tenth in 0..8 {
                let along = known.head_height(kind) * (0.15 * f64::from(tenth) - 0.15);
                let ends = Ends {
                    under_head: [head[0] + along * c, head[1] + along * s],
                    end: guess.end,
                };
                let score = fit.score(&ends);
                if score > start.0 {
                    start = (score, ends);
                }
            }
            tried.push((start.0, start.1, kind, size));
        }
    }
    improve(&mut tried, COARSELY, |ends, kind, size| {
        fit(kind, size, 1.0).climbed(ends, &[1.2, 0.6], 3)
    });
    improve(&mut tried, CLOSELY, |ends, kind, size| {
        fit(kind, size, 2.0).climbed(ends, &[0.6, 0.25], 3)
    });
    let (_, ends, kind, size) = *tried.first()?;
    let (score, ends) = fit(kind, size, 2.0).climbed(ends, &[0.2, 0.08], 4);
    tried[0] = (score, ends, kind, size);
    let bolt = ends.bolt(kind, size);
    let mut by_kind = [[(f64::MIN, bolt); Head::ALL.len()]; SIZES.len()];
    for (score, ends, kind, size) in tried {
        by_kind[size][kind as usize] = (score, ends.bolt(kind, size));
    }
    let fit = fit(bolt.head, bolt.size, 2.0);
    Some(Found {
        bolt,
        score,
        by_kind,
        looks: looks(field, &bolt),
        covered: covered(field, &bolt),
        other: other(field, &bolt),
        spill: 0.0,
        length_error_mm: length_error(&fit, &ends, score),
    })
}

/// Fits each bolt again as the kind it was settled for, and so that it does not reach over the
/// others.
pub fn settle(field: &Field, bolts: &mut [Found], kinds: &[(usize, Head)]) {
    let cells: Vec<Vec<usize>> = bolts.iter().map(|one| all_cells(field, one)).collect();
    let mut covers = vec![0_u8; field.known.len()];
    for &at in cells.iter().flatten() {
        covers[at] = covers[at].saturating_add(1);
    }
    // Of two that claim the same place, the one whose end does not look like one gives way.
    let mut order: Vec<usize> = (0..bolts.len()).collect();
    let weakest = |one: &Found| one.looks[0].min(one.looks[2]);
    order.sort_by(|&a, &b| weakest(&bolts[a]).total_cmp(&weakest(&bolts[b])));
    for i in order {
        let (one, cells, (size, head)) = (&mut bolts[i], &cells[i], kinds[i]);
        let shared = cells.iter().filter(|&&at| covers[at] > 1).count();
        let over = shared as f64 > MOST_SHARED * cells.len() as f64;
        if !over && (one.bolt.size, one.bolt.head) == (size, head) {
            continue;
        }
        for &at in cells {
            covers[at] -= 1;
        }
        refit(field, one, &covers, size, head);
        for at in all_cells(field, one) {
            covers[at] = covers[at].saturating_add(1);
        }
    }
}

/// The share of a bolt's outline that may lie over others before it is fitted again.
const MOST_SHARED: f64 = 0.02;
/// What a cell says that belongs to another bolt already.
const TAKEN: f32 = -0.5;

/// The cells of a bolt's outline, each once.
fn all_cells(field: &Field, one: &Found) -> Vec<usize> {
    let shown = one.outline(field.eye);
    let mut cells: Vec<usize> = shown
        .head
        .iter()
        .chain([&shown.shank])
        .flat_map(|polygon| cells_of(polygon, field, 0.0))
        .collect();
    cells.sort_unstable();
    cells.dedup();
    cells
}

fn refit(field: &Field, found: &mut Found, covers: &[u8], size: usize, head: Head) {
    let (_, start) = found.by_kind[size][head as usize];
    let axis = start.axis();
    let [under_head, end] = [1, 2].map(|i| [axis[i][0], axis[i][1]]);
    let sums = Sums::new(field, under_head, start.yaw, start.length, Some(covers));
    if sums.width < 4 || sums.height < 4 {
        return;
    }
    let fit = Fit {
        field,
        sums: &sums,
        head,
        size,
        fine: 2.0,
    };
    let (score, ends) = fit.climbed(Ends { under_head, end }, &[2.5, 0.8, 0.3, 0.1], 5);
    if score == f64::MIN {
        return;
    }
    let bolt = ends.bolt(head, size);
    let longer = bolt.length - start.length;
    if longer.abs() > OTHER_LENGTH_MM {
        for (_, other) in found.by_kind.iter_mut().flatten() {
            other.length = (other.length + longer).max(LENGTHS_MM.0);
        }
    }
    found.bolt = bolt;
    found.by_kind[size][head as usize].1 = bolt;
    found.looks = looks(field, &bolt);
    found.covered = covered(field, &bolt);
    found.other = other(field, &bolt);
    found.length_error_mm = length_error(&fit, &ends, score);
}

/// A change of length, in millimetres, that is one for all kinds a bolt may be of.
const OTHER_LENGTH_MM: f64 = 1.5;

/// Looks closer at the likeliest kinds, and at the likeliest head of each size; the best come
/// first.
fn improve(
    tried: &mut [(f64, Ends, Head, usize)],
    likeliest: usize,
    closer: impl Fn(Ends, Head, usize) -> (f64, Ends),
) {
    let best_first =
        |a: &(f64, Ends, Head, usize), b: &(f64, Ends, Head, usize)| b.0.total_cmp(&a.0);
    tried.sort_by(best_first);
    let mut looked_at = [false; SIZES.len()];
    for (i, one) in tried.iter_mut().enumerate() {
        if i < likeliest || !looked_at[one.3] {
            looked_at[one.3] = true;
            (one.0, one.1) = closer(one.1, one.2, one.3);
        }
    }
    tried.sort_by(best_first);
}

/// How far the end, and the head, can be moved before it costs something.
fn length_error(fit: &Fit, ends: &Ends, score: f64) -> f64 {
    let softness = |by: [f64; 4]| {
        [1.0, -1.0]
            .into_iter()
            .map(|sign| {
                let loss = score - fit.score(&ends.moved(by.map(|b| b * sign)));
                // A loss of two speaks as loudly as one standard deviation here, as cells
                // beside each other err alike.
                libm::sqrt(4.0 / loss.max(0.5))
            })
            .fold(0.0, f64::max)
    };
    let at_end = softness([0.0, 0.0, 1.0, 0.0]);
    let at_head = softness([1.0, 0.0, 0.0, 0.0]);
    libm::sqrt(at_end * at_end + at_head * at_head)
}

/// Mean share of other pieces in a bolt's outline.
fn other(field: &Field, bolt: &Bolt) -> f64 {
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
fn covered(field: &Field, bolt: &Bolt) -> f64 {
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
fn looks(field: &Field, bolt: &Bolt) -> [f64; 3] {
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

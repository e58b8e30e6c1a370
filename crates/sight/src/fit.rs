//! A bolt's outline, moved until as many cells as possible agree with it.

use crate::bolt::{Bolt, Head, Outline, SIZES, outline};
use crate::find::{
    Field, Found, LENGTHS_MM, OTHER_FOR_HEAD, OTHER_FOR_SHANK, UNSEEN, cells_of, covered, likelier,
    looks, other, shank_share, twice,
};
use crate::flat::to_cell;
use crate::net::{END, HEAD, PAPER, SHANK};

/// The size from which the search sets out.
const MIDDLE: usize = 2;
/// How many of the twenty kinds of bolt are looked at in steps of a millimetre, and how many
/// closely.
const COARSELY: usize = 8;
const CLOSELY: usize = 4;

/// How much a head speaks for a shank: an end, and what is right under a head, look like one.
const HEAD_FOR_SHANK: f32 = 0.45;
/// How much a shank that runs the right way speaks for a head: the cylinder of a socket head looks
/// like one. More, and heads reach into the shank; less, and cylinders pass for hexagons.
const SHANK_FOR_HEAD: f32 = 0.5;

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
pub fn fitted(field: &Field, head: [f64; 2], yaw: f64, reach: f64) -> Option<Found> {
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

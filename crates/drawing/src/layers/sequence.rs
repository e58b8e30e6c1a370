//! The sequence of the cells in each row, so that few lines cross.

use super::rows::{Cell, Rows};

/// How often the rows are gone through from another beginning: the more lines there are,
/// the less often, so that a large drawing does not take long.
fn beginnings(rows: &Rows) -> usize {
    let lines: usize = rows.lines.iter().map(Vec::len).sum();
    (1200 / lines.max(1)).clamp(3, 24)
}

/// How often they are gone through down and up from one beginning.
const ROUNDS: usize = 12;
/// Rows up to this length are tried in every sequence.
const TRY_ALL: usize = 6;

/// How many lines cross between two rows.
pub(super) fn crossings(lines: &[(usize, usize)]) -> usize {
    let pairs = lines
        .iter()
        .enumerate()
        .flat_map(|(nth, one)| lines[nth + 1..].iter().map(move |other| (one, other)));
    pairs
        .filter(|((a, b), (c, d))| (a < c && b > d) || (a > c && b < d))
        .count()
}

/// How many lines cross in all.
pub(super) fn all_crossings(rows: &Rows) -> usize {
    rows.lines.iter().map(|lines| crossings(lines)).sum()
}

/// Which part of a row a cell keeps to, counted from the left.
pub(super) type Part<'a> = &'a dyn Fn(&Cell) -> usize;

/// Sorts the cells of each row, each within its part of the row; the same rows always give the
/// same answer.
pub(super) fn sorted(mut rows: Rows, part: Part<'_>) -> Rows {
    for row in 0..rows.rows.len() {
        let mut taken: Vec<usize> = (0..rows.rows[row].len()).collect();
        taken.sort_by_key(|&at| (part(&rows.rows[row][at]), at));
        rearrange(&mut rows, row, &taken);
    }
    let mut best = rows.clone();
    let mut fewest = all_crossings(&best);
    for beginning in 0..beginnings(&rows) {
        let mut tried = shuffled(rows.clone(), beginning, part);
        for round in 0..ROUNDS {
            let before = all_crossings(&tried);
            sweep(&mut tried, round % 2 == 0, part);
            polish(&mut tried, part);
            let now = all_crossings(&tried);
            if now < fewest {
                (best, fewest) = (tried.clone(), now);
            }
            if fewest == 0 {
                return best;
            }
            if now == before && round > 1 {
                break;
            }
        }
    }
    best
}

/// Another sequence of each row, drawn by a generator that never changes; the first
/// beginning leaves them as they are.
fn shuffled(mut rows: Rows, beginning: usize, part: Part<'_>) -> Rows {
    if beginning == 0 {
        return rows;
    }
    let mut state = u64::try_from(beginning).unwrap_or(u64::MAX);
    for row in 0..rows.rows.len() {
        let mut keyed: Vec<(usize, u64, usize)> = Vec::new();
        for at in 0..rows.rows[row].len() {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            keyed.push((part(&rows.rows[row][at]), state >> 33, at));
        }
        keyed.sort_unstable();
        let taken: Vec<usize> = keyed.into_iter().map(|(.., at)| at).collect();
        rearrange(&mut rows, row, &taken);
    }
    rows
}

/// Puts the cells of a row into the sequence `taken` names them in.
fn rearrange(rows: &mut Rows, row: usize, taken: &[usize]) {
    let cells = taken.iter().map(|&at| rows.rows[row][at]).collect();
    rows.rows[row] = cells;
    let mut now_at = vec![0; taken.len()];
    for (to, &from) in taken.iter().enumerate() {
        now_at[from] = to;
    }
    if let Some(lines) = rows.lines.get_mut(row) {
        lines
            .iter_mut()
            .for_each(|(upper, _)| *upper = now_at[*upper]);
    }
    if let Some(above) = row.checked_sub(1) {
        let lines = &mut rows.lines[above];
        lines
            .iter_mut()
            .for_each(|(_, lower)| *lower = now_at[*lower]);
    }
}

/// Sorts each row by where its neighbours in the row before stand on average.
fn sweep(rows: &mut Rows, down: bool, part: Part<'_>) {
    let count = rows.rows.len();
    for step in 1..count {
        let row = if down { step } else { count - 1 - step };
        let length = rows.rows[row].len();
        let mut sums = vec![(0_usize, 0_usize); length];
        let lines = &rows.lines[if down { row - 1 } else { row }];
        for &(upper, lower) in lines {
            let (here, there) = if down { (lower, upper) } else { (upper, lower) };
            sums[here].0 += there;
            sums[here].1 += 1;
        }
        // Averages in whole numbers, so that no rounding decides; what has no neighbour
        // stays about where it is.
        let key = |at: usize| match sums[at] {
            (_, 0) => at * 1000,
            (sum, many) => sum * 1000 / many,
        };
        let mut taken: Vec<usize> = (0..length).collect();
        taken.sort_by_key(|&at| (part(&rows.rows[row][at]), key(at), at));
        rearrange(rows, row, &taken);
    }
}

/// Betters each row by itself until none can be.
fn polish(rows: &mut Rows, part: Part<'_>) {
    let mut better = true;
    let mut rounds = 0;
    while better && rounds < ROUNDS {
        better = false;
        rounds += 1;
        for row in 0..rows.rows.len() {
            better |= match rows.rows[row].len() {
                0 | 1 => false,
                length if length <= TRY_ALL => best_of_all(rows, row, part),
                _ => swap_neighbours(rows, row, part),
            };
        }
    }
}

/// How many lines cross above and below a row, were its cells in this sequence.
fn around(rows: &Rows, row: usize, taken: &[usize]) -> usize {
    let mut now_at = vec![0; taken.len()];
    for (to, &from) in taken.iter().enumerate() {
        now_at[from] = to;
    }
    let none = Vec::new();
    let below = rows.lines.get(row).unwrap_or(&none).iter();
    let below: Vec<_> = below.map(|&(here, there)| (now_at[here], there)).collect();
    let above = row
        .checked_sub(1)
        .map_or(&none, |row| &rows.lines[row])
        .iter();
    let above: Vec<_> = above.map(|&(there, here)| (there, now_at[here])).collect();
    crossings(&above) + crossings(&below)
}

fn best_of_all(rows: &mut Rows, row: usize, part: Part<'_>) -> bool {
    let mut taken: Vec<usize> = (0..rows.rows[row].len()).collect();
    let mut best = (around(rows, row, &taken), None);
    while best.0 > 0 && next_sequence(&mut taken) {
        let parts = taken.iter().map(|&at| part(&rows.rows[row][at]));
        if !parts.is_sorted() {
            continue;
        }
        let now = around(rows, row, &taken);
        if now < best.0 {
            best = (now, Some(taken.clone()));
        }
    }
    best.1.is_some_and(|taken| {
        rearrange(rows, row, &taken);
        true
    })
}

/// The next sequence in the sequence of a dictionary; false after the last.
fn next_sequence(taken: &mut [usize]) -> bool {
    let Some(at) = (1..taken.len()).rev().find(|&at| taken[at - 1] < taken[at]) else {
        return false;
    };
    let pivot = at - 1;
    if let Some(next) = (at..taken.len())
        .rev()
        .find(|&next| taken[next] > taken[pivot])
    {
        taken.swap(pivot, next);
    }
    taken[at..].reverse();
    true
}

fn swap_neighbours(rows: &mut Rows, row: usize, part: Part<'_>) -> bool {
    let mut taken: Vec<usize> = (0..rows.rows[row].len()).collect();
    let before = around(rows, row, &taken);
    let mut fewest = before;
    for at in 1..taken.len() {
        let part = |at: usize| part(&rows.rows[row][taken[at]]);
        if part(at - 1) != part(at) {
            continue;
        }
        taken.swap(at - 1, at);
        let now = around(rows, row, &taken);
        if now < fewest {
            fewest = now;
        } else {
            taken.swap(at - 1, at);
        }
    }
    if fewest < before {
        rearrange(rows, row, &taken);
    }
    fewest < before
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Three rows of up to four cells with lines between them, from a seed.
    fn drawn_from(seed: u64) -> Rows {
        let mut state = seed.wrapping_mul(0x9e37_79b9_7f4a_7c15) | 1;
        let mut next = |below: u64| {
            state = state
                .wrapping_mul(6_364_136_223_846_793_005)
                .wrapping_add(1_442_695_040_888_963_407);
            usize::try_from((state >> 33) % below).unwrap()
        };
        let lengths = [2 + next(3), 2 + next(3), 2 + next(3)];
        let rows = lengths.map(|length| (0..length).map(Cell::Thing).collect());
        let lines = [0, 1].map(|row| {
            let mut lines: Vec<_> = (0..lengths[row])
                .flat_map(|a| (0..lengths[row + 1]).map(move |b| (a, b)))
                .collect();
            lines.retain(|_| next(5) < 2);
            lines
        });
        Rows {
            rows: rows.into(),
            lines: lines.into(),
        }
    }

    /// Counts by drawing the lines: two cross if each end lies on another side.
    fn counted_by_drawing(rows: &Rows) -> usize {
        let mut count = 0;
        for lines in &rows.lines {
            for (nth, one) in lines.iter().enumerate() {
                for other in &lines[nth + 1..] {
                    let side = |a: usize, b: usize| {
                        (i64::try_from(a).unwrap()) - i64::try_from(b).unwrap()
                    };
                    if side(one.0, other.0) * side(one.1, other.1) < 0 {
                        count += 1;
                    }
                }
            }
        }
        count
    }

    /// The fewest crossings there can be, by every sequence of every row.
    fn fewest(rows: &Rows, row: usize) -> usize {
        if row == rows.rows.len() {
            return counted_by_drawing(rows);
        }
        let mut taken: Vec<usize> = (0..rows.rows[row].len()).collect();
        let mut best = usize::MAX;
        loop {
            let mut tried = rows.clone();
            rearrange(&mut tried, row, &taken);
            best = best.min(fewest(&tried, row + 1));
            if !next_sequence(&mut taken) {
                return best;
            }
        }
    }

    #[test]
    fn small_drawings_cross_as_little_as_any_sequence_can() {
        for seed in 0..150 {
            let rows = drawn_from(seed);
            let sorted = sorted(rows.clone(), &|_| 0);
            assert_eq!(
                counted_by_drawing(&sorted),
                all_crossings(&sorted),
                "seed {seed}"
            );
            assert_eq!(
                all_crossings(&sorted),
                fewest(&rows, 0),
                "seed {seed}: {rows:?}"
            );
        }
    }

    #[test]
    fn each_cell_keeps_to_its_part_of_the_row() {
        let part = |cell: &Cell| match cell {
            Cell::Thing(thing) => 2 - thing % 3,
            Cell::Trunk { .. } => 0,
        };
        for seed in 0..50 {
            let sorted = sorted(drawn_from(seed), &part);
            for row in &sorted.rows {
                assert!(row.iter().map(part).is_sorted(), "seed {seed}: {row:?}");
            }
        }
    }

    #[test]
    fn sorting_loses_no_line() {
        for seed in 0..50 {
            let rows = drawn_from(seed);
            let ends = |rows: &Rows| {
                let mut ends: Vec<_> = rows
                    .lines
                    .iter()
                    .enumerate()
                    .flat_map(|(row, lines)| {
                        lines
                            .iter()
                            .map(move |&(a, b)| (row, rows.rows[row][a], rows.rows[row + 1][b]))
                    })
                    .collect();
                ends.sort_unstable();
                ends
            };
            assert_eq!(
                ends(&rows),
                ends(&sorted(rows.clone(), &|_| 0)),
                "seed {seed}"
            );
        }
    }
}

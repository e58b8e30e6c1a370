//! Where in its row each cell stands: near what it is tied to, apart from its neighbours.

use super::rows::Rows;
use std::ops::Range;

/// How often rows are drawn towards their neighbours, down and up.
const ROUNDS: usize = 8;

/// Cells of a row that keep to a part of the drawing's width.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Part {
    pub cells: Range<usize>,
    pub left: f64,
    pub right: f64,
}

/// Where a cell would stand best, of the places of those it is tied to; they come sorted.
pub(super) type Wanted = fn(&[f64]) -> f64;

/// The average, so that slanted lines are as steep as can be.
pub(super) fn average(places: &[f64]) -> f64 {
    let many = places.iter().map(|_| 1.0).sum::<f64>();
    places.iter().sum::<f64>() / many
}

/// The one in the middle, so that at least one line runs straight down.
pub(super) fn middle_one(places: &[f64]) -> f64 {
    places[(places.len() - 1) / 2]
}

/// Where each cell stands, row by row. `parts` are the parts of each row; `apart(row, at)` is
/// the least distance between the cells `at` and `at + 1` of a row; `reach(row, at)` is how far
/// a cell reaches to its left and to its right. Where a part is too full, distances shrink alike.
pub(super) fn places(
    rows: &Rows,
    parts: &[Vec<Part>],
    wanted: Wanted,
    apart: impl Fn(usize, usize) -> f64,
    reach: impl Fn(usize, usize) -> (f64, f64),
) -> Vec<Vec<f64>> {
    let frames: Vec<Vec<Frame>> = parts
        .iter()
        .enumerate()
        .map(|(row, parts)| {
            let frame = |part: &Part| Frame::of(part, |at| apart(row, at), |at| reach(row, at));
            parts.iter().map(frame).collect()
        })
        .collect();
    let middle = |part: &Part| f64::midpoint(part.left, part.right);
    let settled = |row: usize, wanted: &[f64]| -> Vec<f64> {
        let parts = parts[row].iter().zip(&frames[row]);
        parts
            .flat_map(|(part, frame)| frame.nearest(&wanted[part.cells.clone()]))
            .collect()
    };
    let mut places: Vec<Vec<f64>> = (0..rows.rows.len())
        .map(|row| {
            let begin = parts[row].iter();
            let begin = begin.flat_map(|part| part.cells.clone().map(|_| middle(part)));
            settled(row, &begin.collect::<Vec<_>>())
        })
        .collect();
    for _ in 0..ROUNDS {
        for row in 0..rows.rows.len() {
            places[row] = settled(row, &wanted_in(rows, &places, row, wanted));
        }
        for row in (0..rows.rows.len()).rev() {
            places[row] = settled(row, &wanted_in(rows, &places, row, wanted));
        }
    }
    places
}

/// Where each cell of a row would stand best by its neighbours above and below.
fn wanted_in(rows: &Rows, places: &[Vec<f64>], row: usize, wanted: Wanted) -> Vec<f64> {
    let mut tied: Vec<Vec<f64>> = vec![Vec::new(); rows.rows[row].len()];
    if let Some(lines) = rows.lines.get(row) {
        for &(upper, lower) in lines {
            tied[upper].push(places[row + 1][lower]);
        }
    }
    if let Some(above) = row.checked_sub(1) {
        for &(upper, lower) in &rows.lines[above] {
            tied[lower].push(places[above][upper]);
        }
    }
    let here = &places[row];
    tied.iter_mut()
        .enumerate()
        .map(|(at, tied)| {
            tied.sort_by(f64::total_cmp);
            if tied.is_empty() {
                here[at]
            } else {
                wanted(tied)
            }
        })
        .collect()
}

/// The room of one row: how far each cell stands at least from the first, and between
/// what limits the first then lies.
struct Frame {
    offsets: Vec<f64>,
    low: f64,
    high: f64,
}

impl Frame {
    fn of(part: &Part, apart: impl Fn(usize) -> f64, reach: impl Fn(usize) -> (f64, f64)) -> Self {
        let Range { start, end } = part.cells;
        let mut offsets = vec![0.0; end - start];
        for at in 1..offsets.len() {
            offsets[at] = offsets[at - 1] + apart(start + at - 1);
        }
        let Some(&last) = offsets.last() else {
            return Frame {
                offsets,
                low: 0.0,
                high: 0.0,
            };
        };
        let low = part.left + reach(start).0;
        let most = part.right - reach(end - 1).1;
        let room = (most - low).max(0.0);
        let share = if last > room { room / last } else { 1.0 };
        offsets.iter_mut().for_each(|offset| *offset *= share);
        Frame {
            low,
            high: (most - last * share).max(low),
            offsets,
        }
    }

    /// The places nearest to those wanted (by the sum of squares) that keep apart:
    /// neighbours that would come too near are pooled and share their average.
    fn nearest(&self, wanted: &[f64]) -> Vec<f64> {
        let mut pools: Vec<(f64, f64)> = Vec::new();
        for (wanted, offset) in wanted.iter().zip(&self.offsets) {
            pools.push((wanted - offset, 1.0));
            while let [.., (before, many), (last, more)] = pools[..] {
                if before <= last {
                    break;
                }
                pools.truncate(pools.len() - 2);
                pools.push(((before * many + last * more) / (many + more), many + more));
            }
        }
        let mut pool = pools.into_iter();
        let mut now = (0.0, 0.0);
        let place = |offset: &f64| {
            if now.1 < 0.5 {
                now = pool.next().unwrap_or((0.0, 1.0));
            }
            now.1 -= 1.0;
            now.0.clamp(self.low, self.high.max(self.low)) + offset
        };
        self.offsets.iter().map(place).collect()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn frame(count: usize, width: f64) -> Frame {
        let part = Part {
            cells: 0..count,
            left: 0.0,
            right: width,
        };
        Frame::of(&part, |_| 50.0, |_| (20.0, 20.0))
    }

    #[test]
    fn cells_stand_where_they_want_if_there_is_room_and_share_if_not() {
        let frame = frame(3, 300.0);
        assert_eq!(frame.nearest(&[30.0, 100.0, 250.0]), [30.0, 100.0, 250.0]);
        assert_eq!(frame.nearest(&[100.0, 100.0, 250.0]), [75.0, 125.0, 250.0]);
        assert_eq!(frame.nearest(&[0.0, 0.0, 0.0]), [20.0, 70.0, 120.0]);
        assert_eq!(frame.nearest(&[400.0, 400.0, 400.0]), [180.0, 230.0, 280.0]);
    }

    #[test]
    fn a_row_too_full_shrinks_into_its_room() {
        assert_eq!(frame(3, 100.0).nearest(&[50.0; 3]), [20.0, 50.0, 80.0]);
        assert!(frame(0, 100.0).nearest(&[]).is_empty());
    }

    #[test]
    fn a_part_of_a_row_is_kept_to() {
        let part = Part {
            cells: 2..4,
            left: 200.0,
            right: 400.0,
        };
        let frame = Frame::of(&part, |_| 50.0, |_| (20.0, 60.0));
        assert_eq!(frame.nearest(&[0.0, 900.0]), [220.0, 340.0]);
    }

    #[test]
    fn the_one_in_the_middle_is_one_of_them() {
        assert_eq!(middle_one(&[1.0, 2.0, 9.0]), 2.0);
        assert_eq!(middle_one(&[1.0, 2.0]), 1.0);
        assert_eq!(average(&[1.0, 2.0, 9.0]), 4.0);
    }
}

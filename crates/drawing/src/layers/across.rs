//! Where in its row each cell stands: near what it is tied to, apart from its neighbours.

use super::rows::Rows;

/// How often rows are drawn towards their neighbours, down and up.
const ROUNDS: usize = 8;

/// The middle of each cell. `apart(row, at)` is the least distance between the middles
/// of the cells `at` and `at + 1` of a row; `edge(row, at)` is how far a cell's middle
/// keeps from the drawing's edge. Where a row is too full, distances shrink alike.
pub(super) fn middles(
    rows: &Rows,
    width: f64,
    apart: impl Fn(usize, usize) -> f64,
    edge: impl Fn(usize, usize) -> f64,
) -> Vec<Vec<f64>> {
    let frames: Vec<Frame> = (0..rows.rows.len())
        .map(|row| {
            Frame::of(
                rows.rows[row].len(),
                width,
                |at| apart(row, at),
                |at| edge(row, at),
            )
        })
        .collect();
    let mut middles: Vec<Vec<f64>> = frames
        .iter()
        .map(|frame| frame.nearest(&vec![width / 2.0; frame.offsets.len()]))
        .collect();
    for _ in 0..ROUNDS {
        for row in 0..rows.rows.len() {
            middles[row] = frames[row].nearest(&wanted(rows, &middles, row));
        }
        for row in (0..rows.rows.len()).rev() {
            middles[row] = frames[row].nearest(&wanted(rows, &middles, row));
        }
    }
    middles
}

/// The average of where a cell's neighbours above and below stand.
fn wanted(rows: &Rows, middles: &[Vec<f64>], row: usize) -> Vec<f64> {
    let mut sums = vec![(0.0, 0.0); rows.rows[row].len()];
    let mut add = |at: usize, there: f64| {
        sums[at].0 += there;
        sums[at].1 += 1.0;
    };
    if let Some(lines) = rows.lines.get(row) {
        lines
            .iter()
            .for_each(|&(upper, lower)| add(upper, middles[row + 1][lower]));
    }
    if let Some(above) = row.checked_sub(1) {
        rows.lines[above]
            .iter()
            .for_each(|&(upper, lower)| add(lower, middles[above][upper]));
    }
    let here = &middles[row];
    let average =
        |(at, (sum, many)): (usize, &(f64, f64))| if *many > 0.0 { sum / many } else { here[at] };
    sums.iter().enumerate().map(average).collect()
}

/// The room of one row: how far each cell stands at least from the first, and between
/// what limits the first then lies.
struct Frame {
    offsets: Vec<f64>,
    low: f64,
    high: f64,
}

impl Frame {
    fn of(
        count: usize,
        width: f64,
        apart: impl Fn(usize) -> f64,
        edge: impl Fn(usize) -> f64,
    ) -> Self {
        let mut offsets = vec![0.0; count];
        for at in 1..count {
            offsets[at] = offsets[at - 1] + apart(at - 1);
        }
        let Some(last) = count.checked_sub(1) else {
            return Frame {
                offsets,
                low: 0.0,
                high: 0.0,
            };
        };
        let room = (width - edge(0) - edge(last)).max(0.0);
        if offsets[last] > room {
            let share = room / offsets[last];
            offsets.iter_mut().for_each(|offset| *offset *= share);
        }
        let high = (width - edge(last) - offsets[last]).max(edge(0));
        Frame {
            low: edge(0),
            high,
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

    #[test]
    fn cells_stand_where_they_want_if_there_is_room_and_share_if_not() {
        let frame = Frame::of(3, 300.0, |_| 50.0, |_| 20.0);
        assert_eq!(frame.nearest(&[30.0, 100.0, 250.0]), [30.0, 100.0, 250.0]);
        assert_eq!(frame.nearest(&[100.0, 100.0, 250.0]), [75.0, 125.0, 250.0]);
        assert_eq!(frame.nearest(&[0.0, 0.0, 0.0]), [20.0, 70.0, 120.0]);
        assert_eq!(frame.nearest(&[400.0, 400.0, 400.0]), [180.0, 230.0, 280.0]);
    }

    #[test]
    fn a_row_too_full_shrinks_into_its_room() {
        let frame = Frame::of(3, 100.0, |_| 50.0, |_| 20.0);
        assert_eq!(frame.nearest(&[50.0; 3]), [20.0, 50.0, 80.0]);
        assert!(
            Frame::of(0, 100.0, |_| 1.0, |_| 1.0)
                .nearest(&[])
                .is_empty()
        );
    }
}

//! How the lines between two rows run: straight down, or down into a lane, across in it, and down
//! again. Lines to one thing share a lane; no two others lie over each other.

/// A line between two rows: where it leaves the upper and where it enters the lower.
#[derive(Debug, Clone, Copy, PartialEq)]
pub(super) struct Run {
    pub from: f64,
    pub to: f64,
    /// What it ends at, as a place in the lower row.
    pub lower: usize,
}

/// Closer than this, two lines beside each other look like one.
const NEAR: f64 = 6.0;
/// Two ends no further apart than this are one straight line.
const STRAIGHT: f64 = 0.5;

/// All lines that end at one thing and have to run across.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Lane {
    pub lower: usize,
    /// Counted from the upper row.
    pub level: usize,
    /// Where lines leave the upper row, from the left.
    pub from: Vec<f64>,
    /// Where it goes down.
    pub to: f64,
}

impl Lane {
    fn left(&self) -> f64 {
        self.from.iter().copied().fold(self.to, f64::min)
    }

    fn right(&self) -> f64 {
        self.from.iter().copied().fold(self.to, f64::max)
    }

    /// Where lines join or part: places in the lane from which three ways lead.
    pub(super) fn joints(&self) -> Vec<f64> {
        let (left, right) = (self.left(), self.right());
        let inside = |x: f64| x > left + STRAIGHT && x < right - STRAIGHT;
        let mut ends = self.from.clone();
        ends.push(self.to);
        let passes = |x: &f64| inside(*x) || same(*x, self.to) && self.goes_straight_down();
        ends.retain(passes);
        ends.dedup_by(|a, b| same(*a, *b));
        ends
    }

    fn goes_straight_down(&self) -> bool {
        self.from.iter().any(|from| same(*from, self.to))
    }

    /// Whether the two would lie over each other in one lane.
    fn meets(&self, other: &Self) -> bool {
        self.left() < other.right() + NEAR && other.left() < self.right() + NEAR
    }

    /// Whether a line of this one comes down where another one goes on down: then this one has
    /// to turn off above it.
    fn above(&self, other: &Self) -> bool {
        let near = |from: &f64| (from - other.to).abs() < NEAR;
        self.from.iter().any(near) && !other.from.iter().any(near)
    }
}

fn same(a: f64, b: f64) -> bool {
    (a - b).abs() <= STRAIGHT
}

/// The lanes between two rows, one for each thing that lines run across to, and how many levels
/// they take.
pub(super) fn lanes(runs: &[Run]) -> (Vec<Lane>, usize) {
    let mut lanes: Vec<Lane> = Vec::new();
    for run in runs {
        match lanes.iter_mut().find(|lane| lane.lower == run.lower) {
            Some(lane) => lane.from.push(run.from),
            None => lanes.push(Lane {
                lower: run.lower,
                level: 0,
                from: vec![run.from],
                to: run.to,
            }),
        }
    }
    lanes.retain(|lane| lane.from.iter().any(|from| !same(*from, lane.to)));
    for lane in &mut lanes {
        lane.from.sort_by(f64::total_cmp);
    }
    lanes.sort_by(|a, b| a.left().total_cmp(&b.left()).then(a.lower.cmp(&b.lower)));
    let mut done: Vec<Lane> = Vec::new();
    while !lanes.is_empty() {
        // Those that wait for each other in a circle are taken from the left.
        let free = lanes
            .iter()
            .position(|lane| !lanes.iter().any(|other| other != lane && other.above(lane)));
        let mut lane = lanes.remove(free.unwrap_or(0));
        let over = done.iter().filter(|other| other.above(&lane));
        let least = over.map(|other| other.level + 1).max().unwrap_or(0);
        let taken = |level: usize| {
            done.iter()
                .any(|other| other.level == level && other.meets(&lane))
        };
        lane.level = (least..).find(|level| !taken(*level)).unwrap_or(least);
        done.push(lane);
    }
    let levels = done.iter().map(|lane| lane.level + 1).max().unwrap_or(0);
    (done, levels)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn run(from: f64, to: f64, lower: usize) -> Run {
        Run { from, to, lower }
    }

    #[test]
    fn a_line_straight_down_takes_no_lane() {
        assert_eq!(lanes(&[run(10.0, 10.2, 0)]), (Vec::new(), 0));
    }

    #[test]
    fn lines_to_one_thing_share_a_lane_and_meet_in_a_dot() {
        let (found, levels) = lanes(&[run(10.0, 50.0, 0), run(50.0, 50.0, 0), run(90.0, 50.0, 0)]);
        assert_eq!((found.len(), levels), (1, 1));
        assert_eq!(found[0].joints(), [50.0]);
    }

    #[test]
    fn a_corner_has_no_dot() {
        let (found, _) = lanes(&[run(10.0, 50.0, 0)]);
        assert!(found[0].joints().is_empty(), "{:?}", found[0].joints());
    }

    #[test]
    fn lines_that_would_lie_over_each_other_have_lanes_of_their_own() {
        let (found, levels) = lanes(&[run(10.0, 90.0, 0), run(50.0, 130.0, 1)]);
        assert_eq!((found.len(), levels), (2, 2));
        let (_, levels) = lanes(&[run(10.0, 40.0, 0), run(60.0, 90.0, 1)]);
        assert_eq!(levels, 1, "side by side one is enough");
    }

    #[test]
    fn what_comes_down_turns_off_above_what_goes_on_down_there() {
        let (found, _) = lanes(&[run(10.0, 50.0, 0), run(50.0, 90.0, 1)]);
        let level = |lower: usize| {
            let lane = found.iter().find(|lane| lane.lower == lower);
            lane.map(|lane| lane.level)
        };
        assert!(level(1) < level(0), "{found:?}");
    }

    #[test]
    fn a_circle_of_waits_ends() {
        let (found, levels) = lanes(&[run(10.0, 50.0, 0), run(50.0, 10.0, 1)]);
        assert_eq!((found.len(), levels), (2, 2));
    }
}

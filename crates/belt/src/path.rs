//! The path of a belt round circles: tangent points, free runs, wraps, length.

use std::f64::consts::PI;

/// A circle with the sense in which the belt takes it: 1 counter-clockwise, -1 clockwise.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Circle {
    pub x: f64,
    pub y: f64,
    pub radius: f64,
    pub sign: f64,
}

/// A free run from one circle to the next.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Run {
    pub from: (f64, f64),
    pub to: (f64, f64),
    pub length: f64,
    /// Its direction, in radians from the right, counter-clockwise.
    pub direction: f64,
}

/// A closed path; run `n` leaves circle `n`.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Path {
    pub runs: Vec<Run>,
    /// Radians round each circle, in its own sense, from 0 up to a whole turn.
    pub wraps: Vec<f64>,
    pub length: f64,
}

/// Two circles that have no tangent of the kind asked for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct NoTangent {
    pub from: usize,
    pub to: usize,
}

/// A wrap this near to a whole turn is none at all.
const NOTHING: f64 = 1e-9;

/// The path round circles in sequence.
///
/// Along a run with direction p, the belt touches a circle that it takes in the sense s at
/// c + s r (sin p, -cos p). Both ends of the run from i to j therefore ask for
/// p = f + asin((si ri - sj rj) / d), with d and f distance and direction of the centres.
pub(crate) fn path(circles: &[Circle]) -> Result<Path, NoTangent> {
    let count = circles.len();
    let mut runs = Vec::with_capacity(count);
    for (from, circle) in circles.iter().enumerate() {
        let to = (from + 1) % count;
        runs.push(run(circle, &circles[to]).ok_or(NoTangent { from, to })?);
    }
    let wraps: Vec<f64> = circles
        .iter()
        .enumerate()
        .map(|(at, circle)| {
            let before = &runs[(at + count - 1) % count];
            positive_turn(circle.sign * (runs[at].direction - before.direction))
        })
        .collect();
    let arcs: f64 = circles
        .iter()
        .zip(&wraps)
        .map(|(circle, wrap)| circle.radius * wrap)
        .sum();
    let straight: f64 = runs.iter().map(|run| run.length).sum();
    Ok(Path {
        runs,
        wraps,
        length: arcs + straight,
    })
}

fn run(from: &Circle, to: &Circle) -> Option<Run> {
    let (dx, dy) = (to.x - from.x, to.y - from.y);
    let apart = libm::hypot(dx, dy);
    let across = from.sign * from.radius - to.sign * to.radius;
    if !apart.is_finite() || apart <= across.abs() {
        return None;
    }
    let direction = libm::atan2(dy, dx) + libm::asin(across / apart);
    let (sine, cosine) = (libm::sin(direction), libm::cos(direction));
    let touch = |circle: &Circle| {
        let reach = circle.sign * circle.radius;
        (circle.x + reach * sine, circle.y - reach * cosine)
    };
    Some(Run {
        from: touch(from),
        to: touch(to),
        length: libm::sqrt((apart - across) * (apart + across)),
        direction,
    })
}

/// An angle brought into a whole turn; what is a whole turn but for rounding is none.
fn positive_turn(angle: f64) -> f64 {
    let turn = 2.0 * PI;
    let within = angle - turn * libm::floor(angle / turn);
    if within > turn - NOTHING { 0.0 } else { within }
}

impl Path {
    /// All turning added up with its sense, in whole turns: 1 or -1 for a plain loop.
    pub(crate) fn turning(&self, circles: &[Circle]) -> f64 {
        let sum: f64 = circles
            .iter()
            .zip(&self.wraps)
            .map(|(circle, wrap)| circle.sign * wrap)
            .sum();
        sum / (2.0 * PI)
    }
}

/// Whether two runs share a point other than an end that they have in common.
pub(crate) fn cross(one: &Run, other: &Run) -> bool {
    let side = |run: &Run, point: (f64, f64)| {
        let (dx, dy) = (run.to.0 - run.from.0, run.to.1 - run.from.1);
        // Distance of the point from the line, positive on its left.
        (dx * (point.1 - run.from.1) - dy * (point.0 - run.from.0)) / run.length.max(1e-12)
    };
    let parted = |a: f64, b: f64| (a > TOUCH && b < -TOUCH) || (a < -TOUCH && b > TOUCH);
    parted(side(one, other.from), side(one, other.to))
        && parted(side(other, one.from), side(other, one.to))
}

/// Millimetres within which lines count as touching, not crossing.
const TOUCH: f64 = 1e-6;

/// Distance of a point from a run.
pub(crate) fn distance(run: &Run, x: f64, y: f64) -> f64 {
    let (dx, dy) = (run.to.0 - run.from.0, run.to.1 - run.from.1);
    let squared = (run.length * run.length).max(1e-12);
    let along = ((x - run.from.0) * dx + (y - run.from.1) * dy) / squared;
    let along = along.clamp(0.0, 1.0);
    libm::hypot(x - run.from.0 - along * dx, y - run.from.1 - along * dy)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn circle(x: f64, y: f64, radius: f64, sign: f64) -> Circle {
        Circle { x, y, radius, sign }
    }

    #[test]
    fn two_equal_circles_make_a_stadium() {
        let circles = [circle(0.0, 0.0, 50.0, 1.0), circle(300.0, 0.0, 50.0, 1.0)];
        let found = path(&circles).unwrap();
        assert!((found.length - (600.0 + 100.0 * PI)).abs() < 1e-9);
        assert!((found.turning(&circles) - 1.0).abs() < 1e-12);
        // Counter-clockwise: the run to the right lies below.
        assert!((found.runs[0].from.1 + 50.0).abs() < 1e-12);
    }

    #[test]
    fn a_grazing_belt_wraps_nothing() {
        let circles = [
            circle(0.0, 0.0, 50.0, 1.0),
            circle(150.0, -10.0, 40.0, 1.0),
            circle(300.0, 0.0, 50.0, 1.0),
        ];
        assert!(path(&circles).unwrap().wraps[1] < 1e-6);
    }

    #[test]
    fn circles_in_each_other_have_no_tangent() {
        let circles = [circle(0.0, 0.0, 50.0, 1.0), circle(10.0, 0.0, 20.0, 1.0)];
        assert_eq!(path(&circles), Err(NoTangent { from: 0, to: 1 }));
        let crossed = [circle(0.0, 0.0, 50.0, 1.0), circle(90.0, 0.0, 50.0, -1.0)];
        assert!(path(&crossed).is_err());
    }
}

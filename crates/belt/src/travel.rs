//! A tensioner through its travel: which lengths fit, and where it stands with a given belt.

use crate::layout::{Layout, Travel};
use crate::path::Path;
use crate::routing::{clean, routed};

/// Positions looked at between the stops.
const STEPS: u32 = 240;

/// A layout whose tensioner can be put anywhere between its stops.
pub(crate) struct Moving<'a> {
    layout: &'a Layout,
    /// Of the pulley that moves.
    pub at: usize,
    pub travel: Travel,
    /// Distance of the pulley from the pivot; 1 on a line, where the place is in millimetres.
    pub arm_mm: f64,
}

/// A place of the tensioner and the length of the belt there.
#[derive(Clone, Copy, Debug)]
struct Sample {
    place: f64,
    length: f64,
}

impl<'a> Moving<'a> {
    /// `layout` is in the sequence of travel, and checked.
    pub(crate) fn of(layout: &'a Layout) -> Option<Moving<'a>> {
        let (name, travel) = layout.tensioner.as_ref()?.moves.as_ref()?;
        let at = layout
            .pulleys
            .iter()
            .position(|pulley| pulley.name == *name)?;
        let pulley = &layout.pulleys[at];
        let arm_mm = match travel {
            Travel::Arc {
                pivot_x_mm,
                pivot_y_mm,
                ..
            } => libm::hypot(pulley.x_mm - pivot_x_mm, pulley.y_mm - pivot_y_mm),
            Travel::Line { .. } => 1.0,
        };
        Some(Moving {
            layout,
            at,
            travel: *travel,
            arm_mm,
        })
    }

    /// From stop to stop: degrees about a pivot, millimetres along a line.
    pub(crate) fn stops(&self) -> (f64, f64) {
        match self.travel {
            Travel::Arc {
                min_deg, max_deg, ..
            } => (min_deg, max_deg),
            Travel::Line {
                from_x_mm,
                from_y_mm,
                to_x_mm,
                to_y_mm,
            } => (0.0, libm::hypot(to_x_mm - from_x_mm, to_y_mm - from_y_mm)),
        }
    }

    /// Where the pulley is drawn, brought as near to the stops as whole turns can.
    pub(crate) fn drawn(&self) -> f64 {
        let pulley = &self.layout.pulleys[self.at];
        match self.travel {
            Travel::Arc {
                pivot_x_mm,
                pivot_y_mm,
                min_deg,
                max_deg,
            } => {
                let angle = libm::atan2(pulley.y_mm - pivot_y_mm, pulley.x_mm - pivot_x_mm);
                let middle = f64::midpoint(min_deg, max_deg);
                let turns = libm::round((middle - angle.to_degrees()) / 360.0);
                angle.to_degrees() + 360.0 * turns
            }
            Travel::Line {
                from_x_mm,
                from_y_mm,
                to_x_mm,
                to_y_mm,
            } => {
                let (dx, dy) = (to_x_mm - from_x_mm, to_y_mm - from_y_mm);
                let along = (pulley.x_mm - from_x_mm) * dx + (pulley.y_mm - from_y_mm) * dy;
                along / libm::hypot(dx, dy)
            }
        }
    }

    /// The layout with the tensioner at that place.
    pub(crate) fn placed(&self, place: f64) -> Layout {
        let mut layout = self.layout.clone();
        let (x, y) = match self.travel {
            Travel::Arc {
                pivot_x_mm,
                pivot_y_mm,
                ..
            } => {
                let angle = place.to_radians();
                (
                    pivot_x_mm + self.arm_mm * libm::cos(angle),
                    pivot_y_mm + self.arm_mm * libm::sin(angle),
                )
            }
            Travel::Line {
                from_x_mm,
                from_y_mm,
                to_x_mm,
                to_y_mm,
            } => {
                let part = place / self.stops().1;
                (
                    from_x_mm + part * (to_x_mm - from_x_mm),
                    from_y_mm + part * (to_y_mm - from_y_mm),
                )
            }
        };
        layout.pulleys[self.at].x_mm = x;
        layout.pulleys[self.at].y_mm = y;
        layout
    }

    /// The belt's length there, where the belt lies well.
    pub(crate) fn length(&self, place: f64) -> Option<f64> {
        let layout = self.placed(place);
        if !clean(&layout) {
            return None;
        }
        routed(&layout).ok().map(|(_, path)| path.length)
    }

    fn sample(&self, place: f64) -> Option<Sample> {
        self.length(place).map(|length| Sample { place, length })
    }

    /// Stretches of travel over which the belt lies well, each in samples.
    fn stretches(&self) -> Vec<Vec<Sample>> {
        let (from, to) = self.stops();
        let place = |step: u32| from + (to - from) * f64::from(step) / f64::from(STEPS);
        let mut stretches: Vec<Vec<Sample>> = Vec::new();
        let mut open: Vec<Sample> = Vec::new();
        for step in 0..=STEPS {
            match self.sample(place(step)) {
                Some(sample) => {
                    if open.is_empty() && step > 0 {
                        open.push(self.last_good(sample, place(step - 1)));
                    }
                    open.push(sample);
                }
                None => {
                    if let Some(last) = open.last().copied() {
                        open.push(self.last_good(last, place(step)));
                        stretches.push(std::mem::take(&mut open));
                    }
                }
            }
        }
        if !open.is_empty() {
            stretches.push(open);
        }
        stretches
    }

    /// The last good sample on the way from a good place to a bad one.
    fn last_good(&self, good: Sample, bad: f64) -> Sample {
        let (mut good, mut bad) = (good, bad);
        for _ in 0..40 {
            let middle = f64::midpoint(good.place, bad);
            match self.sample(middle) {
                Some(sample) => good = sample,
                None => bad = middle,
            }
        }
        good
    }

    /// The least and the greatest length that fit between the stops, and whether the belt lies
    /// well all the way.
    pub(crate) fn window(&self) -> Option<(f64, f64, bool)> {
        let stretches = self.stretches();
        let lengths = stretches.iter().flat_map(|stretch| self.extremes(stretch));
        let (low, high) = lengths
            .fold((f64::INFINITY, f64::NEG_INFINITY), |(low, high), length| {
                (low.min(length), high.max(length))
            });
        let (from, to) = self.stops();
        let whole = stretches.len() == 1
            && stretches[0]
                .first()
                .is_some_and(|first| first.place <= from)
            && stretches[0].last().is_some_and(|last| last.place >= to);
        low.is_finite().then_some((low, high, whole))
    }

    /// Lengths at the ends of a stretch and at its turning points.
    fn extremes(&self, stretch: &[Sample]) -> Vec<f64> {
        let mut found: Vec<f64> = [stretch.first(), stretch.last()]
            .into_iter()
            .flatten()
            .map(|sample| sample.length)
            .collect();
        for three in stretch.windows(3) {
            let (rise, fall) = (
                three[1].length - three[0].length,
                three[2].length - three[1].length,
            );
            if rise * fall < 0.0 {
                found.push(self.turning_point(three[0].place, three[2].place, rise.signum()));
            }
        }
        found
    }

    /// The greatest (sign 1) or least (sign -1) length between two places.
    fn turning_point(&self, from: f64, to: f64, sign: f64) -> f64 {
        let value = |place: f64| {
            self.length(place)
                .map_or(f64::NEG_INFINITY, |length| sign * length)
        };
        let (mut low, mut high) = (from, to);
        for _ in 0..80 {
            let third = (high - low) / 3.0;
            if value(low + third) < value(high - third) {
                low += third;
            } else {
                high -= third;
            }
        }
        sign * value(f64::midpoint(low, high))
    }

    /// Where the tensioner stands with a belt of that length: the place nearest to the drawn one.
    pub(crate) fn place_for(&self, length_mm: f64) -> Option<f64> {
        let drawn = self.drawn();
        let mut found: Vec<f64> = Vec::new();
        for stretch in self.stretches() {
            for two in stretch.windows(2) {
                let (one, other) = (two[0].length - length_mm, two[1].length - length_mm);
                if one == 0.0 {
                    found.push(two[0].place);
                }
                if one * other < 0.0 {
                    found.push(self.bisected(two[0].place, two[1].place, length_mm));
                }
            }
            found.extend(
                stretch
                    .last()
                    .filter(|last| last.length == length_mm)
                    .map(|last| last.place),
            );
        }
        found
            .into_iter()
            .min_by(|one, other| (one - drawn).abs().total_cmp(&(other - drawn).abs()))
    }

    fn bisected(&self, from: f64, to: f64, length_mm: f64) -> f64 {
        let (mut low, mut high) = (from, to);
        let rises = self.length(to) > self.length(from);
        for _ in 0..60 {
            let middle = f64::midpoint(low, high);
            let short = self.length(middle).is_some_and(|length| length < length_mm);
            if short == rises {
                low = middle;
            } else {
                high = middle;
            }
        }
        f64::midpoint(low, high)
    }

    /// How fast the belt's length grows: millimetres a radian about a pivot, or a millimetre
    /// along a line.
    ///
    /// Moving a pulley's centre changes the length by the sum of the unit vectors from the
    /// runs' far ends to it.
    pub(crate) fn growth(&self, path: &Path, place: f64) -> f64 {
        let count = path.runs.len();
        let before = path.runs[(self.at + count - 1) % count].direction;
        let after = path.runs[self.at].direction;
        let pull = (
            libm::cos(before) - libm::cos(after),
            libm::sin(before) - libm::sin(after),
        );
        let way = match self.travel {
            Travel::Arc { .. } => {
                let angle = place.to_radians();
                (
                    -self.arm_mm * libm::sin(angle),
                    self.arm_mm * libm::cos(angle),
                )
            }
            Travel::Line {
                from_x_mm,
                from_y_mm,
                to_x_mm,
                to_y_mm,
            } => {
                let length = self.stops().1;
                (
                    (to_x_mm - from_x_mm) / length,
                    (to_y_mm - from_y_mm) / length,
                )
            }
        };
        pull.0 * way.0 + pull.1 * way.1
    }
}

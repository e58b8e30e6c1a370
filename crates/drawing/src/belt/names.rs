//! Where the names of pulleys find room: inside a large one, else beside it, off the belt and
//! off each other.

use super::{BeltPath, BeltPulley, DEGREES, NAME, Sheet};
use crate::text::{ellipsis, text_width_px};
use crate::{Anchor, Area, Ink, Mark, Point, Style, Text, Weight};

pub(super) struct Names {
    width: f64,
    height: f64,
    taken: Vec<Area>,
    lines: Vec<(Point, Point)>,
    wheels: Vec<(Point, f64)>,
    floor: f64,
}

/// Between lettering and what it keeps off.
const GAP: f64 = 4.0;
/// Of a name.
const MOST_WIDTH: f64 = 150.0;

impl Names {
    pub(super) fn new(width: f64, height: f64) -> Names {
        Names {
            width,
            height,
            taken: Vec::new(),
            lines: Vec::new(),
            wheels: Vec::new(),
            floor: 0.0,
        }
    }

    /// Lettering stays off the belt and off the wheels.
    pub(super) fn keep_clear(&mut self, path: &BeltPath, sheet: &Sheet) {
        for (at, pulley) in path.pulleys.iter().enumerate() {
            let next = &path.pulleys[(at + 1) % path.pulleys.len()];
            self.lines
                .push((sheet.point(pulley.leaves_mm), sheet.point(next.meets_mm)));
            self.wheels
                .push((sheet.centre(pulley), sheet.radius(pulley)));
        }
    }

    pub(super) fn keep_off(&mut self, points: &[Point]) {
        self.lines
            .extend(points.windows(2).map(|two| (two[0], two[1])));
    }

    /// The lowest edge of any lettering.
    pub(super) fn floor(&self) -> f64 {
        self.floor
    }

    /// The name of a pulley, and under it the degrees where they are wanted.
    pub(super) fn write(
        &mut self,
        marks: &mut Vec<Mark>,
        sheet: &Sheet,
        pulley: &BeltPulley,
        with_degrees: bool,
    ) {
        let name = ellipsis(&pulley.name, NAME, Weight::Regular, MOST_WIDTH);
        let mut lines = vec![(name, NAME, Weight::Regular, 0.85 * NAME)];
        let mut height = NAME + 4.0;
        if with_degrees {
            let degrees = format!("{:.0}°", pulley.wrap_deg);
            lines.push((degrees, DEGREES, Weight::Bold, NAME + 0.95 * DEGREES));
            height += DEGREES;
        }
        let width = lines
            .iter()
            .map(|(text, size, weight, _)| text_width_px(text, *size, *weight))
            .fold(0.0, f64::max);
        let (centre, radius) = (sheet.centre(pulley), sheet.radius(pulley));
        let room = Area {
            x: centre.x - width / 2.0,
            y: centre.y + 4.0,
            width,
            height,
        };
        // Two lower corners inside the inner ring.
        let fits = libm::hypot(width / 2.0, room.bottom() - centre.y) < radius - 5.0;
        let inside = fits && !self.over_lettering(room) && !self.over_belt(room);
        let place = if inside {
            self.take(room)
        } else {
            self.beside(centre, radius, (width, height), true)
        };
        let middle = place.x + place.width / 2.0;
        if inside {
            // The centre lines do not run through the lettering.
            marks.push(Mark::Rect {
                area: place,
                corner_radius: 0.0,
                style: Style::fill(Ink::Paper),
            });
        }
        for (text, size, weight, base) in lines {
            marks.push(Mark::Text(Text {
                at: Point::new(middle, place.y + base),
                text,
                size,
                weight,
                anchor: Anchor::Middle,
                ink: Ink::Ink,
            }));
        }
    }

    /// The best place round a wheel: the nearest that keeps off everything.
    fn beside(&mut self, centre: Point, radius: f64, size: (f64, f64), is_name: bool) -> Area {
        let (width, height) = size;
        const ROUNDS: u32 = 12;
        let mut best: Option<(f64, Area)> = None;
        for round in 0..ROUNDS {
            let away = f64::from(round) * 10.0 + 10.0;
            // Below, above, then the sides and between.
            for turn in [90.0, 270.0, 0.0, 180.0, 45.0, 135.0, 225.0, 315.0_f64] {
                let angle = turn.to_radians();
                let (dx, dy) = (libm::cos(angle), libm::sin(angle));
                let at = Point::new(
                    centre.x + dx * (radius + away + width / 2.0 * dx.abs()),
                    centre.y + dy * (radius + away + height / 2.0 * dy.abs()),
                );
                let area = self.onto_paper(Area {
                    x: at.x - width / 2.0,
                    y: at.y - height / 2.0,
                    width,
                    height,
                });
                let astray = if is_name {
                    self.astray(area, centre, radius)
                } else {
                    0.0
                };
                let cost = self.cost(area) + astray + away;
                if best.is_none_or(|(least, _)| cost < least) {
                    best = Some((cost, area));
                }
            }
        }
        let area = best.map_or(
            Area {
                x: 0.0,
                y: 0.0,
                width,
                height,
            },
            |(_, area)| area,
        );
        self.take(area)
    }

    /// A place for a line of words near a point.
    pub(super) fn free_near(&mut self, at: Point, width: f64, size: f64) -> Area {
        self.beside(at, 8.0, (width, 1.2 * size), false)
    }

    /// How much a place covers: lettering never, belts and wheels only where nothing else is free.
    fn cost(&self, area: Area) -> f64 {
        let lettering = if self.over_lettering(area) { 1e6 } else { 0.0 };
        let belt = if self.over_belt(area) { 1e4 } else { 0.0 };
        let wheels = self.wheels.iter().filter(|(centre, radius)| {
            let x = centre.x.clamp(area.x, area.right());
            let y = centre.y.clamp(area.y, area.bottom());
            libm::hypot(centre.x - x, centre.y - y) < radius + GAP
        });
        lettering + belt + 1e3 * wheels.map(|_| 1.0).sum::<f64>()
    }

    /// A name that stands nearer to another wheel than to its own would be read as that one's.
    fn astray(&self, area: Area, own: Point, own_radius: f64) -> f64 {
        let middle = Point::new(area.x + area.width / 2.0, area.y + area.height / 2.0);
        let off = |centre: Point, radius: f64| {
            libm::hypot(centre.x - middle.x, centre.y - middle.y) - radius
        };
        let nearer = self
            .wheels
            .iter()
            .any(|(centre, radius)| off(*centre, *radius) + 1.0 < off(own, own_radius));
        if nearer { 1e3 } else { 0.0 }
    }

    fn over_lettering(&self, area: Area) -> bool {
        self.taken.iter().any(|other| other.overlaps(&grown(area)))
    }

    fn over_belt(&self, area: Area) -> bool {
        let area = grown(area);
        self.lines.iter().any(|(from, to)| cuts(*from, *to, area))
    }

    fn onto_paper(&self, area: Area) -> Area {
        Area {
            x: area.x.clamp(0.0, (self.width - area.width).max(0.0)),
            // Below there may be more paper.
            y: area.y.clamp(0.0, self.height.max(area.y)),
            ..area
        }
    }

    fn take(&mut self, area: Area) -> Area {
        self.floor = self.floor.max(area.bottom() + GAP);
        self.taken.push(area);
        area
    }
}

fn grown(area: Area) -> Area {
    Area {
        x: area.x - GAP,
        y: area.y - GAP,
        width: area.width + 2.0 * GAP,
        height: area.height + 2.0 * GAP,
    }
}

/// Whether a line goes through a rectangle: the part of it between each pair of edges is not
/// empty.
fn cuts(from: Point, to: Point, area: Area) -> bool {
    let (mut enter, mut leave) = (0.0_f64, 1.0_f64);
    for (start, way, low, high) in [
        (from.x, to.x - from.x, area.x, area.right()),
        (from.y, to.y - from.y, area.y, area.bottom()),
    ] {
        if way.abs() < 1e-9 {
            if start < low || start > high {
                return false;
            }
            continue;
        }
        let (one, other) = ((low - start) / way, (high - start) / way);
        enter = enter.max(one.min(other));
        leave = leave.min(one.max(other));
    }
    enter < leave
}

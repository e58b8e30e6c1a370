//! The floor in plan: walls, lifts, what stands there from above.

use super::{FloorPlace, FloorVehicle, LETTERING, VehicleShape, WALL, text};
use crate::phrases as say;
use crate::plot::line;
use crate::{Anchor, Area, Dash, Ink, Mark, Pen, Point, Style, Weight};

/// The walls round the stalls, open to the yard, with a mark between neighbours.
pub(super) fn walls(top: f64, height: f64, row: f64) -> Vec<Mark> {
    let (left, right) = WALL;
    let wall = Pen {
        stroke: crate::Stroke::Belt,
        ..Pen::outline(Ink::Ink)
    };
    let mut marks = vec![Mark::Polyline {
        points: vec![
            Point::new(left, top),
            Point::new(right, top),
            Point::new(right, top + height),
            Point::new(left, top + height),
        ],
        closed: false,
        style: Style::line(wall),
    }];
    let mut y = top;
    while y < top + height - 1.0 {
        let door = Pen::fine(Ink::Ink).dashed(Dash::Dashed);
        marks.push(line(left, y + 6.0, left, y + row - 6.0, door));
        y += row;
        if y < top + height - 1.0 {
            let marking = Pen::fine(Ink::Soft).dashed(Dash::Dashed);
            marks.push(line(left + 10.0, y, right - 26.0, y, marking));
        }
    }
    // The bench along the wall.
    marks.push(Mark::Rect {
        area: Area {
            x: right - 20.0,
            y: top + 6.0,
            width: 16.0,
            height: (height - 12.0).max(8.0),
        },
        corner_radius: 0.0,
        style: Style::line(Pen::fine(Ink::Ink)),
    });
    marks
}

/// Two posts with four arms.
pub(super) fn lift(at: Point, height: f64) -> Vec<Mark> {
    let reach = height / 2.0 - 8.0;
    let mut marks = Vec::new();
    for side in [-1.0, 1.0] {
        let foot = Point::new(at.x, at.y + side * (reach - 10.0));
        for way in [-1.0, 1.0] {
            marks.push(line(
                foot.x,
                foot.y,
                foot.x + way * 34.0,
                at.y + side * (reach - 24.0),
                Pen::heavy(Ink::Rule),
            ));
        }
        marks.push(Mark::Rect {
            area: Area {
                x: at.x - 7.0,
                y: at.y + side * reach - 5.0,
                width: 14.0,
                height: 10.0,
            },
            corner_radius: 0.0,
            style: Style::fill(Ink::Ink),
        });
    }
    marks
}

pub(super) fn free(place: &FloorPlace, at: Point, height: f64) -> Vec<Mark> {
    if place.yard {
        return Vec::new();
    }
    let area = Area {
        x: at.x - 56.0,
        y: at.y - height / 2.0 + 18.0,
        width: 112.0,
        height: height - 36.0,
    };
    vec![
        Mark::Rect {
            area,
            corner_radius: 0.0,
            style: Style::line(Pen::outline(Ink::Soft).dashed(Dash::Dashed)),
        },
        text(
            at.x,
            at.y + 5.0,
            say::free_in_plan(),
            LETTERING,
            Anchor::Middle,
            Weight::Regular,
            Ink::Soft,
        ),
    ]
}

impl VehicleShape {
    /// Length and width, in px at 22 px a metre.
    fn size(self) -> (f64, f64) {
        match self {
            Self::Hatch => (84.0, 37.0),
            Self::Estate => (104.0, 40.0),
            Self::Van => (124.0, 45.0),
            Self::Pickup => (118.0, 42.0),
        }
    }

    /// Where the windscreen stands, and where the roof ends, as parts of the length from the nose.
    fn glass(self) -> (f64, f64) {
        match self {
            Self::Hatch => (0.30, 0.86),
            Self::Estate => (0.30, 0.94),
            Self::Van => (0.14, 0.97),
            Self::Pickup => (0.28, 0.52),
        }
    }
}

/// A vehicle from above, nose to the right; dashed where it can't roll.
pub(super) fn car(vehicle: &FloorVehicle, at: Point, scale: f64) -> Vec<Mark> {
    let (length, width) = vehicle.shape.size();
    let (length, width) = (length * scale, width * scale);
    let (nose, tail) = (at.x + length / 2.0, at.x - length / 2.0);
    let mut marks = Vec::new();
    for along in [0.22, 0.80] {
        for side in [-1.0, 1.0] {
            let x = nose - along * length;
            marks.push(Mark::Rect {
                area: Area {
                    x: x - 7.0 * scale,
                    y: at.y + side * (width / 2.0) - 3.0,
                    width: 14.0 * scale,
                    height: 6.0,
                },
                corner_radius: 2.0,
                style: Style::fill(Ink::Ink),
            });
        }
    }
    let pen = Pen::outline(Ink::Ink);
    let pen = if vehicle.rolls {
        pen
    } else {
        pen.dashed(Dash::Dashed)
    };
    marks.push(Mark::Rect {
        area: Area {
            x: tail,
            y: at.y - width / 2.0,
            width: length,
            height: width,
        },
        corner_radius: 8.0 * scale,
        style: Style {
            line: Some(pen),
            fill: Some(Ink::Paper),
        },
    });
    let (screen, roof) = vehicle.shape.glass();
    let (front, back) = (nose - screen * length, nose - roof * length);
    let half = width / 2.0 - 4.0 * scale;
    let slope = 8.0 * scale;
    marks.push(Mark::Polyline {
        points: vec![
            Point::new(front + slope, at.y - half),
            Point::new(front + slope, at.y + half),
            Point::new(front, at.y + half - 4.0),
            Point::new(front, at.y - half + 4.0),
        ],
        closed: true,
        style: Style::line(Pen::fine(Ink::Ink)),
    });
    marks.push(Mark::Rect {
        area: Area {
            x: back,
            y: at.y - half + 3.0,
            width: (front - back).max(1.0),
            height: 2.0 * half - 6.0,
        },
        corner_radius: 2.0,
        style: Style::line(Pen::fine(Ink::Ink)),
    });
    if vehicle.shape == VehicleShape::Pickup {
        marks.push(Mark::Rect {
            area: Area {
                x: tail + 4.0,
                y: at.y - half,
                width: (back - tail - 10.0).max(1.0),
                height: 2.0 * half,
            },
            corner_radius: 0.0,
            style: Style::line(Pen::fine(Ink::Ink)),
        });
    }
    marks
}

//! A belt round its pulleys, seen from the front of the engine, to scale.

mod names;

use crate::phrases as say;
use crate::text::text_width_px;
use crate::{Anchor, Dash, Drawing, Ink, Mark, Pen, Point, Stroke, Style, Text, Weight};
use names::Names;

/// Pulleys in the sequence in which the belt meets them. Millimetres, y upwards.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct BeltPath {
    pub title: String,
    pub pulleys: Vec<BeltPulley>,
    /// Whether places and sizes were only seen, not measured: then no degrees are written.
    pub rough: bool,
    /// How it lies now, where that is wrong: the points of the run, drawn dashed with a cross.
    pub wrong: Option<WrongRun>,
}

/// A pulley with the belt on it. Angles are degrees from the right, counter-clockwise.
#[derive(Debug, Clone, PartialEq)]
pub struct BeltPulley {
    pub name: String,
    pub x_mm: f64,
    pub y_mm: f64,
    pub radius_mm: f64,
    /// Whether the ribs run on it: it gets a second ring.
    pub ribbed: bool,
    /// How far the belt goes round it.
    pub wrap_deg: f64,
    /// Whether it turns clockwise.
    pub clockwise: bool,
    /// Whether it drives: it gets the arrow.
    pub drives: bool,
    /// Where the belt meets it and leaves it.
    pub meets_mm: (f64, f64),
    pub leaves_mm: (f64, f64),
}

/// A run as it was found, from pulley to pulley by any points between.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct WrongRun {
    pub points_mm: Vec<(f64, f64)>,
    /// Where the cross stands.
    pub cross_mm: (f64, f64),
}

impl WrongRun {
    fn is_sound(&self) -> bool {
        let sound =
            |(x, y): &(f64, f64)| x.is_finite() && y.is_finite() && x.abs() < 1e6 && y.abs() < 1e6;
        self.points_mm.len() > 1 && self.points_mm.iter().chain([&self.cross_mm]).all(sound)
    }
}

const LEAST_WIDTH: f64 = 300.0;
const LEAST_HEIGHT: f64 = 220.0;
const NAME: f64 = 18.0;
const DEGREES: f64 = 20.0;
/// Centre lines stand out over the rim.
const OVERHANG: f64 = 6.0;
/// Between the rings of a ribbed pulley.
const RING: f64 = 4.0;

/// Draws a belt, no wider than said and about as high as said.
///
/// Nothing is drawn of a belt without pulleys, or of one whose figures are no numbers.
#[must_use]
pub fn belt(path: &BeltPath, width_px: f64, height_px: f64) -> Drawing {
    let at_least = |value: f64, least: f64| {
        if value.is_finite() {
            value.max(least)
        } else {
            least
        }
    };
    let width = at_least(width_px, LEAST_WIDTH);
    let height = at_least(height_px, LEAST_HEIGHT);
    let mut drawing = Drawing {
        width,
        height,
        title: path.title.clone(),
        description: description(path),
        marks: Vec::new(),
    };
    let Some(sheet) = Sheet::of(path, width, height) else {
        drawing.height = NAME;
        return drawing;
    };
    let marks = &mut drawing.marks;
    for pulley in &path.pulleys {
        wheel(marks, &sheet, pulley);
    }
    run_of_belt(marks, &sheet, path);
    for pulley in path.pulleys.iter().filter(|pulley| pulley.drives) {
        arrow(marks, &sheet, pulley);
    }
    let mut names = Names::new(width, height);
    names.keep_clear(path, &sheet);
    let wrong = path.wrong.as_ref().filter(|wrong| wrong.is_sound());
    if let Some(wrong) = wrong {
        wrong_run(marks, &sheet, &mut names, wrong);
    }
    for pulley in &path.pulleys {
        names.write(marks, &sheet, pulley, !path.rough);
    }
    if let Some(wrong) = wrong {
        marks.push(it_lies_like_this(sheet.point(wrong.cross_mm), &mut names));
    }
    drawing.height = names.floor().max(sheet.floor);
    drawing
}

/// Where millimetres lie on the paper.
pub(super) struct Sheet {
    left_mm: f64,
    top_mm: f64,
    px_per_mm: f64,
    left: f64,
    top: f64,
    floor: f64,
}

impl Sheet {
    fn of(path: &BeltPath, width: f64, height: f64) -> Option<Sheet> {
        let sound = |pulley: &BeltPulley| {
            [
                pulley.x_mm,
                pulley.y_mm,
                pulley.radius_mm,
                pulley.wrap_deg,
                pulley.meets_mm.0,
                pulley.meets_mm.1,
                pulley.leaves_mm.0,
                pulley.leaves_mm.1,
            ]
            .iter()
            .all(|number| number.is_finite() && number.abs() < 1e6)
                && pulley.radius_mm > 0.0
        };
        if path.pulleys.is_empty() || !path.pulleys.iter().all(sound) {
            return None;
        }
        let edge = |of: fn(&BeltPulley) -> f64, least: bool| {
            let each = path.pulleys.iter().map(of);
            if least {
                each.fold(f64::INFINITY, f64::min)
            } else {
                each.fold(f64::NEG_INFINITY, f64::max)
            }
        };
        let (left_mm, right_mm) = (
            edge(|p| p.x_mm - p.radius_mm, true),
            edge(|p| p.x_mm + p.radius_mm, false),
        );
        let (low_mm, top_mm) = (
            edge(|p| p.y_mm - p.radius_mm, true),
            edge(|p| p.y_mm + p.radius_mm, false),
        );
        // Room for a name and its degrees above and below, and for centre lines at the sides.
        let (beside, above) = (OVERHANG + 8.0, NAME + DEGREES + 14.0);
        let px_per_mm = ((width - 2.0 * beside) / (right_mm - left_mm))
            .min((height - 2.0 * above) / (top_mm - low_mm));
        let left = (width - (right_mm - left_mm) * px_per_mm) / 2.0;
        Some(Sheet {
            left_mm,
            top_mm,
            px_per_mm,
            left,
            top: above,
            floor: above + (top_mm - low_mm) * px_per_mm + OVERHANG + 4.0,
        })
    }

    pub(super) fn point(&self, (x_mm, y_mm): (f64, f64)) -> Point {
        Point::new(
            self.left + (x_mm - self.left_mm) * self.px_per_mm,
            self.top + (self.top_mm - y_mm) * self.px_per_mm,
        )
    }

    pub(super) fn centre(&self, pulley: &BeltPulley) -> Point {
        self.point((pulley.x_mm, pulley.y_mm))
    }

    pub(super) fn radius(&self, pulley: &BeltPulley) -> f64 {
        pulley.radius_mm * self.px_per_mm
    }
}

fn wheel(marks: &mut Vec<Mark>, sheet: &Sheet, pulley: &BeltPulley) {
    let (centre, radius) = (sheet.centre(pulley), sheet.radius(pulley));
    let circle = |radius: f64, style: Style| Mark::Circle {
        centre,
        radius,
        style,
    };
    marks.push(circle(
        radius,
        Style {
            line: Some(Pen::outline(Ink::Ink)),
            fill: Some(Ink::Paper),
        },
    ));
    if pulley.ribbed && radius > 2.0 * RING {
        marks.push(circle(radius - RING, Style::line(Pen::fine(Ink::Ink))));
    }
    let reach = radius + OVERHANG;
    let pen = Pen::fine(Ink::Soft).dashed(Dash::Centre);
    for (dx, dy) in [(reach, 0.0), (0.0, reach)] {
        marks.push(Mark::Line {
            from: Point::new(centre.x - dx, centre.y - dy),
            to: Point::new(centre.x + dx, centre.y + dy),
            pen,
        });
    }
    marks.push(circle(4.0, Style::fill(Ink::Ink)));
}

const BELT: Pen = Pen {
    ink: Ink::Ink,
    stroke: Stroke::Belt,
    dash: Dash::Solid,
};

fn run_of_belt(marks: &mut Vec<Mark>, sheet: &Sheet, path: &BeltPath) {
    for (at, pulley) in path.pulleys.iter().enumerate() {
        let next = &path.pulleys[(at + 1) % path.pulleys.len()];
        let (centre, meets) = (sheet.centre(pulley), sheet.point(pulley.meets_mm));
        let sweep = if pulley.clockwise {
            pulley.wrap_deg
        } else {
            -pulley.wrap_deg
        };
        marks.push(Mark::Arc {
            centre,
            radius: libm::hypot(meets.x - centre.x, meets.y - centre.y),
            start_deg: libm::atan2(meets.y - centre.y, meets.x - centre.x).to_degrees(),
            sweep_deg: sweep,
            pen: BELT,
        });
        marks.push(Mark::Line {
            from: sheet.point(pulley.leaves_mm),
            to: sheet.point(next.meets_mm),
            pen: BELT,
        });
    }
}

/// An arc inside the rim with its head at the end, the way the pulley turns.
fn arrow(marks: &mut Vec<Mark>, sheet: &Sheet, pulley: &BeltPulley) {
    const HALF_DEG: f64 = 45.0;
    const HEAD: f64 = 12.0;
    let (centre, radius) = (sheet.centre(pulley), 0.62 * sheet.radius(pulley));
    let way = if pulley.clockwise { 1.0 } else { -1.0 };
    let pen = Pen::outline(Ink::Ink);
    // Over the centre, where no name is written.
    marks.push(Mark::Arc {
        centre,
        radius,
        start_deg: -90.0 - way * HALF_DEG,
        sweep_deg: way * 2.0 * HALF_DEG,
        pen,
    });
    let end = (-90.0 + way * HALF_DEG).to_radians();
    let (out, along) = (
        Point::new(libm::cos(end), libm::sin(end)),
        Point::new(-way * libm::sin(end), way * libm::cos(end)),
    );
    let foot = Point::new(centre.x + radius * out.x, centre.y + radius * out.y);
    let corner = |sideways: f64, ahead: f64| {
        Point::new(
            foot.x + sideways * out.x + ahead * along.x,
            foot.y + sideways * out.y + ahead * along.y,
        )
    };
    marks.push(Mark::Polyline {
        points: vec![
            corner(HEAD / 2.0, 0.0),
            corner(0.0, HEAD),
            corner(-HEAD / 2.0, 0.0),
        ],
        closed: true,
        style: Style::fill(Ink::Ink),
    });
}

fn wrong_run(marks: &mut Vec<Mark>, sheet: &Sheet, names: &mut Names, wrong: &WrongRun) {
    const CROSS: f64 = 8.0;
    let pen = Pen {
        ink: Ink::Stop,
        stroke: Stroke::Wrong,
        dash: Dash::Dashed,
    };
    let points: Vec<Point> = wrong
        .points_mm
        .iter()
        .map(|point| sheet.point(*point))
        .collect();
    names.keep_off(&points);
    marks.push(Mark::Polyline {
        points,
        closed: false,
        style: Style::line(pen),
    });
    let at = sheet.point(wrong.cross_mm);
    for way in [1.0, -1.0] {
        marks.push(Mark::Line {
            from: Point::new(at.x - CROSS, at.y - way * CROSS),
            to: Point::new(at.x + CROSS, at.y + way * CROSS),
            pen: Pen {
                dash: Dash::Solid,
                ..pen
            },
        });
    }
}

/// Written last: the names of pulleys come first to a free place.
fn it_lies_like_this(cross: Point, names: &mut Names) -> Mark {
    let words = say::it_lies_like_this();
    let width = text_width_px(words, NAME, Weight::Bold);
    let place = names.free_near(cross, width, NAME);
    Mark::Text(Text {
        at: Point::new(place.x + place.width / 2.0, place.y + 0.8 * NAME),
        text: words.to_owned(),
        size: NAME,
        weight: Weight::Bold,
        anchor: Anchor::Middle,
        ink: Ink::Stop,
    })
}

fn description(path: &BeltPath) -> String {
    let each: Vec<String> = path
        .pulleys
        .iter()
        .map(|pulley| {
            let turns = if pulley.clockwise {
                say::clockwise()
            } else {
                say::counter_clockwise()
            };
            let drives = if pulley.drives { say::drives() } else { "" };
            let degrees = if path.rough {
                String::new()
            } else {
                format!(" {:.0}°,", pulley.wrap_deg)
            };
            let turns = format!("{turns}{drives}");
            if pulley.ribbed {
                say::pulley_with_ribs(&pulley.name, degrees, turns)
            } else {
                say::pulley_with_back(&pulley.name, degrees, turns)
            }
        })
        .collect();
    let wrong = if path.wrong.is_some() {
        say::dashed_is_wrong()
    } else {
        ""
    };
    say::belt_lies_on(each.join("; "), wrong)
}

//! The bolts of a joint seen from above: each with its number and how it stands, the sequence of
//! tightening as a way from bolt to bolt, and what differs in length called out.

use crate::phrases as say;
use crate::{Anchor, Area, Drawing, Ink, Mark, Pen, Point, Style, Text, Weight, text_width_px};

/// The bolts of a joint.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Bolts {
    pub title: String,
    /// Whether they stand on a circle: its face is drawn round, else with straight sides.
    pub round: bool,
    pub bolts: Vec<Bolt>,
    /// Those that are still to be turned, by their numbers, in their sequence; none where no
    /// sequence is known.
    pub sequence: Vec<u16>,
}

/// One bolt: where it stands, in any unit, and how.
#[derive(Debug, Clone, PartialEq)]
pub struct Bolt {
    pub x: f64,
    pub y: f64,
    pub number: u16,
    pub stands: BoltStand,
    /// What is called out beside it, such as another length.
    pub called: String,
}

/// How a bolt stands.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum BoltStand {
    /// Not there: hollow.
    Out,
    /// On and not tight: half filled.
    Loose,
    /// Tight: filled.
    Tight,
}

const RADIUS: f64 = 19.0;
/// Between the edges of two neighbours at least.
const APART: f64 = 12.0;
/// From the outermost bolts to the edge of the face.
const RIM: f64 = 11.0;
const LETTERING: f64 = 16.0;
/// Between the face and what is called out.
const LEADER: f64 = 10.0;
/// More than so many bolts, and the way from one to the next is a tangle.
const MOST_ON_THE_WAY: usize = 12;

/// Draws the bolts of a joint, not wider than said unless they would touch.
///
/// Places that are no numbers are left out. The way from bolt to bolt begins at the one with the
/// ring.
#[must_use]
pub fn bolts(joint: &Bolts, width_px: f64) -> Drawing {
    let there = |bolt: &&Bolt| bolt.x.is_finite() && bolt.y.is_finite();
    let sound: Vec<&Bolt> = joint.bolts.iter().filter(there).collect();
    let Some(face) = Face::of(joint, &sound, width_px) else {
        return Drawing {
            width: 2.0 * RADIUS,
            height: 2.0 * RADIUS,
            title: joint.title.clone(),
            description: description(joint),
            marks: Vec::new(),
        };
    };
    let mut marks = vec![face.outline(joint.round)];
    marks.extend(face.way(joint));
    let first = joint.sequence.first();
    for bolt in &sound {
        marks.extend(drawn(bolt, face.at(bolt), first == Some(&bolt.number)));
    }
    marks.extend(face.called(&sound));
    Drawing {
        width: face.width,
        height: face.height,
        title: joint.title.clone(),
        description: description(joint),
        marks,
    }
}

/// Where the face lies on the paper.
struct Face<'a> {
    bolts: Vec<(&'a Bolt, Point)>,
    area: Area,
    width: f64,
    height: f64,
}

impl<'a> Face<'a> {
    fn of(joint: &Bolts, sound: &[&'a Bolt], width_px: f64) -> Option<Self> {
        sound.first()?;
        let least = |pick: fn(&Bolt) -> f64| {
            let all = sound.iter().map(|bolt| pick(bolt));
            all.fold(f64::INFINITY, f64::min)
        };
        let most = |pick: fn(&Bolt) -> f64| {
            let all = sound.iter().map(|bolt| pick(bolt));
            all.fold(f64::NEG_INFINITY, f64::max)
        };
        let (left, top) = (least(|bolt| bolt.x), least(|bolt| bolt.y));
        let (across, down) = (most(|bolt| bolt.x) - left, most(|bolt| bolt.y) - top);
        let beside = sound
            .iter()
            .map(|bolt| text_width_px(&bolt.called, LETTERING, Weight::Bold))
            .fold(0.0, f64::max);
        let beside = if beside > 0.0 {
            beside + LEADER + 4.0
        } else {
            0.0
        };
        let edge = RADIUS + RIM + 2.0;
        let widest = if width_px.is_finite() { width_px } else { 0.0 };
        // Neighbours never touch; otherwise no larger than is needed to tell them apart.
        let closest = (2.0 * RADIUS + APART) / nearest(sound);
        let fit = (widest - 2.0 * edge - 2.0 * beside) / across.max(1e-9);
        let scale = fit.clamp(closest, 1.3 * closest);
        let side = |length: f64| length * scale + 2.0 * edge;
        // A round face is as high as it is wide, however its bolts stand.
        let (wide, high) = match joint.round {
            true => (side(across).max(side(down)), side(across).max(side(down))),
            false => (side(across), side(down)),
        };
        let area = Area {
            x: beside + 1.0,
            y: 1.0,
            width: wide,
            height: high,
        };
        let corner = Point::new(
            area.x + (wide - across * scale) / 2.0,
            area.y + (high - down * scale) / 2.0,
        );
        let place = |bolt: &Bolt| {
            Point::new(
                corner.x + (bolt.x - left) * scale,
                corner.y + (bolt.y - top) * scale,
            )
        };
        Some(Face {
            bolts: sound.iter().map(|bolt| (*bolt, place(bolt))).collect(),
            width: wide + 2.0 * beside + 2.0,
            height: high + 2.0,
            area,
        })
    }

    fn at(&self, bolt: &Bolt) -> Point {
        let found = self.bolts.iter().find(|(one, _)| std::ptr::eq(*one, bolt));
        found.map_or(Point::new(0.0, 0.0), |(_, at)| *at)
    }

    fn outline(&self, round: bool) -> Mark {
        let style = Style::line(Pen::outline(Ink::Ink));
        let Area {
            x,
            y,
            width,
            height,
        } = self.area;
        match round {
            true => Mark::Circle {
                centre: Point::new(x + width / 2.0, y + height / 2.0),
                radius: width / 2.0,
                style,
            },
            false => Mark::Rect {
                area: self.area,
                corner_radius: RADIUS,
                style,
            },
        }
    }

    /// From each bolt to the next one in the sequence, with a tip in the middle of the way.
    fn way(&self, joint: &Bolts) -> Vec<Mark> {
        if joint.sequence.len() > MOST_ON_THE_WAY {
            return Vec::new();
        }
        let at = |number: &u16| {
            let found = self.bolts.iter().find(|(bolt, _)| bolt.number == *number);
            found.map(|(_, at)| *at)
        };
        joint
            .sequence
            .windows(2)
            .filter_map(|pair| Some((at(&pair[0])?, at(&pair[1])?)))
            .flat_map(|(from, to)| arrow(from, to))
            .collect()
    }

    /// What is called out, at the nearest side that no other bolt is in the way of.
    fn called(&self, sound: &[&Bolt]) -> Vec<Mark> {
        let Area { x, width, .. } = self.area;
        let (left, right) = (x, x + width);
        let mut marks = Vec::new();
        for bolt in sound.iter().filter(|bolt| !bolt.called.is_empty()) {
            let at = self.at(bolt);
            let free = |to_right: bool| {
                !self.bolts.iter().any(|(other, there)| {
                    let beyond = if to_right {
                        there.x > at.x
                    } else {
                        there.x < at.x
                    };
                    !std::ptr::eq(*other, *bolt) && beyond && (there.y - at.y).abs() < RADIUS
                })
            };
            let to_right = match (free(true), free(false)) {
                (true, true) => at.x - left >= right - at.x,
                (free, _) => free,
            };
            let (edge, end, anchor) = match to_right {
                true => (at.x + RADIUS, right + LEADER, Anchor::Start),
                false => (at.x - RADIUS, left - LEADER, Anchor::End),
            };
            marks.push(Mark::Line {
                from: Point::new(edge, at.y),
                to: Point::new(end, at.y),
                pen: Pen::fine(Ink::Ink),
            });
            marks.push(Mark::Text(Text {
                at: Point::new(
                    end + if to_right { 3.0 } else { -3.0 },
                    at.y + 0.35 * LETTERING,
                ),
                text: bolt.called.clone(),
                size: LETTERING,
                weight: Weight::Bold,
                anchor,
                ink: Ink::Ink,
            }));
        }
        marks
    }
}

/// A thin line with its tip half way, where no bolt covers it.
fn arrow(from: Point, to: Point) -> Vec<Mark> {
    let (x, y) = (to.x - from.x, to.y - from.y);
    let length = libm::hypot(x, y);
    if length <= 2.0 * RADIUS {
        return Vec::new();
    }
    let (x, y) = (x / length, y / length);
    let along = |far: f64, aside: f64| {
        Point::new(from.x + x * far - y * aside, from.y + y * far + x * aside)
    };
    let tip = length / 2.0 + 5.0;
    vec![
        Mark::Line {
            from: along(RADIUS, 0.0),
            to: along(length - RADIUS, 0.0),
            pen: Pen::fine(Ink::Soft),
        },
        Mark::Polyline {
            points: vec![
                along(tip, 0.0),
                along(tip - 10.0, 4.0),
                along(tip - 10.0, -4.0),
            ],
            closed: true,
            style: Style::fill(Ink::Soft),
        },
    ]
}

/// One bolt: its ring if one begins there, its head, how it stands, its number.
fn drawn(bolt: &Bolt, at: Point, begins: bool) -> Vec<Mark> {
    let circle = |radius: f64, style: Style| Mark::Circle {
        centre: at,
        radius,
        style,
    };
    let outline = Some(Pen::outline(Ink::Ink));
    let tight = bolt.stands == BoltStand::Tight;
    let mut marks = Vec::new();
    if begins {
        marks.push(circle(
            RADIUS + 5.0,
            Style {
                line: Some(Pen::heavy(Ink::Accent)),
                fill: Some(Ink::Paper),
            },
        ));
    }
    marks.push(circle(
        RADIUS,
        Style {
            line: outline,
            fill: Some(if tight { Ink::Ink } else { Ink::Paper }),
        },
    ));
    if bolt.stands == BoltStand::Loose {
        marks.push(lower_half(at));
        // The number keeps clear of it.
        marks.push(circle(RADIUS - 6.0, Style::fill(Ink::Paper)));
    }
    marks.push(Mark::Text(Text {
        at: Point::new(at.x, at.y + 0.35 * LETTERING),
        text: bolt.number.to_string(),
        size: LETTERING,
        weight: Weight::Bold,
        anchor: Anchor::Middle,
        ink: if tight { Ink::Paper } else { Ink::Ink },
    }));
    marks
}

fn lower_half(at: Point) -> Mark {
    const STEPS: u32 = 16;
    let points = (0..=STEPS).map(|step| {
        let angle = std::f64::consts::PI * f64::from(step) / f64::from(STEPS);
        Point::new(
            at.x + RADIUS * libm::cos(angle),
            at.y + RADIUS * libm::sin(angle),
        )
    });
    Mark::Polyline {
        points: points.collect(),
        closed: true,
        style: Style::fill(Ink::Ink),
    }
}

/// The least distance between two bolts; 1 where there are no two apart.
fn nearest(bolts: &[&Bolt]) -> f64 {
    let pairs = bolts
        .iter()
        .enumerate()
        .flat_map(|(nth, one)| bolts[nth + 1..].iter().map(move |other| (one, other)));
    let least = pairs
        .map(|(one, other)| libm::hypot(one.x - other.x, one.y - other.y))
        .filter(|apart| *apart > 1e-9)
        .fold(f64::INFINITY, f64::min);
    if least.is_finite() { least } else { 1.0 }
}

fn description(joint: &Bolts) -> String {
    let each = joint.bolts.iter().map(|bolt| {
        let stands = match bolt.stands {
            BoltStand::Out => say::bolt_out(),
            BoltStand::Loose => say::bolt_loose(),
            BoltStand::Tight => say::bolt_tight(),
        };
        match bolt.called.as_str() {
            "" => format!("{} {stands}", bolt.number),
            called => format!("{} {stands}, {called}", bolt.number),
        }
    });
    let each: Vec<String> = each.collect();
    let sequence: Vec<String> = joint.sequence.iter().map(u16::to_string).collect();
    let mut said = say::bolts_of_joint(each.join("; "));
    if !sequence.is_empty() {
        said.push_str(&say::in_the_sequence(sequence.join(", ")));
    }
    said
}

//! A drawing as a value: lines, arcs and text; its layout; its SVG.
//!
//! A drawing names what each mark is for ([`Ink`]), never a colour: whoever
//! shows it supplies the colours, in the light and in the dark. Lengths are
//! pixels as a phone shows them (CSS px); y grows downwards.
//!
//! ```
//! use drawing::{Tray, svg, tray};
//!
//! let empty = tray(&Tray::default(), 358.0);
//! assert_eq!(empty.title, "Nothing on the bench");
//! assert!(svg(&empty).starts_with("<svg "));
//! ```
//!
//! Knows nothing of vehicles, orders or pages: it is told what to draw.

mod belt;
mod bolts;
mod coolant;
mod floor;
mod joint;
mod layers;
mod odds;
mod on_photo;
mod phrases;
mod plot;
mod price_bar;
mod roadtest;
mod shapes;
mod spreads;
mod svg;
mod text;
mod tray;
mod turns;
mod way;
mod week;

pub use belt::{BeltPath, BeltPulley, WrongRun, belt};
pub use bolts::{Bolt, BoltStand, Bolts, bolts};
pub use coolant::{
    Filling, MixChart, PressureRun, Reading as MixReading, filling, mix_chart, pressure,
};
pub use floor::{Floor, FloorPerson, FloorPlace, FloorVehicle, VehicleShape, floor};
pub use joint::{Joint, JointMeasure, JointPart, JointPiece, joint};
pub use layers::{LayerCall, LayerMark, LayerNeed, LayerStand, LayerThing, Layers, layers};
pub use odds::{OddsCurve, odds_curve};
pub use on_photo::{OnPhoto, on_photo};
pub use price_bar::{PriceBar, price_bar};
pub use roadtest::{RoadTest, RoadTestMark, road_test};
pub use shapes::{Slope, dimension, hatch};
pub use spreads::{SpreadRow, Spreads, spreads};
pub use svg::{css, svg};
pub use text::{ellipsis, text_width_px, wrap};
pub use tray::{Tray, TrayMark, TrayPlace, TrayThing, tray};
pub use turns::{Turn, turns};
pub use way::{WayInAndOut, way_in_and_out};
pub use week::{Week, WeekBar, week};

/// A whole drawing.
#[derive(Debug, Clone, PartialEq)]
pub struct Drawing {
    pub width: f64,
    pub height: f64,
    /// What it shows, in a few words.
    pub title: String,
    /// All that it says, for whoever hears it instead.
    pub description: String,
    /// Later marks lie over earlier ones.
    pub marks: Vec<Mark>,
}

/// One mark on the paper.
#[derive(Debug, Clone, PartialEq)]
pub enum Mark {
    Line {
        from: Point,
        to: Point,
        pen: Pen,
    },
    Polyline {
        points: Vec<Point>,
        closed: bool,
        style: Style,
    },
    /// Degrees run clockwise from the right, as y grows downwards.
    Arc {
        centre: Point,
        radius: f64,
        start_deg: f64,
        sweep_deg: f64,
        pen: Pen,
    },
    Circle {
        centre: Point,
        radius: f64,
        style: Style,
    },
    Rect {
        area: Area,
        corner_radius: f64,
        style: Style,
    },
    Text(Text),
    Group(Group),
}

/// Marks that belong together, perhaps to be pointed at or pressed.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct Group {
    pub id: Option<String>,
    /// Its name when spoken.
    pub label: Option<String>,
    /// Where pressing it leads.
    pub link: Option<String>,
    pub marks: Vec<Mark>,
}

/// One line of lettering.
#[derive(Debug, Clone, PartialEq)]
pub struct Text {
    /// On the base line; which end of the text it is, says `anchor`.
    pub at: Point,
    pub text: String,
    pub size: f64,
    pub weight: Weight,
    pub anchor: Anchor,
    pub ink: Ink,
}

#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Point {
    pub x: f64,
    pub y: f64,
}

/// A rectangle by its upper left corner.
#[derive(Debug, Clone, Copy, PartialEq)]
pub struct Area {
    pub x: f64,
    pub y: f64,
    pub width: f64,
    pub height: f64,
}

/// What a mark is for; its colour follows from that.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Ink {
    Ink,
    /// A second line of text.
    Soft,
    /// A line that only parts things.
    Rule,
    /// What is new or next.
    Accent,
    Stop,
    Wait,
    Yes,
    /// The ground itself: hides what lies beneath.
    Paper,
}

/// How a line is drawn.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Pen {
    pub ink: Ink,
    pub stroke: Stroke,
    pub dash: Dash,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Stroke {
    /// 3 px: the curve that a drawing is about.
    Heavy,
    /// 2 px: edges of things.
    Outline,
    /// 1 px: hatching, dimensions, inner edges.
    Fine,
    /// 5 px: a belt.
    Belt,
    /// 4 px: what is wrong, over a belt.
    Wrong,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Dash {
    Solid,
    /// A hidden edge, or a thing that is not there.
    Dashed,
    /// A centre line.
    Centre,
}

/// The outline and the filling of a closed shape.
#[derive(Debug, Clone, Copy, Default, PartialEq, Eq)]
pub struct Style {
    pub line: Option<Pen>,
    pub fill: Option<Ink>,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Weight {
    Regular,
    Bold,
}

#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub enum Anchor {
    Start,
    Middle,
    End,
}

impl Pen {
    /// The 2 px line that edges a thing.
    #[must_use]
    pub const fn outline(ink: Ink) -> Self {
        Self {
            ink,
            stroke: Stroke::Outline,
            dash: Dash::Solid,
        }
    }

    /// The 3 px line of what a drawing is about.
    #[must_use]
    pub const fn heavy(ink: Ink) -> Self {
        Self {
            ink,
            stroke: Stroke::Heavy,
            dash: Dash::Solid,
        }
    }

    /// The 1 px line of hatching and dimensions.
    #[must_use]
    pub const fn fine(ink: Ink) -> Self {
        Self {
            ink,
            stroke: Stroke::Fine,
            dash: Dash::Solid,
        }
    }

    #[must_use]
    pub const fn dashed(self, dash: Dash) -> Self {
        Self { dash, ..self }
    }
}

impl Style {
    /// Drawn in outline, seen through.
    #[must_use]
    pub const fn line(pen: Pen) -> Self {
        Self {
            line: Some(pen),
            fill: None,
        }
    }

    /// Filled, without an edge of its own.
    #[must_use]
    pub const fn fill(ink: Ink) -> Self {
        Self {
            line: None,
            fill: Some(ink),
        }
    }
}

impl Point {
    #[must_use]
    pub const fn new(x: f64, y: f64) -> Self {
        Self { x, y }
    }
}

impl Area {
    #[must_use]
    pub fn right(&self) -> f64 {
        self.x + self.width
    }

    #[must_use]
    pub fn bottom(&self) -> f64 {
        self.y + self.height
    }

    /// Whether the two share more than an edge.
    #[must_use]
    pub fn overlaps(&self, other: &Self) -> bool {
        self.x < other.right()
            && other.x < self.right()
            && self.y < other.bottom()
            && other.y < self.bottom()
    }
}

impl Text {
    /// The room that the text takes, estimated on the large side.
    #[must_use]
    pub fn area(&self) -> Area {
        let width = text_width_px(&self.text, self.size, self.weight);
        let x = match self.anchor {
            Anchor::Start => self.at.x,
            Anchor::Middle => self.at.x - width / 2.0,
            Anchor::End => self.at.x - width,
        };
        Area {
            x,
            y: self.at.y - text::ASCENT * self.size,
            width,
            height: (text::ASCENT + text::DESCENT) * self.size,
        }
    }
}

impl Drawing {
    /// Every line of lettering, in groups or not.
    #[must_use]
    pub fn texts(&self) -> Vec<&Text> {
        fn collect<'a>(marks: &'a [Mark], found: &mut Vec<&'a Text>) {
            for mark in marks {
                match mark {
                    Mark::Text(text) => found.push(text),
                    Mark::Group(group) => collect(&group.marks, found),
                    _ => {}
                }
            }
        }
        let mut found = Vec::new();
        collect(&self.marks, &mut found);
        found
    }
}

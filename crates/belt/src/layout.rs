//! What a belt runs on: pulleys in their places, what tensions it, and the belt itself.

use crate::phrases as say;
use std::f64::consts::PI;

/// Which side of the belt lies on a pulley.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Side {
    /// The ribs, or the teeth of a toothed belt, or the inside of a flat one.
    Ribs,
    Back,
}

/// A turning sense, seen from the front of the engine with y upwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sense {
    Clockwise,
    CounterClockwise,
}

/// The face of a pulley, as it can be seen and felt.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Face {
    Ribbed,
    Smooth,
}

/// A pulley as the belt meets it. What nobody measured stays `None`.
#[derive(Clone, Debug, PartialEq)]
pub struct Pulley {
    pub name: String,
    pub x_mm: f64,
    pub y_mm: f64,
    /// Effective diameter where the ribs run; outside diameter where the back runs.
    pub diameter_mm: f64,
    pub side: Side,
    /// Whether it drives the belt: the crank.
    pub drives: bool,
    /// For the one that drives: how it turns. For another: how it must turn.
    pub turns: Option<Sense>,
    pub face: Option<Face>,
    /// Grooves of the pulley.
    pub grooves: Option<u32>,
    /// Where the belt's front edge lies on it, from a plane common to all.
    pub edge_mm: Option<f64>,
    /// What it takes from the belt at the crank's `rpm`.
    pub power_kw: Option<f64>,
    /// The least wrap that the maker asks for here.
    pub least_wrap_deg: Option<f64>,
    /// How far a flange stands above the face; zero if there is none.
    pub flange_mm: f64,
    /// Whether a hand can reach it.
    pub reachable: bool,
    /// Teeth of a toothed pulley.
    pub teeth: Option<u32>,
    /// Where its timing mark stands, in degrees from the right, counter-clockwise.
    pub mark_deg: Option<f64>,
}

impl Pulley {
    /// A pulley with its ribs' side to the belt, of which nothing else is known.
    ///
    /// ```
    /// let crank = belt::Pulley::new("crank", 0.0, 0.0, 150.0);
    /// assert!(crank.reachable && crank.side == belt::Side::Ribs);
    /// ```
    pub fn new(name: impl Into<String>, x_mm: f64, y_mm: f64, diameter_mm: f64) -> Pulley {
        Pulley {
            name: name.into(),
            x_mm,
            y_mm,
            diameter_mm,
            side: Side::Ribs,
            drives: false,
            turns: None,
            face: None,
            grooves: None,
            edge_mm: None,
            power_kw: None,
            least_wrap_deg: None,
            flange_mm: 0.0,
            reachable: true,
            teeth: None,
            mark_deg: None,
        }
    }

    /// The same, with the belt's back on it.
    #[must_use]
    pub fn on_back(mut self) -> Pulley {
        self.side = Side::Back;
        self
    }

    /// The same, driving the belt.
    #[must_use]
    pub fn driving(mut self, turns: Sense) -> Pulley {
        self.drives = true;
        self.turns = Some(turns);
        self
    }
}

/// How the belt's line lies against the diameters given.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Profile {
    /// The line runs on the diameters given.
    AsGiven,
    /// Ribs after ISO 9981: diameters are effective, and so is the length.
    Pk {
        /// From the effective line out to the belt's back.
        back_mm: f64,
    },
    /// A toothed belt: the line runs on the pitch circles.
    Toothed {
        pitch_mm: f64,
        /// From the pitch line out to the belt's back, where it was measured.
        back_mm: f64,
    },
}

/// Nominal effective line differential of the PK profile.
pub const PK_LINE_DIFFERENTIAL_MM: f64 = 2.0;
/// Distance of rib to rib of the PK profile.
pub const PK_PITCH_MM: f64 = 3.56;
/// Groove angle of the PK profile.
pub const PK_GROOVE_DEG: f64 = 40.0;
/// From the effective line to the back: a belt's outside is about 14 mm longer than its
/// effective length.
pub const PK_BACK_MM: f64 = 14.0 / (2.0 * PI);

impl Profile {
    /// PK with its nominal distance to the back.
    pub const PK: Profile = Profile::Pk {
        back_mm: PK_BACK_MM,
    };

    /// How far beyond the face of a pulley the measured line of the belt runs.
    pub(crate) fn line_offset_mm(self, side: Side) -> f64 {
        match (self, side) {
            (Profile::Pk { back_mm } | Profile::Toothed { back_mm, .. }, Side::Back) => back_mm,
            _ => 0.0,
        }
    }

    /// From the measured line out to the pitch line, where speeds are equal.
    pub(crate) fn pitch_offset_mm(self) -> f64 {
        match self {
            Profile::Pk { .. } => PK_LINE_DIFFERENTIAL_MM,
            Profile::AsGiven | Profile::Toothed { .. } => 0.0,
        }
    }

    pub(crate) fn is_toothed(self) -> bool {
        matches!(self, Profile::Toothed { .. })
    }
}

/// How the tensioned pulley's centre can move.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Travel {
    /// About a pivot, between two angles from the right, counter-clockwise.
    Arc {
        pivot_x_mm: f64,
        pivot_y_mm: f64,
        min_deg: f64,
        max_deg: f64,
    },
    /// Along a straight line.
    Line {
        from_x_mm: f64,
        from_y_mm: f64,
        to_x_mm: f64,
        to_y_mm: f64,
    },
}

/// What moves it and what holds it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum TensionerKind {
    SpringArm,
    Hydraulic,
    /// Swung or slid by hand and bolted.
    Slot,
    JackScrew,
    /// The belt stretches onto fixed pulleys and may be fitted once.
    StretchBelt,
}

/// What tensions the belt.
#[derive(Clone, Debug, PartialEq)]
pub struct Tensioner {
    pub kind: TensionerKind,
    /// The pulley that moves, and how; nothing for a stretch belt.
    pub moves: Option<(String, Travel)>,
    /// The spring's torque on the arm, or what a strut makes of it.
    pub torque_nm: Option<f64>,
    /// A force at the pulley's centre, square to the arm or along the line.
    pub force_n: Option<f64>,
}

/// What is known of the belt and its load.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Facts {
    /// Ribs of the belt.
    pub ribs: Option<u32>,
    /// Friction of the ribs' faces, and of the back.
    pub friction: Option<f64>,
    pub back_friction: Option<f64>,
    /// Angle of the grooves; PK has its own.
    pub groove_deg: Option<f64>,
    /// Tension at rest, where it was measured or the maker states it.
    pub tension_n: Option<f64>,
    /// Speed of the crank at which the powers hold.
    pub rpm: Option<f64>,
}

/// How the belt was found to lie: pulleys in sequence, with the side on each.
pub type Lies = Vec<(String, Side)>;

/// A whole drive.
#[derive(Clone, Debug, PartialEq)]
pub struct Layout {
    /// In the sequence in which the belt meets them.
    pub pulleys: Vec<Pulley>,
    pub tensioner: Option<Tensioner>,
    pub profile: Profile,
    pub facts: Facts,
    /// How it lies now, if somebody looked.
    pub lies: Option<Lies>,
}

impl Layout {
    /// Pulleys without a tensioner; the line runs on the diameters given.
    pub fn of(pulleys: Vec<Pulley>) -> Layout {
        Layout {
            pulleys,
            tensioner: None,
            profile: Profile::AsGiven,
            facts: Facts::default(),
            lies: None,
        }
    }

    /// Radius of the measured line on a pulley.
    pub(crate) fn radius_mm(&self, pulley: &Pulley) -> f64 {
        pulley.diameter_mm / 2.0 + self.profile.line_offset_mm(pulley.side)
    }

    /// Radius of the pitch line on a pulley: beyond the measured line under the ribs, inside
    /// it under the back.
    pub(crate) fn pitch_radius_mm(&self, pulley: &Pulley) -> f64 {
        let offset = self.profile.pitch_offset_mm();
        match pulley.side {
            Side::Ribs => self.radius_mm(pulley) + offset,
            Side::Back => self.radius_mm(pulley) - offset,
        }
    }
}

impl Side {
    pub fn other(self) -> Side {
        match self {
            Side::Ribs => Side::Back,
            Side::Back => Side::Ribs,
        }
    }

    pub fn name(self) -> &'static str {
        match self {
            Side::Ribs => "ribs",
            Side::Back => "back",
        }
    }
}

impl Sense {
    pub fn other(self) -> Sense {
        match self {
            Sense::Clockwise => Sense::CounterClockwise,
            Sense::CounterClockwise => Sense::Clockwise,
        }
    }

    /// As it is written in a layout.
    pub fn name(self) -> &'static str {
        match self {
            Sense::Clockwise => "cw",
            Sense::CounterClockwise => "ccw",
        }
    }

    /// As it is said.
    pub fn words(self) -> &'static str {
        match self {
            Sense::Clockwise => say::clockwise(),
            Sense::CounterClockwise => say::counter_clockwise(),
        }
    }

    pub(crate) fn sign(self) -> f64 {
        match self {
            Sense::Clockwise => -1.0,
            Sense::CounterClockwise => 1.0,
        }
    }
}

impl TensionerKind {
    pub const ALL: [TensionerKind; 5] = [
        TensionerKind::SpringArm,
        TensionerKind::Hydraulic,
        TensionerKind::Slot,
        TensionerKind::JackScrew,
        TensionerKind::StretchBelt,
    ];

    /// As it is written in a layout.
    pub fn name(self) -> &'static str {
        match self {
            TensionerKind::SpringArm => "arm",
            TensionerKind::Hydraulic => "hydraulic",
            TensionerKind::Slot => "slot",
            TensionerKind::JackScrew => "screw",
            TensionerKind::StretchBelt => "none",
        }
    }

    /// Whether it takes up length by itself while the engine runs.
    pub fn follows(self) -> bool {
        matches!(self, TensionerKind::SpringArm | TensionerKind::Hydraulic)
    }
}

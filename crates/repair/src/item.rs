//! Items: what can be out of its place, and the codes gates look at.

use crate::text::{Token, Words, Written};
use states::{ItemId, Kind, Position};

/// The part of the vehicle an item belongs to; gates look at it.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum System {
    /// Brakes, their hydraulics and their fluid.
    Brakes,
    /// Steering, its pump and its fluid.
    Steering,
    /// Wheels and what holds them.
    Wheels,
    /// Suspension.
    Suspension,
    /// Fuel, from tank to injector.
    Fuel,
    /// Airbags, belts and their wiring.
    Restraints,
    /// The drive belt and what it drives.
    DriveBelt,
    /// High voltage.
    HighVoltage,
    /// Coolant and what holds it.
    Cooling,
    /// Engine oil and what holds it.
    Oil,
    /// The engine itself.
    Engine,
    /// Gearbox, clutch, shafts.
    Transmission,
    /// Air on its way in.
    Intake,
    /// Exhaust.
    Exhaust,
    /// The battery and its terminals.
    Battery,
    /// Lamps, sensors, wiring.
    Electrical,
    /// Heating and air conditioning.
    Climate,
    /// Body, trim, covers, shields.
    Body,
    /// Not told yet: stands at every gate.
    Unknown,
}

/// Where on the vehicle an item is worked on.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Zone {
    /// Under the bonnet, from above.
    Above,
    /// From below.
    Below,
    /// Through a wheel well.
    WheelWell,
    /// In the cabin.
    Cabin,
    /// At the back, or the load bed.
    Rear,
    /// On the outside.
    Outside,
    /// Not told yet.
    Unknown,
}

/// What a put-in is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PutIn {
    /// A clamp that pinches a hose.
    Clamp,
    /// A plug or cap in an opening.
    Plug,
    /// A rag.
    Rag,
    /// A lamp.
    Lamp,
    /// A tool.
    Tool,
    /// A locking pin.
    Pin,
    /// A cord or strap that holds something.
    Cord,
    /// Chips from drilling.
    Chips,
    /// The tang of a thread insert.
    Tang,
    /// Anything else.
    Other,
}

/// One piece of an item and, where it matters, its length.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Piece {
    /// Its position, from 1.
    pub position: Position,
    /// Its length as written, such as `75 mm`.
    pub length: Option<Written>,
}

/// How a group is tightened: the passes in turn, and the sequence of positions.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Pattern {
    /// What each pass is: `30 Nm`, then `60 Nm`, then `90 deg`.
    pub passes: Vec<Written>,
    /// The positions in tightening sequence; empty when none is stated.
    pub sequence: Vec<Position>,
    /// Who says so.
    pub source: Option<Words>,
}

/// How many of a group of clips or cover screws may be missing, and where never.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct MayMiss {
    /// At most so many.
    pub up_to: u16,
    /// Never at these positions.
    pub never_at: Vec<Position>,
}

/// One thing that can be out of its place.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Item {
    /// Its name, made on the device.
    pub id: ItemId,
    /// What sort of thing it is.
    pub kind: Kind,
    /// The system it belongs to.
    pub system: System,
    /// Where it is worked on.
    pub zone: Zone,
    /// What people call it.
    pub label: Words,
    /// Its size as a code, such as `M6x16 8.8`.
    pub size: Option<Token>,
    /// Its pieces, always by position.
    pub pieces: Vec<Piece>,
    /// How it is tightened, where that is known.
    pub pattern: Option<Pattern>,
    /// Whether it may not go back once off: its home is then "on, new".
    pub spent: bool,
    /// How many may be missing.
    pub may_miss: Option<MayMiss>,
    /// What it is, if it is put into the vehicle.
    pub put_in: Option<PutIn>,
    /// How much it holds, for a fluid, as written.
    pub holds: Option<Written>,
}

impl System {
    /// Whether stricter rules hold: a second person's check, nothing missing ever.
    #[must_use]
    pub fn is_safety(self) -> bool {
        matches!(
            self,
            System::Brakes
                | System::Steering
                | System::Wheels
                | System::Fuel
                | System::Restraints
                | System::DriveBelt
                | System::HighVoltage
        )
    }

    /// Whether the vehicle stops when this system's fluid is lost.
    #[must_use]
    pub fn stops_without_fluid(self) -> bool {
        matches!(
            self,
            System::Brakes
                | System::Steering
                | System::Cooling
                | System::Oil
                | System::Fuel
                | System::Transmission
        )
    }

    /// Whether work on it shows on the road.
    #[must_use]
    pub fn runs(self) -> bool {
        !matches!(
            self,
            System::Body | System::Electrical | System::Battery | System::Climate | System::Unknown
        )
    }
}

impl Item {
    /// Whether the item is of the safety class.
    #[must_use]
    pub fn is_safety(&self) -> bool {
        match self.kind {
            Kind::Fluid => self.system.stops_without_fluid(),
            Kind::PutIn | Kind::Work => false,
            _ => self.system.is_safety(),
        }
    }

    /// Its positions: those of its pieces, or 1.
    #[must_use]
    pub fn positions(&self) -> Vec<Position> {
        if self.pieces.is_empty() {
            return vec![1];
        }
        self.pieces.iter().map(|piece| piece.position).collect()
    }
}

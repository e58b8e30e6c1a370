//! Items: what can be out of its place, and the codes gates look at.

use crate::text::{Token, Words, Written};
use crate::trade::Trade;
use states::{ItemId, Kind, Position, System, Zone};

/// What a put-in is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PutIn {
    /// A clamp that pinches a hose.
    Clamp,
    /// A plug or cap in an opening.
    Plug,
    Rag,
    Lamp,
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
    /// What the trade knows of it, by its name.
    pub trade: Option<Trade>,
}

impl Item {
    /// Whether the item is of the safety class.
    #[must_use]
    pub fn is_safety(&self) -> bool {
        let by_system = match self.kind {
            Kind::Fluid => self.system.stops_without_fluid(),
            Kind::PutIn | Kind::Work => false,
            _ => self.system.is_safety(),
        };
        match self.known_trade() {
            Some(_) if matches!(self.kind, Kind::PutIn | Kind::Work) => false,
            Some(trade) => trade.safety || self.told_otherwise() && by_system,
            None => by_system,
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

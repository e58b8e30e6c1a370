//! The codes and small values that facts are made of.

use crate::ids::{MoveId, StallId, WorkId};
use crate::text::{Token, Written};
use jiff::civil::Date;
use states::{Gate, ItemId, Position, State};

/// What a piece is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PieceIs {
    /// The one the vehicle came with.
    Original,
    /// A new one of the same kind.
    New,
    /// Another kind, which becomes a standing difference.
    Substitute,
}

/// Where a piece is left, and what it then is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct Stand {
    /// The state it is left in.
    pub state: State,
    /// What the piece is.
    pub piece: PieceIs,
}

/// One change of one item's state.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Move {
    pub item: ItemId,
    /// The positions, never a bare count.
    pub at: Vec<Position>,
    /// The moves its author had seen: on these positions, and on the items that a
    /// stated need of this move looks at.
    pub after: Vec<MoveId>,
    /// Where the pieces are left.
    pub left: Stand,
    /// The container they lie in.
    pub container: Option<Token>,
}

/// What work aims at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum AimIs {
    /// Getting at items, and everything home again.
    Reach,
    /// Everything home again.
    Home,
    /// So much home that it may roll.
    Roll,
}

/// One item on its way to a state.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Step {
    pub item: ItemId,
    /// The state it comes to.
    pub to: State,
}

/// What was noted at the walk-round.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Noted {
    /// A warning lamp is lit.
    WarningLamp,
    /// A scratch, dent or crack.
    Damage,
    /// Something is missing that no item stands for.
    Missing,
    EarlierRepair,
    /// Where the key of the locking nuts is, or that there is none.
    LockingKey,
    /// A leak or a wet place.
    Leak,
    /// Anything else.
    Other,
}

/// What went wrong with a piece, or how it was found.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum SnagIs {
    /// A fastener snapped.
    Snapped,
    /// A fastener will not turn.
    Stuck,
    /// A thread is stripped.
    Stripped,
    /// A head is rounded.
    Rounded,
    Torn,
    Worn,
    /// Cracked or broken.
    Broken,
    /// Bent or warped.
    Bent,
    Corroded,
    Leaking,
    /// Missing or lost.
    Missing,
    /// Anything else.
    Other,
}

/// How the rest of a snapped piece sits.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Sits {
    /// It stands proud of the face.
    Proud,
    /// It is level with the face.
    Flush,
    /// It is below the face.
    Below,
}

/// Which stall work needs.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum StallNeeded {
    Lift,
    Flat,
    /// Any of them.
    Any,
    /// Bench, yard or road.
    No,
}

/// How a snag was brought to an end.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Resolved {
    /// It came out and all is as before.
    AsBefore,
    /// The thread was cleaned up.
    ThreadChased,
    /// A wire insert of the same size.
    WireInsert,
    /// A solid bushing of the same size.
    Bushing,
    /// A larger thread.
    Oversize,
    /// A longer bolt into sound thread.
    LongerBolt,
    NewPart,
    /// Left as it is, by the customer's consent.
    LeftByConsent,
    /// Another way, told in words.
    Other,
}

/// What became of drained fluid.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Fate {
    /// Kept clean, to go back in.
    Kept,
    /// Put aside to be recycled.
    Recycled,
    /// Put aside to be disposed of.
    Disposed,
    /// Lost on the way.
    Spilled,
}

/// When a level was looked at.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LevelAt {
    /// Warm, after running.
    Warm,
    /// Cold, after one full heating and cooling.
    Cold,
}

/// Work that a move leaves to be done.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum WorkIs {
    /// Bleed the air out.
    Bleed,
    /// See the level warm.
    LevelWarm,
    /// See the level cold after one full heating and cooling.
    LevelCold,
    LookForLeaks,
    /// Torque again, because a stated need was broken.
    TorqueAgain,
    /// Torque again after a distance on the road.
    TorqueAfterDistance,
    /// Pump the brake pedal.
    PumpPedal,
    /// Teach a control unit again.
    Relearn,
    /// Check the wheel alignment.
    Alignment,
    /// Clock, windows, radio after the battery was off.
    ClockAndWindows,
    CleanFace,
    /// Told in words.
    Other,
}

/// One piece of work owed: what, on which item, or which a person declared.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub struct Work {
    /// What is to be done.
    pub work: WorkIs,
    /// The item whose move made it due.
    pub item: Option<ItemId>,
    /// The name of a person's own declaration.
    pub own: Option<WorkId>,
    /// The map's own item for this work. Two of them are two, whatever sort they are of.
    pub named: Option<ItemId>,
    /// What the trade calls it, as a code such as `bleed-brakes`.
    pub sort: Option<Token>,
}

impl Work {
    /// Work of this sort on an item, or once for all.
    #[must_use]
    pub fn usual(work: WorkIs, item: Option<ItemId>) -> Self {
        Self {
            work,
            item,
            own: None,
            named: None,
            sort: None,
        }
    }

    /// Work that a person declared.
    #[must_use]
    pub fn declared(own: WorkId, item: Option<ItemId>) -> Self {
        Self {
            own: Some(own),
            ..Self::usual(WorkIs::Other, item)
        }
    }

    /// Work that stands in a map under this name.
    #[must_use]
    pub fn named(named: ItemId, work: WorkIs) -> Self {
        Self {
            named: Some(named),
            ..Self::usual(work, None)
        }
    }

    /// What of it says which work it is: a person's own name for it, else the map's, else
    /// the trade's, else its sort, and the item it is done on.
    #[must_use]
    pub fn identity(&self) -> Self {
        if let Some(own) = &self.own {
            return Self::declared(own.clone(), None);
        }
        if let Some(named) = &self.named {
            return Self::named(named.clone(), WorkIs::Other);
        }
        let work = match self.sort {
            Some(_) => WorkIs::Other,
            None => self.work,
        };
        Self {
            sort: self.sort.clone(),
            ..Self::usual(work, self.item.clone())
        }
    }
}

/// Until when work is due.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Until {
    /// Before the vehicle may do this.
    Before(Gate),
    /// After hand-over, by a date, a distance, or as the words say.
    Later {
        /// By this date.
        date: Option<Date>,
        /// After so far on the road, as written.
        distance: Option<Written>,
    },
}

/// What a person's clock does.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Clock {
    /// The stage is opened.
    Opened,
    /// Work pauses.
    Paused,
    /// Work goes on.
    Resumed,
    /// The stage is left unfinished.
    Left,
}

/// Who checked.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum CheckIs {
    /// A second person looked.
    SecondPerson,
    /// Alone: a second walk-round with the list reversed.
    WalkedBack,
}

/// What shows that the repair holds.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ProofIs {
    RoadTest,
    /// Pressure held in the cooling system.
    LeakTest,
    /// Pedal firm, brakes tried at walking speed.
    BrakeTest,
    /// No fuel leak with the system under pressure.
    FuelLeakLook,
    /// The restraint lamp goes out after its self-check.
    RestraintLamp,
    /// The coolant's mix, measured after filling, lies within its limits.
    CoolantMix,
    /// Another test, told in words.
    Other,
}

/// What the proof showed.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Outcome {
    /// It holds.
    Held,
    /// It does not.
    Failed,
    /// The complaint could not be brought on again.
    NotProvoked,
}

/// One reading taken in a proof.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Reading {
    /// What was read.
    pub what: Token,
    /// The value as written.
    pub value: Written,
}

/// Which text of a line is meant.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum LineText {
    /// What the customer says.
    Complaint,
    /// What was found.
    Cause,
    /// What was done.
    Correction,
}

/// What a consent allows.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum ConsentStep {
    /// To look for the cause.
    Diagnose,
    /// To take apart, including putting back if declined.
    TakeApart,
    Repair,
    /// To do more than was agreed.
    Add,
}

/// How people spoke.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Way {
    /// Face to face.
    InPerson,
    /// By telephone.
    Phone,
    Message,
    Mail,
    /// Signed on paper or on the screen.
    Signed,
}

/// What somebody is rung about.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum RungAbout {
    /// A yes or no.
    Approval,
    /// A promise that is not kept, or kept otherwise.
    Promise,
    /// That it can be collected.
    Ready,
    /// Work that is due, long after it left.
    Due,
    /// Whether it came back, after a fault that did not show itself.
    FollowUp,
}

/// How money moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PaidBy {
    Cash,
    Card,
    /// Bank transfer.
    Transfer,
    Cheque,
    /// Put on the payer's account, to be paid later.
    OnAccount,
}

/// Where a part has got to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PartStep {
    Ordered,
    Received,
    /// Laid beside the old one and the same.
    Compared,
    /// Fitted to the vehicle.
    Fitted,
    /// Sent back.
    Returned,
    /// Put into stock.
    Stocked,
    /// Not wanted after all.
    Cancelled,
}

/// What became of an old part.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OldPartFate {
    /// Kept for the customer.
    Kept,
    /// Given to the customer.
    Given,
    /// Sent back as a core.
    Core,
    /// Scrapped.
    Scrap,
}

/// Where the vehicle stands.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord)]
pub enum Place {
    Stall(StallId),
    Yard,
    /// Away from the shop.
    Away,
}

/// Where the keys are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum KeyStep {
    /// Taken in by the shop.
    Taken,
    GivenBack,
}

/// When an odometer was read.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum OdometerAt {
    /// On the way in.
    In,
    /// On the way out.
    Out,
}

/// What a standing difference is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum DifferenceIs {
    /// A thread now holds an insert.
    Insert,
    /// A hole or thread is larger.
    Larger,
    /// A bolt is longer.
    Longer,
    /// Another part stands in for the one of the maker.
    Substitute,
    /// Something is gone by consent.
    Gone,
    /// Told in words.
    Other,
}

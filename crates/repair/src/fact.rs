//! Facts: statements of what is already so. None is ever refused.

use crate::ids::{
    CommandId, DifferenceId, LineId, MoveId, NoteId, PartId, PersonId, ProofId, SnagId, StageId,
    StallId, SubletId, WorkId,
};
use crate::item::{Item, Piece, System, Zone};
use crate::text::{File, Token, Words, Written};
use jiff::{Timestamp, civil::Date};
use price::Payer;
use rust_decimal::Decimal;
use states::{ItemId, Position, State};

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
    /// The item.
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

/// What was noted at the walk-round.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Noted {
    /// A warning lamp is lit.
    WarningLamp,
    /// A scratch, dent or crack.
    Damage,
    /// Something is missing that no item stands for.
    Missing,
    /// An earlier repair.
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
    /// Torn.
    Torn,
    /// Worn.
    Worn,
    /// Cracked or broken.
    Broken,
    /// Bent or warped.
    Bent,
    /// Corroded.
    Corroded,
    /// Leaking.
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
    /// A new part.
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
    /// Look for leaks.
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
    /// Clean the face.
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

/// What the vehicle may be asked to do next.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Gate {
    /// Battery on.
    GoLive,
    /// Start the engine.
    Start,
    /// Lower it from the lift.
    Lower,
    /// Roll it in the yard.
    Roll,
    /// Drive it on the road to test.
    Road,
    /// Hand it over.
    HandOver,
}

impl Gate {
    /// All six, in the order a vehicle meets them.
    pub const ALL: [Gate; 6] = [
        Gate::GoLive,
        Gate::Start,
        Gate::Lower,
        Gate::Roll,
        Gate::Road,
        Gate::HandOver,
    ];
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
    /// The road test.
    RoadTest,
    /// Pressure held in the cooling system.
    LeakTest,
    /// Pedal firm, brakes tried at walking speed.
    BrakeTest,
    /// No fuel leak with the system under pressure.
    FuelLeakLook,
    /// The restraint lamp goes out after its self-check.
    RestraintLamp,
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
    /// To repair.
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
    /// By message.
    Message,
    /// By mail.
    Mail,
    /// Signed on paper or on the screen.
    Signed,
}

/// How money moved.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PaidBy {
    /// Cash.
    Cash,
    /// Card.
    Card,
    /// Bank transfer.
    Transfer,
    /// Cheque.
    Cheque,
    /// Put on the payer's account, to be paid later.
    OnAccount,
}

/// Where a part has got to.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum PartStep {
    /// Ordered.
    Ordered,
    /// Received.
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
    /// In a stall.
    Stall(StallId),
    /// In the yard.
    Yard,
    /// Away from the shop.
    Away,
}

/// Where the keys are.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum KeyStep {
    /// Taken in by the shop.
    Taken,
    /// Given back.
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

/// A statement of what is already so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Fact {
    /// An item is spoken of for the first time.
    Declared {
        /// The item.
        item: Item,
    },
    /// Two names stand for one thing.
    SameAs {
        /// One name.
        item: ItemId,
        /// The other.
        also: ItemId,
    },
    /// The pieces were counted again.
    CountCorrected {
        /// The item.
        item: ItemId,
        /// Its true pieces.
        pieces: Vec<Piece>,
        /// The corrections seen.
        after: Vec<CommandId>,
    },
    /// An item is called something else.
    Renamed {
        /// The item.
        item: ItemId,
        /// Its new label.
        label: Words,
        /// The renamings seen.
        after: Vec<CommandId>,
    },
    /// It is told which system an item belongs to and where it is worked on.
    Located {
        /// The item.
        item: ItemId,
        /// Its system.
        system: System,
        /// Its zone.
        zone: Zone,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// How things were found; at the walk-round if the moves had seen nothing.
    Found {
        /// Where each stood.
        moves: Vec<Move>,
    },
    /// Something was noted that is no item.
    Observed {
        /// Its name.
        id: NoteId,
        /// Where.
        zone: Zone,
        /// What sort of thing.
        what: Noted,
        /// In words.
        words: Option<Words>,
        /// Photos.
        photos: Vec<File>,
    },
    /// An area was walked round; nothing more was found there.
    Walked {
        /// The area.
        zone: Zone,
    },
    /// A stage's moves, or one move.
    Moved {
        /// The stage, if there was one.
        stage: Option<StageId>,
        /// The moves.
        moves: Vec<Move>,
    },
    /// Somebody looked and says where things stand.
    Seen {
        /// Where each stands.
        moves: Vec<Move>,
    },
    /// Fluid came out.
    Drained {
        /// The fluid.
        item: ItemId,
        /// How much, as written.
        amount: Written,
        /// What became of it.
        fate: Fate,
        /// How warm it was, as written.
        temperature: Option<Written>,
    },
    /// Fluid went in.
    Poured {
        /// The fluid.
        item: ItemId,
        /// How much, as written.
        amount: Written,
        /// What it was.
        what: Option<Words>,
        /// How warm it was, as written.
        temperature: Option<Written>,
    },
    /// A fluid's level was looked at.
    LevelSeen {
        /// The fluid.
        item: ItemId,
        /// Warm or cold.
        level: LevelAt,
        /// Whether it was where it belongs.
        good: bool,
        /// What was read, as written.
        reading: Option<Written>,
        /// How warm it was, as written.
        temperature: Option<Written>,
        /// The moves of the fluid that were seen.
        after: Vec<MoveId>,
    },
    /// Work that was due has been done.
    WorkDone {
        /// The work.
        work: Work,
        /// The moves it answers.
        after: Vec<MoveId>,
        /// In words.
        words: Option<Words>,
    },
    /// A person says that work is due.
    WorkDue {
        /// Its name.
        id: WorkId,
        /// The item it concerns.
        item: Option<ItemId>,
        /// What is to be done.
        words: Words,
        /// Until when.
        until: Until,
    },
    /// A person's clock on a stage.
    Timed {
        /// The stage.
        stage: StageId,
        /// What the clock does.
        clock: Clock,
        /// Minutes the book allows, where there is a book.
        book_minutes: Option<Decimal>,
        /// Why, for a pause.
        words: Option<Words>,
    },
    /// Something went wrong or was found.
    SnagFound {
        /// Its name.
        snag: SnagId,
        /// The item.
        item: Option<ItemId>,
        /// The positions.
        at: Vec<Position>,
        /// What it is.
        what: SnagIs,
        /// How the rest sits.
        sits: Option<Sits>,
        /// In words.
        words: Option<Words>,
        /// Photos.
        photos: Vec<File>,
        /// Where the pieces now stand.
        moves: Vec<Move>,
    },
    /// A snag came to its end.
    SnagResolved {
        /// The snag.
        snag: SnagId,
        /// How.
        how: Resolved,
        /// In words.
        words: Option<Words>,
        /// The calculation it rests on.
        calculation: Option<NoteId>,
        /// Where the pieces now stand.
        moves: Vec<Move>,
    },
    /// A calculator's result is kept with its working.
    Calculated {
        /// Its name.
        id: NoteId,
        /// The item it concerns.
        item: Option<ItemId>,
        /// The snag it concerns.
        snag: Option<SnagId>,
        /// The calculator.
        calculator: Token,
        /// Its version.
        version: u32,
        /// What went in, as the calculator writes it.
        inputs: String,
        /// What came out.
        outputs: String,
        /// How it was found.
        working: String,
    },
    /// This vehicle now differs from others of its kind.
    DifferenceNoted {
        /// Its name.
        id: DifferenceId,
        /// The item.
        item: Option<ItemId>,
        /// The positions.
        at: Vec<Position>,
        /// What sort of difference.
        what: DifferenceIs,
        /// The size that holds now.
        size: Option<Token>,
        /// The torque that holds now, as written.
        torque: Option<Written>,
        /// In words.
        words: Option<Words>,
    },
    /// Somebody checked safety-class items.
    Checked {
        /// Who.
        check: CheckIs,
        /// The items looked at.
        items: Vec<ItemId>,
        /// The moves of theirs that were seen.
        after: Vec<MoveId>,
    },
    /// Evidence that the repair holds, or does not.
    Proved {
        /// Its name.
        id: ProofId,
        /// The line it answers, if one.
        line: Option<LineId>,
        /// What was tested.
        proof: ProofIs,
        /// What it showed.
        outcome: Outcome,
        /// In words.
        words: Option<Words>,
        /// What was read.
        readings: Vec<Reading>,
        /// The calculation it rests on.
        calculation: Option<NoteId>,
        /// The moves that were seen.
        after: Vec<MoveId>,
        /// Earlier proofs that this one replaces.
        replaces: Vec<ProofId>,
    },
    /// A complaint opens a line.
    LineOpened {
        /// Its name.
        line: LineId,
        /// What the customer says.
        complaint: Words,
        /// Who pays.
        payer: Payer,
    },
    /// A text of a line is told, or told better.
    LineWorded {
        /// The line.
        line: LineId,
        /// Which text.
        text: LineText,
        /// The text.
        words: Words,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// The customer agreed, or did not.
    Consented {
        /// To what.
        step: ConsentStep,
        /// Who pays.
        payer: Payer,
        /// The lines meant; none named means all.
        lines: Vec<LineId>,
        /// Yes or no.
        agreed: bool,
        /// The most that may be charged in all, once this is agreed.
        amount: Option<Decimal>,
        /// Whether tax is within it.
        tax_included: bool,
        /// How they spoke.
        way: Way,
        /// Who spoke.
        person: Option<Words>,
        /// What was said.
        said: Option<Words>,
        /// The number called.
        number_called: Option<Words>,
        /// The signature.
        signature: Option<File>,
        /// The consents seen.
        after: Vec<CommandId>,
    },
    /// The customer will not have something put right, and signed for it.
    Declined {
        /// The items concerned.
        items: Vec<ItemId>,
        /// The positions, where only some.
        at: Vec<Position>,
        /// Why, in words.
        words: Words,
        /// The signature.
        signature: Option<File>,
    },
    /// Money moved; a negative amount went back.
    Paid {
        /// Who pays.
        payer: Payer,
        /// How much.
        amount: Decimal,
        /// How.
        by: PaidBy,
        /// Whether it is a deposit.
        deposit: bool,
    },
    /// A part is needed.
    PartNeeded {
        /// Its name.
        part: PartId,
        /// The line it belongs to.
        line: Option<LineId>,
        /// The item it goes on.
        item: Option<ItemId>,
        /// What it is called.
        label: Words,
        /// Its number.
        number: Option<Token>,
        /// How many.
        quantity: Decimal,
        /// What one costs the shop.
        cost: Option<Decimal>,
        /// What one is sold for.
        price: Option<Decimal>,
        /// The core charge of one.
        core: Option<Decimal>,
        /// Whether an old one comes off for it.
        has_old: bool,
    },
    /// Some of a part got somewhere.
    PartStepped {
        /// The part.
        part: PartId,
        /// How many.
        quantity: Decimal,
        /// Where.
        step: PartStep,
        /// When it is due, if it is on its way.
        due: Option<Date>,
        /// From or to whom, in words.
        words: Option<Words>,
    },
    /// An old part went somewhere.
    OldPart {
        /// The part that replaces it.
        part: Option<PartId>,
        /// The item it came from.
        item: Option<ItemId>,
        /// Where it went.
        fate: OldPartFate,
    },
    /// Something was sent out to be worked on.
    SubletOut {
        /// Its name.
        sublet: SubletId,
        /// The line it belongs to.
        line: Option<LineId>,
        /// The items sent.
        items: Vec<ItemId>,
        /// What is to be done.
        what: Words,
        /// To whom.
        to: Words,
        /// When it is due back.
        due: Option<Date>,
        /// What it costs the shop.
        cost: Option<Decimal>,
    },
    /// It came back.
    SubletBack {
        /// Its name.
        sublet: SubletId,
        /// In words.
        words: Option<Words>,
    },
    /// Keys came or went.
    Keys {
        /// Which.
        step: KeyStep,
        /// Where they hang, or to whom they went.
        words: Option<Words>,
    },
    /// The odometer was read.
    Odometer {
        /// As written, with its unit.
        reading: Written,
        /// In or out.
        at: OdometerAt,
    },
    /// The vehicle stands somewhere.
    Stood {
        /// Where.
        place: Place,
    },
    /// The customer was promised a time.
    Promised {
        /// When.
        at: Timestamp,
    },
    /// Who is to work on it.
    Assigned {
        /// The person.
        person: PersonId,
    },
    /// A photo or file belongs to something.
    Attached {
        /// The file.
        file: File,
        /// The item it shows.
        item: Option<ItemId>,
        /// The snag it shows.
        snag: Option<SnagId>,
        /// In words.
        words: Option<Words>,
    },
    /// A command, or one move of it, is taken back as if it had not been.
    Undo {
        /// The command.
        command: CommandId,
        /// Only this move of it.
        part: Option<u16>,
    },
}

impl Fact {
    /// The moves this fact carries, whatever it is.
    #[must_use]
    pub fn moves(&self) -> &[Move] {
        match self {
            Fact::Found { moves }
            | Fact::Moved { moves, .. }
            | Fact::Seen { moves }
            | Fact::SnagFound { moves, .. }
            | Fact::SnagResolved { moves, .. } => moves,
            _ => &[],
        }
    }
}

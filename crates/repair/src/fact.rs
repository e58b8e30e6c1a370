//! Facts: statements of what is already so. None is ever refused.

use crate::code::{
    AimIs, CheckIs, Clock, ConsentStep, DifferenceIs, Fate, KeyStep, LevelAt, LineText, Move,
    Noted, OdometerAt, OldPartFate, Outcome, PaidBy, PartStep, Place, ProofIs, Reading, Resolved,
    RungAbout, Sits, SnagIs, StallNeeded, Step, Until, Way, Work,
};
use crate::ids::{
    CommandId, DifferenceId, LineId, MoveId, NoteId, PartId, PersonId, ProofId, SnagId, StageId,
    SubletId, WorkId,
};
use crate::item::{Item, Pattern, Piece};
use crate::text::{File, Token, Words, Written};
use crate::trade::Trade;
use jiff::{Timestamp, civil::Date};
use price::Payer;
use rust_decimal::Decimal;
use states::{ItemId, Position, System, Zone};

/// A statement of what is already so.
#[derive(Debug, Clone, PartialEq, Eq)]
pub enum Fact {
    /// An item is spoken of for the first time.
    Declared { item: Item },
    /// Two names stand for one thing.
    SameAs {
        /// One name.
        item: ItemId,
        /// The other.
        also: ItemId,
    },
    /// The pieces were counted again.
    CountCorrected {
        item: ItemId,
        /// Its true pieces.
        pieces: Vec<Piece>,
        /// The corrections seen.
        after: Vec<CommandId>,
    },
    /// An item is called something else.
    Renamed {
        item: ItemId,
        /// Its new label.
        label: Words,
        /// The renamings seen.
        after: Vec<CommandId>,
    },
    /// It is told which system an item belongs to and where it is worked on.
    Located {
        item: ItemId,
        system: System,
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
        id: NoteId,
        /// Where.
        zone: Zone,
        /// What sort of thing.
        what: Noted,
        words: Option<Words>,
        photos: Vec<File>,
        /// What was said of it, recorded.
        voice: Option<File>,
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
        work: Work,
        /// The moves it answers.
        after: Vec<MoveId>,
        words: Option<Words>,
    },
    /// A person says that work is due.
    WorkDue {
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
        stage: StageId,
        /// What the clock does.
        clock: Clock,
        /// Minutes the book allows, where there is a book.
        book_minutes: Option<Decimal>,
        /// Why, for a pause.
        words: Option<Words>,
        /// The same, recorded.
        voice: Option<File>,
    },
    /// Something went wrong or was found.
    SnagFound {
        /// Its name.
        snag: SnagId,
        item: Option<ItemId>,
        at: Vec<Position>,
        what: SnagIs,
        /// How the rest sits.
        sits: Option<Sits>,
        words: Option<Words>,
        photos: Vec<File>,
        /// Where the pieces now stand.
        moves: Vec<Move>,
        /// What its words speak of, where it names no item: what the trade knows of that.
        about: Option<Trade>,
        /// What was said of it, recorded.
        voice: Option<File>,
    },
    /// A snag came to its end.
    SnagResolved {
        snag: SnagId,
        how: Resolved,
        words: Option<Words>,
        /// The calculation it rests on.
        calculation: Option<NoteId>,
        /// Where the pieces now stand.
        moves: Vec<Move>,
    },
    /// A calculator's result is kept with its working.
    Calculated {
        id: NoteId,
        /// The item it concerns.
        item: Option<ItemId>,
        /// The snag it concerns.
        snag: Option<SnagId>,
        calculator: Token,
        version: u32,
        /// What went in, as the calculator writes it.
        inputs: String,
        /// What came out.
        outputs: String,
        /// How it was found.
        working: String,
    },
    /// Something was read off an instrument: a gauge, a thermometer, a label.
    ReadOff {
        id: NoteId,
        /// The item it tells of.
        item: Option<ItemId>,
        /// What was read, such as `gauge`.
        what: Token,
        /// The value as written.
        value: Written,
        /// How warm it was, as written.
        temperature: Option<Written>,
        /// The moves of the item that were seen.
        after: Vec<MoveId>,
    },
    /// This vehicle now differs from others of its kind.
    DifferenceNoted {
        id: DifferenceId,
        item: Option<ItemId>,
        at: Vec<Position>,
        /// What sort of difference.
        what: DifferenceIs,
        /// The size that holds now.
        size: Option<Token>,
        /// The torque that holds now, as written.
        torque: Option<Written>,
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
        /// Whether whoever looked still learns: then it does not count as a second pair of eyes.
        learns: Option<bool>,
        /// Whether the owner lets whoever works alone check by a second walk-round; where it is
        /// said not, such a walk does not count.
        alone: Option<bool>,
    },
    /// Evidence that the repair holds, or does not.
    Proved {
        id: ProofId,
        /// The line it answers, if one.
        line: Option<LineId>,
        /// What was tested.
        proof: ProofIs,
        /// What it showed.
        outcome: Outcome,
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
        /// The systems of the safety class that the complaint is about.
        about: Vec<System>,
    },
    /// A text of a line is told, or told better.
    LineWorded {
        line: LineId,
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
        number_called: Option<Words>,
        signature: Option<File>,
        /// The consents seen.
        after: Vec<CommandId>,
    },
    /// The customer will not have something put right, or done; signed for where it must be.
    Declined {
        /// The entries of the price that are declined, by what they are called.
        entries: Vec<Words>,
        /// The snags that are left as they are.
        snags: Vec<SnagId>,
        /// The items concerned.
        items: Vec<ItemId>,
        /// The positions, where only some.
        at: Vec<Position>,
        /// Why, in words.
        words: Words,
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
    PartNeeded {
        /// Its name.
        part: PartId,
        /// The line it belongs to.
        line: Option<LineId>,
        /// The item it goes on.
        item: Option<ItemId>,
        /// What it is called.
        label: Words,
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
    /// The vehicle was pushed by hand, because the owner or the foreman said so in writing. It
    /// opens no gate.
    Pushed {
        /// Where to.
        to: Place,
        /// Why, and who stood where.
        words: Words,
    },
    /// The customer was promised a time.
    Promised {
        /// When.
        at: Timestamp,
    },
    /// What the work aims at, by the map that was adopted, and what not to do on the way.
    Aimed {
        /// What sort of aim.
        aim: AimIs,
        /// The items to get at, where it is that.
        targets: Vec<ItemId>,
        /// Steps not to take.
        without: Vec<Step>,
        /// Steps to take in any case.
        also: Vec<Step>,
        /// Places that cannot be had, as the map calls them.
        places_taken: Vec<Token>,
        /// What this vehicle has of what some of its kind have.
        variants: Vec<Token>,
        /// The aims seen.
        after: Vec<CommandId>,
    },
    /// Who is to work on it.
    Assigned { person: PersonId },
    /// How long the work that is left takes, as somebody who looked at it says.
    WorkLeft {
        /// Minutes that it likely takes.
        minutes: Decimal,
        /// The least and the most that it may take, where they were said.
        least: Option<Decimal>,
        most: Option<Decimal>,
        /// The system that whoever does it knows; none, if anybody can.
        skill: Option<System>,
        stall: StallNeeded,
        /// The tellings seen.
        after: Vec<CommandId>,
        /// How many more people hold and hand.
        helpers: Option<u16>,
        /// Minutes of a drive on the road when the rest is done.
        road: Option<Decimal>,
    },
    /// When the vehicle is to come, as agreed with the customer.
    Expected {
        at: Timestamp,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// When the customer said that they will answer.
    AnswerDue {
        at: Timestamp,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// Somebody of the shop rang about something, or wrote.
    Rung {
        about: RungAbout,
        /// Whether they were reached.
        reached: bool,
        /// What was said.
        words: Option<Words>,
    },
    /// A photo or file belongs to something.
    Attached {
        file: File,
        /// The item it shows.
        item: Option<ItemId>,
        /// The snag it shows.
        snag: Option<SnagId>,
        words: Option<Words>,
    },
    /// A start with this belt off is planned: somebody knows what it drives, and wants the
    /// engine run without it.
    BeltLeftOff {
        /// The belt.
        item: ItemId,
        /// Why, in words.
        words: Option<Words>,
        /// The moves of the belt that were seen.
        after: Vec<MoveId>,
    },
    /// The size of a fastener is told after it was declared.
    SizeTold {
        item: ItemId,
        size: Token,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// How a group is tightened is told after it was declared, by the maker's word.
    TorqueTold {
        item: ItemId,
        /// The passes, the sequence, and who says so.
        pattern: Pattern,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// What the trade knows of an item is told after it was declared: by a newer table, by
    /// better words, or by somebody who says what it is.
    TradeTold {
        item: ItemId,
        /// What is known of it.
        trade: Trade,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// What the sheet of how this job was done is called.
    HowToTitled {
        words: Words,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// Something is written on that sheet, or written better.
    HowToNoted {
        note: NoteId,
        /// The command that told the moves it stands beside; nothing where it is of the whole job.
        stage: Option<CommandId>,
        /// Nothing where the note is taken off.
        words: Option<Words>,
        /// The tellings of this note seen.
        after: Vec<CommandId>,
    },
    /// In which sequence the notes on that sheet stand; any other stands behind them.
    HowToSequenced {
        notes: Vec<NoteId>,
        /// The tellings seen.
        after: Vec<CommandId>,
    },
    /// A command, or one move of it, is taken back as if it had not been.
    Undo {
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

    /// What was said with it into a device, whatever it is.
    #[must_use]
    pub fn voice(&self) -> Option<&File> {
        match self {
            Fact::Observed { voice, .. }
            | Fact::Timed { voice, .. }
            | Fact::SnagFound { voice, .. } => voice.as_ref(),
            _ => None,
        }
    }
}

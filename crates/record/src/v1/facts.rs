//! Facts of an order.

use super::basics::*;
use super::codes::*;
use crate::form::{form, forms};
use repair::{
    Fact, Item, MayMiss, Move, Pattern, Piece, Reading, Stand, Step, Trade, TradeWork, Work,
};

form! { PieceForm = Piece {
    position: u16,
    length: Option<WrittenForm>,
} }

form! { PatternForm = Pattern {
    passes: Vec<WrittenForm>,
    sequence: Vec<u16>,
    source: Option<WordsForm>,
} }

form! { MayMissForm = MayMiss {
    up_to: u16,
    never_at: Vec<u16>,
} }

form! { TradeWorkForm = TradeWork {
    sort: TokenForm,
    before: Vec<GateForm>,
    shared: SharedIsForm,
    after: Option<WrittenForm>,
} }

form! { TradeForm = Trade {
    table: u32,
    additions: u32,
    sort: Option<TokenForm>,
    sure: SureIsForm,
    system: SystemForm,
    side: Option<TokenForm>,
    safety: bool,
    shuts: Vec<GateForm>,
    owes: Vec<TradeWorkForm>,
    cautions: Vec<TokenForm>,
} }

form! { ItemForm = Item {
    id: ItemIdForm,
    kind: KindForm,
    system: SystemForm,
    zone: ZoneForm,
    label: WordsForm,
    size: Option<TokenForm>,
    pieces: Vec<PieceForm>,
    pattern: Option<PatternForm>,
    spent: bool,
    may_miss: Option<MayMissForm>,
    put_in: Option<PutInForm>,
    holds: Option<WrittenForm>,
} since 2 {
    trade: Option<TradeForm>,
} }

form! { StandForm = Stand {
    state: StateForm,
    piece: PieceIsForm,
} }

form! { MoveForm = Move {
    item: ItemIdForm,
    at: Vec<u16>,
    after: Vec<MoveIdForm>,
    left: StandForm,
    container: Option<TokenForm>,
} }

form! { StepForm = Step {
    item: ItemIdForm,
    to: StateForm,
} }

form! { WorkForm = Work {
    work: WorkIsForm,
    item: Option<ItemIdForm>,
    own: Option<WorkIdForm>,
} since 2 {
    named: Option<ItemIdForm>,
    sort: Option<TokenForm>,
} }

form! { ReadingForm = Reading {
    what: TokenForm,
    value: WrittenForm,
} }

forms! { FactForm = Fact {
    Declared = "declared" {
        item: ItemForm,
    },
    SameAs = "same-as" {
        item: ItemIdForm,
        also: ItemIdForm,
    },
    CountCorrected = "count-corrected" {
        item: ItemIdForm,
        pieces: Vec<PieceForm>,
        after: Vec<CommandIdForm>,
    },
    Renamed = "renamed" {
        item: ItemIdForm,
        label: WordsForm,
        after: Vec<CommandIdForm>,
    },
    Located = "located" {
        item: ItemIdForm,
        system: SystemForm,
        zone: ZoneForm,
        after: Vec<CommandIdForm>,
    },
    Found = "found" {
        moves: Vec<MoveForm>,
    },
    Observed = "observed" {
        id: NoteIdForm,
        zone: ZoneForm,
        what: NotedForm,
        words: Option<WordsForm>,
        photos: Vec<FileForm>,
    } since 3 {
        voice: Option<FileForm>,
    },
    Walked = "walked" {
        zone: ZoneForm,
    },
    Moved = "moved" {
        stage: Option<StageIdForm>,
        moves: Vec<MoveForm>,
    },
    Seen = "seen" {
        moves: Vec<MoveForm>,
    },
    Drained = "drained" {
        item: ItemIdForm,
        amount: WrittenForm,
        fate: FateForm,
        temperature: Option<WrittenForm>,
    },
    Poured = "poured" {
        item: ItemIdForm,
        amount: WrittenForm,
        what: Option<WordsForm>,
        temperature: Option<WrittenForm>,
    },
    LevelSeen = "level-seen" {
        item: ItemIdForm,
        level: LevelAtForm,
        good: bool,
        reading: Option<WrittenForm>,
        temperature: Option<WrittenForm>,
        after: Vec<MoveIdForm>,
    },
    WorkDone = "work-done" {
        work: WorkForm,
        after: Vec<MoveIdForm>,
        words: Option<WordsForm>,
    },
    WorkDue = "work-due" {
        id: WorkIdForm,
        item: Option<ItemIdForm>,
        words: WordsForm,
        until: UntilForm,
    },
    Timed = "timed" {
        stage: StageIdForm,
        clock: ClockForm,
        book_minutes: Option<DecimalForm>,
        words: Option<WordsForm>,
    } since 3 {
        voice: Option<FileForm>,
    },
    SnagFound = "snag-found" {
        snag: SnagIdForm,
        item: Option<ItemIdForm>,
        at: Vec<u16>,
        what: SnagIsForm,
        sits: Option<SitsForm>,
        words: Option<WordsForm>,
        photos: Vec<FileForm>,
        moves: Vec<MoveForm>,
    } since 2 {
        about: Option<TradeForm>,
    } since 3 {
        voice: Option<FileForm>,
    },
    SnagResolved = "snag-resolved" {
        snag: SnagIdForm,
        how: ResolvedForm,
        words: Option<WordsForm>,
        calculation: Option<NoteIdForm>,
        moves: Vec<MoveForm>,
    },
    Calculated = "calculated" {
        id: NoteIdForm,
        item: Option<ItemIdForm>,
        snag: Option<SnagIdForm>,
        calculator: TokenForm,
        version: u32,
        inputs: String,
        outputs: String,
        working: String,
    },
    ReadOff = "read-off" {
        id: NoteIdForm,
        item: Option<ItemIdForm>,
        what: TokenForm,
        value: WrittenForm,
        temperature: Option<WrittenForm>,
        after: Vec<MoveIdForm>,
    },
    DifferenceNoted = "difference-noted" {
        id: DifferenceIdForm,
        item: Option<ItemIdForm>,
        at: Vec<u16>,
        what: DifferenceIsForm,
        size: Option<TokenForm>,
        torque: Option<WrittenForm>,
        words: Option<WordsForm>,
    },
    Checked = "checked" {
        check: CheckIsForm,
        items: Vec<ItemIdForm>,
        after: Vec<MoveIdForm>,
    } since 2 {
        learns: Option<bool>,
        alone: Option<bool>,
    },
    Proved = "proved" {
        id: ProofIdForm,
        line: Option<LineIdForm>,
        proof: ProofIsForm,
        outcome: OutcomeForm,
        words: Option<WordsForm>,
        readings: Vec<ReadingForm>,
        calculation: Option<NoteIdForm>,
        after: Vec<MoveIdForm>,
        replaces: Vec<ProofIdForm>,
    },
    LineOpened = "line-opened" {
        line: LineIdForm,
        complaint: WordsForm,
        payer: PayerForm,
    } since 2 {
        about: Vec<SystemForm>,
    },
    LineWorded = "line-worded" {
        line: LineIdForm,
        text: LineTextForm,
        words: WordsForm,
        after: Vec<CommandIdForm>,
    },
    Consented = "consented" {
        step: ConsentStepForm,
        payer: PayerForm,
        lines: Vec<LineIdForm>,
        agreed: bool,
        amount: Option<DecimalForm>,
        tax_included: bool,
        way: WayForm,
        person: Option<WordsForm>,
        said: Option<WordsForm>,
        number_called: Option<WordsForm>,
        signature: Option<FileForm>,
        after: Vec<CommandIdForm>,
    },
    Declined = "declined" {
        items: Vec<ItemIdForm>,
        at: Vec<u16>,
        words: WordsForm,
        signature: Option<FileForm>,
    } since 2 {
        entries: Vec<WordsForm>,
        snags: Vec<SnagIdForm>,
    },
    Paid = "paid" {
        payer: PayerForm,
        amount: DecimalForm,
        by: PaidByForm,
        deposit: bool,
    },
    PartNeeded = "part-needed" {
        part: PartIdForm,
        line: Option<LineIdForm>,
        item: Option<ItemIdForm>,
        label: WordsForm,
        number: Option<TokenForm>,
        quantity: DecimalForm,
        cost: Option<DecimalForm>,
        price: Option<DecimalForm>,
        core: Option<DecimalForm>,
        has_old: bool,
    },
    PartStepped = "part-stepped" {
        part: PartIdForm,
        quantity: DecimalForm,
        step: PartStepForm,
        due: Option<DateForm>,
        words: Option<WordsForm>,
    },
    OldPart = "old-part" {
        part: Option<PartIdForm>,
        item: Option<ItemIdForm>,
        fate: OldPartFateForm,
    },
    SubletOut = "sublet-out" {
        sublet: SubletIdForm,
        line: Option<LineIdForm>,
        items: Vec<ItemIdForm>,
        what: WordsForm,
        to: WordsForm,
        due: Option<DateForm>,
        cost: Option<DecimalForm>,
    },
    SubletBack = "sublet-back" {
        sublet: SubletIdForm,
        words: Option<WordsForm>,
    },
    Keys = "keys" {
        step: KeyStepForm,
        words: Option<WordsForm>,
    },
    Odometer = "odometer" {
        reading: WrittenForm,
        at: OdometerAtForm,
    },
    Stood = "stood" {
        place: PlaceForm,
    },
    Pushed = "pushed" {
        to: PlaceForm,
        words: WordsForm,
    },
    Promised = "promised" {
        at: TimeForm,
    },
    Aimed = "aimed" {
        aim: AimIsForm,
        targets: Vec<ItemIdForm>,
        without: Vec<StepForm>,
        also: Vec<StepForm>,
        places_taken: Vec<TokenForm>,
        variants: Vec<TokenForm>,
        after: Vec<CommandIdForm>,
    },
    Assigned = "assigned" {
        person: PersonIdForm,
    },
    WorkLeft = "work-left" {
        minutes: DecimalForm,
        least: Option<DecimalForm>,
        most: Option<DecimalForm>,
        skill: Option<SystemForm>,
        stall: StallNeededForm,
        after: Vec<CommandIdForm>,
    } since 2 {
        helpers: Option<u16>,
        road: Option<DecimalForm>,
    },
    Expected = "expected" {
        at: TimeForm,
        after: Vec<CommandIdForm>,
    },
    AnswerDue = "answer-due" {
        at: TimeForm,
        after: Vec<CommandIdForm>,
    },
    Rung = "rung" {
        about: RungAboutForm,
        reached: bool,
        words: Option<WordsForm>,
    },
    Attached = "attached" {
        file: FileForm,
        item: Option<ItemIdForm>,
        snag: Option<SnagIdForm>,
        words: Option<WordsForm>,
    },
    Undo = "undo" {
        command: CommandIdForm,
        part: Option<u16>,
    },
    BeltLeftOff = "belt-left-off" {
        item: ItemIdForm,
        words: Option<WordsForm>,
        after: Vec<MoveIdForm>,
    },
    SizeTold = "size-told" {
        item: ItemIdForm,
        size: TokenForm,
        after: Vec<CommandIdForm>,
    },
    TorqueTold = "torque-told" {
        item: ItemIdForm,
        pattern: PatternForm,
        after: Vec<CommandIdForm>,
    },
    TradeTold = "trade-told" {
        item: ItemIdForm,
        trade: TradeForm,
        after: Vec<CommandIdForm>,
    },
    HowToTitled = "how-to-titled" {
        words: WordsForm,
        after: Vec<CommandIdForm>,
    },
    HowToNoted = "how-to-noted" {
        note: NoteIdForm,
        stage: Option<CommandIdForm>,
        words: Option<WordsForm>,
        after: Vec<CommandIdForm>,
    },
    HowToSequenced = "how-to-sequenced" {
        notes: Vec<NoteIdForm>,
        after: Vec<CommandIdForm>,
    },
} }

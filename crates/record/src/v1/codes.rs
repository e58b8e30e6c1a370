//! Codes: the words that enumerations are stored as.

use crate::form::codes;
use repair::price::{By, Charge, HoursBy, Payer, Round};
use repair::{
    AimIs, Can, CheckIs, Clock, ConsentStep, CouldBe, DifferenceIs, Ending, Fate, Field, Gate,
    KeyStep, Kind, Language, Leaves, LevelAt, LineText, Noted, OdometerAt, OldPartFate, Outcome,
    PaidBy, PartStep, PieceIs, ProofIs, PutIn, Resolved, Role, RungAbout, SharedIs, Sits, SnagIs,
    StallIs, StallNeeded, SureIs, System, Units, VinRead, Way, WorkIs, Zone,
};

codes! { KindForm = Kind {
    Part = "part",
    Cover = "cover",
    Hose = "hose",
    Seal = "seal",
    Belt = "belt",
    Fasteners = "fasteners",
    Clips = "clips",
    Connector = "connector",
    Fluid = "fluid",
    Work = "work",
    PutIn = "put-in",
} }

codes! { AimIsForm = AimIs {
    Reach = "reach",
    Home = "home",
    Roll = "roll",
} }

codes! { SystemForm = System {
    Brakes = "brakes",
    Steering = "steering",
    Wheels = "wheels",
    Suspension = "suspension",
    Fuel = "fuel",
    Restraints = "restraints",
    DriveBelt = "drive-belt",
    HighVoltage = "high-voltage",
    Cooling = "cooling",
    Oil = "oil",
    Engine = "engine",
    Transmission = "transmission",
    Intake = "intake",
    Exhaust = "exhaust",
    Battery = "battery",
    Electrical = "electrical",
    Climate = "climate",
    Body = "body",
    Unknown = "unknown",
} }

codes! { ZoneForm = Zone {
    Above = "above",
    Below = "below",
    WheelWell = "wheel-well",
    Cabin = "cabin",
    Rear = "rear",
    Outside = "outside",
    Unknown = "unknown",
} }

codes! { PutInForm = PutIn {
    Clamp = "clamp",
    Plug = "plug",
    Rag = "rag",
    Lamp = "lamp",
    Tool = "tool",
    Pin = "pin",
    Cord = "cord",
    Chips = "chips",
    Tang = "tang",
    Other = "other",
} }

codes! { PieceIsForm = PieceIs {
    Original = "original",
    New = "new",
    Substitute = "substitute",
} }

codes! { NotedForm = Noted {
    WarningLamp = "warning-lamp",
    Damage = "damage",
    Missing = "missing",
    EarlierRepair = "earlier-repair",
    LockingKey = "locking-key",
    Leak = "leak",
    Other = "other",
} }

codes! { SnagIsForm = SnagIs {
    Snapped = "snapped",
    Stuck = "stuck",
    Stripped = "stripped",
    Rounded = "rounded",
    Torn = "torn",
    Worn = "worn",
    Broken = "broken",
    Bent = "bent",
    Corroded = "corroded",
    Leaking = "leaking",
    Missing = "missing",
    Other = "other",
} }

codes! { SitsForm = Sits {
    Proud = "proud",
    Flush = "flush",
    Below = "below",
} }

codes! { ResolvedForm = Resolved {
    AsBefore = "as-before",
    ThreadChased = "thread-chased",
    WireInsert = "wire-insert",
    Bushing = "bushing",
    Oversize = "oversize",
    LongerBolt = "longer-bolt",
    NewPart = "new-part",
    LeftByConsent = "left-by-consent",
    Other = "other",
} }

codes! { FateForm = Fate {
    Kept = "kept",
    Recycled = "recycled",
    Disposed = "disposed",
    Spilled = "spilled",
} }

codes! { LevelAtForm = LevelAt {
    Warm = "warm",
    Cold = "cold",
} }

codes! { WorkIsForm = WorkIs {
    Bleed = "bleed",
    LevelWarm = "level-warm",
    LevelCold = "level-cold",
    LookForLeaks = "look-for-leaks",
    TorqueAgain = "torque-again",
    TorqueAfterDistance = "torque-after-distance",
    PumpPedal = "pump-pedal",
    Relearn = "relearn",
    Alignment = "alignment",
    ClockAndWindows = "clock-and-windows",
    CleanFace = "clean-face",
    Other = "other",
} }

codes! { GateForm = Gate {
    GoLive = "go-live",
    Start = "start",
    Lower = "lower",
    Roll = "roll",
    Road = "road",
    HandOver = "hand-over",
} }

codes! { ClockForm = Clock {
    Opened = "opened",
    Paused = "paused",
    Resumed = "resumed",
    Left = "left",
} }

codes! { CheckIsForm = CheckIs {
    SecondPerson = "second-person",
    WalkedBack = "walked-back",
} }

codes! { ProofIsForm = ProofIs {
    RoadTest = "road-test",
    LeakTest = "leak-test",
    BrakeTest = "brake-test",
    FuelLeakLook = "fuel-leak-look",
    RestraintLamp = "restraint-lamp",
    CoolantMix = "coolant-mix",
    Other = "other",
} }

codes! { OutcomeForm = Outcome {
    Held = "held",
    Failed = "failed",
    NotProvoked = "not-provoked",
} }

codes! { LineTextForm = LineText {
    Complaint = "complaint",
    Cause = "cause",
    Correction = "correction",
} }

codes! { ConsentStepForm = ConsentStep {
    Diagnose = "diagnose",
    TakeApart = "take-apart",
    Repair = "repair",
    Add = "add",
} }

codes! { WayForm = Way {
    InPerson = "in-person",
    Phone = "phone",
    Message = "message",
    Mail = "mail",
    Signed = "signed",
} }

codes! { PaidByForm = PaidBy {
    Cash = "cash",
    Card = "card",
    Transfer = "transfer",
    Cheque = "cheque",
    OnAccount = "on-account",
} }

codes! { PartStepForm = PartStep {
    Ordered = "ordered",
    Received = "received",
    Compared = "compared",
    Fitted = "fitted",
    Returned = "returned",
    Stocked = "stocked",
    Cancelled = "cancelled",
} }

codes! { OldPartFateForm = OldPartFate {
    Kept = "kept",
    Given = "given",
    Core = "core",
    Scrap = "scrap",
} }

codes! { KeyStepForm = KeyStep {
    Taken = "taken",
    GivenBack = "given-back",
} }

codes! { OdometerAtForm = OdometerAt {
    In = "in",
    Out = "out",
} }

codes! { DifferenceIsForm = DifferenceIs {
    Insert = "insert",
    Larger = "larger",
    Longer = "longer",
    Substitute = "substitute",
    Gone = "gone",
    Other = "other",
} }

codes! { LeavesForm = Leaves {
    DrivesAway = "drives-away",
    CollectedApart = "collected-apart",
} }

codes! { EndingForm = Ending {
    Repaired = "repaired",
    NotReproduced = "not-reproduced",
    DeclinedPutBack = "declined-put-back",
    DeclinedApart = "declined-apart",
} }

codes! { VinReadForm = VinRead {
    Valid = "valid",
    KeptAnyway = "kept-anyway",
    NoneReadable = "none-readable",
} }

codes! { FieldForm = Field {
    Label = "label",
    Vin = "vin",
    Plate = "plate",
    Name = "name",
    Phone = "phone",
    Mail = "mail",
    Address = "address",
    Street = "street",
    Postcode = "postcode",
    Town = "town",
    Country = "country",
} }

codes! { RoleForm = Role {
    Technician = "technician",
    Desk = "desk",
    Owner = "owner",
    Apprentice = "apprentice",
    Foreman = "foreman",
} }

codes! { UnitsForm = Units {
    Metric = "metric",
    Us = "us",
} }

codes! { StallIsForm = StallIs {
    Lift = "lift",
    Flat = "flat",
    Outside = "outside",
} }

codes! { StallNeededForm = StallNeeded {
    Lift = "lift",
    Flat = "flat",
    Any = "any",
    No = "none",
} }

codes! { PayerForm = Payer {
    Customer = "customer",
    Warranty = "warranty",
    Goodwill = "goodwill",
} }

codes! { ChargeForm = Charge {
    Labour = "labour",
    Part = "part",
    Sublet = "sublet",
    Supplies = "supplies",
    Core = "core",
    Test = "test",
    Fee = "fee",
} since 3 {
    Disposal = "disposal",
} }

codes! { RoundForm = Round {
    HalfUp = "half-up",
    HalfDown = "half-down",
    HalfEven = "half-even",
    Down = "down",
    Up = "up",
} }

codes! { ByForm = By {
    Total = "total",
    Line = "line",
} }

codes! { HoursByForm = HoursBy {
    Book = "book",
    Clock = "clock",
    Lesser = "lesser",
} }

codes! { SureIsForm = SureIs {
    Sure = "sure",
    Likely = "likely",
    Unknown = "unknown",
} }

codes! { SharedIsForm = SharedIs {
    Order = "order",
    Wheel = "wheel",
    Item = "item",
} }

codes! { RungAboutForm = RungAbout {
    Approval = "approval",
    Promise = "promise",
    Ready = "ready",
    Due = "due",
    FollowUp = "follow-up",
} }

codes! { CouldBeForm = CouldBe {
    Yes = "yes",
    No = "no",
    CannotSay = "cannot-say",
} }

codes! { LanguageForm = Language {
    English = "en",
    German = "de",
} }

codes! { CanForm = Can {
    NotYet = "not-yet",
    Watched = "watched",
    Alone = "alone",
    Teaches = "teaches",
} }

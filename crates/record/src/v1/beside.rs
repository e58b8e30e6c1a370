//! Facts of vehicles, customers and the shop.

use super::basics::*;
use super::codes::*;
use super::decisions::TaxRuleForm;
use super::facts::WorkForm;
use super::money::{FixedJobForm, MoneyRulesForm};
use crate::form::{form, forms};
use repair::{CustomerFact, Letterhead, Seat, Settings, ShopFact, VehicleFact, Weights};
use std::collections::BTreeMap;

form! { SettingsForm = Settings {
    name: WordsForm,
    rate: DecimalForm,
    currency: ShortForm,
    minor_digits: u32,
    taxes: Vec<TaxRuleForm>,
    units: UnitsForm,
    zone: ShortForm,
} }

form! { LetterheadForm = Letterhead {
    address: Option<WordsForm>,
    phone: Option<WordsForm>,
    mail: Option<WordsForm>,
    tax_number: Option<WordsForm>,
    bank: Option<WordsForm>,
    terms: Option<WordsForm>,
    language: LanguageForm,
} }

form! { SeatForm = Seat {
    street: Option<WordsForm>,
    postcode: Option<WordsForm>,
    town: Option<WordsForm>,
    country: Option<ShortForm>,
} }

form! { WeightsForm = Weights {
    margin: DecimalForm,
    time: DecimalForm,
    cost: DecimalForm,
    reversibility: DecimalForm,
} }

forms! { VehicleFactForm = VehicleFact {
    Declared = "declared" {
        texts: BTreeMap<FieldForm, WordsForm>,
        vin_read: VinReadForm,
        rust: Option<u8>,
        customer: CustomerIdForm,
    },
    Mended = "mended" {
        field: FieldForm,
        words: WordsForm,
        vin_read: Option<VinReadForm>,
        after: Vec<CommandIdForm>,
    },
    Differs = "differs" {
        id: DifferenceIdForm,
        order: OrderIdForm,
        item: Option<WordsForm>,
        at: Vec<u16>,
        what: DifferenceIsForm,
        size: Option<TokenForm>,
        torque: Option<WrittenForm>,
        words: Option<WordsForm>,
    },
    DifferenceEnded = "difference-ended" {
        id: DifferenceIdForm,
    },
    LeftOwing = "left-owing" {
        order: OrderIdForm,
        work: WorkForm,
        item: Option<WordsForm>,
        words: Option<WordsForm>,
        until: UntilForm,
    },
    FigureTold = "figure-told" {
        what: TokenForm,
        value: WrittenForm,
        after: Vec<CommandIdForm>,
    },
    OwingDone = "owing-done" {
        order: OrderIdForm,
        work: WorkForm,
    },
    SameAs = "same-as" {
        vehicle: Option<VehicleIdForm>,
        after: Vec<CommandIdForm>,
    },
    OwnerTold = "owner-told" {
        customer: CustomerIdForm,
        after: Vec<CommandIdForm>,
    },
} }

forms! { CustomerFactForm = CustomerFact {
    Declared = "declared" {
        texts: BTreeMap<FieldForm, WordsForm>,
    },
    Mended = "mended" {
        field: FieldForm,
        words: WordsForm,
        after: Vec<CommandIdForm>,
    },
    Exempted = "exempted" {
        number: Option<WordsForm>,
        taxes: Vec<ShortForm>,
        after: Vec<CommandIdForm>,
    },
    SameAs = "same-as" {
        customer: Option<CustomerIdForm>,
        after: Vec<CommandIdForm>,
    },
} }

forms! { ShopFactForm = ShopFact {
    Set = "set" {
        settings: SettingsForm,
    } since 2 {
        after: Vec<CommandIdForm>,
    },
    Joined = "joined" {
        person: PersonIdForm,
        name: WordsForm,
        roles: Vec<RoleForm>,
    },
    Departed = "departed" {
        person: PersonIdForm,
    },
    StallAdded = "stall-added" {
        stall: StallIdForm,
        name: WordsForm,
        sort: StallIsForm,
    },
    NumberGiven = "number-given" {
        number: u64,
        order: OrderIdForm,
    },
    InvoiceNumberGiven = "invoice-number-given" {
        number: u64,
        order: OrderIdForm,
        payer: PayerForm,
    },
    CreditNumberGiven = "credit-number-given" {
        number: u64,
        order: OrderIdForm,
        payer: PayerForm,
    },
    MoneyTold = "money-told" {
        rules: MoneyRulesForm,
        after: Vec<CommandIdForm>,
    },
    JobKept = "job-kept" {
        id: JobIdForm,
        job: FixedJobForm,
        after: Vec<CommandIdForm>,
    },
    JobDropped = "job-dropped" {
        id: JobIdForm,
    },
    AltitudeTold = "altitude-told" {
        altitude: WrittenForm,
        after: Vec<CommandIdForm>,
    },
    Erased = "erased" {
        texts: ErasedTextsForm,
        why: TokenForm,
    },
    Weighed = "weighed" {
        weights: WeightsForm,
    } since 2 {
        after: Vec<CommandIdForm>,
    },
    PlaceChosen = "place-chosen" {
        place: Option<TokenForm>,
        version: u32,
        after: Vec<CommandIdForm>,
    },
    RecordsKept = "records-kept" {
        years: u32,
    } since 2 {
        after: Vec<CommandIdForm>,
    },
    ErasureAsked = "erasure-asked" {
        customer: CustomerIdForm,
        every_word: bool,
        why: TokenForm,
    },
    ErasureEnded = "erasure-ended" {
        asked: CommandIdForm,
    },
    WordAdded = "word-added" {
        name: WordsForm,
        sort: TokenForm,
    },
    WordRemoved = "word-removed" {
        name: WordsForm,
    },
    AloneAllowed = "alone-allowed" {
        words: Option<WordsForm>,
        after: Vec<CommandIdForm>,
    },
    ErasureCalledOff = "erasure-called-off" {
        asked: CommandIdForm,
    },
    PersonTold = "person-told" {
        person: PersonIdForm,
        name: WordsForm,
        roles: Vec<RoleForm>,
        after: Vec<CommandIdForm>,
    },
    StallTold = "stall-told" {
        stall: StallIdForm,
        name: WordsForm,
        sort: StallIsForm,
        after: Vec<CommandIdForm>,
    },
    StallFitted = "stall-fitted" {
        stall: StallIdForm,
        carries: Option<WrittenForm>,
        clears: Option<WrittenForm>,
        crosses: Vec<StallIdForm>,
        after: Vec<CommandIdForm>,
    },
    StallRemoved = "stall-removed" {
        stall: StallIdForm,
    },
    HoursTold = "hours-told" {
        person: Option<PersonIdForm>,
        week: Option<WeekForm>,
        after: Vec<CommandIdForm>,
    },
    SystemsTold = "systems-told" {
        person: PersonIdForm,
        systems: Vec<SystemForm>,
        after: Vec<CommandIdForm>,
    },
    DaysOff = "days-off" {
        id: DaysOffIdForm,
        person: Option<PersonIdForm>,
        first: DateForm,
        last: DateForm,
    },
    DaysOffEnded = "days-off-ended" {
        id: DaysOffIdForm,
    },
    SkillTold = "skill-told" {
        person: PersonIdForm,
        skill: WordsForm,
        can: CanForm,
        after: Vec<CommandIdForm>,
    },
    LetterheadTold = "letterhead-told" {
        letterhead: LetterheadForm,
        after: Vec<CommandIdForm>,
    },
    SeatTold = "seat-told" {
        seat: SeatForm,
        after: Vec<CommandIdForm>,
    },
    LogoTold = "logo-told" {
        logo: Option<FileForm>,
        after: Vec<CommandIdForm>,
    },
    ShopSpeaks = "shop-speaks" {
        language: LanguageForm,
        after: Vec<CommandIdForm>,
    },
    PersonSpeaks = "person-speaks" {
        person: PersonIdForm,
        language: Option<LanguageForm>,
        after: Vec<CommandIdForm>,
    },
    GradeTold = "grade-told" {
        person: PersonIdForm,
        grade: Option<ShortForm>,
        after: Vec<CommandIdForm>,
    },
} }

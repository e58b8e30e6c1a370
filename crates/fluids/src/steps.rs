//! The steps of each fluid in sequence, with their cautions and what has to wait for them.

mod tables;

use crate::caution::Caution;
use crate::kind::Kind;
use tables::{
    AUTOMATIC, BATTERY, BRAKE, CLUTCH, ENGINE_OIL, FUEL, POWER_STEERING, REFRIGERANT, TO_THE_PLUG,
    UREA, WASHER,
};

/// A piece of work that a fluid asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Work {
    Named,
    Drained,
    Filled,
    Started,
    Stopped,
    Waited,
    LevelSeen,
    LeaksLookedFor,
    CircuitsNamed,
    Bled,
    PedalHard,
    PedalTwice,
    LockToLock,
    FoamGone,
    Warmed,
    FilledToPlug,
    AmountsCompared,
    WarmChecked,
    Recovered,
    OilAccounted,
    Evacuated,
    WeighedIn,
    LeakSearched,
    Primed,
    NoDrip,
    NoSmell,
    QualityRead,
    Tried,
    NegativeOff,
    PositiveOff,
    PositiveOn,
    NegativeOn,
    MemoryRestored,
    Registered,
}

/// What has to wait until a work is done.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Before {
    GoLive,
    Start,
    Road,
    HandOver,
}

/// A step: its work, how it is said, and what goes with it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    pub work: Work,
    pub text: &'static str,
    pub caution: Option<Caution>,
    pub before: Before,
    /// Works that have to come before; done again after one of them was.
    pub after: &'static [Work],
}

impl Before {
    pub const ALL: [Before; 4] = [
        Before::GoLive,
        Before::Start,
        Before::Road,
        Before::HandOver,
    ];

    /// As it is said.
    pub fn words(self) -> &'static str {
        match self {
            Before::GoLive => "go live",
            Before::Start => "start",
            Before::Road => "road",
            Before::HandOver => "hand over",
        }
    }
}

impl Work {
    pub const ALL: [Work; 34] = [
        Work::Named,
        Work::Drained,
        Work::Filled,
        Work::Started,
        Work::Stopped,
        Work::Waited,
        Work::LevelSeen,
        Work::LeaksLookedFor,
        Work::CircuitsNamed,
        Work::Bled,
        Work::PedalHard,
        Work::PedalTwice,
        Work::LockToLock,
        Work::FoamGone,
        Work::Warmed,
        Work::FilledToPlug,
        Work::AmountsCompared,
        Work::WarmChecked,
        Work::Recovered,
        Work::OilAccounted,
        Work::Evacuated,
        Work::WeighedIn,
        Work::LeakSearched,
        Work::Primed,
        Work::NoDrip,
        Work::NoSmell,
        Work::QualityRead,
        Work::Tried,
        Work::NegativeOff,
        Work::PositiveOff,
        Work::PositiveOn,
        Work::NegativeOn,
        Work::MemoryRestored,
        Work::Registered,
    ];

    /// Its word on a command line.
    pub const fn word(self) -> &'static str {
        match self {
            Work::Named => "named",
            Work::Drained => "drained",
            Work::Filled => "filled",
            Work::Started => "started",
            Work::Stopped => "stopped",
            Work::Waited => "waited",
            Work::LevelSeen => "level-seen",
            Work::LeaksLookedFor => "leaks-looked-for",
            Work::CircuitsNamed => "circuits-named",
            Work::Bled => "bled",
            Work::PedalHard => "pedal-hard",
            Work::PedalTwice => "pedal-twice",
            Work::LockToLock => "lock-to-lock",
            Work::FoamGone => "foam-gone",
            Work::Warmed => "warmed",
            Work::FilledToPlug => "filled-to-plug",
            Work::AmountsCompared => "amounts-compared",
            Work::WarmChecked => "warm-checked",
            Work::Recovered => "recovered",
            Work::OilAccounted => "oil-accounted",
            Work::Evacuated => "evacuated",
            Work::WeighedIn => "weighed-in",
            Work::LeakSearched => "leak-searched",
            Work::Primed => "primed",
            Work::NoDrip => "no-drip",
            Work::NoSmell => "no-smell",
            Work::QualityRead => "quality-read",
            Work::Tried => "tried",
            Work::NegativeOff => "negative-off",
            Work::PositiveOff => "positive-off",
            Work::PositiveOn => "positive-on",
            Work::NegativeOn => "negative-on",
            Work::MemoryRestored => "memory-restored",
            Work::Registered => "registered",
        }
    }

    /// The work of that word.
    pub fn named(word: &str) -> Option<Work> {
        Work::ALL.into_iter().find(|work| work.word() == word)
    }
}

impl Kind {
    /// The steps in sequence.
    pub const fn steps(self) -> &'static [Step] {
        match self {
            Kind::EngineOil => ENGINE_OIL,
            Kind::Brake => BRAKE,
            Kind::Clutch => CLUTCH,
            Kind::PowerSteering => POWER_STEERING,
            Kind::AutomaticGearbox => AUTOMATIC,
            Kind::ManualGearbox | Kind::Axle => TO_THE_PLUG,
            Kind::Refrigerant => REFRIGERANT,
            Kind::Fuel => FUEL,
            Kind::Urea => UREA,
            Kind::Washer => WASHER,
            Kind::Battery => BATTERY,
        }
    }

    /// What closes it, in words.
    pub fn closes_on(self) -> &'static str {
        match self {
            Kind::EngineOil => {
                "the level on the stick after a run and a wait, with nothing dripping"
            }
            Kind::Brake => "a hard pedal, twice at full height, tried by a second person",
            Kind::Clutch => "a pedal that parts fully, twice, and the level at its mark",
            Kind::PowerSteering => "no foam and the level at its mark after lock to lock",
            Kind::AutomaticGearbox => {
                "the level at the maker's temperature, with as much in as came out"
            }
            Kind::ManualGearbox | Kind::Axle => {
                "oil at the plug within the maker's temperature window, with as much in as came out, seen again warm"
            }
            Kind::Refrigerant => {
                "the label's weight in, oil replaced, no leak found, by licensed hands"
            }
            Kind::Fuel => {
                "primed, no drip and no smell, before the engine is started and once it runs"
            }
            Kind::Urea => "a reading within the standard and no drip",
            Kind::Washer => "spray at every nozzle",
            Kind::Battery => {
                "both terminals tight in their sequence, memory restored, registered where the maker asks"
            }
        }
    }

    /// Whether a second person's check is asked for.
    pub fn wants_second_person(self) -> bool {
        matches!(self, Kind::Brake)
    }
}

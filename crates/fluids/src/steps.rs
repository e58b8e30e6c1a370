//! The steps of each fluid in sequence, with their cautions and what has to wait for them.

use crate::phrases as say;
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
#[derive(Clone, Copy, Debug)]
pub struct Step {
    pub work: Work,
    said: fn() -> &'static str,
    pub caution: Option<Caution>,
    pub before: Before,
    /// Works that have to come before; done again after one of them was.
    pub after: &'static [Work],
}

impl PartialEq for Step {
    fn eq(&self, other: &Step) -> bool {
        let apart = |step: &Step| (step.work, step.caution, step.before, step.after);
        apart(self) == apart(other) && std::ptr::fn_addr_eq(self.said, other.said)
    }
}

impl Step {
    /// What is done, as it is said.
    pub fn text(&self) -> &'static str {
        (self.said)()
    }
}

impl Before {
    pub const ALL: [Before; 4] = [
        Before::GoLive,
        Before::Start,
        Before::Road,
        Before::HandOver,
    ];

    /// As it is written in an answer to a program.
    pub fn code(self) -> &'static str {
        match self {
            Before::GoLive => "go live",
            Before::Start => "start",
            Before::Road => "road",
            Before::HandOver => "hand over",
        }
    }

    /// As it is said.
    pub fn words(self) -> &'static str {
        match self {
            Before::GoLive => say::before_go_live(),
            Before::Start => say::before_start(),
            Before::Road => say::before_road(),
            Before::HandOver => say::before_hand_over(),
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

    /// In words, for people.
    pub(crate) fn said(self) -> &'static str {
        match self {
            Work::Named => say::step_named(),
            Work::Drained => say::step_drained(),
            Work::Filled => say::step_filled(),
            Work::Started => say::step_started(),
            Work::Stopped => say::step_stopped(),
            Work::Waited => say::step_waited(),
            Work::LevelSeen => say::step_level_seen(),
            Work::LeaksLookedFor => say::step_leaks_looked_for(),
            Work::CircuitsNamed => say::step_circuits_named(),
            Work::Bled => say::step_bled(),
            Work::PedalHard => say::step_pedal_hard(),
            Work::PedalTwice => say::step_pedal_twice(),
            Work::LockToLock => say::step_lock_to_lock(),
            Work::FoamGone => say::step_foam_gone(),
            Work::Warmed => say::step_warmed(),
            Work::FilledToPlug => say::step_filled_to_plug(),
            Work::AmountsCompared => say::step_amounts_compared(),
            Work::WarmChecked => say::step_warm_checked(),
            Work::Recovered => say::step_recovered(),
            Work::OilAccounted => say::step_oil_accounted(),
            Work::Evacuated => say::step_evacuated(),
            Work::WeighedIn => say::step_weighed_in(),
            Work::LeakSearched => say::step_leak_searched(),
            Work::Primed => say::step_primed(),
            Work::NoDrip => say::step_no_drip(),
            Work::NoSmell => say::step_no_smell(),
            Work::QualityRead => say::step_quality_read(),
            Work::Tried => say::step_tried(),
            Work::NegativeOff => say::step_negative_off(),
            Work::PositiveOff => say::step_positive_off(),
            Work::PositiveOn => say::step_positive_on(),
            Work::NegativeOn => say::step_negative_on(),
            Work::MemoryRestored => say::step_memory_restored(),
            Work::Registered => say::step_registered(),
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
            Kind::EngineOil => say::closes_on_stick(),
            Kind::Brake => say::closes_on_hard_pedal(),
            Kind::Clutch => say::closes_on_clutch_pedal(),
            Kind::PowerSteering => say::closes_on_no_foam(),
            Kind::AutomaticGearbox => say::closes_on_level_at_temperature(),
            Kind::ManualGearbox | Kind::Axle => say::closes_on_oil_at_plug(),
            Kind::Refrigerant => say::closes_on_labels_weight(),
            Kind::Fuel => say::closes_on_no_drip_no_smell(),
            Kind::Urea => say::closes_on_reading_within(),
            Kind::Washer => say::closes_on_spray(),
            Kind::Battery => say::closes_on_both_terminals(),
        }
    }

    /// Whether a second person's check is asked for.
    pub fn wants_second_person(self) -> bool {
        matches!(self, Kind::Brake)
    }
}

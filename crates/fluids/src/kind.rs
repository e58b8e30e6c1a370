//! The fluids, and the battery.

use crate::phrases as say;
use std::fmt;

/// A fluid besides coolant, or the battery.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Kind {
    EngineOil,
    Brake,
    Clutch,
    PowerSteering,
    AutomaticGearbox,
    ManualGearbox,
    Axle,
    Refrigerant,
    Fuel,
    Urea,
    Washer,
    Battery,
}

impl Kind {
    pub const ALL: [Kind; 12] = [
        Kind::EngineOil,
        Kind::Brake,
        Kind::Clutch,
        Kind::PowerSteering,
        Kind::AutomaticGearbox,
        Kind::ManualGearbox,
        Kind::Axle,
        Kind::Refrigerant,
        Kind::Fuel,
        Kind::Urea,
        Kind::Washer,
        Kind::Battery,
    ];

    /// Its word on a command line.
    pub const fn word(self) -> &'static str {
        match self {
            Kind::EngineOil => "engine-oil",
            Kind::Brake => "brake",
            Kind::Clutch => "clutch",
            Kind::PowerSteering => "power-steering",
            Kind::AutomaticGearbox => "automatic-gearbox",
            Kind::ManualGearbox => "manual-gearbox",
            Kind::Axle => "axle",
            Kind::Refrigerant => "refrigerant",
            Kind::Fuel => "fuel",
            Kind::Urea => "urea",
            Kind::Washer => "washer",
            Kind::Battery => "battery",
        }
    }

    /// The kind of that word.
    pub fn named(word: &str) -> Option<Kind> {
        Kind::ALL.into_iter().find(|kind| kind.word() == word)
    }

    /// Whether amounts for mixing two strengths are a matter of chemistry.
    pub fn mixes_by_strength(self) -> bool {
        matches!(self, Kind::Urea | Kind::Washer)
    }

    /// What to do where no sum helps.
    pub(crate) fn instead(self) -> &'static str {
        match self {
            Kind::EngineOil => say::instead_top_up_with_grade(),
            Kind::Brake | Kind::Clutch => say::instead_use_the_class(),
            Kind::Refrigerant => say::instead_recover_and_weigh(),
            Kind::Fuel => say::instead_drain_what_is_wrong(),
            Kind::Battery => say::instead_charge_or_renew(),
            _ => say::instead_what_maker_asks(),
        }
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Kind::EngineOil => say::engine_oil(),
            Kind::Brake => say::brake_fluid(),
            Kind::Clutch => say::clutch_fluid(),
            Kind::PowerSteering => say::power_steering_fluid(),
            Kind::AutomaticGearbox => say::automatic_gearbox_oil(),
            Kind::ManualGearbox => say::manual_gearbox_oil(),
            Kind::Axle => say::axle_oil(),
            Kind::Refrigerant => say::refrigerant(),
            Kind::Fuel => say::fuel(),
            Kind::Urea => say::urea_solution(),
            Kind::Washer => say::washer_fluid(),
            Kind::Battery => say::battery(),
        })
    }
}

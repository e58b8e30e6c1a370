//! The fluids, and the battery.

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
            Kind::EngineOil => {
                "top up with the grade and specification that the maker asks for, or drain and fill"
            }
            Kind::Brake | Kind::Clutch => {
                "use the class that the maker asks for; if another is in, the maker says whether to flush"
            }
            Kind::Refrigerant => "recover the whole charge and weigh in what the label states",
            Kind::Fuel => "drain what is wrong and fill what belongs in",
            Kind::Battery => "a battery is charged or renewed, never topped up with acid",
            _ => "use what the maker asks for; if another is in, drain and fill",
        }
    }
}

impl fmt::Display for Kind {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Kind::EngineOil => "engine oil",
            Kind::Brake => "brake fluid",
            Kind::Clutch => "clutch fluid",
            Kind::PowerSteering => "power steering fluid",
            Kind::AutomaticGearbox => "automatic gearbox oil",
            Kind::ManualGearbox => "manual gearbox oil",
            Kind::Axle => "axle oil",
            Kind::Refrigerant => "refrigerant",
            Kind::Fuel => "fuel",
            Kind::Urea => "urea solution",
            Kind::Washer => "washer fluid",
            Kind::Battery => "battery",
        })
    }
}

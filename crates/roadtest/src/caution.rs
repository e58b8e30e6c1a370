//! What stands before a road test.

/// A caution, to be shown before the drive.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caution {
    SecondPerson,
    SafeToDrive,
    Insured,
    HotEngine,
    MakersLimits,
}

impl Caution {
    /// All of them.
    pub const ALL: [Caution; 5] = [
        Caution::SecondPerson,
        Caution::SafeToDrive,
        Caution::Insured,
        Caution::HotEngine,
        Caution::MakersLimits,
    ];

    /// In words.
    #[must_use]
    pub const fn text(self) -> &'static str {
        match self {
            Caution::SecondPerson => {
                "The driver drives and nothing else. A second person reads and records, or the \
                 recording runs by itself."
            }
            Caution::SafeToDrive => {
                "Before the drive: brakes, steering, wheels, belts and levels checked, cables of \
                 the recorder clear of pedals and wheel."
            }
            Caution::Insured => {
                "Plates, insurance, speed limits and traffic law hold on a road test too. Local \
                 rules come first."
            }
            Caution::HotEngine => {
                "If the gauge climbs towards red, stop where it is safe and switch off. Open \
                 nothing until the engine is cool to the hand."
            }
            Caution::MakersLimits => {
                "The vehicle maker's temperatures, voltages and road test come before the common \
                 values used here."
            }
        }
    }
}

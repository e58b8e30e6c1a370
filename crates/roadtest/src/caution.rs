//! What stands before a road test.

use crate::phrases::judge as say;

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
    pub fn text(self) -> &'static str {
        match self {
            Caution::SecondPerson => say::a_second_person_reads(),
            Caution::SafeToDrive => say::checked_before_the_drive(),
            Caution::Insured => say::insured(),
            Caution::HotEngine => say::stop_when_hot(),
            Caution::MakersLimits => say::makers_limits_come_first(),
        }
    }
}

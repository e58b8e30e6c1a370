//! What stands before a step that can hurt.

use crate::phrases as say;
/// A caution, to be shown before the step that it concerns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caution {
    HotOil,
    MovingParts,
    BrakeFluid,
    NotOnTheRoad,
    Supported,
    Frost,
    Fire,
    Acid,
    Short,
    Alcohol,
    UreaSpill,
    Disposal,
    MakersSpecification,
}

impl Caution {
    pub const ALL: [Caution; 13] = [
        Caution::HotOil,
        Caution::MovingParts,
        Caution::BrakeFluid,
        Caution::NotOnTheRoad,
        Caution::Supported,
        Caution::Frost,
        Caution::Fire,
        Caution::Acid,
        Caution::Short,
        Caution::Alcohol,
        Caution::UreaSpill,
        Caution::Disposal,
        Caution::MakersSpecification,
    ];

    /// In words.
    pub fn text(self) -> &'static str {
        match self {
            Caution::HotOil => say::hot_oil(),
            Caution::MovingParts => say::moving_parts(),
            Caution::BrakeFluid => say::brake_fluid_eats(),
            Caution::NotOnTheRoad => say::not_on_the_road(),
            Caution::Supported => say::supported(),
            Caution::Frost => say::frost(),
            Caution::Fire => say::fire(),
            Caution::Acid => say::acid(),
            Caution::Short => say::short(),
            Caution::Alcohol => say::alcohol(),
            Caution::UreaSpill => say::urea_spill(),
            Caution::Disposal => say::disposal(),
            Caution::MakersSpecification => say::makers_specification(),
        }
    }
}

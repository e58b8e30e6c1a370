//! What stands before a step that can hurt.

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
    pub const fn text(self) -> &'static str {
        match self {
            Caution::HotOil => "Hot oil burns. Let it cool to the hand; gloves and sleeves on.",
            Caution::MovingParts => {
                "Belts and fans move. Hands, hair and rags clear before it runs."
            }
            Caution::BrakeFluid => {
                "Brake fluid eats paint and stings eyes. Cover the wings, rinse spills with water, use fluid from a sealed container only."
            }
            Caution::NotOnTheRoad => {
                "Not a metre under its own power until the pedal is hard and a second person has tried it."
            }
            Caution::Supported => {
                "Under a raised vehicle only on stands or a lift that carries it."
            }
            Caution::Frost => {
                "Refrigerant freezes skin and eyes and takes the air from a pit. Licensed hands alone, with goggles and gloves; never vent it: local law."
            }
            Caution::Fire => {
                "Fuel and its vapour burn. No flame, no spark, battery off, extinguisher at hand; let pressure off as the maker says."
            }
            Caution::Acid => {
                "Battery acid burns and its gas explodes. Goggles on, no spark near it."
            }
            Caution::Short => {
                "A tool between a live terminal and the body welds itself on. Negative off first, on last, unless the maker says otherwise."
            }
            Caution::Alcohol => {
                "Washer concentrate is poisonous and burns. No flame; wipe up every spill."
            }
            Caution::UreaSpill => {
                "Urea solution creeps into connectors and eats them. Rinse every spill with warm water; never into the fuel tank."
            }
            Caution::Disposal => "Caught, kept apart and handed in: local rules say how.",
            Caution::MakersSpecification => {
                "The vehicle maker's fluid, amount, sequence and temperatures come first."
            }
        }
    }
}

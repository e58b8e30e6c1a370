//! What stands before a step that can hurt, and what a proof asks for.

/// A caution, to be shown before the step that it concerns.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Caution {
    Hot,
    Poisonous,
    FanStarts,
    ExhaustIndoors,
    Disposal,
    MakersSpecification,
}

impl Caution {
    /// All of them.
    pub const ALL: [Caution; 6] = [
        Caution::Hot,
        Caution::Poisonous,
        Caution::FanStarts,
        Caution::ExhaustIndoors,
        Caution::Disposal,
        Caution::MakersSpecification,
    ];

    /// In words.
    pub const fn text(self) -> &'static str {
        match self {
            Caution::Hot => {
                "Hot coolant is under pressure and scalds. Open nothing until the engine is cool to the hand."
            }
            Caution::Poisonous => {
                "Coolant is poisonous and tastes sweet. Keep it from children and animals; wipe up every spill."
            }
            Caution::FanStarts => {
                "The fan may start by itself, even with the engine off. Keep hands, hair and rags clear."
            }
            Caution::ExhaustIndoors => "Run the engine only with its exhaust led outside.",
            Caution::Disposal => {
                "Do not pour coolant into a drain or onto soil. Local rules say how it is recycled or handed in."
            }
            Caution::MakersSpecification => {
                "The vehicle maker's coolant specification and filling instructions come first."
            }
        }
    }
}

/// The leak test, step by step; an internal leak and the cap are checked apart.
pub const LEAK_TEST_STEPS: [&str; 7] = [
    "Let the engine cool; a warm system loses pressure by cooling.",
    "Close the tester on itself, pump it up and watch: a tester that leaks proves nothing.",
    "Test the cap apart, on its adapter: it has to open near its rating and hold below it.",
    "Pump the system up, never above the cap's or the system's rating.",
    "Wait for hoses to settle, pump up again, then start timing.",
    "Note time, pressure and coolant temperature each minute; look at every joint.",
    "Pressure lost with nothing wet: check the oil, the carpet at the heater, and test for \
     combustion gas in the bottle.",
];

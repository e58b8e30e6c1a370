//! What stands before a step that can hurt, and what a proof asks for.

use crate::phrases as say;
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
    pub fn text(self) -> &'static str {
        match self {
            Caution::Hot => say::hot(),
            Caution::Poisonous => say::poisonous(),
            Caution::FanStarts => say::fan_starts(),
            Caution::ExhaustIndoors => say::exhaust_indoors(),
            Caution::Disposal => say::disposal(),
            Caution::MakersSpecification => say::makers_specification(),
        }
    }
}

/// The leak test, step by step; an internal leak and the cap are checked apart.
#[must_use]
pub fn leak_test_steps() -> Vec<&'static str> {
    vec![
        say::let_engine_cool(),
        say::tester_on_itself_first(),
        say::cap_apart(),
        say::pump_system_up(),
        say::wait_for_hoses(),
        say::note_each_minute(),
        say::lost_with_nothing_wet(),
    ]
}

//! Ways to get the air out, as work to be done.

use crate::caution::Caution;

/// A way of bleeding. The maker's instructions say which one a vehicle wants.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum BleedWay {
    OpenCap,
    BleedScrew,
    HeaterValve,
    ElectricPump,
    Vacuum,
}

impl BleedWay {
    /// Every way.
    pub const ALL: [BleedWay; 5] = [
        BleedWay::OpenCap,
        BleedWay::BleedScrew,
        BleedWay::HeaterValve,
        BleedWay::ElectricPump,
        BleedWay::Vacuum,
    ];

    /// What to call it.
    pub fn name(self) -> &'static str {
        match self {
            BleedWay::OpenCap => "open cap",
            BleedWay::BleedScrew => "bleed screw",
            BleedWay::HeaterValve => "heater valve",
            BleedWay::ElectricPump => "electric pump's own mode",
            BleedWay::Vacuum => "vacuum",
        }
    }

    /// The work, in order.
    pub fn work(self) -> &'static [&'static str] {
        match self {
            BleedWay::OpenCap => &[
                "Raise the filler if the bottle is not the highest point.",
                "Fill slowly to the mark with the engine cold and the cap off.",
                "Run at idle with the heater hot until the thermostat opens; top up as bubbles come.",
                "Fit the cap before it boils over, let it cool, set the level cold.",
            ],
            BleedWay::BleedScrew => &[
                "Open each bleed screw, the lowest first.",
                "Fill slowly until coolant runs there without bubbles, then close it to its torque.",
                "Run with the heater hot until the thermostat opens, let it cool, set the level cold.",
            ],
            BleedWay::HeaterValve => &[
                "Set the heater to hot so that its valve is open; ignition on where a motor moves it.",
                "Fill slowly, squeeze the heater hoses, top up.",
                "Run until the heater blows hot at idle, let it cool, set the level cold.",
            ],
            BleedWay::ElectricPump => &[
                "Connect a charger; the pump draws on the battery for minutes.",
                "Fill to the mark, then start the pump's bleed mode as the maker describes.",
                "Let it run its full time with the engine off, top up, run warm, set the level cold.",
            ],
            BleedWay::Vacuum => &[
                "Draw the empty system down, close the valve, watch the gauge hold.",
                "Let coolant be sucked in from a full container, hose end always covered.",
                "Top up, run with the heater hot until the thermostat opens, set the level cold.",
            ],
        }
    }

    /// What to be warned of first.
    pub fn cautions(self) -> &'static [Caution] {
        match self {
            BleedWay::ElectricPump => &[
                Caution::MakersSpecification,
                Caution::FanStarts,
                Caution::Poisonous,
            ],
            _ => &[
                Caution::MakersSpecification,
                Caution::Hot,
                Caution::FanStarts,
                Caution::ExhaustIndoors,
                Caution::Poisonous,
            ],
        }
    }
}

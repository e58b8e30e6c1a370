//! One row for each fluid: its steps, and what it can be asked.

use super::asks::{AMOUNTS, CHARGE, LEVEL, READING, SORTS, UREA, WASHER};
use super::{SECOND, of, ticks, worked};
use crate::{Calculator, Part};
use fluids::Kind;

/// The steps of a kind as boxes to tick.
macro_rules! steps {
    ($kind:expr) => {{
        const STEPS: &[Part] = &ticks::<{ $kind.steps().len() }>($kind.steps());
        Part::Group(STEPS)
    }};
}

macro_rules! fluid {
    ($kind:expr, $name:literal, $what:literal, [$($part:expr),*]) => {
        of(
            $kind,
            $name,
            $what,
            &[
                Part::Heading("Done so far"),
                steps!($kind),
                $($part),*
            ],
            |asked| worked($kind, asked),
        )
    };
}

pub(super) const ALL: &[Calculator] = &[
    fluid!(
        Kind::EngineOil,
        "Engine oil",
        "drain, fill, run, wait, level; two sorts",
        [SORTS, AMOUNTS]
    ),
    fluid!(
        Kind::Brake,
        "Brake fluid",
        "bleed, pedal, boiling point by class",
        [SECOND, READING, SORTS]
    ),
    fluid!(
        Kind::Clutch,
        "Clutch fluid",
        "bleed, pedal, boiling point by class",
        [READING, SORTS]
    ),
    fluid!(
        Kind::PowerSteering,
        "Power steering",
        "lock to lock, foam gone, level",
        [SORTS, AMOUNTS]
    ),
    fluid!(
        Kind::AutomaticGearbox,
        "Automatic gearbox",
        "level in its temperature window, in against out",
        [LEVEL, AMOUNTS, SORTS]
    ),
    fluid!(
        Kind::ManualGearbox,
        "Manual gearbox",
        "filled to the plug, in against out",
        [LEVEL, AMOUNTS, SORTS]
    ),
    fluid!(
        Kind::Axle,
        "Axle",
        "filled to the plug, in against out",
        [LEVEL, AMOUNTS, SORTS]
    ),
    fluid!(
        Kind::Refrigerant,
        "Refrigerant",
        "weighed out and in, by licensed hands",
        [CHARGE]
    ),
    fluid!(Kind::Fuel, "Fuel", "primed, no drip, no smell", [SORTS]),
    fluid!(
        Kind::Urea,
        "Urea solution",
        "strength when filled up, what to drain",
        [UREA]
    ),
    fluid!(
        Kind::Washer,
        "Washer fluid",
        "concentrate and water, frost limit",
        [WASHER]
    ),
    fluid!(
        Kind::Battery,
        "Battery",
        "terminals in sequence, memory, registration",
        []
    ),
];

//! One row for each fluid: its steps, and what it can be asked.

use super::asks::{AMOUNTS, CHARGE, LEVEL, READING, SORTS, UREA, WASHER};
use super::{SECOND, of, ticks, worked};
use crate::phrases::fluids as say;
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
    ($kind:expr, $name:expr, $what:expr, [$($part:expr),*]) => {
        of(
            $kind,
            $name,
            $what,
            &[
                Part::Heading(say::done_so_far),
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
        say::engine_oil,
        say::drain_fill_run_wait_level_two,
        [SORTS, AMOUNTS]
    ),
    fluid!(
        Kind::Brake,
        say::brake_fluid,
        say::bleed_pedal_boiling_point_by_class,
        [SECOND, READING, SORTS]
    ),
    fluid!(
        Kind::Clutch,
        say::clutch_fluid,
        say::bleed_pedal_boiling_point_by_class,
        [READING, SORTS]
    ),
    fluid!(
        Kind::PowerSteering,
        say::power_steering,
        say::lock_to_lock_foam_gone_level,
        [SORTS, AMOUNTS]
    ),
    fluid!(
        Kind::AutomaticGearbox,
        say::automatic_gearbox,
        say::level_in_its_temperature_window_in,
        [LEVEL, AMOUNTS, SORTS]
    ),
    fluid!(
        Kind::ManualGearbox,
        say::manual_gearbox,
        say::filled_to_the_plug_in_against,
        [LEVEL, AMOUNTS, SORTS]
    ),
    fluid!(
        Kind::Axle,
        say::axle,
        say::filled_to_the_plug_in_against,
        [LEVEL, AMOUNTS, SORTS]
    ),
    fluid!(
        Kind::Refrigerant,
        say::refrigerant,
        say::weighed_out_and_in_by_licensed,
        [CHARGE]
    ),
    fluid!(Kind::Fuel, say::fuel, say::primed_no_drip_no_smell, [SORTS]),
    fluid!(
        Kind::Urea,
        say::urea_solution,
        say::strength_when_filled_up_what_to,
        [UREA]
    ),
    fluid!(
        Kind::Washer,
        say::washer_fluid,
        say::concentrate_and_water_frost_limit,
        [WASHER]
    ),
    fluid!(
        Kind::Battery,
        say::battery,
        say::terminals_in_sequence_memory_registration,
        []
    ),
];

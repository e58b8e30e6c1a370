//! Where the lines are drawn, and on whose word.

use measure::{Grade, Source};

/// Below this no common thermostat holds an engine: 160 °F is the coolest made.
pub(crate) const COOLEST_THERMOSTAT_C: f64 = 71.0;
/// Between the coolest and this, only the rating on the thermostat decides.
pub(crate) const USUALLY_HELD_C: f64 = 75.0;
/// So far below its rating a thermostat counts as stuck open.
pub(crate) const STUCK_OPEN_BELOW_RATING_K: f64 = 11.0;
/// A warm engine.
pub(crate) const WARM_C: f64 = 70.0;
/// Within this a driven engine is warm.
pub(crate) const WARM_WITHIN_MIN: f64 = 15.0;
/// Without a limit of the maker: from here on an engine is too hot.
pub(crate) const TOO_HOT_C: f64 = 110.0;
/// Without a limit of the maker: from here to [`TOO_HOT_C`] nobody can say.
pub(crate) const HOT_C: f64 = 105.0;
/// Water boils here at 101.325 kPa.
pub(crate) const BOILS_OPEN_C: f64 = 100.0;
/// Lowest and highest usual charging voltage.
pub(crate) const CHARGING_V: (f64, f64) = (13.2, 15.0);
/// Below this with the engine running, the battery feeds the vehicle.
pub(crate) const NOT_CHARGING_V: f64 = 12.6;
/// Above this the battery is cooked.
pub(crate) const OVERCHARGING_V: f64 = 15.5;
/// Short and long trim together: usual up to the first, failed beyond the second.
pub(crate) const TRIM_PERCENT: (f64, f64) = (10.0, 15.0);
/// A rise and fall of the coolant that metal and water cannot do.
pub(crate) const SPIKE_K: f64 = 7.0;
/// Seconds in which a spike rises: an engine pulling hard makes 5 K in that time.
pub(crate) const SPIKE_RISE_S: f64 = 10.0;
/// Standing and moving.
pub(crate) const STANDING_KMH: f64 = 3.0;
pub(crate) const MOVING_KMH: f64 = 30.0;
pub(crate) const MOTORWAY_KMH: f64 = 80.0;
/// An engine that turns.
pub(crate) const RUNNING_RPM: f64 = 400.0;

pub(crate) fn thermostats() -> Source {
    Source::new(
        "service information of a 2003 off-road vehicle, thermostat monitor",
        "regulates at 71 to 93 °C; stuck open if 11 °C below it after 15 minutes",
        Grade::Published,
    )
}

pub(crate) fn charging() -> Source {
    Source::new(
        "training library, diagnosing charging systems",
        "13.5 to 14.7 V; below 13 V not charging; above 15 V too much",
        Grade::Published,
    )
}

pub(crate) fn trims() -> Source {
    Source::new(
        "articles on fuel trim",
        "both together within 10 %; beyond 15 % look for the cause",
        Grade::Published,
    )
}

pub(crate) fn common() -> Source {
    Source::new("practice of the trade", "", Grade::CommonPractice)
}

pub(crate) fn derived() -> Source {
    Source::new("the lines above", "", Grade::Derived)
}

//! What a log can hold.

use crate::phrases::log as say;

/// One thing that is read over the drive; each has one unit here, whatever the log's is.
#[derive(Debug, Clone, Copy, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Quantity {
    Coolant,
    Intake,
    Ambient,
    Oil,
    Speed,
    Rpm,
    Load,
    Voltage,
    ShortTrim1,
    LongTrim1,
    ShortTrim2,
    LongTrim2,
    RunTime,
    Manifold,
    Barometer,
    AirFlow,
    Throttle,
    /// On (1 or a part of it in per cent) or off (0).
    Fan,
    /// Fuel control closed (1) or open (0).
    ClosedLoop,
    Timing,
    DistanceWithLamp,
    FuelLevel,
    WarmUps,
    DistanceSinceCleared,
    AbsoluteLoad,
    Ratio,
    RelativeThrottle,
    MinutesWithLamp,
    MinutesSinceCleared,
    FuelRate,
}

impl Quantity {
    /// All of them.
    pub const ALL: [Quantity; 30] = [
        Quantity::Coolant,
        Quantity::Intake,
        Quantity::Ambient,
        Quantity::Oil,
        Quantity::Speed,
        Quantity::Rpm,
        Quantity::Load,
        Quantity::Voltage,
        Quantity::ShortTrim1,
        Quantity::LongTrim1,
        Quantity::ShortTrim2,
        Quantity::LongTrim2,
        Quantity::RunTime,
        Quantity::Manifold,
        Quantity::Barometer,
        Quantity::AirFlow,
        Quantity::Throttle,
        Quantity::Fan,
        Quantity::ClosedLoop,
        Quantity::Timing,
        Quantity::DistanceWithLamp,
        Quantity::FuelLevel,
        Quantity::WarmUps,
        Quantity::DistanceSinceCleared,
        Quantity::AbsoluteLoad,
        Quantity::Ratio,
        Quantity::RelativeThrottle,
        Quantity::MinutesWithLamp,
        Quantity::MinutesSinceCleared,
        Quantity::FuelRate,
    ];

    fn told(self) -> (&'static str, &'static str, f64, f64) {
        match self {
            Quantity::Coolant => ("coolant", "°C", -40.0, 215.0),
            Quantity::Intake => ("intake", "°C", -40.0, 215.0),
            Quantity::Ambient => ("ambient", "°C", -60.0, 215.0),
            Quantity::Oil => ("oil", "°C", -40.0, 215.0),
            Quantity::Speed => ("speed", "km/h", 0.0, 400.0),
            Quantity::Rpm => ("rpm", "1/min", 0.0, 16_383.75),
            Quantity::Load => ("load", "%", 0.0, 100.0),
            Quantity::Voltage => ("voltage", "V", 0.0, 65.535),
            Quantity::ShortTrim1 => ("short trim 1", "%", -100.0, 100.0),
            Quantity::LongTrim1 => ("long trim 1", "%", -100.0, 100.0),
            Quantity::ShortTrim2 => ("short trim 2", "%", -100.0, 100.0),
            Quantity::LongTrim2 => ("long trim 2", "%", -100.0, 100.0),
            Quantity::RunTime => ("run time", "s", 0.0, 1e7),
            Quantity::Manifold => ("manifold", "kPa", 0.0, 700.0),
            Quantity::Barometer => ("barometer", "kPa", 30.0, 255.0),
            Quantity::AirFlow => ("air flow", "g/s", 0.0, 2000.0),
            Quantity::Throttle => ("throttle", "%", 0.0, 100.0),
            Quantity::Fan => ("fan", "", 0.0, 10_000.0),
            Quantity::ClosedLoop => ("closed loop", "", 0.0, 1.0),
            Quantity::Timing => ("timing", "°", -64.0, 90.0),
            Quantity::DistanceWithLamp => ("distance with lamp", "km", 0.0, 65_535.0),
            Quantity::FuelLevel => ("fuel level", "%", 0.0, 100.0),
            Quantity::WarmUps => ("warm-ups", "", 0.0, 255.0),
            Quantity::DistanceSinceCleared => ("distance since cleared", "km", 0.0, 65_535.0),
            Quantity::AbsoluteLoad => ("absolute load", "%", 0.0, 25_700.0),
            Quantity::Ratio => ("ratio", "", 0.0, 8.0),
            Quantity::RelativeThrottle => ("relative throttle", "%", 0.0, 100.0),
            Quantity::MinutesWithLamp => ("minutes with lamp", "min", 0.0, 65_535.0),
            Quantity::MinutesSinceCleared => ("minutes since cleared", "min", 0.0, 65_535.0),
            Quantity::FuelRate => ("fuel rate", "L/h", 0.0, 3276.75),
        }
    }

    /// Its name, as a mapping writes it.
    #[must_use]
    pub fn name(self) -> &'static str {
        self.told().0
    }

    /// As a person reads it.
    #[must_use]
    pub fn said(self) -> &'static str {
        match self {
            Quantity::Coolant => say::quantity_coolant(),
            Quantity::Intake => say::quantity_intake(),
            Quantity::Ambient => say::quantity_ambient(),
            Quantity::Oil => say::quantity_oil(),
            Quantity::Speed => say::quantity_speed(),
            Quantity::Rpm => say::quantity_rpm(),
            Quantity::Load => say::quantity_load(),
            Quantity::Voltage => say::quantity_voltage(),
            Quantity::ShortTrim1 => say::quantity_short_trim_1(),
            Quantity::LongTrim1 => say::quantity_long_trim_1(),
            Quantity::ShortTrim2 => say::quantity_short_trim_2(),
            Quantity::LongTrim2 => say::quantity_long_trim_2(),
            Quantity::RunTime => say::quantity_run_time(),
            Quantity::Manifold => say::quantity_manifold(),
            Quantity::Barometer => say::quantity_barometer(),
            Quantity::AirFlow => say::quantity_air_flow(),
            Quantity::Throttle => say::quantity_throttle(),
            Quantity::Fan => say::quantity_fan(),
            Quantity::ClosedLoop => say::quantity_closed_loop(),
            Quantity::Timing => say::quantity_timing(),
            Quantity::DistanceWithLamp => say::quantity_distance_with_lamp(),
            Quantity::FuelLevel => say::quantity_fuel_level(),
            Quantity::WarmUps => say::quantity_warm_ups(),
            Quantity::DistanceSinceCleared => say::quantity_distance_since_cleared(),
            Quantity::AbsoluteLoad => say::quantity_absolute_load(),
            Quantity::Ratio => say::quantity_ratio(),
            Quantity::RelativeThrottle => say::quantity_relative_throttle(),
            Quantity::MinutesWithLamp => say::quantity_minutes_with_lamp(),
            Quantity::MinutesSinceCleared => say::quantity_minutes_since_cleared(),
            Quantity::FuelRate => say::quantity_fuel_rate(),
        }
    }

    /// The unit that its values have here.
    #[must_use]
    pub fn unit(self) -> &'static str {
        self.told().1
    }

    /// The least and greatest value that can be true; the ranges of SAE J1979 where it has one.
    #[must_use]
    pub fn range(self) -> (f64, f64) {
        let (_, _, low, high) = self.told();
        (low, high)
    }

    /// The one of that name.
    #[must_use]
    pub fn named(name: &str) -> Option<Quantity> {
        let name = name.trim().to_lowercase().replace(['_', '-'], " ");
        Quantity::ALL
            .into_iter()
            .find(|quantity| quantity.name().replace('-', " ") == name)
    }
}

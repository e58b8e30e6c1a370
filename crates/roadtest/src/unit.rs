//! Units of a column, and their way to the unit used here.

use crate::Quantity;

/// A unit as a logger may write it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub(crate) enum Unit {
    Celsius,
    Fahrenheit,
    Kelvin,
    KmPerHour,
    MilesPerHour,
    MetresPerSecond,
    Kilopascals,
    PoundsPerSquareInch,
    Bar,
    Millibar,
    InchesOfMercury,
    Volts,
    Millivolts,
    Percent,
    PerMinute,
    GramsPerSecond,
    PoundsPerMinute,
    Seconds,
    Milliseconds,
    Minutes,
    Hours,
    Kilometres,
    Miles,
}

/// Words for units, in lower case, without blanks.
const WORDS: [(&str, Unit); 70] = [
    ("°c", Unit::Celsius),
    ("ºc", Unit::Celsius),
    ("c", Unit::Celsius),
    ("degc", Unit::Celsius),
    ("deg.c", Unit::Celsius),
    ("celsius", Unit::Celsius),
    ("centigrade", Unit::Celsius),
    ("°", Unit::Celsius),
    ("°f", Unit::Fahrenheit),
    ("ºf", Unit::Fahrenheit),
    ("f", Unit::Fahrenheit),
    ("degf", Unit::Fahrenheit),
    ("deg.f", Unit::Fahrenheit),
    ("fahrenheit", Unit::Fahrenheit),
    ("k", Unit::Kelvin),
    ("kelvin", Unit::Kelvin),
    ("km/h", Unit::KmPerHour),
    ("kmh", Unit::KmPerHour),
    ("kph", Unit::KmPerHour),
    ("kmph", Unit::KmPerHour),
    ("mph", Unit::MilesPerHour),
    ("mi/h", Unit::MilesPerHour),
    ("miles/h", Unit::MilesPerHour),
    ("m/s", Unit::MetresPerSecond),
    ("metres/second", Unit::MetresPerSecond),
    ("meters/second", Unit::MetresPerSecond),
    ("miles/hour", Unit::MilesPerHour),
    ("kilometers/hour", Unit::KmPerHour),
    ("kpa", Unit::Kilopascals),
    ("psi", Unit::PoundsPerSquareInch),
    ("psia", Unit::PoundsPerSquareInch),
    ("bar", Unit::Bar),
    ("mbar", Unit::Millibar),
    ("hpa", Unit::Millibar),
    ("inhg", Unit::InchesOfMercury),
    ("v", Unit::Volts),
    ("volt", Unit::Volts),
    ("volts", Unit::Volts),
    ("mv", Unit::Millivolts),
    ("%", Unit::Percent),
    ("percent", Unit::Percent),
    ("pct", Unit::Percent),
    ("rpm", Unit::PerMinute),
    ("1/min", Unit::PerMinute),
    ("r/min", Unit::PerMinute),
    ("rev/min", Unit::PerMinute),
    ("min-1", Unit::PerMinute),
    ("u/min", Unit::PerMinute),
    ("g/s", Unit::GramsPerSecond),
    ("g/sec", Unit::GramsPerSecond),
    ("gps", Unit::GramsPerSecond),
    ("lb/min", Unit::PoundsPerMinute),
    ("s", Unit::Seconds),
    ("sec", Unit::Seconds),
    ("secs", Unit::Seconds),
    ("second", Unit::Seconds),
    ("seconds", Unit::Seconds),
    ("sek", Unit::Seconds),
    ("ms", Unit::Milliseconds),
    ("msec", Unit::Milliseconds),
    ("milliseconds", Unit::Milliseconds),
    ("min", Unit::Minutes),
    ("minute", Unit::Minutes),
    ("minutes", Unit::Minutes),
    ("h", Unit::Hours),
    ("hour", Unit::Hours),
    ("hours", Unit::Hours),
    ("km", Unit::Kilometres),
    ("mi", Unit::Miles),
    ("miles", Unit::Miles),
];

impl Unit {
    pub(crate) fn named(words: &str) -> Option<Unit> {
        let words: String = words
            .to_lowercase()
            .chars()
            .filter(|c| !c.is_whitespace())
            .collect();
        WORDS
            .iter()
            .find(|(word, _)| *word == words)
            .map(|(_, unit)| *unit)
    }

    /// The value in the unit that the quantity has here; nothing where the two do not fit.
    pub(crate) fn convert(self, value: f64, to: Quantity) -> Option<f64> {
        let found = match (to.unit(), self) {
            ("°C", Unit::Celsius)
            | ("km/h", Unit::KmPerHour)
            | ("kPa", Unit::Kilopascals)
            | ("V", Unit::Volts)
            | ("%", Unit::Percent)
            | ("1/min", Unit::PerMinute)
            | ("g/s", Unit::GramsPerSecond)
            | ("s", Unit::Seconds)
            | ("min", Unit::Minutes)
            | ("km", Unit::Kilometres) => value,
            ("°C", Unit::Fahrenheit) => (value - 32.0) / 1.8,
            ("°C", Unit::Kelvin) => value - 273.15,
            ("km/h", Unit::MilesPerHour) => value * 1.609_344,
            ("km/h", Unit::MetresPerSecond) => value * 3.6,
            ("kPa", Unit::PoundsPerSquareInch) => value * 6.894_757_293,
            ("kPa", Unit::Bar) => value * 100.0,
            ("kPa", Unit::Millibar) => value / 10.0,
            ("kPa", Unit::InchesOfMercury) => value * 3.386_389,
            ("V", Unit::Millivolts) => value / 1000.0,
            ("g/s", Unit::PoundsPerMinute) => value * 453.592_37 / 60.0,
            ("s", _) => self.seconds(value)?,
            ("km", Unit::Miles) => value * 1.609_344,
            // A fan may be told in any unit: only whether it turns counts.
            ("", _) => value,
            _ => return None,
        };
        Some(found)
    }

    /// The value in seconds, if it is a time.
    pub(crate) fn seconds(self, value: f64) -> Option<f64> {
        match self {
            Unit::Seconds => Some(value),
            Unit::Milliseconds => Some(value / 1000.0),
            Unit::Minutes => Some(value * 60.0),
            Unit::Hours => Some(value * 3600.0),
            _ => None,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn units_of_other_places_come_to_ours() {
        let near = |unit: Unit, value: f64, to: Quantity, expected: f64| {
            let got = unit.convert(value, to).unwrap();
            assert!((got - expected).abs() < 1e-3, "{unit:?} {value}: {got}");
        };
        near(Unit::Fahrenheit, 212.0, Quantity::Coolant, 100.0);
        near(Unit::Kelvin, 361.15, Quantity::Coolant, 88.0);
        near(Unit::MilesPerHour, 60.0, Quantity::Speed, 96.5606);
        near(
            Unit::PoundsPerSquareInch,
            14.696,
            Quantity::Barometer,
            101.325,
        );
        near(Unit::InchesOfMercury, 29.921, Quantity::Barometer, 101.324);
        near(Unit::Millivolts, 13_900.0, Quantity::Voltage, 13.9);
        near(Unit::PoundsPerMinute, 1.0, Quantity::AirFlow, 7.5599);
        assert_eq!(Unit::Volts.convert(1.0, Quantity::Coolant), None);
        assert_eq!(Unit::named(" Deg C "), Some(Unit::Celsius));
        assert_eq!(Unit::named("furlong"), None);
    }
}

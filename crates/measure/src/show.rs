//! Writing quantities for people.

use crate::quantity::{Measured, Misfit, Quantity};
use crate::unit::{Customary, Dimension, Unit};
use rust_decimal::{Decimal, RoundingStrategy};

/// The space between a number and its unit: narrow, and no line may break there.
const NARROW_SPACE: char = '\u{202f}';

/// A written fraction such as 1/3 can have more decimals than anybody reads.
const DECIMALS_WORTH_READING: u32 = 6;

impl Measured {
    /// For a reader used to `customary`, with the other system's value in brackets.
    ///
    /// The number that was written stays as written; a converted one is rounded to
    /// three digits (four for lengths, areas and voltages), whole numbers kept whole.
    ///
    /// ```
    /// use measure::{Customary, Dimension};
    ///
    /// let torque = measure::read("22 Nm", Dimension::Torque)?;
    /// assert_eq!(torque.show(Customary::Metric), "22\u{202f}N·m (16.2\u{202f}lb·ft)");
    /// assert_eq!(torque.show(Customary::Us), "16.2\u{202f}lb·ft (22\u{202f}N·m)");
    /// # Ok::<(), measure::Unreadable>(())
    /// ```
    pub fn show(&self, customary: Customary) -> String {
        let Some(own) = self.unit().customary() else {
            return self.own_text();
        };
        let text_in = |system: Customary| {
            if own == system {
                self.own_text()
            } else {
                self.text_in(system)
            }
        };
        let (first, second) = match customary {
            Customary::Metric => (Customary::Metric, Customary::Us),
            Customary::Us => (Customary::Us, Customary::Metric),
        };
        format!("{} ({})", text_in(first), text_in(second))
    }

    /// As a number of `unit` with `digits` after the point, halves rounded away from
    /// zero.
    ///
    /// # Errors
    ///
    /// [`Misfit::WrongDimension`] where `unit` measures something else.
    ///
    /// ```
    /// use measure::{Dimension, Unit};
    /// let bore = measure::read("5/16 in", Dimension::Length)?;
    /// assert_eq!(bore.show_in(Unit::Millimetre, 3)?, "7.938\u{202f}mm");
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    pub fn show_in(&self, unit: Unit, digits: u32) -> Result<String, Misfit> {
        let rounded = rounded(self.convert(unit)?.number(), digits);
        let decimals = usize::try_from(digits.min(28)).unwrap_or(28);
        Ok(spaced(&format!("{rounded:.decimals$}"), unit))
    }

    fn own_text(&self) -> String {
        let number = if self.number().scale() > DECIMALS_WORTH_READING {
            sensible(self.number(), self.dimension())
        } else {
            self.number()
        };
        spaced(&number.to_string(), self.unit())
    }

    fn text_in(&self, customary: Customary) -> String {
        let unit = natural_unit(self, customary);
        match self.unit().convert(self.number(), unit) {
            Some(number) => spaced(&sensible(number, self.dimension()).to_string(), unit),
            None => self.own_text(),
        }
    }
}

/// A calculated quantity for a reader used to `customary`, in the unit natural to
/// its size, rounded, with the other system's value in brackets.
///
/// A value that is not a finite number within range is shown as `unknown`.
///
/// ```
/// use measure::{Customary, si::Torque};
/// use uom::si::torque::newton_meter;
///
/// let torque = Torque::new::<newton_meter>(50.05418);
/// assert_eq!(measure::show(torque, Customary::Metric), "50.1\u{202f}N·m (36.9\u{202f}lb·ft)");
/// ```
pub fn show<Q: Quantity>(quantity: Q, customary: Customary) -> String {
    let Ok(exact) = Measured::of(quantity, base_unit(Q::DIMENSION)) else {
        return crate::phrases::unknown().to_owned();
    };
    let first = exact.text_in(customary);
    let second = exact.text_in(match customary {
        Customary::Metric => Customary::Us,
        Customary::Us => Customary::Metric,
    });
    if first == second {
        first
    } else {
        format!("{first} ({second})")
    }
}

/// A calculated quantity as a number of `unit` with `digits` after the point.
///
/// # Errors
///
/// [`Misfit`] where `unit` measures something else, or the value is out of range.
pub fn show_in<Q: Quantity>(quantity: Q, unit: Unit, digits: u32) -> Result<String, Misfit> {
    Measured::of(quantity, unit)?.show_in(unit, digits)
}

/// A number and its unit; a degree of angle stands close to its number.
pub(crate) fn spaced(number: &str, unit: Unit) -> String {
    let symbol = unit.symbol().replace(' ', "\u{202f}");
    if unit == Unit::Degree {
        format!("{number}{symbol}")
    } else {
        format!("{number}{NARROW_SPACE}{symbol}")
    }
}

fn rounded(number: Decimal, decimals: u32) -> Decimal {
    number.round_dp_with_strategy(decimals, RoundingStrategy::MidpointAwayFromZero)
}

/// Rounded to the digits that help, without trailing zeros; the whole part is kept.
fn sensible(number: Decimal, dimension: Dimension) -> Decimal {
    let digits = match dimension {
        Dimension::Length | Dimension::Area | Dimension::Voltage => 4,
        _ => 3,
    };
    let whole = number.abs() >= Decimal::from(10_u32.pow(digits));
    let shorter = if whole {
        Some(rounded(number, 0))
    } else {
        number.round_sf_with_strategy(digits, RoundingStrategy::MidpointAwayFromZero)
    };
    shorter.unwrap_or(number).normalize()
}

/// A unit in which any value of the dimension can be held before it is shown.
fn base_unit(dimension: Dimension) -> Unit {
    match dimension {
        Dimension::Torque => Unit::NewtonMetre,
        Dimension::Volume => Unit::Litre,
        Dimension::Pressure => Unit::Pascal,
        Dimension::Temperature => Unit::Kelvin,
        Dimension::TemperatureDifference => Unit::KelvinDifference,
        Dimension::Length => Unit::Metre,
        Dimension::Area => Unit::SquareMillimetre,
        Dimension::Fraction => Unit::Percent,
        Dimension::Force => Unit::Newton,
        Dimension::Mass => Unit::Kilogram,
        Dimension::Time => Unit::Second,
        Dimension::Angle => Unit::Degree,
        Dimension::RotationalSpeed => Unit::RevolutionPerMinute,
        Dimension::Speed => Unit::MetrePerSecond,
        Dimension::Voltage => Unit::Volt,
    }
}

/// The unit in which a reader expects a value of this size.
fn natural_unit(measured: &Measured, customary: Customary) -> Unit {
    let at_least = |limit: i64, unit: Unit| {
        let number = measured.unit().convert(measured.number(), unit);
        number.is_some_and(|number| number.abs() >= Decimal::from(limit))
    };
    let (steps, otherwise) = ladder(measured.dimension(), customary);
    steps
        .iter()
        .find(|(limit, unit)| at_least(*limit, *unit))
        .map_or(otherwise, |(_, unit)| *unit)
}

/// Units from the largest down, each with the number from which it is used, and the
/// unit for what is smaller still.
fn ladder(dimension: Dimension, customary: Customary) -> (&'static [(i64, Unit)], Unit) {
    use Customary::{Metric, Us};
    match (dimension, customary) {
        (Dimension::Torque, Metric) => (&[], Unit::NewtonMetre),
        (Dimension::Torque, Us) => (&[(10, Unit::PoundFoot)], Unit::PoundInch),
        (Dimension::Volume, Metric) => (&[(1, Unit::Litre)], Unit::Millilitre),
        (Dimension::Volume, Us) => (&[(1, Unit::UsQuart)], Unit::UsFluidOunce),
        (Dimension::Pressure, Metric) => (&[(10, Unit::Megapascal)], Unit::Kilopascal),
        (Dimension::Pressure, Us) => (&[], Unit::PoundPerSquareInch),
        (Dimension::Temperature, Metric) => (&[], Unit::Celsius),
        (Dimension::Temperature, Us) => (&[], Unit::Fahrenheit),
        (Dimension::TemperatureDifference, Metric) => (&[], Unit::CelsiusDifference),
        (Dimension::TemperatureDifference, Us) => (&[], Unit::FahrenheitDifference),
        (Dimension::Length, Metric) => {
            (&[(1, Unit::Kilometre), (2, Unit::Metre)], Unit::Millimetre)
        }
        (Dimension::Length, Us) => (&[(1, Unit::Mile), (6, Unit::Foot)], Unit::Inch),
        (Dimension::Area, Metric) => (&[(1, Unit::SquareMetre)], Unit::SquareMillimetre),
        (Dimension::Area, Us) => (&[], Unit::SquareInch),
        (Dimension::Fraction, _) => (&[], Unit::Percent),
        (Dimension::Force, Metric) => (&[], Unit::Newton),
        (Dimension::Force, Us) => (&[], Unit::PoundForce),
        (Dimension::Mass, Metric) => (&[(1, Unit::Kilogram)], Unit::Gram),
        (Dimension::Mass, Us) => (&[(1, Unit::Pound)], Unit::Ounce),
        (Dimension::Time, _) => (&[(2, Unit::Hour), (2, Unit::Minute)], Unit::Second),
        (Dimension::Angle, _) => (&[], Unit::Degree),
        (Dimension::RotationalSpeed, _) => (&[], Unit::RevolutionPerMinute),
        (Dimension::Speed, Metric) => (&[], Unit::KilometrePerHour),
        (Dimension::Speed, Us) => (&[], Unit::MilePerHour),
        (Dimension::Voltage, _) => (&[], Unit::Volt),
    }
}

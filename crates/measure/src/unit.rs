//! Units: what they measure, how they are written, and their exact factors.

use crate::factor::Factor;
use crate::phrases as say;
pub use crate::table::Unit;
use rust_decimal::Decimal;

/// What a quantity measures. Torque is not energy, and a difference of
/// temperatures is not a temperature.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Dimension {
    Torque,
    Volume,
    Pressure,
    Temperature,
    TemperatureDifference,
    Length,
    Area,
    Fraction,
    Force,
    Mass,
    Time,
    Angle,
    RotationalSpeed,
    Speed,
    Voltage,
}

/// Which units a reader is used to.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Customary {
    /// Newton metres, litres, degrees Celsius.
    Metric,
    /// US customary: pound-feet, US quarts, degrees Fahrenheit.
    Us,
}

impl Dimension {
    /// Every dimension, in the order of the type.
    pub const ALL: [Dimension; 15] = [
        Dimension::Torque,
        Dimension::Volume,
        Dimension::Pressure,
        Dimension::Temperature,
        Dimension::TemperatureDifference,
        Dimension::Length,
        Dimension::Area,
        Dimension::Fraction,
        Dimension::Force,
        Dimension::Mass,
        Dimension::Time,
        Dimension::Angle,
        Dimension::RotationalSpeed,
        Dimension::Speed,
        Dimension::Voltage,
    ];

    /// What to call it in a sentence.
    pub fn name(self) -> &'static str {
        match self {
            Dimension::Torque => say::torque(),
            Dimension::Volume => say::volume(),
            Dimension::Pressure => say::pressure(),
            Dimension::Temperature => say::temperature(),
            Dimension::TemperatureDifference => say::temperature_difference(),
            Dimension::Length => say::length(),
            Dimension::Area => say::area(),
            Dimension::Fraction => say::fraction(),
            Dimension::Force => say::force(),
            Dimension::Mass => say::mass(),
            Dimension::Time => say::time(),
            Dimension::Angle => say::angle(),
            Dimension::RotationalSpeed => say::rotational_speed(),
            Dimension::Speed => say::speed(),
            Dimension::Voltage => say::voltage(),
        }
    }

    /// The units that measure it.
    pub fn units(self) -> impl Iterator<Item = Unit> {
        Unit::ALL
            .into_iter()
            .filter(move |unit| unit.dimension() == self)
    }

    /// The symbols of its units, as a list for a sentence.
    ///
    /// ```
    /// use measure::Dimension;
    /// assert_eq!(Dimension::Speed.accepted(), "km/h, mph, m/s");
    /// ```
    pub fn accepted(self) -> String {
        self.units()
            .map(Unit::symbol)
            .collect::<Vec<_>>()
            .join(", ")
    }
}

impl Unit {
    /// What it measures.
    pub fn dimension(self) -> Dimension {
        self.definition().dimension
    }

    /// How it is printed.
    pub fn symbol(self) -> &'static str {
        self.definition().symbol
    }

    /// Who is used to it; `None` for a unit that everybody uses.
    pub fn customary(self) -> Option<Customary> {
        self.definition().customary
    }

    /// `number` of this unit as a number of `other`.
    ///
    /// Exact where the answer ends within 28 digits, otherwise rounded to them.
    /// `None` where the two measure different things, or the answer is too large.
    ///
    /// ```
    /// use measure::{Decimal, Unit};
    /// let five_sixteenths = Decimal::new(3125, 4);
    /// assert_eq!(Unit::Inch.convert(five_sixteenths, Unit::Millimetre), Some(Decimal::new(79375, 4)));
    /// assert_eq!(Unit::Inch.convert(five_sixteenths, Unit::Litre), None);
    /// ```
    pub fn convert(self, number: Decimal, other: Unit) -> Option<Decimal> {
        let (from, to) = (self.definition(), other.definition());
        if from.dimension != to.dimension {
            return None;
        }
        if self == other {
            return Some(number);
        }
        let shifted = number.checked_add(from.offset)?;
        from.factor
            .over(to.factor)
            .times(shifted)?
            .checked_sub(to.offset)
    }

    /// `number` of this unit in the base unit of the table.
    pub(crate) fn to_base(self, number: Decimal) -> Option<Decimal> {
        let definition = self.definition();
        definition
            .factor
            .times(number.checked_add(definition.offset)?)
    }

    /// A number of the base unit of the table as a number of this unit.
    pub(crate) fn of_base(self, base: Decimal) -> Option<Decimal> {
        let definition = self.definition();
        Factor::new(1, 1)
            .over(definition.factor)
            .times(base)?
            .checked_sub(definition.offset)
    }
}

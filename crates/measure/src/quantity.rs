//! A quantity as written, and its typed value.

use crate::number::LIMIT;
use crate::phrases as say;
use crate::show::spaced;
use crate::unit::{Dimension, Unit};
use rust_decimal::Decimal;
use std::str::FromStr;
use thiserror::Error;
use uom::si::f64 as si;

/// A quantity: what was written, its exact number, and its unit.
///
/// A number of at most 10^12 in size, so that every conversion has room; a
/// temperature not below absolute zero.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Measured {
    written: String,
    number: Decimal,
    unit: Unit,
}

/// Why a number and a unit do not make the quantity that was asked for.
#[derive(Clone, Debug, PartialEq, Eq, Error)]
pub enum Misfit {
    #[error("{}", say::unit_measures(.unit.symbol(), .unit.dimension().name(), .wanted.name(), .wanted.accepted()))]
    WrongDimension { unit: Unit, wanted: Dimension },
    #[error("{}", say::out_of_range(.number, .unit.symbol(), .limit))]
    OutOfRange {
        number: String,
        unit: Unit,
        limit: Decimal,
    },
    #[error("{}", say::below_absolute_zero(.number, .unit.symbol()))]
    BelowAbsoluteZero { number: Decimal, unit: Unit },
}

/// A typed quantity of the International System that a [`Measured`] can hold.
///
/// Implemented for the fifteen dimensions of this crate and closed to others.
pub trait Quantity: Copy + sealed::Based {
    /// What it measures.
    const DIMENSION: Dimension;
}

pub(crate) mod sealed {
    /// A value in the base unit of the table of units.
    pub trait Based {
        fn from_base(base: f64) -> Self;
        fn to_base(self) -> f64;
    }
}

/// One line a dimension: its variant, its type, and the base unit of the table.
macro_rules! quantities {
    ($($dimension:ident, $quantity:ident, $module:ident :: $base:ident, $getter:ident;)*) => {
        $(
            impl Quantity for si::$quantity {
                const DIMENSION: Dimension = Dimension::$dimension;
            }

            impl sealed::Based for si::$quantity {
                fn from_base(base: f64) -> Self {
                    Self::new::<uom::si::$module::$base>(base)
                }

                fn to_base(self) -> f64 {
                    self.get::<uom::si::$module::$base>()
                }
            }
        )*

        impl Measured {
            $(
                #[doc = concat!("The quantity as a typed ", stringify!($quantity), ".")]
                ///
                /// # Errors
                ///
                /// [`Misfit::WrongDimension`] where the unit measures something else.
                pub fn $getter(&self) -> Result<si::$quantity, Misfit> {
                    self.quantity()
                }
            )*
        }
    };
}

quantities! {
    Torque, Torque, torque::newton_meter, torque;
    Volume, Volume, volume::cubic_meter, volume;
    Pressure, Pressure, pressure::pascal, pressure;
    Temperature, ThermodynamicTemperature, thermodynamic_temperature::kelvin, temperature;
    TemperatureDifference, TemperatureInterval, temperature_interval::kelvin, temperature_difference;
    Length, Length, length::meter, length;
    Area, Area, area::square_meter, area;
    Fraction, Ratio, ratio::ratio, fraction;
    Force, Force, force::newton, force;
    Mass, Mass, mass::kilogram, mass;
    Time, Time, time::second, time;
    Angle, Angle, angle::degree, angle;
    RotationalSpeed, AngularVelocity, angular_velocity::revolution_per_minute, rotational_speed;
    Speed, Velocity, velocity::meter_per_second, speed;
    Voltage, ElectricPotential, electric_potential::volt, voltage;
}

impl Measured {
    /// A quantity from its number and unit, written as this crate writes it.
    ///
    /// # Errors
    ///
    /// [`Misfit::OutOfRange`] or [`Misfit::BelowAbsoluteZero`].
    ///
    /// ```
    /// use measure::{Decimal, Measured, Unit};
    /// let fill = Measured::new(Decimal::new(95, 1), Unit::Litre)?;
    /// assert_eq!(fill.written(), "9.5\u{202f}L");
    /// # Ok::<(), measure::Misfit>(())
    /// ```
    pub fn new(number: Decimal, unit: Unit) -> Result<Measured, Misfit> {
        Measured::as_written(spaced(&number.to_string(), unit), number, unit)
    }

    /// A calculated quantity, as a number of `unit`.
    ///
    /// # Errors
    ///
    /// [`Misfit`] where the unit measures something else, or the value is not a
    /// finite number within range.
    ///
    /// ```
    /// use measure::{Measured, Unit, si::Torque};
    /// use uom::si::torque::newton_meter;
    ///
    /// let torque = Measured::of(Torque::new::<newton_meter>(22.5), Unit::NewtonMetre)?;
    /// assert_eq!(torque.written(), "22.5\u{202f}N·m");
    /// assert!(Measured::of(Torque::new::<newton_meter>(f64::NAN), Unit::NewtonMetre).is_err());
    /// assert!(Measured::of(Torque::new::<newton_meter>(1.0), Unit::Litre).is_err());
    /// # Ok::<(), measure::Misfit>(())
    /// ```
    pub fn of<Q: Quantity>(quantity: Q, unit: Unit) -> Result<Measured, Misfit> {
        if unit.dimension() != Q::DIMENSION {
            return Err(Misfit::WrongDimension {
                unit,
                wanted: Q::DIMENSION,
            });
        }
        let base = quantity.to_base();
        let out_of_range = || Misfit::OutOfRange {
            number: base.to_string(),
            unit,
            limit: LIMIT,
        };
        let base = decimal_of(base).ok_or_else(out_of_range)?;
        let number = unit.of_base(base).ok_or_else(out_of_range)?;
        Measured::new(number, unit)
    }

    pub(crate) fn as_written(
        written: String,
        number: Decimal,
        unit: Unit,
    ) -> Result<Measured, Misfit> {
        if number.abs() > LIMIT {
            return Err(Misfit::OutOfRange {
                number: number.to_string(),
                unit,
                limit: LIMIT,
            });
        }
        let measured = Measured {
            written,
            number,
            unit,
        };
        if unit.dimension() == Dimension::Temperature && measured.base() < 0.0 {
            return Err(Misfit::BelowAbsoluteZero { number, unit });
        }
        Ok(measured)
    }

    /// The text it was read from, without the blanks around it.
    pub fn written(&self) -> &str {
        &self.written
    }

    /// The number as written.
    pub fn number(&self) -> Decimal {
        self.number
    }

    /// The unit as written.
    pub fn unit(&self) -> Unit {
        self.unit
    }

    /// What it measures.
    pub fn dimension(&self) -> Dimension {
        self.unit.dimension()
    }

    /// The same quantity as a number of another unit: exact where that ends within
    /// 28 digits.
    ///
    /// # Errors
    ///
    /// [`Misfit`] where `unit` measures something else, or the number is too large.
    pub fn convert(&self, unit: Unit) -> Result<Measured, Misfit> {
        if unit.dimension() != self.dimension() {
            return Err(Misfit::WrongDimension {
                unit: self.unit,
                wanted: unit.dimension(),
            });
        }
        let number = self
            .unit
            .convert(self.number, unit)
            .ok_or_else(|| Misfit::OutOfRange {
                number: self.number.to_string(),
                unit: self.unit,
                limit: LIMIT,
            })?;
        Measured::new(number, unit)
    }

    /// The quantity as a typed value, its type chosen by the caller.
    ///
    /// # Errors
    ///
    /// [`Misfit::WrongDimension`] where the unit measures something else.
    ///
    /// ```
    /// use measure::{Dimension, si::{Energy, Torque}};
    /// use uom::si::torque::newton_meter;
    ///
    /// let torque: Torque = measure::read("10 Nm", Dimension::Torque)?.quantity()?;
    /// assert_eq!(torque.get::<newton_meter>(), 10.0);
    /// assert!(measure::read("10 Nm", Dimension::Torque)?.length().is_err());
    /// # Ok::<(), Box<dyn std::error::Error>>(())
    /// ```
    ///
    /// Torque cannot be taken for energy:
    ///
    /// ```compile_fail,E0277
    /// let measured = measure::read_any("10 Nm").unwrap();
    /// let energy: measure::si::Energy = measured.quantity().unwrap();
    /// ```
    pub fn quantity<Q: Quantity>(&self) -> Result<Q, Misfit> {
        if self.dimension() == Q::DIMENSION {
            Ok(Q::from_base(self.base()))
        } else {
            Err(Misfit::WrongDimension {
                unit: self.unit,
                wanted: Q::DIMENSION,
            })
        }
    }

    /// The value in the base unit of the table, as the nearest `f64`.
    fn base(&self) -> f64 {
        // The limit on the number leaves room in every unit; a value that had none
        // would be an honest "not a number" instead of a wrong one.
        let base = self.unit.to_base(self.number);
        base.and_then(|base| f64::from_str(&base.to_string()).ok())
            .unwrap_or(f64::NAN)
    }
}

/// The decimal that a finite `f64` prints as, to 28 digits.
fn decimal_of(value: f64) -> Option<Decimal> {
    if value.is_finite() {
        Decimal::from_str(&value.to_string()).ok()
    } else {
        None
    }
}

//! Units: what they measure, how they are written, and their exact factors.

use crate::factor::Factor;
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

/// A unit of measure.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unit {
    NewtonMetre,
    DecanewtonMetre,
    KilogramForceMetre,
    KilogramForceCentimetre,
    PoundFoot,
    PoundInch,
    Litre,
    Millilitre,
    UsGallon,
    UsQuart,
    UsPint,
    UsFluidOunce,
    Pascal,
    Kilopascal,
    Megapascal,
    Bar,
    PoundPerSquareInch,
    MillimetreOfMercury,
    Celsius,
    Fahrenheit,
    Kelvin,
    CelsiusDifference,
    FahrenheitDifference,
    KelvinDifference,
    Millimetre,
    Centimetre,
    Metre,
    Kilometre,
    Inch,
    Foot,
    Mile,
    SquareMillimetre,
    SquareCentimetre,
    SquareMetre,
    SquareInch,
    Percent,
    Newton,
    Kilonewton,
    KilogramForce,
    PoundForce,
    Gram,
    Kilogram,
    Ounce,
    Pound,
    Second,
    Minute,
    Hour,
    Degree,
    RevolutionPerMinute,
    KilometrePerHour,
    MilePerHour,
    MetrePerSecond,
    Volt,
}

/// What the table below says of one unit. `words` are the accepted spellings
/// with separators taken out, in lower case; `offset` is added before the factor.
pub(crate) struct Definition {
    pub dimension: Dimension,
    pub symbol: &'static str,
    pub words: &'static [&'static str],
    pub customary: Option<Customary>,
    pub factor: Factor,
    pub offset: Decimal,
}

const METRIC: Option<Customary> = Some(Customary::Metric);
const US: Option<Customary> = Some(Customary::Us);
/// Used alike by everybody.
const BOTH: Option<Customary> = None;

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
            Dimension::Torque => "torque",
            Dimension::Volume => "volume",
            Dimension::Pressure => "pressure",
            Dimension::Temperature => "temperature",
            Dimension::TemperatureDifference => "temperature difference",
            Dimension::Length => "length",
            Dimension::Area => "area",
            Dimension::Fraction => "fraction",
            Dimension::Force => "force",
            Dimension::Mass => "mass",
            Dimension::Time => "time",
            Dimension::Angle => "angle",
            Dimension::RotationalSpeed => "rotational speed",
            Dimension::Speed => "speed",
            Dimension::Voltage => "voltage",
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
    /// Every unit, in the order of the type.
    pub const ALL: [Unit; 53] = [
        Unit::NewtonMetre,
        Unit::DecanewtonMetre,
        Unit::KilogramForceMetre,
        Unit::KilogramForceCentimetre,
        Unit::PoundFoot,
        Unit::PoundInch,
        Unit::Litre,
        Unit::Millilitre,
        Unit::UsGallon,
        Unit::UsQuart,
        Unit::UsPint,
        Unit::UsFluidOunce,
        Unit::Pascal,
        Unit::Kilopascal,
        Unit::Megapascal,
        Unit::Bar,
        Unit::PoundPerSquareInch,
        Unit::MillimetreOfMercury,
        Unit::Celsius,
        Unit::Fahrenheit,
        Unit::Kelvin,
        Unit::CelsiusDifference,
        Unit::FahrenheitDifference,
        Unit::KelvinDifference,
        Unit::Millimetre,
        Unit::Centimetre,
        Unit::Metre,
        Unit::Kilometre,
        Unit::Inch,
        Unit::Foot,
        Unit::Mile,
        Unit::SquareMillimetre,
        Unit::SquareCentimetre,
        Unit::SquareMetre,
        Unit::SquareInch,
        Unit::Percent,
        Unit::Newton,
        Unit::Kilonewton,
        Unit::KilogramForce,
        Unit::PoundForce,
        Unit::Gram,
        Unit::Kilogram,
        Unit::Ounce,
        Unit::Pound,
        Unit::Second,
        Unit::Minute,
        Unit::Hour,
        Unit::Degree,
        Unit::RevolutionPerMinute,
        Unit::KilometrePerHour,
        Unit::MilePerHour,
        Unit::MetrePerSecond,
        Unit::Volt,
    ];

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

    /// The exact definition. Factors lead to newton metre, cubic metre, pascal,
    /// kelvin, metre, square metre, one, newton, kilogram, second, degree,
    /// revolution per minute, metre per second and volt. Angles stay in degrees
    /// here, because pi has no exact decimal.
    ///
    /// Derivations: lb = 0.453 592 37 kg, in = 0.0254 m, standard gravity
    /// 9.806 65 m/s2; so lbf = 4.448 221 615 260 5 N. US gallon = 231 in3. Mercury
    /// at the conventional 13 595.1 kg/m3.
    ///
    /// # Source
    ///
    /// NIST SP 811 (2008), Appendix B, with its footnotes on the pound, the
    /// pound-force and the gallon.
    pub(crate) fn definition(self) -> Definition {
        use Dimension as D;
        const LBF: i64 = 44_482_216_152_605; // x 1e-13 N
        match self {
            Unit::NewtonMetre => plain(
                D::Torque,
                METRIC,
                (1, 1),
                "N·m",
                &[
                    "nm",
                    "newtonmetre",
                    "newtonmetres",
                    "newtonmeter",
                    "newtonmeters",
                ],
            ),
            Unit::DecanewtonMetre => plain(D::Torque, METRIC, (10, 1), "daN·m", &["danm", "mdan"]),
            Unit::KilogramForceMetre => plain(
                D::Torque,
                METRIC,
                (980_665, 100_000),
                "kgf·m",
                &["kgfm", "mkgf", "kpm", "mkp"],
            ),
            Unit::KilogramForceCentimetre => plain(
                D::Torque,
                METRIC,
                (980_665, 10_000_000),
                "kgf·cm",
                &["kgfcm", "cmkgf"],
            ),
            Unit::PoundFoot => plain(
                D::Torque,
                US,
                (13_558_179_483_314_004, 10_000_000_000_000_000),
                "lb·ft",
                &[
                    "lbft",
                    "ftlb",
                    "lbsft",
                    "ftlbs",
                    "lbfft",
                    "ftlbf",
                    "footpound",
                    "footpounds",
                    "poundfoot",
                    "poundfeet",
                ],
            ),
            Unit::PoundInch => plain(
                D::Torque,
                US,
                (1_129_848_290_276_167, 10_000_000_000_000_000),
                "lb·in",
                &[
                    "lbin",
                    "inlb",
                    "lbsin",
                    "inlbs",
                    "lbfin",
                    "inlbf",
                    "inchpound",
                    "inchpounds",
                    "poundinch",
                    "poundinches",
                ],
            ),

            Unit::Litre => plain(
                D::Volume,
                METRIC,
                (1, 1000),
                "L",
                &["l", "litre", "litres", "liter", "liters", "ltr"],
            ),
            Unit::Millilitre => plain(
                D::Volume,
                METRIC,
                (1, 1_000_000),
                "mL",
                &[
                    "ml",
                    "cc",
                    "cm3",
                    "ccm",
                    "millilitre",
                    "millilitres",
                    "milliliter",
                    "milliliters",
                ],
            ),
            Unit::UsGallon => plain(
                D::Volume,
                US,
                (3_785_411_784, 1_000_000_000_000),
                "gal",
                &["gal", "gals", "usgal", "galus", "gallon", "gallons"],
            ),
            Unit::UsQuart => plain(
                D::Volume,
                US,
                (946_352_946, 1_000_000_000_000),
                "qt",
                &["qt", "qts", "usqt", "qtus", "quart", "quarts"],
            ),
            Unit::UsPint => plain(
                D::Volume,
                US,
                (473_176_473, 1_000_000_000_000),
                "pt",
                &["pt", "pts", "uspt", "ptus", "pint", "pints"],
            ),
            Unit::UsFluidOunce => plain(
                D::Volume,
                US,
                (295_735_295_625, 10_000_000_000_000_000),
                "fl oz",
                &["floz", "usfloz", "fluidounce", "fluidounces"],
            ),

            Unit::Pascal => plain(D::Pressure, METRIC, (1, 1), "Pa", &["pa", "pascal", "n/m2"]),
            Unit::Kilopascal => plain(
                D::Pressure,
                METRIC,
                (1000, 1),
                "kPa",
                &["kpa", "kilopascal"],
            ),
            Unit::Megapascal => plain(
                D::Pressure,
                METRIC,
                (1_000_000, 1),
                "MPa",
                &["mpa", "n/mm2", "megapascal"],
            ),
            Unit::Bar => plain(D::Pressure, METRIC, (100_000, 1), "bar", &["bar", "bars"]),
            // 4.448 221 615 260 5 N / (0.0254 m)^2
            Unit::PoundPerSquareInch => plain(
                D::Pressure,
                US,
                (LBF, 6_451_600_000),
                "psi",
                &["psi", "lbf/in2", "lb/in2", "lb/sqin"],
            ),
            // 13 595.1 x 9.806 65 x 0.001
            Unit::MillimetreOfMercury => plain(
                D::Pressure,
                METRIC,
                (133_322_387_415, 1_000_000_000),
                "mmHg",
                &["mmhg"],
            ),

            Unit::Celsius => shifted(
                D::Temperature,
                METRIC,
                (1, 1),
                Decimal::new(273_15, 2),
                "°C",
                &["°c", "c", "degc", "degreesc", "celsius", "℃"],
            ),
            Unit::Fahrenheit => shifted(
                D::Temperature,
                US,
                (5, 9),
                Decimal::new(459_67, 2),
                "°F",
                &["°f", "f", "degf", "degreesf", "fahrenheit", "℉"],
            ),
            Unit::Kelvin => plain(D::Temperature, METRIC, (1, 1), "K", &["k", "kelvin"]),
            Unit::CelsiusDifference => plain(D::TemperatureDifference, METRIC, (1, 1), "°C", &[]),
            Unit::FahrenheitDifference => plain(D::TemperatureDifference, US, (5, 9), "°F", &[]),
            Unit::KelvinDifference => plain(D::TemperatureDifference, METRIC, (1, 1), "K", &[]),

            Unit::Millimetre => plain(
                D::Length,
                METRIC,
                (1, 1000),
                "mm",
                &[
                    "mm",
                    "millimetre",
                    "millimetres",
                    "millimeter",
                    "millimeters",
                ],
            ),
            Unit::Centimetre => plain(
                D::Length,
                METRIC,
                (1, 100),
                "cm",
                &[
                    "cm",
                    "centimetre",
                    "centimetres",
                    "centimeter",
                    "centimeters",
                ],
            ),
            Unit::Metre => plain(
                D::Length,
                METRIC,
                (1, 1),
                "m",
                &["m", "metre", "metres", "meter", "meters"],
            ),
            Unit::Kilometre => plain(
                D::Length,
                METRIC,
                (1000, 1),
                "km",
                &["km", "kilometre", "kilometres", "kilometer", "kilometers"],
            ),
            Unit::Inch => plain(
                D::Length,
                US,
                (254, 10_000),
                "in",
                &["in", "\"", "″", "”", "inch", "inches"],
            ),
            Unit::Foot => plain(
                D::Length,
                US,
                (3048, 10_000),
                "ft",
                &["ft", "'", "′", "’", "foot", "feet"],
            ),
            Unit::Mile => plain(
                D::Length,
                US,
                (1_609_344, 1000),
                "mi",
                &["mi", "mile", "miles"],
            ),

            Unit::SquareMillimetre => {
                plain(D::Area, METRIC, (1, 1_000_000), "mm²", &["mm2", "sqmm"])
            }
            Unit::SquareCentimetre => plain(D::Area, METRIC, (1, 10_000), "cm²", &["cm2", "sqcm"]),
            Unit::SquareMetre => plain(D::Area, METRIC, (1, 1), "m²", &["m2", "sqm"]),
            Unit::SquareInch => plain(D::Area, US, (64_516, 100_000_000), "in²", &["in2", "sqin"]),

            Unit::Percent => plain(D::Fraction, BOTH, (1, 100), "%", &["%", "percent", "pct"]),

            Unit::Newton => plain(D::Force, METRIC, (1, 1), "N", &["n", "newton", "newtons"]),
            Unit::Kilonewton => plain(
                D::Force,
                METRIC,
                (1000, 1),
                "kN",
                &["kn", "kilonewton", "kilonewtons"],
            ),
            Unit::KilogramForce => {
                plain(D::Force, METRIC, (980_665, 100_000), "kgf", &["kgf", "kp"])
            }
            Unit::PoundForce => plain(
                D::Force,
                US,
                (LBF, 10_000_000_000_000),
                "lbf",
                &["lbf", "poundforce", "poundsforce"],
            ),

            Unit::Gram => plain(D::Mass, METRIC, (1, 1000), "g", &["g", "gram", "grams"]),
            Unit::Kilogram => plain(
                D::Mass,
                METRIC,
                (1, 1),
                "kg",
                &["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"],
            ),
            Unit::Ounce => plain(
                D::Mass,
                US,
                (28_349_523_125, 1_000_000_000_000),
                "oz",
                &["oz", "ounce", "ounces"],
            ),
            Unit::Pound => plain(
                D::Mass,
                US,
                (45_359_237, 100_000_000),
                "lb",
                &["lb", "lbs", "pound", "pounds"],
            ),

            Unit::Second => plain(
                D::Time,
                BOTH,
                (1, 1),
                "s",
                &["s", "sec", "secs", "second", "seconds"],
            ),
            Unit::Minute => plain(
                D::Time,
                BOTH,
                (60, 1),
                "min",
                &["min", "mins", "minute", "minutes"],
            ),
            Unit::Hour => plain(
                D::Time,
                BOTH,
                (3600, 1),
                "h",
                &["h", "hr", "hrs", "hour", "hours"],
            ),

            Unit::Degree => plain(
                D::Angle,
                BOTH,
                (1, 1),
                "°",
                &["°", "deg", "degs", "degree", "degrees"],
            ),
            Unit::RevolutionPerMinute => plain(
                D::RotationalSpeed,
                BOTH,
                (1, 1),
                "rpm",
                &["rpm", "r/min", "rev/min"],
            ),

            Unit::KilometrePerHour => plain(
                D::Speed,
                METRIC,
                (5, 18),
                "km/h",
                &["km/h", "kmh", "kph", "km/hr"],
            ),
            Unit::MilePerHour => plain(
                D::Speed,
                US,
                (44_704, 100_000),
                "mph",
                &["mph", "mi/h", "miles/h", "milesperhour"],
            ),
            Unit::MetrePerSecond => plain(D::Speed, METRIC, (1, 1), "m/s", &["m/s"]),

            Unit::Volt => plain(
                D::Voltage,
                BOTH,
                (1, 1),
                "V",
                &["v", "volt", "volts", "vdc"],
            ),
        }
    }
}

const fn plain(
    dimension: Dimension,
    customary: Option<Customary>,
    factor: (i64, i64),
    symbol: &'static str,
    words: &'static [&'static str],
) -> Definition {
    shifted(dimension, customary, factor, Decimal::ZERO, symbol, words)
}

const fn shifted(
    dimension: Dimension,
    customary: Option<Customary>,
    factor: (i64, i64),
    offset: Decimal,
    symbol: &'static str,
    words: &'static [&'static str],
) -> Definition {
    Definition {
        dimension,
        symbol,
        words,
        customary,
        factor: Factor::new(factor.0, factor.1),
        offset,
    }
}

//! The table of units: the one place where a unit is named, spelled and defined.

use crate::factor::Factor;
use crate::unit::{Customary, Dimension};
use rust_decimal::Decimal;

/// What the table says of one unit.
pub(crate) struct Definition {
    pub dimension: Dimension,
    /// Who is used to it; `None` for everybody.
    pub customary: Option<Customary>,
    /// To the base unit of its dimension.
    pub factor: Factor,
    /// Added before the factor.
    pub offset: Decimal,
    pub symbol: &'static str,
    /// Accepted spellings in small letters, without the marks between their parts.
    pub words: &'static [&'static str],
}

const METRIC: Option<Customary> = Some(Customary::Metric);
const US: Option<Customary> = Some(Customary::Us);
const BOTH: Option<Customary> = None;

/// The pound-force in units of 1e-13 N: 0.453 592 37 kg x 9.806 65 m/s2, exactly.
const LBF: i64 = 44_482_216_152_605;

/// One line a unit: name, dimension, who is used to it, factor, symbol, spellings.
macro_rules! units {
    ($($unit:ident, $dimension:ident, $customary:ident, $upper:tt / $lower:tt, $symbol:literal,
       [$($word:literal),* $(,)?];)*) => {
        /// A unit of measure.
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub enum Unit {
            $(#[doc = concat!("`", $symbol, "`, a unit of [`Dimension::", stringify!($dimension), "`].")] $unit,)*
        }

        impl Unit {
            /// Every unit, in the order of the type.
            pub const ALL: [Unit; [$($symbol),*].len()] = [$(Unit::$unit),*];

            /// Factors lead to newton metre, cubic metre, pascal, kelvin, metre, square
            /// metre, one, newton, kilogram, second, degree, revolution per minute,
            /// metre per second and volt. Angles stay in degrees here, because pi has
            /// no exact decimal.
            ///
            /// # Source
            ///
            /// NIST SP 811 (2008), Appendix B, with its footnotes on the pound, the
            /// pound-force and mercury.
            pub(crate) fn definition(self) -> Definition {
                match self {
                    $(Unit::$unit => Definition {
                        dimension: Dimension::$dimension,
                        customary: $customary,
                        factor: const { Factor::new($upper, $lower) },
                        offset: self.offset(),
                        symbol: $symbol,
                        words: &[$($word),*],
                    },)*
                }
            }
        }
    };
}

units! {
    NewtonMetre, Torque, METRIC, 1 / 1, "N·m", [
        "nm", "newtonmetre", "newtonmetres", "newtonmeter", "newtonmeters",
    ];
    DecanewtonMetre, Torque, METRIC, 10 / 1, "daN·m", ["danm", "mdan"];
    KilogramForceMetre, Torque, METRIC, 980_665 / 100_000, "kgf·m", ["kgfm", "mkgf", "kpm", "mkp"];
    KilogramForceCentimetre, Torque, METRIC, 980_665 / 10_000_000, "kgf·cm", ["kgfcm", "cmkgf"];
    // 4.448 221 615 260 5 N x 0.3048 m
    PoundFoot, Torque, US, 13_558_179_483_314_004 / 10_000_000_000_000_000, "lb·ft", [
        "lbft", "ftlb", "lbsft", "ftlbs", "lbfft", "ftlbf", "footpound", "footpounds",
        "poundfoot", "poundfeet",
    ];
    // 4.448 221 615 260 5 N x 0.0254 m
    PoundInch, Torque, US, 1_129_848_290_276_167 / 10_000_000_000_000_000, "lb·in", [
        "lbin", "inlb", "lbsin", "inlbs", "lbfin", "inlbf", "inchpound", "inchpounds",
        "poundinch", "poundinches",
    ];

    Litre, Volume, METRIC, 1 / 1000, "L", ["l", "litre", "litres", "liter", "liters", "ltr"];
    Millilitre, Volume, METRIC, 1 / 1_000_000, "mL", [
        "ml", "cc", "cm3", "ccm", "millilitre", "millilitres", "milliliter", "milliliters",
    ];
    // 231 in3
    UsGallon, Volume, US, 3_785_411_784 / 1_000_000_000_000, "gal", [
        "gal", "gals", "usgal", "galus", "gallon", "gallons",
    ];
    UsQuart, Volume, US, 946_352_946 / 1_000_000_000_000, "qt", [
        "qt", "qts", "usqt", "qtus", "quart", "quarts",
    ];
    UsPint, Volume, US, 473_176_473 / 1_000_000_000_000, "pt", [
        "pt", "pts", "uspt", "ptus", "pint", "pints",
    ];
    // gallon / 128
    UsFluidOunce, Volume, US, 295_735_295_625 / 10_000_000_000_000_000, "fl oz", [
        "floz", "usfloz", "fluidounce", "fluidounces",
    ];

    Pascal, Pressure, METRIC, 1 / 1, "Pa", ["pa", "pascal", "n/m2"];
    Kilopascal, Pressure, METRIC, 1000 / 1, "kPa", ["kpa", "kilopascal"];
    Megapascal, Pressure, METRIC, 1_000_000 / 1, "MPa", ["mpa", "n/mm2", "megapascal"];
    Bar, Pressure, METRIC, 100_000 / 1, "bar", ["bar", "bars"];
    // 4.448 221 615 260 5 N / (0.0254 m)^2
    PoundPerSquareInch, Pressure, US, LBF / 6_451_600_000, "psi", [
        "psi", "lbf/in2", "lb/in2", "lb/sqin",
    ];
    // 13 595.1 x 9.806 65 x 0.001
    MillimetreOfMercury, Pressure, METRIC, 133_322_387_415 / 1_000_000_000, "mmHg", ["mmhg"];

    Celsius, Temperature, METRIC, 1 / 1, "°C", ["°c", "c", "degc", "degreesc", "celsius", "℃"];
    Fahrenheit, Temperature, US, 5 / 9, "°F", ["°f", "f", "degf", "degreesf", "fahrenheit", "℉"];
    Kelvin, Temperature, METRIC, 1 / 1, "K", ["k", "kelvin"];

    CelsiusDifference, TemperatureDifference, METRIC, 1 / 1, "°C", [];
    FahrenheitDifference, TemperatureDifference, US, 5 / 9, "°F", [];
    KelvinDifference, TemperatureDifference, METRIC, 1 / 1, "K", [];

    Millimetre, Length, METRIC, 1 / 1000, "mm", [
        "mm", "millimetre", "millimetres", "millimeter", "millimeters",
    ];
    Centimetre, Length, METRIC, 1 / 100, "cm", [
        "cm", "centimetre", "centimetres", "centimeter", "centimeters",
    ];
    Metre, Length, METRIC, 1 / 1, "m", ["m", "metre", "metres", "meter", "meters"];
    Kilometre, Length, METRIC, 1000 / 1, "km", [
        "km", "kilometre", "kilometres", "kilometer", "kilometers",
    ];
    Inch, Length, US, 254 / 10_000, "in", ["in", "\"", "″", "”", "inch", "inches"];
    Foot, Length, US, 3048 / 10_000, "ft", ["ft", "'", "′", "’", "foot", "feet"];
    Mile, Length, US, 1_609_344 / 1000, "mi", ["mi", "mile", "miles"];

    SquareMillimetre, Area, METRIC, 1 / 1_000_000, "mm²", ["mm2", "sqmm"];
    SquareCentimetre, Area, METRIC, 1 / 10_000, "cm²", ["cm2", "sqcm"];
    SquareMetre, Area, METRIC, 1 / 1, "m²", ["m2", "sqm"];
    SquareInch, Area, US, 64_516 / 100_000_000, "in²", ["in2", "sqin"];

    Percent, Fraction, BOTH, 1 / 100, "%", ["%", "percent", "pct"];

    Newton, Force, METRIC, 1 / 1, "N", ["n", "newton", "newtons"];
    Kilonewton, Force, METRIC, 1000 / 1, "kN", ["kn", "kilonewton", "kilonewtons"];
    KilogramForce, Force, METRIC, 980_665 / 100_000, "kgf", ["kgf", "kp"];
    PoundForce, Force, US, LBF / 10_000_000_000_000, "lbf", ["lbf", "poundforce", "poundsforce"];

    Gram, Mass, METRIC, 1 / 1000, "g", ["g", "gram", "grams"];
    Kilogram, Mass, METRIC, 1 / 1, "kg", ["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms"];
    Ounce, Mass, US, 28_349_523_125 / 1_000_000_000_000, "oz", ["oz", "ounce", "ounces"];
    Pound, Mass, US, 45_359_237 / 100_000_000, "lb", ["lb", "lbs", "pound", "pounds"];

    Second, Time, BOTH, 1 / 1, "s", ["s", "sec", "secs", "second", "seconds"];
    Minute, Time, BOTH, 60 / 1, "min", ["min", "mins", "minute", "minutes"];
    Hour, Time, BOTH, 3600 / 1, "h", ["h", "hr", "hrs", "hour", "hours"];

    Degree, Angle, BOTH, 1 / 1, "°", ["°", "deg", "degs", "degree", "degrees"];

    RevolutionPerMinute, RotationalSpeed, BOTH, 1 / 1, "rpm", ["rpm", "r/min", "rev/min"];

    KilometrePerHour, Speed, METRIC, 5 / 18, "km/h", ["km/h", "kmh", "kph", "km/hr"];
    MilePerHour, Speed, US, 44_704 / 100_000, "mph", ["mph", "mi/h", "miles/h", "milesperhour"];
    MetrePerSecond, Speed, METRIC, 1 / 1, "m/s", ["m/s"];

    Volt, Voltage, BOTH, 1 / 1, "V", ["v", "volt", "volts", "vdc"];
}

impl Unit {
    /// From the zero of this unit's scale down to absolute zero, in this unit.
    fn offset(self) -> Decimal {
        match self {
            Unit::Celsius => Decimal::new(27_315, 2),
            Unit::Fahrenheit => Decimal::new(45_967, 2),
            _ => Decimal::ZERO,
        }
    }
}

//! The rows of `checks/published/units.toml`, each against this crate.

#![allow(clippy::unwrap_used)] // in the helpers too, which clippy does not count as tests

use checks::{Row, published};
use measure::{Currency, Decimal, Dimension, Measured, Unit};
use std::str::FromStr;
use uom::si as u;

fn rows(kind: &str) -> Vec<Row> {
    published("units").rows(kind).to_vec()
}

/// A factor as printed, such as `1.355 818 E+00`, and half its last digit.
fn printed(text: &str) -> (f64, f64) {
    let compact: String = text.chars().filter(|c| *c != ' ').collect();
    let (mantissa, exponent) = compact.split_once('E').unwrap();
    let decimals = mantissa.split_once('.').map_or(0, |(_, part)| part.len());
    let half_digit = format!(
        "0.5e{}",
        exponent.parse::<i32>().unwrap() - i32::try_from(decimals).unwrap()
    );
    (compact.parse().unwrap(), half_digit.parse().unwrap())
}

fn dimension_named(name: &str) -> Dimension {
    Dimension::ALL
        .into_iter()
        .find(|dimension| dimension.name() == name)
        .unwrap()
}

/// The typed quantity in the SI unit that the row names.
fn in_si(measured: &Measured, si: &str) -> f64 {
    match si {
        "N·m" => measured.torque().unwrap().get::<u::torque::newton_meter>(),
        "m³" => measured.volume().unwrap().get::<u::volume::cubic_meter>(),
        "Pa" => measured.pressure().unwrap().get::<u::pressure::pascal>(),
        "m" => measured.length().unwrap().get::<u::length::meter>(),
        "m²" => measured.area().unwrap().get::<u::area::square_meter>(),
        "N" => measured.force().unwrap().get::<u::force::newton>(),
        "kg" => measured.mass().unwrap().get::<u::mass::kilogram>(),
        "s" => measured.time().unwrap().get::<u::time::second>(),
        "rad" => measured.angle().unwrap().get::<u::angle::radian>(),
        "rad/s" => measured
            .rotational_speed()
            .unwrap()
            .get::<u::angular_velocity::radian_per_second>(),
        "m/s" => measured
            .speed()
            .unwrap()
            .get::<u::velocity::meter_per_second>(),
        "K" => measured
            .temperature_difference()
            .unwrap()
            .get::<u::temperature_interval::kelvin>(),
        other => panic!("the row names {other}, which this test cannot reach"),
    }
}

fn assert_as_printed(row: &Row, got: f64) {
    let (expected, half_digit) = printed(row.text("expected"));
    let tolerance = if row.flag("exact") {
        expected * 2.0 * f64::EPSILON
    } else {
        half_digit
    };
    assert!((got - expected).abs() <= tolerance, "{row}: got {got}");
}

/// Every kind of row in the file is checked by a test below.
#[test]
fn no_row_goes_unread() {
    let read = ["factor", "temperature", "difference", "minor_digits"];
    for kind in published("units").kinds() {
        assert!(read.contains(&kind), "{kind}");
    }
}

#[test]
fn factors_are_those_of_nist_sp_811() {
    for row in rows("factor") {
        let measured =
            measure::read(row.text("written"), dimension_named(row.text("dimension"))).unwrap();
        assert_as_printed(&row, in_si(&measured, row.text("si")));
    }
}

#[test]
fn temperatures_follow_the_formulas_of_nist_sp_811() {
    let unit = |symbol: &str| {
        Dimension::Temperature
            .units()
            .find(|unit| unit.symbol() == symbol)
            .unwrap()
    };
    let samples = ["-40", "0", "32", "82.5", "195", "212", "300"];
    for row in rows("temperature") {
        let number = |key: &str| Decimal::from_str(row.text(key)).unwrap();
        for sample in samples.map(|sample| Decimal::from_str(sample).unwrap()) {
            let expected = (sample + number("add")) / number("divide");
            let got = unit(row.text("from"))
                .convert(sample, unit(row.text("to")))
                .unwrap();
            assert!(
                (got - expected).abs() < Decimal::new(1, 20),
                "{row} at {sample}: {got}"
            );
        }
    }
}

#[test]
fn differences_of_temperature_have_the_printed_factors() {
    for row in rows("difference") {
        let measured =
            measure::read(row.text("written"), Dimension::TemperatureDifference).unwrap();
        assert_as_printed(&row, in_si(&measured, "K"));
    }
}

#[test]
fn currencies_have_the_decimals_of_iso_4217() {
    let mut codes = 0;
    for row in rows("minor_digits") {
        let digits = row.whole("digits");
        for code in row.list("codes") {
            let currency = Currency::new(code.as_str().unwrap()).unwrap();
            assert_eq!(i64::from(currency.minor_digits()), digits, "{currency}");
            codes += 1;
        }
    }
    assert!(codes > 150, "only {codes} codes were read");
}

/// The smaller units of one system are what their names say, without any table.
#[test]
fn units_of_one_system_are_whole_multiples() {
    let one_is = |larger: Unit, number: i64, smaller: Unit| {
        assert_eq!(
            larger.convert(Decimal::ONE, smaller),
            Some(Decimal::from(number)),
            "{larger:?}"
        );
    };
    one_is(Unit::PoundFoot, 12, Unit::PoundInch);
    one_is(Unit::UsGallon, 4, Unit::UsQuart);
    one_is(Unit::UsQuart, 2, Unit::UsPint);
    one_is(Unit::UsPint, 16, Unit::UsFluidOunce);
    one_is(Unit::Pound, 16, Unit::Ounce);
    one_is(Unit::Mile, 5280, Unit::Foot);
    one_is(Unit::Foot, 12, Unit::Inch);
    one_is(Unit::KilogramForceMetre, 100, Unit::KilogramForceCentimetre);
    one_is(Unit::Megapascal, 10, Unit::Bar);
}

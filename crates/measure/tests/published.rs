//! The rows of `checks/published/units.toml`, each against this crate.

#![allow(clippy::unwrap_used)] // in the helpers too, which clippy does not count as tests

use measure::{Currency, Decimal, Dimension, Grade, Measured, Unit};
use std::str::FromStr;
use toml::{Table, Value};
use uom::si as u;

fn rows(kind: &str) -> Vec<Table> {
    let path = concat!(
        env!("CARGO_MANIFEST_DIR"),
        "/../../checks/published/units.toml"
    );
    let file: Table = std::fs::read_to_string(path).unwrap().parse().unwrap();
    let rows = file[kind].as_array().unwrap();
    rows.iter()
        .map(|row| row.as_table().unwrap().clone())
        .collect()
}

fn text<'row>(row: &'row Table, key: &str) -> &'row str {
    row[key]
        .as_str()
        .unwrap_or_else(|| panic!("{key} in {row:?}"))
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

fn assert_as_printed(row: &Table, got: f64) {
    let (expected, half_digit) = printed(text(row, "expected"));
    let exact = row.get("exact").and_then(Value::as_bool).unwrap_or(false);
    let tolerance = if exact {
        expected * 2.0 * f64::EPSILON
    } else {
        half_digit
    };
    assert!((got - expected).abs() <= tolerance, "{row:?}: got {got}");
}

#[test]
fn every_row_names_its_source_and_grade() {
    for kind in ["factor", "temperature", "difference", "minor_digits"] {
        let rows = rows(kind);
        assert!(!rows.is_empty(), "{kind}");
        for row in rows {
            assert!(!text(&row, "source").is_empty());
            assert!(Grade::named(text(&row, "grade")).is_some(), "{row:?}");
        }
    }
}

#[test]
fn factors_are_those_of_nist_sp_811() {
    for row in rows("factor") {
        let measured = measure::read(
            text(&row, "written"),
            dimension_named(text(&row, "dimension")),
        )
        .unwrap();
        assert_as_printed(&row, in_si(&measured, text(&row, "si")));
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
        let number = |key: &str| Decimal::from_str(text(&row, key)).unwrap();
        for sample in samples.map(|sample| Decimal::from_str(sample).unwrap()) {
            let expected = (sample + number("add")) / number("divide");
            let got = unit(text(&row, "from"))
                .convert(sample, unit(text(&row, "to")))
                .unwrap();
            assert!(
                (got - expected).abs() < Decimal::new(1, 20),
                "{row:?} at {sample}: {got}"
            );
        }
    }
}

#[test]
fn differences_of_temperature_have_the_printed_factors() {
    for row in rows("difference") {
        let measured =
            measure::read(text(&row, "written"), Dimension::TemperatureDifference).unwrap();
        assert_as_printed(&row, in_si(&measured, "K"));
    }
}

#[test]
fn currencies_have_the_decimals_of_iso_4217() {
    let mut codes = 0;
    for row in rows("minor_digits") {
        let digits = row["digits"].as_integer().unwrap();
        for code in row["codes"].as_array().unwrap() {
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

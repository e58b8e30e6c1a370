//! What people write, and what they are told when it cannot be read.

use measure::{Customary, Dimension, Misfit, NumberTrouble, Unit, Unreadable, read, read_any};

/// Written, the number, the unit.
const WRITTEN: &[(&str, &str, Unit)] = &[
    ("10 Nm", "10", Unit::NewtonMetre),
    ("10 N·m", "10", Unit::NewtonMetre),
    ("10N m", "10", Unit::NewtonMetre),
    ("10 N-m", "10", Unit::NewtonMetre),
    ("10 N.m.", "10", Unit::NewtonMetre),
    ("89 in-lb", "89", Unit::PoundInch),
    ("89 in lb", "89", Unit::PoundInch),
    ("89 lbf in", "89", Unit::PoundInch),
    ("7.4 ft-lb", "7.4", Unit::PoundFoot),
    ("7.4 lb-ft", "7.4", Unit::PoundFoot),
    ("7.4 ft lbs", "7.4", Unit::PoundFoot),
    ("7.4 lbf·ft", "7.4", Unit::PoundFoot),
    ("12 daN m", "12", Unit::DecanewtonMetre),
    ("2 kgf m", "2", Unit::KilogramForceMetre),
    ("9.5 L", "9.5", Unit::Litre),
    ("9,5 l", "9.5", Unit::Litre),
    ("500 mL", "500", Unit::Millilitre),
    ("10 qt", "10", Unit::UsQuart),
    ("1 pt", "1", Unit::UsPint),
    ("2 gal", "2", Unit::UsGallon),
    ("12 fl oz", "12", Unit::UsFluidOunce),
    ("16 psi", "16", Unit::PoundPerSquareInch),
    ("1.1 bar", "1.1", Unit::Bar),
    ("110 kPa", "110", Unit::Kilopascal),
    ("101325 Pa", "101325", Unit::Pascal),
    ("760 mmHg", "760", Unit::MillimetreOfMercury),
    ("580 N/mm²", "580", Unit::Megapascal),
    ("195 F", "195", Unit::Fahrenheit),
    ("195 °F", "195", Unit::Fahrenheit),
    ("90 C", "90", Unit::Celsius),
    ("90°C", "90", Unit::Celsius),
    ("-40 °C", "-40", Unit::Celsius),
    ("\u{2212}40 °C", "-40", Unit::Celsius),
    ("300 K", "300", Unit::Kelvin),
    ("5/16 in", "0.3125", Unit::Inch),
    ("5/16\"", "0.3125", Unit::Inch),
    ("1 1/2 in", "1.5", Unit::Inch),
    ("1-1/2 in", "1.5", Unit::Inch),
    ("1½ in", "1.5", Unit::Inch),
    ("1 ½ in", "1.5", Unit::Inch),
    ("⅜ in.", "0.375", Unit::Inch),
    ("0.25 in", "0.25", Unit::Inch),
    (".25 in", "0.25", Unit::Inch),
    ("12 mm", "12", Unit::Millimetre),
    ("12 MM", "12", Unit::Millimetre),
    ("3 cm", "3", Unit::Centimetre),
    ("2 m", "2", Unit::Metre),
    ("80 km", "80", Unit::Kilometre),
    ("50 mi", "50", Unit::Mile),
    ("1500 ft", "1500", Unit::Foot),
    ("36.6 mm2", "36.6", Unit::SquareMillimetre),
    ("50 %", "50", Unit::Percent),
    ("50%", "50", Unit::Percent),
    ("25275 N", "25275", Unit::Newton),
    ("25 275 N", "25275", Unit::Newton),
    ("25\u{202f}275\u{202f}N", "25275", Unit::Newton),
    ("25,275.5 N", "25275.5", Unit::Newton),
    ("25.275,5 N", "25275.5", Unit::Newton),
    ("1,234,567 N", "1234567", Unit::Newton),
    ("0,125 in", "0.125", Unit::Inch),
    ("25 kN", "25", Unit::Kilonewton),
    ("5700 lbf", "5700", Unit::PoundForce),
    ("12 kg", "12", Unit::Kilogram),
    ("3 lb", "3", Unit::Pound),
    ("45 min", "45", Unit::Minute),
    ("1.5 h", "1.5", Unit::Hour),
    ("90 s", "90", Unit::Second),
    ("30 deg", "30", Unit::Degree),
    ("90°", "90", Unit::Degree),
    ("800 rpm", "800", Unit::RevolutionPerMinute),
    ("60 km/h", "60", Unit::KilometrePerHour),
    ("35 mph", "35", Unit::MilePerHour),
    ("12.4 V", "12.4", Unit::Volt),
];

#[test]
fn what_people_write_is_read() {
    for (written, number, unit) in WRITTEN {
        let measured = read_any(written).unwrap_or_else(|error| panic!("{written}: {error}"));
        assert_eq!(
            (measured.number().to_string().as_str(), measured.unit()),
            (*number, *unit),
            "{written}"
        );
        assert_eq!(measured.written(), *written);
        assert_eq!(
            read(written, unit.dimension()).as_ref(),
            Ok(&measured),
            "{written}"
        );
    }
}

#[test]
fn a_stated_dimension_gives_a_word_its_sense() {
    let unit = |text, dimension| read(text, dimension).unwrap().unit();
    assert_eq!(unit("5700 lb", Dimension::Force), Unit::PoundForce);
    assert_eq!(unit("8 oz", Dimension::Volume), Unit::UsFluidOunce);
    assert_eq!(
        unit("20 C", Dimension::TemperatureDifference),
        Unit::CelsiusDifference
    );
    assert_eq!(
        unit("20 °F", Dimension::TemperatureDifference),
        Unit::FahrenheitDifference
    );
    assert_eq!(unit("2 kg-m", Dimension::Torque), Unit::KilogramForceMetre);
    assert_eq!(unit("2 kg", Dimension::Mass), Unit::Kilogram);
}

#[test]
fn a_difference_of_temperatures_is_not_a_temperature() {
    let difference = read("18 °F", Dimension::TemperatureDifference).unwrap();
    assert_eq!(
        difference.show_in(Unit::CelsiusDifference, 1).unwrap(),
        "10.0\u{202f}°C"
    );
    assert!(difference.temperature().is_err());
    assert!(difference.convert(Unit::Celsius).is_err());
    let temperature = read("18 °F", Dimension::Temperature).unwrap();
    assert_eq!(
        temperature.show_in(Unit::Celsius, 1).unwrap(),
        "-7.8\u{202f}°C"
    );
}

/// Written, the dimension asked for, and the whole message.
const REFUSED: &[(&str, Dimension, &str)] = &[
    (
        "",
        Dimension::Speed,
        "nothing is written; write a number and a unit (km/h, mph, m/s)",
    ),
    (
        "  ",
        Dimension::Speed,
        "nothing is written; write a number and a unit (km/h, mph, m/s)",
    ),
    (
        "fast",
        Dimension::Speed,
        "column 1: no number at `fast`; begin with a number such as 12, 12.5 or 5/16",
    ),
    (
        "NaN km/h",
        Dimension::Speed,
        "column 1: `NaN` is not a finite number; write the number itself",
    ),
    (
        "-inf km/h",
        Dimension::Speed,
        "column 1: `-inf` is not a finite number; write the number itself",
    ),
    (
        "60",
        Dimension::Speed,
        "column 3: no unit after `60`; add one of km/h, mph, m/s",
    ),
    (
        "60 knots",
        Dimension::Speed,
        "column 4: `knots` is not a unit known here; use one of km/h, mph, m/s",
    ),
    (
        "60 km",
        Dimension::Speed,
        "column 4: `km` measures length, not speed; use one of km/h, mph, m/s",
    ),
    (
        "60 km/h or so",
        Dimension::Speed,
        "column 9: `or so` stands after the unit km/h; take it away",
    ),
    (
        "1,234 N",
        Dimension::Force,
        "column 1: `1,234` can be read as 1.234 or as 1234; write one of these",
    ),
    (
        "1.2.3 N",
        Dimension::Force,
        "column 1: `1.2.3` is not one number; write it like 12.5, 12,5, 5/16 or 1 1/2",
    ),
    (
        "12,34,56 N",
        Dimension::Force,
        "column 1: `12,34,56` is not one number; write it like 12.5, 12,5, 5/16 or 1 1/2",
    ),
    (
        "1/0 in",
        Dimension::Length,
        "column 1: `1/0` divides by nothing; the lower number of a fraction is 1 or more",
    ),
    (
        " 9999999999999 N",
        Dimension::Force,
        "column 2: `9999999999999` is too large or too finely written; \
         at most 1000000000000, with at most 28 digits in all",
    ),
    (
        "-300 °C",
        Dimension::Temperature,
        "-300 °C is below absolute zero",
    ),
    (
        "5 mPa",
        Dimension::Pressure,
        "column 3: `mPa` is not a unit known here; use one of Pa, kPa, MPa, bar, psi, mmHg",
    ),
];

#[test]
fn a_refusal_says_where_what_and_how_to_mend() {
    for (written, dimension, message) in REFUSED {
        let error = read(written, *dimension).expect_err(written);
        assert_eq!(error.to_string(), *message, "{written}");
    }
}

#[test]
fn places_are_bytes_and_columns() {
    let Err(Unreadable::UnknownUnit { at, .. }) = read("½ µin", Dimension::Length) else {
        panic!()
    };
    assert_eq!((at.start, at.end, at.column), (3, 7, 3));
    let Err(Unreadable::Number(NumberTrouble::Ambiguous { at, .. })) =
        read(" 1,234 mm", Dimension::Length)
    else {
        panic!()
    };
    assert_eq!((at.start, at.end, at.column), (1, 6, 2));
}

#[test]
fn a_fraction_of_an_inch_is_exact() {
    let hole = read("5/16 in", Dimension::Length).unwrap();
    assert_eq!(
        hole.convert(Unit::Millimetre).unwrap().number().to_string(),
        "7.9375"
    );
}

#[test]
fn what_is_shown_suits_the_reader() {
    let shown = [
        ("22 Nm", Customary::Metric, "22 N·m (16.2 lb·ft)"),
        ("10 Nm", Customary::Us, "88.5 lb·in (10 N·m)"),
        ("89 in-lb", Customary::Metric, "10.1 N·m (89 lb·in)"),
        ("9.5 L", Customary::Us, "10 qt (9.5 L)"),
        ("16 psi", Customary::Metric, "110 kPa (16 psi)"),
        ("1.1 bar", Customary::Us, "16 psi (1.1 bar)"),
        ("195 °F", Customary::Metric, "90.6 °C (195 °F)"),
        ("5/16 in", Customary::Metric, "7.938 mm (0.3125 in)"),
        ("25275 N", Customary::Us, "5682 lbf (25275 N)"),
        ("580 MPa", Customary::Us, "84122 psi (580 MPa)"),
        ("80 km", Customary::Us, "49.71 mi (80 km)"),
        ("60 km/h", Customary::Us, "37.3 mph (60 km/h)"),
        ("12.45 V", Customary::Us, "12.45 V"),
        ("90°", Customary::Us, "90°"),
        ("1/3 in", Customary::Us, "0.3333 in (8.467 mm)"),
    ];
    for (written, customary, expected) in shown {
        let plain = read_any(written)
            .unwrap()
            .show(customary)
            .replace('\u{202f}', " ");
        assert_eq!(plain, expected, "{written}");
    }
}

#[test]
fn a_value_that_is_not_a_number_is_shown_as_unknown() {
    let none = measure::si::Force::new::<uom::si::force::newton>(f64::NAN);
    assert_eq!(measure::show(none, Customary::Metric), "unknown");
    let error = measure::show_in(none, Unit::Newton, 0).unwrap_err();
    assert!(matches!(error, Misfit::OutOfRange { .. }), "{error}");
}

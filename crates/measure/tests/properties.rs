//! What holds for every value and every text.

#![allow(clippy::unwrap_used)] // in the helpers too, which clippy does not count as tests

use measure::{Currency, Customary, Decimal, Dimension, Line, Measured, Money, Range, Rounding};
use measure::{Source, Unit, Working, read, read_any};
use proptest::prelude::*;

fn unit() -> impl Strategy<Value = Unit> {
    proptest::sample::select(Unit::ALL.to_vec())
}

fn pair_of_units() -> impl Strategy<Value = (Unit, Unit)> {
    unit().prop_flat_map(|unit| {
        let same: Vec<Unit> = unit.dimension().units().collect();
        (Just(unit), proptest::sample::select(same))
    })
}

/// Numbers as they are written: within a million million, with up to six decimals.
fn number() -> impl Strategy<Value = Decimal> {
    (-1_000_000_000_000_i64..1_000_000_000_000, 0_u32..=6)
        .prop_map(|(digits, scale)| Decimal::new(digits, scale))
}

fn amount() -> impl Strategy<Value = Money> {
    let usd = Currency::new("USD").unwrap();
    (-1_000_000_000_i64..1_000_000_000)
        .prop_map(move |cents| Money::new(Decimal::new(cents, 2), usd))
}

/// Texts near to what people write, so that the reader is taken past its first step.
fn nearly_written() -> impl Strategy<Value = String> {
    "[-+ ]{0,2}[0-9.,/½ \u{202f}-]{0,8}[ ]?[a-zA-Z·°²%\"'/ .-]{0,8}"
}

proptest! {
    #![proptest_config(ProptestConfig { failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn no_text_makes_the_readers_panic(text in any::<String>(), near in nearly_written()) {
        let usd = Currency::new("USD").unwrap();
        for text in [text, near] {
            let _ = read_any(&text);
            let _ = Money::read(&text, usd);
            let _ = Currency::new(&text);
            for dimension in Dimension::ALL {
                if let Ok(measured) = read(&text, dimension) {
                    prop_assert_eq!(measured.dimension(), dimension);
                    prop_assert_eq!(measured.written(), text.trim());
                    measured.show(Customary::Metric);
                    measured.show(Customary::Us);
                }
            }
        }
    }

    #[test]
    fn an_error_points_into_its_text(near in nearly_written()) {
        if let Err(measure::Unreadable::UnknownUnit { at, found, .. }) = read_any(&near) {
            prop_assert_eq!(&near[at.start..at.end], found.as_str());
            prop_assert_eq!(near[..at.start].chars().count() + 1, at.column);
        }
    }

    #[test]
    fn what_is_written_here_is_read_here(number in number(), unit in unit()) {
        let Ok(measured) = Measured::new(number, unit) else {
            prop_assert_eq!(unit.dimension(), Dimension::Temperature);
            return Ok(());
        };
        prop_assert_eq!(&read(measured.written(), unit.dimension()).unwrap(), &measured);
        let shown = measured.show_in(unit, 6).unwrap();
        prop_assert_eq!(read(&shown, unit.dimension()).unwrap().number(), number);
    }

    #[test]
    fn what_is_calculated_can_be_written_and_read(value in any::<f64>(), small in -1e9..1e9_f64) {
        use measure::si::Torque;
        for value in [value, small] {
            let torque = Torque::new::<uom::si::torque::newton_meter>(value);
            let Ok(measured) = Measured::of(torque, Unit::PoundInch) else {
                prop_assert!(!value.is_finite() || value.abs() > 1e10);
                continue;
            };
            prop_assert_eq!(&read(measured.written(), Dimension::Torque).unwrap(), &measured);
            if value.abs() > 1e-9 {
                assert_near(value, measured.torque().unwrap().value)?;
            }
        }
    }

    #[test]
    fn a_conversion_there_and_back_returns(number in number(), (from, to) in pair_of_units()) {
        let there = from.convert(number, to).unwrap();
        let back = to.convert(there, from).unwrap();
        // 28 digits are held; a factor near 1e6 can cost a few of them.
        let tolerance = (number.abs() + Decimal::from(1000)) * Decimal::new(1, 18);
        prop_assert!((back - number).abs() <= tolerance, "{number} {from:?} {to:?} {back}");
    }

    #[test]
    fn a_typed_value_does_not_depend_on_the_unit_it_was_written_in(
        number in number(),
        torque in proptest::sample::select(Dimension::Torque.units().collect::<Vec<_>>()),
        temperature in proptest::sample::select(Dimension::Temperature.units().collect::<Vec<_>>()),
    ) {
        let here = Measured::new(number / Decimal::from(1000), Unit::PoundFoot).unwrap();
        let there = here.convert(torque).unwrap();
        assert_near(here.torque().unwrap().value, there.torque().unwrap().value)?;
        let here = Measured::new(number.abs() / Decimal::from(1000), Unit::Fahrenheit).unwrap();
        let there = here.convert(temperature).unwrap();
        assert_near(here.temperature().unwrap().value, there.temperature().unwrap().value)?;
    }

    #[test]
    fn larger_numbers_are_larger_in_every_unit(a in number(), b in number(), (from, to) in pair_of_units()) {
        prop_assert_eq!(a <= b, from.convert(a, to) <= from.convert(b, to));
    }

    #[test]
    fn adding_money_is_exact(a in amount(), b in amount(), c in amount()) {
        let left = a.plus(b).unwrap().plus(c).unwrap();
        let right = a.plus(b.plus(c).unwrap()).unwrap();
        prop_assert_eq!(left, right);
        prop_assert_eq!(left.minus(c).unwrap().minus(b).unwrap(), a);
        prop_assert_eq!(Money::sum(a.currency(), [a, b, c]).unwrap(), left);
    }

    #[test]
    fn money_that_is_shown_is_read(money in amount()) {
        prop_assert_eq!(Money::read(&money.to_string(), money.currency()).unwrap(), money);
        prop_assert_eq!(Money::read(&money.with_code(), money.currency()).unwrap(), money);
    }

    #[test]
    fn rounding_moves_at_most_half_a_cent(money in amount(), factor in number()) {
        let product = money.times(factor).unwrap();
        for rounding in [Rounding::HalfUp, Rounding::HalfEven] {
            let rounded = product.round(rounding);
            prop_assert!(rounded.is_round());
            prop_assert!((rounded.amount() - product.amount()).abs() <= Decimal::new(5, 3));
            prop_assert_eq!(rounded.round(rounding), rounded);
        }
    }

    #[test]
    fn a_working_is_well_formed_json_and_html(
        title in any::<String>(), what in any::<String>(), value in any::<String>(), note in any::<String>(),
    ) {
        let line = Line::new(&what, Source::given()).formula("F", "<a> & \"b\"").input("x\u{0}", &value).note(&note);
        let working = Working::new(&title).line(line).remark(&note).limit(&value);
        let parsed: serde_json::Value = serde_json::from_str(&working.json()).unwrap();
        prop_assert_eq!(&parsed["title"], &title);
        prop_assert_eq!(&parsed["lines"][0]["what"], &what);
        prop_assert_eq!(&parsed["lines"][0]["inputs"][0]["value"], &value);
        prop_assert_eq!(&parsed["lines"][0]["value"], &serde_json::Value::Null);
        prop_assert_eq!(&parsed["lines"][0]["source"]["grade"], "given");
        prop_assert_eq!(&parsed["remarks"][0], &note);
        prop_assert_eq!(&parsed["limits"][0], &value);
        assert_only_our_tags(&working.html())?;
    }

    #[test]
    fn a_range_keeps_its_order(a in -1e9..1e9_f64, b in -1e9..1e9_f64, c in -1e9..1e9_f64) {
        let rising = a <= b && b <= c;
        prop_assert_eq!(Range::new(a, b, c).is_ok(), rising);
        if let Ok(range) = Range::new(a, b, c) {
            let turned = range.map(|x| -x).unwrap();
            prop_assert_eq!((turned.low(), turned.mid(), turned.high()), (-c, -b, -a));
        }
    }
}

/// Equal but for the last bits of a double.
fn assert_near(here: f64, there: f64) -> Result<(), TestCaseError> {
    prop_assert!(
        (here - there).abs() <= 2.0 * f64::EPSILON * here.abs(),
        "{here} {there}"
    );
    Ok(())
}

/// Every `<` of the output opens or closes an element that the renderer writes.
fn assert_only_our_tags(html: &str) -> Result<(), TestCaseError> {
    let known = [
        "section", "h3", "h4", "ol", "ul", "li", "p", "output", "dl", "dt", "dd",
    ];
    for piece in html.split('<').skip(1) {
        let name = piece.trim_start_matches('/').split('>').next().unwrap();
        prop_assert!(known.contains(&name), "{name}");
    }
    for name in known {
        let open = html.matches(&format!("<{name}>")).count();
        prop_assert_eq!(
            open,
            html.matches(&format!("</{name}>")).count(),
            "{}",
            name
        );
    }
    Ok(())
}

//! Money: what is written, and what is told when it cannot be taken.

#![allow(clippy::unwrap_used)] // in the helpers too, which clippy does not count as tests

use measure::{Currency, Decimal, Money, MoneyError, Rounding};

fn currency(code: &str) -> Currency {
    Currency::new(code).unwrap()
}

fn usd(text: &str) -> Money {
    Money::read(text, currency("USD")).unwrap()
}

#[test]
fn amounts_are_read_as_people_write_them() {
    for written in [
        "904.40",
        "904,40",
        "904.4",
        " 904.40 usd",
        "904.40\u{a0}USD",
        "904.400",
    ] {
        assert_eq!(usd(written).to_string(), "904.40", "{written}");
    }
    assert_eq!(usd("1,904.40").to_string(), "1904.40");
    assert_eq!(usd("-5").to_string(), "-5.00");
    assert_eq!(usd("904.40").with_code(), "904.40\u{a0}USD");
    assert_eq!(
        Money::read("1500", currency("JPY")).unwrap().to_string(),
        "1500"
    );
    assert_eq!(
        Money::read("1.5", currency("BHD")).unwrap().to_string(),
        "1.500"
    );
}

#[test]
fn an_amount_that_cannot_be_taken_says_why() {
    let refused = [
        ("", "no amount is written; write one such as 904.40"),
        (
            "free",
            "column 1: no number at `free`; begin with a number such as 12, 12.5 or 5/16",
        ),
        (
            "904.405",
            "column 1: `904.405` has more than the 2 decimals of USD; round it first",
        ),
        (
            "904.40 EUR",
            "column 8: `EUR` stands after the amount; take it away or write USD",
        ),
        (
            "1,904",
            "column 1: `1,904` can be read as 1.904 or as 1904; write one of these",
        ),
    ];
    for (written, message) in refused {
        assert_eq!(
            Money::read(written, currency("USD"))
                .unwrap_err()
                .to_string(),
            message,
            "{written}"
        );
    }
    assert_eq!(
        Currency::new("US$").unwrap_err().to_string(),
        "`US$` is not a currency code; write three letters such as USD"
    );
}

#[test]
fn two_currencies_are_never_mixed() {
    let (dollars, euros) = (usd("1"), Money::read("1", currency("EUR")).unwrap());
    assert_ne!(dollars, euros);
    assert_eq!(dollars.partial_cmp(&euros), None);
    assert_eq!(
        dollars.plus(euros).unwrap_err().to_string(),
        "USD and EUR cannot be added or compared; bring them to one currency first"
    );
}

#[test]
fn halves_go_where_the_named_rule_sends_them() {
    let rounded = |thousandths: i64, rounding| {
        Money::new(Decimal::new(thousandths, 3), currency("USD"))
            .round(rounding)
            .to_string()
    };
    assert_eq!(rounded(125, Rounding::HalfUp), "0.13");
    assert_eq!(rounded(-125, Rounding::HalfUp), "-0.13");
    assert_eq!(rounded(125, Rounding::HalfEven), "0.12");
    assert_eq!(rounded(135, Rounding::HalfEven), "0.14");
    assert_eq!(rounded(124, Rounding::HalfUp), "0.12");
}

#[test]
fn what_cannot_be_held_exactly_is_refused() {
    let most = Money::new(Decimal::MAX, currency("USD"));
    assert_eq!(most.plus(usd("0.01")), Err(MoneyError::TooLarge));
    assert_eq!(most.times(Decimal::TWO), Err(MoneyError::TooLarge));
    let fine = Money::new(Decimal::new(1, 20), currency("USD"));
    assert_eq!(fine.times(Decimal::new(1, 20)), Err(MoneyError::TooLarge));
    let long = Money::new(Decimal::MAX, currency("USD"))
        .times(Decimal::new(1, 2))
        .unwrap();
    assert_eq!(long.times(Decimal::new(11, 1)), Err(MoneyError::TooLarge));
}

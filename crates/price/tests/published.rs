//! Taxes, rounding, cash, uplifts and cores against what tax authorities and others print.

use checks::{Row, published};
use price::{
    Billed, By, Charge, Coin, CreditLine, Entry, Exemption, Payer, Payment, Round, TaxOn,
    TaxRounding, TaxRule, Taxing, Uplift, balance, bills,
};
use rust_decimal::Decimal;

fn decimal(text: &str) -> Decimal {
    text.parse()
        .unwrap_or_else(|_| panic!("{text} is no number"))
}

fn texts<'row>(row: &'row Row, name: &str) -> Vec<&'row str> {
    let list = row.list(name).iter();
    list.map(|text| text.as_str().unwrap_or_else(|| panic!("{row}: {name}")))
        .collect()
}

fn charge(name: &str) -> Charge {
    let named = |charge: &Charge| charge.name().split(' ').next() == Some(name);
    let found = Charge::ALL.into_iter().find(named);
    found.unwrap_or_else(|| panic!("no sort of charge is called {name}"))
}

/// `9.95 part`: one of it.
fn entry(line: &str) -> Entry {
    let (each, sort) = line.split_once(' ').unwrap_or((line, "part"));
    let sort = if sort == "supplies" { "shop" } else { sort };
    Entry {
        line: None,
        charge: charge(sort),
        label: None,
        quantity: 1.into(),
        each: decimal(each),
        payer: Payer::Customer,
        less: Vec::new(),
    }
}

/// `sales tax 6.25 on part supplies`, `GST 15 included`, `QST 7.5 compound`.
fn tax(text: &str) -> TaxRule {
    let (head, kinds) = text.split_once(" on ").unwrap_or((text, ""));
    let words: Vec<&str> = head.split(' ').collect();
    let at = words
        .iter()
        .position(|word| word.parse::<Decimal>().is_ok());
    let at = at.unwrap_or_else(|| panic!("{text} has no rate"));
    let on = TaxOn {
        labour: true,
        parts: true,
        other: true,
    };
    let kinds = kinds.split_whitespace();
    TaxRule {
        kinds: kinds
            .map(|kind| charge(if kind == "supplies" { "shop" } else { kind }))
            .collect(),
        included: words[at..].contains(&"included"),
        compound: words[at..].contains(&"compound"),
        ..TaxRule::on_top(words[..=at].join(" "), decimal(words[at]), on)
    }
}

fn round(row: &Row) -> Round {
    match row.has("round").then(|| row.text("round")) {
        None => Round::HalfUp,
        Some("half-down") => Round::HalfDown,
        Some("down") => Round::Down,
        Some(other) => panic!("{row}: no rounding is called {other}"),
    }
}

fn digits(row: &Row) -> u32 {
    if row.has("digits") {
        u32::try_from(row.whole("digits")).expect("digits are few")
    } else {
        2
    }
}

fn taxing(row: &Row) -> Taxing {
    let by = match row.has("by").then(|| row.text("by")) {
        None => By::Total,
        Some("line") => By::Line,
        Some(other) => panic!("{row}: by {other}"),
    };
    Taxing {
        taxes: texts(row, "taxes").into_iter().map(tax).collect(),
        rounding: TaxRounding {
            round: round(row),
            by,
        },
        exempt: row.flag("exempt").then(|| Exemption {
            number: [0; 32],
            taxes: Vec::new(),
        }),
    }
}

fn entries(row: &Row) -> Vec<Entry> {
    texts(row, "lines").into_iter().map(entry).collect()
}

#[test]
fn taxes_are_as_printed() {
    for row in published("money").rows("tax") {
        let taxing = taxing(row);
        taxing
            .check()
            .unwrap_or_else(|fault| panic!("{row}: {fault}"));
        let bill = &bills(&entries(row), &taxing, digits(row)).expect("small")[&Payer::Customer];
        let taxes: Vec<String> = bill
            .shares
            .iter()
            .map(|share| share.tax.to_string())
            .collect();
        assert_eq!(taxes, texts(row, "expected"), "{row}");
        assert_eq!(bill.totals.gross.to_string(), row.text("gross"), "{row}");
        if row.has("paid") {
            let paid = [Payment {
                amount: decimal(row.text("paid")),
                cash: false,
            }];
            let left = balance(bill.totals.gross, &paid, None).expect("small").left;
            assert_eq!(left.to_string(), row.text("due"), "{row}");
        }
    }
}

#[test]
fn cash_is_as_printed() {
    for row in published("money").rows("cash") {
        let coin = Coin {
            smallest: decimal(row.text("coin")),
            round: round(row),
        };
        let cash = coin.cash(decimal(row.text("sum")));
        assert_eq!(cash.pays.to_string(), row.text("expected"), "{row}");
    }
}

#[test]
fn a_markup_and_a_margin_are_as_printed() {
    for row in published("money").rows("uplift") {
        let uplift = if row.has("markup") {
            Uplift::Markup(decimal(row.text("markup")))
        } else {
            Uplift::Margin(decimal(row.text("margin")))
        };
        if row.has("expected") {
            let price = uplift.on(decimal(row.text("cost"))).expect("small");
            assert_eq!(
                Round::HalfUp.to_digits(price, 2).to_string(),
                row.text("expected"),
                "{row}"
            );
        }
        if row.has("other") {
            let (Uplift::Markup(other) | Uplift::Margin(other)) =
                uplift.other().expect("below 100");
            assert_eq!(
                Round::HalfUp.to_digits(other, 0).to_string(),
                row.text("other"),
                "{row}"
            );
        }
    }
}

#[test]
fn what_goes_back_of_a_core_is_as_printed() {
    for row in published("money").rows("credit") {
        let (entries, taxing) = (entries(row), taxing(row));
        let bill = &bills(&entries, &taxing, 2).expect("small")[&Payer::Customer];
        let billed =
            Billed::of(&entries, &taxing, Payer::Customer, &bill.totals, 2).expect("small");
        let line = CreditLine {
            line: u32::try_from(row.whole("line")).expect("a place"),
            amount: decimal(row.text("back")),
            keeps_tax: row.flag("keeps_tax"),
        };
        let credit = billed
            .credit(&[], &[line])
            .unwrap_or_else(|fault| panic!("{row}: {fault}"));
        assert_eq!(credit.totals.tax.to_string(), row.text("expected"), "{row}");
        assert_eq!(credit.totals.net, line.amount, "{row}");
    }
}

//! A month of money: what is listed adds up to what the orders say.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use rust_decimal::Decimal;
use serde_json::json;
use shop::Device;
use shop::books::{Books, List, books};

fn entry(label: &str, each: &str) -> serde_json::Value {
    json!({ "line": "line-1", "charge": "labour", "label": Device::words(label), "quantity": "1",
        "each": each, "payer": "customer" })
}

fn month(bench: &Bench, month: &str) -> Books {
    bench
        .service
        .look(&shop::Caller::program(), |snap| books(snap, month))
        .unwrap()
}

/// An order of so much before tax, agreed and invoiced.
fn invoiced(bench: &mut Bench, customer: &str, each: &str) -> String {
    let order = bench.open(customer, "Korvane Drayman 2.3", "KD 1");
    bench.tell(&order, bench::consent("100000"));
    bench.price(&order, &[entry("work", each)]).unwrap();
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    order
}

fn decimal(sum: &shop::Amount) -> Decimal {
    sum.number().unwrap()
}

#[test]
fn a_months_lists_add_up_and_what_is_unpaid_is_named_until_it_is_paid() {
    let mut bench = Bench::new();
    let first = invoiced(&mut bench, "=HYPERLINK(\"x\"), Ada", "100");
    let second = invoiced(&mut bench, "Bea", "200.50");
    bench.tell(
        &first,
        json!({ "paid": { "payer": "customer", "amount": "50", "by": "cash", "deposit": true } }),
    );
    let found = month(&bench, "2026-11");
    assert_eq!(found.written.len(), 2);
    assert_eq!(found.written[0].number, "INV-1");
    // Each list adds up to its own total, by the taxes too.
    let gross: Decimal = found.written.iter().map(|one| decimal(&one.gross)).sum();
    assert_eq!(gross, decimal(&found.gross));
    let tax: Decimal = found.taxes.iter().map(|one| decimal(&one.tax)).sum();
    assert_eq!(tax, decimal(&found.tax));
    assert_eq!(
        decimal(&found.net) + decimal(&found.tax),
        decimal(&found.gross)
    );
    assert_eq!(found.by_way.len(), 1);
    assert_eq!(found.by_way[0].1, "50.00");
    assert_eq!(found.unpaid.len(), 2);
    let left: Decimal = found.unpaid.iter().map(|one| decimal(&one.amount)).sum();
    assert_eq!(left, decimal(&found.gross) - Decimal::from(50));
    // On account it is paid at the door, and still to come in.
    let rest = found.unpaid[0].amount.exact().to_owned();
    bench.tell(&first, json!({ "paid": { "payer": "customer", "amount": rest, "by": "on-account", "deposit": false } }));
    let found = month(&bench, "2026-11");
    assert!(
        found.unpaid[0].on_account && found.unpaid[0].amount == *rest,
        "{:?}",
        found.unpaid
    );
    for (amount, by) in [(format!("-{rest}"), "on-account"), (rest, "transfer")] {
        bench.tell(&first, json!({ "paid": { "payer": "customer", "amount": amount, "by": by, "deposit": false } }));
    }
    let found = month(&bench, "2026-11");
    assert_eq!(found.unpaid.len(), 1);
    assert_eq!(found.unpaid[0].customer, "Bea");
    // Nothing of it in another month but what is still not paid.
    let other = month(&bench, "2026-12");
    assert!(other.written.is_empty() && other.payments.is_empty() && other.gross == "0.00");
    assert_eq!(other.unpaid.len(), 1);
    let _ = second;
}

#[test]
fn a_credit_note_is_taken_off_and_a_list_is_csv_that_runs_nothing() {
    let mut bench = Bench::new();
    invoiced(&mut bench, "=1+1, \"Ada\"", "100");
    let found = month(&bench, "2026-11");
    let text = List::Invoices.csv(&found);
    let mut lines = text.lines();
    assert!(
        lines
            .next()
            .unwrap()
            .starts_with("day,number,order,customer")
    );
    let row = lines.next().unwrap();
    assert!(row.contains("\"'=1+1, \"\"Ada\"\"\""), "{row}");
    assert!(text.ends_with("\r\n"));
    for list in List::ALL {
        assert_eq!(List::named(list.name()), Some(list));
        assert!(!list.csv(&found).is_empty());
    }
}

#[test]
fn a_list_is_written_as_a_german_spreadsheet_reads_it() {
    let mut bench = Bench::new();
    invoiced(&mut bench, "Ada Vane", "1440.50");
    let found = month(&bench, "2026-11");
    let german = |list: List| phrases::speaking(phrases::Language::German, || list.csv(&found));
    let invoices = german(List::Invoices);
    assert!(
        invoices.starts_with(
            "\u{feff}Tag;Nummer;Auftrag;Kunde;Zahler;netto;Steuer;brutto;Währung;zu Rechnung\r\n"
        ),
        "{invoices}"
    );
    assert!(invoices.contains(";Ada Vane;Kunde;1440,50;"), "{invoices}");
    assert!(
        german(List::Payments)
            .contains("Tag;Auftrag;Kunde;Zahler;Zahlungsart;Betrag;Währung;Anzahlung")
    );
    assert!(german(List::Taxes).contains("Monat;Steuer;Prozent;Grundlage;Betrag;Währung;befreit"));
}

#[test]
fn what_is_no_month_is_said() {
    let bench = Bench::new();
    for odd in ["", "2026", "2026-13", "next", "2026-11-01"] {
        let look = bench
            .service
            .look(&shop::Caller::program(), |snap| books(snap, odd));
        assert!(look.unwrap_err().mend.contains("2026-11"), "{odd}");
    }
}

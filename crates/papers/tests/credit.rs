//! The credit note, and taxes told apart: what is printed is what the screen shows.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod scene;

use papers::{Asked, Kind, make};
use scene::bench::Bench;
use scene::{entry, invoice, made, printed, words};
use serde_json::{Value, json};

/// A starter with its core and labour, by two taxes, charged; the core came back.
fn taken_back() -> (Bench, String) {
    let mut bench = Bench::new();
    let on = json!({ "labour": true, "parts": true, "other": true });
    bench.shop(json!({ "set": { "after": [], "settings": { "name": words("The Corner Garage"), "rate": "120", "currency": "EUR",
        "minor_digits": 2, "units": "metric", "zone": "Europe/Lisbon", "taxes": [
            { "name": "VAT", "percent": "19", "on": on },
            { "name": "parts levy", "percent": "2.5", "on": on, "kinds": ["part", "core"] }] } } }));
    let order = bench.open("Ada Brandt", "Korvane Drayman 2.3", "KD 2302");
    let mut labour = entry("labour", "Starter changed", "1.5", "120");
    labour["less"] = json!([{ "amount": "18", "percent": "10", "why": words("waited a day"), "of_order": false }]);
    bench
        .price(
            &order,
            &[
                labour,
                entry("part", "Starter", "1", "240"),
                entry("core", "Core charge, starter", "1", "60"),
            ],
        )
        .unwrap();
    bench.tell(&order, json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true,
        "amount": "1000", "tax_included": true, "way": "phone", "person": null, "said": null, "number_called": null,
        "signature": null, "after": [] } }));
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    let command = bench.view(&order).price.as_ref().unwrap().invoices[0]
        .command
        .clone();
    bench
        .ask(&order, json!({ "credit": { "invoice": command, "payer": "customer", "words": words("the core came back"),
            "lines": [{ "line": 2, "amount": "60", "keeps_tax": false }] } }))
        .unwrap();
    (bench, order)
}

#[test]
fn taxes_are_told_apart_on_an_invoice_and_add_up() {
    let (bench, order) = taken_back();
    let made = invoice(&bench, &order);
    let paper = printed(&made.paper);
    // 162.00, 240.00, 60.00: 462.00 at 19 %, 300.00 at 2.5 %.
    for said in [
        "VAT 19 % of 462.00",
        "87.78",
        "parts levy 2.5 % of 300.00",
        "7.50",
        "95.28",
        "557.28",
        "waited a day",
    ] {
        assert!(paper.contains(said), "{said}: {paper}");
    }
    let view = bench.view(&order);
    let written = &view.price.as_ref().unwrap().invoices[0];
    assert_eq!(
        made.values["shares"],
        serde_json::to_value(&written.shares).unwrap()
    );
    assert_eq!(made.values["gross"], Value::from(written.gross.exact()));
}

#[test]
fn a_credit_note_says_of_which_invoice_why_and_each_tax() {
    let (bench, order) = taken_back();
    let made = made(&bench, &order, &Asked::of(Kind::CreditNote));
    assert_eq!(made.file, "Credit-note-CR-1.pdf");
    let paper = printed(&made.paper);
    for said in [
        "Credit note",
        "CR-1",
        "INV-1",
        "the core came back",
        "Core charge, starter",
        "VAT 19 % of 60.00",
        "11.40",
        "parts levy 2.5 % of 60.00",
        "1.50",
        "72.90",
    ] {
        assert!(paper.contains(said), "{said}: {paper}");
    }
    let view = bench.view(&order);
    let note = &view.price.as_ref().unwrap().credits[0];
    assert_eq!(made.values["gross"], Value::from(note.gross.exact()));
    assert_eq!(made.values["of_invoice"], "INV-1");
    assert_eq!(view.totals[0].gross, "484.38");
}

#[test]
fn where_none_is_written_it_is_said() {
    let (mut bench, _) = taken_back();
    let order = bench.open("Ada Brandt", "Korvane Drayman 2.3", "KD 2303");
    let number = bench.number(&order);
    let trouble = bench
        .look(|snap| make(snap, number, &Asked::of(Kind::CreditNote)))
        .unwrap_err();
    assert_eq!(trouble.what, "no credit note is written for this payer");
}

//! Money in full, as programs say it and look at it: the shop's rules, credit notes, cash to
//! the coin, exempt customers. Whatever way sums are looked at, they are the same.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use rust_decimal::Decimal;
use serde_json::{Value, json};
use shop::view::{OrderView, ShareView};
use shop::{Device, TroubleKind};

fn entry(charge: &str, label: &str, each: &str) -> Value {
    json!({ "line": null, "charge": charge, "label": Device::words(label), "quantity": "1", "each": each,
        "payer": "customer" })
}

fn consent(amount: &str) -> Value {
    json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true,
        "amount": amount, "tax_included": true, "way": "phone", "person": null, "said": null,
        "number_called": null, "signature": null, "after": [] } })
}

fn rules(coin: Value) -> Value {
    json!({ "money-told": { "after": [], "rules": {
        "rates": [{ "work": "diagnosis", "grade": null, "hour": "150" }],
        "hours_by": "lesser",
        "parts": { "bands": [{ "up_to": "10", "uplift": { "markup": "100" } },
            { "up_to": null, "uplift": { "margin": "40" } }], "least": "2" },
        "sublet": { "bands": [], "least": null },
        "supplies": { "percent": "5", "of": ["labour"], "most": "30" },
        "disposal": [{ "of": "waste oil", "each": "0.80" }],
        "rounding": { "round": "half-up", "by": "line" },
        "coin": coin } } })
}

fn taxes(taxes: Value) -> Value {
    json!({ "set": { "after": [], "settings": { "name": Device::words("The Corner Garage"), "rate": "120", "currency": "EUR",
        "minor_digits": 2, "taxes": taxes, "units": "metric", "zone": "Europe/Lisbon" } } })
}

fn tax(name: &str, percent: &str, more: Value) -> Value {
    let mut tax = json!({ "name": name, "percent": percent,
        "on": { "labour": true, "parts": true, "other": true } });
    for (key, value) in more.as_object().unwrap() {
        tax[key] = value.clone();
    }
    tax
}

fn sum(shares: &[ShareView]) -> Decimal {
    shares.iter().map(|share| share.tax.number().unwrap()).sum()
}

/// Every way to look at the sums tells the same.
fn agrees(view: &OrderView) {
    for total in &view.totals {
        let decimal = |sum: &shop::Amount| sum.number().unwrap();
        assert_eq!(sum(&total.shares), decimal(&total.tax), "{total:?}");
        assert_eq!(
            decimal(&total.net) + decimal(&total.tax),
            decimal(&total.gross)
        );
        let price = view.price.as_ref().unwrap();
        let mut gross = Decimal::ZERO;
        let of_payer = price.invoices.iter().chain(&price.next);
        for invoice in of_payer.filter(|invoice| invoice.payer == total.payer) {
            assert_eq!(sum(&invoice.shares), decimal(&invoice.tax), "{invoice:?}");
            gross += decimal(&invoice.gross);
        }
        for credit in price
            .credits
            .iter()
            .filter(|credit| credit.payer == total.payer)
        {
            assert_eq!(sum(&credit.shares), decimal(&credit.tax), "{credit:?}");
            gross -= decimal(&credit.gross);
        }
        assert_eq!(gross, decimal(&total.gross));
        let by_coin = total.by_coin.as_ref().map_or(Decimal::ZERO, decimal);
        let left = decimal(&total.gross) + by_coin - decimal(&total.paid);
        assert_eq!(left, decimal(&total.balance));
    }
}

#[test]
fn taxes_of_two_sorts_are_told_apart_and_what_is_taken_back_takes_them_with_it() {
    let mut bench = Bench::new();
    bench.shop(taxes(json!([
        tax("GST", "5", json!({})),
        tax(
            "PST",
            "7",
            json!({ "kinds": ["part", "supplies"], "compound": true })
        ),
    ])));
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    bench
        .price(
            &order,
            &[
                entry("labour", "fit it", "99.99"),
                entry("part", "belt", "33.33"),
            ],
        )
        .unwrap();
    let view = bench.view(&order);
    agrees(&view);
    let shares: Vec<(&str, &str, &str)> = view.totals[0]
        .shares
        .iter()
        .map(|share| (share.name.as_str(), share.base.exact(), share.tax.exact()))
        .collect();
    // The second is taken on the first as well: 33.33 and 1.67.
    assert_eq!(
        shares,
        [("GST", "133.32", "6.67"), ("PST", "35.00", "2.45")]
    );
    bench.tell(&order, consent("200"));
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    let view = bench.view(&order);
    let invoice = view.price.as_ref().unwrap().invoices[0].clone();
    assert_eq!(invoice.left, ["99.99", "33.33"]);
    let back = |line: u32, amount: &str| {
        json!({ "credit": { "invoice": invoice.command, "payer": "customer", "words": Device::words("wrong belt"),
            "lines": [{ "line": line, "amount": amount, "keeps_tax": false }] } })
    };
    bench.ask(&order, back(1, "33.33")).unwrap();
    let view = bench.view(&order);
    agrees(&view);
    let price = view.price.as_ref().unwrap();
    assert_eq!(price.invoices[0].entries, invoice.entries);
    assert_eq!(price.invoices[0].gross, invoice.gross);
    assert_eq!(price.invoices[0].left, ["99.99", "0.00"]);
    assert_eq!(price.credits[0].number, "CR-1");
    assert_eq!(price.credits[0].words, "wrong belt");
    assert_eq!(price.credits[0].shares[1].tax, "2.45");
    let trouble = bench.ask(&order, back(1, "0.01")).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Refused);
    assert_eq!(
        trouble.what,
        "Line 2: 0.01 goes back, and 0.00 is left of it"
    );
}

/// Two programs write credit notes, some are refused: their numbers have no gap.
#[test]
fn credit_notes_are_numbered_on_without_a_gap_in_a_series_of_their_own() {
    let mut bench = Bench::new();
    let other = bench.another_program();
    for nth in 0..4 {
        let order = bench.open("Ines Duarte", "Small Van", &format!("A {nth}"));
        bench.price(&order, &[entry("part", "belt", "50")]).unwrap();
        bench.tell(&order, consent("100"));
        bench.ask(&order, json!({ "charge": {} })).unwrap();
        let invoice = bench.view(&order).price.unwrap().invoices[0]
            .command
            .clone();
        let back = |amount: &str| {
            json!({ "credit": { "invoice": invoice, "payer": "customer", "words": Device::words("too long"),
                "lines": [{ "line": 0, "amount": amount, "keeps_tax": false }] } })
        };
        bench.ask(&order, back("51")).unwrap_err();
        for amount in ["20", "30"] {
            if nth % 2 == 0 {
                let sent = bench.make(&format!("order:{order}"), "request", back(amount));
                bench::tell_to(&other, sent).unwrap();
            } else {
                bench.ask(&order, back(amount)).unwrap();
            }
        }
    }
    let rows = bench.store.log(bench::LOG, 0, 10_000).unwrap();
    let numbers: Vec<u64> = rows
        .iter()
        .filter(|row| row.kind == "credit-number-given")
        .map(|row| {
            serde_json::from_slice::<Value>(&row.body).unwrap()["number"]
                .as_u64()
                .unwrap()
        })
        .collect();
    assert_eq!(numbers, (1..=8).collect::<Vec<_>>());
    let given =
        json!({ "credit-number-given": { "number": 9, "order": "a", "payer": "customer" } });
    let trouble = bench.send("shop", "shop_fact", given).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Unreadable);
}

#[test]
fn cash_to_the_coin_pays_all_of_it_and_the_difference_is_told() {
    let mut bench = Bench::new();
    bench.shop(rules(json!({ "smallest": "0.05", "round": "half-up" })));
    bench.shop(taxes(json!([tax("GST", "5", json!({}))])));
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    bench
        .price(
            &order,
            &[
                entry("part", "coffee", "1.83"),
                entry("part", "sandwich", "2.86"),
            ],
        )
        .unwrap();
    bench.tell(&order, consent("10"));
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    let view = bench.view(&order);
    // 0.09 and 0.14: the shop rounds line by line.
    assert_eq!(view.totals[0].gross, "4.92");
    assert_eq!(
        view.totals[0].in_cash.as_ref().map(shop::Amount::exact),
        Some("4.90")
    );
    let paid = |amount: &str, by: &str| json!({ "paid": { "payer": "customer", "amount": amount, "by": by, "deposit": false } });
    bench.tell(&order, paid("4.90", "cash"));
    let view = bench.view(&order);
    agrees(&view);
    assert_eq!(view.totals[0].balance, "0.00");
    assert_eq!(
        view.totals[0].by_coin.as_ref().map(shop::Amount::exact),
        Some("-0.02")
    );
    let unpaid = |view: &OrderView| {
        let gate = view.gates.last().unwrap();
        gate.papers.iter().any(|reason| reason.key == "unpaid")
    };
    assert!(!unpaid(&view));
    // By card it would be two cents short.
    bench.tell(&order, paid("-4.90", "cash"));
    bench.tell(&order, paid("4.90", "card"));
    assert!(unpaid(&bench.view(&order)));
    // What is put on account counts as paid, and is told until it comes in.
    bench.tell(&order, paid("0.02", "on-account"));
    assert_eq!(
        bench.view(&order).totals[0]
            .on_account
            .as_ref()
            .map(shop::Amount::exact),
        Some("0.02")
    );
    bench.tell(&order, paid("-0.02", "on-account"));
    bench.tell(&order, paid("0.02", "transfer"));
    let view = bench.view(&order);
    assert_eq!(
        (
            view.totals[0].on_account.as_ref().map(shop::Amount::exact),
            view.totals[0].balance.exact()
        ),
        (None, "0.00")
    );
    agrees(&view);
}

#[test]
fn an_exempt_customer_is_asked_no_tax_and_the_number_stands_on_the_invoice() {
    let mut bench = Bench::new();
    bench.shop(taxes(json!([tax(
        "VAT",
        "20",
        json!({ "included": true })
    )])));
    let order = "a";
    bench.open_again(order, "v", "c");
    bench.price(order, &[entry("part", "belt", "120")]).unwrap();
    let view = bench.view(order);
    assert_eq!(
        (view.totals[0].net.exact(), view.totals[0].gross.exact()),
        ("100.00", "120.00")
    );
    let told =
        json!({ "exempted": { "number": Device::words("EX 4711"), "taxes": [], "after": [] } });
    bench.send("customer:c", "customer_fact", told).unwrap();
    bench.price(order, &[entry("part", "belt", "120")]).unwrap();
    bench.tell(order, consent("200"));
    bench.ask(order, json!({ "charge": {} })).unwrap();
    let view = bench.view(order);
    agrees(&view);
    let invoice = &view.price.as_ref().unwrap().invoices[0];
    assert_eq!(
        (invoice.tax.exact(), invoice.gross.exact()),
        ("0.00", "100.00")
    );
    assert!(invoice.shares[0].exempt);
    assert_eq!(invoice.exempt_by.as_deref(), Some("EX 4711"));
}

#[test]
fn rules_that_make_no_sense_are_refused_in_words() {
    let mut bench = Bench::new();
    let mut bad = |pointer: &str, value: Value| {
        let mut told = rules(Value::Null);
        *told
            .pointer_mut(&format!("/money-told/rules/{pointer}"))
            .unwrap() = value;
        let trouble = bench.send("shop", "shop_fact", told).unwrap_err();
        assert_eq!(trouble.kind, TroubleKind::Unreadable);
        assert!(!trouble.mend.is_empty(), "{trouble:?}");
        format!("{}: {}", trouble.place, trouble.what)
    };
    assert_eq!(
        bad("rates/0/hour", json!("-5")),
        "rate 1: -5 an hour is below nought"
    );
    assert_eq!(
        bad("parts/bands/1/uplift", json!({ "margin": "100" })),
        "parts, band 2, margin: 100 % of the price leaves nothing for the cost"
    );
    assert_eq!(
        bad("supplies/percent", json!("500")),
        "shop supplies: 500 % is too much"
    );
    assert_eq!(
        bad("coin", json!({ "smallest": "0", "round": "half-up" })),
        "smallest coin: 0 is no coin"
    );
    assert_eq!(
        bad("disposal/0/each", json!("-1")),
        "disposal of waste oil: -1 is below nought"
    );
    let job = json!({ "job-kept": { "id": "oil", "after": [], "job": { "name": Device::words("Oil service"), "price": "20",
        "in_one": false, "parts": [{ "name": Device::words("Oil"), "quantity": "4.5", "each": "8" }] } } });
    let trouble = bench.send("shop", "shop_fact", job).unwrap_err();
    assert!(
        trouble.what.starts_with("its parts come to 36.00"),
        "{trouble:?}"
    );
}

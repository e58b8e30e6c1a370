//! Bad input to the forms: what a person is told, with the field it stands in.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use record::Stream;
use record::form::Form;
use record::v1::facts::FactForm;
use serde_json::{Value, json};

/// What is said of a fact that cannot be read.
fn said(fact: Value) -> String {
    match serde_json::from_value::<FactForm>(fact.clone()) {
        Err(error) => error.to_string(),
        Ok(form) => form
            .read()
            .map(|read| panic!("{fact} was read as {read:?}"))
            .unwrap_err()
            .to_string(),
    }
}

fn drained(item: Value, amount: Value) -> Value {
    json!({ "drained": { "item": item, "amount": amount, "fate": "kept", "temperature": null } })
}

#[test]
fn each_bad_value_is_told_by_its_field_with_a_way_to_mend_it() {
    let moves = |at: Value| {
        json!({ "found": { "moves": [
        { "item": "a", "at": [1], "after": [], "left": { "state": "out", "piece": "original" }, "container": null },
        { "item": at, "at": [1], "after": [], "left": { "state": "out", "piece": "original" }, "container": null },
    ] } })
    };
    let paid = |amount: &str| json!({ "paid": { "payer": "customer", "amount": amount, "by": "cash", "deposit": false } });
    let rows: &[(Value, &[&str])] = &[
        (
            drained(json!(""), json!("1 L")),
            &["item", "\"\" is no name", "1 to 63 letters"],
        ),
        (
            drained(json!("a b"), json!("1 L")),
            &["item", "\"a b\" is no name"],
        ),
        (drained(json!("ä"), json!("1 L")), &["item", "is no name"]),
        (
            drained(json!("a".repeat(64)), json!("1 L")),
            &["item", "is no name"],
        ),
        (drained(json!("oil"), json!("")), &["amount", "empty"]),
        (drained(json!("oil"), json!("   ")), &["amount", "empty"]),
        (
            drained(json!("oil"), json!("1".repeat(41))),
            &["amount", "41", "40"],
        ),
        (
            drained(json!("oil"), json!("1 L\n2 L")),
            &["amount", "'\\n'"],
        ),
        (drained(json!("oil"), json!("1 L<b>")), &["amount", "'<'"]),
        (drained(json!("oil"), json!(4)), &["invalid type"]),
        (moves(json!("\u{7f}")), &["moves[1].item", "is no name"]),
        (
            paid("12,50"),
            &["amount", "\"12,50\" is no decimal number", "\"904.40\""],
        ),
        (paid("1e3"), &["amount", "is no decimal number"]),
        (paid("NaN"), &["amount", "is no decimal number"]),
        (paid(""), &["amount", "is no decimal number"]),
        (
            paid("123456789012345678901234567890"),
            &["amount", "is no decimal number"],
        ),
        (
            json!({ "promised": { "at": "tomorrow" } }),
            &["at", "is no time", "2026-11-25T08:30:00Z"],
        ),
        (
            json!({ "promised": { "at": "2026-02-30T08:30:00Z" } }),
            &["at", "is no time"],
        ),
        (
            json!({ "part-stepped": { "part": "p", "quantity": "1", "step": "ordered", "due": "30.11.2026", "words": null } }),
            &["due", "is no day", "2026-11-25"],
        ),
        (
            json!({ "line-opened": { "line": "l", "complaint": "It squeals", "payer": "customer" } }),
            &["complaint", "\"text\"", "\"salt\""],
        ),
        (
            json!({ "stood": { "place": { "stall": "a b" } } }),
            &["place.stall", "is no name"],
        ),
        (
            json!({ "walked": { "zone": "inside" } }),
            &["unknown variant", "wheel-well"],
        ),
        (
            json!({ "walked": { "zone": "above", "by": "me" } }),
            &["unknown field", "by"],
        ),
        (json!({ "walked": {} }), &["missing field", "zone"]),
        (
            json!({ "wlaked": { "zone": "above" } }),
            &["unknown variant", "walked"],
        ),
        (json!({}), &["expected"]),
        (json!("walked"), &["invalid type"]),
    ];
    for (fact, parts) in rows {
        let said = said(fact.clone());
        for part in *parts {
            assert!(
                said.contains(part),
                "{fact}\n  says {said}\n  without {part}"
            );
        }
    }
}

#[test]
fn lists_and_texts_have_an_end() {
    let at: Vec<u16> = (0..2_001).collect();
    let many = json!({ "declined": { "items": [], "at": at, "words": "0".repeat(64), "signature": null } });
    assert!(said(many).contains("at: 2001 entries; at most 2000 fit"));
    let long = json!({ "calculated": { "id": "n", "item": null, "snag": null, "calculator": "leak",
        "version": 1, "inputs": "", "outputs": "", "working": "x".repeat(64 * 1024 + 1) } });
    assert!(said(long).contains("working: 65537 bytes; at most 65536 fit"));
}

#[test]
fn blanks_around_a_value_are_left_out_and_nothing_else_is() {
    let form: FactForm = serde_json::from_value(drained(json!("oil"), json!("  9.2 L "))).unwrap();
    let written = serde_json::to_value(FactForm::of(&form.read().unwrap())).unwrap();
    assert_eq!(written["drained"]["amount"], "9.2 L");
}

#[test]
fn a_decimal_keeps_its_digits_and_a_time_its_moment() {
    let paid = json!({ "paid": { "payer": "customer", "amount": "100.00", "by": "cash", "deposit": true } });
    let form: FactForm = serde_json::from_value(paid.clone()).unwrap();
    assert_eq!(
        serde_json::to_value(FactForm::of(&form.read().unwrap())).unwrap(),
        paid
    );
    let form: FactForm =
        serde_json::from_value(json!({ "promised": { "at": "2026-11-25T10:30:00+02:00" } }))
            .unwrap();
    let written = serde_json::to_value(FactForm::of(&form.read().unwrap())).unwrap();
    assert_eq!(written["promised"]["at"], "2026-11-25T08:30:00Z");
}

#[test]
fn streams_have_five_families() {
    for name in [
        "order:a-1",
        "vehicle:v.2",
        "customer:c:3",
        "map:m-4",
        "shop",
    ] {
        assert_eq!(Stream::read(name).unwrap().to_string(), name);
    }
    for name in [
        "",
        "order",
        "order:",
        "Order:a",
        "shop:",
        "shop:a",
        "orders:a",
        "order:a b",
        "person:a",
    ] {
        let refused = Stream::read(name);
        assert!(refused.is_err(), "{name:?} was read as {refused:?}");
    }
    let said = Stream::read("garage:1").unwrap_err().to_string();
    assert!(
        said.contains("order:…, vehicle:…, customer:…, map:… or shop"),
        "{said}"
    );
}

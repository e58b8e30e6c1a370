//! Whatever is told about an order, it can be shown: no fact, vehicle, customer or set of
//! settings makes a view panic or the record unreadable.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::seen::{order, rows};
use bench::tell_to;
#[path = "../../record/tests/samples/mod.rs"]
mod samples;

use bench::{Bench, LOG};
use proptest::prelude::*;
use serde_json::{Value, json};
use shop::TroubleKind;

/// Where it goes, the field it stands in, the content.
fn told() -> impl Strategy<Value = (&'static str, &'static str, Value)> {
    let pick = |stream, part, all: Vec<(&'static str, Value)>| {
        let all: Vec<_> = all
            .into_iter()
            .filter(|(kind, _)| !["number-given", "erased"].contains(kind))
            .collect();
        prop::sample::select(all)
            .prop_flat_map(|(kind, template)| samples::tagged(kind, &template))
            .prop_map(move |mut content| {
                samples::sent(&mut content);
                (stream, part, content)
            })
    };
    prop_oneof![
        12 => pick("order:a", "fact", samples::templates::facts()),
        2 => pick("order:a", "request", samples::templates::requests()),
        2 => pick("vehicle:a", "vehicle_fact", samples::templates::vehicle_facts()),
        1 => pick("customer:a", "customer_fact", samples::templates::customer_facts()),
        1 => pick("shop", "shop_fact", samples::templates::shop_facts()),
    ]
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 40, ..ProptestConfig::default() })]

    #[test]
    fn an_order_can_be_shown_whatever_is_told_of_it(all in prop::collection::vec(told(), 1..30)) {
        let mut bench = Bench::new();
        bench.open_again("a", "a", "a");
        for (stream, part, content) in all {
            if let Err(trouble) = bench.send(stream, part, content.clone()) {
                let expected = match part {
                    "request" => TroubleKind::Refused,
                    "shop_fact" => TroubleKind::Unreadable,
                    // A move of no piece is the one thing no fact may say.
                    _ if trouble.what.contains("names no position") => TroubleKind::Unreadable,
                    _ => panic!("{content}: {trouble}"),
                };
                prop_assert_eq!(trouble.kind, expected, "{}: {}", content, trouble);
            }
        }
        let replayed = bench.another_program();
        prop_assert_eq!(order(&replayed, 1001).unwrap(), bench.view("a"));
        prop_assert_eq!(rows(&replayed, None, None).unwrap().len(), 1);
        prop_assert!(shop::verify(bench.store.as_ref(), LOG, None).is_ok());
    }
}

/// The largest and smallest of everything that is added up, multiplied or reckoned with.
#[test]
fn the_ends_of_every_scale_can_be_shown() {
    let most = "79228162514264337593543950335";
    for (amount, at) in [
        (most, "9999-12-30T22:00:00.999999999Z"),
        ("-79228162514264337593543950335", "-009999-01-02T01:59:59Z"),
        ("0.0000000000000000000000000001", "0000-01-01T00:00:00Z"),
    ] {
        let mut bench = Bench::new();
        bench.open_again("a", "a", "a");
        let part = json!({ "part-needed": { "part": "p", "line": null, "item": null, "label": shop::Device::words("p"),
            "number": null, "quantity": amount, "cost": amount, "price": amount, "core": amount, "has_old": true } });
        let stepped = json!({ "part-stepped": { "part": "p", "quantity": amount, "step": "fitted", "due": null, "words": null } });
        let paid = json!({ "paid": { "payer": "customer", "amount": amount, "by": "cash", "deposit": false } });
        let promised = json!({ "promised": { "at": at } });
        let timed = json!({ "timed": { "stage": "s", "clock": "opened", "book_minutes": amount, "words": null } });
        for fact in [
            part,
            stepped.clone(),
            stepped,
            paid.clone(),
            paid,
            promised,
            timed,
            bench::consent(amount),
        ] {
            let mut sent = bench.make("order:a", "fact", fact);
            sent["happened_at"] = json!(at);
            tell_to(&bench.service, sent).unwrap();
        }
        bench.declare("a", "oil", ("fluid", "oil", "below"), 1);
        for drained in [format!("{most} L"), "1e400 L".to_owned(), "-5 L".to_owned()] {
            bench.tell("a", json!({ "drained": { "item": "oil", "amount": drained, "fate": "kept", "temperature": null } }));
        }
        bench.move_to("a", "oil", "at-level");
        for payer in ["customer", "warranty"] {
            for each in ["999999999", "-999999999"] {
                bench.ask("a", json!({ "price": { "entries": [{ "line": null, "charge": "labour", "label": null,
                    "quantity": "1", "each": each, "payer": payer }] } })).unwrap();
            }
        }
        let too_much = bench.ask(
            "a",
            json!({ "price": { "entries": [{ "line": null, "charge": "labour", "label": null,
            "quantity": amount, "each": amount, "payer": "customer" }] } }),
        );
        assert_shown(&bench);
        drop(too_much);
    }
}

fn assert_shown(bench: &Bench) {
    let view = bench.view("a");
    assert!(!view.story.is_empty());
    assert_eq!(view.gates.len(), 6);
    assert_eq!(rows(&bench.service, None, None).unwrap().len(), 1);
}

/// Settings told twice, and settings that make every sum odd.
#[test]
fn odd_taxes_and_rates_can_be_shown() {
    let mut bench = Bench::new();
    for percent in ["0", "-20", "1000000", "79228162514264337593543950335"] {
        bench.shop(json!({ "set": { "settings": {
            "name": shop::Device::words("x"), "rate": percent, "currency": "XXX", "minor_digits": 4,
            "taxes": [{ "name": "VAT", "percent": percent, "on": { "labour": true, "parts": true, "other": true } }],
            "units": "us", "zone": "Pacific/Kiritimati" } } }));
        let id = format!("order{percent}");
        bench.open_again(&id, "v", "c");
        bench
            .ask(
                &id,
                json!({ "price": { "entries": [{ "line": null, "charge": "labour", "label": null,
            "quantity": "3.6666666667", "each": "120", "payer": "customer" }] } }),
            )
            .unwrap();
        let total = &bench.view(&id).totals[0];
        assert_eq!(total.net, "440.0000");
    }
}

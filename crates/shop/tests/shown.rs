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
                    // Whoever had not seen the price that stands is shown both.
                    "request" if trouble.both.is_some() => TroubleKind::Conflict,
                    "request" => TroubleKind::Refused,
                    "shop_fact" => TroubleKind::Unreadable,
                    // A move of no piece is the one thing no fact may say.
                    _ if trouble.what.contains("names no position") => TroubleKind::Unreadable,
                    // Nor that nothing was declined.
                    _ if trouble.what.contains("nothing is named that is declined") => {
                        TroubleKind::Unreadable
                    }
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
        for payer in ["warranty", "customer"] {
            for each in ["999999999", "-999999999"] {
                let entry = json!({ "line": null, "charge": "fee", "label": null, "quantity": "1",
                    "each": each, "payer": payer });
                bench.price("a", &[entry]).unwrap();
            }
        }
        let entry = json!({ "line": null, "charge": "fee", "label": null, "quantity": amount,
            "each": amount, "payer": "customer" });
        let too_much = bench.price("a", &[entry]);
        let least = amount.starts_with("0.0");
        assert_eq!(too_much.is_ok(), least, "{too_much:?}");
        assert_shown(&bench);
        if amount == most {
            let paid = &bench.view("a").totals[0].paid;
            assert!(
                paid.exact().contains("too large"),
                "two of the largest are not one: {paid}"
            );
        }
    }
}

fn assert_shown(bench: &Bench) {
    let view = bench.view("a");
    assert!(!view.story.is_empty());
    assert_eq!(view.gates.len(), 6);
    assert_eq!(rows(&bench.service, None, None).unwrap().len(), 1);
}

/// Rates and taxes below nought would pay the customer; what is above all measure is a slip.
#[test]
fn odd_taxes_and_rates_are_not_taken() {
    let mut bench = Bench::new();
    let settings = |rate: &str, percent: &str| {
        json!({ "set": { "settings": {
            "name": shop::Device::words("x"), "rate": rate, "currency": "XXX", "minor_digits": 4,
            "taxes": [{ "name": "VAT", "percent": percent, "on": { "labour": true, "parts": true, "other": true } }],
            "units": "us", "zone": "Pacific/Kiritimati" } } })
    };
    for (rate, percent) in [
        ("-1", "20"),
        ("100", "-20"),
        ("100", "1000000"),
        ("79228162514264337593543950335", "20"),
    ] {
        let refused = bench.send("shop", "shop_fact", settings(rate, percent));
        let kind = refused.map_err(|trouble| trouble.kind);
        assert_eq!(kind, Err(TroubleKind::Unreadable), "{rate} {percent}");
    }
    bench.shop(settings("0", "0"));
    bench.open_again("a", "v", "c");
    let hours = json!({ "line": null, "charge": "labour", "label": null,
        "quantity": "3.6666666667", "each": "120", "payer": "customer" });
    bench.price("a", &[hours]).unwrap();
    assert_eq!(bench.view("a").totals[0].net, "440.0000");
}

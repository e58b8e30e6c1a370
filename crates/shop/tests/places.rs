//! The rules of places: every file reads, the sums they let pass are those of the text
//! they name, and a shop that chose one is held to it.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use rust_decimal::Decimal;
use serde_json::json;
use shop::TroubleKind;
use shop::places::{ToNote, place, places};
use std::collections::BTreeSet;

#[test]
fn limit() {
    for row in checks::published("consent").rows("limit") {
        let rule = place(row.text("place"), 1).unwrap().leeway();
        let estimate: Decimal = row.text("estimate").parse().unwrap();
        let found = rule.limit(estimate, 2).to_string();
        assert_eq!(found, row.text("expected"), "{row}");
    }
}

#[test]
fn every_place_names_its_day_and_its_sources() {
    let mut seen = BTreeSet::new();
    for place in places() {
        let version = (place.place.as_str(), place.version);
        assert!(seen.insert(version), "{version:?} stands there twice");
        assert!(place.as_of.parse::<jiff::civil::Date>().is_ok());
        assert!(!place.sources.is_empty());
        for source in &place.sources {
            assert!(["published", "memory"].contains(&source.grade.as_str()));
            assert!(!source.rule.is_empty());
            let says = |language| phrases::speaking(language, || source.says().to_owned());
            let [english, german] = phrases::Language::ALL.map(says);
            assert!(!english.is_empty() && !german.is_empty() && english != german);
            let note = |language| phrases::speaking(language, || source.note().to_owned());
            let [english, german] = phrases::Language::ALL.map(note);
            assert_eq!(english.is_empty(), german.is_empty(), "{english} {german}");
        }
    }
    let california = place("us-ca", 1).unwrap();
    assert_eq!(california.keep_years(), Some(3), "16 CCR 3358");
    assert!(california.spoken().contains(&ToNote::NumberCalled));
}

fn choose(bench: &mut Bench, place: &str) {
    let after: Vec<String> = {
        let world = bench.service.world().unwrap();
        let chosen = world.shop.places_chosen();
        chosen.iter().map(|id| id.as_str().to_owned()).collect()
    };
    bench.shop(json!({ "place-chosen": { "place": place, "version": 1, "after": after } }));
}

/// A shop that reckons in dollars, with an order of 430 agreed to up to 400.
fn over_by_thirty() -> (Bench, String) {
    let mut bench = Bench::new();
    bench.clock.later(1);
    bench.shop(json!({ "set": { "settings": { "name": shop::Device::words("Corner Works"), "rate": "100",
        "currency": "USD", "minor_digits": 2, "taxes": [], "units": "us", "zone": "America/New_York" } } }));
    let order = bench.open("Ada Vane", "Small Van", "A 1");
    let stream = format!("order:{order}");
    let entry = json!({ "line": null, "charge": "labour", "label": shop::Device::words("work"), "quantity": "4.3", "each": "100", "payer": "customer" });
    bench
        .send(
            &stream,
            "request",
            json!({ "price": { "entries": [entry] } }),
        )
        .unwrap();
    bench
        .send(&stream, "fact", json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true,
            "amount": "400", "tax_included": false, "way": "phone", "person": null, "said": null, "number_called": null,
            "signature": null, "after": [] } }))
        .unwrap();
    (bench, stream)
}

#[test]
fn a_charge_is_held_to_the_rules_of_the_place_and_to_none_by_default() {
    for (chosen, passes) in [(None, false), (Some("us-ca"), false), (Some("us-fl"), true)] {
        let (mut bench, stream) = over_by_thirty();
        if let Some(place) = chosen {
            choose(&mut bench, place);
        }
        let charged = bench.send(&stream, "request", json!({ "charge": {} }));
        assert_eq!(charged.is_ok(), passes, "{chosen:?}: {charged:?}");
    }
}

#[test]
fn what_a_place_lets_pass_is_said_with_the_place_and_its_limit() {
    let (mut bench, stream) = over_by_thirty();
    let name = stream.trim_start_matches("order:").to_owned();
    let ask = |bench: &Bench| bench.view(&name).asks.remove(0);
    assert!(ask(&bench).must);
    assert_eq!(ask(&bench).limit, None);
    choose(&mut bench, "us-fl");
    let let_pass = ask(&bench);
    assert!(!let_pass.must);
    assert_eq!(
        let_pass.limit.as_ref().map(shop::Amount::exact),
        Some("440.00")
    );
    assert_eq!(
        let_pass.sentence,
        "Nothing has to be asked: it is 30.00 over the limit, and Florida, USA lets up to 440.00 pass. Tell Ada Vane all the same."
    );
}

#[test]
fn the_last_choice_holds_and_an_unknown_place_is_not_taken() {
    let (mut bench, _) = over_by_thirty();
    choose(&mut bench, "us-fl");
    choose(&mut bench, "us-ca");
    let chosen = |bench: &Bench| {
        let world = bench.service.world().unwrap();
        shop::places::place_of(&world.shop).map(|place| place.place.clone())
    };
    assert_eq!(chosen(&bench).as_deref(), Some("us-ca"));
    let unknown = json!({ "place-chosen": { "place": "nowhere", "version": 1, "after": [] } });
    let trouble = bench.send("shop", "shop_fact", unknown).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Unreadable);
    assert_eq!(chosen(&bench).as_deref(), Some("us-ca"));
}

#[test]
fn sums_of_another_currency_let_nothing_pass() {
    let mut bench = Bench::new();
    choose(&mut bench, "us-fl");
    let world = bench.service.world().unwrap();
    assert_eq!(
        bench.service.rules(&world).leeway,
        repair::price::Leeway::default(),
        "the bench reckons in euros"
    );
}

//! What is asked, of whom, and what they had before them when they said yes.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::seen;

use bench::Bench;
use record::v1::codes::{ConsentStepForm, PayerForm};
use serde_json::{Value, json};
use shop::Device;
use shop::view::{AskView, CallKind};

fn entry(label: &str, each: &str, payer: &str) -> Value {
    json!({ "line": null, "charge": "part", "label": Device::words(label), "quantity": "1",
        "each": each, "payer": payer })
}

fn price(bench: &mut Bench, entries: &[Value]) {
    bench.price("a", entries).unwrap();
}

/// A yes up to a sum before tax, by somebody who has seen what the page shows.
fn yes(bench: &mut Bench, payer: &str, amount: &str) {
    let after = ask_of(bench, payer).after;
    bench.tell("a", yes_after(payer, amount, &after));
}

fn yes_after(payer: &str, amount: &str, after: &[String]) -> Value {
    json!({ "consented": { "step": "repair", "payer": payer, "lines": [], "agreed": true, "amount": amount,
        "tax_included": false, "way": "phone", "person": null, "said": null, "number_called": null,
        "signature": null, "after": after } })
}

fn ask_of(bench: &Bench, payer: &str) -> AskView {
    let payer: PayerForm = serde_json::from_value(json!(payer)).unwrap();
    let asks = bench.view("a").asks;
    asks.into_iter().find(|ask| ask.payer == payer).unwrap()
}

fn added(bench: &Bench) -> Vec<String> {
    let added = ask_of(bench, "customer").added;
    added.into_iter().map(|entry| entry.label).collect()
}

fn shop_with_an_order() -> Bench {
    let mut bench = Bench::new();
    bench
        .send(
            "customer:c",
            "customer_fact",
            json!({ "declared": { "texts": { "name": Device::words("Ines Duarte") } } }),
        )
        .unwrap();
    bench.open_again("a", "v", "c");
    bench
}

#[test]
fn the_ask_is_one_sentence_at_every_point_of_the_way() {
    let mut bench = shop_with_an_order();
    let says = |bench: &Bench| {
        let ask = ask_of(bench, "customer");
        (ask.sentence, ask.must, ask.step)
    };
    assert_eq!(
        says(&bench),
        (
            "Ask Ines Duarte what may be spent on finding the fault: nothing is agreed yet."
                .to_owned(),
            false,
            ConsentStepForm::Diagnose
        )
    );
    price(&mut bench, &[entry("gasket", "780.40", "customer")]);
    assert_eq!(
        says(&bench),
        (
            "Ask Ines Duarte for 780.40 before tax: nothing is agreed yet.".to_owned(),
            true,
            ConsentStepForm::Repair
        )
    );
    yes(&mut bench, "customer", "850");
    assert_eq!(
        says(&bench),
        (
            "Nothing to ask: 69.60 before tax is left under the limit of 850.00.".to_owned(),
            false,
            ConsentStepForm::Add
        )
    );
    price(&mut bench, &[entry("gasket", "904.40", "customer")]);
    assert_eq!(
        says(&bench),
        (
            "Ask Ines Duarte for 54.40 more before tax: the limit is 850.00, this makes 904.40."
                .to_owned(),
            true,
            ConsentStepForm::Add
        )
    );
}

#[test]
fn each_payer_has_a_ceiling_of_their_own() {
    let mut bench = shop_with_an_order();
    let entries = [
        entry("gasket", "100", "customer"),
        entry("recall", "300", "warranty"),
        entry("a wash", "20", "goodwill"),
    ];
    price(&mut bench, &entries);
    yes(&mut bench, "customer", "400");
    assert!(!ask_of(&bench, "customer").must);
    let warranty = ask_of(&bench, "warranty");
    assert!(warranty.must, "the customer's yes is not the warranty's");
    assert_eq!(
        warranty.sentence,
        "Ask the warranty for 300.00 before tax: nothing is agreed yet."
    );
    assert!(bench.ask("a", json!({ "charge": {} })).is_err());
    yes(&mut bench, "warranty", "300");
    bench.ask("a", json!({ "charge": {} })).unwrap();
    assert_eq!(
        bench.view("a").asks.len(),
        2,
        "nobody is asked about the shop's own goodwill"
    );
}

#[test]
fn what_counts_as_added_does_not_move_with_anybodys_clock() {
    for minutes in [-100_000, 0, 100_000] {
        let mut bench = shop_with_an_order();
        price(&mut bench, &[entry("gasket", "100", "customer")]);
        // The desk's clock is wrong when the customer says yes.
        bench.clock.later(minutes);
        yes(&mut bench, "customer", "150");
        bench.clock.later(-minutes);
        let both = [
            entry("gasket", "100", "customer"),
            entry("insert", "14", "customer"),
        ];
        price(&mut bench, &both);
        let added = added(&bench);
        assert!(added.contains(&"insert".to_owned()), "{minutes}: {added:?}");
    }
}

#[test]
fn a_yes_that_arrives_late_agreed_to_the_price_it_had_seen() {
    let mut bench = shop_with_an_order();
    let gasket = entry("gasket", "100", "customer");
    price(&mut bench, std::slice::from_ref(&gasket));
    let seen = ask_of(&bench, "customer").after;
    // Meanwhile another desk adds to the price; only then does the yes come in.
    let insert = entry("insert", "14", "customer");
    price(&mut bench, &[gasket, insert]);
    bench.tell("a", yes_after("customer", "150", &seen));
    let late = added(&bench);
    assert!(late.contains(&"insert".to_owned()), "{late:?}");
    // One that named no price is taken at its place in the log.
    let consents: Vec<String> = bench
        .view("a")
        .consents
        .iter()
        .map(|one| one.command.clone())
        .collect();
    bench.tell("a", yes_after("customer", "150", &consents));
    assert_eq!(added(&bench), Vec::<String>::new());
}

/// What the page of calls says, each with its kind.
fn calls(bench: &Bench) -> Vec<(CallKind, String)> {
    let calls = seen::calls(&bench.service).unwrap();
    calls
        .into_iter()
        .map(|call| (call.kind, call.what))
        .collect()
}

fn ordered(bench: &mut Bench, due: &str) {
    bench.tell("a", json!({ "part-needed": { "part": "p", "line": null, "item": null, "label": Device::words("water pump"),
        "number": null, "quantity": "1", "cost": null, "price": null, "core": "20", "has_old": true } }));
    bench.tell(
        "a",
        json!({ "part-stepped": { "part": "p", "quantity": "1", "step": "ordered", "due": due,
        "words": Device::words("Reed's") } }),
    );
}

fn step(bench: &mut Bench, step: &str) {
    bench.tell("a", json!({ "part-stepped": { "part": "p", "quantity": "1", "step": step, "due": null, "words": null } }));
}

#[test]
fn a_part_is_waited_for_then_late_then_its_core_goes_back() {
    let mut bench = shop_with_an_order();
    ordered(&mut bench, "2026-11-26");
    let waits = |kind, what: &str| vec![(kind, what.to_owned())];
    assert_eq!(
        calls(&bench),
        waits(
            CallKind::Waits,
            "On its way: 1 × water pump from Reed's, due Thu 26 Nov"
        )
    );
    bench.clock.later(2 * 24 * 60);
    assert_eq!(
        calls(&bench),
        waits(
            CallKind::Late,
            "Late: 1 × water pump from Reed's, due Thu 26 Nov"
        )
    );
    step(&mut bench, "received");
    assert_eq!(calls(&bench), []);
    step(&mut bench, "fitted");
    assert_eq!(
        calls(&bench),
        waits(
            CallKind::Core,
            "Send the old one back as a core: water pump"
        )
    );
    bench.tell(
        "a",
        json!({ "old-part": { "part": "p", "item": null, "fate": "core" } }),
    );
    assert_eq!(calls(&bench), []);
}

#[test]
fn a_promise_slips_when_its_hour_is_past_or_a_part_comes_after_it() {
    let mut bench = shop_with_an_order();
    bench.tell("a", json!({ "promised": { "at": "2026-11-25T16:00:00Z" } }));
    assert_eq!(calls(&bench), []);
    ordered(&mut bench, "2026-11-27");
    let (kind, what) = calls(&bench).remove(0);
    assert_eq!(kind, CallKind::Promise);
    assert_eq!(
        what,
        "Ring Ines Duarte: promised for 16:00, but something comes only on Fri 27 Nov"
    );
    step(&mut bench, "received");
    assert_eq!(calls(&bench), []);
    bench.clock.later(9 * 60);
    let (_, what) = calls(&bench).remove(0);
    assert_eq!(
        what,
        "Ring Ines Duarte: promised for 16:00, and it is not ready (0 open)"
    );
}

#[test]
fn an_ask_is_on_the_page_of_calls_with_the_number_to_ring() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    bench
        .ask(
            &order,
            json!({ "price": { "entries": [entry("gasket", "780.40", "customer")] } }),
        )
        .unwrap();
    let call = seen::calls(&bench.service).unwrap().remove(0);
    assert_eq!(
        (call.kind, call.phone.as_str(), call.page.as_str()),
        (CallKind::Ask, "0600 555 001", "ask")
    );
    assert!(call.kind.rings());
}

/// The calls of an order that waits for a yes to 780.40.
fn asked() -> (Bench, String) {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    bench
        .price(&order, &[entry("gasket", "780.40", "customer")])
        .unwrap();
    (bench, order)
}

fn answer(bench: &mut Bench, order: &str, agreed: bool) {
    let after = bench.view(order).asks[0].after.clone();
    let amount = agreed.then_some("780.40");
    bench.tell(order, json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": agreed,
        "amount": amount, "tax_included": false, "way": "phone", "person": Device::words("Ines Duarte"),
        "said": null, "number_called": null, "signature": null, "after": after } }));
}

#[test]
fn who_did_not_answer_is_tried_again_and_who_answers_later_is_waited_for() {
    let (mut bench, order) = asked();
    let rung = json!({ "rung": { "about": "approval", "reached": false, "words": null } });
    bench.tell(&order, rung);
    let call = seen::calls(&bench.service).unwrap().remove(0);
    assert_eq!(
        (call.kind, call.tried.as_deref()),
        (CallKind::Ask, Some("08:00"))
    );
    bench.tell(
        &order,
        json!({ "answer-due": { "at": "2026-11-25T12:00:00Z", "after": [] } }),
    );
    let call = seen::calls(&bench.service).unwrap().remove(0);
    assert_eq!(call.kind, CallKind::Waits);
    assert!(
        call.what.starts_with("Ines Duarte answers by 12:00"),
        "{}",
        call.what
    );
    bench.clock.later(5 * 60);
    let call = seen::calls(&bench.service).unwrap().remove(0);
    assert_eq!(call.kind, CallKind::Ask);
    assert!(
        call.what.starts_with("Wanted to answer by 12:00"),
        "{}",
        call.what
    );
    answer(&mut bench, &order, true);
    assert_eq!(calls(&bench), []);
}

#[test]
fn who_said_no_is_not_rung_again_for_the_same() {
    let (mut bench, order) = asked();
    answer(&mut bench, &order, false);
    let (kind, what) = calls(&bench).remove(0);
    assert_eq!(kind, CallKind::SaidNo);
    assert!(
        what.contains("said no to 780.40") && what.contains("take it off the price"),
        "{what}"
    );
    // Another price is another question.
    bench
        .price(&order, &[entry("gasket", "400.00", "customer")])
        .unwrap();
    assert_eq!(calls(&bench).remove(0).0, CallKind::Ask);
}

#[test]
fn the_warranty_is_rung_at_its_own_number() {
    let (mut bench, order) = asked();
    bench
        .price(&order, &[entry("gasket", "780.40", "warranty")])
        .unwrap();
    let warranty = |bench: &Bench| {
        let calls = seen::calls(&bench.service).unwrap();
        calls.into_iter().find(|call| call.kind == CallKind::Ask)
    };
    let call = warranty(&bench).unwrap();
    assert_eq!(
        (call.phone.as_str(), call.page.as_str()),
        ("", "ask?payer=warranty")
    );
    bench.tell(
        &order,
        json!({ "consented": { "step": "diagnose", "payer": "warranty", "lines": [], "agreed": true,
        "amount": "100", "tax_included": false, "way": "phone", "person": null,
        "said": null, "number_called": Device::words("0700 1"), "signature": null, "after": [] } }),
    );
    assert_eq!(warranty(&bench).unwrap().phone, "0700 1");
}

#[test]
fn what_is_ready_is_rung_about_until_they_know() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    bench.finish(&order);
    assert_eq!(calls(&bench).remove(0).0, CallKind::Ready);
    bench.tell(
        &order,
        json!({ "rung": { "about": "ready", "reached": true, "words": null } }),
    );
    let (kind, what) = calls(&bench).remove(0);
    assert_eq!(kind, CallKind::Waits);
    assert!(what.contains("knows that it is ready"), "{what}");
    bench.hand_over(&order).unwrap();
    assert_eq!(calls(&bench), []);
}

#[test]
fn a_promise_that_slips_is_told_once_until_another_is_given() {
    let mut bench = shop_with_an_order();
    bench.tell("a", json!({ "promised": { "at": "2026-11-25T09:00:00Z" } }));
    bench.clock.later(2 * 60);
    assert_eq!(calls(&bench).remove(0).0, CallKind::Promise);
    bench.tell(
        "a",
        json!({ "rung": { "about": "promise", "reached": true, "words": null } }),
    );
    let (kind, what) = calls(&bench).remove(0);
    assert_eq!(kind, CallKind::Waits);
    assert!(what.contains("no new time yet"), "{what}");
    bench.clock.later(10);
    bench.tell("a", json!({ "promised": { "at": "2026-11-25T10:30:00Z" } }));
    bench.clock.later(60);
    assert_eq!(calls(&bench).remove(0).0, CallKind::Promise);
}

#[test]
fn what_it_left_with_is_rung_about_on_its_day_and_a_fault_that_hid_a_week_after() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    let vehicle = bench.view(&order).row.vehicle_id.unwrap();
    bench.finish(&order);
    bench
        .ask(
            &order,
            json!({ "hand-over": { "leaves": "drives-away", "ending": "not-reproduced", "boxes": null, "signature": null, "signed_by": null } }),
        )
        .unwrap();
    let owing = |id: &str, until: Value| {
        json!({ "left-owing": { "order": order, "work": { "work": "other", "item": null, "own": id },
            "item": null, "words": Device::words("brake fluid"), "until": until } })
    };
    let stream = format!("vehicle:{vehicle}");
    let later = json!({ "later": { "date": "2026-12-10", "distance": null } });
    bench
        .send(&stream, "vehicle_fact", owing("w", later))
        .unwrap();
    let road = json!({ "later": { "date": null, "distance": "10000 km" } });
    bench
        .send(&stream, "vehicle_fact", owing("x", road))
        .unwrap();
    assert_eq!(calls(&bench), []);
    bench.clock.later(8 * 24 * 60);
    let (kind, what) = calls(&bench).remove(0);
    assert_eq!(kind, CallKind::FollowUp);
    assert!(what.contains("whether it came back: It squeals"), "{what}");
    bench.tell(
        &order,
        json!({ "rung": { "about": "follow-up", "reached": true, "words": null } }),
    );
    assert_eq!(calls(&bench), []);
    bench.clock.later(8 * 24 * 60);
    let due = calls(&bench);
    assert_eq!(due.len(), 1, "{due:?}");
    assert_eq!(due[0].0, CallKind::Due);
    assert!(
        due[0].1.contains("brake fluid"),
        "what only the road says has no day: {due:?}"
    );
    // Another program on the same record says the same.
    let other = bench.another_program();
    assert_eq!(seen::calls(&other).unwrap().len(), 1);
    bench
        .send(
            &stream,
            "vehicle_fact",
            json!({ "owing-done": { "order": order, "work": { "work": "other", "item": null, "own": "w" } } }),
        )
        .unwrap();
    assert_eq!(calls(&bench), []);
    let made = shop::rebuild(&bench.store, bench::LOG, false).unwrap();
    assert_eq!(made.differences, Vec::<String>::new());
}

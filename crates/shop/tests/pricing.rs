//! The price and the invoices from outside: two desks at once, numbers without a gap, and
//! sums that stay what they are however often they are sent.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use proptest::prelude::*;
use serde_json::{Value, json};
use shop::{Device, Service, TroubleKind};
use std::collections::BTreeMap;

fn part(label: &Value, quantity: &str, each: &str) -> Value {
    json!({ "line": "line-1", "charge": "part", "label": label, "quantity": quantity,
        "each": each, "payer": "customer" })
}

/// A yes up to a sum before tax, by somebody who had seen no answer before it.
fn consent(amount: &str) -> Value {
    let mut yes = bench::consent(amount);
    yes["consented"]["tax_included"] = json!(false);
    yes
}

/// The entries of the price, as a page sends them again.
fn sent(bench: &Bench, order: &str) -> Vec<Value> {
    let price = bench.view(order).price.unwrap();
    price
        .open
        .iter()
        .map(shop::view::PriceEntryView::sent)
        .collect()
}

fn after(bench: &Bench, order: &str) -> Vec<String> {
    bench.view(order).price.unwrap().after
}

fn labels(bench: &Bench, order: &str) -> Vec<(String, String)> {
    let price = bench.view(order).price.unwrap();
    let entries = price.entries.into_iter();
    entries
        .map(|entry| (entry.label, entry.each.exact().to_owned()))
        .collect()
}

/// Ana and Ben have the same price before them, and send it one after the other.
#[test]
fn two_desks_lose_no_line_of_each_other() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    let words = Device::words;
    let first = [
        part(&words("gasket"), "1", "10"),
        part(&words("hose"), "1", "20"),
    ];
    bench.price(&order, &first).unwrap();
    let (before, seen) = (sent(&bench, &order), after(&bench, &order));
    let lamp = part(&words("lamp"), "1", "5");
    let ana = json!({ "price": { "entries": [before[0], before[1], lamp], "after": seen } });
    bench.ask(&order, ana).unwrap();
    let mut dearer = before[0].clone();
    dearer["each"] = json!("11");
    let ben = json!({ "price": { "entries": [dearer], "after": seen } });
    bench.by("ben").ask(&order, ben).unwrap();
    let all = [("gasket", "11.00"), ("lamp", "5.00")];
    let all = all.map(|(label, each)| (label.to_owned(), each.to_owned()));
    assert_eq!(
        labels(&bench, &order),
        all,
        "the hose went, and nothing else"
    );

    // Ana made the gasket cheaper meanwhile: she is shown both, and nothing is changed.
    let mut cheaper = before[0].clone();
    cheaper["each"] = json!("9");
    let again = json!({ "price": { "entries": [cheaper, before[1]], "after": seen } });
    let trouble = bench.by("ana").ask(&order, again).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Conflict);
    assert_eq!(
        trouble.what,
        "The price was changed meanwhile by Ben Coe, 08:00"
    );
    assert_eq!(
        trouble.reasons,
        ["gasket: you 1 × 9 = 9.00, now 1 × 11 = 11.00"]
    );
    let both = trouble.both.unwrap();
    assert_eq!(
        (both[0].yours.as_deref(), both[0].now.as_deref()),
        (Some("1 × 9 = 9.00"), Some("1 × 11 = 11.00"))
    );
    assert_eq!(labels(&bench, &order), all);
    // She has seen it now, and decides.
    let mut cheaper = sent(&bench, &order);
    cheaper[0]["each"] = json!("9");
    bench.price(&order, &cheaper).unwrap();
    assert_eq!(labels(&bench, &order)[0].1, "9.00");
}

/// Who rests on a sequence number of the order has seen all that stands there.
#[test]
fn a_price_may_rest_on_a_sequence_number_instead() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    let entry = |each: &str| part(&Device::words("gasket"), "1", each);
    bench.price(&order, &[entry("10")]).unwrap();
    let blind = json!({ "price": { "entries": [entry("12")] } });
    let trouble = bench.ask(&order, blind.clone()).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Conflict);
    assert_eq!(trouble.reasons.len(), 2, "{trouble:?}");
    let stream = format!("order:{order}");
    let mut resting = bench.make(&stream, "request", blind);
    resting["expected"] = json!({ stream.as_str(): bench.view(&order).seq });
    bench::tell_to(&bench.service, resting).unwrap();
    assert_eq!(
        labels(&bench, &order),
        [("gasket".to_owned(), "12.00".to_owned())]
    );
}

#[test]
fn a_waiver_and_a_write_down_are_of_what_was_seen() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    bench
        .price(&order, &[part(&Device::words("gasket"), "1", "100")])
        .unwrap();
    bench.tell(&order, consent("80"));
    let seen = bench.view(&order).asks[0].after.clone();
    let gasket = sent(&bench, &order).remove(0);
    bench
        .price(&order, &[gasket, part(&Device::words("lamp"), "1", "50")])
        .unwrap();
    let down = json!({ "write-down": { "payer": "customer", "after": seen } });
    let trouble = bench.ask(&order, down).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Conflict);
    assert_eq!(
        trouble.reasons,
        [
            "What the customer pays: you 100.00 before tax, 80.00 agreed, now 150.00 before tax, 80.00 agreed"
        ]
    );
    let unpaid = |bench: &Bench| {
        let gate = bench.view(&order).gates.pop().unwrap();
        gate.papers
            .into_iter()
            .find(|reason| reason.kind == "unpaid")
            .unwrap()
            .figure
    };
    let figure = unpaid(&bench);
    bench.tell(
        &order,
        json!({ "paid": { "payer": "customer", "amount": "-20", "by": "cash", "deposit": false } }),
    );
    let waive = |figure: &str| {
        json!({ "waive": { "gate": "hand-over", "reason": "unpaid", "figure": figure,
            "words": Device::words("pays on Friday") } })
    };
    let trouble = bench.ask(&order, waive(&figure)).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Conflict);
    assert_eq!(trouble.reasons, ["200.00 still owed: you 180, now 200"]);
    let figure = unpaid(&bench);
    bench.ask(&order, waive(&figure)).unwrap();
}

/// Two people rang at the same time: both answers are shown.
#[test]
fn answers_that_did_not_see_each_other_are_both_shown() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    bench
        .price(&order, &[part(&Device::words("gasket"), "1", "100")])
        .unwrap();
    let seen = after(&bench, &order);
    let yes = |amount: &str, tax: bool| {
        let mut yes = consent(amount);
        yes["consented"]["after"] = json!(seen);
        yes["consented"]["tax_included"] = json!(tax);
        yes
    };
    bench.tell(&order, yes("110", false));
    assert_eq!(bench.view(&order).asks[0].apart, Vec::<String>::new());
    bench.by("ben").tell(&order, yes("130", true));
    let ask = &bench.view(&order).asks[0];
    assert_eq!(
        ask.apart
            .iter()
            .map(|one| one.split(": ").last().unwrap())
            .collect::<Vec<_>>(),
        ["up to 110.00 before tax", "up to 130.00 with tax"]
    );
    // 130 with a fifth of tax is 108.33 before it: less than 110.
    assert_eq!(
        (ask.ceiling.as_ref().map(shop::Amount::exact), ask.with_tax),
        (Some("130.00"), true)
    );
}

/// The numbers of all invoices, in the sequence of the log.
fn numbers(bench: &Bench) -> Vec<u64> {
    let rows = bench.store.log(bench::LOG, 0, 10_000).unwrap();
    rows.iter()
        .filter(|row| row.kind == "invoice-number-given")
        .map(|row| {
            let body: Value = serde_json::from_slice(&row.body).unwrap();
            body["number"].as_u64().unwrap()
        })
        .collect()
}

fn charge(service: &Service, bench: &mut Bench, order: &str) -> bool {
    let sent = bench.make(
        &format!("order:{order}"),
        "request",
        json!({ "charge": {} }),
    );
    bench::tell_to(service, sent).is_ok()
}

/// Two programs write invoices, some are refused, one goes to two payers.
#[test]
fn invoices_are_numbered_on_without_a_gap() {
    let mut bench = Bench::new();
    let other = bench.another_program();
    let mut written: usize = 0;
    for nth in 0..6 {
        let order = bench.open("Ines Duarte", "Small Van", &format!("A {nth}"));
        let mut entries = vec![part(&Device::words("gasket"), "1", "100")];
        if nth == 3 {
            let mut recall = part(&Device::words("recall"), "1", "30");
            recall["payer"] = json!("warranty");
            entries.push(recall);
        }
        bench.price(&order, &entries).unwrap();
        assert!(!charge(&other, &mut bench, &order), "nobody has agreed");
        bench.tell(&order, consent("100"));
        if nth == 3 {
            let mut yes = consent("30");
            yes["consented"]["payer"] = json!("warranty");
            bench.tell(&order, yes);
        }
        if nth % 2 == 0 {
            assert!(charge(&other, &mut bench, &order));
        } else {
            bench.ask(&order, json!({ "charge": {} })).unwrap();
        }
        assert!(!charge(&other, &mut bench, &order), "it is written");
        written += entries.len();
    }
    assert_eq!(numbers(&bench), (1..=written as u64).collect::<Vec<_>>());
    // Another start, without the index: the same numbers go on.
    let anew = bench.another_program();
    let order = bench.open("Ines Duarte", "Small Van", "B 1");
    bench
        .price(&order, &[part(&Device::words("gasket"), "1", "1")])
        .unwrap();
    bench.tell(&order, consent("1"));
    assert!(charge(&anew, &mut bench, &order));
    assert_eq!(numbers(&bench).last(), Some(&(written as u64 + 1)));
    let view = bench.view(&order);
    let invoice = &view.price.unwrap().invoices[0];
    assert_eq!(invoice.number.as_deref(), Some("INV-8"));
}

/// A device cannot give itself an invoice's number.
#[test]
fn no_device_gives_a_number() {
    let mut bench = Bench::new();
    let given =
        json!({ "invoice-number-given": { "number": 9, "order": "a", "payer": "customer" } });
    let trouble = bench.send("shop", "shop_fact", given).unwrap_err();
    assert_eq!(trouble.kind, TroubleKind::Unreadable);
}

/// A line added after the invoice goes on a second one: the first keeps its lines, its
/// write-down and its number.
#[test]
fn a_written_invoice_stays_and_a_second_one_follows() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    bench
        .price(&order, &[part(&Device::words("gasket"), "1", "100")])
        .unwrap();
    bench.tell(&order, consent("80"));
    let seen = bench.view(&order).asks[0].after.clone();
    bench
        .ask(
            &order,
            json!({ "write-down": { "payer": "customer", "after": seen } }),
        )
        .unwrap();
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    let first = bench.view(&order).price.unwrap().invoices;
    assert_eq!(
        (
            first[0].number.as_deref(),
            first[0].written_down.exact(),
            first[0].gross.exact()
        ),
        (Some("INV-1"), "20.00", "96.00")
    );
    bench
        .price(&order, &[part(&Device::words("lamp"), "1", "10")])
        .unwrap();
    let price = bench.view(&order).price.unwrap();
    assert_eq!((&price.invoices, price.charged), (&first, false));
    assert_eq!(price.entries.len(), 2);
    assert_eq!(price.next[0].gross, "12.00");
    let mut more = consent("90");
    more["consented"]["after"] = json!(bench.view(&order).asks[0].after);
    bench.tell(&order, more);
    bench.ask(&order, json!({ "charge": {} })).unwrap();
    let price = bench.view(&order).price.unwrap();
    assert_eq!(price.invoices[0], first[0]);
    assert_eq!(price.invoices[1].number.as_deref(), Some("INV-2"));
    let total = &bench.view(&order).totals[0];
    assert_eq!(
        (total.net.exact(), total.gross.exact()),
        ("90.00", "108.00")
    );
}

#[test]
fn what_keeps_an_order_from_being_voided_is_said_in_words() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    bench.tell(&order, json!({ "part-needed": { "part": "p", "line": null, "item": null, "label": Device::words("water pump"),
        "number": null, "quantity": "1", "cost": null, "price": null, "core": "20", "has_old": true } }));
    bench.tell(&order, json!({ "part-stepped": { "part": "p", "quantity": "1", "step": "received", "due": null, "words": null } }));
    bench.tell(&order, json!({ "sublet-out": { "sublet": "s", "line": null, "items": [], "what": Device::words("Skim the head"),
        "to": Device::words("Reed's"), "due": null, "cost": null } }));
    bench.tell(&order, json!({ "paid": { "payer": "warranty", "amount": "40", "by": "transfer", "deposit": false } }));
    bench.tell(
        &order,
        json!({ "keys": { "step": "taken", "words": null } }),
    );
    let void = json!({ "void": { "words": Device::words("twice") } });
    let refused = bench.ask(&order, void.clone()).unwrap_err();
    assert_eq!(refused.mend, "bring each to its end first");
    assert_eq!(
        refused.reasons,
        [
            "1 × water pump: send back, put into stock or cancel",
            "Core of water pump: send it back, or say where it went",
            "Skim the head is still away: fetch it back",
            "40 from the warranty: give it back first",
            "We still have the keys: give them back",
        ]
    );
    bench.tell(&order, json!({ "part-stepped": { "part": "p", "quantity": "1", "step": "returned", "due": null, "words": null } }));
    bench.tell(
        &order,
        json!({ "sublet-back": { "sublet": "s", "words": null } }),
    );
    bench.tell(&order, json!({ "paid": { "payer": "warranty", "amount": "-40", "by": "transfer", "deposit": false } }));
    bench.tell(
        &order,
        json!({ "keys": { "step": "given-back", "words": null } }),
    );
    bench.ask(&order, void).unwrap();
}

/// What somebody does to a price on a page.
#[derive(Debug, Clone)]
enum Edit {
    Add(i64, u32, i64),
    Drop(usize),
    Change(usize, i64),
    Resend,
}

fn edits() -> impl Strategy<Value = Vec<Edit>> {
    let edit = prop_oneof![
        (1i64..9_999_999_999, 0u32..10, 1i64..100_000)
            .prop_map(|(q, digits, each)| Edit::Add(q, digits, each)),
        any::<usize>().prop_map(Edit::Drop),
        (any::<usize>(), 1i64..100_000).prop_map(|(nth, each)| Edit::Change(nth, each)),
        Just(Edit::Resend),
    ];
    proptest::collection::vec(edit, 1..12)
}

/// `number` with so many digits after the point, as text.
fn decimal(number: i64, digits: u32) -> String {
    rust_decimal::Decimal::new(number, digits).to_string()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(24))]

    /// However often a price goes to a page and comes back, it comes to what its entries come
    /// to as they were first written.
    #[test]
    fn sums_never_drift(edits in edits()) {
        let mut bench = Bench::new();
        bench.open_again("a", "v", "c");
        // Every entry by its label: how many, at so much each, exactly.
        let mut model: BTreeMap<String, (rust_decimal::Decimal, rust_decimal::Decimal)> = BTreeMap::new();
        for (nth, edit) in edits.into_iter().enumerate() {
            let shown: Vec<_> = bench.view("a").price.map(|price| price.open).unwrap_or_default();
            let mut entries: Vec<Value> = shown.iter().map(shop::view::PriceEntryView::sent).collect();
            let picked = |at: usize| (!shown.is_empty()).then(|| at % shown.len());
            match edit {
                Edit::Add(quantity, digits, each) => {
                    let label = format!("entry {nth}");
                    let (quantity, each) = (decimal(quantity % 10i64.pow(digits + 3) + 1, digits), decimal(each, 2));
                    entries.push(part(&Device::words(&label), &quantity, &each));
                    model.insert(label, (quantity.parse().unwrap(), each.parse().unwrap()));
                }
                Edit::Drop(at) => if let Some(at) = picked(at) {
                    entries.remove(at);
                    model.remove(&shown[at].label);
                },
                Edit::Change(at, each) => if let Some(at) = picked(at) {
                    let each = decimal(each, 2);
                    entries[at]["each"] = json!(each);
                    model.get_mut(&shown[at].label).unwrap().1 = each.parse().unwrap();
                },
                Edit::Resend => {}
            }
            bench.price("a", &entries).unwrap();
            let view = bench.view("a");
            let net: rust_decimal::Decimal = view.totals.first().map_or_else(|| "0".to_owned(), |total| total.net.exact().to_owned()).parse().unwrap();
            let exact: rust_decimal::Decimal = model
                .values()
                .map(|(quantity, each)| (quantity * each).round_dp_with_strategy(2, rust_decimal::RoundingStrategy::MidpointAwayFromZero))
                .sum();
            prop_assert_eq!(net, exact);
        }
    }
}

/// 213.5 minutes are no 3.56 hours: what is shown, multiplied, comes to the amount.
#[test]
fn who_multiplies_hours_by_the_rate_gets_the_amount() {
    let mut bench = Bench::new();
    let order = bench.open("Ines Duarte", "Small Van", "A 1");
    let labour = |quantity: &str, each: &str| {
        json!({ "line": "line-1", "charge": "labour", "label": Device::words("work"),
            "quantity": quantity, "each": each, "payer": "customer" })
    };
    let all = [
        ("3.5583333333333333333333333333", "120", "3.5583", "427.00"),
        ("3.6666666666666666666666666667", "120", "3.6667", "440.00"),
        ("1.5", "120", "1.5", "180.00"),
        ("2", "0.335", "2", "0.67"),
    ];
    let entries: Vec<Value> = all
        .map(|(quantity, each, ..)| labour(quantity, each))
        .into();
    bench.price(&order, &entries).unwrap();
    let price = bench.view(&order).price.unwrap();
    for ((.., quantity, amount), entry) in all.iter().zip(&price.entries) {
        assert_eq!(
            (entry.quantity.exact(), entry.amount.exact()),
            (*quantity, *amount)
        );
    }
    assert_eq!(
        price.entries[3].each, "0.335",
        "a price finer than a coin stands whole"
    );
}

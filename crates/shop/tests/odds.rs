//! The odds of an order: from its price, from what was timed, with the snag that came; and
//! how good the estimates were that were given.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod bench;

use bench::Bench;
use serde_json::{Value, json};
use shop::odds::Verdict;
use shop::odds_of::{OrderOdds, odds_of, score};
use shop::{Device, TroubleKind};

fn labour(hours: &str) -> Value {
    json!({ "line": "line-1", "charge": "labour", "label": Device::words("Reseal the housing"),
        "quantity": hours, "each": "120", "payer": "customer" })
}

fn part(each: &str) -> Value {
    json!({ "line": "line-1", "charge": "part", "label": Device::words("Gasket"),
        "quantity": "1", "each": each, "payer": "customer" })
}

fn odds(bench: &Bench, order: &str, snags: Option<u32>) -> OrderOdds {
    let number = bench.number(order);
    bench.look(|snap| odds_of(snap, number, snags)).unwrap()
}

fn agreed(bench: &mut Bench, order: &str, amount: &str) {
    bench.tell(order, json!({ "consented": { "step": "repair", "payer": "customer", "lines": [], "agreed": true,
        "amount": amount, "tax_included": false, "way": "phone", "person": Device::words("Ms Lind"), "said": null,
        "number_called": null, "signature": null, "after": [] } }));
}

/// One stage with a book time of ten minutes that took so long.
fn stage(bench: &mut Bench, order: &str, stage: &str, kind: &str, minutes: i64) {
    let timed = |clock: &str| json!({ "timed": { "stage": stage, "clock": clock, "book_minutes": "10", "words": null } });
    let item = format!("{kind}-{stage}");
    bench.declare(order, &item, (kind, "cooling", "above"), 1);
    bench.tell(order, timed("opened"));
    bench.clock.later(minutes);
    bench.tell(
        order,
        json!({ "moved": { "stage": stage, "moves": [{ "item": item, "at": [1], "after": [],
        "left": { "state": "off", "piece": "original" }, "container": null }] } }),
    );
}

#[test]
fn an_order_without_hours_has_no_odds_and_says_why() {
    let mut bench = Bench::new();
    let order = bench.open("Ms Lind", "Korvane Drayman", "AB 12");
    let number = bench.number(&order);
    let none = bench.look(|snap| odds_of(snap, number, None)).unwrap_err();
    assert_eq!(none.kind, TroubleKind::Unreadable);
    assert!(none.mend.contains("price the work first"), "{none}");
    assert!(bench.look(|snap| odds_of(snap, 9_999, None)).is_err());
}

#[test]
fn the_price_gives_a_band_what_covers_it_and_the_chance_of_the_ceiling() {
    let mut bench = Bench::new();
    let order = bench.open("Ms Lind", "Korvane Drayman", "AB 12");
    bench.price(&order, &[labour("4"), part("268.40")]).unwrap();
    agreed(&mut bench, &order, "850");
    let found = odds(&bench, &order, None);
    assert!(found.likely.starts_with("likely ") && found.likely.ends_with("hours (8 of 10)"));
    // Four hours at 120 and the gasket are in the middle.
    let middle = found.quote.price.at(0.5);
    assert!((728.0..768.0).contains(&middle), "{middle}");
    // Stages even out: most of it is what they share.
    let (low, high) = found.quote.hours.eight_in_ten();
    assert!(low > 1.8 && high < 7.5, "{low} {high}");
    let amounts: Vec<f64> = found
        .covers
        .iter()
        .map(|cover| cover.amount.exact().parse().unwrap())
        .collect();
    assert_eq!(found.covers[2].often, "9 times in 10");
    assert!(
        amounts[0] < amounts[1] && amounts[1] < amounts[2],
        "{amounts:?}"
    );
    let ceiling = found.ceiling.unwrap();
    assert_eq!(ceiling.amount, "850.00");
    assert!((0.5..0.9).contains(&ceiling.chance), "{ceiling:?}");
    assert!(!found.with_tax && found.sentence.contains("before tax"));
    assert_eq!((found.stages, found.snags, found.fasteners), (0, 0, 0));
    // Asked again, it says the same.
    assert_eq!(odds(&bench, &order, None).quote, found.quote);
}

#[test]
fn a_snag_widens_and_raises_it() {
    let mut bench = Bench::new();
    let order = bench.open("Ms Lind", "Korvane Drayman", "AB 12");
    bench.price(&order, &[labour("4"), part("268.40")]).unwrap();
    bench.declare(&order, "bolts", ("fasteners", "cooling", "above"), 7);
    let before = odds(&bench, &order, None);
    bench.tell(
        &order,
        json!({ "snag-found": { "snag": "snag-1", "item": "bolts", "at": [6], "what": "snapped",
        "sits": null, "words": null, "photos": [], "moves": [] } }),
    );
    let after = odds(&bench, &order, None);
    assert_eq!((before.snags, after.snags), (0, 1));
    assert!(after.quote.price.at(0.5) > before.quote.price.at(0.5) + 80.0);
    assert!(after.quote.hours.at(0.9) > before.quote.hours.at(0.9) + 0.5);
    // It can be taken out again, where its repair stands on the price already.
    assert_eq!(odds(&bench, &order, Some(0)).quote, before.quote);
}

#[test]
fn a_shop_that_takes_longer_than_the_book_is_quoted_longer_and_surer() {
    let mut bench = Bench::new();
    let order = bench.open("Ms Lind", "Korvane Drayman", "AB 12");
    bench.price(&order, &[labour("4")]).unwrap();
    let before = odds(&bench, &order, None);
    for job in 0..12 {
        let other = bench.open("Mr Osei", &format!("Van {job}"), &format!("V {job}"));
        bench.by(if job % 2 == 0 { "ana" } else { "ben" });
        for (at, kind) in ["cover", "hose", "part", "belt"].into_iter().enumerate() {
            let minutes = 14 + i64::from(at % 2 == 0);
            stage(&mut bench, &other, &format!("{job}-{at}"), kind, minutes);
        }
        bench.by("ana");
    }
    let after = odds(&bench, &order, None);
    assert_eq!(after.stages, 48);
    let times = after.quote.hours.at(0.5) / before.quote.hours.at(0.5);
    // Every stage took nearly half as long again; that sort of work was not timed itself.
    assert!((1.15..1.45).contains(&times), "{times}");
    let relative = |odds: &OrderOdds| odds.quote.hours.width() / odds.quote.hours.at(0.5);
    assert!(relative(&after) < relative(&before));
    // Another program reads the same record and says the same.
    let number = bench.number(&order);
    let other = bench.another_program();
    let caller = shop::Caller::program();
    let again = other
        .look(&caller, |snap| odds_of(snap, number, None))
        .unwrap();
    assert_eq!(again, after);
}

#[test]
fn estimates_given_are_scored_as_they_were_given() {
    let mut bench = Bench::new();
    let none = bench.look(score).unwrap();
    assert_eq!(none.all.quotes, 0);
    assert!(matches!(
        none.all.verdict,
        Verdict::TooFew { needed: 20, .. }
    ));
    // Told on an order of one hour at 100, which is what `finish` prices below.
    let like = bench.open("Mr Osei", "Another", "CD 34");
    bench
        .price(
            &like,
            &[
                json!({ "line": "line-1", "charge": "labour", "label": Device::words("an hour"),
                "quantity": "1", "each": "100", "payer": "customer" }),
            ],
        )
        .unwrap();
    let mut fact = odds(&bench, &like, None).fact;
    fact["id"] = json!("note-1");
    fact["item"] = Value::Null;
    fact["snag"] = Value::Null;
    bench.tell(&like, json!({ "calculated": fact }));
    assert!(odds(&bench, &like, None).given.is_some());
    // Not handed over: nothing happened that it could be held against.
    assert_eq!(bench.look(score).unwrap().all.quotes, 0);
    let order = bench.open("Ms Lind", "Korvane Drayman", "AB 12");
    bench.tell(&order, json!({ "calculated": fact }));
    bench.tell(&order, json!({ "assigned": { "person": "ben" } }));
    bench.declare(&order, "tray", ("cover", "cooling", "below"), 1);
    bench.move_to(&order, "tray", "off");
    bench.move_to(&order, "tray", "on");
    bench.finish(&order);
    bench.hand_over(&order).unwrap();
    let found = bench.look(score).unwrap();
    let kinds: Vec<_> = found
        .kinds
        .iter()
        .map(|(kind, score)| (&**kind, score.quotes))
        .collect();
    assert_eq!(kinds, [("cooling", 1)]);
    // Who worked on what and how it came out is for the owner alone.
    for (who, people) in [("ana", &["Ben Coe"][..]), ("ben", &[])] {
        let caller = bench.service.caller(Some(who), "test").unwrap();
        let seen = bench.service.look(&caller, score).unwrap();
        let names: Vec<_> = seen.people.iter().map(|(name, _)| &**name).collect();
        assert_eq!(names, people, "{who}");
    }
    assert_eq!((found.all.quotes, found.months.len()), (1, 1));
    assert_eq!(found.months[0].month, "2026-11");
    let band = found
        .all
        .bands
        .iter()
        .find(|band| (band.said - 0.8).abs() < 1e-9)
        .unwrap();
    assert_eq!((band.inside, band.quotes), (1, 1));
}

//! What the shop says of itself: whoever had seen the other tellings is heard, whatever
//! their clock says.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use repair::*;
use rust_decimal::Decimal;

fn set(rate: i64, after: &[&str]) -> ShopFact {
    ShopFact::Set {
        settings: Settings {
            name: Words([1; 32]),
            rate: Decimal::from(rate),
            currency: "EUR".into(),
            minor_digits: 2,
            taxes: vec![],
            units: Units::Metric,
            zone: "Europe/Lisbon".into(),
        },
        after: after.iter().map(|seen| CommandId::new(*seen)).collect(),
    }
}

fn kept(years: u32, after: &[&str]) -> ShopFact {
    ShopFact::RecordsKept {
        years,
        after: after.iter().map(|seen| CommandId::new(*seen)).collect(),
    }
}

/// A shop that was told these: command, time by the device, fact.
fn shop(facts: &[(&str, &str, ShopFact)]) -> Shop {
    facts
        .iter()
        .fold(Shop::default(), |shop, (command, at, fact)| {
            shop.file(Recorded {
                command: CommandId::new(*command),
                nth: 0,
                stamp: Stamp {
                    who: PersonId::new("ana"),
                    at: at.parse().unwrap(),
                },
                event: fact.clone(),
            })
        })
}

const NOW: &str = "2026-03-02T08:00:00Z";
const WRONG: &str = "2031-01-01T00:00:00Z";

#[test]
fn one_phone_dated_2031_does_not_freeze_the_settings() {
    let shop = shop(&[
        ("z", WRONG, set(100, &["a"])),
        ("a", NOW, set(90, &[])),
        ("b", NOW, set(120, &["a", "z"])),
    ]);
    assert_eq!(shop.settings().unwrap().rate, Decimal::from(120));
    assert_eq!(shop.settings_told().len(), 3);
}

#[test]
fn a_telling_that_names_what_it_had_seen_beats_older_ones_that_name_nothing() {
    let shop = shop(&[("z", WRONG, kept(10, &[])), ("a", NOW, kept(3, &["z"]))]);
    assert_eq!(shop.records_kept_years(), 3);
}

/// As logs of before read: nobody named anything, the clocks decided.
#[test]
fn where_nobody_names_anything_the_clock_decides_as_before() {
    let shop = shop(&[
        ("a", "2026-03-03T08:00:00Z", kept(7, &[])),
        ("z", NOW, kept(3, &[])),
    ]);
    assert_eq!(shop.records_kept_years(), 7);
}

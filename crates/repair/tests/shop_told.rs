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

fn hours(person: Option<&str>, week: Option<&str>, after: &[&str]) -> ShopFact {
    ShopFact::HoursTold {
        person: person.map(PersonId::new),
        week: week.map(|week| Week::read(week).unwrap()),
        after: after.iter().map(|seen| CommandId::new(*seen)).collect(),
    }
}

#[test]
fn hours_of_the_shop_and_of_each_person_are_told_apart() {
    let ana = PersonId::new("ana");
    let told = shop(&[
        ("a", NOW, hours(None, Some("mon-fri 08:00-17:00"), &[])),
        ("b", NOW, hours(Some("ana"), Some("mon 08:00-12:00"), &[])),
        ("c", WRONG, hours(None, Some("mon 01:00-02:00"), &["a"])),
        ("d", NOW, hours(None, Some("tue 08:00-17:00"), &["a", "c"])),
    ]);
    let of = |shop: &Shop, who: Option<&PersonId>| shop.hours(who).map(ToString::to_string);
    assert_eq!(of(&told, None).as_deref(), Some("tue 08:00-17:00"));
    assert_eq!(of(&told, Some(&ana)).as_deref(), Some("mon 08:00-12:00"));
    assert_eq!(of(&told, Some(&PersonId::new("ben"))), None);
    assert_eq!(told.hours_told(None).len(), 3);
    // Not told any more: those of the shop hold.
    let told = shop(&[
        ("b", NOW, hours(Some("ana"), Some("mon 08:00-12:00"), &[])),
        ("e", NOW, hours(Some("ana"), None, &["b"])),
    ]);
    assert_eq!(of(&told, Some(&ana)), None);
}

#[test]
fn days_off_stand_until_they_are_ended_and_run_forward_however_they_were_told() {
    let off = |id: &str, person: Option<&str>, first: &str, last: &str| ShopFact::DaysOff {
        id: DaysOffId::new(id),
        person: person.map(PersonId::new),
        first: first.parse().unwrap(),
        last: last.parse().unwrap(),
    };
    let told = shop(&[
        ("a", NOW, off("one", None, "2026-12-27", "2026-12-24")),
        (
            "b",
            NOW,
            off("two", Some("ana"), "2026-03-05", "2026-03-05"),
        ),
        ("c", NOW, off("three", None, "2026-05-01", "2026-05-01")),
        (
            "d",
            NOW,
            ShopFact::DaysOffEnded {
                id: DaysOffId::new("three"),
            },
        ),
    ]);
    let days: Vec<(String, String)> = told
        .days_off()
        .iter()
        .map(|one| (one.first.to_string(), one.last.to_string()))
        .collect();
    let day = |first: &str, last: &str| (first.to_owned(), last.to_owned());
    assert_eq!(
        days,
        [
            day("2026-03-05", "2026-03-05"),
            day("2026-12-24", "2026-12-27")
        ]
    );
}

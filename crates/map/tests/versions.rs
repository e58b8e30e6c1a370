//! Versions of a map: what differs, in words, and two people's edits brought together.

#![allow(clippy::unwrap_used, reason = "a test that cannot go on should stop")]

use map::{Edit, Map, Reconciled, apply, difference, quoted, read, reconcile};
use proptest::prelude::*;
use std::collections::BTreeSet;

const BASE: &str = r#"vehicle = "Small Van"
version = 3
[sources.book]
title = "handbook"
date = "2019"

# The tray hangs on six screws.
[items."tray screws"]
is = "fasteners"
count = 6
torque = "8 Nm"
torque-from = "book"
minutes = { each-out = 0.5, each-back = 0.5 }

[items.tray]
is = "cover"
needs = ["tray screws out"] # all of them
tools = ["pliers"]

[items.belt]
is = "belt"
needs = ["tray off"]
"#;

fn sound(text: &str) -> Map {
    read("van.toml", text)
        .unwrap_or_else(|why| panic!("{why:?}\n{text}"))
        .map
}

fn edited(text: &str, edits: &[Edit]) -> String {
    edits
        .iter()
        .fold(text.to_owned(), |text, edit| apply(&text, edit).unwrap())
}

fn field(item: &str, field: &str, value: Option<&str>) -> Edit {
    Edit::Field {
        item: item.to_owned(),
        field: field.to_owned(),
        value: value.map(str::to_owned),
    }
}

fn need(item: &str, any: &[&str]) -> Edit {
    Edit::Need {
        item: item.to_owned(),
        at: "needs".to_owned(),
        any: any.iter().map(|one| (*one).to_owned()).collect(),
    }
}

fn told(old: &str, new: &str) -> Vec<String> {
    difference(&sound(old), &sound(new))
        .iter()
        .map(ToString::to_string)
        .collect()
}

fn both(mine: &str, theirs: &str) -> Reconciled {
    reconcile("van.toml", BASE, mine, theirs).unwrap()
}

#[test]
fn what_differs_is_told_in_words() {
    let new = edited(
        BASE,
        &[
            field("tray screws", "torque", Some("\"9 Nm\"")),
            field("tray screws", "minutes.each-out", Some("1")),
            field("tray", "tools", Some("[\"hook\", \"pliers\"]")),
            field("tray", "place", Some("\"below\"")),
            Edit::Item {
                item: "lamp".to_owned(),
                is: "part".to_owned(),
            },
            need("lamp", &["tray off", "belt off"]),
            Edit::Unneed {
                item: "belt".to_owned(),
                at: "needs".to_owned(),
                nth: 0,
            },
            Edit::Source {
                name: "book".to_owned(),
                title: "handbook".to_owned(),
                date: "2021".to_owned(),
            },
        ],
    );
    assert_eq!(
        told(BASE, &new),
        [
            "the map: source book was handbook, 2019, is handbook, 2021",
            "belt: no longer needs tray off",
            "lamp: new, part",
            "lamp: now needs tray off or belt off",
            "tray: now place below",
            "tray: now takes hook",
            "tray screws: minutes out for each was 0.5, is 1",
            "tray screws: torque was 8 Nm (handbook, 2019), is 9 Nm (handbook, 2021)",
        ]
    );
    let removed = edited(
        BASE,
        &[Edit::Remove {
            item: "belt".to_owned(),
        }],
    );
    assert_eq!(told(BASE, &removed), ["belt: taken out"]);
    assert!(told(BASE, BASE).is_empty());
    // Layout and comments are no difference.
    assert!(
        told(
            BASE,
            &BASE.replace(" # all of them", "").replace("\n\n", "\n")
        )
        .is_empty()
    );
}

#[test]
fn edits_that_do_not_touch_are_both_kept() {
    let mine = edited(
        BASE,
        &[
            field("tray", "zone", Some("\"below\"")),
            need("belt", &["tray screws out"]),
            field("tray screws", "minutes.each-out", Some("1")),
        ],
    );
    let theirs = edited(
        BASE,
        &[
            field("tray screws", "torque", Some("\"9 Nm\"")),
            field("tray screws", "minutes.each-back", Some("2")),
            Edit::Item {
                item: "lamp".to_owned(),
                is: "part".to_owned(),
            },
            need("belt", &["lamp off"]),
            field("tray", "tools", None),
            field("lamp", "minutes.out", Some("3")),
        ],
    );
    let done = both(&mine, &theirs);
    assert_eq!(
        (done.conflicts.len(), done.troubles.len()),
        (0, 0),
        "{done:?}"
    );
    let map = sound(&done.text);
    let one = difference(&sound(BASE), &sound(&mine));
    let other = difference(&sound(BASE), &sound(&theirs));
    let all: BTreeSet<_> = one.into_iter().chain(other).collect();
    let done_changes: BTreeSet<_> = difference(&sound(BASE), &map).into_iter().collect();
    assert_eq!(done_changes, all);
    assert!(done.text.contains("# all of them") && done.text.contains("# The tray hangs"));
    // Whoever is first, the same map comes of it.
    let other = sound(&both(&theirs, &mine).text);
    assert_eq!(difference(&other, &map), []);
}

#[test]
fn what_both_changed_comes_back_as_a_conflict() {
    let mine = edited(BASE, &[field("tray screws", "torque", Some("\"9 Nm\""))]);
    let theirs = edited(
        BASE,
        &[
            field("tray screws", "torque", Some("\"10 Nm\"")),
            field("tray screws", "count", Some("5")),
        ],
    );
    let done = both(&mine, &theirs);
    let told: Vec<_> = done.conflicts.iter().map(ToString::to_string).collect();
    assert_eq!(
        told,
        [
            "tray screws, torque: was 8 Nm, book; one has 9 Nm, book, the other 10 Nm, book; choose one"
        ]
    );
    let map = sound(&done.text);
    let screws = &map.items[&states::ItemId::new("tray screws")];
    assert_eq!((screws.torque[0].written(), screws.count), ("9 Nm", 5));
    // Both made the same of it: that is none.
    assert!(both(&mine, &mine).conflicts.is_empty());
}

#[test]
fn a_torque_and_its_source_are_one_thing() {
    let source = Edit::Source {
        name: "card".to_owned(),
        title: "data card".to_owned(),
        date: "2022".to_owned(),
    };
    let mine = edited(BASE, &[field("tray screws", "torque", Some("\"9 Nm\""))]);
    let theirs = edited(
        BASE,
        &[
            source,
            field("tray screws", "torque-from", Some("\"card\"")),
        ],
    );
    let done = both(&mine, &theirs);
    assert_eq!(done.conflicts.len(), 1, "{done:?}");
    assert_eq!(done.conflicts[0].theirs.as_deref(), Some("8 Nm, card"));
}

#[test]
fn an_item_taken_out_by_one_and_changed_by_the_other_is_asked() {
    let mine = edited(
        BASE,
        &[Edit::Remove {
            item: "belt".to_owned(),
        }],
    );
    let theirs = edited(
        BASE,
        &[field("belt", "note", Some(&quoted("stretch belt")))],
    );
    let done = both(&mine, &theirs);
    let told: Vec<_> = done.conflicts.iter().map(ToString::to_string).collect();
    assert_eq!(
        told,
        ["belt: was there; one has taken out, the other changed; choose one"]
    );
    let done = both(&theirs, &mine);
    assert!(done.text.contains("stretch belt"), "{}", done.text);
    // Taken out by one and left alone by the other, it is gone.
    let done = both(BASE, &mine);
    assert!(
        done.conflicts.is_empty() && !done.text.contains("belt"),
        "{}",
        done.text
    );
}

#[test]
fn what_one_took_out_and_the_other_names_is_a_trouble() {
    let mine = edited(
        BASE,
        &[
            Edit::Unneed {
                item: "belt".to_owned(),
                at: "needs".to_owned(),
                nth: 0,
            },
            Edit::Remove {
                item: "tray".to_owned(),
            },
        ],
    );
    let theirs = edited(
        BASE,
        &[
            Edit::Item {
                item: "lamp".to_owned(),
                is: "part".to_owned(),
            },
            need("lamp", &["tray off"]),
        ],
    );
    let done = both(&mine, &theirs);
    assert!(done.conflicts.is_empty());
    assert_eq!(done.troubles.len(), 1, "{:?}", done.troubles);
    assert!(done.troubles[0].what.contains("no item is called `tray`"));
}

#[test]
fn jobs_seen_by_both_are_both_kept() {
    let job = |text: &str, name: &str, off: &str| {
        format!("{text}\n[seen.\"{name}\"]\nby = [\"ana\"]\noff = [{off}]\n")
    };
    let mine = job(BASE, "order 1", "\"tray\", \"belt\"");
    let theirs = job(BASE, "order 2", "\"belt\"");
    let done = both(&mine, &theirs);
    assert!(done.conflicts.is_empty(), "{done:?}");
    assert_eq!(sound(&done.text).seen.len(), 2);
    let other = job(BASE, "order 1", "\"belt\", \"tray\"");
    assert_eq!(both(&mine, &other).conflicts.len(), 1);
}

#[test]
fn a_text_that_is_no_toml_is_told() {
    assert!(reconcile("van.toml", BASE, BASE, "vehicle = ").is_err());
}

/// Fields that say one thing each, with two values that both can be read.
const FIELDS: [(&str, &str, [&str; 2]); 9] = [
    ("tray", "zone", ["\"below\"", "\"above\""]),
    ("tray", "note", ["\"bends easily\"", "\"rusts\""]),
    ("tray", "place", ["\"below\"", "\"pit\""]),
    ("tray", "minutes.out", ["1", "2.5"]),
    ("tray", "minutes.back", ["1", "2.5"]),
    ("tray screws", "count", ["5", "7"]),
    ("tray screws", "torque", ["\"9 Nm\"", "\"10 Nm\""]),
    ("tray screws", "minutes.each-out", ["1", "1.5"]),
    ("belt", "system", ["\"drive belt\"", "\"engine\""]),
];

/// What one person makes of each field: nothing, or one of its two values.
fn choices() -> impl Strategy<Value = Vec<Option<usize>>> {
    proptest::collection::vec(proptest::option::of(0..2_usize), FIELDS.len())
}

fn chosen(choices: &[Option<usize>]) -> String {
    let each = FIELDS.iter().zip(choices);
    let edits: Vec<Edit> = each
        .filter_map(|((item, name, values), choice)| {
            Some(field(item, name, Some(values[(*choice)?])))
        })
        .collect();
    edited(BASE, &edits)
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 200, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn a_field_is_as_whoever_changed_it_left_it_or_a_conflict(mine in choices(), theirs in choices()) {
        let done = both(&chosen(&mine), &chosen(&theirs));
        let clash = |(mine, theirs): &(&Option<usize>, &Option<usize>)| {
            mine.is_some() && theirs.is_some() && mine != theirs
        };
        let clashes = mine.iter().zip(&theirs).filter(clash).count();
        prop_assert_eq!(done.conflicts.len(), clashes, "{:?}", done.conflicts);
        let wanted: Vec<_> = mine.iter().zip(&theirs).map(|(mine, theirs)| mine.or(*theirs)).collect();
        let wanted = sound(&chosen(&wanted));
        prop_assert_eq!(difference(&sound(&done.text), &wanted), []);
        prop_assert!(done.troubles.is_empty());
    }
}

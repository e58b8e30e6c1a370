//! Names of one thing in different jobs, read by what the trade knows.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use lessons::{Alike, Job, Joins, Learner, Meaning, Moved};
use states::{ItemId, Kind, State};
use trade::{Vocabulary, says};

fn meaning(name: &str) -> Option<Meaning> {
    let said = says(name, Vocabulary::shipped());
    let [one] = said.as_slice() else { return None };
    Some(Meaning {
        sort: one.sort.as_ref()?.to_string(),
        side: one.side.map(|side| format!("{side:?}")),
    })
}

fn learner(jobs: &[&[&str]]) -> Learner {
    let mut learner = Learner::new(Joins::default());
    for (nth, names) in jobs.iter().enumerate() {
        let moves = names.iter().zip(0..).map(|(name, minute)| Moved {
            item: ItemId::new(*name),
            kind: Kind::Part,
            from: State::On,
            to: State::Off,
            minute,
        });
        learner.add(&Job {
            name: format!("{nth}"),
            by: ["ana".to_owned()].into(),
            moves: moves.collect(),
            ..Job::default()
        });
    }
    learner
}

fn proposed(jobs: &[&[&str]]) -> Vec<(String, String, Alike)> {
    let found = learner(jobs).same_names(&meaning);
    let each = found.into_iter();
    each.map(|one| (one.name.to_string(), one.other.to_string(), one.alike))
        .collect()
}

#[test]
fn spelling_plural_and_language_are_proposed_with_their_reason() {
    let found = proposed(&[
        &["water pump", "splash shield", "Radiator  Hose"],
        &["Wasserpumpe", "splahs shield", "radiator hose"],
        &["water pump", "radiator hoses"],
    ]);
    let find = |one: &str, other: &str| {
        let is_it = |(name, rest, _): &&(String, String, Alike)| {
            (name == one && rest == other) || (name == other && rest == one)
        };
        found.iter().find(is_it).map(|(.., alike)| alike.clone())
    };
    assert_eq!(
        find("Radiator  Hose", "radiator hose"),
        Some(Alike::SameWords)
    );
    assert_eq!(find("radiator hose", "radiator hoses"), Some(Alike::Plural));
    assert!(matches!(
        find("water pump", "Wasserpumpe"),
        Some(Alike::Meaning { .. })
    ));
    assert!(find("splash shield", "splahs shield").is_some());
    // The more frequent name is the one that would be kept.
    let pump = found.iter().find(|(name, ..)| name == "water pump");
    assert!(pump.is_some(), "{found:?}");
    // Nothing was joined by proposing.
    let learner = learner(&[&["water pump"], &["Wasserpumpe"]]);
    let before = learner.counts();
    assert_eq!(learner.same_names(&meaning).len(), 1);
    assert_eq!(learner.counts(), before);
}

#[test]
fn what_stands_in_one_job_is_two_things() {
    assert!(proposed(&[&["hose clip", "hose clips"], &["hose clip"]]).is_empty());
}

#[test]
fn sides_numbers_and_kinds_keep_names_apart() {
    for (one, other) in [
        ("front left wheel", "front right wheel"),
        ("caliper bolt left", "caliper bolt right"),
        ("bolt 1", "bolt 2"),
        ("tray screw M6", "tray screw M8"),
        ("water pump", "fuel pump"),
    ] {
        let found = proposed(&[&[one], &[other]]);
        assert!(found.is_empty(), "{found:?}");
    }
    let mut two_kinds = learner(&[&["cover plate"]]);
    two_kinds.add(&Job {
        name: "other".to_owned(),
        moves: vec![Moved {
            item: ItemId::new("cover plates"),
            kind: Kind::Cover,
            from: State::On,
            to: State::Off,
            minute: 0,
        }],
        ..Job::default()
    });
    assert!(two_kinds.same_names(&|_| None).is_empty());
}

#[test]
fn a_proposal_says_why_in_words() {
    let found =
        learner(&[&["tray screw"], &["tray screws"], &["tray screw"]]).same_names(&|_| None);
    assert_eq!(
        found[0].to_string(),
        "is tray screws (1) the same as tray screw (2)? one and many"
    );
}

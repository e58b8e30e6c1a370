//! Orders and relations that others have published.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

#[allow(dead_code, reason = "other checks ask for more")]
mod common;

use common::{People, Shop, Truth, settle, step, taught};
use lessons::{Answers, Ground, Held, Job, Joins, Learner, Moved, Step};
use states::{ItemId, Kind, State};

/// The assembly order of J. R. Jackson (A computing procedure for a line balancing problem,
/// Management Science 2, 1956), eleven tasks, as A. Scholl lists it (Data of assembly line balancing
/// problems, TH Darmstadt, 1993): which task comes before which, read in a copy of that list; grade
/// `published`.
const JACKSON: [(usize, usize); 13] = [
    (1, 2),
    (1, 3),
    (1, 4),
    (1, 5),
    (2, 6),
    (3, 7),
    (4, 7),
    (5, 7),
    (6, 8),
    (7, 9),
    (8, 10),
    (9, 11),
    (10, 11),
];

/// People work by it without errors, all that is open is asked, and the order strength of what was
/// learned (of all pairs of tasks, the share with a fixed sequence) is the one printed with it.
#[test]
fn the_strength_of_a_published_order_is_learned() {
    let count = 11;
    let pairs = JACKSON.map(|(first, second)| (first - 1, second - 1));
    let truth = Truth::of(count, pairs.into_iter());
    let mut shop = Shop::new(&truth, People::Several, 0, 1);
    shop.everything = true;
    let mut learner = Learner::new(Joins::default());
    for _ in 0..3 {
        learner.add(&shop.job());
    }
    let mut answers = Answers::default();
    let asked = settle(&learner, &truth, &mut answers);
    let bound = count as f64 * (truth.width() as f64 + (count as f64).log2());
    assert!((asked as f64) < bound, "{asked} of {bound:.0}");
    let pairs = taught(&learner, &answers).pairs();
    let needed = pairs
        .iter()
        .filter(|pair| pair.held != Held::Either)
        .count();
    let learned = 100.0 * needed as f64 / (count * (count - 1) / 2) as f64;
    assert_eq!(format!("{learned:.2}"), "58.18");
    let path = taught(&learner, &answers).path_to(&[step(0)]).unwrap();
    assert!(path.holds > 0.99);
}

/// A job of somebody's own in which parts come off in the sequence of these letters.
fn taken_off(nth: usize, letters: &str) -> Job {
    let moves = letters.chars().zip(0..).map(|(item, minute)| Moved {
        item: ItemId::new(item),
        kind: Kind::Part,
        from: State::On,
        to: State::Off,
        minute,
    });
    Job {
        name: format!("{nth}"),
        by: [format!("person {nth}")].into(),
        moves: moves.collect(),
        ..Job::default()
    }
}

/// The relations in Table 5.1 of W. van der Aalst, Process Mining (Springer 2011), page 130,
/// for the log of three times a b c d, twice a c b d, once a e d: opened, grade `published`.
///
/// That table looks at what follows directly, lessons at what comes before at all. So its
/// arrows must be seen one way, its parallel pair both ways, and what it has no relation for never in
/// one job; but for a and d, between which something always came.
#[test]
fn a_published_footprint_is_seen() {
    let mut learner = Learner::new(Joins::default());
    for (nth, job) in ["abcd", "abcd", "abcd", "acbd", "acbd", "aed"]
        .iter()
        .enumerate()
    {
        learner.add(&taken_off(nth, job));
    }
    let lessons = taught(&learner, &Answers::default());
    let off = |item: &str| Step::new(item, State::Off);
    let between = |one: &str, other: &str| lessons.between(&off(one), &off(other));
    for (first, second) in ["ab", "ac", "ae", "bd", "cd", "ed", "ad"].map(|pair| pair.split_at(1)) {
        let pair = between(first, second).unwrap();
        assert_eq!(pair.first, off(first));
        assert!(matches!(pair.ground, Ground::Seen { .. }), "{pair:?}");
    }
    let both = Ground::BothWays { there: 3, back: 2 };
    assert_eq!(between("b", "c").unwrap().ground, both);
    assert!(between("b", "e").is_none() && between("c", "e").is_none());
    // The choice that the book reads from this log: b and c, or e.
    let found = learner.alternatives(&off("d"));
    let ways: Vec<Vec<&str>> = found[0]
        .ways
        .iter()
        .map(|way| way.steps.iter().map(|step| step.item.as_str()).collect())
        .collect();
    assert_eq!(ways, [vec!["b", "c"], vec!["e"]]);
}

/// The running example of that book as an event log in XES (IEEE 1849), as the package `opyenxes`
/// 0.3.0 on PyPI carries it (`example/xes_file/general_example.xes`, six requests for compensation):
/// its four cases in which nothing is done twice, each by its letters. a: register, b: examine
/// thoroughly, c: casually, d: check the ticket, e: decide, g: pay, h: reject.
const CASES: [&str; 4] = ["adceg", "abdeh", "acdeg", "adbeh"];

/// How often one comes at some time before the other, in how many of those cases: as
/// `discover_eventually_follows_graph` of pm4py 2.7.23.11 counts it; grade `other-implementation`.
const FOLLOWS: &str = "ab2 ac2 ad4 ae4 ag2 ah2 bd1 be2 bh2 cd1 ce2 cg2 db1 dc1 de4 dg2 dh2 eg2 eh2";

#[test]
fn the_pairs_of_an_open_event_log_are_counted_as_elsewhere() {
    let mut learner = Learner::new(Joins::default());
    for (nth, case) in CASES.iter().enumerate() {
        learner.add(&taken_off(nth, case));
    }
    let lessons = taught(&learner, &Answers::default());
    let off = |item: char| Step::new(&item.to_string(), State::Off);
    let counted = |one: char, other: char| {
        let pair = FOLLOWS
            .split(' ')
            .find(|pair| pair.starts_with([one, other].iter().collect::<String>().as_str()));
        pair.map_or(0, |pair| pair[2..].parse::<u32>().unwrap())
    };
    let letters: Vec<char> = "abcdegh".chars().collect();
    let mut looked_at = 0;
    for (nth, &one) in letters.iter().enumerate() {
        for &other in &letters[nth + 1..] {
            let (there, back) = (counted(one, other), counted(other, one));
            let seen = lessons
                .between(&off(one), &off(other))
                .map(|pair| match pair.ground {
                    Ground::Seen { times, .. } if pair.first == off(one) => (times, 0),
                    Ground::Seen { times, .. } => (0, times),
                    Ground::BothWays { there, back } if pair.first == off(one) => (there, back),
                    Ground::BothWays { there, back } => (back, there),
                    ref other => panic!("{other:?}"),
                });
            assert_eq!(seen.unwrap_or((0, 0)), (there, back), "{one} and {other}");
            looked_at += usize::from(there + back > 0);
        }
    }
    assert_eq!(looked_at, 17, "two of 19 are the other way round");
}

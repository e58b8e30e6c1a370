//! Orders and relations that others have published.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

#[allow(dead_code, reason = "other checks ask for more")]
mod common;

use common::{People, Shop, Truth, settle, step, taught};
use lessons::{Answers, Ground, Held, Job, Joins, Learner, Moved, Step};
use states::{ItemId, Kind, State};

fn data(name: &str) -> Vec<Vec<String>> {
    let path = format!(
        "{}/../../checks/data/orders/{name}.csv",
        env!("CARGO_MANIFEST_DIR")
    );
    let text = std::fs::read_to_string(path).unwrap();
    let rows = text.lines().skip(1);
    rows.map(|row| row.split(',').map(str::to_owned).collect())
        .collect()
}

/// Assembly orders of real products (Scholl 1993, see the README beside the data): people work
/// by them without errors, all that is open is asked, and the order strength of what was
/// learned is the published one.
#[test]
fn the_strength_of_published_orders_is_learned() {
    let rows = data("strengths");
    assert_eq!(rows.len(), 4);
    for row in rows {
        let [name, tasks, strength] = row.as_slice() else {
            panic!("{row:?}")
        };
        let count: usize = tasks.parse().unwrap();
        let pairs = data(name).into_iter().map(|pair| {
            let number = |at: usize| pair[at].parse::<usize>().unwrap() - 1;
            (number(0), number(1))
        });
        let truth = Truth::of(count, pairs);
        let mut shop = Shop::new(&truth, People::Several, 0, 1);
        shop.everything = true;
        let mut learner = Learner::new(Joins::default());
        for _ in 0..3 {
            learner.add(&shop.job());
        }
        let mut answers = Answers::default();
        let asked = settle(&learner, &truth, &mut answers);
        let bound = count as f64 * (truth.width() as f64 + (count as f64).log2());
        assert!((asked as f64) < bound, "{name}: {asked} of {bound:.0}");
        let pairs = taught(&learner, &answers).pairs();
        let needed = pairs
            .iter()
            .filter(|pair| pair.held != Held::Either)
            .count();
        let learned = 100.0 * needed as f64 / (count * (count - 1) / 2) as f64;
        assert_eq!(&format!("{learned:.2}"), strength, "{name}");
        let path = taught(&learner, &answers).path_to(&[step(0)]).unwrap();
        assert!(path.holds > 0.99);
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
        let moves = job.chars().zip(0..).map(|(item, minute)| Moved {
            item: ItemId::new(item),
            kind: Kind::Part,
            from: State::On,
            to: State::Off,
            minute,
        });
        learner.add(&Job {
            name: format!("{nth}"),
            by: [format!("person {nth}")].into(),
            moves: moves.collect(),
            ..Job::default()
        });
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

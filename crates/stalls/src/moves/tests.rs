//! Every neighbour keeps the rules, and is placed as it would be from nothing.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

use super::{Moves, sequence};
use crate::days::Days;
use crate::plan::finished;
use crate::ready::Ready;
use crate::search::Genes;
use crate::{Floor, Lift, Order, Person, Phase, Spread, Stall, StallNeed, Windows, Work};
use common::{Size, breaches, random_floor};
use proptest::prelude::*;
use rand::SeedableRng;
use rand_chacha::ChaCha8Rng;

#[path = "../../tests/common/mod.rs"]
mod common;

type Change = fn(&mut Moves, &mut Genes, &mut ChaCha8Rng);

const CHANGES: [(&str, Change); 7] = [
    ("before the wait", |moves, genes, chance| {
        moves.before_the_wait(genes, chance);
    }),
    ("another way", |moves, genes, chance| {
        moves.another_way(genes, chance);
    }),
    ("whole elsewhere", |moves, genes, chance| {
        moves.whole_elsewhere(genes, chance);
    }),
    ("whole earlier", |moves, genes, chance| {
        moves.whole_earlier(genes, chance);
    }),
    ("swap", |_, genes, chance| sequence::swap(genes, chance)),
    ("near", |_, genes, chance| sequence::near(genes, chance)),
    ("far", |_, genes, chance| sequence::far(genes, chance)),
];

fn floor() -> impl Strategy<Value = Floor> {
    let sizes = (2_usize..6, 1_usize..5, 2_usize..12, any::<bool>());
    (any::<u32>(), sizes).prop_map(|(seed, (stalls, people, orders, narrow))| {
        let size = Size {
            stalls,
            people,
            orders,
            days: 4,
            narrow,
        };
        let mut floor = random_floor(u64::from(seed), size);
        let faults = floor.faults();
        floor.orders.retain(|order| {
            let mut places = faults.iter().map(|fault| fault.place.split(',').next());
            places.all(|place| place != Some(order.name.as_str()))
        });
        floor
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(120))]

    #[test]
    fn every_neighbour_keeps_the_rules_and_is_placed_as_from_nothing(
        floor in floor(),
        seed in any::<u64>(),
        steps in prop::collection::vec((0_usize..CHANGES.len(), any::<bool>()), 1..30),
    ) {
        prop_assume!(!floor.orders.is_empty());
        let ready = Ready::new(&floor);
        let mut chance = ChaCha8Rng::seed_from_u64(seed);
        let mut days = Days::new(&ready, Vec::new());
        let mut genes = days.first().swap_remove(0);
        days.score(&genes, i64::MAX);
        days.keep(&genes);
        for (kind, kept) in steps {
            let (name, change) = CHANGES[kind];
            let mut next = genes.clone();
            change(&mut days.moves, &mut next, &mut chance);
            let tokens = |genes: &Genes| {
                let mut tokens = genes.sequence.clone();
                tokens.sort_unstable();
                tokens
            };
            prop_assert_eq!(tokens(&next), tokens(&genes), "{} loses a stretch", name);
            let score = days.score(&next, i64::MAX);
            if kept {
                days.keep(&next);
                genes = next.clone();
            }
            let mut anew = Days::new(&ready, Vec::new());
            prop_assert_eq!(score, anew.score(&next, i64::MAX), "{}", name);
            // Whoever stops early does so only where it costs more than was asked.
            prop_assert!(anew.score(&next, score) == score);
            prop_assert!(anew.score(&next, score - 1) >= score);
            let plan = finished(&ready, &mut anew, 0, 1);
            prop_assert_eq!(breaches(&plan), Vec::<String>::new(), "{}", name);
        }
    }
}

#[test]
fn a_late_order_gets_before_what_it_waits_for() {
    let hours = Windows::new([(0, 1000)]);
    let order = |name: &str, promise: i64| Order {
        name: name.to_owned(),
        promise: Some(promise),
        phases: vec![Phase {
            what: "work".to_owned(),
            does: crate::Does::Work(Work {
                skill: None,
                minutes: Spread::sure(100),
                stall: StallNeed::Lift,
                helpers: 0,
                on_the_road: false,
            }),
            rolls: true,
        }],
        ..Order::default()
    };
    let person = |name: &str| Person {
        name: name.to_owned(),
        hours: hours.clone(),
        ..Person::default()
    };
    let floor = Floor {
        opening: hours.clone(),
        stalls: vec![Stall {
            name: "1".to_owned(),
            lift: Some(Lift::default()),
            ..Stall::default()
        }],
        people: vec![person("Ana"), person("Ben")],
        orders: vec![order("first", 900), order("late", 100)],
        ..Floor::default()
    };
    let ready = Ready::new(&floor);
    let mut days = Days::new(&ready, Vec::new());
    let mut genes = days.sequence_of([0, 1].into_iter());
    days.score(&genes, i64::MAX);
    days.keep(&genes);
    let mut waits = Vec::new();
    let late = days.moves.kept.of(1, 0);
    days.moves.kept.waits_for(&ready, late, &mut waits);
    // The lift is what it waits for: one of the two people is free.
    assert!(waits.contains(&days.moves.kept.of(0, 0)), "{waits:?}");
    let mut chance = ChaCha8Rng::seed_from_u64(1);
    while !days.moves.before_the_wait(&mut genes, &mut chance) {}
    assert_eq!(genes.sequence, [1, 0]);
}

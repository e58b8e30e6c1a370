//! Shops drawn from seeds: several people and phones, facts doubled, reordered, delayed,
//! taken back and contradictory. After every question the account is held against a
//! plain model, and no vehicle is handed over against what was known.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod model;
mod world;

use model::{Is, Made, Open};
use repair::*;
use std::collections::{BTreeMap, BTreeSet};
use world::World;

/// What happened over all runs, so that a simulation in which nothing ever happens fails.
#[derive(Debug, Default)]
struct Tally {
    left: u32,
    left_with_a_waiver: u32,
    refused: u32,
    never: u32,
    alarms: u32,
    disputes: u32,
}

#[test]
fn a_seeded_shop_agrees_with_a_plain_model() {
    let runs = std::env::var("BUTTONUP_SIMULATION_RUNS")
        .map_or(500, |runs| runs.parse().expect("a number of runs"));
    let mut tally = Tally::default();
    for seed in 0..runs {
        // The seed is all that is needed to see it again.
        let outcome = std::panic::catch_unwind(|| run(seed));
        match outcome {
            Ok(one) => tally.add(&one),
            Err(panic) => {
                eprintln!("simulation failed with seed {seed}");
                std::panic::resume_unwind(panic);
            }
        }
    }
    println!("{runs} runs: {tally:?}");
    assert!(tally.left > 0, "no vehicle ever left: {tally:?}");
    assert!(
        tally.left_with_a_waiver > 0,
        "none left with a waiver: {tally:?}"
    );
    assert!(tally.refused > 0, "none was ever refused: {tally:?}");
    assert!(
        tally.never > 0,
        "nothing that can't be waived was asked for: {tally:?}"
    );
    assert!(tally.alarms > 0, "no late fact raised an alarm: {tally:?}");
    assert!(
        tally.disputes > 0,
        "no two phones ever disagreed: {tally:?}"
    );
}

impl Tally {
    fn add(&mut self, one: &Tally) {
        self.left += one.left;
        self.left_with_a_waiver += one.left_with_a_waiver;
        self.refused += one.refused;
        self.never += one.never;
        self.alarms += one.alarms;
        self.disputes += one.disputes;
    }
}

fn run(seed: u64) -> Tally {
    let mut world = World::new(seed);
    let mut tally = Tally::default();
    // By the model: what was waived, and what was known at the hand-over.
    let mut waived = BTreeSet::new();
    let mut left: Option<BTreeSet<String>> = None;
    for _ in 0..10 + world.draw(30) {
        let device = world.draw(3);
        match world.draw(12) {
            0..=5 => world.act(device),
            6..=8 => world.send(device),
            9 => world.fetch(device),
            10 => world.time_passes(),
            _ => waive(&mut world, &mut waived, left.is_some(), &mut tally),
        }
    }
    compare(&world, &mut tally);
    let hours_later = world.one_in(2);
    let device = world.draw(3);
    world.close(device);
    if hours_later {
        world.time_passes();
    }
    while world.one_in(2) {
        waive(&mut world, &mut waived, left.is_some(), &mut tally);
    }
    hand_over(&mut world, &waived, &mut left, &mut tally);
    for _ in 0..world.draw(6) {
        let device = world.draw(3);
        world.act(device);
    }
    world.everything_arrives();
    compare(&world, &mut tally);
    alarms(&world, &waived, left.as_ref(), &mut tally);
    tally
}

/// Where everything is, and what is open, by the account and by the model.
fn compare(world: &World, tally: &mut Tally) {
    let account = Account::of(&world.order);
    let book = world.book();
    let mut open = Open::new();
    for item in &account.open {
        tally.disputes += u32::from(item.disputed);
        let pieces = item.pieces.iter().map(|piece| {
            let stands = piece.stands.iter().map(|stand| {
                let made = match stand.piece {
                    PieceIs::Original => Made::Old,
                    PieceIs::New => Made::New,
                    PieceIs::Substitute => Made::Other,
                };
                (model::is(stand.state), made)
            });
            (piece.position, stands.collect())
        });
        open.insert(item.item.as_str().to_owned(), pieces.collect());
    }
    assert_eq!(open, book.open(), "what is open");
    for item in account.items.keys() {
        for at in account.positions(item) {
            let stands: BTreeSet<Is> = account
                .moves
                .stands(item, at)
                .into_iter()
                .map(|stand| model::is(stand.state))
                .collect();
            let by_model = book.whereabouts(item.as_str(), at);
            let by_model: BTreeSet<Is> = by_model.into_iter().map(|(is, _)| is).collect();
            assert_eq!(stands, by_model, "where {item} {at} is");
        }
    }
    let answer = may(&world.order, Gate::HandOver, &world.rules());
    assert_eq!(
        keys(&answer.fit_to_go),
        model_keys(world),
        "what speaks against it"
    );
}

fn keys(reasons: &[Reason]) -> BTreeSet<String> {
    reasons.iter().map(|reason| reason.key.0.clone()).collect()
}

fn model_keys(world: &World) -> BTreeSet<String> {
    let book = world.book();
    let shut = book.against().into_keys();
    shut.chain(book.told()).collect()
}

/// Somebody waives what they see first, whatever it is.
fn waive(world: &mut World, waived: &mut BTreeSet<String>, left: bool, tally: &mut Tally) {
    let against = world.book().against();
    if against.is_empty() || left {
        return;
    }
    let which = world.draw(against.len());
    let (key, may_be) = against.into_iter().nth(which).unwrap();
    let asked = world.ask(Request::Waive {
        gate: Gate::HandOver,
        reason: ReasonKey(key.clone()),
        words: Words([2; 32]),
    });
    assert_eq!(asked.is_ok(), may_be, "{key}: {asked:?}");
    if may_be {
        waived.insert(key);
    } else {
        tally.never += 1;
    }
}

/// The reasons that are not waived. A waiver is worth nothing once its reason can't be
/// waived any more: the thing has turned out to be something else.
fn standing(against: &BTreeMap<String, bool>, waived: &BTreeSet<String>) -> BTreeSet<String> {
    against
        .iter()
        .filter(|(key, may_be)| !(**may_be && waived.contains(*key)))
        .map(|(key, _)| key.clone())
        .collect()
}

/// No vehicle leaves against what is known; and none is held that may leave.
fn hand_over(
    world: &mut World,
    waived: &BTreeSet<String>,
    left: &mut Option<BTreeSet<String>>,
    tally: &mut Tally,
) {
    let against = world.book().against();
    let stands = standing(&against, waived);
    let asked = world.ask(Request::HandOver {
        leaves: Leaves::DrivesAway,
        ending: Ending::Repaired,
        boxes: None,
        signature: None,
        signed_by: None,
    });
    match asked {
        Ok(Decision::HandedOver { known, .. }) => {
            assert!(stands.is_empty(), "it left against {stands:?}");
            assert!(
                against.values().all(|may_be| *may_be),
                "never to be waived: {against:?}"
            );
            let known: BTreeSet<String> = known.into_iter().map(|key| key.0).collect();
            assert_eq!(known, model_keys(world), "what was known");
            tally.left += 1;
            tally.left_with_a_waiver += u32::from(!against.is_empty());
            *left = Some(known);
        }
        Err(Refusal::StillOpen { reasons, .. }) => {
            agree(
                &keys(&reasons),
                &stands,
                waived,
                "every reason, and no other",
            );
            tally.refused += 1;
        }
        other => panic!("neither yes nor no: {other:?}"),
    }
}

/// The core and the model name the same reasons. The model does not count how much of a
/// reason was waived, so what was waived for less may stand again; `gates` holds that rule.
fn agree(core: &BTreeSet<String>, model: &BTreeSet<String>, waived: &BTreeSet<String>, what: &str) {
    let again: BTreeSet<String> = core.difference(model).cloned().collect();
    assert!(
        again.is_subset(waived),
        "{what}: {again:?} stand for the core alone"
    );
    assert!(model.is_subset(core), "{what}: {model:?} and {core:?}");
}

/// What came in after it left and stands open raises the alarm, and nothing else does.
fn alarms(
    world: &World,
    waived: &BTreeSet<String>,
    left: Option<&BTreeSet<String>>,
    tally: &mut Tally,
) {
    let raised = keys(&late_alarms(&world.order, &world.rules()));
    let expected: BTreeSet<String> = left.map_or_else(BTreeSet::new, |known| {
        let mut after = standing(&world.book().against(), waived);
        after.retain(|key| !model::was_known(key, known) && key != "owed:LevelCold:coolant");
        after
    });
    agree(&raised, &expected, waived, "left, and this came in after");
    tally.alarms += u32::from(!raised.is_empty());
}

//! Shops drawn from seeds: several people and phones, facts doubled, reordered, delayed,
//! taken back and contradictory. After every question the account is held against a
//! plain model, and no vehicle is handed over against what was known.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod desk;
mod model;
mod papers;
mod told;
mod world;

use model::{Book, Is, Made, Open};
use record::form::Form;
use record::v1::basics::ReasonKeyForm;
use repair::*;
use std::collections::{BTreeMap, BTreeSet};
use world::World;

/// What happened over all runs, so that a simulation in which nothing ever happens fails.
#[derive(Debug, Default)]
struct Tally {
    left: u32,
    left_with_a_waiver: u32,
    left_apart: u32,
    withdrawn: u32,
    refused: u32,
    never: u32,
    alarms: u32,
    disputes: u32,
    told_apart: u32,
    torque_asked: u32,
    one_thing: u32,
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
    assert!(tally.left_apart > 0, "none was collected apart: {tally:?}");
    assert!(tally.withdrawn > 0, "no waiver was withdrawn: {tally:?}");
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
    assert!(
        tally.told_apart > 0,
        "nobody told anything apart: {tally:?}"
    );
    assert!(
        tally.torque_asked > 0,
        "no torque was ever asked after: {tally:?}"
    );
    assert!(
        tally.one_thing > 0,
        "no two names ever were one thing: {tally:?}"
    );
}

impl Tally {
    fn add(&mut self, one: &Tally) {
        self.left += one.left;
        self.left_with_a_waiver += one.left_with_a_waiver;
        self.left_apart += one.left_apart;
        self.withdrawn += one.withdrawn;
        self.refused += one.refused;
        self.never += one.never;
        self.alarms += one.alarms;
        self.disputes += one.disputes;
        self.told_apart += one.told_apart;
        self.torque_asked += one.torque_asked;
        self.one_thing += one.one_thing;
    }
}

fn run(seed: u64) -> Tally {
    let mut world = World::new(seed);
    let mut tally = Tally::default();
    // By the model: what was waived, and what was known at the hand-over.
    let mut waived = Waived::new();
    let mut left: Option<BTreeSet<String>> = None;
    for _ in 0..10 + world.draw(30) {
        let device = world.draw(3);
        match world.draw(15) {
            12 => desk::ask(&mut world),
            13 => withdraw(&mut world, &mut waived, &mut tally),
            0..=5 => world.act(device),
            6..=8 => world.send(device),
            9 | 14 => world.fetch(device),
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
    if world.one_in(4) {
        withdraw(&mut world, &mut waived, &mut tally);
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
            let stands = piece.stands.iter().map(stand);
            (piece.position, stands.collect())
        });
        open.insert(item.item.as_str().to_owned(), pieces.collect());
    }
    assert_eq!(open, book.open(), "what is open");
    let known: Vec<&str> = account.items.keys().map(ItemId::as_str).collect();
    let by_model: Vec<&str> = book.things().keys().map(String::as_str).collect();
    assert_eq!(known, by_model, "what was declared");
    for item in account.items.values() {
        whole(&account, &book, item);
    }
    let two_names = |item: &ItemId| account.moves.name(item) != item;
    let shields = world::SHIELDS.map(ItemId::new);
    tally.one_thing += u32::from(shields.iter().any(two_names));
    tally.told_apart += u32::from(!account.told_apart.is_empty());
    let answer = may(&world.order, Gate::HandOver, &world.rules());
    let fit: BTreeSet<String> = book.against().into_keys().chain(book.told()).collect();
    assert_eq!(keys(&answer.fit_to_go), fit, "what speaks against it");
    tally.torque_asked += u32::from(fit.iter().any(|key| key.ends_with(":torque")));
    let papers: BTreeSet<String> = world.papers().list().into_keys().collect();
    assert_eq!(keys(&answer.papers), papers, "what the desk has to see to");
}

fn stand(stand: &Stand) -> (Is, Made) {
    let made = match stand.piece {
        PieceIs::Original => Made::Old,
        PieceIs::New => Made::New,
        PieceIs::Substitute => Made::Other,
    };
    (model::is(stand.state), made)
}

/// One item, at home or not: what it is, by the account and by the model.
fn whole(account: &Account, book: &Book<'_>, item: &Item) {
    let name = item.id.as_str();
    let by_model = &book.things()[name];
    let told = book.known_as(name).expect("it was declared");
    let apart = account.told_apart.get(&item.id);

    let places: BTreeSet<(System, Zone)> = account
        .readings(item)
        .iter()
        .map(|item| (item.system, item.zone))
        .collect();
    assert_eq!(places, told.places, "where {name} belongs");
    assert!(
        places.contains(&(item.system, item.zone)),
        "{name} is read as somebody told"
    );
    assert_eq!(
        item.is_safety(),
        model::strict(by_model),
        "{name}, by the stricter of what was told"
    );
    assert!(told.names.contains(&item.label.0), "what {name} is called");

    let sizes = one_or_all(&item.size, apart.map(|apart| &apart.sizes));
    let sizes: BTreeSet<String> = sizes.map(|size| size.as_str().to_owned()).collect();
    assert_eq!(sizes, told.sizes, "how large {name} is");
    let torques = one_or_all(&item.pattern, apart.map(|apart| &apart.patterns));
    let torques: BTreeSet<Vec<String>> = torques.map(told::passes).collect();
    assert_eq!(torques, told.torques, "how {name} is tightened");

    let pieces: BTreeSet<u16> = item.pieces.iter().map(|piece| piece.position).collect();
    assert_eq!(pieces, told.positions(), "the pieces of {name}");
    let mut counts: Vec<usize> = told.counts.iter().map(Vec::len).collect();
    counts.retain(|_| told.counts.len() > 1);
    let apart = apart.map_or(&[][..], |apart| &apart.counts);
    assert_eq!(apart, counts, "how many of {name} there are");

    assert_eq!(account.positions(&item.id), book.places(name), "{name}");
    for at in book.places(name) {
        let stands: BTreeSet<(Is, Made)> = account
            .moves
            .stands(&item.id, at)
            .iter()
            .map(stand)
            .collect();
        assert_eq!(stands, book.whereabouts(name, at), "where {name} {at} is");
        let home = stand(&account.home(&item.id, at));
        assert_eq!(home, book.home(by_model, name, at), "where it belongs");
    }
}

/// What holds, or all that people told apart.
fn one_or_all<'a, T>(one: &'a Option<T>, all: Option<&'a Vec<T>>) -> impl Iterator<Item = &'a T> {
    one.iter().chain(all.into_iter().flatten())
}

/// The name of a reason as it is spelled where it is stored.
fn spelled(key: &ReasonKey) -> String {
    ReasonKeyForm::of(key).0
}

fn keys(reasons: &[Reason]) -> BTreeSet<String> {
    reasons.iter().map(|reason| spelled(&reason.key)).collect()
}

/// Both lists by the model: everything that is told at a hand-over.
fn model_keys(world: &World) -> BTreeSet<String> {
    let book = world.book();
    let fit = book.against().into_keys().chain(book.told());
    fit.chain(world.papers().list().into_keys()).collect()
}

/// What the desk's list holds the vehicle here for; all of it can be waived.
fn papers_against(world: &World) -> BTreeMap<String, bool> {
    let mut list = world.papers().list();
    list.retain(|_, holds| *holds);
    list
}

/// What was waived, each time with the command that did.
type Waived = Vec<(String, CommandId)>;

fn is_waived(waived: &Waived, key: &str) -> bool {
    waived.iter().any(|(reason, _)| reason == key)
}

/// A waiver is taken back: its reason stands again, unless another one lets it pass.
fn withdraw(world: &mut World, waived: &mut Waived, tally: &mut Tally) {
    if waived.is_empty() {
        return;
    }
    // The one given last most likely still counts.
    let which = match world.one_in(2) {
        true => waived.len() - 1,
        false => world.draw(waived.len()),
    };
    let (_, waiver) = waived.remove(which);
    world
        .ask(Request::WithdrawWaiver { waiver })
        .expect("it was given");
    tally.withdrawn += 1;
}

/// Somebody waives what they see first, whatever it is.
fn waive(world: &mut World, waived: &mut Waived, left: bool, tally: &mut Tally) {
    let mut against = world.book().against();
    against.extend(papers_against(world));
    if against.is_empty() || left {
        return;
    }
    let which = world.draw(against.len());
    let (key, may_be) = against.into_iter().nth(which).unwrap();
    let answer = may(&world.order, Gate::HandOver, &world.rules());
    let seen = answer.reasons().find(|reason| spelled(&reason.key) == key);
    let figure = seen.map(|reason| reason.figure.clone()).unwrap_or_default();
    let asked = world.ask(Request::Waive {
        gate: Gate::HandOver,
        reason: ReasonKeyForm(key.clone()).read().unwrap(),
        figure,
        words: Words([2; 32]),
    });
    assert_eq!(asked.is_ok(), may_be, "{key}: {asked:?}");
    if may_be {
        let given = world.heard.last().expect("the waiver").command.clone();
        waived.push((key, given));
    } else {
        tally.never += 1;
    }
}

/// The reasons that are not waived. A waiver is worth nothing once its reason can't be
/// waived any more: the thing has turned out to be something else.
fn standing(against: &BTreeMap<String, bool>, waived: &Waived) -> BTreeSet<String> {
    against
        .iter()
        .filter(|(key, may_be)| !(**may_be && is_waived(waived, key)))
        .map(|(key, _)| key.clone())
        .collect()
}

/// No vehicle leaves against what is known; and none is held that may leave.
fn hand_over(
    world: &mut World,
    waived: &Waived,
    left: &mut Option<BTreeSet<String>>,
    tally: &mut Tally,
) {
    // Collected dismantled, what is open goes with it; the papers are wanted all the same.
    let apart = world.one_in(8);
    let mut against = papers_against(world);
    if !apart {
        against.extend(world.book().against());
    }
    let stands = standing(&against, waived);
    let asked = world.ask(Request::HandOver {
        leaves: if apart {
            Leaves::CollectedApart
        } else {
            Leaves::DrivesAway
        },
        ending: Ending::Repaired,
        boxes: apart.then_some(2),
        signature: None,
        signed_by: apart.then_some(Words([3; 32])),
    });
    match asked {
        Ok(Decision::HandedOver { known, .. }) => {
            assert!(stands.is_empty(), "it left against {stands:?}");
            assert!(
                against.values().all(|may_be| *may_be),
                "never to be waived: {against:?}"
            );
            let known: BTreeSet<String> = known.iter().map(spelled).collect();
            assert_eq!(known, model_keys(world), "what was known");
            tally.left += 1;
            tally.left_apart += u32::from(apart);
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
fn agree(core: &BTreeSet<String>, model: &BTreeSet<String>, waived: &Waived, what: &str) {
    let again: BTreeSet<String> = core.difference(model).cloned().collect();
    assert!(
        again.iter().all(|key| is_waived(waived, key)),
        "{what}: {again:?} stand for the core alone"
    );
    assert!(model.is_subset(core), "{what}: {model:?} and {core:?}");
}

/// What came in after it left and stands open raises the alarm, and nothing else does.
fn alarms(world: &World, waived: &Waived, left: Option<&BTreeSet<String>>, tally: &mut Tally) {
    let raised = keys(&late_alarms(&world.order, &world.rules()));
    let expected: BTreeSet<String> = left.map_or_else(BTreeSet::new, |known| {
        let mut after = standing(&world.book().against(), waived);
        after.retain(|key| !model::was_known(key, known) && key != "owed:LevelCold:coolant");
        after
    });
    agree(&raised, &expected, waived, "left, and this came in after");
    tally.alarms += u32::from(!raised.is_empty());
}

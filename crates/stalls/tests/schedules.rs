//! Plans held against the plain checker, against counting through, and against bad input.

#![allow(
    clippy::unwrap_used,
    clippy::print_stdout,
    reason = "a test fails by panicking, and prints what it measured"
)]

mod common;

use common::{Size, breaches, random_floor};
use proptest::prelude::*;
use stalls::{
    Does, Floor, Lift, Minute, Order, Person, Phase, Plan, Running, Spread, Stall, StallNeed,
    Takes, Wait, WaitsFor, Windows, Work, plan,
};
use std::time::{Duration, Instant};

fn quick(floor: &Floor, looked_at: u64) -> Plan {
    plan(floor, None, 1, &mut |seen| seen < looked_at).unwrap()
}

fn small() -> impl Strategy<Value = Floor> {
    (
        0_u64..1_000_000,
        1_usize..5,
        1_usize..4,
        1_usize..9,
        any::<bool>(),
    )
        .prop_map(|(seed, stalls, people, orders, narrow)| {
            let size = Size {
                stalls: stalls.max(2),
                people,
                orders,
                days: 4,
                narrow,
            };
            random_floor(seed, size)
        })
}

/// A random floor may ask for what it has not (a heavy vehicle, no flat stall): such orders go.
fn without_faults(mut floor: Floor) -> Floor {
    let faults = floor.faults();
    let wrong = |order: &Order| {
        faults
            .iter()
            .any(|fault| fault.place.split(',').next() == Some(order.name.as_str()))
    };
    floor.orders.retain(|order| !wrong(order));
    assert_eq!(floor.faults(), []);
    floor
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn plans_keep_the_rules(floor in small(), looked_at in 1_u64..200) {
        let floor = without_faults(floor);
        let plan = quick(&floor, looked_at);
        prop_assert_eq!(breaches(&plan), Vec::<String>::new());
        prop_assert!(plan.bound <= plan.cost.points);
        prop_assert!((0.0..=1.0).contains(&plan.gap()));
    }

    #[test]
    fn as_time_passes_plans_keep_the_rules_and_nothing_changes_without_news(floor in small(), later in 1_i64..3000) {
        let floor = without_faults(floor);
        let first = quick(&floor, 60);
        let again = plan(&floor, Some(&first), 2, &mut |seen| seen < 60).unwrap();
        prop_assert_eq!(&again, &first);
        let then = first.floor_at(floor.now + later);
        if then.orders.is_empty() || then.opening.end().unwrap() <= then.now {
            return Ok(());
        }
        prop_assert_eq!(then.faults(), Vec::new());
        let kept = plan(&then, Some(&first), 3, &mut |seen| seen < 60).unwrap();
        prop_assert_eq!(breaches(&kept), Vec::<String>::new());
        // What is left of it is where it was.
        for one in &kept.placed {
            let name = &then.orders[one.order].name;
            let old = floor.orders.iter().position(|order| order.name == *name).unwrap();
            let skipped = floor.orders[old].phases.len() - then.orders[one.order].phases.len();
            let before = first.of(old, one.phase + skipped).unwrap();
            prop_assert_eq!((before.from, before.to, &before.people, before.stall), (one.from, one.to, &one.people, one.stall));
        }
        // With news, everything is still by the rules, and what has begun stays.
        let mut news = then.clone();
        news.people[0].away = Windows::new([(then.now, then.now + 600)]);
        if news.faults().is_empty() {
            let anew = plan(&news, Some(&first), 3, &mut |seen| seen < 60).unwrap();
            prop_assert_eq!(breaches(&anew), Vec::<String>::new());
        }
    }

    #[test]
    fn the_same_seed_plans_the_same_and_more_looking_is_never_worse(floor in small()) {
        let floor = without_faults(floor);
        let (few, many) = (quick(&floor, 20), quick(&floor, 120));
        prop_assert_eq!(&few, &quick(&floor, 20));
        prop_assert!(many.cost.points <= few.cost.points);
    }
}

fn day() -> Windows {
    Windows::new((0..5).flat_map(|day| {
        let day = day * 1440;
        [(day + 480, day + 720), (day + 750, day + 1020)]
    }))
}

fn stage(what: &str, minutes: i64, stall: StallNeed, rolls: bool) -> Phase {
    Phase {
        what: what.to_owned(),
        does: Does::Work(Work {
            skill: None,
            minutes: Spread::sure(minutes),
            stall,
            helpers: 0,
            on_the_road: false,
        }),
        rolls,
    }
}

fn part(comes: Minute, rolls: bool) -> Phase {
    Phase {
        what: "part".to_owned(),
        does: Does::Wait(Wait {
            waits_for: WaitsFor::Part,
            takes: Takes::Comes(Spread::sure(comes)),
        }),
        rolls,
    }
}

fn order(name: &str, promise: Option<Minute>, phases: Vec<Phase>) -> Order {
    Order {
        name: name.to_owned(),
        promise,
        phases,
        ..Order::default()
    }
}

fn shop(lifts: usize, people: &[&str], orders: Vec<Order>) -> Floor {
    Floor {
        now: 480,
        opening: day(),
        stalls: (0..lifts)
            .map(|at| Stall {
                name: format!("stall {}", at + 1),
                lift: Some(Lift::default()),
                ..Stall::default()
            })
            .collect(),
        people: (people.iter())
            .map(|name| Person {
                name: (*name).to_owned(),
                hours: day(),
                ..Person::default()
            })
            .collect(),
        orders,
        ..Floor::default()
    }
}

#[test]
fn a_vehicle_that_would_block_the_only_stall_waits_for_its_part() {
    // Taken apart now, the van would hold the stall until its part comes, and the hatch breaks.
    let van = vec![
        stage("take apart", 60, StallNeed::Lift, false),
        part(1440 + 600, false),
        stage("put together", 60, StallNeed::Lift, true),
    ];
    let hatch = vec![stage("brakes", 120, StallNeed::Lift, true)];
    let floor = shop(
        1,
        &["Ana"],
        vec![
            order("van", Some(1440 + 1000), van),
            order("hatch", Some(900), hatch),
        ],
    );
    let plan = quick(&floor, 300);
    assert_eq!(breaches(&plan), Vec::<String>::new());
    assert_eq!(plan.cost.broken, 0);
    assert!(plan.of(1, 0).unwrap().from < plan.of(0, 0).unwrap().from);
}

#[test]
fn a_vehicle_behind_one_that_cannot_roll_waits_until_it_is_out() {
    let mut front = order(
        "front",
        None,
        vec![stage("put together", 200, StallNeed::Lift, true)],
    );
    (front.rolls, front.stands_in) = (false, Some(0));
    let mut behind = order(
        "behind",
        Some(600),
        vec![stage("tyres", 30, StallNeed::Lift, true)],
    );
    behind.stands_in = Some(1);
    let mut floor = shop(3, &["Ana", "Ben"], vec![front, behind]);
    floor.stalls[1] = Stall {
        name: "behind".to_owned(),
        crosses: vec![0],
        ..Stall::default()
    };
    let plan = quick(&floor, 100);
    assert_eq!(breaches(&plan), Vec::<String>::new());
    assert!(plan.of(1, 0).unwrap().from >= 680, "{:?}", plan.placed);
}

#[test]
fn work_runs_over_the_night_and_gives_way_to_nothing() {
    let floor = shop(
        2,
        &["Ana"],
        vec![
            order(
                "long",
                Some(4 * 1440),
                vec![stage("engine", 600, StallNeed::Lift, true)],
            ),
            order(
                "short",
                None,
                vec![stage("tyres", 30, StallNeed::Lift, true)],
            ),
        ],
    );
    let plan = quick(&floor, 200);
    let long = plan.of(0, 0).unwrap();
    let day_after = long.to > 1440;
    assert!(day_after, "{long:?}");
    assert_eq!(breaches(&plan), Vec::<String>::new());
    assert!(
        floor
            .notes()
            .iter()
            .any(|note| note.contains("longer than any day"))
    );
}

/// Every sequence of orders placed without a gap, by people who work one after another: with
/// one person, one lift and one stage an order, that is all there is.
#[test]
fn small_floors_are_planned_as_well_as_counting_through_says() {
    for seed in 0..30_i64 {
        let minutes: Vec<i64> = (0..6)
            .map(|at| 20 + (seed * 37 + at * at * 53) % 90)
            .collect();
        let promise = |at: i64| 480 + 60 + (seed * 61 + at * 97) % 400;
        let orders: Vec<Order> = (0..6_i64)
            .map(|at| {
                let work = minutes[usize::try_from(at).unwrap()];
                let phases = vec![stage("work", work, StallNeed::Lift, true)];
                let mut order = order(&format!("order {at}"), Some(promise(at)), phases);
                order.promise_weight = 1 + (seed + at) % 3;
                order
            })
            .collect();
        let floor = shop(1, &["Ana"], orders);
        let mut best = i64::MAX;
        let mut sequence: Vec<usize> = (0..6).collect();
        each_sequence(&mut sequence, 0, &mut |sequence| {
            let (mut at, mut points) = (480, 0);
            for one in sequence {
                let order = &floor.orders[*one];
                at = floor.opening.finish(at, minutes[*one]).unwrap();
                let late = (at - order.promise.unwrap()).max(0);
                if late > 0 {
                    points += order.promise_weight
                        * (floor.rules.broken + late * floor.rules.late_minute);
                }
            }
            best = best.min(points + 6 * floor.rules.moved);
        });
        let plan = quick(&floor, 3_000);
        assert_eq!(plan.cost.points, best, "seed {seed}");
        assert!(
            plan.bound <= best,
            "seed {seed}: {} above {best}",
            plan.bound
        );
    }
}

fn each_sequence(list: &mut Vec<usize>, from: usize, see: &mut dyn FnMut(&[usize])) {
    if from == list.len() {
        see(list);
    }
    for at in from..list.len() {
        list.swap(from, at);
        each_sequence(list, from + 1, see);
        list.swap(from, at);
    }
}

#[test]
fn an_answer_is_there_in_a_tenth_of_a_second() {
    let size = Size {
        stalls: 8,
        people: 6,
        orders: 40,
        days: 14,
        narrow: false,
    };
    for seed in 0..5 {
        let floor = without_faults(random_floor(seed, size));
        // The quickest of some, since the machine does other things beside.
        let first = || {
            let began = Instant::now();
            let plan = plan(&floor, None, 1, &mut |_| false).unwrap();
            (began.elapsed(), plan)
        };
        let (took, plan) = (0..5).map(|_| first()).min_by_key(|one| one.0).unwrap();
        println!("seed {seed}: {took:?}, gap {:.2}", plan.gap());
        assert!(took < Duration::from_millis(100), "{took:?}");
        assert_eq!(plan.looked_at, 1);
        assert_eq!(breaches(&plan), Vec::<String>::new());
    }
}

fn says(minute: Minute) -> String {
    let day = [
        "Monday",
        "Tuesday",
        "Wednesday",
        "Thursday",
        "Friday",
        "Saturday",
    ];
    let day = day[usize::try_from(minute.div_euclid(1440)).unwrap()];
    format!(
        "{day} {:02}:{:02}",
        minute.rem_euclid(1440) / 60,
        minute % 60
    )
}

#[test]
fn each_difference_has_its_sentence() {
    let van = |comes| {
        vec![
            stage("take apart", 60, StallNeed::Lift, false),
            part(comes, false),
            stage("put together", 60, StallNeed::Lift, true),
        ]
    };
    let hatch = || vec![stage("brakes", 120, StallNeed::Lift, true)];
    let before = shop(
        2,
        &["Ana", "Ben"],
        vec![
            order("the van", Some(690), van(600)),
            order("the hatch", Some(900), hatch()),
        ],
    );
    let first = quick(&before, 200);
    let mut after = before.clone();
    after.orders[0].phases = van(3 * 1440 + 600);
    let second = plan(&after, Some(&first), 1, &mut |seen| seen < 400).unwrap();
    let changes: Vec<String> = (second.changes_from(&first, &says).into_iter())
        .map(|change| change.sentence)
        .collect();
    assert_eq!(
        changes,
        [
            "the van waits: its part comes Thursday 10:00; ready Thursday 11:00 instead of Monday 11:00"
        ]
    );
    // Somebody is ill.
    let mut ill = before.clone();
    let who = first.of(1, 0).unwrap().people[0];
    ill.people[who].away = Windows::new([(0, 1440)]);
    let third = plan(&ill, Some(&first), 1, &mut |seen| seen < 200).unwrap();
    assert_eq!(breaches(&third), Vec::<String>::new());
    let changes = third.changes_from(&first, &says);
    let away = |change: &stalls::Change| change.sentence.contains(" is away until Tuesday 00:00");
    assert!(changes.iter().any(away), "{changes:?}");
    assert_eq!(third.changes_from(&third, &says), []);
}

#[test]
fn what_was_said_is_changed_only_for_something_worth_it() {
    // Two alike: nothing is gained by giving them other people or stalls.
    let phases = || vec![stage("service", 90, StallNeed::Lift, true)];
    let before = shop(
        2,
        &["Ana", "Ben"],
        vec![
            order("one", Some(700), phases()),
            order("two", Some(700), phases()),
        ],
    );
    let first = quick(&before, 200);
    // News that touches neither.
    let mut after = before;
    after.orders.push(order("three", None, phases()));
    let second = plan(&after, Some(&first), 5, &mut |seen| seen < 400).unwrap();
    for at in 0..2 {
        let (old, new) = (first.of(at, 0).unwrap(), second.of(at, 0).unwrap());
        assert_eq!(
            (old.from, &old.people, old.stall),
            (new.from, &new.people, new.stall)
        );
    }
    assert_eq!(second.cost.changes, 0);
}

fn fault(floor: &Floor) -> String {
    let faults = floor.faults();
    assert!(!faults.is_empty(), "no fault");
    assert_eq!(plan(floor, None, 1, &mut |_| true).unwrap_err(), faults);
    faults
        .iter()
        .map(ToString::to_string)
        .collect::<Vec<_>>()
        .join("\n")
}

#[test]
fn bad_input_says_what_is_missing() {
    let good = || {
        shop(
            2,
            &["Ana"],
            vec![order(
                "van",
                None,
                vec![stage("brakes", 60, StallNeed::Lift, true)],
            )],
        )
    };
    let with = |change: &dyn Fn(&mut Floor)| {
        let mut floor = good();
        change(&mut floor);
        fault(&floor)
    };
    let skilled = |floor: &mut Floor| {
        let Does::Work(work) = &mut floor.orders[0].phases[0].does else {
            unreachable!()
        };
        work.skill = Some("gearbox".to_owned());
    };
    assert!(with(&skilled).contains("van, brakes: nobody has the skill gearbox"));
    let held = |floor: &mut Floor| {
        for stall in &mut floor.stalls {
            stall.held = Some("the yellow wreck".to_owned());
        }
    };
    let text = with(&held);
    assert!(
        text.contains(
            "every stall that suits it is held for good: stall 1 by the yellow wreck, stall 2"
        ),
        "{text}"
    );
    let heavy = |floor: &mut Floor| {
        floor.orders[0].weight_kg = Some(3600);
        for stall in &mut floor.stalls {
            stall.lift = Some(Lift {
                carries_kg: Some(3000),
                clears_mm: None,
            });
        }
    };
    assert!(with(&heavy).contains("it weighs 3600 kg, and the strongest lift carries 3000 kg"));
    let away = |floor: &mut Floor| floor.people[0].away = Windows::new([(0, 99_999)]);
    assert!(with(&away).contains("nobody who can do it is here in the hours given (Ana)"));
    let apart = |floor: &mut Floor| floor.orders[0].phases[0].rolls = false;
    assert!(with(&apart).contains("it can't roll when all is done"));
    let twice = |floor: &mut Floor| {
        let mut other = floor.orders[0].clone();
        other.stands_in = Some(0);
        floor.orders[0].stands_in = Some(0);
        other.name = "pickup".to_owned();
        floor.orders.push(other);
    };
    assert!(with(&twice).contains("stall 1: van and pickup stand in it"));
    let both = |floor: &mut Floor| {
        floor.orders[0].stands_in = Some(0);
        floor.orders[0].running = Some(Running {
            since: 470,
            people: vec![0],
        });
        let mut other = floor.orders[0].clone();
        other.stands_in = Some(1);
        other.name = "pickup".to_owned();
        floor.orders.push(other);
    };
    assert!(with(&both).contains("a person works on one vehicle at a time"));
    let closed = |floor: &mut Floor| floor.now = 99_999;
    assert!(with(&closed).contains("none is left after the moment"));
    let circle = |floor: &mut Floor| {
        floor.stalls[0].crosses = vec![1];
        floor.stalls[1].crosses = vec![0];
    };
    assert!(with(&circle).contains("go round in a circle"));
    let slip = |floor: &mut Floor| {
        let Does::Work(work) = &mut floor.orders[0].phases[0].does else {
            unreachable!()
        };
        work.minutes = Spread::new(60, 30, 90);
    };
    assert!(with(&slip).contains("least, likely and most in that sequence"));
    let lost = |floor: &mut Floor| floor.orders[0].rolls = false;
    assert!(with(&lost).contains("no stall is named in which it stands"));
}

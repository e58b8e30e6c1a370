//! A plain checker of plans, written from the rules alone; and random floors from a seed.

#![allow(dead_code, reason = "each test uses a part of it")]

use rand::{RngExt, SeedableRng};
use rand_chacha::ChaCha8Rng;
use stalls::{
    Does, Floor, Lift, Minute, Order, Person, Phase, Placed, Plan, Rules, Spread, Stall, StallNeed,
    Stay, Takes, Wait, WaitsFor, Windows, Work,
};

/// Everything in which a plan breaks the rules, in words.
pub fn breaches(plan: &Plan) -> Vec<String> {
    let floor = &plan.floor;
    let mut found = Vec::new();
    for (at, order) in floor.orders.iter().enumerate() {
        check_order(plan, at, order, &mut found);
    }
    people_once(plan, &mut found);
    stalls_once(plan, &mut found);
    ways(plan, &mut found);
    yard(plan, &mut found);
    found
}

fn check_order(plan: &Plan, at: usize, order: &Order, found: &mut Vec<String>) {
    let floor = &plan.floor;
    let name = &order.name;
    let mut own: Vec<&Placed> = plan.placed.iter().filter(|one| one.order == at).collect();
    own.sort_by_key(|one| one.phase);
    let numbers: Vec<usize> = own.iter().map(|one| one.phase).collect();
    if numbers != (0..order.phases.len()).collect::<Vec<_>>() {
        found.push(format!("{name}: phases {numbers:?} are placed"));
        return;
    }
    let mut ready = order.arrives.map_or(floor.now, |spread| spread.mean());
    for (one, phase) in own.iter().zip(&order.phases) {
        let runs = one.phase == 0 && order.running.is_some();
        if runs {
            let running = order.running.as_ref().expect("it runs");
            if one.from != running.since || one.people != running.people {
                found.push(format!("{name}: what has begun was changed"));
            }
            if one.to <= floor.now {
                found.push(format!("{name}: what runs is over before now"));
            }
        } else if one.from < ready {
            found.push(format!(
                "{name}, {}: begins {} before {ready}",
                phase.what, one.from
            ));
        }
        match &phase.does {
            Does::Work(work) => check_work(plan, one, work, order, runs, found),
            Does::Wait(wait) if !runs => {
                let to = match wait.takes {
                    Takes::Minutes(spread) => one.from + spread.mean(),
                    Takes::Comes(spread) if spread.mean() > floor.now => {
                        one.from.max(spread.mean())
                    }
                    Takes::Comes(_) => one.to.max(one.from),
                };
                if one.to != to || !one.people.is_empty() {
                    found.push(format!("{name}, {}: waits until {}", phase.what, one.to));
                }
            }
            Does::Wait(_) => {}
        }
        ready = one.to;
    }
    check_apart(plan, at, order, &own, found);
    let stays: Vec<&Stay> = plan.stays.iter().filter(|stay| stay.order == at).collect();
    let last = stays.iter().map(|stay| stay.to).chain([ready]).max();
    if Some(plan.ends[at]) != last {
        found.push(format!(
            "{name}: it is ready {}, not {last:?}",
            plan.ends[at]
        ));
    }
    for (number, one) in stays.iter().enumerate() {
        for other in &stays[number + 1..] {
            if one.from < other.to && other.from < one.to {
                found.push(format!("{name}: it stands in two stalls at once"));
            }
        }
    }
}

fn check_work(
    plan: &Plan,
    one: &Placed,
    work: &Work,
    order: &Order,
    runs: bool,
    found: &mut Vec<String>,
) {
    let floor = &plan.floor;
    let place = format!("{}, {}", order.name, order.phases[one.phase].what);
    let skilled = |person: &Person| {
        let skill = work.skill.as_ref();
        skill.is_none_or(|skill| person.skills.contains(skill))
    };
    if one.people.len() != work.helpers + 1 && !runs {
        found.push(format!("{place}: {} people", one.people.len()));
    }
    if one
        .people
        .first()
        .is_none_or(|first| !skilled(&floor.people[*first]))
    {
        found.push(format!("{place}: nobody skilled"));
    }
    let mut once = one.people.clone();
    once.sort_unstable();
    once.dedup();
    if once.len() != one.people.len() {
        found.push(format!("{place}: somebody helps themselves"));
    }
    let here = |minute: Minute| {
        floor.opening.is_open(minute)
            && one.people.iter().all(|person| {
                let person = &floor.people[*person];
                person.hours.is_open(minute) && !person.away.is_open(minute)
            })
    };
    let end = floor.opening.end().expect("the shop opens");
    if one.to <= end && !runs {
        let worked = (one.from..one.to).filter(|minute| here(*minute)).count();
        if i64::try_from(worked) != Ok(work.minutes.mean()) {
            found.push(format!("{place}: {worked} minutes worked"));
        }
        if !here(one.from) || !here(one.to - 1) {
            found.push(format!(
                "{place}: begins or ends while somebody is not here"
            ));
        }
    }
    if work.stall != StallNeed::No {
        let Some(stall) = one.stall else {
            found.push(format!("{place}: no stall"));
            return;
        };
        let it = &floor.stalls[stall];
        let suits = match (work.stall, &it.lift) {
            (StallNeed::Lift, Some(lift)) => {
                let heavy = order
                    .weight_kg
                    .zip(lift.carries_kg)
                    .is_some_and(|(a, b)| a > b);
                let high = order
                    .height_mm
                    .zip(lift.clears_mm)
                    .is_some_and(|(a, b)| a > b);
                !heavy && !high
            }
            (StallNeed::Lift, None) | (StallNeed::Flat, Some(_)) => false,
            _ => true,
        };
        let begun = order.stands_in == Some(stall) && one.phase == 0;
        if !suits || (it.held.is_some() && !begun && order.rolls) {
            found.push(format!("{place}: {} does not suit", it.name));
        }
        let inside = plan.stays.iter().any(|stay| {
            stay.order == one.order
                && stay.stall == stall
                && stay.from <= one.from.max(floor.now)
                && one.to <= stay.to
        });
        if !inside {
            found.push(format!("{place}: the vehicle is not in {}", it.name));
        }
    }
}

/// From the first bolt to the last wheel a vehicle stays in one stall.
fn check_apart(plan: &Plan, at: usize, order: &Order, own: &[&Placed], found: &mut Vec<String>) {
    let floor = &plan.floor;
    let holds = |from: Minute, to: Minute| {
        let mut stays = plan.stays.iter();
        stays.any(|stay| stay.order == at && stay.from <= from.max(floor.now) && to <= stay.to)
    };
    for pair in own.windows(2) {
        if !order.phases[pair[0].phase].rolls && !holds(pair[0].from, pair[1].to) {
            found.push(format!(
                "{}: it was moved while it could not roll",
                order.name
            ));
        }
    }
    if !order.rolls {
        let stays = plan.stays.iter().find(|stay| stay.order == at);
        let stood = stays.is_some_and(|stay| {
            Some(stay.stall) == order.stands_in && stay.from <= floor.now && stay.to >= own[0].to
        });
        if !stood {
            found.push(format!("{}: it can't roll, and left its stall", order.name));
        }
    }
}

fn people_once(plan: &Plan, found: &mut Vec<String>) {
    for (number, one) in plan.placed.iter().enumerate() {
        for other in &plan.placed[number + 1..] {
            let both = one
                .people
                .iter()
                .find(|person| other.people.contains(person));
            if let Some(both) = both
                && one.from < other.to
                && other.from < one.to
            {
                let name = &plan.floor.people[*both].name;
                found.push(format!("{name} works on two at once: {one:?} {other:?}"));
            }
        }
    }
}

fn stalls_once(plan: &Plan, found: &mut Vec<String>) {
    for (number, one) in plan.stays.iter().enumerate() {
        for other in &plan.stays[number + 1..] {
            if one.stall == other.stall && one.from < other.to && other.from < one.to {
                found.push(format!("two in one stall: {one:?} {other:?}"));
            }
        }
    }
}

/// Whoever comes in or leaves finds the stalls on the way empty.
fn ways(plan: &Plan, found: &mut Vec<String>) {
    // Who stands there from the beginning came before it.
    let came_before = |other: &Stay, minute: Minute| {
        let order = &plan.floor.orders[other.order];
        let stood = other.was_there && order.stands_in == Some(other.stall);
        other.from < minute || (stood && other.from <= plan.floor.now && other.from <= minute)
    };
    for stay in &plan.stays {
        let order = &plan.floor.orders[stay.order];
        let was_in = stay.from <= plan.floor.now && order.stands_in == Some(stay.stall);
        let goes_on = |other: &&Stay| {
            other.order == stay.order && other.stall == stay.stall && other.from == stay.to
        };
        let stays_on = plan.stays.iter().any(|other| goes_on(&other));
        let comes_on = plan.stays.iter().any(|other| {
            other.order == stay.order && other.stall == stay.stall && other.to == stay.from
        });
        // Its first stay elsewhere: it comes out of where it stood.
        let first = plan.stays.iter().filter(|other| other.order == stay.order);
        let is_first = first.map(|other| other.from).min() == Some(stay.from);
        if let Some(stood) = order
            .stands_in
            .filter(|stood| is_first && *stood != stay.stall)
        {
            let shut = plan.stays.iter().find(|other| {
                plan.floor.stalls[stood].crosses.contains(&other.stall)
                    && came_before(other, stay.from)
                    && stay.from < other.to
            });
            if let Some(other) = shut {
                found.push(format!("{stay:?} comes out over {other:?}"));
            }
        }
        let mut minutes = Vec::new();
        if !was_in && !comes_on {
            minutes.push(stay.from);
        }
        if !stays_on {
            minutes.push(stay.to);
        }
        for minute in minutes {
            let blocked = plan.stays.iter().find(|other| {
                plan.floor.stalls[stay.stall].crosses.contains(&other.stall)
                    && came_before(other, minute)
                    && minute < other.to
            });
            if let Some(other) = blocked {
                found.push(format!("{stay:?} passes {other:?} at {minute}"));
            }
        }
    }
}

/// No more stand outside between two stays than there are places.
fn yard(plan: &Plan, found: &mut Vec<String>) {
    let Some(places) = plan.floor.yard_places else {
        return;
    };
    let mut spans = Vec::new();
    for at in 0..plan.floor.orders.len() {
        let mut own: Vec<&Stay> = plan.stays.iter().filter(|stay| stay.order == at).collect();
        own.sort_by_key(|stay| stay.from);
        for pair in own.windows(2) {
            spans.push((pair[0].to, pair[1].from));
        }
    }
    for (from, _) in &spans {
        let outside = spans
            .iter()
            .filter(|one| one.0 <= *from && *from < one.1)
            .count();
        if outside > places {
            found.push(format!("{outside} stand outside at {from}"));
        }
    }
}

/// How large a random floor is.
#[derive(Clone, Copy, Debug)]
pub struct Size {
    pub stalls: usize,
    pub people: usize,
    pub orders: usize,
    pub days: i64,
    /// Stalls behind others, few places outside, helpers, held stalls.
    pub narrow: bool,
}

const SKILLS: [&str; 3] = ["engine", "brakes", "electric"];

/// A floor of this size; the same seed gives the same floor. It has no faults.
pub fn random_floor(seed: u64, size: Size) -> Floor {
    let mut chance = ChaCha8Rng::seed_from_u64(seed);
    let opening = Windows::new((0..size.days).map(|day| (day * 1440 + 480, day * 1440 + 1020)));
    let stalls = (0..size.stalls)
        .map(|at| Stall {
            name: format!("stall {}", at + 1),
            lift: (at % 3 != 2).then_some(Lift {
                carries_kg: Some(if at % 3 == 0 { 4000 } else { 2600 }),
                clears_mm: None,
            }),
            crosses: if size.narrow && at % 4 == 1 {
                vec![at - 1]
            } else {
                Vec::new()
            },
            held: None,
        })
        .collect();
    let people = (0..size.people)
        .map(|at| {
            let lunch = if at % 2 == 0 { 720 } else { 750 };
            let hours = (0..size.days).flat_map(|day| {
                let day = day * 1440;
                [(day + 480, day + lunch), (day + lunch + 30, day + 1020)]
            });
            let away = chance.random_bool(0.15).then(|| {
                let from = 1440 * chance.random_range(0..size.days) + 480;
                (from, from + chance.random_range(60..540))
            });
            Person {
                name: ["Ana", "Ben", "Cleo", "Dan", "Eva", "Finn"][at % 6].to_owned()
                    + &"'".repeat(at / 6),
                skills: (SKILLS.iter().enumerate())
                    .filter(|(skill, _)| {
                        skill % size.people.max(1) == at % 3 || chance.random_bool(0.5)
                    })
                    .map(|(_, skill)| (*skill).to_owned())
                    .collect(),
                hours: Windows::new(hours),
                away: Windows::new(away),
            }
        })
        .collect();
    let mut floor = Floor {
        now: 480,
        opening,
        stalls,
        people,
        orders: Vec::new(),
        yard_places: (size.narrow && chance.random_bool(0.5)).then(|| chance.random_range(0..3)),
        rules: Rules::default(),
    };
    for skill in SKILLS {
        let mut people = floor.people.iter();
        if !people.any(|person| person.skills.iter().any(|own| own == skill)) {
            floor.people[0].skills.push(skill.to_owned());
        }
    }
    for at in 0..size.orders {
        let order = random_order(&mut chance, &size, at);
        floor.orders.push(order);
    }
    floor
}

fn random_order(chance: &mut ChaCha8Rng, size: &Size, at: usize) -> Order {
    let last = (size.days - 1) * 1440 + 900;
    let arrives = (at > size.orders / 3)
        .then(|| 1440 * chance.random_range(0..size.days) + chance.random_range(480..900));
    let mut phases = Vec::new();
    let parts = chance.random_range(1..=3);
    for part in 0..parts {
        random_part(chance, size, part, &mut phases);
    }
    if chance.random_bool(0.4) {
        phases.push(Phase {
            what: "road test".to_owned(),
            does: Does::Work(Work {
                on_the_road: true,
                ..work(None, random_spread(chance, 15, 30), StallNeed::No, 0)
            }),
            rolls: true,
        });
    }
    let begins = arrives.unwrap_or(480);
    Order {
        name: format!("order {}", at + 1),
        weight_kg: chance
            .random_bool(0.8)
            .then(|| chance.random_range(900..3000)),
        height_mm: None,
        promise: chance
            .random_bool(0.8)
            .then(|| (begins + chance.random_range(200..4000)).min(last)),
        promise_weight: chance.random_range(1..=3),
        arrives: arrives.map(|from| Spread::new(from, from + 5, from + 30)),
        stands_in: None,
        rolls: true,
        running: None,
        phases,
    }
}

/// Work alone, or something taken apart, waited for, and put together.
fn random_part(chance: &mut ChaCha8Rng, size: &Size, part: usize, phases: &mut Vec<Phase>) {
    let skill = Some(SKILLS[chance.random_range(0..3)].to_owned());
    let need = [StallNeed::Lift, StallNeed::Any, StallNeed::Flat][chance.random_range(0..3)];
    let need = if size.stalls < 3 && need == StallNeed::Flat {
        StallNeed::Any
    } else {
        need
    };
    let helpers = usize::from(size.narrow && size.people > 1 && chance.random_bool(0.15));
    if chance.random_bool(0.5) {
        phases.push(Phase {
            what: format!("work {part}"),
            does: Does::Work(work(skill, random_spread(chance, 20, 240), need, helpers)),
            rolls: true,
        });
        if chance.random_bool(0.3) {
            phases.push(wait(chance, part, true));
        }
        return;
    }
    phases.push(Phase {
        what: format!("take apart {part}"),
        does: Does::Work(work(
            skill.clone(),
            random_spread(chance, 30, 200),
            need,
            helpers,
        )),
        rolls: false,
    });
    if chance.random_bool(0.7) {
        phases.push(wait(chance, part, false));
    }
    phases.push(Phase {
        what: format!("put together {part}"),
        does: Does::Work(work(
            skill,
            random_spread(chance, 30, 240),
            StallNeed::Any,
            0,
        )),
        rolls: true,
    });
}

fn work(skill: Option<String>, minutes: Spread, stall: StallNeed, helpers: usize) -> Work {
    Work {
        skill,
        minutes,
        stall,
        helpers,
        on_the_road: false,
    }
}

fn wait(chance: &mut ChaCha8Rng, part: usize, rolls: bool) -> Phase {
    let waits_for = WaitsFor::ALL[chance.random_range(0..6)];
    let takes = if waits_for == WaitsFor::Part {
        let from = chance.random_range(480..4000);
        Takes::Comes(Spread::new(from, from + 60, from + 600))
    } else {
        Takes::Minutes(random_spread(chance, 30, 900))
    };
    Phase {
        what: format!("{} {part}", waits_for.name()),
        does: Does::Wait(Wait { waits_for, takes }),
        rolls,
    }
}

fn random_spread(chance: &mut ChaCha8Rng, least: i64, most: i64) -> Spread {
    let likely = chance.random_range(least..=most);
    Spread::new(likely * 4 / 5, likely, likely * 8 / 5)
}

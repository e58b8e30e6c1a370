//! What if: another vehicle today, or one buttoned up and rolled out.

use crate::check::Fault;
use crate::floor::{Does, Floor, Order, Phase, StallNeed, Takes, Work};
use crate::phrases::check as say;
use crate::plan::{Plan, plan};
use crate::promise::{Ask, Outlook, Promise, outlook, promises_of};
use crate::simulate::Policy;
use crate::spread::Spread;

/// What something does to one promise.
#[derive(Clone, Debug, PartialEq)]
pub struct Effect {
    /// The order's name.
    pub order: String,
    /// The chance that its promise is kept as things are, and with the change.
    pub chance: (f64, f64),
    /// By how many minutes it is ready later with the chance asked for; earlier below 0.
    pub later_minutes: i64,
}

/// Two ways beside each other, on the same luck.
#[derive(Clone, Debug, PartialEq)]
pub struct Compared {
    /// The plan with the change.
    pub plan: Plan,
    /// What it does to each order, in the sequence of the floor.
    pub effects: Vec<Effect>,
    /// Weights of broken promises on average, as things are and with the change.
    pub broken: (f64, f64),
    /// How promises look with the change.
    pub promises: Vec<Promise>,
}

impl Compared {
    /// The effects in which a chance moves by at least this much.
    pub fn felt(&self, least: f64) -> Vec<&Effect> {
        let moved = |effect: &&Effect| (effect.chance.0 - effect.chance.1).abs() >= least;
        self.effects.iter().filter(moved).collect()
    }
}

/// Could we take this one in as well? Answers with what it does to the others.
///
/// # Errors
///
/// Everything that keeps the floor from being planned, with the further order and without.
pub fn take_in(
    before: &Plan,
    order: Order,
    ask: &Ask,
    seed: u64,
    go_on: &mut dyn FnMut(u64) -> bool,
) -> Result<Compared, Vec<Fault>> {
    let mut floor = before.floor.clone();
    floor.orders.push(order);
    compare(before, &floor, ask, seed, go_on)
}

/// A vehicle that is apart and waits: how long it takes to make it roll, and to be as far again.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct RollOut {
    pub order: usize,
    /// The wait that it would spend outside.
    pub phase: usize,
    pub button_up: Spread,
    pub open_again: Spread,
}

/// The first wait that a vehicle spends in its stall since it can't roll then.
pub fn waits_apart(order: &Order) -> Option<usize> {
    let rolled = |phase: usize| match phase.checked_sub(1) {
        Some(last) => order.phases[last].rolls,
        None => order.rolls,
    };
    let waits = |phase: &usize| order.phases[*phase].work().is_none();
    (0..order.phases.len())
        .filter(waits)
        .find(|phase| !rolled(*phase))
}

/// Is it worth buttoning a vehicle up to roll it out, or should it keep its stall?
///
/// # Errors
///
/// Everything that keeps the floor from being planned; and a phase that is no wait of a vehicle
/// that can't roll.
pub fn roll_out(
    before: &Plan,
    asked: RollOut,
    ask: &Ask,
    seed: u64,
    go_on: &mut dyn FnMut(u64) -> bool,
) -> Result<Compared, Vec<Fault>> {
    let mut floor = before.floor.clone();
    rolled(&mut floor, asked).map_err(|fault| vec![fault])?;
    compare(before, &floor, ask, seed, go_on)
}

/// Writes the two stages in, around the wait.
fn rolled(floor: &mut Floor, asked: RollOut) -> Result<(), Fault> {
    let Some(order) = floor.orders.get_mut(asked.order) else {
        return Err(Fault::new(
            say::order_to_roll_out(),
            say::it_is_not_there(),
            say::name_one_on_the_floor(),
        ));
    };
    let wrong = |what: &str, mend: &str| Fault::new(&order.name, what, mend);
    let last = asked.phase.checked_sub(1);
    let rolls = last.map_or(order.rolls, |last| {
        order.phases.get(last).is_some_and(|phase| phase.rolls)
    });
    let waits = order
        .phases
        .get(asked.phase)
        .is_some_and(|phase| phase.work().is_none());
    if !waits {
        return Err(wrong(say::no_wait(), say::name_the_wait()));
    }
    if rolls {
        return Err(wrong(say::can_roll_as_it_is(), say::just_roll_it_out()));
    }
    let stage = |what: &str, minutes: Spread, rolls: bool, skill: Option<String>| Phase {
        what: what.to_owned(),
        does: Does::Work(Work {
            skill,
            minutes,
            stall: StallNeed::Any,
            helpers: 0,
            on_the_road: false,
        }),
        rolls,
    };
    // From here on until the next work.
    let waiting = order.phases[asked.phase..].iter();
    let end = asked.phase + waiting.take_while(|phase| phase.work().is_none()).count();
    let next = order.phases.get(end).and_then(Phase::work);
    let skill = next.and_then(|work| work.skill.clone());
    if let Some(running) = order.running.take_if(|_| asked.phase == 0)
        && let Does::Wait(wait) = &mut order.phases[0].does
        && let Takes::Minutes(spread) = wait.takes
    {
        let at = |minutes: i64| running.since + minutes;
        let comes = Spread::new(at(spread.least), at(spread.likely), at(spread.most));
        wait.takes = Takes::Comes(comes);
    }
    for phase in &mut order.phases[asked.phase..end] {
        phase.rolls = true;
    }
    order.phases.insert(
        end,
        stage(say::open_up_again(), asked.open_again, false, skill.clone()),
    );
    order.phases.insert(
        asked.phase,
        stage(say::button_up(), asked.button_up, true, skill),
    );
    Ok(())
}

fn compare(
    before: &Plan,
    floor: &Floor,
    ask: &Ask,
    seed: u64,
    go_on: &mut dyn FnMut(u64) -> bool,
) -> Result<Compared, Vec<Fault>> {
    let after = plan(floor, Some(before), seed, go_on)?;
    let (old, new) = (
        outlook(&before.floor, Policy::Plan(before), ask)?,
        outlook(floor, Policy::Plan(&after), ask)?,
    );
    let effects = (0..before.floor.orders.len())
        .filter_map(|at| effect(&before.floor, at, &old, &new, ask))
        .collect();
    Ok(Compared {
        effects,
        broken: (old.broken(&before.floor), new.broken(floor)),
        promises: promises_of(floor, &new, ask),
        plan: after,
    })
}

fn effect(floor: &Floor, at: usize, old: &Outlook, new: &Outlook, ask: &Ask) -> Option<Effect> {
    let order = &floor.orders[at];
    let (was, is) = (old.by(at, ask.chance)?, new.by(at, ask.chance)?);
    let chance = |outlook: &Outlook| order.promise.map_or(1.0, |by| outlook.chance(at, by));
    Some(Effect {
        order: order.name.clone(),
        chance: (chance(old), chance(new)),
        later_minutes: is - was,
    })
}

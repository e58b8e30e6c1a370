//! What to move so that a promise that slips is kept, and what that costs the others.

use super::left::named;
use super::who::{ABLE, TOLD};
use super::{PLANS, SEED, SLIPS};
use stalls::{Ask, Does, Floor, Plan, Promise, Say};

/// A promise that slips, and what would keep it.
#[derive(Debug, Clone, PartialEq)]
pub struct ToKeep {
    /// The order's place on the floor.
    pub order: usize,
    /// How often it is kept as things are, and with these changes.
    pub chance: (f64, f64),
    /// What to move, a sentence each; nothing, if no change that is known keeps it.
    pub changes: Vec<String>,
    /// Promises to others that this makes worse: their place, and how often they are kept as
    /// things are and then.
    pub others: Vec<(String, f64, f64)>,
}

/// A change is worth telling that keeps a promise this much more often.
const WORTH: f64 = 0.2;

/// A promise that is kept so much less often is told.
const FELT: f64 = 0.1;

/// So many slipping promises are looked at, the least sure first.
const MOST: usize = 3;

/// So many sentences of what to move are told.
const MOST_SAID: usize = 4;

/// So much more than the others a promise weighs that is to be kept.
const WEIGHT: i64 = 50;

/// The same, before it is said in any language.
pub struct Found {
    told: ToKeep,
    /// The plan that keeps it.
    plan: Option<Plan>,
}

impl Found {
    /// In what is spoken, as it differs from the plan that is followed.
    pub fn said(&self, before: &Plan, say: Say<'_>) -> ToKeep {
        let mut told = self.told.clone();
        if let Some(plan) = &self.plan {
            let changes = named(plan).changes_from(&named(before), say).into_iter();
            told.changes = changes
                .map(|change| change.sentence)
                .take(MOST_SAID)
                .collect();
        }
        told
    }
}

/// What would keep each promise that slips.
pub fn to_keep(plan: &Plan, promises: &[Promise], ask: &Ask) -> Vec<Found> {
    let mut slipping: Vec<(f64, usize)> = promises
        .iter()
        .filter_map(|promise| Some((promise.chance?, promise.order)))
        .filter(|(chance, _)| *chance < SLIPS)
        .collect();
    slipping.sort_by(|a, b| a.0.total_cmp(&b.0).then(a.1.cmp(&b.1)));
    slipping
        .into_iter()
        .take(MOST)
        .map(|(chance, order)| one(plan, promises, order, chance, ask))
        .collect()
}

/// With this promise first, and whoever can put in place of whoever was told.
fn one(plan: &Plan, promises: &[Promise], order: usize, chance: f64, ask: &Ask) -> Found {
    let mut told = ToKeep {
        order,
        chance: (chance, chance),
        changes: Vec::new(),
        others: Vec::new(),
    };
    let mut best: Option<(f64, Kept)> = None;
    for floor in [anybody(&plan.floor, order), pressed(&plan.floor, order)] {
        let Some(kept) = kept(plan, &floor, order, ask) else {
            continue;
        };
        let lost: f64 = worse(&plan.floor, order, promises, &kept.seen)
            .iter()
            .map(|(_, was, is)| was - is)
            .sum();
        let better = kept.chance - lost;
        if kept.chance >= chance + WORTH && best.as_ref().is_none_or(|(best, _)| better > *best) {
            best = Some((better, kept));
        }
    }
    let Some((_, kept)) = best else {
        return Found { told, plan: None };
    };
    told.chance.1 = kept.chance;
    told.others = worse(&plan.floor, order, promises, &kept.seen);
    Found {
        told,
        plan: Some(kept.plan),
    }
}

/// Another plan, with how often it keeps the promise.
struct Kept {
    plan: Plan,
    seen: Vec<Promise>,
    chance: f64,
}

fn kept(before: &Plan, floor: &Floor, order: usize, ask: &Ask) -> Option<Kept> {
    let plan = stalls::plan(floor, Some(before), SEED, &mut |seen| seen < PLANS).ok()?;
    let seen = stalls::promises(&plan, ask).ok()?;
    let own = seen.iter().find(|promise| promise.order == order)?;
    let chance = own.chance?;
    Some(Kept { plan, seen, chance })
}

/// The promises to others that are kept less often.
fn worse(
    floor: &Floor,
    order: usize,
    before: &[Promise],
    after: &[Promise],
) -> Vec<(String, f64, f64)> {
    let others = before.iter().filter(|promise| promise.order != order);
    others
        .filter_map(|promise| {
            let was = promise.chance?;
            let then = after.iter().find(|one| one.order == promise.order)?;
            let is = then.chance?;
            let name = &floor.orders[promise.order].name;
            (was - is >= FELT).then(|| (name.clone(), was, is))
        })
        .collect()
}

/// The same floor with one promise that weighs far more.
fn pressed(floor: &Floor, order: usize) -> Floor {
    let mut floor = floor.clone();
    floor.orders[order].promise_weight = WEIGHT;
    floor
}

/// The same, done by whoever can, in place of whoever was told to.
fn anybody(floor: &Floor, order: usize) -> Floor {
    let mut floor = pressed(floor, order);
    for phase in &mut floor.orders[order].phases {
        if let Does::Work(work) = &mut phase.does {
            let label = work.skill.as_deref().and_then(|own| own.strip_prefix(TOLD));
            work.skill = label.map(|number| format!("{ABLE}{number}"));
        }
    }
    floor
}

//! Promises: when to say on the phone, how likely each is kept, who has to be rung.

use crate::check::Fault;
use crate::explain::Say;
use crate::floor::Floor;
use crate::phrases::explain as words;
use crate::plan::Plan;
use crate::ready::Ready;
use crate::simulate::{Life, Luck, Policy};
use crate::windows::{FAR, Minute, Windows};

/// How to look ahead.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Ask {
    /// The same seed gives the same luck.
    pub seed: u64,
    /// How often the days ahead are lived through. One less than a round number gives the
    /// chance exactly: of 99 draws, 8 in 10 is the 80th.
    pub draws: u64,
    /// The chance that a promise is to have: 0.8 is eight times in ten.
    pub chance: f64,
    /// Below this chance a promise is not to stand: somebody is rung.
    pub ring_below: f64,
    /// What one says on the phone is a multiple of this.
    pub step_minutes: Minute,
}

impl Default for Ask {
    fn default() -> Self {
        Self {
            seed: 1,
            draws: 499,
            chance: 0.8,
            ring_below: 0.5,
            step_minutes: 30,
        }
    }
}

/// When one order is ready.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Promise {
    pub order: usize,
    /// What the customer was told.
    pub promised: Option<Minute>,
    /// The chance that this is kept.
    pub chance: Option<f64>,
    /// Ready by then as often as not.
    pub likely: Minute,
    /// Ready by then with the chance asked for.
    pub by: Minute,
    /// The same as one says it on the phone: rounded up, and when the shop is open.
    pub say: Minute,
}

/// Somebody to ring, with what to say.
#[derive(Clone, Debug, PartialEq)]
pub struct Call {
    pub order: usize,
    pub chance: f64,
    pub sentence: String,
}

/// When each order was ready, draw by draw.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Outlook {
    /// By order, then by draw.
    pub ends: Vec<Vec<Minute>>,
}

/// Lives through the days ahead again and again.
///
/// # Errors
///
/// Everything that keeps the floor from being planned.
pub fn outlook(floor: &Floor, policy: Policy, ask: &Ask) -> Result<Outlook, Vec<Fault>> {
    look(floor, policy, ask, None)
}

fn look(
    floor: &Floor,
    policy: Policy,
    ask: &Ask,
    only: Option<usize>,
) -> Result<Outlook, Vec<Fault>> {
    let faults = floor.faults();
    if !faults.is_empty() {
        return Err(faults);
    }
    let ready = Ready::new(floor);
    let mut life = Life::new(&ready, policy);
    let mut ends = vec![Vec::new(); floor.orders.len()];
    for draw in 0..ask.draws.max(1) {
        let luck = Luck {
            seed: ask.seed,
            draw,
            fate: false,
        };
        let ended = life.live(luck, only, FAR);
        for (all, end) in ends.iter_mut().zip(ended) {
            all.extend(end);
        }
    }
    Ok(Outlook { ends })
}

impl Outlook {
    /// The minute that is not exceeded with this chance: of `n` draws sorted, number
    /// `chance * (n + 1)` upward. A further draw is not later with just that chance.
    pub fn by(&self, order: usize, chance: f64) -> Option<Minute> {
        let mut ends = self.ends.get(order)?.clone();
        ends.sort_unstable();
        #[allow(clippy::cast_precision_loss, reason = "counts of draws")]
        let rank = (chance * (ends.len() + 1) as f64 - 1e-9).ceil();
        #[allow(
            clippy::cast_possible_truncation,
            clippy::cast_sign_loss,
            reason = "clamped to the count"
        )]
        let rank = rank.clamp(1.0, u32::MAX.into()) as usize;
        ends.get(rank.min(ends.len()).checked_sub(1)?).copied()
    }

    /// How often an order is ready by a minute.
    pub fn chance(&self, order: usize, minute: Minute) -> f64 {
        let Some(ends) = self.ends.get(order).filter(|ends| !ends.is_empty()) else {
            return 0.0;
        };
        let kept = ends.iter().filter(|end| **end <= minute).count();
        #[allow(clippy::cast_precision_loss, reason = "counts of draws")]
        let chance = kept as f64 / ends.len() as f64;
        chance
    }

    /// Weights of broken promises, on average over the draws.
    pub fn broken(&self, floor: &Floor) -> f64 {
        let orders = floor.orders.iter().enumerate();
        orders
            .filter_map(|(at, order)| {
                #[allow(clippy::cast_precision_loss, reason = "a weight")]
                let weight = order.promise_weight as f64;
                Some(weight * (1.0 - self.chance(at, order.promise?)))
            })
            .sum()
    }
}

/// What one says on the phone: the next multiple of the step at which the shop is open or just
/// closes; else the next opening.
///
/// ```
/// use stalls::{Windows, said};
/// let day = Windows::new([(480, 720), (750, 1020), (1920, 2160)]);
/// assert_eq!(said(911, 30, &day), 930);
/// assert_eq!(said(1001, 30, &day), 1020);
/// assert_eq!(said(1021, 30, &day), 1920);
/// assert_eq!(said(725, 30, &day), 750);
/// ```
pub fn said(minute: Minute, step_minutes: Minute, opening: &Windows) -> Minute {
    let step = step_minutes.max(1);
    let up = |minute: Minute| -(-minute).div_euclid(step) * step;
    let rounded = up(minute);
    if opening.is_open(rounded) || opening.is_open(rounded - 1) {
        return rounded;
    }
    opening.next_open(rounded).map_or(rounded, |next| {
        let next = up(next);
        if opening.is_open(next) { next } else { rounded }
    })
}

/// The promises of a plan: how likely each is, and what could be said.
///
/// # Errors
///
/// Everything that keeps the floor from being planned.
pub fn promises(plan: &Plan, ask: &Ask) -> Result<Vec<Promise>, Vec<Fault>> {
    let outlook = outlook(&plan.floor, Policy::Plan(plan), ask)?;
    Ok(promises_of(&plan.floor, &outlook, ask))
}

/// The promises as an outlook has them.
pub fn promises_of(floor: &Floor, outlook: &Outlook, ask: &Ask) -> Vec<Promise> {
    let of_order = |(at, order): (usize, &crate::Order)| {
        let by = outlook.by(at, ask.chance)?;
        Some(Promise {
            order: at,
            promised: order.promise,
            chance: order.promise.map(|minute| outlook.chance(at, minute)),
            likely: outlook.by(at, 0.5)?,
            by,
            say: said(by, ask.step_minutes, &floor.opening),
        })
    };
    let orders = floor.orders.iter().enumerate();
    orders.filter_map(of_order).collect()
}

/// When one order is ready, as asked for on the phone; quicker than all of them.
///
/// # Errors
///
/// Everything that keeps the floor from being planned.
pub fn promise(
    floor: &Floor,
    policy: Policy,
    order: usize,
    ask: &Ask,
) -> Result<Option<Promise>, Vec<Fault>> {
    let outlook = look(floor, policy, ask, Some(order))?;
    let all = promises_of(floor, &outlook, ask);
    Ok(all.into_iter().find(|promise| promise.order == order))
}

/// Who has to be rung: everybody whose promise is kept less often than asked for.
pub fn calls(plan: &Plan, promises: &[Promise], ask: &Ask, say: Say) -> Vec<Call> {
    let mut calls: Vec<Call> = promises
        .iter()
        .filter_map(|promise| {
            let (chance, promised) = (promise.chance?, promise.promised?);
            if chance >= ask.ring_below {
                return None;
            }
            let name = &plan.floor.orders[promise.order].name;
            let why = plan.why(promise.order, say);
            let why = why.map_or(String::new(), |why| format!(": {why}"));
            Some(Call {
                order: promise.order,
                chance,
                sentence: words::hardly_ready(
                    name,
                    say(promised),
                    why,
                    times(ask.chance),
                    say(promise.say),
                ),
            })
        })
        .collect();
    calls.sort_by(|a, b| a.chance.total_cmp(&b.chance).then(a.order.cmp(&b.order)));
    calls
}

/// A chance as times in ten.
pub(crate) fn times(chance: f64) -> &'static str {
    const WORDS: [fn() -> &'static str; 11] = [
        words::never,
        words::once,
        words::twice,
        words::three_times,
        words::four_times,
        words::five_times,
        words::six_times,
        words::seven_times,
        words::eight_times,
        words::nine_times,
        words::ten_times,
    ];
    let tenths = (chance * 10.0).round().clamp(0.0, 10.0);
    let word = (0_u8..)
        .zip(WORDS)
        .find(|(number, _)| f64::from(*number) >= tenths);
    word.map_or(WORDS[10], |(_, word)| word)()
}

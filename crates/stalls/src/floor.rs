//! What there is: stalls, people, orders and their phases.

use crate::phrases::check as say;
use crate::spread::Spread;
use crate::windows::{Minute, Windows};

/// A shop at one moment.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Floor {
    /// The moment.
    pub now: Minute,
    /// When the shop is open. What is planned ends with the last of these.
    pub opening: Windows,
    pub stalls: Vec<Stall>,
    pub people: Vec<Person>,
    pub orders: Vec<Order>,
    /// How many vehicles that were begun can stand outside between two stalls; without a number,
    /// as many as there are. Whose work has not begun, or is done, stands where the customer left it.
    pub yard_places: Option<usize>,
    pub rules: Rules,
}

/// What weighs how much. Points are only compared with each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Rules {
    /// A broken promise of weight 1.
    pub broken: i64,
    /// A minute late at weight 1.
    pub late_minute: i64,
    /// An open minute in which a vehicle stands on a lift and nobody works on it.
    pub idle_lift_minute: i64,
    /// A vehicle driven or pushed into a stall.
    pub moved: i64,
    /// Somebody was told one thing, and now it is another.
    pub changed: i64,
}

impl Default for Rules {
    fn default() -> Self {
        Self {
            broken: 10_000,
            late_minute: 10,
            idle_lift_minute: 1,
            moved: 20,
            changed: 100,
        }
    }
}

/// A place in which vehicles are worked on.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stall {
    pub name: String,
    /// Its lift; without one it is flat.
    pub lift: Option<Lift>,
    /// The stalls that a vehicle crosses on its way in and out: they have to be empty then.
    pub crosses: Vec<usize>,
    /// What holds it for good, if that is no order: nothing is planned in it.
    pub held: Option<String>,
}

/// What a lift lifts. What nobody gave is not known, and not checked.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Lift {
    pub carries_kg: Option<u32>,
    /// The highest vehicle that still clears the roof when it is up.
    pub clears_mm: Option<u32>,
}

/// Somebody who works on one vehicle at a time.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Person {
    pub name: String,
    pub skills: Vec<String>,
    /// When they work, breaks left out.
    pub hours: Windows,
    /// When they are away all the same.
    pub away: Windows,
}

/// An order, with what is still to be done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Order {
    pub name: String,
    pub weight_kg: Option<u32>,
    pub height_mm: Option<u32>,
    /// When the customer was told that it will be ready.
    pub promise: Option<Minute>,
    /// How much that promise weighs.
    pub promise_weight: i64,
    /// When the vehicle comes; if it is here, nothing.
    pub arrives: Option<Spread>,
    /// The stall in which it stands.
    pub stands_in: Option<usize>,
    /// Whether it can roll as it stands.
    pub rolls: bool,
    /// That the first phase has begun.
    pub running: Option<Running>,
    pub phases: Vec<Phase>,
}

impl Default for Order {
    fn default() -> Self {
        Self {
            name: String::new(),
            weight_kg: None,
            height_mm: None,
            promise: None,
            promise_weight: 1,
            arrives: None,
            stands_in: None,
            rolls: true,
            running: None,
            phases: Vec::new(),
        }
    }
}

/// A phase that has begun.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Running {
    pub since: Minute,
    /// Who works on it, the first with the skill.
    pub people: Vec<usize>,
}

/// One part of an order. Work may pause where one ends, not within.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Phase {
    pub what: String,
    pub does: Does,
    /// Whether the vehicle can roll when this is done. While it can't, it holds its stall.
    pub rolls: bool,
}

/// What a phase is.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Does {
    Work(Work),
    Wait(Wait),
}

/// Somebody works.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Work {
    /// Who does not have this skill can't; without one anybody can.
    pub skill: Option<String>,
    pub minutes: Spread,
    pub stall: StallNeed,
    /// How many more people hold and hand; they need no skill.
    pub helpers: usize,
    /// A drive on the road: the vehicle has to roll.
    pub on_the_road: bool,
}

/// Which stall work needs.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum StallNeed {
    Lift,
    Flat,
    #[default]
    Any,
    /// Bench, desk, yard or road.
    No,
}

/// Nobody works, and something has to come.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Wait {
    pub waits_for: WaitsFor,
    pub takes: Takes,
}

/// What is waited for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum WaitsFor {
    Part,
    Sublet,
    Consent,
    Cure,
    CoolDown,
    Customer,
}

/// How long a wait is, by the clock on the wall: nights count.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Takes {
    /// So many minutes from when the phase before is done.
    Minutes(Spread),
    /// It comes at this moment, whatever is done before.
    Comes(Spread),
}

impl WaitsFor {
    pub const ALL: [Self; 6] = [
        Self::Part,
        Self::Sublet,
        Self::Consent,
        Self::Cure,
        Self::CoolDown,
        Self::Customer,
    ];

    /// The word for it in a file.
    pub fn name(self) -> &'static str {
        match self {
            Self::Part => "part",
            Self::Sublet => "sublet",
            Self::Consent => "consent",
            Self::Cure => "cure",
            Self::CoolDown => "cool down",
            Self::Customer => "customer",
        }
    }
}

impl StallNeed {
    pub const ALL: [Self; 4] = [Self::Lift, Self::Flat, Self::Any, Self::No];

    /// The word for it in a file.
    pub fn name(self) -> &'static str {
        match self {
            Self::Lift => "lift",
            Self::Flat => "flat",
            Self::Any => "any",
            Self::No => "none",
        }
    }

    /// How it is said.
    pub(crate) fn said(self) -> &'static str {
        match self {
            Self::Lift => say::a_lift(),
            Self::Flat => say::a_flat_one(),
            Self::Any => say::any_stall(),
            Self::No => say::needs_none(),
        }
    }
}

impl Phase {
    pub(crate) fn work(&self) -> Option<&Work> {
        match &self.does {
            Does::Work(work) => Some(work),
            Does::Wait(_) => None,
        }
    }

    pub(crate) fn needs_stall(&self) -> bool {
        self.work().is_some_and(|work| work.stall != StallNeed::No)
    }
}

impl Person {
    /// Whether they can do work of this skill.
    pub(crate) fn can(&self, skill: Option<&str>) -> bool {
        skill.is_none_or(|skill| self.skills.iter().any(|own| own == skill))
    }
}

impl Stall {
    /// What a stall should be kept for: flat ones are good for least, then weak lifts.
    pub(crate) fn good_for(&self) -> u32 {
        self.lift.map_or(0, |lift| {
            lift.carries_kg.map_or(1, |kg| kg.saturating_add(1))
        })
    }

    /// Whether work with this need can be done on this vehicle here.
    pub(crate) fn suits(&self, need: StallNeed, order: &Order) -> bool {
        let within = |value: Option<u32>, limit: Option<u32>| match (value, limit) {
            (Some(value), Some(limit)) => value <= limit,
            _ => true,
        };
        match (need, &self.lift) {
            (StallNeed::Lift, Some(lift)) => {
                within(order.weight_kg, lift.carries_kg) && within(order.height_mm, lift.clears_mm)
            }
            (StallNeed::Lift, None) | (StallNeed::Flat, Some(_)) => false,
            (StallNeed::Flat, None) | (StallNeed::Any | StallNeed::No, _) => true,
        }
    }
}

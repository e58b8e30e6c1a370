//! The days ahead as programs are told them: at the JSON door and on the command line alike.

use super::planned::{NotPlannedView, PromiseView, planned};
use crate::floor::{Days, days};
use crate::phrases::floor as words;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use serde::Serialize;
use stalls::{Ask, Call, Minute, Placed, Plan, Promise};
use utoipa::ToSchema;

/// The days ahead: the plan, and what is not in it.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct DayTold {
    #[serde(flatten)]
    pub plan: PlanTold,
    /// What keeps all of it from being planned.
    pub missing: Vec<String>,
    /// Orders that are left out.
    pub not_planned: Vec<NotPlannedView>,
    /// Each order with when it is ready, those that slip first.
    pub orders: Vec<PromiseView>,
}

/// A plan. Times are local, with their offset.
#[derive(Debug, Clone, Default, PartialEq, Serialize, ToSchema)]
pub struct PlanTold {
    /// The moment it was planned from; nothing where nothing can be planned.
    pub now: Option<String>,
    /// Each stall, with what is done in it.
    pub stalls: Vec<WorkOf>,
    /// Each person, with what they do.
    pub people: Vec<WorkOf>,
    pub promises: Vec<PromiseTold>,
    /// Whom to ring, the least sure first.
    pub calls: Vec<CallTold>,
    /// The points that it costs; nothing where nothing is planned, as with the two that follow.
    pub points: Option<i64>,
    /// No plan costs fewer.
    pub bound: Option<i64>,
    /// How many plans were looked at.
    pub looked_at: Option<u64>,
    /// What is not checked, and what does not fit into the days ahead.
    pub notes: Vec<String>,
}

/// The work of a stall or a person.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct WorkOf {
    /// What they are called.
    pub name: String,
    /// In the sequence in which it begins.
    pub work: Vec<WorkTold>,
}

/// A piece of work, or a wait in a stall.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct WorkTold {
    /// The order, by its number and vehicle.
    pub order: String,
    pub from: String,
    pub to: String,
    /// What is done, or waited for.
    pub what: String,
}

/// When an order is ready.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct PromiseTold {
    /// The order, by its number and vehicle.
    pub order: String,
    /// What the customer was told.
    pub promised: Option<String>,
    /// The chance that this is kept, from 0 to 1.
    pub chance: Option<f64>,
    /// Ready by then as often as not.
    pub likely: String,
    /// Ready by then eight times in ten.
    pub by_8_of_10: String,
    /// The same as one says it on the phone: rounded up, and when the shop is open.
    pub say: String,
}

/// Somebody to ring.
#[derive(Debug, Clone, PartialEq, Serialize, ToSchema)]
pub struct CallTold {
    /// The order, by its number and vehicle.
    pub order: String,
    /// The chance that its promise is kept, from 0 to 1.
    pub chance: f64,
    /// What to say.
    pub sentence: String,
}

/// The days ahead of the shop.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn day_told(snap: &Snapshot<'_>) -> Result<DayTold, Trouble> {
    let days = days(snap)?;
    let plan = days.plan.as_ref().map(|day| {
        let calendar = &day.calendar;
        let say = |minute| calendar.say(minute);
        let calls = stalls::calls(&day.plan, &day.promises, &Ask::default(), &say);
        plan_told(&day.plan, &day.promises, &calls, &|minute| {
            calendar.iso(minute)
        })
    });
    let shown = planned(&days);
    Ok(DayTold {
        plan: plan.unwrap_or_else(|| nothing_told(&days)),
        missing: shown.missing,
        not_planned: shown.not_planned,
        orders: shown.promises,
    })
}

/// The stalls and people where nothing is planned.
#[must_use]
pub fn nothing_told(days: &Days) -> PlanTold {
    let Some(ground) = &days.ground else {
        return PlanTold::default();
    };
    let free = |name: &String| WorkOf {
        name: name.clone(),
        work: Vec::new(),
    };
    let floor = &ground.floor;
    PlanTold {
        now: Some(ground.calendar.iso(floor.now)),
        stalls: floor.stalls.iter().map(|stall| free(&stall.name)).collect(),
        people: floor
            .people
            .iter()
            .map(|person| free(&person.name))
            .collect(),
        ..PlanTold::default()
    }
}

/// A plan with its promises and calls, its minutes written by `iso`.
#[must_use]
pub fn plan_told(
    plan: &Plan,
    promises: &[Promise],
    calls: &[Call],
    iso: &dyn Fn(Minute) -> String,
) -> PlanTold {
    let floor = &plan.floor;
    let name = |order: usize| floor.orders[order].name.clone();
    let work = |own: &dyn Fn(&Placed) -> bool| -> Vec<WorkTold> {
        let own = plan.placed.iter().filter(|one| own(one));
        own.map(|one| WorkTold {
            order: name(one.order),
            from: iso(one.from),
            to: iso(one.to),
            what: floor.orders[one.order].phases[one.phase].what.clone(),
        })
        .collect()
    };
    let stalls = floor.stalls.iter().enumerate().map(|(at, stall)| WorkOf {
        name: stall.name.clone(),
        work: work(&|one| one.stall == Some(at)),
    });
    let people = floor.people.iter().enumerate().map(|(at, person)| WorkOf {
        name: person.name.clone(),
        work: work(&|one| one.people.contains(&at)),
    });
    let promises = promises.iter().map(|promise| PromiseTold {
        order: name(promise.order),
        promised: promise.promised.map(iso),
        chance: promise.chance,
        likely: iso(promise.likely),
        by_8_of_10: iso(promise.by),
        say: iso(promise.say),
    });
    let calls = calls.iter().map(|call| CallTold {
        order: name(call.order),
        chance: call.chance,
        sentence: call.sentence.clone(),
    });
    PlanTold {
        now: Some(iso(floor.now)),
        stalls: stalls.collect(),
        people: people.collect(),
        promises: promises.collect(),
        calls: calls.collect(),
        points: Some(plan.cost.points),
        bound: Some(plan.bound),
        looked_at: Some(plan.looked_at),
        notes: plan_notes(plan),
    }
}

/// What of a plan is not checked, and what does not fit into the hours given.
#[must_use]
pub fn plan_notes(plan: &Plan) -> Vec<String> {
    let beyond = plan.beyond.iter();
    let beyond = beyond.map(|at| words::not_within_the_hours(&plan.floor.orders[*at].name));
    plan.floor.notes().into_iter().chain(beyond).collect()
}

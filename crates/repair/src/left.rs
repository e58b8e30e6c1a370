//! How long the work that is left takes, and when an answer comes, as somebody told it.

use crate::code::StallNeeded;
use crate::fact::Fact;
use crate::ids::CommandId;
use crate::order::Order;
use crate::told::latest;
use jiff::Timestamp;
use rust_decimal::Decimal;
use states::System;

/// The work that is left, as told last.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct WorkLeft {
    /// Minutes, likely.
    pub minutes: Decimal,
    /// The least and the most, where both were said.
    pub range: Option<(Decimal, Decimal)>,
    /// What whoever does it knows.
    pub skill: Option<System>,
    pub stall: StallNeeded,
    /// How many more people hold and hand.
    pub helpers: u16,
    /// Minutes of a drive on the road when the rest is done.
    pub road: Option<Decimal>,
    /// When it was told: what was worked since is no longer left.
    pub told_at: Timestamp,
}

/// How long the work that is left takes; nothing, if nobody told.
#[must_use]
pub fn work_left(order: &Order) -> Option<WorkLeft> {
    let told = latest(order, |fact| match fact {
        Fact::WorkLeft { after, .. } => Some(((), after)),
        _ => None,
    });
    let fact = told.get(&())?;
    let told_at = order
        .beside_moves()
        .find_map(|(_, filed)| std::ptr::eq(&filed.fact, *fact).then_some(filed.stamp.at));
    match fact {
        Fact::WorkLeft {
            minutes,
            least,
            most,
            skill,
            stall,
            helpers,
            road,
            ..
        } => Some(WorkLeft {
            minutes: *minutes,
            range: least.zip(*most),
            skill: *skill,
            stall: *stall,
            helpers: helpers.unwrap_or(0),
            road: *road,
            told_at: told_at?,
        }),
        _ => None,
    }
}

/// What was told of the work that is left, for a device to name as seen.
#[must_use]
pub fn work_left_told(order: &Order) -> Vec<CommandId> {
    tellings(order, |fact| matches!(fact, Fact::WorkLeft { .. }))
}

/// When the customer said that they will answer; nothing, if nobody told.
#[must_use]
pub fn answer_due(order: &Order) -> Option<Timestamp> {
    let told = latest(order, |fact| match fact {
        Fact::AnswerDue { after, .. } => Some(((), after)),
        _ => None,
    });
    match told.get(&()) {
        Some(Fact::AnswerDue { at, .. }) => Some(*at),
        _ => None,
    }
}

/// What was told of when an answer comes, for a device to name as seen.
#[must_use]
pub fn answer_due_told(order: &Order) -> Vec<CommandId> {
    tellings(order, |fact| matches!(fact, Fact::AnswerDue { .. }))
}

fn tellings(order: &Order, of: impl Fn(&Fact) -> bool) -> Vec<CommandId> {
    let told = order.beside_moves().filter(|(_, filed)| of(&filed.fact));
    told.map(|(command, _)| command.clone()).collect()
}

//! The map an order works by, and what it aims at.

use crate::code::{AimIs, Step};
use crate::decision::{Decision, StatedNeed, StatedWork};
use crate::fact::Fact;
use crate::ids::{CommandId, MapId};
use crate::order::Order;
use crate::text::Token;
use crate::told::latest;
use states::ItemId;

/// The version of a map that holds for an order, with what was copied of it.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Adoption<'a> {
    pub map: &'a MapId,
    pub version: u32,
    /// The needs it states.
    pub needs: &'a [StatedNeed],
    /// The work it makes due.
    pub work: &'a [StatedWork],
}

/// What an order aims at.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct Aim {
    /// What sort of aim.
    pub is: AimIs,
    /// The items to get at.
    pub targets: Vec<ItemId>,
    /// Steps not to take.
    pub without: Vec<Step>,
    /// Steps to take in any case.
    pub also: Vec<Step>,
    /// Places that cannot be had.
    pub places_taken: Vec<Token>,
    /// What this vehicle has of what some of its kind have.
    pub variants: Vec<Token>,
    /// The tellings, for a device to name as seen.
    pub told_by: Vec<CommandId>,
}

/// The map adopted last.
#[must_use]
pub fn adoption(order: &Order) -> Option<Adoption<'_>> {
    let decisions = order.decisions().iter().rev();
    decisions
        .filter_map(|decided| match &decided.decision {
            Decision::Adopted {
                map,
                version,
                needs,
                work,
            } => Some(Adoption {
                map,
                version: *version,
                needs,
                work,
            }),
            _ => None,
        })
        .next()
}

/// What the order aims at, as told last.
#[must_use]
pub fn aim(order: &Order) -> Option<Aim> {
    let told = latest(order, |fact| match fact {
        Fact::Aimed { after, .. } => Some(((), after)),
        _ => None,
    });
    let told_by = order
        .beside_moves()
        .filter(|(_, filed)| matches!(filed.fact, Fact::Aimed { .. }))
        .map(|(command, _)| command.clone())
        .collect();
    match told.get(&()) {
        Some(Fact::Aimed {
            aim,
            targets,
            without,
            also,
            places_taken,
            variants,
            ..
        }) => Some(Aim {
            is: *aim,
            targets: targets.clone(),
            without: without.clone(),
            also: also.clone(),
            places_taken: places_taken.clone(),
            variants: variants.clone(),
            told_by,
        }),
        _ => None,
    }
}

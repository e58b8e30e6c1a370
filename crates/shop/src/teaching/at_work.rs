//! Whether somebody is at such a vehicle just now: nobody is asked anything there.

use super::kind::{VehicleKind, label_of};
use super::words::person;
use crate::phrases::teaching as told;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use jiff::Timestamp;
use repair::{Clock, Fact, Order, PersonId, StageId, adoption};
use std::collections::BTreeMap;

/// A clock that nobody stopped runs no longer than a stage takes.
const LONGEST_MINUTES: i64 = 120;

/// Who is at a vehicle of this kind, and on which order; nothing where nobody is.
pub(super) fn at_work(snap: &Snapshot<'_>, kind: &VehicleKind) -> Result<Option<String>, Trouble> {
    let world = snap.world();
    for (number, id) in world.orders_here()? {
        let order = world.order(&id)?;
        let Some(who) = working(&order, snap.now()) else {
            continue;
        };
        let by_map = adoption(&order)
            .is_some_and(|adopted| kind.maps.iter().any(|kept| kept.id == *adopted.map));
        if by_map || kind.is_called(&label_of(snap, &id)?) {
            let who = person(snap, who.as_str());
            return Ok(Some(told::is_at_one(who, number)));
        }
    }
    Ok(None)
}

/// Whose clock runs on an order.
fn working(order: &Order, now: Timestamp) -> Option<PersonId> {
    let mut clocks: BTreeMap<(&StageId, &PersonId), Vec<(Timestamp, bool)>> = BTreeMap::new();
    for (_, filed) in order.facts() {
        let (stage, runs) = match &filed.fact {
            Fact::Timed { stage, clock, .. } => {
                (stage, matches!(clock, Clock::Opened | Clock::Resumed))
            }
            Fact::Moved {
                stage: Some(stage), ..
            } => (stage, false),
            _ => continue,
        };
        let told = clocks.entry((stage, &filed.stamp.who)).or_default();
        told.push((filed.stamp.at, runs));
    }
    clocks.into_iter().find_map(|((_, who), told)| {
        // Of two in the same moment, the one that stops counts.
        let (since, runs) = told.into_iter().max_by_key(|(at, runs)| (*at, !runs))?;
        let minutes = (now.as_second() - since.as_second()) / 60;
        (runs && minutes <= LONGEST_MINUTES).then(|| who.clone())
    })
}

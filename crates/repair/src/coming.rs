//! When a vehicle comes that is not here yet, as it was agreed with its customer.

use crate::code::{KeyStep, OdometerAt, Place};
use crate::fact::Fact;
use crate::ids::CommandId;
use crate::order::Order;
use crate::told::latest;
use jiff::Timestamp;

/// When the vehicle is to come; nothing if nobody told, or if something told since says that it
/// is here: where it stands, its odometer or keys on the way in, work on it. By the clocks of
/// those who told it, as with where it stands.
#[must_use]
pub fn expected(order: &Order) -> Option<Timestamp> {
    let told = latest(order, |fact| match fact {
        Fact::Expected { after, .. } => Some(((), after)),
        _ => None,
    });
    let fact = *told.get(&())?;
    let Fact::Expected { at, .. } = fact else {
        return None;
    };
    let mut facts = order.beside_moves();
    let (_, filed) = facts.find(|(_, filed)| std::ptr::eq(&filed.fact, fact))?;
    let since = filed.stamp.at;
    let here = order
        .facts()
        .any(|(_, filed)| filed.stamp.at > since && says_it_is_here(&filed.fact));
    (!here).then_some(*at)
}

/// What was told of when it comes, for a device to name as seen.
#[must_use]
pub fn expected_told(order: &Order) -> Vec<CommandId> {
    let told = order
        .beside_moves()
        .filter(|(_, filed)| matches!(filed.fact, Fact::Expected { .. }));
    told.map(|(command, _)| command.clone()).collect()
}

/// One agreed time at which a vehicle was to come.
#[derive(Debug, Clone, Copy, PartialEq, Eq)]
pub struct Booking {
    pub at: Timestamp,
    /// When something first said that it is here.
    pub came: Option<Timestamp>,
    /// When another time was agreed, if it had not come by then.
    pub moved: Option<Timestamp>,
}

/// The times that were agreed, the first told first.
#[must_use]
pub fn bookings(order: &Order) -> Vec<Booking> {
    let mut told: Vec<(Timestamp, Timestamp)> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Expected { at, .. } => Some((filed.stamp.at, *at)),
            _ => None,
        })
        .collect();
    told.sort_unstable();
    let mut here: Vec<Timestamp> = order
        .facts()
        .filter(|(_, filed)| says_it_is_here(&filed.fact))
        .map(|(_, filed)| filed.stamp.at)
        .collect();
    here.sort_unstable();
    told.iter()
        .map(|(since, at)| {
            let moved = told.iter().map(|one| one.0).find(|one| one > since);
            let came = here.iter().copied().find(|one| one > since);
            Booking {
                at: *at,
                came: came.filter(|came| moved.is_none_or(|moved| *came <= moved)),
                moved,
            }
        })
        .collect()
}

fn says_it_is_here(fact: &Fact) -> bool {
    match fact {
        Fact::Stood { place } | Fact::Pushed { to: place, .. } => *place != Place::Away,
        Fact::Odometer { at, .. } => *at == OdometerAt::In,
        Fact::Keys { step, .. } => *step == KeyStep::Taken,
        Fact::Moved { .. } | Fact::Timed { .. } => true,
        _ => false,
    }
}

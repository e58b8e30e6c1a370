//! May it be pushed by hand? An answer of its own: it never opens *roll*, whoever says so.

use crate::reading::OrderReading;
use crate::reason::{Reason, Why};
use states::{Gate, ItemId, Kind, System};

/// What stands in the way of pushing the vehicle by hand, over a flat floor, with chocks at hand
/// and somebody at a parking brake that works. Brakes may be open and the engine out; what
/// carries the vehicle, what steers it, and what hangs or lies in its way may not.
#[must_use]
pub fn against_pushing(reading: &OrderReading<'_>) -> Vec<Reason> {
    let lower = &reading.answer(Gate::Lower).fit_to_go;
    let roll = &reading.answer(Gate::Roll).fit_to_go;
    let mut out: Vec<Reason> = lower
        .iter()
        .filter(|reason| reason.shuts())
        .cloned()
        .collect();
    let more = roll
        .iter()
        .filter(|reason| reason.shuts() && stands_in_its_way(reading, &reason.why));
    for reason in more {
        if !out.iter().any(|known| known.key == reason.key) {
            out.push(reason.clone());
        }
    }
    out
}

fn stands_in_its_way(reading: &OrderReading<'_>, why: &Why) -> bool {
    let of_item = |item: &ItemId| {
        let account = reading.account();
        let known = account.items.get(account.moves.name(item));
        known.is_none_or(|known| {
            known.kind == Kind::PutIn
                || matches!(
                    known.system,
                    System::Wheels | System::Suspension | System::Steering | System::Unknown
                )
        })
    };
    match why {
        Why::Open(open) | Why::Unlocated(open) => of_item(&open.item),
        Why::NotKnown { .. } => true,
        Why::TorqueToldApart { item } | Why::NotChecked { item, .. } => of_item(item),
        Why::SnagOpen { item, .. } => item.as_ref().is_none_or(of_item),
        Why::Owed(debt) => debt.work.item.as_ref().is_some_and(of_item),
        _ => false,
    }
}

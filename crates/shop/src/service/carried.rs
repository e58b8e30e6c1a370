//! What a vehicle carries away from an order, for its next visit.

use crate::trouble::Trouble;
use crate::world::{World, vehicle_of};
use record::{AnyEvent, Stream};
use repair::{
    Account, Debt, DifferenceId, DifferenceIs, Fact, Gate, ItemId, OrderId, OrderReading, PieceIs,
    Rules, Until, VehicleFact, Why,
};
use sha2::{Digest, Sha256};

/// What the vehicle carries from now on, and does not carry yet: its lasting differences,
/// and work due later.
pub(crate) fn carried_by_vehicle(
    world: &World,
    reading: &OrderReading<'_>,
    id: &OrderId,
) -> Result<Vec<(Stream, AnyEvent)>, Trouble> {
    let (order, rules) = (reading.order(), reading.rules());
    let Some(vehicle) = vehicle_of(order) else {
        return Ok(Vec::new());
    };
    let carried = world.vehicle(&vehicle)?;
    let account = reading.account();
    let label = |item: &ItemId| {
        account
            .items
            .get(account.moves.name(item))
            .map(|item| item.label)
    };
    let differences = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::DifferenceNoted {
                id: difference,
                item,
                at,
                what,
                size,
                torque,
                words,
            } => Some(VehicleFact::Differs {
                id: difference.clone(),
                order: id.clone(),
                item: item.as_ref().and_then(label),
                at: at.clone(),
                what: *what,
                size: size.clone(),
                torque: torque.clone(),
                words: *words,
            }),
            _ => None,
        });
    let answer = reading.answer(Gate::HandOver);
    let waived: Vec<&Debt> = answer
        .fit_to_go
        .iter()
        .filter(|reason| reason.waiver.is_some())
        .filter_map(|reason| match &reason.why {
            Why::Owed(debt) => Some(debt),
            _ => None,
        })
        .collect();
    let owing = reading
        .debts()
        .iter()
        .filter_map(|debt| left_owing(debt.clone(), &waived, rules))
        .map(|debt| VehicleFact::LeftOwing {
            order: id.clone(),
            item: debt.work.item.as_ref().and_then(label),
            work: debt.work,
            words: debt.words,
            until: debt.until,
        });
    Ok(differences
        .chain(substitutes(account, id))
        .chain(owing)
        // It may leave a second time, having come back in.
        .filter(|fact| !carried.facts().any(|(.., known)| known == fact))
        .map(|fact| (Stream::Vehicle(vehicle.clone()), AnyEvent::Vehicle(fact)))
        .collect())
}

/// Work that is due after hand-over. What was let pass at hand-over is not done by that: it is due
/// the day after.
fn left_owing(debt: Debt, waived: &[&Debt], rules: &Rules) -> Option<Debt> {
    if matches!(debt.until, Until::Later { .. }) {
        return Some(debt);
    }
    let until = Until::Later {
        date: rules.today().tomorrow().ok(),
        distance: None,
    };
    let passed = waived.iter().any(|waived| waived.work == debt.work);
    passed.then_some(Debt { until, ..debt })
}

/// Pieces of another kind that stayed in: each is a lasting difference.
fn substitutes(account: &Account, id: &OrderId) -> Vec<VehicleFact> {
    account
        .items
        .values()
        .filter_map(|item| {
            let at: Vec<_> = account
                .positions(&item.id)
                .into_iter()
                .filter(|position| {
                    let stands = account.moves.stands(&item.id, *position);
                    stands
                        .iter()
                        .any(|stand| stand.piece == PieceIs::Substitute && stand.state.in_place())
                })
                .collect();
            (!at.is_empty()).then(|| VehicleFact::Differs {
                id: substitute_id(id, &item.id),
                order: id.clone(),
                item: Some(item.label),
                at,
                what: DifferenceIs::Substitute,
                size: None,
                torque: None,
                words: None,
            })
        })
        .collect()
}

/// The name of a substitute's difference: the same whenever the order is left, so that it is
/// carried once. Where the two names are longer than one may be, a tail made from the item's
/// whole name keeps items apart that begin alike.
fn substitute_id(order: &OrderId, item: &ItemId) -> DifferenceId {
    const LONGEST: usize = 60;
    const TAIL_BYTES: usize = 8;
    let whole = format!("{order}.{item}");
    if whole.len() <= LONGEST {
        return DifferenceId::new(whole);
    }
    let tail: String = Sha256::digest(whole.as_bytes())
        .iter()
        .take(TAIL_BYTES)
        .map(|byte| format!("{byte:02x}"))
        .collect();
    let begins: String = whole.chars().take(LONGEST - 2 * TAIL_BYTES - 1).collect();
    DifferenceId::new(format!("{begins}.{tail}"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use record::form::Form;
    use record::v1::basics::DifferenceIdForm;
    use std::collections::BTreeSet;

    #[test]
    fn the_differences_of_two_items_never_share_a_name() {
        let order = OrderId::new("0b8f3f0e-6a53-4c5e-9d39-5c4d0a2b9f11");
        let items = [
            "tray",
            "water-pump-pulley-bolts",
            "water-pump-pulley-bolts-upper",
            "water-pump-pulley-bolts-lower",
        ];
        let ids: BTreeSet<DifferenceId> = items
            .map(|item| substitute_id(&order, &ItemId::new(item)))
            .into();
        assert_eq!(ids.len(), items.len());
        for id in ids {
            let read = DifferenceIdForm(id.as_str().to_owned()).read();
            assert_eq!(read, Ok(id));
        }
    }
}

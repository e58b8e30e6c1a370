//! What a vehicle carries away from an order, for its next visit.

use crate::trouble::Trouble;
use crate::world::{World, vehicle_of};
use record::{AnyEvent, Stream};
use repair::{
    Account, DifferenceId, DifferenceIs, Fact, Order, OrderId, PieceIs, Rules, Until, VehicleFact,
    debts,
};

/// What the vehicle carries from now on, and does not carry yet: its lasting differences,
/// and work due later.
pub(crate) fn carried_by_vehicle(
    world: &World,
    order: &Order,
    id: &OrderId,
    rules: &Rules,
) -> Result<Vec<(Stream, AnyEvent)>, Trouble> {
    let Some(vehicle) = vehicle_of(order) else {
        return Ok(Vec::new());
    };
    let carried = world.vehicle(&vehicle)?;
    let account = Account::of(order);
    let label = |item: &repair::ItemId| {
        account
            .items
            .get(account.moves.name(item))
            .map(|item| item.label)
    };
    let differences = order.facts().filter_map(|(_, filed)| match &filed.fact {
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
    let owing = debts(order, &account, rules)
        .into_iter()
        .filter(|debt| matches!(debt.until, Until::Later { .. }))
        .map(|debt| VehicleFact::LeftOwing {
            order: id.clone(),
            item: debt.work.item.as_ref().and_then(label),
            work: debt.work,
            words: debt.words,
            until: debt.until,
        });
    Ok(differences
        .chain(substitutes(&account, id))
        .chain(owing)
        // It may leave a second time, having come back in.
        .filter(|fact| !carried.facts().any(|(.., known)| known == fact))
        .map(|fact| (Stream::Vehicle(vehicle.clone()), AnyEvent::Vehicle(fact)))
        .collect())
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
                id: DifferenceId::new(
                    format!("{id}.{}", item.id)
                        .chars()
                        .take(60)
                        .collect::<String>(),
                ),
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

//! Proofs and second checks: which are needed, which hold, and what undoes them.

use crate::account::Account;
use crate::code::{CheckIs, Outcome, ProofIs};
use crate::fact::Fact;
use crate::ids::{MoveId, PersonId, ProofId};
use crate::item::Item;
use crate::moves::Stated;
use crate::order::Order;
use crate::reason::Why;
use states::{Kind, System};
use std::collections::BTreeSet;

/// The proofs that the disturbed systems call for.
#[must_use]
pub fn needed(account: &Account) -> BTreeSet<ProofIs> {
    let systems = account.systems_disturbed();
    let mut out = BTreeSet::new();
    let mut disturbed = account
        .items
        .values()
        .filter(|item| !matches!(item.kind, Kind::PutIn | Kind::Work))
        .filter(|item| account.is_disturbed(&item.id));
    if disturbed.any(shows_on_the_road) {
        out.insert(ProofIs::RoadTest);
    }
    let opened = |item: &&Item| opens_cooling(item) && account.is_disturbed(&item.id);
    let mut readings = account
        .items
        .values()
        .flat_map(|item| account.readings(item));
    if readings.any(|item| opened(&item)) {
        out.insert(ProofIs::LeakTest);
    }
    for system in systems {
        match system {
            System::Brakes => out.insert(ProofIs::BrakeTest),
            System::Fuel => out.insert(ProofIs::FuelLeakLook),
            System::Restraints => out.insert(ProofIs::RestraintLamp),
            _ => false,
        };
    }
    out
}

/// Whether work on an item is proven by driving: not a bulb, a battery or a wiper, nor an oil
/// change, whose works say what is to be seen. Of what nobody knows it is assumed.
fn shows_on_the_road(item: &Item) -> bool {
    let still = matches!(item.system, System::Oil) || !item.system.runs();
    item.known_trade().is_none() || !still
}

/// Whether disturbing an item opens the coolant's circuit: the plug of a fan or the shroud
/// around it does not.
fn opens_cooling(item: &Item) -> bool {
    item.system == System::Cooling
        && !matches!(
            item.kind,
            Kind::PutIn | Kind::Work | Kind::Connector | Kind::Cover
        )
}

/// Whether a proof says anything about an item.
fn speaks_of(proof: ProofIs, item: &Item) -> bool {
    if matches!(item.kind, Kind::PutIn | Kind::Work) {
        return false;
    }
    match proof {
        // A top-up after the road test does not undo it.
        ProofIs::RoadTest => item.system.runs() && item.kind != Kind::Fluid,
        ProofIs::LeakTest => opens_cooling(item) && item.kind != Kind::Fluid,
        ProofIs::CoolantMix => item.system == System::Cooling && item.kind == Kind::Fluid,
        ProofIs::BrakeTest => item.system == System::Brakes,
        ProofIs::FuelLeakLook => item.system == System::Fuel,
        ProofIs::RestraintLamp => item.system == System::Restraints,
        ProofIs::Other => false,
    }
}

/// The same, as anybody reads the item who told of its place.
fn speaks(account: &Account, proof: ProofIs, item: &Item) -> bool {
    let mut readings = account.readings(item).iter();
    readings.any(|item| speaks_of(proof, item))
}

/// The proofs that a later one of the same kind took the place of. A road test cannot
/// take the place of a leak test, whatever it names.
#[must_use]
pub fn replaced(order: &Order) -> BTreeSet<(ProofIs, &ProofId)> {
    order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Proved {
                proof, replaces, ..
            } => Some(replaces.iter().map(|earlier| (*proof, earlier))),
            _ => None,
        })
        .flatten()
        .collect()
}

/// Proofs that are missing or failed. A proof holds for what it had seen: work done
/// since undoes it.
#[must_use]
pub fn proofs(order: &Order, account: &Account) -> Vec<Why> {
    let replaced = replaced(order);
    let mut held = BTreeSet::new();
    let mut failed = BTreeSet::new();
    for (_, filed) in order.beside_moves() {
        let Fact::Proved {
            id,
            proof,
            outcome,
            after,
            ..
        } = &filed.fact
        else {
            continue;
        };
        if replaced.contains(&(*proof, id)) {
            continue;
        }
        match outcome {
            Outcome::Failed => {
                failed.insert(*proof);
            }
            Outcome::Held | Outcome::NotProvoked if covers(account, *proof, after) => {
                held.insert(*proof);
            }
            _ => {}
        }
    }
    let mut out: Vec<Why> = failed
        .iter()
        .map(|proof| Why::ProofFailed {
            proof: *proof,
            moves: disturbances(account, *proof),
        })
        .collect();
    out.extend(
        needed(account)
            .into_iter()
            .filter(|proof| !held.contains(proof) && !failed.contains(proof))
            .map(|proof| Why::ProofMissing {
                proof,
                moves: disturbances(account, proof),
            }),
    );
    out
}

/// How many moves disturbed what a proof speaks of: after more of them, its absence is
/// another matter.
fn disturbances(account: &Account, proof: ProofIs) -> usize {
    account
        .items
        .values()
        .filter(|item| speaks(account, proof, item))
        .map(|item| account.moves.live(&item.id).count())
        .sum()
}

fn covers(account: &Account, proof: ProofIs, after: &[MoveId]) -> bool {
    let seen = account.moves.seen_by(after);
    account
        .items
        .values()
        .filter(|item| speaks(account, proof, item) && account.is_disturbed(&item.id))
        .all(|item| account.home_as_seen(&item.id, &seen))
}

/// Safety-class items that are home again and that nobody else has checked since, nor
/// the same person on a second walk-round.
#[must_use]
pub fn not_checked(order: &Order, account: &Account) -> Vec<Why> {
    account
        .items
        .values()
        .filter(|item| item.is_safety() && account.is_disturbed(&item.id))
        .filter(|item| account.open_item(&item.id).is_none())
        .filter_map(|item| unchecked(order, account, item))
        .collect()
}

fn unchecked(order: &Order, account: &Account, item: &Item) -> Option<Why> {
    // The last to move each piece; having looked at it since is not having checked it.
    let moved = |position| {
        let moves = &account.moves;
        moves.heads_stated(&item.id, position, Stated::Moved)
    };
    let heads: Vec<_> = account
        .positions(&item.id)
        .into_iter()
        .flat_map(moved)
        .collect();
    let by: BTreeSet<&PersonId> = heads.iter().map(|(_, node)| &node.stamp.who).collect();
    let last = by.first().copied()?.clone();
    let checked = order.beside_moves().any(|(_, filed)| {
        let Fact::Checked {
            check,
            items,
            after,
            learns,
            alone,
        } = &filed.fact
        else {
            return false;
        };
        let seen = account.moves.seen_by(after);
        let another = match check {
            CheckIs::WalkedBack => *alone != Some(false),
            CheckIs::SecondPerson => !by.contains(&filed.stamp.who),
        };
        another
            && *learns != Some(true)
            && items
                .iter()
                .any(|checked| account.moves.name(checked) == &item.id)
            && heads.iter().all(|(id, _)| seen.contains(id))
    });
    (!checked).then(|| Why::NotChecked {
        item: item.id.clone(),
        moves: account.moves.live(&item.id).count(),
        by: last,
    })
}

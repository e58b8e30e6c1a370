//! How much was off while an order was worked on.

use crate::floor::worked;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use jiff::Timestamp;
use repair::{Account, Fact, ItemId, Kind, Order, OrderId};
use std::collections::{BTreeMap, BTreeSet};

/// The way so far.
#[derive(Debug, Clone, Default, PartialEq)]
pub struct WaySoFar {
    /// After each step: the minutes worked, or steps where no clock ran, and how many things were
    /// off then.
    pub done: Vec<(f64, u32)>,
    /// Whether it is in minutes.
    pub timed: bool,
}

/// How much was off after each thing that was told at the vehicle.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn way_so_far(snap: &Snapshot<'_>, order: &OrderId) -> Result<WaySoFar, Trouble> {
    let order = snap.world().order(order)?;
    Ok(so_far(&order, snap.now()))
}

fn so_far(order: &Order, now: Timestamp) -> WaySoFar {
    let account = order.account();
    let mut told: Vec<_> = order
        .facts()
        .filter_map(|(command, filed)| match &filed.fact {
            Fact::Moved { moves, .. } => Some(((filed.stamp.at, command), moves)),
            _ => None,
        })
        .collect();
    told.sort_by(|a, b| a.0.cmp(&b.0));
    let work = worked(order, Timestamp::MIN, now);
    let minutes = |until: Timestamp| -> f64 {
        work.iter()
            .filter(|one| one.from < until)
            .map(|one| one.to.min(until).duration_since(one.from).as_secs_f64() / 60.0)
            .sum()
    };
    let timed = minutes(now) >= 1.0;
    let mut away: BTreeMap<&ItemId, BTreeSet<u16>> = BTreeMap::new();
    let mut done: Vec<(f64, u32)> = Vec::new();
    let mut steps = 0.0;
    for ((at, _), moves) in told {
        for one in moves {
            step(&account, one, &mut away);
        }
        steps += 1.0;
        let open = away.values().filter(|at| !at.is_empty()).count();
        let open = u32::try_from(open).unwrap_or(u32::MAX);
        done.push((if timed { minutes(at) } else { steps }, open));
    }
    WaySoFar { done, timed }
}

/// What a move leaves away or brings home. What is put in, and work, are no things that are off.
fn step<'a>(
    account: &'a Account,
    one: &repair::Move,
    away: &mut BTreeMap<&'a ItemId, BTreeSet<u16>>,
) {
    let Some((item, known)) = account.items.get_key_value(account.moves.name(&one.item)) else {
        return;
    };
    if matches!(known.kind, Kind::PutIn | Kind::Work) {
        return;
    }
    let of = away.entry(item).or_default();
    for at in &one.at {
        if one.left.state == known.kind.home() {
            of.remove(at);
        } else {
            of.insert(*at);
        }
    }
}

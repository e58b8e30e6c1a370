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
    /// Whether there is too much of it to be drawn; then nothing is told.
    pub too_long: bool,
}

/// How much was off after each thing that was told at the vehicle.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn way_so_far(snap: &Snapshot<'_>, order: &OrderId) -> Result<WaySoFar, Trouble> {
    let order = snap.world().order(order)?;
    Ok(so_far(&order, snap.now()))
}

/// An order of more facts is no line any more, and looking through it would keep others waiting.
const MOST_FACTS: usize = 500;
/// So many steps tell as much as all of them.
const MOST_STEPS: usize = 60;

fn so_far(order: &Order, now: Timestamp) -> WaySoFar {
    let mut told = Vec::new();
    for (nth, (command, filed)) in order.facts().enumerate() {
        if nth >= MOST_FACTS {
            return WaySoFar {
                too_long: true,
                ..WaySoFar::default()
            };
        }
        if let Fact::Moved { moves, .. } = &filed.fact {
            told.push(((filed.stamp.at, command), moves));
        }
    }
    told.sort_by(|a, b| a.0.cmp(&b.0));
    let account = order.account();
    let mut away: BTreeMap<&ItemId, BTreeSet<u16>> = BTreeMap::new();
    let mut steps: Vec<(Timestamp, u32, u32)> = Vec::new();
    for (nth, ((at, _), moves)) in (1..).zip(told) {
        for one in moves {
            step(&account, one, &mut away);
        }
        let open = away.values().filter(|at| !at.is_empty()).count();
        steps.push((at, nth, u32::try_from(open).unwrap_or(u32::MAX)));
    }
    // Of many steps only some, and the last.
    let every = steps.len().div_ceil(MOST_STEPS).max(1);
    let last = steps.len().saturating_sub(1);
    let kept = steps.iter().enumerate();
    let kept = kept.filter(|(nth, _)| nth % every == 0 || *nth == last);
    let work = worked(order, Timestamp::MIN, now);
    let minutes = |until: Timestamp| -> f64 {
        work.iter()
            .filter(|one| one.from < until)
            .map(|one| one.to.min(until).duration_since(one.from).as_secs_f64() / 60.0)
            .sum()
    };
    let timed = minutes(now) >= 1.0;
    let done = kept.map(|(_, (at, nth, open))| {
        let across = if timed { minutes(*at) } else { f64::from(*nth) };
        (across, *open)
    });
    WaySoFar {
        done: done.collect(),
        timed,
        too_long: false,
    }
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

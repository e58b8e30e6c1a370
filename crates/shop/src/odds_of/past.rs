//! What the record teaches of times and snags.

use crate::planning::ran_tenths;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::vehicle_of;
use jiff::Timestamp;
use odds::{Condition, Done, Grid, History, Joint, Prior, SnagHistory};
use repair::{Account, Clock, Fact, ItemId, Kind, Order, OrderId, SnagIs, StageId};
use rust_decimal::prelude::ToPrimitive;
use std::collections::BTreeMap;
use std::sync::{Arc, Mutex, PoisonError};

/// So many orders are learned from, the newest.
pub(super) const ORDERS: usize = 300;

/// A usual stage takes a little less than its book and a few take far more, so that with this a
/// long job stays within its book as often as not.
const USUAL: f64 = 0.88;

/// What was learned.
pub(super) struct Past {
    pub(super) times: History,
    pub(super) snags: SnagHistory,
}

/// What one order teaches.
#[derive(Debug, Clone, Default, PartialEq)]
pub(super) struct PastOrder {
    pub(super) vehicle: String,
    pub(super) stages: Vec<Done>,
    /// The joint, how many pieces came out, how many of them brought a snag.
    pub(super) joints: Vec<(Joint, u32, u32)>,
}

/// What orders teach, by order, with the place in its stream up to which it was read.
type PastOrders = Mutex<BTreeMap<OrderId, (u64, Arc<PastOrder>)>>;

/// What the newest orders teach, oldest first, so that the same record says the same.
pub(super) fn past(snap: &Snapshot<'_>, here: Option<&OrderId>) -> Result<Past, Trouble> {
    let world = snap.world();
    let prior = Prior {
        usual: USUAL,
        ..Prior::default()
    };
    let times = History::new(prior, Grid::default());
    let mut times = times.map_err(|error| super::trouble(&error))?;
    let mut snags = SnagHistory::default();
    let mut orders = world.orders_before(None, ORDERS)?;
    if let Some(here) = here
        && !orders.iter().any(|(_, id)| id == here)
    {
        orders.push((0, here.clone()));
    }
    orders.sort();
    let kept = snap.shelf::<PastOrders>();
    for (_, id) in orders {
        let seq = world.seq(&record::Stream::Order(id.clone()))?;
        let known = {
            let kept = kept.lock().unwrap_or_else(PoisonError::into_inner);
            kept.get(&id).filter(|(at, _)| *at == seq).cloned()
        };
        let taught = match known {
            Some((_, taught)) => taught,
            None => {
                let order = world.order(&id)?;
                let rust = match vehicle_of(&order) {
                    Some(vehicle) => world.vehicle(&vehicle)?.rust(),
                    None => None,
                };
                let taught = Arc::new(past_order(&order, rust));
                let mut kept = kept.lock().unwrap_or_else(PoisonError::into_inner);
                if kept.len() >= 2 * ORDERS {
                    kept.clear();
                }
                kept.insert(id.clone(), (seq, Arc::clone(&taught)));
                taught
            }
        };
        for stage in &taught.stages {
            // A clock or a book that makes no sense teaches nothing.
            let _ = times.learn(&taught.vehicle, std::slice::from_ref(stage));
        }
        for (joint, pieces, found) in &taught.joints {
            let _ = snags.learn(joint, *pieces, *found);
        }
    }
    Ok(Past { times, snags })
}

/// What one order teaches: stages with a book time whose clock ran, and what came out.
pub(super) fn past_order(order: &Order, rust: Option<u8>) -> PastOrder {
    let account = Account::of(order);
    let condition = Condition {
        rust: rust.filter(|rust| *rust <= 3),
        ..Condition::default()
    };
    let vehicle = vehicle_of(order).map(|vehicle| vehicle.as_str().to_owned());
    PastOrder {
        vehicle: vehicle.unwrap_or_default(),
        stages: stages(order, &account, condition),
        joints: joints_of(order, &account, condition.rust)
            .into_iter()
            .map(|(_, joint, pieces, found)| (joint, pieces, found))
            .collect(),
    }
}

/// The stages of an order with a book time whose clock ran.
pub(crate) fn stages_of(order: &Order, rust: Option<u8>) -> Vec<Done> {
    past_order(order, rust).stages
}

/// A clock on a stage.
#[derive(Default)]
struct Timed {
    book_minutes: Option<f64>,
    clock: Vec<(Timestamp, Clock)>,
    who: String,
    /// When it was confirmed last, and what sort of work it was.
    done: Option<(Timestamp, String)>,
}

fn stages(order: &Order, account: &Account, condition: Condition) -> Vec<Done> {
    let mut stages: BTreeMap<&StageId, Timed> = BTreeMap::new();
    for (_, filed) in order.facts() {
        match &filed.fact {
            Fact::Timed {
                stage,
                clock,
                book_minutes,
                ..
            } => {
                let timed = stages.entry(stage).or_default();
                timed.clock.push((filed.stamp.at, *clock));
                timed.who = filed.stamp.who.as_str().to_owned();
                let book = book_minutes.and_then(|minutes| minutes.to_f64());
                timed.book_minutes = timed.book_minutes.or(book);
            }
            Fact::Moved {
                stage: Some(stage),
                moves,
            } => {
                let Some(first) = moves.first() else { continue };
                let item = account.moves.name(&first.item);
                let kind = account.items.get(item).map_or(Kind::Part, |item| item.kind);
                let way = if first.left.state == kind.home() {
                    "back"
                } else {
                    "out"
                };
                let sort = format!("{kind:?} {way}").to_lowercase();
                let timed = stages.entry(stage).or_default();
                let until = timed.done.as_ref().map_or(filed.stamp.at, |(at, _)| *at);
                timed.done = Some((until.max(filed.stamp.at), sort));
            }
            _ => {}
        }
    }
    let learned = stages.into_values().filter_map(|timed| {
        let book_minutes = timed.book_minutes.filter(|book| *book >= 0.1)?;
        let last = timed.clock.iter().map(|(at, _)| *at).max()?;
        let (until, kind, left) = match timed.done {
            Some((until, sort)) => (until, sort, false),
            None => (last, "left".to_owned(), true),
        };
        let tenths = ran_tenths(&timed.clock, until)?;
        Some(Done {
            kind,
            person: (!timed.who.is_empty()).then_some(timed.who),
            condition,
            book_minutes,
            minutes: f64::from(tenths) / 10.0,
            left,
        })
    });
    learned.collect()
}

/// Fasteners of a known size that were moved, and how many of them snapped, stuck or stripped.
pub(crate) fn joints_of(
    order: &Order,
    account: &Account,
    rust: Option<u8>,
) -> Vec<(ItemId, Joint, u32, u32)> {
    let moved = account.moves.items();
    moved
        .filter_map(|id| {
            let item = account.items.get(id)?;
            let size = item.size.as_ref()?;
            if item.kind != Kind::Fasteners {
                return None;
            }
            let pieces = item.pieces.len().max(1);
            let found: usize = order
                .beside_moves()
                .filter_map(|(_, filed)| match &filed.fact {
                    Fact::SnagFound {
                        item: Some(of),
                        at,
                        what: SnagIs::Snapped | SnagIs::Stuck | SnagIs::Stripped | SnagIs::Rounded,
                        ..
                    } if account.moves.name(of) == id => Some(at.len().max(1)),
                    _ => None,
                })
                .sum();
            let count = |count: usize| u32::try_from(count).unwrap_or(u32::MAX);
            let joint = Joint {
                rust,
                size: Some(size.as_str().to_owned()),
                ..Joint::default()
            };
            Some((id.clone(), joint, count(pieces), count(found.min(pieces))))
        })
        .collect()
}

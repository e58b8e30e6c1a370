//! A kind of vehicle: its finished orders, its maps, and what was counted of them.

use super::job::{OrderTaught, read};
use super::said::joined;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::{Finished, vehicle_of};
use crate::{KeptMap, planning::map_id};
use lessons::{Joins, Learner};
use repair::{Field, ItemId, MapDrafts, MapId, OrderId};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, Mutex, PoisonError};

/// So many orders of one kind are learned from, the newest.
pub const MOST_ORDERS: usize = 400;

/// So many kinds are kept at hand, those asked for last.
const MOST_KINDS: usize = 8;

/// One kind of vehicle: all whose label, or whose map's vehicle, reads the same.
pub struct VehicleKind {
    /// Its name in addresses, and in the record what was said of it.
    pub code: MapId,
    /// What people call it.
    pub vehicle: String,
    /// Its maps that can be planned by, each in its newest sound version.
    pub maps: Vec<Arc<KeptMap>>,
    /// Its finished orders, the newest first.
    pub finished: Vec<Finished>,
    /// What was said of it.
    pub said: Arc<MapDrafts>,
}

/// A kind of vehicle in the list of all.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct KindRow {
    /// Its name in addresses.
    pub code: String,
    /// What people call it.
    pub vehicle: String,
    /// How many finished orders there are.
    pub orders: usize,
    /// Whether the shop has a map of it.
    pub has_map: bool,
}

/// The name of a vehicle's kind.
#[must_use]
pub fn kind_of(vehicle: &str) -> MapId {
    map_id(vehicle.trim())
}

/// The kind of a vehicle that is called so, where there is finished work or a map of it: what a
/// page leads to.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn known_kind(snap: &Snapshot<'_>, vehicle: &str) -> Result<Option<MapId>, Trouble> {
    let code = kind_of(vehicle);
    let worked_on = || -> Result<bool, Trouble> {
        let some = snap.world().finished_of_label(code.as_str(), 1)?;
        Ok(!some.is_empty())
    };
    let known = maps_of(snap)?.contains_key(&code) || worked_on()?;
    Ok(known.then_some(code))
}

/// The maps of a kind in their newest sound versions.
fn maps_of(snap: &Snapshot<'_>) -> Result<BTreeMap<MapId, Vec<Arc<KeptMap>>>, Trouble> {
    let mut maps: BTreeMap<MapId, Vec<Arc<KeptMap>>> = BTreeMap::new();
    for one in snap.maps()? {
        if one.sound.is_none() {
            continue;
        }
        let kept = snap.map(&one.newest.id, one.sound)?;
        if let Ok(map) = kept.sound() {
            maps.entry(kind_of(&map.vehicle)).or_default().push(kept);
        }
    }
    Ok(maps)
}

/// Every kind of which there is finished work or a map, by what people call it.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn kinds(snap: &Snapshot<'_>) -> Result<Vec<KindRow>, Trouble> {
    let maps = maps_of(snap)?;
    let labels = snap.world().labels_finished()?;
    let codes: BTreeSet<MapId> = maps
        .keys()
        .cloned()
        .chain(labels.keys().map(MapId::new))
        .collect();
    let mut rows = Vec::new();
    for code in codes {
        let kind = with_maps(snap, &code, &maps)?;
        let is_empty = kind.finished.is_empty() && kind.maps.is_empty();
        if is_empty {
            continue;
        }
        rows.push(KindRow {
            code: code.as_str().to_owned(),
            vehicle: kind.vehicle,
            orders: kind.finished.len(),
            has_map: !kind.maps.is_empty(),
        });
    }
    rows.sort_by(|a, b| {
        (a.vehicle.to_lowercase(), &a.code).cmp(&(b.vehicle.to_lowercase(), &b.code))
    });
    Ok(rows)
}

/// A kind by its name.
///
/// # Errors
/// [`Trouble`]: there is neither finished work nor a map of it, or the record cannot be read.
pub fn vehicle_kind(snap: &Snapshot<'_>, code: &str) -> Result<VehicleKind, Trouble> {
    let kind = with_maps(snap, &MapId::new(code), &maps_of(snap)?)?;
    if kind.finished.is_empty() && kind.maps.is_empty() {
        let mut trouble = Trouble::not_found(format!(
            "there is neither finished work nor a map of {}",
            code.replace('-', " ")
        ));
        trouble.mend = "hand an order of it over first, or write a map".to_owned();
        return Err(trouble);
    }
    Ok(kind)
}

fn with_maps(
    snap: &Snapshot<'_>,
    code: &MapId,
    maps: &BTreeMap<MapId, Vec<Arc<KeptMap>>>,
) -> Result<VehicleKind, Trouble> {
    let world = snap.world();
    let own = maps.get(code).cloned().unwrap_or_default();
    let of_another = |one: &Finished| {
        let map = one.map.as_ref();
        map.is_some_and(|map| {
            let other = maps.iter().filter(|(kind, _)| *kind != code);
            other.flat_map(|(_, kept)| kept).any(|kept| kept.id == *map)
        })
    };
    let mut finished: BTreeMap<OrderId, Finished> = BTreeMap::new();
    for one in world.finished_of_label(code.as_str(), MOST_ORDERS)? {
        if !of_another(&one) {
            finished.insert(one.order.clone(), one);
        }
    }
    for kept in &own {
        for one in world.finished_of_map(&kept.id, MOST_ORDERS)? {
            finished.insert(one.order.clone(), one);
        }
    }
    let mut finished: Vec<Finished> = finished.into_values().collect();
    finished.sort_by_key(|one| std::cmp::Reverse(one.number));
    finished.truncate(MOST_ORDERS);
    let by_map = own.first().and_then(|kept| kept.sound().ok());
    let vehicle = match (by_map, finished.first()) {
        (Some(map), _) => map.vehicle.clone(),
        (None, Some(newest)) => label_of(snap, &newest.order)?,
        (None, None) => code.as_str().replace('-', " "),
    };
    Ok(VehicleKind {
        code: code.clone(),
        vehicle,
        maps: own,
        finished,
        said: world.map(code)?,
    })
}

/// What an order's vehicle is called.
pub(crate) fn label_of(snap: &Snapshot<'_>, order: &OrderId) -> Result<String, Trouble> {
    let world = snap.world();
    let order = world.order(order)?;
    let Some(vehicle) = vehicle_of(&order) else {
        return Ok(String::new());
    };
    let label = world.vehicle(&vehicle)?.text(Field::Label).words;
    let label = snap.texts().text_of(label).unwrap_or_default();
    Ok(label.trim().to_owned())
}

/// What was counted of a kind, with the orders that it was counted of, the newest first.
pub(super) struct Counted {
    pub learner: Arc<Learner>,
    pub orders: Vec<Arc<OrderTaught>>,
}

/// What is kept of a kind from one request to the next.
struct Kept {
    /// When it was asked for last, counted in questions.
    asked: u64,
    /// Up to which event of the shop's own it holds: an erasure is one, and begins it again.
    shop_position: u64,
    pairs: BTreeSet<(ItemId, ItemId)>,
    learner: Arc<Learner>,
    orders: BTreeMap<OrderId, (u64, Arc<OrderTaught>)>,
}

/// The kinds at hand.
#[derive(Default)]
pub(super) struct AtHand {
    asked: u64,
    kinds: BTreeMap<MapId, Kept>,
}

/// What was counted of a kind up to now: what is known is kept, and only orders that were
/// finished or told more of since are read.
pub(super) fn counted(snap: &Snapshot<'_>, kind: &VehicleKind) -> Result<Counted, Trouble> {
    let shelf = snap.shelf::<Mutex<AtHand>>();
    let mut at_hand = shelf.lock().unwrap_or_else(PoisonError::into_inner);
    at_hand.asked += 1;
    let asked = at_hand.asked;
    let shop_position = snap.world().shop_position;
    let mut kept = at_hand
        .kinds
        .remove(&kind.code)
        .filter(|kept| kept.shop_position == shop_position)
        .unwrap_or_else(|| Kept {
            asked,
            shop_position,
            pairs: BTreeSet::new(),
            learner: Arc::default(),
            orders: BTreeMap::new(),
        });
    kept.asked = asked;
    kept.take(snap, kind)?;
    let orders = kind
        .finished
        .iter()
        .filter_map(|one| kept.orders.get(&one.order));
    let counted = Counted {
        learner: Arc::clone(&kept.learner),
        orders: orders.map(|(_, taught)| Arc::clone(taught)).collect(),
    };
    // Words that could not be read must not be taken for what is so.
    if !crate::words::fault_met() {
        at_hand.kinds.insert(kind.code.clone(), kept);
    }
    if at_hand.kinds.len() > MOST_KINDS {
        let oldest = at_hand.kinds.iter().min_by_key(|(_, kept)| kept.asked);
        if let Some(oldest) = oldest.map(|(code, _)| code.clone()) {
            at_hand.kinds.remove(&oldest);
        }
    }
    Ok(counted)
}

impl Kept {
    fn take(&mut self, snap: &Snapshot<'_>, kind: &VehicleKind) -> Result<(), Trouble> {
        let wanted: BTreeMap<&OrderId, &Finished> =
            kind.finished.iter().map(|one| (&one.order, one)).collect();
        let is_new = |one: &&Finished| {
            let known = self.orders.get(&one.order);
            known.is_none_or(|(position, _)| *position != one.position)
        };
        let mut news = Vec::new();
        for one in kind.finished.iter().filter(is_new) {
            let taught = Arc::new(read(snap, one.number, &one.order)?);
            news.push((one, taught));
        }
        let gone: Vec<OrderId> = self
            .orders
            .keys()
            .filter(|order| !wanted.contains_key(order))
            .cloned()
            .collect();
        let mut pairs = joined(snap, &kind.said);
        for (_, taught) in &news {
            pairs.extend(taught.same.iter().cloned());
        }
        let known = self.orders.iter().filter(|(order, _)| {
            let renewed = news.iter().any(|(one, _)| one.order == **order);
            !renewed && wanted.contains_key(order)
        });
        for (_, (_, taught)) in known {
            pairs.extend(taught.same.iter().cloned());
        }
        if pairs != self.pairs {
            self.learner = Arc::new(Learner::new(Joins::new(pairs.iter().cloned())));
            self.pairs = pairs;
            let learner = Arc::make_mut(&mut self.learner);
            for (order, (_, taught)) in &self.orders {
                if wanted.contains_key(order) {
                    learner.add(&taught.job);
                }
            }
        }
        if news.is_empty() && gone.is_empty() {
            return Ok(());
        }
        let learner = Arc::make_mut(&mut self.learner);
        for order in gone {
            if let Some((_, taught)) = self.orders.remove(&order) {
                learner.take_back(&taught.job.name);
            }
        }
        for (one, taught) in news {
            learner.add(&taught.job);
            self.orders
                .insert(one.order.clone(), (one.position, taught));
        }
        Ok(())
    }
}

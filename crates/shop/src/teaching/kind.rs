//! A kind of vehicle: its finished orders, its maps, and what was counted of them.

use super::job::{OrderTaught, read};
use super::said::joined;
use crate::phrases::teaching as told;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::{Finished, vehicle_of};
use crate::{KeptMap, planning::map_id};
use lessons::{Joins, Learner};
use repair::{CommandId, Field, ItemId, MapDrafts, MapId, OrderId};
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
    /// What was said of it, under all its names.
    pub said: Arc<MapDrafts>,
    /// The other names that people gave it, each a kind of its own before.
    pub also: Vec<MapId>,
}

impl VehicleKind {
    /// Whether a vehicle that is called so is one of this kind.
    #[must_use]
    pub fn is_called(&self, vehicle: &str) -> bool {
        let code = kind_of(vehicle);
        code == self.code || self.also.contains(&code)
    }
}

/// A kind that this one may be, called otherwise.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct AlikeKind {
    /// Its name in addresses.
    pub code: MapId,
    /// What people call it.
    pub vehicle: String,
    /// Whether the two names are near each other.
    pub near: bool,
    /// What was said before of which kind it goes by.
    pub seen: Vec<CommandId>,
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
    let joins = snap.world().kinds_joined()?;
    let code = goes_by(&joins, &kind_of(vehicle));
    let worked_on = || -> Result<bool, Trouble> {
        for name in names_of(&joins, &code) {
            if !snap.world().finished_of_label(name.as_str(), 1)?.is_empty() {
                return Ok(true);
            }
        }
        Ok(false)
    };
    let known = maps_of(snap)?.contains_key(&code) || worked_on()?;
    Ok(known.then_some(code))
}

/// The kind that a kind goes by: what it was said to be the same as, and that in turn. Where the
/// sayings go round in a circle, the least of the circle's names.
fn goes_by(joins: &BTreeMap<MapId, MapId>, code: &MapId) -> MapId {
    let mut seen = vec![code];
    let mut at = code;
    while let Some(next) = joins.get(at) {
        if let Some(from) = seen.iter().position(|one| *one == next) {
            return seen[from..].iter().min().map_or(at, |one| *one).clone();
        }
        seen.push(next);
        at = next;
    }
    at.clone()
}

/// What the kind of each vehicle that is called so is called: of all its names, the first given.
pub(crate) fn named_by_kind(
    snap: &Snapshot<'_>,
    vehicles: &[String],
) -> Result<Vec<String>, Trouble> {
    let joins = snap.world().kinds_joined()?;
    let mut names: BTreeMap<MapId, &String> = BTreeMap::new();
    let named = vehicles.iter().map(|vehicle| {
        let code = goes_by(&joins, &kind_of(vehicle));
        (*names.entry(code).or_insert(vehicle)).clone()
    });
    Ok(named.collect())
}

/// Every name of a kind, the one it goes by first.
fn names_of(joins: &BTreeMap<MapId, MapId>, code: &MapId) -> Vec<MapId> {
    let others = joins.keys().filter(|other| *other != code);
    let others = others.filter(|other| goes_by(joins, other) == *code);
    std::iter::once(code).chain(others).cloned().collect()
}

/// The newest finished orders of vehicles that are of the same kind as one that is called so.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub(crate) fn finished_like(
    snap: &Snapshot<'_>,
    vehicle: &str,
    most: usize,
) -> Result<Vec<Finished>, Trouble> {
    let joins = snap.world().kinds_joined()?;
    let mut out = Vec::new();
    for name in names_of(&joins, &goes_by(&joins, &kind_of(vehicle))) {
        out.extend(snap.world().finished_of_label(name.as_str(), most)?);
    }
    out.sort_by_key(|one| std::cmp::Reverse(one.number));
    out.truncate(most);
    Ok(out)
}

/// The other kinds that a kind may be, called otherwise: those with a name near its own first.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn alike(snap: &Snapshot<'_>, kind: &VehicleKind) -> Result<Vec<AlikeKind>, Trouble> {
    let mut out = Vec::new();
    for row in kinds(snap)? {
        if row.code == kind.code.as_str() {
            continue;
        }
        let code = MapId::new(&row.code);
        out.push(AlikeKind {
            near: near(&row.vehicle, &kind.vehicle),
            seen: snap.world().map(&code)?.same_kind_as().1,
            code,
            vehicle: row.vehicle,
        });
    }
    out.sort_by_key(|one| (!one.near, one.vehicle.to_lowercase()));
    Ok(out)
}

/// Whether two names are likely one: the same letters and digits, all words of one in the other,
/// or one slip of the pen between them.
fn near(one: &str, other: &str) -> bool {
    let (a, b) = (crate::world::squeezed(one), crate::world::squeezed(other));
    if a.is_empty() || b.is_empty() {
        return false;
    }
    let words = |text: &str| -> BTreeSet<String> {
        text.split(|c: char| !c.is_alphanumeric())
            .filter(|word| !word.is_empty())
            .map(str::to_lowercase)
            .collect()
    };
    let (these, those) = (words(one), words(other));
    a == b || these.is_subset(&those) || those.is_subset(&these) || is_one_slip(&a, &b)
}

/// Whether one letter more, less or another makes the one of the other.
fn is_one_slip(one: &str, other: &str) -> bool {
    let (one, other): (Vec<char>, Vec<char>) = (one.chars().collect(), other.chars().collect());
    let (short, long) = if one.len() <= other.len() {
        (one, other)
    } else {
        (other, one)
    };
    // A slip in a short name or in a figure is another name.
    if long.len() < 6 || long.len() - short.len() > 1 {
        return false;
    }
    let same = short.iter().zip(&long).take_while(|(a, b)| a == b).count();
    let rest = long.len() - same - 1;
    let slipped = long[same..].first().is_some_and(|c| !c.is_numeric());
    slipped && long[long.len() - rest..] == short[short.len() - rest.min(short.len())..]
}

/// The maps of a kind in their newest sound versions.
fn maps_of(snap: &Snapshot<'_>) -> Result<BTreeMap<MapId, Vec<Arc<KeptMap>>>, Trouble> {
    let joins = snap.world().kinds_joined()?;
    let mut maps: BTreeMap<MapId, Vec<Arc<KeptMap>>> = BTreeMap::new();
    for one in snap.maps()? {
        if one.sound.is_none() {
            continue;
        }
        let kept = snap.map(&one.newest.id, one.sound)?;
        if let Ok(map) = kept.sound() {
            let code = goes_by(&joins, &kind_of(&map.vehicle));
            maps.entry(code).or_default().push(kept);
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
    let joins = snap.world().kinds_joined()?;
    let worked_on = labels.keys().map(MapId::new);
    let codes: BTreeSet<MapId> = maps
        .keys()
        .cloned()
        .chain(worked_on.map(|code| goes_by(&joins, &code)))
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
    let joins = snap.world().kinds_joined()?;
    let code = goes_by(&joins, &MapId::new(code));
    let kind = with_maps(snap, &code, &maps_of(snap)?)?;
    if kind.finished.is_empty() && kind.maps.is_empty() {
        let mut trouble = Trouble::not_found(told::nothing_of(code.as_str().replace('-', " ")));
        told::hand_one_over().clone_into(&mut trouble.mend);
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
    let joins = world.kinds_joined()?;
    let names = names_of(&joins, code);
    let own = maps.get(code).cloned().unwrap_or_default();
    let of_another = |one: &Finished| {
        let map = one.map.as_ref();
        map.is_some_and(|map| {
            let other = maps.iter().filter(|(kind, _)| *kind != code);
            other.flat_map(|(_, kept)| kept).any(|kept| kept.id == *map)
        })
    };
    let mut finished: BTreeMap<OrderId, Finished> = BTreeMap::new();
    for name in &names {
        for one in world.finished_of_label(name.as_str(), MOST_ORDERS)? {
            if !of_another(&one) {
                finished.insert(one.order.clone(), one);
            }
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
    let also = names.get(1..).unwrap_or_default().to_vec();
    let mut said = world.map(code)?;
    if !also.is_empty() {
        let others: Result<Vec<_>, Trouble> = also.iter().map(|name| world.map(name)).collect();
        said = Arc::new(MapDrafts::clone(&said).with(others?));
    }
    Ok(VehicleKind {
        code: code.clone(),
        vehicle,
        maps: own,
        finished,
        said,
        also,
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

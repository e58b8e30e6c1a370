//! An order seen through a map: where its items stand, and what is asked of them.

use super::shown::Extras;
use super::standing::{last_place, standing, to_roll};
use super::{Asked, Stands, in_order};
use crate::maps::KeptMap;
use crate::phrases::order::no_order;
use crate::phrases::planning as words;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use map::Map;
use plan::Problem;
use record::form::Form;
use record::v1::codes::{SystemForm, ZoneForm};
use repair::{
    Account, Aim, AimIs, Fact, ItemId, Kind, MapId, Order, OrderReading, State, System, Zone,
    adoption, aim,
};
use std::collections::{BTreeMap, BTreeSet};
use std::sync::Arc;

/// An order seen through a map.
pub struct OrderMap {
    /// The version of the map.
    pub kept: Arc<KeptMap>,
    /// The map, as this vehicle has it.
    pub map: Map,
    /// What is asked.
    pub asked: Asked,
    /// Whether the order already works by this map and aims at this.
    pub current: bool,
    /// Whether the order already works by this version of the map.
    pub adopted: bool,
    /// The aim told so far.
    pub before: Option<Aim>,
    /// Where things stand.
    pub stands: Stands,
    /// Where one stood last.
    pub stood: Option<String>,
    /// What must come home for it to roll.
    pub to_roll: BTreeSet<ItemId>,
    /// The name in the order of each item of the map.
    pub ids: BTreeMap<ItemId, ItemId>,
    /// Items that the order knows by other names and the map by the same words: the map's,
    /// then the order's.
    pub alike: Vec<(ItemId, ItemId)>,
    /// What differs by now from the map, by the item's name in the order.
    pub differs: BTreeMap<ItemId, Vec<String>>,
    /// What items are called that are out and that the map does not know.
    pub extras: Extras,
}

/// The map by which an order works, if it has adopted one.
///
/// # Errors
/// [`Trouble`], if there is no such order or the record cannot be read.
pub fn map_of_order(snap: &Snapshot<'_>, number: u64) -> Result<Option<(MapId, u32)>, Trouble> {
    with_order(snap, number, |order, _| {
        adoption(order).map(|adopted| (adopted.map.clone(), adopted.version))
    })
}

fn with_order<T>(
    snap: &Snapshot<'_>,
    number: u64,
    read: impl FnOnce(&Order, &repair::Rules) -> T,
) -> Result<T, Trouble> {
    let world = snap.world();
    let id = world
        .order_numbered(number)?
        .ok_or_else(|| Trouble::not_found(no_order(number)))?;
    Ok(read(&*world.order(&id)?, &snap.rules()))
}

/// An order through a version of a map; `asked` in place of what the order aims at.
///
/// # Errors
/// [`Trouble`]: no such order, map or version, or the map has errors.
pub fn on_map_of(
    snap: &Snapshot<'_>,
    number: u64,
    id: &MapId,
    version: Option<u32>,
    asked: Option<Asked>,
) -> Result<OrderMap, Trouble> {
    let kept = snap.map(id, version)?;
    let whole = kept.sound()?;
    with_order(snap, number, |order, rules| {
        let adopted = adoption(order)
            .is_some_and(|adopted| adopted.map == id && adopted.version == kept.version);
        let before = aim(order);
        let aimed = before.as_ref().map(|aim| Asked::of(whole, aim));
        let current = adopted
            && aimed.is_some()
            && asked
                .as_ref()
                .is_none_or(|asked| Some(asked) == aimed.as_ref());
        let asked = asked.or(aimed).unwrap_or_default();
        let map = whole.of_variant(&asked.variants);
        let reading = OrderReading::of(order, rules);
        let account = reading.account();
        let stands = standing(&map, &reading);
        let id = |item: &ItemId| account.moves.name(&in_order(item)).clone();
        OrderMap {
            ids: map
                .items
                .keys()
                .map(|item| (item.clone(), id(item)))
                .collect(),
            stood: last_place(&map, account),
            alike: alike(snap, &map, account),
            differs: differs(snap, order, account),
            to_roll: to_roll(&map, &reading),
            extras: extras(snap, &map, account, &stands),
            kept: Arc::clone(&kept),
            map,
            asked,
            current,
            adopted,
            before,
            stands,
        }
    })
}

/// What was typed on the order in the map's own words before it worked by the map.
fn alike(snap: &Snapshot<'_>, map: &Map, account: &Account) -> Vec<(ItemId, ItemId)> {
    let plain = |label: &str| label.trim().trim_end_matches('s').to_lowercase();
    let on_map: BTreeMap<ItemId, &ItemId> = map
        .items
        .keys()
        .map(|item| (account.moves.name(&in_order(item)).clone(), item))
        .collect();
    let by_words: BTreeMap<String, &ItemId> = map
        .items
        .keys()
        .map(|item| (plain(item.as_str()), item))
        .collect();
    let others = account
        .items
        .values()
        .filter(|item| !on_map.contains_key(&item.id));
    others
        .filter_map(|item| {
            let name = by_words.get(&plain(&snap.texts().text(item.label)))?;
            Some(((*name).clone(), item.id.clone()))
        })
        .collect()
}

/// What was noted to differ from now on: at which positions, what size and torque hold.
fn differs(snap: &Snapshot<'_>, order: &Order, account: &Account) -> BTreeMap<ItemId, Vec<String>> {
    let mut out: BTreeMap<ItemId, Vec<String>> = BTreeMap::new();
    for (_, filed) in order.beside_moves() {
        let Fact::DifferenceNoted {
            item: Some(item),
            at,
            size,
            torque,
            words,
            ..
        } = &filed.fact
        else {
            continue;
        };
        let place = match at.as_slice() {
            [] => String::new(),
            at => words::at_positions(crate::say::positions(at)),
        };
        let told = [
            size.as_ref().map(|size| size.as_str().to_owned()),
            torque.as_ref().map(|torque| torque.as_str().to_owned()),
            snap.texts().text_of(*words),
        ];
        let told: Vec<String> = told.into_iter().flatten().collect();
        let id = account.moves.name(item).clone();
        out.entry(id)
            .or_default()
            .push(words::now(place, told.join(", ")));
    }
    out
}

fn extras(snap: &Snapshot<'_>, map: &Map, account: &Account, stands: &Stands) -> Extras {
    let unknown = stands.keys().filter(|item| !map.items.contains_key(*item));
    unknown
        .map(|item| {
            let label = account
                .items
                .get(item)
                .map(|known| snap.texts().text(known.label));
            (
                item.clone(),
                label.unwrap_or_else(|| words::not_described().to_owned()),
            )
        })
        .collect()
}

impl OrderMap {
    /// The same for what the map knows alone: the plan of it stays as it was whatever else comes
    /// off or goes on, and is found once.
    #[must_use]
    pub fn of_the_map(mut self) -> Self {
        self.stands
            .retain(|item, _| self.map.items.contains_key(item));
        self.to_roll
            .retain(|item| self.map.items.contains_key(item));
        self.extras.clear();
        self
    }

    /// Where things stand, as text for a plan elsewhere. What the map does not know goes by
    /// what it is called.
    #[must_use]
    pub fn state_text(&self) -> String {
        let away = |(_, (kind, pieces)): &(&ItemId, &map::Pieces)| {
            pieces.values().any(|state| *state != kind.home())
        };
        let named = |(item, pieces): (&ItemId, &map::Pieces)| {
            let name = self
                .extras
                .get(item)
                .map_or_else(|| item.clone(), ItemId::new);
            (name, pieces.clone())
        };
        map::write_state(&map::StateOf {
            at: self.stood.clone(),
            items: self.stands.iter().filter(away).map(named).collect(),
        })
    }

    /// The problem of what is asked.
    #[must_use]
    pub fn problem(&self) -> Problem {
        self.problem_of(&self.asked)
    }

    /// Asked so, from where things stand and where one stands.
    pub(super) fn problem_of(&self, asked: &Asked) -> Problem {
        let mut problem = asked.problem(&self.map, &self.stands, &self.to_roll);
        let stood = self.stood.as_ref().map(plan::Place::new);
        problem.start = stood.or(problem.start);
        problem
    }

    /// What sort of thing an item of the map is, its system, and where it is worked on, for
    /// the cautions that it calls for.
    #[must_use]
    pub fn thing(&self, item: &ItemId) -> Option<(Kind, System, Zone)> {
        let known = self.map.items.get(item)?;
        let code = |word: &Option<String>| {
            serde_json::Value::from(word.clone().unwrap_or_default().replace(' ', "-"))
        };
        let system: Option<SystemForm> = serde_json::from_value(code(&known.system)).ok();
        let zone: Option<ZoneForm> = serde_json::from_value(code(&known.zone)).ok();
        Some((
            known.kind,
            system
                .and_then(|form| form.read().ok())
                .unwrap_or(System::Unknown),
            zone.and_then(|form| form.read().ok())
                .unwrap_or(Zone::Unknown),
        ))
    }

    /// Whether anything is asked at all.
    #[must_use]
    pub fn asks(&self) -> bool {
        match self.asked.aim {
            AimIs::Reach => !self.asked.targets.is_empty() || !self.asked.also.is_empty(),
            AimIs::Home | AimIs::Roll => true,
        }
    }

    /// The name in the order of an item of a row.
    #[must_use]
    pub fn id<'a>(&'a self, item: &'a ItemId) -> &'a ItemId {
        self.ids.get(item).unwrap_or(item)
    }

    /// Where the pieces of an item stand now.
    #[must_use]
    pub fn stands(&self, item: &ItemId) -> Vec<(u16, State)> {
        match (self.stands.get(item), self.map.items.get(item)) {
            (Some((_, pieces)), _) => pieces.iter().map(|(at, state)| (*at, *state)).collect(),
            (None, Some(known)) => (1..=known.count)
                .map(|at| (at, known.kind.home()))
                .collect(),
            (None, None) => Vec::new(),
        }
    }

    /// The moves of the map that bring an item home, and what each needs first.
    fn needs_home(&self, item: &ItemId, to: State) -> Option<&states::Need> {
        let made = self
            .map
            .items
            .get(item)?
            .moves
            .iter()
            .find(|made| made.from == to)?;
        Some(made.need_back.as_ref().unwrap_or(&made.need))
    }

    /// Whether an item may come to this state on its way home, by what its move needs.
    #[must_use]
    pub fn may_come_to(&self, item: &ItemId, to: State) -> bool {
        self.needs_home(item, to)
            .is_none_or(|need| need.holds(&|item: &ItemId| self.stands(item)))
    }

    /// The items that a move of this one looks at, out or back.
    #[must_use]
    pub fn looked_at(&self, item: &ItemId) -> BTreeSet<ItemId> {
        let moves = self.map.items.get(item).map(|known| known.moves.as_slice());
        moves
            .unwrap_or_default()
            .iter()
            .flat_map(|made| {
                made.need
                    .items()
                    .into_iter()
                    .chain(made.need_back.iter().flat_map(states::Need::items))
            })
            .map(|item| self.id(item).clone())
            .collect()
    }

    /// Whether any item stands away from home.
    #[must_use]
    pub fn anything_off(&self) -> bool {
        self.stands
            .values()
            .any(|(kind, pieces)| pieces.values().any(|state| *state != kind.home()))
    }
}

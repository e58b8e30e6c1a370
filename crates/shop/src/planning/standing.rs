//! Where the items of an order stand, in the names of its map.

use super::Stands;
use super::adopt::declared;
use super::names::{in_order, on_map};
use super::work::{is_work, owing, sort, until};
use jiff::Timestamp;
use jiff::tz::TimeZone;
use map::Map;
use record::form::Form;
use record::v1::facts::FactForm;
use repair::{
    Account, CommandId, Event, Fact, Gate, Item, ItemId, Kind, Move, Order, OrderReading, PersonId,
    PieceIs, Position, Recorded, Rules, Stamp, Stand, State, System, Until, Why, Words, Zone,
    evolve,
};
use serde_json::Value;
use std::collections::{BTreeMap, BTreeSet};

/// Where everything stands that an order knows of: items of the map under the map's
/// names, others that are out under their own. A piece that was found missing and may
/// stay so counts as home; where people disagree, the claim farthest from home counts.
#[must_use]
pub fn standing(map: &Map, reading: &OrderReading<'_>) -> Stands {
    let account = reading.account();
    let mut out = Stands::new();
    let mut on_map_ids = BTreeSet::new();
    for (name, known) in &map.items {
        let id = account.moves.name(&in_order(name)).clone();
        if known.kind != Kind::Work && account.moves.items().any(|moved| *moved == id) {
            out.insert(name.clone(), (known.kind, pieces(account, &id, known.kind)));
        }
        on_map_ids.insert(id);
    }
    for open in &account.open {
        let kind = open.known.as_ref().map_or(Kind::Part, |item| item.kind);
        if !on_map_ids.contains(&open.item) {
            out.insert(open.item.clone(), (kind, pieces(account, &open.item, kind)));
        }
    }
    let owed = reading.debts();
    for (name, known) in &map.items {
        let due = || {
            owed.iter()
                .any(|debt| is_work(map, account, name, &debt.work))
        };
        let here = known.kind == Kind::Work && known.due_after.is_none();
        if here && owing(map, name).next().is_some() && due() {
            out.insert(name.clone(), (Kind::Work, [(1, State::Due)].into()));
        }
    }
    out
}

/// The pieces of an item, in the states of the kind that the map says it is.
fn pieces(account: &Account, id: &ItemId, kind: Kind) -> BTreeMap<Position, State> {
    let of_account = account.items.get(id).map_or(kind, |item| item.kind);
    account
        .positions(id)
        .into_iter()
        .map(|position| {
            let home = account.home(id, position);
            let stands = account.moves.stands(id, position);
            let state = stands
                .iter()
                .map(|stand| stand.state)
                .max_by_key(|state| rank(of_account, *state));
            let state = state.filter(|state| *state != home.state);
            let state = state.unwrap_or(of_account.home());
            (position, of_kind(state, of_account, kind))
        })
        .collect()
}

fn rank(kind: Kind, state: State) -> usize {
    let rung = |known: &State| *known == state.rung();
    kind.states().iter().position(rung).unwrap_or(0)
}

/// A state of one kind as the state of another that is as far from home.
fn of_kind(state: State, kind: Kind, other: Kind) -> State {
    if other.states().contains(&state.rung()) {
        state
    } else if state == kind.home() {
        other.home()
    } else {
        other.away()
    }
}

/// Where one stood for the last move that the map knows of.
#[must_use]
pub fn last_place(map: &Map, account: &Account) -> Option<String> {
    let moved = |(item, known): (&ItemId, &map::MapItem)| {
        let place = known.moves.iter().find_map(|made| made.place.clone())?;
        let when = account
            .moves
            .live(&in_order(item))
            .map(|(id, node)| (node.stamp.at, id.clone()))
            .max()?;
        Some((when, place))
    };
    let last = map.items.iter().filter_map(moved).max();
    last.map(|(_, place)| place)
}

/// The items that must come home for the vehicle to roll, in the names that
/// [`standing`] uses.
#[must_use]
pub fn to_roll(map: &Map, reading: &OrderReading<'_>) -> BTreeSet<ItemId> {
    let account = reading.account();
    let answer = reading.answer(Gate::Roll);
    let item = |why: &Why| match why {
        Why::Open(open) | Why::Unlocated(open) => Some(open.item.clone()),
        Why::NotCaught { item } => Some(item.clone()),
        _ => None,
    };
    let shut = answer.fit_to_go.iter().filter(|reason| reason.shuts());
    shut.filter_map(|reason| item(&reason.why))
        .map(|id| name_on_map(map, account, &id))
        .collect()
}

/// The same for where things stand by themselves, as in an order that knows nothing else.
#[must_use]
pub fn to_roll_from(map: &Map, stands: &Stands) -> BTreeSet<ItemId> {
    let nobody = Stamp {
        who: PersonId::new("nobody"),
        at: Timestamp::UNIX_EPOCH,
    };
    let rules = Rules {
        now: Timestamp::UNIX_EPOCH,
        zone: TimeZone::UTC,
        leeway: repair::price::Leeway::default(),
    };
    let mut order = Order::default();
    let mut tell = |fact: Fact| {
        let number = order.story().count();
        order = evolve(
            std::mem::take(&mut order),
            Recorded {
                command: CommandId::new(number.to_string()),
                nth: 0,
                stamp: nobody.clone(),
                event: Event::Fact(fact),
            },
        );
    };
    for (item, (kind, pieces)) in stands {
        if *kind == Kind::Work {
            continue;
        }
        tell(described(map, item, *kind));
        let id = map
            .items
            .get(item)
            .map_or_else(|| item.clone(), |_| in_order(item));
        for (at, state) in pieces.iter().filter(|(_, state)| **state != kind.home()) {
            tell(moved(&id, *at, *state));
        }
    }
    let mut items = to_roll(map, &OrderReading::of(&order, &rules));
    // Work that is owed before it rolls.
    let owed = stands.iter().filter(|(item, (kind, pieces))| {
        let due = pieces.values().any(|state| *state == State::Due);
        let early = || match until(map, item, sort(map, item)) {
            Until::Before(gate) => gate <= Gate::Roll,
            Until::Later { .. } => false,
        };
        *kind == Kind::Work && due && early()
    });
    items.extend(owed.map(|(item, _)| item.clone()));
    items
}

/// Work that follows from what is off, where nothing was said of it: it is owed.
pub fn owed_too(map: &Map, stands: &mut Stands) {
    let made = |item: &ItemId, to: State| {
        let pieces = stands.get(item).map(|(_, pieces)| pieces);
        pieces.is_some_and(|pieces| pieces.values().any(|state| state.rung() == to.rung()))
    };
    let owed: BTreeSet<ItemId> = map
        .moves()
        .filter(|(item, step)| made(item, step.to))
        .flat_map(|(_, step)| &step.owes)
        .filter(|work| {
            let known = map.items.get(*work);
            known.is_some_and(|known| known.due_after.is_none())
        })
        .cloned()
        .collect();
    for work in owed {
        stands
            .entry(work)
            .or_insert((Kind::Work, [(1, State::Due)].into()));
    }
}

fn described(map: &Map, item: &ItemId, kind: Kind) -> Fact {
    let label = Words([0; 32]);
    let known = declared(map, item, &|_| Value::from(label.hex()))
        .and_then(|known| serde_json::from_value::<FactForm>(known).ok())
        .and_then(|form| form.read().ok());
    known.unwrap_or_else(|| Fact::Declared {
        item: Item {
            id: item.clone(),
            kind,
            system: System::Unknown,
            zone: Zone::Unknown,
            label,
            size: None,
            pieces: Vec::new(),
            pattern: None,
            spent: false,
            may_miss: None,
            put_in: None,
            holds: None,
            trade: None,
        },
    })
}

fn moved(id: &ItemId, at: Position, state: State) -> Fact {
    Fact::Moved {
        stage: None,
        moves: vec![Move {
            item: id.clone(),
            at: vec![at],
            after: Vec::new(),
            left: Stand {
                state,
                piece: PieceIs::Original,
            },
            container: None,
        }],
    }
}

/// The map's name of an item of the order; its own where the map does not know it.
#[must_use]
pub fn name_on_map(map: &Map, account: &Account, id: &ItemId) -> ItemId {
    let same = |name: &&ItemId| account.moves.name(&in_order(name)) == id;
    map.items
        .keys()
        .find(same)
        .or_else(|| on_map(map, id))
        .unwrap_or(id)
        .clone()
}

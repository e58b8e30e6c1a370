//! One order on one line: the floor, and finding an order.

use super::{customer_text, desk, story, vehicle_of, vehicle_text};
use crate::phrases::order as words;
use crate::say::Names;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::when_sought::time_sought;
use crate::world::World;
use jiff::Timestamp;
use record::Stream;
use repair::{
    Fact, Field, Gate, Order, OrderId, OrderReading, Place, VehicleId, Why, papers, stock,
};
use serde::Serialize;
use utoipa::ToSchema;

/// One order as the floor shows it.
#[derive(Debug, Clone, PartialEq, Eq, Serialize, ToSchema)]
pub struct OrderRow {
    /// The number people call it by.
    pub number: u64,
    /// The vehicle.
    pub vehicle: String,
    /// Its name in the record.
    pub vehicle_id: Option<String>,
    /// Its plate.
    pub plate: String,
    /// The customer.
    pub customer: String,
    /// The first complaint.
    pub complaint: String,
    /// Where it stands: a stall's name, the yard, away; nothing if nobody said.
    pub place: Option<String>,
    /// The stall's name in the record.
    pub stall: Option<String>,
    /// When it is to come, if it is not here yet.
    pub comes: Option<String>,
    /// The hour promised.
    pub promised: Option<String>,
    /// Who works on it.
    pub who: Option<String>,
    /// The one word that says what holds it.
    pub word: String,
    /// Items not at home, things inside apart.
    pub open: usize,
    /// Things inside the vehicle.
    pub inside: usize,
    /// Where somebody stopped in the middle of a group, in one line.
    pub stopped: Option<String>,
    /// Work owed before hand-over.
    pub debts: usize,
    /// Whether it may roll.
    pub can_roll: bool,
    /// Whether it was handed over.
    pub handed_over: bool,
    /// Whether it was opened by mistake.
    pub voided: bool,
}

/// How many orders are shown at a time.
pub const MOST_ROWS: usize = 50;

/// Orders, newest first; those that match the words, if any are given, by number, plate,
/// vehicle, customer, complaint or part; words that are a day or a month, by when they were opened
/// or handed over. At most [`MOST_ROWS`]: go on from below the last one's number.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn rows(
    snap: &Snapshot<'_>,
    find: Option<&str>,
    before: Option<u64>,
) -> Result<Vec<OrderRow>, Trouble> {
    let world = snap.world();
    let words = find.unwrap_or_default();
    let found = match time_sought(words, &snap.rules().zone) {
        Some(time) => world.orders_of_time(&time, before, MOST_ROWS)?,
        None => world.orders_saying(words, before, MOST_ROWS)?,
    };
    rows_of(snap, world, found)
}

/// The orders that somebody may have to do with, newest first: all but the voided, and
/// those that were handed over with nothing come in since. There are few of them however
/// long the shop has been at work.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn rows_here(snap: &Snapshot<'_>) -> Result<Vec<OrderRow>, Trouble> {
    let world = snap.world();
    let mut rows = rows_of(snap, world, world.orders_here()?)?;
    rows.retain(|row| !row.voided && (!row.handed_over || row.word != LEFT));
    Ok(rows)
}

/// A vehicle that is here, by where it stands: what costs no look through its order.
#[derive(Debug, Clone, PartialEq, Eq)]
pub struct StandsHere {
    /// The order's number.
    pub number: u64,
    pub vehicle: String,
    /// Where: a stall's name, the yard, away; nothing if nobody said.
    pub place: Option<String>,
    /// The stall's name in the record.
    pub stall: Option<String>,
}

/// Where everything that is here stands, the stalls first.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn stands_here(snap: &Snapshot<'_>) -> Result<Vec<StandsHere>, Trouble> {
    let world = snap.world();
    let mut out = Vec::new();
    for one in world.standing_here()? {
        out.push(StandsHere {
            number: one.number,
            vehicle: vehicle_text(snap, world, one.vehicle.as_ref(), Field::Label)?,
            stall: match &one.place {
                Some(Place::Stall(stall)) => Some(stall.as_str().to_owned()),
                _ => None,
            },
            place: one.place.map(|place| place_name(snap, world, &place)),
        });
    }
    out.sort_by_key(|one| (one.stall.is_none(), one.place.clone(), one.number));
    Ok(out)
}

/// Where an order's vehicle stands, if somebody said.
pub(crate) fn stands(order: &Order) -> Option<Place> {
    last(order, |fact| match fact {
        Fact::Stood { place } | Fact::Pushed { to: place, .. } => Some(place.clone()),
        _ => None,
    })
}

/// Every order about a vehicle, newest first.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn rows_of_vehicle(snap: &Snapshot<'_>, id: &VehicleId) -> Result<Vec<OrderRow>, Trouble> {
    let world = snap.world();
    rows_of(snap, world, world.orders_of_vehicle(id)?)
}

pub(super) fn rows_of(
    snap: &Snapshot<'_>,
    world: &World,
    orders: Vec<(u64, OrderId)>,
) -> Result<Vec<OrderRow>, Trouble> {
    orders
        .into_iter()
        .map(|(number, id)| {
            let order = world.order(&id)?;
            let mut row = row(snap, &Names::of(snap, world, &order), number)?;
            // What is not read may hold it.
            row.can_roll &= world.unread(&Stream::Order(id))?.is_none();
            Ok(row)
        })
        .collect()
}

impl OrderRow {
    /// What holds the vehicle, as it is said.
    #[must_use]
    pub fn word_said(&self) -> &str {
        match self.word.as_str() {
            "voided" => words::word_voided(),
            LEFT => words::word_left(),
            COMES => words::word_comes(),
            "left, look" => words::word_left_look(),
            "consent" => words::word_consent(),
            "machine work" => words::word_machine_work(),
            "part" => words::word_part(),
            "snag" => words::word_snag(),
            "at work" => words::word_at_work(),
            "test" => words::word_test(),
            "papers" => words::word_papers(),
            "ready" => words::word_ready(),
            other => other,
        }
    }
}

/// The word for a vehicle that is to come.
pub(crate) const COMES: &str = "comes";

/// The word for a vehicle that left, and nothing came in after.
const LEFT: &str = "left";

pub(super) fn row(
    snap: &Snapshot<'_>,
    names: &Names<'_>,
    number: u64,
) -> Result<OrderRow, Trouble> {
    let reading = names.reading();
    let (order, account, rules) = (reading.order(), reading.account(), reading.rules());
    let world = snap.world();
    let vehicle = vehicle_of(order);
    let comes = repair::expected(order);
    // Where it stood when it was here before says nothing.
    let place = stands(order).filter(|_| comes.is_none());
    let inside = account
        .open
        .iter()
        .filter(|open| {
            open.known
                .as_ref()
                .is_some_and(|item| item.kind == repair::Kind::PutIn)
        })
        .count();
    Ok(OrderRow {
        number,
        vehicle: vehicle_text(snap, world, vehicle.as_ref(), Field::Label)?,
        plate: vehicle_text(snap, world, vehicle.as_ref(), Field::Plate)?,
        vehicle_id: vehicle.map(|id| id.as_str().to_owned()),
        customer: customer_text(snap, world, order, Field::Name)?,
        complaint: papers::lines(order)
            .first()
            .map(|line| snap.texts().text(line.complaint))
            .unwrap_or_default(),
        stall: match &place {
            Some(Place::Stall(stall)) => Some(stall.as_str().to_owned()),
            _ => None,
        },
        place: place.map(|place| place_name(snap, world, &place)),
        comes: comes.map(|at| story::hour(rules, at)),
        promised: promised(order).map(|at| story::hour(rules, at)),
        who: last(order, |fact| match fact {
            Fact::Assigned { person } => Some(person.clone()),
            _ => None,
        })
        .map(|person| name(snap, world, &person)),
        word: word(reading),
        open: account.open.len() - inside,
        inside,
        stopped: super::stopped::stopped(names)
            .first()
            .map(|left| words::group_and_doing(&left.group, &left.doing)),
        debts: reading
            .debts()
            .iter()
            .filter(|debt| debt.stands_at(Gate::HandOver))
            .count(),
        can_roll: reading.answer(Gate::Roll).may(),
        handed_over: papers::handed_over(order).is_some(),
        voided: papers::is_voided(order),
    })
}

/// Everybody who is to work on an order, each once.
pub(crate) fn assigned(order: &Order) -> Vec<String> {
    let people: std::collections::BTreeSet<String> = order
        .beside_moves()
        .filter_map(|(_, filed)| match &filed.fact {
            Fact::Assigned { person } => Some(person.as_str().to_owned()),
            _ => None,
        })
        .collect();
    people.into_iter().collect()
}

pub(super) fn name(snap: &Snapshot<'_>, world: &World, person: &repair::PersonId) -> String {
    world
        .shop
        .everyone()
        .get(person)
        .map(|(name, _)| snap.texts().text(*name))
        .unwrap_or_default()
}

fn place_name(snap: &Snapshot<'_>, world: &World, place: &Place) -> String {
    match place {
        Place::Stall(id) => world
            .shop
            .stalls()
            .into_iter()
            .find(|(stall, ..)| *stall == id)
            .map_or_else(
                || words::a_stall().to_owned(),
                |(_, name, _)| snap.texts().text(name),
            ),
        Place::Yard => words::yard().to_owned(),
        Place::Away => words::away().to_owned(),
    }
}

/// When it was promised for, as told last.
pub(crate) fn promised(order: &Order) -> Option<Timestamp> {
    last(order, |fact| match fact {
        Fact::Promised { at } => Some(*at),
        _ => None,
    })
}

/// The last of a kind of fact, by the clock of whoever told it: for display only.
fn last<T>(order: &Order, pick: impl Fn(&Fact) -> Option<T>) -> Option<T> {
    order
        .beside_moves()
        .filter_map(|(command, filed)| Some(((filed.stamp.at, command), pick(&filed.fact)?)))
        .max_by(|a, b| a.0.cmp(&b.0))
        .map(|(_, told)| told)
}

/// The one word that says what holds the vehicle, the most pressing first: a code, the same in
/// every language.
fn word(reading: &OrderReading<'_>) -> String {
    let (order, account, rules) = (reading.order(), reading.account(), reading.rules());
    if papers::is_voided(order) {
        return "voided".to_owned();
    }
    if papers::handed_over(order).is_some() {
        let late = !reading.alarms().is_empty();
        return if late { "left, look" } else { LEFT }.to_owned();
    }
    if repair::expected(order).is_some() {
        return COMES.to_owned();
    }
    let adrift = stock::adrift(order);
    let away = adrift
        .iter()
        .any(|why| matches!(why, Why::SubletOut { .. }));
    let answer = reading.answer(Gate::HandOver);
    let fit = !answer.fit_to_go.iter().any(repair::Reason::shuts);
    let word = if desk::must_ask(order, rules) {
        "consent"
    } else if away {
        "machine work"
    } else if waits_for_part(order) {
        "part"
    } else if !repair::snags::open(order).is_empty() {
        "snag"
    } else if !account.open.is_empty() {
        "at work"
    } else if !fit {
        "test"
    } else if !answer.may() {
        "papers"
    } else {
        "ready"
    };
    word.to_owned()
}

/// Whether a part was ordered and none of it has come.
fn waits_for_part(order: &Order) -> bool {
    use repair::PartStep::{Cancelled, Ordered, Received};
    stock::steps(order).values().any(|steps| {
        let at = |step| steps.get(&step).copied().unwrap_or_default();
        at(Ordered) > at(Received).saturating_add(at(Cancelled))
    })
}

//! What one finished order says, read once and kept at hand.

use crate::odds_of::{given_and_came_to, joints_of, stages_of};
use crate::phrases::history as words;
use crate::snapshot::Snapshot;
use crate::trouble::Trouble;
use crate::world::{Finished, vehicle_of};
use odds::{Done, Given};
use repair::price::Payer;
use repair::{
    Account, Fact, ItemId, Kind, LineText, Order, OrderId, PartStep, SnagIs, State, System,
    VehicleId, Words, papers,
};
use rust_decimal::Decimal;
use std::collections::{BTreeMap, BTreeSet};
use std::sync::{Arc, Mutex, PoisonError};

/// What one order says.
#[derive(Debug, Clone, PartialEq, Default)]
pub(super) struct OrderPast {
    pub number: u64,
    /// Whose finished work it is.
    pub vehicle: Option<VehicleId>,
    /// Such as `2026-11`, of the hand-over.
    pub month: String,
    pub stages: Vec<Done>,
    /// By size and metal: pieces that came out, and pieces that brought a snag.
    pub pieces: Vec<(Joint, u32, u32)>,
    /// What differs from now on, or was sent back: what it is of, and how.
    pub differed: Vec<(String, How)>,
    /// Nothing where it is no comeback.
    pub comeback: Option<Comeback>,
    /// By who says so: how many groups of fasteners were tightened so. Nothing where nobody
    /// gave a torque.
    pub torques: BTreeMap<Option<String>, u32>,
    pub quote: Option<Given>,
    /// Declined work, and the order on which it came back.
    pub declined: Vec<(String, Option<u64>)>,
    /// By person and thing: who else looked on or checked it.
    pub did: BTreeMap<(String, String), BTreeSet<String>>,
}

/// How a part differed.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum How {
    /// In words.
    Told(String),
    /// It was sent back; why.
    SentBack(Option<String>),
}

impl How {
    /// In what is spoken.
    pub fn said(&self) -> String {
        match self {
            Self::Told(how) => how.clone(),
            Self::SentBack(Some(why)) => words::sent_back_why(why),
            Self::SentBack(None) => words::sent_back().to_owned(),
        }
    }
}

/// Work that came back.
#[derive(Debug, Clone, PartialEq)]
pub(super) struct Comeback {
    pub cause: Cause,
    /// The visit before.
    pub after: Option<u64>,
    /// How long the clocks of its stages ran, in minutes.
    pub minutes: f64,
    /// What its lines come to that the customer does not pay, before tax, with the digits of its
    /// money; nothing where they were not priced.
    pub net: Option<(Decimal, u32)>,
}

/// Why work came back.
#[derive(Debug, Clone, PartialEq)]
pub(super) enum Cause {
    About(System),
    Snag(SnagIs),
    Told(String),
    NotTold,
}

impl Cause {
    /// In what is spoken.
    pub fn said(&self) -> String {
        match self {
            Self::About(system) => crate::say::system_name(*system).to_owned(),
            Self::Snag(snag) => words::something(crate::say::snag_name(*snag)),
            Self::Told(cause) => cause.clone(),
            Self::NotTold => words::no_cause_told().to_owned(),
        }
    }
}

/// A size in a metal.
#[derive(Debug, Clone, PartialEq, Eq, PartialOrd, Ord, Default)]
pub(super) struct Joint {
    pub size: String,
    pub metal: Option<String>,
}

/// Orders as they were read, with the position of their last row then.
#[derive(Default)]
struct AtHand {
    shop_position: u64,
    orders: BTreeMap<OrderId, (u64, u64, Arc<OrderPast>)>,
}

/// Reads finished orders, the newest first; what is known is not read again.
pub(super) fn read_all(
    snap: &Snapshot<'_>,
    finished: &[Finished],
) -> Result<Vec<Arc<OrderPast>>, Trouble> {
    let shelf = snap.shelf::<Mutex<AtHand>>();
    let world = snap.world();
    let mut at_hand = shelf.lock().unwrap_or_else(PoisonError::into_inner);
    // An erasure is an event of the shop's own: what was read before it is read again.
    if at_hand.shop_position != world.shop_position {
        at_hand.orders.clear();
        at_hand.shop_position = world.shop_position;
    }
    let mut out = Vec::new();
    for one in finished {
        let later = later_visits(snap, &one.order)?;
        let known = at_hand
            .orders
            .get(&one.order)
            .filter(|(position, visits, _)| (*position, *visits) == (one.position, later.stamp()));
        if let Some((.., past)) = known {
            out.push(Arc::clone(past));
            continue;
        }
        let order = world.order(&one.order)?;
        let past = Arc::new(past(snap, &order, one.number, &later)?);
        if at_hand.orders.len() >= 3 * super::MOST_ORDERS {
            at_hand.orders.clear();
        }
        if !crate::words::fault_met() {
            let kept = (one.position, later.stamp(), Arc::clone(&past));
            at_hand.orders.insert(one.order.clone(), kept);
        }
        out.push(past);
    }
    Ok(out)
}

/// The other visits of an order's vehicle.
struct Visits {
    before: Option<u64>,
    later: Vec<(u64, OrderId)>,
}

impl Visits {
    /// What changes when the vehicle comes again.
    fn stamp(&self) -> u64 {
        self.later.first().map_or(0, |(number, _)| *number)
    }
}

fn later_visits(snap: &Snapshot<'_>, id: &OrderId) -> Result<Visits, Trouble> {
    let world = snap.world();
    let number = world.number_of(id)?.unwrap_or_default();
    let vehicle = world.vehicle_of_order(id)?;
    let all = match vehicle {
        Some(vehicle) => world.orders_of_vehicle(&vehicle)?,
        None => Vec::new(),
    };
    let before = all.iter().map(|(other, _)| *other);
    Ok(Visits {
        before: before.filter(|other| *other < number).max(),
        later: all
            .into_iter()
            .filter(|(other, _)| *other > number)
            .collect(),
    })
}

fn past(
    snap: &Snapshot<'_>,
    order: &Order,
    number: u64,
    visits: &Visits,
) -> Result<OrderPast, Trouble> {
    let account = Account::of(order);
    let month = papers::handed_over(order).map_or_else(String::new, |left| {
        let day = snap.rules().day(left.at);
        format!("{:04}-{:02}", day.year(), day.month())
    });
    let rust = match vehicle_of(order) {
        Some(vehicle) => snap.world().vehicle(&vehicle)?.rust(),
        None => None,
    };
    let label = |item: &ItemId| {
        let known = account.items.get(account.moves.name(item));
        known.map_or_else(String::new, |known| snap.texts().text(known.label))
    };
    let metals = metals(order, &account);
    let pieces = joints_of(order, &account, rust).into_iter();
    let pieces = pieces.filter_map(|(item, joint, pieces, found)| {
        let metal = metals.get(&item).cloned();
        let size = joint.size?;
        Some((Joint { size, metal }, pieces, found))
    });
    Ok(OrderPast {
        number,
        vehicle: vehicle_of(order),
        month,
        stages: stages_of(order, rust),
        pieces: pieces.collect(),
        differed: differed(snap, order, &label),
        comeback: comeback(snap, order, rust, visits),
        torques: torques(snap, &account),
        quote: given_and_came_to(order, snap).map(|(_, given)| given),
        declined: declined(snap, order, &label, visits)?,
        did: did(snap, order, &account),
    })
}

/// The metal around the threads that were mended, as the repair was worked out with.
fn metals(order: &Order, account: &Account) -> BTreeMap<ItemId, String> {
    let mut snagged: BTreeMap<_, ItemId> = BTreeMap::new();
    for (_, filed) in order.beside_moves() {
        if let Fact::SnagFound {
            snag,
            item: Some(item),
            ..
        } = &filed.fact
        {
            snagged.insert(snag.clone(), account.moves.name(item).clone());
        }
    }
    let mut metals = BTreeMap::new();
    for (_, filed) in order.beside_moves() {
        let Fact::Calculated {
            item, snag, inputs, ..
        } = &filed.fact
        else {
            continue;
        };
        let of = item
            .as_ref()
            .map(|item| account.moves.name(item))
            .or_else(|| snagged.get(snag.as_ref()?));
        let told: serde_json::Value = serde_json::from_str(inputs).unwrap_or_default();
        let metal = told.get("in").and_then(|metal| metal.as_str());
        if let (Some(item), Some(metal)) = (of, metal.filter(|metal| !metal.is_empty())) {
            metals.insert(item.clone(), metal.replace('-', " "));
        }
    }
    metals
}

/// What differs from now on, and parts that were sent back.
fn differed(
    snap: &Snapshot<'_>,
    order: &Order,
    label: &dyn Fn(&ItemId) -> String,
) -> Vec<(String, How)> {
    let mut parts: BTreeMap<_, Words> = BTreeMap::new();
    let mut out = Vec::new();
    for (_, filed) in order.beside_moves() {
        if let Fact::PartNeeded { part, label, .. } = &filed.fact {
            parts.insert(part, *label);
        }
    }
    for (_, filed) in order.beside_moves() {
        match &filed.fact {
            Fact::DifferenceNoted {
                item: Some(item),
                size,
                words,
                ..
            } => {
                let size = size.as_ref().map(|size| size.as_str().to_owned());
                let said = snap.texts().text_of(*words);
                let how: Vec<String> = [size, said].into_iter().flatten().collect();
                out.push((label(item), How::Told(how.join(", "))));
            }
            Fact::PartStepped {
                part,
                step: PartStep::Returned,
                words,
                ..
            } => {
                let name = parts.get(part).map(|label| snap.texts().text(*label));
                let why = snap.texts().text_of(*words);
                out.push((name.unwrap_or_default(), How::SentBack(why)));
            }
            _ => {}
        }
    }
    out
}

/// A line that the shop or its supplier pays for is work that came back.
fn comeback(
    snap: &Snapshot<'_>,
    order: &Order,
    rust: Option<u8>,
    visits: &Visits,
) -> Option<Comeback> {
    let lines = papers::lines(order);
    let line = lines.iter().find(|line| line.payer != Payer::Customer)?;
    let cause = order
        .beside_moves()
        .find_map(|(_, filed)| match &filed.fact {
            Fact::LineWorded {
                line: of,
                text: LineText::Cause,
                words,
                ..
            } if *of == line.line => Some(snap.texts().text(*words)),
            _ => None,
        });
    let about = order
        .beside_moves()
        .find_map(|(_, filed)| match &filed.fact {
            Fact::LineOpened {
                line: of, about, ..
            } if *of == line.line => about.first().copied(),
            _ => None,
        });
    let snag = order
        .beside_moves()
        .find_map(|(_, filed)| match &filed.fact {
            Fact::SnagFound { what, .. } => Some(*what),
            _ => None,
        });
    let cause = match (about, snag, cause) {
        (Some(system), ..) if system != System::Unknown => Cause::About(system),
        (_, Some(snag), _) => Cause::Snag(snag),
        (.., Some(cause)) if !cause.trim().is_empty() => Cause::Told(cause.trim().to_owned()),
        _ => Cause::NotTold,
    };
    let stages = stages_of(order, rust);
    let price = papers::price(order);
    let net = price.and_then(|price| {
        let by_others = price.totals.iter();
        let by_others = by_others.filter(|(payer, _)| **payer != Payer::Customer);
        let sum: Decimal = by_others.map(|(_, totals)| totals.net).sum();
        (!sum.is_zero()).then(|| (sum, papers::minor_digits(order)))
    });
    Some(Comeback {
        cause,
        after: visits.before,
        minutes: stages.iter().map(|stage| stage.minutes).sum(),
        net,
    })
}

/// Who says the torques by which fasteners were tightened.
fn torques(snap: &Snapshot<'_>, account: &Account) -> BTreeMap<Option<String>, u32> {
    let mut out = BTreeMap::new();
    for id in account.moves.items() {
        let Some(item) = account
            .items
            .get(id)
            .filter(|item| item.kind == Kind::Fasteners)
        else {
            continue;
        };
        let mut live = account.moves.live(id);
        if !live.any(|(_, node)| node.change.left.state == State::Tight) {
            continue;
        }
        let given = item
            .pattern
            .as_ref()
            .filter(|given| !given.passes.is_empty());
        let source = given.and_then(|given| snap.texts().text_of(given.source));
        let source = source.map(|title| title.trim().to_owned());
        *out.entry(source.filter(|title| !title.is_empty()))
            .or_default() += 1;
    }
    out
}

/// Declined work, with the later order on which the same was done.
fn declined(
    snap: &Snapshot<'_>,
    order: &Order,
    label: &dyn Fn(&ItemId) -> String,
    visits: &Visits,
) -> Result<Vec<(String, Option<u64>)>, Trouble> {
    let mut names: BTreeSet<String> = BTreeSet::new();
    for (_, filed) in order.beside_moves() {
        if let Fact::Declined { entries, items, .. } = &filed.fact {
            let entries = entries.iter().map(|words| snap.texts().text(*words));
            names.extend(entries.chain(items.iter().map(label)));
        }
    }
    names.retain(|name| !name.trim().is_empty());
    if names.is_empty() {
        return Ok(Vec::new());
    }
    let mut done: BTreeMap<String, u64> = BTreeMap::new();
    for (number, id) in &visits.later {
        let later = snap.world().order(id)?;
        let account = Account::of(&later);
        let moved = account
            .moves
            .items()
            .filter_map(|item| account.items.get(item));
        let moved = moved.map(|item| item.label);
        let priced = papers::price(&later);
        let priced = priced.iter().flat_map(papers::Price::all);
        let moved = moved.map(|words| snap.texts().text(words));
        let all: Vec<String> = moved
            .chain(priced.map(|entry| crate::view::entry_label(snap, entry)))
            .collect();
        for name in all {
            let name = plain(&name);
            let first = done.entry(name).or_insert(*number);
            *first = (*first).min(*number);
        }
    }
    let came_back = |name: String| {
        let later = done.get(&plain(&name)).copied();
        (name, later)
    };
    Ok(names.into_iter().map(came_back).collect())
}

/// What each person moved, by sort of thing, with who else checked it.
fn did(
    snap: &Snapshot<'_>,
    order: &Order,
    account: &Account,
) -> BTreeMap<(String, String), BTreeSet<String>> {
    let mut eyes: BTreeMap<&ItemId, BTreeSet<&str>> = BTreeMap::new();
    for (_, filed) in order.beside_moves() {
        if let Fact::Checked { items, .. } = &filed.fact {
            for item in items {
                let of = eyes.entry(account.moves.name(item)).or_default();
                of.insert(filed.stamp.who.as_str());
            }
        }
    }
    let mut out: BTreeMap<(String, String), BTreeSet<String>> = BTreeMap::new();
    for id in account.moves.items() {
        let Some(item) = account.items.get(id) else {
            continue;
        };
        let sort = item.known_trade().and_then(|trade| trade.sort.as_ref());
        let what = match sort {
            Some(sort) => sort.as_str().replace('-', " "),
            None => snap.texts().text(item.label).trim().to_lowercase(),
        };
        for (_, node) in account.moves.live(id) {
            let who = node.stamp.who.as_str();
            let of = out.entry((who.to_owned(), what.clone())).or_default();
            let others = eyes.get(id).into_iter().flatten();
            of.extend(
                others
                    .filter(|other| **other != who)
                    .map(|other| (*other).to_owned()),
            );
        }
    }
    out
}

fn plain(name: &str) -> String {
    let words: Vec<&str> = name.split_whitespace().collect();
    words.join(" ").to_lowercase()
}

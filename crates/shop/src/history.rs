//! What the shop's finished work says of itself: time against book, snags, parts that differed,
//! comebacks and what they cost, quotes against outcomes, declined work that came back, by which
//! torques things were tightened, how often bookings came. Each figure names the
//! orders behind it, and says where there are too few to tell.

mod bookings;
mod figures;
mod order;
mod parts;

use crate::roles::OWNER;
use crate::snapshot::Snapshot;
use crate::teaching::{VehicleKind, named_by_kind};
use crate::trouble::Trouble;
use crate::world::Finished;
use order::OrderPast;
use repair::Field;
use std::collections::BTreeSet;
use std::sync::Arc;

pub use bookings::{Bookings, Turned, bookings};

/// So many finished orders are looked at, the newest.
pub const MOST_ORDERS: usize = 400;

/// The history of the shop, or of one kind of vehicle.
#[derive(Debug, Clone, PartialEq)]
pub struct History {
    /// How many finished orders it is of.
    pub orders: usize,
    /// Whether there are older ones that were left out.
    pub more: bool,
    /// Its parts.
    pub parts: Vec<Part>,
}

/// One part of a history.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Part {
    /// Its name in an address.
    pub id: &'static str,
    /// Its heading.
    pub title: &'static str,
    /// What its figures say, in a sentence; empty where a part before it has said it.
    pub about: &'static str,
    /// What the scale of its drawing tells.
    pub scale: &'static str,
    /// A value that the others are held against.
    pub mark: Option<(f64, &'static str)>,
    /// Its figures.
    pub figures: Vec<Figure>,
}

/// One figure, with the orders behind it.
#[derive(Debug, Clone, PartialEq, Default)]
pub struct Figure {
    /// What it is of.
    pub name: String,
    /// What it says.
    pub words: String,
    /// The same, short, for a drawing.
    pub short: String,
    /// Its spread: the lower end, the middle, the upper end; nothing where there are too few.
    pub spread: Option<(f64, f64, f64)>,
    /// The orders behind it, the newest first.
    pub orders: Vec<u64>,
}

/// What a person did on finished orders, the newest first: the order, the sort of thing, and who
/// else checked it.
pub(crate) fn done_by(
    snap: &Snapshot<'_>,
    person: &str,
) -> Result<Vec<(u64, String, BTreeSet<String>)>, Trouble> {
    let orders = order::read_all(snap, &snap.world().finished(MOST_ORDERS)?)?;
    let mut out = Vec::new();
    for order in &orders {
        let own = order.did.iter().filter(|((who, _), _)| who == person);
        out.extend(own.map(|((_, what), eyes)| (order.number, what.clone(), eyes.clone())));
    }
    Ok(out)
}

/// What the kind of each order's vehicle is called.
fn kinds(snap: &Snapshot<'_>, orders: &[Arc<OrderPast>]) -> Result<Vec<String>, Trouble> {
    let mut names = Vec::new();
    for order in orders {
        let words = match &order.vehicle {
            Some(vehicle) => snap.world().vehicle(vehicle)?.text(Field::Label).words,
            None => None,
        };
        let name = snap.texts().text_of(words).unwrap_or_default();
        names.push(name.trim().to_owned());
    }
    named_by_kind(snap, &names)
}

/// The history of a kind of vehicle, or of all that the shop has finished.
///
/// # Errors
/// [`Trouble`], if the record cannot be read.
pub fn history(snap: &Snapshot<'_>, kind: Option<&VehicleKind>) -> Result<History, Trouble> {
    let finished: Vec<Finished> = match kind {
        Some(kind) => kind.finished.clone(),
        None => snap.world().finished(MOST_ORDERS)?,
    };
    let orders = order::read_all(snap, &finished)?;
    let may_see = |roles| snap.caller().has_any(roles);
    let mut all = vec![parts::by_stage(&orders)];
    if may_see(OWNER) {
        all.push(parts::by_person(snap, &orders));
    }
    if kind.is_none() {
        all.push(parts::by_kind(&orders, &kinds(snap, &orders)?));
    }
    all.push(parts::by_month(&orders));
    all.push(parts::snags(&orders));
    all.push(parts::differed(&orders));
    all.push(parts::comebacks(&orders, snap.caller().sees_prices()));
    if snap.caller().sees_prices() {
        all.push(parts::quotes(&orders));
    }
    all.push(parts::declined(&orders));
    all.push(parts::torque_sources(&orders));
    // Who stays away does so from the shop, not from a kind of vehicle.
    if kind.is_none() {
        all.push(bookings::part(&bookings(snap)?));
    }
    Ok(History {
        orders: orders.len(),
        more: finished.len() >= MOST_ORDERS,
        parts: all,
    })
}
